import {
  DRY_AIR_PARTS,
  enthalpyAt,
  entropyFunctionAt,
  heatCapacityAt,
  mixed,
  POLYNOMIAL_RANGE,
  WATER_VAPOUR,
  type MassPolynomial,
} from './nasa-polynomials.js';

/** Temperatures between which a kernel looks for an answer, wider than where the polynomials are trusted. */
export const COLDEST = 173.15;
export const HOTTEST = 1200;

/** What temperature the polynomials take. */
export const GAS_TEMPERATURE = { min: COLDEST, max: HOTTEST, trusted: POLYNOMIAL_RANGE, typical: 400 } as const;

export const DRY_AIR: MassPolynomial = mixed(DRY_AIR_PARTS);
export const VAPOUR: MassPolynomial = mixed([[WATER_VAPOUR, 1]]);

const perMoist = (W: number, ofDryAir: number, ofVapour: number): number => (ofDryAir + W * ofVapour) / (1 + W);

/** Gas constant of humid air of a humidity ratio, J per kg of HUMID air and K, bare. */
export const gasConstantMass = (W: number): number => perMoist(W, DRY_AIR.gasConstant, VAPOUR.gasConstant);

/** Heat capacity at constant pressure of humid air, J per kg of HUMID air and K, bare; vapour as a gas. */
export const cpMass = (T: number, W: number): number =>
  perMoist(W, heatCapacityAt(DRY_AIR, T), heatCapacityAt(VAPOUR, T));

/** Enthalpy of humid air over that of the same gas at 0 °C, J per kg of HUMID air, bare; no condensation. */
export const enthalpyMass = (T: number, W: number): number =>
  perMoist(W, enthalpyAt(DRY_AIR, T), enthalpyAt(VAPOUR, T));

/**
 * Entropy function of humid air: entropy at constant pressure over that at 0 °C, J per kg of HUMID air and K, bare. Along an isentrope
 * it rises by the gas constant times the logarithm of the pressure ratio.
 */
export const entropyFunctionMass = (T: number, W: number): number =>
  perMoist(W, entropyFunctionAt(DRY_AIR, T), entropyFunctionAt(VAPOUR, T));

/** Temperature at which humid air has an enthalpy, K, bare; NaN outside COLDEST to HOTTEST. */
export function temperatureAtEnthalpyMass(h: number, W: number): number {
  return settle((T) => T + (h - enthalpyMass(T, W)) / cpMass(T, W));
}

/** Temperature at which humid air has an entropy function, K, bare; NaN outside COLDEST to HOTTEST. */
export function temperatureAtEntropyFunctionMass(s: number, W: number): number {
  return settle((T) => T * Math.exp((s - entropyFunctionMass(T, W)) / cpMass(T, W)));
}

/**
 * Newton's steps, sure to arrive because the heat capacity is positive and changes by no more than a fifth over the range; they end
 * where rounding keeps the next from being smaller.
 */
function settle(step: (T: number) => number): number {
  let T = 350;
  let last = Infinity;
  for (let i = 0; i < 30; i++) {
    const next = Math.min(HOTTEST + 1, Math.max(COLDEST - 1, step(T)));
    const size = Math.abs(next - T);
    if (size <= 2 * Number.EPSILON * T || (size < 1e-11 * T && size >= last))
      return next > COLDEST - 1e-9 && next < HOTTEST + 1e-9 ? next : NaN;
    [T, last] = [next, size];
  }
  return NaN;
}
