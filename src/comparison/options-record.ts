import {
  CalculationError,
  differenceKind,
  isColumn,
  isKind,
  isQuantity,
  revive,
  type Kind,
  type Quantity,
} from '../units/index.js';
import { describe, fromSi, NO_NOTES, quantityOf, toSi } from '../units/internal.js';
import {
  coverageFactorOf,
  measured,
  sensor,
  uncertainty,
  type Distribution,
  type Sensor,
  type SensorOptions,
} from '../calculation/index.js';
import type { CompareOptions } from './options.js';

/** Plain data, as JSON holds it. */
export type Plain = string | number | boolean | null | readonly Plain[] | { readonly [name: string]: Plain };

/** A quantity as plain data: as a person would write it, and its SI number where that cannot be had back to the last digit. */
export type QuantityInRecord = {
  readonly quantity: Kind;
  readonly value: number;
  readonly unit: string;
  readonly si?: number;
};

/** An instrument as plain data: a fixed part of its error, a part of the reading, or both. */
export type InstrumentInRecord = {
  readonly label: string;
  readonly kind: Kind;
  readonly distribution: string;
  /** null where the uncertainty itself is taken as known without end. */
  readonly degreesOfFreedom: number | null;
  readonly standardUncertainty: QuantityInRecord | null;
  readonly standardUncertaintyOfReading: QuantityInRecord | null;
};

/**
 * The options of a comparison as plain data that can be read back. Each instrument stands in it once, and by its number
 * wherever it is used: an instrument that is used twice is one error and not two.
 */
export interface OptionsRecord {
  readonly given: { readonly [name: string]: Plain };
  readonly instruments: readonly InstrumentInRecord[];
}

/** Options as plain data. */
export function optionsRecord(options: CompareOptions): OptionsRecord {
  const instruments: Sensor[] = [];
  const plain = (value: unknown): Plain => {
    if (isQuantity(value)) return uncertainRecord(value);
    if (isColumn(value)) return { column: value.toJSON() as unknown as Plain };
    if (isInstrument(value)) {
      if (!instruments.includes(value)) instruments.push(value);
      return { instrument: instruments.indexOf(value) + 1 };
    }
    if (Array.isArray(value)) return value.map(plain);
    if (typeof value === 'object' && value !== null) {
      const entries = Object.entries(value).filter(([, one]) => one !== undefined && typeof one !== 'function');
      return Object.fromEntries(entries.map(([name, one]) => [name, plain(one)]));
    }
    return value as Plain;
  };
  const given = plain(options) as OptionsRecord['given'];
  return { given, instruments: instruments.map(instrumentRecord) };
}

/**
 * Options from plain data.
 *
 * @throws CalculationError if the data is none that {@link optionsRecord} wrote. Whether the options make sense is for the comparison to say.
 */
export function optionsFrom({ given, instruments }: OptionsRecord): CompareOptions {
  const made = instruments.map(instrumentFrom);
  const full = (value: Plain): unknown => {
    if (isList(value)) return value.map(full);
    if (typeof value !== 'object' || value === null) return value;
    if (isQuantityRecord(value)) return uncertainFrom(value);
    if ('column' in value && Object.keys(value).length === 1) return revive(value['column']);
    if ('instrument' in value && Object.keys(value).length === 1) {
      const found = made[Number(value['instrument']) - 1];
      if (found === undefined) throw unreadable('instruments', 'every instrument that the options use', value);
      return found;
    }
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, full(one)]));
  };
  return full(given) as CompareOptions;
}

/** A quantity as plain data. */
export function quantityRecord({ kind, si, unit }: Quantity): QuantityInRecord {
  const exact = fromSi(kind, si, unit);
  // 2 kW is written as 2, not as 1.9999999999999998.
  const short = Number(exact.toPrecision(15));
  const value = toSi(kind, short, unit) === si ? short : exact;
  return { quantity: kind, value, unit, ...(toSi(kind, value, unit) === si ? {} : { si }) };
}

/** A quantity from plain data. */
export function quantityFrom({ quantity: kind, value, unit, si }: QuantityInRecord): Quantity {
  return quantityOf(kind, si ?? toSi(kind, value, unit), unit, undefined, NO_NOTES);
}

/** A quantity that was stated with an uncertainty, or made from such, as plain data. */
type UncertainInRecord = QuantityInRecord & {
  readonly standardUncertainty?: QuantityInRecord;
  readonly distribution?: string;
  readonly degreesOfFreedom?: number | null;
};

function uncertainRecord(value: Quantity): UncertainInRecord {
  const plain = quantityRecord(value);
  const { origin } = value;
  if (origin === undefined) return plain;
  const stated = origin.type === 'leaf' ? origin.uncertainty : undefined;
  if (origin.type === 'leaf' && !stated) return plain;
  const { standard, degreesOfFreedom } = uncertainty(value);
  if (!(standard.si > 0)) return plain;
  return {
    ...plain,
    standardUncertainty: quantityRecord(standard),
    distribution: stated?.distribution ?? 'normal',
    degreesOfFreedom: degreesOfFreedom === Infinity ? null : degreesOfFreedom,
  };
}

function uncertainFrom(record: UncertainInRecord): Quantity {
  const value = quantityFrom(record);
  const { standardUncertainty, distribution = 'normal', degreesOfFreedom } = record;
  if (standardUncertainty === undefined) return value;
  return measured('from the record', value, {
    standardUncertainty: quantityFrom(standardUncertainty) as Quantity<never>,
    distribution: (distribution === 't' ? 'normal' : distribution) as Distribution,
    ...(degreesOfFreedom === null || degreesOfFreedom === undefined ? {} : { degreesOfFreedom }),
  });
}

const isList = (value: Plain): value is readonly Plain[] => Array.isArray(value);

const isQuantityRecord = (value: object): value is QuantityInRecord =>
  'quantity' in value && 'value' in value && 'unit' in value && isKind(value.quantity);

const isInstrument = (value: unknown): value is Sensor =>
  typeof value === 'object' && value !== null && 'reads' in value;

function instrumentRecord({ kind, label, correction, gainCorrection }: Sensor): InstrumentInRecord {
  const leaf = (correction ?? gainCorrection)!.origin;
  const stated = leaf?.type === 'leaf' ? leaf.uncertainty : undefined;
  const part = (error: Quantity | undefined): QuantityInRecord | null => {
    if (error?.origin?.type !== 'leaf' || !error.origin.uncertainty) return null;
    return quantityRecord(quantityOf(error.kind, error.origin.uncertainty.standard, error.unit, undefined, NO_NOTES));
  };
  const degrees = stated?.degreesOfFreedom ?? Infinity;
  return {
    label,
    kind,
    distribution: stated?.distribution ?? 'normal',
    degreesOfFreedom: degrees === Infinity ? null : degrees,
    standardUncertainty: part(correction),
    standardUncertaintyOfReading: part(gainCorrection),
  };
}

function instrumentFrom(record: InstrumentInRecord): Sensor {
  const { label, kind, distribution, degreesOfFreedom } = record;
  const [fixed, ofReading] = [record.standardUncertainty, record.standardUncertaintyOfReading];
  if (!isKind(kind) || (!fixed && !ofReading) || (fixed && fixed.quantity !== differenceKind(kind)))
    throw unreadable('instruments', 'instruments with their uncertainty', record);
  // As a half width for the shapes that have one: only there may the shape be said, and only there may the second part stand alone.
  const shape = distribution === 't' ? 'normal' : distribution;
  const widen =
    shape === 'rectangular' ? Math.sqrt(3) : shape === 'triangular' ? Math.sqrt(6) : coverageFactorOf(0.95, Infinity);
  const wide = (part: QuantityInRecord): Quantity => {
    const { kind: of, si, unit } = quantityFrom(part);
    return quantityOf(of, si * widen, unit, undefined, NO_NOTES);
  };
  return sensor(kind, {
    label,
    distribution: shape,
    ...(degreesOfFreedom === null ? {} : { degreesOfFreedom }),
    ...(fixed ? { halfWidth: wide(fixed) } : {}),
    ...(ofReading ? { ofReading: wide(ofReading) } : {}),
  } as unknown as SensorOptions<never>);
}

function unreadable(input: string, need: string, got: unknown): CalculationError {
  return new CalculationError('options of a record', [{ code: 'kind', input, need, got: describe(got), mend: '' }]);
}
