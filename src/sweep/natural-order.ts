const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** Order of names as people count: pull 2 before pull 10. */
export function naturalOrder(a: string, b: string): number {
  return collator.compare(a, b) || (a < b ? -1 : a > b ? 1 : 0);
}
