import type { ComparisonInRecord } from './record-form.js';

/** Something in two records that is not the same. */
export interface RecordDifference {
  /** Where: `overall, low`. */
  readonly path: string;
  readonly was: string;
  readonly is: string;
  readonly isNumber: boolean;
}

/** What rounding may do, of the largest value of the same unit: differences between machines are a thousand times smaller. */
const ROUNDING = 1e-9;

/** Sentences, which another version may put otherwise. */
const TEXTS: ReadonlySet<string> = new Set(['headline', 'reason', 'basis', 'objections', 'prepared']);

/** What was told and not found: it is read back to make the comparison, and a default that was added since is no difference. */
const TOLD: ReadonlySet<string> = new Set(['options', 'optionsGiven']);

/**
 * Where two records of one comparison differ: numbers beyond rounding, everything else at all.
 *
 * @param texts - whether sentences must be the same too.
 */
export function differencesBetween(
  was: ComparisonInRecord,
  is: ComparisonInRecord,
  { texts }: { readonly texts: boolean },
): { readonly differences: readonly RecordDifference[]; readonly numbers: number } {
  const differences: RecordDifference[] = [];
  const largest = new Map<string, number>();
  quantitiesIn(was, ({ unit, value }) => largest.set(unit, Math.max(largest.get(unit) ?? 0, Math.abs(value))));
  let numbers = 0;
  const hold = (a: unknown, b: unknown, path: readonly string[]): void => {
    const name = path[path.length - 1] ?? '';
    if ((path.length === 1 && TOLD.has(name)) || (!texts && path.some((part) => TEXTS.has(part)))) return;
    if (isQuantity(a) && isQuantity(b) && a.unit === b.unit) {
      numbers += 1;
      const scale = Math.max(largest.get(a.unit) ?? 0, Math.abs(b.value));
      if (Math.abs(a.value - b.value) <= ROUNDING * scale) return;
      differences.push({ path: path.join(', '), was: shown(a), is: shown(b), isNumber: true });
    } else if (typeof a === 'number' && typeof b === 'number') {
      numbers += 1;
      if (Math.abs(a - b) <= ROUNDING * Math.max(Math.abs(a), Math.abs(b))) return;
      differences.push({ path: path.join(', '), was: shown(a), is: shown(b), isNumber: true });
    } else if (isObject(a) && isObject(b)) {
      for (const key of new Set([...Object.keys(a), ...Object.keys(b)]))
        hold(a[key], b[key], [...path, nameIn(a, key)]);
    } else if (a !== b) {
      differences.push({ path: path.join(', '), was: shown(a), is: shown(b), isNumber: false });
    }
  };
  hold(was, is, []);
  return { differences, numbers };
}

interface PlainQuantity {
  readonly value: number;
  readonly unit: string;
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const isQuantity = (value: unknown): value is PlainQuantity =>
  isObject(value) && typeof value['value'] === 'number' && typeof value['unit'] === 'string';

function quantitiesIn(data: unknown, use: (quantity: PlainQuantity) => void): void {
  if (isQuantity(data)) use(data);
  else if (isObject(data)) for (const value of Object.values(data)) quantitiesIn(value, use);
}

/** An entry of a list by what it says it is. */
function nameIn(list: Readonly<Record<string, unknown>>, key: string): string {
  const entry = list[key];
  if (!Array.isArray(list) || !isObject(entry)) return key;
  const { setUp, pull, factor, name, code } = entry;
  const found = [setUp, pull, factor, name, code].filter((part) => typeof part === 'string');
  return found.length === 0 ? key : found.join('/');
}

function shown(value: unknown): string {
  if (isQuantity(value)) return `${String(Number(value.value.toPrecision(7)))} ${value.unit}`;
  if (typeof value === 'number') return String(Number(value.toPrecision(7)));
  if (value === undefined || value === null) return 'nothing';
  return typeof value === 'string' ? `“${value}”` : JSON.stringify(value);
}
