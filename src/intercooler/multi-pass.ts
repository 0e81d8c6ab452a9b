import { calculation, derived, input, output, source } from '../calculation/index.js';
import { ratioOf, scale, type Quantity } from '../units/index.js';
import { CAPACITY_RATIO, EFFECTIVENESS } from './bounds.js';

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
export function effectivenessMultiPass({ cell, transferUnits, capacityRatio, passes }: PassesOf): Ratio {
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
export function transferUnitsMultiPass({ cell, effectiveness, capacityRatio, passes }: PassesFor): Ratio {
  return scale(
    cell({ effectiveness: passEffectiveness({ effectiveness, capacityRatio, passes }), capacityRatio }),
    passes,
  );
}
