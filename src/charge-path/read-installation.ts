import { gasConstantOfDryAir } from '../air/index.js';
import type { CompressorMap, CompressorMapReference } from '../compressor/index.js';
import {
  chargeTemperatureExponentFromWallHeating,
  fourStroke,
  sweptVolume,
  usualChargeTemperatureExponent,
} from '../engine/index.js';
import { capacityRate } from '../intercooler/index.js';
import { LOSS_EXPONENT } from '../intercooler/pressure-loss.js';
import { humidityRatioFromVapourPressure, vapourPressureFromRelativeHumidity } from '../psychrometrics/index.js';
import { isQuantity, type Quantity } from '../units/index.js';
import type { Arrangement } from './arrangements.js';
import { readAirSide, type AirSide, type RoomAir } from './air-side.js';
import { checkInstallation } from './check-installation.js';
import { searchReadings, type MapReadings } from './map-search.js';
import type { Runnable } from './way.js';
import type { CoreSide, Exhaust, Fuelling, Inlet, Installation, Passage, Spark, Walls } from './installation.js';

/** An installation with everything said: what the path is walked along. */
export interface Path {
  readonly speed: Quantity<'rotational speed'>;
  readonly barometer: Quantity<'absolute pressure'>;
  readonly ambientTemperature: Quantity<'temperature'>;
  readonly humidityRatio: Quantity<'humidity ratio'>;
  readonly inlet: Inlet;
  /** One efficiency, or a map. */
  readonly efficiency: Quantity<'ratio'> | undefined;
  readonly map: MapOnPath | undefined;
  readonly mechanicalEfficiency: Quantity<'ratio'> | undefined;
  readonly isBeltDriven: boolean;
  readonly core: {
    readonly arrangement: Arrangement;
    readonly passes: Quantity<'ratio'> | undefined;
    readonly charge: CoreSide;
    readonly coolant: CoreSide;
    readonly loss: Required<Installation['core']['loss']>;
    /** Charge temperature behind a core whose metal is not in balance; undefined where it is. */
    readonly soaking?: ((flows: ThroughSoakingCore) => number) | undefined;
    /** The same at one moment, whose metal is known. */
    readonly moment?: SoakedMoment | undefined;
  };
  readonly cooling: AirSide | LiquidSide;
  readonly duct: Passage;
  readonly sweptVolume: Quantity<'volume'>;
  readonly volumetricEfficiency: Quantity<'ratio'>;
  readonly atChargeTemperature: Quantity<'temperature'>;
  readonly densityExponent: Quantity<'ratio'>;
  readonly revolutionsPerCycle: Quantity<'ratio'>;
  readonly exhaust: Exhaust | undefined;
  readonly walls: Walls | undefined;
  readonly spark: Spark | undefined;
  readonly gasConstant: Quantity<'specific gas constant'>;
  readonly fuelling: Fuelling;
  readonly boost: Installation['boost'];
  readonly gaugeAt: 'compressor outlet' | 'manifold';
  readonly gaugeVentBelowBarometer: Quantity<'pressure difference'> | undefined;
}

/** A compressor map as the path reads it: on the map itself, and in a search beyond its edges too. */
export interface MapOnPath {
  readonly reference: CompressorMapReference;
  readonly efficiency: Runnable;
  readonly pressureRatio: Runnable;
  readonly searched: MapReadings;
}

/** A core whose metal is not in balance, at one moment. */
export interface SoakedMoment {
  /** Temperature of the metal as the charge meets it: the mean that counts for the charge. */
  readonly wall: Quantity<'temperature'>;
  readonly coolingAirBehind: Quantity<'temperature'>;
}

/** What passes a core, in SI numbers, for a core that is not in balance with it. */
export interface ThroughSoakingCore {
  readonly hotInlet: number;
  readonly chargeCapacityRate: number;
  readonly chargeConductance: number;
  readonly coolantConductance: number;
}

/** A liquid, and the air at the face of its radiator. */
export interface LiquidSide {
  readonly by: 'liquid';
  readonly flow: Quantity<'mass flow'>;
  readonly capacityRate: Quantity<'heat capacity rate'>;
  readonly radiator: {
    readonly arrangement: Arrangement;
    readonly passes: Quantity<'ratio'> | undefined;
    readonly charge: CoreSide;
    readonly coolant: CoreSide;
  };
  readonly air: AirSide;
}

/** Reads an installation at an engine speed: checked, with everything that was left out filled in. */
export function readInstallation(installation: Installation, speed: Quantity<'rotational speed'>): Path {
  checkInstallation(installation, speed);
  const said = labelled(installation);
  const { ambient, compressor, core, engine, inlet = {}, duct = {}, fuelling, boost, gaugeAt = 'manifold' } = said;
  const humidityRatio =
    ambient.humidityRatio ??
    humidityRatioFromVapourPressure({
      pressure: ambient.pressure,
      vapourPressure: vapourPressureFromRelativeHumidity({
        temperature: ambient.temperature,
        relativeHumidity: ambient.relativeHumidity!,
      }),
    });
  const { bore, stroke, cylinders } = engine;
  return {
    speed,
    barometer: ambient.pressure,
    ambientTemperature: ambient.temperature,
    humidityRatio,
    inlet,
    efficiency: compressor.isentropicEfficiency,
    map: installation.compressor.map && mapOnPath(installation.compressor.map),
    mechanicalEfficiency: compressor.mechanicalEfficiency,
    isBeltDriven: compressor.drivenBy === 'crankshaft',
    core: {
      arrangement: core.arrangement,
      passes: core.passes,
      charge: core.charge,
      coolant: core.coolant,
      loss: { exponent: LOSS_EXPONENT, ...core.loss },
    },
    cooling: coolingOf(said, { barometer: ambient.pressure, temperature: ambient.temperature, humidityRatio }),
    duct,
    sweptVolume: engine.sweptVolume ?? sweptVolume({ bore: bore!, stroke: stroke!, cylinders: cylinders! }),
    volumetricEfficiency: engine.volumetricEfficiency,
    atChargeTemperature: engine.atChargeTemperature,
    densityExponent: exponentOf(engine),
    revolutionsPerCycle: engine.revolutionsPerCycle ?? fourStroke,
    exhaust: engine.exhaust,
    walls: engine.walls,
    spark: engine.spark,
    gasConstant: gasConstantOfDryAir,
    fuelling,
    boost,
    gaugeAt,
    gaugeVentBelowBarometer: said.gaugeVentBelowBarometer,
  };
}

/** The same data, every value without a name named after its place, which is how explanations and budgets show it. */
function labelled<T>(data: T, place = ''): T {
  if (isQuantity(data)) return data.label === undefined ? (data.named(place) as T) : data;
  if (typeof data !== 'object' || data === null || place === 'compressor, map') return data;
  const entries = Object.entries(data).map(([key, value]: [string, unknown]) => {
    const words = key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
    return [key, labelled(value, place === '' ? words : `${place}, ${words}`)];
  });
  return Object.fromEntries(entries) as T;
}

/** As given, or from the walls at the charge temperature of the volumetric efficiency, or the usual one. */
function exponentOf({ densityExponent, walls, atChargeTemperature }: Installation['engine']): Quantity<'ratio'> {
  if (densityExponent !== undefined) return densityExponent;
  if (walls === undefined) return usualChargeTemperatureExponent;
  return chargeTemperatureExponentFromWallHeating({
    manifoldTemperature: atChargeTemperature,
    wallTemperature: walls.temperature,
    heatedShare: walls.heatedShare,
  });
}

function coolingOf({ cooling }: Installation, room: RoomAir): AirSide | LiquidSide {
  if (cooling.by === 'air') return readAirSide(cooling, room);
  const { liquidFlow, liquidHeatCapacity, radiator, air } = cooling;
  return {
    by: 'liquid',
    flow: liquidFlow,
    capacityRate: capacityRate({ massFlow: liquidFlow, specificHeatCapacity: liquidHeatCapacity }),
    radiator: {
      arrangement: radiator.arrangement,
      passes: radiator.passes,
      charge: radiator.liquid,
      coolant: radiator.air,
    },
    air: readAirSide(air, room),
  };
}

function mapOnPath(map: CompressorMap): MapOnPath {
  const { reference, isentropicEfficiency: efficiency, pressureRatio } = map;
  return { reference, efficiency, pressureRatio, searched: searchReadings(map) };
}
