import { standardDeviation, studentTFactor } from '../../statistics/index.js';
import { symmetricEnds } from './coverage.js';
import type { Propagation } from './propagation.js';

/** The figures that draws settle, in SI. */
export interface Figures {
  readonly mean: number;
  readonly standard: number;
  readonly low: number;
  readonly high: number;
}

/** One share of the draws, with its own figures. */
interface Part extends Figures {
  readonly sorted: Float64Array;
  /** Half the width of the middle 68 %: a standard uncertainty that exists whatever the distribution. */
  readonly middleHalf: number;
}

const FIGURES = ['mean', 'standard', 'low', 'high'] as const;

/** The middle share of a normal distribution that lies within one standard deviation. */
const ONE_SIGMA = 0.682689492137;

/** Results in parts, whose figures show by their scatter how well all of them together are settled. */
export class Parts {
  readonly #parts: Part[] = [];
  readonly #level: number;
  readonly #degreesOfFreedom: number;

  /** @param degreesOfFreedom - the fewest behind any draw of Student's t, which say how many moments there are. */
  constructor(level: number, degreesOfFreedom: number) {
    this.#level = level;
    this.#degreesOfFreedom = degreesOfFreedom;
  }

  get count(): number {
    return this.#parts.length;
  }

  get hasMean(): boolean {
    return this.#degreesOfFreedom > 1;
  }

  get hasStandard(): boolean {
    return this.#degreesOfFreedom > 2;
  }

  /** Whether the standard deviation settles as the root of the number of draws: it takes a fourth moment. */
  get settlesStandard(): boolean {
    return this.#degreesOfFreedom > 4;
  }

  add(sorted: Float64Array): void {
    const { mean, standard } = momentsOf(sorted);
    const [low, high] = symmetricEnds(sorted, this.#level);
    const [below, above] = symmetricEnds(sorted, ONE_SIGMA);
    this.#parts.push({ sorted, mean, standard, low, high, middleHalf: (above - below) / 2 });
  }

  /** The standard uncertainty of all results, or what stands for it where there is none. */
  get scale(): number {
    return this.hasStandard ? this.moments.standard : averageOf(this.#parts.map(({ middleHalf }) => middleHalf));
  }

  /** Mean and standard deviation of all results together. */
  get moments(): { readonly mean: number; readonly standard: number } {
    let count = 0;
    let mean = 0;
    let squares = 0;
    for (const part of this.#parts) {
      const size = part.sorted.length;
      const apart = part.mean - mean;
      const together = count + size;
      squares += part.standard ** 2 * (size - 1) + (apart ** 2 * count * size) / together;
      mean += (apart * size) / together;
      count = together;
    }
    return { mean, standard: Math.sqrt(squares / (count - 1)) };
  }

  /**
   * How far a figure of all results may be off for want of draws, with 95 % confidence: from its scatter between the parts. JCGM 101, 7.9
   * takes twice the standard deviation of the average, which is right for many parts; Student's factor is right for few too.
   */
  settledTo(figure: keyof Figures): number {
    const values = this.#parts.map((part) => part[figure]);
    return (studentTFactor(0.05, this.count - 1) * standardDeviation(values)) / Math.sqrt(this.count);
  }

  /** The least settled figure of those that can settle. A mean takes a standard deviation to settle. */
  get leastSettled(): number {
    const settling = FIGURES.filter(
      (figure) => (figure !== 'mean' || this.hasStandard) && (figure !== 'standard' || this.settlesStandard),
    );
    return Math.max(...settling.map((figure) => this.settledTo(figure)));
  }

  /** All results in ascending order. */
  sorted(): Float64Array {
    const all = new Float64Array(this.#parts.reduce((sum, { sorted }) => sum + sorted.length, 0));
    let at = 0;
    for (const { sorted } of this.#parts) {
      all.set(sorted, at);
      at += sorted.length;
    }
    return all.sort();
  }
}

/** In two passes and without copies, because there are millions. */
function momentsOf(values: Float64Array): { readonly mean: number; readonly standard: number } {
  const middle = values[values.length >> 1]!;
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]! - middle;
  const mean = middle + sum / values.length;
  let squares = 0;
  for (let i = 0; i < values.length; i++) squares += (values[i]! - mean) ** 2;
  return { mean, standard: Math.sqrt(squares / (values.length - 1)) };
}

const averageOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Half a unit in the last of so many figures of a standard uncertainty (JCGM 101, 7.9.2). */
export function toleranceOf(standard: number, figures: number): number {
  if (standard === 0) return 0;
  const [, exponent] = standard.toExponential(figures - 1).split('e');
  return 0.5 * 10 ** (Number(exponent) - figures + 1);
}

/** A fifth of the tolerance: what the draws themselves may add when they judge another method by it (JCGM 101, 8.2). */
export const SHARE_OF_TOLERANCE = 0.2;

export interface Plan {
  /** Draws, or at most so many. */
  readonly draws: number;
  /** The draws of one part, where parts are added until the figures are settled. */
  readonly part: number | undefined;
}

const FIXED_PARTS = 10;

/**
 * Draws by a plan.
 *
 * @param accept - sees each part before it counts, to refuse it.
 * @param isSettled - whether parts so far are enough.
 */
export function drawParts(
  propagation: Propagation,
  { draws, part }: Plan,
  parts: Parts,
  accept: (possible: number, drawn: number) => void,
  isSettled: () => boolean,
): void {
  const take = (count: number): void => {
    const sorted = propagation.next(count);
    accept(sorted.length, count);
    parts.add(sorted);
  };
  if (part === undefined) {
    for (let i = 0; i < FIXED_PARTS; i++) {
      take(Math.floor(((i + 1) * draws) / FIXED_PARTS) - Math.floor((i * draws) / FIXED_PARTS));
    }
    return;
  }
  do take(part);
  while (parts.count < 2 || (!isSettled() && propagation.drawn + part <= draws));
}
