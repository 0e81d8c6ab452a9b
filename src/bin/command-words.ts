/**
 * What the library says a program should write, as the command takes it: an option of the command where there is one, otherwise the entry of
 * the options file.
 */
export function inCommandWords(text: string): string {
  const [inReading, inGiven] = [new Set<string>(), new Set<string>()];
  const written =
    (keys: Set<string>) =>
    (entry: string): string => {
      const json = asJson(entry);
      keys.add(/^"\w+"/.exec(json)?.[0] ?? '"header"');
      return json;
    };
  const [reading, given] = [written(inReading), written(inGiven)];
  let told = text.replace(objectOf('setups|channels'), reading).replace(objectOf('limits|sensorLags'), given);
  for (const [words, option] of OPTIONS) told = told.replace(words, option);
  told = told
    .replace(CHANNEL_ENTRY, reading)
    .replace(CHANNEL, reading)
    .replace(/\b(?:decimal: '[.,]'|headerLine: \d+|sparkAdvance: false)/g, reading)
    .replace(/\bdrift: 'leave in'/g, given)
    .replace(QUANTITY, given)
    .replace(/(?<!")\b(?:bestTorqueSpark|powerPerLambda|overallRatio)\b(?!")/g, given);
  const where = [
    ...(inReading.size === 0 ? [] : [`${[...inReading].join(', ')} under “reading” (columns there under “channels”)`]),
    ...(inGiven.size === 0 ? [] : [`${[...inGiven].join(', ')} under “given”`]),
  ];
  if (where.length === 0) return told;
  return `${told}${told.includes('\n') ? '\n' : ' '}(In a file for --options: ${where.join('; ')}.)`;
}

/** `name: { … }` with objects up to two deep in it. */
function objectOf(names: string): RegExp {
  return new RegExp(`\\b(?:${names}):\\s*\\{(?:[^{}]|\\{(?:[^{}]|\\{[^{}]*\\})*\\})*\\}`, 'g');
}

const QUANTITY = /\b([a-z][A-Za-z]*)\((…|[\d.]+), '([^']*)'\)/g;
const CHANNEL = /\bchannel\([^()]*(?:\([^()]*\)[^()]*)*\)/g;
const CHANNEL_ENTRY = new RegExp(`\\b\\w+:\\s+${CHANNEL.source}`, 'g');

/** Names of the library and what the command calls them. */
const OPTIONS: readonly (readonly [words: RegExp, option: string])[] = [
  [/\bsettled: 'cut'/g, '--settled cut'],
  [/\bsettled: 'leave in'/g, '--settled "leave in"'],
  [/\bloggedPower: '(\w+)'/g, '--logged $1'],
  [/\bloggedPower says\b/g, '--logged says'],
  [/ \((?:lagOfStep|lagOfRamps)\)/g, ''],
  [/\border: \[[^\]]*\]/g, '--order with the set-up of each pull'],
  [/\bboostControl: '(\w+)'/g, '--boost-control $1'],
  [/\(boostControl\)/g, '(--boost-control)'],
  [/\(measuredAt, overallRatio\)/g, '(--at, overallRatio)'],
  [/\b(?:prepare: \{ )?outliers: 'missing'(?: \})?/g, '--outliers missing'],
  [/\b(give|wider) engineSpeed\b/gi, '$1 --range'],
  [/\bcompare: (?:engineSpeed|step) must\b/g, 'The range must'],
  [/\bcompare: worthwhile must\b/g, '--worthwhile must'],
  [/\bcompare: order must\b/g, '--order must'],
  [/\bcompare: atSpeeds must\b/g, '--speeds must'],
];

/** A piece of a program as the options file writes it. */
function asJson(entry: string): string {
  return entry
    .replace(/\bchannel\(\s*\.\.\.\s*\)/g, "{ header: '…' }")
    .replace(/\bchannel\(([^]*?)\)(?=$|[\s,}.])/g, (_, inside: string) => {
      const parts = inside.match(/'(?:[^'\\]|\\.)*'|\d+/g) ?? [];
      const names = ['header', 'kind', 'unit'];
      return `{ ${parts.map((part, i) => `${names[i]!}: ${part}`).join(', ')} }`;
    })
    .replace(QUANTITY, (_, kind: string, value: string, unit: string) => {
      const words = kind.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
      return `{ quantity: '${words}', value: ${value}, unit: '${unit}' }`;
    })
    .replace(/'((?:[^'\\]|\\.)*)'|\b([a-zA-Z]\w*)(?=:)/g, (_, text: string | undefined, name: string | undefined) =>
      JSON.stringify(text === undefined ? name : text.replace(/\\'/g, "'")),
    )
    .replace(/^(\w+)$/, '"$1"');
}
