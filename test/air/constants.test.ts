import { describe, expect, it } from 'vitest';
import {
  dryAirDensity,
  gasConstantFromMolarMass,
  gasConstantOfDryAir,
  heatCapacityRatioOfAir,
  molarMassOfDryAir,
  specificHeatCapacityOfAir,
} from '../../src/air/index.js';
import { absolutePressure, temperature, type Quantity } from '../../src/units/index.js';

const halfWidth = ({ origin }: Quantity): number =>
  origin?.type === 'leaf' ? origin.uncertainty!.standard * Math.sqrt(3) : NaN;

/** Dry air by the NASA-9 polynomials of N2, O2, Ar and the NASA-7 polynomial of CO2, computed with 50 digits: T, cp, ratio. */
const NASA: readonly (readonly [number, number, number])[] = [
  [250, 1003.0876, 1.4008771],
  [300, 1004.8217, 1.3999086],
  [350, 1008.1774, 1.3980477],
  [400, 1013.4648, 1.3951504],
];

describe('constants of air', () => {
  it.each(NASA)('cover with their half widths what polynomials give for dry air at %d K', (_T, cp, ratio) => {
    expect(Math.abs(cp - specificHeatCapacityOfAir.si)).toBeLessThan(halfWidth(specificHeatCapacityOfAir));
    expect(Math.abs(ratio - heatCapacityRatioOfAir.si)).toBeLessThan(halfWidth(heatCapacityRatioOfAir));
  });

  it('cover humid air of 20 g/kg by its heat-capacity ratio (same polynomials, 300 K: 1.3972353)', () => {
    expect(Math.abs(1.3972353 - heatCapacityRatioOfAir.si)).toBeLessThan(halfWidth(heatCapacityRatioOfAir));
  });

  it('agree with one another: cp from ratio and gas constant lies within its half width', () => {
    const k = heatCapacityRatioOfAir.si;
    const cp = (k * gasConstantOfDryAir.si) / (k - 1);
    expect(Math.abs(cp - specificHeatCapacityOfAir.si)).toBeLessThan(1);
  });

  it('cover the published gas constants of dry air: ISO 2533 and CIPM-2007', () => {
    for (const other of [287.05287, 287.0451]) {
      expect(Math.abs(other - gasConstantOfDryAir.si)).toBeLessThan(halfWidth(gasConstantOfDryAir));
    }
    expect(gasConstantFromMolarMass({ molarMass: molarMassOfDryAir }).si).toBeCloseTo(gasConstantOfDryAir.si, 3);
  });

  it('are inputs of a result that can be replaced', () => {
    const air = { temperature: temperature(15, '°C'), pressure: absolutePressure(101.325, 'kPa') };
    const iso = gasConstantFromMolarMass({ molarMass: molarMassOfDryAir });
    const { origin } = dryAirDensity(air);
    expect(origin?.type === 'step' && origin.inputs[2]).toBe(gasConstantOfDryAir);
    expect(dryAirDensity({ ...air, gasConstant: iso }).si).not.toBe(dryAirDensity(air).si);
  });
});
