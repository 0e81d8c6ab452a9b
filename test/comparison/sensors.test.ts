import { describe, expect, it } from 'vitest';
import { sensor, uncertainty } from '../../src/calculation/index.js';
import { compare, type CompareOptions } from '../../src/comparison/index.js';
import { massFlow, percent, pressureDifference, ratio, temperatureDifference, torque } from '../../src/units/index.js';
import { alternating, dayOf, scattered } from '../support/pulls.js';

const [a, b] = alternating(
  scattered(5, 240, 0.8, 51, { airFlow: (speed) => 30 * speed }),
  scattered(5, 247, 0.8, 52, { charge: 26, airFlow: (speed) => 30.8 * speed }),
);
const day = dayOf({ stock: a, tall: b });
const answer = (more: CompareOptions = {}) =>
  compare(day.setup('stock'), day.setup('tall'), {
    engineSpeed: [3500, 6000],
    loggedPower: 'observed',
    drift: 'leave in',
    ...more,
  });
const gauge = (label: string) => sensor('torque', { label, ofReading: percent(1) });
const width = ({ overall }: ReturnType<typeof answer>): number => overall!.high.si - overall!.low.si;

describe('instruments in a comparison', () => {
  it('cancel but for their share of the difference where they read both set-ups', () => {
    const shared = answer({ sensors: { torque: gauge('torque meter') } });
    const { contributions } = uncertainty(shared.overall!.value);
    const meter = contributions.find((one) => one.label.includes('torque meter'))!;
    // 1 % of the difference, evenly distributed: a 1 % half width is 0.577 % standard.
    expect(Math.abs(meter.contribution.si) / shared.overall!.value.si).toBeCloseTo(0.01 / Math.sqrt(3), 6);
    expect(width(shared) / width(answer())).toBeCloseTo(1, 2);
  });

  it('stand in full where each set-up had its own', () => {
    const own = answer({
      sensorsBySetUp: { stock: { torque: gauge('first meter') }, tall: { torque: gauge('second meter') } },
    });
    const { contributions } = uncertainty(own.overall!.value);
    const meters = contributions.filter((one) => one.label.includes('meter'));
    expect(meters).toHaveLength(2);
    const stock = own.baseline.overall!.si;
    expect(Math.hypot(...meters.map((one) => one.contribution.si)) / stock).toBeCloseTo(
      (0.01 / Math.sqrt(3)) * Math.SQRT2,
      3,
    );
    expect(width(own)).toBeGreaterThan(2 * width(answer()));
  });

  it('never narrow the interval below what the scatter of the pulls alone gives', () => {
    const exact = answer({
      sensors: { torque: sensor('torque', { label: 'fine', standardUncertainty: torque(1e-6, 'N·m') }) },
    });
    expect(width(exact)).toBeGreaterThanOrEqual(width(answer()) * (1 - 1e-9));
  });

  it('widen the causes they bear on: a pressure error moves pressure and breathing against each other', () => {
    const plain = answer().split!.contributions;
    const pressure = sensor('gauge pressure', { label: 'boost gauge', halfWidth: pressureDifference(3, 'kPa') });
    const other = sensor('gauge pressure', { label: 'other gauge', halfWidth: pressureDifference(3, 'kPa') });
    const split = answer({ sensorsBySetUp: { stock: { boost: pressure }, tall: { boost: other } } }).split!
      .contributions;
    const spread = (list: typeof split, factor: string): number =>
      list.find((one) => one.factor === factor)!.part.standardUncertainty.si;
    expect(spread(split, 'charge pressure')).toBeGreaterThan(2 * spread(plain, 'charge pressure'));
    expect(spread(split, 'volumetric efficiency')).toBeGreaterThan(2 * spread(plain, 'volumetric efficiency'));
    expect(spread(split, 'charge temperature')).toBeCloseTo(spread(plain, 'charge temperature'), 6);
  });

  it('matter less for a temperature that one probe read in both', () => {
    const probe = sensor('temperature', { label: 'probe', halfWidth: temperatureDifference(2, 'K') });
    const part = (list: ReturnType<typeof answer>): number =>
      list.split!.contributions.find((one) => one.factor === 'charge temperature')!.part.standardUncertainty.si;
    const shared = part(answer({ sensors: { chargeTemperature: probe } }));
    const apart = part(
      answer({
        sensorsBySetUp: {
          stock: { chargeTemperature: probe },
          tall: { chargeTemperature: sensor('temperature', { label: 'b', halfWidth: temperatureDifference(2, 'K') }) },
        },
      }),
    );
    expect(shared).toBeLessThan(0.25 * apart);
  });

  it('are refused for a channel of another kind, or one that is not there', () => {
    const air = sensor('mass flow', { label: 'air meter', standardUncertainty: massFlow(1, 'g/s') });
    expect(() => answer({ sensors: { torque: air as never } })).toThrow(
      /sensors\.torque must be a sensor of torque, got one of mass flow/,
    );
    expect(() => answer({ sensors: { torq: air } as never })).toThrow(/sensors\.torq must be for one of the channels/);
    expect(() => answer({ setUps: 0 })).toThrow(/setUps must be a whole number from 1/);
    expect(ratio(1).si).toBe(1);
  });
});
