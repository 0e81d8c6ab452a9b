import type { Column } from '../units/index.js';
import type { Installation } from './installation.js';

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
  /** As text. */
  toString(): string;
  /** As plain data. */
  toJSON(): object;
}
