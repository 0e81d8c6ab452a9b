import { calculation, derived, input, output, source } from '../calculation/index.js';
import { CHARGE_CAPACITY_RATE, COOLANT_INLET, HOT_INLET } from './bounds.js';

const EFFECTIVENESS = { min: 1e-3, max: 1, typical: 0.8 };
const RATE = { min: 1, max: 5e5 };

const LOOP = {
  /** Charge temperature into the charge cooler. */
  hotInlet: input('T1', 'temperature', HOT_INLET),
  /** Temperature of the air at the face of the front radiator. */
  radiatorFace: input('Ta', 'temperature', COOLANT_INLET),
  /** Mass flow times specific heat capacity of the charge. */
  chargeCapacityRate: input('Ch', 'heat capacity rate', CHARGE_CAPACITY_RATE),
  /** True effectiveness of the charge cooler, between charge and liquid. */
  coolerEffectiveness: input('ea', 'ratio', EFFECTIVENESS),
  /** Mass flow times specific heat capacity of the liquid that goes round. */
  liquidCapacityRate: input('CL', 'heat capacity rate', { ...RATE, typical: 600 }),
  /** True effectiveness of the front radiator, between liquid and air. */
  radiatorEffectiveness: input('eb', 'ratio', EFFECTIVENESS),
  /** Mass flow times specific heat capacity of the air through the radiator. */
  radiatorAirCapacityRate: input('Cr', 'heat capacity rate', { ...RATE, typical: 1000 }),
};

const WARMER_CHARGE = {
  need: 'a charge that enters no colder than the air at the radiator (else the loop warms it)',
  holds: (T1: number, Ta: number) => T1 >= Ta,
  otherwise: 'note',
} as const;

const SOURCES = [
  derived('the heat balances of the two exchangers and of the liquid between them'),
  source('kaysLondon', 'chapter 2, liquid-coupled exchangers', 'memory'),
];

/** Heat per kelvin between the charge and the liquid as it enters the charge cooler. */
const atCooler = (Ch: number, ea: number, CL: number): number => ea * Math.min(Ch, CL);

/** Heat per kelvin between the liquid as it enters the radiator and the air. */
const atRadiator = (CL: number, eb: number, Cr: number): number => eb * Math.min(CL, Cr);

function loopHeat(T1: number, Ta: number, Ch: number, ea: number, CL: number, eb: number, Cr: number): number {
  return (T1 - Ta) / (1 / atCooler(Ch, ea, CL) + 1 / atRadiator(CL, eb, Cr) - 1 / CL);
}

/**
 * Heat that a liquid loop carries from the charge to the air, once it has settled: charge cooler, pump, front radiator.
 *
 * The two effectivenesses are taken as given, although both change with the liquid flow. A loop with a large tank or with ice in it takes
 * minutes to settle, longer than a pull: until then the tank sets the temperature of the liquid, and the charge cooler alone counts.
 *
 * @function
 * @returns One power. Below zero, with a note, where the charge enters colder than the air at the radiator.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * liquidLoopHeat({
 *   hotInlet: temperature(121, '°C'), radiatorFace: temperature(18, '°C'), chargeCapacityRate: heatCapacityRate(201, 'W/K'),
 *   coolerEffectiveness: percent(80), liquidCapacityRate: heatCapacityRate(600, 'W/K'),
 *   radiatorEffectiveness: percent(75), radiatorAirCapacityRate: heatCapacityRate(900, 'W/K'),
 * }).in('kW') //=> 15.20
 */
export const liquidLoopHeat = calculation({
  name: 'heat carried by a liquid loop',
  task: 'cool the intercooler',
  inputs: LOOP,
  output: output('Q', 'power', 'kW'),
  formula: '(T1 - Ta) / (1 / (ea * min(Ch, CL)) + 1 / (eb * min(CL, Cr)) - 1 / CL)',
  si: loopHeat,
  rules: [WARMER_CHARGE],
  rises: ['T1'],
  falls: ['Ta'],
  sources: SOURCES,
});

/**
 * Charge temperature out of the charge cooler of a settled liquid loop.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * liquidLoopChargeTemperature({
 *   hotInlet: temperature(121, '°C'), radiatorFace: temperature(18, '°C'), chargeCapacityRate: heatCapacityRate(201, 'W/K'),
 *   coolerEffectiveness: percent(80), liquidCapacityRate: heatCapacityRate(600, 'W/K'),
 *   radiatorEffectiveness: percent(75), radiatorAirCapacityRate: heatCapacityRate(900, 'W/K'),
 * }).in('°C') //=> 45.36
 */
export const liquidLoopChargeTemperature = calculation({
  name: 'charge temperature behind a liquid loop',
  task: 'cool the intercooler',
  inputs: LOOP,
  output: output('T2', 'temperature', '°C'),
  formula: 'T1 - Q(T1, Ta, Ch, ea, CL, eb, Cr) / Ch',
  uses: { Q: liquidLoopHeat },
  si: (T1, Ta, Ch, ea, CL, eb, Cr) => T1 - loopHeat(T1, Ta, Ch, ea, CL, eb, Cr) / Ch,
  rules: [WARMER_CHARGE],
  rises: ['T1', 'Ta'],
  sources: SOURCES,
});

/**
 * Temperature of the liquid where it enters the charge cooler of a settled loop: the coldest in the loop.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * liquidLoopColdTemperature({
 *   hotInlet: temperature(121, '°C'), radiatorFace: temperature(18, '°C'), chargeCapacityRate: heatCapacityRate(201, 'W/K'),
 *   coolerEffectiveness: percent(80), liquidCapacityRate: heatCapacityRate(600, 'W/K'),
 *   radiatorEffectiveness: percent(75), radiatorAirCapacityRate: heatCapacityRate(900, 'W/K'),
 * }).in('°C') //=> 26.45
 */
export const liquidLoopColdTemperature = calculation({
  name: 'temperature of the liquid into the charge cooler',
  task: 'cool the intercooler',
  inputs: LOOP,
  output: output('TLc', 'temperature', '°C'),
  formula: 'Ta + Q(T1, Ta, Ch, ea, CL, eb, Cr) * (1 / (eb * min(CL, Cr)) - 1 / CL)',
  uses: { Q: liquidLoopHeat },
  si: (T1, Ta, Ch, ea, CL, eb, Cr) => Ta + loopHeat(T1, Ta, Ch, ea, CL, eb, Cr) * (1 / atRadiator(CL, eb, Cr) - 1 / CL),
  rules: [WARMER_CHARGE],
  rises: ['T1', 'Ta'],
  sources: SOURCES,
});

/**
 * Temperature of the liquid where it leaves the charge cooler of a settled loop: the warmest in the loop.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * liquidLoopHotTemperature({
 *   hotInlet: temperature(121, '°C'), radiatorFace: temperature(18, '°C'), chargeCapacityRate: heatCapacityRate(201, 'W/K'),
 *   coolerEffectiveness: percent(80), liquidCapacityRate: heatCapacityRate(600, 'W/K'),
 *   radiatorEffectiveness: percent(75), radiatorAirCapacityRate: heatCapacityRate(900, 'W/K'),
 * }).in('°C') //=> 51.79
 */
export const liquidLoopHotTemperature = calculation({
  name: 'temperature of the liquid out of the charge cooler',
  task: 'cool the intercooler',
  inputs: LOOP,
  output: output('TLh', 'temperature', '°C'),
  formula: 'Ta + Q(T1, Ta, Ch, ea, CL, eb, Cr) / (eb * min(CL, Cr))',
  uses: { Q: liquidLoopHeat },
  si: (T1, Ta, Ch, ea, CL, eb, Cr) => Ta + loopHeat(T1, Ta, Ch, ea, CL, eb, Cr) / atRadiator(CL, eb, Cr),
  rules: [WARMER_CHARGE],
  rises: ['T1', 'Ta'],
  sources: SOURCES,
});
