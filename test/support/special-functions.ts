import type { Decimal } from 'decimal.js';

type DecimalClass = typeof Decimal;

/** Digits kept beyond those asked for; the Bessel form also loses as many as a small answer has zeros. */
const SPARE_DIGITS = 24;

/** Functions that formulas name and that have no formula of their own, in decimals of any precision. */
export const specialFunctions: Readonly<Record<string, (values: Decimal[]) => Decimal>> = {
  crossflowSeries: ([N, C]) => crossflowByBessel(N!, C!),
  crossflowCells: (values) => chargeBehindCells(values),
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

const CELLS = 10;

/**
 * Charge temperature behind a wall of ten by ten cells, from the other end than the library: what the charge finds at the exit is
 * followed backwards through time to the cells it came from, and how a difference spreads is taken from its generating function,
 * exp(-s (1 - z)/(1 - x z)), whose coefficients follow from the two before.
 */
function chargeBehindCells(values: Decimal[]): Decimal {
  const [T1, Ch, Nh, Tc, Cc, Nc, K, T0, t] = values as [
    Decimal,
    Decimal,
    Decimal,
    Decimal,
    Decimal,
    Decimal,
    Decimal,
    Decimal,
    Decimal,
  ];
  const n = CELLS;
  const Class = T1.constructor as DecimalClass;
  const hotKept = Nh.div(n).neg().exp();
  const coldKept = Nc.div(n).neg().exp();
  const hotShare = hotKept.neg().plus(1);
  const coldShare = coldKept.neg().plus(1);
  const hotPart = Ch.times(hotShare).times(n);
  const coldPart = Cc.times(coldShare).times(n);
  const all = hotPart.plus(coldPart);
  const exit = Array.from({ length: n }, (_, i) => hotShare.times(hotKept.pow(n - 1 - i)));
  if (all.isZero()) {
    return exit.reduce((sum, share) => sum.plus(share.times(T0)), T1.times(hotKept.pow(n)));
  }
  const along = backwards(exit, spreadByRecurrence(hotPart.times(t).div(K), hotKept, n));
  const across = backwards(
    exit.map(() => new Class(1).div(n)),
    spreadByRecurrence(coldPart.times(t).div(K), coldKept, n),
  );
  const weight = hotPart.div(all);
  const hot = Array.from({ length: n }, () => T1);
  let left = new Class(0);
  for (let i = 0; i < n; i++) {
    let cold = Tc;
    for (let j = 0; j < n; j++) {
      const wall = cold.plus(hot[j]!.minus(cold).times(weight));
      hot[j] = hot[j]!.plus(hotShare.times(wall.minus(hot[j]!)));
      cold = cold.plus(coldShare.times(wall.minus(cold)));
      left = left.plus(along[i]!.times(across[j]!).times(T0.minus(wall)));
    }
  }
  return hot
    .reduce((sum, value) => sum.plus(value))
    .div(n)
    .plus(left);
}

function spreadByRecurrence(s: Decimal, x: Decimal, n: number): Decimal[] {
  const parts = [s.neg().exp()];
  const pull = s.times(x.neg().plus(1));
  for (let k = 0; k < n - 1; k++) {
    const up = x
      .times(2 * k)
      .plus(pull)
      .times(parts[k]!);
    const down =
      k > 1
        ? x
            .times(x)
            .times(k - 1)
            .times(parts[k - 1]!)
        : undefined;
    parts.push((down ? up.minus(down) : up).div(k + 1));
  }
  return parts;
}

function backwards(exit: readonly Decimal[], parts: readonly Decimal[]): Decimal[] {
  return exit.map((_, i) =>
    exit.slice(i).reduce((sum, share, k) => sum.plus(share.times(parts[k]!)), exit[i]!.times(0)),
  );
}
