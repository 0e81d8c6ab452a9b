import { describe, expect, it } from 'vitest';
import { sensor, uncertainty } from '../../src/calculation/index.js';
import { compare, planTest, type CompareOptions } from '../../src/comparison/index.js';
import {
  massFlow,
  percent,
  power,
  pressureDifference,
  ratio,
  temperatureDifference,
  torque,
} from '../../src/units/index.js';
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

  it('stand in the band and in what is equivalent speed by speed, as they do in the headline', () => {
    // Nothing was changed, and two meters of 3 % each could hide several kilowatts.
    const [same, again] = alternating(scattered(5, 240, 0.4, 61), scattered(5, 240, 0.4, 62));
    const alike = dayOf({ stock: same, tall: again });
    const meter = (label: string) => sensor('torque', { label, ofReading: percent(3) });
    for (const drift of ['leave in', 'take out'] as const) {
      const asked: CompareOptions = {
        engineSpeed: [3500, 6000],
        worthwhile: power(2, 'kW'),
        loggedPower: 'observed',
        drift,
      };
      const [one, first, second] = ['meter', 'first meter', 'second meter'].map(meter);
      const shared = compare(alike.setup('stock'), alike.setup('tall'), { ...asked, sensors: { torque: one! } });
      const own = compare(alike.setup('stock'), alike.setup('tall'), {
        ...asked,
        sensorsBySetUp: { stock: { torque: first! }, tall: { torque: second! } },
      });
      expect(shared.curve!.ranges.map(({ outcome }) => outcome)).toEqual(['equivalent']);
      expect(own.outcome).toBe('not resolved');
      expect(own.curve!.ranges.map(({ outcome }) => outcome)).toEqual(['not resolved']);
      // At each speed the two meters leave 3 %/√3 · √2 of the power there; the scatter of the pulls is hardly more than nothing beside it.
      const error = own.curve!.standardError.si;
      own.baseline.mean.si.forEach((there, row) => {
        expect(error[row]! / there).toBeGreaterThan((0.03 / Math.sqrt(3)) * Math.SQRT2 * 0.99);
        expect(error[row]! / there).toBeLessThan((0.03 / Math.sqrt(3)) * Math.SQRT2 * 1.05);
      });
      const half = (own.overall!.high.si - own.overall!.low.si) / 2;
      const { low, high } = own.curve!.pointwise;
      const middle = Math.floor(low.length / 2);
      expect((high.si[middle]! - low.si[middle]!) / 2 / half).toBeCloseTo(1, 1);
      expect(own.curve!.method).toContain('Errors of instruments that do not cancel');
      expect(shared.curve!.simultaneous.high.si[0]! - shared.curve!.simultaneous.low.si[0]!).toBeLessThan(
        0.3 * (own.curve!.simultaneous.high.si[0]! - own.curve!.simultaneous.low.si[0]!),
      );
      expect(own.next.join(' ')).toMatch(
        /No number of pulls settles a difference of 2\.0 kW: the instruments that read only one of “stock” and “tall” \(.*meter and .*meter\) alone leave ±[567]\.\d kW\. Read both set-ups with one and the same instrument\./,
      );
      expect(own.next.join(' ')).not.toMatch(/About \d+ pulls/);
      const plan = planTest(own);
      expect(plan.instruments!.hide).toBe(true);
      expect(plan.cases.every(({ pulls }) => pulls === undefined)).toBe(true);
      expect(String(plan)).toContain(
        'so no number of pulls resolves it: read both set-ups with one and the same instrument',
      );
      expect(planTest(shared).instruments).toBeUndefined();
    }
  });

  it('stand in the band also where they move the compared air, and not the torque', () => {
    const own = answer({
      compare: 'air per cycle',
      sensorsBySetUp: {
        stock: { airFlow: sensor('mass flow', { label: 'first', ofReading: percent(2) }) },
        tall: { airFlow: sensor('mass flow', { label: 'second', ofReading: percent(2) }) },
      },
    });
    const there = own.baseline.mean.si[10]!;
    expect(own.curve!.standardError.si[10]! / there).toBeGreaterThan((0.02 / Math.sqrt(3)) * Math.SQRT2 * 0.99);
  });

  it('bear on the causes of a change in air by its meters alone, and not by those of torque', () => {
    const spreads = (sensors: CompareOptions['sensorsBySetUp']): number[] =>
      answer({ compare: 'air per cycle', ...(sensors ? { sensorsBySetUp: sensors } : {}) }).split!.contributions.map(
        ({ part }) => part.standardUncertainty.si,
      );
    const plain = spreads(undefined);
    expect(spreads({ stock: { torque: gauge('first') }, tall: { torque: gauge('second') } })).toEqual(plain);
    const air = (label: string) => sensor('mass flow', { label, ofReading: percent(2) });
    const own = spreads({ stock: { airFlow: air('first') }, tall: { airFlow: air('second') } });
    const level = answer({ compare: 'air per cycle' }).baseline.overall!.si;
    // What pressure and temperature do not explain carries both meters in full.
    expect(own.at(-1)! / level).toBeGreaterThan((0.02 / Math.sqrt(3)) * Math.SQRT2 * 0.99);
    // The others only by the level that they are shares of: about 1 % of themselves.
    const parts = answer({ compare: 'air per cycle' }).split!.contributions.map(({ part }) => Math.abs(part.value.si));
    own.slice(0, -1).forEach((one, i) => expect(one).toBeLessThanOrEqual(Math.hypot(plain[i]!, 0.02 * parts[i]!)));
  });

  it('cost pulls where they leave a part of the worthwhile difference', () => {
    const rough = dayOf({ stock: scattered(3, 240, 5, 63), tall: scattered(3, 240, 5, 64) });
    const fine = (label: string) => sensor('torque', { label, ofReading: percent(0.4) });
    const pullsIn = (more: CompareOptions): number => {
      const { next } = compare(rough.setup('stock'), rough.setup('tall'), {
        engineSpeed: [3500, 6000],
        worthwhile: power(2, 'kW'),
        loggedPower: 'observed',
        ...more,
      });
      return Number(/About (\d+) pulls of each/.exec(next.join(' '))![1]);
    };
    const own = { stock: { torque: fine('first') }, tall: { torque: fine('second') } };
    expect(pullsIn({ sensorsBySetUp: own })).toBeGreaterThan(pullsIn({}) + 1);
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
