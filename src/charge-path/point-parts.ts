import { moistAirDensityFromHumidityRatio, moistAirGasConstant } from '../air/index.js';
import {
  compressorMapReferences,
  correctedFlow,
  pointOnMap,
  type CompressorOperatingPoint,
} from '../compressor/index.js';
import { brakeMeanEffectivePressureFromPower, volumetricEfficiencyOnAmbientDensity } from '../engine/index.js';
import { lambdaFromFlows } from '../fuel/index.js';
import { coolingAirBehindCore, meanDensity } from '../intercooler/index.js';
import { humidityRatio, ratio, type Quantity } from '../units/index.js';
import { heatFromEffectiveness } from './heat.js';
import type { Installation } from './installation.js';
import { compressorShaftPower, type Output } from './output.js';
import type { CompressorResult, CoreResult, EngineResult, OperatingPoint } from './point-result.js';
import type { Path } from './read-installation.js';
import { PathStation, STATIONS, type Station, type StationName } from './station.js';
import { airOf } from './walk.js';
import type { Walked } from './walked.js';
import { onQuantities } from './way.js';

/** The stations of a walked path. */
export function stationsOf(path: Path, walked: Walked<Quantity>): OperatingPoint['stations'] {
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

/** What the compressor does on a walked path. */
export function compressorOf(
  path: Path,
  walked: Walked<Quantity>,
  { compressor: { map } }: Installation,
): CompressorResult {
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

/** What the core does on a walked path. */
export function coreOf(path: Path, walked: Walked<Quantity>): CoreResult {
  const { core, unknowns, compressor } = walked;
  const air = airOf<Quantity>(path);
  const face = walked.face as Quantity<'temperature'>;
  const heat = core.heat as Quantity<'power'>;
  return {
    conductance: core.conductance as Quantity<'thermal conductance'>,
    transferUnits: core.rating.transferUnits as Quantity<'ratio'>,
    capacityRatio: core.rating.capacityRatio as Quantity<'ratio'>,
    ...effectivenessOf(path, walked),
    heat,
    condensate: core.condensate as Quantity<'mass flow'>,
    coolingAirFace: face,
    get pressureLoss(): Quantity<'pressure difference'> {
      return onQuantities.subtract(unknowns.compressorOutletPressure, core.pressure) as Quantity<'pressure difference'>;
    },
    get meanDensity(): Quantity<'density'> {
      // The charge with all its water and the gas constant of its enthalpies, as the pressure loss takes it.
      const gasConstant = moistAirGasConstant({ humidityRatio: humidityRatio(0, 'g/kg') });
      const densityAt = (temperature: Quantity, pressure: Quantity): Quantity<'density'> =>
        onQuantities.run(
          moistAirDensityFromHumidityRatio,
          temperature,
          pressure,
          path.humidityRatio,
          gasConstant,
        ) as Quantity<'density'>;
      return meanDensity({
        inletDensity: densityAt(compressor.outletTemperature, unknowns.compressorOutletPressure),
        outletDensity: densityAt(unknowns.coreOutletTemperature, core.pressure),
      });
    },
    get coolingAirBehind(): Quantity<'temperature'> {
      if (path.core.moment) return path.core.moment.coolingAirBehind;
      return coolingAirBehindCore({
        face,
        heat,
        coolingAirFlow: air.flow as Quantity<'mass flow'>,
        specificHeatCapacity: air.specificHeatCapacity as Quantity<'specific heat capacity'>,
      });
    },
  };
}

/** Effectiveness of a settled core; of one that still takes up heat, what it comes to at that moment. */
function effectivenessOf(
  path: Path,
  { core, compressor, face }: Walked<Quantity>,
): Pick<CoreResult, 'effectiveness' | 'airSideEffectiveness'> {
  const { rating, airSideEffectiveness, chargeCapacityRate: charge, heat } = core;
  if (path.core.moment === undefined)
    return {
      effectiveness: rating.effectiveness as Quantity<'ratio'>,
      airSideEffectiveness: airSideEffectiveness as Quantity<'ratio'> | undefined,
    };
  const shareOfMost = (coolant: Quantity): Quantity<'ratio'> =>
    onQuantities.ratioOf(
      heat,
      onQuantities.run(heatFromEffectiveness, ratio(1), charge, coolant, compressor.outletTemperature, face),
    ) as Quantity<'ratio'>;
  return {
    effectiveness: shareOfMost(path.cooling.capacityRate),
    airSideEffectiveness: path.cooling.by === 'air' ? shareOfMost(charge) : undefined,
  };
}

/** What the engine does on a walked path. */
export function engineOf(
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
