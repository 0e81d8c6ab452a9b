import { CalculationError, uncertainty, type Problem } from '../calculation/index.js';
import { add, type Kind, type Note, type Quantity } from '../units/index.js';
import { describe, isPlain, merged, quantityOf, unknownNames } from '../units/internal.js';
import { KNOCK_CAUTIONS } from './cautions.js';
import {
  chargeTemperatureMargin,
  knockIntegralRatio,
  octaneRequirementChange,
  octaneRequirementChangeFromHumidity,
} from './margin.js';

const NAME = 'comparison of knock margins';
const REQUEST_NAMES = [
  'octaneNumber',
  'before',
  'after',
  'endGasPressureRatio',
  'polytropicExponent',
] as const satisfies (keyof KnockComparisonRequest)[];
const STATE_NAMES = ['pressure', 'temperature', 'humidityRatio'] as const satisfies (keyof ChargeState)[];
const INSPECT = Symbol.for('nodejs.util.inspect.custom');

/** The charge in front of an engine, as far as knock asks for it. */
export interface ChargeState {
  /** Pressure of the charge, in the manifold or better at inlet-valve closing. */
  readonly pressure: Quantity<'absolute pressure'>;
  /** Temperature of the charge at the same place. */
  readonly temperature: Quantity<'temperature'>;
  /** Vapour per mass of dry air; counted where both states have it, and said not to be where only one has. */
  readonly humidityRatio?: Quantity<'humidity ratio'> | undefined;
}

/** What {@link compareKnockMargins} takes: two states of one engine at one speed, spark timing and mixture. */
export interface KnockComparisonRequest {
  /** Octane number of the fuel, the same in both: the octane index where it is known. */
  readonly octaneNumber: Quantity<'octane number'>;
  readonly before: ChargeState;
  readonly after: ChargeState;
  /** Cylinder pressure over charge pressure where the end gas is about to ignite; 40 when left out. */
  readonly endGasPressureRatio?: Quantity<'ratio'> | undefined;
  /** Exponent of the compression of the unburned mixture; 1.325 when left out. */
  readonly polytropicExponent?: Quantity<'ratio'> | undefined;
}

/** How two charge states differ in knock margin. Every quantity carries the cautions, and its own scatter. */
export interface KnockComparison {
  /** Octane requirement after minus before; below zero the engine asks for less. Humidity is in it where both states have it. */
  readonly octaneRequirementChange: Quantity<'octane number'>;
  /** Standard uncertainty of that, from the scatter of the correlation and of whatever was `measured`. */
  readonly octaneScatter: Quantity<'octane number'>;
  /** How much warmer the charge after could be to be as near to knock as before; humidity is not in it. */
  readonly chargeTemperatureMargin: Quantity<'temperature difference'>;
  /**
   * Standard uncertainty of that. At equal charge pressures the margin is by definition the difference of the two temperatures, so that
   * only what was `measured` leaves it uncertain; the cautions then say so.
   */
  readonly temperatureScatter: Quantity<'temperature difference'>;
  /** Knock integral after over before; below 1 it is further from knock. Humidity is not in it. */
  readonly integralRatio: Quantity<'ratio'>;
  /** What must be said beside any of these. */
  readonly cautions: readonly string[];
  /** The differences with their scatter, and the cautions. */
  toString(): string;
  /** The same as plain data. */
  toJSON(): KnockComparisonRecord;
}

/** What {@link KnockComparison.toJSON} writes: octane numbers, kelvin and a ratio. */
export interface KnockComparisonRecord {
  readonly octaneRequirementChange: number;
  readonly octaneScatter: number;
  readonly chargeTemperatureMargin: number;
  readonly temperatureScatter: number;
  readonly integralRatio: number;
  readonly cautions: readonly string[];
}

/**
 * What a change of charge state does to the knock margin of one engine at one speed, in octane numbers and in degrees of
 * charge temperature.
 *
 * A trend with a wide scatter, which it shows: what a better core is worth as a reserve, or what more boost takes from it.
 * It is never a licence to run, and no number to set spark or boost by.
 *
 * @returns The differences, each with its scatter and the cautions.
 * @throws CalculationError if a state is missing, or an input of the wrong kind or impossible.
 * @example
 * const change = compareKnockMargins({
 *   octaneNumber: octaneNumber(98),
 *   before: { pressure: absolutePressure(204, 'kPa'), temperature: temperature(60, '°C') },
 *   after: { pressure: absolutePressure(204, 'kPa'), temperature: temperature(45, '°C') },
 * });
 * change.octaneRequirementChange.in('1') //=> -6.07186
 * change.chargeTemperatureMargin.in('K') //=> 15
 */
export function compareKnockMargins(request: KnockComparisonRequest): KnockComparison {
  check(request);
  return new Comparison(request);
}

class Comparison implements KnockComparison {
  readonly octaneRequirementChange: Quantity<'octane number'>;
  readonly chargeTemperatureMargin: Quantity<'temperature difference'>;
  readonly integralRatio: Quantity<'ratio'>;
  readonly cautions: readonly string[];
  readonly #hasOnePressure: boolean;

  constructor({ octaneNumber, before, after, endGasPressureRatio, polytropicExponent }: KnockComparisonRequest) {
    const states = {
      pressureBefore: before.pressure,
      temperatureBefore: before.temperature,
      pressureAfter: after.pressure,
      temperatureAfter: after.temperature,
      endGasPressureRatio,
      polytropicExponent,
    };
    const byCharge = octaneRequirementChange({ octaneNumber, ...states });
    const [humidityRatioBefore, humidityRatioAfter] = [before.humidityRatio, after.humidityRatio];
    const inOne = humidityInOne(before, after);
    this.octaneRequirementChange =
      humidityRatioBefore && humidityRatioAfter
        ? add(byCharge, octaneRequirementChangeFromHumidity({ humidityRatioBefore, humidityRatioAfter }))
        : withNotes(byCharge, inOne);
    this.chargeTemperatureMargin = chargeTemperatureMargin(states);
    this.integralRatio = knockIntegralRatio(states);
    this.#hasOnePressure = before.pressure.si === after.pressure.si;
    this.cautions = [
      ...[...KNOCK_CAUTIONS, ...inOne].map(({ message }) => message),
      ...(this.#hasOnePressure ? [BY_DEFINITION] : []),
    ];
  }

  get octaneScatter(): Quantity<'octane number'> {
    return uncertainty(this.octaneRequirementChange).standard;
  }

  get temperatureScatter(): Quantity<'temperature difference'> {
    return uncertainty(this.chargeTemperatureMargin).standard;
  }

  toString(): string {
    const { octaneRequirementChange: octane, chargeTemperatureMargin: margin } = this;
    const [less, warmer] = [octane.si <= 0 ? 'less' : 'more', margin.si >= 0 ? 'warmer' : 'colder'];
    return [
      `Asks for ${amount(octane.si)} octane numbers ${less} (standard uncertainty ${amount(this.octaneScatter.si)});`,
      `as near to knock as before with charge ${amount(margin.si)} K ${warmer} (${amount(this.temperatureScatter.si)}${
        this.#hasOnePressure ? ' by definition, see below' : ''
      }).`,
      ...this.cautions,
    ].join('\n');
  }

  toJSON(): KnockComparisonRecord {
    return {
      octaneRequirementChange: this.octaneRequirementChange.si,
      octaneScatter: this.octaneScatter.si,
      chargeTemperatureMargin: this.chargeTemperatureMargin.si,
      temperatureScatter: this.temperatureScatter.si,
      integralRatio: this.integralRatio.si,
      cautions: this.cautions,
    };
  }

  /** @internal */
  [INSPECT](): string {
    return this.toString();
  }
}

const BY_DEFINITION =
  'At equal charge pressures the margin in kelvin is by definition the difference of the two charge temperatures: its ' +
  'uncertainty is that of the readings alone and says nothing of how right the correlation is.';

/** Humidity of one state without that of the other is of no use; whoever gave it must hear that. */
function humidityInOne(before: ChargeState, after: ChargeState): readonly Note[] {
  if ((before.humidityRatio === undefined) === (after.humidityRatio === undefined)) return [];
  const given = before.humidityRatio === undefined ? 'after' : 'before';
  const message = `Humidity was given for the charge ${given} only, so it is not counted: give it for both states.`;
  return [{ code: 'humidity not counted', calculation: NAME, message }];
}

function withNotes<K extends Kind>(value: Quantity<K>, notes: readonly Note[]): Quantity<K> {
  if (notes.length === 0) return value;
  return quantityOf(value.kind, value.si, value.unit, value.origin, merged(value.notes, notes), value.label);
}

/** One decimal is more than the correlation deserves, and fewer would hide a small change. */
function amount(value: number): string {
  return Math.abs(value).toFixed(1);
}

function check(request: unknown): void {
  const given = (request ?? {}) as Record<string, unknown>;
  const problems = unknownNames(given, REQUEST_NAMES);
  for (const name of ['before', 'after']) {
    const state = given[name];
    if (isPlain(state)) problems.push(...unknownNames(state, STATE_NAMES, `${name}.`));
    if (typeof state === 'object' && state !== null && 'pressure' in state && 'temperature' in state) continue;
    const code = state === undefined ? 'missing' : 'kind';
    problems.push(problem(code, name, 'a charge state, { pressure, temperature }', state));
  }
  if (given['octaneNumber'] === undefined)
    problems.push(problem('missing', 'octaneNumber', 'an octane number', undefined));
  if (problems.length > 0) throw new CalculationError(NAME, problems);
}

function problem(code: Problem['code'], input: string, need: string, got: unknown): Problem {
  return { code, input, need, got: describe(got), mend: '' };
}
