import { specificHeatCapacityOfAir } from '../air/constants.js';
import {
  assumed,
  calculation,
  commonPractice,
  constant,
  derived,
  each,
  input,
  output,
  source,
} from '../calculation/index.js';
import { pressureDifference, ratio, volumeFlow } from '../units/index.js';
import { rootBetween } from '../statistics/root-between.js';
import { COOLANT_INLET } from './bounds.js';

const COOLING_AIR = { min: 1e-3, max: 20, typical: 0.55 };
const AIR_DENSITY = { min: 0.2, max: 3, typical: 1.12 };
const ROAD_SPEED = { min: 0, max: 120, typical: 27.8 };

const RAM_RECOVERY = constant('intercooler/ram-recovery', ratio(0.55), {
  label: 'ram recovery',
  source: commonPractice('0.3 to 0.8 of the free-stream head reaches a core behind a grille'),
  halfWidth: 0.25,
});

const NO_FAN = constant('intercooler/fan-pressure', pressureDifference(0, 'Pa'), {
  label: 'fan pressure',
  source: commonPractice('no fan'),
});

const NO_FAN_FLOW = constant('intercooler/fan-free-flow', volumeFlow(1, 'm³/s'), {
  label: 'fan flow without resistance',
  source: commonPractice('of no effect without a fan'),
});

const FAN_EXPONENT = constant('intercooler/fan-exponent', ratio(2), {
  label: 'fan curve exponent',
  source: commonPractice('the pressure of an axial fan falls about with the square of its flow'),
});

const STACK_SOURCES = [
  source('kaysLondon', 'chapter 2, core pressure drop', 'memory'),
  derived('cores one behind another pass the same flow, and their losses add'),
];

/**
 * Temperature of the cooling air behind a core that gives heat to it: what the next core in the stack breathes.
 *
 * A charge cooler in front costs the radiator this; behind a radiator or a condenser it pays the same itself.
 *
 * @function
 * @returns One temperature, the mean over the face; a core that covers half the radiator heats half of its air twice as much.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * coolingAirBehindCore({
 *   face: temperature(18, '°C'), heat: power(24, 'kW'), coolingAirFlow: massFlow(0.9, 'kg/s'),
 * }).in('°C') //=> 44.53
 */
export const coolingAirBehindCore = calculation({
  name: 'cooling air behind a core',
  task: 'cool the intercooler',
  inputs: {
    /** Temperature of the cooling air at the face of the core. */
    face: input('Tf', 'temperature', COOLANT_INLET),
    /** Heat that the core gives to the cooling air; below zero for one that cools it. */
    heat: input('Q', 'power', { min: -2e5, max: 1e6, typical: 24000 }),
    /** Mass flow of cooling air. */
    coolingAirFlow: input('m', 'mass flow', { ...COOLING_AIR, typical: 0.9 }),
    /** Specific heat capacity of the cooling air at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', {
      min: 900,
      max: 1300,
      assume: specificHeatCapacityOfAir,
    }),
  },
  output: output('Tb', 'temperature', '°C'),
  formula: 'Tf + Q / (m * cp)',
  si: (Tf, Q, m, cp) => Tf + Q / (m * cp),
  rules: [
    {
      need: 'cooling air that stays between -123 and 427 °C (so weak a flow cannot carry this heat)',
      holds: (Tf, Q, m, cp) => Tf + Q / (m * cp) >= 150 && Tf + Q / (m * cp) <= 700,
    },
  ],
  rises: ['Tf', 'Q'],
  sources: [derived('first law over the cooling air')],
});

/**
 * Pressure that the speed of the car gives in front of the cores.
 *
 * @function
 * @returns One pressure difference.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * ramPressure({ roadSpeed: speed(100, 'km/h'), airDensity: density(1.12, 'kg/m³') }).in('Pa') //=> 237.7
 */
export const ramPressure = calculation({
  name: 'ram pressure',
  task: 'cool the intercooler',
  inputs: {
    /** Speed of the car through the air. */
    roadSpeed: input('V', 'speed', ROAD_SPEED),
    /** Density of the air around the car. */
    airDensity: input('rho', 'density', AIR_DENSITY),
    /** Share of the free-stream head that reaches the stack, all losses of opening and exit taken off. */
    ramRecovery: assumed('cr', 'ratio', { min: 0, max: 1, trusted: [0.3, 0.8], assume: RAM_RECOVERY }),
  },
  output: output('dpr', 'pressure difference', 'Pa'),
  formula: 'cr * rho * V^2 / 2',
  si: ramHead,
  rises: ['V', 'rho', 'cr'],
  sources: [derived('definition of dynamic pressure'), commonPractice('share recovered')],
});

function ramHead(V: number, rho: number, cr: number): number {
  return (cr * rho * V * V) / 2;
}

const STACK = {
  /** Loss of each core where it was measured. */
  measuredLoss: each('dp', 'pressure difference', { min: 0.1, max: 1e4, typical: 120 }),
  /** Mass flow there. */
  measuredFlow: each('mr', 'mass flow', { ...COOLING_AIR, typical: 0.5 }),
  /** Mean density over the core there. */
  measuredDensity: each('rr', 'density', { ...AIR_DENSITY, typical: 1.15 }),
  /** Mean density over the core now. */
  meanDensity: each('rc', 'density', { ...AIR_DENSITY, typical: 1.08 }),
  /** How the loss grows with mass flow: 2 for entry and exit losses, 1.7 to 1.8 for fins, towards 1 in laminar flow. */
  exponent: each('n', 'ratio', { min: 1, max: 2, typical: 1.8 }),
};

function stackLoss(m: number, cores: readonly number[]): number {
  const count = cores.length / 5;
  let total = 0;
  for (let i = 0; i < count; i++) {
    const of = (list: number): number => cores[list * count + i]!;
    const [dp, mr, rr, rc, n] = [of(0), of(1), of(2), of(3), of(4)];
    total += (dp * (m / mr) ** n * rr) / rc;
  }
  return total;
}

/**
 * Pressure loss of the cooling air through cores one behind another, each from one measurement of it.
 *
 * Order does not matter to the sum, only through the densities: behind a hot core the air is thin and its loss grows.
 *
 * @function
 * @returns One pressure difference.
 * @throws CalculationError if the lists differ in length, or an input is physically impossible.
 * @example
 * stackPressureLoss({
 *   coolingAirFlow: massFlow(0.55, 'kg/s'),
 *   measuredLoss: [pressureDifference(120, 'Pa'), pressureDifference(150, 'Pa')],
 *   measuredFlow: [massFlow(0.5, 'kg/s'), massFlow(0.5, 'kg/s')],
 *   measuredDensity: [density(1.15, 'kg/m³'), density(1.15, 'kg/m³')],
 *   meanDensity: [density(1.08, 'kg/m³'), density(1.01, 'kg/m³')],
 *   exponent: [ratio(1.8), ratio(1.8)],
 * }).in('Pa') //=> 354.4
 */
export const stackPressureLoss = calculation({
  name: 'pressure loss of a stack of cores',
  task: 'cool the intercooler',
  inputs: {
    /** Mass flow of cooling air through all of them. */
    coolingAirFlow: input('m', 'mass flow', COOLING_AIR),
    ...STACK,
  },
  output: output('dps', 'pressure difference', 'Pa'),
  formula: 'sum(dp .* (m ./ mr) .^ n .* rr ./ rc)',
  si: (m, ...cores) => stackLoss(m, cores),
  rises: ['m', 'dp'],
  sources: STACK_SOURCES,
});

/** The fan's pressure, less where the flow already runs through it; past its free flow it is in the way. */
function fanHead(m: number, rho: number, pf: number, Vf: number, b: number): number {
  return pf * (1 - (m / (rho * Vf)) ** b);
}

/**
 * Flow of cooling air through a stack of cores: where ram and fan pressure together meet the losses of the cores.
 *
 * The fan is described by its pressure without flow and its flow without resistance. Pushed past that flow, as at speed on the road, it
 * holds the air up. The densities in the cores are taken as given; {@link coolingAirThroughStack} finds them from the heat.
 *
 * @function
 * @returns One mass flow, solved for to the last digits.
 * @throws CalculationError if neither the road nor a fan drives the air, the lists differ in length, or the flow would be outside 1 g/s
 * to 20 kg/s.
 * @example
 * coolingAirFlow({
 *   roadSpeed: speed(100, 'km/h'), airDensity: density(1.12, 'kg/m³'),
 *   measuredLoss: [pressureDifference(120, 'Pa'), pressureDifference(150, 'Pa')],
 *   measuredFlow: [massFlow(0.5, 'kg/s'), massFlow(0.5, 'kg/s')],
 *   measuredDensity: [density(1.15, 'kg/m³'), density(1.15, 'kg/m³')],
 *   meanDensity: [density(1.08, 'kg/m³'), density(1.01, 'kg/m³')],
 *   exponent: [ratio(1.8), ratio(1.8)],
 * }).in('kg/s') //=> 0.4405
 */
export const coolingAirFlow = calculation({
  name: 'flow of cooling air',
  task: 'cool the intercooler',
  inputs: {
    /** Speed of the car through the air; zero on the bench. */
    roadSpeed: input('V', 'speed', ROAD_SPEED),
    /** Density of the air around the car. */
    airDensity: input('rho', 'density', AIR_DENSITY),
    /** Share of the free-stream head that reaches the stack, all losses of opening and exit taken off. */
    ramRecovery: assumed('cr', 'ratio', { min: 0, max: 1, trusted: [0.3, 0.8], assume: RAM_RECOVERY }),
    /** Pressure of the fan without flow. */
    fanPressure: assumed('pf', 'pressure difference', { min: 0, max: 5000, assume: NO_FAN }),
    /** Volume flow of the fan without resistance. */
    fanFreeFlow: assumed('Vf', 'volume flow', { min: 0.01, max: 50, assume: NO_FAN_FLOW }),
    /** How the pressure of the fan falls with its flow. */
    fanExponent: assumed('b', 'ratio', { min: 1, max: 4, assume: FAN_EXPONENT }),
    ...STACK,
  },
  output: output('m', 'mass flow', 'kg/s'),
  formula: 'sum(dp .* (m ./ mr) .^ n .* rr ./ rc) == cr * rho * V^2 / 2 + pf * (1 - (m / (rho * Vf))^b)',
  si: (V, rho, cr, pf, Vf, b, ...cores) => {
    const ram = ramHead(V, rho, cr);
    const missing = (m: number): number => stackLoss(m, cores) - ram - fanHead(m, rho, pf, Vf, b);
    return rootBetween(missing, COOLING_AIR.min, COOLING_AIR.max);
  },
  rules: [
    {
      need: 'something must drive the cooling air: a road speed, or a fan pressure',
      holds: (V, _rho, cr, pf) => V * cr > 0 || pf > 0,
    },
    {
      need: 'the flow must come out between 1 g/s and 20 kg/s: such a drive and such losses do not belong together',
      holds: (V, rho, cr, pf, Vf, b, ...cores) => {
        const missing = (m: number): number => stackLoss(m, cores) - ramHead(V, rho, cr) - fanHead(m, rho, pf, Vf, b);
        return missing(COOLING_AIR.min) <= 0 && missing(COOLING_AIR.max) >= 0;
      },
    },
  ],
  rises: ['V', 'cr', 'Vf'],
  falls: ['dp'],
  sources: [
    derived('ram and fan pressure equal to the losses of the stack'),
    commonPractice('ram recovery 0.3 to 0.8, quadratic fan curve'),
    ...STACK_SOURCES,
  ],
});

/**
 * Speed of the cooling air in front of a core over the speed of the car: a check of any figure for cooling-air flow.
 *
 * @function
 * @returns One ratio. Behind a grille it is commonly 0.1 to 0.3; outside 0.05 to 0.5 it carries a note.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * coolingAirSpeedRatio({
 *   coolingAirFlow: massFlow(0.55, 'kg/s'), roadSpeed: speed(100, 'km/h'),
 *   airDensity: density(1.12, 'kg/m³'), frontalArea: area(0.09, 'm²'),
 * }).in('1') //=> 0.1964
 */
export const coolingAirSpeedRatio = calculation({
  name: 'speed of the cooling air over road speed',
  task: 'cool the intercooler',
  inputs: {
    /** Mass flow of cooling air. */
    coolingAirFlow: input('m', 'mass flow', COOLING_AIR),
    /** Speed of the car through the air. */
    roadSpeed: input('V', 'speed', { ...ROAD_SPEED, min: 1 }),
    /** Density of the air around the car. */
    airDensity: input('rho', 'density', AIR_DENSITY),
    /** Frontal area of the core. */
    frontalArea: input('A', 'area', { min: 1e-3, max: 5, typical: 0.09 }),
  },
  output: output('r', 'ratio', '1'),
  formula: 'm / (rho * A * V)',
  si: speedRatio,
  rules: [
    {
      need: 'a ratio between 0.05 and 0.5 (behind a grille it is commonly 0.1 to 0.3)',
      holds: (m, V, rho, A) => speedRatio(m, V, rho, A) >= 0.05 && speedRatio(m, V, rho, A) <= 0.5,
      otherwise: 'note',
    },
  ],
  rises: ['m'],
  falls: ['V', 'rho', 'A'],
  sources: [commonPractice('0.1 to 0.3 behind a grille')],
});

function speedRatio(m: number, V: number, rho: number, A: number): number {
  return m / (rho * A * V);
}
