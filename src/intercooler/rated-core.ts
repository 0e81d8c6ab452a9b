import type { Quantity, QuantityRecord } from '../units/index.js';
import type { SideGeometry } from './core-geometry.js';
import type { RatedSide } from './core-side.js';

/** Results of a rating, without their text forms. */
export interface RatedCoreResults {
  /** Name of the core. */
  readonly name: string;
  /** Charge temperature out of the core. */
  readonly chargeOutlet: Quantity<'temperature'>;
  /** Coolant temperature out of the core. */
  readonly coolantOutlet: Quantity<'temperature'>;
  /** Heat from charge to coolant. */
  readonly heat: Quantity<'power'>;
  /** True effectiveness: of the most that any core could exchange between these flows. */
  readonly effectiveness: Quantity<'ratio'>;
  /** Air-side effectiveness: how far the charge comes toward the coolant. */
  readonly airSideEffectiveness: Quantity<'ratio'>;
  /** Overall conductance (UA). */
  readonly conductance: Quantity<'thermal conductance'>;
  readonly transferUnits: Quantity<'ratio'>;
  readonly capacityRatio: Quantity<'ratio'>;
  /** Pressure loss of the charge in the passages, without tanks. */
  readonly chargePressureLoss: Quantity<'pressure difference'>;
  readonly chargeOutletPressure: Quantity<'absolute pressure'>;
  /** Pressure loss of the coolant in the passages. */
  readonly coolantPressureLoss: Quantity<'pressure difference'>;
  readonly charge: RatedSide;
  readonly coolant: RatedSide;
  readonly chargeGeometry: SideGeometry;
  readonly coolantGeometry: SideGeometry;
}

/** What a core does with given flows. */
export interface RatedCore extends RatedCoreResults {
  /** The main results in words. */
  toString(): string;
  /** The main results as records. */
  toJSON(): Readonly<Record<string, QuantityRecord>>;
}

const MAIN = [
  ['chargeOutlet', 'charge out'],
  ['coolantOutlet', 'coolant out'],
  ['heat', 'heat'],
  ['effectiveness', 'true effectiveness'],
  ['airSideEffectiveness', 'air-side effectiveness'],
  ['conductance', 'conductance'],
  ['transferUnits', 'transfer units'],
  ['capacityRatio', 'capacity ratio'],
  ['chargePressureLoss', 'charge pressure loss'],
  ['coolantPressureLoss', 'coolant pressure loss'],
] as const;

export class RatedCoreValue implements RatedCore {
  declare readonly name: string;
  declare readonly chargeOutlet: Quantity<'temperature'>;
  declare readonly coolantOutlet: Quantity<'temperature'>;
  declare readonly heat: Quantity<'power'>;
  declare readonly effectiveness: Quantity<'ratio'>;
  declare readonly airSideEffectiveness: Quantity<'ratio'>;
  declare readonly conductance: Quantity<'thermal conductance'>;
  declare readonly transferUnits: Quantity<'ratio'>;
  declare readonly capacityRatio: Quantity<'ratio'>;
  declare readonly chargePressureLoss: Quantity<'pressure difference'>;
  declare readonly chargeOutletPressure: Quantity<'absolute pressure'>;
  declare readonly coolantPressureLoss: Quantity<'pressure difference'>;
  declare readonly charge: RatedSide;
  declare readonly coolant: RatedSide;
  declare readonly chargeGeometry: SideGeometry;
  declare readonly coolantGeometry: SideGeometry;

  constructor(results: RatedCoreResults) {
    Object.assign(this, results);
  }

  toString(): string {
    const results = MAIN.map(([name, words]) => `${words} ${String(this[name])}`);
    return `${this.name}: ${results.join(', ')}`;
  }

  toJSON(): Readonly<Record<string, QuantityRecord>> {
    return Object.fromEntries(MAIN.map(([name]) => [name, this[name].toJSON()]));
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}
