import { readFileSync, readdirSync } from 'node:fs';
import { posix } from 'node:path';
import ts from 'typescript';
import { root } from '../../.ci/topics.mjs';

/** One `import`, `export … from` or `import()` of a source file. */
export interface Import {
  /** The file it stands in, below src. */
  readonly from: string;
  /** What it names: a file below src, or a package. */
  readonly to: string;
  readonly isPackage: boolean;
  /** Written as `import()`, so nothing is loaded before it is needed. */
  readonly isDynamic: boolean;
  /** Gone from the built code. */
  readonly isTypeOnly: boolean;
}

/** One file below src, as far as its place among the others goes. */
export interface SourceFile {
  readonly path: string;
  readonly imports: readonly Import[];
  /** Statements that do something while the file loads. */
  readonly actions: readonly string[];
  readonly statements: readonly ts.Statement[];
}

/** Every TypeScript file below src. */
export function sourceFiles(): SourceFile[] {
  return readdirSync(`${root}src`, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => path.endsWith('.ts'))
    .sort()
    .map((path) => readSource(path, readFileSync(`${root}src/${path}`, 'utf8')));
}

/** A source file from its path below src and its text. */
export function readSource(path: string, text: string): SourceFile {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const imports: Import[] = [];
  const add = (specifier: ts.Node | undefined, how: Pick<Import, 'isDynamic' | 'isTypeOnly'>) => {
    if (specifier === undefined || !ts.isStringLiteral(specifier)) return;
    const isPackage = !specifier.text.startsWith('.');
    const to = isPackage ? specifier.text : posix.join(posix.dirname(path), specifier.text).replace(/\.js$/, '.ts');
    imports.push({ from: path, to, isPackage, ...how });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node))
      add(node.moduleSpecifier, { isDynamic: false, isTypeOnly: importsOnlyTypes(node) });
    else if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, { isDynamic: false, isTypeOnly: node.isTypeOnly });
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      add(node.arguments[0], { isDynamic: true, isTypeOnly: false });
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument))
      add(node.argument.literal, { isDynamic: false, isTypeOnly: true });
    ts.forEachChild(node, visit);
  };
  visit(file);
  const actions = file.statements
    .filter((statement) => !onlyDeclares(statement))
    .map((statement) => statement.getText(file));
  return { path, imports, actions, statements: file.statements };
}

function importsOnlyTypes(node: ts.ImportDeclaration): boolean {
  const clause = node.importClause;
  if (clause === undefined) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const names = clause.namedBindings;
  return (
    clause.name === undefined &&
    names !== undefined &&
    ts.isNamedImports(names) &&
    names.elements.every((name) => name.isTypeOnly)
  );
}

function onlyDeclares(statement: ts.Statement): boolean {
  if (ts.isImportDeclaration(statement)) return statement.importClause !== undefined;
  if (ts.isVariableStatement(statement))
    return (
      (statement.declarationList.flags & ts.NodeFlags.Const) !== 0 &&
      statement.declarationList.declarations.every((declaration) => ts.isIdentifier(declaration.name))
    );
  return (
    ts.isExportDeclaration(statement) ||
    ts.isFunctionDeclaration(statement) ||
    ts.isClassDeclaration(statement) ||
    ts.isInterfaceDeclaration(statement) ||
    ts.isTypeAliasDeclaration(statement)
  );
}

/** Files that loading `start` loads too, itself included; an `import()` waits until it is reached, so it does not count. */
export function loadedWith(start: string, files: readonly SourceFile[]): Set<string> {
  const byPath = new Map(files.map((file) => [file.path, file]));
  const loaded = new Set<string>();
  const waiting = [start];
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (loaded.has(path)) continue;
    loaded.add(path);
    for (const { to, isPackage, isDynamic, isTypeOnly } of byPath.get(path)?.imports ?? [])
      if (!isPackage && !isDynamic && !isTypeOnly) waiting.push(to);
  }
  return loaded;
}

/** Each ring of files that import one another, as `a -> b -> a`. */
export function rings(files: readonly SourceFile[]): string[] {
  const byPath = new Map(files.map((file) => [file.path, file]));
  const state = new Map<string, 'open' | 'done'>();
  const found: string[] = [];
  const visit = (path: string, trail: readonly string[]): void => {
    if (state.get(path) === 'open') found.push([...trail.slice(trail.indexOf(path)), path].join(' -> '));
    if (state.has(path)) return;
    state.set(path, 'open');
    for (const { to, isPackage, isDynamic } of byPath.get(path)?.imports ?? [])
      if (!isPackage && !isDynamic) visit(to, [...trail, path]);
    state.set(path, 'done');
  };
  for (const { path } of files) visit(path, []);
  return found;
}

/** A calculation as it is written in src. */
export interface WrittenCalculation {
  readonly name: string;
  readonly inputs: readonly { readonly name: string; readonly isDocumented: boolean }[];
}

/** All calculations defined in src. */
export function writtenCalculations(): WrittenCalculation[] {
  return sourceFiles().flatMap(({ statements }) => calculationsIn(statements));
}

/** The calculations defined in some statements. */
export function calculationsIn(statements: readonly ts.Statement[]): WrittenCalculation[] {
  const found: WrittenCalculation[] = [];
  const visit = (node: ts.Node): void => {
    const definition =
      ts.isCallExpression(node) && node.expression.getText() === 'calculation' ? node.arguments[0] : undefined;
    if (definition !== undefined && ts.isObjectLiteralExpression(definition)) {
      const name = valueOf(definition, 'name');
      const inputs = valueOf(definition, 'inputs');
      if (name !== undefined && ts.isStringLiteralLike(name))
        found.push({ name: name.text, inputs: inputs === undefined ? [] : inputsOf(inputs) });
    }
    ts.forEachChild(node, visit);
  };
  statements.forEach(visit);
  return found;
}

function valueOf(object: ts.ObjectLiteralExpression, key: string): ts.Expression | undefined {
  const property = object.properties.find((each) => each.name?.getText() === key);
  return property !== undefined && ts.isPropertyAssignment(property) ? property.initializer : undefined;
}

function inputsOf(inputs: ts.Expression): WrittenCalculation['inputs'] {
  if (!ts.isObjectLiteralExpression(inputs)) return [];
  return inputs.properties
    .filter((property) => property.name !== undefined)
    .map((property) => ({
      name: property.name!.getText(),
      isDocumented: ts
        .getJSDocCommentsAndTags(property)
        .some((comment) => ts.isJSDoc(comment) && comment.comment !== undefined),
    }));
}
