import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CalculationError, measured, uncertainty } from '../../src/calculation/index.js';
import {
  backPressureFactor,
  chargeTemperatureAfterWallHeating,
  chargeTemperatureExponent,
  chargeTemperatureExponentFromWallHeating,
  fitChargeTemperatureExponent,
  manifoldPressureChangeOutletSpring,
  manifoldPressureForSameAir,
  powerFromTorque,
  powerRatioFromChargeTemperature,
  pressureBeforeFixedRestriction,
  speedDensityAirflow,
  torqueRatioFromSpark,
  torqueRatioFromSparkChange,
  usualSparkSensitivity,
  volumetricEfficiencyAtTemperature,
  engineTorqueInSweep,
  inertiaTorque,
  reflectedInertia,
} from '../../src/engine/index.js';
import { slopeOfLine } from '../../src/engine/charge-temperature-fit.js';
import {
  absolutePressure,
  add,
  angle,
  gauge,
  momentOfInertia,
  percent,
  power,
  pressureDifference,
  ratio,
  rotationalAcceleration,
  rotationalSpeed,
  temperature,
  torque,
  volume,
} from '../../src/units/index.js';
import { compareWithFormula } from '../support/formula.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const change = { referenceTemperature: temperature(333.15, 'K'), chargeTemperature: temperature(313.15, 'K') };

describe('the exponent of power on charge temperature', () => {
  it('from wall heating is the slope of cylinder density against manifold temperature', () => {
    fc.assert(
      fc.property(between(280, 400), between(320, 500), between(0, 0.6), (Tm, Tw, b) => {
        const density = (T: number) => 1 / chargeTemperatureAfterWallHeating.kernel(T, Tw, b);
        const step = 1e-4;
        const slope = Math.log(density(Tm * Math.exp(-step)) / density(Tm * Math.exp(step))) / (2 * step);
        expect(chargeTemperatureExponentFromWallHeating.kernel(Tm, Tw, b)).toBeCloseTo(slope, 6);
      }),
    );
  });

  it('from wall heating is 1 without heating, and 0.55 to 0.71 for shares of 0.40 to 0.25', () => {
    expect(chargeTemperatureExponentFromWallHeating.kernel(313, 380, 0)).toBe(1);
    expect(chargeTemperatureExponentFromWallHeating.kernel(313, 380, 0.25)).toBeCloseTo(0.711903, 6);
    expect(chargeTemperatureExponentFromWallHeating.kernel(313, 380, 0.4)).toBeCloseTo(0.552678, 6);
  });

  it('fitted to points of one law is the exponent of that law, whichever point comes first', () => {
    fc.assert(
      fc.property(
        between(0.2, 1.5),
        fc.uniqueArray(fc.integer({ min: 290, max: 400 }), { minLength: 2, maxLength: 8 }),
        (n, kelvins) => {
          const fit = fitChargeTemperatureExponent(
            kelvins.map((T) => ({ power: power(150 * (330 / T) ** n, 'kW'), chargeTemperature: temperature(T, 'K') })),
          );
          expect(fit.exponent.si).toBeCloseTo(n, 9);
          expect(fit.points).toBe(kelvins.length);
        },
      ),
    );
  });

  it('fitted to two points is that of the two', () => {
    const [before, after] = [power(300, 'kW'), power(310, 'kW')];
    const fit = fitChargeTemperatureExponent([
      { power: before, chargeTemperature: change.referenceTemperature },
      { power: after, chargeTemperature: change.chargeTemperature },
    ]);
    const direct = chargeTemperatureExponent({ referencePower: before, power: after, ...change });
    expect(fit.exponent.si).toBeCloseTo(0.529632, 6);
    expect(fit.exponent.si).toBeCloseTo(direct.si, 12);
    expect(fit.standardError).toBeUndefined();
    expect(String(fit)).toBe('exponent 0.530 from 2 points');
  });

  // Slope and its standard error of ln P against -ln T for the four points below by scipy.stats.linregress 1.17.1.
  it('fitted to scattered points has the standard error that scipy gives', () => {
    const fit = fitChargeTemperatureExponent(
      [
        [300, 333.15],
        [304, 326.15],
        [308.5, 319.15],
        [310, 313.15],
      ].map(([kilowatt, kelvin]) => ({
        power: power(kilowatt!, 'kW'),
        chargeTemperature: temperature(kelvin!, 'K'),
      })),
    );
    expect(fit.exponent.si).toBeCloseTo(0.547657414, 9);
    expect(fit.standardError!.si).toBeCloseTo(0.063546772, 9);
    expect(JSON.parse(JSON.stringify(fit))).toMatchObject({ points: 4 });
  });

  it('fitted knows the uncertainty of what was measured: half a per cent of power over 20 K is 0.08 to 0.11', () => {
    const half = { standardUncertainty: percent(0.5) };
    const fit = fitChargeTemperatureExponent([
      { power: measured('before', power(300, 'kW'), half), chargeTemperature: change.referenceTemperature },
      { power: measured('after', power(310, 'kW'), half), chargeTemperature: change.chargeTemperature },
    ]);
    expect(uncertainty(fit.exponent).standard.si).toBeCloseTo((0.005 * Math.SQRT2) / Math.log(333.15 / 313.15), 4);
  });

  it('refuses one point, one temperature, and points that are none', () => {
    const point = { power: power(300, 'kW'), chargeTemperature: temperature(60, '°C') };
    expect(() => fitChargeTemperatureExponent([point])).toThrow(/at least two points.*got 1/);
    expect(() => fitChargeTemperatureExponent([point, point])).toThrow(/different charge temperatures/);
    expect(() => fitChargeTemperatureExponent([point, 5 as never])).toThrow(/number 5 as number 2/);
    expect(() => fitChargeTemperatureExponent([point, { ...point, chargeTemperature: undefined as never }])).toThrow(
      CalculationError,
    );
    expect(() => fitChargeTemperatureExponent(undefined as never)).toThrow(CalculationError);
  });

  it('computes the slope by the formula it shows', () => {
    const { worst, bound } = compareWithFormula(slopeOfLine as never);
    expect(worst).toBeLessThanOrEqual(bound);
  });
});

describe('boost when the charge gets colder', () => {
  // p1 (T2/T1)^n, evaluated with mpmath, 50 digits.
  it('falls from 14.31 to 12.57 psi on the gauge where the same air needs no more', () => {
    const barometer = absolutePressure(101.325, 'kPa');
    const before = absolutePressure(200, 'kPa');
    const after = manifoldPressureForSameAir({ manifoldPressure: before, ...change, exponent: ratio(1) });
    expect(gauge(before, barometer).in('psi')).toBeCloseTo(14.3116, 4);
    expect(gauge(after, barometer).in('psi')).toBeCloseTo(12.5702, 4);
  });

  it('for the same air gives the same air by speed and density, for any exponent', () => {
    fc.assert(
      fc.property(between(0, 1), between(300, 360), between(290, 360), between(12e4, 3e5), (n, T1, T2, p1) => {
        const p2 = manifoldPressureForSameAir.kernel(p1, T1, T2, n);
        const before = speedDensityAirflow.kernel(0.95, p1, T1, 1.8e-3, 100, 0, 2, 287);
        const breathing = volumetricEfficiencyAtTemperature.kernel(0.95, T1, T2, n);
        const after = speedDensityAirflow.kernel(breathing, p2, T2, 1.8e-3, 100, 0, 2, 287);
        expect(after / before).toBeCloseTo(1, 10);
        expect((p2 / p1) * powerRatioFromChargeTemperature.kernel(T1, T2, n)).toBeCloseTo(1, 10);
      }),
    );
  });

  it('before a fixed restriction falls with the root of temperature, less than density alone', () => {
    const pressure = absolutePressure(200, 'kPa');
    const restricted = pressureBeforeFixedRestriction({ pressure, ...change });
    const equalAir = manifoldPressureForSameAir({ manifoldPressure: pressure, ...change, exponent: ratio(0.5) });
    expect(restricted.si).toBeCloseTo(equalAir.si, 6);
    const more = pressureBeforeFixedRestriction({ pressure, ...change, flowRatio: ratio(1.02) });
    expect(more.si / restricted.si).toBeCloseTo(1.02, 12);
  });

  const spring = (n: number) =>
    manifoldPressureChangeOutletSpring({
      coreLoss: pressureDifference(6, 'kPa'),
      coreInletTemperature: temperature((323.15 * 0.55) / 0.45, 'K'),
      coreOutletTemperatureBefore: temperature(323.15, 'K'),
      coreOutletTemperatureAfter: temperature(323.15 * 0.96, 'K'),
      exponent: ratio(n),
    }).in('kPa');

  it('is 0.18 kPa less on the manifold with a spring on the compressor outlet, and more only for n under a quarter', () => {
    expect(spring(0.6)).toBeCloseTo(-0.18, 2);
    expect(spring(0.3)).toBeLessThan(0);
    expect(spring(0.225)).toBeCloseTo(0, 10);
    expect(spring(0.1)).toBeGreaterThan(0);
  });

  it('with that spring agrees with the loss on mean density within its first order', () => {
    const loss = (T: number) => 6 * (323.15 / T) ** 1.2 * ((T + 394.961) / (323.15 + 394.961));
    const exact = loss(323.15) - loss(323.15 * 0.96);
    expect(spring(0.6)).toBeCloseTo(exact, 2);
  });

  it('says so where the change is too large for the first order', () => {
    const { notes } = manifoldPressureChangeOutletSpring({
      coreLoss: pressureDifference(6, 'kPa'),
      coreInletTemperature: temperature(121, '°C'),
      coreOutletTemperatureBefore: temperature(90, '°C'),
      coreOutletTemperatureAfter: temperature(40, '°C'),
    });
    expect(notes.map(({ code }) => code)).toEqual(['rule']);
  });
});

describe('exhaust back pressure', () => {
  // Heywood 1988, equation 6.2, from memory.
  it('costs 2.5 % of the air when it rises from manifold pressure to 1.3 times that, at a compression ratio of 9.5', () => {
    const at = (times: number) =>
      backPressureFactor({
        exhaustPressure: absolutePressure(200 * times, 'kPa'),
        manifoldPressure: absolutePressure(200, 'kPa'),
        compressionRatio: ratio(9.5),
      }).si;
    expect(1 - at(1.3) / at(1)).toBeCloseTo(0.025, 3);
    expect(at(1)).toBeCloseTo(1, 14);
    expect(at(0.9)).toBeGreaterThan(1);
  });
});

describe('spark timing', () => {
  it('costs nothing at best torque and the same either side of it', () => {
    expect(torqueRatioFromSpark({ fromBestTorque: angle(0, '°') }).si).toBe(1);
    const at = (degrees: number) => torqueRatioFromSpark({ fromBestTorque: angle(degrees, '°') }).si;
    expect(at(8)).toBe(at(-8));
    expect(at(10)).toBeCloseTo(0.945, 12);
  });

  it('is common practice, and uncertain as that is', () => {
    expect(usualSparkSensitivity.origin).toMatchObject({ source: { status: 'common practice' } });
    const ratioNow = torqueRatioFromSpark({ fromBestTorque: angle(10, '°') });
    expect(uncertainty(ratioNow).standard.si).toBeCloseTo((0.00015 * 100) / Math.sqrt(3), 6);
  });

  it('has a share of a gain of its own: what one timing gives over another', () => {
    fc.assert(
      fc.property(between(-0.3, 0.3), between(-0.3, 0.3), between(4e-4, 7e-4), (before, after, k) => {
        const share = torqueRatioFromSparkChange.kernel(before, after, k);
        const apart = torqueRatioFromSpark.kernel(after, k) / torqueRatioFromSpark.kernel(before, k);
        expect(share).toBeCloseTo(apart, 12);
      }),
    );
  });

  it('is a parabola near its top only: noted beyond 20°, refused where no torque would be left', () => {
    expect(torqueRatioFromSpark({ fromBestTorque: angle(25, '°') }).notes.map(({ code }) => code)).toEqual([
      'outside trusted range',
    ]);
    expect(() => torqueRatioFromSpark({ fromBestTorque: angle(45, '°') })).toThrow(/still leaves torque/);
  });
});

describe('a sweep', () => {
  const rampRate = rotationalAcceleration(300, 'rpm/s');
  const inertia = momentOfInertia(0.35, 'kg·m²');

  // J dw/dt, evaluated with mpmath, 50 digits.
  it('hides 11 N·m, or 6.333 kW at 5500 rpm, of an engine with 0.35 kg·m² at 300 rpm/s', () => {
    const hidden = inertiaTorque({ momentOfInertia: inertia, rampRate });
    expect(hidden.in('N·m')).toBeCloseTo(10.99557, 5);
    const lost = powerFromTorque({ torque: hidden, engineSpeed: rotationalSpeed(5500, 'rpm') });
    expect(lost.in('kW')).toBeCloseTo(6.333, 4);
  });

  it('at steady speed hides nothing but drag', () => {
    const steady = { momentOfInertia: inertia, rampRate: rotationalAcceleration(0, 'rpm/s') };
    expect(engineTorqueInSweep({ brakeTorque: torque(300, 'N·m'), ...steady }).in('N·m')).toBe(300);
    const dragged = engineTorqueInSweep({ brakeTorque: torque(300, 'N·m'), ...steady, dragTorque: torque(4, 'N·m') });
    expect(dragged.in('N·m')).toBe(304);
  });

  it('adds up parts that turn at other speeds by the square of the ratio', () => {
    const roller = reflectedInertia({ momentOfInertia: momentOfInertia(12, 'kg·m²'), speedRatio: ratio(0.24) });
    const all = inertiaTorque({ momentOfInertia: add(inertia, roller), rampRate });
    expect(all.si).toBeCloseTo(2 * Math.PI * 5 * (0.35 + 12 * 0.24 ** 2), 10);
    expect(momentOfInertia(1, 'lb·ft²').in('kg·m²')).toBeCloseTo(0.04214, 5);
  });

  it('refuses a swept volume for an inertia', () => {
    // @ts-expect-error a volume is no moment of inertia
    expect(() => inertiaTorque({ momentOfInertia: volume(1.8, 'L'), rampRate })).toThrow(
      /momentOfInertia must be a moment of inertia, got a volume/,
    );
  });
});
