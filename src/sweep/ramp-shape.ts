import { rotationalAcceleration, rotationalSpeed, time, type Quantity } from '../units/index.js';
import { medianOf, quantileOf, straightLine } from '../statistics/signal/index.js';
import { rampOf, type RampDirection } from './ramp.js';
import type { TimeBase } from './time-base.js';

/** A stretch over which engine speed is held. */
export interface Dwell {
  readonly engineSpeed: Quantity<'rotational speed'>;
  /** Since the first row. */
  readonly start: Quantity<'time'>;
  readonly duration: Quantity<'time'>;
  readonly fromRow: number;
  readonly toRow: number;
}

/** How engine speed runs through a pull. */
export interface RampShape {
  /** `ramp`: it sweeps; `stepped`: it is held at several speeds; `steady`: it hardly moves. */
  readonly kind: 'ramp' | 'stepped' | 'steady';
  readonly direction: RampDirection;
  /** Mean rate along the ramp, below zero on the way down; undefined without times. */
  readonly rate: Quantity<'rotational acceleration'> | undefined;
  /** Standard deviation of the rate from half second to half second, dwells left out. */
  readonly rateSpread: Quantity<'rotational acceleration'> | undefined;
  /** Rows left out because speed steps back there. */
  readonly backSteps: number;
  /** The furthest that speed falls back behind the ramp. */
  readonly largestBackStep: Quantity<'rotational speed'> | undefined;
  readonly dwells: readonly Dwell[];
  /** Rows of the longest ramp the other way. */
  readonly otherWay: number;
  readonly from: Quantity<'rotational speed'>;
  readonly to: Quantity<'rotational speed'>;
}

/** Seconds over which a rate is taken. */
const RATE_WINDOW = 0.5;
/** A dwell is slower than this share of the fast parts, for at least so many seconds. */
const DWELL_SHARE = 0.15;
const SHORTEST_DWELL = 0.7;
const STEPPED_DWELLS = 3;
const STEPPED_SHARE = 0.3;
/** Speed that stays within this share of itself is held, not swept. */
const STEADY_SHARE = 0.04;

/** How engine speed runs through some rows: undefined where none has an engine speed. */
export function rampShapeOf(speeds: Float64Array, { seconds, step }: TimeBase): RampShape | undefined {
  const ramp = rampOf(speeds);
  if (ramp.rows.length === 0) return undefined;
  const [low, high] = [speeds[ramp.rows[0]!]!, speeds[ramp.rows[ramp.rows.length - 1]!]!];
  const rates = seconds === undefined || step === undefined ? undefined : localRates(speeds, seconds, step);
  const fast = rates === undefined ? undefined : quantileOf(rates.map(Math.abs), 0.9);
  const steady = high - low < STEADY_SHARE * high;
  const dwells =
    rates === undefined || seconds === undefined || fast === undefined || steady
      ? []
      : dwellsOf(speeds, seconds, rates, DWELL_SHARE * fast);
  const total = seconds === undefined ? 0 : seconds[seconds.length - 1]!;
  const held = dwells.reduce((sum, { duration }) => sum + duration.si, 0);
  const stepped = dwells.length >= STEPPED_DWELLS && held > STEPPED_SHARE * total;
  const line = seconds === undefined ? undefined : rampLine(speeds, seconds, ramp.rows);
  const moving = rates?.filter((_, row) => !dwells.some(({ fromRow, toRow }) => row >= fromRow && row <= toRow));
  return {
    kind: steady ? 'steady' : stepped ? 'stepped' : 'ramp',
    direction: ramp.direction,
    rate: line === undefined ? undefined : rotationalAcceleration(line * 60, 'rpm/s'),
    rateSpread: moving === undefined ? undefined : spreadOf(moving, ramp.direction),
    backSteps: ramp.backSteps,
    largestBackStep: ramp.backSteps === 0 ? undefined : largestBackStep(speeds, ramp.rows, ramp.direction),
    dwells,
    otherWay: ramp.otherWay,
    from: rotationalSpeed(low * 60, 'rpm'),
    to: rotationalSpeed(high * 60, 'rpm'),
  };
}

function rampLine(speeds: Float64Array, seconds: Float64Array, rows: Int32Array): number | undefined {
  const inTime = Int32Array.from(rows).sort();
  return straightLine(
    Float64Array.from(inTime, (row) => seconds[row]!),
    Float64Array.from(inTime, (row) => speeds[row]!),
  )?.slope;
}

/** Rate about each row, over half a second or three rows; NaN where speed is blank. */
function localRates(speeds: Float64Array, seconds: Float64Array, step: number): Float64Array {
  const half = Math.max(1, Math.round(RATE_WINDOW / step / 2));
  const rows = speeds.length;
  // Sums up to each row make every window cost the same; about the middle of the pull, so that they stay small.
  const [middle, level] = [seconds[rows >> 1]!, medianOf(speeds) ?? 0];
  const [n, t, v, tt, tv] = Array.from({ length: 5 }, () => new Float64Array(rows + 1)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (let row = 0; row < rows; row++) {
    const isBlank = Number.isNaN(speeds[row]!);
    const x = isBlank ? 0 : seconds[row]! - middle;
    const y = isBlank ? 0 : speeds[row]! - level;
    n[row + 1] = n[row]! + (isBlank ? 0 : 1);
    t[row + 1] = t[row]! + x;
    v[row + 1] = v[row]! + y;
    tt[row + 1] = tt[row]! + x * x;
    tv[row + 1] = tv[row]! + x * y;
  }
  return speeds.map((speed, row) => {
    if (Number.isNaN(speed)) return NaN;
    const [from, to] = [Math.max(0, row - half), Math.min(rows, row + half + 1)];
    const over = (sums: Float64Array): number => sums[to]! - sums[from]!;
    const count = over(n);
    const spread = over(tt) - (over(t) * over(t)) / count;
    return count < 2 || !(spread > 0) ? NaN : (over(tv) - (over(t) * over(v)) / count) / spread;
  });
}

/** Rates of the way the ramp goes: at turning points they are those of neither. */
function spreadOf(rates: Float64Array, direction: RampDirection): Quantity<'rotational acceleration'> | undefined {
  const own = rates.filter((rate) => (direction === 'up' ? rate > 0 : rate < 0));
  if (own.length < 3) return undefined;
  const mean = own.reduce((sum, rate) => sum + rate, 0) / own.length;
  const squares = own.reduce((sum, rate) => sum + (rate - mean) ** 2, 0);
  return rotationalAcceleration(Math.sqrt(squares / (own.length - 1)) * 60, 'rpm/s');
}

function dwellsOf(speeds: Float64Array, seconds: Float64Array, rates: Float64Array, slow: number): Dwell[] {
  const found: Dwell[] = [];
  for (let row = 0; row < rates.length; row++) {
    if (!(Math.abs(rates[row]!) < slow)) continue;
    let end = row;
    while (end + 1 < rates.length && !(Math.abs(rates[end + 1]!) >= slow)) end++;
    const duration = seconds[end]! - seconds[row]!;
    if (duration >= SHORTEST_DWELL) {
      const held = speeds.slice(row, end + 1).filter((speed) => !Number.isNaN(speed));
      found.push({
        engineSpeed: rotationalSpeed((held.reduce((sum, speed) => sum + speed, 0) / held.length) * 60, 'rpm'),
        start: time(seconds[row]!, 's'),
        duration: time(duration, 's'),
        fromRow: row,
        toRow: end,
      });
    }
    row = end;
  }
  return found;
}

function largestBackStep(
  speeds: Float64Array,
  rows: Int32Array,
  direction: RampDirection,
): Quantity<'rotational speed'> {
  const kept = new Set(rows);
  const sign = direction === 'up' ? 1 : -1;
  let reached = -Infinity;
  let largest = 0;
  speeds.forEach((speed, row) => {
    if (Number.isNaN(speed)) return;
    if (kept.has(row)) reached = Math.max(reached, sign * speed);
    // A row above the ramp is a false reading, and not a step back.
    else largest = Math.max(largest, reached - sign * speed);
  });
  return rotationalSpeed(largest * 60, 'rpm');
}
