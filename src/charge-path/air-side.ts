import { specificHeatCapacityOfAir } from '../air/index.js';
import { inletTemperatureWithRecirculation } from '../compressor/index.js';
import { capacityRate, coolingAirBehindCore, sprayedFaceTemperature } from '../intercooler/index.js';
import { captureEfficiencyOfSpray } from '../intercooler/coolant-spray.js';
import type { Quantity } from '../units/index.js';
import type { AirCooling, Spray } from './installation.js';
import { faceTemperatureWithWaterSpray, waterEvaporatedBySpray } from './water-spray.js';
import { onQuantities, type Over, type Way } from './way.js';

/** The air of the room or the road, as far as its way to a face needs it. */
export interface RoomAir {
  readonly barometer: Quantity<'absolute pressure'>;
  readonly temperature: Quantity<'temperature'>;
  readonly humidityRatio: Quantity<'humidity ratio'>;
}

/** Air on its way to the face of a core. */
export interface AirSide {
  readonly by: 'air';
  readonly flow: Quantity<'mass flow'>;
  readonly entering: Quantity<'temperature'>;
  readonly upstreamHeat: Quantity<'power'> | undefined;
  readonly spray: (Spray & { readonly captureEfficiency: Quantity<'ratio'> }) | undefined;
  readonly specificHeatCapacity: Quantity<'specific heat capacity'>;
  readonly capacityRate: Quantity<'heat capacity rate'>;
  /** Share of the air at the face that has been through the core; undefined where none has. */
  readonly recirculatedShare: Quantity<'ratio'> | undefined;
  readonly room: RoomAir;
  /** At the face, if none of the air had been through the core. */
  readonly freshFace: Quantity<'temperature'>;
}

/** Reads the air side of a core or radiator. */
export function readAirSide(air: Omit<AirCooling, 'by'>, room: RoomAir): AirSide {
  const { massFlow: flow, temperature: entering = room.temperature, upstreamHeat, recirculatedShare } = air;
  const specificHeatCapacity = air.specificHeatCapacity ?? specificHeatCapacityOfAir;
  const side: Omit<AirSide, 'freshFace'> = {
    by: 'air',
    flow,
    entering,
    upstreamHeat,
    spray: air.spray && { captureEfficiency: captureEfficiencyOfSpray, ...air.spray },
    specificHeatCapacity,
    capacityRate: capacityRate({ massFlow: flow, specificHeatCapacity }),
    recirculatedShare,
    room,
  };
  return { ...side, freshFace: onTheWay(onQuantities, side, entering) as Quantity<'temperature'> };
}

/** Temperature at the face; `behind` is that of the air behind the core, where some of it comes back. */
export function faceOf<V>(way: Way<V>, air: Over<AirSide, V>, behind: V | undefined): V {
  const { entering, recirculatedShare, freshFace } = air;
  if (recirculatedShare === undefined) return freshFace;
  return onTheWay(way, air, way.run(inletTemperatureWithRecirculation, entering, behind!, recirculatedShare));
}

/** What radiator, fan and spray make of the air. */
function onTheWay<V>(way: Way<V>, air: Over<Omit<AirSide, 'freshFace'>, V>, entering: V): V {
  const { flow, upstreamHeat, spray, specificHeatCapacity, room } = air;
  const warmed =
    upstreamHeat === undefined
      ? entering
      : way.run(coolingAirBehindCore, entering, upstreamHeat, flow, specificHeatCapacity);
  if (spray === undefined) return warmed;
  if (spray.coolant !== 'water') {
    const { flow: sprayFlow, capacity, captureEfficiency } = spray;
    return way.run(sprayedFaceTemperature, warmed, flow, sprayFlow, capacity, captureEfficiency, specificHeatCapacity);
  }
  const { barometer, humidityRatio } = room;
  const into = [warmed, barometer, humidityRatio, flow] as const;
  const evaporated = way.run(waterEvaporatedBySpray, ...into, spray.flow, spray.captureEfficiency);
  return way.run(faceTemperatureWithWaterSpray, ...into, evaporated);
}
