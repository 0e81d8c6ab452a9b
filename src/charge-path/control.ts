import { correctedFlow, correctedSpeed, outletPressure } from '../compressor/index.js';
import { moistAirDensityFromHumidityRatio } from '../air/index.js';
import { displacementBlowerFlow, drivenSpeed, springPressure, speedLinePressureRatio } from './boost-laws.js';
import { compressorShaftPower, crankTorque } from './output.js';
import { turbinePower } from './turbine.js';
import { flowOnMap } from './walk.js';
import type { PathOf, Walked } from './walked.js';
import type { Way } from './way.js';

/** Pressure at the compressor outlet where the control fixes it by itself, whatever the flow. */
export function fixedOutletPressure<V>(way: Way<V>, { boost, barometer }: PathOf<V>): V | undefined {
  if (boost.by !== 'spring' || boost.senses !== 'compressor outlet' || boost.droop !== undefined) return undefined;
  return way.absolute(boost.gaugePressure, barometer);
}

/** What a control goes by: what it is, and what the control makes it. */
export interface Controlled<V> {
  readonly what: string;
  readonly is: V;
  readonly held: string;
  readonly shall: V;
}

/** How far the boost is from what its control lets stand: zero at a steady point, above it where boost is too high. */
export function controlResidual<V>(way: Way<V>, path: PathOf<V>, walked: Walked<V>): V {
  const { is, shall } = controlled(way, path, walked);
  return way.subtract(is, shall);
}

/** Both sides of what the boost control decides. */
export function controlled<V>(way: Way<V>, path: PathOf<V>, walked: Walked<V>): Controlled<V> {
  const { boost, barometer } = path;
  const p2 = walked.unknowns.compressorOutletPressure;
  const p4 = walked.manifold.pressure;
  switch (boost.by) {
    case 'spring':
      return boost.senses === 'manifold'
        ? { what: 'in the manifold', is: p4, held: 'held by the spring', shall: heldBySpring(way, path, walked) }
        : {
            what: 'at the compressor outlet',
            is: p2,
            held: 'held by the spring',
            shall: heldBySpring(way, path, walked),
          };
    case 'closed loop, absolute':
      return { what: 'in the manifold', is: p4, held: 'asked for', shall: boost.manifoldPressure };
    case 'closed loop, gauge': {
      const shall = way.absolute(boost.manifoldPressure, barometer);
      return { what: 'in the manifold', is: p4, held: 'asked for', shall };
    }
    case 'fixed compressor speed':
      return {
        what: 'at the compressor outlet',
        is: p2,
        held: 'on the speed line',
        shall: onSpeedLine(way, path, walked),
      };
    case 'fixed compressor speed on its map':
      return {
        what: 'at the compressor outlet',
        is: p2,
        held: 'on the speed line of the map',
        shall: onMapLine(way, path, walked),
      };
    case 'displacement blower':
      return {
        what: 'to the engine',
        is: walked.humidFlow,
        held: 'through the blower',
        shall: passedByBlower(way, path, walked),
      };
    case 'fixed wastegate': {
      const { shaft } = compressorShaftPower(way, path, walked);
      return {
        what: 'taken by the compressor',
        is: shaft,
        held: 'given by the turbine',
        shall: turbine(way, path, walked),
      };
    }
    case 'held torque':
      return {
        what: 'at the crankshaft',
        is: crankTorque(way, path, walked).torque,
        held: 'asked for',
        shall: boost.torque,
      };
  }
}

type By<V, B extends PathOf<V>['boost']['by']> = Extract<PathOf<V>['boost'], { by: B }>;

function heldBySpring<V>(way: Way<V>, { boost, barometer }: PathOf<V>, { unknowns }: Walked<V>): V {
  const { gaugePressure, droop } = boost as By<V, 'spring'>;
  if (droop === undefined) return way.absolute(gaugePressure, barometer);
  return way.run(springPressure, gaugePressure, barometer, unknowns.airFlow, droop.perPercentAir, droop.atFlow);
}

function onSpeedLine<V>(way: Way<V>, path: PathOf<V>, { inlet, humidFlow }: Walked<V>): V {
  const line = path.boost as By<V, 'fixed compressor speed'>;
  const flow = way.run(
    correctedFlow,
    humidFlow,
    inlet.temperature,
    inlet.pressure,
    line.referenceTemperature,
    line.referencePressure,
  );
  const ratio = way.run(
    speedLinePressureRatio,
    flow,
    inlet.temperature,
    line.atInletTemperature,
    line.flowAtPoint,
    line.ratioAtPoint,
    line.fallPerFlow,
  );
  return way.run(outletPressure, inlet.pressure, ratio);
}

function onMapLine<V>(way: Way<V>, path: PathOf<V>, { inlet, humidFlow }: Walked<V>): V {
  const { speed, driveRatio } = path.boost as By<V, 'fixed compressor speed on its map'>;
  const { pressure: p1, temperature: T1 } = inlet;
  const { reference, pressureRatio, searched } = path.map!;
  const wheel = speed ?? way.run(drivenSpeed, path.speed, driveRatio!);
  const line = way.run(correctedSpeed, wheel, T1, reference.referenceTemperature);
  const flow = flowOnMap(way, path, { humidFlow, p1, T1 });
  const ratio = way.run(way.isSearch ? searched.pressureRatio : pressureRatio, flow, line);
  return way.run(outletPressure, p1, ratio);
}

function passedByBlower<V>(way: Way<V>, path: PathOf<V>, { inlet, compressor }: Walked<V>): V {
  const blower = path.boost as By<V, 'displacement blower'>;
  return way.run(
    displacementBlowerFlow,
    way.run(moistAirDensityFromHumidityRatio, inlet.temperature, inlet.pressure, path.humidityRatio),
    blower.volumePerRevolution,
    way.run(drivenSpeed, path.speed, blower.driveRatio),
    compressor.pressureRatio,
    blower.volumetricEfficiencyUnloaded,
    blower.slip,
  );
}

function turbine<V>(way: Way<V>, path: PathOf<V>, { humidFlow, fuelFlow, exhaustPressure }: Walked<V>): V {
  const gate = path.boost as By<V, 'fixed wastegate'>;
  return way.run(
    turbinePower,
    way.add(humidFlow, fuelFlow),
    way.ratioOf(gate.turbineArea, way.add(gate.turbineArea, gate.wastegateArea)),
    gate.exhaustTemperature,
    exhaustPressure!,
    way.add(path.barometer, gate.exhaustLoss),
    gate.turbineEfficiency,
  );
}
