import { calculation, input, output, source } from '../calculation/index.js';
import { HUMIDITY_RATIO, TEMPERATURE } from './ranges.js';

/**
 * Enthalpy of humid air per mass of its dry air, counted from dry air and liquid water at 0 °C.
 *
 * Differences of it are the heat that a core takes out, condensation included. Constant heat capacities: 0.6 % low for the heat of dry
 * air between 0 and 200 °C.
 *
 * @function
 * @returns One specific energy, per kg of dry air.
 * @throws CalculationError if an input is impossible.
 * @example
 * moistAirEnthalpy({ temperature: temperature(18, '°C'), humidityRatio: humidityRatio(6.2, 'g/kg') }).in('kJ/kg') //=> 33.8218
 */
export const moistAirEnthalpy = calculation({
  name: 'moist-air enthalpy',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
  },
  output: output('h', 'specific energy', 'kJ/kg'),
  formula: '1006 * (T - 273.15) + W * (2501000 + 1860 * (T - 273.15))',
  si: (T, W) => 1006 * (T - 273.15) + W * (2501000 + 1860 * (T - 273.15)),
  rises: ['T', 'W'],
  sources: [source('ashrae2017', 'equation 30', 'memory'), source('psychrolib', 'GetMoistAirEnthalpy', 'read')],
});

/**
 * Humidity ratio, from temperature and enthalpy of humid air.
 *
 * @function
 * @returns One humidity ratio.
 * @throws CalculationError if the enthalpy is below that of dry air at that temperature.
 * @example
 * const room = { temperature: temperature(18, '°C'), enthalpy: specificEnergy(33.8, 'kJ/kg') };
 * humidityRatioFromEnthalpy(room).in('g/kg') //=> 6.19141
 */
export const humidityRatioFromEnthalpy = calculation({
  name: 'humidity ratio from enthalpy',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the air. */
    temperature: input('T', 'temperature', TEMPERATURE),
    /** Enthalpy per mass of dry air, counted from dry air and liquid water at 0 °C. */
    enthalpy: input('h', 'specific energy', { min: -1.2e5, max: 3e8, typical: 34e3 }),
  },
  output: output('W', 'humidity ratio', 'g/kg'),
  formula: '(h - 1006 * (T - 273.15)) / (2501000 + 1860 * (T - 273.15))',
  si: (T, h) => (h - 1006 * (T - 273.15)) / (2501000 + 1860 * (T - 273.15)),
  rules: [
    {
      need: 'the enthalpy must not be below that of dry air at that temperature',
      holds: (T, h) => h >= 1006 * (T - 273.15),
    },
  ],
  rises: ['h'],
  falls: ['T'],
  sources: [
    source('ashrae2017', 'equation 30', 'memory'),
    source('psychrolib', 'GetHumRatioFromEnthalpyAndTDryBulb', 'read'),
  ],
});
