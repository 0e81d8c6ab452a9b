import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airFuelRatioFromLambda,
  brakeSpecificFuelConsumption,
  brakeThermalEfficiency,
  equivalenceRatioFromLambda,
  fuelMassFlow,
  fuelMassFlowFromAirflow,
  fuelMassFlowFromPower,
  fuelPerShot,
  fuels,
  fuelVolumeFlow,
  injectorDutyCycle,
  injectorFlowAtPressure,
  injectorFlowInFuel,
  injectorFlowNeeded,
  injectorPressureDifference,
  lambdaFromAirFuelRatio,
  lambdaFromEquivalenceRatio,
  lambdaFromFlows,
  pulseWidthFromFuelPerShot,
  specificFuelConsumptionFromEfficiency,
  stoichiometricAirFuelRatio,
  stoichiometricAirFuelRatioFromHydrogenRatio,
} from '../../src/fuel/index.js';
import { brakeMeanEffectivePressureFromPower, speedDensityAirflow } from '../../src/engine/index.js';
import {
  absolute,
  absolutePressure,
  airFuelRatio,
  density,
  gaugePressure,
  lambda,
  massFlow,
  percent,
  power,
  pressureDifference,
  ratio,
  rotationalSpeed,
  specificEnergy,
  specificFuelConsumption,
  temperature,
  time,
  volume,
  volumeFlow,
} from '../../src/units/index.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('fuels', () => {
  // AFDC, Properties of Fuels: pounds per US gallon and Btu per pound, lower heating values (read).
  it.each([
    ['ethanol', 6.61, 11585],
    ['methanol', 6.63, 8637],
    ['diesel', 7.079, 18394],
  ] as const)('hold what the public table prints for %s', (fuel, pounds, btu) => {
    expect(fuels[fuel].density.in('lb/gal(US)')).toBeCloseTo(pounds, 2);
    expect(fuels[fuel].lowerHeatingValue.in('Btu/lb') / btu).toBeCloseTo(1, 3);
  });

  it('give gasoline with the printed range of 6.0 to 6.5 lb/gal and 18000 to 19000 Btu/lb inside its spread', () => {
    const { density: rho, lowerHeatingValue } = fuels.gasoline;
    const halfWidth = (quantity: typeof rho | typeof lowerHeatingValue): number => {
      const { origin } = quantity;
      if (origin?.type !== 'leaf' || origin.uncertainty === undefined) throw new Error('a constant has a spread');
      return origin.uncertainty.standard * Math.sqrt(3);
    };
    for (const printed of [density(6, 'lb/gal(US)'), density(6.5, 'lb/gal(US)')]) {
      expect(Math.abs(printed.si - rho.si)).toBeLessThanOrEqual(halfWidth(rho) + 0.1);
    }
    for (const printed of [specificEnergy(18000, 'Btu/lb'), specificEnergy(19000, 'Btu/lb')]) {
      expect(Math.abs(printed.si - lowerHeatingValue.si)).toBeLessThan(halfWidth(lowerHeatingValue));
    }
  });

  it('hold stoichiometric ratios that their formulas give', () => {
    const ethanol = stoichiometricAirFuelRatio({ carbon: ratio(2), hydrogen: ratio(6), oxygen: ratio(1) });
    const methanol = stoichiometricAirFuelRatio({ carbon: ratio(1), hydrogen: ratio(4), oxygen: ratio(1) });
    const gasoline = stoichiometricAirFuelRatioFromHydrogenRatio({ hydrogenToCarbon: ratio(1.87) });
    expect(ethanol.si).toBeCloseTo(fuels.ethanol.stoichiometricAirFuelRatio.si, 3);
    expect(methanol.si).toBeCloseTo(fuels.methanol.stoichiometricAirFuelRatio.si, 3);
    expect(gasoline.si).toBeCloseTo(fuels.gasoline.stoichiometricAirFuelRatio.si, 1);
  });

  it('are uncertain, each constant by a spread and with a source', () => {
    for (const fuel of Object.values(fuels)) {
      for (const constant of Object.values(fuel)) {
        expect(constant.origin).toMatchObject({ role: 'assumed', uncertainty: { distribution: 'rectangular' } });
        expect(constant.origin?.type === 'leaf' && constant.origin.source?.where?.length).toBeGreaterThan(3);
      }
    }
  });
});

describe('the stoichiometric ratio', () => {
  it('is that of CHy whatever the length of the chain', () => {
    fc.assert(
      fc.property(between(0.5, 20), between(0, 4), (x, y) => {
        const chain = stoichiometricAirFuelRatio.kernel(x, x * y, 0, 0.028966, 0.20939);
        expect(chain).toBeCloseTo(stoichiometricAirFuelRatioFromHydrogenRatio.kernel(y, 0, 0.028966, 0.20939), 10);
      }),
    );
  });

  it('is 2.66/0.231 for carbon and 7.94/0.231 for hydrogen by mass (Heywood 1988, from memory)', () => {
    const carbon = stoichiometricAirFuelRatio({ carbon: ratio(1), hydrogen: ratio(0) });
    const hydrogen = stoichiometricAirFuelRatio({ carbon: ratio(0), hydrogen: ratio(1) });
    expect(carbon.si).toBeCloseTo(2.664 / 0.2313, 1);
    expect(hydrogen.si).toBeCloseTo(7.937 / 0.2313, 1);
  });

  it('does not exist for a fuel that carries its own oxygen', () => {
    const rocket = { carbon: ratio(1), hydrogen: ratio(0), oxygen: ratio(2) };
    expect(() => stoichiometricAirFuelRatio(rocket)).toThrow(/a fuel that needs oxygen from the air/);
    const formic = { carbon: ratio(1), hydrogen: ratio(2), oxygen: ratio(2) };
    expect(stoichiometricAirFuelRatio(formic).si).toBeGreaterThan(0);
    expect(() => stoichiometricAirFuelRatio({ ...formic, oxygen: ratio(3.2) })).toThrow(/a fuel that needs oxygen/);
  });
});

describe('mixture', () => {
  it('goes from lambda to air-fuel ratio and to equivalence ratio and back', () => {
    fc.assert(
      fc.property(between(0.3, 5), between(6, 18), (value, stoichiometric) => {
        const there = airFuelRatioFromLambda.kernel(value, stoichiometric);
        expect(lambdaFromAirFuelRatio.kernel(there, stoichiometric)).toBeCloseTo(value, 12);
        expect(lambdaFromEquivalenceRatio.kernel(equivalenceRatioFromLambda.kernel(value))).toBeCloseTo(value, 12);
      }),
    );
  });

  it('reads the same lambda on gauges set to different fuels', () => {
    const gasoline = { airFuelRatio: airFuelRatio(11.76), stoichiometricAirFuelRatio: airFuelRatio(14.7) };
    const ethanol = { airFuelRatio: airFuelRatio(7.2), stoichiometricAirFuelRatio: airFuelRatio(9) };
    expect(lambdaFromAirFuelRatio(gasoline).si).toBeCloseTo(lambdaFromAirFuelRatio(ethanol).si, 12);
  });

  it('leans by what the air gains when no fuel is added (common practice: colder charge runs leaner)', () => {
    const fuel = {
      fuelMassFlow: massFlow(14, 'g/s'),
      stoichiometricAirFuelRatio: fuels.gasoline.stoichiometricAirFuelRatio,
    };
    const before = lambdaFromFlows({ airMassFlow: massFlow(164, 'g/s'), ...fuel });
    const after = lambdaFromFlows({ airMassFlow: massFlow(164 * 1.04, 'g/s'), ...fuel });
    expect(after.si / before.si).toBeCloseTo(1.04, 12);
  });

  it('refuses an air-fuel ratio for lambda, and says how to divide', () => {
    const mixture = { airMassFlow: massFlow(164, 'g/s'), stoichiometricAirFuelRatio: airFuelRatio(14.6) };
    // @ts-expect-error an air-fuel ratio is not lambda
    expect(() => fuelMassFlowFromAirflow({ ...mixture, lambda: airFuelRatio(11.7) })).toThrow(
      /lambda must be a lambda, got an air-fuel ratio \(11\.7\)\. Divide by the stoichiometric ratio of the fuel/,
    );
  });
});

describe('fuel consumption', () => {
  it('and thermal efficiency are two views of one number', () => {
    fc.assert(
      fc.property(between(0.05, 0.6), between(18e6, 50e6), (eta, heat) => {
        const bsfc = specificFuelConsumptionFromEfficiency.kernel(eta, heat);
        expect(brakeThermalEfficiency.kernel(bsfc, heat)).toBeCloseTo(eta, 12);
      }),
    );
  });

  it('comes back from the flow that a power asked for', () => {
    const bsfc = specificFuelConsumption(0.6, 'lb/(hp·h)');
    const asked = fuelMassFlowFromPower({ power: power(300, 'hp'), specificFuelConsumption: bsfc });
    expect(asked.in('lb/h')).toBeCloseTo(180, 9);
    const back = brakeSpecificFuelConsumption({ fuelMassFlow: asked, power: power(300, 'hp') });
    expect(back.in('lb/(hp·h)')).toBeCloseTo(0.6, 12);
  });

  it('of 0.55 to 0.65 lb/(hp·h), rich under boost, is 22 to 26 % of gasoline (common practice, no source)', () => {
    const { lowerHeatingValue } = fuels.gasoline;
    const of = (bsfc: number) =>
      brakeThermalEfficiency({
        specificFuelConsumption: specificFuelConsumption(bsfc, 'lb/(hp·h)'),
        lowerHeatingValue,
      }).in('%');
    expect(of(0.55)).toBeGreaterThan(24);
    expect(of(0.55)).toBeLessThan(26);
    expect(of(0.65)).toBeGreaterThan(20);
  });

  it('cannot be lower than the heat of the fuel allows', () => {
    const impossible = {
      specificFuelConsumption: specificFuelConsumption(60, 'g/kWh'),
      lowerHeatingValue: specificEnergy(43.44, 'MJ/kg'),
    };
    expect(() => brakeThermalEfficiency(impossible)).toThrow(/the work must not exceed the heat of the fuel/);
  });

  it('follows airflow to a BMEP of roughly 210 psi unboosted at 14:1 and 250 psi boosted and well cooled (common practice, no source)', () => {
    const bmep = (eta: number, kPa: number, celsius: number, mixture: number, bsfc: number) => {
      const size = { sweptVolume: volume(1.8, 'L'), engineSpeed: rotationalSpeed(6000, 'rpm') };
      const airMassFlow = speedDensityAirflow({
        volumetricEfficiency: percent(eta),
        manifoldPressure: absolutePressure(kPa, 'kPa'),
        chargeTemperature: temperature(celsius, '°C'),
        ...size,
      });
      const { stoichiometricAirFuelRatio } = fuels.gasoline;
      const fuel = fuelMassFlowFromAirflow({ airMassFlow, lambda: lambda(mixture), stoichiometricAirFuelRatio });
      const made = power(fuel.si / specificFuelConsumption(bsfc, 'lb/(hp·h)').si, 'W');
      return brakeMeanEffectivePressureFromPower({ power: made, ...size }).in('psi');
    };
    expect(bmep(113, 99, 25, 0.87, 0.41)).toBeGreaterThan(200);
    expect(bmep(113, 99, 25, 0.87, 0.41)).toBeLessThan(220);
    expect(bmep(95, 178, 50, 0.8, 0.52)).toBeGreaterThan(235);
    expect(bmep(95, 178, 50, 0.8, 0.52)).toBeLessThan(265);
  });
});

describe('injectors', () => {
  const barometer = absolutePressure(941, 'hPa');

  it('lose all of the boost from a fixed rail and nothing from one that follows the manifold', () => {
    const boosted = absolute(gaugePressure(1.1, 'bar'), barometer);
    const fixed = absolute(gaugePressure(3, 'bar'), barometer);
    const following = absolute(gaugePressure(4.1, 'bar'), barometer);
    expect(injectorPressureDifference({ railPressure: fixed, manifoldPressure: boosted }).in('bar')).toBeCloseTo(
      1.9,
      9,
    );
    expect(injectorPressureDifference({ railPressure: following, manifoldPressure: boosted }).in('bar')).toBeCloseTo(
      3,
      9,
    );
  });

  it('do not take a gauge rail with an absolute manifold', () => {
    const mixed = { railPressure: gaugePressure(3, 'bar'), manifoldPressure: absolutePressure(2, 'bar') };
    // @ts-expect-error the rail must be absolute
    expect(() => injectorPressureDifference(mixed)).toThrow(
      /railPressure must be an absolute pressure, got a gauge pressure \(3 bar\)/,
    );
    const rated = { ratedFlow: volumeFlow(550, 'cm³/min'), ratedPressureDifference: pressureDifference(3, 'bar') };
    // @ts-expect-error a rail pressure is not a difference
    expect(() => injectorFlowAtPressure({ ...rated, pressureDifference: absolutePressure(4, 'bar') })).toThrow(
      /Use subtract\(higher, lower\)/,
    );
    expect(() =>
      injectorPressureDifference({
        railPressure: absolutePressure(2, 'bar'),
        manifoldPressure: absolutePressure(2.5, 'bar'),
      }),
    ).toThrow(/the rail pressure must be above the manifold pressure/);
  });

  it('flow as rated at the rated pressure and in the rated liquid', () => {
    fc.assert(
      fc.property(between(1e-6, 1e-4), between(1e5, 1e6), between(600, 900), (flow, dp, rho) => {
        expect(injectorFlowAtPressure.kernel(flow, dp, dp)).toBe(flow);
        expect(injectorFlowInFuel.kernel(flow, rho, rho)).toBe(flow);
        expect(injectorFlowAtPressure.kernel(flow, dp, 4 * dp)).toBeCloseTo(2 * flow, 15);
      }),
    );
  });

  it('flow more mass but less volume of a heavier fuel', () => {
    const ratedDensity = density(684, 'kg/m³');
    const ratedFlow = volumeFlow(550, 'cm³/min');
    const inEthanol = injectorFlowInFuel({ ratedFlow, ratedDensity, fuelDensity: fuels.ethanol.density });
    expect(inEthanol.si).toBeLessThan(ratedFlow.si);
    const mass = fuelMassFlow({ fuelVolumeFlow: inEthanol, fuelDensity: fuels.ethanol.density });
    expect(mass.si).toBeGreaterThan(fuelMassFlow({ fuelVolumeFlow: ratedFlow, fuelDensity: ratedDensity }).si);
  });

  it('deliver in their open time what the engine burns, at the duty they were sized to', () => {
    const size = { fuelMassFlow: massFlow(69, 'kg/h'), fuelDensity: density(0.745, 'kg/L') };
    const staticFlow = injectorFlowNeeded({ ...size, injectors: ratio(4) });
    const engineSpeed = rotationalSpeed(6000, 'rpm');
    const shot = fuelPerShot({ staticFlow, pulseWidth: time(17, 'ms'), deadTime: time(0, 'ms') });
    expect(injectorDutyCycle({ pulseWidth: time(17, 'ms'), engineSpeed }).in('%')).toBeCloseTo(85, 9);
    expect(shot.si * 4 * 50).toBeCloseTo(fuelVolumeFlow(size).si, 12);
  });

  it('take back the pulse that a shot was made with', () => {
    fc.assert(
      fc.property(between(1e-6, 1e-4), between(0.001, 0.03), between(0, 0.001), (flow, pulse, dead) => {
        expect(pulseWidthFromFuelPerShot.kernel(fuelPerShot.kernel(flow, pulse, dead), flow, dead)).toBeCloseTo(
          pulse,
          12,
        );
      }),
    );
  });

  it('deliver nothing within the dead time, and no pulse is shorter than it', () => {
    const injector = { staticFlow: volumeFlow(550, 'cm³/min'), deadTime: time(0.9, 'ms') };
    expect(fuelPerShot({ ...injector, pulseWidth: time(0.9, 'ms') }).si).toBe(0);
    expect(() => fuelPerShot({ ...injector, pulseWidth: time(0.8, 'ms') })).toThrow(
      /at least as long as the dead time/,
    );
  });

  it('say when the pulse outlasts the cycle, and when they are sized to more than 90 %', () => {
    const open = injectorDutyCycle({ pulseWidth: time(21, 'ms'), engineSpeed: rotationalSpeed(6000, 'rpm') });
    expect(open.in('%')).toBeCloseTo(105, 9);
    expect(open.notes[0]?.message).toContain('the injector is open all the time');
    const tight = {
      fuelMassFlow: massFlow(69, 'kg/h'),
      injectors: ratio(4),
      fuelDensity: density(0.745, 'kg/L'),
      dutyLimit: percent(98),
    };
    expect(injectorFlowNeeded(tight).notes.map(({ code }) => code)).toEqual(['outside trusted range']);
  });
});
