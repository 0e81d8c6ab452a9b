import { describe, expect, it } from 'vitest';
import { compare, type CompareOptions, type Comparison } from '../../src/comparison/index.js';
import { lagOfStep, readLog, readPullsFrom } from '../../src/sweep/index.js';
import { CalculationError, temperature, time } from '../../src/units/index.js';
import { alternating, dayOf, pullLog, scattered, type PullShape } from '../support/pulls.js';

/** The charge warms by 0.02 K in each row of 20 rpm, 0.001 K/rpm, whatever the ramp. */
const KELVIN_PER_ROW = 0.02;

/** A pull of rows that last so long, read by a sensor of first order that lags: on a ramp of temperature it hangs back by tau dT/dt. */
function lagging(seconds: number, constant: number): PullShape {
  const slope = KELVIN_PER_ROW / seconds;
  return { seconds, warming: (t) => -constant * slope * (1 - Math.exp(-t / constant)) };
}

const range: CompareOptions = { engineSpeed: [4000, 6000] };

/** Two sides alike but for the ramp: 400 rpm/s, and 400 or 267 rpm/s. */
function sides(seconds: number, constant = 3): ReturnType<typeof dayOf> {
  const [a, b] = alternating(
    scattered(4, 240, 0.3, 1, lagging(0.05, constant)),
    scattered(4, 240, 0.3, 2, lagging(seconds, constant)),
  );
  return dayOf({ 'stock core': a, 'tall core': b });
}

function comparison(day: ReturnType<typeof dayOf>, options: CompareOptions = {}): Comparison {
  return compare(day.setup('stock core'), day.setup('tall core'), { ...range, ...options });
}

const share = ({ split }: Comparison): number =>
  split!.contributions.find(({ factor }) => factor === 'charge temperature')!.percent;

describe('the lag of the charge temperature sensor', () => {
  it('cancels where both sides ramp alike, and is left in and said to be', () => {
    const answer = comparison(sides(0.05));
    expect(share(answer)).toBeCloseTo(0, 6);
    expect(answer.rests.join(' ')).toContain(
      "Lag of the charge temperature's sensor is left in: both sides ramp alike (400 rpm/s and 400 rpm/s, up), so it cancels to first order.",
    );
    expect(answer.findings.join(' ')).not.toContain('lag');
  });

  it('feigns a change of charge temperature where the ramps differ, by as much as is told when the time constant is given', () => {
    const unlike = sides(0.075);
    const answer = comparison(unlike, { sensorLags: { chargeTemperature: time(3, 's') } });
    expect(answer.outcome).toBe('cannot be compared');
    // A first-order sensor is off by tau dT/dt as shown. From 2.5 to 7.5 s that is 3 s * 0.4 K/s * 0.788, and on the slower ramp, from
    // 3.75 to 11.25 s, 3 s * 0.267 K/s * 0.895: 0.23 K hotter of 310 K, and nothing is hotter.
    const told = answer.findings.find((line) => line.includes('does not cancel'))!;
    expect(told).toMatch(
      /the ramps differ \(267 rpm\/s up against 400 rpm\/s up\): a time constant of 3\.00 s makes the charge of “tall core” look 0\.23 K hotter than it was against “stock core”, and puts −0\.07 % \(−0\.1 kW\) into the part of charge temperature\.$/,
    );
    expect(share(answer)).toBeCloseTo((-100 * 0.23) / 310, 2);
    const corrected = comparison(unlike, {
      prepare: { lag: { chargeTemperature: { timeConstant: time(3, 's'), window: time(0.85, 's') } } },
    });
    expect(Math.abs(share(corrected))).toBeLessThan(0.005);
  });

  it('is told for each second, and asked for, where the time constant is not given', () => {
    const told = comparison(sides(0.075)).findings.find((line) => line.includes('does not cancel'))!;
    expect(told).toMatch(/each second of time constant makes the charge of “tall core” look 0\.08 K hotter/);
    expect(told).toContain("Give sensorLags: { chargeTemperature: time(…, 's') }, from a recorded step (lagOfStep)");
  });

  it('does not all cancel on one ramp, where a core that soaks up less warms the charge more slowly', () => {
    const slower = (by: number): Comparison => {
      const [a, b] = alternating(scattered(4, 240, 0.3, 1), scattered(4, 240, 0.3, 2, { warming: (t) => -by * t }));
      return comparison(dayOf({ 'stock core': a, 'tall core': b }));
    };
    // 0.35 K/s more slowly: each second of lag shows it 0.35 K of 308 K hotter, 0.11 %.
    expect(slower(0.35).rests.join(' ')).toContain('cancels to first order.');
    expect(slower(0.35).findings.join(' ')).toMatch(
      /What lag leaves on equal ramps, since the charge does not warm equally fast: each second of time constant makes the charge of “tall core” look 0\.35 K hotter than it was against “stock core”, and puts −0\.11 % \(−0\.1 kW\) into the part/,
    );
    expect(slower(0.2).findings.join(' ')).not.toContain('What lag leaves');
  });

  it('may come from a recorded step, as lagOfStep finds it', () => {
    const rows = Array.from(
      { length: 400 },
      (_, i) => `${i * 0.05},3000,${(20 + 60 * Math.exp(-Math.max(0, i * 0.05 - 2) / 0.8)).toFixed(3)}`,
    );
    const [step] = readLog(`Time (s),Engine speed (rpm),Charge temp (°C)\n${rows.join('\n')}`, { file: 'step.csv' });
    const found = lagOfStep(step!, 'chargeTemperature');
    const answer = comparison(sides(0.05), { sensorLags: { chargeTemperature: found } });
    expect(answer.findings.join(' ')).toMatch(
      /What lag leaves on equal ramps, since the charge does not warm equally fast: a time constant of 0\.8\d s makes the charge/,
    );
  });

  it('is found by the up and down ramps of one set-up, and then counts', () => {
    const constant = 0.9;
    // Up and down at 400 rpm/s under the same load: the charge follows engine speed, 0.001 K/rpm, read late.
    const upAndDown = (torque: number): string => {
      const lines = ['Time (s),Engine speed (rpm),Torque (N m),Boost (kPa),Charge temp (°C),Barometer (hPa)'];
      let shown = 35;
      for (let i = 0; i <= 350; i++) {
        const speed = i <= 175 ? 3000 + 20 * i : 6500 - 20 * (i - 175);
        const charge = 35 + 0.01 * (speed - 3000);
        shown += ((charge - shown) * 0.05) / constant;
        lines.push([i * 0.05, speed, torque - 4 * (speed / 1000 - 5) ** 2, 110, shown.toFixed(4), 941].join(','));
      }
      return lines.join('\n');
    };
    const both = readPullsFrom(
      [240, 240.6, 239.7, 244, 244.5, 243.8].map((torque, i) => {
        const setup = i < 3 ? 'stock core' : 'tall core';
        return { path: `${setup}/pull ${i}.csv`, setup, data: upAndDown(torque) };
      }),
    );
    const answer = comparison(both);
    const found = answer.findings.filter((line) => line.includes('up and down ramps'));
    expect(found).toHaveLength(2);
    const lag = Number(/lags by (\d\.\d\d) s/.exec(found[0]!)![1]);
    expect(lag).toBeGreaterThan(0.9 * constant);
    expect(lag).toBeLessThan(1.1 * constant);
    expect(found[0]).toMatch(
      /By 3 pairs of up and down ramps of “stock core” the sensor of the charge temperature lags/,
    );
  });

  it('is not looked for in a pull that coasts down, where the load and so the temperature is another', () => {
    const coasting = (torque: number): string => {
      const [header, ...rows] = pullLog({ torque }).split('\n');
      const down = rows.toReversed().map((row, i) => {
        const cells = row.split(',');
        // Hotter by 0.3 K, which would look like a lag.
        const charge = String(Number(cells[4]) + 0.3);
        return cells
          .with(0, String(8.75 + 0.05 * (i + 1)))
          .with(2, '-30')
          .with(3, '-60')
          .with(4, charge)
          .join(',');
      });
      return [header, ...rows, ...down].join('\n');
    };
    const both = readPullsFrom(
      [240, 240.6, 244, 244.5].map((torque, i) => {
        const setup = i < 2 ? 'stock core' : 'tall core';
        return { path: `${setup}/pull ${i}.csv`, setup, data: coasting(torque) };
      }),
    );
    expect(comparison(both).findings.join(' ')).not.toContain('ramps of');
  });

  it('is no longer spoken of once it was taken off both sides', () => {
    const lag = { chargeTemperature: { timeConstant: time(3, 's'), window: time(0.85, 's') } };
    const answer = comparison(sides(0.075), { prepare: { lag }, limits: { rampRate: undefined as never } });
    expect(answer.findings.join(' ')).not.toContain('does not cancel');
    expect(Math.abs(share(answer))).toBeLessThan(0.01);
  });

  it('does not cancel where it was taken off one side alone, whose sensor was another one', () => {
    const lag = { chargeTemperature: { timeConstant: time(3, 's'), window: time(0.85, 's') } };
    const answer = comparison(sides(0.05), {
      prepareBySetUp: { 'tall core': { lag } },
      sensorLags: { chargeTemperature: time(3, 's') },
    });
    // 3 s * 0.4 K/s * 0.788 is left in the other side: it looks colder than it was.
    expect(answer.findings.join(' ')).toContain(
      'since it was taken off on one side alone: a time constant of 3.00 s makes the charge of “tall core” look 0.95 K hotter',
    );
    expect(share(answer)).toBeCloseTo((-100 * 0.95) / 310, 1);
  });

  it('must be a time for a channel there is', () => {
    const wrong = (sensorLags: unknown) => () => comparison(sides(0.05), { sensorLags: sensorLags as never });
    expect(wrong({ chargeTemperature: temperature(1, '°C') })).toThrow(CalculationError);
    expect(wrong({ chargeTemperature: 0.8 })).toThrow(/sensorLags\.chargeTemperature must be a time above zero/);
    expect(wrong({ charge: time(1, 's') })).toThrow(/sensorLags\.charge must be for one of time/);
    expect(wrong(null)).toThrow(/sensorLags must be an object/);
  });
});
