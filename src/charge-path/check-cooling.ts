import { arrangements } from './arrangements.js';
import {
  CHARGE_FLOW,
  CONDUCTANCE,
  EXPONENT,
  FLOW,
  LOSS,
  RECIRCULATED,
  TEMPERATURE,
  type Field,
  type Reader,
} from './check-reader.js';
import type { AirCooling, CoreSide, Installation, Spray } from './installation.js';

/** What every spray takes as its share. */
const CAPTURED: Field = ['ratio', 0.01, 1];

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

/** No liquefied gas holds more cold than this in a kilogram. */
const MOST_COLD = 1e6;

function checkSpray(reader: Reader, path: string, spray: Spray): void {
  reader.need(`${path}.flow`, spray.flow, ['mass flow', 0, 10]);
  reader.may(`${path}.captureEfficiency`, spray.captureEfficiency, CAPTURED);
  if (spray.coolant === undefined) {
    reader.need(`${path}.capacity`, spray.capacity, ['specific energy', 1e3, 4e6]);
    if (!(spray.capacity?.si > MOST_COLD)) return;
    const mend = "So much is in water alone: say coolant: 'water' instead, and the wet bulb of the air is heeded.";
    return reader.problem('rule', `${path}.capacity`, 'at most 1 MJ/kg', String(spray.capacity), mend);
  }
  if (!reader.choice(`${path}.coolant`, spray.coolant, ['water'])) return;
  if (!('capacity' in spray)) return;
  const mend = 'What water does follows from the air it evaporates into.';
  reader.problem('rule', `${path}.capacity`, 'left out where the coolant is water', 'a value', mend);
}

function checkAir(reader: Reader, path: string, air: Omit<AirCooling, 'by'>): void {
  reader.need(`${path}.massFlow`, air.massFlow, FLOW);
  reader.may(`${path}.temperature`, air.temperature, TEMPERATURE);
  reader.may(`${path}.upstreamHeat`, air.upstreamHeat, ['power', -1e6, 1e6]);
  if (air.spray !== undefined && reader.object(`${path}.spray`, air.spray)) {
    checkSpray(reader, `${path}.spray`, air.spray);
  }
  reader.may(`${path}.recirculatedShare`, air.recirculatedShare, RECIRCULATED);
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
