import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explain, whatIf } from '../../src/calculation/index.js';
import { NoSteadyPoint, operatingPoint, type AirCooling, type Installation } from '../../src/charge-path/index.js';
import {
  absolutePressure,
  gaugePressure,
  humidityRatio,
  massFlow,
  pressureDifference,
  ratio,
  relativeHumidity,
  rotationalSpeed,
  specificEnergy,
  specificHeatCapacity,
  temperature,
  thermalConductance,
  CalculationError,
} from '../../src/units/index.js';
import { seeded } from '../support/random.js';
import { referenceCase, speedOfReference } from './installations.js';
import { randomInstallation } from './random-installations.js';

const solve = (installation: Installation): ReturnType<typeof operatingPoint> =>
  operatingPoint(installation, speedOfReference);
const problemsOf = (run: () => unknown): readonly string[] => {
  try {
    run();
  } catch (error) {
    if (error instanceof CalculationError) return error.problems.map(({ code, input }) => `${code} ${input}`);
    throw error;
  }
  return [];
};

describe('thousands of random but possible installations', () => {
  it('each have a steady point that balances, or a reason why not; never NaN', () => {
    const random = seeded(2024);
    const reasons = new Map<string, number>();
    let solved = 0;
    const draws = 3000;
    for (let i = 0; i < draws; i++) {
      const { installation, engineSpeed } = randomInstallation(random);
      try {
        const point = operatingPoint(installation, engineSpeed);
        const stations = Object.values(point.stations);
        const values = stations.flatMap(({ pressure, temperature: t, flow, density }) => [pressure, t, flow, density]);
        for (const { si } of [...values, point.power, point.torque]) expect(Number.isFinite(si)).toBe(true);
        for (const { name, relativeDifference } of point.balances) expect(relativeDifference, name).toBeLessThan(1e-9);
        const [, , outlet, core, manifold] = stations.map(({ pressure }) => pressure.si);
        expect(outlet! >= core! && core! >= manifold!).toBe(true);
        solved++;
      } catch (error) {
        if (!(error instanceof NoSteadyPoint)) throw error;
        expect(error.message).not.toContain('NaN');
        reasons.set(error.reason, (reasons.get(error.reason) ?? 0) + 1);
      }
    }
    expect(solved).toBeGreaterThan(0.9 * draws);
    expect(
      [...reasons.keys()].every((reason) =>
        /flow cannot pass|boost out of reach|recirculation without end|beyond the formulas/.test(reason),
      ),
    ).toBe(true);
  }, 120_000);

  it('answer what-if as they would be solved anew', () => {
    const moved = (at: ReturnType<typeof temperature>): ReturnType<typeof temperature> => temperature(at.si - 4, 'K');
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2 ** 31 }), (seed) => {
        const { installation, engineSpeed } = randomInstallation(seeded(seed), { fuelling: 'lambda held' });
        const { ambient } = installation;
        fc.pre(ambient.temperature.si > 250);
        const other = { ...installation, ambient: { ...ambient, temperature: moved(ambient.temperature) } };
        let pair: readonly [ReturnType<typeof operatingPoint>, ReturnType<typeof operatingPoint>];
        try {
          pair = [operatingPoint(installation, engineSpeed), operatingPoint(other, engineSpeed)];
        } catch (error) {
          if (!(error instanceof NoSteadyPoint)) throw error;
          return fc.pre(false) as never;
        }
        const changed = whatIf(pair[0].power, [[ambient.temperature, moved(ambient.temperature)]]);
        return Math.abs(changed.si - pair[1].power.si) <= 1e-8 * Math.abs(pair[1].power.si);
      }),
      { numRuns: 60, seed: 8 },
    );
  });
});

describe('an installation', () => {
  it('tells everything that is wrong with it at once, by its place', () => {
    const bad = {
      ...referenceCase,
      ambient: { ...referenceCase.ambient, pressure: gaugePressure(95, 'kPa') },
      core: { ...referenceCase.core, arrangement: 'sideways', charge: undefined },
      engine: { ...referenceCase.engine, stroke: undefined },
      fuelling: { ...referenceCase.fuelling, fuelMassFlow: massFlow(14, 'g/s') },
    } as never;
    const problems = problemsOf(() => solve(bad));
    expect(problems).toEqual(
      expect.arrayContaining([
        'kind ambient.pressure',
        'unknown core.arrangement',
        'missing core.charge',
        'missing engine.stroke',
        'rule fuelling',
      ]),
    );
  });

  it('needs its humidity in one way', () => {
    const { relativeHumidity: _, ...dry } = referenceCase.ambient;
    expect(problemsOf(() => solve({ ...referenceCase, ambient: dry }))).toEqual(['missing ambient']);
    const twice = { ...referenceCase.ambient, humidityRatio: humidityRatio(9, 'g/kg') };
    expect(problemsOf(() => solve({ ...referenceCase, ambient: twice }))).toEqual(['rule ambient']);
    const once = { ...dry, humidityRatio: solve(referenceCase).stations.ambient.humidityRatio };
    expect(solve({ ...referenceCase, ambient: once }).power.si).toBeCloseTo(solve(referenceCase).power.si, 6);
  });

  it('is refused where it is nothing, and where the speed is no speed', () => {
    expect(problemsOf(() => solve(undefined as never))).toEqual(['missing installation']);
    expect(problemsOf(() => operatingPoint(referenceCase, 6000 as never))).toEqual(['kind engineSpeed']);
    expect(problemsOf(() => operatingPoint(referenceCase, rotationalSpeed(0, 'rpm')))).toEqual([
      'impossible engineSpeed',
    ]);
  });

  it('names every value by its place in explanations, and keeps names that were given', () => {
    const cooling = { ...referenceCase.cooling, temperature: temperature(27, '°C').named('probe at the face') };
    const text = explain(solve({ ...referenceCase, cooling } as Installation).power).toText();
    expect(text).toContain('core, charge, conductance');
    expect(text).toContain('probe at the face');
  });

  it('drops water in a cold core on a wet day, and the engine gets the dry air all the same', () => {
    const wet: Installation = {
      ...referenceCase,
      ambient: {
        ...referenceCase.ambient,
        temperature: temperature(35, '°C'),
        relativeHumidity: relativeHumidity(90, '%'),
      },
      cooling: { by: 'air', massFlow: massFlow(3, 'kg/s'), temperature: temperature(5, '°C') },
      core: {
        ...referenceCase.core,
        charge: { ...referenceCase.core.charge, conductance: thermalConductance(3000, 'W/K') },
        coolant: { ...referenceCase.core.coolant, conductance: thermalConductance(6000, 'W/K') },
      },
    };
    const point = solve(wet);
    expect(point.core.condensate.in('g/s')).toBeGreaterThan(1);
    expect(point.stations.coreOutlet.relativeHumidity.si).toBeCloseTo(1, 9);
    expect(point.stations.manifold.humidityRatio.si).toBeLessThan(point.stations.ambient.humidityRatio.si);
    for (const { name, relativeDifference } of point.balances) expect(relativeDifference, name).toBeLessThan(1e-9);
    const water = point.stations.compressorOutlet.flow.si - point.stations.manifold.flow.si;
    expect(water).toBeCloseTo(point.core.condensate.si, 12);
  });

  it('is cooled by a liquid that goes round, never better than by the same air without it', () => {
    const side = (conductance: number, flow: number): Installation['core']['charge'] => ({
      conductance: thermalConductance(conductance, 'W/K'),
      atFlow: massFlow(flow, 'kg/s'),
      exponent: ratio(0.6),
    });
    const liquid: Installation = {
      ...referenceCase,
      core: { ...referenceCase.core, coolant: side(3000, 0.4) },
      cooling: {
        by: 'liquid',
        liquidFlow: massFlow(0.4, 'kg/s'),
        liquidHeatCapacity: specificHeatCapacity(3.6, 'kJ/(kg·K)'),
        radiator: { arrangement: 'crossflowUnmixed', liquid: side(3000, 0.4), air: side(1500, 0.55) },
        air: { massFlow: massFlow(0.55, 'kg/s') },
      },
    };
    const point = solve(liquid);
    expect(point.stations.coreOutlet.temperature.si).toBeGreaterThan(point.core.coolingAirFace.si);
    expect(point.core.coolingAirBehind.si).toBeGreaterThan(point.core.coolingAirFace.si);
    for (const { name, relativeDifference } of point.balances) expect(relativeDifference, name).toBeLessThan(1e-9);
  });

  it.each([1e-7, 1.2e-5, 1e-3, 1])('balances where charge and cooling air are but %s K apart', (pinch) => {
    const hot = solve(referenceCase).stations.compressorOutlet.temperature;
    const cooling = { ...referenceCase.cooling, temperature: temperature(hot.si - pinch, 'K') } as AirCooling;
    const { balances, core } = solve({ ...referenceCase, cooling });
    // About three quarters of the way, of 157 W/K: less of a charge that stays hot.
    expect(core.heat.si / (118 * pinch)).toBeCloseTo(1, pinch < 1e-6 ? 0 : 1);
    for (const { name, relativeDifference } of balances) expect(relativeDifference, name).toBeLessThan(1e-9);
    const { one, other } = balances.find(({ name }) => name === 'core heat')!;
    // What is left is what doubles leave of a temperature of 400 K, of a flow of 168 W/K.
    expect(Math.abs(one.value.si - other.value.si)).toBeLessThan(Math.max(1e-9 * core.heat.si, 168 * 400 * 2 ** -50));
  });

  it('reads its gauge over the pressure at the vent, which a cell under depression lowers', () => {
    const reading = (kilopascals: number): number =>
      solve({ ...referenceCase, gaugeVentBelowBarometer: pressureDifference(kilopascals, 'kPa') }).boostReading.in(
        'kPa',
      );
    expect(reading(0.4) - reading(0)).toBeCloseTo(0.4, 12);
    expect(reading(0)).toBeCloseTo(solve(referenceCase).boostReading.in('kPa'), 12);
  });

  it('has its density exponent from warm walls where they are given', () => {
    const { densityExponent: _, ...engine } = referenceCase.engine;
    const walls = { temperature: temperature(380, 'K'), heatedShare: ratio(0.25) };
    const warm = { ...engine, atChargeTemperature: temperature(313, 'K'), walls };
    const point = solve({ ...referenceCase, engine: warm });
    const T = point.stations.manifold.temperature.si;
    // The exponent of the sheet for these walls: 0.711903.
    expect(point.engine.volumetricEfficiency.si).toBeCloseTo(0.95 * (T / 313) ** (1 - 0.711903), 6);
    expect(point.cylinder.temperature!.si).toBeCloseTo(T + 0.25 * (380 - T), 9);
    expect(point.cylinder.dryAirDensity.si).toBeCloseTo(
      point.engine.volumetricEfficiency.si * point.stations.manifold.dryAirDensity.si,
      12,
    );
  });

  it('takes a coolant spray at the face of the core', () => {
    const spray = { flow: massFlow(20, 'g/s'), capacity: specificEnergy(250, 'kJ/kg'), captureEfficiency: ratio(0.5) };
    const sprayed = solve({ ...referenceCase, cooling: { ...referenceCase.cooling, spray } } as Installation);
    expect(sprayed.core.coolingAirFace.in('°C')).toBeCloseTo(27 - 2500 / (0.55 * 1007), 9);
    expect(sprayed.power.si).toBeGreaterThan(solve(referenceCase).power.si);
  });

  it('says where there is no point, with a reason that a program can test', () => {
    const highland: Installation = {
      ...referenceCase,
      boost: { by: 'closed loop, absolute', manifoldPressure: absolutePressure(60, 'kPa') },
    };
    try {
      solve(highland);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(NoSteadyPoint);
      expect((error as NoSteadyPoint).reason).toBe('boost out of reach');
      expect((error as NoSteadyPoint).code).toBe('no answer');
    }
  });
});
