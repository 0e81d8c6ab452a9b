import { differenceKind, type Quantity } from '../units/index.js';
import { differenceUnit, NO_NOTES, quantityOf } from '../units/internal.js';
import { oscillationOf } from '../statistics/signal/index.js';
import { evenSignal, realReadings } from './even-rows.js';
import type { Pull } from './pull.js';
import type { RampShape } from './ramp-shape.js';
import type { ChannelRole } from './roles.js';
import type { TimeBase } from './time-base.js';

/** An oscillation of a channel in the settled part of a pull. */
export interface ChannelOscillation {
  readonly role: ChannelRole;
  /** Cycles a second. */
  readonly frequency: number;
  /** Cycles in a thousand rpm of the ramp; undefined where speed hardly moves. What stays the same from ramp rate to ramp rate tells resonance from hunting. */
  readonly cyclesPer1000Rpm: number | undefined;
  /** So much either way: of a sine of the same power. */
  readonly amplitude: Quantity;
  readonly cycles: number;
  /** Chance of such a peak in a channel without oscillation. */
  readonly p: number;
}

/** Cycles a second beyond which a pull's log shows more of its sensors than of boost control. */
const HIGHEST = 10;
const FEWEST_SAMPLES = 24;
/** Blanks of half a second are bridged: about the half cycle of the slowest hunting. */
const LONGEST_GAP = 0.5;

/** The strongest oscillation of a channel from a row on; undefined where none stands out, or where rows cannot show one. */
export function channelOscillation(
  pull: Pull,
  role: ChannelRole,
  base: TimeBase,
  ramp: RampShape | undefined,
  fromRow: number,
): ChannelOscillation | undefined {
  const column = pull.channels[role];
  if (column === undefined) return undefined;
  if (base.step === undefined) return undefined;
  const { si, every } = realReadings(column.si, fromRow);
  const own = every * base.step;
  // At its own cadence a polled channel shows what it holds; at that of the rows it would show the steps between its readings too.
  const signal = evenSignal(si, { ...base, step: own }, fromRow, Math.max(LONGEST_GAP, 2 * own));
  if (signal === undefined || signal.values.length < FEWEST_SAMPLES) return undefined;
  const { values, step } = signal;
  const range = [3 / (values.length * step), Math.min(HIGHEST, 0.4 / step)] as const;
  if (!(range[1] > range[0]) || values.every((value) => value === values[0])) return undefined;
  const found = oscillationOf(values, step, { to: range[1] });
  if (found === undefined) return undefined;
  const rate = Math.abs(ramp?.rate?.si ?? 0) * 60;
  const kind = differenceKind(column.kind);
  return {
    role,
    frequency: found.frequency,
    cyclesPer1000Rpm: ramp?.kind === 'ramp' && rate > 0 ? (1000 * found.frequency) / rate : undefined,
    amplitude: quantityOf(kind, found.amplitude, differenceUnit(column), undefined, NO_NOTES),
    cycles: found.cycles,
    p: found.p,
  };
}
