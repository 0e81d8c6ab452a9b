import type { Column, Quantity } from '../units/index.js';
import type { Installation } from './installation.js';
import type { OperatingPoint } from './point-result.js';

/** One moment of a pull: a point as {@link operatingPoint} solves it, with the core as warm as it is then. */
export interface PullMoment extends OperatingPoint {
  /** That of the row, which may be half a step from the time asked for. */
  readonly time: Quantity<'time'>;
  /** Temperature of the core's metal as the charge meets it. */
  readonly wallTemperature: Quantity<'temperature'>;
  readonly sensorReading: Quantity<'temperature'>;
}

/** A pull in time: every column has a row for each moment. */
export interface PullInTime {
  readonly installation: Installation;
  readonly time: Column<'time'>;
  readonly engineSpeed: Column<'rotational speed'>;
  /** Charge temperature behind the core. */
  readonly coreOutletTemperature: Column<'temperature'>;
  /** Charge temperature in the manifold. */
  readonly chargeTemperature: Column<'temperature'>;
  /** What a sensor in the manifold reads of it. */
  readonly sensorReading: Column<'temperature'>;
  /** Mean temperature of the core's metal. */
  readonly coreTemperature: Column<'temperature'>;
  readonly manifoldPressure: Column<'absolute pressure'>;
  readonly airFlow: Column<'mass flow'>;
  readonly power: Column<'power'>;
  readonly torque: Column<'torque'>;
  /** Heat that the core has taken out of the charge since the beginning. */
  readonly heatFromCharge: Column<'energy'>;
  /** Heat that the cooling air has carried off since then. */
  readonly heatToCoolant: Column<'energy'>;
  /** Heat that stayed in the metal. */
  readonly heatStored: Column<'energy'>;
  /** Temperature of the liquid of the loop; undefined where the core is cooled by air. */
  readonly liquidTemperature: Column<'temperature'> | undefined;
  /**
   * The row nearest to a time as quantities that remember how they were made: every station, compressor, core, engine, for `explain`,
   * `uncertainty` and `compareScenarios` with the same moment of another pull.
   *
   * The metal is as warm as the pull has made it until then: that is a given there, and what inputs did to it is not followed back.
   *
   * @throws CalculationError if the time lies outside the pull.
   */
  at(time: Quantity<'time'>): PullMoment;
  /** As text. */
  toString(): string;
  /** As plain data. */
  toJSON(): object;
}
