import type { CompareOptions } from '../comparison/index.js';
import { metricShop, parse, siUnits, UnitError, usShop, type Kind, type Quantity } from '../units/index.js';
import { joined, single, UsageError, type Words } from './arguments.js';

/** Takes the value of an option from the command line; undefined where it was not given. */
type Taken<T> = T | undefined;

/** What the words of a command line ask of the comparisons; what stands in an options file comes after them. */
export function compareOptionsOf(words: Words, inFile: CompareOptions): CompareOptions {
  const given: { [K in keyof CompareOptions]: Taken<CompareOptions[K]> } = {
    engineSpeed: taken(joined(words, 'range', '-'), rangeOf),
    worthwhile: taken(joined(words, 'worthwhile'), (text) =>
      quantityOf('worthwhile', text, MARGINS, 'a difference with its unit, such as "2 kW"'),
    ),
    compare: taken(joined(words, 'by'), (text) =>
      oneOf('by', text, ['power', 'torque', 'air flow', 'air per cycle'] as const),
    ),
    atSpeeds: taken(words.options.get('speeds'), speedsOf),
    confidence: taken(joined(words, 'confidence'), confidenceOf),
    loggedPower: taken(single(words, 'logged'), (text) =>
      oneOf('logged', text, ['observed', 'corrected', 'unknown'] as const),
    ),
    measuredAt: joined(words, 'at'),
    order: taken(words.options.get('order'), (names) => names),
    settled: taken(joined(words, 'settled'), (text) => oneOf('settled', text, ['cut', 'leave in'] as const)),
    sweptVolume: taken(
      joined(words, 'swept-volume'),
      (text) =>
        quantityOf('swept-volume', text, ['volume'], 'a volume with its unit, such as "1.8 L"') as Quantity<'volume'>,
    ),
    boostControl: taken(single(words, 'boost-control'), (text) =>
      oneOf('boost-control', text, ['open', 'closed'] as const),
    ),
    leaveOut: taken(words.options.get('leave-out'), (texts) => reasonsOf('leave-out', texts)),
    overrule: taken(words.options.get('overrule'), (texts) => reasonsOf('overrule', texts)),
    prepare: taken(single(words, 'outliers'), (text) => ({
      outliers: oneOf('outliers', text, ['missing', 'report'] as const),
    })),
    units: taken(single(words, 'units'), (text) => UNITS[oneOf('units', text, ['si', 'metric', 'us'] as const)]),
  };
  const told = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as CompareOptions;
  const prepare = { ...inFile.prepare, ...told.prepare };
  return { ...inFile, ...told, ...(Object.keys(prepare).length === 0 ? {} : { prepare }) };
}

/**
 * The options of one pair: reasons speak of single pulls, and a comparison refuses those of pulls that it does not have.
 *
 * @param names - of all set-ups that are compared.
 */
export function optionsOfPair(
  options: CompareOptions,
  pair: readonly [string, string],
  names: readonly string[],
): CompareOptions {
  const own = (input: 'leaveOut' | 'overrule'): CompareOptions => {
    const reasons = Object.entries(options[input] ?? {});
    for (const [pull] of reasons) {
      if (names.some((name) => pull.startsWith(`${name}/`))) continue;
      const option = input === 'leaveOut' ? 'leave-out' : 'overrule';
      throw new UsageError(`--${option} names ${pull}, and the set-ups compared are ${names.join(', ')}.`);
    }
    const mine = reasons.filter(([pull]) => pair.some((name) => pull.startsWith(`${name}/`)));
    return mine.length === 0 ? {} : { [input]: Object.fromEntries(mine) };
  };
  const { leaveOut: _leaveOut, overrule: _overrule, ...rest } = options;
  return { ...rest, ...own('leaveOut'), ...own('overrule') };
}

const UNITS = { si: siUnits, metric: metricShop, us: usShop };

/** What a margin may be of: the comparison is by it. */
const MARGINS = ['power', 'torque', 'mass flow', 'mass'] as const;

function taken<T, R>(value: T | undefined, read: (value: T) => R): Taken<R> {
  return value === undefined ? undefined : read(value);
}

function rangeOf(text: string): readonly [number, number] {
  const match = /^(\d{2,5})\s*[-–]\s*(\d{2,5})(?:\s*rpm)?$/.exec(text);
  const [from, to] = [Number(match?.[1]), Number(match?.[2])];
  if (from < to) return [from, to];
  throw new UsageError(`--range takes two engine speeds in rpm, the lower first, such as 3500-6500, got ${text}.`);
}

function speedsOf(texts: readonly string[]): number[] {
  const speeds = texts.flatMap((text) => text.split(/[\s,]+/)).filter((text) => text !== '' && text !== 'rpm');
  const wrong = speeds.find((text) => !/^\d{2,5}$/.test(text));
  if (speeds.length > 0 && wrong === undefined) return speeds.map(Number);
  throw new UsageError(`--speeds takes engine speeds in rpm, such as 4000 5000, got ${wrong ?? 'none'}.`);
}

function confidenceOf(text: string): number {
  const match = /^(\d+(?:\.\d+)?)\s*(%?)$/.exec(text);
  const share = Number(match?.[1]) / (match?.[2] === '%' ? 100 : 1);
  if (share > 0.5 && share < 1) return share;
  throw new UsageError(`--confidence takes a chance above 0.5 and below 1, such as 0.9 or 90%, got ${text}.`);
}

function reasonsOf(option: string, texts: readonly string[]): Record<string, string> {
  if (texts.length === 0) throw new UsageError(`--${option} takes ${REASON}, got nothing.`);
  const reasons = texts.map((text): [string, string] => {
    const at = text.indexOf('=');
    const [pull, reason] = [text.slice(0, Math.max(at, 0)).trim(), text.slice(at + 1).trim()];
    if (!/^[^/]+\/./.test(pull) || reason === '') throw new UsageError(`--${option} takes ${REASON}, got ${text}.`);
    return [pull, reason];
  });
  return Object.fromEntries(reasons);
}

const REASON = 'set-up, pull and the reason, such as "tall core/pull 2.csv=missed the gear"';

function quantityOf(option: string, text: string, kinds: readonly Kind[], need: string): Quantity {
  let refused: unknown;
  for (const kind of kinds) {
    try {
      return parse(kind, text);
    } catch (error) {
      refused ??= error;
    }
  }
  if (!(refused instanceof UnitError)) throw refused;
  throw new UsageError(`--${option} takes ${need}: ${refused.message}`);
}

function oneOf<T extends string>(option: string, value: string, choices: readonly T[]): T {
  const found = choices.find((choice) => choice === value);
  if (found !== undefined) return found;
  throw new UsageError(`--${option} takes ${choices.slice(0, -1).join(', ')} or ${choices.at(-1)!}, got ${value}.`);
}
