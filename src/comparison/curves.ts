import type { Column } from '../units/index.js';
import type { ChannelRole, Channels, SpeedGrid } from '../sweep/index.js';
import { airPerCycle, powerFromTorque } from '../engine/index.js';
import type { ComparedQuantity } from './result.js';

/** A pull on the grid of the comparison: every channel averaged around each engine speed. */
export type GriddedPull = Pick<SpeedGrid, 'engineSpeed' | 'channels' | 'powerFrom' | 'direction' | 'remarks'>;

/** What can be compared with the channels that every pull has, best first. */
export function comparable(pulls: readonly { readonly channels: Channels }[]): ComparedQuantity[] {
  const every = (role: ChannelRole): boolean =>
    pulls.length > 0 && pulls.every((pull) => pull.channels[role] !== undefined);
  const found: ComparedQuantity[] = [];
  if (every('power') || every('torque')) found.push('power', 'torque');
  if (every('airFlow')) found.push('air per cycle', 'air flow');
  return found;
}

/** The compared quantity of one pull on the grid, with how it was made. */
export function comparedCurve(compared: ComparedQuantity, grid: GriddedPull): Column {
  const { engineSpeed, channels } = grid;
  switch (compared) {
    case 'power':
      // Made on the grid from torque, power keeps its history; logged power is a reading.
      if (grid.powerFrom === 'logged') return channels.power!;
      return powerFromTorque.columns({ torque: channels.torque!, engineSpeed });
    case 'torque':
      return channels.torque!;
    case 'air flow':
      return channels.airFlow!;
    case 'air per cycle':
      return airPerCycle.columns({ airMassFlow: channels.airFlow!, engineSpeed });
  }
}
