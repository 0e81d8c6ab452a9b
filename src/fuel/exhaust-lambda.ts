import { assumed, calculation, constant, input, output, source } from '../calculation/index.js';
import { ratio } from '../units/index.js';

/** Hydrogen atoms per carbon atom of the gasoline that Brettschneider's equation is mostly used with. */
export const hydrogenOfBrettschneider = constant('fuel/brettschneider-hydrogen', ratio(1.7261), {
  label: 'hydrogen per carbon of the fuel',
  source: source('brettschneider1979', 'gasoline; other fuels differ', 'memory'),
});

/** Oxygen atoms per carbon atom of the gasoline that Brettschneider's equation is mostly used with. */
export const oxygenOfBrettschneider = constant('fuel/brettschneider-oxygen', ratio(0.0176), {
  label: 'oxygen per carbon of the fuel',
  source: source('brettschneider1979', 'gasoline; other fuels differ', 'memory'),
});

/** Carbon atoms of n-hexane, which analysers give hydrocarbons as: what the hydrocarbon reading is multiplied by. */
export const carbonOfHexane = constant('fuel/brettschneider-carbon-of-hexane', ratio(6), {
  label: 'carbon per hydrocarbon read as hexane',
  source: source('brettschneider1979', 'K1, six carbon atoms', 'memory'),
});

/**
 * Twice the carbon of hexane, which one analyser maker takes for infrared analysers, because they see only part of an
 * engine's hydrocarbons. Sources disagree; it moves lambda by half a per cent at 150 ppm.
 */
export const carbonOfHexaneInfrared = constant('fuel/infrared-carbon-of-hexane', ratio(12), {
  label: 'carbon per hydrocarbon read as hexane by infrared',
  source: source('analyserPapers', 'K1 of 12 after Singer and Harley 1998', 'read'),
});

const PART = { min: 0, max: 0.25 } as const;

/**
 * Lambda from the composition of the dry exhaust gas by Brettschneider's equation: a balance of oxygen that does not need
 * the air or the fuel measured.
 *
 * It takes the gas of one moment, cooled and dried; air drawn into the exhaust and a catalyst in front of the probe spoil
 * it. Hydrocarbons are those read as n-hexane.
 *
 * @function
 * @returns Lambda of what was burned.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * lambdaFromExhaustGas({
 *   carbonDioxide: moleFraction(14.7, '%'),
 *   carbonMonoxide: moleFraction(0.5, '%'),
 *   oxygen: moleFraction(0.7, '%'),
 *   nitricOxide: moleFraction(0.1, '%'),
 *   hydrocarbons: moleFraction(150, 'ppm'),
 * }).in('1') //=> 1.0142
 */
export const lambdaFromExhaustGas = calculation({
  name: 'lambda from exhaust gas',
  task: 'fuel the charge',
  inputs: {
    /** Carbon dioxide in the dry gas. */
    carbonDioxide: input('CO2', 'mole fraction', { ...PART, min: 1e-4, typical: 0.115 }),
    /** Carbon monoxide in the dry gas. */
    carbonMonoxide: input('CO', 'mole fraction', { ...PART, typical: 0.05 }),
    /** Oxygen in the dry gas. */
    oxygen: input('O2', 'mole fraction', { ...PART, typical: 0.003 }),
    /** Nitric oxide in the dry gas. */
    nitricOxide: input('NO', 'mole fraction', { min: 0, max: 0.02, typical: 5e-4 }),
    /** Hydrocarbons in the dry gas, read as n-hexane. */
    hydrocarbons: input('HC', 'mole fraction', { min: 0, max: 0.05, typical: 3e-4 }),
    /** Atoms of hydrogen per atom of carbon of the fuel. */
    hydrogenToCarbon: assumed('H_cv', 'ratio', { min: 0, max: 4, assume: hydrogenOfBrettschneider }),
    /** Atoms of oxygen per atom of carbon of the fuel. */
    oxygenToCarbon: assumed('O_cv', 'ratio', { min: 0, max: 1, assume: oxygenOfBrettschneider }),
    /** What the hydrocarbon reading is multiplied by to count its carbon. */
    hydrocarbonFactor: assumed('K_1', 'ratio', { min: 1, max: 20, assume: carbonOfHexane }),
  },
  output: output('lambda', 'lambda', '1'),
  formula:
    '(CO2 + CO / 2 + O2 + NO / 2 + (H_cv / 4 * (3.5 / (3.5 + CO / CO2)) - O_cv / 2) * (CO2 + CO))' +
    ' / ((1 + H_cv / 4 - O_cv / 2) * (CO2 + CO + K_1 * HC))',
  si: (CO2, CO, O2, NO, HC, H, O, K1) =>
    (CO2 + CO / 2 + O2 + NO / 2 + ((H / 4) * (3.5 / (3.5 + CO / CO2)) - O / 2) * (CO2 + CO)) /
    ((1 + H / 4 - O / 2) * (CO2 + CO + K1 * HC)),
  rises: ['O2', 'NO'],
  falls: ['HC', 'K_1'],
  sources: [
    source('brettschneider1979', 'equation as quoted in white papers that were read', 'memory'),
    source('analyserPapers', 'the equation and its constants', 'read'),
  ],
});
