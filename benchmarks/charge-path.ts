/**
 * Random but possible installations solved to a steady point: how many have one, why the others have none, how well they balance, how
 * fast, and as a ratio to bare arithmetic that does the same work on the reference case.
 *
 *   npx tsx benchmarks/charge-path.ts [installations] [seed]
 */
import {
  cpMass,
  enthalpyMass,
  entropyFunctionMass,
  gasConstantMass,
  temperatureAtEnthalpyMass,
  temperatureAtEntropyFunctionMass,
} from '../src/air/ideal-gas.js';
import { NoSteadyPoint, operatingPoint } from '../src/charge-path/index.js';
import { readInstallation } from '../src/charge-path/read-installation.js';
import { solvePath } from '../src/charge-path/solve-path.js';
import { numbersOf } from '../src/charge-path/way.js';
import { effectivenessCrossflowUnmixed } from '../src/intercooler/index.js';
import { referenceCase, speedOfReference } from '../test/charge-path/installations.js';
import { randomInstallation } from '../test/charge-path/random-installations.js';
import { seeded } from '../test/support/random.js';

const installations = Number(process.argv[2] ?? 1_000_000);
const seed = Number(process.argv[3] ?? 2024);

const random = seeded(seed);
const outcomes = new Map<string, number>();
const count = (outcome: string): void => void outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
let worstBalance = 0;
let spent = 0;
for (let i = 0; i < installations; i++) {
  const { installation, engineSpeed } = randomInstallation(random);
  const start = performance.now();
  try {
    const point = operatingPoint(installation, engineSpeed);
    spent += performance.now() - start;
    const { power, stations } = point;
    if (!Number.isFinite(power.si + stations.manifold.pressure.si + stations.coreOutlet.temperature.si)) count('NaN');
    for (const { relativeDifference } of point.balances) worstBalance = Math.max(worstBalance, relativeDifference);
    count('solved');
  } catch (error) {
    spent += performance.now() - start;
    count(error instanceof NoSteadyPoint ? error.reason : `unforeseen: ${String(error)}`);
  }
}
console.log(`${installations} random installations, seed ${seed}`);
for (const [outcome, n] of [...outcomes].sort((a, b) => b[1] - a[1]))
  console.log(`  ${outcome}: ${n} (${((100 * n) / installations).toFixed(3)} %)`);
console.log(`  worst balance of a solved point: ${worstBalance.toExponential(1)}`);
console.log(
  `  ${((1000 * spent) / installations).toFixed(0)} µs each, ${Math.round((1000 * installations) / spent)} per second`,
);

/** The reference case written out by hand, with the fixed-point rounds that one would use there. */
function byHand(coolingAir: number): number {
  const W = 0.009029518;
  const [p1, T1, p2] = [92369.08, 300.15, 188869.08];
  const R = gasConstantMass(W);
  const T2s = temperatureAtEntropyFunctionMass(entropyFunctionMass(T1, W) + R * Math.log(p2 / p1), W);
  const h1 = enthalpyMass(T1, W);
  const T2 = temperatureAtEnthalpyMass(h1 + (enthalpyMass(T2s, W) - h1) / 0.72, W);
  const sweptFlow = ((Math.PI / 4) * 0.081 ** 2 * 0.0873 * 4 * 100) / 2;
  let air = 0.16;
  let T3 = 320;
  for (let before = 0; Math.abs(air - before) > 1e-14;) {
    before = air;
    const m = air * (1 + W);
    const UA = 1 / ((0.16 / m) ** 0.6 / 600 + (0.55 / coolingAir) ** 0.6 / 600);
    const coolant = coolingAir * 1007;
    for (let round = 0; round < 3; round++) {
      const charge = (m * (enthalpyMass(T2, W) - enthalpyMass(T3, W))) / (T2 - T3);
      const [low, high] = [Math.min(charge, coolant), Math.max(charge, coolant)];
      T3 = T2 - ((effectivenessCrossflowUnmixed.kernel(UA / low, low / high) * low) / charge) * (T2 - 300.15);
    }
    let p3 = p2 - 6000;
    const k = (6000 * (m / 0.16) ** 1.8 * 1.8 * R) / 2;
    for (let round = 0; round < 8; round++) p3 = p2 - k * (T2 / p2 + T3 / p3);
    const [p4, T4] = [p3 - 1000, T3 + 2];
    const dry = p4 - (p4 * W) / (0.621945 + W);
    air = ((0.95 * (T4 / 325) ** 0.4 * dry) / (287.042 * T4)) * sweptFlow;
  }
  return (air / (0.8 * 14.6)) * (3.6e6 / 0.31);
}

function perSecond(run: (i: number) => unknown): number {
  for (let i = 0; i < 2000; i++) run(i);
  let best = Infinity;
  for (let round = 0; round < 5; round++) {
    const start = performance.now();
    for (let i = 0; i < 2000; i++) run(i);
    best = Math.min(best, performance.now() - start);
  }
  return 2_000_000 / best;
}

const path = numbersOf(readInstallation(referenceCase, speedOfReference));
const hand = perSecond((i) => byHand(0.55 + 1e-9 * i));
const bare = perSecond(() => solvePath(path));
const whole = perSecond(() => operatingPoint(referenceCase, speedOfReference).power);
console.log(
  `the reference case (${(byHand(0.55) / 1000).toFixed(3)} kW by hand, ${cpMass(300, 0).toFixed(2)} J/(kg K) of dry air at 300 K)`,
);
for (const [name, rate] of [
  ['by hand, bare arithmetic', hand],
  ['solved on bare numbers', bare],
  ['operating point with its history', whole],
] as const)
  console.log(`  ${name}: ${Math.round(rate)} per second, ${(hand / rate).toFixed(1)} times the time by hand`);
