import type { KnockComparison } from '../knock/index.js';
import type { Note, Quantity } from '../units/index.js';
import type { OperatingPoint } from './point-result.js';
import type { StationName } from './station.js';

/** What differs at one station: after less before, and densities after over before. */
export interface StationChange {
  readonly name: StationName;
  readonly pressure: Quantity<'pressure difference'>;
  readonly temperature: Quantity<'temperature difference'>;
  readonly humidityRatio: Quantity<'humidity ratio'>;
  readonly density: Quantity<'ratio'>;
  readonly flow: Quantity<'mass flow'>;
}

/** Name of a factor that power is a product of. */
export type PowerFactor =
  | 'charge pressure'
  | 'charge temperature'
  | 'dry share of the charge'
  | 'breathing'
  | 'mixture (fuel per air)'
  | 'spark timing'
  | 'work per fuel'
  | 'compressor drive';

/** What one factor did to the power. */
export interface PowerPart {
  readonly factor: PowerFactor;
  /** The factor after over before; below 1 it took power. */
  readonly ratio: Quantity<'ratio'>;
  /** Its part of the change. The parts add up to the change. */
  readonly part: Quantity<'power'>;
}

/** Two scenarios of one engine at one speed. */
export interface ScenarioComparison {
  readonly before: OperatingPoint;
  readonly after: OperatingPoint;
  readonly stations: readonly StationChange[];
  readonly change: Quantity<'power'>;
  /** Change of dry air flow, after over before. */
  readonly air: Quantity<'ratio'>;
  /** What the boost gauge reads after less before. */
  readonly boost: Quantity<'pressure difference'>;
  /** The change of power by what made it. */
  readonly parts: readonly PowerPart[];
  /**
   * Temperature and breathing together. Colder charge shows a lower volumetric efficiency: density gained, part of it lost in
   * breathing. That is physics, and no fault.
   */
  readonly temperatureWithBreathing: Quantity<'power'>;
  /** Difference in knock margin; only where an octane number was given. */
  readonly knock: KnockComparison | undefined;
  readonly notes: readonly Note[];
  /** As text. */
  toString(): string;
  /** As plain data. */
  toJSON(): object;
}
