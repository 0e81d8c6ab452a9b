import { calculation, commonPractice, derived, input, output, source } from '../calculation/index.js';

const FLOW = { min: 0, max: 0.1, typical: 2.57e-5 } as const;
const BORE = { min: 1e-3, max: 0.1, typical: 0.008 } as const;
const DENSITY = { min: 400, max: 1200, typical: 745 } as const;
const VELOCITY = { min: 0, max: 50, typical: 0.51 } as const;

/**
 * Velocity of the fuel in its line.
 *
 * @function
 * @returns The mean velocity.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * fuelLineVelocity({ fuelVolumeFlow: volumeFlow(1543.624, 'cm³/min'), bore: length(8, 'mm') }).in('m/s') //=> 0.511824
 */
export const fuelLineVelocity = calculation({
  name: 'velocity in the fuel line',
  task: 'fuel the charge',
  inputs: {
    /** Volume flow through the line: all that the pump moves, where the rest runs back. */
    fuelVolumeFlow: input('Q', 'volume flow', FLOW),
    /** Inner diameter of the line. */
    bore: input('D', 'length', BORE),
  },
  output: output('v', 'speed', 'm/s'),
  formula: 'Q / (pi / 4 * D^2)',
  si: (Q, D) => Q / ((Math.PI / 4) * D * D),
  rises: ['Q'],
  falls: ['D'],
  sources: [derived('volume flow over the area of the bore')],
});

/**
 * Reynolds number of the flow in the fuel line, which tells laminar from turbulent.
 *
 * @function
 * @returns The Reynolds number.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * fuelLineReynoldsNumber({
 *   velocity: speed(0.511824, 'm/s'),
 *   bore: length(8, 'mm'),
 *   fuelDensity: density(0.745, 'kg/L'),
 *   dynamicViscosity: dynamicViscosity(0.45, 'mPa·s'),
 * }).in('1') //=> 6778.82
 */
export const fuelLineReynoldsNumber = calculation({
  name: 'Reynolds number in the fuel line',
  task: 'fuel the charge',
  inputs: {
    /** Mean velocity in the line. */
    velocity: input('v', 'speed', VELOCITY),
    /** Inner diameter of the line. */
    bore: input('D', 'length', BORE),
    /** Density of the fuel at its temperature. */
    fuelDensity: input('rho_f', 'density', DENSITY),
    /** Dynamic viscosity of the fuel: about 0.45 mPa·s for gasoline, 1.1 for ethanol, 2 to 4 for diesel at 20 to 40 °C. */
    dynamicViscosity: input('mu', 'dynamic viscosity', { min: 1e-4, max: 0.1, typical: 4.5e-4 }),
  },
  output: output('Re', 'ratio', '1'),
  formula: 'rho_f * v * D / mu',
  si: (v, D, rho, mu) => (rho * v * D) / mu,
  rises: ['v', 'D', 'rho_f'],
  falls: ['mu'],
  sources: [derived('definition of the Reynolds number'), commonPractice('viscosities, to a tenth')],
});

/**
 * Friction factor of a smooth line: 64/Re where the flow is laminar, Blasius where it is turbulent.
 *
 * This is Darcy's factor, four times Fanning's.
 *
 * @function
 * @returns The Darcy friction factor. Carries a note between 2300 and 4000, where the flow is neither, and above 100 000.
 * @throws CalculationError if the input is missing, of the wrong kind or impossible.
 * @example
 * fuelLineFrictionFactor({ reynoldsNumber: ratio(6778.83) }).in('1') //=> 0.0348697
 */
export const fuelLineFrictionFactor = calculation({
  name: 'Darcy friction factor of the fuel line',
  task: 'fuel the charge',
  inputs: {
    /** Reynolds number on the bore. */
    reynoldsNumber: input('Re', 'ratio', { min: 1e-3, max: 1e7, trusted: [1e-3, 1e5], typical: 6779 }),
  },
  output: output('f_D', 'ratio', '1'),
  formula: 'Re < 2300 ? 64 / Re : 0.3164 * Re^(-0.25)',
  si: (Re) => (Re < 2300 ? 64 / Re : 0.3164 * Re ** -0.25),
  rules: [
    {
      need: 'a Reynolds number outside 2300 to 4000, where the flow is neither laminar nor turbulent',
      holds: (Re) => Re < 2300 || Re > 4000,
      otherwise: 'note',
    },
  ],
  sources: [source('blasius1913', 'smooth pipes; 64/Re by Hagen and Poiseuille', 'memory')],
});

/**
 * Pressure that the fuel loses in a straight line. Filters, fittings and bends come on top.
 *
 * @function
 * @returns The pressure loss.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * fuelLinePressureLoss({
 *   frictionFactor: ratio(0.0348696),
 *   length: length(1, 'm'),
 *   bore: length(8, 'mm'),
 *   fuelDensity: density(0.745, 'kg/L'),
 *   velocity: speed(0.511824, 'm/s'),
 * }).in('Pa') //=> 425.329
 */
export const fuelLinePressureLoss = calculation({
  name: 'pressure loss of the fuel line',
  task: 'fuel the charge',
  inputs: {
    /** Darcy friction factor. */
    frictionFactor: input('f_D', 'ratio', { min: 1e-3, max: 1e5, typical: 0.0349 }),
    /** Length of the line. */
    length: input('L', 'length', { min: 0, max: 100, typical: 4 }),
    /** Inner diameter of the line. */
    bore: input('D', 'length', BORE),
    /** Density of the fuel at its temperature. */
    fuelDensity: input('rho_f', 'density', DENSITY),
    /** Mean velocity in the line. */
    velocity: input('v', 'speed', VELOCITY),
  },
  output: output('dp', 'pressure difference', 'Pa'),
  formula: 'f_D * (L / D) * rho_f * v^2 / 2',
  si: (f, L, D, rho, v) => (f * (L / D) * rho * v * v) / 2,
  rises: ['f_D', 'L', 'rho_f', 'v'],
  falls: ['D'],
  sources: [derived('Darcy and Weisbach')],
});

/**
 * Power that a fuel pump takes.
 *
 * A pump's flow is quoted at one pressure and one voltage: with boost on the regulator the pressure is higher and the flow
 * less, so size it from its curve at the pressure it will see and at the voltage that the car really has. A pump that runs
 * out of flow leans the mixture at full boost; have fuel work checked by someone qualified, leaks burn.
 *
 * @function
 * @returns The power into the pump.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * fuelPumpPower({
 *   fuelVolumeFlow: volumeFlow(1543.624, 'cm³/min'),
 *   pressureRise: pressureDifference(3.5, 'bar'),
 *   efficiency: ratio(0.5),
 * }).in('W') //=> 18.0089
 */
export const fuelPumpPower = calculation({
  name: 'fuel pump power',
  task: 'fuel the charge',
  inputs: {
    /** Volume flow that the pump moves. */
    fuelVolumeFlow: input('Q', 'volume flow', FLOW),
    /** Pressure at its outlet over that at its inlet. */
    pressureRise: input('dp', 'pressure difference', { min: 0, max: 5e8, typical: 3.5e5 }),
    /** Hydraulic over electrical or shaft power. */
    efficiency: input('eta', 'ratio', { min: 0.01, max: 1, typical: 0.5 }),
  },
  output: output('P', 'power', 'W'),
  formula: 'Q * dp / eta',
  si: (Q, dp, eta) => (Q * dp) / eta,
  rises: ['Q', 'dp'],
  falls: ['eta'],
  sources: [
    derived('hydraulic power over efficiency'),
    commonPractice('pump flow is quoted at one pressure and voltage'),
  ],
});
