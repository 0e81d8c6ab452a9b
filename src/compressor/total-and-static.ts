import { gasConstantOfDryAir, specificHeatCapacityOfAir } from '../air/constants.js';
import { assumed, calculation, derived, input, output, source } from '../calculation/index.js';
import { HEAT_CAPACITY_RATIO } from './bounds.js';

const TEMPERATURE = { min: 150, max: 900, typical: 394.15 } as const;
const PRESSURE = { min: 1e4, max: 1e6, typical: 204100 } as const;
export const FLOW_SPEED = { min: 0, max: 400, typical: 60 } as const;
export const HEAT_CAPACITY = { min: 900, max: 1300, assume: specificHeatCapacityOfAir } as const;

const SOURCES = [source('dixonHall', 'stagnation properties', 'memory')];

/** What the air would warm by if it were brought to rest. */
export const dynamicRise = (V: number, cp: number): number => (V * V) / (2 * cp);

/**
 * Total temperature of moving air: what it has where it is brought to rest without loss of heat.
 *
 * Efficiencies and compressor maps are on total temperatures. At 60 m/s, usual in a charge pipe, total is 1.8 K above static.
 *
 * @function
 * @returns One total temperature.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * totalTemperature({ staticTemperature: temperature(121, '°C'), speed: speed(100, 'm/s') }).in('°C') //=> 125.975
 */
export const totalTemperature = calculation({
  name: 'total temperature',
  task: 'compress the charge',
  inputs: {
    /** Temperature of the air as it moves. */
    staticTemperature: input('T', 'temperature', TEMPERATURE),
    /** Speed of the air. */
    speed: input('V', 'speed', FLOW_SPEED),
    /** Specific heat capacity of the air at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
  },
  output: output('T0', 'temperature', '°C'),
  formula: 'T + V^2 / (2 * cp)',
  si: (T, V, cp) => T + dynamicRise(V, cp),
  rises: ['T', 'V'],
  falls: ['cp'],
  sources: SOURCES,
});

/**
 * Static temperature of moving air, from its total temperature.
 *
 * Density and condensation follow the static temperature.
 *
 * @function
 * @returns One static temperature.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * staticTemperature({ totalTemperature: temperature(121, '°C'), speed: speed(100, 'm/s') }).in('°C') //=> 116.025
 */
export const staticTemperature = calculation({
  name: 'static temperature',
  task: 'compress the charge',
  inputs: {
    /** Total temperature of the air. */
    totalTemperature: input('T0', 'temperature', TEMPERATURE),
    /** Speed of the air. */
    speed: input('V', 'speed', FLOW_SPEED),
    /** Specific heat capacity of the air at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
  },
  output: output('T', 'temperature', '°C'),
  formula: 'T0 - V^2 / (2 * cp)',
  si: (T0, V, cp) => T0 - dynamicRise(V, cp),
  rises: ['T0', 'cp'],
  falls: ['V'],
  sources: SOURCES,
});

const notColder = {
  need: 'totalTemperature must not be below staticTemperature (are they the wrong way round?)',
  holds: (_p: number, T: number, T0: number): boolean => T0 >= T,
};

/** Pressure over pressure along an isentrope, from the rise of temperature. */
const alongIsentrope = (T: number, rise: number, k: number): number => Math.exp((k / (k - 1)) * Math.log1p(rise / T));

/**
 * Total pressure of moving air: what it has where it is brought to rest without loss.
 *
 * A tap in the wall of a straight pipe reads static pressure. Take the total temperature from {@link totalTemperature}.
 *
 * @function
 * @returns One absolute total pressure.
 * @throws CalculationError if the total temperature lies below the static one, or an input is physically impossible.
 * @example
 * const air = { staticTemperature: temperature(300, 'K'), totalTemperature: temperature(304.9751, 'K') };
 * totalPressure({ staticPressure: absolutePressure(204.1, 'kPa'), ...air }).in('kPa') //=> 216.2
 */
export const totalPressure = calculation({
  name: 'total pressure',
  task: 'compress the charge',
  inputs: {
    /** Absolute pressure of the air as it moves. */
    staticPressure: input('p', 'absolute pressure', PRESSURE),
    /** Temperature of the air as it moves. */
    staticTemperature: input('T', 'temperature', TEMPERATURE),
    /** Total temperature of the air. */
    totalTemperature: input('T0', 'temperature', { ...TEMPERATURE, typical: 396.15 }),
    /** Heat-capacity ratio of the air. */
    heatCapacityRatio: assumed('k', 'ratio', HEAT_CAPACITY_RATIO),
  },
  output: output('p0', 'absolute pressure', 'kPa'),
  formula: 'p * (T0 / T)^(k / (k - 1))',
  si: (p, T, T0, k) => p * alongIsentrope(T, T0 - T, k),
  rules: [notColder],
  rises: ['p', 'T0'],
  falls: ['T', 'k'],
  sources: SOURCES,
});

/**
 * Static pressure of moving air, from its total pressure.
 *
 * @function
 * @returns One absolute static pressure.
 * @throws CalculationError if the total temperature lies below the static one, or an input is physically impossible.
 * @example
 * const air = { staticTemperature: temperature(300, 'K'), totalTemperature: temperature(304.9751, 'K') };
 * staticPressure({ totalPressure: absolutePressure(216.2, 'kPa'), ...air }).in('kPa') //=> 204.1
 */
export const staticPressure = calculation({
  name: 'static pressure',
  task: 'compress the charge',
  inputs: {
    /** Absolute total pressure of the air. */
    totalPressure: input('p0', 'absolute pressure', PRESSURE),
    /** Temperature of the air as it moves. */
    staticTemperature: input('T', 'temperature', TEMPERATURE),
    /** Total temperature of the air. */
    totalTemperature: input('T0', 'temperature', { ...TEMPERATURE, typical: 396.15 }),
    /** Heat-capacity ratio of the air. */
    heatCapacityRatio: assumed('k', 'ratio', HEAT_CAPACITY_RATIO),
  },
  output: output('p', 'absolute pressure', 'kPa'),
  formula: 'p0 * (T / T0)^(k / (k - 1))',
  si: (p0, T, T0, k) => p0 / alongIsentrope(T, T0 - T, k),
  rules: [notColder],
  rises: ['p0', 'T', 'k'],
  falls: ['T0'],
  sources: SOURCES,
});

const STATION = {
  /** Mass flow of air. */
  massFlow: input('m', 'mass flow', { min: 0, max: 5, typical: 0.2 }),
  /** Absolute static pressure, as a tap in the wall reads it. */
  staticPressure: input('p', 'absolute pressure', PRESSURE),
  /** Clear cross-section of the pipe. */
  area: input('A', 'area', { min: 1e-5, max: 1, typical: 2e-3 }),
} as const;
const GAS_CONSTANT = { min: 280, max: 310, assume: gasConstantOfDryAir } as const;
const slow = (V: number): boolean => V <= FLOW_SPEED.max;
const SLOW = 'a speed of at most 400 m/s (more than sound in cold air: is the area right?)';

const speedFromStatic = (m: number, p: number, A: number, T: number, R: number): number => (m * R * T) / (p * A);

/** The root of V = b (T0 - V²/(2 cp)), b the speed per kelvin, in the form that keeps its digits at low speed. */
function speedFromTotal(m: number, p: number, A: number, T0: number, R: number, cp: number): number {
  const b = speedFromStatic(m, p, A, 1, R);
  return (2 * b * T0) / (1 + Math.sqrt(1 + (2 * b * b * T0) / cp));
}

/**
 * Mean speed of the air in a pipe, from its flow and static state.
 *
 * @function
 * @returns One speed.
 * @throws CalculationError if the speed would be above 400 m/s, or an input is physically impossible.
 * @example
 * flowSpeed({ massFlow: massFlow(200, 'g/s'), staticPressure: absolutePressure(204.1, 'kPa'), area: area(20, 'cm²'), staticTemperature: temperature(121, '°C') }).in('m/s') //=> 55.43
 */
export const flowSpeed = calculation({
  name: 'speed of air in a pipe',
  task: 'compress the charge',
  inputs: {
    ...STATION,
    /** Temperature of the air as it moves. */
    staticTemperature: input('T', 'temperature', TEMPERATURE),
    /** Gas constant of the air. */
    gasConstant: assumed('R', 'specific gas constant', GAS_CONSTANT),
  },
  output: output('V', 'speed', 'm/s'),
  formula: 'm * R * T / (p * A)',
  si: speedFromStatic,
  rules: [{ need: SLOW, holds: (...si) => slow(speedFromStatic(si[0]!, si[1]!, si[2]!, si[3]!, si[4]!)) }],
  rises: ['m', 'T', 'R'],
  falls: ['p', 'A'],
  sources: [derived('continuity and the perfect gas')],
});

/**
 * Mean speed of the air in a pipe, from its flow, a wall tap and a total temperature: what a shielded probe and a pipe give.
 *
 * @function
 * @returns One speed.
 * @throws CalculationError if the speed would be above 400 m/s, or an input is physically impossible.
 * @example
 * flowSpeedFromTotalTemperature({ massFlow: massFlow(200, 'g/s'), staticPressure: absolutePressure(204.1, 'kPa'), area: area(20, 'cm²'), totalTemperature: temperature(121, '°C') }).in('m/s') //=> 55.22
 */
export const flowSpeedFromTotalTemperature = calculation({
  name: 'speed of air in a pipe from total temperature',
  task: 'compress the charge',
  inputs: {
    ...STATION,
    /** Total temperature of the air. */
    totalTemperature: input('T0', 'temperature', TEMPERATURE),
    /** Gas constant of the air. */
    gasConstant: assumed('R', 'specific gas constant', GAS_CONSTANT),
    /** Specific heat capacity of the air at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
  },
  output: output('V', 'speed', 'm/s'),
  formula: 'V == m * R * (T0 - V^2 / (2 * cp)) / (p * A)',
  si: speedFromTotal,
  rules: [{ need: SLOW, holds: (...si) => slow(speedFromTotal(si[0]!, si[1]!, si[2]!, si[3]!, si[4]!, si[5]!)) }],
  rises: ['m', 'T0', 'R', 'cp'],
  falls: ['p', 'A'],
  sources: [derived('continuity, the perfect gas and the steady-flow energy equation')],
});
