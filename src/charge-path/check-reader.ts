import { CalculationError, type Problem } from '../calculation/index.js';
import { diagnose } from '../units/internal.js';
import type { Kind, Operation } from '../units/index.js';

const NAME = 'operating point';

/** What a place of the installation takes, in SI bounds. */
export type Field = readonly [kind: Kind, min: number, max: number];
export const FLOW: Field = ['mass flow', 1e-4, 50];
export const CHARGE_FLOW: Field = ['mass flow', 1e-4, 5];
export const EXPONENT: Field = ['ratio', 0, 1];
export const CONDUCTANCE: Field = ['thermal conductance', 1e-2, 1e6];
export const LOSS: Field = ['pressure difference', 0, 2e5];
export const TEMPERATURE: Field = ['temperature', 180, 400];
export const RECIRCULATED: Field = ['ratio', 0, 1];
export const SHARE: Field = ['ratio', 0.05, 1];

/** Collects everything that is wrong, so that one error tells it all. */
export class Reader {
  readonly #fields: { path: string; field: Field; value: unknown }[] = [];
  readonly #problems: Problem[] = [];

  /** A value that must be there. */
  need(path: string, value: unknown, field: Field): void {
    this.#fields.push({ path, field, value });
  }

  /** A value that may be left out. */
  may(path: string, value: unknown, field: Field): void {
    if (value !== undefined) this.need(path, value, field);
  }

  /** Exactly one of several ways to say something. */
  one(what: string, ways: Readonly<Record<string, unknown>>): void {
    const given = Object.keys(ways).filter((key) => ways[key] !== undefined);
    if (given.length === 1) return;
    const names = Object.keys(ways).join(' or ');
    this.problem(
      given.length === 0 ? 'missing' : 'rule',
      what,
      names,
      given.length === 0 ? 'neither' : given.join(' and '),
    );
  }

  choice(path: string, value: unknown, choices: readonly string[]): boolean {
    if (choices.includes(value as string)) return true;
    const got = value === undefined ? 'nothing' : typeof value === 'string' ? `'${value}'` : typeof value;
    this.problem(value === undefined ? 'missing' : 'unknown', path, `one of '${choices.join("', '")}'`, got);
    return false;
  }

  object(path: string, value: unknown): boolean {
    if (typeof value === 'object' && value !== null) return true;
    this.problem('missing', path, 'an object that describes it', value === undefined ? 'nothing' : typeof value);
    return false;
  }

  problem(code: Problem['code'], input: string, need: string, got: string, mend = ''): void {
    this.#problems.push({ code, input, need, got, mend });
  }

  /** @throws CalculationError with everything that was found. */
  finish(): void {
    const inputs = this.#fields.map(({ path, field: [kind, min, max] }) => ({
      name: path,
      symbol: path,
      kind,
      min,
      max,
    }));
    const operation = { name: NAME, inputs } as unknown as Operation;
    const wrong =
      this.#fields.length === 0
        ? []
        : diagnose(
            operation,
            this.#fields.map(({ value }) => value),
          ).problems;
    const problems = [...this.#problems, ...wrong];
    if (problems.length > 0) throw new CalculationError(NAME, problems);
  }
}
