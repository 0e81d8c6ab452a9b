import { differenceKind, kindOf, type DifferenceOf, type Kind } from '../units/kinds.js';
import { NO_NOTES, differenceUnit, quantityOf } from '../units/internal.js';
import type { Leaf, LeafGroup, LeafUncertainty, Note, Quantity } from '../units/origin.js';
import type { UncertaintyContribution, UncertaintyBudget, UncertaintyRecord } from './budget.js';
import { concise, budgetTable } from './budget-text.js';
import { slopesThrough } from './gradient.js';
import { keyOf, type Key } from './graph.js';
import { requireLevel, requireQuantity } from './refusal.js';
import { coverageFactorOf } from './coverage-factor.js';
import { namesOf, requireHistory, systemOf, withMethods } from './system.js';
import { tableHtml, tableMarkdown, tableText } from './table.js';

/**
 * The uncertainty of a result from that of everything it was made of, to first order (JCGM 100, chapter 5).
 *
 * Inputs are told apart by identity, so what two values share (a sensor, an assumed constant, a barometer) cancels where it cancels.
 * Values that carry no uncertainty are taken as exact: the budget is only as complete as what was `measured`.
 *
 * @throws CalculationError if the value is no quantity, an input cannot be moved to see what it does, or part of the history was not kept.
 * @example
 * const budget = uncertainty(efficiency);
 * budget.standard; budget.interval(); console.log(budget.toText());
 */
export function uncertainty<K extends Kind>(result: Quantity<K>): UncertaintyBudget<K> {
  requireQuantity('uncertainty', 'result', result);
  const value = withMethods(result);
  const system = systemOf([value]);
  requireHistory('uncertainty', system);
  const inputs = [...system.nodes.values()].flatMap(({ key, value: input }): Input[] => {
    const { origin } = input;
    if (origin?.type !== 'leaf' || origin.uncertainty === undefined) return [];
    return [{ key, leaf: origin, value: input as Quantity, uncertainty: origin.uncertainty }];
  });
  const slopes = slopesThrough(
    'uncertainty',
    system,
    keyOf(value),
    inputs.map(({ key }) => key),
  );
  return new Budget(value, inputs, slopes, namesOf(system.nodes));
}

interface Input {
  readonly key: Key;
  readonly leaf: Leaf;
  readonly value: Quantity;
  readonly uncertainty: LeafUncertainty;
}

export const COMPUTED: Leaf = { type: 'leaf', role: 'computed' };

const INSPECT = Symbol.for('nodejs.util.inspect.custom');

class Budget<K extends Kind> implements UncertaintyBudget<K> {
  readonly value: Quantity<K>;
  readonly standard: Quantity<DifferenceOf<K>>;
  readonly degreesOfFreedom: number;
  readonly contributions: readonly UncertaintyContribution<K>[];

  constructor(value: Quantity<K>, inputs: readonly Input[], slopes: readonly number[], nameOf: (key: Key) => string) {
    const parts = inputs.map(({ uncertainty: { standard } }, i) => slopes[i]! * standard);
    const variances = inputs.map(
      (input, i) => parts[i]! * inputs.reduce((sum, other, j) => sum + correlation(input, other) * parts[j]!, 0),
    );
    // Two inputs in full correlation can leave a variance below zero by rounding.
    const variance = Math.max(0, sumOf(variances));
    this.value = value;
    this.standard = difference(value, Math.sqrt(variance));
    this.degreesOfFreedom = effectiveDegreesOfFreedom(inputs, variances, variance);
    const contributions = inputs.map((input, i): UncertaintyContribution<K> => ({
      label: nameOf(input.key),
      input: input.value,
      standard: difference(input.value, input.uncertainty.standard),
      degreesOfFreedom: input.uncertainty.degreesOfFreedom,
      sensitivity: slopes[i]!,
      contribution: difference(value, parts[i]!),
      share: variance === 0 ? 0 : variances[i]! / variance,
      group: input.leaf.group?.label,
    }));
    this.contributions = contributions.sort((a, b) => b.share - a.share);
  }

  coverageFactor(level = 0.95): number {
    requireLevel('coverageFactor', level);
    return coverageFactorOf(level, this.degreesOfFreedom);
  }

  expanded(level = 0.95): Quantity<DifferenceOf<K>> {
    return difference(this.value, this.coverageFactor(level) * this.standard.si);
  }

  interval(level = 0.95): readonly [Quantity<K>, Quantity<K>] {
    const { kind, si, unit, notes, label } = this.value;
    const half = this.coverageFactor(level) * this.standard.si;
    const below = si - half < (kindOf(kind).minimum ?? -Infinity) ? [reachesBelowZero(kind)] : NO_NOTES;
    const end = (at: number, more: readonly Note[]): Quantity<K> =>
      quantityOf(kind, at, unit, { ...COMPUTED }, [...notes, ...more], label);
    return [end(si - half, below), end(si + half, NO_NOTES)];
  }

  toString(): string {
    return concise(this.value, this.standard.si);
  }

  toText(level?: number): string {
    return tableText(budgetTable(this, level));
  }

  toMarkdown(level?: number): string {
    return tableMarkdown(budgetTable(this, level));
  }

  toHtml(level?: number): string {
    return tableHtml(budgetTable(this, level));
  }

  toJSON(): UncertaintyRecord {
    return {
      value: this.value.toJSON(),
      standard: this.standard.toJSON(),
      degreesOfFreedom: finite(this.degreesOfFreedom),
      contributions: this.contributions.map(
        ({ label, standard, degreesOfFreedom, sensitivity, contribution, share, group }) => ({
          label,
          standard: standard.toJSON(),
          degreesOfFreedom: finite(degreesOfFreedom),
          sensitivity,
          contribution: contribution.toJSON(),
          share,
          ...(group === undefined ? {} : { group }),
        }),
      ),
    };
  }

  /** @internal */
  [INSPECT](): string {
    return this.toText();
  }
}

const finite = (value: number): number | null => (value === Infinity ? null : value);

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** A difference in SI as a quantity that shows in the unit of the value it is about. */
export function difference<K extends Kind>(of: Quantity<K>, si: number): Quantity<DifferenceOf<K>> {
  return quantityOf(differenceKind(of.kind) as DifferenceOf<K>, si, differenceUnit(of), { ...COMPUTED }, NO_NOTES);
}

function correlation(a: Input, b: Input): number {
  if (a === b) return 1;
  const group = a.leaf.group;
  if (group === undefined || group !== b.leaf.group) return 0;
  return group.correlation[group.leaves.indexOf(a.leaf)]![group.leaves.indexOf(b.leaf)]!;
}

/** Welch and Satterthwaite (JCGM 100, G.4.1), not truncated; inputs read together are one term, with the degrees of freedom of the group. */
function effectiveDegreesOfFreedom(inputs: readonly Input[], variances: readonly number[], variance: number): number {
  const terms = new Map<Input | LeafGroup, { variance: number; degreesOfFreedom: number }>();
  inputs.forEach((input, i) => {
    const { group } = input.leaf;
    const { degreesOfFreedom } = group ?? input.uncertainty;
    const before = terms.get(group ?? input)?.variance ?? 0;
    terms.set(group ?? input, { variance: before + variances[i]!, degreesOfFreedom });
  });
  let sum = 0;
  for (const term of terms.values()) sum += term.variance ** 2 / term.degreesOfFreedom;
  return sum === 0 ? Infinity : variance ** 2 / sum;
}

function reachesBelowZero(kind: Kind): Note {
  const message = `uncertainty: the interval reaches below zero, which no ${kind} can; to first order is too coarse here.`;
  return { code: 'interval below zero', calculation: 'uncertainty', message };
}
