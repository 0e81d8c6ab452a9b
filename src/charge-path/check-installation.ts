import { checkBoost } from './check-boost.js';
import { checkCooling, checkCore } from './check-cooling.js';
import { checkEngine, checkFuelling } from './check-engine.js';
import { CHARGE_FLOW, LOSS, Reader, RECIRCULATED, SHARE } from './check-reader.js';
import type { Installation, Passage } from './installation.js';

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
  if (inlet) reader.may('inlet.recirculatedShare', inlet.recirculatedShare, RECIRCULATED);
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
  reader.may('gaugeVentBelowBarometer', installation.gaugeVentBelowBarometer, ['pressure difference', -5e3, 5e3]);
}

function checkPassage(reader: Reader, path: string, passage: Passage | undefined): void {
  if (passage === undefined || !reader.object(path, passage)) return;
  reader.may(`${path}.loss`, passage.loss, LOSS);
  reader.may(`${path}.lossAtFlow`, passage.lossAtFlow, CHARGE_FLOW);
  reader.may(`${path}.heating`, passage.heating, ['temperature difference', -100, 200]);
}
