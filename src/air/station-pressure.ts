import { calculation, input, output, source } from '../calculation/index.js';

const ELEVATION = { min: -500, max: 6000, typical: 640 };
const SOURCES = [
  source('ashrae2017', 'equation 3, standard atmosphere', 'memory'),
  source('psychrolib', 'GetStationPressure, GetStandardAtmPressure', 'read'),
];

/** Pressure at an elevation over that at sea level; by logarithm because the base is near 1 and the exponent magnifies its rounding. */
const fraction = (h: number): number => Math.exp(5.2559 * Math.log1p(-2.25577e-5 * h));

/**
 * Barometer at a place, from the pressure reduced to sea level that weather services and airports report.
 *
 * Power correction and air density need the pressure at the place. Uses the standard atmosphere, as airport reports do; a weather
 * service that reduces with the day's air temperature differs by about 0.8 % at 640 m on a day of -15 °C. A barometer in the room
 * is better than either.
 *
 * @function
 * @returns The absolute pressure at the place.
 * @throws CalculationError if the pressure is not one of sea level, or outside 850 to 1090 hPa.
 * @example
 * stationPressure({ seaLevel: seaLevelPressure(1016, 'hPa'), elevation: length(640, 'm') }).in('hPa') //=> 941.238
 */
export const stationPressure = calculation({
  name: 'station pressure',
  task: 'describe the air',
  inputs: {
    /** Pressure reduced to sea level. */
    seaLevel: input('p0', 'sea-level pressure', { min: 8.5e4, max: 1.09e5, typical: 101600 }),
    /** Height of the place above sea level. */
    elevation: input('h', 'length', ELEVATION),
  },
  output: output('p', 'absolute pressure', 'hPa'),
  formula: 'p0 * (1 - 2.25577e-5 * h)^5.2559',
  si: (p0, h) => p0 * fraction(h),
  rises: ['p0'],
  falls: ['h'],
  sources: SOURCES,
});

/**
 * Pressure reduced to sea level, from the barometer at a place: to compare a room's barometer with a weather report.
 *
 * @function
 * @returns The sea-level pressure by the standard atmosphere.
 * @throws CalculationError if an input is impossible.
 * @example
 * seaLevelPressureFromStation({ station: absolutePressure(941, 'hPa'), elevation: length(640, 'm') }).in('hPa') //=> 1015.74
 */
export const seaLevelPressureFromStation = calculation({
  name: 'sea-level pressure',
  task: 'describe the air',
  inputs: {
    /** Barometer at the place. */
    station: input('p', 'absolute pressure', { min: 4e4, max: 1.2e5, typical: 94100 }),
    /** Height of the place above sea level. */
    elevation: input('h', 'length', ELEVATION),
  },
  output: output('p0', 'sea-level pressure', 'hPa'),
  formula: 'p / (1 - 2.25577e-5 * h)^5.2559',
  si: (p, h) => p / fraction(h),
  rises: ['p', 'h'],
  sources: SOURCES,
});

/**
 * Pressure of the standard atmosphere at an elevation: what a barometer reads there on a standard day.
 *
 * @function
 * @returns The absolute pressure.
 * @throws CalculationError if the elevation is outside -500 to 6000 m.
 * @example
 * standardPressure({ elevation: length(640, 'm') }).in('hPa') //=> 938.691
 */
export const standardPressure = calculation({
  name: 'standard atmosphere pressure',
  task: 'describe the air',
  inputs: {
    /** Height of the place above sea level. */
    elevation: input('h', 'length', ELEVATION),
  },
  output: output('p', 'absolute pressure', 'hPa'),
  formula: '101325 * (1 - 2.25577e-5 * h)^5.2559',
  si: (h) => 101325 * fraction(h),
  falls: ['h'],
  sources: [...SOURCES, source('iso2533', 'pressure below 11 km', 'memory')],
});

/**
 * Pressure altitude: the elevation at which the standard atmosphere has a given pressure.
 *
 * @function
 * @returns A height above sea level, negative where the pressure is above standard.
 * @throws CalculationError if the pressure is outside 40 to 120 kPa.
 * @example
 * pressureAltitude({ pressure: absolutePressure(941, 'hPa') }).in('m') //=> 619.571
 */
export const pressureAltitude = calculation({
  name: 'pressure altitude',
  task: 'describe the air',
  inputs: {
    /** Absolute pressure at the place. */
    pressure: input('p', 'absolute pressure', { min: 4e4, max: 1.2e5, typical: 94100 }),
  },
  output: output('h', 'length', 'm'),
  formula: '(1 - (p / 101325)^(1 / 5.2559)) / 2.25577e-5',
  si: (p) => -Math.expm1(Math.log(p / 101325) / 5.2559) / 2.25577e-5,
  falls: ['p'],
  sources: SOURCES,
});
