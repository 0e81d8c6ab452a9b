import type { Decimal } from 'decimal.js';

type DecimalClass = typeof Decimal;

/** Digits kept beyond those asked for; the Bessel form also loses as many as a small answer has zeros. */
const SPARE_DIGITS = 24;

/** Functions that formulas name and that have no formula of their own, in decimals of any precision. */
export const specialFunctions: Readonly<Record<string, (values: Decimal[]) => Decimal>> = {
  crossflowSeries: ([N, C]) => crossflowByBessel(N!, C!),
};

/**
 * Effectiveness of a crossflow core, both flows unmixed, in the Bessel form of Baclic (1978):
 * 1 - e^(-N(1+C)) [I0(z) + sqrt(C) I1(z) - (1 - C)/C * sum over k >= 2 of C^(k/2) Ik(z)], z = 2 N sqrt(C).
 *
 * The modified Bessel functions come by downward recurrence from an order where they vanish, and are made right in size by
 * e^z = I0 + 2 (I1 + I2 + ...); the sum over them is taken on the way.
 */
function crossflowByBessel(N: Decimal, C: Decimal): Decimal {
  const Asked = N.constructor as DecimalClass;
  if (N.isZero()) return new Asked(0);
  const digits = Asked.precision + SPARE_DIGITS + Math.max(0, -N.e);
  const Wide = Asked.clone({ precision: digits });
  const [n, c] = [new Wide(N), new Wide(C)];
  if (c.isZero()) return new Asked(new Wide(1).minus(n.neg().exp()));
  const root = c.sqrt();
  const z = n.times(root).times(2);
  const step = new Wide(2).div(z);
  let [above, ik, sum, total] = [new Wide(0), new Wide(1), new Wide(0), new Wide(0)];
  for (let k = Math.ceil(Math.sqrt(4.7 * z.toNumber() * digits) + digits); k >= 2; k--) {
    sum = sum.times(root).plus(ik);
    total = total.plus(ik);
    [above, ik] = [ik, above.plus(ik.times(step.times(k)))];
  }
  const i1 = ik;
  const i0 = above.plus(i1.times(step));
  const size = z.exp().div(i0.plus(total.plus(i1).times(2)));
  // C^(k/2) / C from k = 2 on is the power of the root that the sum already has.
  const bracket = i0.plus(root.times(i1)).minus(new Wide(1).minus(c).times(sum));
  return new Asked(new Wide(1).minus(n.neg().times(c.plus(1)).exp().times(size).times(bracket)));
}
