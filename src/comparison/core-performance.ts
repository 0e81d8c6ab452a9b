import { mean } from '../calculation/index.js';
import { airSideEffectiveness } from '../intercooler/index.js';
import { CalculationError, type Quantity } from '../units/index.js';
import type { CorePerformance } from './result.js';
import type { TakenPull } from './taken-pull.js';
import { like } from './words.js';

/** Below this distance of hot air and cooling air the effectiveness of a core says nothing: sensor errors govern it. */
const SMALLEST_DISTANCE = 10;

/**
 * What the core of a set-up did over the range, from the air-side temperatures that were logged, one number a pull. Without a sensor at
 * the face of the core the room temperature stands in, and the result is an overall effectiveness of core and room.
 */
export function corePerformance(side: readonly TakenPull[]): CorePerformance | undefined {
  const face = side.every((pull) => pull.grid.channels.faceTemperature) ? 'faceTemperature' : 'roomTemperature';
  const values = side.map(({ grid: { channels } }): Quantity<'ratio'> | undefined => {
    const hotInlet = channels.compressorOutletTemperature;
    const hotOutlet = channels.chargeTemperature;
    const coolantInlet = channels[face];
    if (!hotInlet || !hotOutlet || !coolantInlet) return undefined;
    const far = hotInlet.si.every((si, row) => Number.isNaN(si) || si - coolantInlet.si[row]! > SMALLEST_DISTANCE);
    if (!far) return undefined;
    try {
      return mean(airSideEffectiveness.columns({ hotInlet, hotOutlet, coolantInlet }, { badRows: 'missing' }));
    } catch (error) {
      if (error instanceof CalculationError) return undefined;
      throw error;
    }
  });
  if (values.length === 0 || values.some((value) => value === undefined)) return undefined;
  const si = values.map((value) => value!.si);
  const average = si.reduce((sum, value) => sum + value, 0) / si.length;
  const variance = si.reduce((sum, value) => sum + (value - average) ** 2, 0) / Math.max(1, si.length - 1);
  return {
    effectiveness: like({ kind: 'ratio', unit: '%' }, average),
    scatter: si.length > 1 ? like({ kind: 'ratio', unit: '%' }, Math.sqrt(variance)) : undefined,
    against: face === 'faceTemperature' ? 'air at the core face' : 'room air',
  };
}
