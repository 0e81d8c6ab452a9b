import { calculation, derived, input, output, source } from '../calculation/index.js';
import {
  CHARGE_CAPACITY_RATE,
  COOLANT_CAPACITY_RATE,
  COOLANT_INLET,
  EFFECTIVENESS,
  HOT_INLET,
  HOT_OUTLET,
} from './bounds.js';

const DIFFERENT = {
  need: 'hotInlet and coolantInlet must differ',
  holds: (T1: number, _T2: number, Tc: number) => T1 !== Tc,
};

const FAR_ENOUGH = {
  need: 'a hotInlet at least 10 K above coolantInlet (closer, sensor errors govern the result)',
  holds: (T1: number, _T2: number, Tc: number) => T1 - Tc >= 10,
  otherwise: 'note',
} as const;

const INCONSISTENT = 'an effectiveness between 0 and 100 % (outside it the readings are not consistent)';

/**
 * Air-side effectiveness of a charge cooler: how far the charge was cooled toward the coolant, as a share of the whole way.
 *
 * This is what people quote for an intercooler. It is the true effectiveness only while the charge is the smaller heat capacity rate;
 * with little cooling air the two move opposite ways, see {@link effectivenessFromMeasurement}. Measure the coolant at the face of
 * the core: with ambient instead, the result is the overall effectiveness of core and duct together.
 *
 * @function
 * @returns One ratio. Outside 0 to 100 % it carries a note, because such readings are not consistent; it is never cut off. Carries a
 * note too where charge and coolant enter less than 10 K apart, or the coolant enters warmer.
 * @throws CalculationError if both enter equally warm, or an input is physically impossible.
 * @example
 * airSideEffectiveness({ hotInlet: temperature(121, '°C'), hotOutlet: temperature(44, '°C'), coolantInlet: temperature(18, '°C') }).in('%') //=> 74.76
 */
export const airSideEffectiveness = calculation({
  name: 'air-side effectiveness',
  task: 'rate an intercooler',
  inputs: {
    /** Charge temperature into the core. */
    hotInlet: input('T1', 'temperature', HOT_INLET),
    /** Charge temperature out of the core. */
    hotOutlet: input('T2', 'temperature', HOT_OUTLET),
    /** Temperature of the cooling air or liquid at the face of the core. */
    coolantInlet: input('Tc', 'temperature', COOLANT_INLET),
  },
  output: output('eps', 'ratio', '%'),
  formula: '(T1 - T2) / (T1 - Tc)',
  si: airSide,
  rules: [
    DIFFERENT,
    FAR_ENOUGH,
    { need: INCONSISTENT, holds: (T1, T2, Tc) => isShare(airSide(T1, T2, Tc)), otherwise: 'note' },
  ],
  sources: [
    source('kaysLondon', 'chapter 2, definition of effectiveness', 'memory'),
    derived('the 10 K limit: 1 K of error is then 10 points of effectiveness'),
  ],
});

/**
 * True effectiveness of a charge cooler: heat exchanged over the most that any core could exchange between these two flows.
 *
 * This is what the effectiveness–transfer-unit methods mean, and what one core keeps when it is compared on another bench. It needs
 * the heat capacity rates of both sides, see {@link capacityRate}.
 *
 * @function
 * @returns One ratio. Outside 0 to 100 % it carries a note, because such readings are not consistent; it is never cut off. Carries a
 * note too where charge and coolant enter less than 10 K apart, or the coolant enters warmer.
 * @throws CalculationError if both enter equally warm, or an input is physically impossible.
 * @example
 * effectivenessFromMeasurement({
 *   hotInlet: temperature(121, '°C'), hotOutlet: temperature(44, '°C'), coolantInlet: temperature(18, '°C'),
 *   chargeCapacityRate: heatCapacityRate(201, 'W/K'), coolantCapacityRate: heatCapacityRate(180, 'W/K'),
 * }).in('%') //=> 83.48
 */
export const effectivenessFromMeasurement = calculation({
  name: 'true effectiveness from measurement',
  task: 'rate an intercooler',
  inputs: {
    /** Charge temperature into the core. */
    hotInlet: input('T1', 'temperature', HOT_INLET),
    /** Charge temperature out of the core. */
    hotOutlet: input('T2', 'temperature', HOT_OUTLET),
    /** Temperature of the cooling air or liquid at the face of the core. */
    coolantInlet: input('Tc', 'temperature', COOLANT_INLET),
    /** Mass flow times specific heat capacity of the charge. */
    chargeCapacityRate: input('Ch', 'heat capacity rate', CHARGE_CAPACITY_RATE),
    /** Mass flow times specific heat capacity of the cooling air or liquid. */
    coolantCapacityRate: input('Cc', 'heat capacity rate', COOLANT_CAPACITY_RATE),
  },
  output: output('eps', 'ratio', '%'),
  formula: 'Ch * (T1 - T2) / (min(Ch, Cc) * (T1 - Tc))',
  si: trueFromReadings,
  rules: [
    DIFFERENT,
    FAR_ENOUGH,
    {
      need: INCONSISTENT,
      holds: (T1, T2, Tc, Ch, Cc) => isShare(trueFromReadings(T1, T2, Tc, Ch, Cc)),
      otherwise: 'note',
    },
  ],
  sources: [
    source('kaysLondon', 'chapter 2, definition of effectiveness', 'memory'),
    source('incropera', 'section 11.4', 'memory'),
  ],
});

/**
 * Air-side effectiveness of a charge cooler from its true effectiveness: what {@link cooledTemperature} takes.
 *
 * @function
 * @returns One ratio, equal to the true effectiveness while the charge is the smaller heat capacity rate, else smaller.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * airSideFromTrueEffectiveness({
 *   effectiveness: percent(83.48), chargeCapacityRate: heatCapacityRate(201, 'W/K'), coolantCapacityRate: heatCapacityRate(180, 'W/K'),
 * }).in('%') //=> 74.76
 */
export const airSideFromTrueEffectiveness = calculation({
  name: 'air-side effectiveness from true effectiveness',
  task: 'size an intercooler',
  inputs: {
    /** True effectiveness of the core. */
    effectiveness: input('eps', 'ratio', EFFECTIVENESS),
    /** Mass flow times specific heat capacity of the charge. */
    chargeCapacityRate: input('Ch', 'heat capacity rate', CHARGE_CAPACITY_RATE),
    /** Mass flow times specific heat capacity of the cooling air or liquid. */
    coolantCapacityRate: input('Cc', 'heat capacity rate', COOLANT_CAPACITY_RATE),
  },
  output: output('epsa', 'ratio', '%'),
  formula: 'eps * min(Ch, Cc) / Ch',
  si: (eps, Ch, Cc) => (eps * Math.min(Ch, Cc)) / Ch,
  rises: ['eps', 'Cc'],
  falls: ['Ch'],
  sources: [source('kaysLondon', 'chapter 2, definition of effectiveness', 'memory')],
});

function airSide(T1: number, T2: number, Tc: number): number {
  return (T1 - T2) / (T1 - Tc);
}

function trueFromReadings(T1: number, T2: number, Tc: number, Ch: number, Cc: number): number {
  return (Ch * (T1 - T2)) / (Math.min(Ch, Cc) * (T1 - Tc));
}

function isShare(eps: number): boolean {
  return eps >= 0 && eps <= 1;
}
