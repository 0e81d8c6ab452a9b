import { assumed, calculation, constant, derived, input, output } from '../calculation/index.js';
import { ratio } from '../units/index.js';
import { usualChargeTemperatureExponent } from './charge-temperature.js';

const PRESSURE = { min: 5e3, max: 2e6, typical: 204e3 } as const;
const BEFORE = { min: 200, max: 600, typical: 333.15 } as const;
const AFTER = { min: 200, max: 600, typical: 318.15 } as const;

/**
 * Manifold pressure at which an engine takes the same mass of air at another charge temperature: the same power on less
 * boost, or what a blower that delivers the same mass shows when the charge gets colder.
 *
 * Spark timing that the colder charge allows is not in it. Lower boost proves cooling only together with charge
 * temperature and air flow: a leak looks the same. Convert with `gauge(result, barometer)` for a boost gauge.
 *
 * @function
 * @returns The absolute manifold pressure after the change.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * manifoldPressureForSameAir({
 *   manifoldPressure: absolutePressure(200, 'kPa'),
 *   referenceTemperature: temperature(60, '°C'),
 *   chargeTemperature: temperature(40, '°C'),
 *   exponent: ratio(1),
 * }).in('kPa') //=> 187.993
 */
export const manifoldPressureForSameAir = calculation({
  name: 'manifold pressure for the same air',
  task: 'describe the engine',
  inputs: {
    /** Absolute manifold pressure before the change. */
    manifoldPressure: input('p_1', 'absolute pressure', PRESSURE),
    /** Charge temperature before the change. */
    referenceTemperature: input('T_1', 'temperature', BEFORE),
    /** Charge temperature after the change. */
    chargeTemperature: input('T_2', 'temperature', AFTER),
    /** Exponent of power on charge temperature; 1 is constant volumetric efficiency, 0.5 one that grows with the root of T. */
    exponent: assumed('n', 'ratio', { min: 0, max: 2, assume: usualChargeTemperatureExponent }),
  },
  output: output('p_2', 'absolute pressure', 'kPa'),
  formula: 'p_1 * (T_2 / T_1)^n',
  si: (p1, T1, T2, n) => p1 * (T2 / T1) ** n,
  rises: ['p_1', 'T_2'],
  falls: ['T_1'],
  sources: [derived('air flow by speed and density with the power law in charge temperature, held equal')],
});

const sameFlow = constant('engine/same-flow', ratio(1), {
  label: 'air flow over that before',
  source: derived('nothing else was changed'),
});

/**
 * Manifold pressure that a fixed restriction needs for a mass flow when the charge gets colder: it moves with the root of
 * temperature, as before a choked orifice.
 *
 * @function
 * @returns The absolute pressure before the restriction after the change.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * pressureBeforeFixedRestriction({
 *   pressure: absolutePressure(200, 'kPa'),
 *   referenceTemperature: temperature(60, '°C'),
 *   chargeTemperature: temperature(40, '°C'),
 * }).in('kPa') //=> 193.904
 */
export const pressureBeforeFixedRestriction = calculation({
  name: 'pressure before a fixed restriction',
  task: 'describe the engine',
  inputs: {
    /** Absolute pressure before the restriction, before the change. */
    pressure: input('p_1', 'absolute pressure', PRESSURE),
    /** Temperature of the flow before the change. */
    referenceTemperature: input('T_1', 'temperature', BEFORE),
    /** Temperature of the flow after the change. */
    chargeTemperature: input('T_2', 'temperature', AFTER),
    /** Mass flow after the change over that before. */
    flowRatio: assumed('f', 'ratio', { min: 0.1, max: 10, assume: sameFlow }),
  },
  output: output('p_2', 'absolute pressure', 'kPa'),
  formula: 'p_1 * f * sqrt(T_2 / T_1)',
  si: (p1, T1, T2, f) => p1 * f * Math.sqrt(T2 / T1),
  rises: ['p_1', 'T_2', 'f'],
  falls: ['T_1'],
  sources: [derived('choked orifice: mass flow as p / sqrt(T)')],
});

/**
 * What the manifold pressure does when the charge gets colder and a spring senses boost at the *compressor outlet*: only
 * the loss of the core moves it.
 *
 * More air at more density: for an exponent above about 0.23 the loss grows and the gauge on the manifold shows a little
 * less. A spring or a closed loop that senses the manifold shows no change at all; a spring with droop, or a fixed
 * wastegate opening, may show *more*. The first-order form; good for a few per cent of temperature.
 *
 * @function
 * @returns The change of manifold pressure, below zero where it falls.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * manifoldPressureChangeOutletSpring({
 *   coreLoss: pressureDifference(6, 'kPa'),
 *   coreInletTemperature: temperature(394.96, 'K'),
 *   coreOutletTemperatureBefore: temperature(323.15, 'K'),
 *   coreOutletTemperatureAfter: temperature(310.22, 'K'),
 * }).in('kPa') //=> -0.183757
 */
export const manifoldPressureChangeOutletSpring = calculation({
  name: 'change of manifold pressure with a spring on the compressor outlet',
  task: 'describe the engine',
  inputs: {
    /** Pressure loss between compressor outlet and manifold before the change. */
    coreLoss: input('dp', 'pressure difference', { min: 0, max: 1e5, typical: 6e3 }),
    /** Temperature into the core, which the colder coolant does not change. */
    coreInletTemperature: input('T_in', 'temperature', { min: 200, max: 700, typical: 394.15 }),
    /** Temperature out of the core before the change. */
    coreOutletTemperatureBefore: input('T_1', 'temperature', { ...BEFORE, typical: 323.15 }),
    /** Temperature out of the core after the change. */
    coreOutletTemperatureAfter: input('T_2', 'temperature', { ...AFTER, typical: 313.15 }),
    /** Exponent of air flow on charge temperature. */
    exponent: assumed('n', 'ratio', { min: 0, max: 2, assume: usualChargeTemperatureExponent }),
  },
  output: output('dp_man', 'pressure difference', 'kPa'),
  formula: '(2 * n - T_1 / (T_in + T_1)) * dp * log(T_2 / T_1)',
  si: (dp, Tin, T1, T2, n) => (2 * n - T1 / (Tin + T1)) * dp * Math.log(T2 / T1),
  rules: [
    {
      need: 'a change of outlet temperature within 10 %',
      holds: (_dp, _Tin, T1, T2) => Math.abs(T2 / T1 - 1) <= 0.1,
      otherwise: 'note',
    },
  ],
  sources: [derived('d ln dp = -(2 n - a) d ln T, loss on mean density, a = T_out/(T_in + T_out)')],
});
