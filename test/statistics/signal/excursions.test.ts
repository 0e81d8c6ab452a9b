import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { excursions } from '../../../src/statistics/index.js';
import { codeOf } from '../printed.js';
import { normalFrom, seededUniform } from '../simulated-pulls.js';
import { timesAt, written } from './signals.js';

const times = timesAt(0.05, 220);
const normal = normalFrom(seededUniform(31));
/** A charge temperature as logged: a slow rise, noise, a tenth of a degree. */
const temperature = times.map((t) => written(25 + 9 * (1 - Math.exp(-t / 4)) + 0.15 * normal(), 1));

describe('excursions', () => {
  it('are found where a temperature reads 150 for a second', () => {
    const faulty = temperature.slice().fill(150, 100, 120);
    expect(excursions(faulty, { longest: 24 })).toMatchObject([{ from: 100, to: 119, value: 150 }]);
    expect(excursions(faulty, { longest: 24 })[0]!.expected).toBeCloseTo(temperature[110]!, 0);
  });

  it('are found wherever they lie, of any length and either way, at the ends too', () => {
    fc.assert(
      fc.property(fc.nat(219), fc.integer({ min: 1, max: 20 }), fc.boolean(), (from, length, isHigh) => {
        const to = Math.min(220, from + length);
        // Of what begins at an end one edge is seen only; a long one there is as much like a start as like a fault.
        if (from < 3 || to > 217 || (length > 8 && (from < 2 * length || to > 220 - 2 * length))) return;
        const faulty = temperature.slice().fill(isHigh ? 150 : -40, from, to);
        expect(excursions(faulty, { longest: 24 })).toMatchObject([{ from, to: to - 1 }]);
      }),
    );
    const first = temperature.slice();
    first[0] = -40;
    expect(excursions(first, { longest: 24 })).toMatchObject([{ from: 0, to: 0 }]);
  });

  it('are not seen in noise, ramps, spool-up, hunting, a coarse reading or a gear of steps', () => {
    const quiet: Record<string, (t: number) => number> = {
      noise: () => normal(),
      ramp: (t) => 2500 + 380 * t + 4 * normal(),
      'spool-up': (t) => 150 + 90 / (1 + Math.exp(-(t - 0.6) / 0.1)) + 0.5 * normal(),
      hunting: (t) => 110 + 1.4 * Math.sin(9.4 * t) + 0.2 * normal(),
      overshoot: (t) => 110 + 25 * Math.exp(-(((t - 3) / 0.4) ** 2)) + 0.3 * normal(),
      coarse: (t) => Math.round(20 + 0.3 * t),
      constant: () => 941.2,
      'fall at the end': (t) => (t > 10.6 ? 240 - 300 * (t - 10.6) : 240 + normal()),
    };
    for (const [name, of] of Object.entries(quiet))
      expect([name, excursions(times.map(of), { longest: 24 })]).toEqual([name, []]);
  });

  it('are not seen in a pull of one row a second, whose pressure is flat but for a few small steps', () => {
    // Manifold pressure, kPa, of pull 1 of Marc Weber, Automotive OBD-II Dataset, KIT 2023, DOI 10.35097/1130, CC BY 4.0.
    const kPa = [
      220, 225.9, 226, 226.91, 226.18, 227, 227, 227, 227.55, 227.36, 227, 227, 227, 227, 227, 227, 227, 227,
    ];
    expect(excursions(Float64Array.from(kPa), { longest: 2 })).toEqual([]);
    const dip = [229, 229, 229, 229, 229.91, 229, 229, 229, 229.1, 229, 229, 229.2, 229, 229];
    expect(excursions(Float64Array.from(dip), { longest: 2 })).toEqual([]);
  });

  it('leave blanks alone and keep the rows of the file', () => {
    const faulty = temperature.map((value, row) => (row % 5 === 0 ? NaN : value)).fill(150, 101, 103);
    expect(excursions(faulty, { longest: 24 })).toMatchObject([{ from: 101, to: 102 }]);
  });

  it('are found in a recording of 1000 rows a second', () => {
    const fast = Float64Array.from({ length: 11_000 }, (_, i) => 25 + i / 2000 + 0.2 * normal()).fill(150, 5000, 6000);
    expect(excursions(fast, { longest: 1200 })).toMatchObject([{ from: 5000, to: 5999 }]);
  });

  it('need a record three times as long as they may be', () => {
    expect(excursions(temperature.slice(0, 30).fill(150, 10, 12), { longest: 24 })).toEqual([]);
    expect(codeOf(() => excursions(temperature, { longest: 0.5 }))).toBe('out-of-range');
    expect(codeOf(() => excursions(temperature, { longest: 5, threshold: 0 }))).toBe('out-of-range');
  });
});
