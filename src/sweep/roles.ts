import type { Column, Kind } from '../units/index.js';

/** What a channel of a pull can be, and the kind of its values. */
export const CHANNEL_KINDS = {
  /** Time since some start. */
  time: 'time',
  /** Time of day, since midnight. */
  clock: 'time',
  /** Speed of the crankshaft. */
  engineSpeed: 'rotational speed',
  /** Torque, wherever the dynamometer refers it to. */
  torque: 'torque',
  /** Power, wherever the dynamometer refers it to. */
  power: 'power',
  /** Manifold pressure above the barometer. */
  boost: 'gauge pressure',
  /** Manifold pressure above vacuum. */
  manifoldPressure: 'absolute pressure',
  /** Air on its way into the engine, after the cooler. */
  chargeTemperature: 'temperature',
  /** Air between compressor and cooler. */
  compressorOutletTemperature: 'temperature',
  /** Between compressor and cooler, above the barometer. */
  compressorOutletPressure: 'gauge pressure',
  /** Cooling air at the face of the core. */
  faceTemperature: 'temperature',
  /** Air before the compressor. */
  intakeTemperature: 'temperature',
  /** Air of the room, or outside. */
  roomTemperature: 'temperature',
  /** Pressure of the air at the place, not reduced to sea level. */
  barometer: 'absolute pressure',
  /** Of the air of the room. */
  relativeHumidity: 'relative humidity',
  /** Air-fuel ratio over the stoichiometric one. */
  lambda: 'lambda',
  /** Air mass over fuel mass. */
  airFuelRatio: 'air-fuel ratio',
  /** Crank angle of the spark before top dead centre; after it is below zero. */
  sparkAdvance: 'angle',
  /** Mass flow of air. */
  airFlow: 'mass flow',
  /** Mass flow of fuel. */
  fuelFlow: 'mass flow',
  /** Volume flow of fuel. */
  fuelVolumeFlow: 'volume flow',
  oilTemperature: 'temperature',
  coolantTemperature: 'temperature',
  /** Fuel pressure above the barometer. */
  fuelPressure: 'gauge pressure',
  /** Speed over the road, or of the rollers. */
  vehicleSpeed: 'speed',
} as const satisfies Record<string, Kind>;

/** The part a channel plays in a pull: `'torque'`, `'chargeTemperature'`. */
export type ChannelRole = keyof typeof CHANNEL_KINDS;

/** The kind of the values of a channel. */
export type ChannelKind<R extends ChannelRole> = (typeof CHANNEL_KINDS)[R];

/** What a column of a log can be: a channel, or the number of the pull that a row belongs to. */
export type Role = ChannelRole | 'pull';

/** The channels of a pull, by role. */
export type Channels = { readonly [R in ChannelRole]?: Column<ChannelKind<R>> };

/** Every channel role, in the order in which people list them. */
export const CHANNEL_ROLES = Object.keys(CHANNEL_KINDS) as readonly ChannelRole[];

/** Whether a text from outside is a role; `__proto__` and its like are not. */
export function isRole(text: string): text is Role {
  return text === 'pull' || Object.hasOwn(CHANNEL_KINDS, text);
}

/** A role in words: `charge temperature`. */
export function roleWords(role: Role): string {
  return role.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
