import { specificHeatCapacityOfAir } from '../air/constants.js';
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
import { ratio, temperature } from '../units/index.js';
import { COOLANT_INLET, MASS_FLOW } from './bounds.js';
import { DURATION } from './soak-inputs.js';

/** What is assumed where the capture efficiency of a spray was not measured. */
export const captureEfficiencyOfSpray = constant('intercooler/spray-capture-efficiency', ratio(0.45), {
  label: 'capture efficiency of the spray',
  source: commonPractice('0.3 to 0.6 of the cold of a spray reaches the charge'),
  halfWidth: 0.15,
});

const CAPACITY = { min: 1e4, max: 4e6, typical: 249970 };
const SPRAY_FLOW = { min: 0, max: 1, typical: 0.02 };
const DROP = { min: 0, max: 200, typical: 10 };
const HEAT_CAPACITY = { min: 900, max: 1300, assume: specificHeatCapacityOfAir };
const CAPTURED = { min: 0.01, max: 1, trusted: [0.05, 0.8] as const, assume: captureEfficiencyOfSpray };
const FREEZING = 273.15;
/** Dry ice, the coldest there is by mass from a bottle or box, has 0.65 MJ/kg. */
const MOST_COLD_OF_A_GAS = 1e6;

/**
 * What nothing sprayed can cool below: where the coolant itself turns to gas at 1 atm. For water it is the wet bulb of the cooling air,
 * `humidAir(…).wetBulb`.
 */
export const coldestOfSpray = {
  carbonDioxide: constant('intercooler/coldest-carbon-dioxide', temperature(194.7, 'K'), {
    label: 'sublimation point of carbon dioxide at 1 atm',
    source: source('spanWagner1996', 'sublimation at 1 atm, 194.69 K', 'memory'),
    halfWidth: 0.1,
  }),
  nitrousOxide: constant('intercooler/coldest-nitrous-oxide', temperature(184.7, 'K'), {
    label: 'boiling point of nitrous oxide at 1 atm',
    source: source('lemmonSpan2006', 'boiling at 1 atm, 184.68 K', 'memory'),
    halfWidth: 0.1,
  }),
} as const;

const LIMITS = {
  /** Temperature of the charge behind the core without the spray. */
  chargeTemperature: input('Tc', 'temperature', { min: 200, max: 700, typical: 318.15 }),
  /** What the coolant cannot cool below: of {@link coldestOfSpray}, or for water the wet bulb of the cooling air. */
  coldest: input('Tk', 'temperature', { min: 150, max: 373.15, typical: 194.7 }),
};
const NOT_COLDER = 'the charge must not come below the coolant itself, however much of it is sprayed';

const SOURCES = [derived('heat balance between spray and charge'), commonPractice('capture efficiency 0.3 to 0.6')];

/**
 * Flow of coolant that takes a given drop out of the charge temperature.
 *
 * Take the cold per mass from {@link sprayCapacity}; its cautions come along. Where a test gave a capture efficiency, give that with its
 * uncertainty: it governs the answer.
 *
 * @function
 * @returns One mass flow.
 * @throws CalculationError if the drop would take the charge below the coolant itself, or an input is physically impossible.
 * @example
 * sprayFlowForDrop({
 *   chargeFlow: massFlow(0.2, 'kg/s'), temperatureDrop: temperatureDifference(10, 'K'),
 *   capacity: sprayCapacity.carbonDioxide({ bottleTemperature: temperature(20, '°C') }),
 *   chargeTemperature: temperature(45, '°C'), coldest: coldestOfSpray.carbonDioxide,
 * }).in('g/s') //=> 17.87
 */
export const sprayFlowForDrop = calculation({
  name: 'spray flow for a temperature drop',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Mass flow of charge. */
    chargeFlow: input('m', 'mass flow', MASS_FLOW),
    /** How much colder the charge is to leave the core. */
    temperatureDrop: input('dT', 'temperature difference', DROP),
    /** Cold per mass of coolant. */
    capacity: input('q', 'specific energy', CAPACITY),
    /** Share of the cold that reaches the charge. */
    captureEfficiency: assumed('use', 'ratio', CAPTURED),
    /** Specific heat capacity of the charge at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
    ...LIMITS,
  },
  output: output('ms', 'mass flow', 'g/s'),
  formula: 'm * cp * dT / (q * use)',
  si: (m, dT, q, use, cp) => (m * cp * dT) / (q * use),
  rules: [{ need: NOT_COLDER, holds: (_m, dT, _q, _use, _cp, Tc, Tk) => dT <= Tc - Tk }],
  rises: ['m', 'dT', 'cp'],
  falls: ['q', 'use'],
  sources: SOURCES,
});

/**
 * Mass of coolant that a pull takes, for a given drop of the charge temperature throughout it.
 *
 * @function
 * @returns One mass.
 * @throws CalculationError if the drop would take the charge below the coolant itself, or an input is physically impossible.
 * @example
 * sprayMassForPull({
 *   chargeFlow: massFlow(0.2, 'kg/s'), temperatureDrop: temperatureDifference(10, 'K'), duration: time(10, 's'),
 *   capacity: sprayCapacity.carbonDioxide({ bottleTemperature: temperature(20, '°C') }),
 *   chargeTemperature: temperature(45, '°C'), coldest: coldestOfSpray.carbonDioxide,
 * }).in('g') //=> 178.7
 */
export const sprayMassForPull = calculation({
  name: 'coolant mass for a pull',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Mass flow of charge, mean over the pull. */
    chargeFlow: input('m', 'mass flow', MASS_FLOW),
    /** How much colder the charge is to leave the core. */
    temperatureDrop: input('dT', 'temperature difference', DROP),
    /** How long the spray is on. */
    duration: input('t', 'time', DURATION),
    /** Cold per mass of coolant. */
    capacity: input('q', 'specific energy', CAPACITY),
    /** Share of the cold that reaches the charge. */
    captureEfficiency: assumed('use', 'ratio', CAPTURED),
    /** Specific heat capacity of the charge at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
    ...LIMITS,
  },
  output: output('M', 'mass', 'g'),
  formula: 'm * cp * dT * t / (q * use)',
  si: (m, dT, t, q, use, cp) => (m * cp * dT * t) / (q * use),
  rules: [{ need: NOT_COLDER, holds: (_m, dT, _t, _q, _use, _cp, Tc, Tk) => dT <= Tc - Tk }],
  rises: ['m', 'dT', 't', 'cp'],
  falls: ['q', 'use'],
  sources: SOURCES,
});

/**
 * Drop of the charge temperature to expect from a flow of coolant.
 *
 * @function
 * @returns One temperature difference.
 * @throws CalculationError if so much coolant would take the charge below the coolant itself, or an input is physically impossible.
 * @example
 * sprayDrop({
 *   sprayFlow: massFlow(20, 'g/s'), chargeFlow: massFlow(0.2, 'kg/s'),
 *   capacity: sprayCapacity.carbonDioxide({ bottleTemperature: temperature(20, '°C') }),
 *   chargeTemperature: temperature(45, '°C'), coldest: coldestOfSpray.carbonDioxide,
 * }).in('K') //=> 11.19
 */
export const sprayDrop = calculation({
  name: 'temperature drop by a spray',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Mass flow of coolant. */
    sprayFlow: input('ms', 'mass flow', SPRAY_FLOW),
    /** Mass flow of charge. */
    chargeFlow: input('m', 'mass flow', MASS_FLOW),
    /** Cold per mass of coolant. */
    capacity: input('q', 'specific energy', CAPACITY),
    /** Share of the cold that reaches the charge. */
    captureEfficiency: assumed('use', 'ratio', CAPTURED),
    /** Specific heat capacity of the charge at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
    ...LIMITS,
  },
  output: output('dT', 'temperature difference', 'K'),
  formula: 'ms * q * use / (m * cp)',
  si: dropOf,
  rules: [{ need: NOT_COLDER, holds: (ms, m, q, use, cp, Tc, Tk) => dropOf(ms, m, q, use, cp) <= Tc - Tk }],
  rises: ['ms', 'q', 'use'],
  falls: ['m', 'cp'],
  sources: SOURCES,
});

function dropOf(ms: number, m: number, q: number, use: number, cp: number): number {
  return (ms * q * use) / (m * cp);
}

/**
 * Largest drop of the charge temperature that a flow of coolant can give: all of its cold in the charge. A claim above it is wrong, and so
 * is any that takes the charge below the coolant itself.
 *
 * @function
 * @returns One temperature difference.
 * @throws CalculationError if so much coolant would take the charge below the coolant itself, or an input is physically impossible.
 * @example
 * largestSprayDrop({
 *   sprayFlow: massFlow(20, 'g/s'), chargeFlow: massFlow(0.2, 'kg/s'),
 *   capacity: sprayCapacity.carbonDioxide({ bottleTemperature: temperature(20, '°C') }),
 *   chargeTemperature: temperature(45, '°C'), coldest: coldestOfSpray.carbonDioxide,
 * }).in('K') //=> 24.87
 */
export const largestSprayDrop = calculation({
  name: 'largest temperature drop by a spray',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Mass flow of coolant. */
    sprayFlow: input('ms', 'mass flow', SPRAY_FLOW),
    /** Mass flow of charge. */
    chargeFlow: input('m', 'mass flow', MASS_FLOW),
    /** Cold per mass of coolant. */
    capacity: input('q', 'specific energy', CAPACITY),
    /** Specific heat capacity of the charge at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
    ...LIMITS,
  },
  output: output('dTmax', 'temperature difference', 'K'),
  formula: 'ms * q / (m * cp)',
  si: (ms, m, q, cp) => dropOf(ms, m, q, 1, cp),
  rules: [{ need: NOT_COLDER, holds: (ms, m, q, cp, Tc, Tk) => dropOf(ms, m, q, 1, cp) <= Tc - Tk }],
  rises: ['ms', 'q'],
  falls: ['m', 'cp'],
  sources: [derived('heat balance between spray and charge')],
});

/**
 * Share of the cold of a spray that reached the charge, from a test with and without it.
 *
 * @function
 * @returns One ratio. Above 100 % it carries a note: something else cooled too, or a reading is wrong.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * captureEfficiencyFromTest({
 *   temperatureDrop: temperatureDifference(9, 'K'), sprayFlow: massFlow(20, 'g/s'), chargeFlow: massFlow(0.2, 'kg/s'),
 *   capacity: sprayCapacity.carbonDioxide({ bottleTemperature: temperature(20, '°C') }),
 * }).in('%') //=> 36.2
 */
export const captureEfficiencyFromTest = calculation({
  name: 'capture efficiency of a spray from a test',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** How much colder the charge left the core with the spray than without, all else equal. */
    temperatureDrop: input('dT', 'temperature difference', { ...DROP, typical: 9 }),
    /** Mass flow of coolant, from the weight of the bottle before and after. */
    sprayFlow: input('ms', 'mass flow', { ...SPRAY_FLOW, min: 1e-5 }),
    /** Mass flow of charge. */
    chargeFlow: input('m', 'mass flow', MASS_FLOW),
    /** Cold per mass of coolant. */
    capacity: input('q', 'specific energy', CAPACITY),
    /** Specific heat capacity of the charge at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
  },
  output: output('use', 'ratio', '%'),
  formula: 'm * cp * dT / (ms * q)',
  si: captured,
  rules: [
    {
      need: 'no more cold in the charge than the spray brought (else something else cooled too, or a reading is wrong)',
      holds: (dT, ms, m, q, cp) => captured(dT, ms, m, q, cp) <= 1,
      otherwise: 'note',
    },
  ],
  rises: ['dT', 'm', 'cp'],
  falls: ['ms', 'q'],
  sources: [derived('heat balance between spray and charge')],
});

function captured(dT: number, ms: number, m: number, q: number, cp: number): number {
  return (m * cp * dT) / (ms * q);
}

/**
 * Temperature of the cooling air at the face of a core when a coolant is sprayed into it.
 *
 * More fan air dilutes a fixed spray, so that it can end in a warmer charge. For gases from a bottle and dry ice: water cannot bring the
 * air below its wet bulb, however much is sprayed, and what evaporates into it depends on its humidity.
 *
 * @function
 * @returns One temperature. Below 0 °C it carries a note: frost blocks the face.
 * @throws CalculationError if the coolant is water, or the air would come below -78 °C, where no spray here still takes up heat.
 * @example
 * sprayedFaceTemperature({
 *   airTemperature: temperature(18, '°C'), coolingAirFlow: massFlow(0.55, 'kg/s'), sprayFlow: massFlow(20, 'g/s'),
 *   capacity: sprayCapacity.carbonDioxide({ bottleTemperature: temperature(20, '°C') }),
 * }).in('°C') //=> 13.93
 */
export const sprayedFaceTemperature = calculation({
  name: 'face temperature with a spray',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Temperature of the cooling air before the spray. */
    airTemperature: input('Ta', 'temperature', COOLANT_INLET),
    /** Mass flow of cooling air. */
    coolingAirFlow: input('mc', 'mass flow', { min: 1e-3, max: 20, typical: 0.55 }),
    /** Mass flow of coolant. */
    sprayFlow: input('ms', 'mass flow', SPRAY_FLOW),
    /** Cold per mass of coolant. */
    capacity: input('q', 'specific energy', CAPACITY),
    /** Share of the cold that reaches the air through the core. */
    captureEfficiency: assumed('use', 'ratio', CAPTURED),
    /** Specific heat capacity of the cooling air at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
  },
  output: output('Tf', 'temperature', '°C'),
  formula: 'Ta - ms * q * use / (mc * cp)',
  si: sprayedFace,
  rules: [
    {
      need:
        'capacity must be that of a gas, at most 1 MJ/kg: water cools air no further than to its wet bulb, and no more of it evaporates than ' +
        'brings the air there (waterEvaporatedBySpray and faceTemperatureWithWaterSpray take the humidity that this depends on)',
      holds: (_Ta, _mc, _ms, q) => q <= MOST_COLD_OF_A_GAS,
    },
    {
      need: 'the air must stay above -78 °C: colder, the spray does not evaporate into so little air',
      holds: (Ta, mc, ms, q, use, cp) => sprayedFace(Ta, mc, ms, q, use, cp) >= 195,
    },
    {
      need: 'a face above 0 °C (below it the moisture of the air freezes on the fins and blocks the face)',
      holds: (Ta, mc, ms, q, use, cp) => sprayedFace(Ta, mc, ms, q, use, cp) >= FREEZING,
      otherwise: 'note',
    },
  ],
  rises: ['Ta', 'mc', 'cp'],
  falls: ['ms', 'q', 'use'],
  sources: SOURCES,
});

function sprayedFace(Ta: number, mc: number, ms: number, q: number, use: number, cp: number): number {
  return Ta - (ms * q * use) / (mc * cp);
}

/**
 * What the coolant of a pull costs.
 *
 * @function
 * @returns A cost in the currency of the price, which you name with a label; nothing is converted.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * sprayCostPerPull({ mass: mass(179, 'g'), price: costPerMass(3.5, '1/kg') }).in('1') //=> 0.6265
 */
export const sprayCostPerPull = calculation({
  name: 'cost of coolant per pull',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Mass of coolant that a pull takes. */
    mass: input('M', 'mass', { min: 0, max: 1000, typical: 0.179 }),
    /** Price of the coolant by mass. */
    price: input('c', 'cost per mass', { min: 0, max: 1e9, typical: 3.5 }),
  },
  output: output('cost', 'cost', '1'),
  formula: 'M * c',
  si: (M, c) => M * c,
  rises: ['M', 'c'],
  sources: [derived('mass times price')],
});
