import { constant, derived, source } from '../calculation/index.js';
import { airFuelRatio, density, specificEnergy, type Quantity } from '../units/index.js';

/**
 * What calculations need of a fuel. Every value carries its source and the half width over which published values
 * spread.
 */
export interface Fuel {
  readonly density: Quantity<'density'>;
  /** Heat of combustion with the water left as vapour. */
  readonly lowerHeatingValue: Quantity<'specific energy'>;
  /** Mass of dry air per mass of fuel that leaves neither oxygen nor fuel. */
  readonly stoichiometricAirFuelRatio: Quantity<'air-fuel ratio'>;
  /** Heat taken up when the fuel evaporates. */
  readonly latentHeat: Quantity<'specific energy'>;
}

/**
 * Everyday fuels, near 15 to 20 °C. Pump fuel is no pure substance: where the result matters, use what is known of the
 * batch.
 *
 * Gasoline here has no ethanol in it; what is sold as E10 or E85 is a blend, and the share in it moves with season and
 * country. Running leaner than intended because the fuel's stoichiometric ratio was taken wrong can burn an engine.
 *
 * @example
 * String(fuels.gasoline.stoichiometricAirFuelRatio) //=> '14.6'
 */
export const fuels = {
  gasoline: {
    density: constant('fuel/gasoline-density', density(749, 'kg/m³'), {
      label: 'density of gasoline',
      source: source('afdc', '6.0 to 6.5 lb/gal', 'read'),
      halfWidth: 30,
    }),
    lowerHeatingValue: constant('fuel/gasoline-lower-heating-value', specificEnergy(43.44, 'MJ/kg'), {
      label: 'lower heating value of gasoline',
      source: source('afdc', '18676 Btu/lb; another edition 18000 to 19000', 'read'),
      halfWidth: 1.6e6,
    }),
    stoichiometricAirFuelRatio: constant('fuel/gasoline-stoichiometric-ratio', airFuelRatio(14.6), {
      label: 'stoichiometric air-fuel ratio of gasoline',
      source: source('heywood', 'table D.4; 14.7 is printed elsewhere, and 14.5 follows from CH1.8', 'memory'),
      halfWidth: 0.15,
    }),
    latentHeat: constant('fuel/gasoline-latent-heat', specificEnergy(349, 'kJ/kg'), {
      label: 'latent heat of gasoline',
      source: source('afdc', '150 Btu/lb; Heywood 350, 305 elsewhere', 'read'),
      halfWidth: 44e3,
    }),
  },
  ethanol: {
    density: constant('fuel/ethanol-density', density(792, 'kg/m³'), {
      label: 'density of ethanol',
      source: source('afdc', '6.61 lb/gal', 'read'),
      halfWidth: 5,
    }),
    lowerHeatingValue: constant('fuel/ethanol-lower-heating-value', specificEnergy(26.95, 'MJ/kg'), {
      label: 'lower heating value of ethanol',
      source: source('afdc', '11585 Btu/lb; Heywood 26.9 MJ/kg', 'read'),
      halfWidth: 0.1e6,
    }),
    stoichiometricAirFuelRatio: constant('fuel/ethanol-stoichiometric-ratio', airFuelRatio(9.008), {
      label: 'stoichiometric air-fuel ratio of ethanol',
      source: derived('C2H6O by stoichiometricAirFuelRatio; tables print 9.0'),
      halfWidth: 0.01,
    }),
    latentHeat: constant('fuel/ethanol-latent-heat', specificEnergy(921, 'kJ/kg'), {
      label: 'latent heat of ethanol',
      source: source('afdc', '396 Btu/lb; Heywood 840 kJ/kg', 'read'),
      halfWidth: 81e3,
    }),
  },
  methanol: {
    density: constant('fuel/methanol-density', density(794, 'kg/m³'), {
      label: 'density of methanol',
      source: source('afdc', '6.63 lb/gal', 'read'),
      halfWidth: 5,
    }),
    lowerHeatingValue: constant('fuel/methanol-lower-heating-value', specificEnergy(20.09, 'MJ/kg'), {
      label: 'lower heating value of methanol',
      source: source('afdc', '8637 Btu/lb; Heywood 20.0 MJ/kg', 'read'),
      halfWidth: 0.1e6,
    }),
    stoichiometricAirFuelRatio: constant('fuel/methanol-stoichiometric-ratio', airFuelRatio(6.476), {
      label: 'stoichiometric air-fuel ratio of methanol',
      source: derived('CH4O by stoichiometricAirFuelRatio; Heywood prints 6.47'),
      halfWidth: 0.01,
    }),
    latentHeat: constant('fuel/methanol-latent-heat', specificEnergy(1177, 'kJ/kg'), {
      label: 'latent heat of methanol',
      source: source('afdc', '506 Btu/lb; Heywood 1103 kJ/kg', 'read'),
      halfWidth: 74e3,
    }),
  },
  diesel: {
    density: constant('fuel/diesel-density', density(848, 'kg/m³'), {
      label: 'density of diesel fuel',
      source: source('afdc', 'no. 2 diesel, 7.079 lb/gal', 'read'),
      halfWidth: 30,
    }),
    lowerHeatingValue: constant('fuel/diesel-lower-heating-value', specificEnergy(42.78, 'MJ/kg'), {
      label: 'lower heating value of diesel fuel',
      source: source('afdc', 'no. 2 diesel, 18394 Btu/lb; Heywood 42.5 to 43.2 MJ/kg', 'read'),
      halfWidth: 0.5e6,
    }),
    stoichiometricAirFuelRatio: constant('fuel/diesel-stoichiometric-ratio', airFuelRatio(14.5), {
      label: 'stoichiometric air-fuel ratio of diesel fuel',
      source: source('heywood', 'table D.4; 14.7 is printed elsewhere', 'memory'),
      halfWidth: 0.2,
    }),
    latentHeat: constant('fuel/diesel-latent-heat', specificEnergy(233, 'kJ/kg'), {
      label: 'latent heat of diesel fuel',
      source: source('afdc', '100 Btu/lb; Heywood 270 kJ/kg', 'read'),
      halfWidth: 37e3,
    }),
  },
} as const satisfies Readonly<Record<string, Fuel>>;
