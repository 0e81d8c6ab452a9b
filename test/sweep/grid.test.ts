import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rotationalSpeed } from 'coldside/units';
import { commonRange, onGrid, readLog, type Pull } from 'coldside/sweep';
import { rampOf } from '../../src/sweep/ramp.js';
import { seeded } from '../support/random.js';

function pullOf(
  speeds: readonly (number | '')[],
  columns: Record<string, (speed: number, at: number) => number | ''>,
): Pull {
  const names = Object.keys(columns);
  const rows = speeds.map((speed, at) => [speed, ...names.map((name) => columns[name]!(Number(speed), at))].join(','));
  return readLog(`${['RPM', ...names].join(',')}\n${rows.join('\n')}\n`, { file: 'pull 1.csv' })[0]!;
}

const ramp = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, at) => from + ((to - from) * at) / (count - 1));
const line = { 'Torque (Nm)': (speed: number) => 100 + speed / 50 };

describe('a pull on a grid', () => {
  it('is the straight line between rows where no bandwidth is given', () => {
    const grid = onGrid(pullOf([2500, 2600, 2700], { 'Torque (Nm)': (_, at) => [150, 160, 150][at]! }), {
      from: 2500,
      to: 2700,
      step: 50,
    });
    expect([...grid.engineSpeed.in('rpm')]).toEqual([2500, 2550, 2600, 2650, 2700]);
    [150, 155, 160, 155, 150].forEach((torque, at) => expect(grid.channels.torque!.si[at]).toBeCloseTo(torque, 9));
    expect(grid.channels.torque!.kind).toBe('torque');
    expect(grid.direction).toBe('up');
  });

  it.each([0, 30, 200, 2000])(
    'leaves a straight line as it is, to its very ends, averaged over %d rpm',
    (bandwidth) => {
      fc.assert(
        fc.property(
          fc.array(fc.integer({ min: 0, max: 4000 }), { minLength: 30, maxLength: 80 }),
          fc.boolean(),
          (offsets, isDown) => {
            const speeds = [...new Set([0, 4000, ...offsets])]
              .sort((a, b) => (isDown ? b - a : a - b))
              .map((each) => 2500 + each);
            const grid = onGrid(pullOf(speeds, line), { from: 2500, to: 6500, step: 125, bandwidth, maximumGap: 4000 });
            grid.engineSpeed
              .in('rpm')
              .forEach((speed, at) => expect(grid.channels.torque!.si[at]).toBeCloseTo(100 + speed / 50, 6));
            expect(grid.direction).toBe(isDown ? 'down' : 'up');
            expect(grid.backSteps).toBe(0);
          },
        ),
        { numRuns: 30 },
      );
    },
  );

  it('averages noise over the rows of its window: the scatter falls with the root of their number', () => {
    const random = seeded(7);
    const noise = Array.from({ length: 4001 }, () => random() - 0.5);
    const pull = pullOf(ramp(2000, 6000, 4001), { 'Torque (Nm)': (_, at) => 200 + noise[at]! });
    const scatter = (bandwidth: number): number => {
      const { si } = onGrid(pull, { from: 2500, to: 5500, step: 10, bandwidth }).channels.torque!;
      return Math.sqrt(si.reduce((sum, value) => sum + (value - 200) ** 2, 0) / si.length);
    };
    const single = Math.sqrt(1 / 12);
    expect(scatter(0) / single).toBeCloseTo(1, 1);
    expect(scatter(100) / (single / Math.sqrt(101))).toBeGreaterThan(0.75);
    expect(scatter(100) / (single / Math.sqrt(101))).toBeLessThan(1.25);
  });

  it('passes a ripple on as a window of that width must: a sine of period p keeps sin(x)/x of its height, x = pi w/p', () => {
    // Transfer function of a running mean, in any text on signals (from memory): at w = p/2 it is 2/pi.
    const pull = pullOf(ramp(2000, 6000, 8001), {
      'Torque (Nm)': (speed) => 200 + 10 * Math.sin((2 * Math.PI * speed) / 400),
    });
    const { si } = onGrid(pull, { from: 3000, to: 5000, step: 1, bandwidth: 200 }).channels.torque!;
    expect((Math.max(...si) - 200) / 10).toBeCloseTo(2 / Math.PI, 2);
  });

  it('is missing where the pull does not reach, never extrapolated', () => {
    const grid = onGrid(pullOf(ramp(3000, 6000, 61), line), { from: 2500, to: 6500, step: 250, bandwidth: 400 });
    const reached = [...grid.engineSpeed.in('rpm')].filter((_, at) => !Number.isNaN(grid.channels.torque!.si[at]));
    expect([Math.min(...reached), Math.max(...reached)]).toEqual([3000, 6000]);
    expect(grid.uncovered).toBe(4);
    expect(grid.channels.torque!.missing).toBe(4);
    expect(grid.covered.map((speed) => speed.in('rpm'))).toEqual([3000, 6000]);
  });

  it('bridges blank cells of one channel, but not wide gaps', () => {
    const pull = pullOf(ramp(3000, 4000, 41), {
      ...line,
      Lambda: (speed) => (speed > 3300 && speed < 3400 ? '' : 0.82),
      'IAT (C)': (speed) => (speed > 3200 && speed < 3700 ? '' : 30),
    });
    const grid = onGrid(pull, { from: 3000, to: 4000, step: 50, bandwidth: 100 });
    expect(grid.channels.lambda!.missing).toBe(0);
    expect(grid.channels.torque!.missing).toBe(0);
    expect(grid.channels.chargeTemperature!.missing).toBe(9);
    expect(onGrid(pull, { from: 3000, to: 4000, step: 50, maximumGap: 600 }).channels.chargeTemperature!.missing).toBe(
      0,
    );
  });

  it('leaves out rows where speed steps back, and counts them', () => {
    const speeds = [2500, 2600, 2590, 2700, 2690, 2695, 2800];
    const grid = onGrid(pullOf(speeds, { 'Torque (Nm)': (_, at) => at }), { from: 2500, to: 2800, step: 100 });
    expect(grid.backSteps).toBe(2);
    expect(grid.rowsUsed).toBe(5);
    expect(String(grid)).toContain('2 back-steps left out');
  });

  it('loses one row to one false speed, not the rest of the pull', () => {
    const speeds = ramp(2500, 6500, 81).map((speed, at) => (at === 10 ? 19000 : speed));
    const grid = onGrid(pullOf(speeds, line), { from: 2500, to: 6500, step: 100, bandwidth: 100 });
    expect(grid.backSteps).toBe(1);
    expect(grid.uncovered).toBe(0);
  });

  it('counts rows without engine speed', () => {
    const grid = onGrid(pullOf([2500, '', 2600, 2700], { 'Torque (Nm)': () => 150 }), {
      from: 2500,
      to: 2700,
      step: 100,
    });
    expect(grid.rowsWithoutEngineSpeed).toBe(1);
    expect(grid.rowsUsed).toBe(3);
  });

  it('takes the pull, not the coasting back after it, and says so', () => {
    const speeds = [...ramp(2500, 6500, 100), ...ramp(6490, 2500, 150)];
    const pull = pullOf(speeds, { 'Torque (Nm)': (_, at) => (at < 100 ? 200 : -30) });
    const grid = onGrid(pull, { from: 3000, to: 6000, step: 100 });
    expect(grid.direction).toBe('up');
    expect(Math.min(...grid.channels.torque!.si)).toBe(200);
    expect(grid.remarks.join(' ')).toContain(
      "the log also goes down for 151 rows, which are not used. For those, give ramp: 'down'.",
    );
    expect(grid.remarks.join(' ')).toContain('is this one pull?');
    expect(Math.max(...onGrid(pull, { from: 3000, to: 6000, step: 100, ramp: 'down' }).channels.torque!.si)).toBe(-30);
  });

  it('has power from torque and engine speed where it was not logged, and says so', () => {
    const derived = onGrid(pullOf(ramp(2500, 6500, 41), { 'Torque (Nm)': () => 250 }), {
      from: 3000,
      to: 6000,
      step: 3000,
    });
    // P = 2 pi n T (ISO 80000-3 and -4): 250 N·m at 3000/min is 78.54 kW.
    expect(derived.channels.power!.in('kW')[0]).toBeCloseTo(78.5398, 4);
    expect(derived.powerFrom).toBe('torque and engine speed');
    expect(String(derived)).toContain('power from torque and engine speed');
    const logged = onGrid(pullOf(ramp(2500, 6500, 41), { 'Torque (Nm)': () => 250, 'Power (kW)': () => 90 }), {
      from: 3000,
      to: 6000,
      step: 3000,
    });
    expect(logged.channels.power!.in('kW')[0]).toBeCloseTo(90, 9);
    expect(logged.powerFrom).toBe('logged');
    expect(
      onGrid(pullOf([2500, 2600], { Lambda: () => 1 }), { from: 2500, to: 2600, step: 50 }).powerFrom,
    ).toBeUndefined();
  });

  it('takes engine speeds as quantities too, and refuses an impossible grid', () => {
    const pull = pullOf(ramp(2500, 6500, 41), line);
    const speed = (rpm: number) => rotationalSpeed(rpm, 'rpm');
    const grid = onGrid(pull, {
      from: speed(3000),
      to: speed(4000),
      step: rotationalSpeed(100 / 60, '1/s'),
      bandwidth: speed(100),
    });
    expect(grid.engineSpeed.length).toBe(11);
    expect(grid.bandwidth.in('rpm')).toBeCloseTo(100, 9);
    const typical = { from: 3000, to: 4000, step: 100 };
    expect(() => onGrid(pull, { ...typical, to: 3000 })).toThrow(
      /onGrid: to must be above from, 3000 rpm, got 3000 rpm/,
    );
    expect(() => onGrid(pull, { ...typical, step: 0 })).toThrow(/step must be above zero/);
    expect(() => onGrid(pull, { ...typical, step: 0.001 })).toThrow(/at most 20000 speeds/);
    expect(() => onGrid(pull, { ...typical, bandwidth: -1 })).toThrow(/bandwidth must be an engine speed/);
    expect(() => onGrid(pull, { ...typical, from: NaN })).toThrow(/from must be an engine speed/);
  });

  it('works on a pull that came through structuredClone', () => {
    const pull = pullOf(ramp(2500, 6500, 41), line);
    const options = { from: 3000, to: 6000, step: 500, bandwidth: 200 };
    expect(onGrid(structuredClone(pull), options).channels.power!.si).toEqual(onGrid(pull, options).channels.power!.si);
  });
});

describe('the range pulls have in common', () => {
  it('runs from the latest start to the earliest end, and may be brought to round numbers', () => {
    const pulls = [pullOf(ramp(2503, 6500, 41), line), pullOf(ramp(2400, 6480, 41), line)];
    expect(commonRange(pulls).map((speed) => speed.in('rpm'))).toEqual([2503, 6480]);
    expect(commonRange(pulls, 100).map((speed) => speed.in('rpm'))).toEqual([2600, 6400]);
    expect(commonRange(pulls, rotationalSpeed(10, 'rpm')).map((speed) => Math.round(speed.in('rpm')))).toEqual([
      2510, 6480,
    ]);
  });

  it('is an error where there is none, naming the pulls', () => {
    expect(() => commonRange([])).toThrow(/at least one pull/);
    expect(() => commonRange([pullOf([2500, 3000], line), pullOf([3500, 4000], line)])).toThrow(
      /share a range of engine speed, got pull 1\.csv beginning at 3500 rpm and pull 1\.csv ending at 3000 rpm/,
    );
  });
});

describe('the ramp of a pull', () => {
  it('is the longest run of rows that never steps back, for any speeds', () => {
    const longest = (speeds: readonly number[]): number => {
      const best = speeds.map(() => 1);
      speeds.forEach((speed, at) => {
        for (let before = 0; before < at; before++)
          if (speeds[before]! <= speed) best[at] = Math.max(best[at]!, best[before]! + 1);
      });
      return Math.max(0, ...best);
    };
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 30 }), { maxLength: 60 }), (speeds) => {
        const { rows, backSteps } = rampOf(Float64Array.from(speeds), 'up');
        expect(rows.length).toBe(longest(speeds));
        expect(backSteps).toBe(speeds.length - rows.length);
        rows.forEach((row, at) => {
          if (at === 0) return;
          expect(row).toBeGreaterThan(rows[at - 1]!);
          expect(speeds[row]!).toBeGreaterThanOrEqual(speeds[rows[at - 1]!]!);
        });
        const down = rampOf(
          Float64Array.from(speeds, (speed) => -speed),
          'down',
        );
        expect([...down.rows].reverse()).toEqual([...rows]);
      }),
    );
  });
});
