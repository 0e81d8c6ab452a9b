import { input } from '../calculation/index.js';
import { COOLANT_INLET, HOT_INLET } from './bounds.js';

const RATE = { min: 0, max: 5e5 };
const UNITS = { min: 0, max: 500 };

/** The two flows through a core and what each exchanges with its wall. */
export const SOAK_FLOWS = {
  /** Charge temperature into the core. */
  hotInlet: input('T1', 'temperature', HOT_INLET),
  /** Mass flow times specific heat capacity of the charge; zero while no charge flows. */
  chargeCapacityRate: input('Ch', 'heat capacity rate', { ...RATE, typical: 202 }),
  /** Conductance between charge and wall over the capacity rate of the charge. */
  chargeTransferUnits: input('Nh', 'ratio', { ...UNITS, typical: 2 }),
  /** Temperature of the cooling air or liquid at the face of the core. */
  coolantInlet: input('Tc', 'temperature', COOLANT_INLET),
  /** Mass flow times specific heat capacity of the cooling air or liquid; zero while none flows. */
  coolantCapacityRate: input('Cc', 'heat capacity rate', { ...RATE, typical: 500 }),
  /** Conductance between wall and coolant over the capacity rate of the coolant. */
  coolantTransferUnits: input('Nc', 'ratio', { ...UNITS, typical: 1 }),
};

/** Heat capacity of the metal of a core, its tanks left out unless they are as cold as the core. */
export const CORE_HEAT_CAPACITY = { min: 10, max: 5e5, typical: 5382 };

/** Temperature of the metal. */
export const WALL = { min: 150, max: 700, typical: 291.15 };

export const DURATION = { min: 0, max: 36000, typical: 10 };
