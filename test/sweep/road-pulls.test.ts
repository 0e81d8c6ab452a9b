import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { channel, onGrid, readLog, type Pull } from 'coldside/sweep';

/**
 * Every eighth row of pull 1 and every fifth of pull 7 of a turbocharged passenger car on the road. Source: Marc Weber, Automotive OBD-II Dataset, Karlsruhe
 * Institute of Technology, 2023, DOI 10.35097/1130, CC BY 4.0; cut into pulls and resampled to one row a second.
 */
const quotedRows = `pull,trip,start_s_in_trip,t_s,samples,engine_speed_rpm,manifold_pressure_kPa_abs,air_mass_flow_g_s,intake_air_temp_C,ambient_temp_C,vehicle_speed_km_h,pedal_pct
1,2017-07-05_S_KA_Normal,871.8,0,12,2473.0,220.0,87.28,34.0,29.0,146.17,77.8
1,2017-07-05_S_KA_Normal,871.8,8,11,2733.27,227.55,97.18,34.0,29.0,162.36,78.47
1,2017-07-05_S_KA_Normal,871.8,16,10,2862.5,227.0,101.08,34.0,29.0,169.2,78.8
1,2017-07-05_S_KA_Normal,871.8,24,12,2995.5,228.0,105.02,34.0,29.0,178.0,78.8
1,2017-07-05_S_KA_Normal,871.8,32,11,3108.64,228.0,108.69,34.0,29.0,184.0,78.8
1,2017-07-05_S_KA_Normal,871.8,40,11,3200.27,228.55,109.76,34.0,29.0,189.36,78.15
7,2017-07-06_KA_RT_Normal,2213.14,0,12,2075.33,229.0,72.59,37.0,30.0,122.75,72.2
7,2017-07-06_KA_RT_Normal,2213.14,5,11,2241.55,229.64,78.95,37.0,30.0,132.36,77.6
7,2017-07-06_KA_RT_Normal,2213.14,10,10,2372.6,229.1,83.62,36.0,30.0,140.7,77.92
7,2017-07-06_KA_RT_Normal,2213.14,15,12,2499.0,229.42,87.79,36.0,30.0,148.25,78.0
7,2017-07-06_KA_RT_Normal,2213.14,20,11,2588.36,230.0,91.35,36.0,30.0,153.73,78.0
7,2017-07-06_KA_RT_Normal,2213.14,25,11,2661.82,230.0,93.93,36.0,30.0,157.27,77.2
`;

const whole = fileURLToPath(new URL('../../../shared/data/road-pulls.csv', import.meta.url));

function isRoadPull(pull: Pull): void {
  expect(Object.keys(pull.channels).sort()).toEqual(
    [
      'airFlow',
      'chargeTemperature',
      'engineSpeed',
      'manifoldPressure',
      'roomTemperature',
      'time',
      'vehicleSpeed',
    ].sort(),
  );
  expect(pull.channels.manifoldPressure!.kind).toBe('absolute pressure');
  expect(pull.sources.manifoldPressure).toMatchObject({ unit: 'kPa', header: 'manifold_pressure_kPa_abs' });
  expect(pull.sources.airFlow!.unit).toBe('g/s');
  expect(pull.sources.vehicleSpeed!.unit).toBe('km/h');
  expect(pull.unused.map(({ header }) => header)).toEqual(['trip', 'start_s_in_trip', 'samples', 'pedal_pct']);
}

describe('pulls measured on the road', () => {
  it('are read from their quoted rows: kinds, units and values', () => {
    const pulls = readLog(quotedRows, { file: 'road-pulls.csv' });
    expect(pulls.map(({ name }) => name)).toEqual(['road-pulls.csv, pull 1', 'road-pulls.csv, pull 7']);
    const [first] = pulls as [Pull];
    isRoadPull(first);
    expect(first.channels.engineSpeed!.in('rpm')[0]).toBeCloseTo(2473, 9);
    expect(first.channels.manifoldPressure!.in('kPa')[0]).toBeCloseTo(220, 9);
    expect(first.channels.airFlow!.in('g/s')[0]).toBeCloseTo(87.28, 9);
    expect(first.channels.chargeTemperature!.in('°C')[0]).toBeCloseTo(34, 9);
    expect(first.channels.roomTemperature!.in('°C')[0]).toBeCloseTo(29, 9);
    expect(first.channels.vehicleSpeed!.in('km/h')[0]).toBeCloseTo(146.17, 9);
  });

  it('make the reader ask where the intake sensor sits, because it does not warm with boost', () => {
    const [pull] = readLog(quotedRows);
    expect(pull!.questions).toMatchObject([{ code: 'before or after the compressor', role: 'chargeTemperature' }]);
    const [told] = readLog(quotedRows, { channels: { intakeTemperature: channel('intake_air_temp_C') } });
    expect(told!.channels.intakeTemperature!.in('°C')[0]).toBeCloseTo(34, 9);
    expect(told!.questions).toEqual([]);
  });

  it.skipIf(!existsSync(whole))('are all 85 in ../shared/data/road-pulls.csv, with 1524 rows', () => {
    const pulls = readLog(readFileSync(whole), { file: 'road-pulls.csv' });
    expect(pulls).toHaveLength(85);
    expect(pulls.reduce((sum, { rows }) => sum + rows, 0)).toBe(1524);
    for (const pull of pulls) {
      isRoadPull(pull);
      expect(pull.blankCells).toBe(0);
    }
    // Its README: 1400 to 3660 rpm, up to 236 kPa absolute and 125 g/s.
    const most = (pick: (pull: Pull) => Float64Array): number => Math.max(...pulls.flatMap((pull) => [...pick(pull)]));
    expect(most(({ channels }) => channels.engineSpeed!.in('rpm'))).toBeCloseTo(3660, -1);
    expect(most(({ channels }) => channels.manifoldPressure!.in('kPa'))).toBeCloseTo(236, 0);
    expect(most(({ channels }) => channels.airFlow!.in('g/s'))).toBeCloseTo(125, 0);
  });

  it.skipIf(!existsSync(whole))(
    'are asked about in ../shared/data/road-pulls.csv wherever they are long enough to tell',
    () => {
      const pulls = readLog(readFileSync(whole), { file: 'road-pulls.csv' });
      const asked = pulls.filter(({ questions }) =>
        questions.some(({ code }) => code === 'before or after the compressor'),
      );
      const telling = pulls.filter(
        ({ rows, channels }) => rows >= 5 && Math.max(...channels.manifoldPressure!.in('kPa')) > 142,
      );
      expect(asked.length).toBeGreaterThan(0.95 * telling.length);
      expect(telling.length).toBeGreaterThan(70);
    },
  );

  it.skipIf(!existsSync(whole))(
    'go on a grid from ../shared/data/road-pulls.csv: air per cycle of 4.25 g between 2400 and 2800 rpm',
    () => {
      const pulls = readLog(readFileSync(whole), { file: 'road-pulls.csv' });
      const cycles = pulls.flatMap((pull) => {
        const { engineSpeed, channels } = onGrid(pull, { from: 2400, to: 2800, step: 50, bandwidth: 150 });
        const masses = engineSpeed.si
          .map((speed, at) => (channels.airFlow!.si[at]! * 2) / speed)
          .filter((mass) => !Number.isNaN(mass));
        return masses.length < 9 ? [] : [masses.reduce((sum, mass) => sum + mass, 0) / masses.length];
      });
      expect(cycles.length).toBeGreaterThan(15);
      // Its README gives 4.25 g with 2.0 % from pull to pull, first seconds left out; here they are in.
      expect((1000 * cycles.reduce((sum, mass) => sum + mass, 0)) / cycles.length / 4.25).toBeCloseTo(1, 1);
    },
  );
});
