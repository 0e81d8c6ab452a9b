// The library as it is, for the pages of the reference.
import { tsImport } from 'tsx/esm/api';

/** @type {typeof import('../src/index.js')} */
export const library = await tsImport('../src/index.ts', import.meta.url);

/** Every calculation by topic and name, as reflections name them. */
const entries = new Map(library.catalogue().map((entry) => [`${entry.topic}.${entry.name}`, entry]));

/**
 * The calculation that a page is about, if it is about one.
 * @param {import('typedoc').Reflection | undefined} reflection
 */
export function entryOf(reflection) {
  return entries.get(`${reflection?.parent?.name}.${reflection?.name}`);
}
