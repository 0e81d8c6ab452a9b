import { CalculationError, type Quantity } from '../units/index.js';
import { describe } from '../units/internal.js';
import { inRpm, type EngineSpeed } from './grid.js';
import type { RowBuffer } from './row-buffer.js';

/** What counts as a pull in a recording whose pulls are not numbered. */
export interface FindPullsOptions {
  /** Least rise of engine speed; 1000 rpm when left out. */
  readonly rise?: EngineSpeed | undefined;
  /** Engine speed may fall back so far and the pull goes on; 150 rpm when left out. */
  readonly fallBack?: EngineSpeed | undefined;
  /** Slowest that engine speed may rise, over any two seconds; 20 rpm/s when left out. */
  readonly slowest?: Quantity<'rotational acceleration'> | undefined;
}

const PATIENCE = 2;
/** Of the rise: rows before it that are no higher are idling, and not of the pull. */
const STILL_SHARE = 0.02;

/** Finds pulls, rows along which engine speed rises, as rows come in. */
export class PullFinder {
  readonly #buffer: RowBuffer;
  readonly #rise: number;
  readonly #fallBack: number;
  readonly #slowest: number;
  readonly #timeRole: 'time' | 'clock';
  #peak = -1;

  constructor(buffer: RowBuffer, timeRole: 'time' | 'clock', options: FindPullsOptions) {
    this.#buffer = buffer;
    this.#timeRole = timeRole;
    this.#rise = inRpm(options.rise ?? 1000, 'rise', 'readLogStream') / 60;
    this.#fallBack = inRpm(options.fallBack ?? 150, 'fallBack', 'readLogStream') / 60;
    const { slowest } = options;
    this.#slowest = slowest === undefined ? 20 / 60 : slowest.si;
    if (slowest !== undefined && (slowest.kind !== 'rotational acceleration' || !(slowest.si > 0))) {
      const need = 'a rotational acceleration above zero';
      throw new CalculationError('readLogStream', [
        { code: 'impossible', input: 'slowest', need, got: describe(slowest), mend: '' },
      ]);
    }
  }

  /**
   * Looks at the row that was added last: rows of a pull that is now over, as a range of the buffer, or undefined. Rows that belong to
   * no pull are dropped from the buffer.
   */
  look(): readonly [from: number, to: number] | undefined {
    const last = this.#buffer.length - 1;
    const speed = this.#speed(last);
    if (Number.isNaN(speed)) return undefined;
    if (this.#peak < 0 || speed < this.#speed(0)) {
      this.#restart(last);
      return undefined;
    }
    if (speed > this.#speed(this.#peak)) this.#peak = last;
    const isFalling = speed < this.#speed(this.#peak) - this.#fallBack;
    return isFalling || this.#isStill(last) ? this.#finish() : undefined;
  }

  /** The pull that the end of the recording cuts off, if it is one. */
  end(): readonly [from: number, to: number] | undefined {
    return this.#peak < 0 ? undefined : this.#finish();
  }

  /** Forgets all rows but the last, once a pull has been taken. */
  next(): void {
    this.#restart(this.#buffer.length - 1);
  }

  #speed(row: number): number {
    return this.#buffer.at('engineSpeed', row);
  }

  #restart(row: number): void {
    this.#buffer.drop(row);
    this.#peak = 0;
  }

  /** Whether speed has not risen enough over the last two seconds. */
  #isStill(last: number): boolean {
    const now = this.#buffer.at(this.#timeRole, last);
    const start = now - PATIENCE;
    if (!(this.#buffer.at(this.#timeRole, 0) <= start)) return false;
    let [low, high] = [0, last];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (this.#buffer.at(this.#timeRole, middle) <= start) low = middle;
      else high = middle;
    }
    return !(this.#speed(last) - this.#speed(low) >= this.#slowest * PATIENCE);
  }

  #finish(): readonly [number, number] | undefined {
    const bottom = this.#speed(0);
    const rise = this.#speed(this.#peak) - bottom;
    if (!(rise >= this.#rise)) {
      this.next();
      return undefined;
    }
    let from = 0;
    for (let row = 0; row < this.#peak; row++) if (this.#speed(row) <= bottom + STILL_SHARE * rise) from = row;
    return [from, this.#peak + 1];
  }
}
