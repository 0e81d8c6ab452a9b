import { calculation, derived, input, output, source } from '../calculation/index.js';
import { FILM_COEFFICIENT } from './core-bounds.js';

/** CODATA 2018, exact since the SI of 2019. */
const STEFAN_BOLTZMANN = 5.670374419e-8;

const AIR = { min: 150, max: 900, typical: 313.15 } as const;
const WALL = { min: 150, max: 900, typical: 353.15 } as const;
const WALL_SHARE = { min: 0, max: 0.95, trusted: [0, 0.5], typical: 0.2 } as const;

/**
 * Share by which heat that comes along its stem pulls a probe from the air towards the wall it is screwed into.
 *
 * A steel probe of 3 mm, 15 mm deep in intake air, shows a quarter of the way to the wall; 30 mm deep, a thirtieth. So a hot plenum
 * shrinks every difference of charge temperature that such a probe is asked to show.
 *
 * @function
 * @returns One ratio: 0 for a probe that shows the air, near 1 for one that shows the wall.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * stemShare({
 *   immersion: length(15, 'mm'), heatTransferCoefficient: heatTransferCoefficient(230, 'W/(m²·K)'),
 *   probeConductivity: thermalConductivity(15, 'W/(m·K)'), probeDiameter: length(3, 'mm'),
 * }).in('1') //=> 0.2310
 */
export const stemShare = calculation({
  name: 'share of the wall in a probe, by its stem',
  task: 'rate an intercooler',
  inputs: {
    /** Length of the probe in the flow. */
    immersion: input('L', 'length', { min: 0, max: 1, typical: 0.015 }),
    /** Heat transfer coefficient of the air at the probe; 100 to 400 W/(m²·K) at a thin probe in intake air. */
    heatTransferCoefficient: input('h', 'heat transfer coefficient', { ...FILM_COEFFICIENT, typical: 230 }),
    /** Heat conductivity of the stem; stainless steel about 15 W/(m·K), brass 110. */
    probeConductivity: input('k', 'thermal conductivity', { min: 0.01, max: 500, typical: 15 }),
    /** Diameter of the stem. */
    probeDiameter: input('d', 'length', { min: 1e-4, max: 0.05, typical: 0.003 }),
  },
  output: output('s_c', 'ratio', '1'),
  formula: '1 / cosh(L * sqrt(4 * h / (k * d)))',
  si: (L, h, k, d) => 1 / Math.cosh(L * Math.sqrt((4 * h) / (k * d))),
  rises: ['k', 'd'],
  falls: ['L', 'h'],
  sources: [source('incropera', 'section 3.6, fin with an insulated tip', 'memory')],
});

/**
 * Share by which radiation pulls a probe from the air towards the walls it sees; for walls not much hotter than the air.
 *
 * It comes on top of {@link stemShare}: 0.02 to 0.06 in intake air.
 *
 * @function
 * @returns One ratio.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * radiationShare({
 *   emissivity: ratio(0.8), meanTemperature: temperature(46.85, '°C'), heatTransferCoefficient: heatTransferCoefficient(200, 'W/(m²·K)'),
 * }).in('1') //=> 0.02973
 */
export const radiationShare = calculation({
  name: 'share of the wall in a probe, by radiation',
  task: 'rate an intercooler',
  inputs: {
    /** Emissivity of the probe; oxidised steel about 0.8, bright metal 0.2. */
    emissivity: input('e', 'ratio', { min: 0, max: 1, typical: 0.8 }),
    /** Mean temperature of probe and wall. */
    meanTemperature: input('T', 'temperature', { ...AIR, typical: 320 }),
    /** Heat transfer coefficient of the air at the probe. */
    heatTransferCoefficient: input('h', 'heat transfer coefficient', { ...FILM_COEFFICIENT, typical: 230 }),
  },
  output: output('s_r', 'ratio', '1'),
  formula: '4 * e * 5.670374419e-8 * T^3 / h',
  si: (e, T, h) => (4 * e * STEFAN_BOLTZMANN * T ** 3) / h,
  rises: ['e', 'T'],
  falls: ['h'],
  sources: [
    source('incropera', 'section 1.2, radiation heat transfer coefficient', 'memory'),
    derived('both temperatures near their mean, so that radiation is in proportion to their difference'),
  ],
});

/**
 * What a probe in the charge reads when part of it shows the wall.
 *
 * @function
 * @returns One temperature. Carries a note where the wall counts for more than half: then the probe tells little of the air.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * chargeProbeReading({ chargeTemperature: temperature(40, '°C'), wallTemperature: temperature(80, '°C'), wallShare: ratio(0.2) }).in('°C') //=> 48
 */
export const chargeProbeReading = calculation({
  name: 'reading of a probe in the charge',
  task: 'rate an intercooler',
  inputs: {
    /** Temperature of the air. */
    chargeTemperature: input('T', 'temperature', AIR),
    /** Temperature of the wall that holds the probe. */
    wallTemperature: input('T_w', 'temperature', WALL),
    /** {@link stemShare} and {@link radiationShare} together. */
    wallShare: input('s', 'ratio', WALL_SHARE),
  },
  output: output('T_p', 'temperature', '°C'),
  formula: 'T + s * (T_w - T)',
  si: (T, Tw, s) => T + s * (Tw - T),
  rises: ['T', 'T_w'],
  sources: [derived('a share of the probe shows the wall, the rest the air')],
});

/**
 * Charge temperature from a probe of which part shows the wall.
 *
 * A difference between two set-ups reads too small by the same share, if their walls are equally warm.
 *
 * @function
 * @returns One temperature. Carries a note where the wall counts for more than half: errors of the reading then count more than twice.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * chargeTemperatureFromProbe({ probeReading: temperature(48, '°C'), wallTemperature: temperature(80, '°C'), wallShare: ratio(0.2) }).in('°C') //=> 40
 */
export const chargeTemperatureFromProbe = calculation({
  name: 'charge temperature from a probe',
  task: 'rate an intercooler',
  inputs: {
    /** What the probe reads. */
    probeReading: input('T_p', 'temperature', AIR),
    /** Temperature of the wall that holds the probe. */
    wallTemperature: input('T_w', 'temperature', WALL),
    /** {@link stemShare} and {@link radiationShare} together. */
    wallShare: input('s', 'ratio', WALL_SHARE),
  },
  output: output('T', 'temperature', '°C'),
  formula: 'T_p + s / (1 - s) * (T_p - T_w)',
  si: (Tp, Tw, s) => Tp + (s / (1 - s)) * (Tp - Tw),
  rises: ['T_p'],
  falls: ['T_w'],
  sources: [derived('a share of the probe shows the wall, the rest the air')],
});

/**
 * Time constant of a probe at another air flow: faster air carries heat to it faster.
 *
 * @function
 * @returns One time.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * probeTimeConstant({ knownTimeConstant: time(3, 's'), knownFlow: massFlow(0.05, 'kg/s'), flow: massFlow(0.2, 'kg/s') }).in('s') //=> 1.5
 */
export const probeTimeConstant = calculation({
  name: 'time constant of a probe at another flow',
  task: 'rate an intercooler',
  inputs: {
    /** Time constant where it is known. */
    knownTimeConstant: input('tau_0', 'time', { min: 0, max: 600, typical: 3 }),
    /** Air flow it was found at. */
    knownFlow: input('m_0', 'mass flow', { min: 1e-4, max: 10, typical: 0.05 }),
    /** Air flow it is wanted at. */
    flow: input('m', 'mass flow', { min: 1e-4, max: 10, typical: 0.2 }),
  },
  output: output('tau', 'time', 's'),
  formula: 'tau_0 * sqrt(m_0 / m)',
  si: (tau0, m0, m) => tau0 * Math.sqrt(m0 / m),
  rises: ['tau_0', 'm_0'],
  falls: ['m'],
  sources: [
    source(
      'incropera',
      'section 7.4, cylinder in cross flow at Reynolds numbers of 40 to 4000: Nusselt about Re^0.5',
      'memory',
    ),
    derived('time constant in inverse proportion to the heat transfer coefficient'),
  ],
});
