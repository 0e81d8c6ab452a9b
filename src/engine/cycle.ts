import { constant, source } from '../calculation/index.js';
import { ratio } from '../units/index.js';

/** Revolutions per cycle of a four-stroke engine: what engine calculations assume. */
export const fourStroke = constant('engine/revolutions-per-cycle-four-stroke', ratio(2), {
  label: 'revolutions per cycle, four-stroke',
  source: source('heywood', 'section 2.7', 'memory'),
});

/**
 * Revolutions per cycle of a two-stroke engine.
 *
 * @example
 * brakeMeanEffectivePressure({
 *   torque: torque(400, 'N·m'),
 *   sweptVolume: volume(2, 'L'),
 *   revolutionsPerCycle: twoStroke,
 * }).in('kPa') //=> 1256.64
 */
export const twoStroke = constant('engine/revolutions-per-cycle-two-stroke', ratio(1), {
  label: 'revolutions per cycle, two-stroke',
  source: source('heywood', 'section 2.7', 'memory'),
});

/** The condition on the revolutions per cycle, for the calculation that has them at a position among its inputs. */
export function wholeCycles(position: number): {
  readonly need: string;
  readonly holds: (...si: number[]) => boolean;
  readonly otherwise: 'note';
} {
  return {
    need: 'revolutionsPerCycle of 2 (four-stroke) or 1 (two-stroke)',
    holds: (...si) => si[position] === 2 || si[position] === 1,
    otherwise: 'note',
  };
}
