import { calculation, derived, input, output, source } from '../calculation/index.js';
import { COOLANT_INLET, EFFECTIVENESS, HOT_INLET, HOT_OUTLET } from './bounds.js';

/**
 * Charge temperature out of a cooler, from its air-side effectiveness.
 *
 * A true effectiveness goes through {@link airSideFromTrueEffectiveness} first. Effectiveness is no constant of a core: the air-side
 * one falls as charge flow grows and rises with cooling air.
 *
 * @function
 * @returns One temperature. Carries a note where the coolant enters warmer than the charge, which it then warms.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * cooledTemperature({ hotInlet: temperature(121, '°C'), coolantInlet: temperature(18, '°C'), effectiveness: percent(75) }).in('°C') //=> 43.75
 */
export const cooledTemperature = calculation({
  name: 'charge temperature out of a cooler',
  task: 'rate an intercooler',
  inputs: {
    /** Charge temperature into the core. */
    hotInlet: input('T1', 'temperature', HOT_INLET),
    /** Temperature of the cooling air or liquid at the face of the core. */
    coolantInlet: input('Tc', 'temperature', COOLANT_INLET),
    /** Air-side effectiveness of the core. */
    effectiveness: input('eps', 'ratio', EFFECTIVENESS),
  },
  output: output('T2', 'temperature', '°C'),
  formula: 'T1 - eps * (T1 - Tc)',
  si: (T1, Tc, eps) => T1 - eps * (T1 - Tc),
  rules: [
    {
      need: 'a coolant that enters no warmer than the charge (else the core warms it)',
      holds: (T1, Tc) => T1 >= Tc,
      otherwise: 'note',
    },
  ],
  rises: ['T1', 'Tc'],
  sources: [source('kaysLondon', 'chapter 2, definition of effectiveness', 'memory')],
});

/**
 * How cold the coolant must enter a core for the charge to leave it at a wanted temperature.
 *
 * @function
 * @returns One temperature of the cooling air or liquid at the face of the core. It says nothing of how to get there: with sprayed
 * coolants mind frostbite and the air you breathe.
 * @throws CalculationError if the coolant would have to be below absolute zero, or an input is physically impossible.
 * @example
 * coolantTemperatureNeeded({ hotInlet: temperature(121, '°C'), hotOutlet: temperature(35, '°C'), effectiveness: percent(75) }).in('°C') //=> 6.33
 */
export const coolantTemperatureNeeded = calculation({
  name: 'coolant temperature needed',
  task: 'size an intercooler',
  inputs: {
    /** Charge temperature into the core. */
    hotInlet: input('T1', 'temperature', HOT_INLET),
    /** Charge temperature wanted out of the core. */
    hotOutlet: input('T2', 'temperature', HOT_OUTLET),
    /** Air-side effectiveness of the core. */
    effectiveness: input('eps', 'ratio', { ...EFFECTIVENESS, min: 0.01 }),
  },
  output: output('Tc', 'temperature', '°C'),
  formula: 'T1 - (T1 - T2) / eps',
  si: coolantNeeded,
  rules: [
    {
      need: 'the coolant needed must be above absolute zero (the effectiveness is too small for so much cooling)',
      holds: (T1, T2, eps) => coolantNeeded(T1, T2, eps) > 0,
    },
    {
      need: 'a charge that leaves no warmer than it came (else the core warms it)',
      holds: (T1, T2) => T2 <= T1,
      otherwise: 'note',
    },
  ],
  rises: ['T2'],
  falls: ['T1'],
  sources: [
    source('kaysLondon', 'chapter 2, definition of effectiveness', 'memory'),
    derived('the definition of effectiveness solved for the coolant'),
  ],
});

function coolantNeeded(T1: number, T2: number, eps: number): number {
  return T1 - (T1 - T2) / eps;
}
