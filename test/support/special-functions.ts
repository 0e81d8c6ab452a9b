import type { Decimal } from 'decimal.js';

type DecimalClass = typeof Decimal;

/** Digits kept beyond those asked for: the Bessel form loses as many as a small answer has zeros. */
const SPARE_DIGITS = 40;

/** Functions that formulas name and that have no formula of their own, in decimals of any precision. */
export const specialFunctions: Readonly<Record<string, (values: Decimal[]) => Decimal>> = {
  crossflowSeries: ([N, C]) => crossflowByBessel(N!, C!),
};

/**
 * Effectiveness of a crossflow core, both flows unmixed, in the Bessel form of Baclic (1978):
 * 1 - e^(-N(1+C)) [I0(z) + sqrt(C) I1(z) - (1 - C)/C * sum over k >= 2 of C^(k/2) Ik(z)], z = 2 N sqrt(C).
 */
function crossflowByBessel(N: Decimal, C: Decimal): Decimal {
  const asked = N.constructor as DecimalClass;
  if (N.isZero()) return new asked(0);
  const zeros = Math.max(0, -N.e);
  const Wide = asked.clone({ precision: asked.precision + SPARE_DIGITS + zeros });
  const n = new Wide(N);
  const c = new Wide(C);
  if (c.isZero()) return new asked(new Wide(1).minus(n.neg().exp()));
  const root = c.sqrt();
  const [i0, i1, ...higher] = besselI(n.times(root).times(2)) as [Decimal, Decimal, ...Decimal[]];
  let power = c;
  let sum = new Wide(0);
  for (const ik of higher) {
    sum = sum.plus(power.times(ik));
    power = power.times(root);
  }
  const bracket = i0.plus(root.times(i1)).minus(new Wide(1).minus(c).div(c).times(sum));
  return new asked(new Wide(1).minus(n.neg().times(c.plus(1)).exp().times(bracket)));
}

/**
 * Modified Bessel functions I0(z), I1(z), ... as far as they count: downward recurrence from an order where they vanish, made
 * right in size by e^z = I0 + 2 (I1 + I2 + ...).
 */
function besselI(z: Decimal): Decimal[] {
  const Wide = z.constructor as DecimalClass;
  const highest = Math.ceil(Math.sqrt(4.7 * z.toNumber() * Wide.precision)) + Wide.precision;
  const values: Decimal[] = [];
  let above = new Wide(0);
  let value = new Wide(1);
  for (let k = highest; k >= 0; k--) {
    values[k] = value;
    [above, value] = [value, above.plus(value.times(2 * k).div(z))];
  }
  const total = values.reduce((sum, ik, k) => sum.plus(k === 0 ? ik : ik.times(2)), new Wide(0));
  const size = z.exp().div(total);
  return values.map((ik) => ik.times(size));
}
