import { describe, expect, it } from 'vitest';
import { compare, planTest, type CompareOptions } from '../../src/comparison/index.js';
import { level, shown } from '../../src/comparison/words.js';
import { bandText } from '../../src/plot/words.js';
import { percent, power, pressureDifference } from '../../src/units/index.js';
import { alternating, dayOf, scattered } from '../support/pulls.js';

const range: CompareOptions = { engineSpeed: [3500, 6000] };
const said = (name: string, torque: number, options: CompareOptions = {}) => {
  const [a, b] = alternating(scattered(5, 240, 1, 51), scattered(5, torque, 1, 52));
  const day = dayOf({ 'usual core': a, [name]: b });
  return compare(day.setup('usual core'), day.setup(name), { ...range, ...options });
};

describe('the first sentence', () => {
  it.each(['no intercooler', 'spray off', '20 psi', 'after', "the neighbour's core", 'Set-up B'])(
    'reads with a set-up called %s',
    (name) => {
      expect(said(name, 250).headline).toMatch(new RegExp(`^With “${name}” the engine makes more power: \\+`));
      expect(said(name, 232).headline).toMatch(new RegExp(`^With “${name}” the engine makes less power: −`));
      expect(said(name, 240.4, { worthwhile: power(4, 'kW') }).headline).toMatch(
        new RegExp(`^“${name}” changes nothing worth having against “usual core”: whatever it does is smaller than`),
      );
      expect(said(name, 241).headline).toMatch(
        new RegExp(
          `whether the engine makes more power with “${name}” than with “usual core”: .* between .* and .* fits`,
        ),
      );
      expect(said(name, 250, { compare: 'air flow' }).headline).toContain(
        `the engine takes in more air with “${name}” than with`,
      );
    },
  );

  it('says between and never anything else before the ends of an interval', () => {
    for (const torque of [232, 241, 250]) {
      const answer = said('tall core', torque);
      expect(String(answer)).not.toMatch(/(from|anything) [+−]\d[\d.]* to [+−]/);
      expect(answer.headline).toMatch(/between [+−][\d.]+ and [+−][\d.]+ kW/);
    }
  });
});

describe('a chance that several comparisons share', () => {
  const alone = said('tall core', 250);
  const shared = said('tall core', 250, { setUps: 3 });

  it('is named as that of all together', () => {
    expect(alone.headline).toContain('(95 %)');
    expect(shared.headline).toContain('(95 % for all 3 comparisons together)');
    expect(shared.rests.join(' ')).toContain('3 comparisons share the chance of error');
    expect(bandText(alone)).toBe('95 % band for the whole curve at once');
    expect(bandText(shared)).toBe('95 % band for the whole curve and all 3 comparisons at once');
  });

  it('widens the interval, the figures beside it, what leaving drift in gives, and the test that is planned', () => {
    const width = ({ overall }: typeof alone) => overall!.high.si - overall!.low.si;
    expect(width(shared)).toBeGreaterThan(1.2 * width(alone));
    const left = (answer: typeof alone) => answer.rests.find((line) => line.includes('left in, the difference'))!;
    expect(left(shared)).not.toBe(left(alone));
    for (const [i, figure] of shared.figures.entries())
      expect(figure.difference.high.si).toBeGreaterThan(alone.figures[i]!.difference.high.si);
    const worthwhile = power(2, 'kW');
    expect(planTest(shared, { worthwhile }).detectable.si).toBeGreaterThan(
      planTest(alone, { worthwhile }).detectable.si,
    );
  });
});

describe('a per cent', () => {
  it('is shown with the decimals it has', () => {
    expect([0.95, 0.9, 0.999, 1 - 0.05 / 3].map(level)).toEqual(['95 %', '90 %', '99.9 %', '98.333 %']);
    expect(shown(percent(15))).toBe('15 %');
    expect(shown(percent(2.54))).toBe('2.5 %');
  });
});

describe('a number that only a slip of units or a broken channel makes', () => {
  it('is shown as a power of ten and not as a row of digits', () => {
    expect(shown(pressureDifference(3123753242721, 'kPa'))).toBe('3.12×10¹² kPa');
    expect(shown(pressureDifference(-2.5e10, 'kPa'))).toBe('−2.50×10¹⁰ kPa');
    expect(shown(pressureDifference(123456, 'kPa'))).toBe('123456 kPa');
  });
});

describe('a next test after pulls that hardly scatter', () => {
  it('would resolve what is smaller than the last digit, and not a difference of 0.0 kW', () => {
    const day = dayOf({ 'stock core': scattered(4, 240, 1e-4, 1), 'tall core': scattered(4, 246, 1e-4, 2) });
    const answer = compare(day.setup('stock core'), day.setup('tall core'), { engineSpeed: [3500, 6000] });
    expect(answer.next[0]).toMatch(
      /a difference smaller than the last digit shown here would be resolved four times in five\.$/,
    );
  });
});

describe('the whole curve of two pulls a side', () => {
  const by = (pulls: number) => {
    const day = dayOf({ 'stock core': scattered(pulls, 240, 0.8, 1), 'tall core': scattered(pulls, 256, 0.8, 2) });
    return compare(day.setup('stock core'), day.setup('tall core'), { ...range, drift: 'leave in' });
  };

  it('is indicative, and claims neither better nor worse at any speed', () => {
    const two = by(2);
    expect(two.curve!.ranges.map(({ outcome }) => outcome)).toEqual(['not resolved']);
    expect(String(two)).toMatch(
      /Speed by speed, for the whole curve at once: indicative with two pulls a side, and no verdict: from 3500 to 6000 rpm \+\d+\.\d kW\./,
    );
    const three = by(3);
    expect(three.curve!.ranges.some(({ outcome }) => outcome === 'better')).toBe(true);
    expect(String(three)).not.toContain('indicative with two pulls');
  });
});
