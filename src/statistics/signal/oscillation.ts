import { requirePositive, requireProbability } from '../checks.js';
import { StatisticsError } from '../errors.js';
import { linearModel } from '../least-squares.js';
import { medianOf } from './robust.js';
import { powerDensity } from './sine-tapers.js';

/** A narrow oscillation in a signal. */
export interface Oscillation {
  /** Cycles a second (or per unit of what the samples are spaced by). */
  readonly frequency: number;
  /** Half the width of the band whose power was counted. */
  readonly halfBandwidth: number;
  /** Of a sine of the same power: the signal moves by so much either way. */
  readonly amplitude: number;
  /** Cycles in the record. */
  readonly cycles: number;
  /** Power density at the peak over that of the background there, the peak having its part in the background. */
  readonly overBackground: number;
  /** Chance of such a peak anywhere in the range, in a signal without oscillation. */
  readonly p: number;
}

/** Where an oscillation is looked for. */
export interface OscillationOptions {
  /** Lowest frequency; three cycles in the record when left out. */
  readonly from?: number;
  /** Highest frequency; 0.4 of the sample rate when left out. */
  readonly to?: number;
  /** Chance of finding one where there is none; 0.01 when left out. */
  readonly error?: number;
}

const tapers = 3;
const fewestSamples = 24;
const fewestCycles = 3;
const fewestBins = 12;
/**
 * Peaks by chance are as many as this many looks a bin would give; found by simulation of white and red noise in records of 2 to 40 s,
 * where it leaves at most 1 false find in 100 at the usual error.
 */
const looksPerBin = 3;

/**
 * The strongest narrow oscillation of an evenly spaced signal, or undefined where no peak stands out from its background beyond
 * chance. The background is a parabola in logarithms, laid through the spectrum.
 *
 * @param values - Without gaps. A smooth trend is taken off: a cubic by least squares.
 * @param step - Seconds from sample to sample.
 * @throws StatisticsError `too-few-points` below 24 samples, `out-of-range` if the range of frequencies is empty.
 */
export function oscillationOf(
  values: Float64Array,
  step: number,
  options: OscillationOptions = {},
): Oscillation | undefined {
  const statistic = 'oscillation';
  requirePositive(statistic, 'step', step);
  const { error = 0.01 } = options;
  requireProbability(statistic, 'error', error);
  const count = values.length;
  if (count < fewestSamples) {
    throw new StatisticsError({
      code: 'too-few-points',
      statistic,
      input: 'values',
      need: `hold at least ${fewestSamples} samples`,
      got: String(count),
    });
  }
  const length = count * step;
  const from = Math.max(options.from ?? 0, fewestCycles / length);
  const to = Math.min(options.to ?? Infinity, 0.4 / step);
  if (!(to > from)) {
    throw new StatisticsError({
      code: 'out-of-range',
      statistic,
      input: 'from and to',
      need: `leave a range between three cycles in the record, ${fewestCycles / length}, and 0.4 of the sample rate, ${0.4 / step}`,
      got: `${from} to ${to}`,
    });
  }
  const { frequencies, density } = powerDensity(withoutCubic(values), step, tapers, to);
  const inRange = Array.from(frequencies.keys()).filter((bin) => frequencies[bin]! >= from);
  const spacing = frequencies[0]!;
  // The tapers smear a tone over this many bins of half a cycle.
  const reach = tapers + 1;
  const bins = inRange.filter((bin) => density[bin]! > 0);
  if (bins.length < fewestBins) return undefined;
  const whole = backgroundThrough(frequencies, density, bins);
  const over = (bin: number): number => density[bin]! / whole(frequencies[bin]!);
  const found = bins.reduce((best, bin) => (over(bin) > over(best) ? bin : best));
  const p = Math.min(1, looksPerBin * bins.length * gammaTail(tapers, over(found)));
  if (!(p < error)) return undefined;
  const near = bins.filter((bin) => Math.abs(bin - found) <= reach);
  const peak = near.reduce((best, bin) => (density[bin]! > density[best]! ? bin : best));
  // A strong tone smears beyond its band, so the level without it is taken from further off, and by a median.
  const level = medianOf(bins.filter((bin) => Math.abs(bin - peak) > 2 * reach).map((bin) => density[bin]!)) ?? 0;
  let variance = 0;
  let moment = 0;
  let weight = 0;
  for (const bin of bins.filter((each) => Math.abs(each - peak) <= reach)) {
    const above = Math.max(0, density[bin]! - level);
    variance += above * spacing;
    moment += above * frequencies[bin]!;
    weight += above;
  }
  // A bin can stand out from a background that dips there, and yet hold no more than the level further off: nothing oscillates.
  if (!(weight > 0)) return undefined;
  const frequency = moment / weight;
  return {
    frequency,
    halfBandwidth: reach * spacing,
    amplitude: Math.sqrt(2 * variance),
    cycles: frequency * length,
    overBackground: over(found),
    p,
  };
}

/** Chance that the mean of `tapers` independent powers exceeds its expectation this many times. */
function gammaTail(shape: number, ratio: number): number {
  const x = shape * ratio;
  let term = 1;
  let sum = 1;
  for (let k = 1; k < shape; k++) sum += term *= x / k;
  return sum * Math.exp(-x);
}

/** Mean of the logarithm of the mean of three independent powers, of expectation 1: digamma(3) - ln 3. */
const meanLogOfPower = 0.9227843350984671 - Math.log(3);

/** Parabola in logarithms through some bins of a spectrum. */
function backgroundThrough(
  frequencies: Float64Array,
  density: Float64Array,
  bins: readonly number[],
): (frequency: number) => number {
  const middle = Math.log(frequencies[bins[bins.length >> 1]!]!);
  const x = bins.map((bin) => Math.log(frequencies[bin]!) - middle);
  const y = bins.map((bin) => Math.log(density[bin]!) - meanLogOfPower);
  const columns = [x.map(() => 1), x, x.map((each) => each * each)];
  const { coefficients } = linearModel('background of a spectrum', columns, ['level', 'slope', 'bend']).fit(y);
  const [level, slope, bend] = coefficients as [number, number, number];
  return (frequency) => {
    const at = Math.log(frequency) - middle;
    return Math.exp(level + (slope + bend * at) * at);
  };
}

/** The signal about its least-squares cubic over the samples. */
function withoutCubic(values: Float64Array): Float64Array {
  const middle = (values.length - 1) / 2;
  const x = Float64Array.from(values, (_, i) => (i - middle) / middle);
  const powers = [0, 1, 2, 3].map((power) => x.map((each) => each ** power));
  return linearModel('trend', powers, ['level', 'slope', 'bend', 'twist']).fit(values).residuals;
}
