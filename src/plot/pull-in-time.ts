import type { PullInTime } from '../charge-path/index.js';
import { decimals } from '../comparison/words.js';
import { scaleOf, speedAxis, valueAxis, withTicks } from './axis.js';
import { lineColor, namedLines, type NamedLine } from './named-lines.js';
import { DASH, frameOf, isNarrow, plotSpec, type PlotOptions, type PlotSpec } from './spec.js';
import { requireSome } from './require-some.js';
import { labelText } from './words.js';

/** A pull in time with the name it goes by in a picture. */
export interface NamedPull {
  readonly name: string;
  readonly pull: PullInTime;
  /** Draws the sensor's reading too, dashed. */
  readonly withSensor?: boolean;
}

/** What the picture shows over time. */
export type PullProperty = 'charge temperature' | 'power';

/** How pulls over time are drawn. */
export interface PullInTimePlotOptions extends PlotOptions {
  /** Charge temperature when left out. */
  readonly property?: PullProperty;
}

/**
 * Pulls over time, one line each: how charge temperature or power grows as the core soaks up heat.
 *
 * @param pulls - from `throughPull`, with their names.
 * @returns A Vega-Lite specification; {@link renderSvg} makes a picture of it.
 * @throws CalculationError if there is no pull.
 * @example
 * const chilled = throughPull(hillClimbSpecial, { ...run, coreTemperature: temperature(0, '°C') });
 * const svg = await renderSvg(pullInTimePlot([{ name: 'chilled to 0 °C', pull: chilled, withSensor: true }]));
 */
export function pullInTimePlot(pulls: readonly NamedPull[], options: PullInTimePlotOptions = {}): PlotSpec {
  requireSome('pull in time plot', 'pulls', pulls);
  const { property = 'charge temperature' } = options;
  const narrow = isNarrow(options);
  const frame = frameOf(options, narrow ? 280 : 300, { left: 44, right: narrow ? 104 : 170, top: 30, bottom: 42 });
  const isPower = property === 'power';
  const lines = pulls.flatMap(({ name, pull, withSensor }, i): NamedLine[] => {
    const color = lineColor(i, pulls.length);
    const time = pull.time.in('s');
    const line = (values: Float64Array): NamedLine['points'] => Array.from(values, (y, i) => ({ x: time[i]!, y }));
    if (isPower) return [{ name, color, points: line(pull.power.in('kW')) }];
    const charge = { name, color, points: line(pull.chargeTemperature.in('°C')) };
    if (withSensor !== true) return [charge];
    return [
      charge,
      {
        name: `${name}, as the sensor reads it`,
        color,
        points: line(pull.sensorReading.in('°C')),
        dash: DASH.baseline,
      },
    ];
  });
  const unit = isPower ? 'kW' : '°C';
  const across = withTicks(0, Math.max(...lines.flatMap(({ points }) => points.map(({ x }) => x))), narrow ? 5 : 8);
  const up = scaleOf(
    lines.flatMap(({ points }) => points.map(({ y }) => y)),
    6,
  );
  const x = {
    field: 'x',
    type: 'quantitative',
    scale: { domain: across.domain, nice: false },
    axis: speedAxis(across, 'time into the pull, s'),
  } as const;
  const y = {
    field: 'y',
    type: 'quantitative',
    scale: { domain: up.domain, nice: false, zero: false },
    axis: valueAxis(up, `${property}, ${unit}`, 44),
  } as const;
  const title = `${property.charAt(0).toUpperCase()}${property.slice(1)} through a pull`;
  const told = lines.map(
    ({ name, points }) =>
      `${labelText(name)}: ${decimals(points[0]!.y, 1)} ${unit} at first, ${decimals(points.at(-1)!.y, 1)} ${unit} at the end.`,
  );
  return plotSpec(
    { title, description: `${title}. ${told.join(' ')}` },
    frame,
    namedLines(lines, { x, y }, up, frame, narrow ? 13 : 22),
  );
}
