import { describe, expect, it } from 'vitest';
import { explain, uncertainty } from '../../src/calculation/index.js';
import { compare, compareAll, worthPerCost, type CompareOptions } from '../../src/comparison/index.js';
import { studentTFactor, welchDifference } from '../../src/statistics/index.js';
import { readPullsFrom } from '../../src/sweep/index.js';
import { CalculationError, cost, power, rotationalSpeed, torque } from '../../src/units/index.js';
import { alternating, dayOf, pullLog, scattered, type PullShape } from '../support/pulls.js';
import { seeded } from '../support/random.js';

const options: CompareOptions = {
  engineSpeed: [3500, 6000],
  worthwhile: power(3, 'kW'),
  loggedPower: 'observed',
  measuredAt: 'at the hub',
};

function comparison(baseline: readonly PullShape[], candidate: readonly PullShape[], more: CompareOptions = {}) {
  const [a, b] = alternating(baseline, candidate);
  const day = dayOf({ 'stock core': a, 'tall core': b });
  return compare(day.setup('stock core'), day.setup('tall core'), { ...options, ...more });
}

describe('a comparison of two set-ups', () => {
  const gained = comparison(scattered(5, 240, 0.8, 1), scattered(5, 252, 0.8, 2));

  it('finds a gain that was put in, with its sign, interval and range', () => {
    // 12 N·m over 3500 to 6000 rpm is 12 * 2 pi * 4750/60 = 5.97 kW.
    expect(gained.outcome).toBe('better');
    expect(gained.overall!.value.in('kW' as never)).toBeCloseTo(5.97, 0);
    expect(gained.overall!.low.si).toBeLessThan(5970);
    expect(gained.overall!.high.si).toBeGreaterThan(5970);
    expect(gained.headline).toMatch(
      /^With “tall core” the engine makes more power: \+\d\.\d kW at the hub \(\+\d\.\d %\), between \+\d\.\d and \+\d\.\d kW, averaged from 3500 to 6000 rpm \(95 %\)\./,
    );
  });

  it('counts pulls: its interval is that of Welch on one number a pull', () => {
    const plain = comparison(scattered(5, 240, 0.8, 1), scattered(5, 252, 0.8, 2), { drift: 'leave in' });
    const means = [plain.baseline, plain.candidate].map((side) => side.pulls.map((pull) => pull.mean!.si));
    const welch = welchDifference(means[0]!, means[1]!);
    expect(plain.overall!.value.si).toBeCloseTo(welch.difference, 6);
    expect(plain.overall!.low.si).toBeCloseTo(welch.lower, 4);
    expect(plain.overall!.high.si).toBeCloseTo(welch.upper, 4);
    expect(plain.overall!.degreesOfFreedom).toBeCloseTo(welch.degreesOfFreedom, 6);
  });

  it('takes a steady drift out where the order of the pulls allows it', () => {
    // 1.2 N·m lost from pull to pull, as an engine heats up; the truth is 12 N·m, 5.97 kW.
    const [a, b] = alternating(scattered(4, 240, 0.3, 41), scattered(4, 252, 0.3, 42));
    const drifting = (shape: PullShape): PullShape => ({
      ...shape,
      torque: shape.torque! - ((shape.clock! - 36000) / 600) * 1.2,
    });
    const day = dayOf({ 'stock core': a.map(drifting), 'tall core': b.map(drifting) });
    const answer = compare(day.setup('stock core'), day.setup('tall core'), options);
    expect(answer.driftTakenOut).toBe(true);
    expect(answer.overall!.low.si).toBeLessThan(5970);
    expect(answer.overall!.high.si).toBeGreaterThan(5970);
    const left = compare(day.setup('stock core'), day.setup('tall core'), { ...options, drift: 'leave in' });
    const width = (one: typeof answer): number => one.overall!.high.si - one.overall!.low.si;
    expect(width(left)).toBeGreaterThan(2 * width(answer));
    expect(answer.rests.join(' ')).toMatch(
      /A steady drift through the day \(−3\.\d ± 0\.\d kW an hour\) is taken out; left in, the difference is/,
    );
    expect(explain(answer.overall!.value).toText()).toContain('difference with the drift taken out');
    expect(answer.curve!.method).toContain('A steady drift through the day is taken out.');
  });

  it('can show how the headline was made and what its uncertainty comes from', () => {
    const text = explain(gained.overall!.value).toText();
    expect(text).toContain('P = 2 * pi * n * T');
    expect(text).toMatch(/Answer: tall core minus stock core = [56]\.\d+ kW/);
    expect(uncertainty(gained.overall!.value).contributions).toHaveLength(1);
  });

  it('turns into a loss when the sides are swapped', () => {
    const lost = comparison(scattered(5, 252, 0.8, 2), scattered(5, 240, 0.8, 1), { drift: 'leave in' });
    const plain = comparison(scattered(5, 240, 0.8, 1), scattered(5, 252, 0.8, 2), { drift: 'leave in' });
    expect(lost.outcome).toBe('worse');
    expect(lost.overall!.value.si).toBeCloseTo(-plain.overall!.value.si, 6);
    expect(lost.headline).toMatch(/^With “tall core” the engine makes less power: −/);
  });

  it('says where along the range a difference is resolved', () => {
    const high = comparison(
      scattered(5, 240, 0.4, 3),
      scattered(5, 240, 0.4, 4, { extra: (speed) => (speed > 5 ? 12 * (speed - 5) : 0) }),
    );
    const resolved = high.curve!.ranges.filter((range) => range.outcome === 'better');
    expect(resolved).toHaveLength(1);
    expect(resolved[0]!.from.in('rpm')).toBeGreaterThan(4800);
    expect(high.headline).toMatch(
      /Speed by speed, for the whole curve at once: more power from \d+ to 6000 rpm .*; elsewhere /,
    );
  });

  it('calls nothing better or worse where nothing was changed, about as often as it says', () => {
    let wrong = 0;
    for (let seed = 0; seed < 60; seed++) {
      const same = comparison(scattered(4, 240, 1, 100 + 2 * seed), scattered(4, 240, 1, 101 + 2 * seed), {
        worthwhile: undefined as never,
      });
      if (same.outcome !== 'not resolved') wrong++;
    }
    // 5 % of 60 is 3; twelve or more would happen once in ten thousand times.
    expect(wrong).toBeLessThan(12);
  });

  it('recovers a gain that was planted, with the coverage it claims', () => {
    let held = 0;
    for (let seed = 0; seed < 60; seed++) {
      const { overall } = comparison(scattered(3, 240, 1, 300 + 2 * seed), scattered(3, 244, 1.5, 301 + 2 * seed));
      const truth = ((4 * 2 * Math.PI) / 60) * 4750;
      if (overall!.low.si <= truth && truth <= overall!.high.si) held++;
    }
    expect(held).toBeGreaterThanOrEqual(52);
  });
});

describe('the outcomes', () => {
  it('equivalent only within a margin set beforehand', () => {
    const same = [scattered(5, 240, 0.5, 5), scattered(5, 240.2, 0.5, 6)] as const;
    const within = comparison(...same);
    expect(within.outcome).toBe('equivalent');
    expect(within.headline).toMatch(
      /^“tall core” changes nothing worth having against “stock core”: whatever it does is smaller than the 3\.0 kW set beforehand/,
    );
    expect(comparison(...same, { worthwhile: undefined as never }).outcome).toBe('not resolved');
    expect(comparison(...same, { worthwhile: power(0.1, 'kW') }).outcome).toBe('not resolved');
  });

  it('a little more, where all of a resolved gain lies within the margin', () => {
    const little = comparison(scattered(6, 240, 0.3, 7), scattered(6, 242, 0.3, 8));
    expect(little.outcome).toBe('better, within the margin');
    expect(little.headline).toContain('makes a little more power, less than the 3.0 kW set beforehand');
  });

  it('not resolved, with how many pulls would settle it', () => {
    const open = comparison(scattered(3, 240, 4, 9), scattered(3, 242, 4, 10));
    expect(open.outcome).toBe('not resolved');
    expect(open.headline).toMatch(
      /^These pulls cannot tell whether the engine makes more power with “tall core” than with “stock core”: the best estimate is .*, but anything between .* and .* fits, averaged/,
    );
    expect(open.next.join(' ')).toMatch(
      /About \d+ pulls of each would settle a difference of 3\.0 kW, four times in five/,
    );
    expect(open.headline).not.toMatch(/no difference/i);
  });

  it('too few pulls, where one is left on a side', () => {
    const one = comparison(scattered(5, 240, 1, 11), scattered(1, 250, 1, 12));
    expect(one.outcome).toBe('too few pulls');
    expect(one.headline).toBe(
      'One usable pull of the tall core set is left, and one pull has no scatter: it cannot tell a change from luck.',
    );
    expect(one.overall).toBeUndefined();
  });

  it('cannot be compared, where the mixture differs, whatever the power says', () => {
    const lean = comparison(scattered(5, 240, 1, 13), scattered(5, 250, 1, 14, { lambda: () => 0.88 }));
    expect(lean.outcome).toBe('cannot be compared');
    expect(lean.headline).toBe(
      'These two sets cannot be compared: the pulls of “tall core” ran at lambda 0.88 against 0.82, and 0.03 is allowed.',
    );
  });

  it('unit suspected, before any verdict, where the sides differ by a unit factor', () => {
    const slipped = comparison(scattered(5, 240, 1, 15), scattered(5, 240 / 1.3558, 1, 16));
    expect(slipped.outcome).toBe('unit suspected');
    expect(slipped.headline).toMatch(
      /^Before judging: the two sets differ by 1\.3\d in torque, which is N·m against lb·ft\./,
    );
  });

  it('takes the first of several', () => {
    const both = comparison(scattered(5, 240, 1, 17), scattered(1, 177, 1, 18, { lambda: () => 0.9 }));
    expect(both.outcome).toBe('cannot be compared');
    expect(both.objections.length).toBeGreaterThanOrEqual(3);
  });
});

describe('the subject of the answer', () => {
  it('is the set-up only where the order of the pulls lets drift be told from it', () => {
    const [a, b] = [scattered(4, 240, 0.5, 19), scattered(4, 252, 0.5, 20)];
    const unknown = dayOf({ 'stock core': a, 'tall core': b });
    const answer = compare(unknown.setup('stock core'), unknown.setup('tall core'), options);
    expect(answer.headline).toMatch(/^The pulls of “tall core” made more power/);
    expect(answer.rests.join(' ')).toContain('The order of the pulls is not known');
    const blocks = dayOf({
      'stock core': a.map((shape, i) => ({ ...shape, clock: 36000 + 600 * i })),
      'tall core': b.map((shape, i) => ({ ...shape, clock: 46000 + 600 * i })),
    });
    const confounded = compare(blocks.setup('stock core'), blocks.setup('tall core'), options);
    expect(confounded.headline).toMatch(/^The pulls of “tall core” made/);
    expect(confounded.rests.join(' ')).toContain('AAAABBBB');
    const told = compare(unknown.setup('stock core'), unknown.setup('tall core'), {
      ...options,
      order: [
        'stock core',
        'tall core',
        'tall core',
        'stock core',
        'stock core',
        'tall core',
        'tall core',
        'stock core',
      ],
    });
    expect(told.headline).toMatch(/^With “tall core” the engine makes more power/);
    expect(told.rests.join(' ')).toContain('A steady drift through the day');
  });
});

describe('acceptance', () => {
  const good = scattered(5, 240, 0.8, 21);

  it.each([
    ['mixture', { lambda: (speed: number) => (speed > 4.5 ? 0.94 : 0.82) }, /ran lean: .* 0\.12 .* 0\.05 is allowed/],
    ['boost', { boost: 98 }, /boost is 12\.0 kPa below the set-up's middle pull, 6\.0 kPa is allowed/],
    [
      'charge temperature at the start',
      { charge: 60 },
      /charge temperature at the start of the range is 2\d\.\d K above/,
    ],
    ['oil temperature at the start', { oil: 70 }, /oil temperature at the start of the range is 25\.0 K below/],
    ['barometer', { barometer: 955 }, /barometer is 1\.4 kPa above the set-up's middle pull, 1\.0 kPa is allowed/],
    ['ramp rate', { seconds: 0.08 }, /ramp rate is 37\.\d+ % below the set-up's middle pull, 15(\.0+)? % is allowed/],
    ['fuel pressure', { fuelPressure: 220 }, /lowest fuel pressure is 80\.0 kPa below/],
    ['missing data', { to: 5000 }, /only from 3500 to (4900|5000) rpm/],
  ])('refuses a pull for its %s, saying which limit and by how much', (code, odd, words) => {
    const answer = comparison(scattered(5, 240, 0.8, 22), [...good.slice(0, 4), { ...good[4]!, ...odd }]);
    const refused = answer.candidate.pulls.filter((pull) => !pull.accepted);
    expect(refused.map((pull) => pull.name)).toEqual(['pull 5.csv']);
    expect(refused[0]!.refusals[0]!.code).toBe(code);
    expect(refused[0]!.refusals[0]!.reason).toMatch(words);
    expect(answer.rests[0]).toContain('refused: pull 5.csv of tall core');
  });

  it('can be overruled, and a pull can be left out, with reasons', () => {
    const odd = [...good.slice(0, 4), { ...good[4]!, boost: 98 }];
    const overruled = comparison(good, odd, { overrule: { 'tall core/pull 5.csv': 'gauge was bumped' } });
    expect(overruled.candidate.pulls.every((pull) => pull.accepted)).toBe(true);
    expect(String(overruled)).toContain('OVERRULED tall core, pull 5.csv');
    const without = comparison(good, good.slice(0, 4), { leaveOut: { 'stock core/pull 2.csv': 'missed the gear' } });
    expect(without.baseline.pulls[1]!.refusals[0]).toMatchObject({
      code: 'left out by hand',
      reason: 'Left out by hand: missed the gear',
    });
    expect(String(without)).toContain('REFUSED stock core, pull 2.csv: Left out by hand: missed the gear');
  });

  it('refuses names of pulls that are not there, which would be ignored', () => {
    expect(() => comparison(good, good, { leaveOut: { 'stock core/pull 9.csv': 'typo' } })).toThrow(
      /leaveOut must be named after pulls: [^]* got stock core\/pull 9\.csv/,
    );
    expect(() => comparison(good, good, { overrule: { 'pull 2.csv': 'no set-up' } })).toThrow(/overrule/);
  });
});

describe('why', () => {
  it('splits the change exactly into what the channels tell apart', () => {
    const colder = comparison(
      scattered(5, 240, 0.8, 23, { airFlow: (speed) => 30 * speed }),
      scattered(5, 247, 0.8, 24, { charge: 26, airFlow: (speed) => 30.8 * speed }),
    );
    const { contributions, total } = colder.split!;
    expect(contributions.map((one) => one.factor)).toEqual([
      'charge pressure',
      'charge temperature',
      'dry share of the charge',
      'volumetric efficiency',
      'mixture (fuel per air)',
      'spark and conversion efficiency',
    ]);
    expect(contributions.reduce((sum, one) => sum + one.part.value.si, 0)).toBeCloseTo(total.value.si, 6);
    expect(total.value.si / colder.overall!.value.si).toBeCloseTo(1, 3);
    // 9 K colder at about 310 K: ln(310.5/301.5) = 2.9 %.
    expect(contributions[1]!.percent).toBeCloseTo(2.9, 0);
  });

  it('keeps together what it cannot tell apart, and says which sensor would', () => {
    const bare = (torqueAt5000: number): string =>
      pullLog({ torque: torqueAt5000 })
        .split('\n')
        .map((line) => line.split(',').slice(0, 3).join(','))
        .join('\n');
    const day = readPullsFrom([
      ...[240, 241, 239.4].map((value, i) => ({ path: `a/pull ${i}.csv`, setup: 'a', data: bare(value) })),
      ...[250, 250.8, 249.1].map((value, i) => ({ path: `b/pull ${i}.csv`, setup: 'b', data: bare(value) })),
    ]);
    const { split } = compare(day.setup('a'), day.setup('b'), { engineSpeed: [3500, 6000] });
    expect(split!.contributions).toHaveLength(1);
    expect(split!.notSeparated.join(' ')).toMatch(/log manifold pressure.*log air flow/);
  });

  it('compares air where no torque is logged', () => {
    const answer = comparison(
      scattered(4, 240, 0.8, 25, { airFlow: (speed) => 30 * speed + 0.05 }),
      scattered(4, 240, 0.8, 26, { airFlow: (speed) => 30.9 * speed }),
      { compare: 'air per cycle', worthwhile: undefined as never },
    );
    expect(answer.compared).toBe('air per cycle');
    expect(answer.relative).toBeCloseTo(0.03, 2);
    expect(answer.split!.contributions.at(-1)!.factor).toBe('volumetric efficiency');
  });
});

describe('options', () => {
  const day = dayOf({ a: scattered(3, 240, 1, 27), b: scattered(3, 240, 1, 28) });
  const refusal = (wrong: object) => () => compare(day.setup('a'), day.setup('b'), wrong as CompareOptions);

  it.each([
    ['a misspelt name', { worthwile: power(2, 'kW') }, /worthwile must be one of/],
    ['a margin of another kind', { worthwhile: torque(2, 'N·m'), compare: 'power' }, /worthwhile must be a power/],
    ['a margin below zero', { worthwhile: power(-2, 'kW') }, /above zero/],
    ['speeds the wrong way round', { engineSpeed: [6000, 3500] }, /the lower first/],
    ['95 for 95 %', { confidence: 95 }, /For 95 % write 0\.95/],
    ['drift to take out of an unknown order', { drift: 'take out' }, /drift must be an order of the pulls/],
    ['a step of zero', { step: rotationalSpeed(0, 'rpm') }, /step must be/],
    ['a quantity that is not compared by', { compare: 'boost' }, /compare must be 'power', 'torque'/],
  ])('refuse %s', (_, wrong, words) => {
    expect(refusal(wrong)).toThrow(CalculationError);
    expect(refusal(wrong)).toThrow(words);
  });

  it('take the range that all pulls share when none is given', () => {
    const { engineSpeed } = compare(day.setup('a'), day.setup('b'));
    expect([engineSpeed.from.in('rpm'), engineSpeed.to.in('rpm')]).toEqual([3000, 6500]);
  });
});

describe('the answer as data', () => {
  it('is plain JSON with every number and its unit', () => {
    const answer = comparison(scattered(3, 240, 1, 29), scattered(3, 250, 1, 30));
    const data = JSON.parse(JSON.stringify(answer)) as { outcome: string; overall: { value: { unit: string } } };
    expect(data.outcome).toBe('better');
    expect(data.overall.value.unit).toBe('kW');
  });
});

describe('what is found beside the headline', () => {
  const at: CompareOptions = { atSpeeds: [4000, 5500], drift: 'leave in' };
  const seen = comparison(scattered(5, 240, 0.8, 61), scattered(5, 252, 0.8, 62), at);

  it('is the value where the curve ends and at the speeds chosen beforehand, one number a pull', () => {
    expect(seen.figures.map((figure) => figure.name)).toEqual([
      'at the end of the range, 6000 rpm',
      'at 4000 rpm',
      'at 5500 rpm',
      'by 5 neighbouring pairs',
    ]);
    const row = seen.curve!.engineSpeed.in('rpm').findIndex((rpm) => Math.abs(rpm - 4000) < 1);
    const [, low] = seen.figures;
    expect(low!.difference.value.si).toBeCloseTo(seen.curve!.difference.si[row]!, 6);
    expect(seen.figures[0]!.candidate.si).toBeGreaterThan(seen.figures[2]!.candidate.si);
  });

  it('is where the peak lies on each side: planted at 5500 and at 5300 rpm', () => {
    const falling = (from: number) => ({ extra: (speed: number) => -60 * Math.max(0, speed - from) });
    const [a, b] = [scattered(4, 240, 0.5, 63, falling(5.5)), scattered(4, 246, 0.5, 64, falling(5.3))];
    const { figures, findings } = comparison(a, b, { bandwidth: rotationalSpeed(100, 'rpm'), drift: 'leave in' });
    const [{ name, peak }] = figures as [(typeof figures)[0]];
    expect([name, peak!.baseline!.in('rpm'), peak!.candidate!.in('rpm')]).toEqual([
      'peak',
      expect.closeTo(5500, 6),
      expect.closeTo(5300, 6),
    ]);
    expect(findings.join(' ')).toMatch(
      /Power peak: 13\d\.\d kW at 5500 rpm to 13\d\.\d kW at 5300 rpm, [+−]\d\.\d kW, between/,
    );
  });

  it('is no peak where power still rises at the end of the range, but the value there', () => {
    const { figures, findings, baseline } = comparison(scattered(4, 240, 0.5, 65), scattered(4, 250, 0.5, 66));
    expect(figures[0]!.name).toBe('at the end of the range, 6000 rpm');
    expect(figures[0]!.baseline.si).toBeCloseTo(baseline.mean.si[baseline.mean.length - 1]!, 6);
    expect(figures[0]!.peak).toEqual({ baseline: undefined, candidate: undefined });
    expect(findings.join(' ')).toMatch(
      /Power at the end of the range, 6000 rpm: .* There is no peak inside the range with “stock core” and “tall core”: it may lie beyond\./,
    );
    expect(findings.join(' ')).not.toContain('Power peak');
  });

  it('is how far two pulls of one set-up may differ, and whether one set-up scatters more', () => {
    expect(seen.scatter!.repeatabilityLimit.baseline.si / seen.baseline.overallScatter!.si).toBeCloseTo(
      2.776445 * Math.SQRT2,
      4,
    );
    expect(seen.scatter!.pValue).toBeGreaterThan(0.05);
    const wild = comparison(scattered(6, 240, 0.2, 63), scattered(6, 252, 5, 64));
    expect(wild.scatter!.pValue).toBeLessThan(0.05);
    expect(wild.findings.join(' ')).toContain('The pulls of tall core scatter more than the others');
  });

  it('is what charge density alone would have done', () => {
    const colder = comparison(scattered(4, 240, 0.8, 65), scattered(4, 247, 0.8, 66, { charge: 26 }));
    // (308 + about 2.5)/(299 + about 2.5) at one pressure.
    expect(colder.prediction!.byDensity.value.si).toBeCloseTo(310.5 / 301.5 - 1, 3);
    expect(colder.prediction!.withUsualExponent.value.si).toBeCloseTo((310.5 / 301.5) ** 0.6 - 1, 3);
    expect(colder.prediction!.found.value.si).toBeCloseTo(colder.relative!, 12);
  });

  it('is the split at each engine speed, adding up to the difference there', () => {
    const { bySpeed } = seen.split!;
    seen.curve!.difference.si.forEach((difference, row) => {
      const sum = bySpeed.reduce((total, { part }) => total + part.si[row]!, 0);
      expect(sum / difference).toBeCloseTo(1, 3);
    });
  });

  it('is nothing where there is no valid comparison', () => {
    const lean = comparison(scattered(5, 240, 1, 67), scattered(5, 250, 1, 68, { lambda: () => 0.88 }));
    expect([lean.figures, lean.scatter, lean.prediction]).toEqual([[], undefined, undefined]);
  });
});

describe('several set-ups against one baseline', () => {
  it('share the chance of error, so that each interval is wider', () => {
    const [a, b] = [scattered(5, 240, 0.8, 71), scattered(5, 245, 0.8, 72)];
    const day = dayOf({ stock: a, tall: b, duct: scattered(5, 246, 0.8, 73) });
    const alone = compare(day.setup('stock'), day.setup('tall'), options);
    const [together] = compareAll(day.setup('stock'), [day.setup('tall'), day.setup('duct')], options);
    const width = (one: typeof alone): number => one.overall!.high.si - one.overall!.low.si;
    const { degreesOfFreedom } = alone.overall!;
    expect(width(together!) / width(alone)).toBeCloseTo(
      studentTFactor(0.025, degreesOfFreedom) / studentTFactor(0.05, degreesOfFreedom),
      6,
    );
  });

  it('share one range of engine speed, which the start of any of them shortens for all', () => {
    const random = seeded(74);
    const building = (seconds: number): number => 60 * Math.exp(-seconds / 0.35) + 0.4 * (random() - 0.5);
    const slow = scattered(5, 246, 0.8, 73).map((shape) => ({ ...shape, building }));
    const day = dayOf({ stock: scattered(5, 240, 0.8, 71), tall: scattered(5, 245, 0.8, 72), duct: slow });
    const anyRange = { loggedPower: 'observed' } as const;
    const alone = compare(day.setup('stock'), day.setup('tall'), anyRange);
    const [tall, duct] = compareAll(day.setup('stock'), [day.setup('tall'), day.setup('duct')], anyRange);
    expect(tall!.engineSpeed.from.si).toBe(duct!.engineSpeed.from.si);
    expect(tall!.engineSpeed.from.in('rpm')).toBeGreaterThan(alone.engineSpeed.from.in('rpm') + 200);
    for (const one of [tall!, duct!]) expect(one.rests.join(' ')).toMatch(/one cut for all pulls: boost of duct/);
  });
});

describe('pairs and money', () => {
  it('compares neighbouring pairs, in which a slow drift of any shape cancels', () => {
    const [a, b] = alternating(scattered(6, 240, 0.2, 91), scattered(6, 246, 0.2, 92));
    const bent = (shape: PullShape): PullShape => ({
      ...shape,
      torque: shape.torque! - 10 * Math.sin((shape.clock! - 36000) / 6000),
    });
    const day = dayOf({ stock: a.map(bent), tall: b.map(bent) });
    const answer = compare(day.setup('stock'), day.setup('tall'), { ...options, drift: 'leave in' });
    const pairs = answer.figures.find((figure) => figure.name === 'by 6 neighbouring pairs')!;
    const truth = ((6 * 2 * Math.PI) / 60) * 4750;
    expect(pairs.difference.low.si).toBeLessThan(truth);
    expect(pairs.difference.high.si).toBeGreaterThan(truth);
    const width = (one: { low: { si: number }; high: { si: number } }): number => one.high.si - one.low.si;
    expect(width(pairs.difference)).toBeLessThan(0.5 * width(answer.overall!));
  });

  it('leaves pairs out where each begins with the same set-up, so that a drift would stay in them', () => {
    // A B A B A B, 10 minutes apart, and a loss of 1 N·m from each pull to the next.
    const [a, b] = [scattered(3, 240, 0.2, 91), scattered(3, 246, 0.2, 92)].map((side, second) =>
      side.map((shape, i) => {
        const place = 2 * i + second;
        return { ...shape, clock: 36000 + 600 * place, torque: shape.torque! - place };
      }),
    ) as [PullShape[], PullShape[]];
    const day = dayOf({ stock: a, tall: b });
    const answer = compare(day.setup('stock'), day.setup('tall'), options);
    expect(answer.driftTakenOut).toBe(true);
    expect(answer.figures.map((figure) => figure.name).join()).not.toContain('pairs');
  });

  it('ranks set-ups by what they gave for their cost, resolved ones first', () => {
    const day = dayOf({
      stock: scattered(5, 240, 0.8, 95),
      tall: scattered(5, 252, 0.8, 96),
      duct: scattered(5, 240.3, 2, 97),
    });
    const answers = compareAll(day.setup('stock'), [day.setup('duct'), day.setup('tall')], options);
    const worth = worthPerCost(answers, { tall: cost(600, '1'), duct: cost(40, '1') });
    expect(worth.entries.map((entry) => entry.setUp)).toEqual(['tall', 'duct']);
    expect(worth.entries[0]!.perCost).toBeCloseTo(answers[1]!.overall!.value.si / 600, 9);
    expect(String(worth)).toMatch(
      /tall: \+\d\.\d kW, .* for each 1000\nduct: .* not resolved, so no worth can be told/,
    );
    expect(() => worthPerCost(answers, { tall: cost(600, '1') })).toThrow(/duct must be given a cost above zero/);
    expect(() => worthPerCost(answers, { tall: cost(600, '1'), duct: cost(40, '1'), Duct: cost(1, '1') })).toThrow(
      /Duct must be one of/,
    );
  });
});
