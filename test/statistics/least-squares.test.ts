import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { linearModel } from '../../src/statistics/index.js';
import { codeOf } from './printed.js';

function expectCertified(
  x: readonly number[],
  y: readonly number[],
  powers: readonly number[],
  certified: { coefficients: readonly (readonly [string, string])[]; residual: string },
  tolerance: number,
): void {
  const model = linearModel(
    'fit',
    powers.map((power) => x.map((v) => v ** power)),
    powers.map((power) => `x^${power}`),
  );
  const fit = model.fit(y);
  const s = Math.sqrt(fit.residualSumOfSquares / model.degreesOfFreedom);
  expect(Math.abs(s / Number(certified.residual) - 1)).toBeLessThanOrEqual(tolerance);
  certified.coefficients.forEach(([value, error], j) => {
    expect(Math.abs(fit.coefficients[j]! / Number(value) - 1), `coefficient ${j}`).toBeLessThanOrEqual(tolerance);
    const got = s * Math.sqrt(model.varianceFactors[j]!);
    expect(Math.abs(got / Number(error) - 1), `error ${j}`).toBeLessThanOrEqual(tolerance);
  });
}

describe('linear model', () => {
  it('gives the certified digits of Norris (NIST StRD)', () => {
    const rows = [
      [0.2, 0.1], [337.4, 338.8], [118.2, 118.1], [884.6, 888.0], [10.1, 9.2], [226.5, 228.1], [666.3, 668.5],
      [996.3, 998.5], [448.6, 449.1], [777.0, 778.9], [558.2, 559.2], [0.4, 0.3], [0.6, 0.1], [775.5, 778.1],
      [666.9, 668.8], [338.0, 339.3], [447.5, 448.9], [11.6, 10.8], [556.0, 557.7], [228.1, 228.3], [995.8, 998.0],
      [887.6, 888.8], [120.2, 119.6], [0.3, 0.3], [0.3, 0.6], [556.8, 557.6], [339.1, 339.3], [887.2, 888.0],
      [999.0, 998.5], [779.0, 778.9], [11.1, 10.2], [118.3, 117.6], [229.2, 228.9], [669.1, 668.4], [448.9, 449.2],
      [0.5, 0.2],
    ] as const; // prettier-ignore
    expectCertified(
      rows.map(([x]) => x),
      rows.map(([, y]) => y),
      [0, 1],
      {
        coefficients: [
          ['-0.262323073774029', '0.232818234301152'],
          ['1.00211681802045', '0.429796848199937E-03'],
        ],
        residual: '0.884796396144373',
      },
      1e-12,
    );
  });

  const file = fileURLToPath(new URL('../../../shared/data/nist-univariate-and-regression.json', import.meta.url));
  it.skipIf(!existsSync(file))('gives the certified digits of Pontius, a parabola (NIST StRD, whole file)', () => {
    const { cases } = JSON.parse(readFileSync(file, 'utf8')) as {
      cases: {
        dataset: string;
        x: number[];
        y: number[];
        certified: { coefficients: [string, string][]; residualStdDev: string };
      }[];
    };
    const pontius = cases.find((one) => one.dataset === 'pontius')!;
    const { coefficients, residualStdDev } = pontius.certified;
    // Columns that differ by 13 orders: the normal equations would keep few digits here.
    expectCertified(pontius.x, pontius.y, [0, 1, 2], { coefficients, residual: residualStdDev }, 1e-11);
  });

  it('names the column that the others already hold', () => {
    const columns = [
      [1, 1, 1, 1],
      [0, 1, 2, 3],
      [5, 7, 9, 11],
    ];
    expect(codeOf(() => linearModel('fit', columns, ['a', 'b', 'c']))).toBe('confounded');
    expect(() => linearModel('fit', columns, ['a', 'b', 'c'])).toThrow('fit: c must tell apart from a, b');
  });
});
