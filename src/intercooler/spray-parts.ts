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
import { temperature } from '../units/index.js';
import { CARBON_DIOXIDE_CAUTIONS, NITROUS_OXIDE_CAUTIONS, WATER_CAUTIONS } from './spray-cautions.js';

/** Above these a bottle holds no liquid. */
export const CRITICAL_TEMPERATURE = { carbonDioxide: 304.1282, nitrousOxide: 309.52 } as const;

/** What the solid or liquid at the nozzle takes up when it turns to gas at 1 atm. */
export const LATENT_HEAT_AT_NOZZLE = { carbonDioxide: 571000, nitrousOxide: 374282 } as const;

const GAS_TEMPERATURE = constant('intercooler/spray-gas-temperature', temperature(25, '°C'), {
  label: 'temperature at which the gas leaves',
  source: commonPractice('gas leaves the core about as warm as the room'),
  halfWidth: 10,
});

const BOTTLE = { min: 243.15, max: 333.15, typical: 293.15 };
const GAS = { min: 240, max: 360 };

export const GAS_INPUT = assumed('Tg', 'temperature', { ...GAS, assume: GAS_TEMPERATURE });
export const VAPOUR_INPUT = assumed('Tg', 'temperature', {
  min: 273.15,
  max: 373.15,
  trusted: [278.15, 333.15],
  assume: GAS_TEMPERATURE,
});
export const BOTTLE_INPUT = input('Tb', 'temperature', BOTTLE);
export const WATER_INPUT = input('Tw', 'temperature', { min: 273.15, max: 373.15, typical: 291.15 });

export const hasCarbonDioxideLiquid = {
  need: 'bottleTemperature must be below 31.0 °C: above, a carbon dioxide bottle holds no liquid to spray',
  holds: (Tb: number): boolean => Tb < CRITICAL_TEMPERATURE.carbonDioxide,
};

export const hasNitrousOxideLiquid = {
  need: 'bottleTemperature must be below 36.4 °C: above, a nitrous oxide bottle holds no liquid to spray',
  holds: (Tb: number): boolean => Tb < CRITICAL_TEMPERATURE.nitrousOxide,
};

export const CARBON_DIOXIDE_SOURCES = [
  source('spanWagner1996', 'enthalpy of saturated liquid and of gas at 1 atm', 'memory'),
  source('coolprop', 'CarbonDioxide, coefficients of the equation of state', 'read'),
  derived('a short fit to that equation of state, within 0.04 kJ/kg from -30 °C to 0.2 K below the critical point'),
];

export const NITROUS_OXIDE_SOURCES = [
  source('lemmonSpan2006', 'enthalpy of saturated liquid and of gas at 1 atm', 'memory'),
  source('coolprop', 'NitrousOxide, coefficients of the equation of state', 'read'),
  derived('a short fit to that equation of state, within 0.1 kJ/kg from -30 °C to 0.2 K below the critical point'),
];

/**
 * The part of the cold of carbon dioxide from a liquid bottle that sits in the snow at the nozzle.
 *
 * Liquid that leaves the nozzle flashes into snow and cold gas at -78 °C. What the snow takes up when it turns to gas is this; snow that
 * blows past the fins is lost with it. Never add the heat of sublimation of dry ice to it: it is in here already, for the share that is
 * snow.
 *
 * @function
 * @returns One specific energy per mass of liquid from the bottle, with the cautions for carbon dioxide.
 * @throws CalculationError at or above 31.0 °C, where the bottle holds no liquid.
 * @example
 * sprayLatentPart.carbonDioxide({ bottleTemperature: temperature(20, '°C') }).in('kJ/kg') //=> 166.7
 */
export const latentPartOfCarbonDioxide = calculation({
  name: 'latent part of carbon dioxide spray',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Temperature of the liquid in the bottle. */
    bottleTemperature: BOTTLE_INPUT,
  },
  output: output('ql', 'specific energy', 'kJ/kg'),
  formula: `92475 + 149456 * cbrt(1 - Tb / ${CRITICAL_TEMPERATURE.carbonDioxide}) + 109115 * cbrt(1 - Tb / ${CRITICAL_TEMPERATURE.carbonDioxide})^2 + 358614 * (1 - Tb / ${CRITICAL_TEMPERATURE.carbonDioxide})`,
  si: (Tb) => {
    const distance = (CRITICAL_TEMPERATURE.carbonDioxide - Tb) / CRITICAL_TEMPERATURE.carbonDioxide;
    const y = Math.cbrt(distance);
    return 92475 + (149456 + 109115 * y) * y + 358614 * distance;
  },
  rules: [hasCarbonDioxideLiquid],
  notes: CARBON_DIOXIDE_CAUTIONS,
  falls: ['Tb'],
  sources: CARBON_DIOXIDE_SOURCES,
});

/**
 * The part of the cold of sprayed carbon dioxide that its gas takes up from -78 °C to where it leaves.
 *
 * @function
 * @returns One specific energy, with the cautions for carbon dioxide.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * spraySensiblePart.carbonDioxide({ gasTemperature: temperature(25, '°C') }).in('kJ/kg') //=> 83.24
 */
export const sensiblePartOfCarbonDioxide = calculation({
  name: 'sensible part of carbon dioxide spray',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Temperature at which the gas leaves the core. */
    gasTemperature: GAS_INPUT,
  },
  output: output('qs', 'specific energy', 'kJ/kg'),
  formula: '83241 + 850.7 * (Tg - 298.15) + 0.474 * (Tg - 298.15)^2',
  si: (Tg) => 83241 + (850.7 + 0.474 * (Tg - 298.15)) * (Tg - 298.15),
  notes: CARBON_DIOXIDE_CAUTIONS,
  rises: ['Tg'],
  sources: CARBON_DIOXIDE_SOURCES,
});

/**
 * The part of the cold of nitrous oxide from a liquid bottle that sits in the droplets at the nozzle.
 *
 * Liquid that leaves the nozzle flashes into droplets and cold gas at -88 °C; the droplets take up this as they evaporate.
 *
 * @function
 * @returns One specific energy per mass of liquid from the bottle, with the cautions for nitrous oxide.
 * @throws CalculationError at or above 36.4 °C, where the bottle holds no liquid.
 * @example
 * sprayLatentPart.nitrousOxide({ bottleTemperature: temperature(20, '°C') }).in('kJ/kg') //=> 159.9
 */
export const latentPartOfNitrousOxide = calculation({
  name: 'latent part of nitrous oxide spray',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Temperature of the liquid in the bottle. */
    bottleTemperature: BOTTLE_INPUT,
  },
  output: output('ql', 'specific energy', 'kJ/kg'),
  formula: `65843 + 227448 * cbrt(1 - Tb / ${CRITICAL_TEMPERATURE.nitrousOxide}) - 229823 * cbrt(1 - Tb / ${CRITICAL_TEMPERATURE.nitrousOxide})^2 + 904546 * (1 - Tb / ${CRITICAL_TEMPERATURE.nitrousOxide}) - 342066 * cbrt(1 - Tb / ${CRITICAL_TEMPERATURE.nitrousOxide})^4`,
  si: (Tb) => {
    const y = Math.cbrt((CRITICAL_TEMPERATURE.nitrousOxide - Tb) / CRITICAL_TEMPERATURE.nitrousOxide);
    return 65843 + (227448 + (-229823 + (904546 - 342066 * y) * y) * y) * y;
  },
  rules: [hasNitrousOxideLiquid],
  notes: NITROUS_OXIDE_CAUTIONS,
  falls: ['Tb'],
  sources: NITROUS_OXIDE_SOURCES,
});

/**
 * The part of the cold of sprayed nitrous oxide that its gas takes up from -88 °C to where it leaves.
 *
 * @function
 * @returns One specific energy, with the cautions for nitrous oxide.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * spraySensiblePart.nitrousOxide({ gasTemperature: temperature(25, '°C') }).in('kJ/kg') //=> 94.27
 */
export const sensiblePartOfNitrousOxide = calculation({
  name: 'sensible part of nitrous oxide spray',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Temperature at which the gas leaves the core. */
    gasTemperature: GAS_INPUT,
  },
  output: output('qs', 'specific energy', 'kJ/kg'),
  formula: '94270 + 882.5 * (Tg - 298.15) + 0.476 * (Tg - 298.15)^2',
  si: (Tg) => 94270 + (882.5 + 0.476 * (Tg - 298.15)) * (Tg - 298.15),
  notes: NITROUS_OXIDE_CAUTIONS,
  rises: ['Tg'],
  sources: NITROUS_OXIDE_SOURCES,
});

export const WATER_SOURCES = [
  source('incropera', 'table A.6, saturated water: 2442 kJ/kg at 25 °C, 4.18 kJ/(kg·K)', 'memory'),
  source('ashrae2017', 'heat capacity of vapour, 1.86 kJ/(kg·K)', 'memory'),
];

/**
 * The part of the cold of sprayed water that evaporation takes up, for water that does evaporate.
 *
 * Into cooling air no more evaporates than saturates it, and the air cannot come below its wet bulb; water that runs off or blows past
 * takes nothing with it.
 *
 * @function
 * @returns One specific energy; carries a note outside 5 to 60 °C.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * sprayLatentPart.water({ gasTemperature: temperature(25, '°C') }).in('kJ/kg') //=> 2442
 */
export const latentPartOfWater = calculation({
  name: 'latent part of water spray',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Temperature at which the vapour leaves the core. */
    gasTemperature: VAPOUR_INPUT,
  },
  output: output('ql', 'specific energy', 'kJ/kg'),
  formula: '2442000 - 2320 * (Tg - 298.15)',
  si: (Tg) => 2442000 - 2320 * (Tg - 298.15),
  notes: WATER_CAUTIONS,
  falls: ['Tg'],
  sources: WATER_SOURCES,
});

/**
 * The part of the cold of sprayed water that warming it takes up, from the tank to where the vapour leaves.
 *
 * @function
 * @returns One specific energy; below zero for water warmer than its vapour leaves.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * spraySensiblePart.water({ waterTemperature: temperature(5, '°C'), gasTemperature: temperature(25, '°C') }).in('kJ/kg') //=> 83.6
 */
export const sensiblePartOfWater = calculation({
  name: 'sensible part of water spray',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Temperature of the water in the tank. */
    waterTemperature: WATER_INPUT,
    /** Temperature at which the vapour leaves the core. */
    gasTemperature: VAPOUR_INPUT,
  },
  output: output('qs', 'specific energy', 'kJ/kg'),
  formula: '4180 * (Tg - Tw)',
  si: (Tw, Tg) => 4180 * (Tg - Tw),
  notes: WATER_CAUTIONS,
  falls: ['Tw'],
  rises: ['Tg'],
  sources: WATER_SOURCES,
});
