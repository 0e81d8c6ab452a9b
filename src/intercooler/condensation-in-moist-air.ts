import { calculation, derived, source } from '../calculation/index.js';
import { vapourPressureFromHumidityRatio } from '../psychrometrics/humidity-ratio.js';
import {
  dewPointInMoistAir,
  inAir,
  saturationHumidityRatioInMoistAir,
  saturationPressureInMoistAir,
} from '../psychrometrics/saturation-in-moist-air.js';
import { condensationRelations } from './condensation-relations.js';

const SOURCES = [
  source('ashrae2017', 'saturation and enthalpy of moist air', 'memory'),
  source('greenspan1976', 'enhancement factor', 'memory'),
  derived('balances of water and of heat over the core'),
];
const CONDENSATION = condensationRelations({
  saturated: inAir,
  dewPoint: (p, pv) => dewPointInMoistAir.kernel(p, pv),
  pressure: { min: 2e4, max: 6e5, typical: 220000 },
});

/**
 * Dew point of the charge: below it, water drops out in the core.
 *
 * With the enhancement factor of Greenspan, so that real air keeps the vapour it does: {@link chargeDewPoint} leaves the factor out, as the
 * handbook's simple relations do.
 *
 * Compression raises it far above that of the room. Compare it with the charge temperature behind the core, and with the coldest wall
 * in it: on a wall below the dew point some water condenses although the charge as a whole stays above.
 *
 * @function
 * @returns One temperature; below 0.01 °C the frost point.
 * @throws CalculationError if the charge holds no vapour, or an input is physically impossible.
 * @example
 * chargeDewPointInMoistAir({ pressure: absolutePressure(204, 'kPa'), humidityRatio: humidityRatio(6.2, 'g/kg') }).in('°C') //=> 17.49
 */
export const chargeDewPointInMoistAir = calculation({
  name: 'dew point of the charge in moist air',
  task: 'rate an intercooler',
  ...CONDENSATION.dewPoint,
  formula: 'dew(p, pv(p, W))',
  uses: { dew: dewPointInMoistAir, pv: vapourPressureFromHumidityRatio },
  sources: SOURCES,
});

/**
 * Water that drops out of the charge in a core, per mass of dry air.
 *
 * With the enhancement factor of Greenspan, so that real air keeps the vapour it does: {@link condensedWater} leaves the factor out, as the
 * handbook's simple relations do.
 *
 * With the temperature of the charge behind the core it is what must drop out; with that of the coldest wall, the most that can.
 *
 * @function
 * @returns One humidity ratio: zero where the charge stays above its dew point. Carries a note below 0 °C, where it is frost.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * condensedWaterInMoistAir({
 *   humidityRatio: humidityRatio(25.5, 'g/kg'), temperature: temperature(40, '°C'), pressure: absolutePressure(220, 'kPa'),
 * }).in('g/kg') //=> 3.728
 */
export const condensedWaterInMoistAir = calculation({
  name: 'water condensed per dry air in moist air',
  task: 'rate an intercooler',
  ...CONDENSATION.water,
  formula: 'ps(T2, p) < p ? max(0, W - Ws(T2, p)) : 0',
  uses: { ps: saturationPressureInMoistAir, Ws: saturationHumidityRatioInMoistAir },
  sources: SOURCES,
});

/**
 * Flow of water that drops out of the charge in a core.
 *
 * With the enhancement factor of Greenspan, so that real air keeps the vapour it does: {@link condensateFlow} leaves the factor out, as the
 * handbook's simple relations do.
 *
 * @function
 * @returns One mass flow: zero where the charge stays above its dew point. Carries a note below 0 °C.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * condensateFlowInMoistAir({
 *   dryAirFlow: massFlow(0.2, 'kg/s'), humidityRatio: humidityRatio(25.5, 'g/kg'),
 *   temperature: temperature(40, '°C'), pressure: absolutePressure(220, 'kPa'),
 * }).in('g/s') //=> 0.7456
 */
export const condensateFlowInMoistAir = calculation({
  name: 'flow of condensate in moist air',
  task: 'rate an intercooler',
  ...CONDENSATION.flow,
  formula: 'm * Wc(W, T2, p)',
  uses: { Wc: condensedWaterInMoistAir },
  sources: SOURCES,
});

/**
 * Humidity ratio of the charge behind a core: what is left once the water that cannot stay has dropped out.
 *
 * With the enhancement factor of Greenspan, so that real air keeps the vapour it does: {@link humidityRatioBehindCore} leaves the factor out, as the
 * handbook's simple relations do.
 *
 * @function
 * @returns One humidity ratio. Carries a note below 0 °C.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * humidityRatioBehindCoreInMoistAir({
 *   humidityRatio: humidityRatio(25.5, 'g/kg'), temperature: temperature(40, '°C'), pressure: absolutePressure(220, 'kPa'),
 * }).in('g/kg') //=> 21.77
 */
export const humidityRatioBehindCoreInMoistAir = calculation({
  name: 'humidity ratio behind a core in moist air',
  task: 'rate an intercooler',
  ...CONDENSATION.humidityRatio,
  formula: 'ps(T2, p) < p ? min(W, Ws(T2, p)) : W',
  uses: { ps: saturationPressureInMoistAir, Ws: saturationHumidityRatioInMoistAir },
  sources: SOURCES,
});

/**
 * Heat that a core takes out of humid charge: sensible heat of air and vapour, and the latent heat of the water that drops out.
 *
 * With the enhancement factor of Greenspan, so that real air keeps the vapour it does: {@link heatRejectedByHumidCharge} leaves the factor out, as the
 * handbook's simple relations do.
 *
 * It is the change of moist-air enthalpy less what the water carries off at the outlet temperature.
 *
 * @function
 * @returns One power. Below zero, with a note, where the charge leaves warmer than it came. Carries a note below 0 °C.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * heatRejectedByHumidChargeInMoistAir({
 *   dryAirFlow: massFlow(0.2, 'kg/s'), hotInlet: temperature(121, '°C'), hotOutlet: temperature(40, '°C'),
 *   humidityRatio: humidityRatio(25.5, 'g/kg'), pressure: absolutePressure(220, 'kPa'),
 * }).in('kW') //=> 18.86
 */
export const heatRejectedByHumidChargeInMoistAir = calculation({
  name: 'heat rejected by humid charge in moist air',
  task: 'rate an intercooler',
  ...CONDENSATION.heat,
  uses: { Wc: condensedWaterInMoistAir },
  sources: SOURCES,
});

/**
 * Charge temperature behind a core that takes a given heat out of humid charge.
 *
 * With the enhancement factor of Greenspan, so that real air keeps the vapour it does: {@link humidChargeTemperature} leaves the factor out, as the
 * handbook's simple relations do.
 *
 * Where water drops out, part of the heat is latent and the charge stays warmer than dry air would: what condensation costs.
 *
 * @function
 * @returns One temperature, solved for to the last digits. Carries a note below 0 °C.
 * @throws CalculationError if the heat would take the charge below -80 °C, or an input is physically impossible.
 * @example
 * humidChargeTemperatureInMoistAir({
 *   dryAirFlow: massFlow(0.2, 'kg/s'), hotInlet: temperature(121, '°C'), heat: power(18.94, 'kW'),
 *   humidityRatio: humidityRatio(25.5, 'g/kg'), pressure: absolutePressure(220, 'kPa'),
 * }).in('°C') //=> 39.90
 */
export const humidChargeTemperatureInMoistAir = calculation({
  name: 'temperature of humid charge behind a core in moist air',
  task: 'rate an intercooler',
  ...CONDENSATION.temperature,
  formula: 'heat(m, T1, T2, W, p) == Q',
  uses: { heat: heatRejectedByHumidChargeInMoistAir },
  sources: SOURCES,
});
