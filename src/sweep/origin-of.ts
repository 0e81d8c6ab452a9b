import type { Assignments } from './assign.js';
import type { ColumnOrigin } from './pull.js';
import type { Role } from './roles.js';

/** From which column each channel was taken, and the column that numbers the pulls. */
export function sourcesOf({ channels, pull }: Assignments): { readonly [R in Role]?: ColumnOrigin } {
  const all = [...channels.values(), ...(pull ? [pull] : [])];
  return Object.fromEntries(all.map((each) => [each.role, originOf(each)]));
}

/** What a pull tells of a column: plain data, without what only reading it needs. */
function originOf({ role, header, column, kind, unit, how, unitFrom, correction }: ColumnOrigin): ColumnOrigin {
  return { role, header, column, kind, unit, how, unitFrom, correction };
}
