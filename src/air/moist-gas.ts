import { calculation, derived, input, output, source } from '../calculation/index.js';
import {
  carbonDioxideEnthalpy,
  carbonDioxideEntropyFunction,
  carbonDioxideHeatCapacity,
  argonEnthalpy,
  argonEntropyFunction,
  argonHeatCapacity,
  nitrogenEnthalpy,
  nitrogenEntropyFunction,
  nitrogenHeatCapacity,
  oxygenEnthalpy,
  oxygenEntropyFunction,
  oxygenHeatCapacity,
  waterVapourEnthalpy,
  waterVapourEntropyFunction,
  waterVapourHeatCapacity,
} from './gases.js';
import {
  cpMass,
  enthalpyMass,
  entropyFunctionMass,
  GAS_TEMPERATURE,
  gasConstantMass,
  temperatureAtEnthalpyMass,
  temperatureAtEntropyFunctionMass,
} from './ideal-gas.js';
import { DRY_AIR_PARTS, MOLAR_GAS_CONSTANT, WATER_VAPOUR } from './nasa-polynomials.js';

const HUMIDITY_RATIO = { min: 0, max: 1, typical: 0.0062 } as const;
const SOURCES = [
  source('cipm2007', 'composition of dry air', 'memory'),
  derived('heat capacities of ideal gases add up by mass'),
];

const SYMBOLS = ['n', 'o', 'a', 'c'];
const mole = DRY_AIR_PARTS.map(([{ molarMass }, x]) => `${x} * ${molarMass}`);
const MASS = `(${mole.join(' + ')})`;
/** Sum over the gases of dry air by mass, of functions n, o, a and c. */
const OVER_DRY_AIR = `(${mole.map((m, i) => `${m} * ${SYMBOLS[i]!}(T)`).join(' + ')}) / ${MASS}`;
const DRY_GAS_CONSTANT = `${MOLAR_GAS_CONSTANT} * (${DRY_AIR_PARTS.map(([, x]) => `${x}`).join(' + ')}) / ${MASS}`;
const VAPOUR_GAS_CONSTANT = `${MOLAR_GAS_CONSTANT} / ${WATER_VAPOUR.molarMass}`;

/**
 * Specific heat capacity of dry air at constant pressure: nitrogen, oxygen, argon and carbon dioxide.
 *
 * It grows by 1 % from 0 to 130 °C and by 2.5 % to 230 °C, which is what a constant heat capacity leaves out.
 *
 * @function
 * @returns One specific heat capacity; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * dryAirHeatCapacity({ temperature: temperature(126.85, '°C') }).in('J/(kg·K)') //=> 1013.46
 */
export const dryAirHeatCapacity = calculation({
  name: 'heat capacity of dry air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', GAS_TEMPERATURE),
  },
  output: output('cp', 'specific heat capacity', 'J/(kg·K)'),
  formula: OVER_DRY_AIR,
  uses: {
    n: nitrogenHeatCapacity,
    o: oxygenHeatCapacity,
    a: argonHeatCapacity,
    c: carbonDioxideHeatCapacity,
  },
  si: (T) => cpMass(T, 0),
  sources: SOURCES,
});

/**
 * Enthalpy of dry air over that at 0 °C.
 *
 * @function
 * @returns One specific energy, negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * dryAirEnthalpy({ temperature: temperature(126.85, '°C') }).in('kJ/kg') //=> 127.814
 */
export const dryAirEnthalpy = calculation({
  name: 'enthalpy of dry air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', GAS_TEMPERATURE),
  },
  output: output('h', 'specific energy', 'kJ/kg'),
  formula: OVER_DRY_AIR,
  uses: { n: nitrogenEnthalpy, o: oxygenEnthalpy, a: argonEnthalpy, c: carbonDioxideEnthalpy },
  si: (T) => enthalpyMass(T, 0),
  rises: ['T'],
  sources: SOURCES,
});

/**
 * Entropy function of dry air: entropy at constant pressure over that at 0 °C.
 *
 * @function
 * @returns One value in J/(kg·K), negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if the temperature is outside 173.15 to 1200 K.
 * @example
 * dryAirEntropyFunction({ temperature: temperature(126.85, '°C') }).in('J/(kg·K)') //=> 384.227
 */
export const dryAirEntropyFunction = calculation({
  name: 'entropy function of dry air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', GAS_TEMPERATURE),
  },
  output: output('phi', 'specific heat capacity', 'J/(kg·K)'),
  formula: OVER_DRY_AIR,
  uses: {
    n: nitrogenEntropyFunction,
    o: oxygenEntropyFunction,
    a: argonEntropyFunction,
    c: carbonDioxideEntropyFunction,
  },
  si: (T) => entropyFunctionMass(T, 0),
  rises: ['T'],
  sources: SOURCES,
});

/**
 * Gas constant of humid air per kilogram of humid air, from its humidity ratio; of dry air at 0.
 *
 * From the composition of dry air: 10 parts per million above {@link gasConstantOfDryAir}, which the handbook rounds elsewhere.
 *
 * @function
 * @returns One specific gas constant, growing with the humidity because water is lighter.
 * @throws CalculationError if the humidity ratio is outside 0 to 1 kg/kg.
 * @example
 * moistAirGasConstant({ humidityRatio: humidityRatio(6.2, 'g/kg') }).in('J/(kg·K)') //=> 288.12
 */
export const moistAirGasConstant = calculation({
  name: 'gas constant of moist air',
  task: 'describe the air',
  inputs: {
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('R', 'specific gas constant', 'J/(kg·K)'),
  formula: `(${DRY_GAS_CONSTANT} + W * ${VAPOUR_GAS_CONSTANT}) / (1 + W)`,
  si: gasConstantMass,
  rises: ['W'],
  sources: SOURCES,
});

/**
 * Specific heat capacity of humid air at constant pressure, per kilogram of HUMID air; at a humidity ratio of 0, of dry air.
 *
 * The handbook's 1.006 + 1.86 W is per kilogram of dry air instead.
 *
 * @function
 * @returns One specific heat capacity; carries a note outside 200 to 1000 K.
 * @throws CalculationError if an input is impossible.
 * @example
 * const charge = { temperature: temperature(126.85, '°C'), humidityRatio: humidityRatio(6.2, 'g/kg') };
 * moistAirHeatCapacity(charge).in('J/(kg·K)') //=> 1018.94
 */
export const moistAirHeatCapacity = calculation({
  name: 'heat capacity of moist air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', GAS_TEMPERATURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('cp', 'specific heat capacity', 'J/(kg·K)'),
  formula: '(cpair(T) + W * cpvapour(T)) / (1 + W)',
  uses: { cpair: dryAirHeatCapacity, cpvapour: waterVapourHeatCapacity },
  si: cpMass,
  rises: ['W'],
  sources: SOURCES,
});

/**
 * Heat-capacity ratio of humid air at a temperature, as an ideal gas; at a humidity ratio of 0, of dry air.
 *
 * @function
 * @returns A ratio: 1.400 for dry air at 18 °C, 1.386 at 230 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if an input is impossible.
 * @example
 * const charge = { temperature: temperature(126.85, '°C'), humidityRatio: humidityRatio(6.2, 'g/kg') };
 * moistAirHeatCapacityRatio(charge).in('1') //=> 1.39424
 */
export const moistAirHeatCapacityRatio = calculation({
  name: 'heat-capacity ratio of moist air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', GAS_TEMPERATURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('gamma', 'ratio', '1'),
  formula: 'cp(T, W) / (cp(T, W) - R(W))',
  uses: { cp: moistAirHeatCapacity, R: moistAirGasConstant },
  si: (T, W) => cpMass(T, W) / (cpMass(T, W) - gasConstantMass(W)),
  falls: ['W'],
  sources: SOURCES,
});

/**
 * Enthalpy of humid air over that of the same gas at 0 °C, per kilogram of HUMID air: no evaporation or condensation in it.
 *
 * Differences are the work of a compressor or the heat that a core takes out of air that stays dry. With condensation use
 * `moistAirEnthalpy` of humid air.
 *
 * @function
 * @returns One specific energy, negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if an input is impossible.
 * @example
 * const charge = { temperature: temperature(126.85, '°C'), humidityRatio: humidityRatio(6.2, 'g/kg') };
 * moistAirSensibleEnthalpy(charge).in('kJ/kg') //=> 128.494
 */
export const moistAirSensibleEnthalpy = calculation({
  name: 'sensible enthalpy of moist air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', GAS_TEMPERATURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('h', 'specific energy', 'kJ/kg'),
  formula: '(hair(T) + W * hvapour(T)) / (1 + W)',
  uses: { hair: dryAirEnthalpy, hvapour: waterVapourEnthalpy },
  si: enthalpyMass,
  rises: ['T'],
  sources: SOURCES,
});

/**
 * Entropy function of humid air, per kilogram of HUMID air: entropy at constant pressure over that at 0 °C.
 *
 * Along an isentrope it rises by the gas constant times the logarithm of the pressure ratio.
 *
 * @function
 * @returns One value in J/(kg·K), negative below 0 °C; carries a note outside 200 to 1000 K.
 * @throws CalculationError if an input is impossible.
 * @example
 * const charge = { temperature: temperature(126.85, '°C'), humidityRatio: humidityRatio(6.2, 'g/kg') };
 * moistAirEntropyFunction(charge).in('J/(kg·K)') //=> 386.269
 */
export const moistAirEntropyFunction = calculation({
  name: 'entropy function of moist air',
  task: 'describe the air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', GAS_TEMPERATURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('phi', 'specific heat capacity', 'J/(kg·K)'),
  formula: '(phiair(T) + W * phivapour(T)) / (1 + W)',
  uses: { phiair: dryAirEntropyFunction, phivapour: waterVapourEntropyFunction },
  si: entropyFunctionMass,
  rises: ['T'],
  sources: SOURCES,
});

/**
 * Temperature of humid air, from its enthalpy over that at 0 °C: after a heater, a core or a compressor that adds a known heat.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if no temperature from 173.15 to 1200 K has that enthalpy.
 * @example
 * const charge = { enthalpy: specificEnergy(128, 'kJ/kg'), humidityRatio: humidityRatio(6.2, 'g/kg') };
 * temperatureFromSensibleEnthalpy(charge).in('°C') //=> 126.365
 */
export const temperatureFromSensibleEnthalpy = calculation({
  name: 'temperature from sensible enthalpy',
  task: 'describe the air',
  inputs: {
    /** Enthalpy over that at 0 °C, per mass of humid air. */
    enthalpy: input('h', 'specific energy', { min: -2e5, max: 2e6, trusted: [-7e4, 7.6e5], typical: 1.28e5 }),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('T', 'temperature', '°C'),
  formula: 'h == henthalpy(T, W)',
  uses: { henthalpy: moistAirSensibleEnthalpy },
  si: temperatureAtEnthalpyMass,
  rises: ['h'],
  sources: SOURCES,
});

/**
 * Temperature of humid air, from its entropy function: the end of an isentropic compression.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if no temperature from 173.15 to 1200 K has that entropy function.
 * @example
 * const charge = { entropyFunction: specificHeatCapacity(290, 'J/(kg·K)'), humidityRatio: humidityRatio(6.2, 'g/kg') };
 * temperatureFromEntropyFunction(charge).in('°C') //=> 90.7154
 */
export const temperatureFromEntropyFunction = calculation({
  name: 'temperature from entropy function',
  task: 'describe the air',
  inputs: {
    /** Entropy at constant pressure over that at 0 °C, per mass of humid air. */
    entropyFunction: input('phi', 'specific heat capacity', {
      min: -700,
      max: 2900,
      trusted: [-310, 1360],
      typical: 390,
    }),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('T', 'temperature', '°C'),
  formula: 'phi == phifunction(T, W)',
  uses: { phifunction: moistAirEntropyFunction },
  si: temperatureAtEntropyFunctionMass,
  rises: ['phi'],
  sources: SOURCES,
});
