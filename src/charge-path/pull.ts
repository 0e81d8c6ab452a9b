import type { Quantity } from '../units/index.js';
import type { Installation } from './installation.js';
import { Pull } from './pull-columns.js';
import type { PullRow } from './pull-row.js';
import type { HeatStore } from './pull-core.js';
import { momentOf, solvedMoment } from './pull-moment.js';
import type { PullInTime } from './pull-result.js';
import { readInstallation, type Path } from './read-installation.js';
import { readPull, type PullOptions, type ReadPull } from './read-pull.js';
import { sensorAfter } from './sensor.js';
import { airOf } from './walk.js';
import { meanOf } from './wall-network.js';
import type { Unknowns } from './walked.js';

/**
 * A pull through an installation in time: the engine runs up, and the metal of the core takes up heat meanwhile. Air and charge settle
 * within a fraction of a second, so every moment is a steady point of flow and pressure with the core as warm as it is then.
 *
 * Short pulls run on the cold stored in the core: one chilled beforehand, or still hot from the last pull, makes a difference that
 * fades with its time constant.
 *
 * Every arrangement is followed in cells of the metal. A liquid loop is one well-mixed store of heat behind the core, its radiator
 * settled at every moment: give `cooling.heatCapacity`. In the one-shell core the charge is taken to pass the tubes.
 *
 * @param installation - with `core.heatCapacity`.
 * @param options - engine speed from and to, how long it takes, how warm the core is, and the sensor.
 * @throws CalculationError if something is not said or impossible; {@link NoSteadyPoint} if at some moment there is no point, saying when.
 * @example
 * const pull = throughPull(hillClimbSpecial, {
 *   from: rotationalSpeed(3000, 'rpm'), to: rotationalSpeed(6500, 'rpm'), duration: time(10, 's'), coreTemperature: temperature(5, '°C'),
 * });
 * pull.chargeTemperature.in('°C')
 * explain(pull.at(time(5, 's')).power)
 */
export function throughPull(installation: Installation, options: PullOptions): PullInTime {
  const pull = readPull(installation, options);
  const rows: PullRow[] = [];
  let store = pull.start;
  let near: Unknowns<number> | undefined;
  let sensor: number | undefined;
  const heat = { fromCharge: 0, toCoolant: 0, stored: 0 };
  for (let i = 0; i <= pull.steps; i++) {
    const at = i * pull.step;
    const path = readInstallation(installation, pull.speedAt(at));
    store ??= settledStore(path, pull);
    const solved = solvedMoment(path, pull, store, near);
    near = solved.walked.unknowns;
    const charge = solved.walked.manifold.temperature;
    const reading = pull.sensor === undefined ? charge : (sensor ?? pull.sensor.startTemperature ?? charge);
    const core = meanOf(store.walls);
    rows.push({ at, path, solved, store, sensor: reading, core, ...heat });
    if (i === pull.steps) break;
    const step = pull.core.after(store, solved.flows, pull.step);
    store = step;
    heat.fromCharge += step.heatFromCharge;
    heat.toCoolant += step.heatToCoolant;
    heat.stored += (meanOf(step.walls) - core) * pull.heatCapacity;
    if (pull.sensor) sensor = sensorAfter(pull.sensor, reading, charge, solved.walked.humidFlow, pull.step);
  }
  return new Pull(installation, rows, (row) => momentOf(pull, row));
}

/** Metal and liquid as they are once the engine has run at the first speed for long: core and flow answer each other until they agree. */
function settledStore(path: Path, pull: ReadPull): HeatStore {
  const cold = airOf<Quantity>(path).freshFace.si;
  let store = pull.core.uniform(cold, pull.loopHeatCapacity === undefined ? undefined : cold);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = pull.core.settled(solvedMoment(path, pull, store, undefined).flows);
    const change = Math.max(...next.walls.map((wall, i) => Math.abs(wall - store.walls[i]!)));
    store = next;
    if (change < 1e-8) break;
  }
  return store;
}

const MOST_ROUNDS = 60;
