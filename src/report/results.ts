import { explain, uncertainty } from '../calculation/index.js';
import { betweenSigned, decimals, shown, signed, signedPercent } from '../comparison/words.js';
import type { Comparison, SpeedRange } from '../comparison/index.js';
import type { UnitPreferences } from '../units/index.js';
import { gridOf, isNoResult, labelText, levelText, unitOf } from '../plot/words.js';
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

/** Means and difference at each engine speed. */
export function speedTable(comparison: Comparison): DataTable {
  const { baseline, candidate, curve } = comparison;
  const unit = unitOf(comparison);
  const speeds = gridOf(comparison);
  const curveRows = curve ? Array.from(curve.engineSpeed.in('rpm'), (speed) => Math.round(speed)) : [];
  const noResult = isNoResult(comparison.outcome);
  const rows = speeds.map((speed, row) => {
    const means = [baseline, candidate].map(({ mean }) => number(rowOf(mean, row, unit), false));
    const at = curveRows.indexOf(Math.round(speed));
    if (curve === undefined || at < 0) return [decimals(speed, 0), ...means, '', '', noResult ? '' : 'not compared'];
    const [low, high] = [curve.simultaneous.low, curve.simultaneous.high].map((band) => rowOf(band, at, unit)!);
    return [
      decimals(speed, 0),
      ...means,
      number(rowOf(curve.difference, at, unit), true),
      `${number(low, true)} to ${number(high, true)}`,
      noResult ? '' : verdictAt(curve.ranges, speed),
    ];
  });
  return {
    caption: `${noResultWords(comparison)}Means and difference in ${unit}, with the ${levelText(comparison)} band for the whole curve at once`,
    columns: [
      { head: 'rpm', align: 'right' },
      { head: labelText(baseline.name), align: 'right' },
      { head: labelText(candidate.name), align: 'right' },
      { head: 'difference', align: 'right' },
      { head: 'band', align: 'right' },
      { head: noResult ? '' : 'verdict', align: 'left' },
    ].slice(0, noResult ? 5 : 6) as DataTable['columns'],
    rows: noResult ? rows.map((row) => row.slice(0, 5)) : rows,
  };
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

function verdictAt(ranges: readonly SpeedRange[], speed: number): string {
  const found = ranges.find(({ from, to }) => from.in('rpm') < speed + 0.5 && to.in('rpm') > speed - 0.5);
  return found === undefined ? 'not compared' : VERDICTS[found.outcome];
}

/** How the headline number was worked out. */
export function workedBlocks({ overall }: Comparison, units: UnitPreferences): Block[] {
  if (overall === undefined) return [paragraph('There is no difference to work out.')];
  const worked = explain(overall.value, { units });
  return [{ type: 'made', html: worked.toHtml(), markdown: worked.toMarkdown() }];
}

/** What makes the headline number uncertain. */
export function budgetBlocks({ overall }: Comparison): Block[] {
  if (overall === undefined) return [paragraph('There is no difference to be uncertain about.')];
  const budget = uncertainty(overall.value);
  return [
    paragraph(
      'The interval of the answer comes from this budget. A pull is one repeat, however many rows it has; an error that every pull shares, such as a load cell that reads high, cancels in the difference and is not in it.',
    ),
    { type: 'made', html: budget.toHtml(), markdown: budget.toMarkdown() },
  ];
}
