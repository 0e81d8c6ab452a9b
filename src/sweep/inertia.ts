import { engineTorqueInSweep, inertiaTorque, powerFromTorque } from '../engine/index.js';
import { rotationalAcceleration, torque, type Quantity } from '../units/index.js';
import { columnOf, describe, NO_NOTES } from '../units/internal.js';
import { compensateLag, localQuadraticFactors, sampleNoise } from '../statistics/signal/index.js';
import { record, replaceChannel, timesOf, unfit, type Prepared } from './preparation.js';
import type { Pull } from './pull.js';
import type { Channels } from './roles.js';
import { figure } from './words-for-people.js';

/** The masses that a sweep speeds up, and how the ramp rate is taken from engine speed. */
export interface InertiaOptions {
  /** Of all that turns between load cell and crank, the engine included, referred to the crankshaft. */
  readonly momentOfInertia: Quantity<'moment of inertia'>;
  /** Whole width over which the rate is taken; half a second when left out. Use the same for every pull. */
  readonly window?: Quantity<'time'> | undefined;
}

const USUAL_WINDOW = 0.5;

/** Torque, and power, with what speeds up the masses added. */
export function inertiaAdded(pull: Pull, { momentOfInertia, window }: InertiaOptions): Prepared {
  const width = window?.si ?? USUAL_WINDOW;
  if (momentOfInertia?.kind !== 'moment of inertia' || !(momentOfInertia.si > 0)) {
    throw unfit('inertia.momentOfInertia', 'a moment of inertia above zero', describe(momentOfInertia));
  }
  if ((window !== undefined && window.kind !== 'time') || !(width > 0)) {
    throw unfit('inertia.window', 'a time above zero', describe(window));
  }
  const { engineSpeed, torque: brakeTorque, power } = pull.channels;
  if (engineSpeed === undefined || (brakeTorque === undefined && power === undefined)) {
    throw unfit('inertia', 'a pull with engine speed and torque or power', pull.name);
  }
  const { seconds, step } = timesOf(pull, 'inertia');
  const halfWindow = Math.max(1, Math.round((width / step - 1) / 2));
  const { slopes } = compensateLag(seconds, engineSpeed.si, { lag: 0, halfWindow });
  const rampRate = columnOf('rotational acceleration', slopes, 'rpm/s', undefined, NO_NOTES, 0, 'ramp rate');
  let channels: Channels = pull.channels;
  if (brakeTorque !== undefined) {
    const corrected = engineTorqueInSweep.columns({ brakeTorque, momentOfInertia, rampRate }, { badRows: 'missing' });
    channels = replaceChannel(channels, 'torque', corrected.si);
  }
  if (power !== undefined) {
    const added = inertiaTorque.columns({ momentOfInertia, rampRate }, { badRows: 'missing' });
    const more = powerFromTorque.columns({ torque: added, engineSpeed }, { badRows: 'missing' });
    channels = replaceChannel(
      channels,
      'power',
      power.si.map((si, row) => si + more.si[row]!),
    );
  }
  const rates = slopes.filter((slope) => !Number.isNaN(slope));
  if (rates.length === 0) throw unfit('inertia.window', 'shorter than the pull', `${figure(width)} s`);
  const meanRate = rotationalAcceleration(
    Number(((60 * rates.reduce((sum, rate) => sum + rate, 0)) / rates.length).toPrecision(4)),
    'rpm/s',
  );
  const mean = inertiaTorque({ momentOfInertia, rampRate: meanRate });
  const rateNoise = sampleNoise(engineSpeed.si) * Math.sqrt(localQuadraticFactors(step, halfWindow).slope);
  const added = torque(2 * Math.PI * momentOfInertia.si * rateNoise, 'N·m');
  const own = brakeTorque === undefined ? NaN : sampleNoise(brakeTorque.si);
  const factor = own > 0 ? Math.hypot(1, added.si / own) : undefined;
  const message =
    `Torque that speeds up ${String(momentOfInertia)} added, ${String(mean)} at the mean rate of ${String(meanRate)}; ` +
    `the rate is taken over ${figure((2 * halfWindow + 1) * step)} s, which adds noise of ${figure(Number(added.si.toPrecision(2)))} N·m to a row.`;
  return { channels, done: [record('inertia', undefined, rates.length, message, factor)] };
}
