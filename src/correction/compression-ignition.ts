import { assumed, calculation, constant, input, output, source, type WorkId } from '../calculation/index.js';
import { temperature } from '../units/index.js';
import { referenceDryPressure } from './boost-control.js';

/**
 * The temperature that ISO 1585 and UN Regulation 85 correct compression ignition to: 25 °C. The texts print 298 K; pass
 * that where a printed figure is to be met to the last digit.
 */
export const referenceInletTemperature = constant('correction/reference-inlet-temperature', temperature(298.15, 'K'), {
  label: 'inlet temperature of the reference atmosphere',
  source: source('iso1585', 'reference atmosphere, 298 K', 'memory'),
});

const atmosphere = {
  /** Pressure of the room's air without its water vapour, at the place, not reduced to sea level. */
  dryPressure: input('p_d', 'absolute pressure', { min: 40e3, max: 120e3, trusted: [80e3, 110e3], typical: 98e3 }),
  /** Temperature of the air that enters the engine's air inlet. */
  inletTemperature: input('T', 'temperature', { min: 220, max: 350, trusted: [283, 313.15], typical: 297.15 }),
  /** Dry pressure of the reference atmosphere. */
  referencePressure: assumed('p_ref', 'absolute pressure', { min: 40e3, max: 120e3, assume: referenceDryPressure }),
  /** Temperature of the reference atmosphere. */
  referenceTemperature: assumed('T_ref', 'temperature', { min: 250, max: 330, assume: referenceInletTemperature }),
} as const;

const OUTPUT = output('f_a', 'ratio', '1');
const RISES = ['T', 'p_ref'] as const;
const FALLS = ['p_d', 'T_ref'] as const;

const task = 'correct power to a standard atmosphere';
const NOT_READ = 'exponents from memory; the text itself was not read';

function sources(work: WorkId, where: string): ReturnType<typeof source>[] {
  return [source(work, `${where}; ${NOT_READ}`, 'memory'), source('dieselManual', 'three classes of engine', 'read')];
}

/**
 * Atmospheric factor of a compression-ignition engine without boost or with a mechanically driven charger, the same in
 * ISO 1585 and UN Regulation 85. It is raised to the engine factor.
 *
 * @function
 * @returns The atmospheric factor. Carries a note outside 80 to 110 kPa or 10 to 40 °C.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * atmosphericFactorUnboosted({
 *   dryPressure: absolutePressure(958.77, 'hPa'),
 *   inletTemperature: temperature(30, '°C'),
 * }).in('1') //=> 1.04466
 */
export const atmosphericFactorUnboosted = calculation({
  name: 'atmospheric factor, unboosted or mechanically charged',
  task,
  inputs: atmosphere,
  output: OUTPUT,
  formula: 'p_ref / p_d * (T / T_ref)^0.7',
  si: (pd, T, pRef, Tref) => (pRef / pd) * (T / Tref) ** 0.7,
  rises: RISES,
  falls: FALLS,
  sources: sources('iso1585', 'compression ignition, unboosted and mechanically charged'),
});

/**
 * Atmospheric factor of a turbocharged compression-ignition engine in 80/1269/EEC and UN Regulation 85, with or without a
 * charge cooler: temperature to the power of 1.5.
 *
 * ISO 1585 has 1.2 there: {@link atmosphericFactorTurbochargedIso1585}. The sources disagree, so say which was taken.
 *
 * @function
 * @returns The atmospheric factor. Carries a note outside 80 to 110 kPa or 10 to 40 °C.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * atmosphericFactorTurbochargedUnR85({
 *   dryPressure: absolutePressure(958.77, 'hPa'),
 *   inletTemperature: temperature(30, '°C'),
 * }).in('1') //=> 1.04852
 */
export const atmosphericFactorTurbochargedUnR85 = calculation({
  name: 'atmospheric factor of UN Regulation 85, turbocharged',
  task,
  inputs: atmosphere,
  output: OUTPUT,
  formula: '(p_ref / p_d)^0.7 * (T / T_ref)^1.5',
  si: (pd, T, pRef, Tref) => (pRef / pd) ** 0.7 * (T / Tref) ** 1.5,
  rises: RISES,
  falls: FALLS,
  sources: sources('unR85', 'compression ignition, turbocharged, also 80/1269/EEC'),
});

/**
 * Atmospheric factor of a turbocharged compression-ignition engine in ISO 1585:1992 and SAE J1349 of the 1990s, without a
 * charge cooler or with an air-to-air one: temperature to the power of 1.2.
 *
 * UN Regulation 85 has 1.5 there: {@link atmosphericFactorTurbochargedUnR85}. Where engine coolant cools the charge it is
 * {@link atmosphericFactorLiquidCooledCharge}.
 *
 * @function
 * @returns The atmospheric factor. Carries a note outside 80 to 110 kPa or 10 to 40 °C.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * atmosphericFactorTurbochargedIso1585({
 *   dryPressure: absolutePressure(958.77, 'hPa'),
 *   inletTemperature: temperature(30, '°C'),
 * }).in('1') //=> 1.04331
 */
export const atmosphericFactorTurbochargedIso1585 = calculation({
  name: 'atmospheric factor of ISO 1585, turbocharged',
  task,
  inputs: atmosphere,
  output: OUTPUT,
  formula: '(p_ref / p_d)^0.7 * (T / T_ref)^1.2',
  si: (pd, T, pRef, Tref) => (pRef / pd) ** 0.7 * (T / Tref) ** 1.2,
  rises: RISES,
  falls: FALLS,
  sources: sources('iso1585', 'edition of 1992, compression ignition, turbocharged, no cooler or air-to-air'),
});

/**
 * Atmospheric factor of a turbocharged compression-ignition engine whose charge is cooled by engine coolant, in ISO
 * 1585:1992: the coolant keeps the charge warm whatever the room does, so temperature counts less.
 *
 * @function
 * @returns The atmospheric factor. Carries a note outside 80 to 110 kPa or 10 to 40 °C.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * atmosphericFactorLiquidCooledCharge({
 *   dryPressure: absolutePressure(958.77, 'hPa'),
 *   inletTemperature: temperature(30, '°C'),
 * }).in('1') //=> 1.03467
 */
export const atmosphericFactorLiquidCooledCharge = calculation({
  name: 'atmospheric factor of ISO 1585, charge cooled by engine coolant',
  task,
  inputs: atmosphere,
  output: OUTPUT,
  formula: '(p_ref / p_d)^0.7 * (T / T_ref)^0.7',
  si: (pd, T, pRef, Tref) => ((pRef / pd) * (T / Tref)) ** 0.7,
  rises: RISES,
  falls: FALLS,
  sources: sources('iso1585', 'edition of 1992, compression ignition, charge cooled by engine coolant'),
});

/**
 * The atmospheric factors of each text by class of engine.
 *
 * @example
 * Object.keys(atmosphericFactors['UN R85']) //=> ['unboosted or mechanically charged', 'turbocharged']
 */
export const atmosphericFactors = {
  'UN R85': {
    'unboosted or mechanically charged': atmosphericFactorUnboosted,
    turbocharged: atmosphericFactorTurbochargedUnR85,
  },
  'ISO 1585': {
    'unboosted or mechanically charged': atmosphericFactorUnboosted,
    turbocharged: atmosphericFactorTurbochargedIso1585,
    'turbocharged, charge cooled by engine coolant': atmosphericFactorLiquidCooledCharge,
  },
} as const;

/**
 * Factor from observed to net power for compression ignition: the atmospheric factor to the power of the engine factor.
 *
 * Take both from one text, {@link atmosphericFactors} and {@link engineFactor}; {@link correctionFactor} sees to that.
 * Engines that hold their fuel and boost by themselves no longer follow it: later revisions of SAE J1349 dropped the
 * compression-ignition factors for that reason.
 *
 * @function
 * @returns The number that observed power or torque is multiplied by. Carries a note outside 0.9 to 1.1: the standard
 * wants the conditions stated then.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * correctionFactorCompressionIgnition({
 *   atmosphericFactor: ratio(1.0485),
 *   engineFactor: ratio(0.8236),
 * }).in('1') //=> 1.03978
 */
export const correctionFactorCompressionIgnition = calculation({
  name: 'correction factor for compression ignition',
  task,
  inputs: {
    /** Atmospheric factor of the class of engine. */
    atmosphericFactor: input('f_a', 'ratio', { min: 0.4, max: 3, typical: 1.0485 }),
    /** Engine factor of the same text. */
    engineFactor: input('f_m', 'ratio', { min: 0.19, max: 1.2, typical: 0.8236 }),
  },
  output: output('alpha_d', 'ratio', '1'),
  formula: 'f_a^f_m',
  si: (fa, fm) => fa ** fm,
  rules: [
    {
      need: 'a factor between 0.9 and 1.1, the limit of the standard',
      holds: (fa, fm) => fa ** fm >= 0.9 && fa ** fm <= 1.1,
      otherwise: 'note',
    },
  ],
  rises: ['f_a'],
  sources: [
    source('grpe2018', 'the engine factor is an exponent', 'read'),
    source('dieselManual', 'validity 0.9 to 1.1', 'read'),
    source('iso1585', 'compression ignition; the text itself was not read', 'memory'),
  ],
});
