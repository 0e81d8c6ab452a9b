import { describe, expect, it } from 'vitest';
import { pullQuality } from 'coldside/sweep';
import { oscillationOf } from '../../src/statistics/signal/index.js';
import { rippleFollows } from '../../src/comparison/index.js';
import { seeded } from '../support/random.js';
import { madePull, sweep } from './made-pulls.js';

const normalFrom = (seed: number) => {
  const random = seeded(seed);
  return (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
};

/** Boost without ripple, polled in one row of four; the rows between are blank or repeat it. */
function polled(seed: number, how: 'blank' | 'held', wave: (t: number) => number = () => 0) {
  const normal = normalFrom(seed);
  let last = 0;
  return madePull({
    'RPM (rpm)': sweep,
    'Torque (Nm)': () => 250 + normal(),
    'Boost (kPa)': (t, row) => {
      if (row % 4 === 0) last = Number((110 + wave(t) + 0.4 * normal()).toFixed(4));
      return row % 4 === 0 || how === 'held' ? last : '';
    },
  });
}

describe('an oscillation in a channel that is polled in one row of four', () => {
  it.each(['blank', 'held'] as const)('is not found where none is, nor a ripple of torque (%s)', (how) => {
    let [found, ripples] = [0, 0];
    for (let seed = 1; seed <= 40; seed++) {
      const pull = polled(seed, how);
      const { oscillation } = pullQuality(pull);
      if (oscillation) {
        found++;
        // Readings every 0.2 s show nothing beyond 2.5 cycles a second.
        expect(oscillation.frequency).toBeLessThan(2.5);
        expect(oscillation.frequency).toBeGreaterThan(0);
      }
      expect(String(pullQuality(pull))).not.toContain('NaN');
      ripples += rippleFollows({ name: 'polled', pulls: [pull], notRead: [] }).pulls.length;
    }
    // A chance of 0.01 a pull is what is allowed.
    expect(found).toBeLessThanOrEqual(2);
    expect(ripples).toBeLessThanOrEqual(2);
  });

  it.each(['blank', 'held'] as const)('is found where its cadence shows it, at its own size (%s)', (how) => {
    const { oscillation } = pullQuality(polled(3, how, (t) => 3 * Math.sin(2 * Math.PI * 1.3 * t)));
    expect(oscillation!.frequency).toBeCloseTo(1.3, 1);
    expect(oscillation!.amplitude.si / 1000).toBeGreaterThan(2.5);
    expect(oscillation!.amplitude.si / 1000).toBeLessThan(3.5);
  });
});

describe('the search for an oscillation', () => {
  it('gives numbers or nothing, never beyond half the sample rate, also of signals with lines between few readings', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const normal = normalFrom(seed);
      const knots = Array.from({ length: 56 }, normal);
      const values = Float64Array.from({ length: 220 }, (_, i) => {
        const at = Math.floor(i / 4);
        return knots[at]! + (knots[at + 1]! - knots[at]!) * ((i % 4) / 4);
      });
      const found = oscillationOf(values, 0.05);
      if (!found) continue;
      expect(found.frequency).toBeGreaterThan(0);
      expect(found.frequency).toBeLessThan(10);
      expect(found.amplitude).toBeGreaterThan(0);
    }
  });
});
