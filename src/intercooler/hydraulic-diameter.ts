import { calculation, derived, input, output, source } from '../calculation/index.js';
import { AREA, FLOW_LENGTH, FREE_AREA, HYDRAULIC_DIAMETER } from './core-bounds.js';

/**
 * Hydraulic diameter of any passage: four times its free area and length over the area it touches.
 *
 * @function
 * @returns One length.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * hydraulicDiameter({ freeArea: area(120, 'cm²'), flowLength: length(500, 'mm'), wettedArea: area(10, 'm²') }).in('mm') //=> 2.400
 */
export const hydraulicDiameter = calculation({
  name: 'hydraulic diameter',
  task: 'size an intercooler',
  inputs: {
    /** Smallest area free to the flow. */
    freeArea: input('Ac', 'area', FREE_AREA),
    /** Length of the passages along the flow. */
    flowLength: input('L', 'length', FLOW_LENGTH),
    /** Whole area that the flow touches. */
    wettedArea: input('A', 'area', { ...AREA, typical: 10 }),
  },
  output: output('Dh', 'length', 'mm'),
  formula: '4 * Ac * L / A',
  si: (Ac, L, A) => (4 * Ac * L) / A,
  rises: ['Ac', 'L'],
  falls: ['A'],
  sources: [source('kaysLondon', 'chapter 2', 'memory')],
});

/**
 * Area that a flow touches in passages of a hydraulic diameter.
 *
 * @function
 * @returns One area.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * wettedArea({ freeArea: area(120, 'cm²'), flowLength: length(500, 'mm'), hydraulicDiameter: length(2.4, 'mm') }).in('m²') //=> 10.00
 */
export const wettedArea = calculation({
  name: 'wetted area',
  task: 'size an intercooler',
  inputs: {
    /** Smallest area free to the flow. */
    freeArea: input('Ac', 'area', FREE_AREA),
    /** Length of the passages along the flow. */
    flowLength: input('L', 'length', FLOW_LENGTH),
    /** Hydraulic diameter of the passages. */
    hydraulicDiameter: input('Dh', 'length', HYDRAULIC_DIAMETER),
  },
  output: output('A', 'area', 'm²'),
  formula: '4 * Ac * L / Dh',
  si: (Ac, L, Dh) => (4 * Ac * L) / Dh,
  rises: ['Ac', 'L'],
  falls: ['Dh'],
  sources: [source('kaysLondon', 'chapter 2', 'memory')],
});

/**
 * Hydraulic diameter of a rectangular passage, such as between two plain or louvred fins.
 *
 * @function
 * @returns One length, at most twice the smaller side.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * hydraulicDiameterRectangle({ width: length(1.5, 'mm'), height: length(6, 'mm') }).in('mm') //=> 2.400
 */
export const hydraulicDiameterRectangle = calculation({
  name: 'hydraulic diameter of a rectangle',
  task: 'size an intercooler',
  inputs: {
    /** One side. */
    width: input('s', 'length', { min: 1e-5, max: 1, typical: 0.0015 }),
    /** The other side. */
    height: input('h', 'length', { min: 1e-5, max: 1, typical: 0.006 }),
  },
  output: output('Dh', 'length', 'mm'),
  formula: '2 * s * h / (s + h)',
  si: (s, h) => (2 * s * h) / (s + h),
  rises: ['s', 'h'],
  sources: [source('incropera', 'section 8.6', 'memory')],
});

/**
 * Hydraulic diameter of a flat tube with round ends, as water tubes and plain charge tubes have.
 *
 * @function
 * @returns One length; the diameter itself where the tube is round.
 * @throws CalculationError if the tube is higher than it is wide, or an input is physically impossible.
 * @example
 * hydraulicDiameterFlatTube({ width: length(20, 'mm'), height: length(4, 'mm') }).in('mm') //=> 6.872
 */
export const hydraulicDiameterFlatTube = calculation({
  name: 'hydraulic diameter of a flat tube',
  task: 'size an intercooler',
  inputs: {
    /** Inner width, round ends included. */
    width: input('w', 'length', { min: 1e-5, max: 1, typical: 0.02 }),
    /** Inner height. */
    height: input('b', 'length', { min: 1e-5, max: 1, typical: 0.004 }),
  },
  output: output('Dh', 'length', 'mm'),
  formula: '4 * (b * (w - b) + pi * b^2 / 4) / (2 * (w - b) + pi * b)',
  si: (w, b) => (4 * (b * (w - b) + (Math.PI * b * b) / 4)) / (2 * (w - b) + Math.PI * b),
  rules: [{ need: 'height must not be more than width', holds: (w, b) => b <= w }],
  rises: ['w'],
  sources: [derived('area and perimeter of a rectangle with half circles at its ends')],
});
