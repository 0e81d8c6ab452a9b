import type { LogError } from './errors.js';
import type { Pull } from './pull.js';

/** A log that could not be read, or could not be placed. */
export interface NotRead {
  readonly setup: string;
  readonly file: string;
  readonly error: LogError;
}

/** The pulls of one set-up. */
export interface SetUp {
  readonly name: string;
  /** In the order of the day where the logs tell it, else by name with numbers counted: pull 2 before pull 10. */
  readonly pulls: readonly Pull[];
  readonly notRead: readonly NotRead[];
  /** What was read, in words. */
  toString(): string;
}

/** In which order the pulls were made, and how that is known. */
export interface DayOrder {
  /** `clock`: from the clocks in the logs. `names`: from the names of the files, which is no order through the day. */
  readonly from: 'clock' | 'names';
  /** The same in words, with why not by clock. */
  readonly words: string;
}

/** Every pull of a day, by set-up, and what could not be read. */
export interface Day {
  readonly setups: readonly SetUp[];
  /** All pulls, in the order that {@link Day.order} tells. */
  readonly pulls: readonly Pull[];
  readonly notRead: readonly NotRead[];
  readonly order: DayOrder;
  /**
   * The set-up of that name.
   *
   * @throws LogError if there is none, naming those there are; or if none of its logs could be read.
   */
  setup(name: string): SetUp;
  /** What was read, in words. */
  toString(): string;
}
