import { column, type Column, type Kind, type Quantity, rotationalSpeed } from '../units/index.js';
import { columnOf, NO_NOTES } from '../units/internal.js';
import { differenceBand, driftBand, equivalenceOverRange, StatisticsError, type Band } from '../statistics/index.js';
import { instrumentErrorsAlong } from './instruments.js';
import type { OrderFinding } from './order.js';
import type { DifferenceCurve, SpeedRange } from './result.js';
import { level, named } from './words.js';

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
    readonly names: readonly [string, string];
    /** The order of the pulls, where a steady drift is to be taken out. */
    readonly made: OrderFinding['made'];
  },
): { readonly curve: DifferenceCurve | undefined; readonly noBand?: string | undefined } {
  const all = [...baseline, ...candidate];
  const kind = all[0]!.kind;
  const unit = all[0]!.unit;
  const rows = Array.from(engineSpeed.si.keys()).filter((row) => all.every((curve) => !Number.isNaN(curve.si[row])));
  if (rows.length < 2) return { curve: undefined };
  const at = (curve: Column): number[] => rows.map((row) => curve.si[row]!);
  // In rpm, so that a complaint about one speed names it as people do.
  const rpm = engineSpeed.in('rpm');
  const grid = rows.map((row) => rpm[row]!);
  const { made, confidence, setUps } = options;
  const unsharedSensors = instrumentErrorsAlong([baseline, candidate], rows, made);
  const asked = { confidence, setUps, unsharedSensors };
  let band: Band;
  try {
    band = made
      ? driftBand(
          grid,
          made.letters,
          made.pulls.map((i) => at(all[i]!)),
          { times: made.times, ...asked },
        )
      : differenceBand(grid, baseline.map(at), candidate.map(at), asked);
  } catch (error) {
    if (!(error instanceof StatisticsError && error.code === 'no-scatter')) throw error;
    return { curve: undefined, noBand: noBandWords([baseline.map(at), candidate.map(at)], grid, options.names) };
  }
  const asColumn = (values: Float64Array): Column => columnOf(kind, values, unit, undefined, NO_NOTES, 0);
  const around = (halfWidth: Float64Array): { low: Column; high: Column } => ({
    low: asColumn(band.difference.map((d, i) => d - halfWidth[i]!)),
    high: asColumn(band.difference.map((d, i) => d + halfWidth[i]!)),
  });
  const curve: DifferenceCurve = {
    engineSpeed: column('rotational speed', grid, 'rpm'),
    difference: asColumn(band.difference),
    standardError: asColumn(band.standardError),
    pointwise: around(band.pointwiseHalfWidth),
    simultaneous: around(band.simultaneousHalfWidth),
    degreesOfFreedom: band.diagnostics.degreesOfFreedom,
    method: methodOf(band, made !== undefined),
    ranges: rangesOf(band, kind, unit, options.worthwhile),
  };
  return { curve };
}

/** Why the pulls give no band: which set-up's agree, and over how much of the range. */
function noBandWords(
  sides: readonly (readonly (readonly number[])[])[],
  grid: readonly number[],
  names: readonly [string, string],
): string {
  const shares = sides.map(
    (pulls) =>
      grid.filter((_, j) => pulls.every((pull) => Math.abs(pull[j]! - pulls[0]![j]!) < SAME * Math.abs(pull[j]!)))
        .length,
  );
  const worst = shares[1]! > shares[0]! ? 1 : 0;
  const most = shares[worst]! > grid.length / 2;
  if (shares[worst] === 0)
    return 'No band for the whole curve, and no verdict speed by speed: the pulls leave no scatter about a steady drift to draw it from. The difference over the whole range stands.';
  const why = most
    ? 'look for a copied or clipped channel'
    : 'readings in coarse steps do that, and more pulls mend it';
  return `No band for the whole curve, and no verdict speed by speed: all pulls of ${named(names[worst])} read the same at ${shares[worst]} of ${grid.length} speeds, so there is no scatter to draw it from; ${why}. The difference over the whole range stands.`;
}

/** Readings that differ by less than this share are the same but for rounding. */
const SAME = 1e-12;

function methodOf(band: Band, withoutDrift: boolean): string {
  const how =
    band.method === 'expected crossings'
      ? 'from the expected crossings of a t field, with the scatter of the pulls smoothed over neighbouring speeds'
      : 'from Student t shared out over the speeds (Bonferroni)';
  const hint = band.indicative
    ? ' It is indicative only: with two pulls a side it rests on the scatter being alike at neighbouring speeds.'
    : '';
  const instruments =
    band.combined === undefined ? '' : ' Errors of instruments that do not cancel between the set-ups are in it.';
  return `${level(band.confidence)} band for the whole curve at once, ${how}; pulls are counted, not points.${instruments}${withoutDrift ? ' A steady drift through the day is taken out.' : ''}${hint}`;
}

/** Runs of neighbouring speeds with one verdict. Regions are claimed from the band for the whole curve only. */
function rangesOf(band: Band, kind: Kind, unit: string, worthwhile: Quantity | undefined): SpeedRange[] {
  const equivalent =
    worthwhile && equivalenceOverRange(band, worthwhile.si, { error: (1 - band.confidence) / band.setUps });
  const outcomeAt = (i: number): SpeedRange['outcome'] => {
    // Its many degrees of freedom are borrowed from neighbouring speeds: the mean of two pulls a side has none to back a claim with.
    if (band.indicative) return 'not resolved';
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
