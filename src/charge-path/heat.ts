import { calculation, derived, input, output, source } from '../calculation/index.js';
import { latentHeat, LATENT_HEAT_AT_FREEZING, LATENT_HEAT_LOST_PER_KELVIN } from '../psychrometrics/latent-heat.js';
import { CHARGE_FLOW, CHARGE_TEMPERATURE, COOLED_TEMPERATURE } from './bounds.js';

const ENTHALPY = { min: -3e5, max: 2e6 } as const;

/**
 * Heat that a core takes out of the charge: the fall of its enthalpy with a heat capacity that varies, and the heat of the water that
 * condenses.
 *
 * @function
 * @returns One power. Below zero where the core warms the charge.
 * @throws CalculationError if an input is impossible.
 * @example
 * heatFromCharge({
 *   flow: massFlow(165.35, 'g/s'), inletEnthalpy: specificEnergy(123.0, 'kJ/kg'), outletEnthalpy: specificEnergy(50.8, 'kJ/kg'),
 *   condensateFlow: massFlow(0, 'g/s'), latentHeat: specificEnergy(2383, 'kJ/kg'),
 * }).in('kW') //=> 11.938
 */
export const heatFromCharge = calculation({
  name: 'heat taken out of the charge',
  task: 'follow the charge',
  inputs: {
    /** Mass flow of charge into the core, vapour included. */
    flow: input('m', 'mass flow', CHARGE_FLOW),
    /** Enthalpy of the charge into the core, all its water as vapour. */
    inletEnthalpy: input('h1', 'specific energy', { ...ENTHALPY, typical: 123e3 }),
    /** Enthalpy of the charge out of the core, all its water as vapour, over the same datum. */
    outletEnthalpy: input('h2', 'specific energy', { ...ENTHALPY, typical: 51e3 }),
    /** Mass flow of water that condenses. */
    condensateFlow: input('m_w', 'mass flow', { min: 0, max: 1, typical: 0 }),
    /** Heat of condensation at the temperature the charge leaves with. */
    latentHeat: input('h_fg', 'specific energy', { min: 1e6, max: 3.2e6, typical: 2.38e6 }),
  },
  output: output('Q', 'power', 'kW'),
  formula: 'm * (h1 - h2) + m_w * h_fg',
  si: (m, h1, h2, mw, hfg) => m * (h1 - h2) + mw * hfg,
  rises: ['h1', 'm_w', 'h_fg'],
  falls: ['h2'],
  sources: [
    source('incropera', 'steady-flow energy equation', 'memory'),
    derived('vapour cooled first, then condensed'),
  ],
});

/**
 * Heat capacity rate of the charge over a core: heat given for each kelvin it cools, condensing water included.
 *
 * @function
 * @returns One heat capacity rate.
 * @throws CalculationError if the charge leaves as warm as it came, or an input is impossible.
 * @example
 * chargeCapacityRateFromHeat({
 *   heat: power(11.9352, 'kW'), inletTemperature: temperature(120.936, '°C'), outletTemperature: temperature(49.9586, '°C'),
 * }).in('W/K') //=> 168.155
 */
export const chargeCapacityRateFromHeat = calculation({
  name: 'heat capacity rate of the charge over a core',
  task: 'follow the charge',
  inputs: {
    /** Heat taken out of the charge. */
    heat: input('Q', 'power', { min: -5e6, max: 5e6, typical: 11.9e3 }),
    /** Charge temperature into the core. */
    inletTemperature: input('T1', 'temperature', CHARGE_TEMPERATURE),
    /** Charge temperature out of the core. */
    outletTemperature: input('T2', 'temperature', COOLED_TEMPERATURE),
  },
  output: output('C_h', 'heat capacity rate', 'W/K'),
  formula: 'Q / (T1 - T2)',
  si: (Q, T1, T2) => Q / (T1 - T2),
  rules: [{ need: 'the charge must not leave exactly as warm as it came', holds: (_Q, T1, T2) => T1 !== T2 }],
  sources: [derived('definition of a heat capacity rate over a span of temperature')],
});

/**
 * Heat that a kilogram of vapour gives when it becomes water, at the temperature where it does.
 *
 * @function
 * @returns One specific energy: within 0.5 % of the steam tables up to 100 °C.
 * @throws CalculationError if the temperature is outside -80 to 250 °C.
 * @example
 * latentHeatOfVapour({ temperature: temperature(40, '°C') }).in('kJ/kg') //=> 2407.96
 */
export const latentHeatOfVapour = calculation({
  name: 'latent heat of vapour',
  task: 'follow the charge',
  inputs: {
    /** Temperature at which the vapour condenses. */
    temperature: input('T', 'temperature', { min: 193.15, max: 523.15, trusted: [243.15, 373.15], typical: 313.15 }),
  },
  output: output('h_fg', 'specific energy', 'kJ/kg'),
  formula: `${LATENT_HEAT_AT_FREEZING} - ${LATENT_HEAT_LOST_PER_KELVIN} * (T - 273.15)`,
  si: (T) => latentHeat(T - 273.15),
  falls: ['T'],
  sources: [source('ashrae2017', 'enthalpy of moist air less that of liquid water', 'memory')],
});

/**
 * Heat that passes in a core of a true effectiveness, from what enters it.
 *
 * @function
 * @returns One power; below zero where the coolant enters warmer than the charge.
 * @throws CalculationError if an input is impossible.
 * @example
 * heatFromEffectiveness({
 *   effectiveness: percent(75.559), chargeCapacityRate: heatCapacityRate(168.155, 'W/K'), coolantCapacityRate: heatCapacityRate(553.85, 'W/K'),
 *   hotInlet: temperature(120.936, '°C'), coolantInlet: temperature(27, '°C'),
 * }).in('kW') //=> 11.9352
 */
export const heatFromEffectiveness = calculation({
  name: 'heat passed in a core',
  task: 'follow the charge',
  inputs: {
    /** True effectiveness. */
    effectiveness: input('eps', 'ratio', { min: 0, max: 1, typical: 0.75 }),
    /** Mass flow times specific heat capacity of the charge. */
    chargeCapacityRate: input('C_h', 'heat capacity rate', { min: 0.1, max: 5e5, typical: 168 }),
    /** Mass flow times specific heat capacity of the coolant. */
    coolantCapacityRate: input('C_c', 'heat capacity rate', { min: 0.1, max: 5e5, typical: 554 }),
    /** Charge temperature into the core. */
    hotInlet: input('T1', 'temperature', CHARGE_TEMPERATURE),
    /** Temperature of the coolant at the face. */
    coolantInlet: input('T_c', 'temperature', { min: 150, max: 450, typical: 300 }),
  },
  output: output('Q', 'power', 'kW'),
  formula: 'eps * min(C_h, C_c) * (T1 - T_c)',
  si: (eps, Ch, Cc, T1, Tc) => eps * Math.min(Ch, Cc) * (T1 - Tc),
  rises: ['T1'],
  falls: ['T_c'],
  sources: [source('kaysLondon', 'chapter 2, definition of effectiveness', 'memory')],
});
