import { CalculationError, type Problem } from '../calculation/index.js';
import { diagnose } from '../units/internal.js';
import type { Kind, Operation } from '../units/index.js';
import { arrangements } from './arrangements.js';
import type { AirCooling, CoreSide, Exhaust, Fuelling, Installation, Passage } from './installation.js';

const NAME = 'operating point';

/** What a place of the installation takes, in SI bounds. */
type Field = readonly [kind: Kind, min: number, max: number];
const FLOW: Field = ['mass flow', 1e-4, 50];
const CHARGE_FLOW: Field = ['mass flow', 1e-4, 5];
const EXPONENT: Field = ['ratio', 0, 1];
const CONDUCTANCE: Field = ['thermal conductance', 1e-2, 1e6];
const LOSS: Field = ['pressure difference', 0, 2e5];
const TEMPERATURE: Field = ['temperature', 180, 400];
const SHARE: Field = ['ratio', 0.05, 1];

/** Collects everything that is wrong, so that one error tells it all. */
class Reader {
  readonly #fields: { path: string; field: Field; value: unknown }[] = [];
  readonly #problems: Problem[] = [];

  /** A value that must be there. */
  need(path: string, value: unknown, field: Field): void {
    this.#fields.push({ path, field, value });
  }

  /** A value that may be left out. */
  may(path: string, value: unknown, field: Field): void {
    if (value !== undefined) this.need(path, value, field);
  }

  /** Exactly one of several ways to say something. */
  one(what: string, ways: Readonly<Record<string, unknown>>): void {
    const given = Object.keys(ways).filter((key) => ways[key] !== undefined);
    if (given.length === 1) return;
    const names = Object.keys(ways).join(' or ');
    this.problem(
      given.length === 0 ? 'missing' : 'rule',
      what,
      names,
      given.length === 0 ? 'neither' : given.join(' and '),
    );
  }

  choice(path: string, value: unknown, choices: readonly string[]): boolean {
    if (choices.includes(value as string)) return true;
    const got = value === undefined ? 'nothing' : typeof value === 'string' ? `'${value}'` : typeof value;
    this.problem(value === undefined ? 'missing' : 'unknown', path, `one of '${choices.join("', '")}'`, got);
    return false;
  }

  object(path: string, value: unknown): boolean {
    if (typeof value === 'object' && value !== null) return true;
    this.problem('missing', path, 'an object that describes it', value === undefined ? 'nothing' : typeof value);
    return false;
  }

  problem(code: Problem['code'], input: string, need: string, got: string, mend = ''): void {
    this.#problems.push({ code, input, need, got, mend });
  }

  /** @throws CalculationError with everything that was found. */
  finish(): void {
    const inputs = this.#fields.map(({ path, field: [kind, min, max] }) => ({
      name: path,
      symbol: path,
      kind,
      min,
      max,
    }));
    const operation = { name: NAME, inputs } as unknown as Operation;
    const wrong =
      this.#fields.length === 0
        ? []
        : diagnose(
            operation,
            this.#fields.map(({ value }) => value),
          ).problems;
    const problems = [...this.#problems, ...wrong];
    if (problems.length > 0) throw new CalculationError(NAME, problems);
  }
}

/** @throws CalculationError with everything that is wrong with an installation and an engine speed. */
export function checkInstallation(installation: Installation, speed: unknown): void {
  const reader = new Reader();
  check(reader, installation, speed);
  reader.finish();
}

function check(reader: Reader, installation: Installation, speed: unknown): void {
  reader.need('engineSpeed', speed, ['rotational speed', 1, 500]);
  if (!reader.object('installation', installation)) return;
  const { ambient, inlet, compressor, core, cooling, duct, engine, fuelling, boost, gaugeAt } = installation;
  if (reader.object('ambient', ambient)) {
    reader.need('ambient.pressure', ambient.pressure, ['absolute pressure', 3e4, 1.2e5]);
    reader.need('ambient.temperature', ambient.temperature, ['temperature', 220, 333.15]);
    reader.one('ambient', { relativeHumidity: ambient.relativeHumidity, humidityRatio: ambient.humidityRatio });
    reader.may('ambient.relativeHumidity', ambient.relativeHumidity, ['relative humidity', 0, 1]);
    reader.may('ambient.humidityRatio', ambient.humidityRatio, ['humidity ratio', 0, 0.2]);
  }
  checkPassage(reader, 'inlet', inlet);
  checkPassage(reader, 'duct', duct);
  if (reader.object('compressor', compressor)) {
    reader.one('compressor', { isentropicEfficiency: compressor.isentropicEfficiency, map: compressor.map });
    reader.may('compressor.isentropicEfficiency', compressor.isentropicEfficiency, SHARE);
    if (compressor.map !== undefined && typeof compressor.map?.isentropicEfficiency !== 'function')
      reader.problem('kind', 'compressor.map', 'a map made by compressorMap', typeof compressor.map);
    reader.may('compressor.mechanicalEfficiency', compressor.mechanicalEfficiency, ['ratio', 0.3, 1]);
    if (compressor.drivenBy !== undefined)
      reader.choice('compressor.drivenBy', compressor.drivenBy, ['exhaust', 'crankshaft']);
  }
  if (reader.object('core', core)) checkCore(reader, core);
  if (reader.object('cooling', cooling) && reader.choice('cooling.by', cooling.by, ['air', 'liquid']))
    checkCooling(reader, cooling);
  if (reader.object('engine', engine)) checkEngine(reader, engine);
  if (reader.object('fuelling', fuelling)) checkFuelling(reader, fuelling);
  if (reader.object('boost', boost)) checkBoost(reader, boost, installation);
  if (gaugeAt !== undefined) reader.choice('gaugeAt', gaugeAt, ['compressor outlet', 'manifold']);
}

function checkPassage(reader: Reader, path: string, passage: Passage | undefined): void {
  if (passage === undefined || !reader.object(path, passage)) return;
  reader.may(`${path}.loss`, passage.loss, LOSS);
  reader.may(`${path}.lossAtFlow`, passage.lossAtFlow, CHARGE_FLOW);
  reader.may(`${path}.heating`, passage.heating, ['temperature difference', -100, 200]);
}

function checkSide(reader: Reader, path: string, side: CoreSide | undefined, flow: Field = FLOW): void {
  if (!reader.object(path, side)) return;
  reader.need(`${path}.conductance`, side!.conductance, CONDUCTANCE);
  reader.need(`${path}.atFlow`, side!.atFlow, flow);
  reader.need(`${path}.exponent`, side!.exponent, EXPONENT);
}

function checkCore(reader: Reader, core: Installation['core']): void {
  reader.choice('core.arrangement', core.arrangement, arrangements);
  reader.may('core.passes', core.passes, ['ratio', 1, 20]);
  checkSide(reader, 'core.charge', core.charge, CHARGE_FLOW);
  checkSide(reader, 'core.coolant', core.coolant);
  if (!reader.object('core.loss', core.loss)) return;
  reader.need('core.loss.pressure', core.loss.pressure, LOSS);
  reader.need('core.loss.atFlow', core.loss.atFlow, CHARGE_FLOW);
  reader.need('core.loss.atDensity', core.loss.atDensity, ['density', 0.1, 20]);
  reader.may('core.loss.exponent', core.loss.exponent, ['ratio', 1, 2]);
}

function checkAir(reader: Reader, path: string, air: Omit<AirCooling, 'by'>): void {
  reader.need(`${path}.massFlow`, air.massFlow, FLOW);
  reader.may(`${path}.temperature`, air.temperature, TEMPERATURE);
  reader.may(`${path}.upstreamHeat`, air.upstreamHeat, ['power', -1e6, 1e6]);
  if (air.spray !== undefined && reader.object(`${path}.spray`, air.spray)) {
    reader.need(`${path}.spray.flow`, air.spray.flow, ['mass flow', 0, 10]);
    reader.need(`${path}.spray.capacity`, air.spray.capacity, ['specific energy', 1e3, 4e6]);
    reader.may(`${path}.spray.captureEfficiency`, air.spray.captureEfficiency, ['ratio', 0, 1]);
  }
  reader.may(`${path}.specificHeatCapacity`, air.specificHeatCapacity, ['specific heat capacity', 900, 1300]);
}

function checkCooling(reader: Reader, cooling: Installation['cooling']): void {
  if (cooling.by === 'air') return checkAir(reader, 'cooling', cooling);
  reader.need('cooling.liquidFlow', cooling.liquidFlow, FLOW);
  reader.need('cooling.liquidHeatCapacity', cooling.liquidHeatCapacity, ['specific heat capacity', 500, 6000]);
  if (reader.object('cooling.radiator', cooling.radiator)) {
    reader.choice('cooling.radiator.arrangement', cooling.radiator.arrangement, arrangements);
    checkSide(reader, 'cooling.radiator.liquid', cooling.radiator.liquid);
    checkSide(reader, 'cooling.radiator.air', cooling.radiator.air);
  }
  if (reader.object('cooling.air', cooling.air)) checkAir(reader, 'cooling.air', cooling.air);
}

function checkEngine(reader: Reader, engine: Installation['engine']): void {
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

function checkFuelling(reader: Reader, fuelling: Fuelling): void {
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

const CONTROLS = [
  'spring',
  'closed loop, absolute',
  'closed loop, gauge',
  'fixed compressor speed',
  'fixed compressor speed on its map',
  'displacement blower',
  'fixed wastegate',
  'held torque',
] as const;

function checkBoost(reader: Reader, boost: Installation['boost'], installation: Installation): void {
  if (!reader.choice('boost.by', boost.by, CONTROLS)) return;
  const needsExhaust = (exhaust: Exhaust | undefined): void => {
    if (exhaust === undefined || boost.by === 'fixed wastegate' || exhaust.pressureOverManifold !== undefined) return;
    reader.problem(
      'missing',
      'engine.exhaust.pressureOverManifold',
      'a ratio',
      'nothing',
      'Only a fixed wastegate finds it itself.',
    );
  };
  needsExhaust(installation.engine?.exhaust);
  switch (boost.by) {
    case 'spring':
      reader.choice('boost.senses', boost.senses, ['compressor outlet', 'manifold']);
      reader.need('boost.gaugePressure', boost.gaugePressure, ['gauge pressure', 0, 6e5]);
      if (boost.droop === undefined || !reader.object('boost.droop', boost.droop)) return;
      reader.need('boost.droop.perPercentAir', boost.droop.perPercentAir, ['pressure difference', -2e4, 2e4]);
      return reader.need('boost.droop.atFlow', boost.droop.atFlow, CHARGE_FLOW);
    case 'closed loop, absolute':
      return reader.need('boost.manifoldPressure', boost.manifoldPressure, ['absolute pressure', 3e4, 7e5]);
    case 'closed loop, gauge':
      return reader.need('boost.manifoldPressure', boost.manifoldPressure, ['gauge pressure', 0, 6e5]);
    case 'fixed compressor speed':
      reader.need('boost.flowAtPoint', boost.flowAtPoint, CHARGE_FLOW);
      reader.need('boost.ratioAtPoint', boost.ratioAtPoint, ['ratio', 1, 8]);
      reader.need('boost.atInletTemperature', boost.atInletTemperature, ['temperature', 220, 380]);
      reader.need('boost.fallPerFlow', boost.fallPerFlow, ['mass flow', 1e-3, 1e3]);
      reader.need('boost.referenceTemperature', boost.referenceTemperature, ['temperature', 250, 330]);
      return reader.need('boost.referencePressure', boost.referencePressure, ['absolute pressure', 8e4, 1.1e5]);
    case 'fixed compressor speed on its map':
      if (installation.compressor?.map === undefined)
        reader.problem('missing', 'compressor.map', 'the map whose speed is held', 'nothing');
      reader.one('boost', { speed: boost.speed, driveRatio: boost.driveRatio });
      reader.may('boost.speed', boost.speed, ['rotational speed', 1, 6000]);
      return reader.may('boost.driveRatio', boost.driveRatio, ['ratio', 0.1, 200]);
    case 'displacement blower':
      reader.need('boost.volumePerRevolution', boost.volumePerRevolution, ['volume', 1e-6, 0.1]);
      reader.need('boost.driveRatio', boost.driveRatio, ['ratio', 0.05, 50]);
      reader.need('boost.volumetricEfficiencyUnloaded', boost.volumetricEfficiencyUnloaded, ['ratio', 0.1, 1.2]);
      return reader.need('boost.slip', boost.slip, ['ratio', 0, 1]);
    case 'fixed wastegate':
      reader.need('boost.turbineArea', boost.turbineArea, ['area', 1e-6, 0.05]);
      reader.need('boost.wastegateArea', boost.wastegateArea, ['area', 0, 0.05]);
      reader.need('boost.turbineEfficiency', boost.turbineEfficiency, SHARE);
      reader.need('boost.exhaustTemperature', boost.exhaustTemperature, ['temperature', 500, 1450]);
      return reader.need('boost.exhaustLoss', boost.exhaustLoss, ['pressure difference', 0, 1e5]);
    case 'held torque':
      return reader.need('boost.torque', boost.torque, ['torque', 1, 1e5]);
  }
}
