/** Ends of an interval. */
export type Ends = readonly [low: number, high: number];

/** Ranks of an interval that leaves as many results below as above (JCGM 101, 7.7.2). */
function symmetricRanks(count: number, level: number): { low: number; width: number } {
  const width = widthOf(count, level);
  return { low: Math.floor((count - width + 1) / 2), width };
}

/** How many ranks apart the ends of a coverage interval are. */
const widthOf = (count: number, level: number): number => Math.floor(level * count + 0.5);

/** What rounding may take off a count made from a level such as 0.999. */
export const NEARLY = 1 - 1e-9;

/** Whether there are enough results for both ends of an interval to stand clear of the outermost ones. */
export const holdsLevel = (count: number, level: number): boolean => ((1 - level) * count) / 2 >= CLEAR * NEARLY;

/** Results outside either end below which an end would be made by the luck of a few. */
const CLEAR = 5;

/** The fewest results that hold a level. */
export const fewestFor = (level: number): number => Math.ceil(((2 * CLEAR) / (1 - level)) * NEARLY);

/** The probabilistically symmetric coverage interval of results in ascending order. */
export function symmetricEnds(sorted: Float64Array, level: number): Ends {
  const { low, width } = symmetricRanks(sorted.length, level);
  return [sorted[low - 1]!, sorted[low - 1 + width]!];
}

/** The shortest coverage interval of results in ascending order (JCGM 101, 7.7.4). */
export function shortestEnds(sorted: Float64Array, level: number): Ends {
  const width = widthOf(sorted.length, level);
  let best = 0;
  for (let i = 1; i + width < sorted.length; i++) {
    if (sorted[i + width]! - sorted[i]! < sorted[best + width]! - sorted[best]!) best = i;
  }
  return [sorted[best]!, sorted[best + width]!];
}

/** The middle one of results in ascending order. */
export function medianOf(sorted: Float64Array): number {
  const half = sorted.length / 2;
  return (sorted[Math.ceil(half) - 1]! + sorted[Math.floor(half)]!) / 2;
}

/** The share of results above a value. */
export function shareAbove(sorted: Float64Array, limit: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (sorted[middle]! > limit) high = middle;
    else low = middle + 1;
  }
  return (sorted.length - low) / sorted.length;
}
