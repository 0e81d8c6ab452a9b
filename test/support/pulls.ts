import { readPullsFrom, type Day, type LogFile } from '../../src/sweep/index.js';
import { seeded } from './random.js';

/** A made-up pull in the numbers of the tests' own engine; each field is what a test may change. */
export interface PullShape {
  /** Torque at 5000 rpm, N·m. */
  readonly torque?: number;
  /** Added torque by engine speed in thousands of rpm. */
  readonly extra?: (speed: number) => number;
  readonly lambda?: (speed: number) => number;
  /** Gauge, kPa. */
  readonly boost?: number;
  /** °C at the start of the pull. */
  readonly charge?: number;
  readonly airFlow?: (speed: number) => number;
  /** Seconds since midnight. */
  readonly clock?: number;
  readonly torqueUnit?: string;
  readonly oil?: number;
  /** °C; not logged when left out. */
  readonly coolant?: number;
  /** °C of the room's air. */
  readonly room?: number;
  /** Of the room's air, %. */
  readonly humidity?: number;
  /** kPa by which boost is lower, by seconds since the start. */
  readonly building?: (seconds: number) => number;
  /** °C by which the charge is warmer, by seconds since the start. */
  readonly warming?: (seconds: number) => number;
  /** hPa. */
  readonly barometer?: number;
  /** Seconds from row to row, of 20 rpm. */
  readonly seconds?: number;
  /** Gauge, kPa. */
  readonly fuelPressure?: number;
  /** Degrees before top dead centre; not logged when left out. */
  readonly spark?: (speed: number) => number;
  readonly from?: number;
  readonly to?: number;
}

/** The log of a pull from 3000 to 6500 rpm. */
export function pullLog(shape: PullShape = {}): string {
  const { torque = 240, extra = () => 0, lambda = () => 0.82, boost = 110, charge = 35, clock, oil = 95 } = shape;
  const { coolant, humidity = 45, building = () => 0, warming = () => 0 } = shape;
  const { torqueUnit = 'N m', from = 3000, to = 6500, barometer = 941.2, seconds = 0.05, fuelPressure = 300 } = shape;
  const header = [
    'Time (s)',
    'Engine speed (rpm)',
    `Torque (${torqueUnit})`,
    'Boost (kPa)',
    'Charge temp (°C)',
    'Lambda',
    'Air mass flow (g/s)',
  ];
  header.push(
    'Barometer (hPa)',
    'Room temp (°C)',
    'Humidity (%)',
    'Oil temp (°C)',
    'Fuel pressure (kPa)',
    ...(clock === undefined ? [] : ['Clock (s)']),
    ...(coolant === undefined ? [] : ['Coolant temp (°C)']),
    ...(shape.spark === undefined ? [] : ['Ignition advance (deg BTDC)']),
  );
  const rows = Array.from({ length: (to - from) / 20 + 1 }, (_, i) => {
    const speed = (from + 20 * i) / 1000;
    const shown = torque + extra(speed) - 4 * (speed - 5) ** 2;
    const airFlow = shape.airFlow?.(speed) ?? 30 * speed;
    const row = [
      i * seconds,
      speed * 1000,
      shown,
      boost - building(i * seconds),
      charge + i * 0.02 + warming(i * seconds),
      lambda(speed),
      airFlow,
      barometer,
      shape.room ?? 18,
      humidity,
      oil,
      fuelPressure,
    ];
    const more = [
      ...(clock === undefined ? [] : [clock + i * seconds]),
      ...(coolant === undefined ? [] : [coolant]),
      ...(shape.spark ? [shape.spark(speed)] : []),
    ];
    return [...row, ...more].map((value) => String(Number(value.toFixed(6)))).join(',');
  });
  return [header.join(','), ...rows].join('\n');
}

/** A day of made-up pulls by set-up. */
export function dayOf(setups: Readonly<Record<string, readonly PullShape[]>>): Day {
  const files: LogFile[] = Object.entries(setups).flatMap(([setup, pulls]) =>
    pulls.map((shape, i) => ({ path: `${setup}/pull ${i + 1}.csv`, setup, data: pullLog(shape) })),
  );
  return readPullsFrom(files);
}

/** Pulls that scatter about a torque: normal, from a seed, with a wobble along the speed that is each pull's own. */
export function scattered(
  count: number,
  torque: number,
  scatter: number,
  seed: number,
  shape: PullShape = {},
): PullShape[] {
  const random = seeded(seed);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  return Array.from({ length: count }, () => {
    const offset = scatter * normal();
    const wobble = 0.7 * scatter * normal();
    const phase = 6 * random();
    return {
      ...shape,
      torque: torque + offset,
      airFlow: (speed) => (shape.airFlow?.(speed) ?? 30 * speed) * (1 + offset / torque),
      extra: (speed) => (shape.extra?.(speed) ?? 0) + wobble * Math.sin(2 * speed + phase),
    };
  });
}

/** Start times that alternate two set-ups A B B A ..., as seconds since midnight. */
export function alternating(
  baseline: readonly PullShape[],
  candidate: readonly PullShape[],
): readonly [PullShape[], PullShape[]] {
  const place = (i: number, second: boolean): number => 36000 + 600 * (2 * i + ((i % 2 === 0) === second ? 1 : 0));
  return [
    baseline.map((shape, i) => ({ ...shape, clock: place(i, false) })),
    candidate.map((shape, i) => ({ ...shape, clock: place(i, true) })),
  ];
}
