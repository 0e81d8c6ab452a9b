import { formatValue } from '../units/format.js';
import { differenceKind, type DifferenceOf, type Kind } from '../units/kinds.js';
import { NO_NOTES, describe, differenceUnit, quantityOf, toSi } from '../units/internal.js';
import type { Quantity, QuantityRecord } from '../units/origin.js';
import { isColumn } from '../units/quantity.js';
import { sensitivityText } from './budget-text.js';
import { slopesThrough } from './gradient.js';
import { keyOf, type Key } from './graph.js';
import { refusal, requireQuantity } from './refusal.js';
import { namesOf, requireHistory, systemOf, withMethods, type System } from './system.js';
import { tableHtml, tableMarkdown, tableText, type Table } from './table.js';

/** What one input does to a result. */
export interface Effect<K extends Kind = Kind> {
  /** The name of the input. */
  readonly label: string;
  /** The input itself, to hand to `whatIf`. */
  readonly input: Quantity;
  /** How far the input is moved: `1 %`, or one of its units (`1 K`) where its zero is arbitrary or it is zero. */
  readonly per: string;
  /** What the result moves by then, to first order. */
  readonly effect: Quantity<DifferenceOf<K>>;
  /** Change of the result per change of the input, both in SI units. */
  readonly slope: number;
}

/** Which input matters, largest effect first. */
export interface Sensitivity<K extends Kind = Kind> {
  readonly value: Quantity<K>;
  readonly effects: readonly Effect<K>[];
  /** The effects as aligned text. */
  toString(): string;
  /** The effects as aligned text. */
  toText(): string;
  /** The effects as a Markdown table. */
  toMarkdown(): string;
  /** The effects as an HTML table, every label escaped. */
  toHtml(): string;
  /** The effects as plain data. */
  toJSON(): SensitivityRecord;
}

/** What a sensitivity writes as JSON. */
export interface SensitivityRecord {
  readonly value: QuantityRecord;
  readonly effects: readonly {
    readonly label: string;
    readonly per: string;
    readonly effect: QuantityRecord;
    readonly slope: number;
  }[];
}

/**
 * Which input matters: the change of a result per 1 % of each input, or per unit of it where a percentage means nothing (a temperature,
 * a gauge pressure, a zero). It goes through equations that were solved.
 *
 * @param result - a computed quantity.
 * @param inputs - which inputs; all quantities that went in, but not the zero-valued errors of sensors, when left out.
 * @throws CalculationError if an input did not go into the result.
 * @example
 * console.log(sensitivity(power).toText());
 */
export function sensitivity<K extends Kind>(result: Quantity<K>, inputs?: readonly Quantity[]): Sensitivity<K> {
  requireQuantity('sensitivity', 'result', result);
  const value = withMethods(result);
  const system = systemOf([value]);
  requireHistory('sensitivity', system);
  const keys = inputs === undefined ? allInputs(system) : inputs.map((input, i) => inputKey(system, input, i));
  const slopes = slopesThrough('sensitivity', system, keyOf(value), keys);
  const nameOf = namesOf(system.nodes);
  const effects = keys.map((key, i): Effect<K> => {
    const input = system.nodes.get(key)!.value as Quantity;
    const { move, per } = moveOf(input);
    const effect = quantityOf(
      differenceKind(result.kind) as DifferenceOf<K>,
      slopes[i]! * move,
      differenceUnit(result),
      { type: 'leaf', role: 'computed' },
      NO_NOTES,
    );
    return { label: nameOf(key), input, per, effect, slope: slopes[i]! };
  });
  return new Effects(
    value,
    effects.sort((a, b) => Math.abs(b.effect.si) - Math.abs(a.effect.si)),
  );
}

function allInputs({ nodes }: System): Key[] {
  return [...nodes.values()].flatMap(({ key, value }) => {
    const { origin } = value;
    if (isColumn(value) || origin?.type === 'step') return [];
    return origin === undefined || !['error', 'scatter', 'solved'].includes(origin.role) ? [key] : [];
  });
}

function inputKey({ nodes }: System, input: unknown, i: number): Key {
  requireQuantity('sensitivity', `inputs[${i}]`, input);
  if (nodes.has(keyOf(input))) return keyOf(input);
  throw refusal(
    'sensitivity',
    'unknown',
    `inputs[${i}]`,
    'a quantity that went into the result',
    `${describe(input)}, which did not`,
  );
}

function moveOf({ kind, si, unit }: Quantity): { move: number; per: string } {
  if (si !== 0 && kind !== 'temperature' && kind !== 'gauge pressure') return { move: 0.01 * si, per: '1 %' };
  const name = differenceUnit({ kind, unit });
  return { move: toSi(differenceKind(kind), 1, name), per: name === '1' ? '1' : `1 ${name}` };
}

const INSPECT = Symbol.for('nodejs.util.inspect.custom');

class Effects<K extends Kind> implements Sensitivity<K> {
  readonly value: Quantity<K>;
  readonly effects: readonly Effect<K>[];

  constructor(value: Quantity<K>, effects: readonly Effect<K>[]) {
    this.value = value;
    this.effects = effects;
  }

  toString(): string {
    return this.toText();
  }

  toText(): string {
    return tableText(tableOf(this));
  }

  toMarkdown(): string {
    return tableMarkdown(tableOf(this));
  }

  toHtml(): string {
    return tableHtml(tableOf(this));
  }

  toJSON(): SensitivityRecord {
    const effects = this.effects.map(({ label, per, effect, slope }) => ({
      label,
      per,
      effect: effect.toJSON(),
      slope,
    }));
    return { value: this.value.toJSON(), effects };
  }

  /** @internal */
  [INSPECT](): string {
    return this.toText();
  }
}

function tableOf({ value, effects }: Sensitivity): Table {
  const name = value.label ?? value.kind;
  return {
    caption:
      effects.length === 0
        ? `${name} ${formatValue(value)} has no inputs`
        : `${name} ${formatValue(value)}: what moves it`,
    columns: [
      { head: 'input', align: 'left' },
      { head: 'value', align: 'right' },
      { head: 'moved by', align: 'right' },
      { head: 'moves the result by', align: 'right' },
      { head: 'slope', align: 'right' },
    ],
    rows: effects.map(({ label, input, per, effect, slope }) => [
      label,
      formatValue(input),
      per,
      formatValue(effect, { figures: 3 }),
      sensitivityText(slope, value, input),
    ]),
    remarks: [],
  };
}
