import type { UnitPreferences } from '../units/index.js';
import { roleWords, type ChannelRole, type Pull } from '../sweep/index.js';
import { outliersIn, type Outlier } from '../sweep/channel-quality.js';
import { timeBaseOf } from '../sweep/time-base.js';
import type { ResolvedOptions } from './options.js';
import type { ComparedQuantity, Comparison } from './result.js';
import type { TakenPull } from './taken-pull.js';
import type { SharedGrid } from './shared-grid.js';
import { betweenSigned, counted, listed, signed } from './words.js';

/** Readings of one pull that jump away and back: within the range that is compared, those of pressure and engine speed anywhere. */
export interface PullOutliers {
  /** `set-up, pull`. */
  readonly pull: string;
  readonly outliers: readonly Outlier[];
}

/** What the reasons and the acceptance of pulls are told by, beside the compared quantity. */
const REASONS: readonly ChannelRole[] = ['boost', 'manifoldPressure', 'chargeTemperature', 'lambda', 'airFlow'];

function bearing(compared: ComparedQuantity, { channels }: Pull): ChannelRole[] {
  const load: ChannelRole = compared === 'power' && channels.power !== undefined ? 'power' : 'torque';
  return ['engineSpeed', ...(compared.startsWith('air') ? [] : [load]), ...REASONS];
}

/** What settles where the range begins or where a reading belongs counts over the whole pull, the rest within the range. */
const WHOLE_PULL: readonly ChannelRole[] = ['engineSpeed', 'boost', 'manifoldPressure'];

/** The outliers of a pull in the channels that bear on the answer and its reasons. */
export function pullOutliers(
  pull: Pull,
  compared: ComparedQuantity,
  { from, to, bandwidth }: Pick<SharedGrid, 'from' | 'to' | 'bandwidth'>,
  { prepare }: ResolvedOptions,
): readonly Outlier[] {
  if (prepare?.outliers === 'missing') return [];
  const [low, high] = [from.si - bandwidth.si / 2, to.si + bandwidth.si / 2];
  const roles = bearing(compared, pull);
  return outliersIn(pull, timeBaseOf(pull.channels), roles, prepare?.outlierOptions ?? {}).filter(
    ({ role, engineSpeed }) =>
      WHOLE_PULL.includes(role) || engineSpeed === undefined || (engineSpeed.si >= low && engineSpeed.si <= high),
  );
}

/** Accepted pulls that have outliers. */
export function withOutliers(
  accepted: readonly [readonly TakenPull[], readonly TakenPull[]],
  names: readonly [string, string],
): PullOutliers[] {
  return accepted.flatMap((side, i) =>
    side.flatMap(({ outliers, result }) =>
      outliers.length > 0 ? [{ pull: `${names[i]}, ${result.name}`, outliers }] : [],
    ),
  );
}

/** What outliers there are, and the answer with them taken out beside the one with them in: both, so that neither is chosen silently. */
export function outlierLines(
  pulls: readonly PullOutliers[],
  answer: Pick<Comparison, 'outcome' | 'overall'>,
  cleaned: Comparison | undefined,
  units: UnitPreferences,
): string[] {
  if (pulls.length === 0 || cleaned === undefined) return [];
  const each = pulls.map(({ pull, outliers }) => {
    const byRole = new Map<string, number>();
    for (const { role, fromRow, toRow } of outliers) {
      byRole.set(roleWords(role), (byRole.get(roleWords(role)) ?? 0) + toRow - fromRow + 1);
    }
    return `${listed([...byRole].map(([role, rows]) => `${rows} of ${role}`))} in ${pull}`;
  });
  const count = pulls.flatMap(({ outliers }) => outliers).reduce((sum, one) => sum + one.toRow - one.fromRow + 1, 0);
  const verb =
    count === 1
      ? 'jumps away from its neighbours and back, and counts as it stands'
      : 'jump away from their neighbours and back, and count as they stand';
  const them = count === 1 ? 'it' : 'them';
  return [
    `${counted(count, 'reading')} ${verb}: ${each.join('; ')}. With ${them} taken out, ${withoutThem(answer, cleaned, units)} prepare: { outliers: 'missing' } takes ${them} out.`,
  ];
}

function withoutThem(
  answer: Pick<Comparison, 'outcome' | 'overall'>,
  cleaned: Comparison,
  units: UnitPreferences,
): string {
  if (cleaned.outcome !== answer.outcome || !cleaned.overall) return `the answer is another: ${cleaned.headline}`;
  const { value, low, high } = cleaned.overall;
  return `the difference is ${signed(value, units)}, between ${betweenSigned(low, high, units)}.`;
}

/** Whether a suspicion of units went away with the outliers. */
export function isFromOutliers(cleaned: Comparison | undefined): boolean {
  return cleaned !== undefined && !cleaned.objections.some((sentence) => sentence.startsWith('Before judging:'));
}
