import { describe, expect, it } from 'vitest';
import { operatingPoint, throughPull, type Installation, type PullOptions } from '../../src/charge-path/index.js';
import {
  heatCapacity,
  massFlow,
  ratio,
  rotationalSpeed,
  temperature,
  time,
  type Column,
} from '../../src/units/index.js';
import { referenceCase, speedOfReference } from './installations.js';

/** The core of the reference case, of 6 kg of aluminium: 6 kg at 897 J/(kg K). */
const installation: Installation = {
  ...referenceCase,
  core: { ...referenceCase.core, heatCapacity: heatCapacity(5382, 'J/K') },
};
const run: PullOptions = {
  from: rotationalSpeed(3000, 'rpm'),
  to: rotationalSpeed(6500, 'rpm'),
  duration: time(10, 's'),
};
const held: PullOptions = { from: speedOfReference, to: speedOfReference, duration: time(90, 's') };
const last = ({ si }: Column): number => si[si.length - 1]!;

describe('a pull in time', () => {
  it('stands still at a held speed with a settled core, where the steady point is', () => {
    const pull = throughPull(installation, held);
    const steady = operatingPoint(installation, speedOfReference);
    expect(last(pull.chargeTemperature)).toBeCloseTo(pull.chargeTemperature.si[0]!, 6);
    // Ten by ten cells are not quite the exact crossflow relation.
    expect(Math.abs(last(pull.chargeTemperature) - steady.stations.manifold.temperature.si)).toBeLessThan(0.3);
    expect(last(pull.power) / steady.power.si).toBeCloseTo(1, 3);
  });

  it('comes to the same steady point from a cold and from a hot core', () => {
    const [cold, hot] = [5, 90].map((degrees) =>
      throughPull(installation, { ...held, duration: time(180, 's'), coreTemperature: temperature(degrees, '°C') }),
    );
    expect(cold!.chargeTemperature.si[0]).toBeLessThan(hot!.chargeTemperature.si[0]! - 30);
    expect(Math.abs(last(cold!.chargeTemperature) - last(hot!.chargeTemperature))).toBeLessThan(0.01);
  });

  it('keeps every joule: from the charge, to the cooling air, in the metal', () => {
    const { heatFromCharge, heatToCoolant, heatStored } = throughPull(installation, {
      ...run,
      coreTemperature: temperature(5, '°C'),
    });
    const passed = last(heatFromCharge);
    expect(passed).toBeGreaterThan(50e3);
    heatFromCharge.si.forEach((heat, i) =>
      expect(Math.abs(heat - heatToCoolant.si[i]! - heatStored.si[i]!)).toBeLessThan(1e-9 * passed),
    );
    expect(last(heatStored) / 5382).toBeCloseTo(
      last(throughPull(installation, { ...run, coreTemperature: temperature(5, '°C') }).coreTemperature) - 278.15,
      6,
    );
  });

  it('takes as much heat in a second as the charge loses in a second', () => {
    const pull = throughPull(installation, {
      ...held,
      duration: time(0.5, 's'),
      coreTemperature: temperature(30, '°C'),
    });
    const { humidAirFlow, stations } = operatingPoint(installation, speedOfReference);
    // Warm enough that no water drops out. Behind an outlet spring the compressor hardly knows of the core: 1016 J/(kg K) of humid air at 70 °C.
    const flow = pull.airFlow.si[0]! * (humidAirFlow.si / operatingPoint(installation, speedOfReference).airFlow.si);
    const lost = flow * 1016 * (stations.compressorOutlet.temperature.si - pull.coreOutletTemperature.si[0]!);
    const rate = pull.heatFromCharge.si[1]! / pull.time.si[1]!;
    expect(rate / lost).toBeCloseTo(1, 2);
    // 6 kg of aluminium at 897 J/(kg K) warm by what stays in them.
    const warming = (pull.coreTemperature.si[1]! - pull.coreTemperature.si[0]!) / pull.time.si[1]!;
    expect((warming * 5382) / (pull.heatStored.si[1]! / pull.time.si[1]!)).toBeCloseTo(1, 9);
  });

  it('gains from a core chilled beforehand, less and less', () => {
    const from = (degrees: number): Column =>
      throughPull(installation, { ...run, coreTemperature: temperature(degrees, '°C') }).power;
    const [chilled, warm] = [from(0), from(27)];
    const gain = chilled.si.map((value, i) => value / warm.si[i]! - 1);
    expect(gain[0]).toBeGreaterThan(0.03);
    for (let i = 1; i < gain.length; i++) expect(gain[i]).toBeLessThan(gain[i - 1]!);
    expect(gain[gain.length - 1]).toBeGreaterThan(0);
  });

  it('does not hang on the step', () => {
    const end = (steps: number): number =>
      last(
        throughPull(installation, { ...run, coreTemperature: temperature(5, '°C'), step: time(10 / steps, 's') })
          .chargeTemperature,
      );
    expect(Math.abs(end(100) - end(800))).toBeLessThan(0.05);
    expect(Math.abs(end(400) - end(800))).toBeLessThan(Math.abs(end(100) - end(800)) / 4);
  });
});

describe('the sensor of a pull', () => {
  it('lags a ramp by its time constant times the ramp', () => {
    const slow = { timeConstant: time(1, 's') };
    const {
      chargeTemperature,
      sensorReading,
      time: at,
    } = throughPull(installation, {
      ...run,
      coreTemperature: temperature(5, '°C'),
      sensor: slow,
    });
    const n = at.length - 1;
    const ramp = (chargeTemperature.si[n]! - chargeTemperature.si[n - 10]!) / (at.si[n]! - at.si[n - 10]!);
    expect(chargeTemperature.si[n]! - sensorReading.si[n]!).toBeCloseTo(ramp, 0);
    expect(sensorReading.si[0]).toBe(chargeTemperature.si[0]);
  });

  it('settles towards the wall that warms it by its share', () => {
    const wall = { temperature: temperature(90, '°C'), share: ratio(0.23) };
    const pull = throughPull(installation, { ...held, sensor: { timeConstant: time(1, 's'), wall } });
    const charge = last(pull.chargeTemperature);
    expect(last(pull.sensorReading)).toBeCloseTo(charge + 0.23 * (363.15 - charge), 6);
  });

  it('is slower in less flow, by the root of it', () => {
    const at = (flow: number): number => {
      const sensor = { timeConstant: time(1, 's'), atFlow: massFlow(flow, 'kg/s'), startReading: temperature(0, '°C') };
      const { sensorReading, chargeTemperature } = throughPull(installation, {
        ...held,
        duration: time(1, 's'),
        sensor,
      });
      return (last(chargeTemperature) - last(sensorReading)) / last(chargeTemperature);
    };
    expect(at(0.1653527)).toBeLessThan(at(4 * 0.1653527));
  });

  it('is left out where none is given', () => {
    const { chargeTemperature, sensorReading } = throughPull(installation, run);
    expect([...sensorReading.si]).toEqual([...chargeTemperature.si]);
  });
});

describe('a pull that cannot be', () => {
  it('is refused with everything that is wrong with it', () => {
    const { heatCapacity: _, ...core } = installation.core;
    const bad = { ...installation, core: { ...core, arrangement: 'counterflow' as const } };
    expect(() => throughPull(bad, { ...run, duration: rotationalSpeed(3, 'rpm') as never })).toThrow(
      /core\.heatCapacity[\s\S]*core\.arrangement/,
    );
    expect(() => throughPull(installation, { ...run, cells: 0 })).toThrow(/cells must be a whole number/);
    expect(() => throughPull(installation, undefined as never)).toThrow(/from/);
  });

  it('is shown as text', () => {
    expect(String(throughPull(installation, run))).toContain('Pull of 10.0 s, 3000 to 6500 rpm');
  });
});
