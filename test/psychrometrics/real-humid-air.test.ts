import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compressibilityFactor, moistAirDensityFromHumidityRatio, realGasDensity } from '../../src/air/index.js';
import {
  dewPoint,
  dewPointInMoistAir,
  humidAir,
  humidityRatioFromVapourPressure,
  moistAirDensityCipm2007,
  vapourPressureFromHumidityRatio,
  vapourPressureFromRelativeHumidity,
  vapourPressureFromRelativeHumidityInMoistAir,
  wetBulb,
  wetBulbInMoistAir,
} from '../../src/psychrometrics/index.js';
import { absolutePressure, humidityRatio, relativeHumidity, temperature } from '../../src/units/index.js';

/** Reference states; the file names the equations they come from and the program that evaluated them. */
const {
  density,
  dry,
  wetBulb: bulbs,
  room,
} = JSON.parse(readFileSync(new URL('../reference/real-humid-air.json', import.meta.url), 'utf8')) as Record<
  'density' | 'dry' | 'wetBulb' | 'room',
  { rows: readonly number[][] }
>;

const kelvin = (t: number): number => t + 273.15;

/** The largest of a measure over rows, and the row. */
function largest(rows: readonly number[][], of: (...row: number[]) => number): { difference: number; where: string } {
  let worst = { difference: -1, where: 'no row' };
  for (const row of rows) {
    const difference = Math.abs(of(...row));
    if (!(difference <= worst.difference)) worst = { difference, where: row.join(', ') };
  }
  return worst;
}

describe('density against real-gas equations, -40 to 60 °C and 60 to 400 kPa', () => {
  it('of humid air is within 0.03 % of Herrmann and others 2009, and in fact within 0.006 %', () => {
    const { difference, where } = largest(
      density.rows,
      (t, p, W, rho) => realGasDensity.kernel(kelvin(t!), p!, W!, 287.042) / rho! - 1,
    );
    expect(difference, where).toBeLessThan(6e-5);
  });

  it('of dry air is within 0.03 % of Lemmon and others 2000, and in fact within 0.006 %', () => {
    const { difference, where } = largest(
      dry.rows,
      (t, p, _Z, rho) => realGasDensity.kernel(kelvin(t!), p!, 0, 287.042) / rho! - 1,
    );
    expect(difference, where).toBeLessThan(6e-5);
  });

  it('has the compressibility factor of Lemmon and others 2000 within 5 parts in 10⁵', () => {
    const { difference, where } = largest(dry.rows, (t, p, Z) => compressibilityFactor.kernel(kelvin(t!), p!, 0) - Z!);
    expect(difference, where).toBeLessThan(5e-5);
  });

  it('would be off by half a per cent as a perfect gas', () => {
    const { difference } = largest(
      density.rows,
      (t, p, W, rho) => moistAirDensityFromHumidityRatio.kernel(kelvin(t!), p!, W!, 287.042) / rho! - 1,
    );
    expect(difference).toBeGreaterThan(0.004);
    expect(difference).toBeLessThan(0.006);
  });
});

describe('density in a room, 15 to 27 °C and 600 to 1100 hPa', () => {
  it('by CIPM-2007 is within 1 part in 10⁴ of Herrmann and others 2009', () => {
    const { difference, where } = largest(
      room.rows,
      (t, p, RH, rho) => moistAirDensityCipm2007.kernel(kelvin(t!), p!, RH!, 0.0004) / rho! - 1,
    );
    expect(difference, where).toBeLessThan(1e-4);
  });

  it('by the second virial coefficient is within 5 parts in 10⁵ of CIPM-2007', () => {
    const { difference, where } = largest(room.rows, (t, p, RH) => {
      const pv = vapourPressureFromRelativeHumidityInMoistAir.kernel(kelvin(t!), p!, RH!);
      const W = humidityRatioFromVapourPressure.kernel(p!, pv);
      return (
        realGasDensity.kernel(kelvin(t!), p!, W, 287.042) /
          moistAirDensityCipm2007.kernel(kelvin(t!), p!, RH!, 0.0004) -
        1
      );
    });
    expect(difference, where).toBeLessThan(5e-5);
  });

  it('carries a note outside the range of CIPM-2007', () => {
    const cold = { temperature: temperature(5, '°C'), pressure: absolutePressure(941, 'hPa') };
    expect(moistAirDensityCipm2007({ ...cold, relativeHumidity: relativeHumidity(45, '%') }).notes).toHaveLength(1);
  });
});

/** Rows whose wet bulb or dew point is not within a kelvin of freezing, where it depends on what the wick or mirror carries. */
const away = (rows: readonly number[][], column: number): readonly number[][] =>
  rows.filter((row) => Math.abs(row[column]! - 273.15) > 1);

describe('wet bulb and dew point against Herrmann and others 2009, below 110 kPa and away from freezing', () => {
  const dewRows = away(bulbs.rows, 4);
  const wetRows = away(bulbs.rows, 5);

  it('compares at many states', () => {
    expect(dewRows.length).toBeGreaterThan(120);
    expect(wetRows.length).toBeGreaterThan(120);
  });

  it('gives the dew point of a relative humidity within 0.05 K by the handbook, within 0.01 K in moist air', () => {
    const handbook = largest(
      dewRows,
      (t, _p, RH, _W, Td) => dewPoint.kernel(vapourPressureFromRelativeHumidity.kernel(kelvin(t!), RH!)) - Td!,
    );
    const inAir = largest(
      dewRows,
      (t, p, RH, _W, Td) =>
        dewPointInMoistAir.kernel(p!, vapourPressureFromRelativeHumidityInMoistAir.kernel(kelvin(t!), p!, RH!)) - Td!,
    );
    expect(handbook.difference, handbook.where).toBeLessThan(0.05);
    expect(inAir.difference, inAir.where).toBeLessThan(0.01);
  });

  it('gives the wet bulb of a relative humidity within 0.05 K by the handbook and in moist air', () => {
    const handbook = largest(wetRows, (t, p, RH, _W, _Td, Tw) => {
      const pv = vapourPressureFromRelativeHumidity.kernel(kelvin(t!), RH!);
      return wetBulb.kernel(kelvin(t!), p!, humidityRatioFromVapourPressure.kernel(p!, pv)) - Tw!;
    });
    const inAir = largest(wetRows, (t, p, RH, _W, _Td, Tw) => {
      const pv = vapourPressureFromRelativeHumidityInMoistAir.kernel(kelvin(t!), p!, RH!);
      return wetBulbInMoistAir.kernel(kelvin(t!), p!, humidityRatioFromVapourPressure.kernel(p!, pv)) - Tw!;
    });
    expect(handbook.difference, handbook.where).toBeLessThan(0.05);
    expect(inAir.difference, inAir.where).toBeLessThan(0.02);
  });

  it('needs the enhancement factor for 0.05 K where the humidity ratio is given', () => {
    const vapour = (p: number, W: number): number => vapourPressureFromHumidityRatio.kernel(p, W);
    const unsaturated = wetRows.filter(([, , RH]) => RH! < 1);
    const dew = largest(dewRows, (_t, p, _RH, W, Td) => dewPointInMoistAir.kernel(p!, vapour(p!, W!)) - Td!);
    const wet = largest(unsaturated, (t, p, _RH, W, _Td, Tw) => wetBulbInMoistAir.kernel(kelvin(t!), p!, W!) - Tw!);
    const dewOfHandbook = largest(dewRows, (_t, p, _RH, W, Td) => dewPoint.kernel(vapour(p!, W!)) - Td!);
    expect(dew.difference, dew.where).toBeLessThan(0.01);
    expect(wet.difference, wet.where).toBeLessThan(0.02);
    expect(dewOfHandbook.difference).toBeGreaterThan(0.05);
    expect(dewOfHandbook.difference).toBeLessThan(0.15);
  });

  it('reaches the same through a state of humid air as a real gas', () => {
    for (const [t, p, RH, W, Td, Tw] of wetRows.slice(0, 20)) {
      const air = humidAir(
        {
          temperature: temperature(t!, '°C'),
          pressure: absolutePressure(p!, 'Pa'),
          relativeHumidity: relativeHumidity(RH!, '1'),
        },
        { model: 'real gas' },
      );
      expect(Math.abs(air.humidityRatio.si / W! - 1)).toBeLessThan(6e-4);
      expect(Math.abs(air.dewPoint.si - Td!)).toBeLessThan(0.05);
      expect(Math.abs(air.wetBulb.si - Tw!)).toBeLessThan(0.05);
    }
  });
});

describe('a real gas', () => {
  it('is what humid air becomes by choice, with its own density and dry density', () => {
    const room = {
      temperature: temperature(18, '°C'),
      pressure: absolutePressure(941, 'hPa'),
      humidityRatio: humidityRatio(6.2, 'g/kg'),
    };
    const [perfect, real] = [humidAir(room), humidAir(room, { model: 'real gas' })];
    expect([perfect.model, real.model]).toEqual(['perfect gas', 'real gas']);
    expect(real.density.si / perfect.density.si - 1).toBeCloseTo(3.7e-4, 5);
    expect(real.dryDensity.si * 1.0062).toBeCloseTo(real.density.si, 12);
    expect(perfect.dewPoint.si - real.dewPoint.si).toBeCloseTo(0.052, 3);
  });
});
