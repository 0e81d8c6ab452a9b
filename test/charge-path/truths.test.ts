import fc from 'fast-check';
import { describe, it } from 'vitest';
import {
  NoSteadyPoint,
  type Exhaust,
  operatingPoint,
  type Installation,
  type OperatingPoint,
} from '../../src/charge-path/index.js';
import {
  add,
  pressureDifference,
  ratio,
  scale,
  subtract,
  temperatureDifference,
  type Quantity,
} from '../../src/units/index.js';
import { seeded } from '../support/random.js';
import { CONTROLS, randomInstallation, withAir, type Draw, type Wish } from './random-installations.js';

/** What rounding and the solver may leave. */
const SLACK = 1e-10;
const RUNS = { numRuns: 50, seed: 20 };

const notAbove = (after: number, before: number): boolean => after <= before + SLACK * Math.abs(before);
const below = (after: number, before: number): boolean => after < before * (1 + SLACK);
const equal = (after: number, before: number): boolean => Math.abs(after - before) <= SLACK * Math.abs(before);

/** Solves both, or leaves the draw out: a truth is about installations that have a steady point. */
function both(before: Draw, after: Installation): readonly [OperatingPoint, OperatingPoint] {
  try {
    return [operatingPoint(before.installation, before.engineSpeed), operatingPoint(after, before.engineSpeed)];
  } catch (error) {
    if (!(error instanceof NoSteadyPoint)) throw error;
    return fc.pre(false) as never;
  }
}

const withoutSpray = (draw: Draw): Draw => ({
  ...draw,
  installation: withAir(draw.installation, ({ spray: _, ...air }) => air),
});

/** A truth over random installations of a kind; `change` makes the second of the pair. */
function holds(
  wish: Wish,
  change: (draw: Draw, share: number) => Installation,
  truth: (before: OperatingPoint, after: OperatingPoint) => boolean,
): void {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 2 ** 31 }), fc.double({ min: 0.02, max: 1, noNaN: true }), (seed, share) => {
      const draw = withoutSpray(randomInstallation(seeded(seed), wish));
      const [before, after] = both(draw, change(draw, share));
      return truth(before, after);
    }),
    RUNS,
  );
}

/** The same with the cooling medium up to 25 K colder. */
function colderMedium(draw: Draw, share: number): Installation {
  return withAir(draw.installation, (air) => ({
    ...air,
    temperature: subtract(
      air.temperature ?? draw.installation.ambient.temperature,
      temperatureDifference(25 * share, 'K'),
    ),
  }));
}

const manifoldTemperature = (point: OperatingPoint): number => point.stations.manifold.temperature.si;
const manifoldPressure = (point: OperatingPoint): number => point.stations.manifold.pressure.si;
const isCooled = ({ core, stations }: OperatingPoint): boolean =>
  core.coolingAirFace.si < stations.compressorOutlet.temperature.si;
const isDry = ({ core }: OperatingPoint): boolean => core.condensate.si === 0;

/**
 * Where colder charge lowers boost behind a spring at the compressor outlet: the loss grows with flow faster than it falls with
 * density, and takes no large part of the pressure.
 */
const isLossModest = ({ installation, core, stations }: OperatingPoint): boolean => {
  const exponent = installation.core.loss.exponent?.si ?? 1.8;
  return (
    exponent * installation.engine.densityExponent!.si > 0.55 &&
    core.pressureLoss.si < 0.1 * stations.compressorOutlet.pressure.si
  );
};

const FREE = CONTROLS.filter((control) => control !== 'held torque');
const WITHOUT_FEEDBACK = FREE.filter((control) => control !== 'fixed wastegate' && control !== 'drooping spring');

describe.each(FREE)('with a colder cooling medium, at the same weather, under %s', (control) => {
  // A wastegate that stands still answers with more boost, and that can heat the charge by more than the medium cools it.
  const canWarm = control === 'fixed wastegate';

  it(`${canWarm ? '' : 'the charge is never warmer, '}air flow, fuel and power rise`, () => {
    holds({ control, fuelling: 'lambda held' }, colderMedium, (before, after) => {
      fc.pre(isCooled(before));
      const air = after.airFlow.si / before.airFlow.si;
      return (
        (canWarm || notAbove(after.stations.coreOutlet.temperature.si, before.stations.coreOutlet.temperature.si)) &&
        notAbove(1, air) &&
        equal(after.engine.fuelFlow.si / before.engine.fuelFlow.si, air) &&
        notAbove(before.power.si, after.power.si)
      );
    });
  });

  it('only the mixture leans where the fuel is held', () => {
    holds({ control, fuelling: 'fuel held' }, colderMedium, (before, after) => {
      fc.pre(isCooled(before));
      const air = after.airFlow.si / before.airFlow.si;
      return (
        equal(after.engine.fuelFlow.si, before.engine.fuelFlow.si) &&
        equal(after.engine.lambda.si / before.engine.lambda.si, air) &&
        notAbove(1, air)
      );
    });
  });
});

describe.each(WITHOUT_FEEDBACK)('with a colder cooling medium, under %s, without condensation', (control) => {
  it('air flow gains at most the density exponent of the temperature', () => {
    holds({ control, fuelling: 'lambda held' }, colderMedium, (before, after) => {
      fc.pre(isCooled(before) && isDry(after) && (control !== 'spring at outlet' || isLossModest(before)));
      const exponent = before.installation.engine.densityExponent!.si;
      const gain = Math.log(after.airFlow.si / before.airFlow.si);
      return gain <= exponent * Math.log(manifoldTemperature(before) / manifoldTemperature(after)) + SLACK;
    });
  });

  it('manifold pressure stays where the control holds it there, and never rises elsewhere', () => {
    const isHeldThere = control === 'spring at manifold' || control.startsWith('closed loop');
    holds({ control, fuelling: 'lambda held' }, colderMedium, (before, after) => {
      fc.pre(isCooled(before) && isDry(after) && (control !== 'spring at outlet' || isLossModest(before)));
      const [p, q] = [manifoldPressure(before), manifoldPressure(after)];
      return isHeldThere ? equal(q, p) : notAbove(q, p);
    });
  });
});

describe('with a colder cooling medium, at a fixed compressor speed', () => {
  it('manifold pressure falls', () => {
    holds({ control: 'fixed compressor speed', fuelling: 'lambda held' }, colderMedium, (before, after) => {
      fc.pre(isCooled(before) && isDry(after) && after.airFlow.si > before.airFlow.si * (1 + 1e-6));
      return below(manifoldPressure(after), manifoldPressure(before));
    });
  });
});

describe.each(['spring at outlet', 'closed loop, absolute', 'fixed compressor speed'] as const)(
  'with the whole weather colder, under %s',
  (control) => {
    const colderWeather = (draw: Draw, share: number): Installation => {
      const by = temperatureDifference(20 * share, 'K');
      const colder = (value: Quantity<'temperature'>): Quantity<'temperature'> => subtract(value, by);
      const { ambient } = draw.installation;
      const { humidityRatio } = operatingPointOrSkip(draw).stations.ambient;
      const { relativeHumidity: _, ...place } = ambient;
      const installation = {
        ...draw.installation,
        ambient: { ...place, temperature: colder(ambient.temperature), humidityRatio },
      };
      return withAir(installation, (air) => (air.temperature ? { ...air, temperature: colder(air.temperature) } : air));
    };

    it('air flow rises; manifold pressure rises where the compressor keeps its speed', () => {
      holds({ control, fuelling: 'lambda held' }, colderWeather, (before, after) => {
        fc.pre(isCooled(before) && isDry(after));
        const pressure =
          control !== 'fixed compressor speed' || notAbove(manifoldPressure(before), manifoldPressure(after));
        return notAbove(before.airFlow.si, after.airFlow.si) && pressure;
      });
    });
  },
);

function operatingPointOrSkip({ installation, engineSpeed }: Draw): OperatingPoint {
  try {
    return operatingPoint(installation, engineSpeed);
  } catch (error) {
    if (!(error instanceof NoSteadyPoint)) throw error;
    return fc.pre(false) as never;
  }
}

describe.each(WITHOUT_FEEDBACK)('with more cooling air of one face temperature, under %s', (control) => {
  it('the charge never leaves further from it', () => {
    const withoutHeat = (installation: Installation): Installation =>
      withAir(installation, ({ upstreamHeat: _, ...air }) => air);
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 2 ** 31 }),
        fc.double({ min: 0.02, max: 1, noNaN: true }),
        (seed, share) => {
          const drawn = withoutSpray(randomInstallation(seeded(seed), { control, cooling: 'air' }));
          fc.pre(drawn.installation.core.arrangement !== 'crossflowBothMixed');
          const draw = { ...drawn, installation: withoutHeat(drawn.installation) };
          const [before, after] = both(
            draw,
            withAir(draw.installation, (air) => ({ ...air, massFlow: scale(air.massFlow, 1 + share) })),
          );
          const distance = ({ core, stations }: OperatingPoint): number =>
            Math.abs(stations.coreOutlet.temperature.si - core.coolingAirFace.si);
          return distance(after) <= distance(before) + 1e-8;
        },
      ),
      RUNS,
    );
  });
});

describe.each(FREE)('with more loss in the core, at a constant compressor efficiency, under %s', (control) => {
  // A blower passes the same air against more pressure, hotter, and hot air needs more pressure to go into the engine.
  const canRise = control === 'displacement blower';

  it(`${canRise ? '' : 'manifold pressure, '}air flow and power never rise`, () => {
    const more = ({ installation }: Draw, share: number): Installation => {
      const { loss } = installation.core;
      const pressure = scale(loss.pressure, 1 + share);
      return { ...installation, core: { ...installation.core, loss: { ...loss, pressure } } };
    };
    holds({ control, fuelling: 'lambda held' }, more, (before, after) => {
      const { boost } = before.installation;
      // A droop that answers less air with more boost works against the loss.
      fc.pre(boost.by !== 'spring' || boost.droop === undefined || boost.droop.perPercentAir.si >= 0);
      return (
        (canRise || notAbove(manifoldPressure(after), manifoldPressure(before))) &&
        notAbove(after.airFlow.si, before.airFlow.si) &&
        notAbove(after.power.si, before.power.si)
      );
    });
  });
});

describe.each(FREE)('with more loss at the inlet, at a constant compressor efficiency, under %s', (control) => {
  it('power never rises', () => {
    const more = ({ installation }: Draw, share: number): Installation => {
      const loss = installation.inlet?.loss ?? pressureDifference(0, 'Pa');
      return {
        ...installation,
        inlet: { ...installation.inlet, loss: add(loss, pressureDifference(2000 * share, 'Pa')) },
      };
    };
    holds({ control, fuelling: 'lambda held' }, more, (before, after) => notAbove(after.power.si, before.power.si));
  });
});

describe.each(FREE)('with more exhaust back pressure, under %s', (control) => {
  it('power never rises', () => {
    const exhaust = (over: number): Exhaust => ({
      ...(control === 'fixed wastegate' ? {} : { pressureOverManifold: ratio(over) }),
      pressureOverManifoldAtReference: ratio(1),
      compressionRatio: ratio(9.5),
    });
    const at = (installation: Installation, share: number): Installation => ({
      ...installation,
      engine: { ...installation.engine, exhaust: exhaust(1 + 0.4 * share) },
      ...(installation.boost.by === 'fixed wastegate'
        ? { boost: { ...installation.boost, exhaustLoss: pressureDifference(2 + 10 * share, 'kPa') } }
        : {}),
    });
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 2 ** 31 }),
        fc.double({ min: 0.02, max: 1, noNaN: true }),
        (seed, share) => {
          const draw = randomInstallation(seeded(seed), { control, fuelling: 'lambda held' });
          const [before, after] = both(
            { ...draw, installation: at(draw.installation, 0) },
            at(draw.installation, share),
          );
          return notAbove(after.power.si, before.power.si);
        },
      ),
      RUNS,
    );
  });
});

describe('no sign is promised', () => {
  it('of manifold pressure under a drooping spring or a wastegate that stands still, and the point says so', () => {
    const seen = new Map<string, Set<number>>();
    const random = seeded(3);
    for (let i = 0; i < 300; i++) {
      const control = i % 2 === 0 ? 'drooping spring' : 'fixed wastegate';
      const draw = withoutSpray(randomInstallation(random, { control, fuelling: 'lambda held' }));
      try {
        const before = operatingPoint(draw.installation, draw.engineSpeed);
        const after = operatingPoint(colderMedium(draw, 1), draw.engineSpeed);
        if (!after.notes.some(({ code }) => code === 'no sign promised')) throw new Error('no note');
        const signs = seen.get(control) ?? new Set();
        seen.set(control, signs.add(Math.sign(manifoldPressure(after) - manifoldPressure(before))));
      } catch (error) {
        if (!(error instanceof NoSteadyPoint)) throw error;
      }
    }
    if (seen.get('drooping spring')?.size !== 2) throw new Error('both signs were to be seen');
  });
});
