import type { CompressorResult, CoreResult, EngineResult, OperatingPoint } from './point-result.js';
import {
  compressorMapReferences,
  correctedFlow,
  pointOnMap,
  type CompressorOperatingPoint,
} from '../compressor/index.js';
import { brakeMeanEffectivePressureFromPower, volumetricEfficiencyOnAmbientDensity } from '../engine/index.js';
import { lambdaFromFlows } from '../fuel/index.js';
import { coolingAirBehindCore } from '../intercooler/index.js';
import { merged, NO_NOTES } from '../units/internal.js';
import { gauge, type Note, type Quantity } from '../units/index.js';
import { balancesOf, type Balance } from './balances.js';
import { meanCoreDensity } from './core-laws.js';
import { cylinderOf, type CylinderState } from './cylinder.js';
import type { Installation } from './installation.js';
import { compressorShaftPower, crankTorque, type Output } from './output.js';
import { pointText } from './point-text.js';
import type { Path } from './read-installation.js';
import { PathStation, STATIONS, type Station, type StationName } from './station.js';
import type { Walked } from './walk.js';
import { onQuantities } from './way.js';

/** Results beside the walk are calculated when they are first read, and are then one value of the graph. */
export class PointOnPath implements OperatingPoint {
  readonly installation: Installation;
  readonly engineSpeed: Quantity<'rotational speed'>;
  readonly #path: Path;
  readonly #walked: Walked<Quantity>;
  #stations?: OperatingPoint['stations'];
  #compressor?: CompressorResult;
  #core?: CoreResult;
  #engine?: EngineResult;
  #cylinder?: CylinderState;
  readonly #output: Output<Quantity>;

  constructor(installation: Installation, path: Path, walked: Walked<Quantity>) {
    this.installation = installation;
    this.engineSpeed = path.speed;
    this.#path = path;
    this.#walked = walked;
    this.#output = crankTorque(onQuantities, path, walked);
  }

  get airFlow(): Quantity<'mass flow'> {
    return this.#walked.unknowns.airFlow as Quantity<'mass flow'>;
  }

  get humidAirFlow(): Quantity<'mass flow'> {
    return this.#walked.humidFlow as Quantity<'mass flow'>;
  }

  get stations(): OperatingPoint['stations'] {
    return (this.#stations ??= stationsOf(this.#path, this.#walked));
  }

  get cylinder(): CylinderState {
    const { pressure, temperature, dryAirDensity } = this.stations.manifold;
    const { airFlow, engine } = this;
    const { volumetricEfficiency } = engine;
    return (this.#cylinder ??= cylinderOf(this.#path, {
      pressure,
      temperature,
      dryAirDensity,
      volumetricEfficiency,
      airFlow,
    }));
  }

  get compressor(): CompressorResult {
    return (this.#compressor ??= compressorOf(this.#path, this.#walked, this.installation));
  }

  get core(): CoreResult {
    return (this.#core ??= coreOf(this.#path, this.#walked));
  }

  get engine(): EngineResult {
    return (this.#engine ??= engineOf(this.#path, this.#walked, this.#output, this.stations.ambient.dryAirDensity));
  }

  get power(): Quantity<'power'> {
    return this.#output.power as Quantity<'power'>;
  }

  get torque(): Quantity<'torque'> {
    return this.#output.torque as Quantity<'torque'>;
  }

  get boostReading(): Quantity<'gauge pressure'> {
    const { compressorOutlet, manifold } = this.stations;
    const { pressure } = this.#path.gaugeAt === 'manifold' ? manifold : compressorOutlet;
    return gauge(pressure, this.#path.barometer);
  }

  get balances(): readonly Balance[] {
    return balancesOf(this.#path, this.#walked);
  }

  get notes(): readonly Note[] {
    const { engineResidual, coreResidual } = this.#walked;
    return [this.power, engineResidual, coreResidual].reduce<readonly Note[]>(
      (notes, value) => merged(notes, value.notes),
      controlNotes(this.installation),
    );
  }

  toString(): string {
    return pointText(this);
  }

  toJSON(): object {
    const { engineSpeed, stations, airFlow, compressor, core, engine, boostReading } = this;
    return { engineSpeed, stations: Object.values(stations), airFlow, boostReading, compressor, core, engine };
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}

/** What must be said of a control before a point is compared with another. */
export function controlNotes({ boost }: Installation): readonly Note[] {
  const isFree = boost.by === 'fixed wastegate' || (boost.by === 'spring' && boost.droop !== undefined);
  if (!isFree) return NO_NOTES;
  const message =
    'With a spring that droops or a wastegate that stands still, colder charge may show more boost or less: no sign is promised.';
  return [{ code: 'no sign promised', calculation: 'operating point', message }];
}

function stationsOf(path: Path, walked: Walked<Quantity>): OperatingPoint['stations'] {
  const { inlet, compressor, core, manifold, unknowns } = walked;
  const { barometer, humidityRatio } = path;
  const flow = walked.humidFlow as Quantity<'mass flow'>;
  const place = (name: StationName, pressure: Quantity, temperature: Quantity, W: Quantity = humidityRatio): Station =>
    new PathStation(name, {
      pressure: pressure as Quantity<'absolute pressure'>,
      temperature: temperature as Quantity<'temperature'>,
      humidityRatio: W as Quantity<'humidity ratio'>,
      flow: W === humidityRatio ? flow : (onQuantities.subtract(flow, core.condensate) as Quantity<'mass flow'>),
      barometer,
    });
  const [ambient, into, outOf, behind, atEngine] = STATIONS;
  return {
    ambient: place(ambient, barometer, path.ambientTemperature),
    compressorInlet: place(into, inlet.pressure, inlet.temperature),
    compressorOutlet: place(outOf, unknowns.compressorOutletPressure, compressor.outletTemperature),
    coreOutlet: place(behind, core.pressure, unknowns.coreOutletTemperature, core.humidityRatio),
    manifold: place(atEngine, manifold.pressure, manifold.temperature, core.humidityRatio),
  };
}

function compressorOf(path: Path, walked: Walked<Quantity>, { compressor: { map } }: Installation): CompressorResult {
  const { air, shaft } = compressorShaftPower(onQuantities, path, walked);
  return {
    pressureRatio: walked.compressor.pressureRatio as Quantity<'ratio'>,
    isentropicEfficiency: walked.compressor.efficiency as Quantity<'ratio'>,
    get correctedFlow(): Quantity<'mass flow'> {
      return correctedFlow({
        massFlow: walked.humidFlow as Quantity<'mass flow'>,
        inletTemperature: walked.inlet.temperature as Quantity<'temperature'>,
        inletPressure: walked.inlet.pressure as Quantity<'absolute pressure'>,
        ...compressorMapReferences.saeJ1826,
      });
    },
    power: air as Quantity<'power'>,
    shaftPower: shaft as Quantity<'power'>,
    get onMap(): CompressorOperatingPoint | undefined {
      if (map === undefined) return undefined;
      return pointOnMap(map, {
        inletTemperature: walked.inlet.temperature as Quantity<'temperature'>,
        inletPressure: walked.inlet.pressure as Quantity<'absolute pressure'>,
        humidityRatio: path.humidityRatio,
        massFlow: walked.humidFlow as Quantity<'mass flow'>,
        pressureRatio: walked.compressor.pressureRatio as Quantity<'ratio'>,
      });
    },
  };
}

function coreOf(path: Path, walked: Walked<Quantity>): CoreResult {
  const { core, unknowns, compressor } = walked;
  const air = path.cooling.by === 'air' ? path.cooling : path.cooling.air;
  const heat = core.heat as Quantity<'power'>;
  return {
    conductance: core.conductance as Quantity<'thermal conductance'>,
    transferUnits: core.rating.transferUnits as Quantity<'ratio'>,
    capacityRatio: core.rating.capacityRatio as Quantity<'ratio'>,
    effectiveness: core.rating.effectiveness as Quantity<'ratio'>,
    airSideEffectiveness: core.airSideEffectiveness as Quantity<'ratio'> | undefined,
    heat,
    condensate: core.condensate as Quantity<'mass flow'>,
    coolingAirFace: air.face,
    get pressureLoss(): Quantity<'pressure difference'> {
      return onQuantities.subtract(unknowns.compressorOutletPressure, core.pressure) as Quantity<'pressure difference'>;
    },
    get meanDensity(): Quantity<'density'> {
      return onQuantities.run(
        meanCoreDensity,
        unknowns.compressorOutletPressure,
        compressor.outletTemperature,
        core.pressure,
        unknowns.coreOutletTemperature,
        core.gasConstant,
      ) as Quantity<'density'>;
    },
    get coolingAirBehind(): Quantity<'temperature'> {
      return coolingAirBehindCore({
        face: air.face,
        heat,
        coolingAirFlow: air.flow,
        specificHeatCapacity: air.specificHeatCapacity,
      });
    },
  };
}

function engineOf(
  path: Path,
  walked: Walked<Quantity>,
  output: Output<Quantity>,
  ambientDensity: Quantity<'density'>,
): EngineResult {
  const { sweptVolume, speed: engineSpeed, revolutionsPerCycle, fuelling } = path;
  const airMassFlow = walked.unknowns.airFlow as Quantity<'mass flow'>;
  const fuelMassFlow = walked.fuelFlow as Quantity<'mass flow'>;
  const power = output.power as Quantity<'power'>;
  return {
    sweptVolume,
    sparkRatio: output.sparkRatio as Quantity<'ratio'> | undefined,
    volumetricEfficiency: walked.volumetricEfficiency as Quantity<'ratio'>,
    fuelFlow: fuelMassFlow,
    exhaustPressure: walked.exhaustPressure as Quantity<'absolute pressure'> | undefined,
    grossPower: output.grossPower as Quantity<'power'>,
    power,
    torque: output.torque as Quantity<'torque'>,
    get volumetricEfficiencyOnAmbient(): Quantity<'ratio'> {
      return volumetricEfficiencyOnAmbientDensity({
        airMassFlow,
        ambientDensity,
        sweptVolume,
        engineSpeed,
        revolutionsPerCycle,
      });
    },
    get lambda(): Quantity<'lambda'> {
      const { lambda, stoichiometricAirFuelRatio } = fuelling;
      return lambda ?? lambdaFromFlows({ airMassFlow, fuelMassFlow, stoichiometricAirFuelRatio });
    },
    get brakeMeanEffectivePressure(): Quantity<'mean effective pressure'> {
      return brakeMeanEffectivePressureFromPower({ power, engineSpeed, sweptVolume, revolutionsPerCycle });
    },
  };
}
