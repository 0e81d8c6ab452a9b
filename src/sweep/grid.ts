import { CalculationError, rotationalSpeed, type Column, type Problem, type Quantity } from '../units/index.js';
import { columnOf, describe, NO_NOTES } from '../units/internal.js';
import { powerFromTorque } from '../engine/index.js';
import { medianOf } from '../statistics/signal/index.js';
import type { Pull } from './pull.js';
import { rampOf, type Ramp, type RampDirection } from './ramp.js';
import { effectiveRows, resample } from './resample.js';
import { roleWords, type Channels, type ChannelRole } from './roles.js';
import { counted, figure } from './words-for-people.js';

/** An engine speed: a quantity, or a bare number of revolutions a minute. */
export type EngineSpeed = number | Quantity<'rotational speed'>;

/** The grid, and how a pull is brought to it. Use the same for every pull that is compared. */
export interface GridOptions {
  readonly from: EngineSpeed;
  readonly to: EngineSpeed;
  readonly step: EngineSpeed;
  /** Whole width of the window over which each channel is averaged; 0 or left out for straight lines between rows. */
  readonly bandwidth?: EngineSpeed | undefined;
  /** Widest gap between readings that is bridged; 300 rpm when left out. */
  readonly maximumGap?: EngineSpeed | undefined;
  /** Which way the pull goes; seen from the pull when left out. */
  readonly ramp?: RampDirection | undefined;
}

/** A pull on a grid of engine speeds: its channels at those speeds, and what became of its rows. */
export interface SpeedGrid {
  /** Name of the pull. */
  readonly pull: string;
  readonly setup: string | undefined;
  readonly engineSpeed: Column<'rotational speed'>;
  /** Every channel but engine speed, at each speed of the grid; missing where the pull does not reach. */
  readonly channels: Omit<Channels, 'engineSpeed'>;
  /** Whether power was logged, or made from torque and engine speed row by row. */
  readonly powerFrom: 'logged' | 'torque and engine speed' | undefined;
  readonly bandwidth: Quantity<'rotational speed'>;
  /** Rows that each speed rests on: so many independent ones would have its scatter. Missing where the pull does not reach. */
  readonly effectiveRows: Column<'ratio'>;
  readonly direction: RampDirection;
  /** Lowest and highest speed of the rows used. */
  readonly covered: readonly [from: Quantity<'rotational speed'>, to: Quantity<'rotational speed'>];
  readonly rowsUsed: number;
  /** Rows left out because engine speed steps back there. */
  readonly backSteps: number;
  readonly rowsWithoutEngineSpeed: number;
  /** Speeds of the grid that the pull does not cover. */
  readonly uncovered: number;
  /** What a reader should know, such as a second ramp in the pull. */
  readonly remarks: readonly string[];
  /** What became of the rows, in words. */
  toString(): string;
}

const INSPECT = Symbol.for('nodejs.util.inspect.custom');
const MOST_SPEEDS = 20000;
const USUAL_GAP = 300;

class SpeedGridValue implements SpeedGrid {
  readonly pull;
  readonly setup;
  readonly engineSpeed;
  readonly channels;
  readonly powerFrom;
  readonly bandwidth;
  readonly effectiveRows;
  readonly direction;
  readonly covered;
  readonly rowsUsed;
  readonly backSteps;
  readonly rowsWithoutEngineSpeed;
  readonly uncovered;
  readonly remarks;

  constructor(parts: Omit<SpeedGrid, 'toString'>) {
    this.pull = parts.pull;
    this.setup = parts.setup;
    this.engineSpeed = parts.engineSpeed;
    this.channels = parts.channels;
    this.powerFrom = parts.powerFrom;
    this.bandwidth = parts.bandwidth;
    this.effectiveRows = parts.effectiveRows;
    this.direction = parts.direction;
    this.covered = parts.covered;
    this.rowsUsed = parts.rowsUsed;
    this.backSteps = parts.backSteps;
    this.rowsWithoutEngineSpeed = parts.rowsWithoutEngineSpeed;
    this.uncovered = parts.uncovered;
    this.remarks = parts.remarks;
  }

  toString(): string {
    const { engineSpeed, bandwidth, covered, powerFrom } = this;
    const [first, last] = [engineSpeed.si[0]!, engineSpeed.si[engineSpeed.length - 1]!].map((si) =>
      figure(si * 60),
    ) as [string, string];
    const each = medianOf(this.effectiveRows.si);
    const rest = each === undefined ? '' : `, about ${counted(Math.round(each), 'row')} each`;
    const way = bandwidth.si > 0 ? `averaged over ${figure(bandwidth.si * 60)} rpm${rest}` : 'interpolated';
    const lost = [
      this.backSteps > 0 ? `${counted(this.backSteps, 'back-step')} left out` : '',
      this.rowsWithoutEngineSpeed > 0 ? `${counted(this.rowsWithoutEngineSpeed, 'row')} without engine speed` : '',
      this.uncovered > 0 ? `${counted(this.uncovered, 'speed')} not covered` : '',
    ].filter((text) => text !== '');
    const made = powerFrom === 'torque and engine speed' ? '; power from torque and engine speed' : '';
    const rows = `${counted(this.rowsUsed, 'row')}, ${this.direction} from ${covered.map(({ si }) => figure(si * 60)).join(' to ')} rpm`;
    const remarks = this.remarks.map((remark) => `\n  note: ${remark}`).join('');
    return `${this.pull} at ${counted(engineSpeed.length, 'engine speed')}, ${first} to ${last} rpm, ${way} (${[rows, ...lost].join(', ')})${made}${remarks}`;
  }

  /** @internal */
  [INSPECT](): string {
    return this.toString();
  }
}

/**
 * Puts a pull on a grid of engine speeds, so that pulls can be laid over one another.
 *
 * Rows where engine speed steps back are left out and counted. Each channel is then averaged in a window around each speed, or, without
 * a bandwidth, taken from the straight line between neighbouring rows. Power is made from torque and engine speed where it was not logged.
 *
 * @returns The channels at the speeds of the grid. Speeds the pull does not cover are missing, never extrapolated.
 * @throws CalculationError if the grid is impossible.
 * @example
 * onGrid(pull, { from: 3000, to: 6500, step: 50, bandwidth: 150 }).channels.torque
 */
export function onGrid(pull: Pull, options: GridOptions): SpeedGrid {
  const { from, step, count, bandwidth, maximumGap } = checkedGrid(options);
  const { engineSpeed } = pull.channels;
  if (engineSpeed === undefined) throw wrong('pull', 'a pull with engine speed', pull.name);
  const ramp = rampOf(engineSpeed.si, options.ramp);
  const speeds = takeRows(engineSpeed.si, ramp);
  const grid = Float64Array.from({ length: count }, (_, at) => (from + at * step) / 60);
  const how = { bandwidth: bandwidth / 60, maximumGap: maximumGap / 60 };
  const { channels, powerFrom } = withPower(pull.channels);
  const gridded = Object.entries(channels).map(([role, column]) => {
    const si = resample(speeds, takeRows(column.si, ramp), grid, how);
    return [
      role,
      columnOf(column.kind, si, column.unit, undefined, NO_NOTES, 0, roleWords(role as ChannelRole)),
    ] as const;
  });
  const reached = resample(speeds, speeds, grid, how);
  const [low, high] = extentOf(speeds);
  return new SpeedGridValue({
    pull: pull.name,
    setup: pull.setup,
    engineSpeed: columnOf('rotational speed', grid, 'rpm', undefined, NO_NOTES, 0, roleWords('engineSpeed')),
    channels: Object.fromEntries(gridded),
    powerFrom,
    bandwidth: rotationalSpeed(bandwidth, 'rpm'),
    effectiveRows: columnOf('ratio', effectiveRows(speeds, grid, how), '1', undefined, NO_NOTES, 0, 'effective rows'),
    direction: ramp.direction,
    covered: [low, high],
    rowsUsed: ramp.rows.length,
    backSteps: ramp.backSteps,
    rowsWithoutEngineSpeed: ramp.blanks,
    uncovered: reached.reduce((sum, speed) => sum + (Number.isNaN(speed) ? 1 : 0), 0),
    remarks: remarksOn(ramp),
  });
}

/**
 * The engine speeds that every pull covers.
 *
 * @param step Where given, the ends are brought inwards to its multiples, so that a grid starts at a round number.
 * @throws CalculationError if there is no pull, or no speed that all of them cover.
 */
export function commonRange(
  pulls: readonly Pull[],
  step?: EngineSpeed,
): readonly [from: Quantity<'rotational speed'>, to: Quantity<'rotational speed'>] {
  if (pulls.length === 0) throw wrong('pulls', 'at least one pull', 'none', 'commonRange');
  const round = step === undefined ? 0 : inRpm(step, 'step', 'commonRange');
  let [from, to] = [-Infinity, Infinity];
  let [latest, earliest] = ['', ''];
  for (const pull of pulls) {
    const { engineSpeed } = pull.channels;
    if (engineSpeed === undefined) throw wrong('pulls', 'pulls with engine speed', pull.name, 'commonRange');
    const [low, high] = extentOf(takeRows(engineSpeed.si, rampOf(engineSpeed.si))).map(({ si }) => si * 60) as [
      number,
      number,
    ];
    if (low > from) [from, latest] = [low, pull.file];
    if (high < to) [to, earliest] = [high, pull.file];
  }
  const [low, high] =
    round > 0 ? [Math.ceil(from / round - 1e-9) * round, Math.floor(to / round + 1e-9) * round] : [from, to];
  if (!(low < high)) {
    const got = `${latest} beginning at ${figure(from)} rpm and ${earliest} ending at ${figure(to)} rpm`;
    throw wrong('pulls', 'pulls that share a range of engine speed', got, 'commonRange');
  }
  return [rotationalSpeed(low, 'rpm'), rotationalSpeed(high, 'rpm')];
}

function withPower({ engineSpeed, ...channels }: Channels): Pick<SpeedGrid, 'channels' | 'powerFrom'> {
  if (channels.power !== undefined) return { channels, powerFrom: 'logged' };
  if (channels.torque === undefined || engineSpeed === undefined) return { channels, powerFrom: undefined };
  const power = powerFromTorque.columns({ torque: channels.torque, engineSpeed }, { badRows: 'missing' });
  return { channels: { ...channels, power }, powerFrom: 'torque and engine speed' };
}

/** The readings of a ramp's rows: a view where they follow one another, which is nearly always, since copies cost more than averaging. */
function takeRows(si: Float64Array, { rows }: Ramp): Float64Array {
  const first = rows[0] ?? 0;
  if (rows.length > 0 && rows[rows.length - 1]! - first === rows.length - 1) {
    return si.subarray(first, first + rows.length);
  }
  // A loop, since Float64Array.from walks an iterator.
  const taken = new Float64Array(rows.length);
  for (let at = 0; at < rows.length; at++) taken[at] = si[rows[at]!]!;
  return taken;
}

function extentOf(speeds: Float64Array): readonly [Quantity<'rotational speed'>, Quantity<'rotational speed'>] {
  if (speeds.length === 0) throw wrong('pull', 'a pull with engine speed', 'blank cells only');
  return [rotationalSpeed(speeds[0]! * 60, 'rpm'), rotationalSpeed(speeds[speeds.length - 1]! * 60, 'rpm')];
}

function remarksOn({ rows, backSteps, otherWay, direction }: Ramp): string[] {
  const all = rows.length + backSteps;
  const remarks: string[] = [];
  if (backSteps > all / 10) {
    remarks.push(`engine speed steps back in ${backSteps} of ${all} rows: is this one pull?`);
  }
  if (otherWay > all / 3) {
    const other = direction === 'up' ? 'down' : 'up';
    remarks.push(
      `the log also goes ${other} for ${counted(otherWay, 'row')}, which are not used. For those, give ramp: '${other}'.`,
    );
  }
  return remarks;
}

interface CheckedGrid {
  readonly from: number;
  readonly step: number;
  readonly count: number;
  readonly bandwidth: number;
  readonly maximumGap: number;
}

function checkedGrid(options: GridOptions): CheckedGrid {
  const from = inRpm(options.from, 'from');
  const to = inRpm(options.to, 'to');
  const step = inRpm(options.step, 'step');
  const bandwidth = inRpm(options.bandwidth ?? 0, 'bandwidth');
  const maximumGap = inRpm(options.maximumGap ?? USUAL_GAP, 'maximumGap');
  if (!(step > 0)) throw wrong('step', 'above zero', `${figure(step)} rpm`);
  if (!(from < to)) throw wrong('to', `above from, ${figure(from)} rpm`, `${figure(to)} rpm`);
  const count = Math.floor((to - from) / step + 1e-9) + 1;
  if (count > MOST_SPEEDS)
    throw wrong('step', `large enough for at most ${MOST_SPEEDS} speeds`, `${figure(step)} rpm, which makes ${count}`);
  return { from, step, count, bandwidth, maximumGap };
}

/** @internal An engine speed in rpm. */
export function inRpm(speed: EngineSpeed, input: string, caller?: string): number {
  const rpm = typeof speed === 'number' ? speed : speed?.kind === 'rotational speed' ? speed.si * 60 : NaN;
  if (rpm >= 0 && rpm < Infinity) return rpm;
  throw wrong(
    input,
    'an engine speed of at least zero, as a number of rpm or rotationalSpeed(value, unit)',
    describe(speed),
    caller,
  );
}

function wrong(input: string, need: string, got: string, caller = 'onGrid'): CalculationError {
  const problem: Problem = { code: 'impossible', input, need, got, mend: '' };
  return new CalculationError(caller, [problem]);
}
