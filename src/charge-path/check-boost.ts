import { CHARGE_FLOW, SHARE, type Reader } from './check-reader.js';
import type { Exhaust, Installation } from './installation.js';

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

/** What must hold of a boost control. */
export function checkBoost(reader: Reader, boost: Installation['boost'], installation: Installation): void {
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
