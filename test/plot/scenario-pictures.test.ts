import { describe, expect, it } from 'vitest';
import { measured } from '../../src/calculation/index.js';
import { operatingPoint, throughPull } from '../../src/charge-path/index.js';
import { pullInTimePlot, renderSvg, scenarioBars, stationPlot } from '../../src/plot/index.js';
import { lineColor } from '../../src/plot/named-lines.js';
import { heatCapacity, power, rotationalSpeed, temperature, time } from '../../src/units/index.js';
import { referenceCase, speedOfReference, withCoolingAir } from '../charge-path/installations.js';
import { problemsOf } from '../report/well-formed.js';

const hostile = `<script>alert("1")</script> & 'x'`;
const points = [
  { name: 'bench', point: operatingPoint(referenceCase, speedOfReference) },
  { name: hostile, point: operatingPoint(withCoolingAir(1), speedOfReference) },
];
const installation = { ...referenceCase, core: { ...referenceCase.core, heatCapacity: heatCapacity(5382, 'J/K') } };
const pull = throughPull(installation, {
  from: rotationalSpeed(3000, 'rpm'),
  to: rotationalSpeed(6500, 'rpm'),
  duration: time(10, 's'),
  coreTemperature: temperature(0, '°C'),
  sensor: { timeConstant: time(2, 's') },
});
const pulls = [
  { name: 'chilled', pull, withSensor: true },
  { name: hostile, pull },
];
const bars = [
  { name: hostile, change: measured('fan', power(15.6, 'kW'), { halfWidth: power(2.4, 'kW') }) },
  { name: 'car', change: power(-1.2, 'kW') },
];

describe('pictures of scenarios', () => {
  it.each([
    ['stations by temperature', stationPlot(points)],
    ['stations by pressure, on a phone', stationPlot(points, { property: 'pressure', width: 360 })],
    ['stations by density', stationPlot(points, { property: 'density' })],
    ['bars', scenarioBars(bars, { what: 'change of power', against: 'bench' })],
    ['bars on a phone', scenarioBars(bars, { what: 'change of power', against: hostile, width: 360 })],
    ['a pull', pullInTimePlot(pulls)],
    ['a pull by power, on a phone', pullInTimePlot(pulls, { property: 'power', width: 360 })],
  ])('are static, named, well-formed SVG: %s', async (_, spec) => {
    const svg = await renderSvg(spec);
    expect(problemsOf(svg)).toEqual([]);
    expect(svg).not.toMatch(/<script|NaN|undefined/);
    expect(svg).toContain(`<title`);
  });

  it('tell their values to readers who do not see them', () => {
    const { description } = stationPlot([points[0]!]);
    expect(description).toContain(
      'bench: ambient 24, compressor inlet 27, compressor outlet 121, core outlet 50 and manifold 52',
    );
    expect(scenarioBars(bars, { what: 'change of power', against: 'bench' }).description).toContain('car −1.2 kW');
    expect(pullInTimePlot([pulls[0]!]).description).toMatch(/chilled: \d+\.\d °C at first, \d+\.\d °C at the end/);
  });

  it('draw the sensor dashed in the colour of its pull', () => {
    const text = JSON.stringify(pullInTimePlot([pulls[0]!]));
    expect(text).toContain('strokeDash');
    expect(text.split(lineColor(0, 1)).length - 1).toBeGreaterThanOrEqual(4);
  });

  it('are in the unit asked for, with whiskers only where an input is uncertain', () => {
    const inWatts = JSON.stringify(scenarioBars(bars, { what: 'change of power', against: 'bench', unit: 'W' }));
    expect(inWatts).toContain('change of power against bench, W');
    expect(inWatts).toContain('15600');
    expect(inWatts.match(/ ± /g)).toHaveLength(1);
  });

  it('are refused of nothing', () => {
    expect(() => stationPlot([])).toThrow(/points must be a list of at least one/);
    expect(() => scenarioBars([], { what: 'change of power', against: 'bench' })).toThrow(/at least one/);
    expect(() => pullInTimePlot(undefined as never)).toThrow(/at least one/);
  });

  it('have a colour of its own for each line', () => {
    const colors = [0, 1, 2, 3].map((i) => lineColor(i, 4));
    expect(new Set(colors).size).toBe(4);
  });
});
