import { calculation, constant, derived, input, output, source } from '../calculation/index.js';
import { CalculationError, volumeFraction, type Problem, type Quantity } from '../units/index.js';
import { describe, unknownNames } from '../units/internal.js';
import type { Fuel } from './fuels.js';

/**
 * Ethanol in what a pump sells as E85: 51 to 83 % by volume with season and country. Ask, or measure, before tuning to it.
 */
export const ethanolInPumpE85 = constant('fuel/ethanol-in-pump-e85', volumeFraction(67, '%'), {
  label: 'ethanol in pump E85',
  source: source('astmD5798', '51 to 83 % by volume', 'memory'),
  halfWidth: 0.16,
});

const DENSITY = { min: 400, max: 1200, typical: 749 } as const;
const VOLUME_FRACTION = { min: 0, max: 1, typical: 0.1 } as const;
const MASS_FRACTION = { min: 0, max: 1, typical: 0.1056 } as const;
const HEATING_VALUE = { min: 1e7, max: 1.3e8, typical: 43.44e6 } as const;
const LATENT_HEAT = { min: 5e4, max: 3e6, typical: 349e3 } as const;

/**
 * Mass fraction of what is added to a fuel, from its volume fraction: pumps blend by volume, heating value and air demand
 * go by mass.
 *
 * @function
 * @returns Mass of what is added per mass of the blend.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * massFractionOfBlend({
 *   volumeFraction: volumeFraction(10, '%'),
 *   baseDensity: density(745, 'kg/m³'),
 *   addedDensity: density(792, 'kg/m³'),
 * }).in('%') //=> 10.5642
 */
export const massFractionOfBlend = calculation({
  name: 'mass fraction of a fuel blend',
  task: 'fuel the charge',
  inputs: {
    /** Volume of what is added over both volumes before mixing. */
    volumeFraction: input('v', 'volume fraction', VOLUME_FRACTION),
    /** Density of the base fuel. */
    baseDensity: input('rho_1', 'density', DENSITY),
    /** Density of what is added. */
    addedDensity: input('rho_2', 'density', { ...DENSITY, typical: 792 }),
  },
  output: output('w', 'mass fraction', '%'),
  formula: 'v * rho_2 / ((1 - v) * rho_1 + v * rho_2)',
  si: (v, base, added) => (v * added) / ((1 - v) * base + v * added),
  rises: ['v', 'rho_2'],
  falls: ['rho_1'],
  sources: [derived('masses of the two volumes')],
});

/**
 * Volume fraction of what is added to a fuel, from its mass fraction: the inverse of {@link massFractionOfBlend}.
 *
 * @function
 * @returns Volume of what is added over both volumes before mixing.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * volumeFractionOfBlend({
 *   massFraction: massFraction(10.5642, '%'),
 *   baseDensity: density(745, 'kg/m³'),
 *   addedDensity: density(792, 'kg/m³'),
 * }).in('%') //=> 9.99998
 */
export const volumeFractionOfBlend = calculation({
  name: 'volume fraction of a fuel blend',
  task: 'fuel the charge',
  inputs: {
    /** Mass of what is added per mass of the blend. */
    massFraction: input('w', 'mass fraction', MASS_FRACTION),
    /** Density of the base fuel. */
    baseDensity: input('rho_1', 'density', DENSITY),
    /** Density of what is added. */
    addedDensity: input('rho_2', 'density', { ...DENSITY, typical: 792 }),
  },
  output: output('v', 'volume fraction', '%'),
  formula: '(w / rho_2) / ((1 - w) / rho_1 + w / rho_2)',
  si: (w, base, added) => w / added / ((1 - w) / base + w / added),
  rises: ['w', 'rho_1'],
  falls: ['rho_2'],
  sources: [derived('volumes of the two masses')],
});

/**
 * Density of a fuel blend from its volume fraction, without the small change of volume in mixing.
 *
 * @function
 * @returns The density of the blend.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * blendDensity({
 *   volumeFraction: volumeFraction(85, '%'),
 *   baseDensity: density(745, 'kg/m³'),
 *   addedDensity: density(792, 'kg/m³'),
 * }).in('kg/L') //=> 0.78495
 */
export const blendDensity = calculation({
  name: 'density of a fuel blend',
  task: 'fuel the charge',
  inputs: {
    /** Volume of what is added over both volumes before mixing. */
    volumeFraction: input('v', 'volume fraction', VOLUME_FRACTION),
    /** Density of the base fuel. */
    baseDensity: input('rho_1', 'density', DENSITY),
    /** Density of what is added. */
    addedDensity: input('rho_2', 'density', { ...DENSITY, typical: 792 }),
  },
  output: output('rho', 'density', 'kg/L'),
  formula: '(1 - v) * rho_1 + v * rho_2',
  si: byFraction,
  rises: ['rho_1', 'rho_2'],
  sources: [derived('masses of the two volumes, volumes taken to add up')],
});

function byFraction(fraction: number, base: number, added: number): number {
  return (1 - fraction) * base + fraction * added;
}

/**
 * Lower heating value of a fuel blend, from its mass fraction.
 *
 * @function
 * @returns The lower heating value of the blend.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible; a volume fraction is refused.
 * @example
 * blendLowerHeatingValue({
 *   massFraction: massFraction(85.76342, '%'),
 *   baseLowerHeatingValue: specificEnergy(43.44, 'MJ/kg'),
 *   addedLowerHeatingValue: specificEnergy(26.95, 'MJ/kg'),
 * }).in('MJ/kg') //=> 29.2976
 */
export const blendLowerHeatingValue = calculation({
  name: 'lower heating value of a fuel blend',
  task: 'fuel the charge',
  inputs: {
    /** Mass of what is added per mass of the blend. */
    massFraction: input('w', 'mass fraction', MASS_FRACTION),
    /** Lower heating value of the base fuel. */
    baseLowerHeatingValue: input('H_1', 'specific energy', HEATING_VALUE),
    /** Lower heating value of what is added. */
    addedLowerHeatingValue: input('H_2', 'specific energy', { ...HEATING_VALUE, typical: 26.95e6 }),
  },
  output: output('H_u', 'specific energy', 'MJ/kg'),
  formula: '(1 - w) * H_1 + w * H_2',
  si: byFraction,
  rises: ['H_1', 'H_2'],
  sources: [derived('energy balance, heat of mixing left out')],
});

/**
 * Latent heat of a fuel blend, from its mass fraction.
 *
 * @function
 * @returns The latent heat of the blend, evaporated as a whole.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible; a volume fraction is refused.
 * @example
 * blendLatentHeat({
 *   massFraction: massFraction(85.76342, '%'),
 *   baseLatentHeat: specificEnergy(349, 'kJ/kg'),
 *   addedLatentHeat: specificEnergy(921, 'kJ/kg'),
 * }).in('kJ/kg') //=> 839.567
 */
export const blendLatentHeat = calculation({
  name: 'latent heat of a fuel blend',
  task: 'fuel the charge',
  inputs: {
    /** Mass of what is added per mass of the blend. */
    massFraction: input('w', 'mass fraction', MASS_FRACTION),
    /** Latent heat of the base fuel. */
    baseLatentHeat: input('h_1', 'specific energy', LATENT_HEAT),
    /** Latent heat of what is added. */
    addedLatentHeat: input('h_2', 'specific energy', { ...LATENT_HEAT, typical: 921e3 }),
  },
  output: output('h_fg', 'specific energy', 'kJ/kg'),
  formula: '(1 - w) * h_1 + w * h_2',
  si: byFraction,
  rises: ['h_1', 'h_2'],
  sources: [derived('energy balance, heat of mixing left out')],
});

/**
 * Stoichiometric air-fuel ratio of a fuel blend, from its mass fraction.
 *
 * @function
 * @returns The stoichiometric air-fuel ratio of the blend.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible; a volume fraction is refused.
 * @example
 * blendStoichiometricAirFuelRatio({
 *   massFraction: massFraction(85.76342, '%'),
 *   baseStoichiometricAirFuelRatio: airFuelRatio(14.6),
 *   addedStoichiometricAirFuelRatio: airFuelRatio(9),
 * }).in('1') //=> 9.79725
 */
export const blendStoichiometricAirFuelRatio = calculation({
  name: 'stoichiometric air-fuel ratio of a fuel blend',
  task: 'fuel the charge',
  inputs: {
    /** Mass of what is added per mass of the blend. */
    massFraction: input('w', 'mass fraction', MASS_FRACTION),
    /** Stoichiometric ratio of the base fuel. */
    baseStoichiometricAirFuelRatio: input('AFR_1', 'air-fuel ratio', { min: 1, max: 40, typical: 14.6 }),
    /** Stoichiometric ratio of what is added. */
    addedStoichiometricAirFuelRatio: input('AFR_2', 'air-fuel ratio', { min: 1, max: 40, typical: 9 }),
  },
  output: output('AFR_st', 'air-fuel ratio', '1'),
  formula: '(1 - w) * AFR_1 + w * AFR_2',
  si: byFraction,
  rises: ['AFR_1', 'AFR_2'],
  sources: [derived('each part takes the air of its own mass')],
});

type BlendParts = Parameters<typeof blendOf>[0];

function checkedParts(parts: BlendParts): BlendParts {
  const given = (parts ?? {}) as Readonly<Record<string, unknown>>;
  const missing = (['base', 'added'] as const).flatMap((input): Problem[] => {
    const fuel = given[input];
    if (typeof fuel === 'object' && fuel !== null && 'density' in fuel) return [];
    const code = fuel === undefined ? 'missing' : 'kind';
    return [{ code, input, need: 'a fuel, such as fuels.gasoline', got: describe(fuel), mend: '' }];
  });
  const problems = [...unknownNames(given, ['base', 'added', 'volumeFraction']), ...missing];
  if (problems.length > 0) throw new CalculationError('fuel blend', problems);
  return parts;
}

/**
 * A fuel made of two by volume, with all that calculations need of it.
 *
 * Everything stays connected: the spread of the fuels and of the volume fraction shows in the uncertainty of what is made
 * of the blend. What a pump calls E85 may be far from it: {@link ethanolInPumpE85}.
 *
 * @returns The blend as a fuel, to be blended again if there are three.
 * @throws CalculationError if the volume fraction is not between 0 and 1, or a property is missing or impossible.
 * @example
 * const e10 = blendOf({ base: fuels.gasoline, added: fuels.ethanol, volumeFraction: volumeFraction(10, '%') });
 * e10.stoichiometricAirFuelRatio.in('1') //=> 14.0121
 */
export function blendOf(parts: {
  readonly base: Fuel;
  readonly added: Fuel;
  /** Volume of what is added over both volumes before mixing. */
  readonly volumeFraction: Quantity<'volume fraction'>;
}): Fuel {
  const { base, added } = checkedParts(parts);
  const fractions = { volumeFraction: parts.volumeFraction, baseDensity: base.density, addedDensity: added.density };
  const massFraction = massFractionOfBlend(fractions);
  return {
    density: blendDensity(fractions),
    lowerHeatingValue: blendLowerHeatingValue({
      massFraction,
      baseLowerHeatingValue: base.lowerHeatingValue,
      addedLowerHeatingValue: added.lowerHeatingValue,
    }),
    stoichiometricAirFuelRatio: blendStoichiometricAirFuelRatio({
      massFraction,
      baseStoichiometricAirFuelRatio: base.stoichiometricAirFuelRatio,
      addedStoichiometricAirFuelRatio: added.stoichiometricAirFuelRatio,
    }),
    latentHeat: blendLatentHeat({
      massFraction,
      baseLatentHeat: base.latentHeat,
      addedLatentHeat: added.latentHeat,
    }),
  };
}
