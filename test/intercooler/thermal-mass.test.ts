import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sensor, uncertainty } from '../../src/calculation/index.js';
import {
  chargeTemperatureFromWall,
  coolDownTemperature,
  coreTimeConstant,
  effectiveness,
  heatSoak,
  recoveryTime,
  settledCore,
  soakedChargeTemperature,
  soakingCore,
  steadyWallTemperature,
  wallTemperatureAfter,
} from '../../src/intercooler/index.js';
import {
  column,
  heatCapacity,
  heatCapacityRate,
  ratio,
  temperature,
  temperatureDifference,
  time,
  type Quantity,
} from '../../src/units/index.js';

const flows = {
  hotInlet: temperature(150, '°C'),
  chargeCapacityRate: heatCapacityRate(202, 'W/K'),
  chargeTransferUnits: ratio(2),
  coolantInlet: temperature(30, '°C'),
  coolantCapacityRate: heatCapacityRate(500, 'W/K'),
  coolantTransferUnits: ratio(1),
};
const metal = heatCapacity(6 * 897, 'J/K');
const cold = temperature(30, '°C');
const seconds = (value: number): Quantity<'time'> => time(value, 's');
const outletAfter = (cells: number, t: number): number =>
  soakingCore({ heatCapacity: metal, temperature: cold, cells })
    .after(seconds(t), flows)
    .core.chargeOutlet(flows)
    .in('°C');

const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const anyFlows = fc.tuple(
  number(200, 450),
  number(0, 2000),
  number(0, 8),
  number(200, 450),
  number(0, 2000),
  number(0, 8),
);
const quantities = ([T1, Ch, Nh, Tc, Cc, Nc]: readonly number[]): typeof flows => ({
  hotInlet: temperature(T1!, 'K'),
  chargeCapacityRate: heatCapacityRate(Ch!, 'W/K'),
  chargeTransferUnits: ratio(Nh!),
  coolantInlet: temperature(Tc!, 'K'),
  coolantCapacityRate: heatCapacityRate(Cc!, 'W/K'),
  coolantTransferUnits: ratio(Nc!),
});

describe('a core of one temperature', () => {
  it('has the time constant, the end and the way there that 50 digits give', () => {
    const given = { heatCapacity: metal, ...flows };
    const { hotInlet: _hot, coolantInlet: _cold, ...rates } = given;
    expect(coreTimeConstant(rates).in('s')).toBeCloseTo(10.9675, 5);
    const settled = steadyWallTemperature(flows);
    expect(settled.in('°C')).toBeCloseTo(72.71145, 5);
    const outlet = chargeTemperatureFromWall({
      hotInlet: flows.hotInlet,
      wallTemperature: settled,
      chargeTransferUnits: flows.chargeTransferUnits,
    });
    expect(outlet.in('°C')).toBeCloseTo(83.17132, 5);
    const after = wallTemperatureAfter({ ...given, startTemperature: cold, time: seconds(10) });
    expect(after.in('°C')).toBeCloseTo(55.54971, 5);
  });

  it('is not what a real core settles at: 4.3 K too warm at the end of a long pull', () => {
    expect(outletAfter(1, 1000) - crossflowOutlet()).toBeCloseTo(4.3, 1);
  });

  it('comes back in the time that recovery takes, and no pull brings it to the coolant itself', () => {
    const rest = {
      timeConstant: seconds(45),
      startTemperature: temperature(60, '°C'),
      coolantTemperature: temperature(18, '°C'),
    };
    const needed = recoveryTime({ ...rest, wantedTemperature: temperature(20, '°C') });
    expect(coolDownTemperature({ ...rest, time: needed }).in('°C')).toBeCloseTo(20, 10);
    for (const wanted of [18, 61, 10]) {
      expect(() => recoveryTime({ ...rest, wantedTemperature: temperature(wanted, '°C') })).toThrow(/must lie between/);
    }
  });

  it('refuses a core past which nothing flows', () => {
    const still = { ...flows, chargeCapacityRate: heatCapacityRate(0, 'W/K'), coolantTransferUnits: ratio(0) };
    expect(() => steadyWallTemperature(still)).toThrow(/something must flow/);
    expect(() => settledCore({ heatCapacity: metal, flows: still })).toThrow(/above zero on one side/);
  });
});

/** Charge behind the settled core by the exact effectiveness: conductances of both sides in series. */
function crossflowOutlet(): number {
  const UA = 1 / (1 / (202 * 2) + 1 / (500 * 1));
  return 150 - 120 * effectiveness.crossflowUnmixed.kernel(UA / 202, 202 / 500);
}

describe('a core in cells', () => {
  // Ten and four cells along each flow integrated numerically (scipy DOP853), one wall in closed form.
  it.each([
    [10, [46.2402, 50.8491, 56.7528, 64.2452, 72.8519, 78.0448, 78.9215]],
    [4, [46.2402, 50.9243, 56.9061, 64.4662, 73.1017, 78.2869, 79.1678]],
    [1, [46.2402, 52.3965, 59.7614, 68.3322, 77.2089, 82.2087, 83.1707]],
  ] as const)('of %i along each flow warms the charge as the table says', (cells, table) => {
    [0, 2, 5, 10, 20, 40, 120].forEach((t, i) => expect(outletAfter(cells, t)).toBeCloseTo(table[i]!, 4));
  });

  it('is at most 0.25 K warmer with four cells along each flow than with ten', () => {
    for (const t of [0, 1, 2, 5, 10, 15, 20, 30, 40, 80, 120]) {
      const difference = outletAfter(4, t) - outletAfter(10, t);
      expect(difference).toBeGreaterThanOrEqual(-1e-9);
      expect(difference).toBeLessThan(0.255);
    }
  });

  it('is right at both ends: the uniform wall at the first moment, the exact effectiveness at the last', () => {
    for (const cells of [1, 4, 10, 20, 40]) expect(outletAfter(cells, 0)).toBeCloseTo(30 + 120 * Math.exp(-2), 10);
    const ends = [5, 10, 20, 40].map((cells) => outletAfter(cells, 3000) - crossflowOutlet());
    expect(crossflowOutlet()).toBeCloseTo(78.874, 3);
    expect(ends[1]).toBeLessThan(0.05);
    // The rest falls with the square of the number of cells, as it must where only the cutting is at fault.
    expect(ends[0]! / ends[1]!).toBeCloseTo(4, 1);
    expect(ends[1]! / ends[2]!).toBeCloseTo(4, 1);
    expect(ends[2]! / ends[3]!).toBeCloseTo(4, 1);
  });

  it('gives in one step what it gives in a thousand', () => {
    let core = soakingCore({ heatCapacity: metal, temperature: cold });
    for (let i = 0; i < 1000; i++) core = core.after(seconds(0.02), flows).core;
    expect(core.chargeOutlet(flows).in('°C')).toBeCloseTo(outletAfter(10, 20), 9);
  });

  it('balances to a billionth for any flows, any time and any start: heat taken is heat given on and heat stored', () => {
    fc.assert(
      fc.property(
        anyFlows,
        anyFlows,
        number(200, 450),
        number(-6, 5),
        fc.integer({ min: 1, max: 12 }),
        (first, second, T0, log, cells) => {
          const start = soakingCore({ heatCapacity: metal, temperature: temperature(T0, 'K'), cells });
          const { core } = start.after(seconds(7), quantities(first));
          const duration = 10 ** log;
          fc.pre(duration <= 36000);
          const step = core.after(seconds(duration), quantities(second));
          const [taken, given, stored] = [step.heatFromCharge.si, step.heatToCoolant.si, step.heatStored.si];
          const [, Ch, , , Cc] = second;
          // Heats are differences of temperatures near 300 K, which are known to 1 part in 10^16.
          const rounding = 1e-12 * (Ch + Cc) * duration + 1e-300;
          const passed = Math.abs(taken) + Math.abs(given) + Math.abs(stored);
          expect(Math.abs(taken - given - stored)).toBeLessThanOrEqual(1e-9 * passed + rounding);
          const warmer = metal.si * (step.core.meanTemperature.si - core.meanTemperature.si);
          expect(Math.abs(warmer - stored)).toBeLessThanOrEqual(1e-9 * passed + 1e-12 * metal.si * 300);
        },
      ),
    );
  });

  it('keeps every cell and both outlets between the temperatures that went in', () => {
    fc.assert(
      fc.property(anyFlows, number(200, 450), number(0, 200), (given, T0, duration) => {
        const now = quantities(given);
        const { core } = soakingCore({ heatCapacity: metal, temperature: temperature(T0, 'K') }).after(
          seconds(duration),
          now,
        );
        const [low, high] = [Math.min(T0, given[0], given[3]) - 1e-9, Math.max(T0, given[0], given[3]) + 1e-9];
        for (const value of [...core.temperatures.si, core.chargeOutlet(now).si, core.coolantOutlet(now).si]) {
          expect(value).toBeGreaterThanOrEqual(low);
          expect(value).toBeLessThanOrEqual(high);
        }
      }),
    );
  });

  it('stays settled once settled, and is left alone where nothing flows', () => {
    const settled = settledCore({ heatCapacity: metal, flows });
    const later = settled.after(seconds(50), flows);
    expect(Math.abs(later.heatStored.si)).toBeLessThan(1e-6);
    expect(later.core.chargeOutlet(flows).si).toBeCloseTo(settled.chargeOutlet(flows).si, 10);
    expect(later.heatFromCharge.si).toBeCloseTo(later.heatToCoolant.si, 6);
    const still = {
      ...flows,
      chargeCapacityRate: heatCapacityRate(0, 'W/K'),
      coolantCapacityRate: heatCapacityRate(0, 'W/K'),
    };
    expect(settled.after(seconds(3600), still).core.temperatures.si).toEqual(settled.temperatures.si);
  });

  it('answers for very long and very short times', () => {
    const core = soakingCore({ heatCapacity: metal, temperature: cold, cells: 50 });
    expect(core.after(seconds(36000), flows).core.chargeOutlet(flows).in('°C')).toBeCloseTo(crossflowOutlet(), 2);
    const moment = core.after(time(1e-9, 's'), flows);
    expect(moment.heatStored.si / 1e-9).toBeCloseTo(202 * 120 * (1 - Math.exp(-2)), 3);
    const thick = { ...flows, chargeTransferUnits: ratio(500), coolantTransferUnits: ratio(500) };
    const soaked = core.after(seconds(20), thick);
    expect(Math.abs(soaked.heatFromCharge.si / (soaked.heatToCoolant.si + soaked.heatStored.si) - 1)).toBeLessThan(
      1e-9,
    );
  });

  it('says what it is', () => {
    const core = soakingCore({ heatCapacity: metal, temperature: cold });
    expect(String(core)).toContain('10 by 10 cells, 30 °C');
    expect(JSON.parse(JSON.stringify(core))).toMatchObject({ cells: 10 });
    expect(core.temperatures.length).toBe(100);
  });

  it('refuses a part of a cell, a flow left out and a bare number, all of them at once', () => {
    expect(() => soakingCore({ heatCapacity: metal, temperature: cold, cells: 2.5 })).toThrow(
      /whole number from 1 to 50/,
    );
    const core = soakingCore({ heatCapacity: metal, temperature: cold });
    const bad = { ...flows, hotInlet: 150, coolantInlet: undefined } as never;
    expect(() => core.chargeOutlet(bad)).toThrow(/hotInlet[\s\S]*coolantInlet/);
    expect(() => core.after(5 as never, flows)).toThrow(/time/);
  });
});

describe('a pre-chilled core', () => {
  const pull = { ...flows, hotInlet: temperature(121, '°C'), coolantInlet: temperature(18, '°C'), heatCapacity: metal };
  const from = (start: number, t: number): number =>
    soakedChargeTemperature({ ...pull, startTemperature: temperature(start, '°C'), time: seconds(t) }).in('°C');

  it('is worth most at once and half of it after some six seconds', () => {
    const worth = [0, 2, 5, 10].map((t) => from(18, t) - from(-10, t));
    expect(worth[0]).toBeCloseTo(28 * (1 - Math.exp(-2)), 9);
    for (let i = 1; i < worth.length; i++) expect(worth[i]!).toBeLessThan(worth[i - 1]!);
    expect(worth[2]! / worth[0]!).toBeGreaterThan(0.5);
    expect(worth[3]! / worth[0]!).toBeLessThan(0.5);
    // The same cells integrated numerically (scipy DOP853).
    [7.728922, 15.392328, 25.075582, 37.152271].forEach((want, i) =>
      expect(from(-10, [0, 2, 5, 10][i]!)).toBeCloseTo(want, 5),
    );
  });

  it('has an uncertainty, as it is a calculation', () => {
    const probe = sensor('temperature', { label: 'core probe', standardUncertainty: temperatureDifference(2, 'K') });
    const start = probe.reads(temperature(-10, '°C'));
    const result = soakedChargeTemperature({ ...pull, startTemperature: start, time: seconds(5) });
    expect(uncertainty(result).standard.in('K')).toBeCloseTo((2 * (from(-8, 5) - from(-12, 5))) / 4, 6);
  });
});

describe('heat soak over a record', () => {
  it('is one long step where the flows are steady, and ends in the core to go on from', () => {
    const record = heatSoak(
      soakingCore({ heatCapacity: metal, temperature: cold }),
      column('time', [0, 2, 5, 10, 20], 's'),
      flows,
    );
    [46.2402, 50.8491, 56.7528, 64.2452, 72.8519].forEach((want, row) =>
      expect(record.chargeOutlet.in('°C')[row]).toBeCloseTo(want, 4),
    );
    expect(record.heatFromCharge.si / (record.heatToCoolant.si + record.heatStored.si)).toBeCloseTo(1, 12);
    expect(record.core.chargeOutlet(flows).in('°C')).toBeCloseTo(72.8519, 4);
  });

  it('converges with the square of the row spacing where the flows change', () => {
    const ramp = (rows: number): number => {
      const at = Array.from({ length: rows + 1 }, (_, i) => (10 * i) / rows);
      const result = heatSoak(soakingCore({ heatCapacity: metal, temperature: cold }), column('time', at, 's'), {
        ...flows,
        hotInlet: column(
          'temperature',
          at.map((t) => 60 + 9 * t),
          '°C',
        ),
      });
      return result.chargeOutlet.in('°C').at(-1)!;
    };
    const best = ramp(640);
    expect((ramp(10) - best) / (ramp(20) - best)).toBeCloseTo(4, 1);
  });

  it('leaves the charge missing in a rest, while the core recovers', () => {
    const record = heatSoak(
      soakingCore({ heatCapacity: metal, temperature: temperature(60, '°C') }),
      column('time', [0, 30, 60], 's'),
      {
        ...flows,
        chargeCapacityRate: heatCapacityRate(0, 'W/K'),
      },
    );
    expect(record.chargeOutlet.missing).toBe(3);
    expect(record.meanTemperature.in('°C')[2]).toBeLessThan(32);
    expect(record.heatFromCharge.si).toBe(0);
  });

  it('refuses times that stand still, gaps, and columns of another length, and says where', () => {
    const core = soakingCore({ heatCapacity: metal, temperature: cold });
    expect(() => heatSoak(core, column('time', [0, 2, 2], 's'), flows)).toThrow(/2 s in row 2 after 2 s/);
    const gap = { ...flows, hotInlet: column('temperature', [60, NaN], '°C') };
    expect(() => heatSoak(core, column('time', [0, 1], 's'), gap)).toThrow(/hotInlet.*none in row 1/);
    const short = { ...flows, hotInlet: column('temperature', [60], '°C') };
    expect(() => heatSoak(core, column('time', [0, 1], 's'), short)).toThrow(/as many rows as time has, 2/);
    const hot = { ...flows, hotInlet: column('temperature', [60, 900], '°C') };
    expect(() => heatSoak(core, column('time', [0, 1], 's'), hot)).toThrow(/row 1.*hotInlet/);
    expect(() => heatSoak(core, 5 as never, flows)).toThrow(/a column of time/);
  });
});
