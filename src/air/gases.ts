import { calculation, input, output, source, type Calculation, type RequiredInput } from '../calculation/index.js';
import type { Source } from '../units/index.js';
import {
  ARGON,
  CARBON_DIOXIDE,
  DATUM,
  enthalpyAt,
  entropyFunctionAt,
  heatCapacityAt,
  mixed,
  MOLAR_GAS_CONSTANT,
  NITROGEN,
  OXYGEN,
  WATER_VAPOUR,
  type IdealGas,
} from './nasa-polynomials.js';
import { GAS_TEMPERATURE } from './ideal-gas.js';

type OfTemperature<K extends 'specific heat capacity' | 'specific energy'> = Calculation<
  { temperature: RequiredInput<'temperature'> },
  K
>;

const GLENN: readonly Source[] = [
  source('nasaTp2002', 'coefficients for 200 to 1000 K', 'memory'),
  source('cantera', 'airNASA9, which restates them', 'read'),
];
const GRI: readonly Source[] = [
  source('griMech', 'coefficients for 200 to 1000 K', 'memory'),
  source('cantera', 'gri30, which restates them', 'read'),
];

/** The terms of a polynomial that are there, multiplied by the gas constant over the molar mass. */
function formulaOf({ molarMass, coefficients }: IdealGas, terms: readonly string[]): string {
  const shown = coefficients.flatMap((a, i) => (a === 0 ? [] : `(${a}) * ${terms[i]!}`));
  return `${MOLAR_GAS_CONSTANT} / ${molarMass} * (${shown.join(' + ')})`;
}

const POWERS = ['T^(-2)', 'T^(-1)', '1', 'T', 'T^2', 'T^3', 'T^4'];
const INTEGRALS = [
  `(1 / ${DATUM} - 1 / T)`,
  `log(T / ${DATUM})`,
  `(T - ${DATUM})`,
  ...[2, 3, 4, 5].map((n) => `(T^${n} - ${DATUM}^${n}) / ${n}`),
];
const INTEGRALS_OVER_T = [
  `(1 / ${DATUM}^2 - 1 / T^2) / 2`,
  `(1 / ${DATUM} - 1 / T)`,
  `log(T / ${DATUM})`,
  `(T - ${DATUM})`,
  ...[2, 3, 4].map((n) => `(T^${n} - ${DATUM}^${n}) / ${n}`),
];

const inputs = {
  /** Temperature of the gas. */
  temperature: input('T', 'temperature', GAS_TEMPERATURE),
};

function heatCapacityOf(
  name: string,
  gas: IdealGas,
  sources: readonly Source[],
): OfTemperature<'specific heat capacity'> {
  const polynomial = mixed([[gas, 1]]);
  return calculation({
    name: `heat capacity of ${name}`,
    task: 'describe the air',
    inputs,
    output: output('cp', 'specific heat capacity', 'J/(kg·K)'),
    formula: formulaOf(gas, POWERS),
    si: (T) => heatCapacityAt(polynomial, T),
    sources,
  });
}

function enthalpyOf(name: string, gas: IdealGas, sources: readonly Source[]): OfTemperature<'specific energy'> {
  const polynomial = mixed([[gas, 1]]);
  return calculation({
    name: `enthalpy of ${name}`,
    task: 'describe the air',
    inputs,
    output: output('h', 'specific energy', 'kJ/kg'),
    formula: formulaOf(gas, INTEGRALS),
    si: (T) => enthalpyAt(polynomial, T),
    rises: ['T'],
    sources,
  });
}

function entropyFunctionOf(
  name: string,
  gas: IdealGas,
  sources: readonly Source[],
): OfTemperature<'specific heat capacity'> {
  const polynomial = mixed([[gas, 1]]);
  return calculation({
    name: `entropy function of ${name}`,
    task: 'describe the air',
    inputs,
    output: output('phi', 'specific heat capacity', 'J/(kg·K)'),
    formula: formulaOf(gas, INTEGRALS_OVER_T),
    si: (T) => entropyFunctionAt(polynomial, T),
    rises: ['T'],
    sources,
  });
}

/**
 * Specific heat capacity of nitrogen at constant pressure.
 *
 * @function
 * @returns One specific heat capacity; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * nitrogenHeatCapacity({ temperature: temperature(126.85, '°C') }).in('J/(kg·K)') //=> 1044.09
 */
export const nitrogenHeatCapacity = heatCapacityOf('nitrogen', NITROGEN, GLENN);

/**
 * Specific heat capacity of oxygen at constant pressure.
 *
 * @function
 * @returns One specific heat capacity; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * oxygenHeatCapacity({ temperature: temperature(126.85, '°C') }).in('J/(kg·K)') //=> 941.113
 */
export const oxygenHeatCapacity = heatCapacityOf('oxygen', OXYGEN, GLENN);

/**
 * Specific heat capacity of argon at constant pressure.
 *
 * @function
 * @returns One specific heat capacity; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * argonHeatCapacity({ temperature: temperature(126.85, '°C') }).in('J/(kg·K)') //=> 520.33
 */
export const argonHeatCapacity = heatCapacityOf('argon', ARGON, GLENN);

/**
 * Specific heat capacity of carbon dioxide at constant pressure.
 *
 * @function
 * @returns One specific heat capacity; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * carbonDioxideHeatCapacity({ temperature: temperature(126.85, '°C') }).in('J/(kg·K)') //=> 937.924
 */
export const carbonDioxideHeatCapacity = heatCapacityOf('carbon dioxide', CARBON_DIOXIDE, GRI);

/**
 * Specific heat capacity of water vapour at constant pressure.
 *
 * @function
 * @returns One specific heat capacity; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * waterVapourHeatCapacity({ temperature: temperature(126.85, '°C') }).in('J/(kg·K)') //=> 1902.15
 */
export const waterVapourHeatCapacity = heatCapacityOf('water vapour', WATER_VAPOUR, GRI);

/** Heat capacities of single gases, by name. */
export const gasHeatCapacity = {
  nitrogen: nitrogenHeatCapacity,
  oxygen: oxygenHeatCapacity,
  argon: argonHeatCapacity,
  carbonDioxide: carbonDioxideHeatCapacity,
  waterVapour: waterVapourHeatCapacity,
} as const;

/**
 * Enthalpy of nitrogen as a gas over that at 0 °C.
 *
 * @function
 * @returns One specific energy, negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * nitrogenEnthalpy({ temperature: temperature(126.85, '°C') }).in('kJ/kg') //=> 132.046
 */
export const nitrogenEnthalpy = enthalpyOf('nitrogen', NITROGEN, GLENN);

/**
 * Enthalpy of oxygen as a gas over that at 0 °C.
 *
 * @function
 * @returns One specific energy, negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * oxygenEnthalpy({ temperature: temperature(126.85, '°C') }).in('kJ/kg') //=> 117.479
 */
export const oxygenEnthalpy = enthalpyOf('oxygen', OXYGEN, GLENN);

/**
 * Enthalpy of argon as a gas over that at 0 °C.
 *
 * @function
 * @returns One specific energy, negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * argonEnthalpy({ temperature: temperature(126.85, '°C') }).in('kJ/kg') //=> 66.0039
 */
export const argonEnthalpy = enthalpyOf('argon', ARGON, GLENN);

/**
 * Enthalpy of carbon dioxide as a gas over that at 0 °C.
 *
 * @function
 * @returns One specific energy, negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * carbonDioxideEnthalpy({ temperature: temperature(126.85, '°C') }).in('kJ/kg') //=> 111.662
 */
export const carbonDioxideEnthalpy = enthalpyOf('carbon dioxide', CARBON_DIOXIDE, GRI);

/**
 * Enthalpy of water vapour as a gas over that at 0 °C. The heat of evaporation is not in it.
 *
 * @function
 * @returns One specific energy, negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * waterVapourEnthalpy({ temperature: temperature(126.85, '°C') }).in('kJ/kg') //=> 238.175
 */
export const waterVapourEnthalpy = enthalpyOf('water vapour', WATER_VAPOUR, GRI);

/** Enthalpies of single gases, by name. */
export const gasEnthalpy = {
  nitrogen: nitrogenEnthalpy,
  oxygen: oxygenEnthalpy,
  argon: argonEnthalpy,
  carbonDioxide: carbonDioxideEnthalpy,
  waterVapour: waterVapourEnthalpy,
} as const;

/**
 * Entropy function of nitrogen: entropy at constant pressure over that at 0 °C.
 *
 * @function
 * @returns One value in J/(kg·K), negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * nitrogenEntropyFunction({ temperature: temperature(126.85, '°C') }).in('J/(kg·K)') //=> 397.014
 */
export const nitrogenEntropyFunction = entropyFunctionOf('nitrogen', NITROGEN, GLENN);

/**
 * Entropy function of oxygen: entropy at constant pressure over that at 0 °C.
 *
 * @function
 * @returns One value in J/(kg·K), negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * oxygenEntropyFunction({ temperature: temperature(126.85, '°C') }).in('J/(kg·K)') //=> 352.946
 */
export const oxygenEntropyFunction = entropyFunctionOf('oxygen', OXYGEN, GLENN);

/**
 * Entropy function of argon: entropy at constant pressure over that at 0 °C.
 *
 * @function
 * @returns One value in J/(kg·K), negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * argonEntropyFunction({ temperature: temperature(126.85, '°C') }).in('J/(kg·K)') //=> 198.477
 */
export const argonEntropyFunction = entropyFunctionOf('argon', ARGON, GLENN);

/**
 * Entropy function of carbon dioxide: entropy at constant pressure over that at 0 °C.
 *
 * @function
 * @returns One value in J/(kg·K), negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * carbonDioxideEntropyFunction({ temperature: temperature(126.85, '°C') }).in('J/(kg·K)') //=> 334.315
 */
export const carbonDioxideEntropyFunction = entropyFunctionOf('carbon dioxide', CARBON_DIOXIDE, GRI);

/**
 * Entropy function of water vapour: entropy at constant pressure over that at 0 °C.
 *
 * @function
 * @returns One value in J/(kg·K), negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * waterVapourEntropyFunction({ temperature: temperature(126.85, '°C') }).in('J/(kg·K)') //=> 715.678
 */
export const waterVapourEntropyFunction = entropyFunctionOf('water vapour', WATER_VAPOUR, GRI);

/** Entropy functions of single gases, by name. */
export const gasEntropyFunction = {
  nitrogen: nitrogenEntropyFunction,
  oxygen: oxygenEntropyFunction,
  argon: argonEntropyFunction,
  carbonDioxide: carbonDioxideEntropyFunction,
  waterVapour: waterVapourEntropyFunction,
} as const;
