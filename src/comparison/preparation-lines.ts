import { roleWords, type Preparation, type Pull, type SetUp } from '../sweep/index.js';
import { counted, decimals, listed, sentenceCase } from './words.js';

/** What was done to one pull, with the set-up it belongs to. */
interface Done {
  readonly setUp: string;
  readonly preparation: Preparation;
}

/**
 * What was done to the pulls before they were compared, a sentence for each step however many pulls there are. What had been done to
 * them before they came here is told too, and where that was not the same for all: it can pass for a change.
 */
export function preparationLines(before: readonly SetUp[], after: readonly SetUp[]): string[] {
  const pulls = after.flatMap((setUp) => setUp.pulls);
  const done = after.flatMap((setUp, side) =>
    setUp.pulls.flatMap((pull, i): Done[] =>
      pull.preparations
        .slice(before[side]!.pulls[i]!.preparations.length)
        .map((preparation) => ({ setUp: setUp.name, preparation })),
    ),
  );
  const counts = done.filter(({ preparation }) => isCounted(preparation));
  const others = done.filter(({ preparation }) => !isCounted(preparation));
  return [
    ...earlierLines(before),
    ...stepsOf(counts, nameOf).map((step) => countedLine(step, pulls.length)),
    ...stepsOf(others, wordsOf).map((step) => stepLine(step, after)),
  ];
}

const isCounted = ({ code }: Preparation): boolean => code === 'outliers' || code === 'held readings';

/** What the pulls came with. */
function earlierLines(setUps: readonly SetUp[]): string[] {
  const pulls = setUps.flatMap((setUp) => setUp.pulls);
  const names = [...new Set(pulls.flatMap((pull) => pull.preparations.map(nameOf)))];
  const count = ({ pulls: own }: SetUp, name: string): number => own.filter((pull) => has(pull, name)).length;
  return names.map((name) => {
    if (pulls.every((pull) => has(pull, name))) return `Done to every pull before it came here: ${name}.`;
    const each = setUps.map(
      (setUp) => `${count(setUp, name)} of ${counted(setUp.pulls.length, 'pull')} of ${setUp.name}`,
    );
    return `Done before they came here to ${listed(each)}: ${name}. What is done to some pulls alone can pass for a change.`;
  });
}

const has = (pull: Pull, name: string): boolean => pull.preparations.some((one) => nameOf(one) === name);

const NAMES: Readonly<Record<Preparation['code'], string>> = {
  'rows kept': 'only some rows kept',
  outliers: 'outliers taken out',
  'held readings': 'repeated readings taken out',
  delay: 'brought forward',
  'sensor lag': 'sensor lag taken off',
  inertia: 'torque of the masses added',
  'settled part': 'the start cut off',
};

function nameOf({ code, role }: Preparation): string {
  const perChannel = code === 'delay' || code === 'sensor lag';
  return perChannel && role ? `${roleWords(role)} ${NAMES[code]}` : NAMES[code];
}

/** Entries that one sentence tells. */
function stepsOf(done: readonly Done[], key: (preparation: Preparation) => string): Done[][] {
  const steps = new Map<string, Done[]>();
  for (const one of done) {
    const name = key(one.preparation);
    steps.set(name, [...(steps.get(name) ?? []), one]);
  }
  return [...steps.values()];
}

/** What a step does, without the figures that each pull has of its own. */
function wordsOf({ code, message }: Preparation): string {
  if (code === 'settled part') return `The start cut off:${message.slice(message.indexOf(':') + 1)}`;
  return code === 'delay' ? message : `${message.split(', ')[0]!}.`;
}

function stepLine(step: readonly Done[], setUps: readonly SetUp[]): string {
  const of = setUps.map(({ name }) => name).filter((name) => step.some((one) => one.setUp === name));
  const where = of.length === setUps.length ? 'In every pull' : `In every pull of ${of.join('')}`;
  const words = wordsOf(step[0]!.preparation);
  return `${where}: ${words.charAt(0).toLowerCase()}${words.slice(1)}${noiseWords(step)}`;
}

/** How much noisier a reading has become; it stands in the scatter from pull to pull, so the interval holds it. */
function noiseWords(step: readonly Done[]): string {
  const factors = step.flatMap(({ preparation }) => preparation.noiseFactor ?? []);
  if (factors.length === 0) return '';
  const [low, high] = [Math.min(...factors), Math.max(...factors)].map((factor) => decimals(factor, 2));
  const range = low === high ? low : `${low} to ${high}`;
  return ` The noise of a reading becomes ${range} times what it was; what that does to a pull stands in the scatter from pull to pull.`;
}

/** Readings that were taken out, by channel over all pulls. */
function countedLine(step: readonly Done[], all: number): string {
  const { code } = step[0]!.preparation;
  const byRole = new Map<string, { readings: number; pulls: number }>();
  for (const { preparation } of step) {
    if (preparation.role === undefined || preparation.readings === 0) continue;
    const words = roleWords(preparation.role);
    const { readings, pulls } = byRole.get(words) ?? { readings: 0, pulls: 0 };
    byRole.set(words, { readings: readings + preparation.readings, pulls: pulls + 1 });
  }
  const looked = code === 'outliers' ? 'outliers' : 'repeated readings';
  if (byRole.size === 0) return `${sentenceCase(looked)} were looked for in every pull; none were found.`;
  const each = [...byRole].map(([role, { readings, pulls }]) => `${readings} of ${role} in ${counted(pulls, 'pull')}`);
  return `${sentenceCase(NAMES[code])}, of ${counted(all, 'pull')}: ${listed(each)}.`;
}
