import { CalculationError, rotationalSpeed, type Quantity } from '../units/index.js';
import {
  commonRange,
  roleWords,
  settledTogether,
  type ChannelRole,
  type Pull,
  type SettledTogether,
  type SetUp,
} from '../sweep/index.js';
import type { CompareOptions, ResolvedOptions } from './options.js';
import type { SettledStart } from './result.js';
import { asSpeed } from './speeds.js';
import { counted, decimals, listed, speedRange } from './words.js';

/** Only pressure tells: torque and air flow bend along engine speed for reasons of their own. */
const PRESSURES: readonly ChannelRole[] = ['boost', 'manifoldPressure'];
/** A cut that left less of the range than this share would say more about one odd pull than about the start of all. */
const LEAST_LEFT = 0.5;

type Speed = Quantity<'rotational speed'>;

/** The range of engine speed before the start of the pulls was looked at. */
interface AskedRange {
  readonly from: Speed;
  readonly to: Speed;
  readonly step: Speed;
  readonly bandwidth: Speed;
  /** Whether the user gave it. */
  readonly isGiven: boolean;
  readonly settled: 'cut' | 'leave in' | undefined;
}

/** The range that is compared, and what became of the start of the pulls. */
export interface SettledRange {
  readonly from: Speed;
  readonly to: Speed;
  readonly start: SettledStart;
}

type Range = Pick<SettledRange, 'from' | 'to'>;

/** The range that is compared: that of the options, or the one that all pulls share without their start. */
export function comparedRange(
  setUps: readonly SetUp[],
  { engineSpeed }: CompareOptions,
  { step, bandwidth, settled, leaveOut }: ResolvedOptions,
): SettledRange {
  const [from, to] =
    engineSpeed?.map(asSpeed) ??
    commonRange(
      setUps.flatMap(({ pulls }) => pulls),
      step,
    );
  // A pull that was left out by hand does not shorten the range of the others.
  const counting = setUps.flatMap(({ name, pulls }) =>
    pulls.filter((pull) => !Object.hasOwn(leaveOut, `${name}/${pull.name}`)),
  );
  return settledRange(counting, { from, to, step, bandwidth, settled, isGiven: engineSpeed !== undefined });
}

/** A pull that still builds up boost at its start, and until which speed. */
interface Building {
  readonly pull: string;
  readonly role: ChannelRole;
  readonly until: Speed;
}

/**
 * Where the range begins once the pressure of every pull has built up: one cut for all pulls of both sides, the latest, and by half the
 * averaging window more, so that no average reaches into the start. A range that the user gave is only cut on demand.
 */
function settledRange(pulls: readonly Pull[], asked: AskedRange): SettledRange {
  const together = settledTogether(pulls, PRESSURES);
  const building = buildingPulls(together);
  const isDown = together.direction === 'down';
  const last = latestOf(building, isDown);
  const notTold = notToldLines(together, pulls.length);
  const range = (cut: Range, lines: readonly string[], more: Partial<SettledStart> = {}): SettledRange => ({
    ...cut,
    start: {
      isCut: false,
      until: last?.until,
      pull: last?.pull,
      building: [],
      stillBuilding: [],
      ...more,
      remarks: [...lines, ...notTold],
    },
  });
  const whole = { from: asked.from, to: asked.to };
  if (together.direction === 'both ways') {
    return range(whole, ['The pulls go both ways in engine speed, so they share no start, and none is cut off.']);
  }
  if (last === undefined) {
    const isNews = notTold.length === 0 && (!asked.isGiven || asked.settled === 'cut');
    return range(whole, isNews ? ['No pull shows boost still building up at its start, so nothing is cut off.'] : []);
  }
  const cut = cutAt(last.until, isDown, asked);
  if (cut.from.si <= asked.from.si && cut.to.si >= asked.to.si) return range(whole, []);
  const words = `${roleWords(last.role)} of ${last.pull} still builds up until ${rpm(last.until)}, the latest of ${counted(pulls.length, 'pull')}`;
  const { stillBuilding } = together;
  const still =
    stillBuilding.length === 0
      ? []
      : [
          `After that, pressure is still lower than in the other pulls of the set-up in ${listed(stillBuilding)}: look there.`,
        ];
  const kept = (line: string): SettledRange => {
    const inRange = building.filter(({ until }) => reaches(until, isDown, asked)).map(({ pull }) => pull);
    return range(whole, [line, ...still], { building: inRange, stillBuilding });
  };
  if (asked.settled === 'leave in') return kept(`The start of the pulls is left in, as asked: ${words}.`);
  if (asked.isGiven && asked.settled === undefined) {
    const begins = isDown ? `end at ${rpm(cut.to)}` : `begin at ${rpm(cut.from)}`;
    return kept(`The range given is kept, but its start is not settled: ${words}; settled: 'cut' would ${begins}.`);
  }
  const left = cut.to.si - cut.from.si;
  const asIs = speedRange(asked.from, asked.to);
  if (asked.settled === 'cut' && !(left >= asked.step.si)) throw nothingLeft(words, asIs);
  if (asked.settled === undefined && left < LEAST_LEFT * (asked.to.si - asked.from.si)) {
    return kept(
      `The start is not cut off, since that would leave less than half of ${asIs}: ${words}. Look at that pull, or give engineSpeed.`,
    );
  }
  const averaged = asked.bandwidth.si > 0 ? `, and readings are averaged over ${rpm(asked.bandwidth)}` : '';
  const line = `Compared from ${speedRange(cut.from, cut.to)} and not from ${asIs}, one cut for all pulls: ${words}${averaged}.`;
  return range(cut, [line, ...still], { isCut: true, stillBuilding });
}

/** The pull that settles last: at the highest speed on the way up, at the lowest on the way down. */
function latestOf(building: readonly Building[], isDown: boolean): Building | undefined {
  const [first, ...rest] = building;
  const later = (one: Building, other: Building): boolean =>
    isDown ? one.until.si < other.until.si : one.until.si > other.until.si;
  return first && rest.reduce((latest, one) => (later(one, latest) ? one : latest), first);
}

function buildingPulls({ each }: SettledTogether): Building[] {
  return each.flatMap(({ pull, settled }) =>
    settled.moving > 0 && settled.from && settled.engineSpeed && settled.role
      ? [{ pull, role: settled.role, until: settled.engineSpeed }]
      : [],
  );
}

/** The range without the start, at speeds that the grid has. */
function cutAt(until: Speed, isDown: boolean, { from, to, step, bandwidth }: AskedRange): Range {
  const [first, last, each] = [from.in('rpm'), to.in('rpm'), step.in('rpm')];
  const half = bandwidth.in('rpm') / 2;
  const settled = until.in('rpm') + (isDown ? -half : half);
  const steps = (settled - first) / each;
  const at = (count: number): Speed => rotationalSpeed(first + each * count, 'rpm');
  if (isDown) return settled >= last ? { from, to } : { from, to: at(Math.floor(steps + 1e-9)) };
  return settled <= first ? { from, to } : { from: at(Math.ceil(steps - 1e-9)), to };
}

/** Whether a start reaches into the range, or into the average at its first speed. */
function reaches(until: Speed, isDown: boolean, { from, to, bandwidth }: AskedRange): boolean {
  const half = bandwidth.si / 2;
  return isDown ? until.si - half < to.si : until.si + half > from.si;
}

/** Why some pulls, or all, do not tell where they have settled. */
function notToldLines({ each }: SettledTogether, all: number): string[] {
  const reasons = new Map<string, string[]>();
  for (const { pull, settled } of each) {
    const reason = settled.fromRow === undefined ? settled.reason : settled.from ? undefined : 'It has no times.';
    if (reason !== undefined) reasons.set(reason, [...(reasons.get(reason) ?? []), pull]);
  }
  const silent = [...reasons.values()].flat().length;
  if (silent === 0) return [];
  const why = [...reasons].map(([reason, names]) =>
    names.length === all ? reason : `${names[0]}${names.length > 1 ? ` and ${names.length - 1} more` : ''}: ${reason}`,
  );
  const kept = silent === all ? 'no start is cut off' : 'they do not count for where the start is over';
  const who = silent === all ? 'any pull' : `${silent} of ${counted(all, 'pull')}`;
  return [`Where pressure has built up cannot be told in ${who}, so ${kept}. ${why.join(' ')}`];
}

function nothingLeft(words: string, range: string): CalculationError {
  const mend = "Give a wider engineSpeed, leave that pull out, or write settled: 'leave in'.";
  return new CalculationError('compare', [
    { code: 'impossible', input: 'settled', need: `a start that leaves some of ${range}`, got: words, mend },
  ]);
}

const rpm = (speed: Speed): string => `${decimals(speed.in('rpm'), 0)} rpm`;
