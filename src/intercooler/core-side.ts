import { airPrandtlNumber, airViscosity, dryAirHeatCapacity } from '../air/index.js';
import { scale, type Quantity } from '../units/index.js';
import { capacityRate } from './capacity.js';
import { finEfficiency, sideConductance, surfaceEfficiency } from './conductance.js';
import { coreMassFlux, heatTransferCoefficientFromColburn, prandtlNumber, reynoldsNumber } from './core-flow.js';
import { scatterOf, tubesBeside, type CoreGeometry, type CoreSideName, type SideGeometry } from './core-geometry.js';
import { colburnFactorLouvred, frictionFactorLouvred } from './louvred-fin.js';
import { colburnFactorOffsetStrip, frictionFactorOffsetStrip } from './offset-strip-fin.js';

type Ratio = Quantity<'ratio'>;

/** Air through one side of a core, dry. */
export interface CoreAir {
  readonly massFlow: Quantity<'mass flow'>;
  /** Temperature into the core. */
  readonly inletTemperature: Quantity<'temperature'>;
  /** Absolute pressure into the core. */
  readonly inletPressure: Quantity<'absolute pressure'>;
  readonly liquid?: undefined;
}

/** A liquid through one side of a core, with its properties about its mean temperature. */
export interface CoreLiquid {
  readonly massFlow: Quantity<'mass flow'>;
  /** Temperature into the core. */
  readonly inletTemperature: Quantity<'temperature'>;
  readonly liquid: {
    readonly density: Quantity<'density'>;
    readonly viscosity: Quantity<'dynamic viscosity'>;
    readonly conductivity: Quantity<'thermal conductivity'>;
    readonly specificHeatCapacity: Quantity<'specific heat capacity'>;
  };
}

/** The two flows through a core. */
export interface FlowsThroughCore {
  readonly charge: CoreAir;
  readonly coolant: CoreAir | CoreLiquid;
}

/** What one side of a core does. */
export interface RatedSide {
  readonly meanTemperature: Quantity<'temperature'>;
  readonly capacityRate: Quantity<'heat capacity rate'>;
  readonly massFlux: Quantity<'mass flux'>;
  /** On the hydraulic diameter for offset strip fins, on the louvre pitch for louvred ones. */
  readonly reynoldsNumber: Ratio;
  readonly colburnFactor: Ratio;
  /** Fanning friction factor. */
  readonly frictionFactor: Ratio;
  readonly heatTransferCoefficient: Quantity<'heat transfer coefficient'>;
  readonly finEfficiency: Ratio;
  readonly surfaceEfficiency: Ratio;
  /** Conductance between the flow and the wall. */
  readonly conductance: Quantity<'thermal conductance'>;
}

/** Rates one side at a mean temperature. */
export function rateSide(
  core: CoreGeometry,
  side: CoreSideName,
  geometry: SideGeometry,
  flow: CoreAir | CoreLiquid,
  meanTemperature: Quantity<'temperature'>,
): RatedSide {
  const { fins } = core[side];
  const fluid = propertiesOf(flow, meanTemperature);
  const { viscosity, specificHeatCapacity } = fluid;
  const massFlux = coreMassFlux({ massFlow: flow.massFlow, freeArea: geometry.freeArea });
  const diameter = fins.type === 'offset strip' ? geometry.hydraulicDiameter : fins.louvrePitch;
  const reynolds = reynoldsNumber({ massFlux, diameter, viscosity });
  const { colburnFactor, frictionFactor } = factorsOf(core, side, geometry, reynolds);
  const heatTransferCoefficient = heatTransferCoefficientFromColburn({
    colburnFactor,
    massFlux,
    specificHeatCapacity,
    prandtlNumber: fluid.prandtlNumber,
  });
  const fin = finEfficiency({
    heatTransferCoefficient,
    finConductivity: core.metalConductivity,
    finThickness: fins.thickness,
    finLength: scale(fins.plateSpacing, 0.5),
  });
  const surface = surfaceEfficiency({ finAreaShare: geometry.finAreaShare, finEfficiency: fin });
  return {
    meanTemperature,
    capacityRate: capacityRate({ massFlow: flow.massFlow, specificHeatCapacity }),
    massFlux,
    reynoldsNumber: reynolds,
    colburnFactor,
    frictionFactor,
    heatTransferCoefficient,
    finEfficiency: fin,
    surfaceEfficiency: surface,
    conductance: sideConductance({ surfaceEfficiency: surface, heatTransferCoefficient, area: geometry.area }),
  };
}

/** Heat capacity of a flow at a temperature: that of dry air, or of the liquid as given. */
export function heatCapacityOf(
  { liquid }: CoreAir | CoreLiquid,
  temperature: Quantity<'temperature'>,
): Quantity<'specific heat capacity'> {
  return liquid ? liquid.specificHeatCapacity : dryAirHeatCapacity({ temperature });
}

function propertiesOf(
  flow: CoreAir | CoreLiquid,
  temperature: Quantity<'temperature'>,
): {
  viscosity: Quantity<'dynamic viscosity'>;
  specificHeatCapacity: Quantity<'specific heat capacity'>;
  prandtlNumber: Ratio;
} {
  const specificHeatCapacity = heatCapacityOf(flow, temperature);
  if (flow.liquid === undefined) {
    return {
      viscosity: airViscosity({ temperature }),
      specificHeatCapacity,
      prandtlNumber: airPrandtlNumber({ temperature }),
    };
  }
  const { viscosity, conductivity } = flow.liquid;
  return {
    viscosity,
    specificHeatCapacity,
    prandtlNumber: prandtlNumber({ viscosity, specificHeatCapacity, conductivity }),
  };
}

function factorsOf(
  core: CoreGeometry,
  side: CoreSideName,
  geometry: SideGeometry,
  reynolds: Ratio,
): { colburnFactor: Ratio; frictionFactor: Ratio } {
  const { fins, flowLength } = core[side];
  const { heatTransfer, friction } = scatterOf(core, side);
  if (fins.type === 'offset strip') {
    const { finSpacing, finHeight } = geometry;
    const { stripLength, thickness } = fins;
    const strips = { reynoldsNumber: reynolds, finSpacing, finHeight, stripLength, finThickness: thickness };
    return {
      colburnFactor: colburnFactorOffsetStrip({ ...strips, scatter: heatTransfer }),
      frictionFactor: frictionFactorOffsetStrip({ ...strips, scatter: friction }),
    };
  }
  const { tubeHeight, tubePitch } = tubesBeside(core, side);
  const louvres = {
    reynoldsNumber: reynolds,
    louvreAngle: fins.louvreAngle,
    louvrePitch: fins.louvrePitch,
    louvreLength: fins.louvreLength,
    finPitch: fins.pitch,
    finLength: fins.plateSpacing,
    finDepth: flowLength,
    finThickness: fins.thickness,
    tubePitch,
  };
  const { hydraulicDiameter } = geometry;
  return {
    colburnFactor: colburnFactorLouvred({ ...louvres, scatter: heatTransfer }),
    frictionFactor: frictionFactorLouvred({ ...louvres, tubeHeight, hydraulicDiameter, scatter: friction }),
  };
}
