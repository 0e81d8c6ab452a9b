import { CalculationError } from '../calculation/index.js';
import type { Quantity } from '../units/index.js';
import type { Installation } from './installation.js';
import type { OperatingPoint } from './point-result.js';
import { PointOnPath } from './point.js';
import { readInstallation, type Path } from './read-installation.js';
import { NoSteadyPoint } from './refusal.js';
import { solvePath } from './solve-path.js';
import { requireAirToComeBack } from './recirculation.js';
import type { Unknowns } from './walked.js';
import { walkedQuantities } from './walked-quantities.js';
import { numbersOf } from './way.js';

/**
 * The steady point of an installation at an engine speed: state at every station, what compressor, core and engine do, and the balances
 * that hold it together.
 *
 * Solved on bare numbers; the results are quantities that remember how they were made, so that `explain`, `uncertainty` and `whatIf` go
 * through the solution. Steady: for a core that is still soaking up heat see {@link throughPull}.
 *
 * @throws CalculationError if the installation is not fully said or impossible, everything wrong with it at once; {@link NoSteadyPoint}
 * where it has no steady point.
 * @example
 * const point = operatingPoint(hillClimbSpecial, rotationalSpeed(6000, 'rpm'));
 * point.stations.manifold.temperature.in('°C') //=> 51.96
 * String(point) // the table of stations
 */
export function operatingPoint(installation: Installation, engineSpeed: Quantity<'rotational speed'>): OperatingPoint {
  return pointNear(installation, engineSpeed).point;
}

/** The same, setting out from a point near by. */
export function pointNear(
  installation: Installation,
  engineSpeed: Quantity<'rotational speed'>,
  near?: Unknowns<number>,
): { readonly point: OperatingPoint; readonly found: Unknowns<number> } {
  const path = readInstallation(installation, engineSpeed);
  const found = solvePath(numbersOf(path), near);
  if (typeof found === 'string') throw new NoSteadyPoint(found, installation, engineSpeed);
  const point = pointAt(installation, path, found);
  requireAirToComeBack(path, point.humidAirFlow);
  return { point, found };
}

function pointAt(installation: Installation, path: Path, found: Unknowns<number>): OperatingPoint {
  try {
    const point = new PointOnPath(installation, path, walkedQuantities(path, found));
    // The hottest place is where a property could not be told that is only worked out when it is read.
    return point.stations.compressorOutlet.density && point;
  } catch (error) {
    if (!(error instanceof CalculationError)) throw error;
    throw new NoSteadyPoint('beyond the formulas', installation, path.speed, error);
  }
}
