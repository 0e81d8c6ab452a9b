import { commonPractice, source } from '../calculation/index.js';
import { airFuelRatio, density, specificEnergy, type Kind, type Quantity, type Source } from '../units/index.js';
import { fuels, type Fuel } from './fuels.js';

/** A figure as it is printed somewhere. */
export interface PublishedValue<K extends Kind = Kind> {
  readonly value: Quantity<K>;
  readonly source: Source;
}

type Published = {
  readonly [P in keyof Fuel]: readonly PublishedValue<Fuel[P] extends Quantity<infer K> ? K : never>[];
};

const AFDC = (where: string): Source => source('afdc', where, 'read');
const HEYWOOD = source('heywood', 'table D.4', 'memory');
const printed = <K extends Kind>(value: Quantity<K>, from: Source): PublishedValue<K> => ({ value, source: from });

/**
 * What is printed for each property of each fuel of {@link fuels}, so that a reader sees how far sources are apart. The half
 * widths of `fuels` cover all of it.
 *
 * @example
 * publishedFuelProperties.ethanol.latentHeat.map(({ value }) => Math.round(value.in('kJ/kg'))) //=> [921, 840]
 */
export const publishedFuelProperties: Readonly<Record<keyof typeof fuels, Published>> = {
  gasoline: {
    density: [
      printed(density(6, 'lb/gal(US)'), AFDC('low end of 6.0 to 6.5 lb/gal')),
      printed(density(6.5, 'lb/gal(US)'), AFDC('high end of 6.0 to 6.5 lb/gal')),
      printed(density(116090 / 18676, 'lb/gal(US)'), AFDC('implied by 116090 Btu/gal and 18676 Btu/lb')),
    ],
    lowerHeatingValue: [
      printed(specificEnergy(18676, 'Btu/lb'), AFDC('one edition')),
      printed(specificEnergy(18000, 'Btu/lb'), AFDC('another edition, low end')),
      printed(specificEnergy(19000, 'Btu/lb'), AFDC('another edition, high end')),
    ],
    stoichiometricAirFuelRatio: [
      printed(airFuelRatio(14.7), AFDC('air-fuel ratio by weight')),
      printed(airFuelRatio(14.6), HEYWOOD),
    ],
    latentHeat: [
      printed(specificEnergy(150, 'Btu/lb'), AFDC('heat of vaporization')),
      printed(specificEnergy(350, 'kJ/kg'), HEYWOOD),
      printed(specificEnergy(305, 'kJ/kg'), commonPractice('printed elsewhere than in Heywood; where was not noted')),
    ],
  },
  ethanol: {
    density: [printed(density(6.61, 'lb/gal(US)'), AFDC('specific weight'))],
    lowerHeatingValue: [
      printed(specificEnergy(11585, 'Btu/lb'), AFDC('lower heating value')),
      printed(specificEnergy(26.9, 'MJ/kg'), HEYWOOD),
    ],
    stoichiometricAirFuelRatio: [printed(airFuelRatio(9), AFDC('air-fuel ratio by weight'))],
    latentHeat: [
      printed(specificEnergy(396, 'Btu/lb'), AFDC('heat of vaporization')),
      printed(specificEnergy(840, 'kJ/kg'), HEYWOOD),
    ],
  },
  methanol: {
    density: [printed(density(6.63, 'lb/gal(US)'), AFDC('specific weight'))],
    lowerHeatingValue: [
      printed(specificEnergy(8637, 'Btu/lb'), AFDC('lower heating value')),
      printed(specificEnergy(20, 'MJ/kg'), HEYWOOD),
    ],
    stoichiometricAirFuelRatio: [printed(airFuelRatio(6.47), HEYWOOD)],
    latentHeat: [
      printed(specificEnergy(506, 'Btu/lb'), AFDC('heat of vaporization')),
      printed(specificEnergy(1103, 'kJ/kg'), HEYWOOD),
    ],
  },
  diesel: {
    density: [printed(density(7.079, 'lb/gal(US)'), AFDC('no. 2 diesel, specific weight'))],
    lowerHeatingValue: [
      printed(specificEnergy(18394, 'Btu/lb'), AFDC('no. 2 diesel, lower heating value')),
      printed(specificEnergy(42.5, 'MJ/kg'), HEYWOOD),
      printed(specificEnergy(43.2, 'MJ/kg'), HEYWOOD),
    ],
    stoichiometricAirFuelRatio: [
      printed(airFuelRatio(14.7), AFDC('air-fuel ratio by weight')),
      printed(airFuelRatio(14.5), HEYWOOD),
    ],
    latentHeat: [
      printed(specificEnergy(100, 'Btu/lb'), AFDC('heat of vaporization')),
      printed(specificEnergy(270, 'kJ/kg'), HEYWOOD),
    ],
  },
};

/** One property of one fuel: what is taken here, and between what published values lie. */
export interface FuelPropertyRow {
  readonly fuel: keyof typeof fuels;
  readonly property: keyof Fuel;
  /** The value of `fuels`. */
  readonly value: Quantity;
  /** The lowest and the highest value printed, in the unit of `value`. */
  readonly lowest: Quantity;
  readonly highest: Quantity;
}

/**
 * The fuels as a table: every property with the spread of what is printed for it.
 *
 * @returns A row for each property of each fuel.
 * @example
 * const [row] = fuelPropertyTable().filter((row) => row.fuel === 'gasoline' && row.property === 'lowerHeatingValue');
 * `${row.lowest.in('MJ/kg').toFixed(1)} to ${row.highest.in('MJ/kg').toFixed(1)}` //=> '41.9 to 44.2'
 */
export function fuelPropertyTable(): readonly FuelPropertyRow[] {
  return (Object.keys(fuels) as (keyof typeof fuels)[]).flatMap((fuel) =>
    (Object.keys(fuels[fuel]) as (keyof Fuel)[]).map((property) => {
      const value: Quantity = fuels[fuel][property];
      const values = publishedFuelProperties[fuel][property]
        .map((item): Quantity => item.value)
        .sort((a, b) => a.si - b.si);
      const [lowest, highest] = [values[0]!, values[values.length - 1]!];
      return {
        fuel,
        property,
        value,
        lowest: lowest.to(value.unit as never),
        highest: highest.to(value.unit as never),
      };
    }),
  );
}
