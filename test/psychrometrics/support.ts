import fc from 'fast-check';
import { humidAirFromRelativeHumidity, saturationPressure, type HumidAir } from '../../src/psychrometrics/index.js';
import { absolutePressure, relativeHumidity, temperature } from '../../src/units/index.js';

/** SI numbers of a state of humid air that can exist. */
export interface State {
  readonly T: number;
  readonly p: number;
  readonly RH: number;
}

/** States from -90 to 200 °C and 20 to 600 kPa, with vapour up to 95 % of the pressure. */
export const states: fc.Arbitrary<State> = fc
  .record({
    T: fc.double({ min: 183.2, max: 473.15, noNaN: true }),
    p: fc.double({ min: 2e4, max: 6e5, noNaN: true }),
    RH: fc.double({ min: 1e-3, max: 1, noNaN: true }),
  })
  .filter(({ T, p, RH }) => RH * saturationPressure.kernel(T) < 0.95 * p && RH * saturationPressure.kernel(T) > 0.002);

export const place = ({ T, p }: Pick<State, 'T' | 'p'>) => ({
  temperature: temperature(T, 'K'),
  pressure: absolutePressure(p, 'Pa'),
});

export const airAt = (state: State): HumidAir =>
  humidAirFromRelativeHumidity({ ...place(state), relativeHumidity: relativeHumidity(state.RH, '1') });
