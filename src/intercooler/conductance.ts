import {
  assumed,
  calculation,
  commonPractice,
  constant,
  derived,
  input,
  output,
  source,
} from '../calculation/index.js';
import { thermalInsulance, thermalResistance } from '../units/index.js';
import { AREA, CONDUCTANCE, FILM_COEFFICIENT, METAL_CONDUCTIVITY, SHARE } from './core-bounds.js';

const SOURCES = [
  source('kaysLondon', 'chapter 2, overall conductance', 'memory'),
  source('incropera', 'sections 3.6 and 11.2', 'memory'),
];

const THIN_WALL = constant('intercooler/wall-resistance', thermalResistance(0, 'K/W'), {
  label: 'resistance of the wall',
  source: commonPractice('neglected for thin aluminium'),
});

const CLEAN = constant('intercooler/fouling-resistance', thermalResistance(0, 'K/W'), {
  label: 'resistance of fouling',
  source: commonPractice('a clean core'),
});

/**
 * Fouling factor of compressed air, for cores that are not new. Published tables disagree, 0.00018 or 0.00035 m²·K/W; this is their
 * middle, uncertain over both. Oil mist from a breather is worse.
 */
export const foulingFactorOfCompressedAir = constant(
  'intercooler/fouling-factor-of-compressed-air',
  thermalInsulance(0.000265, 'm²·K/W'),
  {
    label: 'fouling factor of compressed air',
    source: source('tema', 'fouling factors, older editions, and one handbook table', 'memory'),
    halfWidth: 0.000085,
  },
);

/**
 * Efficiency of a straight fin of even thickness: the heat it takes over what it would at the temperature of its root all along.
 *
 * For a fin between two plates that both carry the other flow, its length is half the distance between them.
 *
 * @function
 * @returns One ratio, near 1 for short thick fins.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * finEfficiency({
 *   heatTransferCoefficient: heatTransferCoefficient(150, 'W/(m²·K)'), finConductivity: thermalConductivity(180, 'W/(m·K)'),
 *   finThickness: length(0.1, 'mm'), finLength: length(4, 'mm'),
 * }).in('%') //=> 91.97
 */
export const finEfficiency = calculation({
  name: 'fin efficiency',
  task: 'size an intercooler',
  inputs: {
    /** Heat transfer coefficient at the fin. */
    heatTransferCoefficient: input('h', 'heat transfer coefficient', FILM_COEFFICIENT),
    /** Heat conductivity of its metal; aluminium about 180 to 220 W/(m·K). */
    finConductivity: input('k', 'thermal conductivity', METAL_CONDUCTIVITY),
    /** Thickness of the fin. */
    finThickness: input('t', 'length', { min: 1e-5, max: 0.01, typical: 1e-4 }),
    /** Length from the root to where no heat passes. */
    finLength: input('L', 'length', { min: 1e-5, max: 0.1, typical: 0.004 }),
  },
  output: output('eta', 'ratio', '%'),
  formula: 'tanh(L * sqrt(2 * h / (k * t))) / (L * sqrt(2 * h / (k * t)))',
  si: (h, k, t, L) => {
    const mL = L * Math.sqrt((2 * h) / (k * t));
    return Math.tanh(mL) / mL;
  },
  rises: ['k', 't'],
  falls: ['h', 'L'],
  sources: [source('incropera', 'section 3.6', 'memory')],
});

/**
 * Efficiency of a whole finned surface: fins at their own efficiency, the bare rest at 1.
 *
 * @function
 * @returns One ratio between the fin efficiency and 1.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * surfaceEfficiency({ finAreaShare: percent(80), finEfficiency: percent(91.97) }).in('%') //=> 93.58
 */
export const surfaceEfficiency = calculation({
  name: 'surface efficiency',
  task: 'size an intercooler',
  inputs: {
    /** Area of the fins over the whole area of the side. */
    finAreaShare: input('a', 'ratio', SHARE),
    /** Efficiency of the fins. */
    finEfficiency: input('eta', 'ratio', { min: 0, max: 1, typical: 0.9 }),
  },
  output: output('eta_o', 'ratio', '%'),
  formula: '1 - a * (1 - eta)',
  si: (a, eta) => 1 - a * (1 - eta),
  rises: ['eta'],
  falls: ['a'],
  sources: [source('incropera', 'section 3.6', 'memory')],
});

/**
 * Conductance between one flow and the wall: surface efficiency times heat transfer coefficient times area.
 *
 * @function
 * @returns One thermal conductance.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * sideConductance({
 *   surfaceEfficiency: percent(90), heatTransferCoefficient: heatTransferCoefficient(120, 'W/(m²·K)'), area: area(4, 'm²'),
 * }).in('W/K') //=> 432.0
 */
export const sideConductance = calculation({
  name: 'conductance of one side',
  task: 'size an intercooler',
  inputs: {
    /** Efficiency of the finned surface. */
    surfaceEfficiency: input('eta_o', 'ratio', { min: 0.01, max: 1, typical: 0.92 }),
    /** Heat transfer coefficient between the flow and the surface. */
    heatTransferCoefficient: input('h', 'heat transfer coefficient', FILM_COEFFICIENT),
    /** Whole area that the flow touches. */
    area: input('A', 'area', AREA),
  },
  output: output('hA', 'thermal conductance', 'W/K'),
  formula: 'eta_o * h * A',
  si: (eta, h, A) => eta * h * A,
  rises: ['eta_o', 'h', 'A'],
  sources: SOURCES,
});

/**
 * Resistance of the plates or tube walls of a core.
 *
 * @function
 * @returns One thermal resistance; of thin aluminium hardly any.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * wallResistance({
 *   thickness: length(0.5, 'mm'), conductivity: thermalConductivity(180, 'W/(m·K)'), area: area(1, 'm²'),
 * }).in('K/W') //=> 0.000002778
 */
export const wallResistance = calculation({
  name: 'resistance of the wall',
  task: 'size an intercooler',
  inputs: {
    /** Thickness of the wall. */
    thickness: input('t', 'length', { min: 0, max: 0.02, typical: 0.0005 }),
    /** Heat conductivity of its metal. */
    conductivity: input('k', 'thermal conductivity', METAL_CONDUCTIVITY),
    /** Area of the wall, one side. */
    area: input('A', 'area', { ...AREA, typical: 1 }),
  },
  output: output('Rw', 'thermal resistance', 'K/W'),
  formula: 't / (k * A)',
  si: (t, k, A) => t / (k * A),
  rises: ['t'],
  falls: ['k', 'A'],
  sources: SOURCES,
});

/**
 * Resistance of dirt on one side of a core, from its fouling factor.
 *
 * @function
 * @returns One thermal resistance.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * foulingResistance({ foulingFactor: foulingFactorOfCompressedAir, area: area(4, 'm²') }).in('K/W') //=> 0.00006625
 */
export const foulingResistance = calculation({
  name: 'resistance of fouling',
  task: 'size an intercooler',
  inputs: {
    /** Area times kelvin per heat flow of the layer. */
    foulingFactor: input('rf', 'thermal insulance', { min: 0, max: 0.05, typical: 0.000265 }),
    /** Area of the side that is dirty. */
    area: input('A', 'area', AREA),
  },
  output: output('Rf', 'thermal resistance', 'K/W'),
  formula: 'rf / A',
  si: (rf, A) => rf / A,
  rises: ['rf'],
  falls: ['A'],
  sources: SOURCES,
});

/**
 * Overall conductance (UA) of a core from its two sides, its wall and its dirt, one behind the other.
 *
 * @function
 * @returns One thermal conductance, below that of either side. A wall and fouling that are left out count as none, and show as assumed.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * overallConductance({
 *   hotConductance: thermalConductance(432, 'W/K'), coldConductance: thermalConductance(496.8, 'W/K'),
 *   foulingResistance: foulingResistance({ foulingFactor: thermalInsulance(0.00035, 'm²·K/W'), area: area(4, 'm²') }),
 * }).in('W/K') //=> 226.5
 */
export const overallConductance = calculation({
  name: 'overall conductance',
  task: 'size an intercooler',
  inputs: {
    /** Conductance between the charge and the wall. */
    hotConductance: input('hAh', 'thermal conductance', CONDUCTANCE),
    /** Conductance between the coolant and the wall. */
    coldConductance: input('hAc', 'thermal conductance', CONDUCTANCE),
    /** Resistance of the wall. */
    wallResistance: assumed('Rw', 'thermal resistance', { min: 0, max: 100, assume: THIN_WALL }),
    /** Resistance of the dirt on both sides together. */
    foulingResistance: assumed('Rf', 'thermal resistance', { min: 0, max: 100, assume: CLEAN }),
  },
  output: output('UA', 'thermal conductance', 'W/K'),
  formula: '1 / (1 / hAh + 1 / hAc + Rw + Rf)',
  si: (hAh, hAc, Rw, Rf) => 1 / (1 / hAh + 1 / hAc + Rw + Rf),
  rises: ['hAh', 'hAc'],
  falls: ['Rw', 'Rf'],
  sources: [...SOURCES, derived('thermal resistances one behind the other')],
});
