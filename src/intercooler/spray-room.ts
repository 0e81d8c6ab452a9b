import { calculation, derived, input, output, source } from '../calculation/index.js';
import { CARBON_DIOXIDE_CAUTIONS } from './spray-cautions.js';

/** Gas constant over molar mass of carbon dioxide, J/(kg·K). */
const GAS_CONSTANT = 188.924;
const LONG_LIMIT = 0.005;
const SHORT_LIMIT = 0.03;

const roomShare = (M: number, V: number, T: number, p: number): number => {
  const gas = (M * GAS_CONSTANT * T) / p;
  return gas / (V + gas);
};

/**
 * Share of carbon dioxide that a spray leaves in the air of a closed room, once mixed.
 *
 * It gathers low before it mixes, so near the floor it is far more. Ventilate, and trust a gas meter and not this figure.
 *
 * @function
 * @returns One mole fraction. Above 0.5 %, the usual limit over a working day, and above 3 %, that for a quarter of an hour, it carries
 * notes, beside the cautions for carbon dioxide.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * carbonDioxideInRoom({
 *   mass: mass(0.5, 'kg'), roomVolume: volume(150, 'm³'), temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa'),
 * }).in('%') //=> 0.194
 */
export const carbonDioxideInRoom = calculation({
  name: 'carbon dioxide in the air of a room',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Mass of carbon dioxide sprayed since the room was aired. */
    mass: input('M', 'mass', { min: 0, max: 1000, typical: 0.5 }),
    /** Volume of the room. */
    roomVolume: input('V', 'volume', { min: 1, max: 1e6, typical: 150 }),
    /** Temperature of the air in it. */
    temperature: input('T', 'temperature', { min: 223.15, max: 333.15, typical: 291.15 }),
    /** Absolute pressure in it. */
    pressure: input('p', 'absolute pressure', { min: 3e4, max: 1.2e5, typical: 94100 }),
  },
  output: output('x', 'mole fraction', '%'),
  formula: `(M * ${GAS_CONSTANT} * T / p) / (V + M * ${GAS_CONSTANT} * T / p)`,
  si: roomShare,
  rules: [
    {
      need: 'no more than 0.5 % carbon dioxide, the usual limit over a working day (ventilate)',
      holds: (M, V, T, p) => roomShare(M, V, T, p) <= LONG_LIMIT,
      otherwise: 'note',
    },
    {
      need: 'no more than 3 % carbon dioxide, the usual limit for a quarter of an hour (leave the room and air it)',
      holds: (M, V, T, p) => roomShare(M, V, T, p) <= SHORT_LIMIT,
      otherwise: 'note',
    },
  ],
  notes: CARBON_DIOXIDE_CAUTIONS,
  rises: ['M', 'T'],
  falls: ['V', 'p'],
  sources: [
    derived('perfect gas, mixed at constant pressure'),
    source('niosh', 'carbon dioxide: 5000 ppm over a working day, 30 000 ppm for 15 minutes', 'memory'),
  ],
});
