import type { Channels } from '../sweep/index.js';
import { meanSi } from './factors.js';
import type { ResolvedOptions } from './options.js';
import type { Outcome, SideResult } from './result.js';
import type { TakenPull } from './taken-pulls.js';
import { unitSuspicions } from './unit-challenge.js';
import { decimals, pullsOf } from './words.js';

/** Something that stands before any verdict. */
export interface Objection {
  readonly outcome: Outcome;
  readonly sentence: string;
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
    });
  }
  const channels = (side: readonly TakenPull[]): Channels[] => side.map((pull) => pull.grid.channels);
  for (const { sentence } of unitSuspicions(channels(accepted[0]), channels(accepted[1]))) {
    found.push({
      outcome: 'unit suspected',
      sentence: `Before judging: ${sentence.charAt(0).toLowerCase()}${sentence.slice(1)} Check the units of both.`,
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
