import { assumed, calculation, constant, derived, input, output, source } from '../calculation/index.js';
import { ratio } from '../units/index.js';
import { dynamicRise, FLOW_SPEED, HEAT_CAPACITY } from './total-and-static.js';

const TEMPERATURE = { min: 150, max: 900, typical: 394.15 } as const;
const RECOVERY = { min: 0, max: 1, trusted: [0.5, 1], typical: 0.7 } as const;

/** Recovery factors of bare thermocouple wires: how much of the rise to the total temperature they show. */
export const recoveryFactors = {
  /** Wire across the flow. */
  wireAcrossFlow: constant('compressor/recovery-wire-across', ratio(0.68), {
    label: 'recovery factor of a wire across the flow',
    source: source('moffat1962', 'bare wires', 'memory'),
    halfWidth: 0.07,
  }),
  /** Wire along the flow. */
  wireAlongFlow: constant('compressor/recovery-wire-along', ratio(0.86), {
    label: 'recovery factor of a wire along the flow',
    source: source('moffat1962', 'bare wires', 'memory'),
    halfWidth: 0.09,
  }),
} as const;

const SOURCES = [
  source('moffat1962', 'recovery factor', 'memory'),
  derived('the probe reads the static temperature and the recovered part of the dynamic rise'),
];

/**
 * What a probe in moving air reads: less than the total temperature by what it does not recover.
 *
 * A bare probe recovers 0.6 to 0.8 of the dynamic rise, a well shielded one nearly all. At 100 m/s a factor of 0.7 reads 1.5 K low.
 * Heat along the stem and from the wall comes on top.
 *
 * @function
 * @returns One temperature. Carries a note below a recovery factor of 0.5, which no known probe has.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * const air = { totalTemperature: temperature(121, '°C'), speed: speed(100, 'm/s') };
 * probeTemperature({ ...air, recoveryFactor: ratio(0.7) }).in('°C') //=> 119.5
 */
export const probeTemperature = calculation({
  name: 'probe temperature',
  task: 'compress the charge',
  inputs: {
    /** Total temperature of the air. */
    totalTemperature: input('T0', 'temperature', TEMPERATURE),
    /** Speed of the air at the probe. */
    speed: input('V', 'speed', FLOW_SPEED),
    /** Share of the dynamic rise that the probe shows; see {@link recoveryFactors}. */
    recoveryFactor: input('r', 'ratio', RECOVERY),
    /** Specific heat capacity of the air at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
  },
  output: output('Tp', 'temperature', '°C'),
  formula: 'T0 - (1 - r) * V^2 / (2 * cp)',
  si: (T0, V, r, cp) => T0 - (1 - r) * dynamicRise(V, cp),
  rises: ['T0', 'r', 'cp'],
  falls: ['V'],
  sources: SOURCES,
});

/**
 * Total temperature of moving air, from what a probe reads in it.
 *
 * Use it before an efficiency is made of readings: with the same probe in slower air at the inlet, the rise reads too low.
 *
 * @function
 * @returns One total temperature. Carries a note below a recovery factor of 0.5, which no known probe has.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * const reading = { probeTemperature: temperature(119.5, '°C'), speed: speed(100, 'm/s') };
 * totalTemperatureFromProbe({ ...reading, recoveryFactor: recoveryFactors.wireAcrossFlow }).in('°C') //=> 121.1
 */
export const totalTemperatureFromProbe = calculation({
  name: 'total temperature from a probe',
  task: 'compress the charge',
  inputs: {
    /** What the probe reads. */
    probeTemperature: input('Tp', 'temperature', TEMPERATURE),
    /** Speed of the air at the probe. */
    speed: input('V', 'speed', FLOW_SPEED),
    /** Share of the dynamic rise that the probe shows; see {@link recoveryFactors}. */
    recoveryFactor: input('r', 'ratio', RECOVERY),
    /** Specific heat capacity of the air at constant pressure. */
    specificHeatCapacity: assumed('cp', 'specific heat capacity', HEAT_CAPACITY),
  },
  output: output('T0', 'temperature', '°C'),
  formula: 'Tp + (1 - r) * V^2 / (2 * cp)',
  si: (Tp, V, r, cp) => Tp + (1 - r) * dynamicRise(V, cp),
  rises: ['Tp', 'V'],
  falls: ['r', 'cp'],
  sources: SOURCES,
});
