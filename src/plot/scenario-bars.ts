import { uncertainty } from '../calculation/index.js';
import type { Quantity } from '../units/index.js';
import { decimals } from '../comparison/words.js';
import { scaleOf, tickLabels } from './axis.js';
import { textAt } from './labels.js';
import { frameOf, INK, isNarrow, plotSpec, rows, type PlotOptions, type PlotSpec, type PlotValue } from './spec.js';
import { requireSome } from './require-some.js';
import { labelLines, labelText } from './words.js';

/** What a scenario changes. */
export interface ScenarioBar {
  readonly name: string;
  /** A difference, such as the change of a comparison; all bars of one kind. */
  readonly change: Quantity;
}

/** What the bars of scenarios show. */
export interface ScenarioBarsOptions extends PlotOptions {
  /** What changes, in words, such as 'change of power'. */
  readonly what: string;
  /** Name of the scenario that the changes count from. */
  readonly against: string;
  /** That of the first change when left out. */
  readonly unit?: string;
}

/** A bar in numbers of the unit drawn. */
interface Bar {
  readonly name: string;
  readonly change: number;
  /** Zero where no input carries one. */
  readonly uncertainty: number;
}

/**
 * What scenarios change of one quantity against another of them: a bar each, with whiskers of twice the standard uncertainty that the
 * inputs give it.
 *
 * @param changes - what each scenario changes, from `compareScenarios`.
 * @returns A Vega-Lite specification; {@link renderSvg} makes a picture of it.
 * @throws CalculationError if there is no change; UnitError if they are not of one kind.
 * @example
 * const { change } = compareScenarios(bench, car);
 * const svg = await renderSvg(scenarioBars([{ name: 'car', change }], { what: 'change of power', against: 'bench' }));
 */
export function scenarioBars(
  changes: readonly ScenarioBar[],
  { what, against, unit: wanted, ...options }: ScenarioBarsOptions,
): PlotSpec {
  requireSome('scenario bars', 'changes', changes);
  const unit = wanted ?? changes[0]!.change.unit;
  const bars = changes.map(({ name, change }): Bar => ({
    name,
    change: change.in(unit as never),
    uncertainty: uncertainty(change).standard.in(unit as never),
  }));
  const narrow = isNarrow(options);
  const row = narrow ? 38 : 30;
  const frame = frameOf(options, bars.length * row + 50, {
    left: narrow ? 118 : 200,
    right: narrow ? 84 : 110,
    top: 8,
    bottom: 42,
  });
  const reach = ({ change, uncertainty }: Bar): number[] => [change - 2 * uncertainty, change + 2 * uncertainty];
  const scale = scaleOf([0, ...bars.flatMap(reach)], narrow ? 4 : 6);
  const x = {
    field: 'change',
    type: 'quantitative',
    scale: { domain: scale.domain, nice: false, zero: false },
    axis: {
      values: scale.ticks,
      labelExpr: tickLabels(scale, true),
      title: `${what} against ${labelText(against)}, ${unit}`,
      tickSize: 4,
      labelFlush: false,
    },
  } as const;
  const y = {
    field: 'row',
    type: 'quantitative',
    scale: { domain: [bars.length - 0.5, -0.5], nice: false, zero: false },
    axis: null,
  } as const;
  const data = rows(
    bars.map((bar, i) => {
      const [low, high] = reach(bar) as [number, number];
      return { change: bar.change, zero: 0, low, high, row: i, top: i - 0.3, bottom: i + 0.3 };
    }),
  );
  const whiskers = { data, transform: [{ filter: 'datum.high > datum.low' }] };
  const layer: PlotValue[] = [
    {
      data,
      mark: { type: 'rect', opacity: 0.55 },
      encoding: {
        x,
        x2: { field: 'zero' },
        y: { ...y, field: 'top' },
        y2: { field: 'bottom' },
        color: { condition: { test: 'datum.change < 0', value: INK.baseline }, value: INK.candidate },
      },
    },
    { data: rows([{ change: 0 }]), mark: { type: 'rule', color: INK.text, strokeWidth: 1 }, encoding: { x } },
    {
      ...whiskers,
      mark: { type: 'rule', color: INK.text, strokeWidth: 1.2 },
      encoding: { x: { ...x, field: 'low' }, x2: { field: 'high' }, y },
    },
    ...bars.flatMap(({ name, change, uncertainty }, i) => {
      const amount = `${signedText(change)}${uncertainty === 0 ? '' : ` ± ${decimals(2 * uncertainty, 1)}`}`;
      return [
        textAt(labelLines(name, narrow ? 17 : 30), { x: { value: -10 }, y }, { align: 'right' }, { row: i }),
        textAt([amount], { x: { value: frame.width + 8 }, y }, { align: 'left' }, { row: i }),
      ];
    }),
  ];
  const title = `${what.charAt(0).toUpperCase()}${what.slice(1)} against ${labelText(against)}`;
  const told = bars.map(({ name, change }) => `${labelText(name)} ${signedText(change)} ${unit}`);
  return plotSpec({ title, description: `${title}: ${told.join('; ')}.` }, frame, layer);
}

function signedText(value: number): string {
  const text = decimals(value, 1);
  return value > 0 && Number(value.toFixed(1)) !== 0 ? `+${text}` : text;
}
