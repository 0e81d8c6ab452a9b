import {
  requireAllFinite,
  requireCount,
  requirePositive,
  requireProbability,
  requireSameLength,
  usualConfidence,
  type ConfidenceOption,
  type Numbers,
} from '../checks.js';
import { StatisticsError } from '../errors.js';
import { fUpperQuantile } from '../f-distribution.js';
import { coherenceInterval } from './coherence.js';
import { yuleWalkerPair } from './prefilter.js';
import { halfBandwidth, taperedTransforms, type Complex } from './sine-tapers.js';
import { straightLine, lineAt } from './straight-line.js';

/** How a ripple is looked at. */
export interface RippleOptions extends ConfidenceOption {
  /** Cycles a second of the ripple. */
  readonly frequency: number;
  /** Sine tapers, at least 3; 5 when left out, 3 where the record holds fewer than 8 cycles. */
  readonly tapers?: number;
  /** Whether both signals are whitened by the second-order filter of the driver; yes when left out. */
  readonly prefilter?: boolean;
}

/** How a signal follows another at one frequency, in one pull. Coherence is not cause. */
export interface Ripple {
  readonly frequency: number;
  readonly tapers: number;
  /** Cycles of the ripple in the record. */
  readonly cycles: number;
  /** Half the width of the band that was looked at. */
  readonly halfBandwidth: number;
  /** Coefficients of the filter, where there was one. */
  readonly filter: readonly [number, number] | undefined;
  /** Squared coherence: the share of the follower's power in the band that a linear answer to the driver explains. */
  readonly coherence: number;
  /** What the coherence of unrelated signals exceeds with chance 1 - confidence. */
  readonly criticalCoherence: number;
  /** Chance of at least this coherence between unrelated signals. */
  readonly p: number;
  /** Interval of the share explained. */
  readonly share: readonly [low: number, high: number];
  /** Follower's units per driver's unit, as a complex number: size and phase. */
  readonly transfer: Complex;
  readonly gain: number;
  readonly gainHalfWidth: number;
  /** Seconds by which the follower comes later, between minus and plus half a cycle: known only to whole cycles. */
  readonly lag: number;
  /** Undefined where the gain is not told from zero, so that any lag would do. */
  readonly lagHalfWidth: number | undefined;
  /** Whether a link may be claimed: coherence beyond chance, and at least 5 cycles. */
  readonly linked: boolean;
  /** What a reader should know. */
  readonly remarks: readonly string[];
}

const fewestCycles = 5;
const cyclesForUsualTapers = 8;
const usualTapers = 5;
const fewestTapers = 3;
const fewestSamples = 16;

/**
 * Whether a ripple in one signal follows a ripple in another, such as torque and boost of one pull: straight lines taken off, both
 * whitened by the driver's filter, sine tapers, coherence with its exact interval, gain and lag.
 *
 * Two steady tones of one frequency always look linked, so one pull cannot tell a link from a common cause: see
 * {@link rippleOverPulls}.
 *
 * @param driver - evenly spaced samples without gaps.
 * @param follower - as many, at the same times.
 * @param step - seconds from sample to sample.
 * @throws StatisticsError `out-of-range` if the samples cannot show the frequency, `no-scatter` if a signal is a straight line.
 */
export function ripple(driver: Numbers, follower: Numbers, step: number, options: RippleOptions): Ripple {
  const statistic = 'ripple';
  const { frequency, prefilter = true, confidence = usualConfidence } = options;
  requireAllFinite(statistic, 'driver', driver);
  requireAllFinite(statistic, 'follower', follower);
  requireSameLength(statistic, 'follower', follower.length, driver.length);
  requirePositive(statistic, 'step', step);
  requireProbability(statistic, 'confidence', confidence);
  checkFrequency(statistic, frequency, step, driver.length);
  const cycles = driver.length * step * frequency;
  const tapers = options.tapers ?? (cycles < cyclesForUsualTapers ? fewestTapers : usualTapers);
  requireCount(statistic, 'tapers', tapers, fewestTapers);
  const pair = [withoutLine(driver, 'driver'), withoutLine(follower, 'follower')] as const;
  const filtered = prefilter ? yuleWalkerPair(...pair) : undefined;
  const [x, y] = filtered?.signals ?? pair;
  const { sxx, syy, cross } = crossPower(x, y, step, frequency, tapers);
  const coherence = Math.min(1, (cross.re ** 2 + cross.im ** 2) / (sxx * syy));
  const transfer = { re: cross.re / sxx, im: cross.im / sxx };
  const error = 1 - confidence;
  const critical = fUpperQuantile(error, 2, 2 * tapers - 2);
  const radius = Math.sqrt((critical / (tapers - 1)) * (1 - coherence) * (syy / sxx));
  const criticalCoherence = 1 - error ** (1 / (tapers - 1));
  const half = halfBandwidth(x.length, step, tapers);
  return {
    frequency,
    tapers,
    cycles,
    halfBandwidth: half,
    filter: filtered?.coefficients,
    coherence,
    criticalCoherence,
    p: (1 - coherence) ** (tapers - 1),
    share: coherenceInterval(coherence, tapers, { confidence }),
    transfer,
    gainHalfWidth: radius,
    ...gainAndLag(transfer, radius, frequency),
    linked: coherence > criticalCoherence && cycles >= fewestCycles,
    remarks: remarksOn(cycles, frequency, half),
  };
}

function crossPower(
  x: Float64Array,
  y: Float64Array,
  step: number,
  frequency: number,
  tapers: number,
): { sxx: number; syy: number; cross: Complex } {
  const ys = taperedTransforms(y, step, frequency, tapers);
  let [sxx, syy, re, im] = [0, 0, 0, 0];
  taperedTransforms(x, step, frequency, tapers).forEach((a, k) => {
    const b = ys[k]!;
    sxx += a.re * a.re + a.im * a.im;
    syy += b.re * b.re + b.im * b.im;
    re += a.re * b.re + a.im * b.im;
    im += a.re * b.im - a.im * b.re;
  });
  return { sxx, syy, cross: { re, im } };
}

/** Size and delay of a transfer known within a circle of a radius. */
function gainAndLag(
  { re, im }: Complex,
  radius: number,
  frequency: number,
): { gain: number; lag: number; lagHalfWidth: number | undefined } {
  const gain = Math.hypot(re, im);
  const turn = 2 * Math.PI * frequency;
  return {
    gain,
    lag: gain === 0 ? 0 : -Math.atan2(im, re) / turn,
    lagHalfWidth: radius < gain ? Math.asin(radius / gain) / turn : undefined,
  };
}

function remarksOn(cycles: number, frequency: number, half: number): string[] {
  const remarks = ['Two steady tones of one frequency always look linked: compare gain and lag over several pulls.'];
  if (cycles < fewestCycles) {
    remarks.push(
      `Only ${cycles.toFixed(1)} cycles: below ${fewestCycles} gain and lag are given, but no link is claimed.`,
    );
  }
  if (half >= frequency) remarks.push('The record is so short that the band looked at reaches down to zero frequency.');
  return remarks;
}

function checkFrequency(statistic: string, frequency: number, step: number, count: number): void {
  requirePositive(statistic, 'frequency', frequency);
  if (count < fewestSamples) {
    throw new StatisticsError({
      code: 'too-few-points',
      statistic,
      input: 'driver',
      need: `hold at least ${fewestSamples} samples`,
      got: String(count),
    });
  }
  const [low, high] = [1 / (count * step), 0.5 / step];
  if (frequency >= low && frequency <= high) return;
  throw new StatisticsError({
    code: 'out-of-range',
    statistic,
    input: 'frequency',
    need: `lie between one cycle in the record, ${low} a second, and half the sample rate, ${high}`,
    got: String(frequency),
  });
}

/** The signal about its straight line over the samples. */
function withoutLine(values: Numbers, input: string): Float64Array {
  const places = Float64Array.from(values, (_, i) => i);
  const own = Float64Array.from(values);
  const line = straightLine(places, own)!;
  const rest = own.map((value, i) => value - lineAt(line, i));
  const size = Math.sqrt(rest.reduce((sum, value) => sum + value * value, 0) / rest.length);
  if (size > 1e-12 * own.reduce((most, value) => Math.max(most, Math.abs(value)), 0)) return rest;
  throw new StatisticsError({
    code: 'no-scatter',
    statistic: 'ripple',
    input,
    need: 'move about its straight line',
    got: 'a straight line',
    mend: 'Look for a copied or clipped channel.',
  });
}

/** What several pulls say of one link together. */
export interface RippleOverPulls {
  readonly pulls: number;
  /** Mean transfer over the pulls, size and phase. */
  readonly transfer: Complex;
  readonly gain: number;
  /** Radius of the circle about the mean transfer that holds the truth with the confidence. */
  readonly gainHalfWidth: number;
  readonly lag: number;
  /** Undefined where the gain is not told from zero. */
  readonly lagHalfWidth: number | undefined;
  /** Root mean square distance of a pull's transfer from the mean, over the gain. */
  readonly relativeSpread: number;
  /** Chance of a mean at least this far from zero if every pull had a phase by chance. */
  readonly p: number;
  /** Whether the pulls agree on a gain that is not zero. */
  readonly agree: boolean;
}

/**
 * The strong proof that one signal follows another: every pull has about the same transfer, size and phase. By chance each pull would
 * have a phase of its own, and their mean would be about zero.
 *
 * @param ripples - one for each pull, at one frequency or at frequencies so close that one lag can serve.
 * @throws StatisticsError `too-few-pulls` below 2.
 */
export function rippleOverPulls(
  ripples: readonly Pick<Ripple, 'transfer' | 'frequency'>[],
  { confidence = usualConfidence }: ConfidenceOption = {},
): RippleOverPulls {
  const statistic = 'ripple over pulls';
  requireProbability(statistic, 'confidence', confidence);
  const n = ripples.length;
  if (n < 2) {
    throw new StatisticsError({
      code: 'too-few-pulls',
      statistic,
      input: 'ripples',
      need: 'hold at least 2 pulls',
      got: String(n),
      mend: 'One pull cannot tell a link from two tones of one frequency.',
    });
  }
  const average = (of: (each: (typeof ripples)[number]) => number): number =>
    ripples.reduce((sum, each) => sum + of(each), 0) / n;
  const transfer = { re: average((each) => each.transfer.re), im: average((each) => each.transfer.im) };
  const squares = n * average((each) => (each.transfer.re - transfer.re) ** 2 + (each.transfer.im - transfer.im) ** 2);
  // Two numbers a pull, of equal scatter: the squared mean over the scatter is an F ratio of 2 and 2n - 2 degrees.
  const radius = Math.sqrt((fUpperQuantile(1 - confidence, 2, 2 * n - 2) * squares) / (n * (n - 1)));
  const found = gainAndLag(
    transfer,
    radius,
    average((each) => each.frequency),
  );
  const ratio = (n * found.gain ** 2) / squares;
  const p = squares === 0 ? 0 : (1 + ratio) ** -(n - 1);
  return {
    pulls: n,
    transfer,
    gainHalfWidth: radius,
    ...found,
    relativeSpread: Math.sqrt(squares / n) / found.gain,
    p,
    agree: p < 1 - confidence,
  };
}

/** Whether two groups of pulls show one link. */
export interface RippleAgreement {
  /** Chance of mean transfers at least this far apart if both groups had one. */
  readonly p: number;
  readonly differ: boolean;
}

/**
 * Whether one signal follows another alike in two groups of pulls, by size and phase: the distance of their mean transfers against the
 * scatter within the groups, which is an F ratio of 2 and 2n - 4 degrees.
 *
 * @returns undefined below three pulls in all, or with an empty group.
 */
export function rippleAgreement(
  a: readonly Pick<Ripple, 'transfer'>[],
  b: readonly Pick<Ripple, 'transfer'>[],
  { confidence = usualConfidence }: ConfidenceOption = {},
): RippleAgreement | undefined {
  requireProbability('ripple agreement', 'confidence', confidence);
  const freedom = a.length + b.length - 2;
  if (freedom < 1 || a.length === 0 || b.length === 0) return undefined;
  const meanOf = (group: typeof a): Complex => ({
    re: group.reduce((sum, { transfer }) => sum + transfer.re, 0) / group.length,
    im: group.reduce((sum, { transfer }) => sum + transfer.im, 0) / group.length,
  });
  const means = [meanOf(a), meanOf(b)] as const;
  const squares = [a, b].reduce((sum, group, i) => {
    const { re, im } = means[i]!;
    return sum + group.reduce((own, { transfer }) => own + (transfer.re - re) ** 2 + (transfer.im - im) ** 2, 0);
  }, 0);
  const apart = (means[0].re - means[1].re) ** 2 + (means[0].im - means[1].im) ** 2;
  if (apart === 0) return { p: 1, differ: false };
  const p = (1 + apart / (1 / a.length + 1 / b.length) / squares) ** -freedom;
  return { p, differ: p < 1 - confidence };
}
