import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mean, measured, sensor, uncertainty, whatIf } from '../../src/calculation/index.js';
import {
  absolutePressure,
  add,
  column,
  isColumn,
  known,
  ratio,
  ratioOf,
  rotationalSpeed,
  subtract,
  temperature,
  temperatureDifference,
  torque,
  type Column,
  type Quantity,
} from '../../src/units/index.js';
import { density, errorOf, messageOf, outlet, powerOf, relativeError } from './small-calculations.js';

const room = known('room', temperature(20, '°C'));
const boost = known('pressure ratio', ratio(1.6));
const efficiency = ratio(0.72);

/** A composite: charge density behind a compressor, over that of the room. */
function densityGain(inlet: Quantity<'temperature'>, pressureRatio: Quantity<'ratio'>): Quantity<'ratio'> {
  const hot = outlet({ inletTemperature: inlet, pressureRatio, efficiency });
  const ambient = absolutePressure(94, 'kPa');
  const charge = density({ pressure: absolutePressure(94 * 1.6, 'kPa'), temperature: hot });
  return ratioOf(charge, density({ pressure: ambient, temperature: inlet }));
}

describe('whatIf', () => {
  it('gives what the calculation gives from the other inputs, as a property', () => {
    const inlets = fc.double({ min: 250, max: 330, noNaN: true });
    const ratios = fc.double({ min: 1, max: 2.5, noNaN: true });
    fc.assert(
      fc.property(inlets, ratios, inlets, ratios, (a, pr, b, pr2) => {
        const [from, to] = [temperature(a, 'K'), temperature(b, 'K')];
        const [fromRatio, toRatio] = [ratio(pr), ratio(pr2)];
        const result = whatIf(densityGain(from, fromRatio), [
          [from, to],
          [fromRatio, toRatio],
        ]);
        expect(result.si).toBe(densityGain(to, toRatio).si);
      }),
    );
  });

  it('gives a column from a column: a composite over a sweep', () => {
    const sweep = column('temperature', [0, 20, 40], '°C');
    const gains = whatIf(densityGain(room, boost), [[room, sweep]]);
    const typed: Column<'ratio'> = gains;
    expect(Array.from(typed.si)).toEqual([0, 20, 40].map((value) => densityGain(temperature(value, '°C'), boost).si));
  });

  it('leaves the rest as it is: unit, kind, label and other inputs', () => {
    const hot = outlet({ inletTemperature: room, pressureRatio: boost, efficiency }).to('°F').named('outlet');
    const colder = whatIf(hot, [[room, temperature(0, '°C')]]);
    expect([colder.kind, colder.label]).toEqual(['temperature', 'outlet']);
    expect(hot.si).toBe(outlet({ inletTemperature: room, pressureRatio: boost, efficiency }).si);
  });

  it('takes a copy in another unit or under another name for the input it is', () => {
    const hot = outlet({ inletTemperature: room, pressureRatio: boost, efficiency });
    const copy = room.to('°F').named('other name');
    expect(whatIf(hot, [[copy, temperature(0, '°C')]]).si).toBe(whatIf(hot, [[room, temperature(0, '°C')]]).si);
  });

  it('can replace a value on the way, and then what it was made of no longer matters', () => {
    const hot = outlet({ inletTemperature: room, pressureRatio: boost, efficiency });
    const rise = subtract(hot, room);
    expect(whatIf(rise, [[hot, temperature(100, '°C')]]).in('K')).toBeCloseTo(80, 12);
  });

  it('brings the uncertainty of the new value', () => {
    const sure = outlet({ inletTemperature: room, pressureRatio: boost, efficiency, heatCapacityRatio: ratio(1.4) });
    const unsure = measured('weather', temperature(5, '°C'), { standardUncertainty: temperatureDifference(2, 'K') });
    expect(uncertainty(sure).standard.si).toBe(0);
    const changed = uncertainty(whatIf(sure, [[room, unsure]]));
    expect(changed.contributions.map(({ label }) => label)).toEqual(['weather']);
  });

  it('checks every step again, and notes what a call would note', () => {
    const hot = outlet({ inletTemperature: room, pressureRatio: boost, efficiency });
    expect(messageOf(() => whatIf(hot, [[boost, ratio(0.5)]]))).toContain(
      'outlet temperature: pressureRatio must be between 1 and 8, got 0.5',
    );
    expect(whatIf(hot, [[boost, ratio(5)]]).notes.map(({ code }) => code)).toEqual(['outside trusted range']);
    const sweep = column('ratio', [2, 0.5, 3], '1');
    expect(errorOf(() => whatIf(hot, [[boost, sweep]])).message).toContain('in row 1');
    const counted = whatIf(hot, [[boost, sweep]], { badRows: 'missing' });
    expect([counted.missing, counted.refused]).toEqual([1, 1]);
  });

  it('counts missing rows through', () => {
    const hot = outlet({ inletTemperature: room, pressureRatio: boost, efficiency });
    expect(whatIf(hot, [[room, column('temperature', [20, NaN], '°C')]]).missing).toBe(1);
  });

  it('replays over a log: another column, another scalar, or the correction of the sensor', () => {
    const probe = sensor('temperature', { label: 'probe', halfWidth: temperatureDifference(1, 'K') });
    const logged = column('temperature', [40, 50], '°C');
    const pressure = absolutePressure(150, 'kPa');
    const rows = density.columns({ pressure, temperature: probe.reads(logged) });
    const expected = (p: number, ...T: number[]): number[] => T.map((each) => p / (287.05 * (each + 273.15)));
    expect(Array.from(whatIf(rows, [[pressure, absolutePressure(200, 'kPa')]]).si)).toEqual(expected(200e3, 40, 50));
    expect(Array.from(whatIf(rows, [[logged, column('temperature', [20, 30], '°C')]]).si)).toEqual(
      expected(200e3 * 0.75, 20, 30),
    );
    const off = whatIf(rows, [[probe.correction!, temperatureDifference(1, 'K')]]);
    expect(relativeError(off.at(1), expected(150e3, 51)[0]!)).toBeLessThan(1e-14);
  });

  it('keeps the rows of a sweep and the rows of a log apart, also where they are equally many', () => {
    const pressure = absolutePressure(150, 'kPa');
    const average = mean(density.columns({ pressure, temperature: column('temperature', [40, 50], '°C') }));
    const swept = whatIf(average, [[pressure, column('absolute pressure', [150, 300], 'kPa')]]);
    expect(isColumn(swept)).toBe(true);
    expect(swept.si[0]).toBe(average.si);
    expect(swept.si[1]).toBeCloseTo(2 * average.si, 12);
    expect(messageOf(() => uncertainty(swept.at(0)))).toContain('needs a result with its whole history');
    const rows = density.columns({ pressure, temperature: column('temperature', [40, 50], '°C') });
    expect(errorOf(() => whatIf(rows, [[pressure, column('absolute pressure', [150, 300], 'kPa')]])).code).toBe('kind');
  });

  it('carries on past refused rows of the log as the first call did, and counts those of a sweep', () => {
    const pressure = absolutePressure(150, 'kPa');
    const rows = density.columns(
      { pressure, temperature: column('temperature', [40, 900], '°C') },
      { badRows: 'missing' },
    );
    expect(whatIf(mean(rows), [[pressure, absolutePressure(300, 'kPa')]]).si).toBeCloseTo(2 * rows.si[0]!, 12);
    const swept = whatIf(mean(rows), [[pressure, column('absolute pressure', [150, 1, NaN], 'kPa')]], {
      badRows: 'missing',
    });
    expect([swept.missing, swept.refused]).toEqual([2, 1]);
    expect(messageOf(() => whatIf(mean(rows), [[pressure, column('absolute pressure', [150, 1], 'kPa')]]))).toContain(
      'missing',
    );
  });

  it('accepts new values that went through a clone', () => {
    const hot = outlet({ inletTemperature: room, pressureRatio: boost, efficiency });
    const clone = structuredClone(temperature(0, '°C')) as Quantity<'temperature'>;
    expect(whatIf(hot, [[room, clone]]).si).toBe(whatIf(hot, [[room, temperature(0, '°C')]]).si);
    const columns = structuredClone(column('temperature', [0, 10], '°C')) as Column<'temperature'>;
    expect(whatIf(hot, [[room, columns]]).length).toBe(2);
  });

  it('replays a chain of 100 000 steps', () => {
    const pull = torque(1, 'N·m');
    let total = torque(0, 'N·m');
    for (let i = 0; i < 1e5; i++) total = add(total, pull);
    expect(whatIf(total, [[pull, torque(2, 'N·m')]]).in('N·m')).toBe(2e5);
  });

  it('refuses what did not go in, and names what did', () => {
    const hot = outlet({ inletTemperature: room, pressureRatio: boost, efficiency });
    expect(messageOf(() => whatIf(hot, [[temperature(20, '°C'), temperature(0, '°C')]]))).toBe(
      'whatIf: changes[0][0] must be a quantity that went into the result, got a temperature (20 °C), which did not. ' +
        'Its inputs are room, pressure ratio, efficiency, heat-capacity ratio. Pass the very quantity that was used, not one of equal value.',
    );
    expect(messageOf(() => whatIf(structuredClone(hot) as typeof hot, [[room, room]]))).toContain('which did not');
  });

  it.each<[string, () => unknown, string]>([
    [
      'no changes',
      () => whatIf(room, [] as never),
      'whatIf: changes must be a list of pairs of an input and its new value, got a list. Write [[input, value]].',
    ],
    [
      'a pair without its list',
      () => whatIf(room, [room, room] as never),
      'whatIf: changes[0] must be a pair of an input and its new value, got a temperature (20 °C). Write [[input, value]].',
    ],
    [
      'another kind',
      () => whatIf(room, [[room, ratio(1)]] as never),
      'whatIf: changes[0][1] must be temperature, got a ratio (1).',
    ],
    [
      'a number',
      () => whatIf(room, [[room, 5]] as never),
      'whatIf: changes[0][1] must be a quantity or a column, got the bare number 5.',
    ],
    [
      'one input twice',
      () =>
        whatIf(room, [
          [room, room],
          [room, room],
        ]),
      'whatIf: changes[1][0] must be an input that is changed once, got room again.',
    ],
    [
      'no result',
      () => whatIf(undefined as never, [[room, room]]),
      'whatIf: result must be a quantity or a column, got nothing.',
    ],
  ])('refuses %s', (_, run, message) => {
    expect(messageOf(run)).toBe(message);
  });

  it('refuses columns of different length, and a quantity in place of a column', () => {
    const speed = rotationalSpeed(5500, 'rpm');
    const force = torque(400, 'N·m');
    const shaft = powerOf({ torque: force, speed });
    const two = column('torque', [1, 2], 'N·m');
    expect(
      messageOf(() =>
        whatIf(shaft, [
          [force, two],
          [speed, column('rotational speed', [1, 2, 3], 'rpm')],
        ]),
      ),
    ).toBe('whatIf: changes[1][1] must be 2 rows long, got 3 rows.');
    const rows = powerOf.columns({ torque: two, speed });
    expect(messageOf(() => whatIf(rows, [[two, force]]))).toContain('must be a column, in place of a column');
  });

  it('takes a column in place of one of several quantities that are averaged, row by row', () => {
    const readings = [1, 2, 3].map((value) => known(`reading ${value}`, ratio(value)));
    const middle = whatIf(mean(readings), [[readings[0]!, column('ratio', [1, 4, NaN, 7], '1')]]);
    expect([...middle.si]).toEqual([2, 3, NaN, 4]);
  });
});
