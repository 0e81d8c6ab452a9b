import { compile, type TopLevelSpec } from 'vega-lite';
import { describe, expect, it } from 'vitest';
import { compressorMap } from '../../src/compressor/index.js';
import { compressorMapPlot, type OperatingLine } from '../../src/plot/compressor-map.js';
import { contourLines } from '../../src/plot/contours.js';
import { renderSvg } from '../../src/plot/render.js';
import type { PlotSpec } from '../../src/plot/spec.js';
import { massFlow, ratio } from '../../src/units/index.js';
import { demoMap } from '../compressor/demo-map.js';

const map = demoMap();
const lineOf = (name: string, shift = 0): OperatingLine => ({
  name,
  points: [120, 150, 180, 210].map((grams, i) => ({
    correctedFlow: massFlow(grams + shift, 'g/s'),
    pressureRatio: ratio(2.1 + 0.03 * i),
    label: `${3500 + 1000 * i}`,
  })),
});

interface Layer {
  readonly data: { readonly values: readonly Readonly<Record<string, number | string>>[] };
  readonly mark: Readonly<Record<string, unknown>>;
}
const layersOf = (spec: PlotSpec, mark: string): Layer[] =>
  (spec['layer'] as unknown as Layer[]).filter((layer) => layer.mark['type'] === mark);
const textsOf = (spec: PlotSpec): string[] =>
  layersOf(spec, 'text').flatMap(({ data, mark }) => [
    ...((mark['text'] as string[] | undefined) ?? []),
    ...data.values.flatMap(({ text }) => (text === undefined ? [] : [String(text)])),
  ]);

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

describe('the picture of a compressor map', () => {
  it.each([720, 360])('is plain data of the size asked for, and compiles without a warning: %i wide', (width) => {
    const spec = compressorMapPlot(map, { width, operatingLines: [lineOf('stock core'), lineOf('tall core', 8)] });
    expect(warningsOf(spec)).toEqual([]);
    expect(JSON.parse(JSON.stringify(spec))).toEqual(spec);
    const { left, right } = spec['padding'] as { left: number; right: number };
    expect(spec.width + left + right).toBeCloseTo(width, 9);
  });

  it('shows every speed line through its points, the surge line and the operating lines', () => {
    const spec = compressorMapPlot(map, { flowUnit: 'g/s', operatingLines: [lineOf('stock core')] });
    const [contours, speeds, surge, operating] = layersOf(spec, 'line');
    expect(new Set(speeds!.data.values.map(({ line }) => line)).size).toBe(map.speedLines.length);
    for (const { correctedFlow } of map.speedLines.map(({ points }) => points.at(-1)!))
      expect(speeds!.data.values.some(({ x }) => Math.abs(Number(x) - correctedFlow.in('g/s')) < 1e-6)).toBe(true);
    expect(contours!.data.values.length).toBeGreaterThan(100);
    expect(surge!.data.values[0]).toMatchObject({ x: expect.closeTo(41.4, 6), y: expect.closeTo(1.26, 6) });
    expect(operating!.data.values.map(({ x }) => x)).toEqual([120, 150, 180, 210]);
    expect(textsOf(spec)).toEqual(
      expect.arrayContaining(['70 %', '160\u00A0000 rpm', '70\u00A0000', 'surge', '3500', 'stock core']),
    );
  });

  it('draws efficiency where the map has it', () => {
    const [contours] = layersOf(compressorMapPlot(map), 'line');
    const levels = [0.55, 0.6, 0.65, 0.7, 0.72, 0.74, 0.75, 0.76];
    for (const { x, y } of contours!.data.values.filter((_, i) => i % 7 === 0)) {
      const inward = (value: number, centre: number): number => centre + (value - centre) * 0.9999;
      const point = {
        correctedFlow: massFlow(inward(Number(x), 0.16), 'kg/s'),
        pressureRatio: ratio(inward(Number(y), 1.9)),
      };
      const efficiency = map.isentropicEfficiency(point).si;
      expect(Math.min(...levels.map((level) => Math.abs(level - efficiency)))).toBeLessThan(0.003);
    }
  });

  it('leaves out labels that would stand on each other', () => {
    const close = lineOf('stock core');
    const points = close.points.map((point, i) => ({ ...point, correctedFlow: massFlow(150 + i, 'g/s') }));
    const texts = textsOf(compressorMapPlot(map, { operatingLines: [{ ...close, points }] }));
    expect(texts).toContain('3500');
    expect(texts).not.toContain('4500');
  });

  it('takes the surge line that is given', () => {
    const surgeLine = [50, 160].map((grams, i) => ({
      correctedFlow: massFlow(grams, 'g/s'),
      pressureRatio: ratio(1.3 + 1.6 * i),
    }));
    const [, , surge] = layersOf(compressorMapPlot(compressorMap({ ...map, surgeLine }), { flowUnit: 'g/s' }), 'line');
    expect(surge!.data.values.map(({ x, y }) => [x, y])).toEqual([
      [50, 1.3],
      [160, expect.closeTo(2.9, 12)],
    ]);
  });

  it('draws names as text, whatever they hold, and says in words what it shows', async () => {
    const spec = compressorMapPlot(map, {
      operatingLines: [lineOf('<script>alert(1)</script> \u202Ecore'), { name: 'nothing', points: [] }],
    });
    const svg = await renderSvg(spec);
    expect(svg).not.toContain('<script');
    expect(svg).not.toContain('\u202E');
    expect(svg).toMatch(/<title[^>]*>Compressor map of hill-climb compressor<\/title>/);
    expect(spec.description).toContain(
      '6 speed lines from 70000 rpm to 160000 rpm and lines of equal efficiency up to 76 %',
    );
    expect(spec.description).toContain('4 points from 120 g/s at 2.10 to 210 g/s at 2.19');
    expect(spec.description).toContain('nothing: no points');
  });

  it('needs a map that was made by compressorMap', () => {
    expect(() => compressorMapPlot(JSON.parse(JSON.stringify(map)) as typeof map)).toThrow(
      /map must be a map made by compressorMap/,
    );
  });
});

describe('contour lines', () => {
  const grid = (height: (x: number, y: number) => number, n = 40) =>
    Array.from({ length: n + 1 }, (_, i) =>
      Array.from({ length: n + 1 }, (_, j) => {
        const [x, y] = [(2 * j) / n - 1, (2 * i) / n - 1];
        return { x, y, height: height(x, y) };
      }),
    );

  it('of a bowl are one closed circle each', () => {
    const [circle, ...others] = contourLines(
      grid((x, y) => x * x + y * y),
      0.5,
    );
    expect(others).toEqual([]);
    expect(circle![0]).toEqual(circle!.at(-1));
    for (const { x, y } of circle!) expect(Math.hypot(x, y)).toBeCloseTo(Math.SQRT1_2, 2);
  });

  it('of a slope go from edge to edge in order', () => {
    const [line, ...others] = contourLines(
      grid((x) => x),
      0.33,
    );
    expect(others).toEqual([]);
    expect(line!.length).toBe(41);
    const heights = line!.map(({ y }) => y);
    expect(heights).toEqual(heights.toSorted((a, b) => (heights[0]! < 0 ? a - b : b - a)));
    for (const { x } of line!) expect(x).toBeCloseTo(0.33, 12);
  });

  it('are none where the height is not reached', () => {
    expect(
      contourLines(
        grid((x) => x),
        2,
      ),
    ).toEqual([]);
  });
});
