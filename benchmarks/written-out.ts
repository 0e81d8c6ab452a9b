// What the library computes, as bare arithmetic of numbers that someone would write for one script: no checks, no units, no history.
// The tables of the gases are the library's own, so that both sides do the same work; the formulas are as the textbooks print them.
import { DRY_AIR_PARTS, MOLAR_GAS_CONSTANT } from '../src/air/nasa-polynomials.js';

export function outletTemperature(T1: number, PR: number, eta: number, k: number): number {
  return T1 * (1 + (PR ** ((k - 1) / k) - 1) / eta);
}

const mass = DRY_AIR_PARTS.reduce((sum, [{ molarMass }, share]) => sum + share * molarMass, 0);
const R = (DRY_AIR_PARTS.reduce((sum, [, share]) => sum + share, 0) * MOLAR_GAS_CONSTANT) / mass;
const [a1, a2, a3, a4, a5, a6, a7] = [0, 1, 2, 3, 4, 5, 6].map(
  (i) =>
    DRY_AIR_PARTS.reduce((sum, [{ coefficients }, share]) => sum + share * coefficients[i]!, 0) *
    (MOLAR_GAS_CONSTANT / mass),
) as [number, number, number, number, number, number, number];

const heatCapacity = (T: number): number => a1 / (T * T) + a2 / T + a3 + T * (a4 + T * (a5 + T * (a6 + T * a7)));
const enthalpy = (T: number): number =>
  -a1 / T + a2 * Math.log(T) + T * (a3 + T * (a4 / 2 + T * (a5 / 3 + T * (a6 / 4 + (T * a7) / 5))));
const entropyFunction = (T: number): number =>
  -a1 / (2 * T * T) - a2 / T + a3 * Math.log(T) + T * (a4 + T * (a5 / 2 + T * (a6 / 3 + (T * a7) / 4)));

/** Dry air whose heat capacity changes: Newton's steps for the ideal outlet, then for the real one. */
export function outletTemperatureVariableHeat(T1: number, PR: number, eta: number): number {
  const phi = entropyFunction(T1) + R * Math.log(PR);
  let ideal = T1 * PR ** 0.285;
  for (let change = 1; Math.abs(change) > 1e-9; ideal += change)
    change = ((phi - entropyFunction(ideal)) * ideal) / heatCapacity(ideal);
  const h1 = enthalpy(T1);
  const h2 = h1 + (enthalpy(ideal) - h1) / eta;
  let T2 = T1 + (ideal - T1) / eta;
  for (let change = 1; Math.abs(change) > 1e-9; T2 += change) change = (h2 - enthalpy(T2)) / heatCapacity(T2);
  return T2;
}

/** Crossflow, both flows unmixed: Mason's sum of products of Poisson tails. */
export function effectivenessCrossflow(N: number, C: number): number {
  const M = C * N;
  let [p, q] = [Math.exp(-N), Math.exp(-M)];
  let [P, Q] = [1 - p, 1 - q];
  let sum = P * Q;
  for (let n = 1; P * Q > 1e-17; n++) {
    p *= N / n;
    q *= M / n;
    P -= p;
    Q -= q;
    sum += P * Q;
  }
  return sum / M;
}

const saturationOverWater = (T: number): number =>
  Math.exp(
    -5800.2206 / T + 1.3914993 + T * (-0.048640239 + T * (4.1764768e-5 - T * 1.4452093e-8)) + 6.5459673 * Math.log(T),
  );

/** Density and dew point, above freezing, of air with a relative humidity. */
export function humidAir(T: number, p: number, RH: number): readonly [density: number, dewPoint: number] {
  const pv = RH * saturationOverWater(T);
  const density = (p - (1 - 0.621945) * pv) / (287.042 * T);
  let Td = T;
  for (let change = 1; Math.abs(change) > 1e-9; Td += change) {
    const slope =
      5800.2206 / (Td * Td) - 0.048640239 + Td * (2 * 4.1764768e-5 - 3 * Td * 1.4452093e-8) + 6.5459673 / Td;
    change = Math.log(pv / saturationOverWater(Td)) / slope;
  }
  return [density, Td];
}
