import { subtract, type Column, type Operation, type Quantity } from '../units/index.js';
import { meanOfRepeats } from '../calculation/index.js';
import { reduceColumn } from '../calculation/reduction.js';
import { differenceWithoutDrift, estimateOf } from './overall.js';
import { ownConfidence, type ResolvedOptions } from './options.js';
import type { OrderFinding } from './order.js';
import type { Figure } from './result.js';
import type { TakenPull } from './taken-pull.js';
import { decimals } from './words.js';

/** One number from each pull, and what to call it. */
interface FigureOf {
  readonly name: string;
  readonly of: (curve: Column) => Quantity | undefined;
  readonly peak?: Figure['peak'];
}

/** What figures are made of. */
export interface FigureInputs {
  readonly accepted: readonly [TakenPull[], TakenPull[]];
  readonly names: readonly [string, string];
  readonly finding: OrderFinding;
  readonly driftTakenOut: boolean;
}

/**
 * The figures people quote beside the mean over the range: the peak of each pull's averaged curve, and the value at speeds chosen
 * beforehand. One number a pull each, and the same treatment as the headline. The bias of a peak cancels because both sides are averaged
 * over the same bandwidth.
 */
export function figuresOf(inputs: FigureInputs, options: ResolvedOptions): Figure[] {
  const { accepted } = inputs;
  const engineSpeed = accepted[0][0]!.grid.engineSpeed.in('rpm');
  const atSpeeds = options.atSpeeds.map((speed): FigureOf => {
    const rpm = speed.in('rpm');
    const row = rowAt(engineSpeed, speed);
    const of = (curve: Column): Quantity | undefined =>
      row < 0 || Number.isNaN(curve.si[row]) ? undefined : curve.at(row);
    return { name: `at ${decimals(rpm, 0)} rpm`, of };
  });
  const figures = [...peakOf(accepted), ...atSpeeds].flatMap((figure) => {
    const values = accepted.map((side) => side.map((pull) => figure.of(pull.result.curve)));
    if (values.flat().some((value) => value === undefined)) return [];
    return [{ ...figureFrom(figure.name, values as [Quantity[], Quantity[]], inputs, options), peak: figure.peak }];
  });
  return [...figures, ...pairFigure(inputs, options)];
}

/**
 * The peak of each pull's curve and where it lies; or, where a set-up's mean curve is largest at an end of the range, the value there as
 * what it is: the curve may go on rising beyond.
 */
function peakOf(accepted: FigureInputs['accepted']): FigureOf[] {
  const grid = accepted[0][0]!.grid.engineSpeed;
  const means = accepted.map((side) => meanCurve(side.map((pull) => pull.result.curve)));
  const covered = Array.from(grid.si.keys()).filter((row) => means.every((mean) => !Number.isNaN(mean[row])));
  const [first, last] = [covered[0], covered[covered.length - 1]];
  if (first === undefined || last === undefined) return [];
  const rows = means.map((mean) => covered.reduce((most, row) => (mean[row]! > mean[most]! ? row : most), first));
  const [baseline, candidate] = rows.map((row) => grid.at(row)) as [Speed, Speed];
  const edge = [last, first].find((row) => rows.includes(row));
  if (edge === undefined) {
    return [{ name: 'peak', of: (curve) => reduceColumn(largest(curve), curve), peak: { baseline, candidate } }];
  }
  const end = edge === last ? 'end' : 'start';
  const none = rows.map((row) => row === edge) as [boolean, boolean];
  return [
    {
      name: `at the ${end} of the range, ${decimals(grid.at(edge).in('rpm'), 0)} rpm`,
      of: (curve) => curve.at(edge),
      peak: { baseline: none[0] ? undefined : baseline, candidate: none[1] ? undefined : candidate },
    },
  ];
}

type Speed = Quantity<'rotational speed'>;

function meanCurve(curves: readonly Column[]): Float64Array {
  return curves[0]!.si.map((_, row) => curves.reduce((sum, { si }) => sum + si[row]!, 0) / curves.length);
}

/** Fewest pairs that give an interval worth printing. */
const FEWEST_PAIRS = 3;

/** Largest share of the pairs by which those that begin with one set-up may outnumber the others: a drift enters the rest of the mean. */
const MOST_ONE_WAY = 1 / 3;

/**
 * The mean over the range by neighbouring pairs: what changes slower than from one pull to the next cancels in them, but for the drift
 * within a pair, which cancels only between pairs that begin with either set-up. None where nearly all begin with the same one.
 */
function pairFigure({ accepted, names, finding }: FigureInputs, options: ResolvedOptions): Figure[] {
  if (!finding.made) return [];
  const { letters, pulls } = finding.made;
  const means = accepted.flat().map((pull) => pull.result.mean!);
  const pairs: (readonly [Quantity, Quantity])[] = [];
  let oneWay = 0;
  for (let i = 0; i + 1 < letters.length; i++) {
    if (letters[i] === letters[i + 1]) continue;
    const [first, second] = [means[pulls[i]!]!, means[pulls[i + 1]!]!];
    oneWay += letters[i] === 'A' ? 1 : -1;
    pairs.push(letters[i] === 'A' ? [first, second] : [second, first]);
    i++;
  }
  if (pairs.length < FEWEST_PAIRS || Math.abs(oneWay) > MOST_ONE_WAY * pairs.length) return [];
  const label = `${names[1]} minus ${names[0]}, by neighbouring pairs`;
  const differences = pairs.map(([a, b]) => subtract(b, a));
  const side = (i: 0 | 1): Quantity =>
    meanOfRepeats(
      `${names[i]}, pairs`,
      pairs.map((pair) => pair[i]),
    );
  return [
    {
      name: `by ${pairs.length} neighbouring pairs`,
      baseline: side(0),
      candidate: side(1),
      difference: estimateOf(meanOfRepeats(label, differences), ownConfidence(options)),
      peak: undefined,
    },
  ];
}

/** Row of a speed in a grid in rpm, or -1. */
export function rowAt(grid: Float64Array, speed: Quantity<'rotational speed'>): number {
  const rpm = speed.in('rpm');
  return grid.findIndex((one) => Math.abs(one - rpm) < 1e-6 * rpm);
}

const made = new Map<string, Operation>();

function largest({ kind, unit }: Column): Operation {
  const key = `${kind}|${unit}`;
  let operation = made.get(key);
  if (!operation) {
    operation = {
      name: 'largest value',
      inputs: [{ name: 'values', symbol: 'x', kind, min: -Infinity, max: Infinity, list: true }],
      output: { symbol: 'y', kind, unit },
      formula: 'max(x)',
      kernel: (...si) => Math.max(...si),
      reduce: (si) => si.reduce((most, value) => Math.max(most, value), -Infinity),
      rules: [],
      sources: [],
    };
    made.set(key, operation);
  }
  return operation;
}

function figureFrom(
  name: string,
  [a, b]: readonly [Quantity[], Quantity[]],
  { names, finding, driftTakenOut }: FigureInputs,
  options: ResolvedOptions,
): Omit<Figure, 'peak'> {
  const baseline = meanOfRepeats(`${names[0]}, ${name}`, a);
  const candidate = meanOfRepeats(`${names[1]}, ${name}`, b);
  const label = `${names[1]} minus ${names[0]}, ${name}`;
  const difference = (): Quantity => {
    if (!driftTakenOut) return subtract(candidate, baseline).named(label);
    return differenceWithoutDrift(label, [a, b], finding.made!);
  };
  return { name, baseline, candidate, difference: estimateOf(difference(), ownConfidence(options)) };
}
