import { mean } from '../calculation/index.js';
import { airSideEffectiveness } from '../intercooler/index.js';
import { CalculationError, type Column, type Kind } from '../units/index.js';
import { columnOf, NO_NOTES } from '../units/internal.js';
import type { CoreFigure, CorePerformance } from './result.js';
import type { TakenPull } from './taken-pull.js';
import { like } from './words.js';

/** Below this distance of hot air and cooling air the effectiveness of a core says nothing: sensor errors govern it. */
const SMALLEST_DISTANCE = 10;

type GridChannels = TakenPull['grid']['channels'];

/**
 * What the core of a set-up did over the range, from the temperatures and pressures that were logged before and behind it, one number a
 * pull and the mean of the pulls at each engine speed. Without a sensor at the face of the core the room temperature stands in, and the
 * result is an overall effectiveness of core and room.
 */
export function corePerformance(side: readonly TakenPull[]): CorePerformance | undefined {
  const channels = side.map(({ grid }) => grid.channels);
  const face = channels.every((one) => one.faceTemperature) ? 'faceTemperature' : 'roomTemperature';
  const effectiveness = figureOf(channels.map((one) => effectivenessIn(one, face)));
  const loss = figureOf(channels.map(lossIn));
  if (!effectiveness && !loss) return undefined;
  return {
    effectiveness,
    against: face === 'faceTemperature' ? 'air at the core face' : 'room air',
    pressureLoss: loss,
  };
}

function effectivenessIn(
  { compressorOutletTemperature: hotInlet, chargeTemperature: hotOutlet, ...channels }: GridChannels,
  face: 'faceTemperature' | 'roomTemperature',
): Column<'ratio'> | undefined {
  const coolantInlet = channels[face];
  if (!hotInlet || !hotOutlet || !coolantInlet) return undefined;
  const isFar = hotInlet.si.every((si, row) => Number.isNaN(si) || si - coolantInlet.si[row]! > SMALLEST_DISTANCE);
  if (!isFar) return undefined;
  return orNothing(() => airSideEffectiveness.columns({ hotInlet, hotOutlet, coolantInlet }, { badRows: 'missing' }));
}

/** From the compressor's outlet to the manifold: core, ducts and throttle together. */
function lossIn({
  compressorOutletPressure: before,
  manifoldPressure,
  boost,
  barometer,
}: GridChannels): Column<'pressure difference'> | undefined {
  const behind = boost?.si ?? (barometer && manifoldPressure?.si.map((pressure, row) => pressure - barometer.si[row]!));
  if (!before || !behind) return undefined;
  const loss = before.si.map((pressure, row) => pressure - behind[row]!);
  return columnOf('pressure difference', loss, 'kPa', undefined, NO_NOTES, 0);
}

/** Readings that no core can have give no figure of it. */
function orNothing<T>(make: () => T): T | undefined {
  try {
    return make();
  } catch (error) {
    if (error instanceof CalculationError) return undefined;
    throw error;
  }
}

/** One number a pull, and the mean over the pulls at each speed; nothing where a pull has none. */
function figureOf<K extends Kind>(curves: readonly (Column<K> | undefined)[]): CoreFigure<K> | undefined {
  const all = curves.flatMap((curve) => (curve && curve.missing < curve.length ? [curve] : []));
  const [first] = all;
  if (!first || all.length < curves.length) return undefined;
  const means = all.map((curve) => mean(curve).si);
  const average = averageOf(means);
  const variance = means.reduce((sum, value) => sum + (value - average) ** 2, 0) / Math.max(1, means.length - 1);
  const bySpeed = first.si.map((_, row) => averageOf(all.map((curve) => curve.si[row]!)));
  return {
    mean: like(first, average),
    scatter: means.length > 1 ? like(first, Math.sqrt(variance)) : undefined,
    bySpeed: columnOf(first.kind, bySpeed, first.unit, undefined, NO_NOTES, 0),
  };
}

function averageOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
