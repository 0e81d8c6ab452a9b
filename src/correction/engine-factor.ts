import { assumed, calculation, derived, input, output, source } from '../calculation/index.js';
import { fourStroke, wholeCycles } from '../engine/cycle.js';

const FUEL_DELIVERY = { min: 0.002, max: 0.4, typical: 0.12 } as const;
const CORRECTED_FUEL_DELIVERY = { min: 0.002, max: 0.4, typical: 0.0545 } as const;

/**
 * Fuel that a compression-ignition engine burns in a cycle per swept volume: how hard it is worked, which decides how
 * much the air of the room matters to it.
 *
 * @function
 * @returns Mass of fuel per cycle and swept volume, usually shown in mg/L.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * fuelDelivery({
 *   fuelMassFlow: massFlow(8, 'g/s'),
 *   sweptVolume: volume(2, 'L'),
 *   engineSpeed: rotationalSpeed(4000, 'rpm'),
 * }).in('mg/L') //=> 120
 */
export const fuelDelivery = calculation({
  name: 'fuel delivery per cycle and swept volume',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Mass flow of fuel to the whole engine, as measured during the run. */
    fuelMassFlow: input('mdot_f', 'mass flow', { min: 1e-6, max: 10, typical: 0.008 }),
    /** Swept volume of all cylinders together. */
    sweptVolume: input('V_d', 'volume', { min: 1e-5, max: 1, typical: 2e-3 }),
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', { min: 0.5, max: 1000, typical: 66 }),
    /** Revolutions from one working stroke of a cylinder to its next. */
    revolutionsPerCycle: assumed('n_R', 'ratio', { min: 1, max: 2, assume: fourStroke }),
  },
  output: output('q', 'density', 'mg/L'),
  formula: 'mdot_f * n_R / (V_d * n)',
  si: (fuel, Vd, n, nR) => (fuel * nR) / (Vd * n),
  rules: [wholeCycles(3)],
  rises: ['mdot_f', 'n_R'],
  falls: ['V_d', 'n'],
  sources: [
    source('dieselManual', 'q = 120000 F/(D n), four-stroke', 'read'),
    source('iso1585', '60000 in place of 120000 for two-stroke', 'memory'),
  ],
});

/**
 * Fuel delivery over the boost pressure ratio: the measure that the engine factor goes by.
 *
 * @function
 * @returns Mass of fuel per cycle, swept volume and pressure ratio.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * correctedFuelDelivery({
 *   fuelDelivery: density(120, 'mg/L'),
 *   boostPressureRatio: ratio(2.2),
 * }).in('mg/L') //=> 54.5455
 */
export const correctedFuelDelivery = calculation({
  name: 'corrected fuel delivery',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Fuel per cycle and swept volume. */
    fuelDelivery: input('q', 'density', FUEL_DELIVERY),
    /**
     * Absolute pressure at the outlet of the charger, or of its cooler if there is one, over that of the room; 1 without
     * boost.
     */
    boostPressureRatio: input('r', 'ratio', { min: 1, max: 8, typical: 2.2 }),
  },
  output: output('q_c', 'density', 'mg/L'),
  formula: 'q / r',
  si: (q, r) => q / r,
  rises: ['q'],
  falls: ['r'],
  sources: [source('dieselManual', 'qc = q/r, r with and without a charge cooler', 'read')],
});

/**
 * Engine factor of UN Regulation 85 for compression ignition: the exponent of the atmospheric factor.
 *
 * ISO 1585 has other limits; see {@link engineFactorIso1585}. Older printings of the regulation show the factor as a
 * multiplier, which was a misprint.
 *
 * @function
 * @returns The exponent: 0.3 below 40 mg/L, 1.2 above 65 mg/L, a straight line between.
 * @throws CalculationError if the input is missing, of the wrong kind or impossible.
 * @example
 * engineFactorUnR85({ correctedFuelDelivery: density(54.5455, 'mg/L') }).in('1') //=> 0.823638
 */
export const engineFactorUnR85 = calculation({
  name: 'engine factor of UN Regulation 85',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Fuel per cycle and swept volume over the boost pressure ratio. */
    correctedFuelDelivery: input('q_c', 'density', CORRECTED_FUEL_DELIVERY),
  },
  output: output('f_m', 'ratio', '1'),
  formula: 'q_c < 0.04 ? 0.3 : q_c > 0.065 ? 1.2 : 36 * q_c - 1.14',
  si: (qc) => (qc < 0.04 ? 0.3 : qc > 0.065 ? 1.2 : 36 * qc - 1.14),
  rises: ['q_c'],
  sources: [
    source('unR85', '40 and 65 mg/L, 0.3 and 1.2', 'read'),
    source('grpe2018', 'the factor is an exponent', 'read'),
  ],
});

/**
 * Engine factor of ISO 1585 for compression ignition: the exponent of the atmospheric factor.
 *
 * UN Regulation 85 has other limits; see {@link engineFactorUnR85}. They differ by at most 0.1, below 40 mg/L.
 *
 * @function
 * @returns The exponent: 0.2 up to 37.2 mg/L, 1.2 above 65 mg/L, a straight line between.
 * @throws CalculationError if the input is missing, of the wrong kind or impossible.
 * @example
 * engineFactorIso1585({ correctedFuelDelivery: density(30, 'mg/L') }).in('1') //=> 0.2
 */
export const engineFactorIso1585 = calculation({
  name: 'engine factor of ISO 1585',
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Fuel per cycle and swept volume over the boost pressure ratio. */
    correctedFuelDelivery: input('q_c', 'density', CORRECTED_FUEL_DELIVERY),
  },
  output: output('f_m', 'ratio', '1'),
  formula: 'q_c <= 0.0372 ? 0.2 : q_c > 0.065 ? 1.2 : 36 * q_c - 1.14',
  si: (qc) => (qc <= 0.0372 ? 0.2 : qc > 0.065 ? 1.2 : 36 * qc - 1.14),
  sources: [
    source('dieselManual', 'fm = 0.036 qc - 1.14 from 37.2 to 65 mg/L', 'read'),
    source('iso1585', '0.2 below and 1.2 above the line', 'memory'),
    derived('the line starts at 0.1992, 0.0008 below the 0.2 before it'),
  ],
});

/**
 * The two families of engine factor by the name of the text. They are not to be mixed within one figure.
 *
 * @example
 * Object.keys(engineFactor) //=> ['UN R85', 'ISO 1585']
 */
export const engineFactor = { 'UN R85': engineFactorUnR85, 'ISO 1585': engineFactorIso1585 } as const;
