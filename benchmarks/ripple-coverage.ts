/**
 * How often the ripple test finds a link between unrelated resonances, and how often its interval holds a true share of 0.6.
 *
 *   npx tsx benchmarks/ripple-coverage.ts [trials]
 */
import { ripple } from '../src/statistics/index.js';
import { resonance } from '../test/statistics/signal/signals.js';
import { normalFrom, seededUniform } from '../test/statistics/simulated-pulls.js';

const trials = Number(process.argv[2] ?? 3000);
if (!Number.isInteger(trials) || trials < 1)
  throw new RangeError('the number of trials must be a whole number above 0');

const step = 0.05;
// 16 cycles of 2 a second.
const count = 160;
const frequency = 2;
const share = 0.6;
const normal = normalFrom(seededUniform(7));
const driverOf = (width: number): Float64Array => resonance(count, step, { frequency, width }, normal);

console.log(`Nominal 0.050 and 0.950; ${trials} trials; 16 cycles`);
for (const width of [1.6, 0.4, 0.16]) {
  for (const prefilter of [false, true]) {
    const rates = [3, 5, 7, 10].map((tapers) => {
      let linked = 0;
      for (let trial = 0; trial < trials; trial++) {
        const found = ripple(driverOf(width), driverOf(width), step, { frequency, tapers, prefilter });
        if (found.coherence > found.criticalCoherence) linked++;
      }
      return (linked / trials).toFixed(3);
    });
    let inside = 0;
    for (let trial = 0; trial < trials; trial++) {
      const driver = driverOf(width);
      const other = driverOf(width);
      const follower = driver.map((value, i) => Math.sqrt(share) * value + Math.sqrt(1 - share) * other[i]!);
      const [low, high] = ripple(driver, follower, step, { frequency, tapers: 7, prefilter }).share;
      if (low <= share && high >= share) inside++;
    }
    const how = prefilter ? 'with filter   ' : 'without filter';
    console.log(
      `width ${width} Hz, ${how}: false links ${rates.join(' / ')} with 3/5/7/10 tapers; share 0.6 held ${(inside / trials).toFixed(3)}`,
    );
  }
}
