import { requireCount, requirePositive } from '../checks.js';
import { StatisticsError } from '../errors.js';

/** A complex number. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

/**
 * Transforms of an evenly spaced signal at one frequency, one for each sine taper v_k(i) = sqrt(2/(n + 1)) sin(pi k i/(n + 1))
 * (Riedel and Sidorenko 1995). Their mean square is the power density over 1/(sample rate).
 *
 * @param step - Seconds from sample to sample.
 */
export function taperedTransforms(values: Float64Array, step: number, frequency: number, tapers: number): Complex[] {
  const count = values.length;
  const turn = 2 * Math.PI * frequency * step;
  const scale = Math.sqrt(2 / (count + 1));
  return Array.from({ length: tapers }, (_, taper) => {
    const angle = (Math.PI * (taper + 1)) / (count + 1);
    let re = 0;
    let im = 0;
    for (let at = 0; at < count; at++) {
      const weighted = values[at]! * scale * Math.sin(angle * (at + 1));
      re += weighted * Math.cos(turn * at);
      im -= weighted * Math.sin(turn * at);
    }
    return { re, im };
  });
}

/** Half the width of the band that tapers look at, in cycles a second. */
export function halfBandwidth(count: number, step: number, tapers: number): number {
  return (tapers + 1) / (2 * (count + 1) * step);
}

/** Power of a signal over frequency. */
export interface PowerDensity {
  /** Cycles a second, evenly spaced. */
  readonly frequencies: Float64Array;
  /** One-sided: its integral over frequency is the variance. */
  readonly density: Float64Array;
}

/**
 * One-sided power density of an evenly spaced signal by sine tapers.
 *
 * @param values - Without gaps, trend taken off.
 * @param to - Highest frequency; at most half the sample rate.
 */
export function powerDensity(values: Float64Array, step: number, tapers: number, to: number): PowerDensity {
  const statistic = 'power density';
  requirePositive(statistic, 'step', step);
  requireCount(statistic, 'tapers', tapers, 1);
  const half = 0.5 / step;
  if (!(to > 0 && to <= half * (1 + 1e-9))) {
    throw new StatisticsError({
      code: 'out-of-range',
      statistic,
      input: 'to',
      need: `lie above 0 and at most at half the sample rate, ${half}`,
      got: String(to),
    });
  }
  const length = values.length + 1;
  const spacing = 1 / (2 * length * step);
  const most = Math.floor(to / spacing + 1e-9);
  // A sine taper only shifts: each tapered transform is the difference of two plain ones, so one set of those serves all.
  const plain = Array.from({ length: most + tapers + 1 }, (_, bin) => transformAt(values, (Math.PI * bin) / length));
  const at = (bin: number): Complex => (bin < 0 ? { re: plain[-bin]!.re, im: -plain[-bin]!.im } : plain[bin]!);
  const density = new Float64Array(most);
  for (let bin = 1; bin <= most; bin++) {
    let power = 0;
    for (let taper = 1; taper <= tapers; taper++) {
      const below = at(bin - taper);
      const above = at(bin + taper);
      power += (below.re - above.re) ** 2 + (below.im - above.im) ** 2;
    }
    density[bin - 1] = (step * power) / (length * tapers);
  }
  return { frequencies: density.map((_, bin) => (bin + 1) * spacing), density };
}

/** Sum of y_i exp(-j turn i), i from 1; the turning is by multiplication, made exact again every 64 samples. */
function transformAt(values: Float64Array, turn: number): Complex {
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  let c = 1;
  let s = 0;
  let re = 0;
  let im = 0;
  for (let at = 0; at < values.length; at++) {
    if (at % 64 === 0) {
      c = Math.cos(turn * (at + 1));
      s = Math.sin(turn * (at + 1));
    } else {
      const turned = c * cos - s * sin;
      s = s * cos + c * sin;
      c = turned;
    }
    re += values[at]! * c;
    im -= values[at]! * s;
  }
  return { re, im };
}
