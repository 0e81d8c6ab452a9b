/** Mean of e^-x from 0 to x: (1 - e^-x) / x, without loss of digits for small x. */
export function meanDecay(x: number): number {
  return x === 0 ? 1 : -Math.expm1(-x) / x;
}

/** Its inverse in use: -log(1 - y) / y, without loss of digits for small y. */
export function unitsPerShare(y: number): number {
  return y === 0 ? 1 : -Math.log1p(-y) / y;
}
