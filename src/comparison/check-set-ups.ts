import { CalculationError, type Column, type Problem } from '../units/index.js';
import { describe } from '../units/internal.js';
import type { SetUp } from '../sweep/index.js';
import type { CompareOptions } from './options.js';
import type { TakenPull } from './taken-pull.js';
import { counted, listed } from './words.js';

/** Two set-ups that can be compared, and options that name their pulls rightly: a misspelt pull would be left in, silently. */
export function checkSetUps(baseline: SetUp, candidate: SetUp, options: CompareOptions): void {
  refuse(Object.entries({ baseline, candidate }).flatMap(([input, setUp]) => setUpProblems(input, setUp)));
  if (baseline.name === candidate.name && baseline !== candidate) {
    const need = 'a set-up of another name than the baseline, so that their pulls can be told apart';
    refuse([{ code: 'impossible', input: 'candidate', need, got: `"${candidate.name}" for both`, mend: '' }]);
  }
  const setUps = [baseline, candidate];
  const names = setUps.flatMap((setUp) => setUp.pulls.map((pull) => `${setUp.name}/${pull.name}`));
  const { leaveOut, overrule } = options;
  refuse([
    ...Object.entries({ leaveOut, overrule }).flatMap(([input, given]) =>
      Object.keys(given ?? {})
        .filter((name) => !names.includes(name))
        .map((name): Problem => {
          return { code: 'unknown', input, need: `named after pulls: ${names.join(', ')}`, got: name, mend: '' };
        }),
    ),
    ...orderProblems(setUps, options.order),
  ]);
}

function setUpProblems(input: string, setUp: unknown): Problem[] {
  const { name, pulls } = (setUp ?? {}) as Partial<SetUp>;
  if (typeof name === 'string' && Array.isArray(pulls)) {
    if (pulls.length > 0) return [];
    return [{ code: 'missing', input, need: 'a set-up with pulls', got: `${name} without any`, mend: '' }];
  }
  const forgotten = setUp instanceof Promise;
  return [
    {
      code: 'kind',
      input,
      need: 'a set-up',
      got: forgotten ? 'a promise' : describe(setUp),
      mend: forgotten ? 'Write await before readPulls.' : "Take one from a day: day.setup('name').",
    },
  ];
}

/** The order names each pull once; the set-ups of the day that are not compared here may stand in it too. */
function orderProblems(setUps: readonly SetUp[], order: CompareOptions['order']): Problem[] {
  if (order === undefined) return [];
  const times = (name: string): number => order.filter((one) => one === name).length;
  if (setUps.every(({ name, pulls }) => times(name) === pulls.length)) return [];
  const wanted = setUps.map(({ name, pulls }) => `"${name}" ${counted(pulls.length, 'time')}`);
  const got = [...new Set(order)].map((name) => `"${name}" ${counted(times(name), 'time')}`);
  return [
    {
      code: 'length',
      input: 'order',
      need: `a list with one name for each pull, refused ones too: ${listed(wanted)}`,
      got: got.length === 0 ? 'nothing' : listed(got),
      mend: 'A pull that was not read has no place in it.',
    },
  ];
}

/**
 * Both sides without the pulls that stand in both: refused in each, since nobody knows whose they are, and counted they would pull the
 * difference to nothing.
 *
 * @throws CalculationError if nothing else is left of a side: a set-up compared with itself is never different.
 */
export function withoutShared(
  baseline: readonly TakenPull[],
  candidate: readonly TakenPull[],
): readonly [TakenPull[], TakenPull[]] {
  const twin = (pull: TakenPull, others: readonly TakenPull[]): TakenPull | undefined =>
    others.find((other) => sameReadings(readings(other), readings(pull)));
  if ([baseline, candidate].some((side, i) => side.every((pull) => twin(pull, i === 0 ? candidate : baseline)))) {
    const shared = candidate.flatMap((pull) => {
      const same = twin(pull, baseline)?.result.file;
      const { file } = pull.result;
      return same === undefined ? [] : [same === file ? file : `${file} (the same as ${same})`];
    });
    refuse([
      {
        code: 'impossible',
        input: 'candidate',
        need: 'made of other pulls than the baseline',
        got: `${listed(shared)} in both`,
        mend: 'Take each pull out of one of them.',
      },
    ]);
  }
  const refused = (side: readonly TakenPull[], others: readonly TakenPull[]): TakenPull[] =>
    side.map((pull) => {
      const same = twin(pull, others);
      if (same === undefined) return pull;
      const reason = `It stands in both set-ups: every reading is the same as in ${same.pull.setup ?? 'the other'}/${same.result.name}.`;
      const refusals = [...pull.result.refusals, { code: 'copy', reason, overruled: false, because: undefined }];
      return { ...pull, result: { ...pull.result, refusals, accepted: false } };
    });
  return [refused(baseline, candidate), refused(candidate, baseline)];
}

/** What tells one pull from another. */
export interface Readings {
  readonly curve: Column;
  /** When it began, where the log tells. */
  readonly startClock: number | undefined;
}

const readings = ({ pull, result }: TakenPull): Readings => ({ curve: result.curve, startClock: pull.startClock?.si });

/** Whether two pulls are one: no two agree in every figure at every speed, and none begin at one time. */
export function sameReadings(a: Readings, b: Readings): boolean {
  const [own, other] = [a.curve.si, b.curve.si];
  return (
    a.startClock === b.startClock &&
    a.curve.missing < own.length &&
    own.length === other.length &&
    own.every((si, row) => Object.is(si, other[row]))
  );
}

function refuse(problems: readonly Problem[]): void {
  if (problems.length > 0) throw new CalculationError('compare', problems);
}
