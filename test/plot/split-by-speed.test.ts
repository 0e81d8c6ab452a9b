import { describe, expect, it } from 'vitest';
import { renderSvg, splitBySpeedPlot, type PlotSpec } from '../../src/plot/index.js';
import { compared, demoDay, everyOutcome } from './demo.js';

interface Layer {
  readonly mark: { readonly type: string; readonly [key: string]: unknown };
  readonly data: { readonly values: readonly { readonly [key: string]: number }[] };
  readonly encoding: { readonly y?: { readonly scale?: { readonly domain: readonly number[] } } };
}

const comparison = compared(demoDay());
const spec = splitBySpeedPlot(comparison)!;
const panelsOf = (plot: PlotSpec): Layer[][] =>
  (plot['layer'] as readonly { readonly layer?: Layer[] }[]).flatMap(({ layer }) => (layer ? [layer] : []));
const marks = (panel: readonly Layer[], type: string): Layer[] => panel.filter(({ mark }) => mark.type === type);
const wordsOf = (panel: readonly Layer[]): string =>
  marks(panel, 'text')
    .flatMap(({ mark }) => mark['text'])
    .join(' ');

describe('the causes over engine speed', () => {
  it('have a panel each, named, in the order of the split', () => {
    expect(panelsOf(spec).map((panel) => wordsOf(panel).replace(/ [+−].*/, ''))).toEqual(
      comparison.split!.contributions.map(({ factor }) => factor),
    );
  });

  it('draw the part and its band at each speed', () => {
    const [curve] = comparison.split!.bySpeed;
    const line = marks(panelsOf(spec)[0]!, 'line')[0]!.data.values;
    const area = marks(panelsOf(spec)[0]!, 'area')[0]!.data.values;
    expect(line).toHaveLength(31);
    expect(line[10]).toMatchObject({ speed: 4500, difference: curve!.part.in('kW' as '1')[10]! });
    expect(area[10]!.low).toBeCloseTo(curve!.simultaneous.low.si[10]! / 1000, 9);
    expect(area[10]!.high).toBeCloseTo(curve!.simultaneous.high.si[10]! / 1000, 9);
  });

  it('share one scale, so that heights compare', () => {
    const domains = panelsOf(spec).map((panel) => marks(panel, 'line')[0]!.encoding.y!.scale!.domain.join());
    expect(new Set(domains).size).toBe(1);
  });

  it('mark where the band clears zero, by ink and by dash', () => {
    const bars = panelsOf(spec).map((panel) => marks(panel, 'rule').filter(({ mark }) => mark['strokeWidth'] === 5));
    const { bySpeed } = comparison.split!;
    expect(bars.map((own) => own.length)).toEqual(bySpeed.map(({ ranges }) => ranges.length));
    bars.forEach((own, i) => {
      own.forEach(({ mark }, k) => {
        expect(mark['strokeDash'] !== undefined).toBe(bySpeed[i]!.ranges[k]!.outcome === 'lowered');
      });
    });
    expect(bars.flat().some(({ mark }) => mark['strokeDash'] !== undefined)).toBe(true);
  });

  it('say in words what they show', () => {
    expect(spec.description).toMatch(
      /^6 panels, one for each factor .* charge temperature raised it from 3500 to 6500 rpm/,
    );
    expect(spec.description).toMatch(/nowhere clear of zero: .*conversion efficiency\.$/);
    expect(spec.usermeta.title).toContain('over engine speed');
  });

  it('stand one below the other on a phone', async () => {
    const narrow = splitBySpeedPlot(comparison, { width: 360 })!;
    expect(narrow.height).toBeGreaterThan(2 * spec.height);
    expect(await renderSvg(narrow)).toContain('volumetric efficiency');
  });

  it('are not drawn of what is no result', () => {
    const outcomes = everyOutcome();
    for (const outcome of ['cannot be compared', 'unit suspected', 'too few pulls'])
      expect(splitBySpeedPlot(outcomes[outcome]!)).toBeUndefined();
  });
});
