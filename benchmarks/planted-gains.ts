/**
 * Whole test days with a known gain, from text logs to the verdict, seeded: how often the headline's interval and the band hold the truth,
 * and how often a verdict is wrong. Pulls scatter by 1 N·m with errors that stay alike over a tenth of the range.
 *
 *   npx tsx benchmarks/planted-gains.ts [trials]
 */
import { compare } from '../src/comparison/index.js';
import { readPullsFrom, type LogFile } from '../src/sweep/index.js';
import { power } from '../src/units/index.js';
import { normalFrom, pullMaker, seededUniform } from '../test/statistics/simulated-pulls.js';

interface PlantedDay {
  readonly name: string;
  readonly order: string;
  /** Torque planted in the candidate, N·m. */
  readonly gain: number;
  /** Torque lost from one pull to the next, N·m. */
  readonly drift: number;
  /** Scatter of the candidate over that of the baseline. */
  readonly ratio: number;
}

const FROM = 3500;
const TO = 6500;
const WATTS_PER_TORQUE = (2 * Math.PI * (FROM + TO)) / 2 / 60;
const MARGIN = 1500;

const days: readonly PlantedDay[] = [
  { name: 'no gain', order: 'ABBAAB', gain: 0, drift: 0, ratio: 1 },
  { name: 'no gain', order: 'ABBABAABBA', gain: 0, drift: 0, ratio: 1 },
  { name: 'no gain, drift', order: 'ABBABAABBA', gain: 0, drift: 1, ratio: 1 },
  { name: 'gain, drift', order: 'ABBAAB', gain: 4, drift: 1, ratio: 1 },
  { name: 'gain, drift', order: 'ABBABAABBA', gain: 4, drift: 1, ratio: 2 },
  { name: 'gain', order: 'ABBABAABABBABAABBAAB', gain: 4, drift: 0, ratio: 2 },
  { name: 'gain, in blocks', order: 'AAAAABBBBB', gain: 4, drift: 0, ratio: 1 },
  { name: 'at the margin', order: 'ABBABAABBA', gain: MARGIN / WATTS_PER_TORQUE, drift: 0, ratio: 1 },
];

const trials = Number(process.argv[2] ?? 1000);
if (!Number.isInteger(trials) || trials < 1)
  throw new RangeError('the number of trials must be a whole number above 0');

const ROWS = 121;
const scatter = { points: ROWS, length: 0.1, offsetShare: 0.3, profile: () => 1 };

console.log(
  `Nominal 0.950; ${trials} days each. headline / whole band hold the truth; wrong: the verdict contradicts it`,
);
days.forEach((day, at) => {
  const make = pullMaker(scatter, normalFrom(seededUniform(900 + at)));
  const count = { headline: 0, band: 0, wrong: 0 };
  const outcomes = new Map<string, number>();
  for (let trial = 0; trial < trials; trial++) {
    const files = [...day.order].map((letter, i): LogFile => {
      const errors = make(letter === 'A' ? 1 : day.ratio);
      const torque = 240 + (letter === 'A' ? 0 : day.gain) - day.drift * i;
      const rows = errors.map((error, row) => {
        const speed = FROM - 100 + ((TO - FROM + 200) * row) / (ROWS - 1);
        return `${(row * 0.05).toFixed(3)},${36000 + 600 * i + row * 0.05},${speed.toFixed(3)},${(torque + error).toFixed(6)}`;
      });
      const data = ['Time (s),Clock (s),Engine speed (rpm),Torque (N m)', ...rows].join('\n');
      return { path: `${letter}/pull ${i}.csv`, setup: letter, data };
    });
    const read = readPullsFrom(files);
    const { overall, curve, outcome } = compare(read.setup('A'), read.setup('B'), {
      engineSpeed: [FROM, TO],
      worthwhile: power(MARGIN, 'W'),
      loggedPower: 'observed',
    });
    outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
    if (!overall || !curve) continue;
    const truth = day.gain * WATTS_PER_TORQUE;
    if (overall.low.si <= truth && truth <= overall.high.si) count.headline++;
    const { low, high } = curve.simultaneous;
    const isInside = curve.engineSpeed.si.every((speed, row) => {
      const here = day.gain * 2 * Math.PI * speed;
      return low.si[row]! <= here && here <= high.si[row]!;
    });
    if (isInside) count.band++;
    const isWithin = outcome === 'equivalent' || outcome.endsWith('within the margin');
    const isSigned = outcome.startsWith('better') || outcome.startsWith('worse');
    const isWrong =
      (isSigned && truth === 0) ||
      (outcome.startsWith('worse') && truth > 0) ||
      (isWithin && truth >= MARGIN * (1 - 1e-9));
    if (isWrong) count.wrong++;
  }
  const share = (number: number): string => (number / trials).toFixed(3);
  const found = [...outcomes].map(([outcome, number]) => `${outcome} ${share(number)}`).join(', ');
  console.log(
    [
      day.name.padEnd(16),
      day.order.padEnd(20),
      share(count.headline),
      share(count.band),
      share(count.wrong),
      found,
    ].join('  '),
  );
});
