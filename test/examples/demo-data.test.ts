import { readdirSync, readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { Core, displacement } from '../../docs/examples/demo-data/demo-pull.js';
import { setUps } from '../../docs/examples/demo-data/demo-set-ups.js';
import {
  dayOfPulls,
  dayOrder,
  demoLogs,
  demoSeed,
  leanPull,
  trueMeanHubPower,
} from '../../docs/examples/demo-data/make-demo-data.js';

const folder = fileURLToPath(new URL('../../docs/examples/demo-data/', import.meta.url));
const readme = readFileSync(`${folder}README.md`, 'utf8');
const zeroCelsius = 273.15;

interface Log {
  path: string;
  header: string[];
  units: string[];
  cells: string[][];
  /** Channel in SI by the unit written in the file, found by the words of its header. */
  column(words: RegExp): number[];
}

const toSi: Record<string, (value: number) => number> = {
  s: (x) => x,
  rpm: (x) => x,
  '1/min': (x) => x,
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
  '°C': (x) => x + zeroCelsius,
  degC: (x) => x + zeroCelsius,
  'g/s': (x) => x / 1000,
  'lb/min': (x) => (x * 0.45359237) / 60,
};

function read(path: string): Log {
  const lines = readFileSync(`${folder}${path}`, 'utf8').replace('\uFEFF', '').split(/\r?\n/).slice(0, -1);
  const separator = lines[0]!.includes(';') ? ';' : ',';
  const rows = lines.map((line) => line.split(separator));
  const ownRow = rows[1]!.every((cell) => cell in toSi);
  const parts = rows[0]!.map((cell) => /^(.*?)(?: [([](.+)[)\]])?$/.exec(cell)!);
  const units = ownRow ? rows[1]! : parts.map((part) => part[2] ?? '');
  const header = parts.map((part) => part[1]!);
  const cells = rows.slice(ownRow ? 2 : 1);
  const column = (words: RegExp): number[] => {
    const at = header.findIndex((word) => words.test(word));
    if (at < 0) throw new Error(`${path} has no column ${String(words)}`);
    return cells.map((row) => (row[at] === '' ? NaN : toSi[units[at]!]!(Number(row[at]!.replace(',', '.')))));
  };
  return { path, header, units, cells, column };
}

const channels = {
  time: /^Time$/,
  clock: /^Clock$/,
  engineSpeed: /^(Engine speed|RPM)$/,
  torque: /torque/i,
  boost: /^Boost$/,
  charge: /^(IAT|Charge temp(erature)?)$/,
  compressed: /^Compressor outlet/,
  face: /^Core face/,
  room: /^Room/,
  barometer: /^Barometer$/,
  humidity: /humidity/i,
  lambda: /^Lambda$/,
  airFlow: /^Air mass flow$/,
  oil: /^Oil/,
  coolant: /^Coolant/,
  fuelPressure: /^Fuel pressure$/,
};

const paths = readdirSync(folder)
  .filter((name) => statSync(`${folder}${name}`).isDirectory())
  .flatMap((name) => readdirSync(`${folder}${name}`).map((file) => `${name}/${file}`));
const leanPath = `${leanPull.setUp}/pull ${leanPull.number}.csv`;

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Values of a channel between two engine speeds, blanks left out. */
function between(log: Log, words: RegExp, from: number, to: number): number[] {
  const engineSpeed = log.column(channels.engineSpeed);
  return log
    .column(words)
    .filter((value, at) => !Number.isNaN(value) && engineSpeed[at]! >= from && engineSpeed[at]! <= to);
}

function meanPower(log: Log): number {
  const torque = between(log, channels.torque, 3500, 6500);
  const engineSpeed = between(log, channels.engineSpeed, 3500, 6500);
  return mean(torque.map((value, at) => (value * engineSpeed[at]! * Math.PI) / 30));
}

/** Two-sided 95 % Student factor: with t = sqrt(nu) tan(angle) the density is cos(angle)^(nu - 1). */
function studentFactor(nu: number): number {
  const steps = 200_000;
  const density = Array.from({ length: steps }, (_, at) => Math.cos(((at + 0.5) * Math.PI) / 2 / steps) ** (nu - 1));
  const half = density.reduce((sum, value) => sum + value, 0);
  let sum = 0;
  const at = density.findIndex((value) => (sum += value) >= 0.95 * half);
  return Math.sqrt(nu) * Math.tan(((at + 1) * Math.PI) / 2 / steps);
}

function welchInterval(
  before: readonly number[],
  after: readonly number[],
): { low: number; middle: number; high: number } {
  const [a, b] = [before, after].map((side) => {
    const middle = mean(side);
    const freedom = side.length - 1;
    const variance = side.reduce((sum, value) => sum + (value - middle) ** 2, 0) / freedom / side.length;
    return { middle, freedom, variance };
  }) as [{ middle: number; freedom: number; variance: number }, { middle: number; freedom: number; variance: number }];
  const variance = a.variance + b.variance;
  const nu = variance ** 2 / (a.variance ** 2 / a.freedom + b.variance ** 2 / b.freedom);
  const half = studentFactor(nu) * Math.sqrt(variance);
  const middle = b.middle - a.middle;
  return { low: middle - half, middle, high: middle + half };
}

const kilowatts = (watts: number): string => `${watts < 0 ? '−' : '+'}${Math.abs(watts / 1000).toFixed(2)}`;

describe('the demo logs', () => {
  it('are what the seeded generator writes, byte for byte, and nothing else', () => {
    const made = demoLogs();
    expect([...made.keys()].sort()).toEqual([...paths].sort());
    for (const [path, text] of made)
      expect(readFileSync(`${folder}${path}`).equals(Buffer.from(text)), path).toBe(true);
  });

  it('come out otherwise from another seed', () => {
    expect(demoLogs(demoSeed + 1).get('stock core/pull 1.csv')).not.toBe(demoLogs().get('stock core/pull 1.csv'));
  });

  it.each(paths)('%s has equal rows, plain numbers, and every channel in a unit', (path) => {
    const log = read(path);
    expect(log.cells.length).toBeGreaterThan(210);
    expect(log.cells.length).toBeLessThan(290);
    expect(new Set(log.cells.map((row) => row.length))).toEqual(new Set([log.header.length]));
    for (const unit of log.units) expect(Object.keys(toSi)).toContain(unit);
    for (const row of log.cells) for (const cell of row) expect(cell).toMatch(/^(-?\d+([.,]\d+)?)?$/);
    for (const words of Object.values(channels)) expect(log.column(words)).toHaveLength(log.cells.length);
  });

  it('are logged in four habits', () => {
    const first = (name: string): string => readFileSync(`${folder}${name}/pull 1.csv`, 'utf8');
    expect(first('stock core')).toMatch(/^Time \(s\),.*Torque \(lb-ft\),Boost \(psi\),IAT \(F\)/);
    expect(first('tall core')).toMatch(/^Time \[s\];.*\n0,00;/);
    expect(first('tall core + duct')).toMatch(/^Time,Clock,[^\n]*\ns,s,rpm,N m,kPa,degC/);
    expect(first('short inlet hose')).toMatch(/^\uFEFFTime \(s\),[^\n]*\r\n/);
    const blanks = paths.map((path) => [
      path.split('/')[0],
      read(path)
        .cells.flat()
        .filter((cell) => cell === '').length,
    ]);
    for (const [name, count] of blanks) expect(count).toBe(name === 'short inlet hose' ? 14 : 0);
  });

  it('tell the order of the day by their clocks, stock core first and last', () => {
    const byClock = paths
      .map((path) => ({ name: path.split('/')[0]!, clock: read(path).column(channels.clock)[0]! }))
      .sort((a, b) => a.clock - b.clock);
    expect(byClock.map(({ name }) => name)).toEqual(dayOrder);
    expect([byClock[0]!.name, byClock.at(-1)!.name]).toEqual(['stock core', 'stock core']);
    for (const [at, { clock }] of byClock.entries())
      if (at > 0) expect(clock - byClock[at - 1]!.clock).toBeGreaterThan(900);
  });

  it('come from a room that drifts by a few hPa and degrees', () => {
    const rooms = dayOfPulls(demoSeed).map(({ room }) => room);
    const span = (values: number[]): number => Math.max(...values) - Math.min(...values);
    expect(span(rooms.map(({ barometer }) => barometer))).toBeGreaterThan(200);
    expect(span(rooms.map(({ barometer }) => barometer))).toBeLessThan(600);
    expect(span(rooms.map(({ temperature }) => temperature))).toBeGreaterThan(2);
    expect(span(rooms.map(({ humidity }) => humidity))).toBeGreaterThan(0.05);
  });
});

describe('the invented engine', () => {
  // Ranges of a port-injected turbo engine on pump fuel: common practice, no source.
  it.each(paths)('stays a plausible engine in %s', (path) => {
    const log = read(path);
    const speeds = log.column(channels.engineSpeed);
    expect(speeds.every((speed, at) => at === 0 || speed > speeds[at - 1]!)).toBe(true);
    expect(speeds[0]).toBeLessThan(2510);
    expect(speeds.at(-1)).toBeGreaterThan(6650);
    const bmep = between(log, channels.torque, 3500, 6500).map((torque) => (4 * Math.PI * torque) / displacement);
    expect(Math.min(...bmep)).toBeGreaterThan(1500e3);
    expect(Math.max(...bmep)).toBeLessThan(2000e3);
    const at6000 = (mean(between(log, channels.torque, 5900, 6100)) * 6000 * Math.PI) / 30;
    expect(at6000).toBeGreaterThan(150e3);
    expect(at6000).toBeLessThan(168e3);
    const boost = between(log, channels.boost, 3500, 6500);
    expect(mean(boost) / 1e5).toBeGreaterThan(1.05);
    expect(mean(boost) / 1e5).toBeLessThan(1.15);
    const barometer = mean(log.column(channels.barometer));
    const manifold = barometer + mean(boost);
    const pressureRatio = manifold / barometer;
    expect(pressureRatio).toBeGreaterThan(2.1);
    expect(pressureRatio).toBeLessThan(2.3);
    // Taken from manifold pressure, so the core's loss makes the compressor look a few points worse than its 0.70.
    const room = mean(log.column(channels.room));
    const efficiency =
      (room * (pressureRatio ** 0.286 - 1)) / (mean(between(log, channels.compressed, 3500, 6500)) - room);
    expect(efficiency).toBeGreaterThan(0.6);
    expect(efficiency).toBeLessThan(0.72);
    const power = meanPower(log);
    const flow = mean(between(log, channels.airFlow, 3500, 6500));
    const specificFuel = ((flow / (mean(between(log, channels.lambda, 3500, 6500)) * 14.6)) * 3.6e9) / power;
    expect(specificFuel).toBeGreaterThan(300);
    expect(specificFuel).toBeLessThan(365);
  });

  it.each(paths)('cools its charge in the core, not below the air at the face nor its dew point, in %s', (path) => {
    const log = read(path);
    const [charge, compressed, face] = [channels.charge, channels.compressed, channels.face].map((words) =>
      log.column(words),
    );
    charge!.forEach((temperature, at) => {
      if (Number.isNaN(temperature) || Number.isNaN(face![at]!)) return;
      expect(temperature).toBeLessThan(compressed![at]!);
      expect(temperature).toBeGreaterThan(face![at]!);
    });
    const [room, barometer] = [mean(log.column(channels.room)), mean(log.column(channels.barometer))];
    // Saturation pressure of water, Magnus form (Sonntag 1990, from memory).
    const saturation = (kelvin: number): number => 611.2 * Math.exp((17.62 * (kelvin - 273.15)) / (kelvin - 30.03));
    const vapour = mean(log.column(channels.humidity)) * saturation(room);
    const inCore = (vapour * (barometer + mean(log.column(channels.boost)))) / barometer;
    const coldest = Math.min(...charge!.filter((temperature) => !Number.isNaN(temperature)));
    expect(inCore).toBeLessThan(saturation(coldest));
  });

  it('warms charge, oil and coolant through a pull', () => {
    for (const path of paths) {
      const log = read(path);
      for (const words of [channels.charge, channels.oil, channels.coolant]) {
        expect(mean(between(log, words, 6000, 6700))).toBeGreaterThan(mean(between(log, words, 2500, 3200)));
      }
    }
  });

  it('has a core that settles at the cross-flow effectiveness with both streams unmixed', () => {
    // 2 transfer units, capacity ratio 0.5: 0.732409 from the exact series (Mason 1955, form from memory); Kays & London chart it.
    const capacity = 0.16 * 1007;
    const core = {
      chargeSide: 4 * capacity,
      airSide: (4 * capacity) / (0.32 / 0.55) ** 0.6,
      metalMass: 3,
      pressureLoss: 0,
    };
    const wall = new Core({ ...setUps[0]!, core, cooling: { flow: 0.32, warming: 0, recirculation: 0 } }, 300);
    let out = 0;
    for (let step = 0; step < 20_000; step++) out = wall.pass(400, 300, 0.16, 0.01);
    // Sixteen pieces of wall come 0.009 short of a continuous one; parallel flow would give 0.633, counterflow 0.775.
    expect(Math.abs((400 - out) / 100 - 0.732409)).toBeLessThan(0.01);
    expect(wall.leavingAir).toBeCloseTo(300 + (400 - out) / 2, 6);
  });
});

describe('the planted truth', () => {
  const powers = (name: string): number[] =>
    paths.filter((path) => path.startsWith(`${name}/`) && path !== leanPath).map((path) => meanPower(read(path)));
  const truth = (name: string): number => trueMeanHubPower(setUps.find((setUp) => setUp.folder === name)!);
  const recovered = (before: string, after: string) => ({
    ...welchInterval(powers(before), powers(after)),
    truth: truth(after) - truth(before),
  });

  it('is judged with the Student factor of JCGM 100:2008 table G.2', () => {
    expect(studentFactor(4)).toBeCloseTo(2.78, 2);
    expect(studentFactor(9)).toBeCloseTo(2.26, 2);
  });

  it('is recovered: the tall core is worth about 3 %, resolved', () => {
    const { low, high, truth: gain } = recovered('stock core', 'tall core');
    expect(gain / truth('stock core')).toBeCloseTo(0.029, 3);
    expect(low).toBeGreaterThan(0);
    expect(low).toBeLessThan(gain);
    expect(high).toBeGreaterThan(gain);
  });

  it('is recovered: the duct is worth about 0.4 %, which three pulls cannot resolve', () => {
    const { low, high, truth: gain } = recovered('tall core', 'tall core + duct');
    expect(gain / truth('tall core')).toBeCloseTo(0.004, 3);
    expect(low).toBeLessThan(0);
    expect(high).toBeGreaterThan(2500);
    expect(high).toBeGreaterThan(gain);
  });

  it('is recovered: the short inlet hose changes nothing worth having', () => {
    const { low, high, truth: gain } = recovered('stock core', 'short inlet hose');
    expect(Math.abs(gain) / truth('stock core')).toBeLessThan(0.001);
    expect(low).toBeGreaterThan(-2000);
    expect(low).toBeLessThan(gain);
    expect(high).toBeGreaterThan(gain);
    expect(high).toBeLessThan(2000);
  });

  it('includes one lean pull, whose cause shows in the fuel pressure and hardly in the power', () => {
    const railAboveBoost = (log: Log, from: number, to: number): number =>
      mean(between(log, channels.fuelPressure, from, to)) - mean(between(log, channels.boost, from, to));
    for (const path of paths) {
      const log = read(path);
      const lean = path === leanPath;
      expect(Math.abs(mean(between(log, channels.lambda, 3500, 4400)) - 0.82)).toBeLessThan(0.015);
      expect(mean(between(log, channels.lambda, 6000, 6500)) > 0.9, path).toBe(lean);
      expect(railAboveBoost(log, 3500, 4400)).toBeGreaterThan(295e3);
      expect(railAboveBoost(log, 6000, 6500) < 240e3, path).toBe(lean);
      if (!lean)
        for (const lambda of between(log, channels.lambda, 3500, 6500))
          expect(Math.abs(lambda - 0.82)).toBeLessThan(0.03);
    }
    expect(meanPower(read(leanPath)) / mean(powers('tall core'))).toBeGreaterThan(0.985);
  });

  it('is what the README says', () => {
    for (const { folder: name } of setUps) expect(readme).toContain(`${(truth(name) / 1000).toFixed(2)} kW`);
    for (const [before, after] of [
      ['stock core', 'tall core'],
      ['tall core', 'tall core + duct'],
      ['stock core', 'short inlet hose'],
    ] as const) {
      const { truth: gain, middle, low, high } = recovered(before, after);
      const row = [kilowatts(gain), kilowatts(middle), `${kilowatts(low)} … ${kilowatts(high)}`];
      const line = readme.split('\n').find((text) => text.includes(`${after} − ${before}`))!;
      for (const figure of row) expect(line).toContain(`${figure} kW`);
    }
    const againstStock = (name: string): string => {
      const gain = truth(name) - truth('stock core');
      return `${kilowatts(gain)} kW (+${((100 * gain) / truth('stock core')).toFixed(2)} %)`;
    };
    for (const name of ['tall core', 'tall core + duct', 'short inlet hose'])
      expect(readme).toContain(againstStock(name));
  });
});
