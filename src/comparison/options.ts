import {
  CalculationError,
  percent,
  pressureDifference,
  rotationalSpeed,
  temperatureDifference,
  type Kind,
  type Problem,
  type Quantity,
  type UnitPreferences,
} from '../units/index.js';
import type { Sensor } from '../calculation/index.js';
import { CHANNEL_KINDS, type ChannelKind, type ChannelRole } from '../sweep/index.js';
import { describe } from '../units/internal.js';
import type { ComparedQuantity } from './result.js';

/** Limits within which the pulls of one comparison must agree. */
export interface AcceptanceLimits {
  /** Largest difference of lambda from the set-up's middle pull, over a tenth of the range or more. */
  readonly mixture?: number;
  /** Largest difference of the mean boost or manifold pressure from the set-up's middle pull. */
  readonly boost?: Quantity<'pressure difference'>;
  /** Largest difference of the charge temperature at the start of the range from the set-up's middle pull. */
  readonly startTemperature?: Quantity<'temperature difference'>;
  /** The same for oil and coolant. */
  readonly engineTemperature?: Quantity<'temperature difference'>;
  /** Furthest that the lowest fuel pressure may fall below the set-up's middle pull. */
  readonly fuelPressure?: Quantity<'pressure difference'>;
  /** Largest difference of the air before the compressor, above the room, from the set-up's middle pull: hot air breathed again. */
  readonly inletRise?: Quantity<'temperature difference'>;
  /** Largest difference of the barometer from the set-up's middle pull. */
  readonly barometer?: Quantity<'pressure difference'>;
  /** Largest difference of the ramp rate from the set-up's middle pull, as a share of it. */
  readonly rampRate?: Quantity<'ratio'>;
  /** Largest share of the range without the compared quantity. */
  readonly missing?: number;
  /** Largest difference of mean lambda between the two set-ups; beyond it they cannot be compared. */
  readonly mixtureBetweenSetUps?: number;
}

/** The instruments behind the channels of a log, by channel. */
export type SensorSet = { readonly [R in ChannelRole]?: Sensor<ChannelKind<R>> };

/** How two set-ups are compared. */
export interface CompareOptions {
  /** Range of engine speed: two numbers are rpm. The range all pulls share when left out. */
  readonly engineSpeed?:
    readonly [number, number] | readonly [Quantity<'rotational speed'>, Quantity<'rotational speed'>];
  /** Distance of the speeds at which pulls are compared; 100 rpm when left out. */
  readonly step?: Quantity<'rotational speed'>;
  /** Width of the window over which each pull is averaged before it is compared, the same for every pull; 200 rpm when left out. */
  readonly bandwidth?: Quantity<'rotational speed'>;
  /** What to compare; power where torque or power is logged, else air per cycle. */
  readonly compare?: ComparedQuantity;
  /** The smallest difference worth having, set before looking. Without it nothing can be called equivalent. */
  readonly worthwhile?: Quantity;
  /** Whether logged power or torque is as measured or already corrected to a standard atmosphere. */
  readonly loggedPower?: 'observed' | 'corrected' | 'unknown';
  /** Where torque was measured, for the words of the answer: `at the hub`. */
  readonly measuredAt?: string;
  /** Chance that the interval, and the whole band, holds the truth; 0.95 when left out. */
  readonly confidence?: number;
  /** The order in which the pulls were made, as names of set-ups, where the files do not tell. */
  readonly order?: readonly string[];
  /**
   * What to do about a drift through the day. Left out, a steady drift is taken out wherever the order of the pulls allows it; that is
   * decided by the order, never by whether a drift is seen.
   */
  readonly drift?: 'take out' | 'leave in';
  /** Pulls left out by hand, each with the reason that the report prints. */
  readonly leaveOut?: Readonly<Record<string, string>>;
  /** Refused pulls that count all the same, each with the reason that the report prints. */
  readonly overrule?: Readonly<Record<string, string>>;
  readonly limits?: AcceptanceLimits;
  /** The instruments that read the channels in both set-ups: what they share cancels in the difference. */
  readonly sensors?: SensorSet;
  /** Instruments that were another one in a set-up, by its name; they go before {@link CompareOptions.sensors}. */
  readonly sensorsBySetUp?: Readonly<Record<string, SensorSet>>;
  /** Speeds chosen beforehand at which the difference is quoted too; plain numbers are rpm. They must be speeds of the grid. */
  readonly atSpeeds?: readonly (number | Quantity<'rotational speed'>)[];
  /** How many set-ups are compared with this baseline at once: bands and intervals share the chance of error. 1 when left out. */
  readonly setUps?: number;
  /** Units of the answer. */
  readonly units?: UnitPreferences;
}

/** The options with every default filled in. */
export interface ResolvedOptions {
  readonly step: Quantity<'rotational speed'>;
  readonly bandwidth: Quantity<'rotational speed'>;
  readonly worthwhile: Quantity | undefined;
  readonly loggedPower: 'observed' | 'corrected' | 'unknown';
  readonly measuredAt: string;
  readonly confidence: number;
  readonly order: readonly string[] | undefined;
  readonly drift: 'take out' | 'leave in' | undefined;
  readonly leaveOut: Readonly<Record<string, string>>;
  readonly overrule: Readonly<Record<string, string>>;
  readonly limits: Required<AcceptanceLimits>;
  readonly sensors: SensorSet;
  readonly sensorsBySetUp: Readonly<Record<string, SensorSet>>;
  readonly atSpeeds: readonly Quantity<'rotational speed'>[];
  readonly setUps: number;
  readonly units: UnitPreferences;
}

/** Limits that a careful tester would set; common practice, no source. */
export const usualLimits: Required<AcceptanceLimits> = {
  mixture: 0.05,
  boost: pressureDifference(6, 'kPa'),
  startTemperature: temperatureDifference(12, 'K'),
  engineTemperature: temperatureDifference(12, 'K'),
  fuelPressure: pressureDifference(50, 'kPa'),
  inletRise: temperatureDifference(8, 'K'),
  barometer: pressureDifference(1, 'kPa'),
  rampRate: percent(15),
  missing: 0.1,
  mixtureBetweenSetUps: 0.03,
};

const OPTION_NAMES = new Set([
  'engineSpeed',
  'step',
  'bandwidth',
  'compare',
  'worthwhile',
  'loggedPower',
  'measuredAt',
  'confidence',
  'order',
  'drift',
  'leaveOut',
  'overrule',
  'limits',
  'sensors',
  'sensorsBySetUp',
  'setUps',
  'atSpeeds',
  'units',
]);

/** Checks the options and fills in what was left out. */
export function resolveOptions(options: CompareOptions): ResolvedOptions {
  const problems: Problem[] = [];
  for (const name in options) {
    if (OPTION_NAMES.has(name)) continue;
    const need = `one of ${[...OPTION_NAMES].join(', ')}`;
    problems.push({
      code: 'unknown',
      input: name,
      need,
      got: describe((options as Record<string, unknown>)[name]),
      mend: 'Is the name misspelt?',
    });
  }
  const step = options.step ?? rotationalSpeed(100, 'rpm');
  const bandwidth = options.bandwidth ?? rotationalSpeed(200, 'rpm');
  const confidence = options.confidence ?? 0.95;
  const positive = (input: string, kind: Kind, value: Quantity | undefined): void => {
    if (value === undefined) return;
    if (value.kind !== kind || !(value.si > 0)) {
      problems.push({ code: 'impossible', input, need: `a ${kind} above zero`, got: describe(value), mend: '' });
    }
  };
  positive('step', 'rotational speed', step);
  positive('bandwidth', 'rotational speed', bandwidth);
  if (options.worthwhile !== undefined && !(options.worthwhile.si > 0)) {
    problems.push({
      code: 'impossible',
      input: 'worthwhile',
      need: 'a difference above zero',
      got: describe(options.worthwhile),
      mend: '',
    });
  }
  if (!(confidence > 0.5 && confidence < 1)) {
    problems.push({
      code: 'impossible',
      input: 'confidence',
      need: 'between 0.5 and 1',
      got: String(confidence),
      mend: 'For 95 % write 0.95.',
    });
  }
  const setUps = options.setUps ?? 1;
  if (!Number.isInteger(setUps) || setUps < 1) {
    problems.push({
      code: 'impossible',
      input: 'setUps',
      need: 'a whole number from 1',
      got: String(setUps),
      mend: '',
    });
  }
  for (const set of [options.sensors ?? {}, ...Object.values(options.sensorsBySetUp ?? {})]) {
    problems.push(...sensorProblems(set));
  }
  if (problems.length > 0) throw new CalculationError('compare', problems);
  return {
    step,
    bandwidth,
    worthwhile: options.worthwhile,
    loggedPower: options.loggedPower ?? 'unknown',
    measuredAt: options.measuredAt ?? '',
    confidence,
    order: options.order,
    drift: options.drift,
    leaveOut: options.leaveOut ?? {},
    overrule: options.overrule ?? {},
    limits: { ...usualLimits, ...options.limits },
    sensors: options.sensors ?? {},
    sensorsBySetUp: options.sensorsBySetUp ?? {},
    setUps: options.setUps ?? 1,
    atSpeeds: (options.atSpeeds ?? []).map((speed) =>
      typeof speed === 'number' ? rotationalSpeed(speed, 'rpm') : speed,
    ),
    units: { power: 'kW', torque: 'N·m', 'mass flow': 'g/s', mass: 'g', ...options.units },
  };
}

/** The instruments of one set-up: its own where it had others. */
export function sensorsOf(setUp: string, { sensors, sensorsBySetUp }: ResolvedOptions): SensorSet {
  return { ...sensors, ...sensorsBySetUp[setUp] };
}

function sensorProblems(set: SensorSet): Problem[] {
  return Object.entries(set).flatMap(([role, sensor]): Problem[] => {
    const kind = (CHANNEL_KINDS as Readonly<Record<string, Kind>>)[role];
    const input = `sensors.${role}`;
    if (kind === undefined) {
      const need = `for one of the channels ${Object.keys(CHANNEL_KINDS).join(', ')}`;
      return [{ code: 'unknown', input, need, got: role, mend: 'Is the name misspelt?' }];
    }
    if (sensor?.kind === kind) return [];
    return [
      { code: 'kind', input, need: `a sensor of ${kind}`, got: sensor ? `one of ${sensor.kind}` : 'nothing', mend: '' },
    ];
  });
}

/** Two engine speeds from the option, rpm where they are plain numbers. */
export function speedsOf(
  range: NonNullable<CompareOptions['engineSpeed']>,
): readonly [Quantity<'rotational speed'>, Quantity<'rotational speed'>] {
  const [from, to] = range.map((speed) => (typeof speed === 'number' ? rotationalSpeed(speed, 'rpm') : speed)) as [
    Quantity<'rotational speed'>,
    Quantity<'rotational speed'>,
  ];
  if (!(to.si > from.si)) {
    throw new CalculationError('compare', [
      {
        code: 'impossible',
        input: 'engineSpeed',
        need: 'two speeds, the lower first',
        got: `${String(from)} and ${String(to)}`,
        mend: '',
      },
    ]);
  }
  return [from, to];
}

/** The unit kinds that the compared quantities have. */
export const KIND_OF_COMPARED = {
  power: 'power',
  torque: 'torque',
  'air flow': 'mass flow',
  'air per cycle': 'mass',
} as const satisfies Record<ComparedQuantity, Kind>;
