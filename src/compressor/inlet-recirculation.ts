import { calculation, derived, input, output } from '../calculation/index.js';

const TEMPERATURE = { min: 220, max: 400 } as const;
const AMBIENT = { ...TEMPERATURE, typical: 291.15 } as const;
const WARM = { ...TEMPERATURE, typical: 318.15 } as const;

/**
 * Temperature of the air that a compressor breathes where part of it is hot air that has passed the cooler.
 *
 * On a bench the air behind a core goes round the room or straight to the filter: one kelvin at the inlet is about 1.3 K at a pressure
 * ratio of 2. The hot air grows hotter with it, so with a model of the core let `solve` find the temperature at which both agree.
 *
 * @function
 * @returns One temperature: a mixture of both streams by mass, of equal heat capacity.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * inletTemperatureWithRecirculation({ ambientTemperature: temperature(18, '°C'), recirculatedTemperature: temperature(45, '°C'), recirculatedFraction: percent(20) }).in('°C') //=> 23.4
 */
export const inletTemperatureWithRecirculation = calculation({
  name: 'inlet temperature with recirculation',
  task: 'compress the charge',
  inputs: {
    /** Temperature of the fresh air. */
    ambientTemperature: input('Ta', 'temperature', AMBIENT),
    /** Temperature of the hot air that comes back, as it leaves the cooler. */
    recirculatedTemperature: input('Tr', 'temperature', WARM),
    /** Share by mass of the air breathed that comes back. */
    recirculatedFraction: input('f', 'ratio', { min: 0, max: 1, typical: 0.2 }),
  },
  output: output('T1', 'temperature', '°C'),
  formula: '(1 - f) * Ta + f * Tr',
  si: (Ta, Tr, f) => (1 - f) * Ta + f * Tr,
  rises: ['Ta', 'Tr'],
  sources: [derived('balance of enthalpy of two streams of equal heat capacity')],
});

/**
 * How much of the air that a compressor breathes is hot air that has passed the cooler, from three temperatures.
 *
 * Any other heat on the way to the inlet, from a radiator or a turbine housing, counts as recirculation here: compare with a pull in
 * which the hot air is led away.
 *
 * @function
 * @returns One ratio. Carries a note below 0 and above 1, where the readings are not consistent, and where the hot air is less than
 * 10 K above the fresh: there 1 K of sensor error is more than 10 points. It is never cut off.
 * @throws CalculationError if the hot air is not above the fresh, or an input is physically impossible.
 * @example
 * recirculatedFraction({ ambientTemperature: temperature(18, '°C'), recirculatedTemperature: temperature(45, '°C'), inletTemperature: temperature(23.4, '°C') }).in('%') //=> 20
 */
export const recirculatedFraction = calculation({
  name: 'recirculated fraction',
  task: 'compress the charge',
  inputs: {
    /** Temperature of the fresh air, measured out of reach of the hot. */
    ambientTemperature: input('Ta', 'temperature', AMBIENT),
    /** Temperature of the air as it leaves the cooler. */
    recirculatedTemperature: input('Tr', 'temperature', WARM),
    /** Temperature of the air at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', { ...TEMPERATURE, typical: 296.15 }),
  },
  output: output('f', 'ratio', '%'),
  formula: '(T1 - Ta) / (Tr - Ta)',
  si: fraction,
  rules: [
    { need: 'recirculatedTemperature must be above ambientTemperature', holds: (Ta, Tr) => Tr > Ta },
    {
      need: 'hot air at least 10 K above the fresh (below it sensor errors govern the result)',
      holds: (Ta, Tr) => Tr - Ta >= 10,
      otherwise: 'note',
    },
    {
      need: 'an inlet between the fresh and the hot air (outside, the three readings are not consistent)',
      holds: (Ta, Tr, T1) => T1 >= Ta && T1 <= Tr,
      otherwise: 'note',
    },
  ],
  rises: ['T1'],
  sources: [
    derived('balance of enthalpy of two streams of equal heat capacity'),
    derived('the 10 K limit: 1 K of error in the rise is then 10 points'),
  ],
});

function fraction(Ta: number, Tr: number, T1: number): number {
  return (T1 - Ta) / (Tr - Ta);
}
