import { percent, pressureDifference, rotationalSpeed, temperatureDifference } from '../units/index.js';
import { asSpeed, checkOptions } from './check-options.js';
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
  missing: 0.1,
  mixtureBetweenSetUps: 0.03,
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
    atSpeeds: (options.atSpeeds ?? []).map(asSpeed),
    units: { power: 'kW', torque: 'N·m', 'mass flow': 'g/s', mass: 'g', ...given(options.units) },
  };
}

/** Without the names that are there but undefined, which would put a default out. */
function given<T extends object>(options: T | undefined): T {
  return Object.fromEntries(Object.entries(options ?? {}).filter(([, value]) => value !== undefined)) as T;
}
