import { describe, expect, it } from 'vitest';
import { compare, type CompareOptions, type Comparison } from '../../src/comparison/index.js';
import { prepare, readPullsFrom, setUpOf } from '../../src/sweep/index.js';
import { CalculationError, momentOfInertia, time } from '../../src/units/index.js';
import { seeded } from '../support/random.js';
import { alternating, dayOf, pullLog, scattered } from '../support/pulls.js';

const [a, b] = alternating(scattered(4, 240, 0.5, 1), scattered(4, 244, 0.5, 2));
const range: CompareOptions = { engineSpeed: [3500, 6000] };
const day = dayOf({ 'stock core': a, 'tall core': b });

function comparison(options: CompareOptions, one = day): Comparison {
  return compare(one.setup('stock core'), one.setup('tall core'), { ...range, ...options });
}

/** The same day with false readings of torque in two pulls of the candidate: 0 for single rows, as a loose plug gives. */
const glitched = readPullsFrom(
  Object.entries({ 'stock core': a, 'tall core': b }).flatMap(([setup, shapes]) =>
    shapes.map((shape, i) => {
      const random = seeded(i + 1);
      const lines = pullLog(shape).split('\n');
      const data = lines.map((line, row) => {
        if (row === 0) return line;
        const cells = line.split(',');
        const noisy = Number(cells[2]) + 0.4 * (random() - 0.5);
        const isFalse = setup === 'tall core' && i < 2 && row % 40 === 20;
        return cells.with(2, isFalse ? '0' : noisy.toFixed(3)).join(',');
      });
      return { path: `${setup}/pull ${i + 1}.csv`, setup, data: data.join('\n') };
    }),
  ),
);

describe('a comparison that prepares its pulls', () => {
  it('takes the outliers out of both sides alike, and the gain that was put in comes back', () => {
    const raw = comparison({}, glitched);
    const clean = comparison({ prepare: { outliers: 'missing' } }, glitched);
    // 4 N·m at 4750 rpm on average.
    const truth = ((4 * 2 * Math.PI) / 60) * 4750;
    expect(Math.abs(raw.overall!.value.si - truth)).toBeGreaterThan(1000);
    expect(Math.abs(clean.overall!.value.si - truth)).toBeLessThan(500);
    expect(clean.rests.join(' ')).toMatch(/Outliers taken out, of 8 pulls: \d+ of torque in \d pulls/);
    const done = clean.candidate.pulls[0]!.preparations;
    expect(done).toMatchObject([{ code: 'outliers', role: 'torque', readings: 4 }]);
    expect(raw.candidate.pulls[0]!.preparations).toEqual([]);
  });

  it('says so where there was nothing to take out', () => {
    expect(comparison({ prepare: { outliers: 'missing', heldReadings: 'own times' } }).rests.join(' ')).toMatch(
      /Outliers (were looked for in every pull; none were found|taken out)/,
    );
  });

  it('tells each step once for all pulls, with the noise that undoing a lag adds', () => {
    const answer = comparison({
      prepare: {
        delay: { lambda: time(0.1, 's') },
        lag: { chargeTemperature: { timeConstant: time(0.4, 's'), window: time(0.85, 's') } },
        inertia: { momentOfInertia: momentOfInertia(0.2, 'kg·m²') },
      },
    });
    const rests = answer.rests.filter((line) => line.startsWith('In every pull'));
    expect(rests).toHaveLength(3);
    expect(rests[0]).toBe('In every pull: the lambda brought forward by 0.1 s.');
    expect(rests[1]).toMatch(
      /^In every pull: a lag of 0\.4 s taken off the charge temperature\. The noise of a reading becomes \d\.\d\d times what it was; what that does to a pull stands in the scatter/,
    );
    expect(rests[2]).toMatch(/^In every pull: torque that speeds up 0\.2 kg·m² added\./);
    // I times the angular acceleration: 0.2 * 2 pi * 400/60 = 8.38 N·m on both sides, so the difference stays.
    const plain = comparison({});
    const more = answer.baseline.overall!.si - plain.baseline.overall!.si;
    expect(more / (((8.378 * 2 * Math.PI) / 60) * 4750)).toBeCloseTo(1, 2);
    expect(answer.overall!.value.si).toBeCloseTo(plain.overall!.value.si, 0);
  });

  it('lets the delay and lag of a sensor differ between set-ups, and nothing that treats the sides unequally', () => {
    const own = (steps: object): CompareOptions => ({ prepareBySetUp: { 'tall core': steps } });
    const told = comparison(own({ delay: { lambda: time(0.2, 's') } })).rests.join(' ');
    expect(told).toContain('In every pull of tall core: the lambda brought forward by 0.2 s.');
    for (const steps of [
      { outliers: 'missing' },
      { inertia: { momentOfInertia: momentOfInertia(0.2, 'kg·m²') } },
      { settledFrom: time(1, 's') },
      { heldReadings: 'own times' },
    ]) {
      expect(() => comparison(own(steps))).toThrow(CalculationError);
      expect(() => comparison(own(steps))).toThrow(
        /prepareBySetUp\['tall core'\]\.\w+ must be left to prepare, which treats both sides alike, .* on one side alone can pass for a change/,
      );
    }
    expect(() =>
      comparison({
        prepare: { lag: { chargeTemperature: { timeConstant: time(0.4, 's'), window: time(0.85, 's') } } },
        prepareBySetUp: {
          'tall core': { lag: { chargeTemperature: { timeConstant: time(0.8, 's'), window: time(1.2, 's') } } },
        },
      }),
    ).toThrow(
      /lag\.chargeTemperature\.window must be the same for both sides, got 0\.85 s for stock core and 1\.2 s for tall core/,
    );
    expect(
      comparison({ prepareBySetUp: { 'Tall core': { delay: { lambda: time(0.2, 's') } } } }).rests.join(' '),
    ).toContain('prepareBySetUp also names "Tall core", which is not compared here.');
  });

  it('says which pull a step does not fit, and which step there is not', () => {
    expect(() => comparison({ prepare: { delay: { coolantTemperature: time(0.1, 's') } } })).toThrow(
      /prepare\.delay\.coolantTemperature must be a channel of the pull: .* in stock core\/pull 1\.csv/,
    );
    expect(() => comparison({ prepare: { outlier: 'missing' } as never })).toThrow(
      /prepare\.outlier must be one of outliers,/,
    );
    expect(() => comparison({ prepare: 'outliers' as never })).toThrow(/prepare must be an object of steps by name/);
  });

  it('names what was done to some pulls alone before they came', () => {
    const cleaned = setUpOf(
      'tall core',
      glitched.setup('tall core').pulls.map((pull) => prepare(pull, { outliers: 'missing' })),
    );
    const unlike = compare(glitched.setup('stock core'), cleaned, range);
    expect(unlike.rests.join(' ')).toContain(
      'Done before they came here to 0 of 4 pulls of stock core and 4 of 4 pulls of tall core: outliers taken out. What is done to some pulls alone can pass for a change.',
    );
    const both = setUpOf(
      'stock core',
      glitched.setup('stock core').pulls.map((pull) => prepare(pull, { outliers: 'missing' })),
    );
    const alike = compare(both, cleaned, range).rests.join(' ');
    expect(alike).toContain('Done to every pull before it came here: outliers taken out.');
    expect(alike).not.toContain('of 8 pulls');
  });

  it('leaves the pulls that were given as they are', () => {
    const before = String(day.setup('stock core').pulls[0]);
    comparison({ prepare: { settledFrom: time(1, 's') } });
    expect(String(day.setup('stock core').pulls[0])).toBe(before);
  });
});
