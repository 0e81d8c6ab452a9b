import { CalculationError, type Problem } from '../calculation/index.js';
import { diagnose } from '../units/internal.js';
import { rotationalSpeed, type Kind, type Operation, type Quantity } from '../units/index.js';
import { arrangements } from './arrangements.js';
import type { Installation } from './installation.js';
import { PullCore, type HeatStore } from './pull-core.js';
import type { SensorModel } from './sensor.js';
import { wallNetwork } from './wall-network.js';

/** How a pull is driven, and how the core and the sensor stand at its beginning. */
export interface PullOptions {
  readonly from: Quantity<'rotational speed'>;
  /** The same as `from` holds the speed. */
  readonly to: Quantity<'rotational speed'>;
  readonly duration: Quantity<'time'>;
  /** Temperature of the core's metal at the beginning; settled at the first speed when left out. */
  readonly coreTemperature?: Quantity<'temperature'>;
  /** Temperature of the liquid of a loop at the beginning; that of the core when left out. */
  readonly liquidTemperature?: Quantity<'temperature'>;
  /** Time between two rows; a hundredth of the pull when left out. */
  readonly step?: Quantity<'time'>;
  /** Cells of each pass along each flow, at most 400 in all; 10 when left out. One cell across is a wall of one temperature. */
  readonly cells?: number;
  /** Without one the reading is the charge temperature. */
  readonly sensor?: ChargeSensor;
}

/** A charge temperature sensor: slow, and warmed by the wall it is screwed into. */
export interface ChargeSensor {
  /** Time in which it goes 63 % of a step. */
  readonly timeConstant: Quantity<'time'>;
  /** Flow at which that holds; it falls with the root of the flow. The same at any flow when left out. */
  readonly atFlow?: Quantity<'mass flow'>;
  /** Wall that warms it, and the share of the way there at which it settles: 0.03 to 0.23 for steel probes. */
  readonly wall?: { readonly temperature: Quantity<'temperature'>; readonly share: Quantity<'ratio'> };
  /** What it reads at the beginning; the charge temperature when left out. */
  readonly startReading?: Quantity<'temperature'>;
}

/** A pull with everything said, in SI numbers. */
export interface ReadPull {
  readonly installation: Installation;
  readonly steps: number;
  readonly step: number;
  readonly core: PullCore;
  readonly heatCapacity: number;
  readonly loopHeatCapacity: number | undefined;
  /** Metal and liquid at the beginning, in K; undefined where they are to be settled. */
  readonly start: HeatStore | undefined;
  readonly sensor: SensorModel | undefined;
  speedAt(time: number): Quantity<'rotational speed'>;
}

const NAME = 'pull in time';
const USUAL_STEPS = 100;
const MOST_STEPS = 1e5;
const USUAL_CELLS = 10;
const MOST_CELLS = 400;

type Wanted = readonly [name: string, value: unknown, kind: Kind, min: number, max: number];

/** Checks a pull and fills in what was left out. */
export function readPull(installation: Installation, options: PullOptions): ReadPull {
  const { from, to, duration, coreTemperature, liquidTemperature, step, sensor, cells = USUAL_CELLS } = options ?? {};
  const core = installation?.core;
  const wanted: Wanted[] = [
    ['from', from, 'rotational speed', 1, 500],
    ['to', to, 'rotational speed', 1, 500],
    ['duration', duration, 'time', 0.01, 3600],
    ['core.heatCapacity', core?.heatCapacity, 'heat capacity', 10, 5e5],
  ];
  const may = (...[name, value, kind, min, max]: Wanted): void => {
    if (value !== undefined) wanted.push([name, value, kind, min, max]);
  };
  may('coreTemperature', coreTemperature, 'temperature', 190, 600);
  may('liquidTemperature', liquidTemperature, 'temperature', 190, 600);
  const { cooling } = installation ?? {};
  const isLiquid = cooling?.by === 'liquid';
  if (isLiquid) wanted.push(['cooling.heatCapacity', cooling.heatCapacity, 'heat capacity', 10, 1e7]);
  may('step', step, 'time', 1e-3, 3600);
  if (sensor !== undefined) {
    wanted.push(['sensor.timeConstant', sensor.timeConstant, 'time', 1e-3, 600]);
    may('sensor.atFlow', sensor.atFlow, 'mass flow', 1e-4, 5);
    may('sensor.wall.temperature', sensor.wall?.temperature, 'temperature', 190, 600);
    may('sensor.wall.share', sensor.wall?.share, 'ratio', 0, 1);
    may('sensor.startReading', sensor.startReading, 'temperature', 190, 600);
  }
  const problems = [...kindProblems(wanted), ...fits(installation, cells)];
  if (problems.length > 0) throw new CalculationError(NAME, problems);
  const steps = Math.max(1, Math.round(duration.si / (step?.si ?? duration.si / USUAL_STEPS)));
  if (steps > MOST_STEPS)
    throw new CalculationError(NAME, [
      {
        code: 'impossible',
        input: 'step',
        need: `so long that at most ${MOST_STEPS} make up the pull`,
        got: `${steps}`,
        mend: '',
      },
    ]);
  const metal = coreOfPull(installation, cells);
  const begin = coreTemperature ?? (isLiquid ? liquidTemperature : undefined);
  return {
    installation,
    steps,
    step: duration.si / steps,
    core: metal,
    heatCapacity: core.heatCapacity!.si,
    loopHeatCapacity: isLiquid ? cooling.heatCapacity!.si : undefined,
    start: begin && metal.uniform(begin.si, isLiquid ? (liquidTemperature ?? begin).si : undefined),
    sensor: sensor && {
      timeConstant: sensor.timeConstant.si,
      atFlow: sensor.atFlow?.si,
      wallShare: sensor.wall?.share.si ?? 0,
      wallTemperature: sensor.wall?.temperature.si ?? 0,
      startTemperature: sensor.startReading?.si,
    },
    speedAt: (time) => rotationalSpeed(60 * (from.si + (to.si - from.si) * (time / duration.si)), 'rpm'),
  };
}

function kindProblems(wanted: readonly Wanted[]): readonly Problem[] {
  const inputs = wanted.map(([name, , kind, min, max]) => ({ name, symbol: name, kind, min, max }));
  return diagnose(
    { name: NAME, inputs } as unknown as Operation,
    wanted.map(([, value]) => value),
  ).problems;
}

function coreOfPull({ core }: Installation, cells: number): PullCore {
  return new PullCore(wallNetwork(core.arrangement, core.passes?.si ?? 1, cells), core.heatCapacity!.si);
}

function fits(installation: Installation, cells: number): readonly Problem[] {
  const { core, cooling, inlet } = installation ?? {};
  const problems: Problem[] = [];
  const rule = (input: string, need: string, got: string, mend = ''): void => {
    problems.push({ code: 'rule', input, need, got, mend });
  };
  const passes = core?.passes?.si ?? 1;
  if (!Number.isInteger(passes)) rule('core.passes', 'a whole number where the metal is followed', String(passes));
  const air = cooling?.by === 'liquid' ? cooling.air : cooling;
  if (inlet?.recirculatedShare !== undefined || air?.recirculatedShare !== undefined)
    rule(
      'recirculatedShare',
      'left out in a pull',
      'a value',
      'The metal gives its heat to the air later than it takes it, and the air needs time to come round: neither is followed.',
    );
  if (!Number.isInteger(cells) || cells < 1)
    return [
      ...problems,
      { code: 'impossible', input: 'cells', need: 'a whole number from 1', got: String(cells), mend: '' },
    ];
  if (core === undefined || !arrangements.includes(core.arrangement) || problems.length > 0) return problems;
  const all = wallNetwork(core.arrangement, passes, cells).cells;
  if (all > MOST_CELLS)
    rule('cells', `so small that the core has at most ${MOST_CELLS} of them`, `${cells}, which makes ${all}`);
  return problems;
}
