import type { LogFactor, SplitSensor } from '../../src/statistics/index.js';

interface Pull {
  readonly power: number;
  readonly pressure: number;
  readonly temperature: number;
  readonly vapour: number;
  readonly air: number;
  readonly fuel: number;
}

const pull = (row: readonly [number, number, number, number, number, number]): Pull => {
  const [power, pressure, temperature, vapour, air, fuel] = row;
  return { power, pressure, temperature, vapour, air, fuel };
};
const baseline = (
  [
    [228400, 221300, 331.2, 0.0121, 0.2402, 0.02041],
    [229900, 222100, 331.9, 0.0121, 0.2411, 0.02052],
    [227900, 220600, 332.4, 0.0122, 0.2391, 0.02036],
  ] as const
).map(pull);
const candidate = (
  [
    [238100, 220900, 318.3, 0.0124, 0.2501, 0.02119],
    [239800, 221900, 318.9, 0.0124, 0.2514, 0.02138],
    [237600, 220200, 317.8, 0.0125, 0.2495, 0.02117],
  ] as const
).map(pull);

const parts: readonly [string, (p: Pull) => number][] = [
  ['charge pressure', (p) => Math.log(p.pressure)],
  ['charge temperature', (p) => -Math.log(p.temperature)],
  ['dry fraction', (p) => Math.log1p(-p.vapour)],
  ['volumetric efficiency', (p) => Math.log((p.air * p.temperature) / (p.pressure * (1 - p.vapour)))],
  ['fuel/air', (p) => Math.log(p.fuel / p.air)],
  ['conversion', (p) => Math.log(p.power / p.fuel)],
];
/** The six factors of the worked example of a split, with figures by a separate program. */
export const workedFactors: LogFactor[] = parts.map(([name, log]) => ({
  name,
  baseline: baseline.map(log),
  candidate: candidate.map(log),
}));

const meanInverse = (pulls: readonly Pull[], of: (p: Pull) => number): number =>
  pulls.reduce((sum, p) => sum + 1 / of(p), 0) / pulls.length;
function sensor(
  name: string,
  standardUncertainty: number,
  shared: boolean,
  moves: (pulls: readonly Pull[]) => readonly number[],
): SplitSensor {
  return { name, standardUncertainty, shared, baseline: moves(baseline), candidate: moves(candidate) };
}
/** Its five sensor errors. */
export const workedSensors: SplitSensor[] = [
  sensor('pressure offset', 500, true, (pulls) => {
    const each = meanInverse(pulls, (p) => p.pressure);
    return [each, 0, 0, -each, 0, 0];
  }),
  sensor('temperature offset', 1, true, (pulls) => {
    const each = meanInverse(pulls, (p) => p.temperature);
    return [0, -each, 0, each, 0, 0];
  }),
  sensor('air gain', 0.01, true, () => [0, 0, 0, 1, -1, 0]),
  sensor('power gain', 0.005, true, () => [0, 0, 0, 0, 0, 1]),
  sensor('fuel gain', 0.004, false, () => [0, 0, 0, 0, 1, -1]),
];
