import { calculation, input, output, source } from '../calculation/index.js';

/**
 * Lambda from an air-fuel ratio and the stoichiometric ratio it was shown with.
 *
 * A wide-band sensor measures lambda; the air-fuel ratio on its gauge is lambda times whatever ratio was typed into the
 * gauge. Give that one here, not the fuel's own, when reading a gauge.
 *
 * Above 1 is lean, below 1 rich. A boosted engine that runs leaner than it was mapped for can detonate and melt pistons
 * within seconds: change mixture in small steps, with knock and exhaust temperature watched.
 *
 * @function
 * @returns Lambda.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * lambdaFromAirFuelRatio({
 *   airFuelRatio: airFuelRatio(11.7),
 *   stoichiometricAirFuelRatio: airFuelRatio(14.7),
 * }).in('1') //=> 0.795918
 */
export const lambdaFromAirFuelRatio = calculation({
  name: 'lambda from air-fuel ratio',
  task: 'fuel the charge',
  inputs: {
    /** Mass of dry air per mass of fuel. */
    airFuelRatio: input('AFR', 'air-fuel ratio', { min: 0.1, max: 1000, typical: 12 }),
    /** Stoichiometric ratio of the fuel, or the one a gauge was set to. */
    stoichiometricAirFuelRatio: input('AFR_st', 'air-fuel ratio', { min: 1, max: 40, typical: 14.6 }),
  },
  output: output('lambda', 'lambda', '1'),
  formula: 'AFR / AFR_st',
  si: (afr, stoichiometric) => afr / stoichiometric,
  rises: ['AFR'],
  falls: ['AFR_st'],
  sources: [source('heywood', 'section 3.3', 'memory')],
});

/**
 * Air-fuel ratio from lambda and the stoichiometric ratio of the fuel.
 *
 * @function
 * @returns Mass of dry air per mass of fuel.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * airFuelRatioFromLambda({
 *   lambda: lambda(0.8),
 *   stoichiometricAirFuelRatio: fuels.gasoline.stoichiometricAirFuelRatio,
 * }).in('1') //=> 11.68
 */
export const airFuelRatioFromLambda = calculation({
  name: 'air-fuel ratio from lambda',
  task: 'fuel the charge',
  inputs: {
    /** Air-fuel ratio over the stoichiometric one. */
    lambda: input('lambda', 'lambda', { min: 0.05, max: 100, typical: 0.8 }),
    /** Stoichiometric ratio of the fuel. */
    stoichiometricAirFuelRatio: input('AFR_st', 'air-fuel ratio', { min: 1, max: 40, typical: 14.6 }),
  },
  output: output('AFR', 'air-fuel ratio', '1'),
  formula: 'lambda * AFR_st',
  si: (lambda, stoichiometric) => lambda * stoichiometric,
  rises: ['lambda', 'AFR_st'],
  sources: [source('heywood', 'section 3.3', 'memory')],
});

/**
 * Equivalence ratio, fuel over stoichiometric fuel, from lambda.
 *
 * @function
 * @returns The equivalence ratio; above 1 is rich.
 * @throws CalculationError if the input is missing, of the wrong kind or impossible.
 * @example
 * equivalenceRatioFromLambda({ lambda: lambda(0.8) }).in('1') //=> 1.25
 */
export const equivalenceRatioFromLambda = calculation({
  name: 'equivalence ratio from lambda',
  task: 'fuel the charge',
  inputs: {
    /** Air-fuel ratio over the stoichiometric one. */
    lambda: input('lambda', 'lambda', { min: 0.05, max: 100, typical: 0.8 }),
  },
  output: output('phi', 'equivalence ratio', '1'),
  formula: '1 / lambda',
  si: (lambda) => 1 / lambda,
  falls: ['lambda'],
  sources: [source('heywood', 'section 3.3', 'memory')],
});

/**
 * Lambda from equivalence ratio.
 *
 * @function
 * @returns Lambda.
 * @throws CalculationError if the input is missing, of the wrong kind or impossible.
 * @example
 * lambdaFromEquivalenceRatio({ equivalenceRatio: equivalenceRatio(1.25) }).in('1') //=> 0.8
 */
export const lambdaFromEquivalenceRatio = calculation({
  name: 'lambda from equivalence ratio',
  task: 'fuel the charge',
  inputs: {
    /** Fuel over stoichiometric fuel for the same air. */
    equivalenceRatio: input('phi', 'equivalence ratio', { min: 0.01, max: 20, typical: 1.25 }),
  },
  output: output('lambda', 'lambda', '1'),
  formula: '1 / phi',
  si: (phi) => 1 / phi,
  falls: ['phi'],
  sources: [source('heywood', 'section 3.3', 'memory')],
});

/**
 * Lambda from measured flows of air and fuel: a check of the sensor in the exhaust that does not depend on it.
 *
 * Dry air counts. With humid air flow put in, lambda comes out high by the humidity ratio: 1 % at 10 g/kg.
 *
 * @function
 * @returns Lambda of the whole engine.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * lambdaFromFlows({
 *   airMassFlow: massFlow(163.9, 'g/s'),
 *   fuelMassFlow: massFlow(14.03, 'g/s'),
 *   stoichiometricAirFuelRatio: fuels.gasoline.stoichiometricAirFuelRatio,
 * }).in('1') //=> 0.800145
 */
export const lambdaFromFlows = calculation({
  name: 'lambda from flows',
  task: 'fuel the charge',
  inputs: {
    /** Mass flow of dry air. */
    airMassFlow: input('mdot_a', 'mass flow', { min: 0, max: 100, typical: 0.19 }),
    /** Mass flow of fuel. */
    fuelMassFlow: input('mdot_f', 'mass flow', { min: 1e-7, max: 10, typical: 0.015 }),
    /** Stoichiometric ratio of the fuel. */
    stoichiometricAirFuelRatio: input('AFR_st', 'air-fuel ratio', { min: 1, max: 40, typical: 14.6 }),
  },
  output: output('lambda', 'lambda', '1'),
  formula: 'mdot_a / (mdot_f * AFR_st)',
  si: (air, fuel, stoichiometric) => air / (fuel * stoichiometric),
  rises: ['mdot_a'],
  falls: ['mdot_f', 'AFR_st'],
  sources: [source('heywood', 'sections 2.9 and 3.3', 'memory')],
});
