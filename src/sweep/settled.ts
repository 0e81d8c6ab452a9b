import { rotationalSpeed, time, type Quantity } from '../units/index.js';
import { buildUp, fewestToSettle, lineAt, straightLine } from '../statistics/signal/index.js';
import type { Pull } from './pull.js';
import { rampOf, type RampDirection } from './ramp.js';
import { roleWords, type ChannelRole } from './roles.js';
import { timeBaseOf, type TimeBase } from './time-base.js';
import { counted, figure, quoted } from './words-for-people.js';

/** Where the start of a pull is over. */
export interface Settled {
  /** First row of the settled part; undefined where none was found. */
  readonly fromRow: number | undefined;
  /** Since the first row. */
  readonly from: Quantity<'time'> | undefined;
  readonly engineSpeed: Quantity<'rotational speed'> | undefined;
  /** Readings before it that still moved; 0 where the pull shows no transient. */
  readonly moving: number;
  /** The channel that showed it. */
  readonly role: ChannelRole | undefined;
  /** Why there, or why nowhere. */
  readonly reason: string;
}

/** Pressure settles last, so it is asked first. */
const SETTLING: readonly ChannelRole[] = ['boost', 'manifoldPressure', 'airFlow', 'torque', 'power'];
const FEW_READINGS = 40;

/** @internal Where a pull has settled, by the first channel of a list that it has. */
export function settledOf(pull: Pull, base: TimeBase, roles: readonly ChannelRole[] = SETTLING): Settled {
  const none = { fromRow: undefined, from: undefined, engineSpeed: undefined, moving: 0 };
  const role = roles.find((each) => (pull.channels[each]?.length ?? 0) > (pull.channels[each]?.missing ?? 0));
  if (role === undefined) {
    return { ...none, role, reason: `It has none of ${roles.map(roleWords).join(', ')}, which would show it.` };
  }
  const si = pull.channels[role]!.si;
  const readings = si.length - pull.channels[role]!.missing;
  if (readings < fewestToSettle) {
    return { ...none, role, reason: `${counted(readings, 'reading')} of ${roleWords(role)} are too few to tell.` };
  }
  const { kind, row } = buildUp(base.seconds ?? rowNumbers(si.length), si);
  const words = roleWords(role);
  if (kind === 'none') {
    const reason = `The ${words} shows no transient at the start: its first readings lie no lower than the curve through the rest.`;
    return { ...placeOf(pull, base, row), moving: 0, role, reason };
  }
  if (kind === 'all along') {
    return { ...none, role, reason: `The ${words} bends all along: no end of a start was found.` };
  }
  const moving = si.subarray(0, row).reduce((count, each) => count + (Number.isNaN(each) ? 0 : 1), 0);
  return { ...placeOf(pull, base, row), moving, role, reason: reasonOf(words, readings, moving) };
}

const rowNumbers = (count: number): Float64Array => Float64Array.from({ length: count }, (_, row) => row);

function reasonOf(words: string, readings: number, moving: number): string {
  const rough = readings < FEW_READINGS ? ` With only ${readings} readings that is rough.` : '';
  return `From here one smooth curve describes the ${words}; before it, ${counted(moving, 'reading')} lay below that curve and still rose towards it.${rough}`;
}

function placeOf(
  { channels }: Pull,
  { seconds }: TimeBase,
  row: number,
): Pick<Settled, 'fromRow' | 'from' | 'engineSpeed'> {
  const speed = channels.engineSpeed?.si.subarray(row).find((si) => !Number.isNaN(si));
  return {
    fromRow: row,
    from: seconds === undefined ? undefined : time(Number(seconds[row]!.toPrecision(12)), 's'),
    engineSpeed: speed === undefined ? undefined : rotationalSpeed(speed * 60, 'rpm'),
  };
}

/** One start for all pulls of a comparison, so that none is cut differently from another. */
export interface SettledTogether {
  /** The latest that any pull needs, since its first row; undefined where none settles or one has no times. */
  readonly from: Quantity<'time'> | undefined;
  /** The highest (on the way down, lowest) engine speed at which a pull settles. */
  readonly engineSpeed: Quantity<'rotational speed'> | undefined;
  /** Which way the pulls go. */
  readonly direction: RampDirection | 'both ways';
  /** Name of the pull that sets it. */
  readonly pull: string | undefined;
  readonly each: readonly { readonly pull: string; readonly settled: Settled }[];
  /** Pulls whose pressure just after the cut is still off from that of the others at that speed. */
  readonly stillBuilding: readonly string[];
  readonly remarks: readonly string[];
}

/**
 * The settled part that all pulls of a comparison share: the latest start of all, because pulls that are cut differently cannot be
 * laid over one another.
 *
 * A slow transient can pass for a bend, so the pressure after the cut is held against that of its set-up's other pulls at the same
 * engine speed: where it is lower than later by more than three times the scatter of all, and by a hundredth, the pull is named as still building.
 *
 * @param pulls All pulls of both sides.
 * @param roles Channels that may show it, the first that a pull has; pressure first when left out.
 */
export function settledTogether(pulls: readonly Pull[], roles?: readonly ChannelRole[]): SettledTogether {
  const each = pulls.map((pull) => ({
    pull: fullName(pull),
    settled: settledOf(pull, timeBaseOf(pull.channels), roles),
  }));
  const found = each.filter(({ settled }) => settled.fromRow !== undefined);
  const latest = found.reduce<(typeof each)[number] | undefined>(
    (best, one) => ((one.settled.from?.si ?? 0) > (best?.settled.from?.si ?? -1) ? one : best),
    undefined,
  );
  const hasTimes = found.every(({ settled }) => settled.from !== undefined);
  const downs = pulls.filter(({ channels }) => channels.engineSpeed && goesDown(channels.engineSpeed.si)).length;
  const isDown = downs > 0;
  const speeds = found.flatMap(({ settled }) => settled.engineSpeed?.si ?? []);
  const speed = speeds.length === 0 ? undefined : isDown ? Math.min(...speeds) : Math.max(...speeds);
  const without = each.length - found.length;
  const from = hasTimes ? latest?.settled.from : undefined;
  const short = from === undefined ? 0 : pulls.filter((pull) => !isLongEnough(pull, from.si)).length;
  const setUps = [...new Set(pulls.map(({ setup }) => setup))];
  // Set-ups differ in pressure for good reason, so a pull is held against those of its own.
  const stillBuilding =
    speed === undefined || isDown
      ? []
      : setUps.flatMap((own) =>
          buildingAt(
            pulls.filter(({ setup }) => setup === own),
            speed,
          ),
        );
  return {
    from,
    engineSpeed: speed === undefined ? undefined : rotationalSpeed(speed * 60, 'rpm'),
    direction: !isDown ? 'up' : downs === pulls.length ? 'down' : 'both ways',
    pull: latest?.pull,
    each,
    stillBuilding,
    remarks: [
      ...(without > 0
        ? [`${counted(without, 'pull')} of ${each.length} showed no settled stretch and did not count for it.`]
        : []),
      ...(from !== undefined && short > 0
        ? [
            `The latest start, ${figure(from.si)} s in ${quoted(latest!.pull)}, leaves less than half of ${counted(short, 'pull')}: look at that pull, or choose a start by hand.`,
          ]
        : []),
      ...(stillBuilding.length > 0
        ? [`Pressure is still building after the cut in ${stillBuilding.map((name) => quoted(name)).join(', ')}.`]
        : []),
    ],
  };
}

/** Whether a pull goes down; its ramp, which takes long to find, is looked for only where its ends do not tell. */
function goesDown(speeds: Float64Array): boolean {
  let [first, last, low, high] = [NaN, NaN, Infinity, -Infinity];
  for (const speed of speeds) {
    if (Number.isNaN(speed)) continue;
    if (Number.isNaN(first)) first = speed;
    last = speed;
    if (speed < low) low = speed;
    if (speed > high) high = speed;
  }
  return last - first < 0.9 * (high - low) && rampOf(speeds).direction === 'down';
}

const fullName = ({ setup, name }: Pull): string => (setup === undefined ? name : `${setup}, ${name}`);

function isLongEnough({ channels }: Pull, from: number): boolean {
  const { seconds } = timeBaseOf(channels);
  return seconds === undefined || seconds[seconds.length - 1]! >= 2 * from;
}

const BLOCKS = 8;
const TIMES_LATER = 3;
/** A pressure that is lower by less than this share is not still building. */
const LOWER_BY_SHARE = 0.01;

/** Pulls whose pressure in the first eighth after a speed is lower, against the mean of the others, than the last four eighths scatter. */
function buildingAt(pulls: readonly Pull[], speed: number): string[] {
  const curves = pulls.flatMap((pull) => {
    const { boost, manifoldPressure, engineSpeed } = pull.channels;
    const pressure = boost ?? manifoldPressure;
    return pressure && engineSpeed ? [{ name: fullName(pull), speeds: engineSpeed.si, values: pressure.si }] : [];
  });
  if (curves.length < 3) return [];
  const top = Math.min(...curves.map(({ speeds }) => speeds.reduce((most, each) => (each > most ? each : most), 0)));
  const width = (top - speed) / BLOCKS;
  if (!(width > 0)) return [];
  const blocks = curves.map(({ speeds, values }) => {
    const inBlock = Array.from({ length: BLOCKS }, () => ({ x: [] as number[], y: [] as number[] }));
    for (let row = 0; row < speeds.length; row++) {
      const block = inBlock[Math.floor((speeds[row]! - speed) / width)];
      block?.x.push(speeds[row]!);
      block?.y.push(values[row]!);
    }
    return inBlock.map(({ x, y }, block) => {
      const line = straightLine(Float64Array.from(x), Float64Array.from(y));
      return line === undefined ? NaN : lineAt(line, speed + (block + 0.5) * width);
    });
  });
  const off = blocks.map((own, i) =>
    own.map((value, block) => {
      const others = blocks.filter((_, j) => j !== i).map((row) => row[block]!);
      return value - others.reduce((sum, each) => sum + each, 0) / others.length;
    }),
  );
  const later = off.map((row) => row.slice(BLOCKS / 2).filter((value) => !Number.isNaN(value)));
  const means = later.map((row) => row.reduce((sum, value) => sum + value, 0) / row.length);
  const squares = later.flatMap((row, i) => row.map((value) => (value - means[i]!) ** 2));
  const freedom = squares.length - curves.length;
  if (freedom < 3) return [];
  const scatter = Math.sqrt(squares.reduce((sum, each) => sum + each, 0) / freedom);
  return curves.flatMap(({ name }, i) => {
    const lower = means[i]! - off[i]![0]!;
    return lower > TIMES_LATER * scatter && lower > LOWER_BY_SHARE * Math.abs(blocks[i]![0]!) ? [name] : [];
  });
}
