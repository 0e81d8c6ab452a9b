import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { compare, type CompareOptions } from '../../src/comparison/index.js';
import { unitSuspicions } from '../../src/comparison/unit-challenge.js';
import type { Channels } from '../../src/sweep/index.js';
import { column } from '../../src/units/index.js';
import { dayOf, scattered, type PullShape } from '../support/pulls.js';

/** lb·ft in N·m, by the international pound and foot and standard gravity (NIST SP 811, appendix B). */
const POUND_FOOT = 0.45359237 * 9.80665 * 0.3048;

const side = (channels: Record<string, number>): Channels[] => [
  {
    engineSpeed: column('rotational speed', [4000, 5000], 'rpm'),
    ...('torque' in channels ? { torque: column('torque', Array(2).fill(channels['torque']), 'N·m') } : {}),
    ...('power' in channels ? { power: column('power', Array(2).fill(channels['power']), 'kW') } : {}),
    ...('air' in channels ? { airFlow: column('mass flow', Array(2).fill(channels['air']), 'g/s') } : {}),
    ...('fuel' in channels ? { fuelFlow: column('mass flow', Array(2).fill(channels['fuel']), 'g/s') } : {}),
    ...('map' in channels
      ? { manifoldPressure: column('absolute pressure', Array(2).fill(channels['map']), 'kPa') }
      : {}),
    ...('charge' in channels
      ? { chargeTemperature: column('temperature', Array(2).fill(channels['charge']), '°C') }
      : {}),
  } as Channels,
];
const usual = { powerFromTorque: false, largestChange: 0.2 };
const asked = (a: Record<string, number>, b: Record<string, number>, challenge = usual) =>
  unitSuspicions(side(a), side(b), challenge).map(({ sentence }) => sentence);

describe('units are asked about', () => {
  it('where torque differs by pound-feet against newton metres', () => {
    expect(asked({ torque: 240 }, { torque: 240 * POUND_FOOT })).toEqual([
      'The two sets differ by 1.36 in torque, which is N·m against lb·ft.',
    ]);
    expect(asked({ torque: 240, air: 150 }, { torque: 240 / POUND_FOOT, air: 151 })).toEqual([
      'The two sets differ by 1.36 in torque, which is N·m against lb·ft. Air flow differs by 1.01 only.',
    ]);
  });

  it('where a gain of 8 % hides the slip, and says what air flow leaves of it', () => {
    expect(asked({ torque: 240, air: 150 }, { torque: 240 * POUND_FOOT * 1.08, air: 150 * 1.07 })).toEqual([
      'The two sets differ by 1.46 in torque and by 1.07 in air flow: what is left is 1.37, which is N·m against lb·ft.',
    ]);
  });

  it('where a loss brings the slip below what charge cooling can do', () => {
    expect(asked({ torque: 240, air: 150 }, { torque: 240 * POUND_FOOT * 0.85, air: 150 * 0.86 })).toHaveLength(1);
  });

  it('by fuel flow or charge density where air flow was not logged', () => {
    const b = { torque: 240 * POUND_FOOT * 1.08 };
    expect(asked({ torque: 240, fuel: 12 }, { ...b, fuel: 12.9 })[0]).toContain('in fuel flow: what is left is 1.36');
    expect(asked({ torque: 240, map: 210, charge: 40 }, { ...b, map: 212, charge: 28 })[0]).toContain(
      'in charge density',
    );
  });

  it('where torque rose by 45 % and air flow by 4 %', () => {
    expect(asked({ torque: 240, air: 150 }, { torque: 348, air: 156 })).toHaveLength(1);
  });

  it('where nothing else was logged and the change is more than charge cooling makes', () => {
    expect(asked({ torque: 240 }, { torque: 240 * 1.25 })).toEqual([
      'The two sets differ by 1.25 in torque, and charge cooling is taken to change it by 20 % at most.',
    ]);
    expect(asked({ torque: 240 }, { torque: 240 / 1.25 })).toHaveLength(1);
    expect(asked({ torque: 240 }, { torque: 240 * POUND_FOOT * 1.08 })).toHaveLength(1);
  });

  it('not by an air flow that has a slip of its own', () => {
    const found = asked({ torque: 240, air: 150 }, { torque: 240 * POUND_FOOT, air: 150 * 3.6 });
    expect(found).toEqual([
      'The two sets differ by 1.36 in torque, which is N·m against lb·ft.',
      'The two sets differ by 3.60 in air flow, which is g/s against kg/h.',
    ]);
  });

  it('once where power is made from torque, and has its slip', () => {
    const [a, b] = [
      { torque: 240, power: 125 },
      { torque: 240 * POUND_FOOT, power: 125 * POUND_FOOT },
    ];
    expect(asked(a, b, { ...usual, powerFromTorque: true })).toHaveLength(1);
    expect(asked(a, b)).toHaveLength(2);
  });

  it('for power that was logged as for torque', () => {
    expect(asked({ power: 150, air: 150 }, { power: 150 * 1.341 * 1.06, air: 159 })[0]).toContain('kW against hp');
  });

  it('whichever side has the slip, and however large an honest change comes with it, as long as air goes with the change', () => {
    const change = fc.double({ min: 0.85, max: 1.18, noNaN: true });
    const perAir = fc.double({ min: 0.97, max: 1.03, noNaN: true });
    fc.assert(
      fc.property(change, perAir, fc.boolean(), (gain, drift, isCandidate) => {
        const slip = isCandidate ? POUND_FOOT : 1 / POUND_FOOT;
        return asked({ torque: 240, air: 150 }, { torque: 240 * slip * gain * drift, air: 150 * gain }).length === 1;
      }),
    );
  });
});

describe('units are not asked about', () => {
  it('for an honest gain of 10 %, whatever else was logged', () => {
    expect(asked({ torque: 240 }, { torque: 264 })).toEqual([]);
    expect(asked({ torque: 240, air: 150 }, { torque: 264, air: 163 })).toEqual([]);
    expect(asked({ torque: 240, map: 210, charge: 60 }, { torque: 264, map: 212, charge: 30 })).toEqual([]);
  });

  it('for a large change that air flow made too', () => {
    expect(asked({ torque: 240, air: 150 }, { torque: 240 * 1.36, air: 150 * 1.33 })).toEqual([]);
    expect(asked({ torque: 240, map: 200, charge: 40 }, { torque: 312, map: 255, charge: 42 })).toEqual([]);
  });

  it('for a change that was said to be possible', () => {
    expect(asked({ torque: 240 }, { torque: 300 }, { ...usual, largestChange: 0.3 })).toEqual([]);
  });
});

describe('a comparison', () => {
  const range: CompareOptions = { engineSpeed: [3500, 6000] };
  const of = (torque: number, shape: Partial<PullShape> = {}, options: CompareOptions = {}) =>
    compare(
      dayOf({ 'stock core': scattered(4, 240, 1, 31) }).setup('stock core'),
      dayOf({ 'tall core': scattered(4, torque, 1, 32, shape) }).setup('tall core'),
      { ...range, ...options },
    );

  it('with a slip and a gain has no result, and says what to write', () => {
    const answer = of(240 * POUND_FOOT * 1.08, { airFlow: (speed) => 32 * speed });
    expect(answer.outcome).toBe('unit suspected');
    expect(answer.headline).toMatch(
      /^Before judging: the two sets differ by 1\.4\d in torque and by 1\.07 in air flow: what is left is/,
    );
    expect(answer.next[0]).toContain("channel('Torque', 'torque', 'N·m')");
  });

  it('with a gain of 10 % is a result', () => {
    expect(of(264, { airFlow: (speed) => 32.5 * speed }).outcome).toBe('better');
  });

  it('with more than charge cooling can do says how to tell it that more was changed', () => {
    const answer = of(300);
    expect(answer.outcome).toBe('unit suspected');
    expect(answer.next[0]).toContain('limits: { changeBetweenSetUps: 0.4 }');
    expect(of(300, {}, { limits: { changeBetweenSetUps: 0.4 } }).outcome).toBe('better');
  });
});
