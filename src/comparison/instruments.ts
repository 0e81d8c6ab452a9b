import { contrastOfRepeats, mean, uncertainty } from '../calculation/index.js';
import { subtract, type Column, type Leaf, type Quantity } from '../units/index.js';
import { driftWeights } from '../statistics/index.js';
import type { OrderFinding } from './order.js';
import type { Estimate, SideResult } from './result.js';

/** What the errors of instruments do to a number: one standard uncertainty of each, with its sign. */
export interface InstrumentErrors {
  readonly label: string;
  readonly leaf: Leaf;
  readonly effect: number;
  readonly degreesOfFreedom: number;
}

/** Effects smaller than this share of the number are the rounding of what cancels. */
const ROUNDING = 1e-9;

/** The errors of instruments behind a number; the scatter of the pulls is none. */
export function instrumentErrors(number: Quantity, scale = Math.abs(number.si)): InstrumentErrors[] {
  return uncertainty(number).contributions.flatMap(({ label, input: { origin }, contribution, degreesOfFreedom }) =>
    origin?.type !== 'leaf' || origin.role === 'scatter' || Math.abs(contribution.si) <= ROUNDING * scale
      ? []
      : [{ label, leaf: origin, effect: contribution.si, degreesOfFreedom }],
  );
}

/**
 * What each error of an instrument does to the difference at each of some rows, with its sign: in full where it read one set-up only,
 * and what does not cancel where it read both.
 */
export function instrumentErrorsAlong(
  [baseline, candidate]: readonly [readonly Column[], readonly Column[]],
  rows: readonly number[],
  made: OrderFinding['made'],
): number[][] {
  const weights = made && driftWeights(made.letters, { times: made.times });
  const found = new Map<Leaf, number[]>();
  const read = [baseline[0]!, candidate[0]!].some((curve) => instrumentErrors(curve.at(rows[0]!)).length > 0);
  if (!read) return [];
  rows.forEach((row, place) => {
    const [a, b] = [baseline, candidate].map((side) => side.map((curve) => curve.at(row))) as [Quantity[], Quantity[]];
    const all = [...a, ...b];
    const difference = made
      ? contrastOfRepeats(
          'difference',
          made.pulls.map((i) => all[i]!),
          weights!,
          { standard: 0, degreesOfFreedom: Infinity },
        )
      : subtract(mean(b), mean(a));
    for (const { leaf, effect } of instrumentErrors(difference, Math.abs(a[0]!.si))) {
      let along = found.get(leaf);
      if (along === undefined) found.set(leaf, (along = rows.map(() => 0)));
      along[place] = effect;
    }
  });
  return [...found.values()];
}

/** The errors of instruments that were not the same in both set-ups: no number of pulls averages them out. */
export interface OwnInstruments {
  readonly labels: readonly string[];
  /** Standard uncertainty that they leave in the difference, in SI. */
  readonly standard: number;
  readonly degreesOfFreedom: number;
}

/** Looks for them in the budget of the answer. */
export function ownInstruments(
  overall: Estimate,
  sides: readonly [SideResult, SideResult],
): OwnInstruments | undefined {
  const leaves = sides.map(
    ({ overall: number }) => new Set(number ? instrumentErrors(number).map(({ leaf }) => leaf) : []),
  );
  const scale = Math.abs(sides[0].overall?.si ?? 0);
  const own = instrumentErrors(overall.value, scale).filter(({ leaf }) => !leaves.every((set) => set.has(leaf)));
  if (own.length === 0) return undefined;
  const variance = own.reduce((sum, { effect }) => sum + effect ** 2, 0);
  return {
    labels: [...new Set(own.map(({ label }) => label))],
    standard: Math.sqrt(variance),
    degreesOfFreedom: variance ** 2 / own.reduce((sum, one) => sum + one.effect ** 4 / one.degreesOfFreedom, 0),
  };
}
