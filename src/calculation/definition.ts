import type { Kind } from '../units/kinds.js';
import type { Column, Note, Operation, Quantity, Rule, Source } from '../units/origin.js';
import type { Task } from './tasks.js';

/** Bounds of an input in the SI unit of its kind. */
export interface Bounds {
  /** Smallest possible value; below is an error. */
  readonly min: number;
  /** Largest possible value; above is an error. */
  readonly max: number;
  /** Where the formula is trusted; outside, the answer carries a note. */
  readonly trusted?: readonly [number, number];
  /** An everyday value, for examples, live pages and tests. */
  readonly typical?: number;
}

/** An input that must be given. */
export interface RequiredInput<K extends Kind = Kind> extends Bounds {
  readonly need: 'required';
  readonly symbol: string;
  readonly kind: K;
}

/** An input with a value that is taken when none is given, and shown as assumed. */
export interface AssumedInput<K extends Kind = Kind> extends Bounds {
  readonly need: 'assumed';
  readonly symbol: string;
  readonly kind: K;
  readonly assume: Quantity<K>;
}

/** A list of quantities. */
export interface ListInput<K extends Kind = Kind> extends Bounds {
  readonly need: 'list';
  readonly symbol: string;
  readonly kind: K;
}

/** The inputs of a calculation by argument name, lists last. */
export type Inputs = Readonly<Record<string, RequiredInput | AssumedInput | ListInput>>;

/** What a calculation gives. */
export interface Output<K extends Kind = Kind> {
  readonly symbol: string;
  readonly kind: K;
  /** The unit the result shows in. */
  readonly unit: string;
}

/** A note that every result of a calculation carries. */
export type StandingNote = Pick<Note, 'code' | 'message'>;

/** A calculation as data: everything that the call, the columns, the explanation, the docs and the tests are made from. */
export interface Definition<I extends Inputs, K extends Kind> {
  /** The trade's name for what is computed, in lower case. */
  readonly name: string;
  /** The job of a user this serves, for the index. */
  readonly task: Task;
  readonly inputs: I;
  readonly output: Output<K>;
  /** The formula over the symbols, in SI units; with `==` and the output's symbol where the kernel solves an equation. */
  readonly formula: string;
  /** The same formula as a plain function of SI numbers in the order of the inputs; NaN where there is no answer. */
  readonly si: (...si: number[]) => number;
  /** Conditions between inputs. */
  readonly rules?: readonly Rule[];
  /** What a reader of any result must know, however good the inputs: a caution, or that it is experimental. */
  readonly notes?: readonly StandingNote[];
  /** Calculations that the formula names as functions. */
  readonly uses?: Readonly<Record<string, { readonly spec: Specification }>>;
  /** Symbols of the inputs with which the result rises (never falls) over the whole domain. */
  readonly rises?: readonly string[];
  /** Symbols of the inputs with which the result falls (never rises) over the whole domain. */
  readonly falls?: readonly string[];
  readonly sources: readonly Source[];
}

/** A definition in the form that walks of a graph, tests and docs read. */
export interface Specification<K extends Kind = Kind> extends Operation {
  readonly output: Output<K>;
  readonly task: Task;
  readonly rises: readonly string[];
  readonly falls: readonly string[];
}

/** The quantities a call takes, by argument name. */
export type Arguments<I extends Inputs> = {
  readonly [N in keyof I as I[N] extends AssumedInput ? never : N]: I[N] extends ListInput<infer K>
    ? readonly Quantity<K>[]
    : Quantity<I[N]['kind']>;
} & {
  readonly [N in keyof I as I[N] extends AssumedInput ? N : never]?: Quantity<I[N]['kind']> | undefined;
};

/** The columns, and quantities that hold for every row, that a call over columns takes. */
export type ColumnArguments<I extends Inputs> = {
  readonly [N in keyof I as I[N] extends AssumedInput ? never : N]: I[N] extends ListInput<infer K>
    ? readonly (Quantity<K> | Column<K>)[]
    : Quantity<I[N]['kind']> | Column<I[N]['kind']>;
} & {
  readonly [N in keyof I as I[N] extends AssumedInput ? N : never]?:
    Quantity<I[N]['kind']> | Column<I[N]['kind']> | undefined;
};
