import { column, type Column, type Kind, type Quantity, rotationalSpeed } from '../units/index.js';
import { columnOf, NO_NOTES } from '../units/internal.js';
import { differenceBand, driftBand, equivalenceOverRange, type Band } from '../statistics/index.js';
import type { OrderFinding } from './order.js';
import type { DifferenceCurve, SpeedRange } from './result.js';
import { level } from './words.js';

/**
 * The difference along engine speed, with a band for the whole curve. Speeds at which any pull has no value are left out, because
 * there the number of pulls would change along the curve.
 */
export function differenceCurve(
  engineSpeed: Column<'rotational speed'>,
  [baseline, candidate]: readonly [readonly Column[], readonly Column[]],
  options: {
    readonly confidence: number;
    readonly setUps: number;
    readonly worthwhile: Quantity | undefined;
    /** The order of the pulls, where a steady drift is to be taken out. */
    readonly made: OrderFinding['made'];
  },
): DifferenceCurve | undefined {
  const all = [...baseline, ...candidate];
  const kind = all[0]!.kind;
  const unit = all[0]!.unit;
  const rows = Array.from(engineSpeed.si.keys()).filter((row) => all.every((curve) => !Number.isNaN(curve.si[row])));
  if (rows.length < 2) return undefined;
  const at = (curve: Column): number[] => rows.map((row) => curve.si[row]!);
  // In rpm, so that a complaint about one speed names it as people do.
  const rpm = engineSpeed.in('rpm');
  const grid = rows.map((row) => rpm[row]!);
  const { made, confidence, setUps } = options;
  const band = made
    ? driftBand(
        grid,
        made.letters,
        made.pulls.map((i) => at(all[i]!)),
        { times: made.times, confidence, setUps },
      )
    : differenceBand(grid, baseline.map(at), candidate.map(at), { confidence, setUps });
  const asColumn = (values: Float64Array): Column => columnOf(kind, values, unit, undefined, NO_NOTES, 0);
  const around = (halfWidth: Float64Array): { low: Column; high: Column } => ({
    low: asColumn(band.difference.map((d, i) => d - halfWidth[i]!)),
    high: asColumn(band.difference.map((d, i) => d + halfWidth[i]!)),
  });
  return {
    engineSpeed: column('rotational speed', grid, 'rpm'),
    difference: asColumn(band.difference),
    standardError: asColumn(band.standardError),
    pointwise: around(band.pointwiseHalfWidth),
    simultaneous: around(band.simultaneousHalfWidth),
    degreesOfFreedom: band.diagnostics.degreesOfFreedom,
    method: methodOf(band, made !== undefined),
    ranges: rangesOf(band, kind, unit, options.worthwhile),
  };
}

function methodOf(band: Band, withoutDrift: boolean): string {
  const how =
    band.method === 'expected crossings'
      ? 'from the expected crossings of a t field, with the scatter of the pulls smoothed over neighbouring speeds'
      : 'from Student t shared out over the speeds (Bonferroni)';
  const hint = band.indicative
    ? ' It is indicative only: with two pulls a side it rests on the scatter being alike at neighbouring speeds.'
    : '';
  return `${level(band.confidence)} band for the whole curve at once, ${how}; pulls are counted, not points.${withoutDrift ? ' A steady drift through the day is taken out.' : ''}${hint}`;
}

/** Runs of neighbouring speeds with one verdict. Regions are claimed from the band for the whole curve only. */
function rangesOf(band: Band, kind: Kind, unit: string, worthwhile: Quantity | undefined): SpeedRange[] {
  const equivalent = worthwhile && equivalenceOverRange(band, worthwhile.si);
  const outcomeAt = (i: number): SpeedRange['outcome'] => {
    const d = band.difference[i]!;
    const half = band.simultaneousHalfWidth[i]!;
    if (d - half > 0) return 'better';
    if (d + half < 0) return 'worse';
    return equivalent?.equivalent === true ? 'equivalent' : 'not resolved';
  };
  const ranges: SpeedRange[] = [];
  let start = 0;
  for (let i = 1; i <= band.grid.length; i++) {
    const outcome = outcomeAt(start);
    if (i < band.grid.length && outcomeAt(i) === outcome) continue;
    const values = band.difference.subarray(start, i);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    ranges.push({
      from: rotationalSpeed(band.grid[start]!, 'rpm'),
      to: rotationalSpeed(band.grid[i - 1]!, 'rpm'),
      outcome,
      difference: columnOf(kind, Float64Array.of(mean), unit, undefined, NO_NOTES, 0).at(0),
    });
    start = i;
  }
  return ranges;
}
