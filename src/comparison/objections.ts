import type { Channels, Pull, SetUp } from '../sweep/index.js';
import { rotationalSpeed, type Quantity } from '../units/index.js';
import { barometerObjections } from './barometer-challenge.js';
import { correctionObjections } from './correction-challenge.js';
import { fairnessOf } from './fairness.js';
import { meanPressureSuspicions } from './mean-pressure.js';
import type { Objection } from './objection.js';
import type { ResolvedOptions } from './options.js';
import type { ComparedQuantity, FairnessCheck, SideResult } from './result.js';
import type { TakenPull } from './taken-pull.js';
import { speedRange } from './words.js';
import { unitSuspicions } from './unit-challenge.js';
import { wheelTorqueObjections } from './wheel-torque.js';

/** Where no pull of a side has a value anywhere in the range, what its pulls run through. */
function notCovered({ pulls, mean }: SideResult, setUp: SetUp, [from, to]: ObjectionInputs['range']): string {
  if (pulls.length === 0 || mean.missing < mean.length || pulls.some(({ curve }) => curve.missing < curve.length))
    return '';
  const speeds = setUp.pulls
    .flatMap(({ channels }) => Array.from(channels.engineSpeed?.si ?? []))
    .filter((si) => !Number.isNaN(si));
  const [low, high] = [Math.min, Math.max].map((pick) =>
    rotationalSpeed(
      speeds.reduce((a, b) => pick(a, b)),
      '1/s',
    ),
  );
  return `: none covers ${speedRange(from, to)}, they run from ${speedRange(low!, high!)}`;
}

const MENDS: Partial<Readonly<Record<FairnessCheck['what'], string>>> = {
  mixture: 'Hold the mixture equal on both sides and repeat.',
  'boost control': 'Control boost the same way on both sides and repeat.',
  'direction of the pulls': 'Compare pulls that go the same way.',
  'ramp rate': 'Hold the ramp rate equal on both sides and repeat.',
};

/** What objections are looked for in. */
export interface ObjectionInputs {
  readonly accepted: readonly [TakenPull[], TakenPull[]];
  readonly sides: readonly [SideResult, SideResult];
  readonly setUps: readonly [SetUp, SetUp];
  readonly range: readonly [from: Quantity<'rotational speed'>, to: Quantity<'rotational speed'>];
  readonly compared: ComparedQuantity;
  /** Seconds at which a pull began, over days, where clocks tell. */
  readonly when: (pull: Pull) => number | undefined;
}

/** What stands before any verdict, in order of precedence. */
export function objectionsOf(
  { accepted, sides: [a, b], setUps, range, compared, when }: ObjectionInputs,
  options: ResolvedOptions,
): Objection[] {
  const names = [a.name, b.name] as const;
  const found: Objection[] = fairnessOf(accepted, names, undefined, options).flatMap(({ what, stops, sentence }) =>
    stops ? [{ outcome: 'cannot be compared' as const, sentence, mend: MENDS[what] ?? '' }] : [],
  );
  const channels = (side: readonly TakenPull[]): Channels[] => side.map((pull) => pull.grid.channels);
  const made = accepted.flat().some(({ grid }) => grid.powerFrom === 'torque and engine speed');
  const challenge = { powerFromTorque: made, largestChange: options.limits.changeBetweenSetUps };
  for (const { sentence, otherwise } of unitSuspicions(channels(accepted[0]), channels(accepted[1]), challenge)) {
    found.push({
      outcome: 'unit suspected',
      sentence: `Before judging: ${sentence.charAt(0).toLowerCase()}${sentence.slice(1)} Check the units of both.`,
      mend: `Say the unit of the column in question, for example torque: channel('Torque', 'torque', 'N·m').${otherwise === undefined ? '' : ` ${otherwise}`}`,
    });
  }
  found.push(
    ...meanPressureSuspicions(accepted, names, options).map((sentence) => ({
      outcome: 'unit suspected' as const,
      sentence: `Before judging: ${sentence}`,
      mend: 'Say the unit of torque, where it was measured and the overall ratio from there to the crank, or mend the swept volume.',
    })),
  );
  found.push(
    ...wheelTorqueObjections(accepted, compared, options),
    ...correctionObjections(accepted, names, compared, options),
    ...barometerObjections(accepted, names, when, options),
  );
  for (const [i, side] of [a, b].entries()) {
    const usable = side.pulls.filter((pull) => pull.accepted).length;
    if (usable >= 2) continue;
    const sentence =
      usable === 1
        ? `One usable pull of the ${side.name} set is left, and one pull has no scatter: it cannot tell a change from luck.`
        : `No usable pull of the ${side.name} set is left${notCovered(side, setUps[i]!, range)}.`;
    found.push({ outcome: 'too few pulls', sentence });
  }
  return found;
}
