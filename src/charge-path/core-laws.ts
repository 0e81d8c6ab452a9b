import { assumed, calculation, commonPractice, derived, input, output, source } from '../calculation/index.js';
import { LOSS_EXPONENT } from '../intercooler/pressure-loss.js';
import { CHARGE_FLOW, CHARGE_PRESSURE, CHARGE_TEMPERATURE, COOLANT_FLOW, COOLED_TEMPERATURE, LOSS } from './bounds.js';

/**
 * Conductance between one flow of a core and its wall, at another flow than it was rated at.
 *
 * The exponent is 0.8 for a turbulent passage without fins, about 0.5 to 0.6 for finned ones, 0 for a side that does not depend on
 * flow. Both sides together: `overallConductance`.
 *
 * @function
 * @returns One conductance.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * conductanceAtFlow({
 *   ratedConductance: thermalConductance(600, 'W/K'), ratedFlow: massFlow(160, 'g/s'), exponent: ratio(0.6), flow: massFlow(200, 'g/s'),
 * }).in('W/K') //=> 685.958
 */
export const conductanceAtFlow = calculation({
  name: 'conductance of one side at another flow',
  task: 'follow the charge',
  inputs: {
    /** Conductance at the rated flow. */
    ratedConductance: input('hA_0', 'thermal conductance', { min: 1e-3, max: 1e6, typical: 600 }),
    /** Mass flow at which that holds. */
    ratedFlow: input('m_0', 'mass flow', { ...COOLANT_FLOW, typical: 0.16 }),
    /** How it grows with flow. */
    exponent: input('n', 'ratio', { min: 0, max: 1, typical: 0.6 }),
    /** Mass flow. */
    flow: input('m', 'mass flow', { ...COOLANT_FLOW, typical: 0.165 }),
  },
  output: output('hA', 'thermal conductance', 'W/K'),
  formula: 'hA_0 * (m / m_0)^n',
  si: (hA0, m0, n, m) => hA0 * (m / m0) ** n,
  rises: ['hA_0', 'm'],
  falls: ['m_0'],
  sources: [
    source('shahSekulic', 'section 9.1, heat transfer as a power of flow', 'memory'),
    commonPractice('exponents 0.5 to 0.8'),
  ],
});

/** Loss per specific volume: k in `p1 - p2 == k (v1 + v2)`. */
function lossFactor(m: number, dp0: number, m0: number, rho0: number, n: number): number {
  return (dp0 * (m / m0) ** n * rho0) / 2;
}

function pressureBehind(
  p1: number,
  T1: number,
  T2: number,
  R: number,
  m: number,
  dp0: number,
  m0: number,
  rho0: number,
  n: number,
): number {
  const k = R * lossFactor(m, dp0, m0, rho0, n);
  const most = p1 - (k * T1) / p1;
  const square = most * most - 4 * k * T2;
  return most > 0 && square >= 0 ? (most + Math.sqrt(square)) / 2 : NaN;
}

/**
 * Charge pressure behind a core, from one measured loss, the temperatures across the core and the flow.
 *
 * The loss stands with the mean of the specific volumes before and behind, so that the pressure behind is on both sides of the
 * equation; see `scaledPressureLoss` for the loss alone where both pressures are known.
 *
 * @function
 * @returns One absolute pressure.
 * @throws CalculationError where the core cannot pass that flow: the loss would take all the pressure.
 * @example
 * coreOutletPressure({
 *   inletPressure: absolutePressure(204.1, 'kPa'), inletTemperature: temperature(121, '°C'), outletTemperature: temperature(44, '°C'),
 *   gasConstant: specificGasConstant(287.1, 'J/(kg·K)'), flow: massFlow(200, 'g/s'),
 *   measuredLoss: pressureDifference(6, 'kPa'), measuredFlow: massFlow(160, 'g/s'), measuredDensity: density(1.8, 'kg/m³'),
 * }).in('kPa') //=> 195.875
 */
export const coreOutletPressure = calculation({
  name: 'charge pressure behind a core',
  task: 'follow the charge',
  inputs: {
    /** Absolute pressure into the core. */
    inletPressure: input('p1', 'absolute pressure', CHARGE_PRESSURE),
    /** Charge temperature into the core. */
    inletTemperature: input('T1', 'temperature', CHARGE_TEMPERATURE),
    /** Charge temperature out of the core. */
    outletTemperature: input('T2', 'temperature', COOLED_TEMPERATURE),
    /** Gas constant of the charge. */
    gasConstant: input('R', 'specific gas constant', { min: 280, max: 470, typical: 288.6 }),
    /** Mass flow of charge, vapour included. */
    flow: input('m', 'mass flow', CHARGE_FLOW),
    /** Pressure loss where it was measured. */
    measuredLoss: input('dp0', 'pressure difference', LOSS),
    /** Mass flow there. */
    measuredFlow: input('m0', 'mass flow', { ...CHARGE_FLOW, min: 1e-4, typical: 0.16 }),
    /** Mean density over the core there. */
    measuredDensity: input('rho0', 'density', { min: 0.1, max: 20, typical: 1.8 }),
    /** How the loss grows with mass flow: 2 for entry and exit losses, 1.7 to 1.8 for fins. */
    exponent: assumed('n', 'ratio', { min: 1, max: 2, trusted: [1.5, 2], assume: LOSS_EXPONENT }),
  },
  output: output('p2', 'absolute pressure', 'kPa'),
  formula: 'p1 - p2 == dp0 * (m / m0)^n * rho0 * R * (T1 / p1 + T2 / p2) / 2',
  si: pressureBehind,
  rules: [
    {
      need: 'the core must be able to pass that flow (the loss would take all the pressure)',
      holds: (...si) => pressureBehind(...(si as Parameters<typeof pressureBehind>)) > 0,
    },
  ],
  rises: ['p1'],
  falls: ['T1', 'T2', 'R', 'dp0', 'rho0'],
  sources: [
    source('kaysLondon', 'chapter 2, core pressure drop with mean specific volume', 'memory'),
    derived('a loss that follows a power of mass flow over the mean density'),
  ],
});
