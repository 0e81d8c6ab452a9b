import type { Kind } from '../units/index.js';
import type { ChannelRole, Channels } from '../sweep/index.js';
import { meanSi } from './pull-means.js';
import { sentenceCase } from './words.js';

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

/** The same for what another channel leaves of the factor. */
const NEAR_WITNESS = 0.06;

/** How far torque per air, or per fuel, may change by mixture, spark and friction. Common practice, no source. */
const PER_AIR = 0.15;

/** A suspicion that the two sides were logged in different units. */
export interface UnitSuspicion {
  readonly role: ChannelRole;
  readonly sentence: string;
  /** What else to say where it is no slip; undefined where only the units can be wrong. */
  readonly otherwise: string | undefined;
}

/** What units are asked about by, beside the channels of the two sides. */
export interface UnitChallenge {
  /** Whether power was made from torque, and so has its slip. */
  readonly powerFromTorque: boolean;
  /** Share by which charge cooling may change torque or power; beyond it other channels must agree. */
  readonly largestChange: number;
}

/** Something else that was logged and goes with torque, as candidate over baseline. */
interface Witness {
  readonly words: string;
  readonly ratio: number;
}

/**
 * Whether the two sides of a comparison differ by more than a change to the charge cooling explains, and so more likely by a slip of
 * units. A slip gives a narrower interval than any real gain, so it must be asked about before anything is judged. A slip together with
 * a gain is no unit factor any more: air flow, fuel flow or charge density, which a slip of torque leaves alone, say what is left.
 */
export function unitSuspicions(
  baseline: readonly Channels[],
  candidate: readonly Channels[],
  { powerFromTorque, largestChange }: UnitChallenge,
): UnitSuspicion[] {
  const roles = new Set([...baseline, ...candidate].flatMap((channels) => Object.keys(channels) as ChannelRole[]));
  const ratioOf = (role: ChannelRole): number | undefined => {
    const [a, b] = [sideMean(baseline, role), sideMean(candidate, role)];
    return a !== undefined && b !== undefined && a > 0 && b > 0 ? b / a : undefined;
  };
  const slipOf = (role: ChannelRole, ratio: number, near: number): string | undefined => {
    const kind = [...baseline, ...candidate].find((channels) => channels[role])?.[role]?.kind;
    const slips = kind && MIXED_UP[powerFromTorque && kind === 'power' ? 'torque' : kind];
    const off = (factor: number): number => Math.abs(apart(ratio) / factor - 1);
    const [nearest] = [...(slips ?? [])].sort(([a], [b]) => off(a) - off(b));
    return nearest && off(nearest[0]) < near ? nearest[1] : undefined;
  };
  const witness = witnessOf(ratioOf, (role, ratio) => slipOf(role, ratio, NEAR) === undefined);
  const found = [...roles].flatMap((role): UnitSuspicion[] => {
    const ratio = ratioOf(role);
    if (ratio === undefined) return [];
    const words = `The two sets differ by ${apart(ratio).toFixed(2)} in ${inWords(role)}`;
    const slip = slipOf(role, ratio, NEAR);
    if (role !== 'torque' && role !== 'power')
      return slip ? [{ role, sentence: `${words}, which is ${slip}.`, otherwise: undefined }] : [];
    const left = witness && ratio / witness.ratio;
    if (left !== undefined && apart(left) <= 1 + PER_AIR) return [];
    const beside = witness ? ` and by ${apart(witness.ratio).toFixed(2)} in ${witness.words}` : '';
    const hidden = left === undefined ? undefined : slipOf(role, left, NEAR_WITNESS);
    if (slip && (hidden === undefined || hidden === slip)) {
      const only = witness ? ` ${sentenceCase(witness.words)} differs by ${apart(witness.ratio).toFixed(2)} only.` : '';
      return [{ role, sentence: `${words}, which is ${slip}.${only}`, otherwise: undefined }];
    }
    if (hidden) {
      const sentence = `${words}${beside}: what is left is ${apart(left!).toFixed(2)}, which is ${hidden}.`;
      return [{ role, sentence, otherwise: undefined }];
    }
    if (apart(ratio) <= 1 + largestChange) return [];
    const limit = `${Number((largestChange * 100).toFixed(1))} %`;
    const sentence = `${words}${beside}, and charge cooling is taken to change it by ${limit} at most.`;
    return [{ role, sentence, otherwise: OTHERWISE }];
  });
  // Power made from torque has its slip and says nothing more.
  const isTold = powerFromTorque && found.some(({ role }) => role === 'torque');
  return isTold ? found.filter(({ role }) => role !== 'power') : found;
}

const OTHERWISE =
  'Where the set-ups differ in more than charge cooling, say how far they may: limits: { changeBetweenSetUps: 0.4 }.';

/** How many times larger one side is, whichever it is. */
const apart = (ratio: number): number => Math.max(ratio, 1 / ratio);

/** The best channel that goes with torque and was logged on both sides in units that nothing speaks against. */
function witnessOf(
  ratioOf: (role: ChannelRole) => number | undefined,
  isTrusted: (role: ChannelRole, ratio: number) => boolean,
): Witness | undefined {
  for (const role of ['airFlow', 'fuelFlow', 'fuelVolumeFlow'] as const) {
    const ratio = ratioOf(role);
    if (ratio !== undefined && isTrusted(role, ratio)) return { words: inWords(role), ratio };
  }
  const [pressure, temperature] = [ratioOf('manifoldPressure'), ratioOf('chargeTemperature')];
  if (pressure === undefined || temperature === undefined || !isTrusted('manifoldPressure', pressure)) return undefined;
  return { words: 'charge density', ratio: pressure / temperature };
}

function sideMean(side: readonly Channels[], role: ChannelRole): number | undefined {
  const means = side.map((channels) => meanSi(channels[role])).filter((mean) => mean !== undefined);
  return means.length === 0 ? undefined : means.reduce((sum, mean) => sum + mean, 0) / means.length;
}

function inWords(role: string): string {
  return role.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
