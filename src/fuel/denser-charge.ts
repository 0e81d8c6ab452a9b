import { assumed, calculation, constant, derived, input, output } from '../calculation/index.js';
import { ratio } from '../units/index.js';

const AIR_RATIO = { min: 0.2, max: 5, typical: 1.013 } as const;

/**
 * Fuel to add when the charge gets denser, to hold the mixture where it was.
 *
 * An engine that meters by air does it by itself as long as pump and injectors can; one that meters by pressure and speed
 * alone without charge temperature does not.
 *
 * @function
 * @returns The mass flow to add; below zero where the charge got thinner.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * extraFuelForDenserCharge({ fuelMassFlow: massFlow(14.0302, 'g/s'), airRatio: ratio(1.0131) }).in('g/s') //=> 0.183796
 */
export const extraFuelForDenserCharge = calculation({
  name: 'extra fuel for a denser charge',
  task: 'fuel the charge',
  inputs: {
    /** Mass flow of fuel before the change. */
    fuelMassFlow: input('mdot_f', 'mass flow', { min: 0, max: 10, typical: 0.015 }),
    /** Mass flow of dry air after the change over that before, at one engine speed. */
    airRatio: input('r_a', 'ratio', AIR_RATIO),
  },
  output: output('dmdot_f', 'mass flow', 'g/s'),
  formula: 'mdot_f * (r_a - 1)',
  si: (fuel, air) => fuel * (air - 1),
  rises: ['r_a'],
  sources: [derived('fuel in the ratio of the air')],
});

const sameFuel = constant('fuel/same-fuel', ratio(1), {
  label: 'fuel over that before',
  source: derived('no fuel was added'),
});

/**
 * Lambda that an engine runs at when the charge gets denser and the fuel is not added: how lean a better core makes a
 * mixture that nobody looked after.
 *
 * Fuel that is warmer and thinner goes in as a fuel ratio below 1, from {@link fuelMassRatioThroughInjector}.
 *
 * @function
 * @returns Lambda after the change, with a caution.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * lambdaWithoutAddedFuel({ lambda: lambda(0.8), airRatio: ratio(1.0131) }).in('1') //=> 0.81048
 */
export const lambdaWithoutAddedFuel = calculation({
  name: 'lambda if no fuel is added',
  task: 'fuel the charge',
  inputs: {
    /** Lambda before the change. */
    lambda: input('lambda_1', 'lambda', { min: 0.05, max: 100, typical: 0.8 }),
    /** Mass flow of dry air after the change over that before, at one engine speed. */
    airRatio: input('r_a', 'ratio', AIR_RATIO),
    /** Mass flow of fuel after the change over that before. */
    fuelRatio: assumed('r_f', 'ratio', { min: 0.2, max: 5, assume: sameFuel }),
  },
  output: output('lambda_2', 'lambda', '1'),
  formula: 'lambda_1 * r_a / r_f',
  si: (lambda, air, fuel) => (lambda * air) / fuel,
  rises: ['lambda_1', 'r_a'],
  falls: ['r_f'],
  notes: [
    {
      code: 'caution',
      message:
        'A boosted engine that runs leaner than it was set up for can detonate and be destroyed within one pull: measure ' +
        'lambda before loading it, and leave its setting to someone qualified.',
    },
  ],
  sources: [derived('air over fuel, each in its ratio')],
});
