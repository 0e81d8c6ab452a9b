import { calculation, input, output, source } from '../calculation/index.js';
import { MASS_FLOW } from './bounds.js';
import { FREE_AREA, HEAT_CAPACITY, HYDRAULIC_DIAMETER, MASS_FLUX, PRANDTL } from './core-bounds.js';

/**
 * Mass flux in the passages of a core: mass flow over the smallest area that is free to it.
 *
 * @function
 * @returns One mass flux.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * coreMassFlux({ massFlow: massFlow(200, 'g/s'), freeArea: area(120, 'cm²') }).in('kg/(m²·s)') //=> 16.67
 */
export const coreMassFlux = calculation({
  name: 'mass flux in a core',
  task: 'size an intercooler',
  inputs: {
    /** Mass flow of the side. */
    massFlow: input('m', 'mass flow', MASS_FLOW),
    /** Smallest area free to it, all passages together. */
    freeArea: input('Ac', 'area', FREE_AREA),
  },
  output: output('G', 'mass flux', 'kg/(m²·s)'),
  formula: 'm / Ac',
  si: (m, Ac) => m / Ac,
  rises: ['m'],
  falls: ['Ac'],
  sources: [source('kaysLondon', 'chapter 2', 'memory')],
});

/**
 * Reynolds number in a core, from the mass flux in its passages.
 *
 * The length is what the correlation names: the hydraulic diameter for offset strip fins, the louvre pitch for louvred ones.
 *
 * @function
 * @returns One ratio.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * reynoldsNumber({
 *   massFlux: massFlux(16.67, 'kg/(m²·s)'), diameter: length(2.33, 'mm'), viscosity: dynamicViscosity(21, 'µPa·s'),
 * }).in('1') //=> 1850
 */
export const reynoldsNumber = calculation({
  name: 'Reynolds number in a core',
  task: 'size an intercooler',
  inputs: {
    /** Mass flux in the passages. */
    massFlux: input('G', 'mass flux', MASS_FLUX),
    /** Hydraulic diameter, or the length that the correlation names. */
    diameter: input('D', 'length', HYDRAULIC_DIAMETER),
    /** Dynamic viscosity of the fluid at its mean temperature. */
    viscosity: input('mu', 'dynamic viscosity', { min: 1e-6, max: 1, typical: 2.1e-5 }),
  },
  output: output('Re', 'ratio', '1'),
  formula: 'G * D / mu',
  si: (G, D, mu) => (G * D) / mu,
  rises: ['G', 'D'],
  falls: ['mu'],
  sources: [source('kaysLondon', 'chapter 2', 'memory')],
});

/**
 * Prandtl number of a fluid, from its properties.
 *
 * @function
 * @returns One ratio: about 0.7 for air, 5 to 30 for water and glycol.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * prandtlNumber({
 *   viscosity: dynamicViscosity(0.8, 'mPa·s'), specificHeatCapacity: specificHeatCapacity(3.6, 'kJ/(kg·K)'),
 *   conductivity: thermalConductivity(0.42, 'W/(m·K)'),
 * }).in('1') //=> 6.857
 */
export const prandtlNumber = calculation({
  name: 'Prandtl number',
  task: 'size an intercooler',
  inputs: {
    /** Dynamic viscosity. */
    viscosity: input('mu', 'dynamic viscosity', { min: 1e-6, max: 1, typical: 2.1e-5 }),
    /** Specific heat capacity at constant pressure. */
    specificHeatCapacity: input('cp', 'specific heat capacity', HEAT_CAPACITY),
    /** Heat conductivity of the fluid. */
    conductivity: input('k', 'thermal conductivity', { min: 1e-3, max: 10, typical: 0.03 }),
  },
  output: output('Pr', 'ratio', '1'),
  formula: 'mu * cp / k',
  si: (mu, cp, k) => (mu * cp) / k,
  rises: ['mu', 'cp'],
  falls: ['k'],
  sources: [source('kaysLondon', 'chapter 2', 'memory')],
});

/**
 * Heat transfer coefficient from a Colburn factor, which correlations of finned surfaces give.
 *
 * @function
 * @returns One heat transfer coefficient.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * heatTransferCoefficientFromColburn({
 *   colburnFactor: ratio(0.0149), massFlux: massFlux(16.67, 'kg/(m²·s)'),
 *   specificHeatCapacity: specificHeatCapacity(1010, 'J/(kg·K)'), prandtlNumber: ratio(0.7),
 * }).in('W/(m²·K)') //=> 318.2
 */
export const heatTransferCoefficientFromColburn = calculation({
  name: 'heat transfer coefficient from a Colburn factor',
  task: 'size an intercooler',
  inputs: {
    /** Colburn factor of the surface at its Reynolds number. */
    colburnFactor: input('j', 'ratio', { min: 1e-5, max: 10, typical: 0.015 }),
    /** Mass flux in the passages. */
    massFlux: input('G', 'mass flux', MASS_FLUX),
    /** Specific heat capacity of the fluid at constant pressure. */
    specificHeatCapacity: input('cp', 'specific heat capacity', HEAT_CAPACITY),
    /** Prandtl number of the fluid. */
    prandtlNumber: input('Pr', 'ratio', PRANDTL),
  },
  output: output('h', 'heat transfer coefficient', 'W/(m²·K)'),
  formula: 'j * G * cp * Pr^(-2 / 3)',
  si: (j, G, cp, Pr) => (j * G * cp) / Math.cbrt(Pr) ** 2,
  rises: ['j', 'G', 'cp'],
  falls: ['Pr'],
  sources: [source('kaysLondon', 'chapter 2, definition of the Colburn factor', 'memory')],
});
