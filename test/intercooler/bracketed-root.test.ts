import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bracketedRoot } from '../../src/intercooler/bracketed-root.js';

describe('a bracketed root', () => {
  it('is found to the last digits on curves that mislead straight steps', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 3, noNaN: true }), (root) => {
        for (const f of [
          (x: number) => x ** 9 - root ** 9,
          (x: number) => Math.atan(1e4 * (x - root)),
          (x: number) => (x < root ? -1 : 1),
          (x: number) => Math.cbrt(x - root),
        ]) {
          expect(Math.abs(bracketedRoot(f, 0, 4) / root - 1)).toBeLessThan(1e-14);
        }
      }),
    );
  });

  it('is found at either bound', () => {
    expect(bracketedRoot((x) => x, 0, 4)).toBeCloseTo(0, 300);
    expect(bracketedRoot((x) => x - 4, 0, 4)).toBe(4);
  });

  it('takes few steps on a smooth curve', () => {
    let calls = 0;
    const root = bracketedRoot((x) => (calls++, Math.exp(x) - 2), 0, 4);
    expect(root).toBeCloseTo(Math.LN2, 15);
    expect(calls).toBeLessThan(15);
  });

  it('is NaN where the bounds enclose none', () => {
    expect(bracketedRoot((x) => x - 5, 0, 4)).toBeNaN();
    expect(bracketedRoot((x) => x + 1, 0, 4)).toBeNaN();
    expect(bracketedRoot(() => NaN, 0, 4)).toBeNaN();
  });
});
