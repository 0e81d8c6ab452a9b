// A card on the page of each calculation, made from its definition: the inputs with their ranges, and a worked example at everyday values
// with formula, source and notes.
import { JSX, ReflectionKind } from 'typedoc';
import { entryOf, library } from './docs-library.mjs';

/** @typedef {NonNullable<ReturnType<typeof entryOf>>} Entry */
/** @typedef {Entry['spec']['inputs'][number]} Input */

/** @param {import('typedoc').Application} app */
export function load(app) {
  app.renderer.hooks.on('comment.beforeTags', (context, _, reflection) => {
    const entry = reflection.kind === ReflectionKind.CallSignature && entryOf(reflection.parent);
    if (!entry) return JSX.createElement(JSX.Fragment, null);
    const words = inputWords(/** @type {import('typedoc').SignatureReflection} */ (reflection), context);
    const warn = (/** @type {string} */ message) => app.logger.warn(/** @type {never} */ (message));
    const html = `${inputTable(entry, words)}${workedExample(entry, warn)}`;
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
 * @param {Entry} entry
 * @param {ReadonlyMap<string, string>} words
 */
function inputTable({ spec }, words) {
  const rows = spec.inputs.map((input) => {
    const { name, symbol, kind, min, max, trusted, assume, list } = input;
    const range = `${bound(kind, min, 'any')} to ${bound(kind, max, 'any')}`;
    const trust = trusted && `trusted ${trusted.map((si) => bound(kind, si, 'any')).join(' to ')}`;
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
 * @param {Entry} entry
 * @param {(message: string) => void} warn
 */
function workedExample({ topic, name, spec }, warn) {
  const exports = /** @type {Record<string, Function>} */ (/** @type {unknown} */ (library));
  const values = spec.inputs
    .filter(({ assume }) => !assume)
    .map((input) => [input.name, input.list ? [everyday(input)] : everyday(input)]);
  try {
    const result = exports[name]?.(Object.fromEntries(values));
    return `<div class="tsd-tag-worked"><h4>Worked example</h4>${library.explain(result).toHtml()}</div>`;
  } catch (error) {
    warn(`No worked example for ${topic}.${name}: ${/** @type {Error} */ (error).message}`);
    return '';
  }
}

/**
 * @param {Input} input
 */
function everyday({ kind, min, max, typical }) {
  return shown(kind, typical ?? (min + max) / 2);
}

/**
 * @param {Input['kind']} kind
 * @param {number} si
 */
function shown(kind, si) {
  const [, first] = /'([^']+)'/.exec(library.unitChoices(kind)) ?? [];
  return library.revive({ kind, si, unit: library.siUnits[kind] ?? first });
}

/**
 * @param {Input['kind']} kind
 * @param {number} si
 * @param {string} endless
 */
function bound(kind, si, endless) {
  return Number.isFinite(si) ? String(shown(kind, si)) : endless;
}

/** @param {string} text */
function escape(text) {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
}
