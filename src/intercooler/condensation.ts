import { calculation, derived, input, output, source } from '../calculation/index.js';
import { dewPoint } from '../psychrometrics/dew-point.js';
import {
  ratioAt,
  saturationHumidityRatio,
  vapourPressureAt,
  vapourPressureFromHumidityRatio,
} from '../psychrometrics/humidity-ratio.js';
import { latentHeat, LATENT_HEAT_AT_FREEZING, LATENT_HEAT_LOST_PER_KELVIN } from '../psychrometrics/latent-heat.js';
import { saturation, saturationPressure } from '../psychrometrics/saturation-pressure.js';
import { rootBetween } from '../statistics/root-between.js';

const FREEZING = 273.15;
const COLDEST = 193.15;
const CHARGE_PRESSURE = { min: 2e4, max: 6e5, trusted: [2e4, 3e5], typical: 220000 } as const;
const HUMIDITY = { min: 0, max: 0.2, typical: 0.0255 };
const HOT = { min: COLDEST, max: 523.15, typical: 394.15 };
const COLD = { min: COLDEST, max: 473.15, typical: 313.15 };
const DRY_AIR_FLOW = { min: 1e-4, max: 50, typical: 0.2 };

// Constants of the moist-air enthalpy that the psychrometrics topic uses, so that heat balances with it to the last digits.
const HEAT_CAPACITY_OF_DRY_AIR = 1006;
const HEAT_CAPACITY_OF_VAPOUR = 1860;

const ABOVE_FREEZING = {
  need: 'a temperature above 0 °C (below it frost grows in the core, blocks it, and gives its heat of fusion on top)',
  otherwise: 'note',
} as const;

const SOURCES = [
  source('ashrae2017', 'saturation and enthalpy of moist air', 'memory'),
  source('psychrolib', 'GetSatHumRatio, GetMoistAirEnthalpy', 'read'),
  derived('balances of water and of heat over the core'),
];

/** Vapour that can stay, where there is more; all of it where that hot air cannot be saturated at all. */
function condensed(W: number, T2: number, p: number): number {
  const ps = saturation(T2);
  return ps < p ? Math.max(0, W - ratioAt(p, ps)) : 0;
}

function heatOf(m: number, T1: number, T2: number, W: number, p: number): number {
  const sensible = (HEAT_CAPACITY_OF_DRY_AIR + HEAT_CAPACITY_OF_VAPOUR * W) * (T1 - T2);
  const latent = condensed(W, T2, p) * latentHeat(T2 - FREEZING);
  return m * (sensible + latent);
}

/**
 * Dew point of the charge: below it, water drops out in the core.
 *
 * Compression raises it far above that of the room. Compare it with the charge temperature behind the core, and with the coldest wall
 * in it: on a wall below the dew point some water condenses although the charge as a whole stays above.
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
  inputs: {
    /** Absolute pressure of the charge in the core. */
    pressure: input('p', 'absolute pressure', CHARGE_PRESSURE),
    /** Humidity ratio of the charge, that of the room. */
    humidityRatio: input('W', 'humidity ratio', { ...HUMIDITY, min: 1e-6 }),
  },
  output: output('Td', 'temperature', '°C'),
  formula: 'dew(pv(p, W))',
  uses: { dew: dewPoint, pv: vapourPressureFromHumidityRatio },
  si: (p, W) => dewPoint.kernel(vapourPressureAt(p, W)),
  rises: ['p', 'W'],
  sources: SOURCES,
});

/**
 * Water that drops out of the charge in a core, per mass of dry air.
 *
 * With the temperature of the charge behind the core it is what must drop out; with that of the coldest wall, the most that can. No
 * enhancement factor: at 2 bar real air keeps 1 % more vapour.
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
  inputs: {
    /** Humidity ratio of the charge into the core, that of the room. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY),
    /** Charge temperature out of the core. */
    temperature: input('T2', 'temperature', COLD),
    /** Absolute pressure of the charge out of the core. */
    pressure: input('p', 'absolute pressure', CHARGE_PRESSURE),
  },
  output: output('Wc', 'humidity ratio', 'g/kg'),
  formula: 'ps(T2) < p ? max(0, W - Ws(T2, p)) : 0',
  uses: { ps: saturationPressure, Ws: saturationHumidityRatio },
  si: condensed,
  rules: [{ ...ABOVE_FREEZING, holds: (_W, T2) => T2 >= FREEZING }],
  rises: ['W', 'p'],
  falls: ['T2'],
  sources: SOURCES,
});

/**
 * Flow of water that drops out of the charge in a core.
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
  inputs: {
    /** Mass flow of the dry part of the charge. */
    dryAirFlow: input('m', 'mass flow', DRY_AIR_FLOW),
    /** Humidity ratio of the charge into the core, that of the room. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY),
    /** Charge temperature out of the core. */
    temperature: input('T2', 'temperature', COLD),
    /** Absolute pressure of the charge out of the core. */
    pressure: input('p', 'absolute pressure', CHARGE_PRESSURE),
  },
  output: output('mc', 'mass flow', 'g/s'),
  formula: 'm * Wc(W, T2, p)',
  uses: { Wc: condensedWater },
  si: (m, W, T2, p) => m * condensed(W, T2, p),
  rules: [{ ...ABOVE_FREEZING, holds: (_m, _W, T2) => T2 >= FREEZING }],
  rises: ['m', 'W', 'p'],
  falls: ['T2'],
  sources: SOURCES,
});

/**
 * Humidity ratio of the charge behind a core: what is left once the water that cannot stay has dropped out.
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
  inputs: {
    /** Humidity ratio of the charge into the core, that of the room. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY),
    /** Charge temperature out of the core. */
    temperature: input('T2', 'temperature', COLD),
    /** Absolute pressure of the charge out of the core. */
    pressure: input('p', 'absolute pressure', CHARGE_PRESSURE),
  },
  output: output('W2', 'humidity ratio', 'g/kg'),
  formula: 'ps(T2) < p ? min(W, Ws(T2, p)) : W',
  uses: { ps: saturationPressure, Ws: saturationHumidityRatio },
  si: (W, T2, p) => (saturation(T2) < p ? Math.min(W, ratioAt(p, saturation(T2))) : W),
  rules: [{ ...ABOVE_FREEZING, holds: (_W, T2) => T2 >= FREEZING }],
  rises: ['W', 'T2'],
  falls: ['p'],
  sources: SOURCES,
});

/**
 * Heat that a core takes out of humid charge: sensible heat of air and vapour, and the latent heat of the water that drops out.
 *
 * It is the change of moist-air enthalpy less what the water carries off at the outlet temperature.
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
  inputs: {
    /** Mass flow of the dry part of the charge. */
    dryAirFlow: input('m', 'mass flow', DRY_AIR_FLOW),
    /** Charge temperature into the core. */
    hotInlet: input('T1', 'temperature', HOT),
    /** Charge temperature out of the core. */
    hotOutlet: input('T2', 'temperature', COLD),
    /** Humidity ratio of the charge into the core, that of the room. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY),
    /** Absolute pressure of the charge out of the core. */
    pressure: input('p', 'absolute pressure', CHARGE_PRESSURE),
  },
  output: output('Q', 'power', 'kW'),
  formula: `m * ((${HEAT_CAPACITY_OF_DRY_AIR} + ${HEAT_CAPACITY_OF_VAPOUR} * W) * (T1 - T2) + Wc(W, T2, p) * (${LATENT_HEAT_AT_FREEZING} - ${LATENT_HEAT_LOST_PER_KELVIN} * (T2 - ${FREEZING})))`,
  uses: { Wc: condensedWater },
  si: heatOf,
  rules: [
    { ...ABOVE_FREEZING, holds: (_m, _T1, T2) => T2 >= FREEZING },
    {
      need: 'a charge that leaves no warmer than it came (else the core warms it)',
      holds: (_m, T1, T2) => T2 <= T1,
      otherwise: 'note',
    },
  ],
  rises: ['T1', 'p'],
  falls: ['T2'],
  sources: SOURCES,
});

/**
 * Charge temperature behind a core that takes a given heat out of humid charge.
 *
 * Where water drops out, part of the heat is latent and the charge stays warmer than dry air would: what condensation costs.
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
  inputs: {
    /** Mass flow of the dry part of the charge. */
    dryAirFlow: input('m', 'mass flow', DRY_AIR_FLOW),
    /** Charge temperature into the core, above its dew point. */
    hotInlet: input('T1', 'temperature', HOT),
    /** Heat that the core takes out of the charge, the latent part included. */
    heat: input('Q', 'power', { min: 0, max: 1e6, typical: 18950 }),
    /** Humidity ratio of the charge into the core, that of the room. */
    humidityRatio: input('W', 'humidity ratio', HUMIDITY),
    /** Absolute pressure of the charge out of the core. */
    pressure: input('p', 'absolute pressure', CHARGE_PRESSURE),
  },
  output: output('T2', 'temperature', '°C'),
  formula: 'heat(m, T1, T2, W, p) == Q',
  uses: { heat: heatRejectedByHumidCharge },
  si: humidTemperature,
  rules: [
    {
      need: 'hotInlet must be above the dew point of the charge: colder, water has dropped out before the core',
      holds: (_m, T1, _Q, W, p) => condensed(W, T1, p) === 0,
    },
    {
      need: 'the heat must leave the charge above -80 °C',
      holds: (m, T1, Q, W, p) => heatOf(m, T1, COLDEST, W, p) >= Q,
    },
    { ...ABOVE_FREEZING, holds: (m, T1, Q, W, p) => heatOf(m, T1, FREEZING, W, p) >= Q },
  ],
  rises: ['T1', 'p'],
  falls: ['Q'],
  sources: SOURCES,
});

function humidTemperature(m: number, T1: number, Q: number, W: number, p: number): number {
  return rootBetween((T2) => Q - heatOf(m, T1, T2, W, p), COLDEST, T1);
}
