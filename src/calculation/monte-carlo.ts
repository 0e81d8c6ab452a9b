import { formatValue } from '../units/format.js';
import { NO_NOTES, columnOf, differenceUnit, fromSi, quantityOf, toSi } from '../units/internal.js';
import { differenceKind, type DifferenceOf, type Kind, type Same } from '../units/kinds.js';
import type { Column, Note, Quantity, Source } from '../units/origin.js';
import {
  fewestFor,
  holdsLevel,
  medianOf,
  shareAbove,
  shortestEnds,
  symmetricEnds,
  type Ends,
} from './draws/coverage.js';
import { fewestDegreesOfFreedom, uncertainInputs } from './draws/inputs.js';
import { drawParts, Parts, SHARE_OF_TOLERANCE, toleranceOf } from './draws/parts.js';
import { Propagation, shareText } from './draws/propagation.js';
import { compareWithBudget } from './linear-comparison.js';
import { readMonteCarloOptions, type ReadOptions } from './monte-carlo-options.js';
import type {
  LinearComparison,
  MonteCarloOptions,
  MonteCarloRecord,
  MonteCarloUncertainty,
} from './monte-carlo-result.js';
import { briefly, counted, monteCarloTable, type Shown } from './monte-carlo-text.js';
import { refusal, requireLevel, requireQuantity } from './refusal.js';
import { source } from './sources.js';
import { requireHistory, systemOf, withMethods } from './system.js';
import { tableHtml, tableMarkdown, tableText } from './table.js';
import { COMPUTED, difference } from './uncertainty.js';

/**
 * What a result may be, by propagating distributions (JCGM 101): all its uncertain inputs are drawn, again and again, and every step is
 * computed and checked with each draw, solved equations included. Nothing is taken as linear, so it holds where the budget of
 * {@link uncertainty} does not; and it says whether that budget would have done.
 *
 * Inputs are drawn as they were stated: normal, rectangular, triangular; Student's t where degrees of freedom are stated or from repeats;
 * those read together jointly. A draw that a step refuses is counted and left out. Without `draws` it goes on until every figure is settled
 * to a tenth of one figure of the standard uncertainty, as JCGM 101 asks of draws that judge a budget (7.9 and 8.2): mostly 20,000 to
 * 300,000 draws, a fraction of a second for a chain of calculations. It takes seconds where equations are solved. A result made of whole
 * logged channels is computed channel and all for each draw: say `draws`.
 *
 * Where several inputs have few degrees of freedom its intervals are cautious, as Student's t for each of them makes them (the distribution of
 * Behrens and Fisher): of a difference between two means of three repeats they hold 99 % where 95 % is asked. The budget, by Welch and
 * Satterthwaite, holds 96.5 % there.
 *
 * It keeps 8 bytes a draw.
 *
 * @param result - a computed quantity.
 * @param options - the seed, and how many draws.
 * @throws CalculationError if no input is uncertain, hardly a draw is possible, or an option is out of range.
 * @example
 * const gain = monteCarlo(subtract(after, before), { seed: 1 });
 * gain.interval(); gain.chanceAbove(power(5, 'kW')); console.log(gain.toText());
 */
export function monteCarlo<K extends Kind>(result: Quantity<K>, options: MonteCarloOptions): MonteCarloUncertainty<K> {
  requireQuantity('monteCarlo', 'result', result);
  const asked = readMonteCarloOptions(options);
  const value = withMethods(result);
  const system = systemOf([value]);
  requireHistory('monteCarlo', system);
  const inputs = uncertainInputs(system);
  if (inputs.length === 0) {
    const mend = 'State what is not known exactly with measured, sensor or meanOfRepeats.';
    throw refusal('monteCarlo', 'missing', 'result', 'made of at least one uncertain input', 'none', mend);
  }
  const propagation = new Propagation(system, value, inputs, asked.seed);
  const parts = new Parts(asked.level, fewestDegreesOfFreedom(inputs));
  const accept = (possible: number, drawn: number): void => requirePossible(possible, drawn, propagation.reason);
  const isSettled = (): boolean =>
    parts.leastSettled <= SHARE_OF_TOLERANCE * toleranceFor(value, parts.scale, asked.figures);
  drawParts(propagation, asked, parts, accept, isSettled);
  return new Drawn(value, asked, propagation, parts);
}

/** Most draws may be impossible where inputs are stated too widely; where nearly all are, the inputs contradict the calculation. */
const LEAST_POSSIBLE = 0.1;

function requirePossible(possible: number, drawn: number, reason: string | undefined): void {
  if (possible >= LEAST_POSSIBLE * drawn) return;
  const need = 'inputs that are possible in at least a tenth of the draws';
  const got = `${shareText(possible / drawn)}, for such reasons as: ${reason}`;
  throw refusal('monteCarlo', 'impossible', '', `needs ${need}`, got, 'Is an uncertainty in the wrong unit?');
}

/** Half a unit in the last figure that matters, as the standard uncertainty is written in the unit of the value; in SI. */
function toleranceFor(value: Quantity, scale: number, figures: number): number {
  const kind = differenceKind(value.kind);
  const unit = differenceUnit(value);
  return toSi(kind, toleranceOf(fromSi(kind, scale, unit), figures), unit);
}

const SOURCES: readonly Source[] = [
  source(
    'jcgm101',
    'clauses 6.4, 7 and 8: how inputs are drawn, when figures are settled, the linear budget judged',
    'memory',
  ),
];

const INSPECT = Symbol.for('nodejs.util.inspect.custom');

class Drawn<K extends Kind> implements MonteCarloUncertainty<K> {
  readonly value: Quantity<K>;
  readonly level: number;
  readonly draws: number;
  readonly impossible: number;
  readonly seed: number;
  readonly drawn: Column<K>;
  readonly settledTo: Quantity<DifferenceOf<K>>;
  readonly settled: boolean;
  readonly linear: LinearComparison<K>;
  readonly notes: readonly Note[];
  readonly sources = SOURCES;
  readonly #mean: Quantity<K> | undefined;
  readonly #standard: Quantity<DifferenceOf<K>> | undefined;
  readonly #scale: number;

  constructor(value: Quantity<K>, { level, seed, figures, part }: ReadOptions, propagation: Propagation, parts: Parts) {
    const { mean, standard } = parts.moments;
    const tolerance = toleranceFor(value, parts.scale, figures);
    this.value = value;
    this.level = level;
    this.seed = seed;
    this.draws = propagation.drawn;
    this.impossible = propagation.impossible;
    this.drawn = columnOf(value.kind, parts.sorted(), value.unit, { ...COMPUTED }, NO_NOTES, 0, value.label);
    this.#scale = parts.scale;
    this.#mean = parts.hasMean ? this.#at(mean) : undefined;
    this.#standard = parts.hasStandard ? difference(value, standard) : undefined;
    this.settledTo = difference(value, parts.leastSettled);
    this.settled = parts.leastSettled <= SHARE_OF_TOLERANCE * tolerance;
    this.linear = compareWithBudget(value, this, parts, difference(value, tolerance), figures);
    this.notes = [
      ...notesOfBoth(value.notes, propagation.notes()),
      ...fewDegreesNote(parts),
      ...impossibleNote(propagation),
      ...unsettledNote(this, difference(value, part === undefined ? tolerance : SHARE_OF_TOLERANCE * tolerance)),
    ];
  }

  get mean(): Quantity<K> {
    return this.#mean ?? this.#none('mean', 'one degree of freedom or less (two repeats)', 'Take the median.');
  }

  get standard(): Quantity<DifferenceOf<K>> {
    return (
      this.#standard ?? this.#none('standard', 'two degrees of freedom or fewer (three repeats)', 'Take the interval.')
    );
  }

  get median(): Quantity<K> {
    return this.#at(medianOf(this.drawn.si));
  }

  interval(level = this.level): readonly [Quantity<K>, Quantity<K>] {
    return this.#ends('interval', level, symmetricEnds);
  }

  shortestInterval(level = this.level): readonly [Quantity<K>, Quantity<K>] {
    return this.#ends('shortestInterval', level, shortestEnds);
  }

  chanceAbove(limit: Quantity<Same<K>>): number {
    requireQuantity('chanceAbove', 'limit', limit, this.value.kind);
    return shareAbove(this.drawn.si, limit.si);
  }

  toString(): string {
    return briefly(this.#shown);
  }

  toText(): string {
    return tableText(monteCarloTable(this.#shown));
  }

  toMarkdown(): string {
    return tableMarkdown(monteCarloTable(this.#shown));
  }

  toHtml(): string {
    return tableHtml(monteCarloTable(this.#shown));
  }

  toJSON(): MonteCarloRecord {
    const { verdict, statement, budget, tolerance } = this.linear;
    const ends = ([low, high]: readonly [Quantity, Quantity]) => [low.toJSON(), high.toJSON()] as const;
    return {
      value: this.value.toJSON(),
      mean: this.#mean?.toJSON() ?? null,
      median: this.median.toJSON(),
      standard: this.#standard?.toJSON() ?? null,
      level: this.level,
      interval: ends(this.interval()),
      shortestInterval: ends(this.shortestInterval()),
      draws: this.draws,
      impossible: this.impossible,
      seed: this.seed,
      settledTo: this.settledTo.toJSON(),
      settled: this.settled,
      linear: {
        verdict,
        statement,
        interval: budget ? ends(budget.interval(this.level)) : null,
        tolerance: tolerance.toJSON(),
      },
      notes: this.notes.map(({ message }) => message),
      sources: this.sources,
    };
  }

  /** @internal */
  [INSPECT](): string {
    return this.toText();
  }

  get #shown(): Shown<K> {
    return { result: this, mean: this.#mean, standard: this.#standard, scale: this.#scale };
  }

  #at(si: number): Quantity<K> {
    const { kind, unit, notes, label } = this.value;
    return quantityOf(kind, si, unit, { ...COMPUTED }, notes, label);
  }

  #ends(
    name: string,
    level: number,
    endsOf: (sorted: Float64Array, level: number) => Ends,
  ): [Quantity<K>, Quantity<K>] {
    requireLevel(name, level);
    const sorted = this.drawn.si;
    if (!holdsLevel(sorted.length, level)) {
      const need = `one that ${counted(sorted.length)} draws can settle`;
      throw refusal(name, 'impossible', 'level', need, String(level), `It takes ${counted(fewestFor(level))} draws.`);
    }
    const [low, high] = endsOf(sorted, level);
    return [this.#at(low), this.#at(high)];
  }

  #none(what: string, few: string, mend: string): never {
    const got = `one with ${few}, whose Student distribution has none`;
    throw refusal('monteCarlo', 'no answer', what, 'made of inputs with more degrees of freedom', got, mend);
  }
}

/** Notes that the draws repeat are told once, with their share; those that were put on the value itself are kept. */
function notesOfBoth(own: readonly Note[], drawn: readonly Note[]): Note[] {
  const isRepeated = ({ message }: Note): boolean =>
    drawn.some((note) => note.message === message || note.message.startsWith(message.replace(/\.$/, ',')));
  return [...own.filter((note) => !isRepeated(note)), ...drawn];
}

/** From this share on, leaving impossible draws out changes what the inputs were said to be. */
const NOTED_SHARE = 0.01;

function impossibleNote({ impossible, drawn, reason }: Propagation): Note[] {
  if (!(impossible > NOTED_SHARE * drawn)) return [];
  const message = `monteCarlo: ${shareText(impossible / drawn)} of the draws are impossible and were left out (such as ${reason}), so the inputs are in effect narrower than stated.`;
  return [{ code: 'impossible draws', calculation: 'monteCarlo', message, rows: impossible }];
}

/** Student's t from few repeats has wide tails, which few moments survive. */
function fewDegreesNote({ hasMean, hasStandard, settlesStandard }: Parts): Note[] {
  if (settlesStandard) return [];
  const [few, what] = hasStandard
    ? [
        'four degrees of freedom or fewer (five repeats)',
        'the standard uncertainty of the draws is wider than that of the budget and settles slowly',
      ]
    : hasMean
      ? ['two degrees of freedom or fewer (three repeats)', 'the draws have no standard deviation']
      : ['one degree of freedom or less (two repeats)', 'the draws have neither a mean nor a standard deviation'];
  const message = `monteCarlo: an input has ${few}, so that ${what} (JCGM 101, 6.4.9). Go by the intervals. Where several inputs have so few, those of the draws are cautious: of a difference between two means of three they hold 99 % where 95 % is asked, and those of the budget 96.5 %.`;
  return [{ code: 'few degrees of freedom', calculation: 'monteCarlo', message }];
}

/** Draws that stopped for want of permission are told; whoever asked for a number of draws is told only where they settle nothing. */
function unsettledNote({ settledTo, draws }: MonteCarloUncertainty, wanted: Quantity): Note[] {
  if (settledTo.si <= wanted.si) return [];
  const message = `monteCarlo: ${counted(draws)} draws settle the figures to ${formatValue(settledTo, { figures: 2 })}, not to ${formatValue(wanted, { figures: 1 })}; ask for more draws.`;
  return [{ code: 'not settled', calculation: 'monteCarlo', message }];
}
