import { CalculationError, isKind, isQuantity, type Kind, type Problem, type Quantity } from '../units/index.js';
import { describe, withArticle } from '../units/internal.js';
import { findUnit } from '../units/unit.js';
import { CHANNEL_KINDS } from '../sweep/index.js';
import type { AcceptanceLimits, CompareOptions, SensorSet } from './options.js';
import { bestTorqueSparkProblems } from './best-torque-spark.js';
import { ownPreparationProblems, prepareProblems } from './prepared.js';
import { sensorLagProblems } from './sensor-lags.js';
import { asSpeed, isSpeed } from './speeds.js';
import { listed } from './words.js';

/** What an option must be; every option of a comparison is here, so that a misspelt one is known. */
type Check = (input: string, value: unknown) => Problem[];

const problem = (code: Problem['code'], input: string, need: string, value: unknown, mend = ''): Problem[] => [
  { code, input, need, got: describe(value), mend },
];

const text: Check = (input, value) => (typeof value === 'string' ? [] : problem('kind', input, 'text', value));

const oneOf =
  (...choices: readonly string[]): Check =>
  (input, value) =>
    choices.includes(value as string)
      ? []
      : problem('unknown', input, listed(choices.map((one) => `'${one}'`)).replace(' and ', ' or '), value);

const above =
  (kind: Kind, example: string): Check =>
  (input, value) =>
    isQuantity(value) && value.kind === kind && value.si > 0
      ? []
      : problem(
          isQuantity(value) && value.kind === kind ? 'impossible' : 'kind',
          input,
          `${withArticle(kind)} above zero`,
          value,
          `Write for example ${example}.`,
        );

const share =
  (example: string): Check =>
  (input, value) =>
    typeof value === 'number' && value > 0 && value < 1
      ? []
      : problem('impossible', input, 'a plain number between 0 and 1', value, `Write for example ${example}.`);

const LIMITS: Readonly<Record<keyof AcceptanceLimits, Check>> = {
  mixture: share('0.05'),
  boost: above('pressure difference', "pressureDifference(6, 'kPa')"),
  startTemperature: above('temperature difference', "temperatureDifference(12, 'K')"),
  engineTemperature: above('temperature difference', "temperatureDifference(12, 'K')"),
  fuelPressure: above('pressure difference', "pressureDifference(50, 'kPa')"),
  inletRise: above('temperature difference', "temperatureDifference(8, 'K')"),
  barometer: above('pressure difference', "pressureDifference(1, 'kPa')"),
  rampRate: above('ratio', 'percent(15)'),
  offLoad: above('time', "time(0.2, 's')"),
  missing: share('0.1'),
  mixtureBetweenSetUps: share('0.03'),
  changeBetweenSetUps: share('0.2'),
  sparkBetweenSetUps: above('angle', "angle(1, '°')"),
  engineTemperatureBetweenSetUps: above('temperature difference', "temperatureDifference(5, 'K')"),
  startTemperatureBetweenSetUps: above('temperature difference', "temperatureDifference(6, 'K')"),
  humidity: above('pressure difference', "pressureDifference(0.5, 'kPa')"),
  humidityBetweenSetUps: above('pressure difference', "pressureDifference(0.3, 'kPa')"),
  inletRiseBetweenSetUps: above('temperature difference', "temperatureDifference(4, 'K')"),
  roomTemperatureBetweenSetUps: above('temperature difference', "temperatureDifference(3, 'K')"),
  barometerBetweenSetUps: above('pressure difference', "pressureDifference(0.5, 'kPa')"),
  barometerPerHour: above('pressure difference', "pressureDifference(0.5, 'kPa')"),
  fuelPressureBetweenSetUps: above('pressure difference', "pressureDifference(30, 'kPa')"),
  meanEffectivePressure: above('mean effective pressure', "meanEffectivePressure(40, 'bar')"),
};

const limits: Check = (input, value) => {
  if (!isRecord(value)) return problem('kind', input, 'an object of limits by name', value);
  return checkEach(value, LIMITS, (name) => `${input}.${name}`);
};

const reasons: Check = (input, value) => {
  const mend = `Write ${input}: { 'set-up/pull 2.csv': 'why' }.`;
  if (!isRecord(value)) return problem('kind', input, 'an object of reasons by pull', value, mend);
  return Object.entries(value).flatMap(([pull, reason]) =>
    typeof reason === 'string' && reason.trim() !== ''
      ? []
      : problem('missing', `${input}['${pull}']`, 'the reason, which the report prints', reason || undefined, mend),
  );
};

const engineSpeed: Check = (input, value) => {
  const need = 'two engine speeds, the lower first';
  const mend = 'Write [3500, 6500] for rpm, or two of rotationalSpeed(value, unit).';
  if (!Array.isArray(value) || value.length !== 2 || !value.every(isSpeed)) {
    return problem('kind', input, need, value, mend);
  }
  const [from, to] = (value as [number, number]).map(asSpeed) as [Quantity, Quantity];
  if (to.si > from.si) return [];
  return [{ code: 'impossible', input, need, got: `${String(from)} and ${String(to)}`, mend }];
};

const atSpeeds: Check = (input, value) =>
  Array.isArray(value) && value.every(isSpeed)
    ? []
    : problem('kind', input, 'a list of engine speeds', value, 'Write [4000, 5000] for rpm.');

const order: Check = (input, value) =>
  Array.isArray(value) && value.every((name) => typeof name === 'string')
    ? []
    : problem('kind', input, 'a list of set-ups, one for each pull', value, "Write ['stock core', 'tall core', ...].");

const worthwhile: Check = (input, value) =>
  isQuantity(value) && value.si > 0
    ? []
    : problem('impossible', input, 'a difference above zero', value, "Write for example power(2, 'kW').");

const confidence: Check = (input, value) =>
  typeof value === 'number' && value > 0.5 && value < 1
    ? []
    : problem('impossible', input, 'between 0.5 and 1', value, 'For 95 % write 0.95.');

const setUps: Check = (input, value) =>
  Number.isInteger(value) && (value as number) >= 1 ? [] : problem('impossible', input, 'a whole number from 1', value);

const units: Check = (input, value) => {
  if (!isRecord(value)) return problem('kind', input, 'units by kind, such as usShop', value);
  return Object.entries(value).flatMap(([kind, unit]) => {
    if (!isKind(kind))
      return problem('unknown', `${input}['${kind}']`, 'for a kind of quantity', unit, 'Is the name misspelt?');
    return typeof unit === 'string' && findUnit(kind, unit) !== undefined
      ? []
      : problem('unknown', `${input}['${kind}']`, `a unit of ${withArticle(kind)}`, unit);
  });
};

const sensors: Check = (input, value) => {
  if (!isRecord(value)) return problem('kind', input, 'an object of sensors by channel', value);
  return Object.entries(value as SensorSet).flatMap(([role, sensor]): Problem[] => {
    const kind = Object.hasOwn(CHANNEL_KINDS, role)
      ? (CHANNEL_KINDS as Readonly<Record<string, Kind>>)[role]
      : undefined;
    const name = `${input}.${role}`;
    if (kind === undefined) {
      const need = `for one of the channels ${Object.keys(CHANNEL_KINDS).join(', ')}`;
      return [{ code: 'unknown', input: name, need, got: role, mend: 'Is the name misspelt?' }];
    }
    if (sensor?.kind === kind) return [];
    const got = sensor ? `one of ${sensor.kind}` : 'nothing';
    return [{ code: 'kind', input: name, need: `a sensor of ${kind}`, got, mend: '' }];
  });
};

const sensorsBySetUp: Check = (input, value) => {
  if (!isRecord(value)) return problem('kind', input, 'an object of sensors by set-up', value);
  return Object.values(value).flatMap((set) => sensors('sensors', set));
};

const bestTorqueSparkBySetUp: Check = (input, value) => {
  if (!isRecord(value)) return problem('kind', input, 'an object of sparks of best torque by set-up', value);
  return Object.entries(value).flatMap(([name, spark]) => bestTorqueSparkProblems(`${input}['${name}']`, spark));
};

const powerPerLambda: Check = (input, value) =>
  isQuantity(value) && value.kind === 'ratio' && Math.abs(value.si) <= 10
    ? []
    : problem(
        isQuantity(value) && value.kind === 'ratio' ? 'impossible' : 'kind',
        input,
        'a ratio: the share that it changes by from lambda 0.8 to 1.8',
        value,
        "For 0.4 % less at each 0.01 leaner write measured('power per lambda', ratio(-0.4), { halfWidth: ratio(0.2) }).",
      );

const predicted: Check = (input, value) => {
  const wrong = problem(
    'kind',
    input,
    'a relative change as a ratio, or { value, low, high } of one',
    value,
    "For 3 % more write measured('predicted', percent(3), { halfWidth: percent(1) }).",
  );
  if (isQuantity(value)) return value.kind === 'ratio' && value.si > -1 ? [] : wrong;
  if (!isRecord(value)) return wrong;
  const parts = [value['low'], value['value'], value['high']];
  if (!parts.every((part) => isQuantity(part) && part.kind === 'ratio')) return wrong;
  const [low, middle, high] = (parts as Quantity<'ratio'>[]).map((part) => part.si) as [number, number, number];
  return low <= middle && middle <= high && middle > -1 ? [] : wrong;
};

const boostControl: Check = (input, value) => {
  const need = "'open', 'closed', or one of them by set-up";
  const ways = isRecord(value) ? Object.values(value) : [value];
  return ways.length > 0 && ways.every((way) => way === 'open' || way === 'closed')
    ? []
    : problem('unknown', input, need, value, "Write boostControl: 'closed', or { 'stock core': 'open', … }.");
};

const OPTIONS: Readonly<Record<keyof CompareOptions, Check>> = {
  engineSpeed,
  step: above('rotational speed', "rotationalSpeed(100, 'rpm')"),
  bandwidth: above('rotational speed', "rotationalSpeed(200, 'rpm')"),
  compare: oneOf('power', 'torque', 'air flow', 'air per cycle'),
  worthwhile,
  loggedPower: oneOf('observed', 'corrected', 'unknown'),
  measuredAt: text,
  confidence,
  order,
  drift: oneOf('take out', 'leave in'),
  leaveOut: reasons,
  overrule: reasons,
  limits,
  sensors,
  sensorsBySetUp,
  atSpeeds,
  setUps,
  bestTorqueSpark: bestTorqueSparkProblems,
  bestTorqueSparkBySetUp,
  boostControl,
  powerPerLambda,
  predicted,
  prepare: prepareProblems,
  prepareBySetUp: ownPreparationProblems,
  settled: oneOf('cut', 'leave in'),
  sensorLags: sensorLagProblems,
  sweptVolume: above('volume', "volume(1.8, 'L')"),
  strokes: (input, value) => (value === 2 || value === 4 ? [] : problem('impossible', input, '2 or 4', value)),
  overallRatio: above('ratio', 'ratio(8.2)'),
  units,
};

/** Everything that is wrong with the options; a misspelt one would be left undone, silently. */
export function checkOptions(options: CompareOptions): void {
  const problems = isRecord(options)
    ? checkEach(options, OPTIONS, (name) => name)
    : problem('kind', 'options', 'an object of options by name', options);
  if (problems.length > 0) throw new CalculationError('compare', problems);
}

function checkEach(
  given: Readonly<Record<string, unknown>>,
  checks: Readonly<Record<string, Check>>,
  nameOf: (name: string) => string,
): Problem[] {
  return Object.entries(given).flatMap(([name, value]) => {
    if (!Object.hasOwn(checks, name)) {
      return problem(
        'unknown',
        nameOf(name),
        `one of ${Object.keys(checks).join(', ')}`,
        value,
        'Is the name misspelt?',
      );
    }
    return value === undefined ? [] : checks[name]!(nameOf(name), value);
  });
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
