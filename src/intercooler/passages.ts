import { calculation, derived, input, output, source } from '../calculation/index.js';
import {
  FIN_HEIGHT,
  FIN_SPACING,
  FIN_THICKNESS,
  FLOW_LENGTH,
  FREE_AREA,
  PASSAGES,
  PLATE_SPACING,
  PLATE_THICKNESS,
} from './core-bounds.js';

/**
 * Area free to a flow in passages with fins in them.
 *
 * @function
 * @returns One area, all passages together.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * freeArea({
 *   passages: ratio(20), passageWidth: length(76, 'mm'),
 *   finSpacing: length(1.5, 'mm'), finHeight: length(6, 'mm'), finThickness: length(0.1, 'mm'),
 * }).in('cm²') //=> 85.50
 */
export const freeArea = calculation({
  name: 'free area of finned passages',
  task: 'size an intercooler',
  inputs: {
    /** Number of passages side by side. */
    passages: input('n', 'ratio', PASSAGES),
    /** Width of one passage across its flow. */
    passageWidth: input('W', 'length', FLOW_LENGTH),
    /** Free distance between two fins. */
    finSpacing: input('s', 'length', FIN_SPACING),
    /** Free height of the passage between fin and plate. */
    finHeight: input('h', 'length', FIN_HEIGHT),
    /** Thickness of a fin. */
    finThickness: input('t', 'length', FIN_THICKNESS),
  },
  output: output('Ac', 'area', 'cm²'),
  formula: 'n * W * h * s / (s + t)',
  si: (n, W, s, h, t) => (n * W * h * s) / (s + t),
  rules: [{ need: 'a whole number of passages', holds: (n) => Number.isInteger(n), otherwise: 'note' }],
  rises: ['n', 'W', 's', 'h'],
  falls: ['t'],
  sources: [derived('geometry of a rectangle divided by fins')],
});

/**
 * Share of a rectangular passage that is fin and not plate.
 *
 * @function
 * @returns One ratio.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * finAreaShareRectangle({ finSpacing: length(1.5, 'mm'), finHeight: length(6, 'mm') }).in('%') //=> 80.00
 */
export const finAreaShareRectangle = calculation({
  name: 'fin share of the area of a rectangular passage',
  task: 'size an intercooler',
  inputs: {
    /** Free distance between two fins. */
    finSpacing: input('s', 'length', FIN_SPACING),
    /** Free height of a fin between two plates. */
    finHeight: input('h', 'length', FIN_HEIGHT),
  },
  output: output('a', 'ratio', '%'),
  formula: 'h / (s + h)',
  si: (s, h) => h / (s + h),
  rises: ['h'],
  falls: ['s'],
  sources: [derived('geometry of a rectangle')],
});

/**
 * Share of the face of a core that is free to the flow, which entry and exit losses go by.
 *
 * @function
 * @returns One ratio.
 * @throws CalculationError if more area is free than there is face, or an input is physically impossible.
 * @example
 * freeAreaRatio({ freeArea: area(85.5, 'cm²'), faceArea: area(228, 'cm²') }).in('1') //=> 0.375
 */
export const freeAreaRatio = calculation({
  name: 'free area over face area',
  task: 'size an intercooler',
  inputs: {
    /** Area free to the flow. */
    freeArea: input('Ac', 'area', FREE_AREA),
    /** Area of the face of the core. */
    faceArea: input('Af', 'area', { min: 1e-6, max: 20, typical: 0.03 }),
  },
  output: output('s', 'ratio', '1'),
  formula: 'Ac / Af',
  si: (Ac, Af) => Ac / Af,
  rules: [{ need: 'faceArea must be larger than freeArea', holds: (Ac, Af) => Ac < Af }],
  rises: ['Ac'],
  falls: ['Af'],
  sources: [source('kaysLondon', 'chapter 2', 'memory')],
});

/**
 * Height of a stack of plates with passages for two flows in turn: what a core measures across all its layers.
 *
 * @function
 * @returns One length.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * stackHeight({
 *   chargePassages: ratio(20), chargePlateSpacing: length(6.1, 'mm'),
 *   coolantPassages: ratio(21), coolantPlateSpacing: length(8, 'mm'), plateThickness: length(0.5, 'mm'),
 * }).in('mm') //=> 311.0
 */
export const stackHeight = calculation({
  name: 'height of a stack of passages',
  task: 'size an intercooler',
  inputs: {
    /** Number of passages of the charge. */
    chargePassages: input('nh', 'ratio', PASSAGES),
    /** Distance between the plates of a charge passage. */
    chargePlateSpacing: input('bh', 'length', PLATE_SPACING),
    /** Number of passages of the coolant. */
    coolantPassages: input('nc', 'ratio', { ...PASSAGES, typical: 21 }),
    /** Distance between the plates of a coolant passage. */
    coolantPlateSpacing: input('bc', 'length', PLATE_SPACING),
    /** Thickness of a plate or tube wall. */
    plateThickness: input('t', 'length', PLATE_THICKNESS),
  },
  output: output('H', 'length', 'mm'),
  formula: 'nh * bh + nc * bc + (nh + nc + 1) * t',
  si: (nh, bh, nc, bc, t) => nh * bh + nc * bc + (nh + nc + 1) * t,
  rises: ['nh', 'bh', 'nc', 'bc', 't'],
  sources: [derived('geometry of a stack of plates')],
});

/**
 * Area of a rectangle, such as the face of a core.
 *
 * @function
 * @returns One area.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * faceArea({ width: length(500, 'mm'), height: length(311, 'mm') }).in('m²') //=> 0.1555
 */
export const faceArea = calculation({
  name: 'face area of a core',
  task: 'size an intercooler',
  inputs: {
    /** Width of the face. */
    width: input('W', 'length', FLOW_LENGTH),
    /** Height of the face. */
    height: input('H', 'length', { ...FLOW_LENGTH, typical: 0.3 }),
  },
  output: output('Af', 'area', 'm²'),
  formula: 'W * H',
  si: (W, H) => W * H,
  rises: ['W', 'H'],
  sources: [derived('geometry of a rectangle')],
});

/**
 * Area of the plates through which heat passes between the flows, one side of each.
 *
 * @function
 * @returns One area: two plates for each passage.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * plateArea({ passages: ratio(20), passageWidth: length(76, 'mm'), flowLength: length(500, 'mm') }).in('m²') //=> 1.520
 */
export const plateArea = calculation({
  name: 'plate area of a core',
  task: 'size an intercooler',
  inputs: {
    /** Number of passages of the charge. */
    passages: input('n', 'ratio', PASSAGES),
    /** Width of one passage across its flow. */
    passageWidth: input('W', 'length', { ...FLOW_LENGTH, typical: 0.076 }),
    /** Length of the passage along its flow. */
    flowLength: input('L', 'length', FLOW_LENGTH),
  },
  output: output('Aw', 'area', 'm²'),
  formula: '2 * n * W * L',
  si: (n, W, L) => 2 * n * W * L,
  rises: ['n', 'W', 'L'],
  sources: [derived('geometry of a stack of plates')],
});
