import {
  assumed,
  calculation,
  commonPractice,
  constant,
  derived,
  input,
  output,
  source,
} from '../calculation/index.js';
import { ratio } from '../units/index.js';
import { INLET_PRESSURE, OUTLET_PRESSURE } from './bounds.js';

export const LOSS_EXPONENT = constant('intercooler/pressure-loss-exponent', ratio(1.8), {
  label: 'pressure-loss exponent',
  source: commonPractice('1.7 to 1.8 for finned cores'),
  halfWidth: 0.1,
});

const SAME_VISCOSITY = constant('intercooler/viscosity-ratio', ratio(1), {
  label: 'viscosity ratio',
  source: commonPractice('viscosity taken as unchanged'),
});

const NO_GAIN = {
  need: 'a pressure that does not rise through the core (else the readings are not consistent)',
  holds: (p1: number, p2: number) => p2 <= p1,
  otherwise: 'note',
} as const;

/**
 * Pressure loss of a charge cooler, from the pressures before and behind it.
 *
 * A loss means nothing without the mass flow and density it was measured at; see {@link scaledPressureLoss}.
 *
 * @function
 * @returns One pressure difference. Below zero, with a note, where the readings say that pressure rises through the core.
 * @throws CalculationError if a pressure is not absolute, or an input is physically impossible.
 * @example
 * pressureLoss({ inletPressure: absolutePressure(204.1, 'kPa'), outletPressure: absolutePressure(197.1, 'kPa') }).in('kPa') //=> 7.00
 */
export const pressureLoss = calculation({
  name: 'pressure loss',
  task: 'rate an intercooler',
  inputs: {
    /** Absolute pressure into the core. */
    inletPressure: input('p1', 'absolute pressure', INLET_PRESSURE),
    /** Absolute pressure out of the core. */
    outletPressure: input('p2', 'absolute pressure', OUTLET_PRESSURE),
  },
  output: output('dp', 'pressure difference', 'kPa'),
  formula: 'p1 - p2',
  si: (p1, p2) => p1 - p2,
  rules: [NO_GAIN],
  rises: ['p1'],
  falls: ['p2'],
  sources: [source('kaysLondon', 'chapter 2, core pressure drop', 'memory')],
});

/**
 * Pressure loss of a charge cooler as a share of the absolute pressure before it: the density that the loss alone takes.
 *
 * @function
 * @returns One ratio. Below zero, with a note, where the readings say that pressure rises through the core.
 * @throws CalculationError if a pressure is not absolute, or an input is physically impossible.
 * @example
 * pressureLossShare({ inletPressure: absolutePressure(204.1, 'kPa'), outletPressure: absolutePressure(197.1, 'kPa') }).in('%') //=> 3.43
 */
export const pressureLossShare = calculation({
  name: 'pressure loss as a share',
  task: 'rate an intercooler',
  inputs: {
    /** Absolute pressure into the core. */
    inletPressure: input('p1', 'absolute pressure', INLET_PRESSURE),
    /** Absolute pressure out of the core. */
    outletPressure: input('p2', 'absolute pressure', OUTLET_PRESSURE),
  },
  output: output('s', 'ratio', '%'),
  formula: '(p1 - p2) / p1',
  si: (p1, p2) => (p1 - p2) / p1,
  rules: [NO_GAIN],
  rises: ['p1'],
  falls: ['p2'],
  sources: [source('kaysLondon', 'chapter 2, core pressure drop', 'memory')],
});

/**
 * Pressure loss of a core at another mass flow and density, from one measurement of it.
 *
 * Take densities as means over the core, not at its outlet: with the outlet's, better cooling seems to lower the loss. The exponent
 * is 2 where entry and exit losses rule, 1.7 to 1.8 for fins.
 *
 * @function
 * @returns One pressure difference. Carries a note for an exponent below 1.5.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * scaledPressureLoss({
 *   measuredLoss: pressureDifference(7, 'kPa'), measuredFlow: massFlow(0.2, 'kg/s'), measuredDensity: density(2, 'kg/m³'),
 *   flow: massFlow(0.25, 'kg/s'), density: density(2.4, 'kg/m³'),
 * }).in('kPa') //=> 8.717
 */
export const scaledPressureLoss = calculation({
  name: 'pressure loss scaled to another flow',
  task: 'rate an intercooler',
  inputs: {
    /** Pressure loss where it was measured. */
    measuredLoss: input('dp1', 'pressure difference', { min: 0, max: 2e5, typical: 7000 }),
    /** Mass flow there. */
    measuredFlow: input('m1', 'mass flow', { min: 1e-3, max: 5, typical: 0.2 }),
    /** Mean density over the core there. */
    measuredDensity: input('rho1', 'density', { min: 0.2, max: 20, typical: 2 }),
    /** Mass flow wanted. */
    flow: input('m2', 'mass flow', { min: 1e-3, max: 5, typical: 0.25 }),
    /** Mean density over the core wanted. */
    density: input('rho2', 'density', { min: 0.2, max: 20, typical: 2.4 }),
    /** How the loss grows with mass flow: 2 for entry and exit losses, 1.7 to 1.8 for fins. */
    exponent: assumed('n', 'ratio', { min: 1, max: 2, trusted: [1.5, 2], assume: LOSS_EXPONENT }),
    /** Viscosity wanted over viscosity where it was measured. */
    viscosityRatio: assumed('mu', 'ratio', { min: 0.3, max: 3, assume: SAME_VISCOSITY }),
  },
  output: output('dp2', 'pressure difference', 'kPa'),
  formula: 'dp1 * (m2 / m1)^n * (rho1 / rho2) * mu^(2 - n)',
  si: (dp1, m1, rho1, m2, rho2, n, mu) => dp1 * (m2 / m1) ** n * (rho1 / rho2) * mu ** (2 - n),
  rises: ['dp1', 'm2', 'rho1', 'mu'],
  falls: ['m1', 'rho2'],
  sources: [
    source('kaysLondon', 'chapter 2, core pressure drop', 'memory'),
    derived('the ratio of two losses whose friction factor follows a power of the Reynolds number'),
  ],
});
