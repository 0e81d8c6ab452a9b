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
import { ratio, specificHeatCapacity } from '../units/index.js';

const EXHAUST_HEAT_CAPACITY_RATIO = constant('charge-path/exhaust-heat-capacity-ratio', ratio(1.33), {
  label: 'heat-capacity ratio of exhaust gas',
  source: commonPractice('1.30 to 1.35 for hot exhaust gas'),
  halfWidth: 0.02,
});

const EXHAUST_HEAT_CAPACITY = constant('charge-path/exhaust-heat-capacity', specificHeatCapacity(1160, 'J/(kg·K)'), {
  label: 'specific heat capacity of exhaust gas',
  source: commonPractice('1.15 to 1.2 kJ/(kg·K)'),
  halfWidth: 40,
});

const EXHAUST_FLOW = { min: 0, max: 6, typical: 0.18 } as const;
const EXHAUST_TEMPERATURE = { min: 300, max: 1500, typical: 1150 } as const;
const AREA = { min: 1e-6, max: 0.1, typical: 7e-4 } as const;
const BEHIND = { min: 3e4, max: 3e5, typical: 98e3 } as const;

function pressureAhead(m: number, T: number, p2: number, A: number, k: number, cp: number): number {
  const R = (cp * (k - 1)) / k;
  const pull = (m * Math.sqrt(R * T)) / (A * p2);
  const critical = ((k + 1) / 2) ** (k / (k - 1));
  const choked = Math.sqrt(k) * (2 / (k + 1)) ** ((k + 1) / (2 * (k - 1)));
  if (pull >= critical * choked) return (p2 * pull) / choked;
  // Below the critical ratio: a quadratic in x = PR^((k-1)/k), from pull^2 = (2k/(k-1)) x (x - 1).
  const b = (pull * pull * (k - 1)) / (2 * k);
  const rise = (2 * b) / (1 + Math.sqrt(1 + 4 * b));
  return p2 * Math.exp((k / (k - 1)) * Math.log1p(rise));
}

/**
 * Exhaust pressure ahead of a turbine and its wastegate, which together are one nozzle of a fixed area.
 *
 * @function
 * @returns One absolute pressure, in the exhaust manifold.
 * @throws CalculationError if an input is impossible.
 * @example
 * exhaustPressureAheadOfTurbine({
 *   exhaustFlow: massFlow(180, 'g/s'), exhaustTemperature: temperature(880, '°C'),
 *   pressureBehind: absolutePressure(98, 'kPa'), effectiveArea: area(7, 'cm²'),
 * }).in('kPa') //=> 220.2
 */
export const exhaustPressureAheadOfTurbine = calculation({
  name: 'exhaust pressure ahead of a turbine',
  task: 'follow the charge',
  inputs: {
    /** Mass flow of exhaust gas: humid air and fuel. */
    exhaustFlow: input('m_e', 'mass flow', EXHAUST_FLOW),
    /** Exhaust temperature ahead of the turbine. */
    exhaustTemperature: input('T_e', 'temperature', EXHAUST_TEMPERATURE),
    /** Absolute pressure behind the turbine. */
    pressureBehind: input('p_5', 'absolute pressure', BEHIND),
    /** Effective flow area of turbine and open wastegate together. */
    effectiveArea: input('A', 'area', AREA),
    /** Heat-capacity ratio of the exhaust gas. */
    heatCapacityRatio: assumed('k', 'ratio', { min: 1.2, max: 1.5, assume: EXHAUST_HEAT_CAPACITY_RATIO }),
    /** Specific heat capacity of the exhaust gas. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', {
      min: 900,
      max: 1500,
      assume: EXHAUST_HEAT_CAPACITY,
    }),
  },
  output: output('p_4', 'absolute pressure', 'kPa'),
  formula:
    '(m_e * sqrt(cp * (k - 1) / k * T_e) / (A * p_5) >= ((k + 1) / 2)^(k / (k - 1)) * sqrt(k) * (2 / (k + 1))^((k + 1) / (2 * (k - 1))))' +
    ' ? m_e * sqrt(cp * (k - 1) / k * T_e) / (A * sqrt(k) * (2 / (k + 1))^((k + 1) / (2 * (k - 1))))' +
    ' : p_5 * ((1 + sqrt(1 + 4 * (m_e * sqrt(cp * (k - 1) / k * T_e) / (A * p_5))^2 * (k - 1) / (2 * k))) / 2)^(k / (k - 1))',
  si: pressureAhead,
  rises: ['m_e', 'T_e'],
  falls: ['A'],
  sources: [
    source('heywood', 'appendix C, flow through a nozzle', 'memory'),
    derived('solved for the pressure ahead; choked beyond the critical ratio'),
  ],
});

/**
 * Power of the turbine: the part of the exhaust gas that passes it, expanded to the pressure behind it.
 *
 * @function
 * @returns One power, at the turbine wheel.
 * @throws CalculationError if the pressure ahead is below that behind, or an input is impossible.
 * @example
 * turbinePower({
 *   exhaustFlow: massFlow(180, 'g/s'), turbineShare: percent(70), exhaustTemperature: temperature(880, '°C'),
 *   pressureAhead: absolutePressure(226.7, 'kPa'), pressureBehind: absolutePressure(98, 'kPa'), turbineEfficiency: percent(65),
 * }).in('kW') //=> 20.6
 */
export const turbinePower = calculation({
  name: 'turbine power',
  task: 'follow the charge',
  inputs: {
    /** Mass flow of exhaust gas: humid air and fuel. */
    exhaustFlow: input('m_e', 'mass flow', EXHAUST_FLOW),
    /** Share of it that passes the turbine, not the wastegate. */
    turbineShare: input('x', 'ratio', { min: 0, max: 1, typical: 0.7 }),
    /** Exhaust temperature ahead of the turbine. */
    exhaustTemperature: input('T_e', 'temperature', EXHAUST_TEMPERATURE),
    /** Absolute pressure ahead of the turbine. */
    pressureAhead: input('p_4', 'absolute pressure', { min: 3e4, max: 2e6, typical: 227e3 }),
    /** Absolute pressure behind the turbine. */
    pressureBehind: input('p_5', 'absolute pressure', BEHIND),
    /** Isentropic efficiency of the turbine. */
    turbineEfficiency: input('eta_t', 'ratio', { min: 0.05, max: 1, typical: 0.65 }),
    /** Heat-capacity ratio of the exhaust gas. */
    heatCapacityRatio: assumed('k', 'ratio', { min: 1.2, max: 1.5, assume: EXHAUST_HEAT_CAPACITY_RATIO }),
    /** Specific heat capacity of the exhaust gas. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', {
      min: 900,
      max: 1500,
      assume: EXHAUST_HEAT_CAPACITY,
    }),
  },
  output: output('P_t', 'power', 'kW'),
  formula: 'm_e * x * eta_t * cp * T_e * (1 - (p_5 / p_4)^((k - 1) / k))',
  si: (me, x, Te, p4, p5, eta, k, cp) => me * x * eta * cp * Te * -Math.expm1(((k - 1) / k) * Math.log(p5 / p4)),
  rules: [{ need: 'the pressure ahead must not be below that behind', holds: (_me, _x, _Te, p4, p5) => p4 >= p5 }],
  rises: ['m_e', 'x', 'T_e', 'p_4', 'eta_t'],
  falls: ['p_5'],
  sources: [source('dixonHall', 'isentropic efficiency of a turbine', 'memory')],
});
