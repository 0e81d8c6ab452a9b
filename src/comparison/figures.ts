import { subtract, type Column, type Operation, type Quantity } from '../units/index.js';
import { contrastOfRepeats, meanOfRepeats } from '../calculation/index.js';
import { reduceColumn } from '../calculation/reduction.js';
import { driftDifference, driftWeights } from '../statistics/index.js';
import { estimateOf } from './answer.js';
import { ownConfidence, type ResolvedOptions } from './options.js';
import type { OrderFinding } from './order.js';
import type { Figure } from './result.js';
import type { TakenPull } from './taken-pull.js';
import { decimals } from './words.js';

/** One number from each pull, and what to call it. */
interface FigureOf {
  readonly name: string;
  readonly of: (curve: Column) => Quantity | undefined;
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
  const peak: FigureOf = { name: 'peak', of: (curve) => reduceColumn(largest(curve), curve) };
  const figures = [peak, ...atSpeeds].flatMap((figure) => {
    const values = accepted.map((side) => side.map((pull) => figure.of(pull.result.curve)));
    if (values.flat().some((value) => value === undefined)) return [];
    return [figureFrom(figure.name, values as [Quantity[], Quantity[]], inputs, options)];
  });
  return [...figures, ...pairFigure(inputs, options)];
}

/** Fewest pairs that give an interval worth printing. */
const FEWEST_PAIRS = 3;

/** The mean over the range by neighbouring pairs: what changes slower than from one pull to the next cancels in each. */
function pairFigure({ accepted, names, finding }: FigureInputs, options: ResolvedOptions): Figure[] {
  if (!finding.made) return [];
  const { letters, pulls } = finding.made;
  const means = accepted.flat().map((pull) => pull.result.mean!);
  const pairs: (readonly [Quantity, Quantity])[] = [];
  for (let i = 0; i + 1 < letters.length; i++) {
    if (letters[i] === letters[i + 1]) continue;
    const [first, second] = [means[pulls[i]!]!, means[pulls[i + 1]!]!];
    pairs.push(letters[i] === 'A' ? [first, second] : [second, first]);
    i++;
  }
  if (pairs.length < FEWEST_PAIRS) return [];
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
): Figure {
  const baseline = meanOfRepeats(`${names[0]}, ${name}`, a);
  const candidate = meanOfRepeats(`${names[1]}, ${name}`, b);
  const label = `${names[1]} minus ${names[0]}, ${name}`;
  const difference = (): Quantity => {
    if (!driftTakenOut) return subtract(candidate, baseline).named(label);
    const { letters, times, pulls } = finding.made!;
    const values = [...a, ...b];
    const inOrder = pulls.map((i) => values[i]!);
    const { interval } = driftDifference(
      letters,
      inOrder.map((value) => value.si),
      { times },
    );
    return contrastOfRepeats(label, inOrder, driftWeights(letters, { times }), {
      standard: interval!.standardError,
      degreesOfFreedom: interval!.degreesOfFreedom,
    });
  };
  return { name, baseline, candidate, difference: estimateOf(difference(), ownConfidence(options)) };
}
