import { assumed, calculation, constant, derived, input, output, source } from '../calculation/index.js';
import { specificHeatCapacity } from '../units/index.js';
import { COOLANT_INLET, HOT_INLET } from './bounds.js';
import { CORE_HEAT_CAPACITY, DURATION, SOAK_FLOWS, WALL } from './soak-inputs.js';

const HEAT_CAPACITY_OF_ALUMINIUM = constant(
  'intercooler/specific-heat-capacity-of-aluminium',
  specificHeatCapacity(897, 'J/(kg·K)'),
  {
    label: 'specific heat capacity of aluminium',
    source: source('crc', 'heat capacity of the elements at 25 °C', 'memory'),
    halfWidth: 20,
  },
);

const SOURCES = [
  derived('heat balance of a wall of one temperature between two flows'),
  source('incropera', 'section 5.1, lumped capacitance', 'memory'),
];

/** Heat per kelvin between a flow as it enters and a wall of one temperature. */
const ofFlow = (rate: number, units: number): number => rate * -Math.expm1(-units);

const SOMETHING_FLOWS = {
  need: 'something must flow: a capacity rate and its transfer units above zero on one side',
  holds: (_T1: number, Ch: number, Nh: number, _Tc: number, Cc: number, Nc: number) =>
    ofFlow(Ch, Nh) + ofFlow(Cc, Nc) > 0,
};

/**
 * Heat capacity of the metal of a core.
 *
 * @function
 * @returns One heat capacity.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * coreHeatCapacity({ mass: mass(6, 'kg') }).in('kJ/K') //=> 5.38
 */
export const coreHeatCapacity = calculation({
  name: 'heat capacity of a core',
  task: 'follow an intercooler through a pull',
  inputs: {
    /** Mass of the core; its tanks only as far as they take part. */
    mass: input('mc', 'mass', { min: 0.1, max: 100, typical: 6 }),
    /** Specific heat capacity of its metal. */
    specificHeatCapacity: assumed('c', 'specific heat capacity', {
      min: 300,
      max: 1100,
      assume: HEAT_CAPACITY_OF_ALUMINIUM,
    }),
  },
  output: output('K', 'heat capacity', 'J/K'),
  formula: 'mc * c',
  si: (mc, c) => mc * c,
  rises: ['mc', 'c'],
  sources: [derived('definition of heat capacity')],
});

/**
 * Temperature a core settles at, its wall taken as of one temperature.
 *
 * Settled cores are warmer where the charge enters. This mean is for comparing start temperatures; for the charge behind a settled core
 * use {@link effectiveness}.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if nothing flows, or an input is physically impossible.
 * @example
 * steadyWallTemperature({
 *   hotInlet: temperature(121, '°C'), chargeCapacityRate: heatCapacityRate(202, 'W/K'), chargeTransferUnits: ratio(2),
 *   coolantInlet: temperature(18, '°C'), coolantCapacityRate: heatCapacityRate(500, 'W/K'), coolantTransferUnits: ratio(1),
 * }).in('°C') //=> 54.66
 */
export const steadyWallTemperature = calculation({
  name: 'steady wall temperature',
  task: 'follow an intercooler through a pull',
  inputs: SOAK_FLOWS,
  output: output('Tws', 'temperature', '°C'),
  formula: '(Ch * (1 - exp(-Nh)) * T1 + Cc * (1 - exp(-Nc)) * Tc) / (Ch * (1 - exp(-Nh)) + Cc * (1 - exp(-Nc)))',
  si: steadyWall,
  rules: [SOMETHING_FLOWS],
  rises: ['T1', 'Tc'],
  sources: SOURCES,
});

function steadyWall(T1: number, Ch: number, Nh: number, Tc: number, Cc: number, Nc: number): number {
  const [a, b] = [ofFlow(Ch, Nh), ofFlow(Cc, Nc)];
  return (a * T1 + b * Tc) / (a + b);
}

/**
 * Time constant of a core: the time in which its wall goes 63 % of the way to where it settles, if the wall is of one temperature.
 *
 * With no charge flowing it is the time constant of recovery between pulls.
 *
 * @function
 * @returns One time. From a record of a real cool-down, use {@link timeConstantFromCoolDown}.
 * @throws CalculationError if nothing flows, or an input is physically impossible.
 * @example
 * coreTimeConstant({
 *   heatCapacity: heatCapacity(5382, 'J/K'),
 *   chargeCapacityRate: heatCapacityRate(202, 'W/K'), chargeTransferUnits: ratio(2),
 *   coolantCapacityRate: heatCapacityRate(500, 'W/K'), coolantTransferUnits: ratio(1),
 * }).in('s') //=> 10.97
 */
export const coreTimeConstant = calculation({
  name: 'time constant of a core',
  task: 'follow an intercooler through a pull',
  inputs: {
    /** Heat capacity of the metal of the core. */
    heatCapacity: input('K', 'heat capacity', CORE_HEAT_CAPACITY),
    /** Mass flow times specific heat capacity of the charge; zero while no charge flows. */
    chargeCapacityRate: SOAK_FLOWS.chargeCapacityRate,
    /** Conductance between charge and wall over the capacity rate of the charge. */
    chargeTransferUnits: SOAK_FLOWS.chargeTransferUnits,
    /** Mass flow times specific heat capacity of the cooling air or liquid; zero while none flows. */
    coolantCapacityRate: SOAK_FLOWS.coolantCapacityRate,
    /** Conductance between wall and coolant over the capacity rate of the coolant. */
    coolantTransferUnits: SOAK_FLOWS.coolantTransferUnits,
  },
  output: output('tau', 'time', 's'),
  formula: 'K / (Ch * (1 - exp(-Nh)) + Cc * (1 - exp(-Nc)))',
  si: timeConstant,
  rules: [{ need: SOMETHING_FLOWS.need, holds: (_K, Ch, Nh, Cc, Nc) => ofFlow(Ch, Nh) + ofFlow(Cc, Nc) > 0 }],
  rises: ['K'],
  falls: ['Ch', 'Nh', 'Cc', 'Nc'],
  sources: SOURCES,
});

function timeConstant(K: number, Ch: number, Nh: number, Cc: number, Nc: number): number {
  return K / (ofFlow(Ch, Nh) + ofFlow(Cc, Nc));
}

/**
 * Wall temperature after a time of steady flows, if the wall is of one temperature.
 *
 * Exact for a uniform wall only; over a long pull the charge comes out some 4 K too warm with it. {@link soakedChargeTemperature} cuts the
 * wall into cells and is right at both ends.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if nothing flows, or an input is physically impossible.
 * @example
 * wallTemperatureAfter({
 *   hotInlet: temperature(121, '°C'), chargeCapacityRate: heatCapacityRate(202, 'W/K'), chargeTransferUnits: ratio(2),
 *   coolantInlet: temperature(18, '°C'), coolantCapacityRate: heatCapacityRate(500, 'W/K'), coolantTransferUnits: ratio(1),
 *   heatCapacity: heatCapacity(5382, 'J/K'), startTemperature: temperature(18, '°C'), time: time(10, 's'),
 * }).in('°C') //=> 39.93
 */
export const wallTemperatureAfter = calculation({
  name: 'wall temperature after a time',
  task: 'follow an intercooler through a pull',
  inputs: {
    ...SOAK_FLOWS,
    /** Heat capacity of the metal of the core. */
    heatCapacity: input('K', 'heat capacity', CORE_HEAT_CAPACITY),
    /** Temperature of the whole core at the start. */
    startTemperature: input('T0', 'temperature', WALL),
    /** Time since then. */
    time: input('t', 'time', DURATION),
  },
  output: output('Tw', 'temperature', '°C'),
  formula: 'Tws(T1, Ch, Nh, Tc, Cc, Nc) + (T0 - Tws(T1, Ch, Nh, Tc, Cc, Nc)) * exp(-t / tau(K, Ch, Nh, Cc, Nc))',
  uses: { Tws: steadyWallTemperature, tau: coreTimeConstant },
  si: (T1, Ch, Nh, Tc, Cc, Nc, K, T0, t) => {
    const end = steadyWall(T1, Ch, Nh, Tc, Cc, Nc);
    return end + (T0 - end) * Math.exp(-t / timeConstant(K, Ch, Nh, Cc, Nc));
  },
  rules: [SOMETHING_FLOWS],
  rises: ['T1', 'Tc', 'T0'],
  sources: SOURCES,
});

/**
 * Charge temperature behind a core whose wall is of one temperature: true at the first moment of a pull, whatever cools the core.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * chargeTemperatureFromWall({
 *   hotInlet: temperature(121, '°C'), wallTemperature: temperature(18, '°C'), chargeTransferUnits: ratio(2),
 * }).in('°C') //=> 31.94
 */
export const chargeTemperatureFromWall = calculation({
  name: 'charge temperature from wall temperature',
  task: 'follow an intercooler through a pull',
  inputs: {
    /** Charge temperature into the core. */
    hotInlet: input('T1', 'temperature', HOT_INLET),
    /** Temperature of the wall. */
    wallTemperature: input('Tw', 'temperature', WALL),
    /** Conductance between charge and wall over the capacity rate of the charge. */
    chargeTransferUnits: SOAK_FLOWS.chargeTransferUnits,
  },
  output: output('T2', 'temperature', '°C'),
  formula: 'Tw + (T1 - Tw) * exp(-Nh)',
  si: (T1, Tw, Nh) => Tw + (T1 - Tw) * Math.exp(-Nh),
  rises: ['T1', 'Tw'],
  sources: SOURCES,
});

const APPROACH = {
  /** Time constant of the cool-down. */
  timeConstant: input('tau', 'time', { min: 0.01, max: 36000, typical: 45 }),
  /** Temperature of the core at the start. */
  startTemperature: input('T0', 'temperature', { ...WALL, typical: 333.15 }),
  /** Temperature it would settle at: that of the cooling air. */
  coolantTemperature: input('Tc', 'temperature', COOLANT_INLET),
};

/**
 * Temperature of a core some time into a cool-down, from its time constant.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * coolDownTemperature({
 *   timeConstant: time(45, 's'), startTemperature: temperature(60, '°C'), coolantTemperature: temperature(18, '°C'), time: time(90, 's'),
 * }).in('°C') //=> 23.68
 */
export const coolDownTemperature = calculation({
  name: 'temperature during a cool-down',
  task: 'follow an intercooler through a pull',
  inputs: {
    ...APPROACH,
    /** Time since the start. */
    time: input('t', 'time', { ...DURATION, typical: 90 }),
  },
  output: output('T', 'temperature', '°C'),
  formula: 'Tc + (T0 - Tc) * exp(-t / tau)',
  si: (tau, T0, Tc, t) => Tc + (T0 - Tc) * Math.exp(-t / tau),
  rises: ['T0', 'Tc'],
  sources: SOURCES,
});

/**
 * Rest that a core needs between pulls to come back to a wanted temperature.
 *
 * @function
 * @returns One time.
 * @throws CalculationError unless the wanted temperature lies between the start and the coolant, the coolant's own excluded: a core
 * only approaches that.
 * @example
 * recoveryTime({
 *   timeConstant: time(45, 's'), startTemperature: temperature(60, '°C'), coolantTemperature: temperature(18, '°C'),
 *   wantedTemperature: temperature(20, '°C'),
 * }).in('s') //=> 137.0
 */
export const recoveryTime = calculation({
  name: 'recovery time of a core',
  task: 'follow an intercooler through a pull',
  inputs: {
    ...APPROACH,
    /** Temperature to come back to. */
    wantedTemperature: input('Te', 'temperature', { ...WALL, typical: 293.15 }),
  },
  output: output('t', 'time', 's'),
  formula: 'tau * log((T0 - Tc) / (Te - Tc))',
  si: (tau, T0, Tc, Te) => tau * Math.log1p((T0 - Te) / (Te - Tc)),
  rules: [
    {
      need: "wantedTemperature must lie between startTemperature and coolantTemperature, and not be the coolant's own",
      holds: (_tau, T0, Tc, Te) => (T0 - Te) * (Te - Tc) >= 0 && Te !== Tc,
    },
  ],
  rises: ['tau'],
  sources: SOURCES,
});
