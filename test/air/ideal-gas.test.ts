import { assert, double, property, record } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactDot } from '../../src/air/exact-dot.js';
import {
  cpMass,
  enthalpyMass,
  entropyFunctionMass,
  gasConstantMass,
  temperatureAtEnthalpyMass,
  temperatureAtEntropyFunctionMass,
} from '../../src/air/ideal-gas.js';
import {
  compressibilityFactor,
  dryAirDensity,
  gasConstantOfDryAir,
  gasEnthalpy,
  gasEntropyFunction,
  gasHeatCapacity,
  mixtureEnthalpy,
  mixtureHeatCapacity,
  mixtureMolarMass,
  moistAirGasConstant,
  moistAirHeatCapacity,
  moistAirSensibleEnthalpy,
  realGasDensity,
  standardDensity,
  densityAltitude,
} from '../../src/air/index.js';
import {
  absolutePressure,
  humidityRatio,
  length,
  molarMass,
  moleFraction,
  specificEnergy,
  temperature,
} from '../../src/units/index.js';

const states = record({
  T: double({ min: 200, max: 1000, noNaN: true }),
  W: double({ min: 0, max: 0.2, noNaN: true }),
});

describe('humid air as an ideal gas', () => {
  it('has the temperature back from its enthalpy and from its entropy function, to the last digits', () => {
    assert(
      property(states, ({ T, W }) => {
        expect(Math.abs(temperatureAtEnthalpyMass(enthalpyMass(T, W), W) - T)).toBeLessThan(4e-15 * T + 1e-12);
        expect(Math.abs(temperatureAtEntropyFunctionMass(entropyFunctionMass(T, W), W) - T)).toBeLessThan(2e-12 * T);
      }),
    );
  });

  it('has the heat capacity as the slope of its enthalpy, and that over temperature as the slope of its entropy function', () => {
    assert(
      property(states, ({ T, W }) => {
        const [below, above] = [T * (1 - 1e-4), T * (1 + 1e-4)];
        const slope = (f: (T: number, W: number) => number): number => (f(above, W) - f(below, W)) / (above - below);
        expect(slope(enthalpyMass) / cpMass(T, W)).toBeCloseTo(1, 6);
        expect((slope(entropyFunctionMass) * T) / cpMass(T, W)).toBeCloseTo(1, 6);
      }),
    );
  });

  it('has no temperature for an enthalpy or entropy beyond the range it is looked for in', () => {
    expect(temperatureAtEnthalpyMass(1e7, 0)).toBeNaN();
    expect(temperatureAtEnthalpyMass(-1.5e5, 0)).toBeNaN();
    expect(temperatureAtEntropyFunctionMass(1e4, 0)).toBeNaN();
    expect(temperatureAtEnthalpyMass(NaN, 0)).toBeNaN();
  });

  it('is counted from 0 °C, so that nothing is left there, dry or humid', () => {
    expect(enthalpyMass(273.15, 0.01)).toBe(0);
    expect(entropyFunctionMass(273.15, 0.01)).toBe(0);
  });

  it('has a gas constant between those of its parts, and dry the handbook’s within its spread', () => {
    expect(Math.abs(gasConstantMass(0) - gasConstantOfDryAir.si)).toBeLessThan(0.011);
    expect(moistAirGasConstant({ humidityRatio: humidityRatio(0, 'g/kg') }).si).toBe(gasConstantMass(0));
    expect(gasConstantMass(1e9)).toBeCloseTo(461.523, 2);
  });

  it('follows the handbook’s 1.006 + 1.86 W per kilogram of dry air within 0.3 % in room air', () => {
    const W = 0.0062;
    const perDryAir = cpMass(291.15, W) * (1 + W);
    expect(perDryAir / (1006 + 1860 * W)).toBeCloseTo(1, 2.3);
  });

  it('carries a note where the polynomials do not hold, and is refused where no air is', () => {
    const dry = { humidityRatio: humidityRatio(0, 'g/kg') };
    expect(moistAirHeatCapacity({ ...dry, temperature: temperature(190, 'K') }).notes).toHaveLength(1);
    expect(() => moistAirSensibleEnthalpy({ ...dry, temperature: temperature(1300, 'K') })).toThrow(/temperature/);
  });
});

describe('a mixture of gases', () => {
  const hot = { temperature: temperature(400, 'K') };
  const names = ['nitrogen', 'oxygen', 'argon', 'carbonDioxide'] as const;
  const moleFractions = [0.780848, 0.20939, 0.009332, 0.0004].map((x) => moleFraction(x, '1'));
  const molarMasses = [28.0134, 31.9988, 39.948, 44.0095].map((M) => molarMass(M, 'g/mol'));
  const parts = { moleFractions, molarMasses };

  it('put together like air is dry air', () => {
    const heatCapacities = names.map((name) => gasHeatCapacity[name](hot));
    const enthalpies = names.map((name) => gasEnthalpy[name](hot));
    const entropies = names.map((name) => gasEntropyFunction[name](hot));
    expect(mixtureHeatCapacity({ ...parts, heatCapacities }).si).toBeCloseTo(cpMass(400, 0), 9);
    expect(mixtureEnthalpy({ ...parts, enthalpies }).si).toBeCloseTo(enthalpyMass(400, 0), 6);
    expect(mixtureHeatCapacity({ ...parts, heatCapacities: entropies }).si).toBeCloseTo(entropyFunctionMass(400, 0), 9);
    expect(8.31446261815324 / mixtureMolarMass(parts).si).toBeCloseTo(gasConstantMass(0), 9);
  });

  it('takes fractions in proportion to their sum', () => {
    const tenfold = moleFractions.map((x) => moleFraction(x.si / 10, '1'));
    expect(mixtureMolarMass({ moleFractions: tenfold, molarMasses }).si).toBeCloseTo(mixtureMolarMass(parts).si, 15);
  });

  it('needs lists of one length and a gas with a share', () => {
    const enthalpies = [specificEnergy(1, 'kJ/kg')];
    expect(() => mixtureEnthalpy({ ...parts, enthalpies })).toThrow('lists of one length');
    const nothing = names.map(() => moleFraction(0, '1'));
    expect(() => mixtureMolarMass({ moleFractions: nothing, molarMasses })).toThrow();
  });
});

describe('air as a real gas', () => {
  it('is a perfect gas where it is thin', () => {
    const thin = { temperature: temperature(18, '°C'), pressure: absolutePressure(20, 'kPa') };
    const real = realGasDensity({ ...thin, humidityRatio: humidityRatio(0, 'g/kg') });
    expect(Math.abs(real.si / dryAirDensity(thin).si - 1)).toBeLessThan(1e-4);
    expect(Math.abs(compressibilityFactor.kernel(291.15, 1, 0.0062) - 1)).toBeLessThan(1e-8);
  });
});

describe('density altitude', () => {
  it('of the standard atmosphere is the elevation, within the rounding of the exponent', () => {
    for (const h of [-500, 0, 640, 2000, 6000])
      expect(
        Math.abs(densityAltitude({ density: standardDensity({ elevation: length(h, 'm') }) }).in('m') - h),
      ).toBeLessThan(0.3);
  });

  it('lies above the pressure altitude on a warm day', () => {
    const room = { temperature: temperature(30, '°C'), pressure: absolutePressure(941, 'hPa') };
    expect(densityAltitude({ density: dryAirDensity(room) }).in('m')).toBeGreaterThan(1200);
  });
});

describe('sums of products', () => {
  it('keep what doubles would lose', () => {
    expect(exactDot([1e16, 1, -1e16], [1])).toBe(1);
    expect(exactDot([1 + 2 ** -30, -1], [1 + 2 ** -30, 1 + 2 ** -29])).toBe(2 ** -60);
    expect(exactDot([0.1, 0.2, 0.3], [10, 10, -10])).toBeCloseTo(0, 15);
  });
});
