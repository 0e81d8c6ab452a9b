import type { Kind, Quantity, UnitPreferences } from '../units/index.js';
import type { Sensor } from '../calculation/index.js';
import type { ChannelKind, ChannelRole, PrepareOptions, SensorLag } from '../sweep/index.js';
import type { BestTorqueSpark } from './best-torque-spark.js';

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
  /** Largest difference of the vapour pressure of the room's air from the set-up's middle pull. */
  readonly humidity?: Quantity<'pressure difference'>;
  /** Longest time within the range for which a pull may make no load: torque below a quarter of its middle value. A lift of the throttle is longer. */
  readonly offLoad?: Quantity<'time'>;
  /** Largest share of the range without the compared quantity. */
  readonly missing?: number;
  /** Largest difference of mean lambda between the two set-ups; beyond it they cannot be compared. */
  readonly mixtureBetweenSetUps?: number;
  /**
   * Largest change of torque or power between the two set-ups, as a share, that charge cooling may make; beyond it the units are asked
   * about, unless air flow, fuel flow or charge density changed with it.
   */
  readonly changeBetweenSetUps?: number;
  /** Largest difference of the mean oil or coolant temperature at the start between the two set-ups; beyond it there is a reservation. */
  readonly engineTemperatureBetweenSetUps?: Quantity<'temperature difference'>;
  /** The same for the charge temperature at the first readings of the pulls, before load: what a rest has left in the core. */
  readonly startTemperatureBetweenSetUps?: Quantity<'temperature difference'>;
  /** The same for the vapour pressure of the room's air. */
  readonly humidityBetweenSetUps?: Quantity<'pressure difference'>;
  /** The same for the air before the compressor, above the room: hot air breathed again by one set-up. */
  readonly inletRiseBetweenSetUps?: Quantity<'temperature difference'>;
  /** The same for the room, or for the air before the compressor where the room is not logged. */
  readonly roomTemperatureBetweenSetUps?: Quantity<'temperature difference'>;
  /** The same for the barometer. */
  readonly barometerBetweenSetUps?: Quantity<'pressure difference'>;
  /** Fastest that weather moves the barometer, for each hour between two set-ups; beyond it a barometer reduced to sea level is asked about. */
  readonly barometerPerHour?: Quantity<'pressure difference'>;
  /** Largest difference of the lowest fuel pressure between the two set-ups; beyond it there is a reservation. */
  readonly fuelPressureBetweenSetUps?: Quantity<'pressure difference'>;
  /** Brake mean effective pressure beyond which the units are asked about, of a four-stroke engine; half of it of a two-stroke. */
  readonly meanEffectivePressure?: Quantity<'mean effective pressure'>;
  /** Largest difference of mean spark advance between the two set-ups; beyond it spark was not equal, and the answer says so. */
  readonly sparkBetweenSetUps?: Quantity<'angle'>;
}

/** The instruments behind the channels of a log, by channel. */
export type SensorSet = { readonly [R in ChannelRole]?: Sensor<ChannelKind<R>> };

/** A predicted share with the interval that holds it. */
export interface PredictedChange {
  readonly value: Quantity<'ratio'>;
  readonly low: Quantity<'ratio'>;
  readonly high: Quantity<'ratio'>;
}

/** What may honestly be done to one set-up alone: undoing what another sensor, or a sensor at another place, shows late. */
export type OwnPreparation = Pick<PrepareOptions, 'delay' | 'lag'>;

/** Time constants of sensors: from a data sheet, or as `lagOfStep` and `lagOfRamps` give them. */
export type SensorLags = { readonly [R in ChannelRole]?: Quantity<'time'> | SensorLag };

/** How boost was made. */
export type BoostLoop = 'open' | 'closed';

/** How two set-ups are compared. */
export interface CompareOptions {
  /** Range of engine speed: two numbers are rpm. Left out, what all pulls share from where boost has built up in each; see `settled`. */
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
  /**
   * Spark of best torque, from a spark loop at constant speed: with it spark gets a share of its own in the change. One angle, or
   * several along the engine speed.
   */
  readonly bestTorqueSpark?: BestTorqueSpark;
  /** The same for single set-ups, by name; they go before {@link CompareOptions.bestTorqueSpark}. */
  readonly bestTorqueSparkBySetUp?: Readonly<Record<string, BestTorqueSpark>>;
  /** Whether boost was held to a target (`closed`) or followed the wastegate as it was set (`open`); by set-up where that differs. */
  readonly boostControl?: BoostLoop | Readonly<Record<string, BoostLoop>>;
  /**
   * Share that the compared quantity changes by for one unit of lambda, below zero where leaner is less: `ratio(-0.4)` is 0.4 % less for
   * each 0.01. A figure of the engine's own, such as from a mixture loop.
   */
  readonly powerPerLambda?: Quantity<'ratio'>;
  /** What was predicted, as a share of the baseline: `percent(3)` is 3 % more. */
  readonly predicted?: Quantity<'ratio'> | PredictedChange;
  /** What is done to every pull of both sides before it is compared: outliers, repeated readings, delays, lags, inertia. */
  readonly prepare?: PrepareOptions;
  /** Delays and lags of sensors that were another one in a set-up, by its name; they go before those of {@link CompareOptions.prepare}. */
  readonly prepareBySetUp?: Readonly<Record<string, OwnPreparation>>;
  /**
   * What to do about the start of the pulls, in which boost still builds up. Left out, the range that all pulls share begins where it has
   * built up in each of them, and a range that was given is kept as it is. `cut` shortens that one too, `leave in` cuts nothing.
   */
  readonly settled?: 'cut' | 'leave in';
  /** Time constants of sensors: with that of the charge temperature it is told what its lag leaves in the split. */
  readonly sensorLags?: SensorLags;
  /** Swept volume of all cylinders: with it a mean effective pressure that no engine reaches is asked about. */
  readonly sweptVolume?: Quantity<'volume'>;
  /** Strokes in a cycle; 4 when left out. */
  readonly strokes?: 2 | 4;
  /** Torque where it was measured over torque at the crank, for torque behind gears: 1 where the logger has divided by the ratio. */
  readonly overallRatio?: Quantity<'ratio'>;
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
  readonly bestTorqueSpark: CompareOptions['bestTorqueSpark'];
  readonly bestTorqueSparkBySetUp: Readonly<Record<string, BestTorqueSpark>>;
  readonly boostControl: CompareOptions['boostControl'];
  readonly powerPerLambda: CompareOptions['powerPerLambda'];
  readonly predicted: CompareOptions['predicted'];
  readonly prepare: PrepareOptions | undefined;
  readonly prepareBySetUp: Readonly<Record<string, OwnPreparation>>;
  readonly settled: 'cut' | 'leave in' | undefined;
  readonly sensorLags: SensorLags;
  readonly sweptVolume: Quantity<'volume'> | undefined;
  readonly strokes: 2 | 4;
  readonly overallRatio: Quantity<'ratio'> | undefined;
  readonly units: UnitPreferences;
}

/** The instruments of one set-up: its own where it had others. */
export function sensorsOf(setUp: string, { sensors, sensorsBySetUp }: ResolvedOptions): SensorSet {
  return { ...sensors, ...sensorsBySetUp[setUp] };
}

/** The spark of best torque of one set-up, where it was given. */
export function bestTorqueSparkOf(setUp: string, options: ResolvedOptions): BestTorqueSpark | undefined {
  return options.bestTorqueSparkBySetUp[setUp] ?? options.bestTorqueSpark;
}

/** How boost was made with one set-up, where that was told. */
export function boostControlOf(setUp: string, { boostControl }: ResolvedOptions): BoostLoop | undefined {
  return typeof boostControl === 'object' ? boostControl[setUp] : boostControl;
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
