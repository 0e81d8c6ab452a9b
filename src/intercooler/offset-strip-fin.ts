import { assumed, calculation, constant, derived, input, output, source } from '../calculation/index.js';
import { ratio } from '../units/index.js';
import { FIN_HEIGHT, FIN_SPACING, FIN_THICKNESS, REYNOLDS, STRIP_LENGTH } from './core-bounds.js';

const SOURCES = [
  source('manglikBergles1995', 'equations 34 and 35, coefficients as an open-source library has them', 'memory'),
];
const TRUSTED_REYNOLDS = { ...REYNOLDS, trusted: [120, 10000] } as const;
const SCATTER = { min: 0.3, max: 3 } as const;

/** How far a core of offset strip fins may lie from the correlation of its heat transfer: within 20 %. */
export const offsetStripHeatTransferScatter = constant('intercooler/offset-strip-heat-transfer-scatter', ratio(1), {
  label: 'scatter of offset-strip heat transfer',
  source: source('manglikBergles1995', 'within 20 % of the data of 18 cores', 'memory'),
  halfWidth: 0.2,
});

/**
 * How far a core of offset strip fins may lie from the correlation of its friction: within 20 %. Of eight measured values checked, one,
 * a low fin at its fastest, lies 34 % from it.
 */
export const offsetStripFrictionScatter = constant('intercooler/offset-strip-friction-scatter', ratio(1), {
  label: 'scatter of offset-strip friction',
  source: source('manglikBergles1995', 'within 20 % of the data of 18 cores', 'memory'),
  halfWidth: 0.2,
});

const within = (
  low: number,
  high: number,
  what: string,
  share: (s: number, h: number, l: number, t: number) => number,
) =>
  ({
    need: `${what} between ${low} and ${high}, as in the cores that were measured`,
    holds: (_Re: number, s: number, h: number, l: number, t: number) =>
      share(s, h, l, t) >= low && share(s, h, l, t) <= high,
    otherwise: 'note',
  }) as const;

const SHAPES = [
  /* @__PURE__ */ within(0.134, 0.997, 'a fin spacing over height', (s, h) => s / h),
  /* @__PURE__ */ within(0.012, 0.048, 'a fin thickness over strip length', (_s, _h, l, t) => t / l),
  /* @__PURE__ */ within(0.041, 0.121, 'a fin thickness over spacing', (s, _h, _l, t) => t / s),
];

/**
 * Colburn factor of offset strip fins from their sizes: heat transfer of the usual bar-and-plate charge cooler.
 *
 * @function
 * @returns One ratio, uncertain by the scatter of the correlation. Carries a note outside the Reynolds numbers and shapes measured.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * colburnFactorOffsetStrip({
 *   reynoldsNumber: ratio(1000), finSpacing: length(1.5, 'mm'), finHeight: length(6, 'mm'),
 *   stripLength: length(3, 'mm'), finThickness: length(0.09, 'mm'),
 * }).in('1') //=> 0.01488
 */
export const colburnFactorOffsetStrip = calculation({
  name: 'Colburn factor of offset strip fins',
  task: 'size an intercooler',
  inputs: {
    /** Reynolds number on the hydraulic diameter, see {@link hydraulicDiameterOffsetStrip}. */
    reynoldsNumber: input('Re', 'ratio', TRUSTED_REYNOLDS),
    /** Free distance between two fins. */
    finSpacing: input('s', 'length', FIN_SPACING),
    /** Free height of the fins between the plates. */
    finHeight: input('h', 'length', FIN_HEIGHT),
    /** Length of one strip along the flow. */
    stripLength: input('l', 'length', STRIP_LENGTH),
    /** Thickness of the fins. */
    finThickness: input('t', 'length', FIN_THICKNESS),
    /** What the core does over what the correlation says. */
    scatter: assumed('c', 'ratio', { ...SCATTER, assume: offsetStripHeatTransferScatter }),
  },
  output: output('j', 'ratio', '1'),
  formula:
    'c * 0.6522 * Re^(-0.5403) * (s / h)^(-0.1541) * (t / l)^0.1499 * (t / s)^(-0.0678) * (1 + 5.269e-5 * Re^1.34 * (s / h)^0.504 * (t / l)^0.456 * (t / s)^(-1.055))^0.1',
  si: (Re, s, h, l, t, c) => {
    const [a, d, g] = [s / h, t / l, t / s];
    const turbulent = 1 + 5.269e-5 * Re ** 1.34 * a ** 0.504 * d ** 0.456 * g ** -1.055;
    return c * 0.6522 * Re ** -0.5403 * a ** -0.1541 * d ** 0.1499 * g ** -0.0678 * turbulent ** 0.1;
  },
  rules: SHAPES,
  rises: ['c'],
  sources: SOURCES,
});

/**
 * Fanning friction factor of offset strip fins from their sizes.
 *
 * @function
 * @returns One ratio, uncertain by the scatter of the correlation. Carries a note outside the Reynolds numbers and shapes measured.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * frictionFactorOffsetStrip({
 *   reynoldsNumber: ratio(1000), finSpacing: length(1.5, 'mm'), finHeight: length(6, 'mm'),
 *   stripLength: length(3, 'mm'), finThickness: length(0.09, 'mm'),
 * }).in('1') //=> 0.05531
 */
export const frictionFactorOffsetStrip = calculation({
  name: 'friction factor of offset strip fins',
  task: 'size an intercooler',
  inputs: {
    /** Reynolds number on the hydraulic diameter, see {@link hydraulicDiameterOffsetStrip}. */
    reynoldsNumber: input('Re', 'ratio', TRUSTED_REYNOLDS),
    /** Free distance between two fins. */
    finSpacing: input('s', 'length', FIN_SPACING),
    /** Free height of the fins between the plates. */
    finHeight: input('h', 'length', FIN_HEIGHT),
    /** Length of one strip along the flow. */
    stripLength: input('l', 'length', STRIP_LENGTH),
    /** Thickness of the fins. */
    finThickness: input('t', 'length', FIN_THICKNESS),
    /** What the core does over what the correlation says. */
    scatter: assumed('c', 'ratio', { ...SCATTER, assume: offsetStripFrictionScatter }),
  },
  output: output('f', 'ratio', '1'),
  formula:
    'c * 9.6243 * Re^(-0.7422) * (s / h)^(-0.1856) * (t / l)^0.3053 * (t / s)^(-0.2659) * (1 + 7.669e-8 * Re^4.429 * (s / h)^0.92 * (t / l)^3.767 * (t / s)^0.236)^0.1',
  si: (Re, s, h, l, t, c) => {
    const [a, d, g] = [s / h, t / l, t / s];
    const turbulent = 1 + 7.669e-8 * Re ** 4.429 * a ** 0.92 * d ** 3.767 * g ** 0.236;
    return c * 9.6243 * Re ** -0.7422 * a ** -0.1856 * d ** 0.3053 * g ** -0.2659 * turbulent ** 0.1;
  },
  rules: SHAPES,
  rises: ['c'],
  sources: SOURCES,
});

/**
 * Hydraulic diameter of offset strip fins as their correlations mean it: edges of the strips included.
 *
 * @function
 * @returns One length.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * hydraulicDiameterOffsetStrip({
 *   finSpacing: length(1.5, 'mm'), finHeight: length(6, 'mm'), stripLength: length(3.2, 'mm'), finThickness: length(0.1, 'mm'),
 * }).in('mm') //=> 2.334
 */
export const hydraulicDiameterOffsetStrip = calculation({
  name: 'hydraulic diameter of offset strip fins',
  task: 'size an intercooler',
  inputs: {
    /** Free distance between two fins. */
    finSpacing: input('s', 'length', FIN_SPACING),
    /** Free height of the fins between the plates. */
    finHeight: input('h', 'length', FIN_HEIGHT),
    /** Length of one strip along the flow. */
    stripLength: input('l', 'length', STRIP_LENGTH),
    /** Thickness of the fins. */
    finThickness: input('t', 'length', FIN_THICKNESS),
  },
  output: output('Dh', 'length', 'mm'),
  formula: '4 * s * h * l / (2 * (s * l + h * l + t * h) + t * s)',
  si: (s, h, l, t) => (4 * s * h * l) / (2 * (s * l + h * l + t * h) + t * s),
  rises: ['s', 'h', 'l'],
  falls: ['t'],
  sources: SOURCES,
});

/**
 * Share of the area of offset strip fins that is fin and not plate.
 *
 * @function
 * @returns One ratio.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * finAreaShareOffsetStrip({
 *   finSpacing: length(1.5, 'mm'), finHeight: length(6, 'mm'), stripLength: length(3.2, 'mm'), finThickness: length(0.1, 'mm'),
 * }).in('%') //=> 80.55
 */
export const finAreaShareOffsetStrip = calculation({
  name: 'fin share of the area of offset strip fins',
  task: 'size an intercooler',
  inputs: {
    /** Free distance between two fins. */
    finSpacing: input('s', 'length', FIN_SPACING),
    /** Free height of the fins between the plates. */
    finHeight: input('h', 'length', FIN_HEIGHT),
    /** Length of one strip along the flow. */
    stripLength: input('l', 'length', STRIP_LENGTH),
    /** Thickness of the fins. */
    finThickness: input('t', 'length', FIN_THICKNESS),
  },
  output: output('a', 'ratio', '%'),
  formula: '(2 * (h * l + t * h) + t * s) / (2 * (s * l + h * l + t * h) + t * s)',
  si: (s, h, l, t) => {
    const fin = 2 * (h * l + t * h) + t * s;
    return fin / (2 * s * l + fin);
  },
  rises: ['h', 't'],
  sources: [...SOURCES, derived('the terms of the hydraulic diameter that are fin')],
});
