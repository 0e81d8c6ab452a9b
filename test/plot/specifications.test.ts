import { compile, type TopLevelSpec } from 'vega-lite';
import { describe, expect, it } from 'vitest';
import { compare } from '../../src/comparison/index.js';
import {
  differencePlot,
  overlayPlot,
  pullsPlot,
  splitBySpeedPlot,
  splitPlot,
  type PlotSpec,
} from '../../src/plot/index.js';
import { splitBars } from '../../src/plot/split.js';
import { isNoResult, numberOf } from '../../src/plot/words.js';
import { demoDay, everyOutcome, options } from './demo.js';

const outcomes = everyOutcome();
const plots = { overlayPlot, differencePlot, splitPlot, splitBySpeedPlot, pullsPlot };
const drawn = Object.entries(outcomes).flatMap(([outcome, comparison]) =>
  Object.entries(plots).flatMap(([name, plot]) =>
    [720, 360].flatMap((width) => {
      const spec = plot(comparison, { width });
      return spec === undefined ? [] : [{ name: `${name} of "${outcome}", ${width} wide`, spec, width }];
    }),
  ),
);

/** Everything the compiler has to say about a specification. */
function warningsOf(spec: PlotSpec): string[] {
  const said: string[] = [];
  const say = (...words: readonly unknown[]): typeof logger => {
    said.push(words.join(' '));
    return logger;
  };
  const logger = { level: () => logger, warn: say, info: () => logger, debug: () => logger, error: say } as never;
  compile(structuredClone(spec) as unknown as TopLevelSpec, { logger });
  return said;
}

/** The layers of a specification that draw a mark. */
function layersOf(
  spec: PlotSpec,
  mark: string,
): { data: { values: Record<string, unknown>[] }; mark: Record<string, unknown> }[] {
  return (spec['layer'] as never[]).filter((layer) => (layer as { mark: { type: string } }).mark.type === mark);
}

describe('the demo day', () => {
  it.each(Object.entries(outcomes))('gives the outcome "%s"', (outcome, comparison) => {
    expect(comparison.outcome).toBe(outcome);
  });
});

describe('a specification', () => {
  it.each(drawn)('compiles without a warning: $name', ({ spec }) => {
    expect(warningsOf(spec)).toEqual([]);
  });

  it.each(drawn)('is plain data of the size asked for: $name', ({ spec, width }) => {
    expect(JSON.parse(JSON.stringify(spec))).toEqual(spec);
    const { left, right } = spec['padding'] as { left: number; right: number };
    expect(spec.width + left + right).toBeCloseTo(width, 9);
    expect(spec.description.length).toBeGreaterThan(40);
    expect(spec.usermeta.title.length).toBeGreaterThan(10);
  });

  it('would be refused with a warning where a channel is misspelt', () => {
    const { spec } = drawn[0]!;
    const wrong = { ...spec, layer: [{ mark: 'point', encoding: { xx: { field: 'a', type: 'quantitative' } } }] };
    expect(warningsOf(wrong)).not.toEqual([]);
  });
});

describe('the picture of both set-ups', () => {
  const spec = overlayPlot(outcomes['better']!);

  it('draws every single pull once, refused ones among them, and two means', () => {
    const [singles, means] = layersOf(spec, 'line');
    expect(new Set(singles!.data.values.map(({ line }) => line)).size).toBe(11);
    expect(new Set(singles!.data.values.filter(({ refused }) => refused).map(({ line }) => line)).size).toBe(1);
    expect(means!.data.values).toHaveLength(2 * 31);
  });

  it('draws the mean that the comparison holds, in its unit', () => {
    const { candidate } = outcomes['better']!;
    const drawnMean = layersOf(spec, 'line')[1]!.data.values.filter(({ side }) => side === 'candidate');
    const held = Array.from(candidate.mean.in('kW' as never));
    expect(drawnMean.map(({ value }) => value)).toEqual(held);
  });

  it('keeps everything drawn inside its axis', () => {
    const [area] = spec['layer'] as {
      data: { values: { low: number; high: number }[] };
      encoding: { y: { scale: { domain: number[] } } };
    }[];
    const [low, high] = area!.encoding.y.scale.domain as [number, number];
    for (const row of area!.data.values) {
      expect(row.low).toBeGreaterThan(low);
      expect(row.high).toBeLessThan(high);
    }
  });

  it('has no shade for a set-up with one pull, which has no scatter', () => {
    const [band] = layersOf(overlayPlot(outcomes['too few pulls']!), 'area');
    expect(new Set(band!.data.values.map(({ side }) => side))).toEqual(new Set(['baseline']));
  });

  it('breaks a line where a pull has a gap instead of drawing across it', () => {
    const day = demoDay(({ path, text }) =>
      path === 'tall core/pull 1.csv'
        ? {
            text: text
              .split('\n')
              .filter((line) => !/;4[5-9]\d\d(,\d+)?;/.test(line))
              .join('\n'),
          }
        : {},
    );
    const comparison = compare(day.setup('stock core'), day.setup('tall core'), {
      ...options,
      limits: { missing: 0.5 },
    });
    const [singles] = layersOf(overlayPlot(comparison), 'line');
    expect(singles!.data.values.some(({ value }) => value === null)).toBe(true);
    expect(singles!.mark['invalid']).toBe('break-paths-filter-domains');
    expect(warningsOf(overlayPlot(comparison))).toEqual([]);
  });
});

describe('the picture of the difference', () => {
  it('marks exactly the ranges that the comparison resolved', () => {
    const marks = layersOf(differencePlot(outcomes['better']!)!, 'rule').filter(
      ({ mark }) => mark['strokeWidth'] === 5,
    );
    const resolved = outcomes['better']!.curve!.ranges.filter(({ outcome }) => outcome === 'better');
    expect(marks).toHaveLength(resolved.length);
    expect(marks.map(({ data }) => data.values[0]!['end'])).toEqual([3750, 6500]);
  });

  it('marks nothing where the comparison is not a result, or nothing is resolved', () => {
    for (const outcome of ['cannot be compared', 'unit suspected', 'not resolved']) {
      const marks = layersOf(differencePlot(outcomes[outcome]!)!, 'rule');
      expect(marks.filter(({ mark }) => mark['strokeWidth'] === 5)).toEqual([]);
    }
  });

  it('draws zero, and the worthwhile difference dashed on both sides only where one was set', () => {
    const at = (spec: PlotSpec) => layersOf(spec, 'rule').map(({ data }) => data.values[0]!['difference']);
    expect(at(differencePlot(outcomes['not resolved']!)!)).toEqual([0, 2, -2]);
    const day = demoDay();
    const { worthwhile: _, ...rest } = options;
    expect(at(differencePlot(compare(day.setup('tall core'), day.setup('tall core + duct'), rest))!)).toEqual([0]);
  });

  it('is not there with too few pulls', () => {
    expect(differencePlot(outcomes['too few pulls']!)).toBeUndefined();
  });
});

describe('the picture of the split', () => {
  it.each(['better', 'worse', 'not resolved', 'equivalent'])('has bars that add up to the total: %s', (outcome) => {
    const { split, overall } = outcomes[outcome]!;
    const bars = splitBars(split!, 'kW');
    const parts = bars.slice(0, -1);
    const total = bars.at(-1)!;
    parts.forEach((bar, i) => expect(bar.start).toBe(i === 0 ? 0 : parts[i - 1]!.end));
    expect(total.isTotal).toBe(true);
    expect(total.start).toBe(0);
    expect(parts.at(-1)!.end).toBeCloseTo(total.end, 9);
    // The split is of means of logarithms, the answer of plain means: the two lie within a small part of the uncertainty.
    const beside = Math.abs(total.end - numberOf(overall!.value, 'kW'));
    expect(beside).toBeLessThan(0.01 * numberOf(overall!.standardUncertainty, 'kW'));
  });

  it('puts each whisker around the end of its bar', () => {
    for (const { start, end, low, high } of splitBars(outcomes['better']!.split!, 'kW')) {
      expect(low).toBeLessThan(end);
      expect(high).toBeGreaterThan(end);
      expect(start).not.toBeNaN();
    }
  });

  it('fills what raises the result and outlines what lowers it', () => {
    const filters = layersOf(splitPlot(outcomes['better']!)!, 'rect').map((layer) =>
      JSON.stringify((layer as { transform?: unknown }).transform),
    );
    expect(filters).toEqual([
      '[{"filter":"datum.isTotal || datum.end >= datum.start"}]',
      '[{"filter":"!datum.isTotal && datum.end < datum.start"}]',
    ]);
  });

  it('is not there where no cause may be given', () => {
    for (const [outcome, comparison] of Object.entries(outcomes))
      expect(splitPlot(comparison) === undefined, outcome).toBe(isNoResult(comparison.outcome));
  });
});

describe('the picture of the pulls', () => {
  it('shows each pull at its place in the day and crosses out the refused one', () => {
    const points = layersOf(pullsPlot(outcomes['better']!)!, 'point');
    const values = points[0]!.data.values;
    expect(values.map(({ place }) => place)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect(values.filter(({ refused }) => refused)).toHaveLength(1);
  });

  it('says so where the order of the day is not known', () => {
    const day = demoDay(({ text }) => ({ text: text.replace(/Clock/g, 'Spare') }));
    const spec = pullsPlot(compare(day.setup('stock core'), day.setup('tall core'), options))!;
    expect(JSON.stringify(spec)).toContain('order of the day not known');
    expect(spec.description).toContain('the order of the day not being known');
  });
});
