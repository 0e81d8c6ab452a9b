import { dryAirDensity } from '../air/index.js';
import { solve } from '../calculation/index.js';
import { add, CalculationError, ratio, ratioOf, scale, subtract, type Quantity } from '../units/index.js';
import { requireCoreAndFlows } from './check-core.js';
import { capacityRate, capacityRatio, heatRejected, numberOfTransferUnits } from './capacity.js';
import { foulingResistance, overallConductance, wallResistance } from './conductance.js';
import { cooledTemperature } from './cooled-temperature.js';
import { platesOf, sideGeometry, type CoreGeometry, type CoreSideName, type SideGeometry } from './core-geometry.js';
import { corePressureLoss } from './core-pressure-loss.js';
import {
  heatCapacityOf,
  rateSide,
  type CoreAir,
  type CoreLiquid,
  type FlowsThroughCore,
  type RatedSide,
} from './core-side.js';
import { coolantOutlet, meanTemperature } from './core-temperatures.js';
import { effectivenessCounterflow } from './counterflow.js';
import { effectivenessCrossflowBothMixed } from './crossflow-both-mixed.js';
import { effectivenessCrossflowOneMixed } from './crossflow-one-mixed.js';
import { effectivenessCrossflowUnmixed } from './crossflow.js';
import { airSideFromTrueEffectiveness } from './measured-effectiveness.js';
import { effectivenessParallelFlow } from './parallel-flow.js';
import { RatedCoreValue, type RatedCore } from './rated-core.js';

type Temperature = Quantity<'temperature'>;
type Pressure = Quantity<'absolute pressure'>;
type Conductance = Quantity<'thermal conductance'>;
type CapacityRate = Quantity<'heat capacity rate'>;

/** A trial of the bracket lies this far beyond what any core could do, so that a nearly perfect core is still inside. */
const BEYOND = 1.02;
/** Each step shrinks the error of a mean temperature by the change of heat capacity over the core, a hundredth. */
const MEAN_STEPS = 4;
/** A flow that keeps less than this of its inlet pressure is choked, in no core for an engine. */
const LEAST_KEPT = 0.3;

/**
 * What a core of given sizes does with given flows: outlet temperatures, effectiveness, heat, conductance and pressure losses. Fluid
 * properties are taken at the mean temperature of each side, which depends on the answer and is solved for.
 *
 * The correlations of the fins are good to 10 to 20 %: `uncertainty` of any result shows how much of it is theirs. Where the core was
 * measured, give its scatter factors, and a change of flow or size is predicted much better. Dry air; tanks and pipes are not in it,
 * nor flow that is spread unevenly.
 *
 * @returns An object of quantities, each with its history.
 * @throws CalculationError if both flows enter equally warm, the core is choked, sizes do not go together, or an input is physically
 * impossible.
 * @example
 * const rated = coreRating(core, {
 *   charge: { massFlow: massFlow(200, 'g/s'), inletTemperature: temperature(121, '°C'), inletPressure: absolutePressure(204.1, 'kPa') },
 *   coolant: { massFlow: massFlow(0.6, 'kg/s'), inletTemperature: temperature(18, '°C'), inletPressure: absolutePressure(94.1, 'kPa') },
 * });
 * uncertainty(rated.effectiveness).expanded.in('%')
 */
export function coreRating(core: CoreGeometry, flows: FlowsThroughCore): RatedCore {
  requireCoreAndFlows(core, flows);
  requireSizesThatGoTogether(core);
  const { charge, coolant } = flows;
  const [hotInlet, coolantInlet] = [charge.inletTemperature, coolant.inletTemperature];
  requireDifference(core, hotInlet, coolantInlet);
  const geometry = { charge: sideGeometry(core, 'charge'), coolant: sideGeometry(core, 'coolant') };
  const resistances = { wallResistance: wallOf(core), foulingResistance: foulingOf(core, geometry) };
  const thermal = solve(
    {
      label: `charge temperature out of ${core.name}`,
      kind: 'temperature',
      unit: '°C',
      between: [coldestCharge(flows), hotInlet],
    },
    (hotOutlet) => {
      const hot = rateSide(
        core,
        'charge',
        geometry.charge,
        charge,
        meanTemperature({ inlet: hotInlet, outlet: hotOutlet }),
      );
      const heat = heatRejected({
        massFlow: charge.massFlow,
        hotInlet,
        hotOutlet,
        specificHeatCapacity: heatCapacityOf(charge, hot.meanTemperature),
      });
      const cold = coolantSide(core, geometry.coolant, coolant, heat);
      const conductance = overallConductance({
        hotConductance: hot.conductance,
        coldConductance: cold.side.conductance,
        ...resistances,
      });
      const rates = { chargeCapacityRate: hot.capacityRate, coolantCapacityRate: cold.side.capacityRate };
      const effectiveness = effectivenessOf(core, conductance, rates.chargeCapacityRate, rates.coolantCapacityRate);
      const airSideEffectiveness = airSideFromTrueEffectiveness({ effectiveness, ...rates });
      const reached = cooledTemperature({ hotInlet, coolantInlet, effectiveness: airSideEffectiveness });
      return {
        residual: subtract(reached, hotOutlet),
        hot,
        cold,
        heat,
        conductance,
        effectiveness,
        airSideEffectiveness,
        transferUnits: numberOfTransferUnits({ conductance, ...rates }),
        capacityRatio: capacityRatio(rates),
      };
    },
  );
  const { hot, cold, solution: chargeOutlet } = thermal;
  const chargeLoss = airLoss(core, 'charge', geometry.charge, hot, charge, chargeOutlet);
  return new RatedCoreValue({
    name: core.name,
    chargeOutlet,
    coolantOutlet: cold.outlet,
    heat: thermal.heat,
    effectiveness: thermal.effectiveness,
    airSideEffectiveness: thermal.airSideEffectiveness,
    conductance: thermal.conductance,
    transferUnits: thermal.transferUnits,
    capacityRatio: thermal.capacityRatio,
    chargePressureLoss: chargeLoss.loss,
    chargeOutletPressure: chargeLoss.outletPressure,
    coolantPressureLoss: coolant.liquid
      ? lossOf(core, 'coolant', geometry.coolant, cold.side, coolant.liquid.density, coolant.liquid.density)
      : airLoss(core, 'coolant', geometry.coolant, cold.side, coolant, cold.outlet).loss,
    charge: hot,
    coolant: cold.side,
    chargeGeometry: geometry.charge,
    coolantGeometry: geometry.coolant,
  });
}

/** The coolant side for the heat it takes up. */
function coolantSide(
  core: CoreGeometry,
  geometry: SideGeometry,
  coolant: CoreAir | CoreLiquid,
  heat: Quantity<'power'>,
): { outlet: Temperature; side: RatedSide } {
  const inlet = coolant.inletTemperature;
  const outletAt = (temperature: Temperature): Temperature =>
    coolantOutlet({
      coolantInlet: inlet,
      heat,
      coolantCapacityRate: capacityRate({
        massFlow: coolant.massFlow,
        specificHeatCapacity: heatCapacityOf(coolant, temperature),
      }),
    });
  let mean = inlet;
  for (let step = 0; step < MEAN_STEPS; step++) mean = meanTemperature({ inlet, outlet: outletAt(mean) });
  return { outlet: outletAt(mean), side: rateSide(core, 'coolant', geometry, coolant, mean) };
}

/** Colder than any core leaves the charge: what the whole capacity of the weaker flow would do, and a little beyond. */
function coldestCharge({ charge, coolant }: FlowsThroughCore): Temperature {
  const [hotInlet, coolantInlet] = [charge.inletTemperature, coolant.inletTemperature];
  const rateOf = (flow: CoreAir | CoreLiquid): CapacityRate =>
    capacityRate({
      massFlow: flow.massFlow,
      specificHeatCapacity: heatCapacityOf(flow, meanTemperature({ inlet: hotInlet, outlet: coolantInlet })),
    });
  const airSide = airSideFromTrueEffectiveness({
    effectiveness: ratio(1),
    chargeCapacityRate: rateOf(charge),
    coolantCapacityRate: rateOf(coolant),
  });
  const coldest = cooledTemperature({ hotInlet, coolantInlet, effectiveness: airSide });
  return subtract(hotInlet, scale(subtract(hotInlet, coldest), BEYOND));
}

function effectivenessOf(
  { arrangement }: CoreGeometry,
  conductance: Conductance,
  charge: CapacityRate,
  coolant: CapacityRate,
): Quantity<'ratio'> {
  if (arrangement === 'crossflowChargeMixed') {
    return effectivenessCrossflowOneMixed({ conductance, mixedCapacityRate: charge, unmixedCapacityRate: coolant });
  }
  if (arrangement === 'crossflowCoolantMixed') {
    return effectivenessCrossflowOneMixed({ conductance, mixedCapacityRate: coolant, unmixedCapacityRate: charge });
  }
  const rates = { chargeCapacityRate: charge, coolantCapacityRate: coolant };
  return SYMMETRIC[arrangement]({
    transferUnits: numberOfTransferUnits({ conductance, ...rates }),
    capacityRatio: capacityRatio(rates),
  });
}

/** Arrangements for which it does not matter which flow is the charge. */
const SYMMETRIC = {
  counterflow: effectivenessCounterflow,
  parallelFlow: effectivenessParallelFlow,
  crossflowUnmixed: effectivenessCrossflowUnmixed,
  crossflowBothMixed: effectivenessCrossflowBothMixed,
} as const;

function wallOf(core: CoreGeometry): Quantity<'thermal resistance'> {
  return wallResistance({ thickness: core.plateThickness, conductivity: core.metalConductivity, area: platesOf(core) });
}

/** Resistance of the dirt on both sides; undefined where both are clean. */
function foulingOf(
  { charge, coolant }: CoreGeometry,
  geometry: Readonly<Record<CoreSideName, SideGeometry>>,
): Quantity<'thermal resistance'> | undefined {
  const [first, second] = (
    [
      [charge.foulingFactor, geometry.charge.area],
      [coolant.foulingFactor, geometry.coolant.area],
    ] as const
  ).flatMap(([foulingFactor, area]) => (foulingFactor ? [foulingResistance({ foulingFactor, area })] : []));
  return first && second ? add(first, second) : first;
}

/** Pressure loss of air on one side, whose density out of the core depends on it. */
function airLoss(
  core: CoreGeometry,
  side: CoreSideName,
  geometry: SideGeometry,
  rated: RatedSide,
  { inletTemperature, inletPressure }: CoreAir,
  outletTemperature: Temperature,
): { outletPressure: Pressure; loss: Quantity<'pressure difference'> } {
  const inletDensity = dryAirDensity({ temperature: inletTemperature, pressure: inletPressure });
  const lossAt = (pressure: Pressure): Quantity<'pressure difference'> =>
    lossOf(core, side, geometry, rated, inletDensity, dryAirDensity({ temperature: outletTemperature, pressure }));
  const lowest = scale(inletPressure, LEAST_KEPT);
  const atLowest = lossAt(lowest);
  if (atLowest.si >= inletPressure.si - lowest.si) {
    throw refused(core, side, {
      need: `a flow that keeps at least ${100 * LEAST_KEPT} % of its inlet pressure`,
      got: `a loss of ${String(atLowest)} from ${String(inletPressure)}`,
      mend: 'Less flow, or more free area.',
    });
  }
  const { solution, loss } = solve(
    {
      label: `${side} pressure out of ${core.name}`,
      kind: 'absolute pressure',
      unit: 'kPa',
      between: [lowest, scale(inletPressure, HIGHEST)],
    },
    (outletPressure) => {
      const drop = lossAt(outletPressure);
      return { residual: subtract(subtract(inletPressure, outletPressure), drop), loss: drop };
    },
  );
  return { outletPressure: solution, loss };
}

/** A flow that is cooled far may gain pressure by slowing, but not so much. */
const HIGHEST = 1.5;

function lossOf(
  core: CoreGeometry,
  side: CoreSideName,
  { freeAreaRatio, area, freeArea }: SideGeometry,
  { massFlux, frictionFactor }: RatedSide,
  inletDensity: Quantity<'density'>,
  outletDensity: Quantity<'density'>,
): Quantity<'pressure difference'> {
  const { entranceCoefficient, exitCoefficient } = core[side];
  return corePressureLoss({
    massFlux,
    inletDensity,
    outletDensity,
    freeAreaRatio,
    frictionFactor,
    areaRatio: ratioOf(area, freeArea),
    entranceCoefficient,
    exitCoefficient,
  });
}

function requireDifference(core: CoreGeometry, hotInlet: Temperature, coolantInlet: Temperature): void {
  if (hotInlet.si !== coolantInlet.si) return;
  throw refused(core, 'inletTemperature', {
    need: 'different for charge and coolant',
    got: `${String(hotInlet)} for both`,
    mend: '',
  });
}

/** Flows side by side have passages of one length. */
function requireSizesThatGoTogether(core: CoreGeometry): void {
  const [charge, coolant] = [core.charge.flowLength, core.coolant.flowLength];
  if (core.passageWidth === undefined || charge.si === coolant.si) return;
  throw refused(core, 'flowLength', {
    need: `the same for charge and coolant in ${core.arrangement}`,
    got: `${String(charge)} and ${String(coolant)}`,
    mend: '',
  });
}

function refused(
  core: CoreGeometry,
  input: string,
  problem: { readonly need: string; readonly got: string; readonly mend: string },
): CalculationError {
  return new CalculationError(`rating of ${core.name}`, [{ code: 'rule', input, ...problem }]);
}
