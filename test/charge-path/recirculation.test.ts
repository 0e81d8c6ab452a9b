import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explain, whatIf } from '../../src/calculation/index.js';
import { NoSteadyPoint, operatingPoint, type Installation } from '../../src/charge-path/index.js';
import { recirculatedFraction } from '../../src/compressor/index.js';
import { massFlow, percent, ratio, thermalConductance } from '../../src/units/index.js';
import { seeded } from '../support/random.js';
import { referenceCase, speedOfReference } from './installations.js';
import { CONTROLS, randomInstallation, withAir } from './random-installations.js';

/** The installation with air that comes back to the compressor and to the face. */
function comingBack(installation: Installation, toCompressor?: number, toFace?: number): Installation {
  const face = toFace === undefined ? {} : { recirculatedShare: ratio(toFace) };
  const compressor = toCompressor === undefined ? {} : { recirculatedShare: ratio(toCompressor) };
  return {
    ...withAir(installation, (air) => ({ ...air, ...face })),
    inlet: { ...installation.inlet, ...compressor },
  };
}

const solve = (installation: Installation): ReturnType<typeof operatingPoint> =>
  operatingPoint(installation, speedOfReference);

describe('cooling air that is breathed again', () => {
  it('warms the compressor inlet by its share of the way to the air behind the core, as its own measure reads it', () => {
    const { stations, core } = solve(comingBack({ ...referenceCase, inlet: {} }, 0.2));
    const share = recirculatedFraction({
      ambientTemperature: stations.ambient.temperature,
      recirculatedTemperature: core.coolingAirBehind,
      inletTemperature: stations.compressorInlet.temperature,
    });
    expect(share.si).toBeCloseTo(0.2, 9);
  });

  it('raises the face by f/(1 - f) of the rise over the core, the sum of all the rounds it makes', () => {
    const { core } = solve(comingBack(referenceCase, undefined, 0.25));
    const rise = core.coolingAirBehind.si - core.coolingAirFace.si;
    expect(core.coolingAirFace.in('°C')).toBeCloseTo(27 + (0.25 / 0.75) * rise, 9);
  });

  it('balances, is explained, and answers what-if as solved anew', () => {
    const installation = comingBack(referenceCase, 0.2, 0.1);
    const point = solve(installation);
    for (const { name, relativeDifference } of point.balances) expect(relativeDifference, name).toBeLessThan(1e-12);
    expect(point.balances.map(({ name }) => name)).toContain('cooling air');
    const text = explain(point.power).toText();
    expect(text).toContain('inlet temperature with recirculation');
    expect(text).toContain('temperature of the cooling air behind the core');
    expect(String(point)).toMatch(
      /air from behind the core, of .* °C: 20\.0 % of what the compressor breathes, 10\.0 %/,
    );
    const share = installation.inlet!.recirculatedShare!;
    const changed = whatIf(point.power, [[share, percent(10)]]);
    expect(changed.si).toBeCloseTo(solve(comingBack(referenceCase, 0.1, 0.1)).power.si, 5);
  });

  it('is nothing where its shares are nothing', () => {
    expect(solve(comingBack(referenceCase, 0, 0)).power.si).toBeCloseTo(solve(referenceCase).power.si, 7);
  });

  // A compressor held at one speed makes less boost of warmer air, a blower another pressure ratio: no sign is promised there.
  it.each(CONTROLS.filter((control) => control !== 'fixed compressor speed' && control !== 'fixed wastegate'))(
    'never makes the charge colder, the more of it there is, under %s',
    (control) => {
      fc.assert(
        fc.property(
          fc.integer({ min: 1, max: 2 ** 31 }),
          fc.double({ min: 0, max: 0.2, noNaN: true }),
          (seed, share) => {
            const { installation, engineSpeed } = randomInstallation(seeded(seed), {
              control,
              fuelling: 'lambda held',
            });
            const at = (f: number, g: number): ReturnType<typeof operatingPoint> | undefined => {
              try {
                return operatingPoint(comingBack(installation, f, g), engineSpeed);
              } catch (error) {
                if (error instanceof NoSteadyPoint || /more air comes back/.test(String(error))) return undefined;
                throw error;
              }
            };
            const [less, moreBreathed, moreAtFace] = [at(share, share), at(share + 0.1, share), at(share, share + 0.1)];
            fc.pre(less !== undefined && moreBreathed !== undefined && moreAtFace !== undefined);
            // Air behind the core colder than the room, as behind a core fed with chilled air, cools instead.
            fc.pre(
              less!.core.coolingAirBehind.si >
                Math.max(less!.stations.ambient.temperature.si, less!.core.coolingAirFace.si),
            );
            const charge = less!.stations.coreOutlet.temperature.si;
            return [moreBreathed, moreAtFace].every(
              (point) => point!.stations.coreOutlet.temperature.si >= charge - 1e-7,
            );
          },
        ),
        { numRuns: 40, seed: 5 },
      );
    },
  );

  it('cannot be more than leaves the core', () => {
    // A core that hardly cools warms its air so little that even all of it would settle.
    const conductance = thermalConductance(30, 'W/K');
    const poor: Installation = {
      ...referenceCase,
      core: { ...referenceCase.core, charge: { ...referenceCase.core.charge, conductance } },
      cooling: { by: 'air', massFlow: massFlow(0.1, 'kg/s') },
    };
    expect(() => solve(comingBack(poor, 0.7))).toThrow(/no more air comes back than leaves the core/);
  });

  it('is refused where it heats itself without end', () => {
    expect(() => solve(comingBack(referenceCase, 0, 1))).toThrow(/must settle at a temperature/);
  });
});
