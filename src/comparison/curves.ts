import { commonPractice, calculation, input, output } from '../calculation/index.js';
import type { Column, Quantity } from '../units/index.js';
import type { ChannelRole, Channels, SpeedGrid } from '../sweep/index.js';
import { powerFromTorque } from '../engine/index.js';
import type { ComparedQuantity } from './result.js';

/** A pull on the grid of the comparison: every channel averaged around each engine speed. */
export type GriddedPull = Pick<SpeedGrid, 'engineSpeed' | 'channels' | 'powerFrom' | 'remarks'>;

/** Air that the engine takes in one cycle: what a comparison without torque has to go by. */
export const airPerCycle = calculation({
  name: 'air per cycle',
  task: 'describe the engine',
  inputs: {
    /** Mass flow of the air. */
    airFlow: input('m', 'mass flow', { min: 0, max: 5, typical: 0.15 }),
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', { min: 1, max: 400, typical: 100 }),
    /** Revolutions in one cycle: 2 for a four-stroke engine, 1 for a two-stroke one. */
    revolutionsPerCycle: input('nR', 'ratio', { min: 1, max: 2, typical: 2 }),
  },
  output: output('ma', 'mass', 'g'),
  formula: 'm * nR / n',
  si: (m, n, nR) => (m * nR) / n,
  rises: ['m', 'nR'],
  falls: ['n'],
  sources: [commonPractice('mass flow over the number of cycles in a second')],
});

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
export function comparedCurve(
  compared: ComparedQuantity,
  grid: GriddedPull,
  revolutionsPerCycle: Quantity<'ratio'>,
): Column {
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
      return airPerCycle.columns({ airFlow: channels.airFlow!, engineSpeed, revolutionsPerCycle });
  }
}
