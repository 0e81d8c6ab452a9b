import { describe, expect, it } from 'vitest';
import { explain, uncertainty } from '../../src/calculation/index.js';
import { arrangements } from '../../src/charge-path/arrangements.js';
import {
  compareScenarios,
  operatingPoint,
  throughPull,
  type Arrangement,
  type Installation,
  type PullOptions,
} from '../../src/charge-path/index.js';
import { PullCore } from '../../src/charge-path/pull-core.js';
import { wallNetwork } from '../../src/charge-path/wall-network.js';
import { soakedChargeTemperature, wallTemperatureAfter } from '../../src/intercooler/index.js';
import {
  heatCapacity,
  massFlow,
  ratio,
  rotationalSpeed,
  specificHeatCapacity,
  temperature,
  thermalConductance,
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

describe('a pull through any arrangement', () => {
  const one = (arrangement: Arrangement): Installation => withCore({ arrangement });
  const twice = (arrangement: Arrangement): Installation => withCore({ arrangement, passes: ratio(2) });
  const withCore = (core: Partial<Installation['core']>): Installation => ({
    ...installation,
    core: { ...installation.core, ...core },
  });
  /** How far a settled pull is from the steady point of the effectiveness relation, K. */
  const off = (of: Installation, cells: number): number => {
    const pull = throughPull(of, { ...held, duration: time(0.2, 's'), step: time(0.2, 's'), cells });
    return pull.chargeTemperature.si[0]! - operatingPoint(of, speedOfReference).stations.manifold.temperature.si;
  };

  it.each([
    ['counterflow', one('counterflow')],
    ['parallel flow', one('parallelFlow')],
    ['crossflow, both unmixed', one('crossflowUnmixed')],
    ['crossflow, the charge mixed', one('crossflowChargeMixed')],
    ['crossflow, the coolant mixed', one('crossflowCoolantMixed')],
    ['crossflow, both mixed', one('crossflowBothMixed')],
    ['one shell', one('oneShell')],
    ['two passes of crossflow', twice('crossflowUnmixed')],
    ['two shells', twice('oneShell')],
  ])('settles where its effectiveness relation says, four times nearer with twice the cells: %s', (_, of) => {
    const [coarse, fine] = [off(of, 4), off(of, 8)];
    expect(Math.abs(fine)).toBeLessThan(0.16);
    expect(Math.abs(coarse / fine)).toBeGreaterThan(3.5);
    expect(Math.abs(coarse / fine)).toBeLessThan(4.5);
  });

  it('follows crossflow as the exact cells of a soaking core do', () => {
    const { flows, soaking } = nearReference();
    const core = new PullCore(wallNetwork('crossflowUnmixed', 1, 10), 5382);
    const step = core.after(core.uniform(278.15, undefined), flows, 5);
    const exact = soakedChargeTemperature.kernel(...soaking, 5);
    expect(core.chargeOutlet(step, flows.charge)).toBeCloseTo(exact, 4);
  });

  it('follows a wall of one temperature as its closed form does', () => {
    const { flows, soaking } = nearReference();
    const core = new PullCore(wallNetwork('crossflowUnmixed', 1, 1), 5382);
    const exact = wallTemperatureAfter.kernel(...soaking, 20);
    expect(core.after(core.uniform(278.15, undefined), flows, 20).walls[0]).toBeCloseTo(exact, 4);
  });

  it('keeps every joule in each of them', () => {
    for (const arrangement of arrangements) {
      const pull = throughPull(one(arrangement), { ...run, coreTemperature: temperature(5, '°C'), step: time(1, 's') });
      const [given, taken, stored] = [last(pull.heatFromCharge), last(pull.heatToCoolant), last(pull.heatStored)];
      expect(Math.abs(given - taken - stored)).toBeLessThan(1e-9 * given);
      expect(stored).toBeGreaterThan(20e3);
    }
  });
});

/** Both flows, and what the closed forms take of them: a core of 5382 J/K that begins at 278.15 K. */
function nearReference() {
  const { charge, coolant } = NEAR_REFERENCE;
  const side = ({ inlet, capacityRate, conductance }: typeof charge): [number, number, number] => [
    inlet,
    capacityRate,
    conductance / capacityRate,
  ];
  const soaking = [...side(charge), ...side(coolant), 5382, 278.15] as const;
  return { flows: { charge, coolant, loop: undefined }, soaking };
}

/** About the flows of the reference case. */
const NEAR_REFERENCE = {
  charge: { inlet: 394.09, capacityRate: 168.2, conductance: 612 },
  coolant: { inlet: 300.15, capacityRate: 553.9, conductance: 600 },
};

describe('a pull with a liquid loop', () => {
  const side = (conductance: number, flow: number): Installation['core']['charge'] => ({
    conductance: thermalConductance(conductance, 'W/K'),
    atFlow: massFlow(flow, 'kg/s'),
    exponent: ratio(0.6),
  });
  const loop = (radiator: number, kilojoulesPerKelvin?: number): Installation => ({
    ...installation,
    core: { ...installation.core, coolant: side(3000, 0.4) },
    cooling: {
      by: 'liquid',
      liquidFlow: massFlow(0.4, 'kg/s'),
      liquidHeatCapacity: specificHeatCapacity(3.6, 'kJ/(kg·K)'),
      radiator: { arrangement: 'crossflowUnmixed', liquid: side(radiator, 0.4), air: side(radiator, 0.55) },
      air: { massFlow: massFlow(0.55, 'kg/s') },
      ...(kilojoulesPerKelvin === undefined ? {} : { heatCapacity: heatCapacity(kilojoulesPerKelvin, 'kJ/K') }),
    },
  });

  it('stands still at a held speed once all has settled, where the steady point is', () => {
    const pull = throughPull(loop(2000, 20), held);
    const steady = operatingPoint(loop(2000, 20), speedOfReference);
    expect(last(pull.chargeTemperature)).toBeCloseTo(pull.chargeTemperature.si[0]!, 5);
    expect(last(pull.liquidTemperature!)).toBeCloseTo(pull.liquidTemperature!.si[0]!, 5);
    expect(Math.abs(last(pull.chargeTemperature) - steady.stations.manifold.temperature.si)).toBeLessThan(0.15);
  });

  it('warms its liquid by the heat it was given over its heat capacity where the radiator passes next to none', () => {
    const pull = throughPull(loop(0.02, 20), { ...run, coreTemperature: temperature(2, '°C') });
    const rise = last(pull.liquidTemperature!) - pull.liquidTemperature!.si[0]!;
    expect(pull.liquidTemperature!.si[0]).toBeCloseTo(275.15, 9);
    expect(rise).toBeCloseTo(last(pull.heatToCoolant) / 20e3, 3);
    expect(rise).toBeGreaterThan(2);
  });

  it('keeps the charge colder for longer with more liquid', () => {
    const end = (kilojoules: number): number =>
      last(throughPull(loop(800, kilojoules), { ...run, coreTemperature: temperature(2, '°C') }).chargeTemperature);
    expect(end(10)).toBeGreaterThan(end(20) + 1);
    expect(end(20)).toBeGreaterThan(end(200) + 1);
  });

  it('may begin with a liquid that is colder than the metal', () => {
    const pull = throughPull(loop(800, 20), {
      ...run,
      coreTemperature: temperature(40, '°C'),
      liquidTemperature: temperature(2, '°C'),
    });
    expect(pull.liquidTemperature!.in('°C')[0]).toBeCloseTo(2, 9);
    expect(pull.coreTemperature.in('°C')[0]).toBeCloseTo(40, 9);
    expect(throughPull(installation, run).liquidTemperature).toBeUndefined();
  });

  it('needs the heat capacity of its liquid', () => {
    expect(() => throughPull(loop(800), run)).toThrow(/cooling\.heatCapacity/);
  });
});

describe('a moment of a pull', () => {
  const chilled = throughPull(installation, { ...run, coreTemperature: temperature(0, '°C') });
  const five = chilled.at(time(5, 's'));

  it('is the row of the columns in quantities, and balances', () => {
    expect(five.time.in('s')).toBeCloseTo(5, 12);
    expect(five.power.si).toBeCloseTo(chilled.power.si[50]!, 6);
    expect(five.stations.manifold.temperature.si).toBeCloseTo(chilled.chargeTemperature.si[50]!, 9);
    expect(five.sensorReading.si).toBe(chilled.sensorReading.si[50]);
    for (const { name, relativeDifference } of five.balances) expect(relativeDifference, name).toBeLessThan(1e-9);
    expect(five.core.heat.si).toBeCloseTo(
      (chilled.heatFromCharge.si[51]! - chilled.heatFromCharge.si[49]!) / (chilled.time.si[51]! - chilled.time.si[49]!),
      -2,
    );
  });

  it('tells what the core does at that moment: chilled metal makes more of it than any settled core', () => {
    expect(five.core.effectiveness.si).toBeGreaterThan(1);
    const { compressorOutlet, coreOutlet } = five.stations;
    const share =
      (compressorOutlet.temperature.si - coreOutlet.temperature.si) /
      (compressorOutlet.temperature.si - five.core.coolingAirFace.si);
    // Water that drops out counts as heat, not as cooling.
    expect(five.core.airSideEffectiveness!.si).toBeCloseTo(share, 9);
    expect(five.core.coolingAirBehind.si).toBeLessThan(five.core.coolingAirFace.si);
    expect(String(five)).toMatch(/^5\.00 s into the pull, the metal of the core \d+\.\d °C/);
  });

  it('is explained, given the metal, and carries uncertainty', () => {
    const text = explain(five.power).toText();
    expect(text).toContain("core's metal as the charge meets it, after 5.00 s");
    expect(text).toContain('charge temperature from wall temperature');
    expect(uncertainty(five.power).standard.si).toBeGreaterThan(0);
  });

  it('compares with the same moment of another pull, part by part', () => {
    const warm = throughPull(installation, { ...run, coreTemperature: temperature(27, '°C') }).at(time(5, 's'));
    const { change, parts } = compareScenarios(warm, five);
    expect(change.si).toBeCloseTo(five.power.si - warm.power.si, 9);
    expect(parts.find(({ factor }) => factor === 'charge temperature')!.part.si).toBeGreaterThan(change.si);
  });

  it('is the nearest row, and refused outside the pull', () => {
    expect(chilled.at(time(5.04, 's')).time.in('s')).toBeCloseTo(5, 12);
    expect(chilled.at(time(10, 's')).time.in('s')).toBeCloseTo(10, 12);
    expect(() => chilled.at(time(10.1, 's'))).toThrow(/between 0 and the end of the pull, 10 s/);
    expect(() => chilled.at(5 as never)).toThrow(/time/);
  });

  it('knows the air behind the core, a settled one as the steady point does', () => {
    const settled = throughPull(installation, held).at(time(0, 's'));
    const steady = operatingPoint(installation, speedOfReference);
    expect(settled.core.coolingAirBehind.si).toBeCloseTo(steady.core.coolingAirBehind.si, 0);
    expect(settled.core.effectiveness.si).toBeCloseTo(steady.core.effectiveness.si, 2);
  });
});

describe('a pull that cannot be', () => {
  it('is refused with everything that is wrong with it', () => {
    const { heatCapacity: _, ...core } = installation.core;
    const bad = { ...installation, core: { ...core, passes: ratio(1.5) } };
    expect(() => throughPull(bad, { ...run, duration: rotationalSpeed(3, 'rpm') as never })).toThrow(
      /core\.heatCapacity[\s\S]*core\.passes/,
    );
    const comingBack = { ...installation, inlet: { ...installation.inlet, recirculatedShare: ratio(0.1) } };
    expect(() => throughPull(comingBack, run)).toThrow(/gives its heat to the air later than it takes it/);
    expect(() => throughPull(installation, { ...run, cells: 21 })).toThrow(
      /at most 400 of them, got 21, which makes 441/,
    );
    const foil = { ...installation, core: { ...installation.core, heatCapacity: heatCapacity(10, 'J/K') } };
    const hour = { ...held, duration: time(3600, 's'), step: time(3600, 's') };
    expect(() => throughPull(foil, hour)).toThrow(/time constants down to 0\.0083 s/);
    expect(() => throughPull(installation, { ...run, cells: 0 })).toThrow(/cells must be a whole number/);
    expect(() => throughPull(installation, undefined as never)).toThrow(/from/);
  });

  it('is shown as text', () => {
    expect(String(throughPull(installation, run))).toContain('Pull of 10.0 s, 3000 to 6500 rpm');
  });
});
