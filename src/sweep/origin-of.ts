import type { Assignment } from './assign.js';
import type { ColumnOrigin } from './pull.js';

/** What a pull tells of a column: plain data, without what only reading it needs. */
export function originOf({ role, header, column, kind, unit, how, unitFrom, correction }: Assignment): ColumnOrigin {
  return { role, header, column, kind, unit, how, unitFrom, correction };
}
