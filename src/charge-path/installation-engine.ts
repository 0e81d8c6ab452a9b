import type { Quantity } from '../units/index.js';

/** The engine as an air pump. Swept volume as such, or from bore, stroke and cylinders. */
export interface Engine {
  readonly sweptVolume?: Quantity<'volume'>;
  readonly bore?: Quantity<'length'>;
  readonly stroke?: Quantity<'length'>;
  readonly cylinders?: Quantity<'ratio'>;
  /** Volumetric efficiency on the density of dry air in the manifold. */
  readonly volumetricEfficiency: Quantity<'ratio'>;
  /** Charge temperature at which that holds. */
  readonly atChargeTemperature: Quantity<'temperature'>;
  /** Exponent of airflow on charge temperature; 1 is density alone. The usual 0.6 when left out. */
  readonly densityExponent?: Quantity<'ratio'>;
  /** 2 for a four-stroke, which is taken when left out. */
  readonly revolutionsPerCycle?: Quantity<'ratio'>;
  /** Without it, exhaust pressure neither hinders breathing nor costs work. */
  readonly exhaust?: Exhaust;
  /** Walls that warm the charge on its way into the cylinder; without a density exponent, that follows from them. */
  readonly walls?: Walls;
  /** Spark away from best torque, as at the knock limit; best torque when left out. */
  readonly spark?: Spark;
}

/** Walls of ports and cylinder. */
export interface Walls {
  readonly temperature: Quantity<'temperature'>;
  /** Share of the way to the wall's temperature that the charge is warmed. */
  readonly heatedShare: Quantity<'ratio'>;
}

/** Spark timing. Never set it by a number from here: detonation destroys engines. */
export interface Spark {
  /** Crank angle between the spark and that of best torque. */
  readonly fromBestTorque: Quantity<'angle'>;
  /** Share of the torque lost at one degree from best. The usual one when left out. */
  readonly sensitivity?: Quantity<'ratio'>;
}

/** Pressure in the exhaust manifold, and what it does to breathing. */
export interface Exhaust {
  /** Exhaust over manifold pressure; with a fixed wastegate opening it comes from the turbine instead. */
  readonly pressureOverManifold?: Quantity<'ratio'>;
  /** The same where the volumetric efficiency was taken. */
  readonly pressureOverManifoldAtReference: Quantity<'ratio'>;
  readonly compressionRatio: Quantity<'ratio'>;
}

/** Mixture, and what the engine makes of its fuel. */
export interface Fuelling {
  readonly stoichiometricAirFuelRatio: Quantity<'air-fuel ratio'>;
  /** Mixture held; fuel follows the air. */
  readonly lambda?: Quantity<'lambda'>;
  /** Fuel held; mixture follows the air. */
  readonly fuelMassFlow?: Quantity<'mass flow'>;
  /** Fuel per work at the crankshaft, before a belt-driven compressor takes its part. */
  readonly specificFuelConsumption?: Quantity<'specific fuel consumption'>;
  /** Or the work on the pistons over the heat of the fuel, with friction. */
  readonly indicated?: {
    readonly efficiency: Quantity<'ratio'>;
    readonly lowerHeatingValue: Quantity<'specific energy'>;
    /** Friction mean effective pressure without pumping. */
    readonly frictionPressure: Quantity<'mean effective pressure'>;
  };
}
