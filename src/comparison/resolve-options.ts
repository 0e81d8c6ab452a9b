import {
  angle,
  meanEffectivePressure,
  percent,
  pressureDifference,
  rotationalSpeed,
  temperatureDifference,
  time,
} from '../units/index.js';
import { checkOptions } from './check-options.js';
import { asSpeed } from './speeds.js';
import type { AcceptanceLimits, CompareOptions, ResolvedOptions } from './options.js';

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
  offLoad: time(0.2, 's'),
  missing: 0.1,
  mixtureBetweenSetUps: 0.03,
  changeBetweenSetUps: 0.2,
  sparkBetweenSetUps: angle(1, '°'),
  engineTemperatureBetweenSetUps: temperatureDifference(5, 'K'),
  startTemperatureBetweenSetUps: temperatureDifference(6, 'K'),
  humidity: pressureDifference(0.5, 'kPa'),
  humidityBetweenSetUps: pressureDifference(0.3, 'kPa'),
  inletRiseBetweenSetUps: temperatureDifference(4, 'K'),
  roomTemperatureBetweenSetUps: temperatureDifference(3, 'K'),
  barometerBetweenSetUps: pressureDifference(0.5, 'kPa'),
  barometerPerHour: pressureDifference(0.5, 'kPa'),
  fuelPressureBetweenSetUps: pressureDifference(30, 'kPa'),
  meanEffectivePressure: meanEffectivePressure(40, 'bar'),
};

/** Checks the options and fills in what was left out. */
export function resolveOptions(options: CompareOptions): ResolvedOptions {
  checkOptions(options);
  return {
    step: options.step ?? rotationalSpeed(100, 'rpm'),
    bandwidth: options.bandwidth ?? rotationalSpeed(200, 'rpm'),
    worthwhile: options.worthwhile,
    loggedPower: options.loggedPower ?? 'unknown',
    measuredAt: options.measuredAt ?? '',
    confidence: options.confidence ?? 0.95,
    order: options.order,
    drift: options.drift,
    leaveOut: options.leaveOut ?? {},
    overrule: options.overrule ?? {},
    limits: { ...usualLimits, ...given(options.limits) },
    sensors: options.sensors ?? {},
    sensorsBySetUp: options.sensorsBySetUp ?? {},
    setUps: options.setUps ?? 1,
    bestTorqueSpark: options.bestTorqueSpark,
    bestTorqueSparkBySetUp: options.bestTorqueSparkBySetUp ?? {},
    boostControl: options.boostControl,
    powerPerLambda: options.powerPerLambda,
    predicted: options.predicted,
    prepare: options.prepare,
    prepareBySetUp: options.prepareBySetUp ?? {},
    settled: options.settled,
    sensorLags: options.sensorLags ?? {},
    sweptVolume: options.sweptVolume,
    strokes: options.strokes ?? 4,
    overallRatio: options.overallRatio,
    atSpeeds: (options.atSpeeds ?? []).map(asSpeed),
    units: { power: 'kW', torque: 'N·m', 'mass flow': 'g/s', mass: 'g', ...given(options.units) },
  };
}

/** Without the names that are there but undefined, which would put a default out. */
function given<T extends object>(options: T | undefined): T {
  return Object.fromEntries(Object.entries(options ?? {}).filter(([, value]) => value !== undefined)) as T;
}
