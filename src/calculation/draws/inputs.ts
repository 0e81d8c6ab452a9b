import { columnOf, kindOf, NO_NOTES } from '../../units/internal.js';
import type { Column, Leaf, LeafGroup, LeafUncertainty, Quantity } from '../../units/origin.js';
import { isColumn } from '../../units/quantity.js';
import type { Key } from '../graph.js';
import { triangleOf } from '../linear.js';
import type { System } from '../system.js';
import { Generator } from './generator.js';
import { normalDraw } from './normal.js';
import { chiStretch, errorDraw, type ErrorDraw } from './shapes.js';

/** An uncertain input of a graph. */
export interface UncertainInput {
  readonly key: Key;
  readonly value: Quantity;
  readonly leaf: Leaf;
  readonly uncertainty: LeafUncertainty;
}

/** The inputs of a system that scatter. */
export function uncertainInputs({ nodes }: System): UncertainInput[] {
  return [...nodes.values()].flatMap(({ key, value }): UncertainInput[] => {
    const { origin } = value;
    if (isColumn(value) || origin?.type !== 'leaf' || !((origin.uncertainty?.standard ?? 0) > 0)) return [];
    return [{ key, value, leaf: origin, uncertainty: origin.uncertainty! }];
  });
}

/** The fewest degrees of freedom behind a draw of Student's t: it has a mean above 1 and a standard deviation above 2. */
export function fewestDegreesOfFreedom(inputs: readonly UncertainInput[]): number {
  return Math.min(...inputs.map(({ uncertainty, leaf }) => studentDegreesOfFreedom(uncertainty, leaf.group)));
}

const studentDegreesOfFreedom = (uncertainty: LeafUncertainty, group: LeafGroup | undefined): number =>
  uncertainty.distribution === 't' ? (group?.degreesOfFreedom ?? uncertainty.degreesOfFreedom) : Infinity;

/** Draws of all uncertain inputs together, block after block from one seed. */
export class InputDraws {
  readonly #random: Generator;
  readonly #parts: readonly Part[];

  constructor(inputs: readonly UncertainInput[], seed: number) {
    this.#random = Generator.seeded(seed);
    this.#parts = partsOf(inputs);
  }

  /** As many draws more. One that an input's kind cannot have (a pressure below zero) is missing. */
  next(rows: number): Map<Key, Column> {
    const columns = new Map<Key, Column>();
    for (const { inputs, draw } of this.#parts) {
      const errors = inputs.map(() => new Float64Array(rows));
      draw(this.#random, errors);
      inputs.forEach(({ key, value }, i) => columns.set(key, columnAbout(value, errors[i]!)));
    }
    return columns;
  }
}

function columnAbout({ kind, si, unit, label }: Quantity, data: Float64Array): Column {
  const minimum = kindOf(kind).minimum ?? -Infinity;
  for (let i = 0; i < data.length; i++) {
    const drawn = si + data[i]!;
    data[i] = drawn >= minimum ? drawn : NaN;
  }
  return columnOf(kind, data, unit, undefined, NO_NOTES, 0, label);
}

/** Inputs that are drawn together: one alone, or those of a group. */
interface Part {
  readonly inputs: readonly UncertainInput[];
  readonly draw: (random: Generator, out: readonly Float64Array[]) => void;
}

function partsOf(inputs: readonly UncertainInput[]): Part[] {
  const parts = new Map<UncertainInput | LeafGroup, UncertainInput[]>();
  for (const input of inputs) {
    const key = input.leaf.group ?? input;
    parts.set(key, [...(parts.get(key) ?? []), input]);
  }
  return [...parts].map(([key, members]): Part => {
    if ('leaves' in key) return { inputs: members, draw: groupDraw(key, members) };
    const draw: ErrorDraw = errorDraw(members[0]!.uncertainty);
    return { inputs: members, draw: (random, out) => draw(random, out[0]!) };
  });
}

/**
 * Inputs read together: the multivariate normal distribution (JCGM 101, 6.4.8), or the multivariate t with the degrees of freedom of the
 * group. Each of them alone is then drawn as JCGM 101, 6.4.9 says. (JCGM 102, 5.3.2 takes as many fewer degrees of freedom as there are
 * further quantities in the group, which leaves five readings of three quantities without a standard deviation.)
 */
function groupDraw(group: LeafGroup, members: readonly UncertainInput[]): Part['draw'] {
  const places = members.map(({ leaf }) => group.leaves.indexOf(leaf));
  const triangle = triangleOf(places.map((i) => places.map((j) => group.correlation[i]![j]!)));
  const { degreesOfFreedom } = group;
  return (random, out) => {
    for (let row = 0; row < out[0]!.length; row++) {
      for (const column of out) column[row] = normalDraw(random.uniform());
      const stretch = degreesOfFreedom === Infinity ? 1 : chiStretch(random, degreesOfFreedom);
      for (let i = out.length - 1; i >= 0; i--) {
        const weights = triangle[i]!;
        let sum = 0;
        for (let k = 0; k <= i; k++) sum += weights[k]! * out[k]![row]!;
        out[i]![row] = members[i]!.uncertainty.standard * stretch * sum;
      }
    }
  };
}
