import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { brokenPromises, promisedLines, runExample } from '../support/examples.js';

// Each run is a process of its own, slow to start on a busy machine.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

/**
 * Nine of the 1258 points of a steady-state map of a 1.9 L turbocharged diesel: those with the most power, torque and mean effective
 * pressure, the lowest consumption, the richest and leanest mixture, and three that the example must leave out. Measured by Oak Ridge
 * National Laboratory (S. Sluder, R. Wagner), distributed by the US National Renewable Energy Laboratory, copyright 2002-2011 Alliance for
 * Sustainable Energy, LLC. The licence that lies beside the map must be included in all copies or substantial portions of it; nine
 * points quoted as figures are none.
 */
const quotedRows = `speed_rpm,torque_Nm,fuel_g_s,exhaust_flow_g_s,exhaust_vol_flow_m3_s,exhaust_temp_C,exhaust_o2_g_s,attainable
1100,142.35,1.18,23.49,0.046,435.1,1.41,1
1900,216.92,2.54,58.09,0.117,442.54,5.049,1
2400,0.0,0.63,28.01,0.041,238.62,4.37,1
2400,203.36,3.19,72.55,0.156,497.36,6.24,1
2400,210.14,3.23,72.53,0.158,504.29,6.102,0
3300,20.34,1.2,71.58,0.118,293.96,12.517,1
3900,162.69,4.67,104.12,0.279,691.08,8.731,1
4100,142.35,4.42,105.36,0.246,563.84,10.084,1
4100,196.58,4.87,104.86,0.284,704.95,8.164,0
`;

const whole = fileURLToPath(new URL('../../../shared/data/steady-map-1.9l-diesel.csv', import.meta.url));
const isAbsent = !existsSync(whole);
const skipped = isAbsent ? ' (skipped: ../shared/data is not here)' : '';

describe(`the example of a steady map on all of its data${skipped}`, () => {
  it.skipIf(isAbsent)(`prints what its comments say${skipped}`, () => {
    const { lines, errors, exitCode } = runExample('steady-map');
    expect(errors).toBe('');
    expect(exitCode).toBe(0);
    const promised = promisedLines('steady-map');
    expect(promised.length).toBeGreaterThan(8);
    expect(brokenPromises(promised, lines)).toEqual([]);
  });

  // Found with other software. Its most power (67.3 kW at 3982 rpm), torque (217.3 N·m at 1892 rpm) and mean effective pressure (14.40 bar)
  // lie on the full-load line, between the points of the grid, so the grid comes close from below.
  it.skipIf(isAbsent)(`comes to what the README of the data tells of it${skipped}`, () => {
    const text = runExample('steady-map').lines.join('\n');
    const figure = (words: RegExp): number => Number(words.exec(text)?.[1]);
    expect(figure(/Most power: (\S+) kW/) / 67.3).toBeGreaterThan(0.985);
    expect(figure(/Most power: (\S+) kW/) / 67.3).toBeLessThan(1);
    expect(figure(/Most torque: .* (\S+) N·m/) / 217.3).toBeGreaterThan(0.997);
    expect(figure(/Most torque: .* (\S+) N·m/) / 217.3).toBeLessThan(1);
    expect(figure(/effective pressure: (\S+) bar/) / 14.4).toBeGreaterThan(0.997);
    expect(figure(/effective pressure: (\S+) bar/) / 14.4).toBeLessThan(1);
    expect(figure(/Lowest consumption: (\S+) g/)).toBe(211.9);
    expect(text).toContain('agree: 101.8 (99.7 to 103.2) kPa,');
  });
});

describe('the example of a steady map on points quoted from its data', () => {
  const folder = mkdtempSync(join(tmpdir(), 'steady-map-'));
  const file = join(folder, 'map.csv');
  let lines: readonly string[] = [];
  beforeAll(() => {
    writeFileSync(file, quotedRows);
    lines = runExample('steady-map', file).lines;
  });
  afterAll(() => {
    rmSync(folder, { recursive: true });
  });

  it('leaves out what the engine does not attain or hardly loads: six points of nine remain', () => {
    expect(lines[0]).toBe('6 points above 20 N·m that the engine attains, 1.896 L');
  });

  it('finds the extremes of the whole map, whose points these are', () => {
    const extremes = promisedLines('steady-map').filter((line) => /^(Most|Highest|Lowest)/.test(line));
    expect(extremes).toHaveLength(4);
    expect(brokenPromises(extremes, lines)).toEqual([]);
  });

  // From the README of the data, found with other software: 51.11 kW, 13.48 bar, 224.7 g/(kW·h), air 69.36 g/s, air-fuel ratio 21.74.
  it('works out 2400 rpm and 203.36 N·m as the README of the data does', () => {
    const text = lines.join('\n');
    expect(text).toContain('At 2400 rpm and 203.36 N·m: 51.11 kW, 13.48 bar,');
    expect(text).toContain('air 69.36 g/s, air-fuel ratio 21.74, worked out:');
    expect(text).toContain('Answer: bsfc = 224.7 g/kWh');
  });

  it('closes on the air around, within the rounding of the volume flow to 1 L/s', () => {
    const [, middle] = /agree: (\S+) \(/.exec(lines.join('\n')) as unknown as [string, string];
    expect(Math.abs(Number(middle) - 101.8)).toBeLessThan(2);
  });
});

describe('the example of a steady map without its data', () => {
  it('says which file is missing and ends well', () => {
    const { lines, errors, exitCode } = runExample('steady-map', 'nowhere/map.csv');
    expect(lines.join('\n')).toContain('there is no nowhere/map.csv');
    expect(errors).toBe('');
    expect(exitCode).toBe(0);
  });
});
