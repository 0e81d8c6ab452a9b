import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explain, measured, uncertainty } from '../../src/calculation/index.js';
import {
  compareScenarios,
  contributionToChange,
  NoSteadyPoint,
  operatingPoint,
  overSpeeds,
  type Installation,
  type OperatingPoint,
} from '../../src/charge-path/index.js';
import {
  angle,
  gaugePressure,
  octaneNumber,
  power,
  ratio,
  rotationalSpeed,
  temperature,
  temperatureDifference,
} from '../../src/units/index.js';
import { demoMap } from '../compressor/demo-map.js';
import { seeded } from '../support/random.js';
import { referenceCase, speedOfReference, withCoolingAir } from './installations.js';
import { randomInstallation } from './random-installations.js';

const before = operatingPoint(referenceCase, speedOfReference);
const after = operatingPoint(withCoolingAir(1), speedOfReference);

describe('the split of a change of power', () => {
  it('shows what colder charge gives and what breathing takes of it, as printed for the reference case', () => {
    const { parts } = compareScenarios(before, after);
    const logPercent = (name: string): string =>
      (100 * Math.log(parts.find(({ factor }) => factor === name)!.ratio.si)).toFixed(2);
    expect(logPercent('charge temperature')).toBe('2.25');
    expect(logPercent('breathing')).toBe('-0.90');
    expect(logPercent('charge pressure')).toBe('-0.05');
    expect(logPercent('work per fuel')).toBe('0.00');
  });

  it('adds up to the change, whatever changes and whichever side comes first', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2 ** 31 }), (seed) => {
        const draw = randomInstallation(seeded(seed));
        const other = randomInstallation(seeded(seed + 1));
        const mixed: Installation = {
          ...other.installation,
          engine: { ...other.installation.engine, sweptVolume: draw.installation.engine.sweptVolume! },
        };
        const pair = solved(draw.installation, mixed, draw.engineSpeed);
        fc.pre(pair !== undefined && pair.every((point) => point.power.si > 1 && point.engine.grossPower.si > 1));
        const [first, second] = pair!;
        const forward = compareScenarios(first, second);
        const backward = compareScenarios(second, first);
        const sum = forward.parts.reduce((total, { part }) => total + part.si, 0);
        const size = Math.max(first.power.si, second.power.si);
        return (
          Math.abs(sum - forward.change.si) < 1e-9 * size &&
          forward.parts.every(({ part }, i) => Math.abs(part.si + backward.parts[i]!.part.si) < 1e-9 * size)
        );
      }),
      { numRuns: 100, seed: 11 },
    );
  });

  it('gives spark timing its own share', () => {
    const at = (degrees: number): Installation => ({
      ...referenceCase,
      engine: { ...referenceCase.engine, spark: { fromBestTorque: angle(degrees, '°'), sensitivity: ratio(0.00055) } },
    });
    const retarded = operatingPoint(at(10), speedOfReference);
    const advanced = operatingPoint(at(6), speedOfReference);
    expect(retarded.power.si / before.power.si).toBeCloseTo(1 - 0.055, 9);
    const { parts } = compareScenarios(retarded, advanced);
    const share = (name: string): number => parts.find(({ factor }) => factor === name)!.part.si;
    expect(share('spark timing')).toBeCloseTo(advanced.power.si - retarded.power.si, 3);
    expect(Math.abs(share('work per fuel'))).toBeLessThan(1e-6);
  });

  it('is nothing where nothing changes', () => {
    const { parts, change, air } = compareScenarios(before, before);
    expect(change.si).toBe(0);
    expect(air.si).toBe(1);
    for (const { part } of parts) expect(part.si).toBe(0);
    const same = { powerBefore: power(160, 'kW'), powerAfter: power(160, 'kW') };
    expect(contributionToChange({ ...same, factorRatio: ratio(1.01) }).in('kW')).toBeCloseTo(160 * Math.log(1.01), 10);
  });
});

describe('scenarios compared', () => {
  it('say at each station what differs', () => {
    const { stations } = compareScenarios(before, after);
    expect(stations.map(({ name }) => name)).toEqual([
      'ambient',
      'compressor inlet',
      'compressor outlet',
      'core outlet',
      'manifold',
    ]);
    expect(stations[3]!.temperature.in('K')).toBeCloseTo(42.714 - 49.959, 3);
    expect(stations[4]!.pressure.in('kPa')).toBeCloseTo(-0.086, 3);
    expect(stations[0]!.density.si).toBe(1);
  });

  it('read as text, with the knock margin and its cautions where an octane number is given', () => {
    const text = String(compareScenarios(before, after, { octaneNumber: octaneNumber(98) }));
    expect(text).toContain('+1.31 % power');
    expect(text).toContain('density gained by colder charge, part of it lost in breathing');
    expect(text).toMatch(/never a licence to run/);
    expect(compareScenarios(before, after).knock).toBeUndefined();
  });

  it('cancel the error of what both share', () => {
    const room = measured('room', temperature(24, '°C'), { halfWidth: temperatureDifference(1, 'K') });
    const measuredRoom = (installation: Installation): OperatingPoint =>
      operatingPoint({ ...installation, ambient: { ...installation.ambient, temperature: room } }, speedOfReference);
    const [first, second] = [measuredRoom(referenceCase), measuredRoom(withCoolingAir(1))];
    const alone = uncertainty(first.power).standard.si;
    const difference = uncertainty(compareScenarios(first, second).change).standard.si;
    expect(alone).toBeGreaterThan(20);
    expect(difference).toBeLessThan(alone / 10);
  });

  it('explain each part', () => {
    const [pressure] = compareScenarios(before, after).parts;
    expect(explain(pressure!.part).toText()).toContain('contribution to a change of power');
  });

  it('refuse another speed or another engine', () => {
    const slower = operatingPoint(referenceCase, rotationalSpeed(5000, 'rpm'));
    expect(() => compareScenarios(before, slower)).toThrow(/engineSpeed must be the same in both/);
    const larger = operatingPoint(
      { ...referenceCase, engine: { ...referenceCase.engine, bore: referenceCase.engine.stroke! } },
      speedOfReference,
    );
    expect(() => compareScenarios(before, larger)).toThrow(/same swept volume/);
  });
});

describe('a sweep over engine speeds', () => {
  const speeds = [2000, 4000, 6000].map((rpm) => rotationalSpeed(rpm, 'rpm'));

  it('has the points that single solutions have', () => {
    const sweep = overSpeeds(referenceCase, speeds);
    expect(sweep.points).toHaveLength(3);
    sweep.points.forEach((point, i) => {
      expect(point.power.si / operatingPoint(referenceCase, speeds[i]!).power.si).toBeCloseTo(1, 11);
    });
    expect(sweep.column(({ torque }) => torque).in('N·m')[2]).toBeCloseTo(259.31, 2);
    expect(String(sweep)).toContain('6000');
  });

  it('takes what changes with speed from a function', () => {
    const sweep = overSpeeds(
      (speed) => ({
        ...referenceCase,
        boost: {
          by: 'spring',
          senses: 'compressor outlet',
          gaugePressure: gaugePressure(speed.in('rpm') > 3000 ? 95 : 60, 'kPa'),
        },
      }),
      speeds,
    );
    const boost = sweep.column(({ stations }) => stations.compressorOutlet.gaugePressure).in('kPa');
    expect([...boost].map((value) => Math.round(value))).toEqual([60, 95, 95]);
  });

  it('lists the speeds that have no point, and goes on', () => {
    const sweep = overSpeeds({ ...referenceCase, compressor: { map: demoMap() } }, [
      rotationalSpeed(1800, 'rpm'),
      ...speeds,
    ]);
    expect(sweep.points.length + sweep.refused.length).toBe(4);
    expect(sweep.refused.length).toBeGreaterThan(0);
    expect(sweep.refused[0]!.error).toBeInstanceOf(NoSteadyPoint);
  });

  it('refuses an empty list', () => {
    expect(() => overSpeeds(referenceCase, [])).toThrow(/engineSpeeds must be a list/);
  });
});

function solved(
  first: Installation,
  second: Installation,
  speed: ReturnType<typeof rotationalSpeed>,
): readonly [OperatingPoint, OperatingPoint] | undefined {
  try {
    return [operatingPoint(first, speed), operatingPoint(second, speed)];
  } catch (error) {
    if (!(error instanceof NoSteadyPoint)) throw error;
    return undefined;
  }
}
