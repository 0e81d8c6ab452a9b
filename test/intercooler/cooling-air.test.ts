import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explain, sensor, uncertainty } from '../../src/calculation/index.js';
import {
  capacityRate,
  coolingAirBehindCore,
  coolingAirFlow,
  coolingAirThroughStack,
  effectiveness,
  ramPressure,
  sprayedFaceTemperature,
  stackPressureLoss,
  type StackedCore,
} from '../../src/intercooler/index.js';
import {
  absolutePressure,
  density,
  massFlow,
  power,
  pressureDifference,
  quantity,
  ratio,
  scale,
  specificEnergy,
  speed,
  subtract,
  temperature,
  volumeFlow,
} from '../../src/units/index.js';

const measuredAt = { measuredFlow: massFlow(0.5, 'kg/s'), measuredDensity: density(1.15, 'kg/m³') };
const radiator: StackedCore = {
  label: 'radiator',
  heat: power(24, 'kW'),
  measuredLoss: pressureDifference(150, 'Pa'),
  ...measuredAt,
};
const cooler: StackedCore = {
  label: 'charge cooler',
  heat: power(12, 'kW'),
  measuredLoss: pressureDifference(120, 'Pa'),
  ...measuredAt,
};
const road = {
  temperature: temperature(18, '°C'),
  pressure: absolutePressure(941, 'hPa'),
  roadSpeed: speed(100, 'km/h'),
};
const bench = { ...road, roadSpeed: speed(0, 'km/h') };
const fan = { fanPressure: pressureDifference(400, 'Pa'), fanFreeFlow: volumeFlow(1.2, 'm³/s') };

describe('cooling air through cores one behind another', () => {
  it('balances: each core breathes what the one in front has warmed, and ram pressure meets the losses', () => {
    const { flow, loss, cores } = coolingAirThroughStack(road, [radiator, cooler]);
    const [front, rear] = cores as [(typeof cores)[0], (typeof cores)[0]];
    expect(front.face.si).toBe(road.temperature.si);
    expect(rear.face.si).toBe(front.behind.si);
    const rate = capacityRate({ massFlow: flow }).si;
    expect(((rear.behind.si - front.face.si) * rate) / 36000).toBeCloseTo(1, 9);
    const ram = ramPressure({ roadSpeed: road.roadSpeed, airDensity: density(1.12597, 'kg/m³') });
    expect(loss.si / ram.si).toBeCloseTo(1, 5);
    const parts = [front, rear].map(({ meanDensity }, i) =>
      stackPressureLoss({
        coolingAirFlow: flow,
        measuredLoss: [[radiator, cooler][i]!.measuredLoss],
        measuredFlow: [measuredAt.measuredFlow],
        measuredDensity: [measuredAt.measuredDensity],
        meanDensity: [meanDensity],
        exponent: [ratio(1.8)],
      }),
    );
    expect(parts[0]!.si + parts[1]!.si).toBeCloseTo(loss.si, 9);
  });

  it('takes the mean specific volume over a core for its density', () => {
    const [core] = coolingAirThroughStack(road, [radiator]).cores;
    const before = 94100 / (287.042 * core!.face.si);
    const behind = 94100 / (287.042 * core!.behind.si);
    expect(1 / core!.meanDensity.si).toBeCloseTo((1 / before + 1 / behind) / 2, 12);
  });

  it('moves less air than without heat, and costs whichever core stands behind the other', () => {
    const unheated = coolingAirThroughStack(road, [
      { ...radiator, heat: power(0, 'W') },
      { ...cooler, heat: power(0, 'W') },
    ]);
    const behind = coolingAirThroughStack(road, [radiator, cooler]);
    const inFront = coolingAirThroughStack(road, [cooler, radiator]);
    expect(behind.flow.si).toBeLessThan(unheated.flow.si);
    expect(behind.cores[1]!.face.si - behind.cores[0]!.face.si).toBeGreaterThan(40);
    expect(inFront.cores[0]!.face.si).toBe(road.temperature.si);
    expect(inFront.cores[1]!.face.si).toBeGreaterThan(road.temperature.si + 20);
  });

  it('solves the heat with the flow where the heat follows from the face', () => {
    const dependent: StackedCore = {
      ...cooler,
      heat: (face) => scale(quantity('power', 100 * subtract(temperature(121, '°C'), face).si, 'W'), 1),
    };
    expect(coolingAirThroughStack(road, [dependent]).cores[0]!.heat.si).toBeCloseTo(10300, 6);
    const behind = coolingAirThroughStack(road, [radiator, dependent]).cores[1]!;
    expect(behind.heat.si).toBeCloseTo(100 * (394.15 - behind.face.si), 6);
  });

  it('keeps its history: the flow has an uncertainty and can be explained', () => {
    const speedometer = sensor('speed', { label: 'speed', standardUncertainty: speed(2, 'km/h') });
    const { flow } = coolingAirThroughStack({ ...road, roadSpeed: speedometer.reads(road.roadSpeed) }, [cooler]);
    const budget = uncertainty(flow);
    expect(budget.standard.si / flow.si).toBeGreaterThan(0.01);
    expect(explain(flow).toText()).toContain('flow of cooling air');
  });

  it('works on the bench with a fan, and cools the air where a core takes heat from it', () => {
    const still = coolingAirThroughStack({ ...bench, ...fan }, [cooler]);
    expect(still.flow.si).toBeGreaterThan(0.4);
    const chiller = coolingAirThroughStack({ ...bench, ...fan }, [
      { ...cooler, label: 'evaporator', heat: power(-3, 'kW') },
    ]);
    expect(chiller.cores[0]!.behind.si).toBeLessThan(bench.temperature.si);
    expect(String(still)).toContain('charge cooler');
    expect(JSON.parse(JSON.stringify(still)).cores[0].label).toBe('charge cooler');
  });

  it('refuses a stack that nothing drives, an empty one, an unnamed core, and heat that so little air cannot carry', () => {
    expect(() => coolingAirThroughStack(bench, [cooler])).toThrow(/something must drive the cooling air/);
    expect(() => coolingAirThroughStack(road, [])).toThrow(/a list of cores, front to back/);
    expect(() => coolingAirThroughStack(road, [{ ...cooler, label: '' }])).toThrow(/label/);
    const crawling = { ...road, roadSpeed: speed(5, 'km/h') };
    expect(() => coolingAirThroughStack(crawling, [{ ...cooler, heat: power(400, 'kW') }])).toThrow(
      /so weak a flow cannot carry this heat/,
    );
  });
});

describe('flow of cooling air', () => {
  const stack = {
    measuredLoss: [pressureDifference(150, 'Pa')],
    measuredFlow: [measuredAt.measuredFlow],
    measuredDensity: [measuredAt.measuredDensity],
    meanDensity: [density(1.1, 'kg/m³')],
    exponent: [ratio(1.8)],
  };

  it('is where the drive meets the losses, for any stack', () => {
    const positive = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(positive(5, 60), positive(0, 1500), positive(20, 400), positive(1, 2), (V, pf, dp, n) => {
        const cores = [dp, dp / 2, 0.5, 0.6, 1.15, 1.1, 1.08, 1.0, n, 2] as const;
        const m = coolingAirFlow.kernel(V, 1.12, 0.55, pf, 0.9, 2, ...cores);
        const loss = stackPressureLoss.kernel(m, ...cores);
        const drive = ramPressure.kernel(V, 1.12, 0.55) + pf * (1 - (m / (1.12 * 0.9)) ** 2);
        expect(Math.abs(loss - drive)).toBeLessThan(1e-9 * (loss + pf));
      }),
    );
  });

  it('is held up by a fan on the road, once the car pushes more than the fan would pass', () => {
    const fast = { roadSpeed: speed(250, 'km/h'), airDensity: density(1.12, 'kg/m³') };
    const small = { fanPressure: pressureDifference(300, 'Pa'), fanFreeFlow: volumeFlow(0.3, 'm³/s') };
    expect(coolingAirFlow({ ...fast, ...small, ...stack }).si).toBeLessThan(coolingAirFlow({ ...fast, ...stack }).si);
    const slow = { ...fast, roadSpeed: speed(20, 'km/h') };
    expect(coolingAirFlow({ ...slow, ...small, ...stack }).si).toBeGreaterThan(
      coolingAirFlow({ ...slow, ...stack }).si,
    );
  });

  it('refuses lists of different length', () => {
    expect(() =>
      coolingAirFlow({ ...stack, exponent: [], roadSpeed: speed(80, 'km/h'), airDensity: density(1.1, 'kg/m³') }),
    ).toThrow(/lists of one length/);
  });
});

describe('more cooling air', () => {
  it('can warm the charge where a fixed spray is diluted: the face, and not only the flow, decides', () => {
    const charge = (coolingAirFlow: number, sprayFlow: number): number => {
      const face = sprayedFaceTemperature({
        airTemperature: temperature(18, '°C'),
        coolingAirFlow: massFlow(coolingAirFlow, 'kg/s'),
        sprayFlow: massFlow(sprayFlow, 'g/s'),
        capacity: specificEnergy(250, 'kJ/kg'),
      });
      const coolantCapacityRate = capacityRate({ massFlow: massFlow(coolingAirFlow, 'kg/s') });
      const eps = effectiveness.crossflowUnmixed.kernel(2, 201 / coolantCapacityRate.si);
      return 394.15 - eps * (394.15 - face.si);
    };
    expect(charge(3, 0)).toBeLessThan(charge(1, 0));
    expect(charge(3, 80)).toBeGreaterThan(charge(1, 80));
  });

  it('is refused where it is so little that it would glow', () => {
    const weak = { face: temperature(18, '°C'), coolingAirFlow: massFlow(2, 'g/s') };
    expect(() => coolingAirBehindCore({ ...weak, heat: power(24, 'kW') })).toThrow(/so weak a flow/);
  });
});
