import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uncertainty } from '../../src/calculation/index.js';
import {
  blendLowerHeatingValue,
  blendOf,
  ethanolInPumpE85,
  fuelPropertyTable,
  fuels,
  massFractionOfBlend,
  publishedFuelProperties,
  stoichiometricAirFuelRatio,
  volumeFractionOfBlend,
  type Fuel,
} from '../../src/fuel/index.js';
import { airFuelRatio, density, ratio, specificEnergy, volumeFraction } from '../../src/units/index.js';

// The fuels that the blends of the check values are made from.
const gasoline: Fuel = {
  density: density(745, 'kg/m³'),
  lowerHeatingValue: specificEnergy(43.44, 'MJ/kg'),
  stoichiometricAirFuelRatio: airFuelRatio(14.6),
  latentHeat: specificEnergy(349, 'kJ/kg'),
};
const ethanol: Fuel = {
  density: density(792, 'kg/m³'),
  lowerHeatingValue: specificEnergy(26.95, 'MJ/kg'),
  stoichiometricAirFuelRatio: airFuelRatio(9),
  latentHeat: specificEnergy(921, 'kJ/kg'),
};
const blend = (percent: number) =>
  blendOf({ base: gasoline, added: ethanol, volumeFraction: volumeFraction(percent, '%') });

describe('a blend by volume', () => {
  // By volume for density and by mass for the rest, evaluated with mpmath, 50 digits.
  it.each([
    [10, 0.7497, 41.698, 14.008, 409.4],
    [85, 0.78495, 29.298, 9.797, 839.6],
  ])('of %d per cent ethanol has the properties of its masses', (percent, rho, heat, air, latent) => {
    const made = blend(percent);
    expect(made.density.in('kg/L')).toBeCloseTo(rho, 4);
    expect(made.lowerHeatingValue.in('MJ/kg')).toBeCloseTo(heat, 3);
    expect(made.stoichiometricAirFuelRatio.in('1')).toBeCloseTo(air, 3);
    expect(made.latentHeat.in('kJ/kg')).toBeCloseTo(latent, 1);
  });

  it('of none and of all is what it is made from', () => {
    for (const [percent, fuel] of [
      [0, gasoline],
      [100, ethanol],
    ] as const) {
      const made = blend(percent);
      for (const key of Object.keys(fuel) as (keyof Fuel)[]) expect(made[key].si).toBeCloseTo(fuel[key].si, 9);
    }
  });

  it('gives back its volume fraction', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(between(0, 1), between(600, 900), between(600, 900), (v, base, added) => {
        const w = massFractionOfBlend.kernel(v, base, added);
        expect(volumeFractionOfBlend.kernel(w, base, added)).toBeCloseTo(v, 12);
      }),
    );
  });

  it('of three is a blend of a blend, whatever the order', () => {
    const methanol = fuels.methanol;
    const one = blendOf({ base: blend(50), added: methanol, volumeFraction: volumeFraction(20, '%') });
    const other = blendOf({
      base: blendOf({ base: gasoline, added: methanol, volumeFraction: volumeFraction(1 / 3) }),
      added: ethanol,
      volumeFraction: volumeFraction(40, '%'),
    });
    expect(one.lowerHeatingValue.si).toBeCloseTo(other.lowerHeatingValue.si, 3);
    expect(one.density.si).toBeCloseTo(other.density.si, 9);
  });

  it('what a pump sells as E85 leaves the air-fuel ratio uncertain by half a unit, and says through what', () => {
    const pump = blendOf({ base: fuels.gasoline, added: fuels.ethanol, volumeFraction: ethanolInPumpE85 });
    const budget = uncertainty(pump.stoichiometricAirFuelRatio);
    expect(budget.standard.si).toBeGreaterThan(0.45);
    expect(budget.contributions[0]!.label).toBe('ethanol in pump E85');
  });

  it('does not take a volume fraction for a mass fraction, in the types and at run time', () => {
    expect(() =>
      blendLowerHeatingValue({
        // @ts-expect-error heating values go by mass
        massFraction: volumeFraction(10, '%'),
        baseLowerHeatingValue: gasoline.lowerHeatingValue,
        addedLowerHeatingValue: ethanol.lowerHeatingValue,
      }),
    ).toThrow(/massFraction must be a mass fraction, got a volume fraction/);
    expect(() => blend(110)).toThrow(/volumeFraction/);
  });
});

describe('the table of fuels', () => {
  it('has every property of every fuel, between what is printed for it or beside it by its own half width', () => {
    const table = fuelPropertyTable();
    expect(table).toHaveLength(16);
    for (const { fuel, property, value, lowest, highest } of table) {
      expect(value, `${fuel} ${property}`).toBe(fuels[fuel][property]);
      expect(lowest.si).toBeLessThanOrEqual(highest.si);
    }
  });

  it('has half widths that cover all that is printed, within the rounding of print', () => {
    for (const { fuel, property, value, lowest, highest } of fuelPropertyTable()) {
      const { standard } = uncertainty(value);
      const half = standard.si * Math.sqrt(3) + 0.0001 * value.si;
      expect(value.si - half, `${fuel} ${property}`).toBeLessThanOrEqual(lowest.si);
      expect(value.si + half, `${fuel} ${property}`).toBeGreaterThanOrEqual(highest.si);
    }
  });

  it('says of every figure where it is printed, and whether that was read', () => {
    for (const properties of Object.values(publishedFuelProperties))
      for (const values of Object.values(properties))
        for (const { source } of values) expect(source.where).toBeTruthy();
    const unnamed = Object.entries(publishedFuelProperties).flatMap(([fuel, properties]) =>
      Object.entries(properties).flatMap(([property, values]) =>
        values
          .filter(({ source }) => source.status !== 'read' && source.status !== 'memory')
          .map(({ value, source }) => [fuel, property, value.in(value.unit as never), source.status]),
      ),
    );
    // Of one figure nobody noted where it is printed; it is no figure of the work that the others beside it are from.
    expect(unnamed).toEqual([['gasoline', 'latentHeat', 305, 'common practice']]);
  });

  it('agrees with the formula of the two alcohols', () => {
    const made = (carbon: number, hydrogen: number) =>
      stoichiometricAirFuelRatio({ carbon: ratio(carbon), hydrogen: ratio(hydrogen), oxygen: ratio(1) }).si;
    expect(made(2, 6)).toBeCloseTo(fuels.ethanol.stoichiometricAirFuelRatio.si, 2);
    expect(made(1, 4)).toBeCloseTo(fuels.methanol.stoichiometricAirFuelRatio.si, 2);
  });
});
