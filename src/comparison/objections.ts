import type { Channels } from '../sweep/index.js';
import { rampRate } from './acceptance.js';
import { meanSi } from './factors.js';
import type { ResolvedOptions } from './options.js';
import type { Outcome, SideResult } from './result.js';
import type { TakenPull } from './taken-pull.js';
import { unitSuspicions } from './unit-challenge.js';
import { decimals, pullsOf, shown } from './words.js';

/** Something that stands before any verdict. */
export interface Objection {
  readonly outcome: Outcome;
  readonly sentence: string;
  /** What to do about it. */
  readonly mend?: string;
}

/** What stands before any verdict, in order of precedence. */
export function objectionsOf(
  accepted: readonly [TakenPull[], TakenPull[]],
  a: SideResult,
  b: SideResult,
  options: ResolvedOptions,
): Objection[] {
  const found: Objection[] = [];
  const lambda = (side: readonly TakenPull[]): number | undefined => {
    const means = side.map((pull) => meanSi(pull.grid.channels.lambda)).filter((value) => value !== undefined);
    return means.length === 0 ? undefined : means.reduce((sum, value) => sum + value, 0) / means.length;
  };
  const [lambdaA, lambdaB] = [lambda(accepted[0]), lambda(accepted[1])];
  if (
    lambdaA !== undefined &&
    lambdaB !== undefined &&
    Math.abs(lambdaB - lambdaA) > options.limits.mixtureBetweenSetUps
  ) {
    found.push({
      outcome: 'cannot be compared',
      sentence: `These two sets cannot be compared: ${pullsOf(b.name)} ran at lambda ${decimals(lambdaB, 2)} against ${decimals(lambdaA, 2)}, and ${decimals(options.limits.mixtureBetweenSetUps, 2)} is allowed.`,
      mend: 'Hold the mixture equal on both sides and repeat.',
    });
  }
  const ways = waysOf(accepted);
  if (ways !== undefined) {
    found.push({
      outcome: 'cannot be compared',
      sentence: `These two sets cannot be compared: ${pullsOf(b.name)} go ${ways[1]} in engine speed and ${pullsOf(a.name)} ${ways[0]}, which alone changes torque and the heat in the core.`,
      mend: 'Compare pulls that go the same way.',
    });
  }
  const rates = rampRatesOf(accepted);
  if (rates !== undefined && Math.abs(rates[1] / rates[0] - 1) > options.limits.rampRate.si) {
    const [slow, fast] = rates.map((rate) => `${decimals(rate * 60, 0)} rpm/s`);
    found.push({
      outcome: 'cannot be compared',
      sentence: `These two sets cannot be compared: ${pullsOf(b.name)} ran through the range at ${fast} against ${slow}, and ${shown(options.limits.rampRate, options.units)} of difference is allowed.`,
      mend: 'Hold the ramp rate equal on both sides and repeat.',
    });
  }
  const channels = (side: readonly TakenPull[]): Channels[] => side.map((pull) => pull.grid.channels);
  const made = accepted.flat().some(({ grid }) => grid.powerFrom === 'torque and engine speed');
  for (const { sentence } of unitSuspicions(channels(accepted[0]), channels(accepted[1]), made)) {
    found.push({
      outcome: 'unit suspected',
      sentence: `Before judging: ${sentence.charAt(0).toLowerCase()}${sentence.slice(1)} Check the units of both.`,
      mend: "Say the unit of the column in question, for example torque: channel('Torque', 'torque', 'N·m').",
    });
  }
  for (const side of [a, b]) {
    const usable = side.pulls.filter((pull) => pull.accepted).length;
    if (usable >= 2) continue;
    const sentence =
      usable === 1
        ? `One usable pull of the ${side.name} set is left, and one pull has no scatter: it cannot tell a change from luck.`
        : `No usable pull of the ${side.name} set is left.`;
    found.push({ outcome: 'too few pulls', sentence });
  }
  return found;
}

/** Which way the pulls of each side go, where that differs. */
function waysOf(
  accepted: readonly [readonly TakenPull[], readonly TakenPull[]],
): readonly [string, string] | undefined {
  const [a, b] = accepted.map((side) => {
    const ways = new Set(side.map(({ grid }) => grid.direction));
    return ways.size > 1 ? 'both ways' : ([...ways][0] ?? '');
  }) as [string, string];
  return a === '' || b === '' || a === b ? undefined : [a, b];
}

/** Mean ramp rate of each side in revolutions per second squared, where every pull has time. */
function rampRatesOf(
  accepted: readonly [readonly TakenPull[], readonly TakenPull[]],
): readonly [number, number] | undefined {
  const [a, b] = accepted.map((side) => {
    const rates = side.map(({ grid }) => rampRate(grid)).filter((rate) => rate !== undefined);
    return rates.length < side.length || rates.length === 0
      ? undefined
      : rates.reduce((sum, rate) => sum + rate, 0) / rates.length;
  });
  return a === undefined || b === undefined ? undefined : [a, b];
}
