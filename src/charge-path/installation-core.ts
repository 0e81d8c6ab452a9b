import type { Quantity } from '../units/index.js';
import type { Arrangement } from './arrangements.js';

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
  /** Share, by mass, of this air that has been through the core already and comes round to its face again. None when left out. */
  readonly recirculatedShare?: Quantity<'ratio'>;
  readonly specificHeatCapacity?: Quantity<'specific heat capacity'>;
}

/** A coolant spray. */
export type Spray = GasSpray | WaterSpray;

/**
 * A spray of liquefied gas, such as carbon dioxide or nitrous oxide. Pressurised gas, frost and air without oxygen hurt people: see the
 * cautions of `sprayCapacity`, which follow every result, and local rules.
 */
export interface GasSpray {
  readonly coolant?: undefined;
  readonly flow: Quantity<'mass flow'>;
  /** Cold per mass of coolant, from `sprayCapacity`. */
  readonly capacity: Quantity<'specific energy'>;
  /** Share of that cold that the air takes up before the face. What is assumed when left out is wide. */
  readonly captureEfficiency?: Quantity<'ratio'>;
}

/** A spray of water: it cools the air no further than its wet bulb, and no more evaporates than saturates it. */
export interface WaterSpray {
  readonly coolant: 'water';
  readonly flow: Quantity<'mass flow'>;
  /** Share of the water that evaporates before the face if the air can take it. What is assumed when left out is wide. */
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
  /** Heat capacity of the liquid with tank, hoses and radiator, for pulls in time; 5 L of water alone have 21 kJ/K. */
  readonly heatCapacity?: Quantity<'heat capacity'>;
}
