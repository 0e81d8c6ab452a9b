import { describe, expect, it } from 'vitest';
import { operatingPoint, throughPull } from '../../src/charge-path/index.js';
import { renderSvg } from '../../src/plot/index.js';
import { lineColor } from '../../src/plot/named-lines.js';
import { pullInTimePlot } from '../../src/plot/pull-in-time.js';
import { scenarioBars } from '../../src/plot/scenario-bars.js';
import { stationPlot } from '../../src/plot/stations.js';
import { heatCapacity, rotationalSpeed, temperature, time } from '../../src/units/index.js';
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
  { name: hostile, change: 15.6, uncertainty: 1.4 },
  { name: 'car', change: -1.2 },
];

describe('pictures of scenarios', () => {
  it.each([
    ['stations by temperature', stationPlot(points)],
    ['stations by pressure, on a phone', stationPlot(points, { property: 'pressure', width: 360 })],
    ['stations by density', stationPlot(points, { property: 'density' })],
    ['bars', scenarioBars(bars, { what: 'change of power', unit: 'kW', against: 'bench' })],
    ['bars on a phone', scenarioBars(bars, { what: 'change of power', unit: 'kW', against: hostile, width: 360 })],
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
    expect(scenarioBars(bars, { what: 'change of power', unit: 'kW', against: 'bench' }).description).toContain(
      'car −1.2 kW',
    );
    expect(pullInTimePlot([pulls[0]!]).description).toMatch(/chilled: \d+\.\d °C at first, \d+\.\d °C at the end/);
  });

  it('draw the sensor dashed in the colour of its pull', () => {
    const text = JSON.stringify(pullInTimePlot([pulls[0]!]));
    expect(text).toContain('strokeDash');
    expect(text.split(lineColor(0, 1)).length - 1).toBeGreaterThanOrEqual(4);
  });

  it('have a colour of its own for each line', () => {
    const colors = [0, 1, 2, 3].map((i) => lineColor(i, 4));
    expect(new Set(colors).size).toBe(4);
  });
});
