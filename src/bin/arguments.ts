/** The words of a command line: what stands alone, and the values that follow each `--option`. */
export interface Words {
  readonly alone: readonly string[];
  readonly options: ReadonlyMap<string, readonly string[]>;
}

/** An option that the command does not have, or one without what it needs. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/**
 * Takes a command line apart. An option takes every value up to the next option, so that a shell can fill in `runs/*.csv`; it may also
 * be written `--option=value`.
 */
export function wordsOf(given: readonly string[], known: readonly string[]): Words {
  const alone: string[] = [];
  const options = new Map<string, string[]>();
  let values = alone;
  for (const word of given) {
    // A minus sign before a digit is a number; before anything else it was meant as an option.
    if (!/^-+[^\d.]/.test(word)) {
      values.push(word);
      continue;
    }
    const [, name = '', first] = /^-+([^=]*)(?:=(.*))?$/s.exec(word === '-h' ? '--help' : word) ?? [];
    if (!known.includes(name))
      throw new UsageError(`There is no option --${name}. There are: ${known.map((one) => `--${one}`).join(', ')}.`);
    if (options.has(name)) throw new UsageError(`--${name} is given twice. Write all its values after one --${name}.`);
    values = first === undefined ? [] : [first];
    options.set(name, values);
  }
  return { alone, options };
}

/** The value of an option that may be several words, `--worthwhile 2 kW`, joined; undefined where it is not given. */
export function joined({ options }: Words, name: string, sign = ' '): string | undefined {
  const values = options.get(name);
  if (values === undefined) return undefined;
  if (values.length === 0) throw new UsageError(`--${name} takes a value, got none.`);
  return values.join(sign);
}

/** The one value of an option, or undefined where it is not given. */
export function single({ options }: Words, name: string): string | undefined {
  const values = options.get(name);
  if (values === undefined) return undefined;
  if (values.length !== 1) throw new UsageError(`--${name} takes one value, got ${values.length}.`);
  return values[0];
}
