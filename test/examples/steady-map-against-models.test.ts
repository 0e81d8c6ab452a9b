import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { brokenPromises, promisedLines, runExample } from '../support/examples.js';

// Each run is a process of its own, slow to start on a busy machine.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const NAME = 'steady-map-against-models';

/**
 * Eleven of the 1258 points of a steady-state map of a 1.9 L turbocharged diesel: a line of load at 2400 rpm, full load where it breathes
 * most, light load at a low and a high speed. Measured by Oak Ridge National Laboratory (S. Sluder, R. Wagner), distributed by the US
 * National Renewable Energy Laboratory, copyright 2002-2011 Alliance for Sustainable Energy, LLC. The licence that lies beside the map must
 * be included in all copies or substantial portions of it; eleven points quoted as figures are none.
 */
const quotedRows = `speed_rpm,torque_Nm,fuel_g_s,exhaust_flow_g_s,exhaust_vol_flow_m3_s,exhaust_temp_C,exhaust_o2_g_s,attainable
1800,20.34,0.43,17.01,0.024,221.49,2.534,1
1900,216.92,2.54,58.09,0.117,442.54,5.049,1
2200,210.14,2.98,67.56,0.142,478.94,5.802,1
2400,27.12,0.74,31.18,0.046,248.29,4.752,1
2400,40.67,0.9,35.79,0.055,265.97,5.272,1
2400,61.01,1.16,41.24,0.067,296.56,5.669,1
2400,81.35,1.44,45.66,0.077,326.18,5.792,1
2400,101.68,1.76,49.65,0.088,358.03,5.795,1
2400,115.24,1.99,53.08,0.097,380.6,5.899,1
2400,203.36,3.19,72.55,0.156,497.36,6.24,1
3500,20.34,1.34,78.67,0.149,383.69,13.707,1
`;

const whole = fileURLToPath(new URL('../../../shared/data/steady-map-1.9l-diesel.csv', import.meta.url));
const isAbsent = !existsSync(whole);
const skipped = isAbsent ? ' (skipped: ../shared/data is not here)' : '';

/** Takes numbers out of printed lines, in the order of the groups of an expression. */
function figures(lines: readonly string[], words: RegExp): number[] {
  const match = words.exec(lines.join('\n'));
  if (match === null) throw new Error(`No line says ${String(words)}.`);
  return match.slice(1).map(Number);
}

describe(`the example of a steady map against the models on all of its data${skipped}`, () => {
  let lines: readonly string[] = [];
  beforeAll(() => {
    if (!isAbsent) lines = runExample(NAME).lines;
  });

  it.skipIf(isAbsent)(`prints what its comments say${skipped}`, () => {
    const promised = promisedLines(NAME);
    expect(promised.length).toBeGreaterThan(25);
    expect(brokenPromises(promised, lines)).toEqual([]);
  });

  // Boost of road diesels of that size: common practice, no source.
  it.skipIf(isAbsent)(`needs a boost that such an engine has for its air, rising with load${skipped}`, () => {
    const [pressure] = figures(lines, /at most (\S+) kPa at/) as [number];
    expect(pressure).toBeGreaterThan(101.3 + 60);
    expect(pressure).toBeLessThan(101.3 + 130);
    const [fall] = figures(lines, /falls again by (\S+) kPa/) as [number];
    expect(fall / pressure).toBeLessThan(0.01);
  });

  // The whole exhaust is fresh air and fuel, so what is led back shows as air that is missing.
  it.skipIf(isAbsent)(`does not take in the fresh air that its swept volume holds at light load${skipped}`, () => {
    expect(figures(lines, /its air is (\S+) \(\S+ to (\S+)\) %/).every((share) => share > 40 && share < 60)).toBe(true);
  });

  // Heywood 1988, table 12.1, from memory: of the heat of the fuel a road diesel at full load gives 34 to 38 % as work and 22 to 35 % to
  // the exhaust. Part load and air for exhaust widen both.
  it.skipIf(isAbsent)(`parts the heat of the fuel as a handbook does${skipped}`, () => {
    const [brake, exhaust] = figures(lines, /(\S+) \(.*the crankshaft, (\S+) \(/) as [number, number];
    expect(brake).toBeGreaterThanOrEqual(34);
    expect(brake).toBeLessThanOrEqual(38);
    expect(exhaust).toBeGreaterThanOrEqual(22);
    expect(exhaust).toBeLessThanOrEqual(35);
    expect(figures(lines, /left, never less than (\S+) %/)[0]).toBeGreaterThan(10);
  });

  // From the README of the data, found with other software: lowest 211.9 g/(kW·h), the oxygen balance 11 % off in the median.
  it.skipIf(isAbsent)(`comes to what the README of the data tells of fuel and oxygen${skipped}`, () => {
    expect(figures(lines, /\((\S+) g\/\(kW·h\)\)/)).toEqual([211.9]);
    expect(Math.round(figures(lines, /than the flows leave, by (\S+) \(/)[0]!)).toBe(11);
  });

  it.skipIf(isAbsent)(`has a friction line that models give below 3000 rpm and do not give above${skipped}`, () => {
    for (const rpm of [1200, 1600, 2000, 2400, 2800]) {
      const [line, chenFlynn, barnesMoss] = frictionAt(lines, rpm);
      expect(Math.abs(line - chenFlynn)).toBeLessThan(0.5);
      expect(Math.abs(line - barnesMoss)).toBeLessThan(0.5);
    }
    for (const rpm of [3200, 3600, 4000]) {
      const [line, chenFlynn, barnesMoss] = frictionAt(lines, rpm);
      expect(line - Math.max(chenFlynn, barnesMoss)).toBeGreaterThan(0.8);
    }
  });
});

function frictionAt(lines: readonly string[], rpm: number): [number, number, number] {
  const words = new RegExp(`${rpm} rpm: (\\S+) \\(.*Chen-Flynn (\\S+), Barnes-Moss (\\S+)`);
  return figures(lines, words) as [number, number, number];
}

describe('the example of a steady map against the models on points quoted from its data', () => {
  const folder = mkdtempSync(join(tmpdir(), 'steady-map-'));
  const file = join(folder, 'map.csv');
  let lines: readonly string[] = [];
  beforeAll(() => {
    writeFileSync(file, quotedRows);
    lines = runExample(NAME, file).lines;
  });
  afterAll(() => {
    rmSync(folder, { recursive: true });
  });

  it('finds the most boost and the best efficiency of the whole map, whose points these are', () => {
    const extremes = promisedLines(NAME).filter((line) => /at most 196 kPa|between|^ {2}177|at best/.test(line));
    expect(extremes.length).toBeGreaterThanOrEqual(3);
    expect(brokenPromises(extremes, lines)).toEqual([]);
  });

  // Computed with NumPy from the same points, by hand-written formulas: 2 * m / (eta * V * n) * R * T with R 287.042 J/(kg·K).
  it('implies the manifold pressures of other software', () => {
    expect(figures(lines, /at most (\S+) kPa at 2200/)).toEqual([196]);
    expect(figures(lines, /at least (\S+) kPa at 1800/)).toEqual([62]);
  });

  // numpy.polyfit of fuel against mean effective pressure: 1.2799, 2.1333 and 0.9217 bar, 40.23 % along the line from 2 to 8 bar.
  it('draws the friction line where other software does', () => {
    expect(lines.join('\n')).toContain('2400 rpm: 1.28 (2.13, 0.92), 40 %; Chen-Flynn');
  });

  // By hand at 60 bar and 2 * 0.0955 m * 40 / s = 7.64 m/s: 0.137 + 0.3 + 0.162 * 7.64; 0.97 + 0.15 * 2.4 + 0.05 * 2.4².
  it('gives the friction that the two models give by hand', () => {
    expect(frictionAt(lines, 2400)).toEqual([1.28, 1.67, 1.62]);
  });

  // NumPy: medians of m_a / (14.5 m_f) and of 1 + n_O2 / (1.45 n_C); by hand 1.45 * 31.998 / (12.011 + 1.8 * 1.008) g of oxygen.
  it('balances the oxygen as other software does', () => {
    expect(figures(lines, /by the flows of air and fuel: (\S+) /)).toEqual([2.12]);
    expect(figures(lines, / (\S+) \(.*leaner by/)).toEqual([2.2]);
    expect(figures(lines, /CH1.8 needs (\S+):/)).toEqual([3.36]);
  });

  it('passes over speeds with too few points for a line, and verdicts on them', () => {
    const text = lines.join('\n');
    expect(text).not.toContain('3200 rpm:');
    expect(text).not.toContain('from 3200 rpm up');
  });
});

describe('the example of a steady map against the models without its data', () => {
  it('says which file is missing and ends well', () => {
    const { lines, errors, exitCode } = runExample(NAME, 'nowhere/map.csv');
    expect(lines.join('\n')).toContain('there is no nowhere/map.csv');
    expect(errors).toBe('');
    expect(exitCode).toBe(0);
  });
});
