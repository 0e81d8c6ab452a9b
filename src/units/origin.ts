import type { Kind, UnitOf } from './kinds.js';

/** Something a reader of a result must know: an input outside the range where a correlation is trusted, a rule bent. */
export interface Note {
  /** Stable name of the sort of note, such as `'outside trusted range'`. */
  readonly code: string;
  /** Name of the calculation that said it. */
  readonly calculation: string;
  /** The input it is about, if it is about one. */
  readonly input?: string;
  /** One sentence for a person. */
  readonly message: string;
  /** For columns: how many rows it holds for. */
  readonly rows?: number;
}

/** Where a formula, a value or a check comes from, and how far that was verified. */
export interface Source {
  /** Name of the work in the reference list, which `workOf` writes out. */
  readonly id: string;
  /** Section, equation, table or page. */
  readonly where?: string;
  /**
   * `read`: the document was read. `memory`: written from memory of the named work. `computed`: derived and computed here.
   * `common practice`: a fact of the trade without a citable source.
   */
  readonly status: 'read' | 'memory' | 'computed' | 'common practice';
}

/** One input of an operation. All numbers are in the SI unit of the kind. */
export interface OperationInput {
  /** Name of the argument. */
  readonly name: string;
  /** Symbol in the formula. */
  readonly symbol: string;
  readonly kind: Kind;
  /** Smallest possible value. */
  readonly min: number;
  /** Largest possible value. */
  readonly max: number;
  /** Where the formula is trusted; outside, the result carries a note. */
  readonly trusted?: readonly [number, number];
  /** A value inside the usual range, for examples and tests. */
  readonly typical?: number;
  /** The value taken when none is given; it is an input of the result like any other. */
  readonly assume?: Quantity;
  /** True when the argument is a list of quantities. */
  readonly list?: boolean;
}

/** A condition between the inputs of an operation; `holds` takes the kernel's arguments. */
export interface Rule {
  readonly need: string;
  /** Whether it holds for these SI numbers. */
  readonly holds: (...si: number[]) => boolean;
  /** `note` warns instead of refusing. */
  readonly otherwise?: 'refuse' | 'note';
  /** What a note adds for these SI numbers, where it does not hold for them. */
  readonly found?: (...si: number[]) => string;
}

/** One step of a calculation as data: what goes in, the formula in words a reader can check, and the plain function that computes it. */
export interface Operation {
  readonly name: string;
  readonly inputs: readonly OperationInput[];
  readonly output: { readonly symbol: string; readonly kind: Kind; readonly unit: string };
  /** The formula over the symbols, in SI units; with `==` and the output's symbol where the kernel solves an equation. */
  readonly formula: string;
  /** SI numbers in the order of the inputs (lists last, one after another); NaN where there is no answer. */
  readonly kernel: (...si: number[]) => number;
  /** Where the step can also make one value of a whole column: the same as the kernel, over the rows that have a value. */
  readonly reduce?: (si: Float64Array) => number;
  readonly rules: readonly Rule[];
  /** What a reader of any of its results must know, however good the inputs: every result carries these. */
  readonly notes?: readonly Note[];
  readonly sources: readonly Source[];
  /** Operations the formula names as functions of its own. */
  readonly uses?: Readonly<Record<string, Operation>>;
}

/** How uncertain a leaf is. */
export interface LeafUncertainty {
  /** Standard uncertainty in the SI unit of the leaf's kind. */
  readonly standard: number;
  readonly degreesOfFreedom: number;
  readonly distribution: 'normal' | 't' | 'rectangular' | 'triangular';
  /** `A`: from the scatter of repeats. `B`: from anything else. */
  readonly type: 'A' | 'B';
}

/** An input of the graph: a value that was given, measured, assumed, or found by solving. */
export interface Leaf {
  readonly type: 'leaf';
  /** `computed`: worked out beside the graph, such as a standard uncertainty; an exact number to whatever is made of it. */
  readonly role: 'given' | 'measured' | 'assumed' | 'error' | 'scatter' | 'solved' | 'computed';
  readonly label?: string;
  /** Leaves of one `id` are one input, whichever copy of the library made them. */
  readonly id?: string;
  readonly source?: Source;
  readonly uncertainty?: LeafUncertainty;
  /** Leaves drawn together: their correlation coefficients by leaf. */
  readonly group?: LeafGroup;
  /** For a solved leaf: the equation it satisfies. Absent where the history of a value was not kept, so that nothing can be redone. */
  readonly solution?: Solution;
}

/** Leaves read at the same time, whose errors are correlated. */
export interface LeafGroup {
  readonly label: string;
  readonly leaves: Leaf[];
  /** Correlation coefficient of leaves i and j. */
  readonly correlation: readonly (readonly number[])[];
  readonly degreesOfFreedom: number;
}

/** The equation a solved leaf satisfies: `residual` is zero at it. */
export interface Solution {
  /** The residual as a graph over the solved leaf. */
  residual: Quantity;
  /** SI bounds between which it was sought. */
  readonly between: readonly [number, number];
  /** The bounds as they were given, with their history: with other inputs they may be others. */
  readonly ends?: readonly [Quantity, Quantity];
}

/** A step of the graph: an operation and the values it was given. */
export interface Step {
  readonly type: 'step';
  readonly operation: Operation;
  readonly inputs: readonly (Quantity | Column)[];
}

/** How a quantity or column was made. Values of one origin are one value, however they are shown. */
export type Origin = Leaf | Step;

/** A number with a kind. Made by functions such as {@link temperature}; plain data once cloned. */
export interface Quantity<K extends Kind = Kind> {
  readonly kind: K;
  /** The value in the SI unit of the kind. */
  readonly si: number;
  /** The unit it shows in. */
  readonly unit: string;
  /** What a reader must know about how it was made. */
  readonly notes: readonly Note[];
  /** How it was made; absent on values that were only given, and on clones. */
  readonly origin: Origin | undefined;
  /** The name it was given. It is part of how the value shows, not of what it is. */
  readonly label: string | undefined;
  /** The value in a unit. */
  in(unit: UnitOf<K>): number;
  /** The same value, shown in another unit. */
  to(unit: UnitOf<K>): Quantity<K>;
  /** The same value with a name, for explanations and budgets. */
  named(label: string): Quantity<K>;
  /** As text with its unit. */
  toString(): string;
  /** Kind, number, unit and label, for files and other programs. */
  toJSON(): QuantityRecord;
}

/** A logged channel, or a calculation over one: numbers with one kind. A missing sample is NaN and is counted. */
export interface Column<K extends Kind = Kind> {
  readonly kind: K;
  /** The values in the SI unit of the kind; NaN where missing. */
  readonly si: Float64Array;
  readonly unit: string;
  readonly notes: readonly Note[];
  readonly origin: Origin | undefined;
  readonly label: string | undefined;
  readonly length: number;
  /** Rows without a value, whether they came in so or were refused. */
  readonly missing: number;
  /** Those of the missing rows that a calculation refused. */
  readonly refused: number;
  /** The values in a unit; NaN where missing. */
  in(unit: UnitOf<K>): Float64Array;
  /** The same column, shown in another unit. */
  to(unit: UnitOf<K>): Column<K>;
  /** The same column with a name. */
  named(label: string): Column<K>;
  /** One row as a quantity, with its own history. */
  at(row: number): Quantity<K>;
  /** Kind, range and length as text. */
  toString(): string;
  /** Kind, numbers, unit and label, for files and other programs. */
  toJSON(): ColumnRecord;
}

/** What {@link Quantity.toJSON} writes. */
export interface QuantityRecord {
  readonly kind: Kind;
  readonly value: number;
  readonly unit: string;
  readonly label?: string;
}

/** What {@link Column.toJSON} writes; a missing row is null. */
export interface ColumnRecord {
  readonly kind: Kind;
  readonly values: readonly (number | null)[];
  readonly unit: string;
  readonly label?: string;
}
