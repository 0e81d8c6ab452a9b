import { NO_NOTES, quantityOf } from '../units/internal.js';
import type { Kind, Leaf, Quantity, Solution, UnitOf } from '../units/index.js';
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
  const flow = sought('mass flow of dry air', 'mass flow', 'g/s', found.airFlow, [1e-6, 5]);
  const temperature = sought(
    'charge temperature behind the core',
    'temperature',
    '°C',
    found.coreOutletTemperature,
    [150, 900],
  );
  const fixed = fixedOutletPressure(onQuantities, path);
  const pressure = sought(
    'pressure at the compressor outlet',
    'absolute pressure',
    'kPa',
    found.compressorOutletPressure,
    [3e4, 1.2e6],
  );
  const walked = walk(onQuantities, path, {
    airFlow: flow.value,
    compressorOutletPressure: fixed ?? pressure.value,
    coreOutletTemperature: temperature.value,
  });
  flow.satisfies(walked.engineResidual);
  temperature.satisfies(walked.coreResidual);
  if (fixed === undefined) pressure.satisfies(controlResidual(onQuantities, path, walked));
  return walked;
}

/** A value that was found by solving, before its equation is known. */
function sought<K extends Kind>(
  label: string,
  kind: K,
  unit: UnitOf<K>,
  si: number,
  between: readonly [number, number],
): { readonly value: Quantity<K>; satisfies(residual: Quantity): void } {
  // The residual is made from the value, so it can only be filled in afterwards.
  const solution = { between } as unknown as Solution;
  const leaf: Leaf = { type: 'leaf', role: 'solved', label, solution };
  return {
    value: quantityOf(kind, si, unit, leaf, NO_NOTES, label),
    satisfies(residual): void {
      solution.residual = residual;
    },
  };
}
