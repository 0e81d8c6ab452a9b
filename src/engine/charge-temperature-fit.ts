import { calculation, CalculationError, derived, each, input, output, type Problem } from '../calculation/index.js';
import { ratio, type Quantity } from '../units/index.js';
import { describe, requireNames } from '../units/internal.js';

const NAME = 'fit of the exponent of power on charge temperature';
const INSPECT = Symbol.for('nodejs.util.inspect.custom');

/** A pull, or one speed out of it, for {@link fitChargeTemperatureExponent}. */
export interface ChargeTemperaturePoint {
  /** Power at the speed and the manifold pressure that all points have. */
  readonly power: Quantity<'power'>;
  readonly chargeTemperature: Quantity<'temperature'>;
}

/** The exponent that several points show together. */
export interface ChargeTemperatureFit {
  /** The exponent; 1 is density alone. It knows the points, so `uncertainty` of it counts what was `measured` in them. */
  readonly exponent: Quantity<'ratio'>;
  /** Standard error of the exponent by the scatter of the points about the law; undefined for two points, which have none. */
  readonly standardError: Quantity<'ratio'> | undefined;
  /** How many points there were. */
  readonly points: number;
  /** As text. */
  toString(): string;
  /** As plain data. */
  toJSON(): Readonly<Record<string, number | null>>;
}

/** @internal */
export const logOfTemperatureRatio = calculation({
  name: 'logarithm of a temperature ratio',
  task: 'describe the engine',
  inputs: {
    /** Temperature to compare with. */
    reference: input('T_ref', 'temperature', { min: 200, max: 600, typical: 333.15 }),
    /** Charge temperature of the point. */
    chargeTemperature: input('T', 'temperature', { min: 200, max: 600, typical: 318.15 }),
  },
  output: output('x', 'ratio', '1'),
  formula: 'log(T_ref / T)',
  si: (Tref, T) => Math.log(Tref / T),
  sources: [derived('the power law as a straight line in logarithms')],
});

/** @internal */
export const logOfPowerRatio = calculation({
  name: 'logarithm of a power ratio',
  task: 'describe the engine',
  inputs: {
    /** Power to compare with. */
    reference: input('P_ref', 'power', { min: 1, max: 1e8, typical: 160e3 }),
    /** Power of the point. */
    power: input('P', 'power', { min: 1, max: 1e8, typical: 165e3 }),
  },
  output: output('y', 'ratio', '1'),
  formula: 'log(P / P_ref)',
  si: (Pref, P) => Math.log(P / Pref),
  sources: [derived('the power law as a straight line in logarithms')],
});

/** @internal */
export const slopeOfLine = calculation({
  name: 'slope of the line of least squares',
  task: 'describe the engine',
  inputs: {
    /** Where the points lie. */
    positions: each('x', 'ratio', { min: -10, max: 10, typical: 0.03 }),
    /** What they show there. */
    values: each('y', 'ratio', { min: -20, max: 20, typical: 0.02 }),
  },
  output: output('n', 'ratio', '1'),
  formula: 'sum((x - mean(x)) .* (y - mean(y))) / sum((x - mean(x)) .* (x - mean(x)))',
  si: (...xy) => {
    const { positions, values } = aboutMeans(xy);
    return sum(positions.map((x, i) => x * values[i]!)) / sum(positions.map((x) => x * x));
  },
  sources: [derived('least squares, C. F. Gauss')],
});

/** Two lists, one after the other, each as distances from its mean. */
function aboutMeans(xy: readonly number[]): {
  readonly positions: readonly number[];
  readonly values: readonly number[];
} {
  const n = xy.length / 2;
  return { positions: aboutMean(xy.slice(0, n)), values: aboutMean(xy.slice(n)) };
}

/** Taken about the first value before the mean, so that close values keep their digits. */
function aboutMean(values: readonly number[]): readonly number[] {
  const fromFirst = values.map((value) => value - values[0]!);
  const middle = sum(fromFirst) / values.length;
  return fromFirst.map((value) => value - middle);
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/**
 * The exponent of power on charge temperature that several points show together, by least squares on logarithms: what to
 * take in place of an assumed exponent when an engine was run at several charge temperatures.
 *
 * Every point at one engine speed, manifold pressure, mixture and spark timing; what else changed lands in the exponent.
 * The error of the fit only knows the scatter of the points, not what a sensor does to all of them.
 *
 * @returns The exponent, its standard error and the number of points.
 * @throws CalculationError if there are fewer than two points, a point is incomplete, of the wrong kind or impossible, or
 * all points have one charge temperature.
 * @example
 * const fit = fitChargeTemperatureExponent([
 *   { power: power(300, 'kW'), chargeTemperature: temperature(60, '°C') },
 *   { power: power(305.6, 'kW'), chargeTemperature: temperature(50, '°C') },
 *   { power: power(310, 'kW'), chargeTemperature: temperature(40, '°C') },
 * ]);
 * fit.exponent.in('1') //=> 0.52924
 */
export function fitChargeTemperatureExponent(points: readonly ChargeTemperaturePoint[]): ChargeTemperatureFit {
  const [first] = check(points);
  const positions = points.map(({ chargeTemperature }) =>
    logOfTemperatureRatio({ reference: first.chargeTemperature, chargeTemperature }),
  );
  const values = points.map(({ power }) => logOfPowerRatio({ reference: first.power, power }));
  const exponent = slopeOfLine({ positions, values }).named('exponent of power on charge temperature');
  return new Fit(exponent, standardErrorOf(exponent.si, [...positions, ...values]), points.length);
}

function standardErrorOf(slope: number, line: readonly Quantity[]): Quantity<'ratio'> | undefined {
  const { positions, values } = aboutMeans(line.map(({ si }) => si));
  const n = values.length;
  if (n < 3) return undefined;
  const residuals = values.map((y, i) => y - slope * positions[i]!);
  return ratio(Math.sqrt(sum(residuals.map((r) => r * r)) / (n - 2) / sum(positions.map((x) => x * x))));
}

function check(points: readonly ChargeTemperaturePoint[]): [ChargeTemperaturePoint] {
  if (!Array.isArray(points) || points.length < 2) {
    const got = Array.isArray(points) ? `${points.length}` : describe(points);
    throw refusal('kind', 'at least two points { power, chargeTemperature }', got);
  }
  points.forEach((point: unknown, i) => {
    if (typeof point !== 'object' || point === null)
      throw refusal('kind', 'points { power, chargeTemperature }', `${describe(point)} as number ${i + 1}`);
    requireNames(NAME, point, ['power', 'chargeTemperature'], `points[${i}].`);
  });
  const [first] = points as [ChargeTemperaturePoint];
  const temperatures = points as readonly ChargeTemperaturePoint[];
  if (temperatures.every(({ chargeTemperature }) => chargeTemperature?.si === first.chargeTemperature?.si))
    throw refusal('rule', 'points at different charge temperatures', 'the same one in all');
  return [first];
}

function refusal(code: Problem['code'], need: string, got: string): CalculationError {
  return new CalculationError(NAME, [{ code, input: 'points', need, got, mend: '' }]);
}

class Fit implements ChargeTemperatureFit {
  readonly exponent: Quantity<'ratio'>;
  readonly standardError: Quantity<'ratio'> | undefined;
  readonly points: number;

  constructor(exponent: Quantity<'ratio'>, standardError: Quantity<'ratio'> | undefined, points: number) {
    this.exponent = exponent;
    this.standardError = standardError;
    this.points = points;
  }

  toString(): string {
    const error = this.standardError ? ` ± ${this.standardError.si.toFixed(3)} (standard error)` : '';
    return `exponent ${this.exponent.si.toFixed(3)}${error} from ${this.points} points`;
  }

  toJSON(): Readonly<Record<string, number | null>> {
    return { exponent: this.exponent.si, standardError: this.standardError?.si ?? null, points: this.points };
  }

  [INSPECT](): string {
    return this.toString();
  }
}
