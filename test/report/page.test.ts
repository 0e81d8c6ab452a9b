import { describe, expect, it } from 'vitest';
import { compare, compareAll } from '../../src/comparison/index.js';
import { differencePlot } from '../../src/plot/index.js';
import { report } from '../../src/report/index.js';
import { readPullsFrom } from '../../src/sweep/index.js';
import { power } from '../../src/units/index.js';
import { dayOf, pullLog, scattered } from '../support/pulls.js';

const made = dayOf({ 'stock core': scattered(3, 240, 0.8, 1), 'tall core': scattered(3, 252, 0.8, 2) });
const answer = compare(made.setup('stock core'), made.setup('tall core'), { engineSpeed: [3500, 6000] });

describe('the table of every pull', () => {
  const { markdown } = report(answer, { day: made });
  const table = markdown.slice(markdown.indexOf('Every pull'), markdown.indexOf('What to test next'));

  it('says once what is the same in every pull, and has no column for it', () => {
    expect(table).toMatch(/^Every pull: means over the range of engine speed; alike in all: .*barometer 94\.1 kPa/);
    expect(table).not.toMatch(/\| *barometer/);
  });

  it('keeps a column for what differs', () => {
    expect(table).toMatch(/\| *air flow, g\/s/);
  });

  it('leaves to the unit that it is a temperature', () => {
    const warm = dayOf({ a: scattered(3, 240, 0.8, 1), b: scattered(3, 252, 0.8, 2, { charge: 45 }) });
    const text = report(compare(warm.setup('a'), warm.setup('b'), { engineSpeed: [3500, 6000] })).markdown;
    expect(text).toMatch(/\| *charge, °C/);
  });
});

describe('what is said of each pull as it was recorded', () => {
  it('has one stop at its end, and none before a semicolon', () => {
    const spiked = (log: string) =>
      log
        .split('\n')
        .map((line, row) => (row === 80 ? line.replace(/^(([^,]*,){2})[^,]*/, '$1390.4') : line))
        .join('\n');
    const files = ['a', 'b'].flatMap((setup, i) =>
      scattered(3, 240, 0.8, 5 + i).map((shape, n) => ({ path: `${setup}/${n}.csv`, data: spiked(pullLog(shape)) })),
    );
    const day = readPullsFrom(files);
    const { markdown } = report(compare(day.setup('a'), day.setup('b'), { engineSpeed: [3500, 6000] }), { day });
    const lines = markdown.split('\n').filter((line) => /: ramp up at/.test(line));
    expect(lines).toHaveLength(6);
    expect(lines.join('\n')).toMatch(/390/);
    for (const line of lines) expect(line).not.toMatch(/\.[;.]/);
  });
});

describe('the first page on paper', () => {
  it('has both pictures beside each other, so that the test stands by what is tested', async () => {
    const html = await report(answer).html;
    expect(html).toMatch(/<section id="pictures" [^>]*class="pictures">/);
    const print = html.slice(html.indexOf('@media print'));
    expect(print).toContain('.pictures{display:grid;grid-template-columns:1fr 1fr');
    expect(print).toContain('.pictures figure:nth-of-type(-n+2){grid-column:auto}');
  });
});

describe('the labels of zero and of a margin that is small on the scale', () => {
  it('stand a line apart, on a phone too', () => {
    const small = compare(made.setup('stock core'), made.setup('tall core'), {
      engineSpeed: [3500, 6000],
      worthwhile: power(0.05, 'kW'),
    });
    for (const width of [undefined, 360]) {
      const spec = JSON.stringify(differencePlot(small, width === undefined ? {} : { width }));
      const places = [...spec.matchAll(/"text":\["(no change|[+−]0\.[01] kW)"\].*?"y":\{"value":([\d.]+)\}/g)].map(
        ([, , y]) => Number(y),
      );
      expect(places).toHaveLength(3);
      const [first, second, third] = places.sort((a, b) => a - b) as [number, number, number];
      expect(Math.min(second - first, third - second)).toBeGreaterThanOrEqual(12 - 1e-9);
    }
  });
});

describe('a page on many set-ups', () => {
  it('counts them in its heading and names them in the table of answers', () => {
    const many = Object.fromEntries(
      ['stock core', ...[1, 2, 3, 4, 5, 6].map((n) => `core ${n}`)].map((name, i) => [
        name,
        scattered(3, 240 + i, 1, i),
      ]),
    );
    const day = dayOf(many);
    const [baseline, ...others] = Object.keys(many).map((name) => day.setup(name));
    const page = report(compareAll(baseline!, others, { engineSpeed: [3500, 6000] }), { day });
    expect(page.title).toBe('6 comparisons with stock core');
    expect(page.markdown).toContain('core 6 against stock core');
  });
});
