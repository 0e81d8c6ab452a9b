import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { brokenPromises, promisedLines, runExample } from '../support/examples.js';

// Each run is a process of its own, slow to start on a busy machine.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

/**
 * Every third second of four full-load pulls of a passenger car: two in frost, two in summer. Marc Weber, Automotive OBD-II Dataset,
 * Karlsruhe Institute of Technology, 2023, DOI 10.35097/1130, CC BY 4.0; cut into pulls and resampled to one row a second.
 */
const quotedRows = `pull,trip,start_s_in_trip,t_s,samples,engine_speed_rpm,manifold_pressure_kPa_abs,air_mass_flow_g_s,intake_air_temp_C,ambient_temp_C,vehicle_speed_km_h,pedal_pct
3,2017-07-05_S_KA_Normal,993.84,3,11,2248.73,226.0,78.2,35.0,29.0,132.73,78.0
3,2017-07-05_S_KA_Normal,993.84,6,11,2406.09,224.55,83.87,34.0,29.0,141.82,78.0
3,2017-07-05_S_KA_Normal,993.84,9,12,2551.33,225.0,89.51,34.0,29.0,151.17,78.0
3,2017-07-05_S_KA_Normal,993.84,12,12,2698.75,226.0,94.89,34.0,29.0,159.67,78.0
3,2017-07-05_S_KA_Normal,993.84,15,12,2836.33,226.0,99.59,35.0,29.0,167.75,78.0
3,2017-07-05_S_KA_Normal,993.84,18,11,2958.0,226.0,103.71,35.0,29.0,175.09,78.0
27,2017-07-28_KA_RT_Stau,3352.73,9,12,2223.58,229.0,77.72,35.0,24.0,131.5,75.37
27,2017-07-28_KA_RT_Stau,3352.73,12,12,2319.83,228.08,81.8,34.0,24.0,137.5,77.5
27,2017-07-28_KA_RT_Stau,3352.73,15,12,2431.5,228.0,84.84,33.0,24.0,144.33,77.3
27,2017-07-28_KA_RT_Stau,3352.73,18,11,2541.64,228.0,89.13,33.0,24.0,150.91,77.3
27,2017-07-28_KA_RT_Stau,3352.73,21,11,2659.18,228.0,93.43,33.0,23.0,157.45,77.71
27,2017-07-28_KA_RT_Stau,3352.73,24,11,2769.0,229.0,97.6,33.0,23.0,164.18,77.78
27,2017-07-28_KA_RT_Stau,3352.73,27,12,2876.5,229.0,100.96,33.0,23.0,170.42,77.6
56,2018-02-26_RT_KA_Normal,2319.76,3,11,2283.73,226.0,80.88,-3.0,-10.0,135.45,77.6
56,2018-02-26_RT_KA_Normal,2319.76,6,12,2415.33,225.0,85.19,-3.0,-10.0,143.5,77.87
56,2018-02-26_RT_KA_Normal,2319.76,9,11,2528.09,227.0,89.06,-4.0,-10.0,150.09,78.0
56,2018-02-26_RT_KA_Normal,2319.76,12,11,2628.09,229.0,93.21,-4.0,-10.0,155.64,78.0
56,2018-02-26_RT_KA_Normal,2319.76,15,11,2720.36,230.0,97.85,-4.0,-10.0,161.36,78.0
56,2018-02-26_RT_KA_Normal,2319.76,18,11,2803.45,230.0,101.07,-4.0,-10.0,166.45,78.0
59,2018-02-26_RT_KA_Normal,2735.48,3,12,2196.58,232.67,78.34,-1.0,-8.0,130.0,77.6
59,2018-02-26_RT_KA_Normal,2735.48,6,14,2343.0,233.57,85.29,-1.0,-8.0,138.86,77.6
59,2018-02-26_RT_KA_Normal,2735.48,9,13,2488.92,233.54,90.37,-2.0,-8.0,147.15,77.6
59,2018-02-26_RT_KA_Normal,2735.48,12,14,2623.0,233.5,95.83,-2.0,-8.0,155.07,77.89
59,2018-02-26_RT_KA_Normal,2735.48,15,14,2746.29,234.0,100.98,-2.0,-8.0,162.71,77.71
59,2018-02-26_RT_KA_Normal,2735.48,18,14,2859.86,233.0,104.33,-2.0,-8.0,169.57,77.86
`;

const whole = fileURLToPath(new URL('../../../shared/data/road-pulls.csv', import.meta.url));
const isAbsent = !existsSync(whole);
const skipped = isAbsent ? ' (skipped: ../shared/data is not here)' : '';

/** The numbers of the first printed line that fits, in their order. */
function figures(lines: readonly string[], words: RegExp): number[] {
  const line = lines.find((each) => words.test(each));
  expect(line, `a line like ${String(words)} in\n${lines.join('\n')}`).toBeDefined();
  return [...line!.replaceAll('−', '-').matchAll(/[-+]?\d+(\.\d+)?/g)].map((match) => Number(match[0]));
}

describe(`the example of road pulls on all of its data${skipped}`, () => {
  it.skipIf(isAbsent)(`prints what its comments say${skipped}`, () => {
    const { lines, errors, exitCode } = runExample('road-pulls');
    expect(errors).toBe('');
    expect(exitCode).toBe(0);
    const promised = promisedLines('road-pulls');
    expect(promised.length).toBeGreaterThan(12);
    expect(brokenPromises(promised, lines)).toEqual([]);
  });

  // The data's README, found with other software: 59 pulls, 4.25 g, 2.0 %; over pressure 1.6 %; 1.48 to 1.62 L; 1 %.
  it.skipIf(isAbsent)(`finds what the README of the data tells of it${skipped}`, () => {
    const { lines } = runExample('road-pulls');
    expect(figures(lines, /^\d+ pulls: .* of air per cycle/)).toEqual([59, 4.25, 2]);
    expect(Math.abs(figures(lines, /^divided by manifold pressure/)[0]! - 1.6)).toBeLessThan(0.11);
    expect(figures(lines, /^[\d.]+ L in weather/)).toEqual([1.48, -4.5, 1.62, 25]);
    expect(Math.abs(figures(lines, /over manifold pressure moves/)[0]!)).toBeLessThan(1.05);
  });
});

describe('the example of road pulls on rows quoted from its data', () => {
  const folder = mkdtempSync(join(tmpdir(), 'road-pulls-'));
  const file = join(folder, 'road-pulls.csv');
  let lines: readonly string[] = [];
  beforeAll(() => {
    writeFileSync(file, quotedRows);
    lines = runExample('road-pulls', file).lines;
  });
  afterAll(() => {
    rmSync(folder, { recursive: true });
  });

  it('averages the air per cycle: 4.26 g, worked out from the rows by hand', () => {
    const rows = quotedRows
      .trim()
      .split('\n')
      .slice(1)
      .map((row) => row.split(',').map(Number));
    const inRange = rows.filter((cells) => cells[5]! >= 2400 && cells[5]! <= 2800);
    const means = [...new Set(inRange.map((cells) => cells[0]!))].map((pull) => {
      const air = inRange.filter((cells) => cells[0] === pull).map((cells) => (cells[7]! * 120) / cells[5]!);
      return air.reduce((sum, value) => sum + value, 0) / air.length;
    });
    const [count, mean] = figures(lines, /^\d+ pulls: .* of air per cycle/) as [number, number];
    expect(count).toBe(4);
    expect(mean).toBeCloseTo(means.reduce((sum, value) => sum + value, 0) / 4, 2);
    expect(mean).toBe(4.26);
  });

  it('asks whether the intake temperature is that of the charge', () => {
    expect(lines.join('\n')).toMatch(
      /"intake_air_temp_C" was read as charge temperature, but .* before the compressor/,
    );
  });

  it('shows that it is not: the swept volume would grow with the weather, air per pressure hardly moves', () => {
    const [cold, , warm] = figures(lines, /^[\d.]+ L in weather/) as [number, number, number];
    expect(warm / cold).toBeGreaterThan(1.08);
    expect(Math.abs(figures(lines, /over manifold pressure moves/)[0]!)).toBeLessThan(2);
    const [temperature] = figures(lines, /^charge temperature: /) as [number];
    const [breathing] = figures(lines, /^volumetric efficiency: /) as [number];
    expect(temperature).toBeGreaterThan(10);
    expect(breathing).toBeLessThan(-8);
  });

  it('compares cold with warm weather, and keeps apart only what was measured', () => {
    const text = lines.join('\n');
    expect(text).toMatch(/2 pulls of warm weather against 2 of cold weather; none refused/);
    expect(text).toMatch(/charge temperature and volumetric efficiency: /);
    const [denser, more] = figures(lines, /^The cold air outside/) as [number, number];
    expect(denser).toBeCloseTo((((29 + 23.5) / 2 + 273.15) / (273.15 - 9)) * 100 - 100, 0);
    expect(more).toBeLessThan(denser / 3);
  });
});

describe('the example of road pulls without its data', () => {
  it('says which file is missing and ends well', () => {
    const { lines, errors, exitCode } = runExample('road-pulls', 'nowhere/road-pulls.csv');
    expect(lines.join('\n')).toContain('there is no nowhere/road-pulls.csv');
    expect(errors).toBe('');
    expect(exitCode).toBe(0);
  });
});
