import type { Source } from '../units/origin.js';
import type { WorkId } from './works.js';

/**
 * A published source: which work, where in it, and how far that was checked. `read` only where the document itself was read.
 */
export function source(id: WorkId, where: string, status: Source['status']): Source {
  return { id, where, status };
}

/** A fact of the trade that no citable source stands behind. */
export function commonPractice(where: string): Source {
  return { id: 'common-practice', where, status: 'common practice' };
}

/** Something derived or computed for this library from what is cited beside it. */
export function derived(where: string): Source {
  return { id: 'derived', where, status: 'computed' };
}
