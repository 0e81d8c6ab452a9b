import { specificHeatCapacityOfAir } from '../air/constants.js';
import { assumed, calculation, input, output, source } from '../calculation/index.js';
import { CHARGE_CAPACITY_RATE, COOLANT_CAPACITY_RATE, HOT_INLET, HOT_OUTLET, MASS_FLOW } from './bounds.js';

const SOURCES = [source('kaysLondon', 'chapter 2', 'memory'), source('incropera', 'section 11.4', 'memory')];

/**
 * Heat that a charge cooler takes out of the charge, from the charge temperatures across it.
 *
 * Water that condenses gives heat of its own, which is not in here.
 *
 * @function
 * @returns One power. Below zero, with a note, where the charge leaves warmer than it came, as from a heat-soaked core.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * heatRejected({ massFlow: massFlow(200, 'g/s'), hotInlet: temperature(121, '°C'), hotOutlet: temperature(44, '°C') }).in('kW') //=> 15.48
 */
export const heatRejected = calculation({
  name: 'heat rejected by a charge cooler',
  task: 'rate an intercooler',
  inputs: {
    /** Mass flow of charge air. */
    massFlow: input('m', 'mass flow', MASS_FLOW),
    /** Charge temperature into the core. */
    hotInlet: input('T1', 'temperature', HOT_INLET),
    /** Charge temperature out of the core. */
    hotOutlet: input('T2', 'temperature', HOT_OUTLET),
    /** Specific heat capacity of the charge at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', {
      min: 900,
      max: 1300,
      assume: specificHeatCapacityOfAir,
    }),
  },
  output: output('Q', 'power', 'kW'),
  formula: 'm * cp * (T1 - T2)',
  si: (m, T1, T2, cp) => m * cp * (T1 - T2),
  rules: [
    {
      need: 'a charge that leaves no warmer than it came (else the core warms it)',
      holds: (_m, T1, T2) => T2 <= T1,
      otherwise: 'note',
    },
  ],
  rises: ['T1'],
  falls: ['T2'],
  sources: SOURCES,
});

/**
 * Heat capacity rate of a flow: mass flow times specific heat capacity.
 *
 * Leave the specific heat capacity out for air; give it for a liquid (water about 4.18, half glycol about 3.4 kJ/(kg·K)).
 *
 * @function
 * @returns One heat capacity rate.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * capacityRate({ massFlow: massFlow(200, 'g/s') }).in('W/K') //=> 201.0
 */
export const capacityRate = calculation({
  name: 'heat capacity rate',
  task: 'rate an intercooler',
  inputs: {
    /** Mass flow of one side. */
    massFlow: input('m', 'mass flow', MASS_FLOW),
    /** Its specific heat capacity at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', {
      min: 500,
      max: 6000,
      assume: specificHeatCapacityOfAir,
    }),
  },
  output: output('Cr', 'heat capacity rate', 'W/K'),
  formula: 'm * cp',
  si: (m, cp) => m * cp,
  rises: ['m', 'cp'],
  sources: SOURCES,
});

/**
 * Capacity ratio of a core: the smaller of the two heat capacity rates over the larger, whichever side it is on.
 *
 * @function
 * @returns One ratio between 0 and 1. It tends to 0 as one side becomes so strong that its temperature does not change.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * capacityRatio({ chargeCapacityRate: heatCapacityRate(201, 'W/K'), coolantCapacityRate: heatCapacityRate(670, 'W/K') }).in('1') //=> 0.300
 */
export const capacityRatio = calculation({
  name: 'capacity ratio',
  task: 'size an intercooler',
  inputs: {
    /** Mass flow times specific heat capacity of the charge. */
    chargeCapacityRate: input('Ch', 'heat capacity rate', CHARGE_CAPACITY_RATE),
    /** Mass flow times specific heat capacity of the cooling air or liquid. */
    coolantCapacityRate: input('Cc', 'heat capacity rate', COOLANT_CAPACITY_RATE),
  },
  output: output('C', 'ratio', '1'),
  formula: 'min(Ch, Cc) / max(Ch, Cc)',
  si: (Ch, Cc) => Math.min(Ch, Cc) / Math.max(Ch, Cc),
  sources: SOURCES,
});

/**
 * Number of transfer units of a core: its conductance over the smaller of the two heat capacity rates.
 *
 * With {@link capacityRatio} it gives the effectiveness of an arrangement, see {@link effectiveness}.
 *
 * @function
 * @returns One ratio; cores for charge air lie about 1 to 5.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * numberOfTransferUnits({
 *   conductance: thermalConductance(402, 'W/K'),
 *   chargeCapacityRate: heatCapacityRate(201, 'W/K'), coolantCapacityRate: heatCapacityRate(670, 'W/K'),
 * }).in('1') //=> 2.000
 */
export const numberOfTransferUnits = calculation({
  name: 'number of transfer units',
  task: 'size an intercooler',
  inputs: {
    /** Overall conductance of the core, area times overall heat transfer coefficient. */
    conductance: input('UA', 'thermal conductance', { min: 0, max: 1e6, typical: 402 }),
    /** Mass flow times specific heat capacity of the charge. */
    chargeCapacityRate: input('Ch', 'heat capacity rate', CHARGE_CAPACITY_RATE),
    /** Mass flow times specific heat capacity of the cooling air or liquid. */
    coolantCapacityRate: input('Cc', 'heat capacity rate', COOLANT_CAPACITY_RATE),
  },
  output: output('N', 'ratio', '1'),
  formula: 'UA / min(Ch, Cc)',
  si: (UA, Ch, Cc) => UA / Math.min(Ch, Cc),
  rises: ['UA'],
  falls: ['Ch', 'Cc'],
  sources: SOURCES,
});
