import type { Kind } from '../units/index.js';
import type { ChannelRole, Channels } from '../sweep/index.js';
import { meanSi } from './factors.js';

/** Pairs of units that people mix up, and how far apart they are. */
const MIXED_UP: Readonly<Partial<Record<Kind, readonly (readonly [factor: number, slip: string])[]>>> = {
  torque: [
    [1.3558179483314004, 'N·m against lb·ft'],
    [9.80665, 'N·m against kgf·m'],
  ],
  power: [
    [1.3410220895950279, 'kW against hp'],
    [1.3596216173039043, 'kW against PS'],
  ],
  'gauge pressure': [
    [6.894757293168361, 'kPa against psi'],
    [14.503773773020923, 'bar against psi'],
    [3.386388640341, 'kPa against inHg'],
  ],
  'absolute pressure': [
    [6.894757293168361, 'kPa against psi'],
    [14.503773773020923, 'bar against psi'],
    [3.386388640341, 'kPa against inHg'],
  ],
  'mass flow': [
    [7.559872833333333, 'g/s against lb/min'],
    [3.6, 'g/s against kg/h'],
  ],
};

/** How near to a unit factor two sides may be before it is asked about. */
const NEAR = 0.05;

/** A suspicion that the two sides were logged in different units. */
export interface UnitSuspicion {
  readonly role: ChannelRole;
  readonly sentence: string;
}

/**
 * Whether the two sides of a comparison differ by a factor that is more likely a slip of units than a change to an engine. A slip of
 * units gives a narrower interval than any real gain, so it must be asked about before anything is judged. Power that was made from
 * torque has the slip of the torque.
 */
export function unitSuspicions(
  baseline: readonly Channels[],
  candidate: readonly Channels[],
  powerFromTorque: boolean,
): UnitSuspicion[] {
  const found: UnitSuspicion[] = [];
  const roles = new Set([...baseline, ...candidate].flatMap((channels) => Object.keys(channels) as ChannelRole[]));
  for (const role of roles) {
    const a = sideMean(baseline, role);
    const b = sideMean(candidate, role);
    const kind = [...baseline, ...candidate].find((channels) => channels[role])?.[role]?.kind;
    if (a === undefined || b === undefined || kind === undefined || !(a > 0 && b > 0)) continue;
    const ratio = b > a ? b / a : a / b;
    const slip = MIXED_UP[powerFromTorque && kind === 'power' ? 'torque' : kind]?.find(
      ([factor]) => Math.abs(ratio / factor - 1) < NEAR,
    );
    if (!slip) continue;
    found.push({
      role,
      sentence: `The two sets differ by ${ratio.toFixed(2)} in ${inWords(role)}, which is ${slip[1]}.`,
    });
  }
  return found;
}

function sideMean(side: readonly Channels[], role: ChannelRole): number | undefined {
  const means = side.map((channels) => meanSi(channels[role])).filter((mean) => mean !== undefined);
  return means.length === 0 ? undefined : means.reduce((sum, mean) => sum + mean, 0) / means.length;
}

function inWords(role: string): string {
  return role.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
