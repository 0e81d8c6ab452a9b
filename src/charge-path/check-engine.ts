import type { Reader } from './check-reader.js';
import type { Fuelling, Installation } from './installation.js';

/** What must hold of an engine. */
export function checkEngine(reader: Reader, engine: Installation['engine']): void {
  const isByBore = engine.bore !== undefined || engine.stroke !== undefined || engine.cylinders !== undefined;
  reader.one('engine', { sweptVolume: engine.sweptVolume, 'bore, stroke and cylinders': isByBore ? true : undefined });
  reader.may('engine.sweptVolume', engine.sweptVolume, ['volume', 1e-5, 0.5]);
  if (isByBore) {
    reader.need('engine.bore', engine.bore, ['length', 0.01, 1]);
    reader.need('engine.stroke', engine.stroke, ['length', 0.01, 2]);
    reader.need('engine.cylinders', engine.cylinders, ['ratio', 1, 48]);
  }
  reader.need('engine.volumetricEfficiency', engine.volumetricEfficiency, ['ratio', 0.05, 1.5]);
  reader.need('engine.atChargeTemperature', engine.atChargeTemperature, ['temperature', 220, 500]);
  reader.may('engine.densityExponent', engine.densityExponent, ['ratio', 0, 2]);
  reader.may('engine.revolutionsPerCycle', engine.revolutionsPerCycle, ['ratio', 1, 2]);
  if (engine.walls !== undefined && reader.object('engine.walls', engine.walls)) {
    reader.need('engine.walls.temperature', engine.walls.temperature, ['temperature', 250, 700]);
    reader.need('engine.walls.heatedShare', engine.walls.heatedShare, ['ratio', 0, 0.9]);
  }
  if (engine.spark !== undefined && reader.object('engine.spark', engine.spark)) {
    reader.need('engine.spark.fromBestTorque', engine.spark.fromBestTorque, ['angle', -0.7, 0.7]);
    reader.may('engine.spark.sensitivity', engine.spark.sensitivity, ['ratio', 1e-5, 0.005]);
  }
  if (engine.exhaust === undefined || !reader.object('engine.exhaust', engine.exhaust)) return;
  const { exhaust } = engine;
  reader.may('engine.exhaust.pressureOverManifold', exhaust.pressureOverManifold, ['ratio', 0.1, 5]);
  reader.need('engine.exhaust.pressureOverManifoldAtReference', exhaust.pressureOverManifoldAtReference, [
    'ratio',
    0.1,
    5,
  ]);
  reader.need('engine.exhaust.compressionRatio', exhaust.compressionRatio, ['ratio', 4, 25]);
}

/** What must hold of mixture and fuel. */
export function checkFuelling(reader: Reader, fuelling: Fuelling): void {
  const { lambda, fuelMassFlow, specificFuelConsumption, indicated } = fuelling;
  reader.need('fuelling.stoichiometricAirFuelRatio', fuelling.stoichiometricAirFuelRatio, ['air-fuel ratio', 1, 40]);
  reader.one('fuelling', { lambda, fuelMassFlow });
  reader.may('fuelling.lambda', lambda, ['lambda', 0.4, 5]);
  reader.may('fuelling.fuelMassFlow', fuelMassFlow, ['mass flow', 1e-7, 5]);
  reader.one('fuelling', { specificFuelConsumption, indicated });
  reader.may('fuelling.specificFuelConsumption', specificFuelConsumption, ['specific fuel consumption', 2e-8, 1e-6]);
  if (indicated === undefined || !reader.object('fuelling.indicated', indicated)) return;
  reader.need('fuelling.indicated.efficiency', indicated.efficiency, ['ratio', 0.05, 0.7]);
  reader.need('fuelling.indicated.lowerHeatingValue', indicated.lowerHeatingValue, ['specific energy', 1e7, 1.3e8]);
  reader.need('fuelling.indicated.frictionPressure', indicated.frictionPressure, ['mean effective pressure', 0, 2e6]);
}
