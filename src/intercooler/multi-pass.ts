import { calculation, derived, input, output, source } from '../calculation/index.js';
import {
  CalculationError,
  isQuantity,
  ratioOf,
  scale,
  type OperationInput,
  type Problem,
  type Quantity,
} from '../units/index.js';
import { describe, inputProblems, unknownNames } from '../units/internal.js';
import { CAPACITY_RATIO, EFFECTIVENESS, TRANSFER_UNITS } from './bounds.js';

type Ratio = Quantity<'ratio'>;

const SOURCES = [source('kaysLondon', 'chapter 2, multipass overall counterflow', 'memory')];
const PASSES = { min: 1, max: 20, typical: 2 } as const;
const WHOLE = {
  need: 'a whole number of passes',
  holds: (_eps: number, _C: number, n: number) => Number.isInteger(n),
  otherwise: 'note',
} as const;

/**
 * Effectiveness of several equal passes together, each of any arrangement, through which the two flows go in opposite order: overall
 * counterflow.
 *
 * Each flow is mixed between passes. For the whole way from transfer units use {@link effectivenessMultiPass}.
 *
 * @function
 * @returns One true effectiveness of all passes together.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * effectivenessOfPasses({ passEffectiveness: percent(54.75), capacityRatio: ratio(0.5), passes: ratio(2) }).in('%') //=> 75.91
 */
export const effectivenessOfPasses = calculation({
  name: 'effectiveness of passes in overall counterflow',
  task: 'size an intercooler',
  inputs: {
    /** True effectiveness of each pass. */
    passEffectiveness: input('e', 'ratio', { ...EFFECTIVENESS, typical: 0.55 }),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
    /** Number of passes. */
    passes: input('n', 'ratio', PASSES),
  },
  output: output('eps', 'ratio', '%'),
  formula: 'C == 1 ? n * e / (1 + (n - 1) * e) : ((1 - e * C)^n - (1 - e)^n) / ((1 - e * C)^n - C * (1 - e)^n)',
  si: inPasses,
  rules: [WHOLE],
  rises: ['e', 'n'],
  falls: ['C'],
  sources: SOURCES,
});

/**
 * Effectiveness that each of several equal passes in overall counterflow must have.
 *
 * @function
 * @returns One true effectiveness of a pass.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * passEffectiveness({ effectiveness: percent(75.91), capacityRatio: ratio(0.5), passes: ratio(2) }).in('%') //=> 54.75
 */
export const passEffectiveness = calculation({
  name: 'effectiveness of one pass in overall counterflow',
  task: 'size an intercooler',
  inputs: {
    /** True effectiveness of all passes together. */
    effectiveness: input('eps', 'ratio', EFFECTIVENESS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
    /** Number of passes. */
    passes: input('n', 'ratio', PASSES),
  },
  output: output('e', 'ratio', '%'),
  formula:
    'C == 1 ? eps / (n - (n - 1) * eps) : ((1 - eps * C)^(1 / n) - (1 - eps)^(1 / n)) / ((1 - eps * C)^(1 / n) - C * (1 - eps)^(1 / n))',
  si: (eps, C, n) => inPasses(eps, C, 1 / n),
  rules: [WHOLE],
  rises: ['eps'],
  falls: ['n'],
  sources: [...SOURCES, derived('the same relation with one over the number of passes')],
});

/**
 * n passes in overall counterflow. In X - 1 over 1 - C, X the ratio of end differences, nothing cancels and nothing is special at C = 1.
 */
function inPasses(e: number, C: number, n: number): number {
  if (e === 1) return 1;
  const odds = e / (1 - e);
  const x = (1 - C) * odds;
  const sum = x === 0 ? n * odds : Math.expm1(n * Math.log1p(x)) / (1 - C);
  return sum === 0 ? 0 : 1 / (1 + 1 / sum);
}

/** Passes of an arrangement, and what they do together. */
export interface PassesOf {
  /** The effectiveness relation of one pass, such as `effectiveness.crossflowUnmixed`. */
  readonly cell: (inputs: { readonly transferUnits: Ratio; readonly capacityRatio: Ratio }) => Ratio;
  /** Number of transfer units of all passes together. */
  readonly transferUnits: Ratio;
  /** Smaller heat capacity rate over the larger. */
  readonly capacityRatio: Ratio;
  /** Number of passes. */
  readonly passes: Ratio;
}

/** Passes of an arrangement, and what they shall do together. */
export interface PassesFor {
  /** The transfer-unit relation of one pass, such as `transferUnits.crossflowUnmixed`. */
  readonly cell: (inputs: { readonly effectiveness: Ratio; readonly capacityRatio: Ratio }) => Ratio;
  /** True effectiveness wanted of all passes together. */
  readonly effectiveness: Ratio;
  /** Smaller heat capacity rate over the larger. */
  readonly capacityRatio: Ratio;
  /** Number of passes. */
  readonly passes: Ratio;
}

/**
 * Effectiveness of a core of several equal passes in overall counterflow, whatever the arrangement of each pass; shells in series are
 * passes too.
 *
 * @returns One true effectiveness.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * effectiveness.multiPass({
 *   cell: effectiveness.crossflowUnmixed, transferUnits: ratio(2), capacityRatio: ratio(0.5), passes: ratio(2),
 * }).in('%') //=> 75.91
 */
export function effectivenessMultiPass(given: PassesOf): Ratio {
  requirePasses('effectiveness of passes', given, {
    cell: 'effectiveness',
    amount: { name: 'transferUnits', symbol: 'NTU', kind: 'ratio', ...TRANSFER_UNITS },
  });
  const { cell, transferUnits, capacityRatio, passes } = given;
  const passEffectiveness = cell({ transferUnits: ratioOf(transferUnits, passes), capacityRatio });
  return effectivenessOfPasses({ passEffectiveness, capacityRatio, passes });
}

/**
 * Number of transfer units, of all passes together, that several equal passes in overall counterflow need for an effectiveness.
 *
 * @returns One ratio.
 * @throws CalculationError if one pass cannot reach its share of the effectiveness, or an input is physically impossible.
 * @example
 * transferUnits.multiPass({
 *   cell: transferUnits.oneShell, effectiveness: percent(75.22), capacityRatio: ratio(0.5), passes: ratio(2),
 * }).in('1') //=> 2.000
 */
export function transferUnitsMultiPass(given: PassesFor): Ratio {
  const name = 'transfer units of passes';
  requirePasses(name, given, {
    cell: 'transferUnits',
    amount: { name: 'effectiveness', symbol: 'eps', kind: 'ratio', ...EFFECTIVENESS },
  });
  const { cell, effectiveness, capacityRatio, passes } = given;
  const ofOne = cell({ effectiveness: passEffectiveness({ effectiveness, capacityRatio, passes }), capacityRatio });
  if (isQuantity(ofOne) && ofOne.kind === 'ratio') return scale(ofOne, passes);
  const need = 'a relation that gives one number of transfer units';
  const mend = 'Where both flows mix there are two sizes: use smallerTransferUnitsCrossflowBothMixed.';
  throw new CalculationError(name, [{ code: 'kind', input: 'cell', need, got: describe(ofOne), mend }]);
}

interface PassesRead {
  /** The object of arrangements that a cell comes from. */
  readonly cell: 'effectiveness' | 'transferUnits';
  readonly amount: OperationInput;
}

/** Refuses under the name of the whole what an inner step would refuse under its own. */
function requirePasses(name: string, given: unknown, { cell, amount }: PassesRead): void {
  const values = (given ?? {}) as Readonly<Record<string, unknown>>;
  const inputs: readonly OperationInput[] = [
    amount,
    { name: 'capacityRatio', symbol: 'C', kind: 'ratio', ...CAPACITY_RATIO },
    { name: 'passes', symbol: 'n', kind: 'ratio', ...PASSES },
  ];
  const problems = [
    ...unknownNames(values, ['cell', ...inputs.map((input) => input.name)]),
    ...(typeof values['cell'] === 'function' ? [] : [noCell(cell, values['cell'])]),
    ...inputProblems(
      { ...effectivenessOfPasses.spec, name, inputs },
      inputs.map((input) => values[input.name]),
    ),
  ];
  if (problems.length > 0) throw new CalculationError(name, problems);
}

function noCell(cell: PassesRead['cell'], got: unknown): Problem {
  const mend = `Write cell: ${cell}.crossflowUnmixed.`;
  const code = got === undefined ? 'missing' : 'kind';
  return { code, input: 'cell', need: 'the relation of one pass', got: describe(got), mend };
}
