import { CalculationError, type Operation, type Quantity } from '../units/index.js';
import { inputProblems, inWords, unknownNames } from '../units/internal.js';
import { relativeHumidityFromDewPoint, vapourPressureFromDewPoint } from './dew-point.js';
import { possible, type AirPlace, type HumidAir } from './humid-air-state.js';
import {
  degreeOfSaturation,
  humidityRatioFromVapourPressure,
  vapourPressureFromHumidityRatio,
} from './humidity-ratio.js';
import { PERFECT_GAS } from './model.js';
import { vapourPressureFromRelativeHumidity } from './vapour-pressure.js';
import { humidityRatioFromWetBulb } from './wet-bulb.js';

type Measure = 'relativeHumidity' | 'wetBulb' | 'dewPoint' | 'humidityRatio' | 'vapourPressure';

/** Everything wrong with what was given, at once and by the names it was given under. */
function checked<G extends AirPlace>(measure: Measure, by: Operation, given: G): G {
  const place = degreeOfSaturation.spec.inputs.filter(({ name }) => name === 'temperature' || name === 'pressure');
  const inputs = [...place, ...by.inputs.filter(({ name }) => name === measure)];
  const name = `humid air from ${inWords(measure)}`;
  const values = { ...given } as Readonly<Record<string, unknown>>;
  const names = inputs.map((input) => input.name);
  const wrong = inputProblems(
    { ...by, name, inputs },
    names.map((key) => values[key]),
  );
  const problems = [...unknownNames(values, names), ...wrong];
  if (problems.length > 0) throw new CalculationError(name, problems);
  return given;
}

/**
 * Humid air from temperature, pressure and relative humidity.
 *
 * Relative humidity is over ice below 0.01 °C; for a sensor that gives it over water in frost, use {@link humidAirFromVapourPressure}
 * with {@link vapourPressureFromRelativeHumidityOverWater}.
 *
 * @throws CalculationError if an input is impossible, or so much vapour cannot exist at that pressure (saturated air at 120 °C and 1 bar).
 * @example
 * const room = humidAirFromRelativeHumidity({
 *   temperature: temperature(18, '°C'),
 *   pressure: absolutePressure(941, 'hPa'),
 *   relativeHumidity: relativeHumidity(45, '%'),
 * });
 * room.dryPressure.in('kPa') //=> 93.1711
 * room.wetBulb.in('°C') //=> 11.2773
 */
export function humidAirFromRelativeHumidity(
  inputs: AirPlace & {
    /** Vapour pressure over saturation pressure at the same temperature. */
    readonly relativeHumidity: Quantity<'relative humidity'>;
  },
): HumidAir {
  const { temperature, relativeHumidity } = checked(
    'relativeHumidity',
    vapourPressureFromRelativeHumidity.spec,
    inputs,
  );
  const vapourPressure = vapourPressureFromRelativeHumidity({ temperature, relativeHumidity });
  return possible(inputs, { vapourPressure, relativeHumidity }, PERFECT_GAS);
}

/**
 * Humid air from temperature, pressure and wet bulb, by adiabatic saturation; the wick is iced below 0.01 °C.
 *
 * @throws CalculationError if the wet bulb lies above the dry bulb, or below that of perfectly dry air.
 * @example
 * const room = humidAirFromWetBulb({
 *   temperature: temperature(18, '°C'),
 *   pressure: absolutePressure(941, 'hPa'),
 *   wetBulb: temperature(11.3, '°C'),
 * });
 * room.relativeHumidity.in('%') //=> 45.1644
 */
export function humidAirFromWetBulb(
  inputs: AirPlace & {
    /** Wet-bulb temperature. */
    readonly wetBulb: Quantity<'temperature'>;
  },
): HumidAir {
  const { temperature, pressure, wetBulb } = checked('wetBulb', humidityRatioFromWetBulb.spec, inputs);
  return possible(
    inputs,
    { humidityRatio: humidityRatioFromWetBulb({ temperature, pressure, wetBulb }), wetBulb },
    PERFECT_GAS,
  );
}

/**
 * Humid air from temperature, pressure and dew point; below 0.01 °C the frost point.
 *
 * @throws CalculationError if the dew point lies above the temperature.
 * @example
 * const room = humidAirFromDewPoint({
 *   temperature: temperature(18, '°C'),
 *   pressure: absolutePressure(941, 'hPa'),
 *   dewPoint: temperature(6, '°C'),
 * });
 * room.relativeHumidity.in('%') //=> 45.3059
 */
export function humidAirFromDewPoint(
  inputs: AirPlace & {
    /** Dew point or frost point. */
    readonly dewPoint: Quantity<'temperature'>;
  },
): HumidAir {
  const { temperature, dewPoint } = checked('dewPoint', relativeHumidityFromDewPoint.spec, inputs);
  const relativeHumidity = relativeHumidityFromDewPoint({ temperature, dewPoint });
  return possible(
    inputs,
    { vapourPressure: vapourPressureFromDewPoint({ dewPoint }), dewPoint, relativeHumidity },
    PERFECT_GAS,
  );
}

/**
 * Humid air from temperature, pressure and humidity ratio: charge air, which keeps the humidity ratio of the room until water condenses.
 *
 * @throws CalculationError if the air holds more than saturation allows: then water condenses, and what stays is saturated.
 * @example
 * const charge = humidAirFromHumidityRatio({
 *   temperature: temperature(45, '°C'),
 *   pressure: absolutePressure(2.041, 'bar'),
 *   humidityRatio: humidityRatio(6.2, 'g/kg'),
 * });
 * charge.dewPoint.in('°C') //=> 17.6128
 */
export function humidAirFromHumidityRatio(
  inputs: AirPlace & {
    /** Mass of vapour per mass of dry air. */
    readonly humidityRatio: Quantity<'humidity ratio'>;
  },
): HumidAir {
  const { humidityRatio } = checked('humidityRatio', vapourPressureFromHumidityRatio.spec, inputs);
  return possible(inputs, { humidityRatio }, PERFECT_GAS);
}

/**
 * Humid air from temperature, pressure and vapour pressure.
 *
 * @throws CalculationError if the vapour pressure is above saturation, or not below the total pressure.
 * @example
 * const frost = temperature(-5, '°C');
 * const vapourPressure = vapourPressureFromRelativeHumidityOverWater({ temperature: frost, relativeHumidity: relativeHumidity(80, '%') });
 * humidAirFromVapourPressure({ temperature: frost, pressure: absolutePressure(941, 'hPa'), vapourPressure }).dewPoint.in('°C') //=> -7.02482
 */
export function humidAirFromVapourPressure(
  inputs: AirPlace & {
    /** Partial pressure of the water vapour. */
    readonly vapourPressure: Quantity<'absolute pressure'>;
  },
): HumidAir {
  const { vapourPressure } = checked('vapourPressure', humidityRatioFromVapourPressure.spec, inputs);
  return possible(inputs, { vapourPressure }, PERFECT_GAS);
}
