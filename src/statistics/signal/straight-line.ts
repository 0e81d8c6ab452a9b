/** A least-squares straight line. */
export interface StraightLine {
  readonly slope: number;
  readonly meanX: number;
  readonly meanY: number;
  readonly sumOfSquares: number;
  /** Sum of squared distances of x from its mean. */
  readonly spread: number;
  readonly count: number;
}

/** The straight line through the readings of some rows; undefined where they do not make one. */
export function straightLine(
  x: Float64Array,
  y: Float64Array,
  from = 0,
  to: number = x.length,
): StraightLine | undefined {
  let count = 0;
  let meanX = 0;
  let meanY = 0;
  let sxx = 0;
  let sxy = 0;
  let syy = 0;
  for (let row = from; row < to; row++) {
    if (Number.isNaN(y[row]!) || Number.isNaN(x[row]!)) continue;
    count++;
    const dx = x[row]! - meanX;
    const dy = y[row]! - meanY;
    meanX += dx / count;
    meanY += dy / count;
    sxx += dx * (x[row]! - meanX);
    sxy += dx * (y[row]! - meanY);
    syy += dy * (y[row]! - meanY);
  }
  if (count < 2 || !(sxx > 0)) return undefined;
  const slope = sxy / sxx;
  return { slope, meanX, meanY, sumOfSquares: Math.max(0, syy - slope * sxy), spread: sxx, count };
}

/** The height of a line. */
export function lineAt({ slope, meanX, meanY }: StraightLine, x: number): number {
  return meanY + slope * (x - meanX);
}
