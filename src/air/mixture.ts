import { calculation, derived, each, input, output, source } from '../calculation/index.js';

const MOLE_FRACTIONS = { min: 0, max: 1, typical: 0.3 };
const MOLAR_MASSES = { min: 0.001, max: 0.2, typical: 0.028 };
const SOURCES = [
  source('heywood', 'ideal gas mixtures', 'memory'),
  derived('properties of ideal gases add up by mass; the fractions are taken in proportion to their sum'),
];

/** Sum of values by mass over the mass, of lists one after another: fractions, molar masses, values. */
function byMass(lists: readonly number[]): number {
  const n = lists.length / 3;
  let [sum, mass] = [0, 0];
  for (let i = 0; i < n; i++) {
    const part = lists[i]! * lists[n + i]!;
    mass += part;
    sum += part * lists[2 * n + i]!;
  }
  return sum / mass;
}

/**
 * Molar mass of a mixture of gases, from mole fractions and molar masses.
 *
 * Its gas constant follows by {@link gasConstantFromMolarMass}.
 *
 * @function
 * @returns One molar mass. Fractions that do not add up to 1 are taken in proportion.
 * @throws CalculationError if the lists differ in length, or no gas has a share.
 * @example
 * mixtureMolarMass({
 *   moleFractions: [moleFraction(79, '%'), moleFraction(21, '%')],
 *   molarMasses: [molarMass(28.0134, 'g/mol'), molarMass(31.9988, 'g/mol')],
 * }).in('g/mol') //=> 28.8503
 */
export const mixtureMolarMass = calculation({
  name: 'molar mass of a mixture',
  task: 'describe the air',
  inputs: {
    /** Share of each gas in the molecules. */
    moleFractions: each('x', 'mole fraction', MOLE_FRACTIONS),
    /** Molar mass of each gas. */
    molarMasses: each('M', 'molar mass', MOLAR_MASSES),
  },
  output: output('Mm', 'molar mass', 'g/mol'),
  formula: 'sum(x .* M) / sum(x)',
  si: (...lists) => {
    const n = lists.length / 2;
    let [mass, amount] = [0, 0];
    for (let i = 0; i < n; i++) {
      mass += lists[i]! * lists[n + i]!;
      amount += lists[i]!;
    }
    return mass / amount;
  },
  sources: SOURCES,
});

/**
 * Specific heat capacity of a mixture of gases, from mole fractions and those of the gases; entropy functions mix the same way.
 *
 * @function
 * @returns One specific heat capacity of the mixture, per kilogram of it.
 * @throws CalculationError if the lists differ in length, or no gas has a share.
 * @example
 * const hot = { temperature: temperature(126.85, '°C') };
 * mixtureHeatCapacity({
 *   moleFractions: [moleFraction(79, '%'), moleFraction(21, '%')],
 *   molarMasses: [molarMass(28.0134, 'g/mol'), molarMass(31.9988, 'g/mol')],
 *   heatCapacities: [nitrogenHeatCapacity(hot), oxygenHeatCapacity(hot)],
 * }).in('J/(kg·K)') //=> 1020.11
 */
export const mixtureHeatCapacity = calculation({
  name: 'heat capacity of a mixture',
  task: 'describe the air',
  inputs: {
    /** Share of each gas in the molecules. */
    moleFractions: each('x', 'mole fraction', MOLE_FRACTIONS),
    /** Molar mass of each gas. */
    molarMasses: each('M', 'molar mass', MOLAR_MASSES),
    /** Heat capacity, or entropy function, of each gas per kilogram of it. */
    heatCapacities: each('c', 'specific heat capacity', { min: -2e4, max: 5e4, typical: 1000 }),
  },
  output: output('cm', 'specific heat capacity', 'J/(kg·K)'),
  formula: 'sum(x .* M .* c) / sum(x .* M)',
  si: (...lists) => byMass(lists),
  sources: SOURCES,
});

/**
 * Enthalpy of a mixture of gases, from mole fractions and the enthalpies of the gases.
 *
 * @function
 * @returns One specific energy of the mixture, per kilogram of it.
 * @throws CalculationError if the lists differ in length, or no gas has a share.
 * @example
 * const hot = { temperature: temperature(126.85, '°C') };
 * mixtureEnthalpy({
 *   moleFractions: [moleFraction(79, '%'), moleFraction(21, '%')],
 *   molarMasses: [molarMass(28.0134, 'g/mol'), molarMass(31.9988, 'g/mol')],
 *   enthalpies: [nitrogenEnthalpy(hot), oxygenEnthalpy(hot)],
 * }).in('kJ/kg') //=> 128.653
 */
export const mixtureEnthalpy = calculation({
  name: 'enthalpy of a mixture',
  task: 'describe the air',
  inputs: {
    /** Share of each gas in the molecules. */
    moleFractions: each('x', 'mole fraction', MOLE_FRACTIONS),
    /** Molar mass of each gas. */
    molarMasses: each('M', 'molar mass', MOLAR_MASSES),
    /** Enthalpy of each gas per kilogram of it. */
    enthalpies: each('h', 'specific energy', { min: -1e7, max: 1e7, typical: 1e5 }),
  },
  output: output('hm', 'specific energy', 'kJ/kg'),
  formula: 'sum(x .* M .* h) / sum(x .* M)',
  si: (...lists) => byMass(lists),
  sources: SOURCES,
});

/**
 * Heat-capacity ratio of an ideal gas, from its heat capacity and gas constant.
 *
 * @function
 * @returns A ratio above 1.
 * @throws CalculationError if the heat capacity does not exceed the gas constant.
 * @example
 * const gas = { heatCapacity: specificHeatCapacity(1013.46, 'J/(kg·K)'), gasConstant: specificGasConstant(287.045, 'J/(kg·K)') };
 * heatCapacityRatio(gas).in('1') //=> 1.39515
 */
export const heatCapacityRatio = calculation({
  name: 'heat-capacity ratio of a gas',
  task: 'describe the air',
  inputs: {
    /** Specific heat capacity at constant pressure. */
    heatCapacity: input('cp', 'specific heat capacity', { min: 50, max: 5e4, typical: 1013 }),
    /** Gas constant of the gas. */
    gasConstant: input('R', 'specific gas constant', { min: 20, max: 8400, typical: 287 }),
  },
  output: output('gamma', 'ratio', '1'),
  formula: 'cp / (cp - R)',
  si: (cp, R) => cp / (cp - R),
  rules: [{ need: 'the heat capacity at constant pressure must exceed the gas constant', holds: (cp, R) => cp > R }],
  falls: ['cp'],
  rises: ['R'],
  sources: [source('dixonHall', 'perfect gas', 'memory')],
});
