import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uncertainty } from '../../src/calculation/index.js';
import { powerRatioFromChargeTemperature } from '../../src/engine/index.js';
import {
  carbonOfHexaneInfrared,
  evaporativeCoolingLimit,
  extraFuelForDenserCharge,
  fuelDensityAtTemperature,
  fuelLineFrictionFactor,
  fuelLinePressureLoss,
  fuelLineReynoldsNumber,
  fuelLineVelocity,
  fuelMassFlowFromAirflow,
  fuelMassRatioByVolume,
  fuelMassRatioThroughInjector,
  fuels,
  lambdaFromExhaustGas,
  lambdaFromFlows,
  lambdaWithoutAddedFuel,
} from '../../src/fuel/index.js';
import {
  add,
  dynamicViscosity,
  density,
  lambda,
  length,
  massFlow,
  moleFraction,
  ratio,
  ratioOf,
  scale,
  temperature,
  volumeFlow,
} from '../../src/units/index.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('a denser charge', () => {
  const air = massFlow(163.873, 'g/s');
  const mixture = {
    lambda: lambda(0.8),
    stoichiometricAirFuelRatio: fuels.gasoline.stoichiometricAirFuelRatio,
  };
  const fuel = fuelMassFlowFromAirflow({ airMassFlow: air, ...mixture });

  // A solved operating point: cooling air from 0.55 to 1.00 kg/s gives 1.31 % more air (mpmath, own solver).
  it('of 1.31 % more air runs at lambda 0.8105 where the fuel is not added', () => {
    const lean = lambdaWithoutAddedFuel({ lambda: mixture.lambda, airRatio: ratio(1.0131) });
    expect(lean.in('1')).toBeCloseTo(0.8105, 4);
    expect(lean.notes.map(({ code }) => code)).toEqual(['caution']);
    expect(lean.notes[0]!.message).toMatch(/detonate.*measure lambda before loading it.*qualified/);
  });

  it('keeps its mixture with the extra fuel, and loses it as the flows say without', () => {
    fc.assert(
      fc.property(between(0.9, 1.2), (times) => {
        const airRatio = ratio(times);
        const more = add(fuel, extraFuelForDenserCharge({ fuelMassFlow: fuel, airRatio }));
        const denser = scale(air, airRatio);
        const { stoichiometricAirFuelRatio } = mixture;
        const kept = lambdaFromFlows({ airMassFlow: denser, fuelMassFlow: more, stoichiometricAirFuelRatio });
        expect(kept.si).toBeCloseTo(0.8, 12);
        const lost = lambdaFromFlows({ airMassFlow: denser, fuelMassFlow: fuel, stoichiometricAirFuelRatio });
        expect(lambdaWithoutAddedFuel({ lambda: mixture.lambda, airRatio }).si).toBeCloseTo(lost.si, 12);
      }),
    );
  });

  it('from a colder charge asks for fuel in the ratio that the charge temperature gives', () => {
    const airRatio = powerRatioFromChargeTemperature({
      referenceTemperature: temperature(60, '°C'),
      chargeTemperature: temperature(45, '°C'),
    });
    const extra = extraFuelForDenserCharge({ fuelMassFlow: fuel, airRatio });
    expect(ratioOf(extra, fuel).si).toBeCloseTo((333.15 / 318.15) ** 0.6 - 1, 12);
  });
});

describe('warmer fuel', () => {
  const warm = { referenceTemperature: temperature(20, '°C'), fuelTemperature: temperature(40, '°C') };

  it('is 1 to 2 % of lambda over 20 K, as it is metered (common practice, no source)', () => {
    const shift = (fuelRatio: ReturnType<typeof fuelMassRatioByVolume>) =>
      lambdaWithoutAddedFuel({ lambda: lambda(0.8), airRatio: ratio(1), fuelRatio }).si / 0.8 - 1;
    expect(shift(fuelMassRatioThroughInjector(warm))).toBeCloseTo(0.0102, 4);
    expect(shift(fuelMassRatioByVolume(warm))).toBeCloseTo(0.0204, 4);
  });

  it('loses density by the same law as the mass that volume meters', () => {
    const now = fuelDensityAtTemperature({ referenceDensity: density(0.745, 'kg/L'), ...warm });
    expect(now.si / 745).toBeCloseTo(fuelMassRatioByVolume(warm).si, 12);
    expect(uncertainty(now).contributions.map(({ label }) => label)).toEqual(['thermal expansion of the fuel']);
  });
});

describe('evaporating fuel', () => {
  it('could cool by more the richer and the more alcohol, and always says that it does not', () => {
    const given = (fuel: keyof typeof fuels, at: number) => {
      const { latentHeat, stoichiometricAirFuelRatio } = fuels[fuel];
      return evaporativeCoolingLimit({ latentHeat, stoichiometricAirFuelRatio, lambda: lambda(at) });
    };
    expect(given('gasoline', 0.8).si).toBeGreaterThan(given('gasoline', 1).si);
    expect(given('methanol', 1).si).toBeGreaterThan(given('ethanol', 1).si);
    expect(given('ethanol', 1).notes.map(({ code }) => code)).toEqual(['upper bound']);
  });

  it('is bound above what is seen with gasoline in a port, 10 to 20 K (common practice, no source)', () => {
    const { latentHeat, stoichiometricAirFuelRatio } = fuels.gasoline;
    const bound = evaporativeCoolingLimit({ latentHeat, stoichiometricAirFuelRatio, lambda: lambda(1) });
    expect(bound.in('K')).toBeGreaterThan(20);
    expect(bound.in('K')).toBeLessThan(30);
  });
});

describe('lambda from exhaust gas', () => {
  const gas = {
    carbonDioxide: moleFraction(14.7, '%'),
    carbonMonoxide: moleFraction(0.5, '%'),
    oxygen: moleFraction(0.7, '%'),
    nitricOxide: moleFraction(0.1, '%'),
    hydrocarbons: moleFraction(150, 'ppm'),
  };

  it('halves nitric oxide, counts six carbons of hexane, and twelve only where asked', () => {
    expect(lambdaFromExhaustGas(gas).si).toBeCloseTo(1.014197, 6);
    const infrared = lambdaFromExhaustGas({ ...gas, hydrocarbonFactor: carbonOfHexaneInfrared });
    expect(infrared.si).toBeCloseTo(1.008262, 6);
  });

  // Complete combustion of CH1.7261O0.0176 with 1/lambda of its oxygen: an oxygen balance done by hand.
  it('finds the lambda that a gas was burned at, with nothing left over but oxygen', () => {
    fc.assert(
      fc.property(between(1, 1.6), (lean) => {
        const demand = 1 + 1.7261 / 4 - 0.0176 / 2;
        const dry = 1 + lean * demand * 3.773 + (lean - 1) * demand;
        const burned = lambdaFromExhaustGas({
          carbonDioxide: moleFraction(1 / dry),
          carbonMonoxide: moleFraction(0),
          oxygen: moleFraction(((lean - 1) * demand) / dry),
          nitricOxide: moleFraction(0),
          hydrocarbons: moleFraction(0),
        });
        expect(burned.si).toBeCloseTo(lean, 12);
      }),
    );
  });
});

describe('the fuel line', () => {
  const flow = volumeFlow(1543.624, 'cm³/min');
  const loss = (millimetres: number) => {
    const line = { bore: length(millimetres, 'mm'), fuelDensity: density(0.745, 'kg/L') };
    const velocity = fuelLineVelocity({ fuelVolumeFlow: flow, bore: line.bore });
    const reynoldsNumber = fuelLineReynoldsNumber({
      velocity,
      ...line,
      dynamicViscosity: dynamicViscosity(0.45, 'mPa·s'),
    });
    const frictionFactor = fuelLineFrictionFactor({ reynoldsNumber });
    return fuelLinePressureLoss({ frictionFactor, length: length(1, 'm'), velocity, ...line });
  };

  // Darcy and Blasius, evaluated with mpmath, 50 digits.
  it('of 8 mm loses 425 Pa a metre at 69 kg/h, and 27 times that at half the bore', () => {
    expect(loss(8).in('Pa')).toBeCloseTo(425.329, 3);
    expect(loss(4).si / loss(8).si).toBeCloseTo(2 ** 4.75, 6);
  });

  it('says so where the flow is neither laminar nor turbulent, and beyond Blasius', () => {
    const codes = (Re: number) => fuelLineFrictionFactor({ reynoldsNumber: ratio(Re) }).notes.map(({ code }) => code);
    expect(codes(2000)).toEqual([]);
    expect(codes(3000)).toEqual(['rule']);
    expect(codes(2e5)).toEqual(['outside trusted range']);
  });
});
