import { describe, expect, it } from 'vitest';
import { compare, type CompareOptions, type Comparison } from '../../src/comparison/index.js';
import { pressureDifference, temperatureDifference } from '../../src/units/index.js';
import { alternating, dayOf, scattered, type PullShape } from '../support/pulls.js';

function comparison(baseline: PullShape, candidate: PullShape, options: CompareOptions = {}): Comparison {
  const [a, b] = alternating(scattered(4, 240, 0.5, 1, baseline), scattered(4, 246, 0.5, 2, candidate));
  const day = dayOf({ 'stock core': a, 'tall core': b });
  return compare(day.setup('stock core'), day.setup('tall core'), { engineSpeed: [3500, 6000], ...options });
}

const check = (one: Comparison, what: string) => one.fairness.find((each) => each.what === what);

describe('set-ups that did not start alike', () => {
  it('are compared all the same, with a reservation in what the answer rests on and in the findings', () => {
    const answer = comparison({ oil: 90 }, { oil: 110 });
    expect(answer.outcome).toBe('better');
    expect(answer.candidate.pulls.every((pull) => pull.accepted)).toBe(true);
    expect(answer.rests.join(' ')).toContain(
      'Oil temperature at the start of the range was 20.0 K hotter with “tall core” (110 °C against 90 °C; 5.0 K is allowed): hot oil drags less, which can pass for a gain.',
    );
    expect(answer.findings.join(' ')).toContain(
      'With reservations: the set-ups did not have oil temperature alike, and whatever that did is in the change.',
    );
    expect(check(answer, 'oil temperature')).toMatchObject({ state: 'differs', stops: false });
  });

  it('begin alike where one warms under load between the slow readings of its charge temperature', () => {
    const slow = { charge: 35, seconds: 0.4 };
    const answer = comparison(slow, { ...slow, warming: (t) => 12 * Math.min(t, 2) });
    expect(check(answer, 'charge temperature before the pull')).toMatchObject({ state: 'equal' });
  });

  it.each([
    ['coolant temperature', { coolant: 88 }, { coolant: 80 }, /8\.0 K colder with “tall core” \(80 °C against 88 °C/],
    [
      'charge temperature before the pull',
      { charge: 35 },
      { charge: 27 },
      /at the first readings of the pulls was 8\.0 K colder/,
    ],
    // Saturation at 18 °C is 2.064 kPa, so 45 and 70 % are 0.52 kPa apart.
    ['humidity', { humidity: 45 }, { humidity: 70 }, /vapour pressure of the room's air was 0\.5 kPa higher/],
    // 24.6 % of 3.78 kPa at 28 °C is the vapour pressure of 45 % at 18 °C, 0.93 kPa.
    [
      'room temperature',
      { room: 18 },
      { room: 28, humidity: 24.6 },
      /room was 10\.0 K hotter with “tall core” \(28 °C against 18 °C; 3\.0 K is allowed\)/,
    ],
    ['fuel pressure', { fuelPressure: 300 }, { fuelPressure: 255 }, /lowest fuel pressure was 45\.0 kPa lower/],
  ])('by their %s', (what, baseline, candidate, words) => {
    const answer = comparison(baseline, candidate);
    expect(check(answer, what)!.state).toBe('differs');
    expect(answer.rests.join(' ')).toMatch(words);
    expect(answer.findings.join(' ')).toContain(`did not have ${what} alike`);
  });

  it('are held against limits that can be set', () => {
    const wide: CompareOptions = { limits: { engineTemperatureBetweenSetUps: temperatureDifference(25, 'K') } };
    expect(check(comparison({ oil: 90 }, { oil: 110 }, wide), 'oil temperature')!.state).toBe('equal');
    const narrow: CompareOptions = { limits: { engineTemperatureBetweenSetUps: temperatureDifference(1, 'K') } };
    expect(check(comparison({ oil: 90 }, { oil: 92 }, narrow), 'oil temperature')!.state).toBe('differs');
    expect(() => comparison({}, {}, { limits: { engineTemperatureBetweenSetUps: 5 as never } })).toThrow(
      /limits\.engineTemperatureBetweenSetUps must be a temperature difference above zero/,
    );
  });

  it('say nothing where they did, or where it was not logged', () => {
    const answer = comparison({}, {});
    expect(answer.findings.join(' ')).not.toContain('reservations');
    expect(check(answer, 'oil temperature')!.state).toBe('equal');
    expect(check(answer, 'coolant temperature')).toBeUndefined();
  });
});

describe('humidity from pull to pull', () => {
  it('refuses a pull in other air than the rest of its set-up', () => {
    const [a, b] = [scattered(5, 240, 0.5, 1), scattered(5, 246, 0.5, 2)];
    const wet = b.map((shape, i) => (i === 3 ? { ...shape, humidity: 80 } : shape));
    const day = dayOf({ 'stock core': a, 'tall core': wet });
    const answer = compare(day.setup('stock core'), day.setup('tall core'), { engineSpeed: [3500, 6000] });
    const refused = answer.candidate.pulls.filter((pull) => !pull.accepted);
    expect(refused.map(({ name }) => name)).toEqual(['pull 4.csv']);
    // 35 % of 2.064 kPa, the saturation pressure at 18 °C (ASHRAE Handbook of Fundamentals, from memory).
    expect(refused[0]!.refusals[0]).toMatchObject({
      code: 'humidity',
      reason: "Its room air's vapour pressure is 0.7 kPa above the set-up's middle pull, 0.5 kPa is allowed.",
    });
    const allowed = compare(day.setup('stock core'), day.setup('tall core'), {
      engineSpeed: [3500, 6000],
      limits: { humidity: pressureDifference(1, 'kPa') },
    });
    expect(allowed.candidate.pulls.every((pull) => pull.accepted)).toBe(true);
  });
});

describe("the room's air and the standards of correction", () => {
  const lines = (one: Comparison, where: 'rests' | 'findings'): string =>
    one[where].filter((line) => line.includes('outside the range of')).join(' ');

  it('is said to be outside where it is, in what the answer rests on unless power is as observed', () => {
    const high = comparison({}, {}, { loggedPower: 'corrected' });
    // 94.12 kPa less 45 % of 2.06 kPa: 93.2 kPa dry; SAE J1349 begins at 95 kPa and ISO 1585 at 80 kPa.
    expect(lines(high, 'rests')).toBe(
      "In 8 pulls the room's air (93.2 kPa dry, 18 °C) lay outside the range of SAE J1349 (95.0 to 101.0 kPa of dry air, 15 to 35 °C): a correction by it was not allowed there.",
    );
    const observed = comparison({}, {}, { loggedPower: 'observed' });
    expect(lines(observed, 'rests')).toBe('');
    expect(lines(observed, 'findings')).toContain('observed power cannot be corrected by it.');
  });

  it('is not spoken of inside it, nor where air was compared', () => {
    expect(lines(comparison({ barometer: 985 }, { barometer: 985 }), 'rests')).toBe('');
    expect(lines(comparison({}, {}, { compare: 'air per cycle' }), 'rests')).toBe('');
  });

  it('names both standards where both are left', () => {
    const mountain = comparison({ barometer: 790 }, { barometer: 790 }, { loggedPower: 'unknown' });
    expect(lines(mountain, 'rests')).toMatch(
      /SAE J1349 \(95\.0 .*\) and ISO 1585 \(80\.0 to 110\.0 kPa of dry air, 15 to 35 °C\): a correction by it, if the logger made one/,
    );
  });
});
