import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { densityRatio } from '../../src/air/index.js';
import {
  brakeMeanEffectivePressure,
  brakeMeanEffectivePressureFromPower,
  chargeDensity,
  chargeTemperatureExponent,
  meanPistonSpeed,
  powerFromTorque,
  powerRatioFromChargeTemperature,
  speedDensityAirflow,
  sweptVolume,
  torqueFromMeanEffectivePressure,
  torqueFromPower,
  twoStroke,
  usualChargeTemperatureExponent,
  volumetricEfficiency,
  volumetricEfficiencyAtTemperature,
} from '../../src/engine/index.js';
import {
  absolute,
  absolutePressure,
  density,
  energy,
  gaugePressure,
  length,
  massFlow,
  percent,
  power,
  ratio,
  rotationalSpeed,
  temperature,
  torque,
  volume,
} from '../../src/units/index.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const displacement = volume(1.8, 'L');

describe('power and torque', () => {
  it('meet at 5252 rpm in horsepower and lb·ft (common practice, no source)', () => {
    const speed = rotationalSpeed(5252.113, 'rpm');
    expect(powerFromTorque({ torque: torque(250, 'lb·ft'), engineSpeed: speed }).in('hp')).toBeCloseTo(250, 4);
  });

  it('come back to themselves', () => {
    fc.assert(
      fc.property(between(-500, 5000), between(1, 300), (T, n) => {
        expect(torqueFromPower.kernel(powerFromTorque.kernel(T, n), n)).toBeCloseTo(T, 9);
      }),
    );
  });

  it('count revolutions, not radians: a speed in rad/s is converted first', () => {
    const power1 = powerFromTorque({ torque: torque(300, 'N·m'), engineSpeed: rotationalSpeed(100, '1/s') });
    const power2 = powerFromTorque({
      torque: torque(300, 'N·m'),
      engineSpeed: rotationalSpeed(200 * Math.PI, 'rad/s'),
    });
    expect(power2.si).toBeCloseTo(power1.si, 6);
  });

  it('refuse an energy for a torque, and a shaft at rest for a power', () => {
    const engineSpeed = rotationalSpeed(6000, 'rpm');
    // @ts-expect-error an energy is not a torque
    expect(() => powerFromTorque({ torque: energy(300, 'J'), engineSpeed })).toThrow(
      /torque must be a torque, got an energy/,
    );
    expect(() => torqueFromPower({ power: power(1, 'kW'), engineSpeed: rotationalSpeed(0, 'rpm') })).toThrow(
      /engineSpeed/,
    );
  });
});

describe('brake mean effective pressure', () => {
  it('is the same from torque and from the power that torque makes', () => {
    fc.assert(
      fc.property(between(-100, 2000), between(5, 200), between(1e-4, 0.02), fc.constantFrom(1, 2), (T, n, V, nR) => {
        const direct = brakeMeanEffectivePressure.kernel(T, V, nR);
        const overPower = brakeMeanEffectivePressureFromPower.kernel(powerFromTorque.kernel(T, n), n, V, nR);
        expect(overPower).toBeCloseTo(direct, 5);
        expect(torqueFromMeanEffectivePressure.kernel(direct, V, nR)).toBeCloseTo(T, 9);
      }),
    );
  });

  it('of a two-stroke is half that of a four-stroke with the same torque', () => {
    const engine = { torque: torque(400, 'N·m'), sweptVolume: volume(2, 'L') };
    const two = brakeMeanEffectivePressure({ ...engine, revolutionsPerCycle: twoStroke });
    expect(two.si).toBeCloseTo(brakeMeanEffectivePressure(engine).si / 2, 6);
    expect(two.notes).toEqual([]);
  });

  it('says so when the revolutions per cycle are those of no engine', () => {
    const odd = brakeMeanEffectivePressure({
      torque: torque(400, 'N·m'),
      sweptVolume: volume(2, 'L'),
      revolutionsPerCycle: ratio(1.5),
    });
    expect(odd.notes.map(({ message }) => message)).toEqual([
      'brake mean effective pressure: it needs revolutionsPerCycle of 2 (four-stroke) or 1 (two-stroke), which is not so here.',
    ]);
  });

  it('shows as a mean effective pressure, which no gauge or manifold pressure can be given for', () => {
    const refused = () =>
      torqueFromMeanEffectivePressure({
        // @ts-expect-error a manifold pressure is no mean effective pressure
        meanEffectivePressure: absolutePressure(18, 'bar'),
        sweptVolume: displacement,
      });
    expect(refused).toThrow(/meanEffectivePressure must be a mean effective pressure, got an absolute pressure/);
  });
});

describe('size and piston speed', () => {
  it('grow with the square of the bore and with each cylinder', () => {
    const one = { bore: length(81, 'mm'), stroke: length(87.3, 'mm'), cylinders: ratio(1) };
    expect(sweptVolume({ ...one, cylinders: ratio(4) }).si).toBeCloseTo(4 * sweptVolume(one).si, 15);
    expect(sweptVolume({ ...one, bore: length(162, 'mm') }).si).toBeCloseTo(4 * sweptVolume(one).si, 15);
    expect(sweptVolume({ ...one, cylinders: ratio(3.5) }).notes.map(({ code }) => code)).toEqual(['rule']);
  });

  it('is nothing at rest', () => {
    expect(meanPistonSpeed({ stroke: length(87.3, 'mm'), engineSpeed: rotationalSpeed(0, 'rpm') }).si).toBe(0);
  });
});

describe('airflow by speed and density', () => {
  const state = {
    manifoldPressure: absolute(gaugePressure(1.1, 'bar'), absolutePressure(941, 'hPa')),
    chargeTemperature: temperature(45, '°C'),
  };
  const running = { sweptVolume: displacement, engineSpeed: rotationalSpeed(6000, 'rpm') };

  it('gives back the volumetric efficiency it was made with', () => {
    const air = { ...state, vapourPressure: absolutePressure(2, 'kPa') };
    const airMassFlow = speedDensityAirflow({ volumetricEfficiency: percent(95), ...air, ...running });
    const back = volumetricEfficiency.onManifoldDensity({ airMassFlow, chargeDensity: chargeDensity(air), ...running });
    expect(back.in('%')).toBeCloseTo(95, 10);
  });

  it('passes 100 % on the density of the room while the engine breathes under 100 %', () => {
    const airMassFlow = massFlow(166.22, 'g/s');
    const size = { sweptVolume: volume(2, 'L'), engineSpeed: rotationalSpeed(5500, 'rpm') };
    const manifold = volumetricEfficiency.onManifoldDensity({
      airMassFlow,
      chargeDensity: density(1.971, 'kg/m³'),
      ...size,
    });
    const ambient = volumetricEfficiency.onAmbientDensity({
      airMassFlow,
      ambientDensity: density(1.1451, 'kg/m³'),
      ...size,
    });
    expect(manifold.in('%')).toBeCloseTo(92, 1);
    expect(ambient.in('%')).toBeCloseTo(158.4, 1);
  });

  it('takes half the airflow from a four-stroke that it takes from a two-stroke', () => {
    const four = speedDensityAirflow({ volumetricEfficiency: percent(95), ...state, ...running });
    const two = speedDensityAirflow({
      volumetricEfficiency: percent(95),
      ...state,
      ...running,
      revolutionsPerCycle: twoStroke,
    });
    expect(two.si).toBeCloseTo(2 * four.si, 12);
  });

  it('counts the vapour in the charge: 10 g/kg at this boost is 1.6 % of the air', () => {
    const vapourPressure = absolutePressure((204.1 * 0.01) / (0.621945 + 0.01), 'kPa');
    expect(chargeDensity({ ...state, vapourPressure }).si / chargeDensity(state).si).toBeCloseTo(0.9842, 4);
  });

  it('refuses boost for the absolute pressure, and more vapour than charge', () => {
    // @ts-expect-error boost is a gauge pressure
    expect(() => chargeDensity({ ...state, manifoldPressure: gaugePressure(1.1, 'bar') })).toThrow(
      /Use absolute\(gauge, barometer\)/,
    );
    const thin = {
      ...state,
      manifoldPressure: absolutePressure(20, 'kPa'),
      vapourPressure: absolutePressure(20, 'kPa'),
    };
    expect(() => chargeDensity(thin)).toThrow(/a vapour pressure below the manifold pressure/);
  });
});

describe('charge temperature', () => {
  it('is worth about 4 % for air 25 °F cooler at 8 psi, boost a little lower (common practice, no source)', () => {
    const barometer = absolutePressure(14.5, 'psi');
    const gain = densityRatio({
      inletTemperature: temperature(130, '°F'),
      inletPressure: absolute(gaugePressure(8, 'psi'), barometer),
      outletTemperature: temperature(105, '°F'),
      outletPressure: absolute(gaugePressure(7.9, 'psi'), barometer),
    });
    expect(gain.si).toBeGreaterThan(1.035);
    expect(gain.si).toBeLessThan(1.045);
  });

  it('is worth about 1 % of power per 5 to 6 K (common practice, no source)', () => {
    const referenceTemperature = temperature(50, '°C');
    const per = (kelvin: number) =>
      powerRatioFromChargeTemperature({ referenceTemperature, chargeTemperature: temperature(50 - kelvin, '°C') }).si;
    expect(per(5)).toBeLessThan(1.0105);
    expect(per(6)).toBeGreaterThan(1.01);
  });

  it('changes nothing when it stays, and density alone is the exponent 1', () => {
    fc.assert(
      fc.property(between(250, 450), between(250, 450), between(0, 1.5), (T1, T2, n) => {
        expect(powerRatioFromChargeTemperature.kernel(T1, T1, n)).toBe(1);
        expect(powerRatioFromChargeTemperature.kernel(T1, T2, 1)).toBeCloseTo(
          densityRatio.kernel(T1, 1e5, T2, 1e5),
          12,
        );
      }),
    );
  });

  it('gives the exponent back that two powers were made with', () => {
    fc.assert(
      fc.property(between(300, 340), between(5, 40), between(0.2, 1.2), (T, step, n) => {
        const gain = powerRatioFromChargeTemperature.kernel(T + step, T, n);
        expect(chargeTemperatureExponent.kernel(160e3, 160e3 * gain, T + step, T)).toBeCloseTo(n, 10);
      }),
    );
  });

  it('moves airflow by the same power law through volumetric efficiency and density', () => {
    fc.assert(
      fc.property(between(290, 380), between(290, 380), between(0.3, 1), (Tref, T, n) => {
        const airflow = (temperature: number, eta: number) =>
          speedDensityAirflow.kernel(eta, 2e5, temperature, 1.8e-3, 100, 0, 2, 287.042);
        const after = airflow(T, volumetricEfficiencyAtTemperature.kernel(0.95, Tref, T, n));
        expect(after / airflow(Tref, 0.95)).toBeCloseTo(powerRatioFromChargeTemperature.kernel(Tref, T, n), 12);
      }),
    );
  });

  it('lowers volumetric efficiency when it falls', () => {
    const colder = volumetricEfficiencyAtTemperature({
      referenceVolumetricEfficiency: percent(95),
      referenceTemperature: temperature(325, 'K'),
      chargeTemperature: temperature(315, 'K'),
    });
    expect(colder.in('%')).toBeCloseTo(93.82, 2);
  });

  it('has an exponent that is assumed with its spread of 0.5 to 0.7', () => {
    const { origin, si } = usualChargeTemperatureExponent;
    expect(si).toBe(0.6);
    expect(origin).toMatchObject({
      role: 'assumed',
      uncertainty: { distribution: 'rectangular', standard: 0.1 / Math.sqrt(3) },
    });
  });

  it('leaves no exponent to find when it did not change', () => {
    const same = { referenceTemperature: temperature(50, '°C'), chargeTemperature: temperature(50, '°C') };
    expect(() =>
      chargeTemperatureExponent({ referencePower: power(160, 'kW'), power: power(165, 'kW'), ...same }),
    ).toThrow(/two different charge temperatures/);
  });
});
