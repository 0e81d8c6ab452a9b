import { describe, expect, it } from 'vitest';
import { bestTransferUnitsCrossflowBothMixed, effectiveness } from '../../src/intercooler/index.js';
import { effectivenessChart } from '../../src/plot/effectiveness-chart.js';
import { renderSvg } from '../../src/plot/render.js';
import { ratio } from '../../src/units/index.js';

interface Layer {
  readonly data: { readonly values: readonly { readonly units: number; readonly effectiveness: number }[] };
  readonly mark: { readonly type: string; readonly color: string; readonly text?: readonly string[] };
}

const layersOf = (options: Parameters<typeof effectivenessChart>[0], type: string): Layer[] =>
  (effectivenessChart(options)['layer'] as unknown as Layer[]).filter(({ mark }) => mark.type === type);

describe('the chart of effectiveness', () => {
  it('has one curve for each capacity ratio, from nothing to the end of the axis, on the relation itself', () => {
    const curves = layersOf({ arrangement: 'counterflow', transferUnits: ratio(4) }, 'line');
    expect(curves).toHaveLength(5);
    curves.forEach(({ data: { values } }, i) => {
      expect(values[0]).toEqual({ units: 0, effectiveness: 0 });
      expect(values.at(-1)!.units).toBe(4);
      for (const point of values)
        expect(point.effectiveness).toBeCloseTo(100 * effectiveness.counterflow.kernel(point.units, i / 4), 10);
    });
    expect(new Set(curves.map(({ mark }) => mark.color)).size).toBe(5);
  });

  it('marks the best size where both flows mix, and nowhere else', () => {
    const both = { arrangement: 'crossflowBothMixed', transferUnits: ratio(10) } as const;
    const dots = layersOf(both, 'point').map(({ data }) => data.values[0]!.units);
    expect(dots).toEqual([0.25, 0.5, 0.75, 1].map((C) => bestTransferUnitsCrossflowBothMixed.kernel(C)));
    expect(layersOf({ ...both, transferUnits: ratio(4) }, 'point')).toHaveLength(2);
    expect(layersOf({}, 'point')).toEqual([]);
  });

  it('draws passes in overall counterflow', () => {
    const [curve] = layersOf({ passes: ratio(2), capacityRatios: [ratio(0.5)], transferUnits: ratio(2) }, 'line');
    // Two-pass cross-counterflow of unmixed cells, computed apart with mpmath.
    expect(curve!.data.values.at(-1)!.effectiveness).toBeCloseTo(75.913558, 6);
  });

  it('marks cores by name, in the picture and in words', () => {
    const cores = [
      { name: 'fan on', transferUnits: ratio(2.93), effectiveness: ratio(0.8703) },
      { name: 'beyond the axis', transferUnits: ratio(9), effectiveness: ratio(0.9) },
    ];
    const names = layersOf({ cores }, 'text').flatMap(({ mark }) => mark.text ?? []);
    expect(names).toContain('fan on');
    expect(names).not.toContain('beyond the axis');
    expect(effectivenessChart({ cores }).description).toContain('fan on: 87.0 % with 2.93 transfer units.');
  });

  it('says in words what it shows', () => {
    const { description, usermeta } = effectivenessChart({ passes: ratio(2) });
    expect(usermeta.title).toBe(
      'Crossflow effectiveness, both flows unmixed, 2 passes in overall counterflow, over transfer units',
    );
    expect(description).toMatch(/With 5\.0 transfer units: 99\.3 % at capacity ratio 0, .* at capacity ratio 1\./);
  });

  it('keeps its labels apart and inside, on paper and on a phone', async () => {
    for (const width of [720, 360]) {
      const svg = await renderSvg(effectivenessChart({ arrangement: 'counterflow', width }));
      const heights = ['0', '0.25', '0.5', '0.75', '1'].map((name) => {
        const [, y] = new RegExp(`translate\\([\\d.]+,([\\d.]+)\\)"[^>]*font-weight="bold"[^>]*>${name}<`).exec(svg)!;
        return Number(y);
      });
      heights.forEach((y, i) => i > 0 && expect(y - heights[i - 1]!).toBeGreaterThanOrEqual(13.9));
      expect(svg).toContain(`width="${width}"`);
    }
  });

  it('refuses a chart without curves, and an impossible capacity ratio', () => {
    expect(() => effectivenessChart({ capacityRatios: [] })).toThrow(/at least one capacity ratio/);
    expect(() => effectivenessChart({ capacityRatios: [ratio(2)] })).toThrow(/capacityRatio must be between 0 and 1/);
  });
});
