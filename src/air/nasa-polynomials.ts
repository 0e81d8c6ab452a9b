import { exactDot } from './exact-dot.js';

/**
 * A gas whose heat capacity is a NASA polynomial: cp/R = a₁/T² + a₂/T + a₃ + a₄T + a₅T² + a₆T³ + a₇T⁴. The older form with seven
 * coefficients has no negative powers.
 */
export interface IdealGas {
  /** kg/mol. */
  readonly molarMass: number;
  /** a₁ to a₇. */
  readonly coefficients: readonly [number, number, number, number, number, number, number];
}

export const NITROGEN: IdealGas = {
  molarMass: 0.0280134,
  coefficients: [22103.71497, -381.846182, 6.08273836, -0.00853091441, 1.384646189e-5, -9.62579362e-9, 2.519705809e-12],
};

export const OXYGEN: IdealGas = {
  molarMass: 0.0319988,
  coefficients: [-34255.6342, 484.700097, 1.119010961, 0.00429388924, -6.83630052e-7, -2.0233727e-9, 1.039040018e-12],
};

export const ARGON: IdealGas = { molarMass: 0.039948, coefficients: [0, 0, 2.5, 0, 0, 0, 0] };

export const CARBON_DIOXIDE: IdealGas = {
  molarMass: 0.0440095,
  coefficients: [0, 0, 2.35677352, 0.00898459677, -7.12356269e-6, 2.45919022e-9, -1.43699548e-13],
};

export const WATER_VAPOUR: IdealGas = {
  molarMass: 0.01801528,
  coefficients: [0, 0, 4.19864056, -0.0020364341, 6.52040211e-6, -5.48797062e-9, 1.77197817e-12],
};

/** Mole fractions of dry air; neon and rarer gases, 30 parts per million, are left out and the rest taken as the whole. */
export const DRY_AIR_PARTS: readonly (readonly [gas: IdealGas, moleFraction: number])[] = [
  [NITROGEN, 0.780848],
  [OXYGEN, 0.20939],
  [ARGON, 0.009332],
  [CARBON_DIOXIDE, 0.0004],
];

/** The molar gas constant, J/(mol·K), exact. */
export const MOLAR_GAS_CONSTANT = 8.31446261815324;

/** Enthalpies and entropy functions are counted from here: 0 °C. */
export const DATUM = 273.15;

/** Where the polynomials hold, K. */
export const POLYNOMIAL_RANGE = [200, 1000] as const;

/** A gas or a fixed mixture of gases. */
export interface MassPolynomial {
  /** J/(kg·K). */
  readonly gasConstant: number;
  /** a₁ to a₇. */
  readonly c: readonly number[];
  /** a₃ to a₇ about the centre: the powers of the temperature itself cancel each other, those of the distance hardly. */
  readonly centred: readonly number[];
}

/** A power of two, so that the terms shifted to it are exact; near the middle of the range. */
const CENTRE = 512;

/** How a₃ to a₇ shift to the centre: factors that are powers of two, which do not round, so 3 and 6 are written as sums. */
const SHIFTS: readonly (readonly (readonly [power: number, factors: readonly number[]])[])[] = [
  [
    [0, [1]],
    [1, [1]],
    [2, [1]],
    [3, [1]],
    [4, [1]],
  ],
  [
    [1, [1]],
    [2, [2]],
    [3, [2, 1]],
    [4, [4]],
  ],
  [
    [2, [1]],
    [3, [2, 1]],
    [4, [4, 2]],
  ],
  [
    [3, [1]],
    [4, [4]],
  ],
  [[4, [1]]],
];

/** Gases in proportion to the given amounts as one polynomial, since heat capacities of ideal gases add up. */
export function mixed(parts: readonly (readonly [gas: IdealGas, amount: number])[]): MassPolynomial {
  const amounts = parts.map(([, amount]) => amount);
  const total = exactDot(amounts, [1]);
  const mass = exactDot(
    amounts,
    parts.map(([{ molarMass }]) => molarMass),
  );
  const perAmount = (values: readonly (readonly number[])[]): number =>
    exactDot(
      values.flatMap((ofGas, i) => ofGas.map(() => amounts[i]!)),
      values.flat(),
    ) / total;
  const c = [0, 1, 2, 3, 4, 5, 6].map((i) => perAmount(parts.map(([{ coefficients }]) => [coefficients[i]!])));
  const centred = SHIFTS.map((shift, order) =>
    perAmount(
      parts.map(([{ coefficients }]) =>
        shift.flatMap(([power, factors]) =>
          factors.map((factor) => factor * coefficients[power + 2]! * CENTRE ** (power - order)),
        ),
      ),
    ),
  );
  return { gasConstant: (total * MOLAR_GAS_CONSTANT) / mass, c, centred };
}

/** Heat capacity at constant pressure, J/(kg·K). */
export function heatCapacityAt({ gasConstant, c, centred: q }: MassPolynomial, T: number): number {
  const d = T - CENTRE;
  return gasConstant * (q[0]! + d * (q[1]! + d * (q[2]! + d * (q[3]! + d * q[4]!))) + (c[1]! + c[0]! / T) / T);
}

/** Integral of the heat capacity from a temperature over a rise, J/kg; as a product with the rise, so that a small one keeps its digits. */
export function enthalpyRise({ gasConstant, c }: MassPolynomial, from: number, rise: number): number {
  const T = from + rise;
  const s2 = T + from;
  const s3 = T * T + T * from + from * from;
  const s4 = s2 * (T * T + from * from);
  const s5 = T ** 4 + from * s4;
  return (
    gasConstant *
    (rise * (c[2]! + (c[3]! / 2) * s2 + (c[4]! / 3) * s3 + (c[5]! / 4) * s4 + (c[6]! / 5) * s5 + c[0]! / (T * from)) +
      c[1]! * Math.log1p(rise / from))
  );
}

/** Integral of the heat capacity over temperature from a temperature over a rise, J/(kg·K). */
export function entropyFunctionRise({ gasConstant, c }: MassPolynomial, from: number, rise: number): number {
  const T = from + rise;
  const s2 = T + from;
  const s3 = T * T + T * from + from * from;
  const s4 = s2 * (T * T + from * from);
  const inverse = 1 / (T * from);
  return (
    gasConstant *
    (rise *
      (c[3]! +
        (c[4]! / 2) * s2 +
        (c[5]! / 3) * s3 +
        (c[6]! / 4) * s4 +
        (c[1]! + (c[0]! / 2) * (1 / T + 1 / from)) * inverse) +
      c[2]! * Math.log1p(rise / from))
  );
}

/** Enthalpy over that at the datum, J/kg. */
export const enthalpyAt = (gas: MassPolynomial, T: number): number => enthalpyRise(gas, DATUM, T - DATUM);

/** Entropy function over that at the datum, J/(kg·K). */
export const entropyFunctionAt = (gas: MassPolynomial, T: number): number => entropyFunctionRise(gas, DATUM, T - DATUM);
