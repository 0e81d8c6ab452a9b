import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differenceBand, studentTFactor, type Band } from '../../src/statistics/index.js';
import { pathLength, simultaneousFactor } from '../../src/statistics/band-parts.js';
import { examplePulls, plainMean } from './example-pulls.js';
import { codeOf, expectPrinted } from './printed.js';
import { normalFrom, pullMaker, seededUniform } from './simulated-pulls.js';

const { grid, baseline, candidate } = examplePulls(31);

function expectPoint(band: Band, j: number, row: readonly [string, string, string, string, string, string]): void {
  const [difference, standardError, low, high, pointLow, pointHigh] = row;
  const d = band.difference[j]!;
  expectPrinted(d, difference);
  expectPrinted(band.standardError[j], standardError);
  expectPrinted(d - band.simultaneousHalfWidth[j]!, low);
  expectPrinted(d + band.simultaneousHalfWidth[j]!, high);
  expectPrinted(d - band.pointwiseHalfWidth[j]!, pointLow);
  expectPrinted(d + band.pointwiseHalfWidth[j]!, pointHigh);
}

// All printed figures of this file: worked beforehand by a separate program from the same steps.
describe('simultaneous factor', () => {
  it.each([
    { nu: 4, L: 7, m: 41, p: '0.002289653123', k: '6.919109591' },
    { nu: 8, L: 7, m: 41, p: '0.003806253019', k: '4.026556405' },
    { nu: 18, L: 7, m: 41, p: '0.004605715682', k: '3.233914223' },
    { nu: 8, L: 2.5, m: 25, p: '0.01080973103', k: '3.303041145' },
    { nu: 4, L: 0, m: 41, p: '0.05', k: '2.776445105' },
  ])('is $k for nu $nu, L $L on $m points', ({ nu, L, m, p, k }) => {
    const got = simultaneousFactor(0.05, m, nu, L);
    expectPrinted(got.factor, k);
    expectPrinted(got.tailProbability, p);
    expect(got.method).toBe('expected crossings');
  });

  it('never exceeds Bonferroni over the points', () => {
    const got = simultaneousFactor(0.05, 20, 6, 60);
    expectPrinted(got.factor, '4.980693514');
    expect(got.tailProbability).toBe(0.0025);
    expect(got.method).toBe('Bonferroni over points');
  });

  it('solves its own equation for any field', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.2, max: 60, noNaN: true }),
        fc.double({ min: 0.01, max: 40, noNaN: true }),
        fc.double({ min: 0.001, max: 0.3, noNaN: true }),
        (nu, L, error) => {
          const { tailProbability, factor, method } = simultaneousFactor(error, 1e6, nu, L);
          if (method !== 'expected crossings') return;
          const crossings = (L / Math.PI) * (1 + factor ** 2 / nu) ** (-(nu - 1) / 2);
          expect((tailProbability + crossings) / error).toBeCloseTo(1, 10);
        },
      ),
    );
  });

  it('falls back on Bonferroni where one degree of freedom never stops crossing', () => {
    expect(simultaneousFactor(0.05, 41, 1, 7).method).toBe('Bonferroni over points');
  });
});

describe('path length of the residuals', () => {
  it('is the angle between two directions, kept for a tiny angle', () => {
    expect(pathLength([Float64Array.of(1, 0), Float64Array.of(0, 2)], 2)).toBeCloseTo(Math.PI / 2, 15);
    expect(pathLength([Float64Array.of(1, 1), Float64Array.of(0, 1e-12)], 2)).toBeCloseTo(1e-12, 26);
  });

  it('is half a turn when the residuals change sign, and no more', () => {
    expect(pathLength([Float64Array.of(1, -1), Float64Array.of(0.3, -0.3)], 2)).toBeCloseTo(Math.PI, 7);
  });
});

const short = Array.from({ length: 12 }, (_, j) => 2000 + 250 * j);
const shape = { points: 12, length: 0.2, offsetShare: 0.3, profile: (s: number) => 1 + s };

describe('difference band', () => {
  it('agrees with the worked example of three pulls a side', () => {
    const band = differenceBand(grid, baseline, candidate);
    const { diagnostics } = band;
    expect(diagnostics.window).toBe(0.1);
    expectPrinted(diagnostics.varianceRatio, '0.9760322313');
    expectPrinted(diagnostics.gain, '1.663108442');
    expectPrinted(diagnostics.degreesOfFreedom, '6.651455215');
    expectPrinted(diagnostics.roughness, '6.568453514');
    expectPrinted(diagnostics.tailProbability, '0.003757776783');
    expectPrinted(diagnostics.factor, '4.356132942');
    expectPrinted(diagnostics.pointwiseFactor, '2.389976313');
    expectPoint(band, 0, ['4.322198785', '1.508904107', '-2.250788104', '10.89518567', '0.71595371', '7.92844386']);
    expectPoint(band, 10, ['7.578822834', '2.835556812', '-4.773239603', '19.93088527', '0.8019092209', '14.35573645']);
    expectPoint(band, 20, ['10.10161322', '3.759759309', '-6.276398157', '26.47962461', '1.115877534', '19.08734891']);
    expectPoint(band, 30, ['12.72131742', '2.371242854', '2.391868309', '23.05076653', '7.054103167', '18.38853167']);
    expect(band.method).toBe('expected crossings');
    expect(band.indicative).toBe(false);
  });

  it('agrees with the worked example without smoothing of the scatter', () => {
    const band = differenceBand(grid, baseline, candidate, { window: 0 });
    expect(band.diagnostics.gain).toBe(1);
    expectPrinted(band.diagnostics.degreesOfFreedom, '3.999411613');
    expectPrinted(band.diagnostics.factor, '6.772818747');
    expectPrinted(band.standardError[30], '2.212104376');
    // Two lone points (numpy: 7.0365 and 6.7859 standard errors) where the local scatter happens to be small.
    const resolved = grid.filter((_, j) => Math.abs(band.difference[j]!) > band.simultaneousHalfWidth[j]!);
    expect(resolved.map(Math.round)).toEqual([2133, 5867]);
  });

  it('smooths the scatter less as the pulls grow', () => {
    const make = pullMaker(shape, normalFrom(seededUniform(7)));
    const windowOf = (a: number, b: number): number => {
      const side = (n: number): number[][] => Array.from({ length: n }, () => make(1));
      return differenceBand(short, side(a), side(b)).diagnostics.window;
    };
    expect([windowOf(2, 9), windowOf(4, 4), windowOf(5, 9), windowOf(7, 7), windowOf(8, 8)]).toEqual([
      0.1, 0.1, 0.05, 0.05, 0,
    ]);
  });

  it('resolves the region the example names: 5600 rpm up for the whole band, 26 of 31 points one by one', () => {
    const band = differenceBand(grid, baseline, candidate);
    const resolved = (halfWidth: Float64Array): number[] =>
      grid.filter((_, j) => Math.abs(band.difference[j]!) > halfWidth[j]!);
    expect(Math.min(...resolved(band.simultaneousHalfWidth))).toBe(5600);
    expect(resolved(band.simultaneousHalfWidth)).toHaveLength(4);
    expect(resolved(band.pointwiseHalfWidth)).toHaveLength(26);
  });

  it('joins a sensor that does not cancel, and lets the pulls alone set the floor', () => {
    const sensor = grid.map((_, j) => 0.003 * plainMean(candidate.map((pull) => pull[j]!)));
    const band = differenceBand(grid, baseline, candidate, { unsharedSensors: [sensor] });
    expectPrinted(band.diagnostics.degreesOfFreedom, '8.074946671');
    expectPrinted(band.diagnostics.roughness, '6.134211467');
    expectPrinted(band.diagnostics.factor, '3.909114033');
    expectPrinted(band.standardError[30], '2.550139413');
    expectPrinted(band.difference[30]! - band.simultaneousHalfWidth[30]!, '2.391868309');
    expectPrinted(band.difference[30]! + band.simultaneousHalfWidth[30]!, '23.05076653');
    expectPrinted(band.difference[0]! - band.simultaneousHalfWidth[0]!, '-2.698942934');
    expectPrinted(band.difference[0]! + band.simultaneousHalfWidth[0]!, '11.3433405');
  });

  it('gives each point its own share, and says so, below eight grid points', () => {
    const { grid: few, baseline: a, candidate: b } = examplePulls(7);
    const band = differenceBand(few, a, b);
    expect(band.method).toBe('Bonferroni over points');
    expect(band.diagnostics.factor).toBe(studentTFactor((1 - 0.95) / 7, band.diagnostics.degreesOfFreedom));
  });

  it('meets Bonferroni first on the coarse grid of nine speeds', () => {
    const { grid: few, baseline: a, candidate: b } = examplePulls(9);
    const band = differenceBand(few, a, b);
    expect(band.method).toBe('Bonferroni over points');
    expect(band.diagnostics.tailProbability).toBeCloseTo(0.05 / 9, 12);
  });

  it('answers a single grid point like a single figure, with pooled degrees of freedom when the sides are alike', () => {
    const band = differenceBand([4000], [[1], [2], [4]], [[11], [12], [14]]);
    expect(band.difference[0]).toBeCloseTo(10, 12);
    expect(band.diagnostics.degreesOfFreedom).toBeCloseTo(4, 12);
    expect(band.simultaneousHalfWidth[0]).toBeCloseTo(studentTFactor(0.05, 4) * Math.sqrt((2 * 7) / 9), 10);
  });

  it('widens for several set-ups against one baseline, as if each had its share of the error', () => {
    const one = differenceBand(grid, baseline, candidate);
    const three = differenceBand(grid, baseline, candidate, { setUps: 3 });
    const same = differenceBand(grid, baseline, candidate, { confidence: 1 - 0.05 / 3 });
    expect(three.diagnostics.factor).toBeGreaterThan(one.diagnostics.factor);
    expect(three.diagnostics.factor).toBeCloseTo(same.diagnostics.factor, 9);
  });

  it('is only indicative on two pulls a side', () => {
    const band = differenceBand(grid, baseline.slice(0, 2), candidate);
    expect(band.indicative).toBe(true);
  });

  /** Sides of two to six random pulls, told by a seed. */
  const scattered = fc
    .tuple(fc.integer({ min: 2, max: 6 }), fc.integer({ min: 1, max: 1_000_000 }))
    .map(([n, seed]) => {
      const make = pullMaker(shape, normalFrom(seededUniform(seed)));
      return Array.from({ length: n }, () => make(1));
    });
  const expectSame = (got: Float64Array, wanted: Float64Array, by = 1): void => {
    got.forEach((value, j) => expect(value).toBeCloseTo(by * wanted[j]!, 6));
  };

  it('changes only its sign when the sides are swapped', () => {
    fc.assert(
      fc.property(scattered, scattered, (a, b) => {
        const there = differenceBand(short, a, b);
        const back = differenceBand(short, b, a);
        expectSame(back.difference, there.difference, -1);
        expectSame(back.simultaneousHalfWidth, there.simultaneousHalfWidth);
        expectSame(back.pointwiseHalfWidth, there.pointwiseHalfWidth);
      }),
      { numRuns: 40 },
    );
  });

  it('does not feel what is common to all pulls, nor the origin and scale of the grid', () => {
    fc.assert(
      fc.property(scattered, scattered, fc.double({ min: 1, max: 1000, noNaN: true }), (a, b, lift) => {
        const plain = differenceBand(short, a, b);
        const lifted = (pulls: number[][]): number[][] => pulls.map((p) => p.map((y, j) => y + lift + 10 * j));
        const moved = differenceBand(
          short.map((x) => x / 60 - 3),
          lifted(a),
          lifted(b),
        );
        expectSame(moved.difference, plain.difference);
        expectSame(moved.simultaneousHalfWidth, plain.simultaneousHalfWidth);
      }),
      { numRuns: 40 },
    );
  });

  it('scales with its units', () => {
    fc.assert(
      fc.property(scattered, scattered, (a, b) => {
        const pounds = (pulls: number[][]): number[][] => pulls.map((p) => p.map((y) => y * 0.7375621));
        const metric = differenceBand(short, a, b);
        const imperial = differenceBand(short, pounds(a), pounds(b));
        expectSame(imperial.difference, metric.difference, 0.7375621);
        expectSame(imperial.simultaneousHalfWidth, metric.simultaneousHalfWidth, 0.7375621);
      }),
      { numRuns: 40 },
    );
  });

  it('is never narrower at once than at one point, nor with a sensor than without', () => {
    fc.assert(
      fc.property(scattered, scattered, fc.double({ min: 0, max: 3, noNaN: true }), (a, b, u) => {
        const band = differenceBand(short, a, b);
        const wider = differenceBand(short, a, b, { unsharedSensors: [short.map(() => u)] });
        band.simultaneousHalfWidth.forEach((half, j) => {
          expect(half).toBeGreaterThanOrEqual(band.pointwiseHalfWidth[j]! * (1 - 1e-12));
          expect(wider.simultaneousHalfWidth[j]!).toBeGreaterThanOrEqual(half * (1 - 1e-12));
        });
      }),
      { numRuns: 40 },
    );
  });

  it('calls a side copied or clipped where its pulls agree over most of the grid', () => {
    const clipped = candidate.map((pull) => pull.map((y, j) => (j > 8 ? 400 : y)));
    expect(() => differenceBand(grid, baseline, clipped)).toThrow(
      'difference band: candidate must differ from pull to pull along the grid, ' +
        'got the same value in every pull at 22 of 31 points, among them ',
    );
    expect(() => differenceBand(grid, baseline, clipped)).toThrow('Look for a copied or clipped channel.');
    const copied = [baseline[0]!, baseline[0]!, baseline[0]!];
    expect(codeOf(() => differenceBand(grid, copied, candidate))).toBe('no-scatter');
  });

  it('borrows the scatter of the neighbours where pulls happen to be equal at one place', () => {
    const plain = differenceBand(grid, baseline, candidate);
    const met = (pulls: readonly (readonly number[])[]) =>
      pulls.map((pull) => pull.map((y, j) => (j === 12 ? 330 : y)));
    for (const band of [
      differenceBand(grid, baseline, met(candidate)),
      differenceBand(grid, met(baseline), met(candidate)),
    ]) {
      const share = band.standardError.map((se, j) => se / plain.standardError[j]!);
      expect(Math.min(...share)).toBeGreaterThan(0.85);
      expect(band.diagnostics.roughness).toBeGreaterThan(0.5 * plain.diagnostics.roughness);
      expect(band.simultaneousHalfWidth.every((half) => half > 0)).toBe(true);
    }
  });

  it('refuses, without talk of copies, where no neighbour can lend scatter', () => {
    const met = candidate.map((pull) => pull.map((y, j) => (j === 12 ? 330 : y)));
    expect(() => differenceBand(grid, baseline, met, { window: 0 })).toThrow(
      /the same value in every pull at 1 of 31 points, among them [\d.]+\. Readings in coarse steps do that/,
    );
  });

  it('takes scatter no larger than rounding for a copy', () => {
    const almost = [[...baseline[0]!], baseline[0]!.map((y) => y * (1 + 2.3e-16))];
    expect(codeOf(() => differenceBand(grid, almost, candidate))).toBe('no-scatter');
  });

  it('refuses one pull, unequal lengths, gaps, a grid that turns back and an impossible confidence', () => {
    expect(codeOf(() => differenceBand(grid, baseline.slice(0, 1), candidate))).toBe('too-few-pulls');
    expect(codeOf(() => differenceBand(grid, baseline, []))).toBe('too-few-pulls');
    expect(() => differenceBand(grid, baseline, [candidate[0]!, candidate[1]!.slice(1)])).toThrow(
      'candidate[1] must hold 31 values, one for each point, got 30',
    );
    const gap = candidate.map((pull) => pull.map((y, j) => (j === 3 ? NaN : y)));
    expect(() => differenceBand(grid, baseline, gap)).toThrow('candidate[0][3] must be a finite number, got NaN');
    expect(codeOf(() => differenceBand([...grid].reverse(), baseline, candidate))).toBe('not-increasing');
    expect(codeOf(() => differenceBand([], [[], []], [[], []]))).toBe('too-few-points');
    expect(codeOf(() => differenceBand(grid, baseline, candidate, { confidence: 95 }))).toBe('out-of-range');
    expect(codeOf(() => differenceBand(grid, baseline, candidate, { setUps: 0 }))).toBe('out-of-range');
    expect(codeOf(() => differenceBand(grid, baseline, candidate, { window: -0.1 }))).toBe('out-of-range');
    expect(codeOf(() => differenceBand(grid, baseline, candidate, { unsharedSensors: [[1]] }))).toBe('unequal-lengths');
  });
});
