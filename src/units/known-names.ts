import { CalculationError, type Problem } from './errors.js';
import { describe } from './quantity.js';

/** How far a misspelling may be from what was meant: a slip in each three letters, and two at most. */
const slipsFor = (name: string): number => Math.min(2, Math.floor(name.length / 3));

/** Letters to add, take away or change between two words. */
function slipsBetween(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      next.push(Math.min(next[j - 1]! + 1, row[j]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    }
    row = next;
  }
  return row[b.length]!;
}

const letters = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]/g, '');
const isNear = (name: string, other: string): boolean =>
  slipsBetween(letters(name), letters(other)) <= slipsFor(letters(name));

/** The first words of a name without the last, and the last without the first. */
function partsOf(name: string): string[] {
  const words = name.match(/[A-Z]?[a-z0-9]+/g) ?? [];
  return words.flatMap((_, i) => (i === 0 ? [] : [words.slice(0, i).join(''), words.slice(i).join('')]));
}

/** The choice that a misspelt name was probably meant to be, or the only one of whose words it is a part. */
function nearest(name: string, choices: readonly string[]): string | undefined {
  const [best] = choices
    .filter((choice) => isNear(name, choice))
    .sort((a, b) => slipsBetween(letters(name), letters(a)) - slipsBetween(letters(name), letters(b)));
  if (best !== undefined) return best;
  const partly = choices.filter((choice) => partsOf(choice).some((part) => isNear(name, part)));
  return partly.length === 1 ? partly[0] : undefined;
}

/** What to do about a name that is none of the choices. */
export function meant(name: string, choices: readonly string[]): string {
  const near = nearest(name, choices);
  return near === undefined ? 'Is the name misspelt?' : `Did you mean ${near}?`;
}

/** Whether an object was written down name by name; one that a class made cannot be misspelt, and may know more. */
export function isPlain(value: unknown): value is Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === null || Object.getPrototypeOf(prototype) === null;
}

/** The names in an object that nothing would read: a misspelt one would be left out, silently. */
export function unknownNames(given: unknown, known: readonly string[], path = ''): Problem[] {
  if (typeof given !== 'object' || given === null) return [];
  const fields = given as Readonly<Record<string, unknown>>;
  return Object.keys(fields)
    .filter((name) => fields[name] !== undefined && !known.includes(name))
    .map((name) => ({
      code: 'unknown',
      input: path + name,
      need: `one of ${known.join(', ')}`,
      got: describe(fields[name]),
      mend: meant(name, known),
    }));
}

const shown = (choice: string | boolean): string => (typeof choice === 'string' ? `'${choice}'` : String(choice));

/** What is wrong with a choice, which may be left out unless it is said to be required. */
export function choiceProblems(
  input: string,
  value: unknown,
  choices: readonly (string | boolean)[],
  required = false,
): Problem[] {
  if (choices.includes(value as string) || (value === undefined && !required)) return [];
  const words = choices.filter((choice) => typeof choice === 'string');
  const near = typeof value === 'string' ? nearest(value, words) : undefined;
  const code = value === undefined ? 'missing' : 'unknown';
  const need = [...choices.map(shown), ...(required ? [] : ['left out'])].join(' or ');
  const mend = near === undefined ? '' : `Did you mean ${shown(near)}?`;
  return [{ code, input, need, got: describe(value), mend }];
}

/** The options of a function: for each its choices, or `any` where the function itself checks the value. */
export type KnownOptions = Readonly<Record<string, readonly (string | boolean)[] | 'any'>>;

/** Refuses options that would be left undone, silently: a misspelt name, a value that is no choice. */
export function requireOptions(name: string, options: unknown, known: KnownOptions): void {
  if (options === undefined) return;
  const names = Object.keys(known);
  if (!isPlain(options)) {
    const need = `an object of options: ${names.join(', ')}`;
    throw new CalculationError(name, [{ code: 'kind', input: 'options', need, got: describe(options), mend: '' }]);
  }
  const problems = [
    ...unknownNames(options, names),
    ...Object.entries(known).flatMap(([option, choices]) =>
      choices === 'any' ? [] : choiceProblems(option, options[option], choices),
    ),
  ];
  if (problems.length > 0) throw new CalculationError(name, problems);
}

/** Refuses an object with names that nothing would read. */
export function requireNames(name: string, given: unknown, known: readonly string[], path = ''): void {
  const problems = unknownNames(given, known, path);
  if (problems.length > 0) throw new CalculationError(name, problems);
}
