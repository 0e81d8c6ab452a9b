import { arrangements } from './arrangements.js';
import {
  CHARGE_FLOW,
  CONDUCTANCE,
  EXPONENT,
  FLOW,
  LOSS,
  TEMPERATURE,
  type Field,
  type Reader,
} from './check-reader.js';
import type { AirCooling, CoreSide, Installation } from './installation.js';

function checkSide(reader: Reader, path: string, side: CoreSide | undefined, flow: Field = FLOW): void {
  if (!reader.object(path, side)) return;
  reader.need(`${path}.conductance`, side!.conductance, CONDUCTANCE);
  reader.need(`${path}.atFlow`, side!.atFlow, flow);
  reader.need(`${path}.exponent`, side!.exponent, EXPONENT);
}

/** What must hold of a core. */
export function checkCore(reader: Reader, core: Installation['core']): void {
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

/** What must hold of what cools it. */
export function checkCooling(reader: Reader, cooling: Installation['cooling']): void {
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
