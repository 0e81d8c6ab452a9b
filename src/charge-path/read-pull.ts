import { CalculationError, type Problem } from '../calculation/index.js';
import { diagnose } from '../units/internal.js';
import { rotationalSpeed, type Kind, type Operation, type Quantity } from '../units/index.js';
import type { Installation } from './installation.js';
import type { SensorModel } from './sensor.js';

/** How a pull is driven, and how the core and the sensor stand at its beginning. */
export interface PullOptions {
  readonly from: Quantity<'rotational speed'>;
  /** The same as `from` holds the speed. */
  readonly to: Quantity<'rotational speed'>;
  readonly duration: Quantity<'time'>;
  /** Temperature of the core's metal at the beginning; settled at the first speed when left out. */
  readonly coreTemperature?: Quantity<'temperature'>;
  /** Time between two rows; a hundredth of the pull when left out. */
  readonly step?: Quantity<'time'>;
  /** Cells of the core along each flow, 1 to 50; 10 when left out. One cell is a wall of one temperature. */
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
  readonly cells: number;
  readonly heatCapacity: number;
  readonly coreTemperature: number | undefined;
  readonly sensor: SensorModel | undefined;
  speedAt(time: number): Quantity<'rotational speed'>;
}

const NAME = 'pull in time';
const USUAL_STEPS = 100;
const MOST_STEPS = 1e5;
const USUAL_CELLS = 10;
const MOST_CELLS = 50;

type Wanted = readonly [name: string, value: unknown, kind: Kind, min: number, max: number];

/** Checks a pull and fills in what was left out. */
export function readPull(installation: Installation, options: PullOptions): ReadPull {
  const { from, to, duration, coreTemperature, step, sensor, cells = USUAL_CELLS } = options ?? {};
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
  return {
    installation,
    steps,
    step: duration.si / steps,
    cells,
    heatCapacity: core.heatCapacity!.si,
    coreTemperature: coreTemperature?.si,
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

function fits(installation: Installation, cells: number): readonly Problem[] {
  const problems: Problem[] = [];
  const { core, cooling } = installation ?? {};
  if (core !== undefined && (core.arrangement !== 'crossflowUnmixed' || core.passes !== undefined)) {
    const need = "'crossflowUnmixed' in one pass, the only one whose metal is followed in time";
    problems.push({ code: 'rule', input: 'core.arrangement', need, got: `'${core.arrangement}'`, mend: '' });
  }
  if (cooling?.by === 'liquid') {
    const mend =
      'A liquid loop takes minutes to settle; give the temperature of its liquid as that of the cooling air.';
    problems.push({ code: 'rule', input: 'cooling.by', need: "'air' in a pull", got: "'liquid'", mend });
  }
  if (!Number.isInteger(cells) || cells < 1 || cells > MOST_CELLS)
    problems.push({
      code: 'impossible',
      input: 'cells',
      need: `a whole number from 1 to ${MOST_CELLS}`,
      got: String(cells),
      mend: '',
    });
  return problems;
}
