import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const file = fileURLToPath(new URL('../mistakes/units.ts', import.meta.url));
const root = fileURLToPath(new URL('../../', import.meta.url));
const source = readFileSync(file, 'utf8').split('\n');

/** The mistakes: the line that must not compile, and what its error must name. */
const mistakes = source.flatMap((line, i) =>
  line.startsWith('//! ')
    ? [{ line: i + 1, code: source[i + 1]!, names: [...line.matchAll(/'((?:[^'])+)'/g)].map((match) => match[1]!) }]
    : [],
);

function errorsByLine(): Map<number, string> {
  const config = ts.readConfigFile(`${root}tsconfig.json`, (path) => ts.sys.readFile(path)).config as {
    compilerOptions: object;
  };
  const { options } = ts.convertCompilerOptionsFromJson(config.compilerOptions, root);
  const program = ts.createProgram([file], options);
  const found = new Map<number, string>();
  for (const diagnostic of ts.getPreEmitDiagnostics(program)) {
    const where =
      diagnostic.file?.fileName === file ? diagnostic.file.getLineAndCharacterOfPosition(diagnostic.start!).line : -1;
    found.set(where, ts.flattenDiagnosticMessageText(diagnostic.messageText, '\n'));
  }
  return found;
}

describe('the compiler on deliberate mistakes', () => {
  const errors = errorsByLine();

  it('finds nothing else wrong', () => {
    expect([...errors.keys()].sort((a, b) => a - b)).toEqual(mistakes.map((mistake) => mistake.line));
  });

  it.each(mistakes)('$code', ({ line, names }) => {
    const [first] = errors.get(line)!.split('\n');
    // A wrong kind reads in one short line. Where the compiler lists the choices or the inputs, the line may be longer.
    expect(first!.length, first).toBeLessThan(names.some((name) => name.includes('Quantity<')) ? 140 : 330);
    for (const name of names)
      expect(
        name.split('|').some((one) => errors.get(line)!.includes(one)),
        `${name} in: ${errors.get(line)}`,
      ).toBe(true);
  });
});
