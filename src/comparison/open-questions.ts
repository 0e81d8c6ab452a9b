import { roleWords, type ChannelRole, type QuestionCode } from '../sweep/index.js';
import type { OpenQuestion } from './result.js';
import type { TakenPull } from './taken-pull.js';
import { counted, listed } from './words.js';

/** Questions that leave open what a channel is. */
const ABOUT_A_CHANNEL: readonly QuestionCode[] = [
  'several columns',
  'gauge or absolute',
  'before or after the compressor',
  'lambda or air-fuel ratio',
  'spark before or after top dead centre',
];

/** What the logs of the pulls that count leave open about their channels, a question for each channel. */
export function openQuestionsOf(sides: readonly (readonly TakenPull[])[]): OpenQuestion[] {
  const found = new Map<ChannelRole, { readonly message: string; pulls: number }>();
  for (const { pull } of sides.flat()) {
    for (const { code, role, message } of pull.questions) {
      if (role === undefined || role === 'pull' || !ABOUT_A_CHANNEL.includes(code)) continue;
      const known = found.get(role);
      if (known) known.pulls++;
      else found.set(role, { message, pulls: 1 });
    }
  }
  return [...found].map(([role, { message, pulls }]) => {
    const sentence = `Open in ${counted(pulls, 'pull')}: ${message} Whatever is made of ${roleWords(role)} rests on that guess.`;
    return { role, pulls, sentence };
  });
}

/** Roles that a split of the change is made of: a part that is wrong goes into what is left as well. */
export const ROLES_OF_SPLIT: readonly ChannelRole[] = [
  'boost',
  'manifoldPressure',
  'chargeTemperature',
  'lambda',
  'airFuelRatio',
  'sparkAdvance',
];

/** Roles that charge density is made of. */
export const ROLES_OF_DENSITY: readonly ChannelRole[] = ['boost', 'manifoldPressure', 'chargeTemperature'];

/** Roles that the effectiveness of a core is made of. */
export const ROLES_OF_CORE: readonly ChannelRole[] = [
  'compressorOutletTemperature',
  'chargeTemperature',
  'faceTemperature',
  'roomTemperature',
];

/** Roles that the pressure loss of a core is made of. */
export const ROLES_OF_LOSS: readonly ChannelRole[] = ['compressorOutletPressure', 'boost', 'manifoldPressure'];

/** A sentence for a figure that is made of some channels: undefined where nothing is open about any of them. */
export function caveatOf(open: readonly OpenQuestion[], roles: readonly ChannelRole[]): string | undefined {
  const own = open.filter(({ role }) => roles.includes(role));
  if (own.length === 0) return undefined;
  return `Open to question: what the logs call ${listed(own.map(({ role }) => roleWords(role)))} may be something else, and this is made of it.`;
}
