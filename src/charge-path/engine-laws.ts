import { assumed, calculation, input, output, source } from '../calculation/index.js';
import { fourStroke } from '../engine/index.js';

/**
 * Power from a flow of fuel and what the engine makes of it.
 *
 * @function
 * @returns One power, of whatever shaft the specific fuel consumption was measured at.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * powerFromFuelFlow({ fuelMassFlow: massFlow(14.03, 'g/s'), specificFuelConsumption: specificFuelConsumption(310, 'g/kWh') }).in('kW') //=> 162.929
 */
export const powerFromFuelFlow = calculation({
  name: 'power from fuel flow',
  task: 'follow the charge',
  inputs: {
    /** Mass flow of fuel. */
    fuelMassFlow: input('mdot_f', 'mass flow', { min: 0, max: 10, typical: 0.014 }),
    /** Fuel per work at the shaft. */
    specificFuelConsumption: input('bsfc', 'specific fuel consumption', { min: 5e-9, max: 1e-6, typical: 8.6e-8 }),
  },
  output: output('P', 'power', 'kW'),
  formula: 'mdot_f / bsfc',
  si: (fuel, bsfc) => fuel / bsfc,
  rises: ['mdot_f'],
  falls: ['bsfc'],
  sources: [source('heywood', 'equation 2.22', 'memory')],
});

/**
 * Indicated mean effective pressure, from the fuel burned and the share of its heat that works on the pistons.
 *
 * @function
 * @returns One mean effective pressure, of compression and expansion alone.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * indicatedMeanEffectivePressure({
 *   fuelMassFlow: massFlow(14.03, 'g/s'), lowerHeatingValue: specificEnergy(43.44, 'MJ/kg'), indicatedEfficiency: percent(31.5),
 *   sweptVolume: volume(1799.43, 'cm³'), engineSpeed: rotationalSpeed(6000, 'rpm'),
 * }).in('bar') //=> 21.338
 */
export const indicatedMeanEffectivePressure = calculation({
  name: 'indicated mean effective pressure from fuel',
  task: 'follow the charge',
  inputs: {
    /** Mass flow of fuel. */
    fuelMassFlow: input('mdot_f', 'mass flow', { min: 0, max: 10, typical: 0.014 }),
    /** Lower heating value of the fuel. */
    lowerHeatingValue: input('H_u', 'specific energy', { min: 1e7, max: 1.3e8, typical: 43.44e6 }),
    /** Work on the pistons in compression and expansion over the heat of the fuel. */
    indicatedEfficiency: input('eta_i', 'ratio', { min: 0.01, max: 1, typical: 0.315 }),
    /** Swept volume of all cylinders together. */
    sweptVolume: input('V_d', 'volume', { min: 1e-5, max: 1, typical: 1.8e-3 }),
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', { min: 0.5, max: 1000, typical: 100 }),
    /** Revolutions from one working stroke of a cylinder to its next. */
    revolutionsPerCycle: assumed('n_R', 'ratio', { min: 1, max: 2, assume: fourStroke }),
  },
  output: output('p_mi', 'mean effective pressure', 'bar'),
  formula: 'eta_i * mdot_f * H_u * n_R / (V_d * n)',
  si: (fuel, Hu, eta, Vd, n, nR) => (eta * fuel * Hu * nR) / (Vd * n),
  rises: ['mdot_f', 'H_u', 'eta_i'],
  falls: ['V_d', 'n'],
  sources: [source('heywood', 'equations 2.19 and 2.23', 'memory')],
});
