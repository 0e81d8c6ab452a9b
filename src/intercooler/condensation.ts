import { calculation, derived, source } from '../calculation/index.js';
import { dewPoint } from '../psychrometrics/dew-point.js';
import { saturationHumidityRatio, vapourPressureFromHumidityRatio } from '../psychrometrics/humidity-ratio.js';
import { saturation, saturationPressure } from '../psychrometrics/saturation-pressure.js';
import { condensationRelations } from './condensation-relations.js';

const SOURCES = [
  source('ashrae2017', 'saturation and enthalpy of moist air', 'memory'),
  source('psychrolib', 'GetSatHumRatio, GetMoistAirEnthalpy', 'read'),
  derived('balances of water and of heat over the core'),
];
const CONDENSATION = condensationRelations({
  saturated: saturation,
  dewPoint: (_p, pv) => dewPoint.kernel(pv),
  pressure: { min: 2e4, max: 6e5, trusted: [2e4, 3e5], typical: 220000 },
});

/**
 * Dew point of the charge: below it, water drops out in the core.
 *
 * Compression raises it far above that of the room. Compare it with the charge temperature behind the core, and with the coldest wall
 * in it: on a wall below the dew point some water condenses although the charge as a whole stays above.
 *
 * Without the enhancement factor: 0.15 K too high at 2.2 bar. {@link chargeDewPointInMoistAir} counts it.
 *
 * @function
 * @returns One temperature; below 0.01 °C the frost point. Carries a note above 3 bar.
 * @throws CalculationError if the charge holds no vapour, or an input is physically impossible.
 * @example
 * chargeDewPoint({ pressure: absolutePressure(204, 'kPa'), humidityRatio: humidityRatio(6.2, 'g/kg') }).in('°C') //=> 17.60
 */
export const chargeDewPoint = calculation({
  name: 'dew point of the charge',
  task: 'rate an intercooler',
  ...CONDENSATION.dewPoint,
  formula: 'dew(pv(p, W))',
  uses: { dew: dewPoint, pv: vapourPressureFromHumidityRatio },
  sources: SOURCES,
});

/**
 * Water that drops out of the charge in a core, per mass of dry air.
 *
 * With the temperature of the charge behind the core it is what must drop out; with that of the coldest wall, the most that can.
 *
 * Without the enhancement factor, as the handbook's simple relations: at 2.2 bar real air keeps 0.8 % more vapour, which is 4.5 % of the
 * water of the example. {@link condensedWaterInMoistAir} counts it.
 *
 * @function
 * @returns One humidity ratio: zero where the charge stays above its dew point. Carries a note below 0 °C, where it is frost, and above
 * 3 bar.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * condensedWater({
 *   humidityRatio: humidityRatio(25.5, 'g/kg'), temperature: temperature(40, '°C'), pressure: absolutePressure(220, 'kPa'),
 * }).in('g/kg') //=> 3.902
 */
export const condensedWater = calculation({
  name: 'water condensed per dry air',
  task: 'rate an intercooler',
  ...CONDENSATION.water,
  formula: 'ps(T2) < p ? max(0, W - Ws(T2, p)) : 0',
  uses: { ps: saturationPressure, Ws: saturationHumidityRatio },
  sources: SOURCES,
});

/**
 * Flow of water that drops out of the charge in a core.
 *
 * Without the enhancement factor, which {@link condensateFlowInMoistAir} counts.
 *
 * @function
 * @returns One mass flow: zero where the charge stays above its dew point. Carries a note below 0 °C and above 3 bar.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * condensateFlow({
 *   dryAirFlow: massFlow(0.2, 'kg/s'), humidityRatio: humidityRatio(25.5, 'g/kg'),
 *   temperature: temperature(40, '°C'), pressure: absolutePressure(220, 'kPa'),
 * }).in('g/s') //=> 0.7804
 */
export const condensateFlow = calculation({
  name: 'flow of condensate',
  task: 'rate an intercooler',
  ...CONDENSATION.flow,
  formula: 'm * Wc(W, T2, p)',
  uses: { Wc: condensedWater },
  sources: SOURCES,
});

/**
 * Humidity ratio of the charge behind a core: what is left once the water that cannot stay has dropped out.
 *
 * Without the enhancement factor, which {@link humidityRatioBehindCoreInMoistAir} counts.
 *
 * @function
 * @returns One humidity ratio. Carries a note below 0 °C and above 3 bar.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * humidityRatioBehindCore({
 *   humidityRatio: humidityRatio(25.5, 'g/kg'), temperature: temperature(40, '°C'), pressure: absolutePressure(220, 'kPa'),
 * }).in('g/kg') //=> 21.60
 */
export const humidityRatioBehindCore = calculation({
  name: 'humidity ratio behind a core',
  task: 'rate an intercooler',
  ...CONDENSATION.humidityRatio,
  formula: 'ps(T2) < p ? min(W, Ws(T2, p)) : W',
  uses: { ps: saturationPressure, Ws: saturationHumidityRatio },
  sources: SOURCES,
});

/**
 * Heat that a core takes out of humid charge: sensible heat of air and vapour, and the latent heat of the water that drops out.
 *
 * It is the change of moist-air enthalpy less what the water carries off at the outlet temperature.
 *
 * Without the enhancement factor, which {@link heatRejectedByHumidChargeInMoistAir} counts.
 *
 * @function
 * @returns One power. Below zero, with a note, where the charge leaves warmer than it came. Carries a note below 0 °C and above 3 bar.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * heatRejectedByHumidCharge({
 *   dryAirFlow: massFlow(0.2, 'kg/s'), hotInlet: temperature(121, '°C'), hotOutlet: temperature(40, '°C'),
 *   humidityRatio: humidityRatio(25.5, 'g/kg'), pressure: absolutePressure(220, 'kPa'),
 * }).in('kW') //=> 18.94
 */
export const heatRejectedByHumidCharge = calculation({
  name: 'heat rejected by humid charge',
  task: 'rate an intercooler',
  ...CONDENSATION.heat,
  uses: { Wc: condensedWater },
  sources: SOURCES,
});

/**
 * Charge temperature behind a core that takes a given heat out of humid charge.
 *
 * Where water drops out, part of the heat is latent and the charge stays warmer than dry air would: what condensation costs.
 *
 * Without the enhancement factor, which {@link humidChargeTemperatureInMoistAir} counts.
 *
 * @function
 * @returns One temperature, solved for to the last digits. Carries a note below 0 °C and above 3 bar.
 * @throws CalculationError if the heat would take the charge below -80 °C, or an input is physically impossible.
 * @example
 * humidChargeTemperature({
 *   dryAirFlow: massFlow(0.2, 'kg/s'), hotInlet: temperature(121, '°C'), heat: power(18.94, 'kW'),
 *   humidityRatio: humidityRatio(25.5, 'g/kg'), pressure: absolutePressure(220, 'kPa'),
 * }).in('°C') //=> 40.01
 */
export const humidChargeTemperature = calculation({
  name: 'temperature of humid charge behind a core',
  task: 'rate an intercooler',
  ...CONDENSATION.temperature,
  formula: 'heat(m, T1, T2, W, p) == Q',
  uses: { heat: heatRejectedByHumidCharge },
  sources: SOURCES,
});
