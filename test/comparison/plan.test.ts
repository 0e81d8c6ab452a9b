import { describe, expect, it } from 'vitest';
import { compare, planTest } from '../../src/comparison/index.js';
import { power, torque } from '../../src/units/index.js';
import { dayOf, scattered } from '../support/pulls.js';

const day = dayOf({ a: scattered(5, 240, 1, 81), b: scattered(5, 241, 1, 82), one: scattered(1, 241, 1, 83) });
const open = compare(day.setup('a'), day.setup('b'), { engineSpeed: [3500, 6000] });

describe('a plan for the next test', () => {
  it('needs the pulls that the noncentral t distribution says, in the best order', () => {
    const scatter = planTest(open, { worthwhile: power(1, 'kW') }).scatter.si;
    // Difference over scatter of 2 and a good order with the drift term: 11 pulls in all (method sheet, section 5).
    const plan = planTest(open, { worthwhile: power((2 * scatter) / 1000, 'kW') });
    const [fewer, asFound, more] = plan.cases;
    expect(asFound!.pulls).toBe(11);
    expect(asFound!.power).toBeGreaterThanOrEqual(0.8);
    expect(fewer!.pulls).toBeLessThan(11);
    expect(more!.pulls).toBeGreaterThan(11);
    expect(asFound!.order).toMatch(/^A[AB]{10}$/);
  });

  it('says what to improve first, and reads as text', () => {
    const plan = planTest(open, { worthwhile: power(1, 'kW') });
    expect(plan.dominant.label).toContain('scatter');
    expect(String(plan)).toMatch(
      /To resolve 1\.0 kW, 80 times in 100, with a scatter of .* kW from pull to pull:\n {2}if it is 0\.7 times that: \d+ pulls, A/,
    );
  });

  it('refuses to plan from nothing, for nothing, or for another kind', () => {
    expect(() => planTest(open)).toThrow(/worthwhile must be a power above zero/);
    expect(() => planTest(open, { worthwhile: torque(1, 'N·m') })).toThrow(/worthwhile/);
    expect(() => planTest(open, { worthwhile: power(1, 'kW'), power: 80 })).toThrow(/power must be between/);
    const few = compare(day.setup('a'), day.setup('one'), { engineSpeed: [3500, 6000] });
    expect(() => planTest(few, { worthwhile: power(1, 'kW') })).toThrow(/at least two usable pulls/);
  });
});
