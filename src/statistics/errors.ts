/** What can be wrong with the numbers handed to a statistic. Stable: callers test it. */
export type StatisticsErrorCode =
  | 'too-few-pulls'
  | 'too-few-degrees-of-freedom'
  | 'too-few-points'
  | 'no-scatter'
  | 'unequal-lengths'
  | 'not-finite'
  | 'not-increasing'
  | 'out-of-range'
  | 'confounded'
  | 'not-converged';

/** The parts of one refusal. */
export interface StatisticsProblem {
  readonly code: StatisticsErrorCode;
  /** The statistic that refused, in words. */
  readonly statistic: string;
  /** The argument at fault. */
  readonly input: string;
  readonly need: string;
  readonly got: string;
  /** How to mend it, where there is a way. */
  readonly mend?: string;
}

/** Thrown when numbers cannot give an honest answer. `code` is stable, the other fields say where and why. */
export class StatisticsError extends RangeError {
  readonly code: StatisticsErrorCode;
  readonly statistic: string;
  readonly input: string;
  readonly need: string;
  readonly got: string;
  readonly mend: string | undefined;

  constructor({ code, statistic, input, need, got, mend }: StatisticsProblem) {
    super(`${statistic}: ${input} must ${need}, got ${got}.${mend === undefined ? '' : ` ${mend}`}`);
    this.name = 'StatisticsError';
    this.code = code;
    this.statistic = statistic;
    this.input = input;
    this.need = need;
    this.got = got;
    this.mend = mend;
  }
}

/** The refusal of an iteration that did not settle. */
export function notConverged(statistic: string, input: string, got: string): StatisticsError {
  return new StatisticsError({
    code: 'not-converged',
    statistic,
    input,
    need: 'lie where the iteration settles',
    got,
    mend: 'Please report these numbers: no ordinary ones should come here.',
  });
}
