import { CalculationError, type Problem } from '../units/index.js';
import { describe } from '../units/internal.js';
import { prepare, type LagOptions, type PrepareOptions, type Pull, type SetUp } from '../sweep/index.js';
import type { OwnPreparation, ResolvedOptions } from './options.js';
import { preparationLines } from './preparation-lines.js';
import { listed } from './words.js';

const OWN: readonly string[] = ['delay', 'lag'] satisfies readonly (keyof OwnPreparation)[];

/** Both sides as they are compared, and what was done to them. */
export interface PreparedSides {
  readonly baseline: SetUp;
  readonly candidate: SetUp;
  /** A sentence for everything that was done, to all pulls or to some. */
  readonly remarks: readonly string[];
}

/** Does to every pull of both sides what the options ask for: the same, but for sensors that were another one. */
export function preparedSides(baseline: SetUp, candidate: SetUp, options: ResolvedOptions): PreparedSides {
  refuseUnlikeWindows([baseline.name, candidate.name], options);
  const sides = [baseline, candidate].map((setUp) => preparedSetUp(setUp, options)) as [SetUp, SetUp];
  const unused = Object.keys(options.prepareBySetUp).filter(
    (name) => name !== baseline.name && name !== candidate.name,
  );
  return {
    baseline: sides[0],
    candidate: sides[1],
    remarks: [
      ...preparationLines([baseline, candidate], sides),
      ...(unused.length === 0
        ? []
        : [`prepareBySetUp also names ${listed(unused.map((name) => `"${name}"`))}, which is not compared here.`]),
    ],
  };
}

/** One set-up with every pull prepared. */
export function preparedSetUp(setUp: SetUp, { prepare: forAll, prepareBySetUp }: ResolvedOptions): SetUp {
  const own = Object.hasOwn(prepareBySetUp, setUp.name) ? prepareBySetUp[setUp.name] : undefined;
  if (forAll === undefined && own === undefined) return setUp;
  const steps: PrepareOptions = {
    ...forAll,
    delay: { ...forAll?.delay, ...own?.delay },
    lag: { ...forAll?.lag, ...own?.lag },
  };
  return {
    ...setUp,
    pulls: setUp.pulls.map((pull) => preparedPull(setUp.name, pull, steps)),
    toString: () => setUp.toString(),
  };
}

/** A pull prepared; what is wrong with it is told with its name. */
function preparedPull(setUp: string, pull: Pull, steps: PrepareOptions): Pull {
  try {
    return prepare(pull, steps);
  } catch (error) {
    if (!(error instanceof CalculationError)) throw error;
    throw new CalculationError(
      'compare',
      error.problems.map((one): Problem => {
        const isOption = one.code === 'unknown';
        return {
          ...one,
          input: `prepare.${one.input}`,
          got: isOption ? one.got : `${one.got} in ${setUp}/${pull.name}`,
        };
      }),
    );
  }
}

type Lags = Readonly<Record<string, LagOptions>>;

/** A lag that is taken off over another window is smoothed otherwise, which alone makes a difference at every bend. */
function refuseUnlikeWindows(names: readonly string[], { prepare: forAll, prepareBySetUp }: ResolvedOptions): void {
  const [one, other] = names.map((name): Lags => ({ ...forAll?.lag, ...prepareBySetUp[name]?.lag })) as [Lags, Lags];
  const problems = Object.entries(one).flatMap(([role, { window }]): Problem[] => {
    const against = other[role]?.window;
    if (against === undefined || against.si === window.si) return [];
    const got = `${String(window)} for ${names[0]} and ${String(against)} for ${names[1]}`;
    return [{ code: 'impossible', input: `lag.${role}.window`, need: 'the same for both sides', got, mend: '' }];
  });
  if (problems.length > 0) throw new CalculationError('compare', problems);
}

/** What is wrong with a preparation for all pulls. */
export function prepareProblems(input: string, value: unknown): Problem[] {
  if (isRecord(value)) return [];
  return [
    {
      code: 'kind',
      input,
      need: 'an object of steps by name',
      got: describe(value),
      mend: "Write prepare: { outliers: 'missing' }.",
    },
  ];
}

/** What is wrong with preparations of single set-ups: whatever treats the sides unequally. */
export function ownPreparationProblems(input: string, value: unknown): Problem[] {
  const mend = `Write ${input}: { 'tall core': { delay: { lambda: time(0.1, 's') } } }.`;
  if (!isRecord(value))
    return [{ code: 'kind', input, need: 'an object of steps by set-up', got: describe(value), mend }];
  return Object.entries(value).flatMap(([setUp, steps]): Problem[] => {
    const name = `${input}['${setUp}']`;
    if (!isRecord(steps))
      return [{ code: 'kind', input: name, need: 'an object of steps by name', got: describe(steps), mend }];
    return Object.keys(steps)
      .filter((step) => !OWN.includes(step))
      .map((step): Problem => {
        return {
          code: 'impossible',
          input: `${name}.${step}`,
          need: 'left to prepare, which treats both sides alike',
          got: describe(steps[step]),
          mend: 'What takes readings away, cuts rows or adds torque on one side alone can pass for a change of the engine. Only the delay and the lag of a sensor that was another one may differ.',
        };
      });
  });
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
