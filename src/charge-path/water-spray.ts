import { assumed, calculation, derived, input, output, source } from '../calculation/index.js';
import { captureEfficiencyOfSpray } from '../intercooler/coolant-spray.js';
import { ratioAt } from '../psychrometrics/humidity-ratio.js';
import { wetBulbOverWater } from '../psychrometrics/index.js';
import { latentHeat, LATENT_HEAT_AT_FREEZING, LATENT_HEAT_LOST_PER_KELVIN } from '../psychrometrics/latent-heat.js';
import { overWater } from '../psychrometrics/saturation-pressure.js';

const FREEZING = 273.15;
/** Saturated by the last digits of the flow that does it. */
const ROUNDING = 1 + 1e-9;

const AIR = {
  /** Temperature of the cooling air before the spray. */
  airTemperature: input('T', 'temperature', { min: 233.15, max: 373.15, typical: 298.15 }),
  /** Pressure of that air: the barometer. */
  pressure: input('p', 'absolute pressure', { min: 3e4, max: 1.2e5, typical: 94e3 }),
  /** Its humidity ratio. */
  humidityRatio: input('W', 'humidity ratio', { min: 0, max: 0.2, typical: 0.009 }),
  /** Mass flow of humid cooling air. */
  coolingAirFlow: input('m', 'mass flow', { min: 1e-4, max: 50, typical: 0.55 }),
};

const SOURCES = [
  source('ashrae2017', 'adiabatic saturation; enthalpy of moist air', 'memory'),
  derived('droplets at the wet bulb, where they settle within a few centimetres'),
];

/** Water that brings the air to saturation at its wet bulb, kg/s: what the heat of the air down to there evaporates. */
function most(T: number, p: number, W: number, m: number): number {
  const Tw = wetBulbOverWater.kernel(T, p, W);
  return ((m / (1 + W)) * (1006 + 1860 * W) * (T - Tw)) / latentHeat(Tw - FREEZING);
}

const NOT_FREEZING = {
  need: 'air whose wet bulb is above 0 °C (below it the water freezes on the face)',
  holds: (T: number, p: number, W: number) => wetBulbOverWater.kernel(T, p, W) >= FREEZING,
};
const NOT_SATURATED = {
  need: 'air that is not above saturation',
  holds: (T: number, p: number, W: number) => W <= ratioAt(p, overWater(T)) * ROUNDING,
};

/**
 * Sprayed water that evaporates into cooling air: the share of it that gets the chance, and no more than saturates the air.
 *
 * @function
 * @returns One mass flow. Where more is sprayed than the air can take it carries a note: the rest stays liquid and cools no further.
 * @throws CalculationError where the wet bulb is below 0 °C, the air is above saturation, or an input is impossible.
 * @example
 * waterEvaporatedBySpray({
 *   airTemperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa'), humidityRatio: humidityRatio(6.2, 'g/kg'),
 *   coolingAirFlow: massFlow(0.55, 'kg/s'), sprayFlow: massFlow(2, 'g/s'),
 * }).in('g/s') //=> 0.9
 */
export const waterEvaporatedBySpray = calculation({
  name: 'water evaporated by a spray',
  task: 'spray coolant on an intercooler',
  inputs: {
    ...AIR,
    /** Mass flow of water. */
    sprayFlow: input('ms', 'mass flow', { min: 0, max: 10, typical: 0.002 }),
    /** Share of the water that evaporates before the face if the air can take it. */
    captureEfficiency: assumed('use', 'ratio', { min: 0.01, max: 1, assume: captureEfficiencyOfSpray }),
  },
  output: output('me', 'mass flow', 'g/s'),
  formula: `min(use * ms, m / (1 + W) * (1006 + 1860 * W) * (T - Tw(T, p, W)) / (${LATENT_HEAT_AT_FREEZING} - ${LATENT_HEAT_LOST_PER_KELVIN} * (Tw(T, p, W) - 273.15)))`,
  uses: { Tw: wetBulbOverWater },
  si: (T, p, W, m, ms, use) => Math.min(use * ms, most(T, p, W, m)),
  rules: [
    NOT_SATURATED,
    NOT_FREEZING,
    {
      need: 'no more water than saturates the air at its wet bulb (the rest stays liquid and cools no further)',
      holds: (T, p, W, m, ms, use) => use * ms <= most(T, p, W, m) * ROUNDING,
      otherwise: 'note',
    },
  ],
  rises: ['ms', 'use'],
  sources: SOURCES,
});

function cooled(T: number, p: number, W: number, m: number, me: number): number {
  const taken = (me * (1 + W)) / m;
  const Tw = wetBulbOverWater.kernel(T, p, W);
  // Heat of evaporation at the wet bulb, and the vapour's way from there to the temperature of the air.
  const cold = taken * (latentHeat(Tw - FREEZING) + 1860 * (T - Tw));
  return T - cold / (1006 + 1860 * (W + taken));
}

/**
 * Temperature of cooling air at the face of a core, from the water that has evaporated into it: down to its wet bulb, where it is
 * saturated.
 *
 * The droplets are taken to be at the wet bulb; water that is 10 K warmer in the tank takes 2 % off its cold. Water that stays liquid
 * and wets the core cools it further, which is not counted.
 *
 * @function
 * @returns One temperature, never below the wet bulb.
 * @throws CalculationError if that water would be more than saturates the air, its wet bulb is below 0 °C, or an input is impossible.
 * @example
 * faceTemperatureWithWaterSpray({
 *   airTemperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa'), humidityRatio: humidityRatio(6.2, 'g/kg'),
 *   coolingAirFlow: massFlow(0.55, 'kg/s'), evaporatedFlow: massFlow(0.9, 'g/s'),
 * }).in('°C') //=> 13.99
 */
export const faceTemperatureWithWaterSpray = calculation({
  name: 'face temperature with a water spray',
  task: 'spray coolant on an intercooler',
  inputs: {
    ...AIR,
    /** Mass flow of the water that has evaporated. */
    evaporatedFlow: input('me', 'mass flow', { min: 0, max: 10, typical: 0.0009 }),
  },
  output: output('Tf', 'temperature', '°C'),
  formula: `T - me * (1 + W) / m * (${LATENT_HEAT_AT_FREEZING} - ${LATENT_HEAT_LOST_PER_KELVIN} * (Tw(T, p, W) - 273.15) + 1860 * (T - Tw(T, p, W))) / (1006 + 1860 * (W + me * (1 + W) / m))`,
  uses: { Tw: wetBulbOverWater },
  si: cooled,
  rules: [
    NOT_SATURATED,
    NOT_FREEZING,
    {
      need: 'no more evaporated water than saturates the air at its wet bulb; see waterEvaporatedBySpray',
      holds: (T, p, W, m, me) => me <= most(T, p, W, m) * ROUNDING,
    },
  ],
  rises: ['T'],
  falls: ['me'],
  sources: SOURCES,
});
