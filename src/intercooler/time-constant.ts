import { solveLinear } from '../calculation/linear.js';
import { measured } from '../calculation/measured.js';
import { refusal } from '../calculation/refusal.js';
import {
  isColumn,
  isQuantity,
  type CalculationError,
  type Column,
  type Note,
  type Quantity,
  type QuantityRecord,
} from '../units/index.js';
import { describe, merged, NO_NOTES, quantityOf, requireOptions } from '../units/internal.js';
import { rootBetween } from '../statistics/root-between.js';

/** An exponential fitted to a recorded cool-down or warm-up. */
export interface CoolDownFit {
  /** Time in which the core goes 63 % of the way to its end, with the uncertainty of the fit. */
  readonly timeConstant: Quantity<'time'>;
  /** Temperature at the first row, by the fit. */
  readonly startTemperature: Quantity<'temperature'>;
  /** Temperature it would settle at: fitted with its uncertainty, or as given. */
  readonly endTemperature: Quantity<'temperature'>;
  /** Standard deviation of the readings about the fit. */
  readonly scatter: Quantity<'temperature difference'>;
  /** Rows used. */
  readonly rows: number;
  /** Independent readings that the rows are worth: fewer, where neighbouring rows err alike. */
  readonly independentRows: number;
  /** As text. */
  toString(): string;
  /** As plain data. */
  toJSON(): Readonly<Record<string, QuantityRecord | number>>;
}

const NAME = 'time constant from a cool-down';
const FEWEST_ROWS = 8;
/** Time constants tried before refining, evenly in their logarithm. */
const TRIALS = 120;
/** Beyond so many records a bend cannot be told from a straight line. */
const LONGEST = 10;
/** How many times its own uncertainty a fall must be. */
const LEAST_SIGNIFICANCE = 3;
/** Scatter this small against the fall is that of doubles, in which neighbours err alike too. */
const ROUNDING = 1e-9;

/**
 * Time constant of a core from a recorded cool-down: an exponential through the readings, with its uncertainty.
 *
 * Cut the record to the rest, after the charge has stopped; the first seconds belong to the sensor and to the uneven core. Give the
 * temperature of the cooling air if it was measured: an end temperature that must be fitted too leaves the time constant far less sure.
 * Neighbouring rows of a log err alike, so the scatter is divided by fewer independent readings than there are rows.
 *
 * @param time - time of each row, rising.
 * @param temperature - of the core or of the air behind it; rows without a value are left out.
 * @param options.endTemperature - where the core would settle, if known.
 * @returns The fit. The time constant carries a note where the record spans less than two time constants, or the readings bend away from
 * an exponential.
 * @throws CalculationError if there are fewer than eight rows, or the record shows no approach to an end.
 * @example
 * const rest = timeConstantFromCoolDown(
 *   column('time', [0, 10, 20, 30, 45, 60, 80, 100, 120], 's'),
 *   column('temperature', [60.1, 51.6, 44.9, 39.6, 33.4, 29.2, 25.0, 22.6, 20.9], '°C'),
 *   { endTemperature: temperature(18, '°C') },
 * );
 * rest.timeConstant.in('s') //=> 44.95
 * uncertainty(rest.timeConstant).standard.in('s') //=> 0.13
 */
export function timeConstantFromCoolDown(
  time: Column<'time'>,
  temperature: Column<'temperature'>,
  options: { readonly endTemperature?: Quantity<'temperature'> | undefined } = {},
): CoolDownFit {
  requireOptions(NAME, options, { endTemperature: 'any' });
  const { endTemperature } = options;
  const { t, T } = readings(time, temperature);
  if (endTemperature !== undefined && (!isQuantity(endTemperature) || endTemperature.kind !== 'temperature')) {
    throw refusal(NAME, 'kind', 'endTemperature', 'a temperature', describe(endTemperature));
  }
  const end = endTemperature?.si;
  const tau = bestTimeConstant(t, T, end);
  const { amplitude: A, end: settled, residuals } = exponentialOf(t, T, tau, end);
  const unknowns = end === undefined ? 3 : 2;
  const scatter = Math.sqrt(squares(residuals) / (t.length - unknowns));
  const independent = scatter > ROUNDING * Math.abs(A) ? independentRowsOf(residuals) : t.length;
  const degreesOfFreedom = independent - unknowns;
  const variances = variancesOf(t, tau, A, end !== undefined);
  const standard = (i: number): number => scatter * Math.sqrt((variances[i]! * t.length) / independent);
  if (!(degreesOfFreedom > 0) || !(Math.abs(A) > LEAST_SIGNIFICANCE * standard(1))) {
    throw noApproach('a fall or rise that stands out from the scatter');
  }
  const notes = merged(endTemperature?.notes ?? NO_NOTES, notesOn(t, tau, independent));
  const uncertain = (label: string, value: Quantity, u: Quantity): Quantity =>
    u.si > 0 ? measured(label, value, { standardUncertainty: u, degreesOfFreedom } as never) : value.named(label);
  const seconds = (si: number): Quantity<'time'> => quantityOf('time', si, 's', undefined, notes);
  const celsius = (si: number): Quantity<'temperature'> => quantityOf('temperature', si, '°C', undefined, notes);
  const kelvin = (si: number): Quantity<'temperature difference'> =>
    quantityOf('temperature difference', si, 'K', undefined, NO_NOTES);
  return new Fit({
    timeConstant: uncertain('time constant', seconds(tau), seconds(standard(0))) as Quantity<'time'>,
    startTemperature: celsius(settled + A),
    endTemperature:
      endTemperature ??
      (uncertain('end temperature', celsius(settled), kelvin(standard(2))) as Quantity<'temperature'>),
    scatter: kelvin(scatter),
    rows: t.length,
    independentRows: independent,
  });
}

type FitProperties = Omit<CoolDownFit, 'toString' | 'toJSON'>;

class Fit implements CoolDownFit {
  declare readonly timeConstant: Quantity<'time'>;
  declare readonly startTemperature: Quantity<'temperature'>;
  declare readonly endTemperature: Quantity<'temperature'>;
  declare readonly scatter: Quantity<'temperature difference'>;
  declare readonly rows: number;
  declare readonly independentRows: number;

  constructor(properties: FitProperties) {
    Object.assign(this, properties);
  }

  toString(): string {
    const { timeConstant, startTemperature, endTemperature, scatter, rows } = this;
    const way = `from ${String(startTemperature)} towards ${String(endTemperature)}`;
    return `${String(timeConstant)}, ${way}; scatter ${String(scatter)} in ${rows} rows`;
  }

  toJSON(): Readonly<Record<string, QuantityRecord | number>> {
    const { timeConstant, startTemperature, endTemperature, scatter, rows, independentRows } = this;
    const shown = { timeConstant, startTemperature, endTemperature, scatter };
    const records = Object.fromEntries(Object.entries(shown).map(([name, quantity]) => [name, quantity.toJSON()]));
    return { ...records, rows, independentRows };
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}

interface Exponential {
  readonly amplitude: number;
  readonly end: number;
  readonly residuals: Float64Array;
}

/** The best exponential of one time constant: a straight line over exp(-t/tau), through a known end or not. */
function exponentialOf(t: Float64Array, T: Float64Array, tau: number, known: number | undefined): Exponential {
  const e = t.map((time) => Math.exp(-time / tau));
  const [eMean, TMean] = known === undefined ? [meanOf(e), meanOf(T)] : [0, known];
  let [up, down] = [0, 0];
  for (let i = 0; i < t.length; i++) {
    up += (e[i]! - eMean) * (T[i]! - TMean);
    down += (e[i]! - eMean) ** 2;
  }
  const amplitude = up / down;
  const end = TMean - amplitude * eMean;
  return { amplitude, end, residuals: T.map((value, i) => value - end - amplitude * e[i]!) };
}

const meanOf = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;

const squares = (values: Float64Array): number => values.reduce((sum, value) => sum + value * value, 0);

/** Where the sum of squares is least: the best of many trials, then the zero of its slope between the neighbours. */
function bestTimeConstant(t: Float64Array, T: Float64Array, known: number | undefined): number {
  const span = t.at(-1)!;
  const shortest = span / (t.length - 1) / 4;
  const trial = (k: number): number => shortest * ((LONGEST * span) / shortest) ** (k / (TRIALS - 1));
  let best = 0;
  let least = Infinity;
  for (let k = 0; k < TRIALS; k++) {
    const sum = squares(exponentialOf(t, T, trial(k), known).residuals);
    if (sum < least) [best, least] = [k, sum];
  }
  if (best === TRIALS - 1) throw noApproach('readings that bend towards an end');
  if (best === 0) throw noApproach('readings that take more than one row to settle');
  const slope = (tau: number): number => {
    const { amplitude, residuals } = exponentialOf(t, T, tau, known);
    let sum = 0;
    for (let i = 0; i < t.length; i++) sum -= residuals[i]! * amplitude * t[i]! * Math.exp(-t[i]! / tau);
    return sum;
  };
  const tau = rootBetween(slope, trial(best - 1), trial(best + 1));
  if (Number.isNaN(tau)) throw noApproach('readings with one best time constant');
  return tau;
}

/** Variances of time constant, amplitude and, where it is fitted, end, for a scatter of 1. */
function variancesOf(t: Float64Array, tau: number, amplitude: number, isEndKnown: boolean): number[] {
  const slopes = [
    t.map((time) => ((amplitude * time) / tau ** 2) * Math.exp(-time / tau)),
    t.map((time) => Math.exp(-time / tau)),
    ...(isEndKnown ? [] : [t.map(() => 1)]),
  ];
  const sizes = slopes.map((slope) => Math.sqrt(squares(slope)));
  const product = (i: number, j: number): number =>
    slopes[i]!.reduce((sum, value, row) => sum + (value / sizes[i]!) * (slopes[j]![row]! / sizes[j]!), 0);
  const matrix = slopes.map((_, i) => slopes.map((__, j) => product(i, j)));
  return slopes.map((_, i) => {
    const column = solveLinear(
      matrix,
      slopes.map((__, j) => (i === j ? 1 : 0)),
    );
    if (!column) throw noApproach('a bend that tells time constant and end temperature apart');
    return column[i]! / sizes[i]! ** 2;
  });
}

/** How many independent readings the rows are worth, from how much neighbours err alike. */
function independentRowsOf(residuals: Float64Array): number {
  let neighbours = 0;
  for (let i = 1; i < residuals.length; i++) neighbours += residuals[i]! * residuals[i - 1]!;
  const alike = Math.max(0, neighbours / squares(residuals));
  return (residuals.length * (1 - alike)) / (1 + alike);
}

function notesOn(t: Float64Array, tau: number, independent: number): readonly Note[] {
  const notes: Note[] = [];
  const note = (code: string, message: string): number => notes.push({ code, calculation: NAME, message });
  const spans = t.at(-1)! / tau;
  if (spans < 2) {
    note('short record', `${NAME}: the record spans only ${spans.toFixed(1)} time constants; two or more settle it.`);
  }
  if (independent < t.length / 4) {
    const worth = `${t.length} rows are worth ${independent.toFixed(0)} independent readings`;
    note('not independent', `${NAME}: ${worth}: the channel is smoothed, or it bends away from one exponential.`);
  }
  return notes;
}

function noApproach(need: string): CalculationError {
  const mend = 'Cut the record to the rest after the charge has stopped, and let it run for two time constants.';
  return refusal(NAME, 'impossible', 'temperature', need, 'readings without it', mend);
}

/** Rows with both values, time counted from the first. */
function readings(time: unknown, temperature: unknown): { t: Float64Array; T: Float64Array } {
  if (!isColumn(time) || time.kind !== 'time') throw refusal(NAME, 'kind', 'time', 'a column of time', describe(time));
  if (!isColumn(temperature) || temperature.kind !== 'temperature') {
    throw refusal(NAME, 'kind', 'temperature', 'a column of temperature', describe(temperature));
  }
  if (time.length !== temperature.length) {
    const got = `${temperature.length} rows`;
    throw refusal(NAME, 'length', 'temperature', `as many rows as time has, ${time.length}`, got);
  }
  const rows = Array.from(time.si.keys()).filter((i) => !Number.isNaN(time.si[i]) && !Number.isNaN(temperature.si[i]));
  if (rows.length < FEWEST_ROWS) {
    throw refusal(NAME, 'impossible', 'temperature', `at least ${FEWEST_ROWS} rows with a value`, `${rows.length}`);
  }
  const first = time.si[rows[0]!]!;
  const t = Float64Array.from(rows, (row) => time.si[row]! - first);
  const back = t.findIndex((value, i) => i > 0 && !(value > t[i - 1]!));
  if (back > 0) {
    throw refusal(NAME, 'impossible', 'time', 'each row later than the one before', `row ${rows[back]} not later`);
  }
  return { t, T: Float64Array.from(rows, (row) => temperature.si[row]!) };
}
