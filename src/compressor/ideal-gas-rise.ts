import { cpMass, DRY_AIR, VAPOUR } from '../air/ideal-gas.js';
import { enthalpyRise, entropyFunctionRise, type MassPolynomial } from '../air/nasa-polynomials.js';

/** Hottest outlet that is looked for: the heat capacities are not known above. */
export const HOTTEST_OUTLET = 1000;

type Rise = (gas: MassPolynomial, from: number, rise: number) => number;

const ofHumidAir =
  (ofGas: Rise) =>
  (from: number, rise: number, W: number): number =>
    W === 0 ? ofGas(DRY_AIR, from, rise) : (ofGas(DRY_AIR, from, rise) + W * ofGas(VAPOUR, from, rise)) / (1 + W);

/** Enthalpy that humid air gains over a rise of temperature, J per kg of humid air. */
export const enthalpyGained = /* @__PURE__ */ ofHumidAir(enthalpyRise);

/** Entropy function that humid air gains over a rise of temperature, J per kg of humid air and K. */
export const entropyFunctionGained = /* @__PURE__ */ ofHumidAir(entropyFunctionRise);

/**
 * Rise of temperature over which the entropy function of humid air gains an amount; NaN above the hottest outlet. Solving for the rise
 * and not for the temperature keeps the digits of a small one.
 */
export function riseByEntropy(from: number, amount: number, W: number): number {
  return settled(from, (rise, T) => T * Math.expm1((amount - entropyFunctionGained(from, rise, W)) / cpMass(T, W)));
}

/** Rise of temperature over which the enthalpy of humid air gains an amount; NaN above the hottest outlet. */
export function riseByEnthalpy(from: number, amount: number, W: number): number {
  return settled(from, (rise, T) => (amount - enthalpyGained(from, rise, W)) / cpMass(T, W));
}

/**
 * Newton's steps until they are lost in rounding, where they stop shrinking; the heat capacity changes so little that a few are enough.
 */
function settled(from: number, step: (rise: number, T: number) => number): number {
  let rise = 0;
  let before = Infinity;
  for (let i = 0; i < 40; i++) {
    const change = step(rise, from + rise);
    rise += change;
    if (!(from + rise > 0 && from + rise < 4 * HOTTEST_OUTLET)) return NaN;
    const size = Math.abs(change);
    if (size <= Number.EPSILON * Math.abs(rise) || (size < 1e-12 * Math.abs(rise) && size >= before))
      return from + rise <= HOTTEST_OUTLET * (1 + 1e-12) ? rise : NaN;
    before = size;
  }
  return NaN;
}
