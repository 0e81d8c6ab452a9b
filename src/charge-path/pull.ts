import type { PullInTime } from './pull-result.js';
import { advanceCells, outletsOfCells, settledCells, type CellFlow } from '../intercooler/core-cells.js';
import { column, type Column } from '../units/index.js';
import type { Installation } from './installation.js';
import { crankTorque } from './output.js';
import { pullText } from './pull-text.js';
import { readPull, type PullOptions, type ReadPull } from './read-pull.js';
import type { AirSide } from './air-side.js';
import { readInstallation, type Path, type ThroughSoakingCore } from './read-installation.js';
import { NoSteadyPoint } from './refusal.js';
import { sensorAfter } from './sensor.js';
import { solvePath } from './solve-path.js';
import { walk } from './walk.js';
import type { PathOf, Unknowns, Walked } from './walked.js';
import { numbersOf, onNumbers } from './way.js';

/**
 * A pull through an installation in time: the engine runs up, and the metal of the core takes up heat meanwhile. Air and charge settle
 * within a fraction of a second, so every moment is a steady point of flow and pressure with the core as warm as it is then.
 *
 * Short pulls run on the cold stored in the core: one chilled beforehand, or still hot from the last pull, makes a difference that
 * fades with its time constant.
 *
 * @param installation - with `core.heatCapacity`; its core in crossflow, both flows unmixed, cooled by air.
 * @param options - engine speed from and to, how long it takes, how warm the core is, and the sensor.
 * @throws CalculationError if something is not said or impossible; {@link NoSteadyPoint} if at some moment there is no point, saying when.
 * @example
 * const pull = throughPull(hillClimbSpecial, {
 *   from: rotationalSpeed(3000, 'rpm'), to: rotationalSpeed(6500, 'rpm'), duration: time(10, 's'), coreTemperature: temperature(5, '°C'),
 * });
 * pull.chargeTemperature.in('°C')
 */
export function throughPull(installation: Installation, options: PullOptions): PullInTime {
  const pull = readPull(installation, options);
  const rows: Row[] = [];
  let walls: Float64Array | undefined;
  let near: Unknowns<number> | undefined;
  let sensor: number | undefined;
  const heat = { fromCharge: 0, toCoolant: 0, stored: 0 };
  for (let i = 0; i <= pull.steps; i++) {
    const at = i * pull.step;
    const path = readInstallation(installation, pull.speedAt(at));
    walls ??= pull.coreTemperature === undefined ? settledWalls(path, pull) : uniform(pull.cells, pull.coreTemperature);
    const moment = momentAt(installation, path, pull, walls, near);
    near = moment.walked.unknowns;
    const charge = moment.walked.manifold.temperature;
    const reading = pull.sensor === undefined ? charge : (sensor ?? pull.sensor.startTemperature ?? charge);
    rows.push({ at, moment, sensor: reading, core: mean(walls), ...heat });
    if (i === pull.steps) break;
    const step = advanceCells(pull.cells, pull.heatCapacity, walls, moment.flow, pull.step);
    walls = step.walls;
    heat.fromCharge += step.heatFromCharge;
    heat.toCoolant += step.heatToCoolant;
    heat.stored += step.heatStored;
    if (pull.sensor) sensor = sensorAfter(pull.sensor, reading, charge, moment.walked.humidFlow, pull.step);
  }
  return new Pull(installation, rows);
}

interface Moment {
  readonly speed: number;
  readonly walked: Walked<number>;
  readonly flow: CellFlow;
  readonly power: number;
  readonly torque: number;
}

interface Row {
  readonly at: number;
  readonly moment: Moment;
  readonly sensor: number;
  readonly core: number;
  readonly fromCharge: number;
  readonly toCoolant: number;
  readonly stored: number;
}

/** The point of flow and pressure with the core as warm as it is. */
function momentAt(
  installation: Installation,
  path: Path,
  pull: ReadPull,
  walls: Float64Array,
  near: Unknowns<number> | undefined,
): Moment {
  const cooling = path.cooling as AirSide;
  let flow: CellFlow | undefined;
  const soaking = (through: ThroughSoakingCore): number => {
    flow = cellFlowOf(through, cooling);
    return outletsOfCells(pull.cells, walls, flow).charge;
  };
  const numbers: PathOf<number> = numbersOf({ ...path, core: { ...path.core, soaking } });
  const found = solvePath(numbers, near);
  if (typeof found === 'string') throw new NoSteadyPoint(found, installation, path.speed);
  const walked = walk(onNumbers, numbers, found);
  const { power, torque } = crankTorque(onNumbers, numbers, walked);
  return { speed: path.speed.si, walked, flow: flow!, power, torque };
}

function cellFlowOf(through: ThroughSoakingCore, { freshFace, capacityRate }: AirSide): CellFlow {
  return {
    hotInlet: through.hotInlet,
    chargeCapacityRate: through.chargeCapacityRate,
    chargeUnits: through.chargeConductance / through.chargeCapacityRate,
    coolantInlet: freshFace.si,
    coolantCapacityRate: capacityRate.si,
    coolantUnits: through.coolantConductance / capacityRate.si,
  };
}

/** The metal as it is once the engine has run at the first speed for long: found by letting core and flow answer each other. */
function settledWalls(path: Path, pull: ReadPull): Float64Array {
  let walls = uniform(pull.cells, (path.cooling as AirSide).freshFace.si);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { flow } = momentAt(pull.installation, path, pull, walls, undefined);
    const next = settledCells(pull.cells, flow);
    const change = Math.max(...next.map((wall, i) => Math.abs(wall - walls[i]!)));
    walls = next;
    if (change < 1e-9) break;
  }
  return walls;
}

const MOST_ROUNDS = 60;

const uniform = (cells: number, temperature: number): Float64Array => new Float64Array(cells * cells).fill(temperature);

const mean = (walls: Float64Array): number => walls.reduce((sum, wall) => sum + wall, 0) / walls.length;

class Pull implements PullInTime {
  readonly installation: Installation;
  readonly #rows: readonly Row[];

  constructor(installation: Installation, rows: readonly Row[]) {
    this.installation = installation;
    this.#rows = rows;
  }

  get time(): Column<'time'> {
    return column(
      'time',
      this.#of(({ at }) => at),
      's',
    );
  }

  get engineSpeed(): Column<'rotational speed'> {
    return column(
      'rotational speed',
      this.#of(({ moment }) => 60 * moment.speed),
      'rpm',
    );
  }

  get coreOutletTemperature(): Column<'temperature'> {
    return celsius(this.#of(({ moment }) => moment.walked.unknowns.coreOutletTemperature));
  }

  get chargeTemperature(): Column<'temperature'> {
    return celsius(this.#of(({ moment }) => moment.walked.manifold.temperature));
  }

  get sensorReading(): Column<'temperature'> {
    return celsius(this.#of(({ sensor }) => sensor));
  }

  get coreTemperature(): Column<'temperature'> {
    return celsius(this.#of(({ core }) => core));
  }

  get manifoldPressure(): Column<'absolute pressure'> {
    return column(
      'absolute pressure',
      this.#of(({ moment }) => moment.walked.manifold.pressure / 1000),
      'kPa',
    );
  }

  get airFlow(): Column<'mass flow'> {
    return column(
      'mass flow',
      this.#of(({ moment }) => 1000 * moment.walked.unknowns.airFlow),
      'g/s',
    );
  }

  get power(): Column<'power'> {
    return column(
      'power',
      this.#of(({ moment }) => moment.power / 1000),
      'kW',
    );
  }

  get torque(): Column<'torque'> {
    return column(
      'torque',
      this.#of(({ moment }) => moment.torque),
      'N·m',
    );
  }

  get heatFromCharge(): Column<'energy'> {
    return kilojoules(this.#of(({ fromCharge }) => fromCharge));
  }

  get heatToCoolant(): Column<'energy'> {
    return kilojoules(this.#of(({ toCoolant }) => toCoolant));
  }

  get heatStored(): Column<'energy'> {
    return kilojoules(this.#of(({ stored }) => stored));
  }

  #of(value: (row: Row) => number): number[] {
    return this.#rows.map(value);
  }

  toString(): string {
    return pullText(this);
  }

  toJSON(): object {
    const { time, engineSpeed, chargeTemperature, sensorReading, coreTemperature, power, torque } = this;
    return { time, engineSpeed, chargeTemperature, sensorReading, coreTemperature, power, torque };
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}

const celsius = (si: readonly number[]): Column<'temperature'> => column('temperature', si, 'K').to('°C');
const kilojoules = (si: readonly number[]): Column<'energy'> =>
  column(
    'energy',
    si.map((joule) => joule / 1000),
    'kJ',
  );
