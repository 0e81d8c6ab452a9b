import { CalculationError, rotationalSpeed, type Column, type Quantity } from '../units/index.js';
import { rowAt } from './figures.js';
import type { ResolvedOptions } from './options.js';
import { decimals, listed } from './words.js';

/** The last speed of the grid, which may lie below the end of the range; speeds to be quoted must be on it. */
export function lastOf(
  engineSpeed: Column<'rotational speed'>,
  { step, atSpeeds }: ResolvedOptions,
): Quantity<'rotational speed'> {
  const speeds = engineSpeed.in('rpm');
  const [first, last] = [speeds[0]!, speeds[speeds.length - 1]!];
  const grid = `${decimals(first, 0)} to ${decimals(last, 0)} rpm in steps of ${decimals(step.in('rpm'), 0)} rpm`;
  if (speeds.length < 2) {
    const got = `steps of ${decimals(step.in('rpm'), 0)} rpm, of which the range holds none`;
    const mend = 'Give a wider engineSpeed or a smaller step.';
    throw new CalculationError('compare', [
      { code: 'impossible', input: 'step', need: 'smaller than the range of engine speed', got, mend },
    ]);
  }
  const off = atSpeeds.filter((speed) => rowAt(speeds, speed) < 0);
  if (off.length > 0) {
    const got = listed(off.map((speed) => `${decimals(speed.in('rpm'), 0)} rpm`));
    throw new CalculationError('compare', [
      { code: 'impossible', input: 'atSpeeds', need: `speeds of the grid, ${grid}`, got, mend: '' },
    ]);
  }
  return rotationalSpeed(last, 'rpm');
}
