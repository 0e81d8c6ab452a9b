import { readdirSync, readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { CHANNEL_KINDS, onGrid, readPulls, type ChannelRole } from 'coldside/sweep';
import { dayOrder } from '../../docs/examples/demo-data/make-demo-data.js';

const folder = fileURLToPath(new URL('../../docs/examples/demo-data/', import.meta.url));
const day = await readPulls(folder);
const paths = readdirSync(folder)
  .filter((name) => statSync(`${folder}${name}`).isDirectory())
  .flatMap((name) => readdirSync(`${folder}${name}`).map((file) => `${name}/${file}`));

/** The order of the columns in every demo log; one set-up has manifold pressure too. */
const order: readonly ChannelRole[] = [
  'time',
  'clock',
  'engineSpeed',
  'torque',
  'boost',
  'manifoldPressure',
  'chargeTemperature',
  'compressorOutletTemperature',
  'faceTemperature',
  'roomTemperature',
  'barometer',
  'relativeHumidity',
  'lambda',
  'airFlow',
  'oilTemperature',
  'coolantTemperature',
  'fuelPressure',
];

/** SI values by definitions written out again, so that the reader is not checked by its own factors. */
const inSi: Record<string, (value: number) => number> = {
  s: (x) => x,
  rpm: (x) => x / 60,
  '1/min': (x) => x / 60,
  '': (x) => x,
  '-': (x) => x,
  '%': (x) => x / 100,
  'lb-ft': (x) => x * 0.3048 * 4.4482216152605,
  Nm: (x) => x,
  'N m': (x) => x,
  psi: (x) => (x * 4.4482216152605) / 0.0254 ** 2,
  bar: (x) => x * 1e5,
  kPa: (x) => x * 1e3,
  hPa: (x) => x * 100,
  inHg: (x) => x * 25.4 * 133.322387415,
  F: (x) => (x + 459.67) / 1.8,
  '°C': (x) => x + 273.15,
  degC: (x) => x + 273.15,
  'g/s': (x) => x / 1000,
  'lb/min': (x) => (x * 0.45359237) / 60,
};

/** Cells by splitting alone; the demo logs have no quotes. */
function splitLog(path: string): { units: string[]; rows: string[][] } {
  const lines = readFileSync(`${folder}${path}`, 'utf8').replace('\uFEFF', '').trimEnd().split(/\r?\n/);
  const cells = lines.map((line) => line.split(lines[0]!.includes(';') ? ';' : ','));
  if (cells[1]![0] === 's') return { units: cells[1]!, rows: cells.slice(2) };
  return { units: cells[0]!.map((name) => /[([](.*)[)\]]$/.exec(name)?.[1] ?? ''), rows: cells.slice(1) };
}

describe('the demo day', () => {
  it('is read whole, with nothing to ask', () => {
    expect(day.notRead).toEqual([]);
    expect(day.pulls.map(({ file }) => file).sort()).toEqual([...paths].sort());
    expect(day.setups.map(({ name, pulls }) => `${name}: ${pulls.length}`)).toEqual([
      'short inlet hose: 6',
      'stock core: 5',
      'tall core: 6',
      'tall core + duct: 3',
    ]);
    for (const { questions, unused } of day.pulls) expect([questions, unused]).toEqual([[], []]);
  });

  it('is in the order of its clocks', () => {
    expect(day.order.from).toBe('clock');
    expect(day.pulls.map(({ setup }) => setup)).toEqual(dayOrder);
  });

  it.each(paths)('%s has every channel, of its kind, with the values in the file', (path) => {
    const pull = day.pulls.find(({ file }) => file === path)!;
    const { units, rows } = splitLog(path);
    const roles = order.filter((role) => role !== 'manifoldPressure' || path.startsWith('tall core/'));
    expect(Object.keys(pull.channels).sort()).toEqual([...roles].sort());
    roles.forEach((role, at) => {
      const column = pull.channels[role]!;
      expect(column.kind).toBe(CHANNEL_KINDS[role]);
      expect(column.length).toBe(rows.length);
      expect(pull.sources[role]!.column).toBe(at + 1);
      rows.forEach((row, line) => {
        const cell = row[at]!.replace(',', '.');
        if (cell === '') expect(column.si[line]).toBeNaN();
        else {
          const expected = inSi[units[at]!]!(Number(cell));
          expect(Math.abs(column.si[line]! - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
        }
      });
    });
    expect(pull.blankCells).toBe(path.startsWith('short inlet hose/') ? 14 : 0);
    expect(pull.rowsWithoutEngineSpeed).toBe(0);
  });

  it('tells how each set-up was logged', () => {
    const dialect = (name: string) => day.setup(name).pulls[0]!.dialect;
    expect(dialect('stock core')).toMatchObject({ separator: ',', decimal: '.', hasUnitsRow: false });
    expect(dialect('tall core')).toMatchObject({ separator: ';', decimal: ',', hasUnitsRow: false });
    expect(dialect('tall core + duct')).toMatchObject({ separator: ',', decimal: '.', hasUnitsRow: true });
    expect(dialect('short inlet hose')).toMatchObject({ separator: ',', decimal: '.', encoding: 'UTF-8' });
  });

  it('goes on a grid without losing a row, at about the powers its README plants', () => {
    const means = (name: string): number => {
      const pulls = day
        .setup(name)
        .pulls.map((pull) => onGrid(pull, { from: 3500, to: 6500, step: 50, bandwidth: 200 }));
      for (const { backSteps, uncovered, remarks } of pulls)
        expect([backSteps, uncovered, remarks]).toEqual([0, 0, []]);
      const powers = pulls.map(
        ({ channels }) => channels.power!.si.reduce((sum, si) => sum + si, 0) / channels.power!.length,
      );
      return powers.reduce((sum, power) => sum + power, 0) / powers.length / 1000;
    };
    // README of the demo data: 134.88, 138.75, 139.32 and 134.89 kW true; means of a few pulls lie within 1 %.
    expect(means('stock core') / 134.88).toBeCloseTo(1, 2);
    expect(means('tall core') / 138.75).toBeCloseTo(1, 2);
    expect(means('tall core + duct') / 139.32).toBeCloseTo(1, 1);
    expect(means('short inlet hose') / 134.89).toBeCloseTo(1, 2);
  });
});
