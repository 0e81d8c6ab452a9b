import type { Kind, Quantity, UnitPreferences } from '../units/index.js';
import type { Sensor } from '../calculation/index.js';
import type { ChannelKind, ChannelRole } from '../sweep/index.js';

/** What pulls are compared by. */
export type ComparedQuantity = 'power' | 'torque' | 'air flow' | 'air per cycle';

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
  /** How many comparisons are made at once: their bands and intervals share the chance of error. 1 when left out. */
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

/** The instruments of one set-up: its own where it had others. */
export function sensorsOf(setUp: string, { sensors, sensorsBySetUp }: ResolvedOptions): SensorSet {
  return { ...sensors, ...sensorsBySetUp[setUp] };
}

/** How sure each interval by itself must be, where several comparisons share the chance of error (Bonferroni). */
export function ownConfidence({
  confidence,
  setUps = 1,
}: {
  readonly confidence: number;
  readonly setUps?: number | undefined;
}): number {
  return 1 - (1 - confidence) / setUps;
}

/** The unit kinds that the compared quantities have. */
export const KIND_OF_COMPARED = {
  power: 'power',
  torque: 'torque',
  'air flow': 'mass flow',
  'air per cycle': 'mass',
} as const satisfies Record<ComparedQuantity, Kind>;
