import {
  dryBulbFromRelativeHumidity,
  dryBulbFromRelativeHumidityInMoistAir,
  dryBulbFromWetBulb,
  dryBulbFromWetBulbInMoistAir,
  humidityRatioFromVapourPressure,
  humidityRatioFromWetBulb,
  humidityRatioFromWetBulbInMoistAir,
  saturationPressure,
  saturationPressureInMoistAir,
  vapourPressureFromHumidityRatio,
  type HumidAir,
} from '../psychrometrics/index.js';
import { CalculationError, type Quantity } from '../units/index.js';
import { along, tickLabels, withTicks, type Scale } from './axis.js';
import { frameOf, INK, isNarrow, plotSpec, rows, type PlotOptions, type PlotSpec, type PlotValue } from './spec.js';
import { labelText } from './words.js';

/** A state of air on the chart. */
export interface ChartState {
  readonly name: string;
  readonly air: HumidAir;
}

/** What a psychrometric chart shows. */
export interface PsychrometricChart {
  /** Total pressure that the lines hold for; taken from the first state when left out. */
  readonly pressure?: Quantity<'absolute pressure'>;
  /** States of air at that pressure, marked in their order. */
  readonly states?: readonly ChartState[];
  /** Whether a line joins the states: what happens to the air from one to the next. */
  readonly joined?: boolean;
  /** Dry bulbs at the ends of the chart; 0 to 50 °C, or as far as the states reach, when left out. */
  readonly from?: Quantity<'temperature'>;
  readonly to?: Quantity<'temperature'>;
  /** Relations that the lines follow; those of the first state when left out. */
  readonly model?: HumidAir['model'];
}

interface Point {
  readonly t: number;
  readonly w: number;
}

interface Line {
  readonly kind: 'saturation' | 'relative humidity' | 'wet bulb';
  readonly label: string;
  readonly points: readonly Point[];
}

/** Relations of one pressure in °C and g/kg, as the chart draws them. */
interface Relations {
  /** Humidity ratio of a relative humidity; infinite where so much vapour cannot exist. */
  readonly ratioOf: (t: number, rh: number) => number;
  readonly dryBulbOf: (w: number, rh: number) => number;
  readonly ratioOfWetBulb: (t: number, wetBulb: number) => number;
  readonly driestOf: (wetBulb: number) => number;
}

const NAME = 'psychrometric chart';
const HUMIDITIES = { wide: [1, 0.8, 0.6, 0.4, 0.2, 0.1], narrow: [1, 0.6, 0.3, 0.1] } as const;
const STEPS = 60;
/** Pressures that count as one: a barometer moves as much within an afternoon, and the lines by less than their width. */
const SAME_PRESSURE = 0.003;

function relationsAt(p: number, model: HumidAir['model']): Relations {
  const real = model === 'real gas';
  const ps = (T: number): number => (real ? saturationPressureInMoistAir.kernel(T, p) : saturationPressure.kernel(T));
  const pvOf = (w: number): number => vapourPressureFromHumidityRatio.kernel(p, w / 1000);
  const ofWetBulb = real ? humidityRatioFromWetBulbInMoistAir : humidityRatioFromWetBulb;
  const driest = real ? dryBulbFromWetBulbInMoistAir : dryBulbFromWetBulb;
  return {
    ratioOf: (t, rh) => {
      const pv = rh * ps(t + 273.15);
      return pv < p ? 1000 * humidityRatioFromVapourPressure.kernel(p, pv) : Infinity;
    },
    dryBulbOf: (w, rh) =>
      (real
        ? dryBulbFromRelativeHumidityInMoistAir.kernel(p, pvOf(w), rh)
        : dryBulbFromRelativeHumidity.kernel(pvOf(w), rh)) - 273.15,
    ratioOfWetBulb: (t, wetBulb) => 1000 * ofWetBulb.kernel(t + 273.15, p, wetBulb + 273.15),
    driestOf: (wetBulb) => driest.kernel(p, wetBulb + 273.15, 0) - 273.15,
  };
}

/**
 * Psychrometric chart of one pressure: humidity ratio over dry bulb, with the saturation curve, lines of relative humidity and of wet
 * bulb, and states of air on it.
 *
 * Heating and cooling without condensation move a state level; a wet wick or a spray moves it along a line of wet bulb. Charge air has
 * a chart of its own, because its pressure moves every line.
 *
 * @throws CalculationError if there is neither a pressure nor a state, a state has another pressure, or the ends are in no order.
 * @example
 * const at = { pressure: absolutePressure(941, 'hPa'), temperature: temperature(18, '°C') };
 * const room = humidAir({ ...at, relativeHumidity: relativeHumidity(45, '%') });
 * psychrometricChart({ states: [{ name: 'room', air: room }] }).usermeta.title //=> Psychrometric chart at 941 hPa
 */
export function psychrometricChart(chart: PsychrometricChart, options: PlotOptions = {}): PlotSpec {
  const { states = [] } = chart;
  const pressure = checkedPressure(chart);
  const relations = relationsAt(pressure.si, chart.model ?? states[0]?.air.model ?? 'perfect gas');
  const narrow = isNarrow(options);
  const frame = frameOf(options, narrow ? 320 : 460, { left: 24, right: 44, top: 46, bottom: 42 });
  const dryBulbs = scaleOfDryBulbs(chart, narrow ? 4 : 8);
  const ratios = scaleOfRatios(states, relations, dryBulbs, narrow ? 4 : 6);
  const [low, high] = dryBulbs.domain;
  const lines = [
    ...HUMIDITIES[narrow ? 'narrow' : 'wide'].map((rh) => humidityLine(rh, relations, dryBulbs, ratios)),
    ...multiples(narrow ? 10 : 5, low, high).map((wetBulb) => wetBulbLine(wetBulb, relations, dryBulbs, ratios)),
  ].filter(({ points }) => points.length > 1);
  const x = {
    field: 't',
    type: 'quantitative',
    scale: { domain: dryBulbs.domain, nice: false, zero: false },
    axis: {
      values: dryBulbs.ticks,
      labelExpr: tickLabels(dryBulbs),
      title: 'dry bulb, °C',
      grid: false,
      labelFlush: false,
      tickSize: 4,
    },
  } as const;
  const y = {
    field: 'w',
    type: 'quantitative',
    scale: { domain: ratios.domain, nice: false, zero: false },
    axis: {
      orient: 'right',
      values: ratios.ticks,
      labelExpr: tickLabels(ratios),
      title: 'humidity ratio, g/kg',
      titleAngle: 0,
      titleAlign: 'right',
      titleAnchor: 'end',
      titleBaseline: 'bottom',
      titleX: 40,
      titleY: -26,
      domain: false,
      ticks: false,
    },
  } as const;
  const points = states.map(({ name, air }) => ({
    name: labelText(name),
    t: air.temperature.in('°C'),
    w: air.humidityRatio.in('g/kg'),
  }));
  const layer: PlotValue[] = [
    linesOf(lines, 'relative humidity', x, y, { strokeWidth: 0.8, color: INK.quiet }),
    linesOf(lines, 'wet bulb', x, y, { strokeWidth: 0.9, color: INK.candidate, strokeDash: [2, 3] }),
    linesOf(lines, 'saturation', x, y, { strokeWidth: 2.2, color: INK.text }),
    ...labelsOf(lines, x, y, dryBulbs, ratios),
    ...(chart.joined === true
      ? [
          {
            data: rows(points.map((point, step) => ({ ...point, step }))),
            mark: { type: 'line', strokeWidth: 2, color: INK.baseline },
            encoding: { x, y, order: { field: 'step' } },
          },
        ]
      : []),
    {
      data: rows(points),
      mark: { type: 'point', filled: true, size: 60, color: INK.baseline, opacity: 1 },
      encoding: { x, y },
    },
    ...points.map((point) => stateLabel(point, x, y, along(dryBulbs, point.t, frame.width) > frame.width * 0.75)),
  ];
  const title = `Psychrometric chart at ${String(pressure)}`;
  return plotSpec({ title, description: descriptionOf(title, states) }, frame, layer);
}

function checkedPressure({ pressure, states = [] }: PsychrometricChart): Quantity<'absolute pressure'> {
  const of = pressure ?? states[0]?.air.pressure;
  if (of === undefined)
    throw refusal('missing', 'pressure', 'a pressure or a state of air', 'neither', 'The lines hold for one pressure.');
  for (const { name, air } of states) {
    if (Math.abs(air.pressure.si / of.si - 1) > SAME_PRESSURE)
      throw refusal(
        'rule',
        'states',
        `states at the pressure of the chart, ${String(of)}`,
        `${name} at ${String(air.pressure)}`,
        'Draw it on a chart of its own: pressure moves every line.',
      );
  }
  return of;
}

function refusal(code: 'missing' | 'rule', input: string, need: string, got: string, mend: string): CalculationError {
  return new CalculationError(NAME, [{ code, input, need, got, mend }]);
}

function scaleOfDryBulbs({ states = [], from, to }: PsychrometricChart, count: number): Scale {
  const given = states.map(({ air }) => air.temperature.in('°C'));
  const low = from?.in('°C') ?? Math.min(0, ...given.map((t) => 5 * Math.floor((t - 3) / 5)));
  const high = to?.in('°C') ?? Math.max(50, ...given.map((t) => 5 * Math.ceil((t + 3) / 5)));
  if (!(high > low)) throw refusal('rule', 'from, to', 'from below to', `${low} and ${high} °C`, '');
  return withTicks(low, high, count);
}

/** As high as the states need, and at least to the middle of the saturation curve. */
function scaleOfRatios(states: readonly ChartState[], { ratioOf }: Relations, { domain }: Scale, count: number): Scale {
  const usual = ratioOf(domain[0] + 0.62 * (domain[1] - domain[0]), 1);
  const needed = 1.15 * Math.max(0, ...states.map(({ air }) => air.humidityRatio.in('g/kg')));
  return withTicks(0, Math.max(needed, Number.isFinite(usual) ? usual : 100), count);
}

function humidityLine(rh: number, { ratioOf, dryBulbOf }: Relations, dryBulbs: Scale, ratios: Scale): Line {
  const [low, high] = dryBulbs.domain;
  const top = ratios.domain[1];
  const end = ratioOf(high, rh) > top ? Math.min(high, dryBulbOf(top, rh)) : high;
  return {
    kind: rh === 1 ? 'saturation' : 'relative humidity',
    label: rh === 1 ? 'saturated' : `${Math.round(100 * rh)} %`,
    points: evenly(low, end).map((t) => ({ t, w: Math.min(top, ratioOf(t, rh)) })),
  };
}

function wetBulbLine(wetBulb: number, relations: Relations, dryBulbs: Scale, ratios: Scale): Line {
  const { ratioOf, ratioOfWetBulb, driestOf } = relations;
  const saturated = ratioOf(wetBulb, 1);
  const end = saturated < ratios.domain[1] ? Math.min(dryBulbs.domain[1], driestOf(wetBulb)) : wetBulb;
  return {
    kind: 'wet bulb',
    label: `${wetBulb} °C`.replace('-', '−'),
    points: end > wetBulb ? evenly(wetBulb, end).map((t) => ({ t, w: Math.max(0, ratioOfWetBulb(t, wetBulb)) })) : [],
  };
}

const evenly = (low: number, high: number): number[] =>
  Array.from({ length: STEPS + 1 }, (_, i) => (i === STEPS ? high : low + ((high - low) * i) / STEPS));

function multiples(step: number, low: number, high: number): number[] {
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.max(0, Math.floor(high / step) - first + 1) }, (_, i) => (first + i) * step || 0);
}

/** The lines of one kind. */
function linesOf(
  lines: readonly Line[],
  kind: Line['kind'],
  x: PlotValue,
  y: PlotValue,
  look: { readonly [key: string]: PlotValue },
): PlotValue {
  const own = lines.filter((line) => line.kind === kind);
  return {
    data: rows(own.flatMap(({ label, points }) => points.map((point) => ({ ...point, label })))),
    mark: { type: 'line', ...look },
    encoding: { x, y, detail: { field: 'label' }, order: { field: 't' } },
  };
}

/**
 * Names of lines at their ends: relative humidity where it leaves the frame, wet bulb outside the saturation curve. The last of each
 * says what the figure is.
 */
function labelsOf(lines: readonly Line[], x: PlotValue, y: PlotValue, dryBulbs: Scale, ratios: Scale): PlotValue[] {
  const [low, high] = dryBulbs.domain;
  const room = 0.12 * (high - low);
  const shown = lines.filter(
    ({ kind, points }) => kind !== 'wet bulb' || (points[0]!.t > low + room && points[0]!.w < 0.96 * ratios.domain[1]),
  );
  const last = new Set([
    shown.findLast(({ kind }) => kind === 'relative humidity'),
    shown.findLast(({ kind }) => kind === 'wet bulb'),
  ]);
  return shown.map((line) => {
    const { kind, label, points } = line;
    const isWetBulb = kind === 'wet bulb';
    const at = isWetBulb ? points[0]! : points.at(-1)!;
    const atTop = !isWetBulb && at.t < high;
    const what = isWetBulb ? `wet bulb ${label}` : `relative humidity ${label}`;
    return {
      data: rows([{ ...at, label: last.has(line) ? what : label }]),
      mark: {
        type: 'text',
        align: atTop && kind !== 'saturation' ? 'center' : 'right',
        dx: atTop ? (kind === 'saturation' ? 10 : 0) : isWetBulb ? -4 : -2,
        dy: atTop ? -7 : isWetBulb ? -5 : -8,
        fontSize: 10,
        color: isWetBulb ? INK.candidate : INK.quiet,
      },
      encoding: { x, y, text: { field: 'label' } },
    };
  });
}

function stateLabel(point: Point & { readonly name: string }, x: PlotValue, y: PlotValue, isLeft: boolean): PlotValue {
  return {
    data: rows([{ ...point }]),
    mark: { type: 'text', align: isLeft ? 'right' : 'left', dx: isLeft ? -8 : 8, dy: -8, fontWeight: 'bold' },
    encoding: { x, y, text: { field: 'name' } },
  };
}

function descriptionOf(title: string, states: readonly ChartState[]): string {
  const lines = 'Humidity ratio over dry bulb, with lines of relative humidity and wet bulb.';
  const named = states.map(({ name, air }) => `${labelText(name)}: ${String(air)}.`);
  return [`${title}.`, lines, ...named].join(' ');
}
