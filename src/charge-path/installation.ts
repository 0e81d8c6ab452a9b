import type { CompressorMap } from '../compressor/index.js';
import type { Quantity } from '../units/index.js';
import type { Arrangement } from './arrangements.js';

/**
 * An installation as plain data: what stands between the weather and the crank, in the order the charge meets it. Every value is a
 * quantity; give those that were measured with `measured` and the results carry their uncertainty.
 */
export interface Installation {
  readonly ambient: Ambient;
  /** Filter, hoses and whatever warms the air before the compressor. Nothing when left out. */
  readonly inlet?: Passage;
  readonly compressor: Compressor;
  readonly core: Core;
  readonly cooling: AirCooling | LiquidCooling;
  /** From the core to the manifold, throttle included. Nothing when left out. */
  readonly duct?: Passage;
  readonly engine: Engine;
  readonly fuelling: Fuelling;
  readonly boost: BoostControl;
  /** Where the boost gauge sits; it reads over the room's pressure. The manifold when left out. */
  readonly gaugeAt?: 'compressor outlet' | 'manifold';
}

/** The air of the room or the road. Humidity in one of two ways. */
export interface Ambient {
  /** The barometer at the place, not reduced to sea level. */
  readonly pressure: Quantity<'absolute pressure'>;
  readonly temperature: Quantity<'temperature'>;
  readonly relativeHumidity?: Quantity<'relative humidity'>;
  readonly humidityRatio?: Quantity<'humidity ratio'>;
}

/** A length of pipe: what pressure it costs and what heat it adds. */
export interface Passage {
  /** Loss of pressure; the same at any flow unless a flow is given with it. */
  readonly loss?: Quantity<'pressure difference'>;
  /** Flow of humid air at which that loss was measured; then it grows with the square of the flow. */
  readonly lossAtFlow?: Quantity<'mass flow'>;
  /** Rise of temperature on the way. */
  readonly heating?: Quantity<'temperature difference'>;
}

/** A compressor: of one efficiency, or with the map of its own. */
export interface Compressor {
  readonly isentropicEfficiency?: Quantity<'ratio'>;
  /** Made by `compressorMap`. A point that it does not hold is refused. */
  readonly map?: CompressorMap;
  /** Power put into the air over power at the shaft. 1 when left out. */
  readonly mechanicalEfficiency?: Quantity<'ratio'>;
  /** What turns it. A belt takes its power from the crankshaft. The exhaust when left out. */
  readonly drivenBy?: 'exhaust' | 'crankshaft';
}

/** A charge cooler: its size by the conductance of each side, and its pressure loss. */
export interface Core {
  readonly arrangement: Arrangement;
  /** Passes in overall counterflow; one when left out. */
  readonly passes?: Quantity<'ratio'>;
  readonly charge: CoreSide;
  readonly coolant: CoreSide;
  /** One measured pressure loss of the charge side. */
  readonly loss: CoreLoss;
  /** Heat capacity of the core, for pulls in time. */
  readonly heatCapacity?: Quantity<'heat capacity'>;
}

/** One side of a core. */
export interface CoreSide {
  /** Conductance between the wall and the flow, at its rated flow. */
  readonly conductance: Quantity<'thermal conductance'>;
  readonly atFlow: Quantity<'mass flow'>;
  /** How the conductance grows with the flow; about 0.5 to 0.6 for fins, 0.8 for plain passages. */
  readonly exponent: Quantity<'ratio'>;
}

/** One measured loss, and how it scales. */
export interface CoreLoss {
  readonly pressure: Quantity<'pressure difference'>;
  readonly atFlow: Quantity<'mass flow'>;
  /** Mean density over the core where it was measured. */
  readonly atDensity: Quantity<'density'>;
  /** 1.7 to 2; 1.8 when left out. */
  readonly exponent?: Quantity<'ratio'>;
}

/** Air that blows through the core. */
export interface AirCooling {
  readonly by: 'air';
  readonly massFlow: Quantity<'mass flow'>;
  /** Temperature of the air before anything on its way to the core; the room's when left out. */
  readonly temperature?: Quantity<'temperature'>;
  /** Heat that the air takes up on its way to the face: a radiator in front, the fan's own. */
  readonly upstreamHeat?: Quantity<'power'>;
  /** Coolant sprayed into the air before the face. */
  readonly spray?: Spray;
  readonly specificHeatCapacity?: Quantity<'specific heat capacity'>;
}

/**
 * A coolant spray. Pressurised CO2, frost and air without oxygen hurt people: see the cautions of `sprayCapacity`, and local rules.
 */
export interface Spray {
  readonly flow: Quantity<'mass flow'>;
  /** Cold per mass of coolant, from `sprayCapacity`. */
  readonly capacity: Quantity<'specific energy'>;
  /** Share of that cold that the air takes up before the face. What is assumed when left out is wide. */
  readonly captureEfficiency?: Quantity<'ratio'>;
}

/** A liquid between the core and a radiator of its own. The core's coolant side is the liquid. */
export interface LiquidCooling {
  readonly by: 'liquid';
  readonly liquidFlow: Quantity<'mass flow'>;
  readonly liquidHeatCapacity: Quantity<'specific heat capacity'>;
  /** The radiator of the loop; its charge side is the liquid, its coolant side the air. */
  readonly radiator: {
    readonly arrangement: Arrangement;
    readonly passes?: Quantity<'ratio'>;
    readonly liquid: CoreSide;
    readonly air: CoreSide;
  };
  readonly air: Omit<AirCooling, 'by'>;
}

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

/** What decides the boost. */
export type BoostControl =
  | Spring
  | ClosedLoopAbsolute
  | ClosedLoopGauge
  | FixedSpeed
  | FixedSpeedOnMap
  | DisplacementBlower
  | FixedWastegate
  | HeldTorque;

/** A wastegate spring: it holds a gauge pressure where it senses. */
export interface Spring {
  readonly by: 'spring';
  readonly senses: 'compressor outlet' | 'manifold';
  readonly gaugePressure: Quantity<'gauge pressure'>;
  /** How much more boost stands for each 1 % of dry air beyond `atFlow`. */
  readonly droop?: { readonly perPercentAir: Quantity<'pressure difference'>; readonly atFlow: Quantity<'mass flow'> };
}

/** An electronic control that holds an absolute manifold pressure. */
export interface ClosedLoopAbsolute {
  readonly by: 'closed loop, absolute';
  readonly manifoldPressure: Quantity<'absolute pressure'>;
}

/** An electronic control that holds a manifold pressure over the room's. */
export interface ClosedLoopGauge {
  readonly by: 'closed loop, gauge';
  readonly manifoldPressure: Quantity<'gauge pressure'>;
}

/** A compressor at one speed, on a belt or held by a governor: pressure falls as flow grows along its line on the map. */
export interface FixedSpeedOnMap {
  readonly by: 'fixed compressor speed on its map';
  /** Speed of the wheel. */
  readonly speed?: Quantity<'rotational speed'>;
  /** Or turns of the wheel for one of the engine. */
  readonly driveRatio?: Quantity<'ratio'>;
}

/** The same without a map: a straight line through one point. */
export interface FixedSpeed {
  readonly by: 'fixed compressor speed';
  /** A point of the speed line. */
  readonly flowAtPoint: Quantity<'mass flow'>;
  readonly ratioAtPoint: Quantity<'ratio'>;
  /** Inlet temperature at which that line holds: in colder air the same speed makes more. */
  readonly atInletTemperature: Quantity<'temperature'>;
  /** The corrected flow that would take a whole unit of pressure ratio: small on a steep line. */
  readonly fallPerFlow: Quantity<'mass flow'>;
  /** Reference state of the corrected flow. */
  readonly referenceTemperature: Quantity<'temperature'>;
  readonly referencePressure: Quantity<'absolute pressure'>;
}

/** A displacement blower on a belt: so much air a turn, whatever the engine makes of it. */
export interface DisplacementBlower {
  readonly by: 'displacement blower';
  readonly volumePerRevolution: Quantity<'volume'>;
  /** Turns of the blower for one of the engine. */
  readonly driveRatio: Quantity<'ratio'>;
  readonly volumetricEfficiencyUnloaded: Quantity<'ratio'>;
  /** Volumetric efficiency lost for each unit of pressure ratio above 1. */
  readonly slip: Quantity<'ratio'>;
}

/** A turbine whose wastegate stands still: more air makes more boost makes more air. */
export interface FixedWastegate {
  readonly by: 'fixed wastegate';
  readonly turbineArea: Quantity<'area'>;
  readonly wastegateArea: Quantity<'area'>;
  readonly turbineEfficiency: Quantity<'ratio'>;
  readonly exhaustTemperature: Quantity<'temperature'>;
  /** Pressure of the exhaust system behind the turbine, over the room's. */
  readonly exhaustLoss: Quantity<'pressure difference'>;
}

/** A control that holds the torque and lets boost be what it must. */
export interface HeldTorque {
  readonly by: 'held torque';
  readonly torque: Quantity<'torque'>;
}
