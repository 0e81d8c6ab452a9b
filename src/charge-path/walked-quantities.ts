import { merged, NO_NOTES, quantityOf } from '../units/internal.js';
import type { Kind, Leaf, Note, Quantity, Solution, UnitOf } from '../units/index.js';
import { controlResidual, fixedOutletPressure } from './control.js';
import type { Path } from './read-installation.js';
import { walk } from './walk.js';
import type { Unknowns, Walked } from './walked.js';
import { onQuantities } from './way.js';

/**
 * Walks a path in quantities at its steady point. What was sought become inputs that carry the equations they satisfy, so that
 * explanations, uncertainties and what-ifs of anything on the path go through them.
 */
export function walkedQuantities(path: Path, found: Unknowns<number>): Walked<Quantity> {
  const walked = walkedWith(path, found, NO_NOTES);
  const { engineResidual, coreResidual, recirculationResidual } = walked;
  const residuals = [engineResidual, coreResidual, ...(recirculationResidual ? [recirculationResidual] : [])];
  const notes = residuals.reduce<readonly Note[]>((all, residual) => merged(all, residual.notes), NO_NOTES);
  // What is noted anywhere on the path had its say in what was found, and so in every result.
  return notes.length === 0 ? walked : walkedWith(path, found, notes);
}

function walkedWith(path: Path, found: Unknowns<number>, notes: readonly Note[]): Walked<Quantity> {
  const flow = sought('mass flow of dry air', 'mass flow', 'g/s', found.airFlow, [1e-6, 5], notes);
  const temperatureSought = (label: string, si: number, between: readonly [number, number]): Sought<'temperature'> =>
    sought(label, 'temperature', '°C', si, between, notes);
  const temperature = temperatureSought('charge temperature behind the core', found.coreOutletTemperature, [150, 900]);
  const behind =
    found.coolingAirBehind === undefined
      ? undefined
      : temperatureSought('temperature of the cooling air behind the core', found.coolingAirBehind, [150, 700]);
  const fixed = fixedOutletPressure(onQuantities, path);
  const p2 = found.compressorOutletPressure;
  const pressure = sought('pressure at the compressor outlet', 'absolute pressure', 'kPa', p2, [3e4, 1.2e6], notes);
  const walked = walk(onQuantities, path, {
    airFlow: flow.value,
    compressorOutletPressure: fixed ?? pressure.value,
    coreOutletTemperature: temperature.value,
    ...(behind ? { coolingAirBehind: behind.value } : {}),
  });
  flow.satisfies(walked.engineResidual);
  temperature.satisfies(walked.coreResidual);
  behind?.satisfies(walked.recirculationResidual!);
  if (fixed === undefined) pressure.satisfies(controlResidual(onQuantities, path, walked));
  return walked;
}

interface Sought<K extends Kind> {
  readonly value: Quantity<K>;
  satisfies(residual: Quantity): void;
}

/** A value that was found by solving, before its equation is known. */
function sought<K extends Kind>(
  label: string,
  kind: K,
  unit: UnitOf<K>,
  si: number,
  between: readonly [number, number],
  notes: readonly Note[],
): Sought<K> {
  // The residual is made from the value, so it can only be filled in afterwards.
  const solution = { between } as unknown as Solution;
  const leaf: Leaf = { type: 'leaf', role: 'solved', label, solution };
  return {
    value: quantityOf(kind, si, unit, leaf, notes, label),
    satisfies(residual): void {
      solution.residual = residual;
    },
  };
}
