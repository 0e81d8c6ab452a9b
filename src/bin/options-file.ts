import { resolveOptions } from '../comparison/resolve-options.js';
import type { CompareOptions } from '../comparison/index.js';
import { optionsFrom, type InstrumentInRecord, type Plain } from '../comparison/options-record.js';
import { channel, type ChannelChoice, type ReadPullsOptions } from '../sweep/index.js';
import { CalculationError, isKind, UnitError, unitOf, type Kind } from '../units/index.js';
import { inCommandWords } from './command-words.js';
import { UsageError } from './arguments.js';

/** What an options file says: how logs are read, and how set-ups are compared. */
export interface FileOptions {
  readonly reading: ReadPullsOptions;
  readonly comparison: CompareOptions;
}

const PARTS = ['reading', 'given', 'instruments'];
const READING = ['channels', 'setups', 'decimal', 'separator', 'headerLine'];
const INSTRUMENT = [
  'label',
  'kind',
  'distribution',
  'degreesOfFreedom',
  'standardUncertainty',
  'standardUncertaintyOfReading',
];

/**
 * The options of a file. `given` and `instruments` have the form of the options in a record, so that those of an earlier analysis can be
 * taken as they are; `reading` says which columns are which channels and how numbers are written.
 *
 * @throws UsageError that says which entry of which file is wrong.
 */
export async function readOptionsFile(file: string): Promise<FileOptions> {
  const { readFile } = await import('node:fs/promises');
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (error) {
    const why = (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'there is no such file' : (error as Error).message;
    throw new UsageError(`The options file ${file} could not be read: ${why}.`);
  }
  let data: unknown;
  try {
    data = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    throw new UsageError(`The options file ${file} is no JSON: ${(error as Error).message}.`);
  }
  try {
    return optionsOf(data);
  } catch (error) {
    if (![UsageError, CalculationError, UnitError].some((kind) => error instanceof kind)) throw error;
    throw new UsageError(`The options file ${file}: ${inCommandWords((error as Error).message)}`);
  }
}

function optionsOf(data: unknown): FileOptions {
  const { reading = {}, given = {}, instruments = [] } = entriesOf(data, 'the file', PARTS);
  if (!Array.isArray(instruments)) throw new UsageError('instruments must be a list of instruments.');
  const comparison = optionsFrom({
    given: checked(entriesOf(given, 'given'), 'given') as Readonly<Record<string, Plain>>,
    instruments: instruments.map((one, i) => instrumentOf(one, `instruments, number ${i + 1}`)),
  });
  // Once here, and not once for every pair of set-ups.
  resolveOptions(comparison);
  return { reading: readingOf(entriesOf(reading, 'reading', READING)), comparison };
}

function entriesOf(value: unknown, where: string, names?: readonly string[]): Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new UsageError(`${where} must be an object, { … }.`);
  const wrong = Object.keys(value).find((name) => names !== undefined && !names.includes(name));
  if (wrong !== undefined) throw new UsageError(`${where} has no "${wrong}". There are: ${names!.join(', ')}.`);
  return value as Readonly<Record<string, unknown>>;
}

/** Plain data with every quantity in it looked at: its kind, its number, its unit in any spelling. */
function checked(value: unknown, where: string): unknown {
  if (Array.isArray(value)) return value.map((one, i) => checked(one, `${where}, number ${i + 1}`));
  if (typeof value !== 'object' || value === null) return value;
  const entries = value as Readonly<Record<string, unknown>>;
  const isQuantity = 'quantity' in entries || ('unit' in entries && 'value' in entries);
  if (!isQuantity)
    return Object.fromEntries(Object.entries(entries).map(([name, one]) => [name, checked(one, `${where}.${name}`)]));
  const { quantity: kind, value: number, unit } = entries;
  const example = '{ "quantity": "pressure difference", "value": 8, "unit": "kPa" }';
  if (typeof kind !== 'string' || !isKind(kind))
    throw new UsageError(`${where} must name its quantity, such as ${example}, got ${JSON.stringify(kind ?? null)}.`);
  if (typeof number !== 'number' || typeof unit !== 'string')
    throw new UsageError(`${where} must have a number as its value and a unit, such as ${example}.`);
  const uncertain = entries['standardUncertainty'];
  return {
    ...entries,
    unit: unitAt(where, kind, unit),
    ...(uncertain === undefined ? {} : { standardUncertainty: checked(uncertain, `${where}.standardUncertainty`) }),
  };
}

function unitAt(where: string, kind: Kind, unit: string): string {
  try {
    return unitOf(kind, unit);
  } catch (error) {
    if (!(error instanceof UnitError)) throw error;
    throw new UsageError(`${where}: ${error.message}`);
  }
}

function instrumentOf(value: unknown, where: string): InstrumentInRecord {
  const given = entriesOf(value, where, INSTRUMENT);
  return {
    label: 'instrument',
    distribution: 'normal',
    degreesOfFreedom: null,
    standardUncertainty: null,
    standardUncertaintyOfReading: null,
    ...(checked(given, where) as Partial<InstrumentInRecord>),
  } as InstrumentInRecord;
}

function readingOf({ channels, setups, ...writing }: Readonly<Record<string, unknown>>): ReadPullsOptions {
  const bySetUp = Object.entries(entriesOf(setups ?? {}, 'reading.setups')).map(([name, own]) => {
    const { decimal, separator, headerLine, ...map } = entriesOf(own, `reading.setups, ${name}`);
    const where = `reading.setups, ${name}`;
    return [name, { ...mapOf(map, where), ...writingOf({ decimal, separator, headerLine }, where) }] as const;
  });
  return {
    ...writingOf(writing, 'reading'),
    ...(channels === undefined ? {} : { channels: mapOf(entriesOf(channels, 'reading.channels'), 'reading.channels') }),
    ...(bySetUp.length === 0 ? {} : { setups: Object.fromEntries(bySetUp) }),
  };
}

type Writing = Pick<ReadPullsOptions, 'decimal' | 'separator' | 'headerLine'>;

/** How numbers and cells are written. */
function writingOf(given: Readonly<Record<string, unknown>>, where: string): Writing {
  const isRight: Readonly<Record<string, (value: unknown) => boolean>> = {
    decimal: (value) => value === '.' || value === ',',
    separator: (value) => [',', ';', '\t', '|'].includes(value as string),
    headerLine: (value) => Number.isInteger(value) && (value as number) >= 1,
  };
  const told = Object.entries(given).filter(([, value]) => value !== undefined);
  const wrong = told.find(([name, value]) => !isRight[name]!(value));
  if (wrong === undefined) return Object.fromEntries(told);
  const need = 'decimal is "." or ",", separator "," or ";" or "\\t" or "|", headerLine the number of a line';
  throw new UsageError(`${where}.${wrong[0]} cannot be ${JSON.stringify(wrong[1])}: ${need}.`);
}

/** Channels by role. */
function mapOf(
  entries: Readonly<Record<string, unknown>>,
  where: string,
): Readonly<Record<string, ChannelChoice<never> | false>> {
  return Object.fromEntries(
    Object.entries(entries).map(([role, choice]): [string, ChannelChoice<never> | false] => {
      if (choice === false) return [role, false];
      const { header, kind, unit } = entriesOf(choice, `${where}.${role}`, ['header', 'kind', 'unit']);
      if (typeof header !== 'string' && typeof header !== 'number')
        throw new UsageError(`${where}.${role} must name its header as in the log, or the number of its column.`);
      if (kind === undefined) return [role, channel(header)];
      if (typeof kind !== 'string' || !isKind(kind))
        throw new UsageError(
          `${where}.${role}: ${JSON.stringify(kind)} is no kind of quantity, such as "gauge pressure".`,
        );
      return [role, channel(header, kind, unit as never) as ChannelChoice<never>];
    }),
  );
}
