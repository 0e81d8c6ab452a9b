import { calculation, input, output, source, type StandingNote } from '../calculation/index.js';

/** What every result of these calculations says: nobody has checked their coefficients. */
const EXPERIMENTAL: readonly StandingNote[] = [
  {
    code: 'experimental',
    message:
      'Experimental: the coefficients of this friction model are from memory of SAE 890836 and were not verified. ' +
      'Do not rest a decision on it.',
  },
];
const SOURCES = [
  source('patton1989', 'structure from the abstract; coefficients from memory, not verified', 'memory'),
] as const;

const BORE = { min: 0.02, max: 0.4, typical: 0.081 } as const;
const STROKE = { min: 0.02, max: 0.6, typical: 0.0873 } as const;
const SPEED = { min: 5, max: 250, typical: 100 } as const;
const CYLINDERS = { min: 1, max: 24, typical: 4 } as const;

/**
 * Experimental: friction of the crankshaft's main bearings and seals, after Patton, Nitschke and Heywood.
 *
 * @function
 * @returns The mean effective pressure of that part, with a note that the coefficients are not verified.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * frictionOfCrankshaft({
 *   bore: length(86, 'mm'),
 *   stroke: length(86, 'mm'),
 *   cylinders: ratio(4),
 *   engineSpeed: rotationalSpeed(4000, 'rpm'),
 *   bearingDiameter: length(50, 'mm'),
 *   bearingLength: length(20, 'mm'),
 *   bearings: ratio(5),
 * }).in('kPa') //=> 15.1023
 */
export const frictionOfCrankshaft = calculation({
  name: 'friction of the crankshaft',
  task: 'describe the engine',
  inputs: {
    /** Diameter of a cylinder. */
    bore: input('B', 'length', BORE),
    /** Travel of a piston. */
    stroke: input('L', 'length', STROKE),
    /** Number of cylinders. */
    cylinders: input('n_c', 'ratio', CYLINDERS),
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', SPEED),
    /** Diameter of a main bearing. */
    bearingDiameter: input('D_b', 'length', { min: 0.01, max: 0.3, typical: 0.05 }),
    /** Length of a main bearing. */
    bearingLength: input('L_b', 'length', { min: 0.005, max: 0.2, typical: 0.02 }),
    /** Number of main bearings. */
    bearings: input('n_b', 'ratio', { min: 2, max: 20, typical: 5 }),
  },
  output: output('p_mf', 'mean effective pressure', 'kPa'),
  formula:
    '122000000 * (D_b * 1000) / ((B * 1000)^2 * (L * 1000) * n_c)' +
    ' + 0.303 * (60 * n) * (D_b * 1000)^3 * (L_b * 1000) * n_b / ((B * 1000)^2 * (L * 1000) * n_c)' +
    ' + 0.000000135 * (D_b * 1000)^2 * (60 * n)^2 * n_b / n_c',
  si: (B, L, nc, n, Db, Lb, nb) => {
    const d = Db * 1e3;
    const size = (B * 1e3) ** 2 * (L * 1e3) * nc;
    return (122e6 * d) / size + bearings(B, L, nc, n, Db, Lb, nb) + (1.35e-7 * d * d * (60 * n) ** 2 * nb) / nc;
  },
  notes: EXPERIMENTAL,
  sources: SOURCES,
});

/** Hydrodynamic friction of plain bearings. */
function bearings(B: number, L: number, nc: number, n: number, Db: number, Lb: number, nb: number): number {
  return (0.303 * (60 * n) * (Db * 1e3) ** 3 * (Lb * 1e3) * nb) / ((B * 1e3) ** 2 * (L * 1e3) * nc);
}

/**
 * Experimental: friction of pistons, rings and rod bearings without the load of the gas, after Patton, Nitschke and
 * Heywood.
 *
 * @function
 * @returns The mean effective pressure of that part, with a note that the coefficients are not verified.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * frictionOfPistons({
 *   bore: length(86, 'mm'),
 *   stroke: length(86, 'mm'),
 *   cylinders: ratio(4),
 *   engineSpeed: rotationalSpeed(4000, 'rpm'),
 *   bearingDiameter: length(45, 'mm'),
 *   bearingLength: length(18, 'mm'),
 *   bearings: ratio(4),
 * }).in('kPa') //=> 49.1873
 */
export const frictionOfPistons = calculation({
  name: 'friction of the pistons',
  task: 'describe the engine',
  inputs: {
    /** Diameter of a cylinder. */
    bore: input('B', 'length', BORE),
    /** Travel of a piston. */
    stroke: input('L', 'length', STROKE),
    /** Number of cylinders. */
    cylinders: input('n_c', 'ratio', CYLINDERS),
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', SPEED),
    /** Diameter of a rod bearing. */
    bearingDiameter: input('D_b', 'length', { min: 0.01, max: 0.3, typical: 0.045 }),
    /** Length of a rod bearing. */
    bearingLength: input('L_b', 'length', { min: 0.005, max: 0.2, typical: 0.018 }),
    /** Number of rod bearings. */
    bearings: input('n_b', 'ratio', { min: 1, max: 24, typical: 4 }),
  },
  output: output('p_mf', 'mean effective pressure', 'kPa'),
  formula:
    '294000 * (2 * L * n) / (B * 1000) + 40600000 * (1 + 1000 / (60 * n)) / (B * 1000)^2' +
    ' + 0.303 * (60 * n) * (D_b * 1000)^3 * (L_b * 1000) * n_b / ((B * 1000)^2 * (L * 1000) * n_c)',
  si: (B, L, nc, n, Db, Lb, nb) =>
    (294e3 * (2 * L * n)) / (B * 1e3) +
    (406e5 * (1 + 1e3 / (60 * n))) / (B * 1e3) ** 2 +
    bearings(B, L, nc, n, Db, Lb, nb),
  notes: EXPERIMENTAL,
  sources: SOURCES,
});

/**
 * Experimental: friction that the pressure of the gas adds at the rings, after Patton, Nitschke and Heywood. The model was
 * made for unboosted engines.
 *
 * @function
 * @returns The mean effective pressure of that part, with a note that the coefficients are not verified.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * frictionOfGasLoad({
 *   pressureRatio: ratio(1),
 *   compressionRatio: ratio(10),
 *   meanPistonSpeed: speed(11.4667, 'm/s'),
 * }).in('kPa') //=> 20.3648
 */
export const frictionOfGasLoad = calculation({
  name: 'friction of the gas load',
  task: 'describe the engine',
  inputs: {
    /** Inlet manifold over ambient pressure, both absolute. */
    pressureRatio: input('PR', 'ratio', { min: 0.1, max: 5, trusted: [0.1, 1], typical: 0.98 }),
    /** Largest over smallest volume of a cylinder. */
    compressionRatio: input('r_c', 'ratio', { min: 4, max: 25, typical: 9.5 }),
    /** Mean speed of a piston. */
    meanPistonSpeed: input('S_p', 'speed', { min: 0, max: 40, typical: 17.46 }),
  },
  output: output('p_mf', 'mean effective pressure', 'kPa'),
  formula: '6890 * PR * (0.088 * r_c + 0.182 * r_c^(1.33 - 0.0238 * S_p))',
  si: (PR, rc, Sp) => 6890 * PR * (0.088 * rc + 0.182 * rc ** (1.33 - 0.0238 * Sp)),
  rises: ['PR'],
  falls: ['S_p'],
  notes: EXPERIMENTAL,
  sources: SOURCES,
});

/**
 * Experimental: friction of oil pump, water pump and an unloaded alternator, after Patton, Nitschke and Heywood.
 *
 * @function
 * @returns The mean effective pressure of that part, with a note that the coefficients are not verified.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * frictionOfAuxiliaries({ engineSpeed: rotationalSpeed(4000, 'rpm') }).in('kPa') //=> 24.246
 */
export const frictionOfAuxiliaries = calculation({
  name: 'friction of the auxiliaries',
  task: 'describe the engine',
  inputs: {
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', SPEED),
  },
  output: output('p_mf', 'mean effective pressure', 'kPa'),
  formula: '6230 + 5.22 * (60 * n) - 0.000179 * (60 * n)^2',
  si: (n) => 6230 + 5.22 * (60 * n) - 1.79e-4 * (60 * n) ** 2,
  notes: EXPERIMENTAL,
  sources: SOURCES,
});

/**
 * The parts of friction after Patton, Nitschke and Heywood (SAE 890836), all experimental. The valve gear, whose
 * coefficients hang on its type, is not among them, so that their sum is not the whole.
 *
 * @example
 * Object.keys(frictionByPart) //=> ['crankshaft', 'pistons', 'gasLoad', 'auxiliaries']
 */
export const frictionByPart = {
  crankshaft: frictionOfCrankshaft,
  pistons: frictionOfPistons,
  gasLoad: frictionOfGasLoad,
  auxiliaries: frictionOfAuxiliaries,
} as const;
