import { assumed, calculation, constant, input, output, source } from '../calculation/index.js';
import { moleFraction } from '../units/index.js';
import { enhancementFactorCipm2007 } from './enhancement-factor.js';
import { celsius } from './ranges.js';

const TEMPERATURE = { min: 273.15, max: 313.15, trusted: [celsius(15), celsius(27)], typical: 291.15 } as const;
const PRESSURE = { min: 5e4, max: 1.2e5, trusted: [6e4, 1.1e5], typical: 94100 } as const;
const SOURCES = [source('cipm2007', 'equation of state and constants of appendix A', 'memory')];

/** Share of carbon dioxide in the air that the constants of CIPM-2007 are given for. */
export const carbonDioxideOfCipm2007 = constant(
  'psychrometrics/carbon-dioxide-of-cipm-2007',
  moleFraction(400, 'ppm'),
  {
    label: 'carbon dioxide in the air',
    source: source('cipm2007', 'composition of dry air', 'memory'),
  },
);

const saturation = (T: number): number =>
  Math.exp(1.2378847e-5 * T * T - 1.9121316e-2 * T + 33.93711047 - 6343.1645 / T);

const vapourFraction = (T: number, p: number, RH: number): number =>
  (RH * enhancementFactorCipm2007.kernel(T, p) * saturation(T)) / p;

function compressibility(T: number, p: number, xv: number): number {
  const t = T - 273.15;
  const first =
    1.58123e-6 + t * (-2.9331e-8 + 1.1043e-10 * t) + xv * (5.707e-6 - 2.051e-8 * t + xv * (1.9898e-4 - 2.376e-6 * t));
  return 1 - (p / T) * first + (p / T) ** 2 * (1.83e-11 - 7.65e-9 * xv * xv);
}

/**
 * Saturation pressure of pure vapour, CIPM-2007.
 *
 * @function
 * @returns One absolute pressure; carries a note outside 15 to 27 °C.
 * @throws CalculationError if the temperature is outside 0 to 40 °C.
 * @example
 * saturationPressureCipm2007({ temperature: temperature(18, '°C') }).in('Pa') //=> 2064.59
 */
export const saturationPressureCipm2007 = calculation({
  name: 'saturation pressure, CIPM-2007',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
  },
  output: output('psv', 'absolute pressure', 'Pa'),
  formula: 'exp(1.2378847e-5 * T^2 - 1.9121316e-2 * T + 33.93711047 - 6343.1645 / T)',
  si: saturation,
  rises: ['T'],
  sources: SOURCES,
});

/**
 * Mole fraction of water vapour in air, CIPM-2007; relative humidity is counted from saturation in air, enhancement factor included.
 *
 * @function
 * @returns One mole fraction; carries a note outside 600 to 1100 hPa and 15 to 27 °C.
 * @throws CalculationError if an input is impossible.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * vapourMoleFractionCipm2007({ ...room, relativeHumidity: relativeHumidity(45, '%') }).in('%') //=> 0.991026
 */
export const vapourMoleFractionCipm2007 = calculation({
  name: 'mole fraction of vapour, CIPM-2007',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Vapour over that of saturated air. */
    relativeHumidity: input('RH', 'relative humidity', { min: 0, max: 1, typical: 0.45 }),
  },
  output: output('xv', 'mole fraction', '%'),
  formula: 'RH * f(T, p) * psv(T) / p',
  uses: { f: enhancementFactorCipm2007, psv: saturationPressureCipm2007 },
  si: vapourFraction,
  rises: ['T', 'RH'],
  falls: ['p'],
  sources: SOURCES,
});

/**
 * Compressibility factor of moist air, CIPM-2007.
 *
 * @function
 * @returns A ratio a little below 1; carries a note outside 600 to 1100 hPa and 15 to 27 °C.
 * @throws CalculationError if an input is impossible.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * compressibilityFactorCipm2007({ ...room, vapourMoleFraction: moleFraction(0.99, '%') }).in('1') //=> 0.999628
 */
export const compressibilityFactorCipm2007 = calculation({
  name: 'compressibility factor, CIPM-2007',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Share of water vapour in the molecules. */
    vapourMoleFraction: input('xv', 'mole fraction', { min: 0, max: 0.15, typical: 0.0099 }),
  },
  output: output('Z', 'ratio', '1'),
  formula:
    '1 - p / T * (1.58123e-6 - 2.9331e-8 * (T - 273.15) + 1.1043e-10 * (T - 273.15)^2 + (5.707e-6 - 2.051e-8 * (T - 273.15)) * xv + (1.9898e-4 - 2.376e-6 * (T - 273.15)) * xv^2) + (p / T)^2 * (1.83e-11 - 7.65e-9 * xv^2)',
  si: compressibility,
  falls: ['p', 'xv'],
  sources: SOURCES,
});

/**
 * Density of moist air, CIPM-2007: what metrology institutes use, to 22 parts per million.
 *
 * @function
 * @returns One density, vapour included; carries a note outside 600 to 1100 hPa and 15 to 27 °C.
 * @throws CalculationError if an input is impossible.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * moistAirDensityCipm2007({ ...room, relativeHumidity: relativeHumidity(45, '%') }).in('kg/m³') //=> 1.12215
 */
export const moistAirDensityCipm2007 = calculation({
  name: 'density of moist air, CIPM-2007',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Vapour over that of saturated air, enhancement factor included. */
    relativeHumidity: input('RH', 'relative humidity', { min: 0, max: 1, typical: 0.45 }),
    /** Share of carbon dioxide in the dry air; more where people breathe. */
    carbonDioxide: assumed('xc', 'mole fraction', { min: 0, max: 0.02, assume: carbonDioxideOfCipm2007 }),
  },
  output: output('rho', 'density', 'kg/m³'),
  formula:
    'p / (Z(T, p, xv(T, p, RH)) * 8.314472 * T) * ((28.96546e-3 + 12.011e-3 * (xc - 0.0004)) * (1 - xv(T, p, RH)) + 18.01528e-3 * xv(T, p, RH))',
  uses: { Z: compressibilityFactorCipm2007, xv: vapourMoleFractionCipm2007 },
  si: (T, p, RH, xc) => {
    const xv = vapourFraction(T, p, RH);
    const molarMass = (28.96546e-3 + 12.011e-3 * (xc - 0.0004)) * (1 - xv) + 18.01528e-3 * xv;
    return (p / (compressibility(T, p, xv) * 8.314472 * T)) * molarMass;
  },
  rises: ['p', 'xc'],
  falls: ['T', 'RH'],
  sources: SOURCES,
});
