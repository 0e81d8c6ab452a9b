import { calculation, derived, input, output, source } from '../calculation/index.js';
import {
  CAPACITY_RATIO,
  CHARGE_CAPACITY_RATE,
  COOLANT_CAPACITY_RATE,
  EFFECTIVENESS,
  TRANSFER_UNITS,
} from './bounds.js';
import { meanDecay, unitsPerShare } from './decay.js';

const SOURCES = [
  source('kaysLondon', 'chapter 2, crossflow, one fluid mixed', 'memory'),
  source('incropera', 'tables 11.3 and 11.4', 'memory'),
];

/**
 * Effectiveness of a crossflow core in which the flow of the larger heat capacity rate mixes across its passage and the other does not.
 *
 * A flow is unmixed where fins or tubes keep its streams apart, mixed where it is one open space, as around plain tubes.
 *
 * @function
 * @returns One true effectiveness, see {@link airSideFromTrueEffectiveness}. It cannot pass (1 - e^-C) / C, C the capacity ratio.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * effectiveness.crossflowLargerMixed({ transferUnits: ratio(2), capacityRatio: ratio(0.5) }).in('%') //=> 70.20
 */
export const effectivenessCrossflowLargerMixed = calculation({
  name: 'crossflow effectiveness, larger capacity rate mixed',
  task: 'size an intercooler',
  inputs: {
    /** Number of transfer units of the core. */
    transferUnits: input('N', 'ratio', TRANSFER_UNITS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('eps', 'ratio', '%'),
  formula: 'C == 0 ? 1 - exp(-N) : (1 - exp(-C * (1 - exp(-N)))) / C',
  si: (N, C) => {
    const alone = -Math.expm1(-N);
    return alone * meanDecay(C * alone);
  },
  rises: ['N'],
  falls: ['C'],
  sources: SOURCES,
});

/**
 * Number of transfer units that a crossflow core, larger capacity rate mixed, needs for an effectiveness.
 *
 * @function
 * @returns One ratio.
 * @throws CalculationError if the effectiveness is at or above (1 - e^-C) / C, which no such core reaches, or an input is physically
 * impossible.
 * @example
 * transferUnits.crossflowLargerMixed({ effectiveness: percent(75), capacityRatio: ratio(0.5) }).in('1') //=> 2.814
 */
export const transferUnitsCrossflowLargerMixed = calculation({
  name: 'transfer units of a crossflow core, larger capacity rate mixed',
  task: 'size an intercooler',
  inputs: {
    /** True effectiveness wanted. */
    effectiveness: input('eps', 'ratio', EFFECTIVENESS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('N', 'ratio', '1'),
  formula: 'C == 0 ? -log(1 - eps) : -log(1 + log(1 - eps * C) / C)',
  si: (eps, C) => -Math.log1p(-aloneFromLargerMixed(eps, C)),
  rules: [
    {
      need: 'effectiveness must be below (1 - exp(-C)) / C, C the capacityRatio: the limit of such a core without end',
      holds: (eps, C) => eps * C < 1 && aloneFromLargerMixed(eps, C) < 1,
    },
  ],
  rises: ['eps', 'C'],
  sources: SOURCES,
});

/** Effectiveness that the same core would have with the larger capacity rate without bound. */
function aloneFromLargerMixed(eps: number, C: number): number {
  return eps * unitsPerShare(eps * C);
}

/**
 * Effectiveness of a crossflow core in which the flow of the smaller heat capacity rate mixes across its passage and the other does not.
 *
 * @function
 * @returns One true effectiveness, see {@link airSideFromTrueEffectiveness}. It cannot pass 1 - e^(-1/C), C the capacity ratio.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * effectiveness.crossflowSmallerMixed({ transferUnits: ratio(2), capacityRatio: ratio(0.5) }).in('%') //=> 71.75
 */
export const effectivenessCrossflowSmallerMixed = calculation({
  name: 'crossflow effectiveness, smaller capacity rate mixed',
  task: 'size an intercooler',
  inputs: {
    /** Number of transfer units of the core. */
    transferUnits: input('N', 'ratio', TRANSFER_UNITS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('eps', 'ratio', '%'),
  formula: 'C == 0 ? 1 - exp(-N) : 1 - exp(-(1 - exp(-C * N)) / C)',
  si: (N, C) => -Math.expm1(-N * meanDecay(C * N)),
  rises: ['N'],
  falls: ['C'],
  sources: SOURCES,
});

/**
 * Number of transfer units that a crossflow core, smaller capacity rate mixed, needs for an effectiveness.
 *
 * @function
 * @returns One ratio.
 * @throws CalculationError if the effectiveness is at or above 1 - e^(-1/C), which no such core reaches, or an input is physically
 * impossible.
 * @example
 * transferUnits.crossflowSmallerMixed({ effectiveness: percent(75), capacityRatio: ratio(0.5) }).in('1') //=> 2.363
 */
export const transferUnitsCrossflowSmallerMixed = calculation({
  name: 'transfer units of a crossflow core, smaller capacity rate mixed',
  task: 'size an intercooler',
  inputs: {
    /** True effectiveness wanted. */
    effectiveness: input('eps', 'ratio', EFFECTIVENESS),
    /** Smaller heat capacity rate over the larger. */
    capacityRatio: input('C', 'ratio', CAPACITY_RATIO),
  },
  output: output('N', 'ratio', '1'),
  formula: 'C == 0 ? -log(1 - eps) : -log(1 + C * log(1 - eps)) / C',
  si: (eps, C) => {
    const alone = -Math.log1p(-eps);
    return alone * unitsPerShare(C * alone);
  },
  rules: [
    {
      need: 'effectiveness must be below 1 - exp(-1 / C), C the capacityRatio: the limit of such a core without end',
      holds: (eps, C) => eps < 1 && -C * Math.log1p(-eps) < 1,
    },
  ],
  rises: ['eps', 'C'],
  sources: SOURCES,
});

/**
 * Effectiveness of a crossflow core in which one flow mixes and the other does not, from the flows themselves: whichever of the two has
 * the smaller heat capacity rate.
 *
 * Use it where flows vary, so that the smaller rate may change sides; the two relations above are its two cases.
 *
 * @function
 * @returns One true effectiveness, see {@link airSideFromTrueEffectiveness}.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * effectivenessCrossflowOneMixed({
 *   conductance: thermalConductance(402, 'W/K'),
 *   mixedCapacityRate: heatCapacityRate(402, 'W/K'), unmixedCapacityRate: heatCapacityRate(201, 'W/K'),
 * }).in('%') //=> 70.20
 */
export const effectivenessCrossflowOneMixed = calculation({
  name: 'crossflow effectiveness, one flow mixed, from the flows',
  task: 'size an intercooler',
  inputs: {
    /** Overall conductance of the core. */
    conductance: input('UA', 'thermal conductance', { min: 0, max: 1e6, typical: 402 }),
    /** Heat capacity rate of the flow that mixes. */
    mixedCapacityRate: input('Cm', 'heat capacity rate', COOLANT_CAPACITY_RATE),
    /** Heat capacity rate of the flow that does not. */
    unmixedCapacityRate: input('Cu', 'heat capacity rate', CHARGE_CAPACITY_RATE),
  },
  output: output('eps', 'ratio', '%'),
  formula: 'Cm / min(Cm, Cu) * (1 - exp(-Cu / Cm * (1 - exp(-UA / Cu))))',
  si: (UA, Cm, Cu) => (Cm / Math.min(Cm, Cu)) * -Math.expm1((Cu / Cm) * Math.expm1(-UA / Cu)),
  rises: ['UA'],
  sources: [...SOURCES, derived('both cases in one, written per flow')],
});
