import { CalculationError, type Problem } from '../units/index.js';
import { choiceProblems, describe, isPlain, unknownNames } from '../units/internal.js';
import type { CoreFlowArrangement, CoreGeometry, CorePassages, LouvredFins, OffsetStripFins } from './core-geometry.js';
import type { CoreAir, CoreLiquid, FlowsThroughCore } from './core-side.js';

const CORE = [
  'name',
  'arrangement',
  'passageWidth',
  'charge',
  'coolant',
  'plateThickness',
  'metalConductivity',
] as const satisfies (keyof CoreGeometry)[];
const PASSAGES = [
  'passages',
  'flowLength',
  'fins',
  'foulingFactor',
  'heatTransferScatter',
  'frictionScatter',
  'entranceCoefficient',
  'exitCoefficient',
] as const satisfies (keyof CorePassages)[];
const FINS = {
  'offset strip': ['type', 'pitch', 'plateSpacing', 'thickness', 'stripLength'] satisfies (keyof OffsetStripFins)[],
  louvred: [
    'type',
    'pitch',
    'plateSpacing',
    'thickness',
    'louvrePitch',
    'louvreLength',
    'louvreAngle',
  ] satisfies (keyof LouvredFins)[],
} as const;
const ARRANGEMENTS = [
  'crossflowUnmixed',
  'crossflowChargeMixed',
  'crossflowCoolantMixed',
  'crossflowBothMixed',
  'counterflow',
  'parallelFlow',
] as const satisfies CoreFlowArrangement['arrangement'][];
const AIR = ['massFlow', 'inletTemperature', 'inletPressure', 'liquid'] as const satisfies (keyof CoreAir)[];
const LIQUID = [
  'density',
  'viscosity',
  'conductivity',
  'specificHeatCapacity',
] as const satisfies (keyof CoreLiquid['liquid'])[];

type Fields = Readonly<Record<string, unknown>>;

/**
 * A core and its flows, of which a part or a choice that is misspelt would be left out or read as another.
 *
 * @throws CalculationError naming everything that is unknown or no object.
 */
export function requireCoreAndFlows(core: CoreGeometry, flows: FlowsThroughCore): void {
  const problems = [
    ...within('core', core, CORE, (given) => [
      ...choiceProblems('core.arrangement', given['arrangement'], ARRANGEMENTS, true),
      ...within('core.charge', given['charge'], PASSAGES, ({ fins }) => finProblems('core.charge.fins', fins)),
      ...within('core.coolant', given['coolant'], PASSAGES, ({ fins }) => finProblems('core.coolant.fins', fins)),
    ]),
    ...within('flows', flows, ['charge', 'coolant'], ({ charge, coolant }) => [
      ...within('flows.charge', charge, AIR),
      ...within('flows.coolant', coolant, AIR, ({ liquid }) =>
        liquid === undefined ? [] : within('flows.coolant.liquid', liquid, LIQUID),
      ),
    ]),
  ];
  if (problems.length > 0) throw new CalculationError('rating of a core', problems);
}

function within(
  path: string,
  value: unknown,
  known: readonly string[],
  inside: (fields: Fields) => readonly Problem[] = () => [],
): Problem[] {
  if (!isPlain(value)) {
    const code = value === undefined ? 'missing' : 'kind';
    return [{ code, input: path, need: `an object of ${known.join(', ')}`, got: describe(value), mend: '' }];
  }
  return [...unknownNames(value, known, `${path}.`), ...inside(value)];
}

function finProblems(path: string, fins: unknown): Problem[] {
  const type = isPlain(fins) ? fins['type'] : undefined;
  const problems = choiceProblems(`${path}.type`, type, Object.keys(FINS), true);
  return problems.length > 0 ? problems : within(path, fins, FINS[type as keyof typeof FINS]);
}
