import {
  assumed,
  calculation,
  commonPractice,
  constant,
  input,
  output,
  source,
  type ConstantOptions,
} from '../calculation/index.js';
import { meanEffectivePressure, ratio, type Quantity } from '../units/index.js';

/** The coefficients of {@link frictionMeanEffectivePressure}, to be spread into it. */
export interface FrictionCoefficients {
  readonly constantTerm: Quantity<'mean effective pressure'>;
  readonly peakPressureTerm: Quantity<'ratio'>;
  readonly speedTerm: Quantity<'mean effective pressure'>;
  readonly speedSquaredTerm: Quantity<'mean effective pressure'>;
}

function coefficients(
  model: string,
  from: ConstantOptions['source'],
  [A, B, C, D]: readonly [number, number, number, number],
): FrictionCoefficients {
  const options = (name: string): ConstantOptions => ({ label: `${name}, ${model}`, source: from });
  const pressure = (name: string, bar: number): Quantity<'mean effective pressure'> =>
    constant(`engine/friction/${model}/${name}`, meanEffectivePressure(bar, 'bar'), options(name));
  return {
    constantTerm: pressure('constant term', A),
    peakPressureTerm: constant(
      `engine/friction/${model}/peak pressure term`,
      ratio(B),
      options('share of peak pressure'),
    ),
    speedTerm: pressure('term per m/s', C),
    speedSquaredTerm: pressure('term per (m/s)²', D),
  };
}

const chenFlynn = coefficients(
  'Chen and Flynn',
  source('chenFlynn1965', 'coefficients, single-cylinder diesel', 'memory'),
  [0.137, 0.005, 0.162, 0],
);

/**
 * Coefficients of friction in the form of Chen and Flynn: theirs, for a diesel of 1965, and usual ones for today's
 * spark-ignition engines.
 *
 * @example
 * String(frictionCoefficients.sparkIgnition.constantTerm) //=> '0.4 bar'
 */
export const frictionCoefficients = {
  chenFlynn,
  sparkIgnition: coefficients(
    'modern spark ignition',
    commonPractice('usual starting values of engine models'),
    [0.4, 0.005, 0.09, 0.0009],
  ),
} as const;

/**
 * Friction mean effective pressure in the form of Chen and Flynn: a constant part, one that grows with peak cylinder
 * pressure and one with piston speed. Their coefficients are assumed; spread others of {@link frictionCoefficients}.
 *
 * A rough figure for engines of a kind: their own coefficients are for a diesel and give 0.5 bar or more too much for a
 * modern spark-ignition engine. Nothing replaces a motored or indicated measurement.
 *
 * @function
 * @returns The friction mean effective pressure, driven auxiliaries in it and pumping not.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * frictionMeanEffectivePressure({
 *   peakCylinderPressure: absolutePressure(90, 'bar'),
 *   meanPistonSpeed: speed(16, 'm/s'),
 *   ...frictionCoefficients.sparkIgnition,
 * }).in('bar') //=> 2.5204
 */
export const frictionMeanEffectivePressure = calculation({
  name: 'friction mean effective pressure',
  task: 'describe the engine',
  inputs: {
    /** Highest pressure in the cylinder. */
    peakCylinderPressure: input('p_max', 'absolute pressure', { min: 1e5, max: 5e7, typical: 85e5 }),
    /** Mean speed of a piston. */
    meanPistonSpeed: input('S_p', 'speed', { min: 0, max: 40, typical: 17.46 }),
    /** Part that is always there. */
    constantTerm: assumed('A', 'mean effective pressure', { min: 0, max: 3e5, assume: chenFlynn.constantTerm }),
    /** Share of the peak pressure. */
    peakPressureTerm: assumed('B', 'ratio', { min: 0, max: 0.05, assume: chenFlynn.peakPressureTerm }),
    /** Part that grows with piston speed: its size at 1 m/s. */
    speedTerm: assumed('C', 'mean effective pressure', { min: 0, max: 1e5, assume: chenFlynn.speedTerm }),
    /** Part that grows with the square of piston speed: its size at 1 m/s. */
    speedSquaredTerm: assumed('D', 'mean effective pressure', { min: 0, max: 1e4, assume: chenFlynn.speedSquaredTerm }),
  },
  output: output('p_mf', 'mean effective pressure', 'bar'),
  formula: 'A + B * p_max + C * S_p + D * S_p^2',
  si: (pMax, Sp, A, B, C, D) => A + B * pMax + C * Sp + D * Sp * Sp,
  rises: ['p_max', 'S_p', 'A', 'B', 'C', 'D'],
  sources: [source('chenFlynn1965', 'form of the correlation', 'memory')],
});

/**
 * Total friction mean effective pressure of small car engines motored with the throttle open, pumping included, from
 * engine speed alone.
 *
 * Barnes-Moss's fit to several four-cylinder engines of 0.85 to 2 litres of the 1970s.
 *
 * @function
 * @returns The friction mean effective pressure.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * frictionMeanEffectivePressureBarnesMoss({ engineSpeed: rotationalSpeed(4000, 'rpm') }).in('bar') //=> 2.37
 */
export const frictionMeanEffectivePressureBarnesMoss = calculation({
  name: 'friction mean effective pressure by Barnes-Moss',
  task: 'describe the engine',
  inputs: {
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', { min: 0, max: 250, typical: 66 }),
  },
  output: output('p_mf', 'mean effective pressure', 'bar'),
  formula: '97000 + 15000 * (0.06 * n) + 5000 * (0.06 * n)^2',
  si: (n) => 97e3 + 15e3 * (0.06 * n) + 5e3 * (0.06 * n) ** 2,
  rises: ['n'],
  sources: [source('heywood', 'equation 13.6, 845 to 2000 cm³ car engines, motored at wide-open throttle', 'memory')],
});
