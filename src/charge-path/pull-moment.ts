import { temperature, time, type Quantity } from '../units/index.js';
import type { Installation } from './installation.js';
import { crankTorque } from './output.js';
import { PointOnPath } from './point.js';
import type { PullRow, SolvedMoment } from './pull-row.js';
import type { FlowsOfPull, HeatStore, LoopOfPull } from './pull-core.js';
import type { PullMoment } from './pull-result.js';
import type { Path, SoakedMoment, ThroughSoakingCore } from './read-installation.js';
import type { ReadPull } from './read-pull.js';
import { NoSteadyPoint } from './refusal.js';
import { rateCore } from './arrangements.js';
import { solvePath } from './solve-path.js';
import { airOf, walk } from './walk.js';
import { conductanceOf } from './walk-core.js';
import type { PathOf, Unknowns, Walked } from './walked.js';
import { walkedQuantities } from './walked-quantities.js';
import { numbersOf, onNumbers } from './way.js';

/** The point of flow and pressure with the metal as warm as it is. */
export function solvedMoment(
  path: Path,
  pull: ReadPull,
  store: HeatStore,
  near: Unknowns<number> | undefined,
): SolvedMoment {
  const bare: PathOf<number> = numbersOf(path);
  const loop = loopOf(bare, pull);
  let flows: FlowsOfPull | undefined;
  const soaking = (through: ThroughSoakingCore): number => {
    flows = flowsOf(bare, through, loop);
    return pull.core.chargeOutlet(store, flows.charge);
  };
  const numbers: PathOf<number> = { ...bare, core: { ...bare.core, soaking } };
  const found = solvePath(numbers, near);
  if (typeof found === 'string') throw new NoSteadyPoint(found, pull.installation, path.speed);
  const walked = walk(onNumbers, numbers, found);
  const { power, torque } = crankTorque(onNumbers, numbers, walked);
  return { walked, flows: flows!, power, torque };
}

function flowsOf(path: PathOf<number>, through: ThroughSoakingCore, loop: LoopOfPull | undefined): FlowsOfPull {
  return {
    charge: {
      inlet: through.hotInlet,
      capacityRate: through.chargeCapacityRate,
      conductance: through.chargeConductance,
    },
    coolant: {
      inlet: airOf(path).freshFace,
      capacityRate: path.cooling.capacityRate,
      conductance: through.coolantConductance,
    },
    loop,
  };
}

function loopOf({ cooling }: PathOf<number>, { loopHeatCapacity }: ReadPull): LoopOfPull | undefined {
  if (cooling.by === 'air' || loopHeatCapacity === undefined) return undefined;
  const { radiator, air, flow, capacityRate } = cooling;
  const conductance = conductanceOf(onNumbers, radiator, flow, air.flow);
  const { effectiveness } = rateCore(onNumbers, radiator, conductance, capacityRate, air.capacityRate);
  const smaller = Math.min(capacityRate, air.capacityRate);
  return {
    heatCapacity: loopHeatCapacity,
    radiatorShare: (effectiveness * smaller) / capacityRate,
    airFace: air.freshFace,
  };
}

/** A row in quantities. */
export function momentOf(pull: ReadPull, row: PullRow): PullMoment {
  const { at, path, solved, sensor } = row;
  const { flows, walked } = solved;
  const after = `after ${at.toFixed(2)} s`;
  // The charge goes the same share of the way to the metal in all, whatever the metal's pattern, so one temperature stands for it.
  const left = Math.exp(-flows.charge.conductance / flows.charge.capacityRate);
  const wall = (walked.core.outletTemperature - left * flows.charge.inlet) / (1 - left);
  const moment: SoakedMoment = {
    wall: temperature(wall, 'K').to('°C').named(`core's metal as the charge meets it, ${after}`),
    coolingAirBehind: temperature(airBehind(pull, path, row), 'K')
      .to('°C')
      .named(`air behind the core, ${after}`),
  };
  const momentary: Path = { ...path, core: { ...path.core, moment } };
  return new MomentOfPull(pull.installation, momentary, walkedQuantities(momentary, walked.unknowns), {
    time: time(at, 's'),
    wallTemperature: moment.wall,
    sensorReading: temperature(sensor, 'K').to('°C').named(`sensor, ${after}`),
  });
}

/** Temperature of the air behind the core, or behind the radiator of its loop. */
function airBehind({ core }: ReadPull, path: Path, { solved: { flows }, store }: PullRow): number {
  const outlet = core.coolantOutlet(store, flows);
  if (!flows.loop) return outlet;
  const { radiatorShare, airFace } = flows.loop;
  const heat = flows.coolant.capacityRate * radiatorShare * (outlet - airFace);
  return airFace + heat / airOf<Quantity>(path).capacityRate.si;
}

type OfMoment = Pick<PullMoment, 'time' | 'wallTemperature' | 'sensorReading'>;

class MomentOfPull extends PointOnPath implements PullMoment {
  readonly time: Quantity<'time'>;
  readonly wallTemperature: Quantity<'temperature'>;
  readonly sensorReading: Quantity<'temperature'>;

  constructor(installation: Installation, path: Path, walked: Walked<Quantity>, of: OfMoment) {
    super(installation, path, walked);
    this.time = of.time;
    this.wallTemperature = of.wallTemperature;
    this.sensorReading = of.sensorReading;
  }

  override toString(): string {
    const metal = this.wallTemperature.in('°C').toFixed(1);
    return `${this.time.in('s').toFixed(2)} s into the pull, the metal of the core ${metal} °C as the charge meets it\n${super.toString()}`;
  }
}
