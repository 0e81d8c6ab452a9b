import { assumed, calculation, commonPractice, constant, input, output, source } from '../calculation/index.js';
import { ratio } from '../units/index.js';
import { DENSITY, FRICTION_FACTOR, MASS_FLUX } from './core-bounds.js';

const SOURCES = [source('kaysLondon', 'equation 2-26a', 'memory')];

const ENTRANCE = constant('intercooler/entrance-coefficient', ratio(0.4), {
  label: 'entrance loss coefficient',
  source: commonPractice('cores of fine passages; read the charts of Kays and London for one core'),
  halfWidth: 0.3,
});

const EXIT = constant('intercooler/exit-coefficient', ratio(0.2), {
  label: 'exit loss coefficient',
  source: commonPractice('cores of fine passages; read the charts of Kays and London for one core'),
  halfWidth: 0.2,
});

/**
 * Mean density of a flow over a core: the density at its mean specific volume.
 *
 * @function
 * @returns One density, nearer to the smaller of the two.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * meanDensity({ inletDensity: density(1.65, 'kg/m³'), outletDensity: density(2.08, 'kg/m³') }).in('kg/m³') //=> 1.840
 */
export const meanDensity = calculation({
  name: 'mean density over a core',
  task: 'size an intercooler',
  inputs: {
    /** Density into the core. */
    inletDensity: input('rho1', 'density', DENSITY),
    /** Density out of the core. */
    outletDensity: input('rho2', 'density', { ...DENSITY, typical: 2.08 }),
  },
  output: output('rho', 'density', 'kg/m³'),
  formula: '2 / (1 / rho1 + 1 / rho2)',
  si: (rho1, rho2) => 2 / (1 / rho1 + 1 / rho2),
  rises: ['rho1', 'rho2'],
  sources: SOURCES,
});

/**
 * Pressure loss of one flow through a core, from its passages: entrance, change of speed with density, friction, exit.
 *
 * The change of speed counts against the loss where the flow is cooled and slows. Tanks and pipes lose pressure of their own.
 *
 * @function
 * @returns One pressure difference.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * corePressureLoss({
 *   massFlux: massFlux(25, 'kg/(m²·s)'), inletDensity: density(1.65, 'kg/m³'), outletDensity: density(2.08, 'kg/m³'),
 *   freeAreaRatio: ratio(0.6), frictionFactor: ratio(0.03), areaRatio: ratio(120),
 * }).in('Pa') //=> 663.9
 */
export const corePressureLoss = calculation({
  name: 'pressure loss of a core',
  task: 'size an intercooler',
  inputs: {
    /** Mass flow over the smallest free area. */
    massFlux: input('G', 'mass flux', MASS_FLUX),
    /** Density into the core. */
    inletDensity: input('rho1', 'density', DENSITY),
    /** Density out of the core. */
    outletDensity: input('rho2', 'density', { ...DENSITY, typical: 2.08 }),
    /** Free area over face area. */
    freeAreaRatio: input('s', 'ratio', { min: 0.01, max: 1, typical: 0.6 }),
    /** Fanning friction factor of the passages; a Darcy factor is four times as large. */
    frictionFactor: input('f', 'ratio', FRICTION_FACTOR),
    /** Wetted area over free area: four times the flow length over the hydraulic diameter. */
    areaRatio: input('a', 'ratio', { min: 0.1, max: 1e6, typical: 120 }),
    /** Loss coefficient of the entrance. */
    entranceCoefficient: assumed('Kc', 'ratio', { min: 0, max: 2, assume: ENTRANCE }),
    /** Loss coefficient of the exit; below zero for slow flow into little room. */
    exitCoefficient: assumed('Ke', 'ratio', { min: -1, max: 1, assume: EXIT }),
  },
  output: output('dp', 'pressure difference', 'Pa'),
  formula:
    'G^2 / (2 * rho1) * ((Kc + 1 - s^2) + 2 * (rho1 / rho2 - 1) + f * a * rho1 * (1 / rho1 + 1 / rho2) / 2 - (1 - s^2 - Ke) * rho1 / rho2)',
  si: (G, rho1, rho2, s, f, a, Kc, Ke) => {
    const change = (rho1 - rho2) / rho2;
    const heads = Kc + (1 + s * s) * change + (f * a * (2 + change)) / 2 + Ke * (1 + change);
    return ((G * G) / (2 * rho1)) * heads;
  },
  rises: ['f', 'Kc', 'Ke'],
  sources: SOURCES,
});
