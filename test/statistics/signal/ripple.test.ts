import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  coherenceCdf,
  coherenceInterval,
  ripple,
  rippleAgreement,
  rippleOverPulls,
  taperedTransforms,
} from '../../../src/statistics/index.js';
import { codeOf, expectPrinted } from '../printed.js';
import { normalFrom, seededUniform } from '../simulated-pulls.js';
import { resonance, timesAt, written } from './signals.js';

const times = timesAt(0.05, 120);
const wander = (t: number): number => 1.5 * Math.sin(0.42 * Math.PI * t);
const boost = times.map((t) =>
  written(3 * Math.sin(4 * Math.PI * t + wander(t)) + 0.8 * Math.sin(6.2 * Math.PI * t + 1)),
);
const torque = times.map((t) => {
  const late = t - 0.06;
  const own = 3 * Math.sin(4.6 * Math.PI * t + 0.4 + Math.sin(0.7 * Math.PI * t)) + 0.5 * t;
  return written(6 * Math.sin(4 * Math.PI * late + wander(late)) + own);
});

describe('coherence law', () => {
  it('is the worked figure, and the integral of its density by hypergeometric functions in 30 digits (mpmath)', () => {
    expectPrinted(coherenceCdf(0.7, 5, 0.6), '0.5626515018');
    expect(coherenceCdf(0.7, 5, 0.6)).toBeCloseTo(0.5626515017948633, 14);
    expect(coherenceCdf(0.3, 3, 0.9)).toBeCloseTo(0.001909977452476722, 15);
    expect(coherenceCdf(0.95, 7, 0.9)).toBeCloseTo(0.8337546405404873, 14);
    expect(coherenceCdf(0.1, 10, 0.2)).toBeCloseTo(0.1493557351386, 13);
  });

  it('without a link is 1 - (1 - C)^(K - 1)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.integer({ min: 2, max: 20 }), (c, k) => {
        expect(coherenceCdf(c, k, 0)).toBeCloseTo(1 - (1 - c) ** (k - 1), 12);
      }),
    );
  });

  it.each([
    { c: 0.85, k: 5, low: '0.4083748451', high: '0.9486694928' },
    { c: 0.5, k: 10, low: '0.10877689', high: '0.7359629088' },
    { c: 0.3, k: 5, low: '0', high: '0.6775066716' },
  ])('gives the worked interval of $c with $k tapers', ({ c, k, low, high }) => {
    const [from, to] = coherenceInterval(c, k);
    expectPrinted(from, low);
    expectPrinted(to, high);
  });

  it('gives intervals about the estimate that widen with confidence and narrow with tapers', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.97, noNaN: true }), fc.integer({ min: 3, max: 12 }), (c, k) => {
        const [low, high] = coherenceInterval(c, k);
        const wide = coherenceInterval(c, k, { confidence: 0.99 });
        expect(low).toBeLessThanOrEqual(c);
        expect(wide[0]).toBeLessThanOrEqual(low);
        expect(wide[1]).toBeGreaterThanOrEqual(high);
        expect(coherenceInterval(c, k + 3)[1]).toBeLessThan(high + 1e-12);
      }),
      { numRuns: 30 },
    );
  });

  it('refuses shares beyond 0 and 1, and one taper', () => {
    expect(codeOf(() => coherenceCdf(1.2, 5, 0))).toBe('out-of-range');
    expect(codeOf(() => coherenceInterval(0.5, 1))).toBe('out-of-range');
    expect(coherenceInterval(1, 5)).toEqual([1, 1]);
  });
});

describe('whether torque follows boost', () => {
  it('is the worked example (figures by a separate program)', () => {
    const found = ripple(boost, torque, 0.05, { frequency: 2, tapers: 5 });
    expectPrinted(found.filter?.[0], '1.524965306');
    expectPrinted(found.filter?.[1], '-0.9495375515');
    expectPrinted(found.coherence, '0.8173509224');
    expectPrinted(found.p, '0.001112935341');
    expectPrinted(found.share[0], '0.3235562641');
    expectPrinted(found.share[1], '0.9367004266');
    expectPrinted(found.gain, '1.744928786');
    expectPrinted(found.gainHalfWidth, '0.8709023354');
    expectPrinted(found.lag, '0.05846599625');
    expectPrinted(found.lagHalfWidth, '0.04158443306');
    expect(found).toMatchObject({ tapers: 5, cycles: 12, linked: true });
  });

  it('is the worked example without the filter', () => {
    const found = ripple(boost, torque, 0.05, { frequency: 2, prefilter: false });
    expectPrinted(found.coherence, '0.7808535849');
    expectPrinted(found.gain, '1.404271971');
    expectPrinted(found.lag, '0.06254988905');
    expect(found.filter).toBeUndefined();
  });

  it.each([
    { tapers: 3, critical: '0.7763932023' },
    { tapers: 5, critical: '0.5271291955' },
    { tapers: 7, critical: '0.3930377690' },
    { tapers: 10, critical: '0.2831288356' },
  ])('needs a coherence beyond $critical with $tapers tapers', ({ tapers, critical }) => {
    expectPrinted(ripple(boost, torque, 0.05, { frequency: 2, tapers }).criticalCoherence, critical);
  });

  it('finds a gain and a lag that were planted, and the same after other units', () => {
    const noise = normalFrom(seededUniform(5));
    const drive = resonance(400, 0.05, { frequency: 1.5, width: 0.8 }, noise);
    const follow = drive.map((_, i) => 2.5 * (drive[i - 2] ?? 0) + 0.05 * noise());
    const found = ripple(drive, follow, 0.05, { frequency: 1.5 });
    expect(Math.abs(found.gain - 2.5)).toBeLessThan(found.gainHalfWidth + 0.05);
    expect(Math.abs(found.lag - 0.1)).toBeLessThan(found.lagHalfWidth! + 0.005);
    expect(found.coherence).toBeGreaterThan(0.98);
    const other = ripple(
      drive.map((value) => value / 6.894757),
      follow.map((value) => value + 300),
      0.05,
      { frequency: 1.5 },
    );
    expect(other.gain / found.gain).toBeCloseTo(6.894757, 6);
    expect(other.coherence).toBeCloseTo(found.coherence, 10);
  });

  it('claims nothing below five cycles, however coherent, and takes fewer tapers below eight', () => {
    const short = ripple(boost.slice(0, 45), boost.slice(0, 45), 0.05, { frequency: 2 });
    expect(short).toMatchObject({ tapers: 3, linked: false });
    expect(short.coherence).toBeCloseTo(1, 9);
    expect(short.remarks.join(' ')).toMatch(/4\.5 cycles/);
  });

  it('warns that steady tones of one frequency always look linked, and they do', () => {
    const tone = (phase: number): Float64Array => times.map((t) => Math.sin(4 * Math.PI * t + phase));
    const found = ripple(tone(0), tone(1.1), 0.05, { frequency: 2, prefilter: false });
    expect(found.coherence).toBeGreaterThan(0.99);
    expect(found.remarks[0]).toMatch(/always look linked/);
  });

  it('gives no limits of the lag where the gain is not told from zero', () => {
    const noise = normalFrom(seededUniform(11));
    const drive = Float64Array.from({ length: 200 }, () => noise());
    const other = Float64Array.from({ length: 200 }, () => noise());
    const found = ripple(drive, other, 0.05, { frequency: 2 });
    expect(found.linked).toBe(false);
    expect(found.gainHalfWidth).toBeGreaterThan(found.gain);
    expect(found.lagHalfWidth).toBeUndefined();
  });

  it('refuses frequencies that the samples cannot show, short records and straight lines', () => {
    expect(codeOf(() => ripple(boost, torque, 0.05, { frequency: 11 }))).toBe('out-of-range');
    expect(codeOf(() => ripple(boost, torque, 0.05, { frequency: 0.1 }))).toBe('out-of-range');
    expect(codeOf(() => ripple(boost.slice(0, 10), torque.slice(0, 10), 0.05, { frequency: 2 }))).toBe(
      'too-few-points',
    );
    expect(codeOf(() => ripple(times, torque, 0.05, { frequency: 2 }))).toBe('no-scatter');
    expect(codeOf(() => ripple(boost, torque.slice(1), 0.05, { frequency: 2 }))).toBe('unequal-lengths');
    expect(codeOf(() => ripple(boost, torque, 0.05, { frequency: 2, tapers: 2 }))).toBe('out-of-range');
  });
});

describe('the same over several pulls', () => {
  const of = (re: number, im: number) => ({ transfer: { re, im }, frequency: 1.5 });

  it('agrees where every pull has about one gain and phase, and gives their mean', () => {
    const found = rippleOverPulls([of(1.9, -1), of(2.1, -0.9), of(2, -1.1)]);
    expect(found).toMatchObject({ pulls: 3, agree: true });
    expect(found.gain).toBeCloseTo(Math.hypot(2, 1), 12);
    expect(found.lag).toBeCloseTo(Math.atan2(1, 2) / (3 * Math.PI), 12);
    // Sum of squares 0.04 about (2, -1): F = 3 * 2 * 5/0.04 = 750 of 2 and 4 degrees, whose tail is (1 + F/2)^-2.
    expect(found.p).toBeCloseTo((1 + 750 / 2) ** -2, 12);
    expect(found.relativeSpread).toBeCloseTo(Math.sqrt(0.04 / 3 / 5), 12);
  });

  it('is right in 95 of 100 sets of pulls with phases by chance, seeded', () => {
    const normal = normalFrom(seededUniform(21));
    const agreed = Array.from({ length: 2000 }, () =>
      rippleOverPulls(Array.from({ length: 4 }, () => of(normal(), normal()))),
    ).filter(({ agree }) => agree).length;
    expect(agreed / 2000).toBeGreaterThan(0.035);
    expect(agreed / 2000).toBeLessThan(0.065);
  });

  it('refuses one pull', () => {
    expect(codeOf(() => rippleOverPulls([of(1, 0)]))).toBe('too-few-pulls');
  });
});

describe('sine tapers', () => {
  it('keep the power of white noise, and are orthogonal: their squares sum to one', () => {
    const unit = (at: number): Float64Array => Float64Array.from({ length: 50 }, (_, i) => (i === at ? 1 : 0));
    const total = Array.from({ length: 50 }, (_, at) => taperedTransforms(unit(at), 1, 0.2, 3)).map((each) =>
      each.map(({ re, im }) => re * re + im * im),
    );
    [0, 1, 2].forEach((k) => expect(total.reduce((sum, each) => sum + each[k]!, 0)).toBeCloseTo(1, 12));
  });
});

// Long runs with more widths: benchmarks/ripple-coverage.ts.
describe('coverage of the ripple test, seeded', () => {
  const trials = 400;
  const step = 0.05;
  const count = 160;

  it('finds a link between unrelated resonances in 3 to 8 of 100 with the filter, and far more often without', () => {
    const normal = normalFrom(seededUniform(301));
    let [filtered, plain] = [0, 0];
    for (let trial = 0; trial < trials; trial++) {
      const [x, y] = [0, 1].map(() => resonance(count, step, { frequency: 2, width: 0.4 }, normal)) as [
        Float64Array,
        Float64Array,
      ];
      if (ripple(x, y, step, { frequency: 2, tapers: 10 }).linked) filtered++;
      if (ripple(x, y, step, { frequency: 2, tapers: 10, prefilter: false }).linked) plain++;
    }
    expect(filtered / trials).toBeGreaterThan(0.025);
    expect(filtered / trials).toBeLessThan(0.085);
    expect(plain / trials).toBeGreaterThan(0.09);
  });

  it('holds a true share of 0.6 in its interval in 91 to 98 of 100', () => {
    const normal = normalFrom(seededUniform(302));
    let inside = 0;
    for (let trial = 0; trial < trials; trial++) {
      const [x, other] = [0, 1].map(() => resonance(count, step, { frequency: 2, width: 0.4 }, normal)) as [
        Float64Array,
        Float64Array,
      ];
      // Equal spectra: the share explained is 0.6 at every frequency.
      const y = x.map((value, i) => Math.sqrt(0.6) * value + Math.sqrt(0.4) * other[i]!);
      const { share } = ripple(x, y, step, { frequency: 2, tapers: 7 });
      if (share[0] <= 0.6 && share[1] >= 0.6) inside++;
    }
    expect(inside / trials).toBeGreaterThan(0.91);
    expect(inside / trials).toBeLessThan(0.985);
  });
});

describe('two groups of pulls', () => {
  const of = (re: number, im: number) => ({ transfer: { re, im } });

  it('differ where their means lie apart beyond their scatter, by the tail of an F ratio', () => {
    const found = rippleAgreement([of(1, 0), of(1.2, 0)], [of(1, 1), of(1.2, 1)])!;
    // Means 1 apart, sum of squares 0.04: F = (1/(1/2 + 1/2)/2)/(0.04/4) = 50 of 2 and 4 degrees, whose tail is (1 + 50 * 2/4)^-2.
    expect(found.p).toBeCloseTo((1 + (50 * 2) / 4) ** -2, 12);
    expect(found.differ).toBe(true);
    expect(rippleAgreement([of(1, 0)], [of(1, 1)])).toBeUndefined();
    expect(rippleAgreement([of(1, 0), of(2, 0), of(3, 0)], [])).toBeUndefined();
  });

  it('of one link are said to differ in 5 of 100, seeded', () => {
    const normal = normalFrom(seededUniform(22));
    const group = (count: number) => Array.from({ length: count }, () => of(2 + normal(), normal()));
    const differ = Array.from({ length: 2000 }, () => rippleAgreement(group(3), group(5))!).filter((one) => one.differ);
    expect(differ.length / 2000).toBeGreaterThan(0.035);
    expect(differ.length / 2000).toBeLessThan(0.065);
  });
});
