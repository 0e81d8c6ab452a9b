import { calculation, derived, input, output, source } from '../calculation/index.js';
import {
  coreRating,
  meanDensity,
  type CoreGeometry,
  type FlowsThroughCore,
  type RatedCore,
} from '../intercooler/index.js';
import { dryAirDensity } from '../air/index.js';
import { ratio, ratioOf, scale, type Quantity } from '../units/index.js';
import type { Core } from './installation.js';

/**
 * Exponent with which something grows with flow, from its values at two flows.
 *
 * @function
 * @returns One ratio.
 * @throws CalculationError if both flows are the same, or an input is impossible.
 * @example
 * flowExponent({ valueRatio: ratio(1.144), flowRatio: ratio(1.25) }).in('1') //=> 0.602889
 */
export const flowExponent = calculation({
  name: 'exponent of flow',
  task: 'follow the charge',
  inputs: {
    /** Value at the second flow over that at the first. */
    valueRatio: input('r', 'ratio', { min: 1e-6, max: 1e6, typical: 1.144 }),
    /** The second flow over the first. */
    flowRatio: input('r_m', 'ratio', { min: 1e-6, max: 1e6, typical: 1.25 }),
  },
  output: output('n', 'ratio', '1'),
  formula: 'log(r) / log(r_m)',
  si: (r, rm) => Math.log(r) / Math.log(rm),
  rules: [{ need: 'two different flows', holds: (_r, rm) => rm !== 1 }],
  sources: [derived('a power law through two points')],
});

/**
 * Conductance that is left of an overall one when that of one side is taken out: the other side with wall and dirt.
 *
 * @function
 * @returns One conductance.
 * @throws CalculationError if the overall conductance is not below that of the side.
 * @example
 * conductanceBeyondSide({ conductance: thermalConductance(302.96, 'W/K'), sideConductance: thermalConductance(612, 'W/K') }).in('W/K') //=> 599.96
 */
export const conductanceBeyondSide = calculation({
  name: 'conductance beyond one side',
  task: 'follow the charge',
  inputs: {
    /** Overall conductance. */
    conductance: input('UA', 'thermal conductance', { min: 1e-3, max: 1e6, typical: 303 }),
    /** Conductance of the side that is known. */
    sideConductance: input('hA', 'thermal conductance', { min: 1e-3, max: 1e7, typical: 612 }),
  },
  output: output('hA_2', 'thermal conductance', 'W/K'),
  formula: '1 / (1 / UA - 1 / hA)',
  si: (UA, hA) => (UA * hA) / (hA - UA),
  rules: [{ need: 'the overall conductance must be below that of the side', holds: (UA, hA) => UA < hA }],
  rises: ['UA'],
  falls: ['hA'],
  sources: [source('kaysLondon', 'chapter 2, overall conductance', 'memory')],
});

/** How much more flow the second rating has, from which the exponents are taken. */
const MORE = 1.25;

/**
 * A core of an installation from its geometry: rated at flows about where it will work, and at a quarter more for how conductance and
 * loss grow with flow. Wall and dirt are counted with the coolant side.
 *
 * The correlations behind a rating are good to 10 to 20 %; the results carry that, and a measured core is better.
 *
 * @param geometry - sizes of the core.
 * @param flows - flows and states about where it will work.
 * @returns The core as an installation takes it; add its heat capacity for pulls.
 * @throws CalculationError if the core cannot be rated there.
 */
export function coreFromGeometry(geometry: CoreGeometry, flows: FlowsThroughCore): Core {
  const more: FlowsThroughCore = {
    charge: { ...flows.charge, massFlow: scale(flows.charge.massFlow, MORE) },
    coolant: withFlow(flows.coolant, scale(flows.coolant.massFlow, MORE)),
  };
  const [rated, larger] = [coreRating(geometry, flows), coreRating(geometry, more)];
  const exponentOf = (
    first: Quantity<'thermal conductance'>,
    second: Quantity<'thermal conductance'>,
  ): Quantity<'ratio'> => flowExponent({ valueRatio: ratioOf(second, first), flowRatio: ratio(MORE) });
  const beyond = ({ conductance, charge }: RatedCore): Quantity<'thermal conductance'> =>
    conductanceBeyondSide({ conductance, sideConductance: charge.conductance });
  const density = densityOver(rated, flows);
  const lossRatio = ratioOf(larger.chargePressureLoss, rated.chargePressureLoss);
  const densityRatio = ratioOf(densityOver(larger, more), density);
  return {
    arrangement: geometry.arrangement,
    charge: {
      conductance: rated.charge.conductance,
      atFlow: flows.charge.massFlow,
      exponent: exponentOf(rated.charge.conductance, larger.charge.conductance),
    },
    coolant: {
      conductance: beyond(rated),
      atFlow: flows.coolant.massFlow,
      exponent: exponentOf(beyond(rated), beyond(larger)),
    },
    loss: {
      pressure: rated.chargePressureLoss,
      atFlow: flows.charge.massFlow,
      atDensity: density,
      exponent: flowExponent({ valueRatio: scale(lossRatio, densityRatio), flowRatio: ratio(MORE) }),
    },
  };
}

function withFlow(coolant: FlowsThroughCore['coolant'], massFlow: Quantity<'mass flow'>): FlowsThroughCore['coolant'] {
  return coolant.liquid ? { ...coolant, massFlow } : { ...coolant, massFlow };
}

/** Mean density of the charge over a rated core, which is rated in dry air. */
function densityOver(rated: RatedCore, { charge }: FlowsThroughCore): Quantity<'density'> {
  const [before, behind] = [
    { temperature: charge.inletTemperature, pressure: charge.inletPressure },
    { temperature: rated.chargeOutlet, pressure: rated.chargeOutletPressure },
  ];
  return meanDensity({ inletDensity: dryAirDensity(before), outletDensity: dryAirDensity(behind) });
}
