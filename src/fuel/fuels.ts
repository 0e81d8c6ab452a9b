import { constant, derived, source } from '../calculation/index.js';
import { airFuelRatio, density, specificEnergy, type Kind, type Quantity, type Source } from '../units/index.js';

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

/** A value, the half width over which it is published, and where from. */
type Published<Q extends Quantity> = readonly [value: Q, halfWidth: number, from: Source];

function fuel(id: string, name: string, published: { readonly [P in keyof Fuel]: Published<Fuel[P]> }): Fuel {
  const of = <K extends Kind>(property: string, label: string, [value, halfWidth, from]: Published<Quantity<K>>) =>
    constant(`fuel/${id}-${property}`, value, { label: `${label} of ${name}`, source: from, halfWidth });
  return {
    density: of('density', 'density', published.density),
    lowerHeatingValue: of('lower-heating-value', 'lower heating value', published.lowerHeatingValue),
    stoichiometricAirFuelRatio: of(
      'stoichiometric-ratio',
      'stoichiometric air-fuel ratio',
      published.stoichiometricAirFuelRatio,
    ),
    latentHeat: of('latent-heat', 'latent heat', published.latentHeat),
  };
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
  gasoline: fuel('gasoline', 'gasoline', {
    density: [density(749, 'kg/m³'), 30, source('afdc', '6.0 to 6.5 lb/gal', 'read')],
    lowerHeatingValue: [
      specificEnergy(43.44, 'MJ/kg'),
      1.6e6,
      source('afdc', '18676 Btu/lb; another edition 18000 to 19000', 'read'),
    ],
    stoichiometricAirFuelRatio: [
      airFuelRatio(14.6),
      0.15,
      source('heywood', 'table D.4; 14.7 is printed elsewhere, and 14.5 follows from CH1.8', 'memory'),
    ],
    latentHeat: [specificEnergy(349, 'kJ/kg'), 44e3, source('afdc', '150 Btu/lb; Heywood 350, 305 elsewhere', 'read')],
  }),
  ethanol: fuel('ethanol', 'ethanol', {
    density: [density(792, 'kg/m³'), 5, source('afdc', '6.61 lb/gal', 'read')],
    lowerHeatingValue: [
      specificEnergy(26.95, 'MJ/kg'),
      0.1e6,
      source('afdc', '11585 Btu/lb; Heywood 26.9 MJ/kg', 'read'),
    ],
    stoichiometricAirFuelRatio: [
      airFuelRatio(9.008),
      0.01,
      derived('C2H6O by stoichiometricAirFuelRatio; tables print 9.0'),
    ],
    latentHeat: [specificEnergy(921, 'kJ/kg'), 81e3, source('afdc', '396 Btu/lb; Heywood 840 kJ/kg', 'read')],
  }),
  methanol: fuel('methanol', 'methanol', {
    density: [density(794, 'kg/m³'), 5, source('afdc', '6.63 lb/gal', 'read')],
    lowerHeatingValue: [
      specificEnergy(20.09, 'MJ/kg'),
      0.1e6,
      source('afdc', '8637 Btu/lb; Heywood 20.0 MJ/kg', 'read'),
    ],
    stoichiometricAirFuelRatio: [
      airFuelRatio(6.476),
      0.01,
      derived('CH4O by stoichiometricAirFuelRatio; Heywood prints 6.47'),
    ],
    latentHeat: [specificEnergy(1177, 'kJ/kg'), 74e3, source('afdc', '506 Btu/lb; Heywood 1103 kJ/kg', 'read')],
  }),
  diesel: fuel('diesel', 'diesel fuel', {
    density: [density(848, 'kg/m³'), 30, source('afdc', 'no. 2 diesel, 7.079 lb/gal', 'read')],
    lowerHeatingValue: [
      specificEnergy(42.78, 'MJ/kg'),
      0.5e6,
      source('afdc', 'no. 2 diesel, 18394 Btu/lb; Heywood 42.5 to 43.2 MJ/kg', 'read'),
    ],
    stoichiometricAirFuelRatio: [
      airFuelRatio(14.5),
      0.2,
      source('heywood', 'table D.4; 14.7 is printed elsewhere', 'memory'),
    ],
    latentHeat: [specificEnergy(233, 'kJ/kg'), 37e3, source('afdc', '100 Btu/lb; Heywood 270 kJ/kg', 'read')],
  }),
} as const satisfies Readonly<Record<string, Fuel>>;
