import { molarMassOfDryAir } from '../air/index.js';
import { assumed, calculation, constant, derived, input, output, source } from '../calculation/index.js';
import { moleFraction, ratio } from '../units/index.js';

/** Oxygen in dry air by amount. */
export const oxygenMoleFractionOfAir = constant('fuel/oxygen-mole-fraction-of-air', moleFraction(0.20939), {
  label: 'oxygen in dry air by amount',
  source: source('cipm2007', 'composition of dry air', 'memory'),
  halfWidth: 0.0001,
});

/** No oxygen in the fuel: what stoichiometric ratios assume when it is not given. */
export const noOxygenInFuel = constant('fuel/no-oxygen-in-fuel', ratio(0), {
  label: 'oxygen atoms in a pure hydrocarbon',
  source: derived('a hydrocarbon holds none'),
});

/**
 * Stoichiometric air-fuel ratio of a fuel CxHyOz from its formula, by mass of *dry* air.
 *
 * For a blend of unknown formula use the ratio of hydrogen to carbon: {@link
 * stoichiometricAirFuelRatioFromHydrogenRatio}. The 14.7 of the trade is one gasoline, not a constant; a target taken
 * from the wrong fuel's ratio is a wrong mixture.
 *
 * @function
 * @returns The stoichiometric air-fuel ratio.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible, or the fuel carries all its oxygen
 * itself.
 * @example
 * stoichiometricAirFuelRatio({ carbon: ratio(2), hydrogen: ratio(6), oxygen: ratio(1) }).in('1') //=> 9.00835
 */
export const stoichiometricAirFuelRatio = calculation({
  name: 'stoichiometric air-fuel ratio',
  task: 'fuel the charge',
  inputs: {
    /** Carbon atoms in the formula; the mean of a mixture need not be whole. */
    carbon: input('x', 'ratio', { min: 0, max: 100, typical: 8 }),
    /** Hydrogen atoms in the formula. */
    hydrogen: input('y', 'ratio', { min: 0, max: 250, typical: 18 }),
    /** Oxygen atoms in the formula. */
    oxygen: assumed('z', 'ratio', { min: 0, max: 50, assume: noOxygenInFuel }),
    /** Molar mass of dry air. */
    molarMassOfAir: assumed('M', 'molar mass', { min: 0.0285, max: 0.0295, assume: molarMassOfDryAir }),
    /** Oxygen in dry air by amount. */
    oxygenInAir: assumed('x_O2', 'mole fraction', { min: 0.15, max: 0.5, assume: oxygenMoleFractionOfAir }),
  },
  output: output('AFR_st', 'air-fuel ratio', '1'),
  formula: '(x + y / 4 - z / 2) * (M / x_O2) / (0.012011 * x + 0.001008 * y + 0.015999 * z)',
  si: airPerFuel,
  rules: [{ need: 'a fuel that needs oxygen from the air', holds: (x, y, z) => x + y / 4 > z / 2 }],
  rises: ['M'],
  falls: ['z', 'x_O2'],
  sources: [source('heywood', 'section 3.4', 'memory')],
});

function airPerFuel(x: number, y: number, z: number, M: number, xO2: number): number {
  return ((x + y / 4 - z / 2) * (M / xO2)) / (0.012011 * x + 0.001008 * y + 0.015999 * z);
}

/**
 * Stoichiometric air-fuel ratio of a fuel from its atoms of hydrogen, and of oxygen, per atom of carbon: CH1.87 for a
 * usual gasoline.
 *
 * @function
 * @returns The stoichiometric air-fuel ratio, by mass of dry air.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible, or the fuel carries all its oxygen
 * itself.
 * @example
 * stoichiometricAirFuelRatioFromHydrogenRatio({ hydrogenToCarbon: ratio(1.87) }).in('1') //=> 14.6091
 */
export const stoichiometricAirFuelRatioFromHydrogenRatio = calculation({
  name: 'stoichiometric air-fuel ratio from the hydrogen ratio',
  task: 'fuel the charge',
  inputs: {
    /** Atoms of hydrogen per atom of carbon. */
    hydrogenToCarbon: input('y', 'ratio', { min: 0, max: 4, typical: 1.87 }),
    /** Atoms of oxygen per atom of carbon. */
    oxygenToCarbon: assumed('z', 'ratio', { min: 0, max: 2, assume: noOxygenInFuel }),
    /** Molar mass of dry air. */
    molarMassOfAir: assumed('M', 'molar mass', { min: 0.0285, max: 0.0295, assume: molarMassOfDryAir }),
    /** Oxygen in dry air by amount. */
    oxygenInAir: assumed('x_O2', 'mole fraction', { min: 0.15, max: 0.5, assume: oxygenMoleFractionOfAir }),
  },
  output: output('AFR_st', 'air-fuel ratio', '1'),
  formula: '(1 + y / 4 - z / 2) * (M / x_O2) / (0.012011 + 0.001008 * y + 0.015999 * z)',
  si: (y, z, M, xO2) => airPerFuel(1, y, z, M, xO2),
  rules: [{ need: 'a fuel that needs oxygen from the air', holds: (y, z) => 1 + y / 4 > z / 2 }],
  rises: ['y', 'M'],
  falls: ['z', 'x_O2'],
  sources: [source('heywood', 'equation 3.6', 'memory')],
});
