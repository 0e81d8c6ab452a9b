import { CalculationError, quantity, type Column } from '../units/index.js';
import { columnOf, NO_NOTES } from '../units/internal.js';
import { pullOf, type Pull } from './pull.js';
import type { Channels } from './roles.js';
import { quoted } from './words-for-people.js';

/**
 * A pull with some of its rows: without the first seconds, in which boost still builds, or without a gear change.
 *
 * @param keep - Whether a row, counted from 0, stays.
 * @returns A copy of the pull; a blank reading stays blank.
 * @throws CalculationError if no row with an engine speed is left.
 * @example
 * const seconds = pull.channels.time.in('s');
 * const settled = keepRows(pull, (row) => seconds[row] >= 2);
 */
export function keepRows(pull: Pull, keep: (row: number) => boolean): Pull {
  const rows = Array.from({ length: pull.rows }, (_, row) => row).filter((row) => keep(row));
  const channels = Object.fromEntries(
    Object.entries(pull.channels).map(([role, column]) => [role, takeRows(column, rows)]),
  ) as Channels;
  const { engineSpeed, clock } = channels;
  if (engineSpeed === undefined || engineSpeed.missing === engineSpeed.length) {
    throw new CalculationError('keepRows', [
      {
        code: 'missing',
        input: 'keep',
        need: 'at least one row with an engine speed',
        got: `${rows.length} of the ${pull.rows} rows of ${quoted(pull.name)}`,
        mend: '',
      },
    ]);
  }
  const start = clock?.si.find((si) => !Number.isNaN(si));
  return pullOf({
    ...pull,
    channels,
    rows: rows.length,
    rowsWithoutEngineSpeed: engineSpeed.missing,
    blankCells: Object.values(channels).reduce((sum, { missing }) => sum + missing, 0),
    startClock: start === undefined ? undefined : quantity('time', start, 's'),
  });
}

function takeRows(column: Column, rows: readonly number[]): Column {
  const si = Float64Array.from(rows, (row) => column.si[row]!);
  return columnOf(column.kind, si, column.unit, undefined, NO_NOTES, 0, column.label);
}
