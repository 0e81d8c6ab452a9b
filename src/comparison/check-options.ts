import {
  CalculationError,
  isKind,
  isQuantity,
  rotationalSpeed,
  type Kind,
  type Problem,
  type Quantity,
} from '../units/index.js';
import { describe, withArticle } from '../units/internal.js';
import { findUnit } from '../units/unit.js';
import { CHANNEL_KINDS } from '../sweep/index.js';
import type { AcceptanceLimits, CompareOptions, SensorSet } from './options.js';
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
  missing: share('0.1'),
  mixtureBetweenSetUps: share('0.03'),
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

function isSpeed(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value) && value >= 0;
  return isQuantity(value) && value.kind === 'rotational speed' && value.si >= 0;
}

/** An engine speed, rpm where it is a plain number. */
export function asSpeed(speed: number | Quantity<'rotational speed'>): Quantity<'rotational speed'> {
  return typeof speed === 'number' ? rotationalSpeed(speed, 'rpm') : speed;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
