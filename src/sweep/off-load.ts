import { time, type Quantity } from '../units/index.js';
import { NO_NOTES, quantityOf } from '../units/internal.js';
import { medianOf } from '../statistics/signal/index.js';
import type { Pull } from './pull.js';
import type { ChannelRole } from './roles.js';
import { timeBaseOf } from './time-base.js';

/** A stretch within a pull in which the engine made no load: a lift of the throttle, a missed gear, or a channel that dropped out. */
export interface OffLoad {
  readonly role: ChannelRole;
  readonly fromRow: number;
  readonly toRow: number;
  /** How long it lasted; undefined without times. */
  readonly duration: Quantity<'time'> | undefined;
  readonly lowest: Quantity;
  /** Engine speed where it began. */
  readonly engineSpeed: Quantity<'rotational speed'>;
  /** How far engine speed fell back in it; 0 where it did not. */
  readonly fallsBackBy: Quantity<'rotational speed'>;
}

/** Below this share of the pull's middle load it is none: no torque curve at full load falls so far within a pull. */
const NO_LOAD = 0.25;
/** From this share on it is load again. */
const LOAD = 0.5;

/** Where a pull lost its load and took it up again, between two engine speeds in 1/s; what is before the first load or after the last is no lift. */
export function offLoadIn(pull: Pull, from: number, to: number): OffLoad[] {
  const { torque, power, engineSpeed } = pull.channels;
  const column = torque ?? power;
  if (column === undefined || engineSpeed === undefined) return [];
  const { si } = column;
  const low = lowRows(si);
  if (low === undefined) return [];
  const { step } = timeBaseOf(pull.channels);
  const found: OffLoad[] = [];
  let before = false;
  for (let row = 0; row < si.length; row++) {
    if (si[row]! >= low.load) before = true;
    if (!before || !(si[row]! < low.noLoad)) continue;
    const start = row;
    let end = row;
    while (row + 1 < si.length && !(si[row + 1]! >= low.noLoad)) {
      row++;
      if (!Number.isNaN(si[row]!)) end = row;
    }
    if (!si.subarray(end).some((each) => each >= low.load)) break;
    const speeds = engineSpeed.si.subarray(Math.max(0, start - 1), end + 2).filter((each) => !Number.isNaN(each));
    const [first] = speeds;
    if (first === undefined || first < from || first > to) continue;
    found.push({
      role: torque ? 'torque' : 'power',
      fromRow: start,
      toRow: end,
      duration: step === undefined ? undefined : time((end - start + 1) * step, 's'),
      lowest: quantityOf(column.kind, lowestOf(si.subarray(start, end + 1)), column.unit, undefined, NO_NOTES),
      engineSpeed: quantityOf('rotational speed', first, 'rpm', undefined, NO_NOTES),
      fallsBackBy: quantityOf('rotational speed', fallOf(speeds), 'rpm', undefined, NO_NOTES),
    });
  }
  return found;
}

/** What counts as no load, and as load again; undefined where the channel never falls so low, which nearly all do not. */
function lowRows(si: Float64Array): { readonly noLoad: number; readonly load: number } | undefined {
  const lowest = lowestOf(si);
  const middle = medianOf(si.length > 1000 ? si.filter((_, row) => row % 10 === 0) : si) ?? 0;
  if (!(middle > 0) || !(lowest < NO_LOAD * middle)) return undefined;
  return { noLoad: NO_LOAD * middle, load: LOAD * middle };
}

function lowestOf(si: Float64Array): number {
  let lowest = Infinity;
  for (let row = 0; row < si.length; row++) if (si[row]! < lowest) lowest = si[row]!;
  return lowest;
}

/** The largest fall of a speed from the highest before it. */
function fallOf(speeds: Float64Array): number {
  let highest = -Infinity;
  let fall = 0;
  for (const speed of speeds) {
    highest = Math.max(highest, speed);
    fall = Math.max(fall, highest - speed);
  }
  return fall;
}
