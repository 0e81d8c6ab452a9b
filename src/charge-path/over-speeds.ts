import { CalculationError } from '../calculation/index.js';
import { refusal } from '../calculation/refusal.js';
import { columnOf, describe, NO_NOTES } from '../units/internal.js';
import type { Column, Kind, Quantity } from '../units/index.js';
import type { Installation } from './installation.js';
import { pointNear } from './operating-point.js';
import type { OperatingPoint } from './point-result.js';
import { NoSteadyPoint } from './refusal.js';
import { tableText } from '../calculation/table.js';
import type { Unknowns } from './walked.js';

/** A speed at which there is no steady point. */
export interface RefusedSpeed {
  readonly engineSpeed: Quantity<'rotational speed'>;
  readonly error: NoSteadyPoint;
}

/** Steady points over engine speeds. */
export interface SpeedSweep {
  /** The points there are, in the order of the speeds given. */
  readonly points: readonly OperatingPoint[];
  /** The speeds that have none, and why. */
  readonly refused: readonly RefusedSpeed[];
  /** One result of every point as a column. */
  column<K extends Kind>(of: (point: OperatingPoint) => Quantity<K>): Column<K>;
  /** As text. */
  toString(): string;
  /** As plain data. */
  toJSON(): object;
}

/**
 * Steady points of an installation over engine speeds. What changes with speed, such as volumetric efficiency, boost or road speed,
 * comes from a function that makes the installation of each speed.
 *
 * @returns The points; speeds without one are listed with the reason instead of ending the sweep.
 * @throws CalculationError if an installation is not fully said or impossible.
 * @example
 * const sweep = overSpeeds(hillClimbSpecial, [3000, 4500, 6000].map((rpm) => rotationalSpeed(rpm, 'rpm')));
 * sweep.column(({ power }) => power).in('kW')
 */
export function overSpeeds(
  installation: Installation | ((engineSpeed: Quantity<'rotational speed'>) => Installation),
  engineSpeeds: readonly Quantity<'rotational speed'>[],
): SpeedSweep {
  const given: unknown = engineSpeeds;
  if (!Array.isArray(given) || given.length === 0)
    throw refusal('over speeds', 'missing', 'engineSpeeds', 'a list of engine speeds', describe(given));
  const points: OperatingPoint[] = [];
  const refused: RefusedSpeed[] = [];
  let near: Unknowns<number> | undefined;
  for (const engineSpeed of engineSpeeds) {
    try {
      const solved = pointNear(
        typeof installation === 'function' ? installation(engineSpeed) : installation,
        engineSpeed,
        near,
      );
      points.push(solved.point);
      near = solved.found;
    } catch (error) {
      if (!(error instanceof NoSteadyPoint)) throw error;
      refused.push({ engineSpeed, error });
    }
  }
  return new Sweep(points, refused);
}

class Sweep implements SpeedSweep {
  readonly points: readonly OperatingPoint[];
  readonly refused: readonly RefusedSpeed[];

  constructor(points: readonly OperatingPoint[], refused: readonly RefusedSpeed[]) {
    this.points = points;
    this.refused = refused;
  }

  column<K extends Kind>(of: (point: OperatingPoint) => Quantity<K>): Column<K> {
    const values = this.points.map(of);
    const [first] = values;
    if (!first) {
      const reason = this.refused[0]?.error.message ?? '';
      throw new CalculationError('over speeds', [
        { code: 'no answer', input: '', need: 'a sweep with at least one steady point', got: 'none', mend: reason },
      ]);
    }
    return columnOf(
      first.kind,
      Float64Array.from(values, ({ si }) => si),
      first.unit,
      undefined,
      NO_NOTES,
      0,
    );
  }

  toString(): string {
    return tableText({
      caption: `Operating points over ${this.points.length} engine speeds`,
      columns: ['rpm', 'boost kPa', 'charge °C', 'air g/s', 'N·m', 'kW'].map((head) => ({ head, align: 'right' })),
      rows: this.points.map((point) => [
        point.engineSpeed.in('rpm').toFixed(0),
        point.boostReading.in('kPa').toFixed(1),
        point.stations.manifold.temperature.in('°C').toFixed(1),
        point.airFlow.in('g/s').toFixed(1),
        point.torque.in('N·m').toFixed(1),
        point.power.in('kW').toFixed(1),
      ]),
      remarks: this.refused.map(
        ({ engineSpeed, error }) => `${engineSpeed.in('rpm').toFixed(0)} rpm: ${error.message}`,
      ),
    });
  }

  toJSON(): object {
    return {
      points: this.points,
      refused: this.refused.map(({ engineSpeed, error }) => ({ engineSpeed, reason: error.reason })),
    };
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}
