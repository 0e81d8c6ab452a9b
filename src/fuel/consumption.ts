import { calculation, commonPractice, input, output, source } from '../calculation/index.js';

/**
 * Brake specific fuel consumption: fuel per work at the crankshaft.
 *
 * Boosted gasoline engines run rich at full load use 0.55 to 0.65 lb/(hp·h), unboosted ones 0.42 to 0.50 (common
 * practice).
 *
 * @function
 * @returns The specific fuel consumption.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * brakeSpecificFuelConsumption({ fuelMassFlow: massFlow(69, 'kg/h'), power: power(230, 'kW') }).in('g/kWh') //=> 300
 */
export const brakeSpecificFuelConsumption = calculation({
  name: 'brake specific fuel consumption',
  task: 'fuel the charge',
  inputs: {
    /** Mass flow of fuel. */
    fuelMassFlow: input('mdot_f', 'mass flow', { min: 0, max: 10, typical: 0.015 }),
    /** Power at the crankshaft; hub or wheel power gives a larger figure. */
    power: input('P', 'power', { min: 1, max: 1e8, typical: 165e3 }),
  },
  output: output('bsfc', 'specific fuel consumption', 'g/kWh'),
  formula: 'mdot_f / P',
  si: (fuel, power) => fuel / power,
  rises: ['mdot_f'],
  falls: ['P'],
  sources: [source('heywood', 'equation 2.22', 'memory')],
});

/**
 * Brake thermal efficiency: the share of the fuel's heat that reaches the crankshaft as work.
 *
 * @function
 * @returns The efficiency, on the lower heating value.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible, or the work would exceed the heat
 * of the fuel.
 * @example
 * brakeThermalEfficiency({
 *   specificFuelConsumption: specificFuelConsumption(300, 'g/kWh'),
 *   lowerHeatingValue: specificEnergy(43.44, 'MJ/kg'),
 * }).in('%') //=> 27.6243
 */
export const brakeThermalEfficiency = calculation({
  name: 'brake thermal efficiency',
  task: 'fuel the charge',
  inputs: {
    /** Fuel per work at the crankshaft. */
    specificFuelConsumption: input('bsfc', 'specific fuel consumption', { min: 5e-9, max: 1e-6, typical: 8.5e-8 }),
    /** Lower heating value of the fuel. */
    lowerHeatingValue: input('H_u', 'specific energy', { min: 1e7, max: 1.3e8, typical: 43.44e6 }),
  },
  output: output('eta_e', 'ratio', '%'),
  formula: '1 / (bsfc * H_u)',
  si: (bsfc, heat) => 1 / (bsfc * heat),
  rules: [
    {
      need: 'the work must not exceed the heat of the fuel (look at the units)',
      holds: (bsfc, heat) => bsfc * heat >= 1,
    },
  ],
  falls: ['bsfc', 'H_u'],
  sources: [source('heywood', 'equation 2.24', 'memory')],
});

/**
 * Brake specific fuel consumption from brake thermal efficiency: the same engine on another fuel.
 *
 * @function
 * @returns The specific fuel consumption.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * specificFuelConsumptionFromEfficiency({
 *   thermalEfficiency: percent(30),
 *   lowerHeatingValue: fuels.ethanol.lowerHeatingValue,
 * }).in('g/kWh') //=> 445.269
 */
export const specificFuelConsumptionFromEfficiency = calculation({
  name: 'specific fuel consumption from thermal efficiency',
  task: 'fuel the charge',
  inputs: {
    /** Work at the crankshaft over heat of the fuel. */
    thermalEfficiency: input('eta_e', 'ratio', { min: 0.01, max: 1, typical: 0.28 }),
    /** Lower heating value of the fuel. */
    lowerHeatingValue: input('H_u', 'specific energy', { min: 1e7, max: 1.3e8, typical: 43.44e6 }),
  },
  output: output('bsfc', 'specific fuel consumption', 'g/kWh'),
  formula: '1 / (eta_e * H_u)',
  si: (efficiency, heat) => 1 / (efficiency * heat),
  falls: ['eta_e', 'H_u'],
  sources: [source('heywood', 'equation 2.24', 'memory')],
});

/**
 * Mass flow of fuel that a power asks for.
 *
 * Size a fuel system on the highest consumption the engine may show, rich at full load, not on its best: one that runs
 * out of fuel runs lean at full boost, which destroys engines and can start a fire. Fuel under pressure is worked on
 * cold, vented and by someone trained for it.
 *
 * @function
 * @returns The mass flow of fuel.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * fuelMassFlowFromPower({
 *   power: power(230, 'kW'),
 *   specificFuelConsumption: specificFuelConsumption(300, 'g/kWh'),
 * }).in('kg/h') //=> 69
 */
export const fuelMassFlowFromPower = calculation({
  name: 'fuel mass flow from power',
  task: 'fuel the charge',
  inputs: {
    /** Power at the crankshaft. */
    power: input('P', 'power', { min: 0, max: 1e8, typical: 165e3 }),
    /** Fuel per work at the crankshaft. */
    specificFuelConsumption: input('bsfc', 'specific fuel consumption', { min: 5e-9, max: 1e-6, typical: 8.5e-8 }),
  },
  output: output('mdot_f', 'mass flow', 'g/s'),
  formula: 'bsfc * P',
  si: (power, bsfc) => bsfc * power,
  rises: ['P', 'bsfc'],
  sources: [
    source('heywood', 'equation 2.22', 'memory'),
    commonPractice('0.55 to 0.65 lb/(hp·h) for a boosted gasoline engine rich at full load'),
  ],
});
