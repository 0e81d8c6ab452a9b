import { differenceKind, isKind, type DifferenceOf, type Kind, type Same } from '../units/kinds.js';
import { NO_NOTES, describe, perform, performColumns, quantityOf, requireOptions } from '../units/internal.js';
import type { Column, LeafUncertainty, Operation, Quantity } from '../units/origin.js';
import { isColumn } from '../units/quantity.js';
import { readingOperation } from './reading.js';
import { refusal, requireLabel, requireQuantity, requireValue } from './refusal.js';
import {
  STATED,
  formOf,
  readSize,
  readUncertainty,
  type ReadUncertainty,
  type StatedUncertainty,
} from './stated-uncertainty.js';

/**
 * One reading with an error of its own. Two readings are independent, even of one instrument: what an instrument does to all its
 * readings belongs to a {@link sensor}.
 *
 * @param label - names it in explanations and budgets.
 * @param value - what was read, not computed.
 * @param uncertainty - exactly one of `standardUncertainty`, `halfWidth`, `expanded`.
 * @throws CalculationError if the uncertainty is missing, zero, of a wrong kind, or the value was computed.
 * @example
 * measured('room', temperature(18, '°C'), { halfWidth: temperatureDifference(0.5, 'K') })
 */
export function measured<K extends Kind>(
  label: string,
  value: Quantity<K>,
  uncertainty: StatedUncertainty<Same<K>>,
): Quantity<K> {
  requireLabel('measured', label);
  requireQuantity('measured', 'value', value);
  const { origin } = value;
  if (
    origin?.type === 'step' ||
    origin?.role === 'solved' ||
    (origin !== undefined && origin.uncertainty !== undefined)
  ) {
    const got =
      origin.type === 'leaf' && origin.role !== 'solved'
        ? `one that carries an uncertainty (${describe(value)})`
        : `a computed one (${describe(value)})`;
    const mend = 'To drop its history and state an uncertainty for the whole: measured(label, forget(value), ...).';
    throw refusal('measured', 'kind', 'value', 'a value as it was read', got, mend);
  }
  requireOptions('measured', uncertainty, STATED);
  const { relative, standard: size, ...read } = readUncertainty('measured', value.kind, uncertainty);
  if (relative && value.si === 0) {
    throw refusal(
      'measured',
      'impossible',
      'value',
      'other than zero where its uncertainty is a ratio of it',
      describe(value),
      '',
    );
  }
  const { degreesOfFreedom, distribution, type } = read;
  const standard = relative ? Math.abs(value.si) * size : size;
  const leaf = {
    type: 'leaf',
    role: 'measured',
    label,
    uncertainty: { standard, degreesOfFreedom, distribution, type },
  } as const;
  return quantityOf(value.kind, value.si, value.unit, leaf, value.notes ?? NO_NOTES, label);
}

/** An instrument that reads many values with one error. */
export interface Sensor<K extends Kind = Kind> {
  readonly kind: K;
  readonly label: string;
  /** What has to be added to its readings: zero, with the sensor's uncertainty. Change it with `whatIf` to try a sensor that is off. */
  readonly correction: Quantity<DifferenceOf<K>> | undefined;
  /** The share of a reading that has to be added to it: zero, with its uncertainty. */
  readonly gainCorrection: Quantity<'ratio'> | undefined;
  /** A value read by this sensor. */
  reads(value: Quantity<K>): Quantity<K>;
  /** A channel read by this sensor; every row has the same error. */
  reads(values: Column<K>): Column<K>;
  /** Its label and kind. */
  toString(): string;
}

/** What is known of a sensor. */
export type SensorOptions<K extends Kind> = {
  /** Names it in explanations and budgets. */
  readonly label: string;
  /**
   * The part of the error that grows with the reading, in the same sense as the other part: a half width beside a half width, a
   * standard uncertainty beside one. Alone it is a half width.
   */
  readonly ofReading?: (K extends 'temperature' ? never : Quantity<'ratio'>) | undefined;
} & (
  | StatedUncertainty<K>
  | {
      readonly ofReading: K extends 'temperature' ? never : Quantity<'ratio'>;
      readonly distribution?: 'rectangular' | 'triangular' | 'normal' | undefined;
      readonly level?: number | undefined;
      readonly degreesOfFreedom?: number | undefined;
      readonly standardUncertainty?: undefined;
      readonly halfWidth?: undefined;
      readonly expanded?: undefined;
    }
);

/**
 * An instrument whose error is the same in all its readings, so that it cancels where two of them are subtracted.
 *
 * @throws CalculationError if no uncertainty is given, or one of a wrong kind.
 * @example
 * const probe = sensor('temperature', { label: 'charge probe', halfWidth: temperatureDifference(1, 'K') });
 * const drop = subtract(probe.reads(temperature(121, '°C')), probe.reads(temperature(52, '°C')));
 * uncertainty(drop).standard.in('K') //=> 0
 */
export function sensor<K extends Kind>(kind: K, options: SensorOptions<Same<K>>): Sensor<K> {
  if (!isKind(kind))
    throw refusal('sensor', 'unknown', 'kind', 'a kind of quantity, such as temperature', describe(kind));
  requireOptions('sensor', options, { ...STATED, label: 'any', ofReading: 'any' });
  const { label, ofReading } = (options ?? {}) as { label?: unknown; ofReading?: unknown };
  requireLabel('sensor', label);
  const part = ofReading === undefined ? undefined : readSize('sensor', kind, 'ofReading', ofReading, options);
  if (part && !part.relative) {
    const isRatio = (ofReading as Quantity).kind === 'ratio';
    if (!isRatio)
      throw refusal(
        'sensor',
        'kind',
        'ofReading',
        'a ratio of the reading',
        describe(ofReading),
        'Write percent(value).',
      );
  }
  let fixed = part && formOf(options).length === 0 ? undefined : readUncertainty('sensor', kind, options);
  let gain = part;
  if (fixed?.relative === true) {
    if (gain)
      throw refusal(
        'sensor',
        'unknown',
        'ofReading',
        'the only uncertainty that is a ratio of the reading',
        'two of them',
      );
    gain = fixed;
    fixed = undefined;
  }
  return new SensorValue(kind, label, fixed, gain);
}

const INSPECT = Symbol.for('nodejs.util.inspect.custom');

class SensorValue<K extends Kind> implements Sensor<K> {
  readonly kind: K;
  readonly label: string;
  readonly correction: Quantity<DifferenceOf<K>> | undefined;
  readonly gainCorrection: Quantity<'ratio'> | undefined;

  constructor(kind: K, label: string, fixed: ReadUncertainty | undefined, gain: ReadUncertainty | undefined) {
    this.kind = kind;
    this.label = label;
    const difference = differenceKind(kind) as DifferenceOf<K>;
    this.correction = fixed && errorLeaf(difference, gain ? `${label}, fixed part` : label, fixed);
    this.gainCorrection = gain && errorLeaf('ratio', fixed ? `${label}, part of the reading` : label, gain);
  }

  reads(value: Quantity<K>): Quantity<K>;
  reads(values: Column<K>): Column<K>;
  reads(value: Quantity<K> | Column<K>): Quantity<K> | Column<K> {
    requireValue(`${this.label} reads`, 'value', value);
    const { correction, gainCorrection } = this;
    const errors = correction && gainCorrection ? 'both' : correction ? 'fixed' : 'of reading';
    const operation = readingOperation(this.kind, value.unit, errors) as Operation & { output: { kind: K } };
    const given = [gainCorrection, correction].filter((error) => error !== undefined);
    const result = isColumn(value)
      ? performColumns(operation, [value, ...given])
      : perform(operation, [value, ...given]);
    return value.label === undefined ? result : result.named(value.label);
  }

  toString(): string {
    return `${this.label} (sensor of ${this.kind})`;
  }

  /** @internal */
  [INSPECT](): string {
    return this.toString();
  }
}

/** The error of an instrument: zero, and uncertain. */
function errorLeaf<K extends Kind>(
  kind: K,
  label: string,
  { standard, degreesOfFreedom, distribution, unit }: ReadUncertainty,
): Quantity<K> {
  const uncertainty: LeafUncertainty = { standard, degreesOfFreedom, distribution, type: 'B' };
  return quantityOf(kind, 0, unit, { type: 'leaf', role: 'error', label, uncertainty }, NO_NOTES, label);
}
