import { constant } from '../calculation/index.js';
import { add, ratio, scale, subtract, type Leaf, type Quantity } from '../units/index.js';
import { hydraulicDiameterRectangle, wettedArea } from './hydraulic-diameter.js';
import { louvredFrictionScatter, louvredHeatTransferScatter } from './louvred-fin.js';
import {
  finAreaShareOffsetStrip,
  hydraulicDiameterOffsetStrip,
  offsetStripFrictionScatter,
  offsetStripHeatTransferScatter,
} from './offset-strip-fin.js';
import { faceArea, finAreaShareRectangle, freeArea, freeAreaRatio, plateArea, stackHeight } from './passages.js';

type Length = Quantity<'length'>;
type Ratio = Quantity<'ratio'>;

/** Offset strip fins between two plates: rows of short strips, each row shifted against the last. */
export interface OffsetStripFins {
  readonly type: 'offset strip';
  /** Distance from fin to fin, thickness included: 25.4 mm over fins per inch. */
  readonly pitch: Length;
  /** Distance between the plates. */
  readonly plateSpacing: Length;
  readonly thickness: Length;
  /** Length of one strip along the flow. */
  readonly stripLength: Length;
}

/** Louvred fins between flat tubes, as on the cooling-air side of tube-and-fin cores. */
export interface LouvredFins {
  readonly type: 'louvred';
  /** Distance from fin to fin, thickness included. */
  readonly pitch: Length;
  /** Distance between the tubes: the length of the fins. */
  readonly plateSpacing: Length;
  readonly thickness: Length;
  /** Distance from louvre to louvre. */
  readonly louvrePitch: Length;
  /** Length of a louvre across the flow. */
  readonly louvreLength: Length;
  /** Angle of the louvres to the flow. */
  readonly louvreAngle: Quantity<'angle'>;
}

/** The passages of one flow. */
export interface CorePassages {
  /** Number of passages in the stack. */
  readonly passages: Ratio;
  /** Length of the passages along the flow. */
  readonly flowLength: Length;
  readonly fins: OffsetStripFins | LouvredFins;
  /** Fouling factor of the surface; clean when left out. */
  readonly foulingFactor?: Quantity<'thermal insulance'>;
  /** What the surface transfers over what its correlation says: 1 with the scatter of the correlation when left out. */
  readonly heatTransferScatter?: Ratio;
  /** What the surface rubs over what its correlation says: 1 with the scatter of the correlation when left out. */
  readonly frictionScatter?: Ratio;
  /** Loss coefficient of the entrance; an everyday one when left out. */
  readonly entranceCoefficient?: Ratio;
  /** Loss coefficient of the exit; an everyday one when left out. */
  readonly exitCoefficient?: Ratio;
}

/** How the flows of a core of plates pass each other. Side by side they need the width of their passages beside their length. */
export type CoreFlowArrangement =
  | {
      readonly arrangement:
        'crossflowUnmixed' | 'crossflowChargeMixed' | 'crossflowCoolantMixed' | 'crossflowBothMixed';
      readonly passageWidth?: undefined;
    }
  | { readonly arrangement: 'counterflow' | 'parallelFlow'; readonly passageWidth: Length };

/**
 * A core as data: layers of charge and coolant passages in turn, with fins between plates or flat tubes. In crossflow the flow length
 * of one side is the width of the other's passages.
 */
export type CoreGeometry = CoreFlowArrangement & {
  /** Names the core in results. */
  readonly name: string;
  readonly charge: CorePassages;
  readonly coolant: CorePassages;
  /** Thickness of the plates or tube walls between the flows. */
  readonly plateThickness: Length;
  /** Heat conductivity of the metal; aluminium 180 to 220 W/(m·K). */
  readonly metalConductivity: Quantity<'thermal conductivity'>;
};

/** One side of a core. */
export type CoreSideName = 'charge' | 'coolant';

/** What the geometry of a side amounts to. */
export interface SideGeometry {
  readonly hydraulicDiameter: Length;
  readonly freeArea: Quantity<'area'>;
  readonly freeAreaRatio: Ratio;
  readonly area: Quantity<'area'>;
  readonly finAreaShare: Ratio;
  readonly finSpacing: Length;
  readonly finHeight: Length;
}

/** Areas and diameters of one side. */
export function sideGeometry(core: CoreGeometry, side: CoreSideName): SideGeometry {
  const { fins, flowLength, passages } = core[side];
  const { thickness: finThickness } = fins;
  const finSpacing = subtract(fins.pitch, finThickness);
  const finHeight = subtract(fins.plateSpacing, finThickness);
  const passageWidth = passageWidthOf(core, side);
  const free = freeArea({ passages, passageWidth, finSpacing, finHeight, finThickness });
  const shape = { finSpacing, finHeight };
  const strips = fins.type === 'offset strip' ? { ...shape, finThickness, stripLength: fins.stripLength } : undefined;
  const hydraulicDiameter = strips
    ? hydraulicDiameterOffsetStrip(strips)
    : hydraulicDiameterRectangle({ width: finSpacing, height: finHeight });
  return {
    ...shape,
    hydraulicDiameter,
    freeArea: free,
    freeAreaRatio: freeAreaRatio({
      freeArea: free,
      faceArea: faceArea({ width: passageWidth, height: heightOf(core) }),
    }),
    area: wettedArea({ freeArea: free, flowLength, hydraulicDiameter }),
    finAreaShare: strips ? finAreaShareOffsetStrip(strips) : finAreaShareRectangle(shape),
  };
}

/** Area of the plates between the flows. */
export function platesOf(core: CoreGeometry): Quantity<'area'> {
  const { passages, flowLength } = core.charge;
  return plateArea({ passages, passageWidth: passageWidthOf(core, 'charge'), flowLength });
}

/** Height of a tube or layer of the other side as louvred fins see it, and the distance from one to the next. */
export function tubesBeside(core: CoreGeometry, side: CoreSideName): { tubeHeight: Length; tubePitch: Length } {
  const other = core[side === 'charge' ? 'coolant' : 'charge'].fins.plateSpacing;
  const tubeHeight = add(other, scale(core.plateThickness, 2));
  return { tubeHeight, tubePitch: add(tubeHeight, core[side].fins.plateSpacing) };
}

/** What the surface does over what its correlation says: as given, else 1 with an error of its own for each side. */
export function scatterOf(core: CoreGeometry, side: CoreSideName): { heatTransfer: Ratio; friction: Ratio } {
  const { fins, heatTransferScatter, frictionScatter } = core[side];
  const isStrip = fins.type === 'offset strip';
  return {
    heatTransfer:
      heatTransferScatter ?? ofSide(side, isStrip ? offsetStripHeatTransferScatter : louvredHeatTransferScatter),
    friction: frictionScatter ?? ofSide(side, isStrip ? offsetStripFrictionScatter : louvredFrictionScatter),
  };
}

/** The scatter of a correlation as it falls on one side: two surfaces of a kind do not miss it together. */
function ofSide(side: CoreSideName, scatter: Ratio): Ratio {
  const { id, label, source, uncertainty } = scatter.origin as Leaf;
  const halfWidth = uncertainty!.standard * Math.sqrt(3);
  return constant(`${id!}/${side}`, ratio(scatter.si), {
    label: `${label!}, ${side} side`,
    source: source!,
    halfWidth,
  });
}

function passageWidthOf(core: CoreGeometry, side: CoreSideName): Length {
  return core.passageWidth ?? core[side === 'charge' ? 'coolant' : 'charge'].flowLength;
}

function heightOf({ charge, coolant, plateThickness }: CoreGeometry): Length {
  return stackHeight({
    chargePassages: charge.passages,
    chargePlateSpacing: charge.fins.plateSpacing,
    coolantPassages: coolant.passages,
    coolantPlateSpacing: coolant.fins.plateSpacing,
    plateThickness,
  });
}
