import { describe, expect, it } from 'vitest';
import { compare, type CompareOptions } from '../../src/comparison/index.js';
import {
  CalculationError,
  gaugePressure,
  percent,
  power,
  pressureDifference,
  rotationalSpeed,
} from '../../src/units/index.js';
import { readPullsFrom, type SetUp } from '../../src/sweep/index.js';
import { alternating, dayOf, pullLog, scattered, type PullShape } from '../support/pulls.js';

const [a, b] = alternating(scattered(3, 240, 0.8, 1), scattered(3, 252, 0.8, 2));
const day = dayOf({ 'stock core': a, 'tall core': b });
const [stock, tall] = [day.setup('stock core'), day.setup('tall core')];

const comparing =
  (more: object, baseline: unknown = stock, candidate: unknown = tall): (() => unknown) =>
  () =>
    compare(baseline as SetUp, candidate as SetUp, { engineSpeed: [3500, 6000], ...more } as CompareOptions);

describe('options of a comparison that are wrong', () => {
  it('are limits by a name that is none, of a wrong kind, or bare numbers', () => {
    expect(comparing({ limits: { bost: pressureDifference(1, 'kPa') } })).toThrow(
      'limits.bost must be one of mixture, boost,',
    );
    expect(comparing({ limits: { boost: gaugePressure(1, 'kPa') } })).toThrow(
      "limits.boost must be a pressure difference above zero, got a gauge pressure (1 kPa). Write for example pressureDifference(6, 'kPa').",
    );
    expect(comparing({ limits: { boost: 1 } })).toThrow('limits.boost must be a pressure difference above zero');
    expect(comparing({ limits: { mixture: percent(5) } })).toThrow(
      'limits.mixture must be a plain number between 0 and 1',
    );
    expect(comparing({ limits: { missing: 10 } })).toThrow('limits.missing must be a plain number between 0 and 1');
    expect(comparing({ limits: 3 })).toThrow('limits must be an object of limits by name');
    expect(comparing({ limits: { boost: undefined } })).not.toThrow();
  });

  it('are choices that do not exist', () => {
    expect(comparing({ drift: 'remove' })).toThrow(`drift must be 'take out' or 'leave in', got the text "remove".`);
    expect(comparing({ loggedPower: 'obs' })).toThrow("loggedPower must be 'observed', 'corrected' or 'unknown'");
    expect(comparing({ compare: 'boost' })).toThrow("compare must be 'power', 'torque', 'air flow' or 'air per cycle'");
    expect(comparing({ units: { power: 'bananas' } })).toThrow("units['power'] must be a unit of a power");
    expect(comparing({ units: { pwer: 'hp' } })).toThrow("units['pwer'] must be for a kind of quantity");
    expect(comparing(JSON.parse('{"units":{"__proto__":"hp"}}') as object)).toThrow(CalculationError);
  });

  it('are speeds that the grid does not have', () => {
    expect(comparing({ atSpeeds: [4321] })).toThrow(
      'atSpeeds must be speeds of the grid, 3500 to 6000 rpm in steps of 100 rpm, got 4321 rpm.',
    );
    expect(comparing({ atSpeeds: [power(2, 'kW')] })).toThrow('atSpeeds must be a list of engine speeds');
    expect(comparing({ engineSpeed: [3500] })).toThrow(
      'engineSpeed must be two engine speeds, the lower first, got a list',
    );
    expect(comparing({ engineSpeed: ['3500', '6500'] })).toThrow('engineSpeed must be two engine speeds');
    expect(comparing({ engineSpeed: [6500, 3500] })).toThrow('got 6500 rpm and 3500 rpm');
    expect(comparing({ engineSpeed: [3500, 3510] })).toThrow(
      'step must be smaller than the range of engine speed, got steps of 100 rpm, of which the range holds none.',
    );
  });

  it('are an order that does not name each pull once', () => {
    const misspelt = ['Stock core', 'tall core', 'stock core', 'tall core', 'stock core', 'tall core'];
    expect(comparing({ order: misspelt })).toThrow(
      'order must be a list with one name for each pull, refused ones too: "stock core" 3 times and "tall core" 3 times, got "Stock core" 1 time, "tall core" 3 times and "stock core" 2 times.',
    );
    expect(comparing({ order: ['stock core', 'tall core'] })).toThrow(CalculationError);
    expect(comparing({ order: 'stock core' })).toThrow('order must be a list of set-ups');
    const withAnother = ['stock core', 'tall core', 'duct', 'tall core', 'stock core', 'stock core', 'tall core'];
    expect(comparing({ order: withAnother })).not.toThrow();
  });

  it('are pulls left out or overruled without a reason', () => {
    const need = "leaveOut['stock core/pull 2.csv'] must be the reason, which the report prints";
    expect(comparing({ leaveOut: { 'stock core/pull 2.csv': ' ' } })).toThrow(need);
    expect(comparing({ leaveOut: { 'stock core/pull 2.csv': true } })).toThrow(need);
    expect(comparing({ leaveOut: ['stock core/pull 2.csv'] })).toThrow('leaveOut must be an object of reasons by pull');
  });

  it('are a margin without a unit', () => {
    expect(comparing({ worthwhile: 2 })).toThrow(
      "worthwhile must be a difference above zero, got the bare number 2. Write for example power(2, 'kW').",
    );
    expect(() => compare(stock, tall, null as never)).toThrow(
      'options must be an object of options by name, got null.',
    );
  });
});

describe('set-ups that cannot be compared', () => {
  it('are one set-up twice, which would be called equal to itself', () => {
    expect(comparing({ worthwhile: power(2, 'kW') }, stock, stock)).toThrow(
      'candidate must be made of other pulls than the baseline, got stock core/pull 1.csv, stock core/pull 2.csv and stock core/pull 3.csv in both.',
    );
  });

  it('share a log under another name', () => {
    const log = pullLog(a[0]);
    const files = ['one.csv', 'two.csv'].map((name, i) => ({ path: `${i}/${name}`, setup: `set ${i}`, data: log }));
    const copied = readPullsFrom(files);
    expect(comparing({}, copied.setup('set 0'), copied.setup('set 1'))).toThrow(
      'got 1/two.csv (the same as 0/one.csv) in both',
    );
  });

  it('are no set-ups, or without pulls', () => {
    expect(comparing({}, null)).toThrow("baseline must be a set-up, got null. Take one from a day: day.setup('name').");
    expect(comparing({}, stock.pulls)).toThrow('baseline must be a set-up, got a list.');
    expect(comparing({}, Promise.resolve(stock))).toThrow('got a promise. Write await before readPulls.');
    expect(comparing({}, { name: 'empty', pulls: [] })).toThrow(
      'baseline must be a set-up with pulls, got empty without any.',
    );
  });
});

describe('a log that is there twice in a set-up', () => {
  it('counts once: a copy is no repeat', () => {
    const copied = dayOf({ 'stock core': [a[0]!, a[0]!, a[1]!], 'tall core': b });
    const answer = compare(copied.setup('stock core'), copied.setup('tall core'), { engineSpeed: [3500, 6000] });
    const pulls = answer.baseline.pulls;
    expect(pulls.map((pull) => pull.accepted)).toEqual([true, false, true]);
    expect(pulls[1]!.refusals[0]!.reason).toBe('It is a copy of stock core/pull 1.csv: every reading is the same.');
  });
});

describe('a log that is there in both set-ups', () => {
  const mixed = dayOf({ 'stock core': [...a, b[0]!], 'tall core': b });
  const answer = compare(mixed.setup('stock core'), mixed.setup('tall core'), { engineSpeed: [3500, 6000] });

  it('is refused in each, with the reason, and the others are compared', () => {
    expect(answer.baseline.pulls.map((pull) => pull.accepted)).toEqual([true, true, true, false]);
    expect(answer.candidate.pulls.map((pull) => pull.accepted)).toEqual([false, true, true]);
    expect(answer.candidate.pulls[0]!.refusals.map(({ reason }) => reason)).toEqual([
      'It stands in both set-ups: every reading is the same as in stock core/pull 4.csv.',
    ]);
    const without = dayOf({ 'stock core': a, 'tall core': b.slice(1) });
    const clean = compare(without.setup('stock core'), without.setup('tall core'), { engineSpeed: [3500, 6000] });
    expect(answer.overall!.value.si).toBeCloseTo(clean.overall!.value.si, 6);
  });

  it('leaves too few where hardly another is there', () => {
    const few = dayOf({ 'stock core': [...a, b[0]!], 'tall core': b.slice(0, 2) });
    const { outcome } = compare(few.setup('stock core'), few.setup('tall core'), { engineSpeed: [3500, 6000] });
    expect(outcome).toBe('too few pulls');
  });
});

describe('a range that is no whole number of steps', () => {
  it('is said as far as it was compared', () => {
    const answer = compare(stock, tall, { engineSpeed: [3500, 6000], step: rotationalSpeed(700, 'rpm') });
    expect(answer.headline).toContain('averaged from 3500 to 5600 rpm');
    expect(answer.engineSpeed.to.in('rpm')).toBeCloseTo(5600, 6);
  });
});

describe('a quantity that no channel gives', () => {
  it('is refused with what the pulls have', () => {
    const files = [0, 1, 2, 3].map((i) => {
      const rows = pullLog(a[i % 3])
        .split('\n')
        .map((row) => row.split(',').toSpliced(6, 1).join(','));
      return { path: `${i}.csv`, setup: i < 2 ? 'one' : 'two', data: rows.join('\n') };
    });
    const noAir = readPullsFrom(files);
    expect(comparing({ compare: 'air flow' }, noAir.setup('one'), noAir.setup('two'))).toThrow(
      'compare must be something that every pull has a channel for, got channels for power and torque only',
    );
  });
});

describe('the sentences of an answer', () => {
  const same = dayOf({ 'stock core': scattered(4, 240, 0.2, 5), 'tall core + duct': scattered(4, 240, 0.2, 6) });
  const [one, other] = [same.setup('stock core'), same.setup('tall core + duct')];
  const range = { engineSpeed: [3500, 6000] } as const;

  it('speak of pulls where drift may hide a change as well as feign one', () => {
    expect(compare(one, other, { ...range, worthwhile: power(3, 'kW') }).headline).toMatch(
      /^The pulls of “tall core \+ duct” show nothing worth having against the pulls of “stock core”: whatever the difference is, it is smaller than the 3\.0 kW set beforehand/,
    );
  });

  it('give the chance with its decimals', () => {
    const answer = compare(one, other, { ...range, confidence: 0.999 });
    expect(answer.headline).toContain('(99.9 %)');
    expect(answer.curve!.method).toMatch(/^99\.9 % band/);
  });

  it('say that several set-ups share the chance, and that of the figures beside the headline too', () => {
    const alone = compare(one, other, range);
    const shared = compare(one, other, { ...range, setUps: 3 });
    expect(shared.rests.join(' ')).toContain('the 95 % holds for all of their intervals together');
    const width = ({ figures: [peak] }: typeof alone): number => peak!.difference.high.si - peak!.difference.low.si;
    expect(width(shared)).toBeGreaterThan(1.2 * width(alone));
  });

  it('say that the range was asked too wide where no pull covers it', () => {
    const answer = compare(one, other, { engineSpeed: [1000, 9000] });
    expect(answer.headline).toBe('No usable pull of the stock core set is left.');
    expect(answer.next[0]).toBe(
      'Most of the refused pulls lack values in this range: give engineSpeed within what the pulls reach, or mend the channel.',
    );
    expect(answer.next[1]).toBe('Make at least three pulls of the stock core set: three give a usable scatter.');
  });

  it('say that a pull was overruled which nothing refuses', () => {
    const answer = compare(one, other, { ...range, overrule: { 'stock core/pull 1.csv': 'I like it' } });
    expect(answer.rests.join(' ')).toContain(
      'Overruled without need, since nothing refuses it: pull 1.csv of stock core.',
    );
  });
});

describe('an odd day', () => {
  type Edit = (log: string, pull: number) => string;
  const asIs: Edit = (log) => log;
  const logs = (setup: string, shapes: readonly PullShape[], edit: Edit) =>
    shapes.map((shape, i) => ({ path: `${setup}/pull ${i + 1}.csv`, setup, data: edit(pullLog(shape), i) }));
  const [first, second] = [scattered(3, 240, 0.8, 1), scattered(3, 252, 0.8, 2)];
  const odd = (edit: Edit, more: CompareOptions = {}, changed: readonly PullShape[] = second) => {
    const both = readPullsFrom([...logs('stock core', first, edit), ...logs('tall core', changed, asIs)]);
    return compare(both.setup('stock core'), both.setup('tall core'), { engineSpeed: [3500, 6000], ...more });
  };
  const downwards: Edit = (log) => {
    const [header, ...rows] = log.split('\n');
    const times = rows.map((row) => row.slice(0, row.indexOf(',')));
    return [header, ...rows.toReversed().map((row, i) => `${times[i]}${row.slice(row.indexOf(','))}`)].join('\n');
  };

  it('does not compare pulls that go down in engine speed with pulls that go up', () => {
    const answer = odd(downwards);
    expect(answer.outcome).toBe('cannot be compared');
    expect(answer.headline).toMatch(
      /the pulls of “tall core” go up in engine speed and the pulls of “stock core” down,/,
    );
    expect(answer.next[0]).toBe('Compare pulls that go the same way.');
  });

  it('does not compare two ramp rates', () => {
    const answer = odd(
      asIs,
      {},
      second.map((shape) => ({ ...shape, seconds: 0.07 })),
    );
    expect(answer.outcome).toBe('cannot be compared');
    expect(answer.headline).toContain('ran through the range at 286 rpm/s against 400 rpm/s');
  });

  it('gives no verdict in its text where there is none, and labels what was seen', () => {
    const text = String(
      odd(
        asIs,
        {},
        second.map((shape) => ({ ...shape, lambda: () => 0.9 })),
      ),
    );
    expect(text).toContain('These two sets cannot be compared');
    expect(text).not.toContain('better');
    expect(text).toMatch(/Seen, but not a result: \+\d\.\d kW, between/);
  });

  it('tells a slip in torque from one in the power that is made of it', () => {
    const answer = odd(
      asIs,
      {},
      second.map((shape) => ({ ...shape, torque: shape.torque! * 1.3 })),
    );
    expect(answer.objections.join(' ')).toContain('in torque, which is N·m against lb·ft.');
    expect(answer.objections.join(' ')).not.toContain('kW against');
  });

  it('refuses pulls that brake, and boost below vacuum, instead of breaking off', () => {
    const braking = odd(
      asIs,
      {},
      second.map((shape) => ({ ...shape, torque: -200 - shape.torque! / 100 })),
    );
    expect(braking.outcome).toBe('too few pulls');
    expect(braking.candidate.pulls[0]!.refusals[0]!.reason).toMatch(
      /^Its mean power over the range is −\d+\.\d kW, which no pull makes: is the sign of the channel turned\?/,
    );
    const below = odd(
      asIs,
      {},
      second.map((shape) => ({ ...shape, boost: -95 })),
    );
    expect(below.candidate.pulls[0]!.refusals[0]!.reason).toBe(
      'Its mean boost, −95.0 kPa, lies below vacuum: is the unit right?',
    );
  });

  it('names the pull that has no torque, whatever it then compares by', () => {
    const one: Edit = (log, pull) => (pull === 0 ? log.replace('Torque (N m)', 'Remark') : log);
    expect(odd(one).rests.join(' ')).toContain('Not compared by power: no torque or power in stock core/pull 1.csv.');
    expect(() => odd(one, { worthwhile: power(2, 'kW') })).toThrow(
      'worthwhile must be a mass, being compared by air per cycle, got a power; no torque or power in stock core/pull 1.csv.',
    );
  });

  it('does not mix up two set-ups of one name', () => {
    const [x, y] = [first, second].map((shapes) => readPullsFrom(logs('core', shapes, asIs)).setup('core'));
    expect(() => compare(x!, y!)).toThrow('candidate must be a set-up of another name than the baseline');
  });
});
