import { assumed, calculation, constant, derived, input, output, source } from '../calculation/index.js';
import { ratio } from '../units/index.js';
import { FIN_HEIGHT, FIN_THICKNESS, HYDRAULIC_DIAMETER, REYNOLDS } from './core-bounds.js';

const SCATTER = { min: 0.3, max: 3 } as const;
const ANGLE = { min: 0.05, max: 1.2, trusted: [0.14, 0.62], typical: 0.47123889803846897 } as const;
const FIN_PITCH = { min: 1e-4, max: 0.02, typical: 0.0014 } as const;
const LOUVRE_PITCH = { min: 2e-4, max: 0.02, typical: 0.0012 } as const;
const LOUVRE_LENGTH = { min: 2e-4, max: 0.1, typical: 0.0068 } as const;
const FIN_LENGTH = { ...FIN_HEIGHT, typical: 0.008 } as const;
const FIN_DEPTH = { min: 1e-3, max: 0.5, typical: 0.02 } as const;
const TUBE_PITCH = { min: 1e-3, max: 0.2, typical: 0.01 } as const;
const THICKNESS = { ...FIN_THICKNESS, typical: 0.0001 } as const;

/**
 * How far a core of louvred fins may lie from the correlation of its heat transfer: 89 % of the data within 15 %, so a standard
 * uncertainty of 9.4 %.
 */
export const louvredHeatTransferScatter = constant('intercooler/louvred-heat-transfer-scatter', ratio(1), {
  label: 'scatter of louvred-fin heat transfer',
  source: source('changWang1997', '89 % of the data within 15 %', 'memory'),
  halfWidth: 0.163,
});

/**
 * How far a core of louvred fins may lie from the correlation of its friction: 83 % of the data within 15 %, so a standard
 * uncertainty of 10.9 %.
 */
export const louvredFrictionScatter = constant('intercooler/louvred-friction-scatter', ratio(1), {
  label: 'scatter of louvred-fin friction',
  source: source('chang2000', '83 % of the data within 15 %', 'memory'),
  halfWidth: 0.189,
});

/**
 * Colburn factor of louvred fins between flat tubes from their sizes: the cooling-air side of most charge coolers and radiators.
 *
 * @function
 * @returns One ratio, uncertain by the scatter of the correlation. Carries a note outside the Reynolds numbers measured.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * colburnFactorLouvred({
 *   reynoldsNumber: ratio(400), louvreAngle: angle(27, '°'), louvrePitch: length(1.2, 'mm'), louvreLength: length(6.8, 'mm'),
 *   finPitch: length(1.4, 'mm'), finLength: length(8, 'mm'), finDepth: length(20, 'mm'), finThickness: length(0.1, 'mm'),
 *   tubePitch: length(10, 'mm'),
 * }).in('1') //=> 0.02306
 */
export const colburnFactorLouvred = calculation({
  name: 'Colburn factor of louvred fins',
  task: 'size an intercooler',
  inputs: {
    /** Reynolds number on the louvre pitch. */
    reynoldsNumber: input('Re', 'ratio', { ...REYNOLDS, trusted: [100, 3000], typical: 400 }),
    /** Angle of the louvres to the flow. */
    louvreAngle: input('th', 'angle', ANGLE),
    /** Distance from louvre to louvre. */
    louvrePitch: input('Lp', 'length', LOUVRE_PITCH),
    /** Length of a louvre across the flow. */
    louvreLength: input('Ll', 'length', LOUVRE_LENGTH),
    /** Distance from fin to fin. */
    finPitch: input('Fp', 'length', FIN_PITCH),
    /** Length of a fin from tube to tube. */
    finLength: input('Fl', 'length', FIN_LENGTH),
    /** Depth of the tubes along the flow. */
    finDepth: input('Td', 'length', FIN_DEPTH),
    /** Thickness of a fin. */
    finThickness: input('tf', 'length', THICKNESS),
    /** Distance from tube to tube. */
    tubePitch: input('Tp', 'length', TUBE_PITCH),
    /** What the core does over what the correlation says. */
    scatter: assumed('c', 'ratio', { ...SCATTER, assume: louvredHeatTransferScatter }),
  },
  output: output('j', 'ratio', '1'),
  formula:
    'c * Re^(-0.49) * (2 * th / pi)^0.27 * (Fp / Lp)^(-0.14) * (Fl / Lp)^(-0.29) * (Td / Lp)^(-0.23) * (Ll / Lp)^0.68 * (Tp / Lp)^(-0.28) * (tf / Lp)^(-0.05)',
  si: (Re, th, Lp, Ll, Fp, Fl, Td, tf, Tp, c) => {
    const fins = (Fp / Lp) ** -0.14 * (Fl / Lp) ** -0.29 * (tf / Lp) ** -0.05;
    const tubes = (Td / Lp) ** -0.23 * (Tp / Lp) ** -0.28;
    return c * Re ** -0.49 * ((2 * th) / Math.PI) ** 0.27 * (Ll / Lp) ** 0.68 * fins * tubes;
  },
  rises: ['th', 'Ll', 'c'],
  falls: ['Re', 'Fp', 'Fl', 'Td', 'tf', 'Tp'],
  sources: [source('changWang1997', 'equation for the Colburn factor', 'memory'), derived('the angle over 90 degrees')],
});

const SLOW = [
  'Re^(-0.805 * Fp / Fl) * log(1 + Fp / Lp)^3.04 * log((tf / Fp)^0.48 + 0.9)^(-1.435)',
  '(Dh / Lp * log(0.5 * Re))^(-3.01) * (180 * th / pi)^0.35',
  '(Fp * Fd / Ll^2)^(-0.308) * exp(-0.1167 * Tp / Dm)',
].join(' * ');

const FAST = [
  'Re^(0.6049 - 1.064 / (180 * th / pi)^0.2) * log(sqrt(tf / Fp) + 0.9)^(-0.527)',
  '(Fp / Ll)^(-0.7931 * Tp / (Tp - Dm)) * (Tp / Dm)^(-0.0446)',
  '(Dh / Lp * log(0.3 * Re))^(-2.966) * log(1.2 + (Lp / Fp)^1.4)^(-3.553) * (180 * th / pi)^(-0.477)',
].join(' * ');

/**
 * Fanning friction factor of louvred fins between flat tubes from their sizes; one form below a Reynolds number of 150, another above,
 * with a step of some percent between.
 *
 * @function
 * @returns One ratio, uncertain by the scatter of the correlation. Carries a note outside the Reynolds numbers measured, and one that
 * the coefficients were not read in the paper.
 * @throws CalculationError if the fins are too thin for their pitch or the tubes too high for theirs, where the correlation has no
 * value, or an input is physically impossible.
 * @example
 * frictionFactorLouvred({
 *   reynoldsNumber: ratio(400), louvreAngle: angle(27, '°'), louvrePitch: length(1.2, 'mm'), louvreLength: length(6.8, 'mm'),
 *   finPitch: length(1.4, 'mm'), finLength: length(8, 'mm'), finDepth: length(20, 'mm'), finThickness: length(0.1, 'mm'),
 *   tubePitch: length(10, 'mm'), tubeHeight: length(2, 'mm'), hydraulicDiameter: length(2.2, 'mm'),
 * }).in('1') //=> 0.09839
 */
export const frictionFactorLouvred = calculation({
  name: 'friction factor of louvred fins',
  task: 'size an intercooler',
  inputs: {
    /** Reynolds number on the louvre pitch. */
    reynoldsNumber: input('Re', 'ratio', { min: 10, max: 1e5, trusted: [100, 5000], typical: 400 }),
    /** Angle of the louvres to the flow. */
    louvreAngle: input('th', 'angle', ANGLE),
    /** Distance from louvre to louvre. */
    louvrePitch: input('Lp', 'length', LOUVRE_PITCH),
    /** Length of a louvre across the flow. */
    louvreLength: input('Ll', 'length', LOUVRE_LENGTH),
    /** Distance from fin to fin. */
    finPitch: input('Fp', 'length', FIN_PITCH),
    /** Length of a fin from tube to tube. */
    finLength: input('Fl', 'length', FIN_LENGTH),
    /** Depth of the fins along the flow. */
    finDepth: input('Fd', 'length', FIN_DEPTH),
    /** Thickness of a fin. */
    finThickness: input('tf', 'length', THICKNESS),
    /** Distance from tube to tube. */
    tubePitch: input('Tp', 'length', TUBE_PITCH),
    /** Height of a tube across the flow, walls included. */
    tubeHeight: input('Dm', 'length', { min: 1e-4, max: 0.1, typical: 0.002 }),
    /** Hydraulic diameter of the fin passages. */
    hydraulicDiameter: input('Dh', 'length', { ...HYDRAULIC_DIAMETER, typical: 0.0022 }),
    /** What the core does over what the correlation says. */
    scatter: assumed('c', 'ratio', { ...SCATTER, assume: louvredFrictionScatter }),
  },
  output: output('f', 'ratio', '1'),
  formula: `Re < 150 ? c * 14.39 * ${SLOW} : c * 4.97 * ${FAST}`,
  si: (Re, th, Lp, Ll, Fp, Fl, Fd, tf, Tp, Dm, Dh, c) => {
    const degrees = (th * 180) / Math.PI;
    if (Re < 150) {
      const fins =
        Re ** ((-0.805 * Fp) / Fl) * Math.log1p(Fp / Lp) ** 3.04 * Math.log((tf / Fp) ** 0.48 + 0.9) ** -1.435;
      const louvres = ((Dh / Lp) * Math.log(0.5 * Re)) ** -3.01 * degrees ** 0.35;
      return c * 14.39 * fins * louvres * ((Fp * Fd) / (Ll * Ll)) ** -0.308 * Math.exp((-0.1167 * Tp) / Dm);
    }
    const fins = Re ** (0.6049 - 1.064 / degrees ** 0.2) * Math.log(Math.sqrt(tf / Fp) + 0.9) ** -0.527;
    const tubes = (Fp / Ll) ** ((-0.7931 * Tp) / (Tp - Dm)) * (Tp / Dm) ** -0.0446;
    const louvres = ((Dh / Lp) * Math.log(0.3 * Re)) ** -2.966 * Math.log(1.2 + (Lp / Fp) ** 1.4) ** -3.553;
    return c * 4.97 * fins * tubes * louvres * degrees ** -0.477;
  },
  rules: [
    {
      need: 'finThickness must be more than 1 % of finPitch (thinner, the correlation has no value)',
      holds: (_Re, _th, _Lp, _Ll, Fp, _Fl, _Fd, tf) => tf / Fp > 0.01,
    },
    {
      need: 'tubeHeight must be less than tubePitch',
      holds: (_Re, _th, _Lp, _Ll, _Fp, _Fl, _Fd, _tf, Tp, Dm) => Dm < Tp,
    },
  ],
  notes: [
    {
      code: 'experimental',
      message:
        'Friction of louvred fins: coefficients as two public programs have them, which agree; the papers they name were not read.',
    },
  ],
  rises: ['c'],
  falls: ['Dh'],
  sources: [source('chang2000', 'friction correlation with its amendment', 'memory')],
});
