import { uncertainty } from '../calculation/index.js';
import { angle, CalculationError, isQuantity, type Column, type Problem, type Quantity } from '../units/index.js';
import { describe } from '../units/internal.js';
import { asSpeed, isSpeed } from './speeds.js';
import { decimals } from './words.js';

/** The spark of best torque: one angle, or several along the engine speed with straight lines between them. */
export type BestTorqueSpark =
  | Quantity<'angle'>
  | readonly { readonly engineSpeed: number | Quantity<'rotational speed'>; readonly spark: Quantity<'angle'> }[];

/** What is wrong with a spark of best torque. */
export function bestTorqueSparkProblems(input: string, value: unknown): Problem[] {
  if (isAngle(value)) return [];
  const need = 'an angle, or a list of { engineSpeed, spark } with rising engine speed';
  const mend = `Write angle(24, '°'), or [{ engineSpeed: 3000, spark: angle(20, '°') }, …]; measured(…) where its error is known.`;
  const wrong: Problem[] = [{ code: 'kind', input, need, got: describe(value), mend }];
  if (!Array.isArray(value) || value.length === 0) return wrong;
  const points = value as readonly { readonly engineSpeed?: unknown; readonly spark?: unknown }[];
  if (!points.every((point) => isSpeed(point.engineSpeed) && isAngle(point.spark))) return wrong;
  const speeds = points.map((point) => asSpeed(point.engineSpeed as number).in('rpm'));
  if (speeds.every((speed, i) => i === 0 || speed > speeds[i - 1]!)) return [];
  return [
    { code: 'impossible', input, need, got: speeds.map((speed) => `${decimals(speed, 0)} rpm`).join(', '), mend },
  ];
}

function isAngle(value: unknown): value is Quantity<'angle'> {
  return isQuantity(value) && value.kind === 'angle' && Number.isFinite(value.si);
}

/**
 * The spark of best torque at each speed of a grid, in radians.
 *
 * @throws CalculationError where the speeds that are given do not hold the grid: a line is not drawn on beyond its end.
 */
export function bestTorqueSparkAt(best: BestTorqueSpark, engineSpeed: Column<'rotational speed'>): Float64Array {
  if (isQuantity(best)) return new Float64Array(engineSpeed.length).fill(best.si);
  const speeds = best.map((point) => asSpeed(point.engineSpeed).si);
  const sparks = best.map((point) => point.spark.si);
  const [first, last] = [speeds[0]!, speeds[speeds.length - 1]!];
  const margin = 1e-9 * last;
  return Float64Array.from(engineSpeed.si, (speed) => {
    if (speed < first - margin || speed > last + margin) throw outside(engineSpeed, first, last);
    const after = speeds.findIndex((one) => one >= speed - margin);
    if (after === 0) return sparks[0]!;
    const share = (speed - speeds[after - 1]!) / (speeds[after]! - speeds[after - 1]!);
    return sparks[after - 1]! + share * (sparks[after]! - sparks[after - 1]!);
  });
}

function outside({ si }: Column, first: number, last: number): CalculationError {
  const range = (from: number, to: number): string => `${decimals(from * 60, 0)} to ${decimals(to * 60, 0)} rpm`;
  return new CalculationError('compare', [
    {
      code: 'impossible',
      input: 'bestTorqueSpark',
      need: `given over the whole range that is compared, ${range(si[0]!, si[si.length - 1]!)}`,
      got: range(first, last),
      mend: 'Give a point at each end of the range.',
    },
  ]);
}

/** Standard uncertainty in radians of a spark of best torque: one error that all its points share, the largest that any has. */
export function bestTorqueSparkUncertainty(best: BestTorqueSpark): { standard: number; degreesOfFreedom: number } {
  const angles = isQuantity(best) ? [best] : best.map((point) => point.spark);
  return angles
    .map((one) => (one.origin === undefined ? undefined : uncertainty(one)))
    .reduce(
      (most, budget) =>
        budget !== undefined && budget.standard.si > most.standard
          ? { standard: budget.standard.si, degreesOfFreedom: budget.degreesOfFreedom }
          : most,
      { standard: 0, degreesOfFreedom: Infinity },
    );
}

/** Degrees of the crank in a radian. */
export const DEGREES = angle(1, 'rad').in('°');
