import { describe, expect, it } from 'vitest';
import { compare, type Comparison } from '../../src/comparison/index.js';
import { report } from '../../src/report/index.js';
import { readPullsFrom } from '../../src/sweep/index.js';
import { alternating, pullLog, scattered } from '../support/pulls.js';

/** Adds columns to the log of a pull, made from its row number. */
function withColumns(log: string, columns: Readonly<Record<string, (row: number) => number>>): string {
  return log
    .split('\n')
    .map((line, i) => {
      const cells = Object.entries(columns).map(([head, of]) => (i === 0 ? head : String(of(i - 1))));
      return [line, ...cells].join(',');
    })
    .join('\n');
}

function comparison(columns: (setup: string) => Readonly<Record<string, (row: number) => number>>): Comparison {
  const [a, b] = alternating(scattered(3, 240, 0.5, 1), scattered(3, 245, 0.5, 2));
  const files = Object.entries({ 'stock core': a, 'tall core': b }).flatMap(([setup, shapes]) =>
    shapes.map((shape, i) => {
      return { path: `${setup}/pull ${i + 1}.csv`, setup, data: withColumns(pullLog(shape), columns(setup)) };
    }),
  );
  const day = readPullsFrom(files);
  return compare(day.setup('stock core'), day.setup('tall core'), { engineSpeed: [3500, 6000] });
}

describe('what the core of a set-up did', () => {
  // Boost is 110 kPa in every row, so a pressure of 116 kPa before the core is a loss of 6 kPa; it grows by 0.02 kPa a row of 20 rpm.
  const losses = comparison((setup) => ({
    'Compressor outlet pressure (kPa)': (row) => (setup === 'stock core' ? 116 : 113) + 0.02 * row,
  }));

  it('is its pressure loss, over the range and at each engine speed, where the pressure before it was logged', () => {
    const { baseline, candidate } = losses.cores;
    // From 3000 rpm, 4750 rpm is row 87.5.
    expect(baseline!.pressureLoss!.mean.in('kPa')).toBeCloseTo(6 + 0.02 * 87.5, 3);
    expect(candidate!.pressureLoss!.mean.in('kPa')).toBeCloseTo(3 + 0.02 * 87.5, 3);
    const bySpeed = baseline!.pressureLoss!.bySpeed.in('kPa');
    expect(bySpeed).toHaveLength(26);
    expect(bySpeed[10]).toBeCloseTo(6 + 0.02 * 75, 3);
    expect(baseline!.effectiveness).toBeUndefined();
  });

  it('stands in the findings and in a table of the report', () => {
    expect(losses.findings.join('\n')).toContain(
      'Pressure lost from the compressor to the manifold, core and ducts together: 7.8 kPa with stock core, 4.8 kPa with tall core (mean of the pulls).',
    );
    expect(report(losses).markdown).toMatch(
      /## Cores by engine speed[\s\S]*pressure loss kPa, stock core[\s\S]*\| 4500 +\| +7\.50 \| +4\.50 \|/,
    );
  });

  it('says that gauges do not read alike where pressure would rise through the core', () => {
    const risen = comparison(() => ({ 'Compressor outlet pressure (kPa)': () => 108 }));
    expect(risen.findings.join('\n')).toContain('none can rise on its way: the gauges do not read alike');
  });

  it('is its effectiveness at each engine speed, from temperatures before and behind it', () => {
    // Charge 35 °C + 0.02 K a row, room 18 °C: (118 - charge)/(118 - 18).
    const { cores } = comparison(() => ({ 'Compressor outlet temp (°C)': () => 118 }));
    expect(cores.baseline!.effectiveness!.bySpeed.in('%')[10]).toBeCloseTo(118 - 35 - 0.02 * 75, 2);
    expect(cores.baseline!.against).toBe('room air');
    expect(cores.baseline!.pressureLoss).toBeUndefined();
  });

  it('is nothing where nothing before the core was logged', () => {
    expect(comparison(() => ({})).cores.baseline).toBeUndefined();
  });
});
