import type { OperatingPoint } from '../charge-path/index.js';
import { decimals, listed } from '../comparison/words.js';
import { scaleOf, valueAxis } from './axis.js';
import { namedLines } from './named-lines.js';
import { frameOf, isNarrow, plotSpec, type PlotOptions, type PlotSpec, type PlotValue } from './spec.js';
import { requireSome } from './require-some.js';
import { labelText } from './words.js';

/** A solved point with the name it goes by in a picture. */
export interface NamedPoint {
  readonly name: string;
  readonly point: OperatingPoint;
}

/** What the picture shows along the way of the charge. */
export type StationProperty = 'temperature' | 'pressure' | 'density';

const PROPERTIES: Readonly<
  Record<StationProperty, { readonly title: string; readonly places: number; readonly of: (at: Station) => number }>
> = {
  temperature: { title: 'charge temperature, °C', places: 0, of: ({ temperature }) => temperature.in('°C') },
  pressure: { title: 'absolute pressure, kPa', places: 1, of: ({ pressure }) => pressure.in('kPa') },
  density: { title: 'density of the humid air, kg/m³', places: 2, of: ({ density }) => density.in('kg/m³') },
};

type Station = OperatingPoint['stations']['manifold'];

/** How the way of the charge is drawn. */
export interface StationPlotOptions extends PlotOptions {
  /** Temperature when left out. */
  readonly property?: StationProperty;
}

/**
 * The way of the charge from station to station, one line for each scenario: where it is heated, cooled, and loses pressure.
 *
 * Six lines read well; the values of all stand in `String(point)`.
 *
 * @param points - solved points, from `operatingPoint`, with their names.
 * @returns A Vega-Lite specification; {@link renderSvg} makes a picture of it.
 * @throws CalculationError if there is no point.
 * @example
 * const bench = operatingPoint(hillClimbSpecial, rotationalSpeed(6000, 'rpm'));
 * const car = operatingPoint({ ...hillClimbSpecial, cooling: onTheRoad }, rotationalSpeed(6000, 'rpm'));
 * const svg = await renderSvg(stationPlot([{ name: 'bench', point: bench }, { name: 'car', point: car }]));
 */
export function stationPlot(points: readonly NamedPoint[], options: StationPlotOptions = {}): PlotSpec {
  requireSome('station plot', 'points', points);
  const { property = 'temperature' } = options;
  const { title, places, of } = PROPERTIES[property];
  const narrow = isNarrow(options);
  const frame = frameOf(options, narrow ? 340 : 320, {
    left: 44,
    right: narrow ? 104 : 170,
    top: 30,
    bottom: narrow ? 92 : 44,
  });
  const lines = points.map(({ name, point }) => ({
    name,
    isMarked: true,
    points: Object.values(point.stations).map((station, x) => ({ x, y: of(station) })),
  }));
  const names = Object.values(points[0]!.point.stations).map((station) => station.name);
  const up = scaleOf(
    lines.flatMap((line) => line.points.map(({ y }) => y)),
    narrow ? 5 : 6,
    0.06,
  );
  const x = {
    field: 'x',
    type: 'quantitative',
    scale: { domain: [-0.25, names.length - 0.75], nice: false, zero: false },
    axis: {
      values: names.map((_, i) => i),
      // Slanted where there is no room for them side by side.
      ...(narrow ? { labelAngle: -45, labelAlign: 'right', labelBaseline: 'middle' } : {}),
      labelOverlap: false,
      labelExpr: stationLabels(names, narrow ? 'one line' : 'a line a word'),
      title: null,
      grid: true,
      labelFlush: false,
      tickSize: 4,
      labelLineHeight: 13,
    },
  } as const;
  const y = {
    field: 'y',
    type: 'quantitative',
    scale: { domain: up.domain, nice: false, zero: false },
    axis: valueAxis(up, title, 44),
  } as const;
  const heading = `${title.charAt(0).toUpperCase()}${title.slice(1)}, from station to station`;
  const words = lines.map(({ name, points: values }) => {
    const told = values.map((value, i) => `${names[i]!} ${decimals(value.y, places)}`);
    return `${labelText(name)}: ${listed(told)}.`;
  });
  const layer = namedLines(lines, { x, y }, up, frame, narrow ? 13 : 22);
  return plotSpec({ title: heading, description: `${heading}. ${words.join(' ')}` }, frame, layer);
}

/** Names under the stations. */
function stationLabels(names: readonly string[], lines: 'one line' | 'a line a word'): PlotValue {
  const cases = names.map(
    (name, i) =>
      `datum.value === ${i} ? [${(lines === 'one line' ? [name] : name.split(' '))
        .map((word) => `'${word}'`)
        .join(', ')}] : `,
  );
  return `${cases.join('')}''`;
}
