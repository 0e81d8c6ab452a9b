import { CalculationError, type Quantity } from '../units/index.js';
import type { Comparison } from './result.js';
import { betweenSigned, decimals, signed } from './words.js';

/** What a set-up gave for what it cost. */
export interface Worth {
  readonly setUp: string;
  readonly cost: Quantity<'cost'>;
  /** Difference for each unit of cost, and its interval, in SI for each unit of cost. */
  readonly perCost: number;
  readonly low: number;
  readonly high: number;
  /** Whether the difference is resolved: worth for money means nothing where there may be none. */
  readonly resolved: boolean;
}

/** Several set-ups by what they gave for what they cost, best first. */
export interface WorthTable {
  readonly entries: readonly Worth[];
  /** As text. */
  toString(): string;
}

/**
 * What each set-up gave for what it cost, against one baseline, those whose difference is resolved first.
 *
 * @param costs - by the name of the candidate; all in one currency, whichever.
 * @throws CalculationError if a candidate has no cost above zero, or a cost has no candidate.
 */
export function worthPerCost(
  comparisons: readonly Comparison[],
  costs: Readonly<Record<string, Quantity<'cost'>>>,
): WorthTable {
  const names = comparisons.map((comparison) => comparison.candidate.name);
  const wrong = [
    ...names
      .filter((name) => !((costs[name]?.si ?? 0) > 0))
      .map((name) => ({ input: name, need: 'given a cost above zero' })),
    ...Object.keys(costs)
      .filter((name) => !names.includes(name))
      .map((name) => ({ input: name, need: `one of ${names.join(', ')}` })),
  ];
  if (wrong.length > 0) {
    const problems = wrong.map(
      ({ input, need }) => ({ code: 'unknown', input, need, got: String(costs[input] ?? 'none'), mend: '' }) as const,
    );
    throw new CalculationError('worthPerCost', problems);
  }
  const entries = comparisons.flatMap((comparison): (Worth & { readonly text: string })[] => {
    const { overall, candidate, outcome } = comparison;
    if (!overall) return [];
    const cost = costs[candidate.name]!;
    const each = (quantity: Quantity): number => quantity.si / cost.si;
    const resolved = outcome.startsWith('better') || outcome.startsWith('worse');
    const change = `${signed(overall.value)}, between ${betweenSigned(overall.low, overall.high)}`;
    const unit = overall.value.unit;
    const rate = (overall.value as Quantity<'power'>).in(unit as 'kW') / cost.si;
    const text = resolved
      ? `${candidate.name}: ${change}, for ${String(cost)}: ${decimals(rate * 1000, 2)} ${unit} for each 1000`
      : `${candidate.name}: ${change}, for ${String(cost)}: not resolved, so no worth can be told`;
    return [
      {
        setUp: candidate.name,
        cost,
        perCost: each(overall.value),
        low: each(overall.low),
        high: each(overall.high),
        resolved,
        text,
      },
    ];
  });
  entries.sort((a, b) => Number(b.resolved) - Number(a.resolved) || b.perCost - a.perCost);
  const text = (): string => entries.map((entry) => entry.text).join('\n');
  return Object.assign(
    { entries: entries.map(({ text: _, ...entry }) => entry), toString: text },
    { [Symbol.for('nodejs.util.inspect.custom')]: text },
  );
}
