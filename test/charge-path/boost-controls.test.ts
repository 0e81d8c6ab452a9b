import { describe, expect, it } from 'vitest';
import { operatingPoint, type FixedWastegate, type Installation } from '../../src/charge-path/index.js';
import {
  absolutePressure,
  area,
  gaugePressure,
  massFlow,
  meanEffectivePressure,
  pressureDifference,
  ratio,
  specificEnergy,
  temperature,
  torque,
  volume,
} from '../../src/units/index.js';
import { referenceCase, speedOfReference } from './installations.js';

/** The engine of the reference case with its friction apart, so that power rises a little more than air, as brake power does. */
const engine: Installation = {
  ...referenceCase,
  fuelling: {
    stoichiometricAirFuelRatio: referenceCase.fuelling.stoichiometricAirFuelRatio,
    lambda: referenceCase.fuelling.lambda!,
    indicated: {
      efficiency: ratio(0.3027),
      lowerHeatingValue: specificEnergy(43.44, 'MJ/kg'),
      frictionPressure: meanEffectivePressure(2.4, 'bar'),
    },
  },
};
const base = operatingPoint(engine, speedOfReference);

/** Every installation stands at the same point to begin with; a size decides it where a control has one. */
function sized(make: (size: number) => Installation, low: number, high: number, rises: boolean): Installation {
  let [least, most] = [low, high];
  for (let i = 0; i < 60; i++) {
    const middle = (least + most) / 2;
    if (boostOf(make(middle)) < base.stations.manifold.pressure.si === rises) least = middle;
    else most = middle;
  }
  return make((least + most) / 2);
}

function boostOf(installation: Installation): number {
  try {
    return operatingPoint(installation, speedOfReference).stations.manifold.pressure.si;
  } catch {
    return Infinity;
  }
}

/** Cooling air 12.5 K colder at unchanged weather, which makes the charge behind an outlet spring 9 K colder. */
function change(installation: Installation): {
  air: number;
  boost: number;
  power: number;
  gross: number;
  charge: number;
} {
  const before = operatingPoint(installation, speedOfReference);
  const cooling = { ...installation.cooling, temperature: temperature(14.5, '°C') } as Installation['cooling'];
  const after = operatingPoint({ ...installation, cooling }, speedOfReference);
  const percent = (of: (point: typeof before) => number): number => 100 * (of(after) / of(before) - 1);
  return {
    air: percent(({ airFlow }) => airFlow.si),
    boost: after.stations.manifold.pressure.in('kPa') - before.stations.manifold.pressure.in('kPa'),
    power: percent(({ power }) => power.si),
    gross: percent((point) => point.engine.grossPower.si),
    charge: after.stations.manifold.temperature.si - before.stations.manifold.temperature.si,
  };
}

const speedLine = (fallPerFlow: number): Installation => ({
  ...engine,
  compressor: { ...engine.compressor, drivenBy: 'crankshaft' },
  boost: {
    by: 'fixed compressor speed',
    flowAtPoint: massFlow(base.compressor.correctedFlow.si, 'kg/s'),
    ratioAtPoint: ratio(base.compressor.pressureRatio.si),
    fallPerFlow: massFlow(fallPerFlow, 'kg/s'),
    atInletTemperature: base.stations.compressorInlet.temperature,
    referenceTemperature: temperature(25, '°C'),
    referencePressure: absolutePressure(100, 'kPa'),
  },
});

const droop = (perPercent: number): Installation => ({
  ...engine,
  boost: {
    by: 'spring',
    senses: 'compressor outlet',
    gaugePressure: gaugePressure(95, 'kPa'),
    droop: { perPercentAir: pressureDifference(perPercent, 'Pa'), atFlow: massFlow(base.airFlow.si, 'kg/s') },
  },
});

describe('a spring on the compressor outlet', () => {
  /** Boost gained by charge that is colder for less than a kelvin, over the loss of the core. */
  const boostPerLoss = (exponent: number, kilopascals: number): number => {
    const loss = { ...engine.core.loss, pressure: pressureDifference(kilopascals, 'kPa') };
    const at = (celsius: number): ReturnType<typeof operatingPoint> =>
      operatingPoint(
        {
          ...engine,
          core: { ...engine.core, loss },
          engine: { ...engine.engine, densityExponent: ratio(exponent) },
          cooling: { ...engine.cooling, temperature: temperature(celsius, '°C') } as Installation['cooling'],
        },
        speedOfReference,
      );
    const [warm, cold] = [at(27), at(26)];
    const gain = cold.stations.manifold.pressure.si - warm.stations.manifold.pressure.si;
    const { temperature: before } = warm.stations.coreOutlet;
    const log = Math.log(before.si / cold.stations.coreOutlet.temperature.si);
    return gain / (warm.core.pressureLoss.si * log);
  };

  // d ln dp = -(1.8 n - a) d ln T for a loss with the flow to the 1.8th, a being the share of T2 in the mean of T1 and T2: 0.45.
  it('loses boost to colder charge by 1.8 n - 0.45 of its loss, so gains it only below a density exponent of a quarter', () => {
    for (const exponent of [0.1, 0.2, 0.3, 0.6, 1])
      expect(-boostPerLoss(exponent, 1)).toBeCloseTo(1.8 * exponent - 0.45, 1);
    expect(boostPerLoss(0.2, 1)).toBeGreaterThan(0);
    expect(boostPerLoss(0.3, 1)).toBeLessThan(0);
  });

  it('gains boost at an exponent of 0.28, beyond a quarter, behind a core that takes a quarter of the pressure', () => {
    expect(boostPerLoss(0.28, 1)).toBeLessThan(0);
    expect(boostPerLoss(0.28, 60)).toBeGreaterThan(0);
  });

  it('gives a charge 15 K colder 2.7 % more air with an exponent of 0.6, 4.4 % where density is all', () => {
    const airOf = (exponent: number): number => {
      const at = (kelvin: number): ReturnType<typeof operatingPoint> => {
        const cooling = { ...engine.cooling, temperature: temperature(27 - kelvin, '°C') } as Installation['cooling'];
        const densityExponent = ratio(exponent);
        return operatingPoint({ ...engine, cooling, engine: { ...engine.engine, densityExponent } }, speedOfReference);
      };
      const charge = (kelvin: number): number => at(kelvin).stations.manifold.temperature.si;
      let [low, high] = [10, 40];
      for (let i = 0; i < 40; i++) {
        const middle = (low + high) / 2;
        if (charge(0) - charge(middle) < 15) low = middle;
        else high = middle;
      }
      return 100 * (at(low).airFlow.si / at(0).airFlow.si - 1);
    };
    // Printed of a charge that is warmer to begin with, of which 15 K are a smaller share.
    expect(Math.abs(airOf(0.6) - 2.7)).toBeLessThan(0.1);
    expect(Math.abs(airOf(1) - 4.4)).toBeLessThan(0.25);
  });
});

/**
 * The table of the boost controls, in sign and size: changes for a charge 9 K colder at about 190 kPa, density exponent 0.6, computed
 * beside the library with a solver of its own.
 */
describe('colder charge under each boost control', () => {
  it('a spring on the compressor outlet: a little less boost, more air, more power', () => {
    const { air, boost, power, charge } = change(engine);
    expect(charge).toBeCloseTo(-9, 0);
    expect(air).toBeCloseTo(1.6, 1);
    expect(boost).toBeCloseTo(-0.1, 1);
    expect(power).toBeCloseTo(1.8, 0);
    expect(power).toBeGreaterThan(air);
  });

  it('a spring or a closed loop on the manifold: the same boost there, and more behind the compressor', () => {
    const { pressure, gaugePressure: gauge } = base.stations.manifold;
    const held = absolutePressure(pressure.si, 'Pa');
    const controls: readonly Installation['boost'][] = [
      { by: 'spring', senses: 'manifold', gaugePressure: gaugePressure(gauge.si, 'Pa') },
      { by: 'closed loop, absolute', manifoldPressure: held },
      { by: 'closed loop, gauge', manifoldPressure: gaugePressure(gauge.si, 'Pa') },
    ];
    for (const boost of controls) {
      const installation = { ...engine, boost };
      const changed = change(installation);
      expect(changed.air).toBeCloseTo(1.65, 1);
      expect(Math.abs(changed.boost)).toBeLessThan(1e-9);
      expect(changed.power).toBeCloseTo(1.87, 1);
    }
    const colder = {
      ...engine,
      boost: controls[0]!,
      cooling: { ...engine.cooling, temperature: temperature(14.5, '°C') },
    };
    const after = operatingPoint(colder as Installation, speedOfReference);
    expect(
      after.stations.compressorOutlet.pressure.in('kPa') - base.stations.compressorOutlet.pressure.in('kPa'),
    ).toBeCloseTo(0.1, 1);
  });

  it('a spring with strong droop: more boost, more air still', () => {
    const [weak, strong] = [change(droop(350)), change(droop(750))];
    for (const { air, boost, power } of [weak, strong]) {
      expect(air).toBeGreaterThan(1.9);
      expect(air).toBeLessThan(3.2);
      expect(boost).toBeGreaterThan(0.4);
      expect(boost).toBeLessThan(2.1);
      expect(power).toBeGreaterThan(2.1);
      expect(power).toBeLessThan(3.7);
    }
    expect(strong.boost).toBeGreaterThan(weak.boost);
  });

  it('a fixed compressor speed: less boost, the more so the steeper its line, and less air gained', () => {
    const [steep, usual, flat] = [change(speedLine(0.05)), change(speedLine(0.18)), change(speedLine(1.2))];
    expect(usual.air).toBeCloseTo(1.1, 0);
    expect(usual.boost).toBeCloseTo(-1.2, 0);
    expect(steep.air).toBeCloseTo(0.6, 1);
    expect(steep.boost).toBeCloseTo(-2.2, 0);
    expect(flat.air).toBeCloseTo(1.5, 1);
    expect(flat.boost).toBeCloseTo(-0.3, 1);
    expect(usual.power).toBeGreaterThan(1.1);
    expect(usual.power).toBeLessThan(1.6);
  });

  it('a displacement blower: far less boost, hardly more air, and half of the gain from less drive power', () => {
    const blower = (litres: number): Installation => ({
      ...engine,
      compressor: { isentropicEfficiency: ratio(0.55), drivenBy: 'crankshaft' },
      boost: {
        by: 'displacement blower',
        volumePerRevolution: volume(litres, 'L'),
        driveRatio: ratio(2),
        volumetricEfficiencyUnloaded: ratio(0.95),
        slip: ratio(0.08),
      },
    });
    const { air, boost, power, gross } = change(sized(blower, 0.6, 1.6, true));
    expect(air).toBeCloseTo(0.2, 0);
    expect(air).toBeGreaterThan(0.1);
    expect(boost).toBeCloseTo(-3, 0);
    expect(power).toBeCloseTo(0.6, 0);
    expect(gross / power).toBeGreaterThan(0.4);
    expect(gross / power).toBeLessThan(0.6);
  });

  it('a wastegate that stands still: more boost and far more air', () => {
    const gate = (square: number): Installation => ({
      ...engine,
      boost: {
        by: 'fixed wastegate',
        turbineArea: area(6.5, 'cm²'),
        wastegateArea: area(square, 'cm²'),
        turbineEfficiency: ratio(0.65),
        exhaustTemperature: temperature(880, '°C'),
        exhaustLoss: pressureDifference(8, 'kPa'),
      },
    });
    const opened = sized(gate, 2, 5, false);
    const { air, boost, power } = change(opened);
    // The energy of the turbocharger by hand: air and fuel, expanded from the exhaust manifold to 8 kPa over the room.
    const { engine: made, compressor, humidAirFlow, stations } = operatingPoint(opened, speedOfReference);
    const { turbineArea, wastegateArea } = opened.boost as FixedWastegate;
    const share = turbineArea.si / (turbineArea.si + wastegateArea.si);
    const expansion = 1 - ((stations.ambient.pressure.si + 8000) / made.exhaustPressure!.si) ** (0.33 / 1.33);
    const turbine = (humidAirFlow.si + made.fuelFlow.si) * share * 0.65 * 1160 * 1153.15 * expansion;
    expect(turbine / compressor.shaftPower.si).toBeCloseTo(1, 9);
    expect(air).toBeGreaterThan(3.8);
    expect(boost).toBeGreaterThan(2.2);
    expect(power).toBeGreaterThan(4.6);
  });

  it('a held torque, or a fixed flow of fuel: nothing to speak of', () => {
    const heldTorque: Installation = {
      ...engine,
      boost: { by: 'held torque', torque: torque(base.torque.si, 'N·m') },
    };
    expect(Math.abs(change(heldTorque).air)).toBeLessThan(1e-9);
    expect(Math.abs(change(heldTorque).power)).toBeLessThan(1e-9);
    const { lambda: _, ...fuelling } = engine.fuelling;
    const heldFuel = { ...engine, fuelling: { ...fuelling, fuelMassFlow: massFlow(base.engine.fuelFlow.si, 'kg/s') } };
    expect(Math.abs(change(heldFuel).power)).toBeLessThan(1e-9);
    expect(change(heldFuel).air).toBeGreaterThan(1.5);
  });
});
