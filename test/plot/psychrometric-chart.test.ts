import { describe, expect, it } from 'vitest';
import { psychrometricChart } from '../../src/plot/psychrometric-chart.js';
import { renderSvg } from '../../src/plot/render.js';
import { humidAir, wetBulb } from '../../src/psychrometrics/index.js';
import { absolutePressure, humidityRatio, relativeHumidity, temperature } from '../../src/units/index.js';

const pressure = absolutePressure(941, 'hPa');
const room = humidAir({ pressure, temperature: temperature(18, '°C'), relativeHumidity: relativeHumidity(45, '%') });
const hot = humidAir({ pressure, temperature: temperature(45, '°C'), humidityRatio: room.humidityRatio });
const states = [
  { name: 'room', air: room },
  { name: 'behind the radiator', air: hot },
];

interface Row {
  readonly t: number;
  readonly w: number;
  readonly label?: string;
  readonly name?: string;
}
interface Layer {
  readonly data: { readonly values: readonly Row[] };
  readonly mark: { readonly type: string; readonly strokeDash?: unknown; readonly strokeWidth?: number };
}
const layersOf = (spec: ReturnType<typeof psychrometricChart>): readonly Layer[] =>
  spec['layer'] as unknown as readonly Layer[];
const humidityLines = (spec: ReturnType<typeof psychrometricChart>): readonly Row[] => layersOf(spec)[0]!.data.values;
const wetBulbLines = (spec: ReturnType<typeof psychrometricChart>): readonly Row[] => layersOf(spec)[1]!.data.values;
const saturation = (spec: ReturnType<typeof psychrometricChart>): readonly Row[] => layersOf(spec)[2]!.data.values;

describe('the psychrometric chart', () => {
  it('has on its saturation curve the humidity ratios of the ASHRAE 2017 formulas', () => {
    // W = 0.621945 ps / (p - ps) with ps(0 °C) 611.154 Pa and ps(25 °C) 3169.216 Pa, ASHRAE Fundamentals 2017 chapter 1.
    const spec = psychrometricChart({ pressure: absolutePressure(101325, 'Pa'), to: temperature(25, '°C') });
    expect(saturation(spec)[0]).toMatchObject({ t: 0, w: expect.closeTo(3.774, 3) as number });
    const wide = psychrometricChart({
      pressure: absolutePressure(101325, 'Pa'),
      states: [],
      to: temperature(60, '°C'),
    });
    const near25 = saturation(wide).reduce((best, row) => (Math.abs(row.t - 25) < Math.abs(best.t - 25) ? row : best));
    expect(near25.w).toBeGreaterThan(19);
    expect(near25.w).toBeLessThan(21.5);
  });

  it('has lines of relative humidity in order, up to saturation', () => {
    const spec = psychrometricChart({ pressure });
    const at0 = humidityLines(spec).filter(({ t }) => t === 0);
    expect(at0.map(({ label }) => label)).toEqual(['80 %', '60 %', '40 %', '20 %', '10 %']);
    at0.slice(1).forEach((row, i) => expect(row.w).toBeLessThan(at0[i]!.w));
    expect(saturation(spec)[0]!.w).toBeGreaterThan(at0[0]!.w);
  });

  it('has lines along which the wet bulb stays', () => {
    const line = wetBulbLines(psychrometricChart({ pressure })).filter(({ label, w }) => label === '15 °C' && w > 0.01);
    expect(line.length).toBeGreaterThan(20);
    for (const { t, w } of line) expect(wetBulb.kernel(t + 273.15, pressure.si, w / 1000) - 273.15).toBeCloseTo(15, 9);
  });

  it('stays inside its frame', () => {
    for (const model of ['perfect gas', 'real gas'] as const) {
      const spec = psychrometricChart({
        pressure: absolutePressure(204, 'kPa'),
        model,
        from: temperature(-20, '°C'),
        to: temperature(60, '°C'),
      });
      const { values } = layersOf(spec)[0]!.data;
      expect(values.every(({ t, w }) => t >= -20 && t <= 60 && w >= 0 && Number.isFinite(w))).toBe(true);
      const top = Math.max(...saturation(spec).map(({ w }) => w));
      expect(Math.max(...values.map(({ w }) => w))).toBeLessThanOrEqual(top);
    }
  });

  it('marks states by name, joins them when asked, and says them in words', () => {
    const spec = psychrometricChart({ states, joined: true });
    const joined = layersOf(spec).find(({ mark, data }) => mark.type === 'line' && data.values[0]?.name === 'room');
    expect(joined!.data.values.map(({ t }) => t)).toEqual([expect.closeTo(18, 9), expect.closeTo(45, 9)]);
    expect(
      layersOf(psychrometricChart({ states })).some(({ mark, data }) => mark.type === 'line' && data.values[0]?.name),
    ).toBe(false);
    expect(spec.usermeta.title).toMatch(/^Psychrometric chart at 941\S* hPa$/);
    expect(spec.description).toContain('behind the radiator: humid air at 45');
  });

  it('grows to hold states beyond its usual ends', () => {
    const steam = humidAir({ pressure, temperature: temperature(70, '°C'), humidityRatio: humidityRatio(90, 'g/kg') });
    const spec = psychrometricChart({ states: [{ name: 'steam bath', air: steam }] });
    const all = layersOf(spec).flatMap(({ data }) => data.values);
    expect(Math.max(...saturation(spec).map(({ w }) => w))).toBeGreaterThan(90);
    expect(Math.max(...all.map(({ t }) => t))).toBe(75);
  });

  it('refuses a state at another pressure, no pressure at all, and ends in no order', () => {
    const charge = humidAir({
      pressure: absolutePressure(204, 'kPa'),
      temperature: temperature(45, '°C'),
      humidityRatio: room.humidityRatio,
    });
    expect(() => psychrometricChart({ states: [...states, { name: 'charge', air: charge }] })).toThrow(/charge at 204/);
    expect(() => psychrometricChart({})).toThrow('a pressure or a state of air');
    expect(() => psychrometricChart({ pressure, from: temperature(30, '°C'), to: temperature(10, '°C') })).toThrow(
      'from below to',
    );
  });

  it.each([720, 360])('draws at %d pixels, with its name and words for readers who do not see it', async (width) => {
    const svg = await renderSvg(psychrometricChart({ states, joined: true }, { width }));
    expect(svg).toContain('<title');
    expect(svg).toContain('dry bulb, °C');
    expect(svg).toContain('saturated');
    expect(svg).not.toContain('NaN');
  });
});
