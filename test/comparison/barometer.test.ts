import { describe, expect, it } from 'vitest';
import { compare, type CompareOptions } from '../../src/comparison/index.js';
import { readPullsFrom } from '../../src/sweep/index.js';
import { seaLevelPressureFromStation } from '../../src/air/index.js';
import { absolutePressure, length, pressureDifference, temperatureDifference } from '../../src/units/index.js';
import { pullLog, scattered, type PullShape } from '../support/pulls.js';

const compared = (
  [a, b]: readonly [PullShape, PullShape],
  options: CompareOptions = {},
  write: (log: string, side: 0 | 1) => string = (log) => log,
) => {
  const files = [a, b].flatMap((shape, i) =>
    scattered(4, 240, 0.5, 3 + i).map((own, n) => ({
      path: `${i === 0 ? 'stock core' : 'tall core'}/pull ${n + 1}.csv`,
      data: write(
        pullLog({ ...own, ...shape, ...(shape.clock === undefined ? {} : { clock: shape.clock + 300 * n }) }),
        i as 0 | 1,
      ),
    })),
  );
  const day = readPullsFrom(files);
  return compare(day.setup('stock core'), day.setup('tall core'), { engineSpeed: [3500, 6000], ...options });
};

describe('the barometer of two set-ups', () => {
  const station = 941.2;
  const seaLevel = seaLevelPressureFromStation({
    station: absolutePressure(station, 'hPa'),
    elevation: length(640, 'm'),
  });
  const slip = seaLevel.in('hPa');

  it('is asked about where one was reduced to sea level, 640 m below', () => {
    const answer = compared([
      { barometer: station, clock: 36000 },
      { barometer: slip, clock: 38400 },
    ]);
    expect(answer.outcome).toBe('reading suspected');
    expect(answer.headline).toMatch(
      /the barometer is 7\d\.\d hPa higher with “tall core”, as 6\d\d m of height would make, and weather moves it by 7\.\d hPa at most in the 0\.4 hours between\. Is one of the two reduced to sea level\?/,
    );
    expect(compared([{ barometer: slip }, { barometer: station }]).outcome).toBe('reading suspected');
  });

  it('may have moved by 6 hPa in three hours, with a reservation, and not in a quarter of an hour', () => {
    const [first, later] = [
      { barometer: station, clock: 36000 },
      { barometer: station + 6, clock: 36000 + 3 * 3600 },
    ];
    const weather = compared([first, later]);
    expect(weather.objections).toEqual([]);
    expect(weather.rests.join(' ')).toContain('The barometer was 0.6 kPa higher with “tall core”');
    expect(compared([first, { barometer: station + 8, clock: 37800 }]).outcome).toBe('reading suspected');
  });

  it('is believed where the limit says so', () => {
    const limits = { barometerBetweenSetUps: pressureDifference(8, 'kPa') };
    expect(compared([{ barometer: station }, { barometer: slip }], { limits }).objections).toEqual([]);
  });
});

describe('the air before the compressor of two set-ups', () => {
  const breathing = (log: string, side: 0 | 1) =>
    log
      .split('\n')
      .map((line, row) => `${line},${row === 0 ? 'Compressor inlet temp (°C)' : side === 0 ? 19 : 30}`)
      .join('\n');

  it('has a reservation where one breathes hot air again: 12 K above the room against 1 K', () => {
    const answer = compared([{}, {}], {}, breathing);
    expect(answer.rests.join(' ')).toContain(
      'The air before the compressor, above the room, was 11.0 K hotter with “tall core” (12.0 K against 1.0 K; 4.0 K is allowed)',
    );
    expect(answer.findings.join(' ')).toContain('did not have air before the compressor alike');
    const limits = { inletRiseBetweenSetUps: temperatureDifference(15, 'K') };
    expect(compared([{}, {}], { limits }, breathing).rests.join(' ')).not.toContain('before the compressor');
  });

  it('stands for the room where that is not logged, and not where it is', () => {
    const roomless = (log: string, side: 0 | 1) => breathing(log, side).replace('Room temp (°C)', 'Spare');
    const answer = compared([{}, {}], {}, roomless);
    expect(answer.rests.join(' ')).toContain('The air before the compressor was 11.0 K hotter with “tall core”');
    const limits = { roomTemperatureBetweenSetUps: temperatureDifference(12, 'K') };
    expect(compared([{}, {}], { limits }, roomless).findings.join(' ')).not.toContain('intake temperature');
    expect(compared([{}, {}], {}, breathing).findings.join(' ')).not.toContain('intake temperature');
  });
});
