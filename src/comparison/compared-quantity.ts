import { CalculationError } from '../units/index.js';
import type { Pull } from '../sweep/index.js';
import { comparable } from './curves.js';
import { KIND_OF_COMPARED, type CompareOptions, type ResolvedOptions } from './options.js';
import type { ComparedQuantity } from './result.js';
import { listed } from './words.js';

/** What the pulls are compared by: what was asked for, else the first that every pull has a channel for. */
export function chosenQuantity(
  pulls: readonly Pull[],
  options: CompareOptions,
  { worthwhile }: ResolvedOptions,
): ComparedQuantity {
  const possible = comparable(pulls);
  const wanted =
    options.compare ??
    possible.find((one) => worthwhile === undefined || KIND_OF_COMPARED[one] === worthwhile.kind) ??
    possible[0];
  if (wanted === undefined || !possible.includes(wanted)) {
    const got = [
      possible.length > 0 ? `channels for ${listed(possible)} only` : 'pulls without torque, power or air flow',
      ...lacking(pulls),
    ].join('; ');
    throw new CalculationError('compare', [
      {
        code: 'missing',
        input: 'compare',
        need: 'something that every pull has a channel for',
        got,
        mend: 'Say which column is torque or air flow: channels: { torque: channel(...) }.',
      },
    ]);
  }
  if (worthwhile !== undefined && worthwhile.kind !== KIND_OF_COMPARED[wanted]) {
    throw new CalculationError('compare', [
      {
        code: 'kind',
        input: 'worthwhile',
        need: `a ${KIND_OF_COMPARED[wanted]}, being compared by ${wanted}`,
        got: [`a ${worthwhile.kind}`, ...lacking(pulls)].join('; '),
        mend: '',
      },
    ]);
  }
  return wanted;
}

/** Pulls without torque or power among others that have it. */
export function lacking(pulls: readonly Pull[]): string[] {
  const without = pulls.filter(({ channels }) => !channels.torque && !channels.power);
  if (without.length === 0 || without.length === pulls.length) return [];
  return [`no torque or power in ${listed(without.map((pull) => pull.file))}`];
}
