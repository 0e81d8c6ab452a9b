import { describe, expect, it } from 'vitest';
import { measured, sensor } from '../../src/calculation/index.js';
import { compare, type CompareOptions } from '../../src/comparison/index.js';
import { welchDifference } from '../../src/statistics/index.js';
import { readPullsFrom } from '../../src/sweep/index.js';
import { percent, power, pressureDifference, ratio } from '../../src/units/index.js';
import { alternating, dayOf, pullLog, scattered, type PullShape } from '../support/pulls.js';

const RANGE: CompareOptions = { engineSpeed: [3500, 6000], loggedPower: 'observed' };

function comparing(a: readonly PullShape[], b: readonly PullShape[], more: CompareOptions = {}) {
  const [baseline, candidate] = alternating(a, b);
  const day = dayOf({ stock: baseline, tall: candidate });
  return compare(day.setup('stock'), day.setup('tall'), { ...RANGE, ...more });
}

describe('the split along the engine speed', () => {
  const gained = comparing(
    scattered(5, 240, 0.8, 23),
    scattered(5, 247, 0.8, 24, { charge: 26, extra: (speed) => (speed > 5 ? 8 * (speed - 5) : 0) }),
  );
  const { split, curve } = gained;

  it('adds up to the difference at each speed, a drift taken out of both', () => {
    expect(gained.driftTakenOut).toBe(true);
    curve!.difference.si.forEach((difference, row) => {
      expect(split!.bySpeed.reduce((sum, { part }) => sum + part.si[row]!, 0)).toBeCloseTo(difference, 6);
    });
  });

  it('has the factors of the split over the range, in their order', () => {
    expect(split!.bySpeed.map(({ factor }) => factor)).toEqual(split!.contributions.map(({ factor }) => factor));
  });

  it('holds every part between its ends, the band outside the interval for one speed', () => {
    for (const { part, pointwise, simultaneous } of split!.bySpeed) {
      part.si.forEach((value, row) => {
        expect(simultaneous.low.si[row]!).toBeLessThanOrEqual(pointwise.low.si[row]!);
        expect(pointwise.low.si[row]!).toBeLessThanOrEqual(value);
        expect(value).toBeLessThanOrEqual(pointwise.high.si[row]!);
        expect(pointwise.high.si[row]!).toBeLessThanOrEqual(simultaneous.high.si[row]!);
      });
    }
  });

  it('names the speeds where a factor raised the result, by the band alone', () => {
    const noisy = comparing(
      scattered(4, 240, 2, 25),
      scattered(4, 244, 2, 26, { charge: 30, airFlow: (speed) => 30.2 * speed, extra: (speed) => 6 * (speed - 5) }),
    );
    const speeds = noisy.curve!.engineSpeed.si;
    const rows = Array.from(speeds.keys());
    let between = 0;
    for (const { part, simultaneous, ranges } of noisy.split!.bySpeed) {
      const named = rows.filter((row) =>
        ranges.some(({ from, to }) => speeds[row]! > from.si - 1e-6 && speeds[row]! < to.si + 1e-6),
      );
      const clear = rows.filter((row) => simultaneous.low.si[row]! > 0 || simultaneous.high.si[row]! < 0);
      expect(named).toEqual(clear);
      for (const { outcome, part: mean } of ranges) expect(outcome).toBe(mean.si > 0 ? 'raised' : 'lowered');
      between += rows.filter((row) => !clear.includes(row) && Math.abs(part.si[row]!) > 100).length;
    }
    // Parts of more than 100 W that are not clear of zero: the band decides, not the size.
    expect(between).toBeGreaterThan(5);
    const temperature = split!.bySpeed.find(({ factor }) => factor === 'charge temperature')!;
    expect(temperature.ranges.map(({ outcome }) => outcome)).toEqual(['raised']);
  });

  it('puts a gain that was planted above 5000 rpm where it was planted', () => {
    const rest = split!.bySpeed.at(-1)!.part.si;
    const [at4000, at6000] = [5, 25].map((row) => rest[row]!) as [number, number];
    // 8 N·m at 6000 rpm are 5.0 kW.
    expect((at6000 - at4000) / 1000).toBeGreaterThan(4);
  });

  it('carries an instrument that was another one in each set-up along the whole curve', () => {
    const gauge = (label: string) => sensor('gauge pressure', { label, halfWidth: pressureDifference(3, 'kPa') });
    const apart = comparing(scattered(5, 240, 0.8, 23), scattered(5, 247, 0.8, 24, { charge: 26 }), {
      sensorsBySetUp: { stock: { boost: gauge('one') }, tall: { boost: gauge('two') } },
    });
    const pressure = apart.split!.bySpeed[0]!;
    // 3/√3 kPa on each side of 204 kPa absolute: 1.2 % of power, 95 % of a normal law.
    const share = ((1.96 * Math.SQRT2 * 3) / Math.sqrt(3) / 204.1) * apart.baseline.mean.si[10]!;
    expect((pressure.pointwise.high.si[10]! - pressure.part.si[10]!) / share).toBeCloseTo(1, 1);
  });

  it('is missing at a speed where a pull lacks a channel', () => {
    const late = comparing(scattered(4, 240, 0.8, 31), [
      ...scattered(3, 247, 0.8, 32),
      { ...scattered(1, 247, 0.8, 33)[0]!, to: 5900 },
    ]);
    const { part } = late.split!.bySpeed[0]!;
    expect(part.si.at(-1)).toBeNaN();
    expect(part.si[0]).not.toBeNaN();
  });
});

describe('what the channels cannot tell apart', () => {
  const COLUMNS = ['Boost', 'Charge temp', 'Lambda', 'Air mass flow', 'Barometer', 'Room temp', 'Humidity', 'Ignition'];
  const without = (...missing: readonly string[]) => {
    const log = (shape: PullShape): string => {
      const lines = pullLog({ ...shape, spark: () => 20 })
        .split('\n')
        .map((line) => line.split(','));
      const kept = lines[0]!.flatMap((head, i) => (missing.some((word) => head.startsWith(word)) ? [] : [i]));
      return lines.map((line) => kept.map((i) => line[i]!).join(',')).join('\n');
    };
    const files = (['a', 'b'] as const).flatMap((setup, k) =>
      scattered(3, 240 + 8 * k, 0.5, 40 + k).map((shape, i) => ({
        path: `${setup}/pull ${i}.csv`,
        setup,
        data: log(shape),
      })),
    );
    const day = readPullsFrom(files);
    return compare(day.setup('a'), day.setup('b'), RANGE).split!;
  };

  it('is nothing where every channel is logged', () => {
    expect(without().notSeparated).toEqual([]);
    expect(without().contributions.map(({ factor }) => factor)).toEqual([
      'charge pressure',
      'charge temperature',
      'dry share of the charge',
      'volumetric efficiency',
      'mixture (fuel per air)',
      'conversion efficiency',
    ]);
  });

  it.each([
    [
      'Boost',
      'Charge pressure: log manifold pressure, or boost and the barometer.',
      'charge pressure and volumetric efficiency',
    ],
    ['Charge temp', 'Charge temperature: log it after the cooler.', 'charge temperature and volumetric efficiency'],
    ['Humidity', 'Humidity: log relative humidity, room temperature and the barometer.', 'volumetric efficiency'],
    [
      'Air mass flow',
      'Volumetric efficiency from conversion efficiency: log air flow.',
      'volumetric efficiency and conversion efficiency',
    ],
    ['Lambda', 'Mixture from conversion efficiency: log lambda.', 'mixture and conversion efficiency'],
    ['Ignition', 'Spark from conversion efficiency: log spark advance.', 'spark and conversion efficiency'],
  ])('without %s names the sensor that would: %s', (missing, sentence, together) => {
    const split = without(missing);
    expect(split.notSeparated).toEqual([sentence]);
    expect(split.contributions.map(({ factor }) => factor)).toContain(together);
  });

  it('names every sensor where nothing but torque is logged, and calls the rest by all it holds', () => {
    const bare = without(...COLUMNS);
    expect(bare.notSeparated).toHaveLength(6);
    expect(bare.contributions.map(({ factor }) => factor)).toEqual([
      'charge pressure, charge temperature, volumetric efficiency, mixture, spark and conversion efficiency',
    ]);
  });
});

describe('what charge density alone says', () => {
  const colder = comparing(scattered(5, 240, 0.8, 65), scattered(5, 247, 0.8, 66, { charge: 26 }), {
    drift: 'leave in',
  });

  it('has the interval of the pulls: that of Welch on logarithms', () => {
    const scattering = (seed: number, charge: number) =>
      scattered(5, 240, 0.8, seed).map((shape, i) => ({
        ...shape,
        boost: 110 + 0.5 * i,
        charge: charge + ((i * i) % 4),
      }));
    const { prediction, baseline, candidate } = comparing(scattering(65, 35), scattering(66, 26), {
      drift: 'leave in',
    });
    const logs = [baseline, candidate].map(({ pulls }) =>
      pulls.map(({ channels }) => {
        const si = (name: string): number => channels.find((one) => one.name === name)!.mean.si;
        return Math.log(si('boost') + 94120) - Math.log(si('charge temperature'));
      }),
    );
    const welch = welchDifference(logs[0]!, logs[1]!);
    expect(prediction!.byDensity.value.si).toBeCloseTo(Math.expm1(welch.difference), 6);
    expect(prediction!.byDensity.low.si).toBeCloseTo(Math.expm1(welch.lower), 6);
    expect(prediction!.byDensity.high.si).toBeCloseTo(Math.expm1(welch.upper), 6);
  });

  it('has the instruments of pressure and temperature in it', () => {
    const gauge = (label: string) => sensor('gauge pressure', { label, halfWidth: pressureDifference(3, 'kPa') });
    const unsure = comparing(scattered(5, 240, 0.8, 65), scattered(5, 247, 0.8, 66, { charge: 26 }), {
      drift: 'leave in',
      sensorsBySetUp: { stock: { boost: gauge('one') }, tall: { boost: gauge('two') } },
    });
    expect(unsure.prediction!.byDensity.standardUncertainty.si).toBeCloseTo(
      ((Math.SQRT2 * 3) / Math.sqrt(3) / 204.1) * (1 + unsure.prediction!.byDensity.value.si),
      4,
    );
    expect(colder.prediction!.byDensity.standardUncertainty.si).toBeLessThan(0.001);
    // One gauge for both: its error stands on both sides and cancels in the ratio.
    const one = comparing(scattered(5, 240, 0.8, 65), scattered(5, 247, 0.8, 66, { charge: 26 }), {
      drift: 'leave in',
      sensors: { boost: gauge('one') },
    });
    expect(one.prediction!.byDensity.standardUncertainty.si).toBeLessThan(0.0005);
  });

  it('stands beside what was found with its interval', () => {
    expect(colder.prediction!.found.value.si).toBeCloseTo(colder.relative!, 12);
    expect(colder.prediction!.found.low.si).toBeCloseTo(colder.overall!.low.si / colder.baseline.overall!.si, 3);
    expect(colder.findings.join(' ')).toMatch(/Charge density alone would give \+\d\.\d % \(\+\d\.\d to \+\d\.\d %\)/);
  });
});

describe('what was predicted', () => {
  const sides = [scattered(5, 240, 0.8, 71), scattered(5, 247.2, 0.8, 72)] as const;
  const against = (predicted: CompareOptions['predicted']) =>
    comparing(...sides, { drift: 'leave in', predicted: predicted! }).predicted!;

  it('agrees with what was found where the interval of the gap holds zero', () => {
    const near = against(measured('scenario', percent(3), { halfWidth: percent(1) }));
    expect(near.verdict).toBe('agree');
    expect(near.sentence).toMatch(
      /^Predicted \+3\.0 %, found \+\d\.\d % of the baseline: they agree within what both are known to\. Found less predicted is/,
    );
    // Root sum of squares of both.
    expect(near.gap.standardUncertainty.si).toBeCloseTo(
      Math.hypot(near.found.standardUncertainty.si, 0.01 / Math.sqrt(3)),
      8,
    );
  });

  it('was more, or less, than was found beyond both intervals', () => {
    expect(against(percent(9)).verdict).toBe('found less');
    expect(against(percent(-4)).verdict).toBe('found more');
    expect(against(percent(9)).sentence).toContain('less was found than predicted');
    expect(against(percent(9)).sentence).toContain('came without an interval and counts as exact');
  });

  it('may come as an estimate with its ends', () => {
    const ends = against({ value: percent(3), low: percent(1), high: percent(4) });
    expect(ends.predicted.low.in('%')).toBeCloseTo(1, 9);
    // The longer side as 95 % of a normal law.
    expect(ends.predicted.standardUncertainty.in('%')).toBeCloseTo(2 / 1.959964, 4);
  });

  it('is nothing where the comparison is none, or nothing was predicted', () => {
    expect(comparing(...sides).predicted).toBeUndefined();
    const lean = scattered(5, 247.2, 0.8, 72, { lambda: () => 0.9 });
    expect(comparing(sides[0], lean, { predicted: percent(3) }).predicted).toBeUndefined();
  });

  it('is refused where it is no ratio, or its ends do not hold it', () => {
    expect(() => against(3 as never)).toThrow(/predicted must be a relative change as a ratio/);
    expect(() => against(power(3, 'kW') as never)).toThrow(/predicted must be a relative change/);
    expect(() => against({ value: percent(3), low: percent(4), high: percent(5) })).toThrow(/predicted must be/);
    expect(() => against(ratio(-1))).toThrow(/predicted must be/);
  });
});

describe('what must be equal', () => {
  const check = (one: ReturnType<typeof comparing>, what: string) => one.fairness.find((each) => each.what === what)!;
  const even = [scattered(4, 240, 0.8, 81), scattered(4, 247, 0.8, 82)] as const;

  it('is told of every comparison: what it was on each side, what is allowed, and whether it was equal', () => {
    const fair = comparing(...even);
    expect(check(fair, 'mixture')).toMatchObject({
      state: 'equal',
      baseline: 'lambda 0.820',
      candidate: 'lambda 0.820',
      allowed: '0.03',
    });
    expect(check(fair, 'ramp rate')).toMatchObject({ state: 'equal', baseline: '400 rpm/s', candidate: '400 rpm/s' });
    expect(check(fair, 'manifold pressure')).toMatchObject({ state: 'equal', baseline: '204.1 kPa' });
    expect(check(fair, 'speed range')).toMatchObject({ state: 'equal', baseline: '3500 to 6000 rpm' });
    expect(check(fair, 'direction of the pulls')).toMatchObject({ state: 'equal', baseline: 'up' });
    expect(check(fair, 'spark').sentence).toContain('spark advance was not logged in every pull');
    expect(check(fair, 'boost control').state).toBe('not known');
  });

  it('stops the comparison where boost was controlled in two ways', () => {
    const mixed = comparing(...even, { boostControl: { stock: 'open', tall: 'closed' } });
    expect(mixed.outcome).toBe('cannot be compared');
    expect(mixed.headline).toBe(
      'These two sets cannot be compared: boost control was closed with “tall” and open with “stock”, which alone changes boost.',
    );
    expect(mixed.next[0]).toBe('Control boost the same way on both sides and repeat.');
    expect(check(comparing(...even, { boostControl: 'closed' }), 'boost control')).toMatchObject({
      state: 'equal',
      baseline: 'closed',
    });
  });

  it('says where manifold pressure was not equal, which may be the doing of the change', () => {
    const higher = scattered(4, 247, 0.8, 82, { boost: 118 });
    const open = comparing(even[0], higher, { boostControl: 'open' });
    expect(open.objections).toEqual([]);
    expect(open.rests.join(' ')).toContain(
      'Manifold pressure was 8.0 kPa higher with “tall”. With open control that may be the doing of the change',
    );
    const closed = comparing(even[0], higher, { boostControl: 'closed' });
    expect(check(closed, 'manifold pressure').sentence).toContain('told to be closed, and did not hold it');
  });

  it('refuses a boost control that is none', () => {
    expect(() => comparing(...even, { boostControl: 'half' as never })).toThrow(
      /boostControl must be 'open', 'closed'/,
    );
    expect(() => comparing(...even, { boostControl: { stock: 1 } as never })).toThrow(/boostControl must be/);
    expect(() => comparing(...even, { limits: { sparkBetweenSetUps: 1 as never } })).toThrow(
      /limits\.sparkBetweenSetUps must be an angle above zero/,
    );
  });
});
