import { describe, expect, it } from 'vitest';
import { sensor, uncertainty } from '../../src/calculation/index.js';
import { drawnInterval, drawsSentence } from '../../src/report/draws.js';
import { report } from '../../src/report/index.js';
import { percent } from '../../src/units/index.js';
import { compared, demoDay } from '../plot/demo.js';

const day = demoDay();
const answer = compared(day);

describe('the check of an interval by draws', () => {
  it('finds the interval of the budget where all that scatters is one thing with Student’s t', () => {
    const drawn = drawnInterval(answer)!;
    expect(drawn.verdict).toBe('good enough');
    const half = answer.overall!.high.si - answer.overall!.value.si;
    drawn.byDraws.forEach((end, i) => expect(Math.abs(end.si - drawn.byBudget[i]!.si)).toBeLessThan(0.02 * half));
    expect(drawn.byBudget[0].si).toBeCloseTo(answer.overall!.low.si, 6);
  });

  it('is as sure as the answer, also where several comparisons share the chance', () => {
    const shared = compared(day, 'stock core', 'tall core', { setUps: 3 });
    const drawn = drawnInterval(shared)!;
    expect(drawn.level).toBeCloseTo(1 - 0.05 / 3, 12);
    expect(drawn.byBudget[0].si).toBeCloseTo(shared.overall!.low.si, 6);
    expect(drawsSentence(shared)).toContain('each of 3 comparisons at 98.333 %, so that 95 % holds for all');
    expect(report(shared, { day }).markdown).toMatch(/tall core minus stock core: \S+ kW; 98\.33 % interval/);
  });

  it('says why the answer stays with the budget where few pulls on both sides make draws too wide', () => {
    const few = demoDay(({ path }) => (/pull [4-9]/.test(path) ? undefined : {}));
    const three = compared(few, 'stock core', 'tall core', { drift: 'leave in' });
    const drawn = drawnInterval(three)!;
    // Behrens and Fisher against Welch: JCGM 101, 6.4.9 gives each mean of three its own t with two degrees of freedom.
    expect(drawn.byDraws[1].si - drawn.byDraws[0].si).toBeGreaterThan(
      1.1 * (drawn.byBudget[1].si - drawn.byBudget[0].si),
    );
    expect(drawn.verdict).toBe('not good enough');
    expect(drawsSentence(three)).toContain('The answer stays with the budget');
  });

  it('stands under the budget in one sentence, with its source', () => {
    const { markdown } = report(answer, { day });
    const budget = markdown.slice(markdown.indexOf('## Uncertainty budget'), markdown.indexOf('## Files'));
    expect(budget).toMatch(
      /Checked by [\d\s]+ draws .* \(JCGM 101, seed 1\): between \+2\.7 and \+4\.9\skW by draws, between \+2\.7 and \+4\.9\skW by this budget\. The linear budget is good enough/,
    );
    expect(markdown).toContain('JCGM 101:2008');
  });

  it('is the same every time', () => {
    const again = drawnInterval(compared(demoDay()))!;
    expect(again.byDraws.map(({ si }) => si)).toEqual(drawnInterval(answer)!.byDraws.map(({ si }) => si));
  });

  it('is left out where it would take more draws than a reader waits for', () => {
    const sure = compared(day, 'stock core', 'tall core', { confidence: 0.99999 });
    expect(drawnInterval(sure)).toBeUndefined();
    expect(drawsSentence(sure)).toBeUndefined();
  });

  it('keeps instruments in, with fewer draws', () => {
    const cell = sensor('torque', { label: 'load cell', ofReading: percent(5) });
    const drawn = drawnInterval(
      compared(day, 'stock core', 'tall core', { sensorsBySetUp: { 'tall core': { torque: cell } } }),
    )!;
    expect(drawn.draws).toBeLessThanOrEqual(20_000);
    const own = compared(day, 'stock core', 'tall core', { sensorsBySetUp: { 'tall core': { torque: cell } } });
    const [low, high] = uncertainty(own.overall!.value).interval(0.95);
    expect(drawn.byDraws[1].si - drawn.byDraws[0].si).toBeGreaterThan(0.8 * (high.si - low.si));
  });
});
