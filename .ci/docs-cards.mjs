// A card on the page of each calculation, made from its definition: the inputs with their ranges, and a worked example at everyday values
// with formula, source and notes.
import { JSX, ReflectionKind } from 'typedoc';
import { tsImport } from 'tsx/esm/api';

/** @typedef {typeof import('../src/index.js')} Library */
/** @typedef {ReturnType<Library['catalogue']>[number]} Entry */
/** @typedef {Entry['spec']['inputs'][number]} Input */

/** @param {import('typedoc').Application} app */
export async function load(app) {
  /** @type {Library} */
  const library = await tsImport('../src/index.ts', import.meta.url);
  const entries = new Map(library.catalogue().map((entry) => [`${entry.topic}.${entry.name}`, entry]));
  app.renderer.hooks.on('comment.beforeTags', (context, _, reflection) => {
    const { parent } = reflection;
    const entry =
      reflection.kind === ReflectionKind.CallSignature && entries.get(`${parent?.parent?.name}.${parent?.name}`);
    if (!entry) return JSX.createElement(JSX.Fragment, null);
    const words = inputWords(/** @type {import('typedoc').SignatureReflection} */ (reflection), context);
    const warn = (/** @type {string} */ message) => app.logger.warn(/** @type {never} */ (message));
    const html = `${inputTable(library, entry, words)}${workedExample(library, entry, warn)}`;
    return JSX.createElement(JSX.Raw, { html });
  });
}

/**
 * What each input is, from the comments of the definition.
 * @param {import('typedoc').SignatureReflection} signature
 * @param {import('typedoc').DefaultThemeRenderContext} context
 */
function inputWords(signature, context) {
  const type = signature.parameters?.[0]?.type;
  const declared = type?.type === 'reference' ? type.typeArguments?.[0] : undefined;
  const inputs = declared?.type === 'reflection' ? (declared.declaration.children ?? []) : [];
  return new Map(inputs.map(({ name, comment }) => [name, comment ? context.markdown(comment.summary) : '']));
}

/**
 * @param {Library} library
 * @param {Entry} entry
 * @param {ReadonlyMap<string, string>} words
 */
function inputTable(library, { spec }, words) {
  const rows = spec.inputs.map((input) => {
    const { name, symbol, kind, min, max, trusted, assume, list } = input;
    const range = `${bound(library, kind, min, 'any')} to ${bound(library, kind, max, 'any')}`;
    const trust = trusted && `trusted ${trusted.map((si) => bound(library, kind, si, 'any')).join(' to ')}`;
    const need = assume ? `${String(assume)} when left out` : '';
    const cells = [
      `<code>${name}</code>${list ? ', a list' : ''}`,
      `<i>${escape(symbol)}</i>`,
      `${words.get(name) ?? ''}${escape([kind, range, trust, need].filter(Boolean).join('; '))}`,
    ];
    return `<tr>${cells.map((cell) => `<td>${cell}</td>`).join('')}</tr>`;
  });
  return `<div class="tsd-tag-inputs"><h4>Inputs</h4><table><tbody>${rows.join('')}</tbody></table></div>`;
}

/**
 * @param {Library} library
 * @param {Entry} entry
 * @param {(message: string) => void} warn
 */
function workedExample(library, { topic, name, spec }, warn) {
  const exports = /** @type {Record<string, Function>} */ (/** @type {unknown} */ (library));
  const values = spec.inputs
    .filter(({ assume }) => !assume)
    .map((input) => [input.name, input.list ? [everyday(library, input)] : everyday(library, input)]);
  try {
    const result = exports[name]?.(Object.fromEntries(values));
    return `<div class="tsd-tag-worked"><h4>Worked example</h4>${library.explain(result).toHtml()}</div>`;
  } catch (error) {
    warn(`No worked example for ${topic}.${name}: ${/** @type {Error} */ (error).message}`);
    return '';
  }
}

/**
 * @param {Library} library
 * @param {Input} input
 */
function everyday(library, { kind, min, max, typical }) {
  return shown(library, kind, typical ?? (min + max) / 2);
}

/**
 * @param {Library} library
 * @param {Input['kind']} kind
 * @param {number} si
 */
function shown(library, kind, si) {
  const [, first] = /'([^']+)'/.exec(library.unitChoices(kind)) ?? [];
  return library.revive({ kind, si, unit: library.siUnits[kind] ?? first });
}

/**
 * @param {Library} library
 * @param {Input['kind']} kind
 * @param {number} si
 * @param {string} endless
 */
function bound(library, kind, si, endless) {
  return Number.isFinite(si) ? String(shown(library, kind, si)) : endless;
}

/** @param {string} text */
function escape(text) {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
}
