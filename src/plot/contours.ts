/** A point in the plane of a picture. */
export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}

/** Values at the corners of a grid, which may be bent: rows of corners, each with its place and its height. */
export type HeightGrid = readonly (readonly (PlanePoint & { readonly height: number })[])[];

/**
 * Lines of one height over a grid, by marching squares: in each cell the places where the sides pass the height are joined, and cells
 * share the places on their sides, so that the pieces join to lines. A closed line ends where it begins.
 */
export function contourLines(grid: HeightGrid, height: number): PlanePoint[][] {
  const places = new Map<string, PlanePoint>();
  const next = new Map<string, string[]>();
  const join = (a: string, b: string): void => {
    next.set(a, [...(next.get(a) ?? []), b]);
    next.set(b, [...(next.get(b) ?? []), a]);
  };
  const crossing = (i: number, j: number, di: number, dj: number): string | undefined => {
    const [a, b] = [grid[i]![j]!, grid[i + di]![j + dj]!];
    if (a.height < height === b.height < height) return undefined;
    const key = `${i},${j},${di}`;
    const share = (height - a.height) / (b.height - a.height);
    places.set(key, { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) });
    return key;
  };
  for (let i = 0; i < grid.length - 1; i++) {
    for (let j = 0; j < grid[i]!.length - 1; j++) {
      const sides = [crossing(i, j, 0, 1), crossing(i, j + 1, 1, 0), crossing(i + 1, j, 0, 1), crossing(i, j, 1, 0)];
      const found = sides.filter((side) => side !== undefined);
      if (found.length >= 2) join(found[0]!, found[1]!);
      // At a saddle all four sides are passed; which two belong together cannot be told from the corners.
      if (found.length === 4) join(found[2]!, found[3]!);
    }
  }
  return chains(next).map((chain) => chain.map((key) => places.get(key)!));
}

/** The chains of a graph in which every place has one neighbour or two; open ones from one end, then closed ones. */
function chains(next: ReadonlyMap<string, readonly string[]>): string[][] {
  const seen = new Set<string>();
  const follow = (start: string): string[] => {
    const chain = [start];
    seen.add(start);
    for (let here: string | undefined = start; here !== undefined;) {
      here = next.get(here)!.find((key) => !seen.has(key));
      if (here === undefined) break;
      seen.add(here);
      chain.push(here);
    }
    const last = chain.at(-1)!;
    return chain.length > 2 && next.get(last)!.includes(start) ? [...chain, start] : chain;
  };
  const ends = [...next.keys()].filter((key) => next.get(key)!.length === 1);
  return [...ends, ...next.keys()].flatMap((key) => (seen.has(key) ? [] : [follow(key)]));
}
