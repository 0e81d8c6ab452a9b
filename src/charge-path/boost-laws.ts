import {
  assumed,
  calculation,
  commonPractice,
  constant,
  derived,
  input,
  output,
  source,
} from '../calculation/index.js';
import { massFlow, pressureDifference } from '../units/index.js';
import { BAROMETER, DRY_FLOW } from './bounds.js';

/** A spring that holds its pressure whatever the flow: what boost control assumes. */
export const noDroop = constant('charge-path/no-droop', pressureDifference(0, 'kPa'), {
  label: 'droop per 1 % of air',
  source: derived('an ideal control'),
});

const ONE_FLOW = constant('charge-path/droop-reference-flow', massFlow(0.1, 'kg/s'), {
  label: 'air flow at which the spring was set',
  source: derived('of no effect without droop'),
});

/**
 * Absolute pressure that a spring lets stand where it senses: its own pressure over the room's, and its droop.
 *
 * @function
 * @returns One absolute pressure, at the place the control senses.
 * @throws CalculationError if an input is impossible.
 * @example
 * springPressure({ gaugePressure: gaugePressure(95, 'kPa'), barometer: absolutePressure(93.869, 'kPa'), airFlow: massFlow(164, 'g/s') }).in('kPa') //=> 188.869
 */
export const springPressure = calculation({
  name: 'pressure held by a spring',
  task: 'follow the charge',
  inputs: {
    /** Boost the spring is set for, over the room. */
    gaugePressure: input('p_s', 'gauge pressure', { min: 0, max: 7e5, typical: 95e3 }),
    /** Pressure of the room, at the vent of the control. */
    barometer: input('p_b', 'absolute pressure', BAROMETER),
    /** Mass flow of dry air. */
    airFlow: input('m', 'mass flow', DRY_FLOW),
    /** How much more boost stands for each 1 % of air beyond the flow below. Stiff springs and weak diaphragms have one. */
    droopPerPercentAir: assumed('d', 'pressure difference', { min: -2e4, max: 2e4, assume: noDroop }),
    /** Mass flow of dry air at which the spring was set. */
    airFlowAtSetting: assumed('m_0', 'mass flow', { min: 1e-4, max: 5, assume: ONE_FLOW }),
  },
  output: output('p', 'absolute pressure', 'kPa'),
  formula: 'p_b + p_s + d * 100 * (m / m_0 - 1)',
  si: (ps, pb, m, d, m0) => pb + ps + d * 100 * (m / m0 - 1),
  rises: ['p_s', 'p_b'],
  sources: [derived('a spring with a linear droop'), commonPractice('boost rises or falls with flow on stiff springs')],
});

/**
 * Pressure ratio of a compressor that turns at one speed, near one point of its speed line, which is taken as straight.
 *
 * In colder air the same speed is a higher corrected one: flow goes with it, and the rise of pressure with its square.
 *
 * @function
 * @returns One ratio.
 * @throws CalculationError if an input is impossible.
 * @example
 * speedLinePressureRatio({
 *   correctedFlow: massFlow(185, 'g/s'), inletTemperature: temperature(27, '°C'), inletTemperatureAtPoint: temperature(27, '°C'),
 *   flowAtPoint: massFlow(180, 'g/s'), ratioAtPoint: ratio(2.05), fallPerFlow: massFlow(0.25, 'kg/s'),
 * }).in('1') //=> 2.03
 */
export const speedLinePressureRatio = calculation({
  name: 'pressure ratio on a speed line',
  task: 'follow the charge',
  inputs: {
    /** Corrected flow through the compressor. */
    correctedFlow: input('m_c', 'mass flow', { min: 0, max: 5, typical: 0.185 }),
    /** Temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', { min: 200, max: 400, typical: 300 }),
    /** Inlet temperature at which the compressor turns at the corrected speed of the line. */
    inletTemperatureAtPoint: input('T0', 'temperature', { min: 200, max: 400, typical: 298 }),
    /** Corrected flow of the point the line goes through. */
    flowAtPoint: input('m_c0', 'mass flow', { min: 0, max: 5, typical: 0.18 }),
    /** Pressure ratio of that point. */
    ratioAtPoint: input('PR_0', 'ratio', { min: 1, max: 8, typical: 2.05 }),
    /** The corrected flow that would take a whole unit of pressure ratio: small on a steep line. */
    fallPerFlow: input('m_1', 'mass flow', { min: 1e-4, max: 1e3, typical: 0.25 }),
  },
  output: output('PR', 'ratio', '1'),
  formula: '1 + T0 / T1 * (PR_0 - 1 - (m_c / sqrt(T0 / T1) - m_c0) / m_1)',
  si: (mc, T1, T0, mc0, PR0, m1) => 1 + (T0 / T1) * (PR0 - 1 - (mc / Math.sqrt(T0 / T1) - mc0) / m1),
  rises: ['m_c0', 'PR_0'],
  falls: ['m_c'],
  sources: [
    derived('a tangent to a speed line of a compressor map'),
    source('dixonHall', 'similarity: flow goes with speed, work with its square', 'memory'),
  ],
});

/**
 * Mass flow that a displacement blower passes: its volume a turn, less what slips back as the pressure ratio grows.
 *
 * @function
 * @returns One mass flow of humid air.
 * @throws CalculationError if so much slips back that nothing is left, or an input is impossible.
 * @example
 * displacementBlowerFlow({
 *   inletDensity: density(1.07, 'kg/m³'), volumePerRevolution: volume(0.9, 'L'), blowerSpeed: rotationalSpeed(12000, 'rpm'),
 *   pressureRatio: ratio(1.9), volumetricEfficiencyUnloaded: percent(95), slip: percent(8),
 * }).in('g/s') //=> 169.103
 */
export const displacementBlowerFlow = calculation({
  name: 'flow of a displacement blower',
  task: 'follow the charge',
  inputs: {
    /** Density of the humid air at the blower's inlet. */
    inletDensity: input('rho', 'density', { min: 0.1, max: 5, typical: 1.07 }),
    /** Volume passed in a turn of its shaft. */
    volumePerRevolution: input('V', 'volume', { min: 1e-6, max: 0.1, typical: 9e-4 }),
    /** Speed of its shaft. */
    blowerSpeed: input('n', 'rotational speed', { min: 0.1, max: 2000, typical: 200 }),
    /** Outlet over inlet pressure. */
    pressureRatio: input('PR', 'ratio', { min: 1, max: 8, typical: 1.9 }),
    /** Volumetric efficiency at a pressure ratio of 1. */
    volumetricEfficiencyUnloaded: input('eta_0', 'ratio', { min: 0.1, max: 1.2, typical: 0.95 }),
    /** Volumetric efficiency lost for each unit of pressure ratio above 1. */
    slip: input('s', 'ratio', { min: 0, max: 1, typical: 0.08 }),
  },
  output: output('m', 'mass flow', 'g/s'),
  formula: 'rho * V * n * (eta_0 - s * (PR - 1))',
  si: (rho, V, n, PR, eta0, s) => rho * V * n * (eta0 - s * (PR - 1)),
  rules: [
    {
      need: 'not everything must slip back (slip times the pressure ratio above 1 must stay below the unloaded efficiency)',
      holds: (_rho, _V, _n, PR, eta0, s) => eta0 - s * (PR - 1) > 0,
    },
  ],
  rises: ['rho', 'V', 'n', 'eta_0'],
  falls: ['PR', 's'],
  sources: [derived('swept volume less a slip that grows with pressure ratio')],
});

/**
 * Speed of a driven shaft, from engine speed and the ratio of the drive.
 *
 * @function
 * @returns One rotational speed.
 * @throws CalculationError if an input is impossible.
 * @example
 * drivenSpeed({ engineSpeed: rotationalSpeed(6000, 'rpm'), driveRatio: ratio(2) }).in('rpm') //=> 12000
 */
export const drivenSpeed = calculation({
  name: 'speed of a driven shaft',
  task: 'follow the charge',
  inputs: {
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', { min: 0.5, max: 1000, typical: 100 }),
    /** Turns of the driven shaft for one of the engine. */
    driveRatio: input('i', 'ratio', { min: 0.01, max: 100, typical: 2 }),
  },
  output: output('n_d', 'rotational speed', 'rpm'),
  formula: 'n * i',
  si: (n, i) => n * i,
  rises: ['n', 'i'],
  sources: [derived('a drive without slip')],
});
