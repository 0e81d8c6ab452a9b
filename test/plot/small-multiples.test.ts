import { compile, type TopLevelSpec } from 'vega-lite';
import { describe, expect, it } from 'vitest';
import { compareAll, type Comparison } from '../../src/comparison/index.js';
import { renderSvg, smallMultiples, type PlotSpec } from '../../src/plot/index.js';
import { numbersOf } from '../../src/plot/words.js';
import { torque } from '../../src/units/index.js';
import { problemsOf } from '../report/well-formed.js';
import { compared, demoDay, everyOutcome, options } from './demo.js';

const day = demoDay();
const outcomes = everyOutcome();
const pick = (...names: string[]): Comparison[] => names.map((name) => outcomes[name]!);
const three = pick('better', 'not resolved', 'equivalent');
const withInvalid = pick('better', 'worse', 'cannot be compared', 'unit suspected', 'too few pulls');
const torqueToo = [
  outcomes['better']!,
  compared(day, 'stock core', 'tall core', { compare: 'torque', worthwhile: torque(4, 'N·m') }),
];
const otherRange = [outcomes['better']!, compared(day, 'stock core', 'tall core', { engineSpeed: [4000, 5500] })];

interface Scaled {
  readonly field?: string;
  readonly scale?: { readonly domain: readonly [number, number]; readonly range: readonly [number, number] };
  readonly axis?: object | null;
  readonly value?: number;
}

interface Mark {
  readonly data: { readonly values: readonly Record<string, number>[] };
  readonly mark: { readonly type: string; readonly [key: string]: unknown };
  readonly encoding: { readonly x: Scaled; readonly y: Scaled; readonly y2?: Scaled };
}

/** The marks of each panel. */
function panelsOf(spec: PlotSpec): Mark[][] {
  return (spec['layer'] as readonly { layer?: Mark[] }[]).flatMap(({ layer }) => (layer === undefined ? [] : [layer]));
}

const borderOf = (panel: readonly Mark[]): Mark => panel.find(({ mark }) => mark.type === 'rect')!;
const wordsOf = (panel: readonly Mark[]): string[] =>
  panel.flatMap(({ mark }) => (mark.type === 'text' ? (mark['text'] as string[]) : []));
const barsOf = (panel: readonly Mark[]): Mark[] => panel.filter(({ mark }) => mark['strokeWidth'] === 5);

describe('small multiples', () => {
  const cases = Object.entries({ three, withInvalid, torqueToo, otherRange, one: [outcomes['better']!] }).flatMap(
    ([name, comparisons]) =>
      [720, 360].map((width) => ({ name, width, spec: smallMultiples(comparisons, { width })! })),
  );

  it.each(cases)(
    'compile without a warning into plain data of the size asked for: $name, $width',
    ({ spec, width }) => {
      const said: string[] = [];
      const say = (...words: readonly unknown[]): unknown => said.push(words.join(' '));
      const logger = { level: () => logger, warn: say, info: () => logger, debug: () => logger, error: say } as never;
      compile(structuredClone(spec) as unknown as TopLevelSpec, { logger });
      expect(said).toEqual([]);
      expect(JSON.parse(JSON.stringify(spec))).toEqual(spec);
      const { left, right } = spec['padding'] as { left: number; right: number };
      expect(spec.width + left + right).toBeCloseTo(width, 9);
    },
  );

  it('give each comparison a panel, titled candidate minus baseline, in the order given', () => {
    expect(panelsOf(smallMultiples(three)!).map((panel) => wordsOf(panel).slice(0, 2))).toEqual([
      ['tall core', 'minus stock core'],
      ['tall core + duct', 'minus tall core'],
      ['short inlet hose', 'minus stock core'],
    ]);
  });

  it('draw the mean difference and the band for the whole curve that the comparison holds', () => {
    panelsOf(smallMultiples(three)!).forEach((panel, i) => {
      const { difference, simultaneous, engineSpeed } = three[i]!.curve!;
      const area = panel.find(({ mark }) => mark.type === 'area')!;
      expect([area.encoding.y.field, area.encoding.y2?.field]).toEqual(['low', 'high']);
      const { values } = area.data;
      expect(values.map(({ speed }) => speed)).toEqual(Array.from(engineSpeed.in('rpm')));
      expect(values.map(({ low }) => low)).toEqual(Array.from(numbersOf(simultaneous.low, 'kW')));
      expect(values.map(({ high }) => high)).toEqual(Array.from(numbersOf(simultaneous.high, 'kW')));
      const line = panel.find(({ mark }) => mark.type === 'line')!.data.values;
      expect(line.map((row) => row['difference'])).toEqual(Array.from(numbersOf(difference, 'kW')));
    });
  });

  it('share both scales where all compare one quantity over one range, and label the values once a row', () => {
    const borders = panelsOf(smallMultiples(withInvalid)!).map(borderOf);
    for (const axis of ['x', 'y'] as const) {
      const domains = borders.map(({ encoding }) => JSON.stringify(encoding[axis].scale!.domain));
      expect(new Set(domains).size).toBe(1);
    }
    expect(borders.map(({ encoding }) => encoding.y.axis !== null)).toEqual([true, false, false, true, false]);
  });

  it('hold every band, zero and the worthwhile difference inside the shared scale, with room for the bars at the foot', () => {
    for (const width of [720, 360]) {
      const panels = panelsOf(smallMultiples(pick('better', 'worse'), { width })!);
      const { domain, range } = borderOf(panels[0]!).encoding.y.scale!;
      const pixel = (value: number): number =>
        range[0] + ((value - domain[0]) / (domain[1] - domain[0])) * (range[1] - range[0]);
      const values = panels.flat().flatMap(({ data }) => data.values);
      const lowest = Math.min(...values.flatMap(({ low }) => (low === undefined ? [] : [low])));
      const highest = Math.max(...values.flatMap(({ high }) => (high === undefined ? [] : [high])));
      expect(pixel(lowest)).toBeLessThan(range[0] - 20);
      expect(pixel(highest)).toBeGreaterThan(range[1]);
    }
  });

  it('put panels of another quantity on a scale of their own, with its unit in the title', () => {
    const [power, other] = panelsOf(smallMultiples(torqueToo)!);
    expect(wordsOf(power!)).toContain('difference, kW');
    expect(wordsOf(other!)).toContain('difference, N·m');
    expect(borderOf(power!).encoding.y.scale!.domain).not.toEqual(borderOf(other!).encoding.y.scale!.domain);
    expect(borderOf(other!).encoding.y.axis).not.toBeNull();
  });

  it('bring panels of one quantity in two units to one unit', () => {
    const inHorsepower = compared(day, 'stock core', 'tall core', { units: { power: 'hp' } });
    const [first, second] = panelsOf(smallMultiples([outcomes['better']!, inHorsepower])!);
    const line = (panel: Mark[]): number[] =>
      panel.find(({ mark }) => mark.type === 'line')!.data.values.map((row) => row['difference']!);
    line(second!).forEach((value, i) => expect(value).toBeCloseTo(line(first!)[i]!, 9));
  });

  it('keep the value scale and part the speed scale where only the ranges differ', () => {
    const [whole, part] = panelsOf(smallMultiples(otherRange)!).map(borderOf);
    expect(whole!.encoding.y.scale!.domain).toEqual(part!.encoding.y.scale!.domain);
    expect([whole, part].map((border) => border!.encoding.x.scale!.domain.map(Math.round))).toEqual([
      [3500, 6500],
      [4000, 5500],
    ]);
  });

  it('mark exactly the resolved ranges at the foot, with the mean difference where it fits', () => {
    const [better, worse] = panelsOf(smallMultiples(pick('better', 'worse'))!);
    const ends = (panel: Mark[]): unknown =>
      barsOf(panel).map(({ data }) => [data.values[0]!['speed'], data.values[0]!['end']]);
    expect(ends(better!)).toEqual([
      [3650, 3750],
      [3850, 6500],
    ]);
    expect(wordsOf(better!).slice(2)).toEqual(['+4.1 kW']);
    expect(wordsOf(worse!).slice(2)).toEqual(['−4.1 kW']);
    expect(panelsOf(smallMultiples(three)!).map((panel) => barsOf(panel).length)).toEqual([2, 0, 0]);
  });

  it('draw zero solid, and the worthwhile difference dashed on both sides where one was set', () => {
    const { worthwhile: _, ...rest } = options;
    const [plain] = compareAll(day.setup('stock core'), [day.setup('tall core')], rest);
    const [withMargin, without] = panelsOf(smallMultiples([outcomes['better']!, plain!])!);
    const rules = (panel: Mark[]): unknown =>
      panel
        .filter(({ mark }) => mark.type === 'rule' && mark['strokeWidth'] === 1)
        .map(({ data, mark }) => [data.values[0]!['difference'], mark['strokeDash'] !== undefined]);
    expect(rules(withMargin!)).toEqual([
      [0, false],
      [2, true],
      [-2, true],
    ]);
    expect(rules(without!)).toEqual([[0, false]]);
  });

  it('leave the panel of what is no result empty and say so', () => {
    const panels = panelsOf(smallMultiples(withInvalid)!).slice(2);
    expect(panels.map((panel) => wordsOf(panel).slice(2))).toEqual([
      ['not a result', 'cannot be compared'],
      ['not a result', 'units or changes to be checked first'],
      ['not a result', 'too few pulls'],
    ]);
    for (const panel of panels) expect(new Set(panel.map(({ mark }) => mark.type))).toEqual(new Set(['rect', 'text']));
  });

  it('are not there where nothing is a result, and refuse no comparison at all', () => {
    expect(smallMultiples(pick('cannot be compared', 'too few pulls'))).toBeUndefined();
    expect(() => smallMultiples([])).toThrow(
      'smallMultiples: comparisons must be at least one comparison, got none. Make them with compareAll(baseline, candidates).',
    );
  });

  it.each([
    [1, [1]],
    [2, [2]],
    [3, [3]],
    [4, [2, 2]],
    [5, [3, 2]],
    [7, [3, 3, 1]],
  ])('stand up to three across in evenly filled rows, and one across on a phone: %d', (count, rows) => {
    const many = Array.from({ length: count }, () => outcomes['better']!);
    const perRow = (width: number): number[] => {
      const tops = panelsOf(smallMultiples(many, { width })!).map((one) => borderOf(one).encoding.y.scale!.range[1]);
      return [...new Set(tops)].map((top) => tops.filter((one) => one === top).length);
    };
    expect(perRow(720)).toEqual(rows);
    expect(perRow(360)).toEqual(many.map(() => 1));
  });

  it('lay no panel over another, and keep all inside the picture', () => {
    for (const width of [720, 360])
      for (const comparisons of [withInvalid, torqueToo]) {
        const spec = smallMultiples(comparisons, { width })!;
        const boxes = panelsOf(spec).map((panel) => {
          const { x, y } = borderOf(panel).encoding;
          return {
            left: x.scale!.range[0],
            right: x.scale!.range[1],
            top: y.scale!.range[1],
            bottom: y.scale!.range[0],
          };
        });
        boxes.forEach((box, i) => {
          expect(box.left).toBeGreaterThanOrEqual(0);
          expect(box.right).toBeLessThanOrEqual(spec.width + 1e-9);
          expect(box.bottom).toBeLessThanOrEqual(spec.height);
          for (const other of boxes.slice(i + 1))
            expect(other.left > box.right || other.top > box.bottom || other.right < box.left).toBe(true);
        });
      }
  });

  it('tell what they show to readers who do not see them', () => {
    const { description, usermeta } = smallMultiples(pick('better', 'not resolved', 'unit suspected'))!;
    expect(usermeta.title).toBe('3 differences over engine speed, side by side');
    expect(description).toContain('95 % band for the whole curve at once');
    expect(description).toContain(
      'tall core minus stock core: mean +3.8 kW, between +2.7 and +4.9 kW, from 3500 to 6500 rpm; better at 3700 rpm (+1.8 kW), better from 3900 to 6500 rpm (+4.1 kW); dashed at ±2.0 kW.',
    );
    expect(description).toContain('tall core + duct minus tall core: mean +1.1 kW');
    expect(description).toContain('resolved nowhere');
    expect(description).toContain('tall core minus stock core: not a result, units or changes to be checked first.');
  });

  it('become a well-formed SVG that shows a hostile name as text', async () => {
    const name = `<script>alert("1")</script> ]]> & 'x' \u202E`;
    const hostile = demoDay(({ setup }) => (setup === 'tall core' ? { setup: name } : {}));
    const svg = await renderSvg(smallMultiples([compared(hostile, 'stock core', name), ...withInvalid])!, {
      id: 'one',
    });
    expect(problemsOf(svg)).toEqual([]);
    expect(svg).toContain('&lt;script&gt;');
    expect(svg).not.toMatch(/<script|\u202E|href=|NaN|undefined/);
    expect(svg).toContain('aria-labelledby="one-title" aria-describedby="one-desc"');
  });
});
