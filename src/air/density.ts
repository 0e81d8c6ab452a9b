import { assumed, calculation, input, output, source } from '../calculation/index.js';
import { gasConstantOfDryAir, MOLAR_MASS_RATIO } from './constants.js';
import { MOLAR_GAS_CONSTANT } from './nasa-polynomials.js';
import { virialOfMoistAir } from './virial.js';

const TEMPERATURE = { min: -100 + 273.15, max: 400 + 273.15, typical: 291.15 };
const PRESSURE = { min: 2e4, max: 1e6, typical: 94100 };
const GAS_CONSTANT = { min: 280, max: 300, assume: gasConstantOfDryAir };
const SOURCES = [
  source('ashrae2017', 'perfect gas relations of moist air', 'memory'),
  source('psychrolib', 'GetDryAirDensity, GetMoistAirDensity', 'read'),
];
/** What compressibility may be worth before a density says so. */
const NEARLY_PERFECT = 1e-3;

/** Density of a real gas over that of a perfect one, less 1. */
function shortfall(T: number, p: number, W: number): number {
  const Z = 1 + (virialOfMoistAir(T, W) * p) / (MOLAR_GAS_CONSTANT * T);
  return 1 / Z - 1;
}

/** A note where a perfect gas is no longer near enough. */
/* @__NO_SIDE_EFFECTS__ */
const nearlyPerfect = (humidityRatio: (p: number, humidity: number) => number) => ({
  need: 'air whose compressibility is worth no more than 0.1 % of its density',
  holds: (...[T, p, humidity]: number[]): boolean =>
    Math.abs(shortfall(T!, p!, humidityRatio(p!, humidity!))) <= NEARLY_PERFECT,
  otherwise: 'note' as const,
  found: (...[T, p, humidity]: number[]): string => {
    const off = 100 * shortfall(T!, p!, humidityRatio(p!, humidity!));
    return `a real gas is ${Math.abs(off).toFixed(2)} % ${off > 0 ? 'denser' : 'thinner'}, see realGasDensity`;
  },
});
const ofVapour = nearlyPerfect((p, pv) => (MOLAR_MASS_RATIO * pv) / (p - pv));

const belowTotal = {
  need: 'the vapour pressure must stay below the total pressure',
  holds: (_T: number, p: number, pv: number): boolean => pv < p,
};

/**
 * Density of dry air, from its temperature and absolute pressure.
 *
 * For air with vapour in it use {@link moistAirDensityFromHumidityRatio} or {@link moistAirDensityFromVapourPressure}; for the part of
 * humid air that burns fuel use {@link partialDensityOfDryAir}. A perfect gas: 0.04 % too low in a room, 0.5 % at 4 bar and -40 °C;
 * {@link realGasDensity} counts that.
 *
 * @function
 * @returns One density; carries a note where compressibility is worth more than 0.1 %.
 * @throws CalculationError if the pressure is outside 20 to 1000 kPa, as one typed in kPa but labelled Pa is.
 * @example
 * dryAirDensity({ temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') }).in('kg/m³') //=> 1.12597
 */
export const dryAirDensity = calculation({
  name: 'dry-air density',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Absolute pressure of the air. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Gas constant of the air. */
    gasConstant: assumed('R', 'specific gas constant', GAS_CONSTANT),
  },
  output: output('rho', 'density', 'kg/m³'),
  formula: 'p / (R * T)',
  si: (T, p, R) => p / (R * T),
  rules: [nearlyPerfect(() => 0)],
  rises: ['p'],
  falls: ['T', 'R'],
  sources: SOURCES,
});

/**
 * Density of humid air, from its vapour pressure.
 *
 * @function
 * @returns One density, vapour included; below that of dry air at the same temperature and pressure, because water is lighter. Carries a
 * note where compressibility is worth more than 0.1 %.
 * @throws CalculationError if the vapour pressure does not stay below the total pressure.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * moistAirDensityFromVapourPressure({ ...room, vapourPressure: absolutePressure(929, 'Pa') }).in('kg/m³') //=> 1.12177
 */
export const moistAirDensityFromVapourPressure = calculation({
  name: 'moist-air density from vapour pressure',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Partial pressure of the water vapour. */
    vapourPressure: input('pv', 'absolute pressure', { min: 0, max: 1e6, typical: 930 }),
    /** Gas constant of the dry air. */
    gasConstant: assumed('R', 'specific gas constant', GAS_CONSTANT),
  },
  output: output('rho', 'density', 'kg/m³'),
  formula: `(p - (1 - ${MOLAR_MASS_RATIO}) * pv) / (R * T)`,
  si: (T, p, pv, R) => (p - (1 - MOLAR_MASS_RATIO) * pv) / (R * T),
  rules: [belowTotal, ofVapour],
  rises: ['p'],
  falls: ['T', 'pv', 'R'],
  sources: SOURCES,
});

/**
 * Density of humid air, from its humidity ratio, which stays the same when the air is compressed or cooled without losing water.
 *
 * @function
 * @returns One density, vapour included; carries a note where compressibility is worth more than 0.1 %.
 * @throws CalculationError if an input is impossible.
 * @example
 * const charge = { temperature: temperature(45, '°C'), pressure: absolutePressure(204, 'kPa') };
 * moistAirDensityFromHumidityRatio({ ...charge, humidityRatio: humidityRatio(6.2, 'g/kg') }).in('kg/m³') //=> 2.22551
 */
export const moistAirDensityFromHumidityRatio = calculation({
  name: 'moist-air density from humidity ratio',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', { min: 0, max: 100, typical: 0.0062 }),
    /** Gas constant of the dry air. */
    gasConstant: assumed('R', 'specific gas constant', GAS_CONSTANT),
  },
  output: output('rho', 'density', 'kg/m³'),
  formula: `p * (1 + W) / (R * T * (1 + W / ${MOLAR_MASS_RATIO}))`,
  si: (T, p, W, R) => (p * (1 + W)) / (R * T * (1 + W / MOLAR_MASS_RATIO)),
  rules: [nearlyPerfect((_p, W) => W)],
  rises: ['p'],
  falls: ['T', 'W', 'R'],
  sources: SOURCES,
});

/**
 * Mass of dry air in a volume of humid air: the part that carries the oxygen.
 *
 * What an engine can burn follows this density, not that of the whole mixture: vapour takes the place of air and then weighs less too.
 *
 * @function
 * @returns One density, vapour left out; carries a note where compressibility is worth more than 0.1 %.
 * @throws CalculationError if the vapour pressure does not stay below the total pressure.
 * @example
 * const room = { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa') };
 * partialDensityOfDryAir({ ...room, vapourPressure: absolutePressure(929, 'Pa') }).in('kg/m³') //=> 1.11486
 */
export const partialDensityOfDryAir = calculation({
  name: 'partial density of dry air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Total absolute pressure. */
    pressure: input('p', 'absolute pressure', PRESSURE),
    /** Partial pressure of the water vapour. */
    vapourPressure: input('pv', 'absolute pressure', { min: 0, max: 1e6, typical: 930 }),
    /** Gas constant of the dry air. */
    gasConstant: assumed('R', 'specific gas constant', GAS_CONSTANT),
  },
  output: output('rho', 'density', 'kg/m³'),
  formula: '(p - pv) / (R * T)',
  si: (T, p, pv, R) => (p - pv) / (R * T),
  rules: [belowTotal, ofVapour],
  rises: ['p'],
  falls: ['T', 'pv', 'R'],
  sources: SOURCES,
});
