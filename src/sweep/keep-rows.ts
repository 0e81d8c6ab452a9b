import { CalculationError, quantity, type Column } from '../units/index.js';
import { columnOf, NO_NOTES } from '../units/internal.js';
import { pullOf, type Preparation, type Pull } from './pull.js';
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
  const left = pull.rows - rows.length;
  const message = `${rows.length} of ${pull.rows} rows kept.`;
  return takeRowsOf(pull, rows, {
    code: 'rows kept',
    role: undefined,
    readings: left,
    noiseFactor: undefined,
    message,
  });
}

/** @internal A pull with some of its rows, and why. */
export function takeRowsOf(pull: Pull, rows: readonly number[], done: Preparation, name: string = pull.name): Pull {
  const channels = Object.fromEntries(
    Object.entries(pull.channels).map(([role, column]) => [role, takeRows(column, rows)]),
  ) as Channels;
  const { engineSpeed } = channels;
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
  return withChannels({ ...pull, name }, channels, [done]);
}

/** @internal A pull with other channels in place of its own, and what was done. */
export function withChannels(pull: Omit<Pull, 'toString'>, channels: Channels, done: readonly Preparation[]): Pull {
  const start = channels.clock?.si.find((si) => !Number.isNaN(si));
  return pullOf({
    ...pull,
    channels,
    preparations: [...(pull.preparations ?? []), ...done],
    rows: channels.engineSpeed?.length ?? 0,
    rowsWithoutEngineSpeed: channels.engineSpeed?.missing ?? 0,
    blankCells: Object.values(channels).reduce((sum, { missing }) => sum + missing, 0),
    startClock: start === undefined ? undefined : quantity('time', start, 's'),
  });
}

function takeRows(column: Column, rows: readonly number[]): Column {
  const si = Float64Array.from(rows, (row) => column.si[row]!);
  return columnOf(column.kind, si, column.unit, undefined, NO_NOTES, 0, column.label);
}
