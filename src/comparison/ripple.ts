import {
  ripple,
  rippleAgreement,
  rippleOverPulls,
  StatisticsError,
  type Ripple,
  type RippleOverPulls,
} from '../statistics/index.js';
import { evenSignal, realReadings } from '../sweep/even-rows.js';
import { roleWords, type ChannelRole, type Pull, type SetUp } from '../sweep/index.js';
import { settledOscillation } from '../sweep/pull-quality.js';
import { timeBaseOf } from '../sweep/time-base.js';
import { CalculationError } from '../units/index.js';
import { shiftByLag } from './ripple-shift.js';
import { counted, decimals } from './words.js';

/** Which channel is asked to follow which. */
export interface RippleFollowOptions {
  /** `boost` when left out, or manifold pressure where only that is logged. */
  readonly driver?: ChannelRole;
  /** `torque` when left out. */
  readonly follower?: ChannelRole;
}

/** Whether a bump in one channel is the ripple of another: for each pull, and for all of them together. */
export interface RippleFinding {
  readonly driver: ChannelRole;
  readonly follower: ChannelRole;
  readonly pulls: readonly { readonly pull: string; readonly ripple: Ripple }[];
  /** Pulls that show no ripple, or cannot. */
  readonly without: readonly string[];
  /** All pulls together; undefined with fewer than two, or where the set-ups differ in size or phase. */
  readonly together: RippleOverPulls | undefined;
  /** Each set-up by itself, where two differ; empty otherwise. */
  readonly bySetUp: readonly { readonly setUp: string; readonly together: RippleOverPulls | undefined }[];
  /** The answer in a sentence or two. */
  readonly answer: string;
  /** As text. */
  toString(): string;
}

/** Blanks of half a second are bridged, about half a cycle of slow hunting. */
const LONGEST_GAP = 0.5;
const MOST_OF_CYCLE = 0.4;

/**
 * Whether torque follows the ripple of boost, so that "that bump is the wastegate" becomes a number: how much of the ripple is explained,
 * how large it is for each unit of boost, how much later it comes. One pull cannot tell a link from two tones of one frequency; several
 * that agree in size and phase can.
 *
 * @throws CalculationError if no pull has both channels and a time base.
 * @example
 * console.log(String(rippleFollows(day.setup('stock core'))));
 */
export function rippleFollows(setUp: SetUp, options: RippleFollowOptions = {}): RippleFinding {
  const driver = options.driver ?? (setUp.pulls.some((pull) => pull.channels.boost) ? 'boost' : 'manifoldPressure');
  const follower = options.follower ?? 'torque';
  if (!setUp.pulls.some((pull) => pull.channels[driver] && pull.channels[follower])) {
    const need = `with pulls that have ${roleWords(driver)} and ${roleWords(follower)}`;
    throw new CalculationError('rippleFollows', [{ code: 'missing', input: 'setUp', need, got: setUp.name, mend: '' }]);
  }
  return findingOf(setUp.pulls, (pull) => pull.name, driver, follower);
}

/**
 * The same over the pulls of a comparison, both set-ups together: the more pulls agree, the stronger the proof.
 *
 * @returns undefined where no pull shows a ripple of boost.
 */
export function rippleOf(pulls: readonly Pull[]): RippleFinding | undefined {
  const driver = pulls.some((pull) => pull.channels.boost) ? 'boost' : 'manifoldPressure';
  if (!pulls.some((pull) => pull.channels[driver] && pull.channels.torque)) return undefined;
  const finding = findingOf(
    pulls,
    ({ setup, name }) => (setup === undefined ? name : `${setup}, ${name}`),
    driver,
    'torque',
  );
  return finding.pulls.length === 0 ? undefined : finding;
}

/** What a coherence cannot say, in words for the report. */
export const RIPPLE_LIMITS: readonly string[] = [
  'Going together is no cause: what moves both, such as a control loop or the road, looks the same.',
  'In one pull two steady tones of one frequency always look linked; only pulls that agree in size and phase are proof.',
  'The lag is known only up to whole cycles of the ripple.',
];

function findingOf(
  all: readonly Pull[],
  nameOf: (pull: Pull) => string,
  driver: ChannelRole,
  follower: ChannelRole,
): RippleFinding {
  const found = all.map((pull) => ({
    pull: nameOf(pull),
    setUp: pull.setup ?? '',
    ripple: rippleOfPull(pull, driver, follower),
  }));
  const shown = found.flatMap(({ ripple: own, ...one }) => (own ? [{ ...one, ripple: own }] : []));
  const pulls = shown.map(({ pull, ripple: own }) => ({ pull, ripple: own }));
  const setUps = [...new Set(shown.map(({ setUp }) => setUp))];
  const ofSetUp = (setUp: string): Ripple[] => shown.flatMap((one) => (one.setUp === setUp ? [one.ripple] : []));
  const overPulls = (own: readonly Ripple[]): RippleOverPulls | undefined =>
    own.length < 2 ? undefined : rippleOverPulls(own);
  const differ = setUps.some((setUp, i) =>
    setUps.slice(i + 1).some((other) => rippleAgreement(ofSetUp(setUp), ofSetUp(other))?.differ),
  );
  const together = differ ? undefined : overPulls(pulls.map((one) => one.ripple));
  const bySetUp = differ ? setUps.map((setUp) => ({ setUp, together: overPulls(ofSetUp(setUp)) })) : [];
  const without = found.filter((one) => !one.ripple).map((one) => one.pull);
  const answer = differ
    ? answerBySetUp(driver, follower, bySetUp) + shiftByLag(bySetUp, all, roleWords(follower))
    : answerOf(driver, follower, pulls, together);
  const text = (): string => textOf(pulls, without, answer);
  return Object.assign(
    { driver, follower, pulls, without, together, bySetUp, answer, toString: text },
    { [Symbol.for('nodejs.util.inspect.custom')]: text },
  );
}

/** The ripple of one pull from where it has settled, at the frequency at which the driver oscillates; undefined where there is none. */
function rippleOfPull(pull: Pull, driver: ChannelRole, follower: ChannelRole): Ripple | undefined {
  const [from, to] = [pull.channels[driver], pull.channels[follower]];
  if (!from || !to) return undefined;
  const base = timeBaseOf(pull.channels);
  const { fromRow, oscillation } = settledOscillation(pull, base, driver);
  if (oscillation === undefined) return undefined;
  const real = [from, to].map((channel) => realReadings(channel.si, fromRow));
  const slowest = Math.max(...real.map(({ every }) => every)) * base.step!;
  // Readings that are further apart than this share of a cycle do not show it.
  if (oscillation.frequency * slowest > MOST_OF_CYCLE) return undefined;
  const signals = real.map(({ si }) => evenSignal(si, base, fromRow, Math.max(LONGEST_GAP, 2 * slowest)));
  const [a, b] = signals;
  if (!a || !b || a.step !== b.step) return undefined;
  // Blanks at the ends of one channel leave the other longer: only what both cover is looked at.
  const skip = Math.round((a.start - b.start) / a.step);
  const length = Math.min(a.values.length + Math.min(0, skip), b.values.length - Math.max(0, skip));
  const part = (values: Float64Array, start: number): Float64Array => values.slice(start, start + length);
  try {
    return ripple(part(a.values, Math.max(0, -skip)), part(b.values, Math.max(0, skip)), a.step, {
      frequency: oscillation.frequency,
    });
  } catch (error) {
    if (error instanceof StatisticsError) return undefined;
    throw error;
  }
}

function answerOf(
  driver: ChannelRole,
  follower: ChannelRole,
  pulls: RippleFinding['pulls'],
  together: RippleOverPulls | undefined,
): string {
  const names = [roleWords(driver), roleWords(follower)] as const;
  if (pulls.length === 0) return `No pull shows a ripple of ${names[0]} that ${names[1]} could follow.`;
  const shares = pulls.map((one) => one.ripple.coherence * 100);
  const share = `${decimals(Math.min(...shares), 0)} to ${decimals(Math.max(...shares), 0)} % of the ripple in ${names[1]} goes with it`;
  if (!together)
    return `${names[0]} oscillates in one pull, and ${share}; one pull cannot tell a link from a coincidence.`;
  if (!together.agree) {
    return `The pulls do not agree that ${names[1]} follows the ripple of ${names[0]} (${share}, but each with a phase of its own).`;
  }
  return `In ${counted(pulls.length, 'pull')} ${names[1]} follows the ripple of ${names[0]}: ${share}${laterWords(together)}.`;
}

/** How much later the follower comes, as the end of a sentence. */
function laterWords({ lag, lagHalfWidth }: RippleOverPulls): string {
  if (lagHalfWidth === undefined) return '';
  const size = `${decimals(Math.abs(lag), 2)} ± ${decimals(lagHalfWidth, 2)} s`;
  if (Math.abs(lag) <= lagHalfWidth || size.startsWith('0.00')) return `, at once (${size})`;
  return lag < 0 ? `, and is logged ${size} before it, as a slow gauge makes it` : `, ${size} later`;
}

/** Where set-ups differ, one figure over all pulls would be that of neither. */
function answerBySetUp(driver: ChannelRole, follower: ChannelRole, bySetUp: RippleFinding['bySetUp']): string {
  const names = [roleWords(driver), roleWords(follower)] as const;
  const each = bySetUp.map(({ setUp, together }) => {
    if (together === undefined) return `${setUp}: one pull, which cannot tell`;
    if (!together.agree) return `${setUp}: its ${counted(together.pulls, 'pull')} do not agree`;
    return `${setUp}: in ${counted(together.pulls, 'pull')}${laterWords(together)}`;
  });
  return `How ${names[1]} follows the ripple of ${names[0]} is not the same in the set-ups, in size or in time: ${each.join('; ')}.`;
}

function textOf(pulls: RippleFinding['pulls'], without: readonly string[], answer: string): string {
  const lines = pulls.map(({ pull, ripple: { frequency, coherence, share, cycles } }) => {
    const [low, high] = share.map((end) => decimals(end * 100, 0));
    return `  ${pull}: ${decimals(frequency, 2)} times a second, ${decimals(cycles, 0)} cycles, ${decimals(coherence * 100, 0)} % explained (${low} to ${high} %)`;
  });
  return [answer, ...lines, ...(without.length > 0 ? [`  no ripple: ${without.join(', ')}`] : [])].join('\n');
}
