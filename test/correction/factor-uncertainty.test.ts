import { describe, expect, it } from 'vitest';
import { measured, sensor, uncertainty } from '../../src/calculation/index.js';
import { correctedPower, correctionFactor } from '../../src/correction/index.js';
import {
  absolutePressure,
  power,
  pressureDifference,
  ratioOf,
  relativeHumidity,
  temperature,
  temperatureDifference,
} from '../../src/units/index.js';

const one = { standardUncertainty: temperatureDifference(1, 'K') };
const barometer = measured('barometer', absolutePressure(98000, 'Pa'), {
  standardUncertainty: pressureDifference(100, 'Pa'),
});
const hygrometer = measured('hygrometer', relativeHumidity(50, '%'), { standardUncertainty: relativeHumidity(3, '%') });
const inlet = measured('inlet probe', temperature(30, '°C'), one);

describe('the uncertainty of a correction factor', () => {
  const factor = correctionFactor({
    standard: 'ISO 1585',
    boost: 'unboosted',
    room: { pressure: barometer, temperature: temperature(30, '°C'), relativeHumidity: hygrometer },
    inletTemperature: inlet,
  });
  const budget = uncertainty(factor);
  const relative = (label: string) =>
    Math.abs(budget.contributions.find((part) => part.label === label)!.contribution.si) / factor.si;

  // u_rel² = (1.2 u_p/p_d)² + (0.6 u_T/T)² + (1.2 p_ws u_RH/p_d)² by JCGM 100, evaluated with mpmath, 50 digits.
  it('comes out of the graph as the law of propagation says for ISO 1585', () => {
    expect(relative('barometer')).toBeCloseTo(0.00125, 5);
    expect(relative('inlet probe')).toBeCloseTo(0.00198, 5);
    expect(relative('hygrometer')).toBeCloseTo(0.00159, 5);
    expect(budget.standard.si / factor.si).toBeCloseTo(0.002833, 6);
  });

  it('is two fifths larger where one thermometer serves inlet and hygrometer: it moves the vapour too', () => {
    const shared = correctionFactor({
      standard: 'ISO 1585',
      boost: 'unboosted',
      room: { pressure: barometer, temperature: inlet, relativeHumidity: hygrometer },
    });
    expect(uncertainty(shared).standard.si / budget.standard.si).toBeCloseTo(1.427, 2);
  });

  it('cancels between two pulls of one day, which share barometer, hygrometer and probe', () => {
    const barometers = sensor('absolute pressure', {
      label: 'barometer',
      standardUncertainty: pressureDifference(100, 'Pa'),
    });
    const at = (pascal: number, kilowatt: number) =>
      correctedPower({
        observedPower: power(kilowatt, 'kW'),
        correctionFactor: correctionFactor({
          standard: 'ISO 1585',
          boost: 'unboosted',
          room: {
            pressure: barometers.reads(absolutePressure(pascal, 'Pa')),
            temperature: inlet,
            relativeHumidity: hygrometer,
          },
        }),
      });
    const [before, after] = [at(98000, 165), at(98050, 168)];
    const gain = uncertainty(ratioOf(after, before)).standard.si;
    expect(uncertainty(before).standard.si / before.si).toBeGreaterThan(0.003);
    expect(gain).toBeLessThan(0.00001);
  });
});
