import { compressorPower, shaftPower, specificWorkVariableHeat } from '../compressor/index.js';
import {
  powerFromTorque,
  pumpingMeanEffectivePressureFromPressures,
  torqueFromMeanEffectivePressure,
  torqueFromPower,
  torqueRatioFromSpark,
} from '../engine/index.js';
import { indicatedMeanEffectivePressure, powerFromFuelFlow } from './engine-laws.js';
import type { PathOf, Walked } from './walked.js';
import type { Way } from './way.js';

/** Power that the compressor puts into the air, and takes at its shaft. */
export function compressorShaftPower<V>(
  way: Way<V>,
  path: PathOf<V>,
  { inlet, compressor, humidFlow }: Walked<V>,
): { readonly air: V; readonly shaft: V } {
  const work = way.run(specificWorkVariableHeat, inlet.temperature, compressor.outletTemperature, path.humidityRatio);
  const air = way.run(compressorPower, humidFlow, work);
  return {
    air,
    shaft: path.mechanicalEfficiency === undefined ? air : way.run(shaftPower, air, path.mechanicalEfficiency),
  };
}

/** What arrives at the crankshaft. */
export interface Output<V> {
  /** Share of the torque that the spark timing leaves. */
  readonly sparkRatio: V | undefined;
  /** Before a belt takes its part. */
  readonly grossPower: V;
  /** Power that a belt takes; undefined where the exhaust drives the compressor. */
  readonly drivePower: V | undefined;
  readonly power: V;
  readonly torque: V;
}

/** Power and torque at the crankshaft, what a belt takes already off. */
export function crankTorque<V>(way: Way<V>, path: PathOf<V>, walked: Walked<V>): Output<V> {
  const sparkRatio = sparkRatioOf(way, path);
  const atBest = grossPowerOf(way, path, walked);
  const grossPower = sparkRatio === undefined ? atBest : way.scale(atBest, sparkRatio);
  const drivePower = path.isBeltDriven ? compressorShaftPower(way, path, walked).shaft : undefined;
  const power = drivePower === undefined ? grossPower : way.subtract(grossPower, drivePower);
  return { sparkRatio, grossPower, drivePower, power, torque: way.run(torqueFromPower, power, path.speed) };
}

function sparkRatioOf<V>(way: Way<V>, { spark }: PathOf<V>): V | undefined {
  if (spark === undefined) return undefined;
  const { fromBestTorque, sensitivity } = spark;
  return sensitivity === undefined
    ? way.run(torqueRatioFromSpark, fromBestTorque)
    : way.run(torqueRatioFromSpark, fromBestTorque, sensitivity);
}

function grossPowerOf<V>(way: Way<V>, path: PathOf<V>, { fuelFlow, manifold, exhaustPressure }: Walked<V>): V {
  const { specificFuelConsumption, indicated } = path.fuelling;
  if (specificFuelConsumption !== undefined) return way.run(powerFromFuelFlow, fuelFlow, specificFuelConsumption);
  const { efficiency, lowerHeatingValue, frictionPressure } = indicated!;
  const { sweptVolume, speed, revolutionsPerCycle } = path;
  const gross = way.run(
    indicatedMeanEffectivePressure,
    fuelFlow,
    lowerHeatingValue,
    efficiency,
    sweptVolume,
    speed,
    revolutionsPerCycle,
  );
  const net =
    exhaustPressure === undefined
      ? gross
      : way.subtract(gross, way.run(pumpingMeanEffectivePressureFromPressures, exhaustPressure, manifold.pressure));
  const brake = way.subtract(net, frictionPressure);
  return way.run(
    powerFromTorque,
    way.run(torqueFromMeanEffectivePressure, brake, sweptVolume, revolutionsPerCycle),
    speed,
  );
}
