import { explain, uncertainty } from '../calculation/index.js';
import { betweenSigned, decimals, shown, signed, signedPercent } from '../comparison/words.js';
import type { Comparison, DifferenceCurve, SpeedRange } from '../comparison/index.js';
import type { Column, UnitPreferences } from '../units/index.js';
import { bandText, gridOf, isNoResult, labelText, unitOf } from '../plot/words.js';
import { ownConfidence } from '../comparison/options.js';
import { drawsSentence } from './draws.js';
import { paragraph, type Block, type DataTable } from './document.js';
import { rowOf } from './numbers.js';
import { noResultWords } from './words.js';

/** What was seen where it may not be called a result. */
export function seenBlocks(comparison: Comparison): Block[] {
  const { overall, relative, baseline, candidate } = comparison;
  if (overall === undefined || relative === undefined) {
    const sides = [baseline, candidate].flatMap(({ name, overall: mean }) =>
      mean ? [`${labelText(name)}: ${shown(mean)}`] : [],
    );
    return [paragraph(`Not a result. Means over the range: ${sides.length === 0 ? 'none' : sides.join('; ')}.`)];
  }
  return [
    paragraph(
      `Not a result. The means differ by ${signed(overall.value)} (${signedPercent(relative)}), between ${betweenSigned(overall.low, overall.high)} by the scatter of the pulls alone. The objection above stands before any reading of it.`,
    ),
  ];
}

/** Means at each engine speed, with the difference where there is one and the verdict where it may be called a result. */
export function speedTable(comparison: Comparison): DataTable {
  const { baseline, candidate, curve } = comparison;
  const unit = unitOf(comparison);
  const band = curve && `, with the ${bandText(comparison)}`;
  const columns = [
    { head: 'rpm', align: 'right' },
    { head: labelText(baseline.name), align: 'right' },
    { head: labelText(candidate.name), align: 'right' },
    ...(curve
      ? ([
          { head: 'difference', align: 'right' },
          { head: 'band between', align: 'right' },
        ] as const)
      : []),
    ...(curve && !isNoResult(comparison.outcome) ? ([{ head: 'verdict', align: 'left' }] as const) : []),
  ] as const;
  const rows = gridOf(comparison).map((speed, row) => {
    const means = [baseline, candidate].map(({ mean }) => number(rowOf(mean, row, unit), false));
    const difference = curve ? differenceAt(curve, speed, unit) : [];
    return [decimals(speed, 0), ...means, ...difference].slice(0, columns.length);
  });
  const what = curve ? 'Means and difference' : 'Means';
  return { caption: `${noResultWords(comparison)}${what} in ${unit}${band ?? ''}`, columns, rows };
}

/** What the cores did at each engine speed; nothing where neither was logged. */
export function coreBlocks(comparison: Comparison): Block[] {
  const { cores, baseline, candidate } = comparison;
  const columns = [
    { what: 'effectiveness', unit: '%', places: 1, of: cores.baseline?.effectiveness, name: baseline.name },
    { what: 'effectiveness', unit: '%', places: 1, of: cores.candidate?.effectiveness, name: candidate.name },
    { what: 'pressure loss', unit: 'kPa', places: 2, of: cores.baseline?.pressureLoss, name: baseline.name },
    { what: 'pressure loss', unit: 'kPa', places: 2, of: cores.candidate?.pressureLoss, name: candidate.name },
  ].filter(({ of }) => of !== undefined);
  if (columns.length === 0) return [];
  const values = columns.map(({ of, unit }) => (of!.bySpeed as Column).in(unit as never));
  const table: DataTable = {
    caption:
      'Cores at each engine speed, mean of the pulls: air-side effectiveness, and pressure lost up to the manifold',
    columns: [
      { head: 'rpm', align: 'right' },
      ...columns.map(({ what, unit, name }) => ({
        head: `${what} ${unit}, ${labelText(name)}`,
        align: 'right' as const,
      })),
    ],
    rows: gridOf(comparison).map((speed, row) => [
      decimals(speed, 0),
      ...columns.map(({ places }, i) =>
        Number.isNaN(values[i]![row]!) ? 'missing' : decimals(values[i]![row]!, places),
      ),
    ]),
  };
  return [{ type: 'table', table }];
}

/** Difference, band and verdict at one speed. */
function differenceAt(curve: DifferenceCurve, speed: number, unit: string): string[] {
  const row = curve.engineSpeed.in('rpm').findIndex((rpm) => Math.abs(rpm - speed) < 0.5);
  if (row < 0) return ['', '', 'not compared'];
  const [low, high] = [curve.simultaneous.low, curve.simultaneous.high].map((band) =>
    number(rowOf(band, row, unit), true),
  );
  const found = curve.ranges.find(({ from, to }) => from.in('rpm') < speed + 0.5 && to.in('rpm') > speed - 0.5);
  const verdict = found === undefined ? 'not compared' : VERDICTS[found.outcome];
  return [number(rowOf(curve.difference, row, unit), true), `${low} and ${high}`, verdict];
}

function number(quantity: ReturnType<typeof rowOf>, sign: boolean): string {
  if (quantity === undefined) return 'missing';
  const text = sign ? signed(quantity) : shown(quantity);
  return text.endsWith(` ${quantity.unit}`) ? text.slice(0, -quantity.unit.length - 1) : text;
}

const VERDICTS: Readonly<Record<SpeedRange['outcome'], string>> = {
  better: 'more',
  worse: 'less',
  equivalent: 'equivalent',
  'not resolved': 'not resolved',
};

/** How the headline number was worked out. */
export function workedBlocks({ overall }: Comparison, units: UnitPreferences): Block[] {
  if (overall === undefined) return [paragraph('There is no difference to work out.')];
  const worked = explain(overall.value, { units });
  return [{ type: 'made', html: worked.toHtml(), markdown: worked.toMarkdown() }];
}

/** What makes the headline number uncertain. */
export function budgetBlocks(comparison: Comparison): Block[] {
  const { overall } = comparison;
  if (overall === undefined) return [paragraph('There is no difference to be uncertain about.')];
  const budget = uncertainty(overall.value);
  const drawn = drawsSentence(comparison);
  const level = ownConfidence({ confidence: comparison.confidence, setUps: comparison.options.setUps });
  const isFloored = overall.high.si - overall.value.si > budget.expanded(level).si * (1 + 1e-9);
  return [
    paragraph(
      'The interval of the answer comes from this budget. A pull is one repeat, however many rows it has. What all pulls share is not in it: a load cell that reads 1 % high makes the difference 1 % larger, and a constant offset cancels.',
    ),
    { type: 'made', html: budget.toHtml(level), markdown: budget.toMarkdown(level) },
    ...(isFloored
      ? [
          paragraph(
            'The interval of the answer is wider: it is never narrower than the scatter of the pulls alone makes it.',
          ),
        ]
      : []),
    ...(drawn === undefined ? [] : [paragraph(drawn)]),
  ];
}
