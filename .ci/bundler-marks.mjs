// What the build tells bundlers: what a module computes while it loads may be dropped when unused, so that importing one calculation
// does not carry its siblings along; and what only Node can import is to be left alone.
import { readFileSync } from 'node:fs';
import ts from 'typescript';

/**
 * What the build writes into a source file before compiling it.
 * @param {string} source
 * @param {string} fileName
 */
export function markForBundlers(source, fileName) {
  return markNodeOnly(markPure(source, fileName));
}

/**
 * Hides `import('node:…')` from bundlers for the browser, which refuse what they cannot find even where a page never reaches it.
 * Two of them read the comments; esbuild leaves alone only what it cannot read.
 * @param {string} source
 */
function markNodeOnly(source) {
  return source.replace(
    /\bimport\((['"]node:[\w/]+['"])\)/g,
    "import(/* webpackIgnore: true */ /* @vite-ignore */ [$1].join(''))",
  );
}

/**
 * Wraps each initialiser of a top-level constant that calls or reads something in a function marked pure.
 *
 * Bundlers keep an unused constant when making it might be noticed: a call, a property read, arithmetic on names. In this library it
 * never is (nothing runs at import), and one mark on the whole initialiser says so to every bundler, nested calls included.
 * No line is added or removed, so positions in the source stay true.
 * @param {string} source
 * @param {string} fileName
 */
function markPure(source, fileName) {
  const file = ts.createSourceFile(fileName, source, ts.ScriptTarget.Latest, true);
  const marks = file.statements
    .filter(ts.isVariableStatement)
    .flatMap((statement) => statement.declarationList.declarations)
    .map((declaration) => declaration.initializer)
    .filter((initializer) => initializer !== undefined)
    .filter((initializer) => !isPlain(initializer))
    .flatMap((initializer) => [
      { at: initializer.getStart(file), text: '/* @__PURE__ */ (() => (' },
      { at: initializer.end, text: '))()' },
    ]);
  return marks.reduceRight((text, mark) => text.slice(0, mark.at) + mark.text + text.slice(mark.at), source);
}

/**
 * Expressions that every bundler already drops when unused; a function or class is named after its constant only when left bare.
 * @param {ts.Expression} expression
 * @returns {boolean}
 */
function isPlain(expression) {
  if (ts.isAsExpression(expression) || ts.isSatisfiesExpression(expression) || ts.isParenthesizedExpression(expression))
    return isPlain(expression.expression);
  return (
    ts.isLiteralExpression(expression) ||
    ts.isIdentifier(expression) ||
    ts.isArrowFunction(expression) ||
    ts.isFunctionExpression(expression) ||
    ts.isClassExpression(expression)
  );
}

/**
 * {@link markForBundlers} for esbuild.
 * @returns {import('esbuild').Plugin}
 */
export function bundlerMarks() {
  return {
    name: 'bundler-marks',
    setup(build) {
      build.onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, ({ path }) => ({
        contents: markForBundlers(readFileSync(path, 'utf8'), path),
        loader: 'ts',
      }));
    },
  };
}
