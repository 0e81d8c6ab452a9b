import { describe, expect, it } from 'vitest';
import { buildUp } from '../../../src/statistics/signal/build-up.js';
import { shortFit } from '../../../src/statistics/signal/short-fit.js';
import { linearModel } from '../../../src/statistics/least-squares.js';
import { seeded } from '../../support/random.js';

const times = (rows: number): Float64Array => Float64Array.from({ length: rows }, (_, i) => i * 0.05);

describe('the end of a build-up', () => {
  it('does not depend on the unit of the signal or of time, nor on blanks', () => {
    const random = seeded(3);
    const t = times(220);
    const y = t.map((s) => 110 - 60 * Math.exp(-s / 0.5) + 0.4 * random());
    const { row, kind } = buildUp(t, y);
    expect(kind).toBe('built up');
    expect(
      buildUp(
        t.map((s) => 20 * s + 7),
        y.map((each) => 1000 * each),
      ),
    ).toEqual({ kind, row });
    const thin = y.map((each, i) => (i % 7 === 3 ? NaN : each));
    expect(Math.abs(buildUp(t, thin).row - row)).toBeLessThan(20);
  });

  it('is found in a fast recording as in a slow one', () => {
    const at = (rows: number): number => {
      const t = Float64Array.from({ length: rows }, (_, i) => (11 * i) / rows);
      const { row } = buildUp(
        t,
        t.map((s) => 110 - 60 * Math.exp(-s / 0.5)),
      );
      return t[row]!;
    };
    expect(Math.abs(at(11000) - at(220))).toBeLessThan(0.2);
  });

  it('is none in a constant signal and needs 8 readings', () => {
    expect(buildUp(times(40), new Float64Array(40).fill(3))).toEqual({ kind: 'none', row: 0 });
    expect(() => buildUp(times(7), times(7))).toThrow(/at least 8/);
  });
});

describe('a short fit', () => {
  it('agrees with the orthogonal least squares of the library', () => {
    const random = seeded(5);
    const x = Float64Array.from({ length: 30 }, (_, i) => i / 29);
    const columns = [x.map(() => 1), x, x.map((each) => each * each), x.map((each) => Math.exp(-5 * each))];
    const y = x.map((each) => 3 - each + Math.sin(4 * each) + 0.1 * random());
    const short = shortFit(columns, y, 4)!;
    const long = linearModel(
      'check',
      columns.map((each) => each.slice(4)),
      ['a', 'b', 'c', 'd'],
    ).fit(y.slice(4));
    long.coefficients.forEach((each, i) => expect(short.coefficients[i]).toBeCloseTo(each, 6));
    const squares = Array.from(long.residuals).reduce((sum, each) => sum + each * each, 0);
    expect(short.sumOfSquares).toBeCloseTo(squares, 9);
  });

  it('is none where the columns do not settle it', () => {
    const x = times(10);
    expect(shortFit([x, x.map((each) => 2 * each)], x, 0)).toBeUndefined();
  });
});
