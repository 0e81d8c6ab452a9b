import { assumed, calculation, constant, derived, input, output, source } from '../calculation/index.js';
import { specificGasConstant } from '../units/index.js';
import { standardPressure } from './station-pressure.js';

const ELEVATION = { min: -500, max: 6000, typical: 640 };
const SOURCES = [source('iso2533', 'troposphere below 11 km', 'memory')];

/** Temperature over that at sea level; the lapse of 6.5 K per km over 288.15 K is what the pressure formula prints as 2.25577e-5. */
const temperatureAt = (h: number): number => 288.15 - 0.0065 * h;

/** Gas constant that the standard atmosphere is tabulated with. */
export const gasConstantOfStandardAtmosphere = constant(
  'air/gas-constant-of-standard-atmosphere',
  specificGasConstant(287.05287, 'J/(kg·K)'),
  { label: 'gas constant of the standard atmosphere', source: source('iso2533', 'primary constants', 'memory') },
);

/**
 * Temperature of the standard atmosphere at an elevation.
 *
 * @function
 * @returns One temperature: 15 °C at sea level, 6.5 K less per kilometre.
 * @throws CalculationError if the elevation is outside -500 to 6000 m.
 * @example
 * standardTemperature({ elevation: length(640, 'm') }).in('°C') //=> 10.84
 */
export const standardTemperature = calculation({
  name: 'standard atmosphere temperature',
  task: 'describe the air',
  inputs: {
    /** Height above sea level. */
    elevation: input('h', 'length', ELEVATION),
  },
  output: output('T', 'temperature', '°C'),
  formula: '288.15 - 0.0065 * h',
  si: temperatureAt,
  falls: ['h'],
  sources: SOURCES,
});

/**
 * Density of the standard atmosphere at an elevation: dry air at its standard pressure and temperature.
 *
 * @function
 * @returns One density.
 * @throws CalculationError if the elevation is outside -500 to 6000 m.
 * @example
 * standardDensity({ elevation: length(640, 'm') }).in('kg/m³') //=> 1.15148
 */
export const standardDensity = calculation({
  name: 'standard atmosphere density',
  task: 'describe the air',
  inputs: {
    /** Height above sea level. */
    elevation: input('h', 'length', ELEVATION),
    /** Gas constant of the air. */
    gasConstant: assumed('R', 'specific gas constant', { min: 280, max: 300, assume: gasConstantOfStandardAtmosphere }),
  },
  output: output('rho', 'density', 'kg/m³'),
  formula: 'p(h) / (R * T(h))',
  uses: { p: standardPressure, T: standardTemperature },
  si: (h, R) => standardPressure.kernel(h) / (R * temperatureAt(h)),
  falls: ['h', 'R'],
  sources: SOURCES,
});

/** Exponent of temperature in density, one less than in pressure. */
const EXPONENT = 4.2559;

/**
 * Density altitude: the elevation at which the standard atmosphere is as thin as the air here.
 *
 * What an unboosted engine feels of a hot or humid day; a boosted one with absolute pressure control feels less.
 *
 * @function
 * @returns A height above sea level, negative where the air is denser than standard.
 * @throws CalculationError if the density is outside 0.6 to 1.5 kg/m³.
 * @example
 * densityAltitude({ density: density(1.12177, 'kg/m³') }).in('m') //=> 907.561
 */
export const densityAltitude = calculation({
  name: 'density altitude',
  task: 'describe the air',
  inputs: {
    /** Density of the air. */
    density: input('rho', 'density', { min: 0.6, max: 1.5, typical: 1.12 }),
    /** Gas constant of the standard atmosphere. */
    gasConstant: assumed('R', 'specific gas constant', { min: 280, max: 300, assume: gasConstantOfStandardAtmosphere }),
  },
  output: output('h', 'length', 'm'),
  formula: `(1 - (rho * R * 288.15 / 101325)^(1 / ${EXPONENT})) * 288.15 / 0.0065`,
  si: (rho, R) => (-Math.expm1(Math.log((rho * R * 288.15) / 101325) / EXPONENT) * 288.15) / 0.0065,
  falls: ['rho', 'R'],
  sources: [...SOURCES, derived('the density of the standard atmosphere solved for the elevation')],
});
