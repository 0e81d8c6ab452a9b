import { afterEach, describe, expect, it, vi } from 'vitest';
import { CalculationError } from '../../src/units/index.js';
import { differencePlot, intervalBar, overlayPlot, pullsPlot, renderSvg, splitPlot } from '../../src/plot/index.js';
import { tickLabels, withTicks } from '../../src/plot/axis.js';
import { meanBand } from '../../src/plot/mean-band.js';
import { DASH, INK } from '../../src/plot/spec.js';
import { labelLines, labelText } from '../../src/plot/words.js';
import { like } from '../../src/comparison/words.js';
import { seeded } from '../support/random.js';
import { problemsOf } from '../report/well-formed.js';
import { compared, demoDay, everyOutcome } from './demo.js';

const outcomes = everyOutcome();
const better = outcomes['better']!;
const hostile = `<script>alert("1")</script> ]]> & 'x' \u202E`;

describe('drawing a picture', () => {
  it.each([
    ['overlay', overlayPlot(better)],
    ['difference', differencePlot(better)!],
    ['split', splitPlot(better)!],
    ['pulls', pullsPlot(better)!],
  ])('gives a static, named, well-formed SVG: %s', async (_, spec) => {
    const svg = await renderSvg(spec, { id: 'one' });
    expect(problemsOf(svg)).toEqual([]);
    expect(svg).toMatch(/^<svg [^>]*role="img" aria-labelledby="one-title" aria-describedby="one-desc"/);
    expect(svg).toContain(`<title id="one-title">${spec.usermeta.title}</title>`);
    expect(svg).toContain('<text ');
    expect(svg).not.toMatch(/<script|<image|<foreignObject|href=|@import|onload|NaN|undefined/);
    expect(svg.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:/);
  });

  it('gives two pictures of one page ids of their own, also where none are given', async () => {
    const ids = (svg: string): string[] => [...svg.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]!);
    const pictures = [await renderSvg(overlayPlot(better)), await renderSvg(differencePlot(better)!)].map(ids);
    expect(new Set(pictures.flat()).size).toBe(pictures.flat().length);
    const [again] = [await renderSvg(overlayPlot(better))].map(ids);
    expect(again).toEqual(pictures[0]);
  });

  it('points every reference inside a picture to an id that is there', async () => {
    const svg = await renderSvg({ ...overlayPlot(better), layer: [{ ...CLIPPED }] }, { id: 'two words' });
    const used = [...svg.matchAll(/url\(#([^)]+)\)/g)].map((match) => match[1]!);
    expect(used.length).toBeGreaterThan(0);
    for (const id of used) expect(svg).toContain(` id="${id}"`);
    expect(used[0]).toMatch(/^two-words-/);
  });

  it('shows a hostile name as text and nothing else', async () => {
    const day = demoDay(({ setup }) => (setup === 'tall core' ? { setup: hostile } : {}));
    const comparison = compared(day, 'stock core', hostile);
    for (const spec of [overlayPlot(comparison), pullsPlot(comparison)!, differencePlot(comparison)!]) {
      const svg = await renderSvg(spec);
      expect(problemsOf(svg)).toEqual([]);
      expect(svg).not.toContain('<script');
      expect(svg).not.toContain('\u202E');
      expect(svg).toContain('&lt;script&gt;');
    }
    const bar = intervalBar(comparison)!;
    expect(problemsOf(bar)).toEqual([]);
    expect(bar).not.toContain('<script');
  });
});

const CLIPPED = {
  data: { values: [{ a: 1 }] },
  mark: { type: 'point', clip: true },
  encoding: { x: { field: 'a', type: 'quantitative' } },
} as const;

describe('drawing without the optional packages', () => {
  afterEach(() => {
    vi.doUnmock('vega');
    vi.resetModules();
  });

  it('says what to install', async () => {
    vi.resetModules();
    vi.doMock('vega', () => {
      throw new Error("Cannot find package 'vega'");
    });
    const { renderSvg: draw } = await import('../../src/plot/render.js');
    const drawing = draw(overlayPlot(better));
    await expect(drawing).rejects.toThrow(/renderSvg: .*vega and vega-lite.*npm install vega@6 vega-lite@6/s);
    await expect(drawing).rejects.toMatchObject({ name: CalculationError.name, problems: [{ code: 'missing' }] });
  });
});

describe('the interval bar', () => {
  it('shows zero, the interval and the worthwhile difference in words and in place', () => {
    const bar = intervalBar(better, { id: 'bar' })!;
    expect(problemsOf(bar)).toEqual([]);
    expect(bar).toContain('>+3.8 kW, between +2.7 and +4.9 kW</text>');
    expect(bar).toContain('>0</text>');
    expect(bar.match(/stroke-dasharray/g)).toHaveLength(2);
    const at = (x: string): number => Number(new RegExp(`x1="([\\d.]+)%" x2="[\\d.]+%" ${x}`).exec(bar)![1]);
    expect(at('y1="40"')).toBeGreaterThan(at('y1="24" y2="62"'));
  });

  it('stands on a line of its own where the difference is exactly nothing', () => {
    const nothing = like(better.overall!.value, 0);
    const overall = { ...better.overall!, value: nothing, low: nothing, high: nothing };
    const bar = intervalBar({ ...better, overall, worthwhile: undefined })!;
    expect(bar).not.toContain('NaN');
    expect(bar).toContain('x1="50.00%" x2="50.00%" y1="40"');
  });

  it('is not drawn where there is no result', () => {
    for (const outcome of ['cannot be compared', 'unit suspected', 'too few pulls'])
      expect(intervalBar(outcomes[outcome]!)).toBeUndefined();
  });
});

describe('the band of one mean curve', () => {
  it('holds the whole true curve in about 95 of 100 draws', () => {
    const random = seeded(20240504);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const grid = Array.from({ length: 31 }, (_, i) => i);
    const pull = (): number[] => {
      const [level, tilt, bow] = [normal(), normal(), normal()];
      const ripple = grid.map(normal);
      return grid.map(
        (x) => level + (tilt * (x - 15)) / 15 + bow * Math.sin(x / 3) + 0.5 * (ripple[x]! + (ripple[x + 1] ?? 0)),
      );
    };
    const draws = 600;
    let held = 0;
    for (let i = 0; i < draws; i++) {
      const pulls = Array.from({ length: 5 }, pull);
      const half = meanBand(grid, pulls, 0.95)!;
      const isHeld = grid.every((_, x) => Math.abs(pulls.reduce((sum, one) => sum + one[x]!, 0) / 5) <= half[x]!);
      if (isHeld) held++;
    }
    // Three standard deviations of a share of 0.95 in 600 draws are 0.027.
    expect(held / draws).toBeGreaterThan(0.95 - 0.027);
    expect(held / draws).toBeLessThan(0.995);
  });

  it('is wider for more confidence, and for fewer pulls', () => {
    const random = seeded(7);
    const grid = Array.from({ length: 20 }, (_, i) => i);
    const pulls = Array.from({ length: 8 }, () => grid.map(() => random()));
    const width = (count: number, confidence: number): number =>
      meanBand(grid, pulls.slice(0, count), confidence)![10]!;
    expect(width(8, 0.99)).toBeGreaterThan(width(8, 0.95));
    expect(width(4, 0.95)).toBeGreaterThan(width(8, 0.95));
  });

  it('is not there for one pull, or for copies of one pull', () => {
    const grid = [1, 2, 3];
    expect(meanBand(grid, [[1, 2, 3]], 0.95)).toBeUndefined();
    expect(
      meanBand(
        grid,
        [
          [1, 2, 3],
          [1, 2, 3],
        ],
        0.95,
      ),
    ).toBeUndefined();
  });
});

describe('an axis', () => {
  it.each([
    [95, 171, 5, [100, 120, 140, 160]],
    [-3.1, 8.4, 5, [0, 5]],
    [3500, 6500, 6, [3500, 4000, 4500, 5000, 5500, 6000, 6500]],
    [-0.012, 0.031, 4, [0, 0.02]],
  ])('from %d to %d has round numbers on it', (low, high, count, ticks) => {
    expect(withTicks(low, high, count).ticks).toEqual(ticks);
  });

  it('writes a true minus sign, and a plus where a change is meant', () => {
    expect(tickLabels(withTicks(-2, 2, 2), true)).toContain("'−2'");
    expect(tickLabels(withTicks(-2, 2, 2), true)).toContain("'+2'");
    expect(tickLabels(withTicks(-0.4, 0.4, 4))).toContain("'−0.2'");
  });
});

describe('the two inks', () => {
  /** Relative luminance and contrast as WCAG 2.2 defines them (from memory). */
  const luminance = (hex: string): number => {
    const [r, g, b] = [1, 3, 5].map((at) => {
      const c = parseInt(hex.slice(at, at + 2), 16) / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const onWhite = (hex: string): number => 1.05 / (luminance(hex) + 0.05);

  it('reads as text on white paper, with the quiet grey', () => {
    expect(onWhite('#767676')).toBeCloseTo(4.54, 2);
    for (const ink of [INK.baseline, INK.candidate, INK.text, INK.quiet]) expect(onWhite(ink)).toBeGreaterThan(4.5);
  });

  it('is told apart without colour by its dashes', () => {
    expect(DASH.baseline).not.toEqual(DASH.candidate);
  });
});

describe('a label', () => {
  it('shows characters that cannot be seen, and cuts what is too long', () => {
    expect(labelText('a\u0000b\u202Ec\nd')).toBe('a\uFFFDb\uFFFDc\uFFFDd');
    expect(labelText('x'.repeat(60))).toBe(`${'x'.repeat(39)}…`);
    expect(labelText('tall core')).toBe('tall core');
  });

  it('breaks at a space into two lines at most', () => {
    expect(labelLines('tall core + duct', 12)).toEqual(['tall core +', 'duct']);
    expect(labelLines('tall core', 12)).toEqual(['tall core']);
    expect(
      labelLines('unbreakablename-of-a-set-up-that-goes-on', 12).every((line) => Array.from(line).length <= 12),
    ).toBe(true);
    expect(labelLines('unbreakablename-of-a-set-up-that-goes-on', 12)).toHaveLength(2);
  });
});
