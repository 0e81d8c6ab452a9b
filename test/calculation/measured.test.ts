import { describe, expect, it } from 'vitest';
import { measured, sensor, uncertainty, whatIf } from '../../src/calculation/index.js';
import {
  absolutePressure,
  add,
  column,
  forget,
  gaugePressure,
  known,
  percent,
  pressureDifference,
  ratio,
  ratioOf,
  subtract,
  temperature,
  temperatureDifference,
  torque,
  type Quantity,
} from '../../src/units/index.js';
import { errorOf, messageOf, outlet, relativeError } from './small-calculations.js';

const standardOf = (value: Quantity, unit: string): number => uncertainty(value).standard.in(unit as never);

describe('a measured value', () => {
  const at = temperature(20, '°C');
  const half = temperatureDifference(0.5, 'K');

  it('spreads a half width as JCGM 100 4.3 says: a/√3, a/√6 in the middle, a/1.96 at 95 %', () => {
    expect(standardOf(measured('T', at, { halfWidth: half }), 'K')).toBeCloseTo(0.5 / Math.sqrt(3), 14);
    expect(standardOf(measured('T', at, { halfWidth: half, distribution: 'triangular' }), 'K')).toBeCloseTo(
      0.5 / Math.sqrt(6),
      14,
    );
    expect(standardOf(measured('T', at, { halfWidth: half, distribution: 'normal' }), 'K')).toBeCloseTo(
      0.5 / 1.959963984540054,
      14,
    );
    const at99 = measured('T', at, { halfWidth: half, distribution: 'normal', level: 0.99 });
    expect(standardOf(at99, 'K')).toBeCloseTo(0.5 / 2.5758293035489004, 14);
  });

  it('divides an expanded uncertainty by its coverage factor', () => {
    const gauge = measured('p', absolutePressure(150, 'kPa'), {
      expanded: pressureDifference(0.6, 'kPa'),
      coverageFactor: 2,
    });
    expect(standardOf(gauge, 'kPa')).toBeCloseTo(0.3, 14);
  });

  it('takes a share of the value, and a difference in another unit', () => {
    expect(standardOf(measured('T', torque(400, 'N·m'), { standardUncertainty: percent(0.5) }), 'N·m')).toBeCloseTo(
      2,
      13,
    );
    expect(standardOf(measured('T', at, { standardUncertainty: temperatureDifference(1.8, '°F') }), 'K')).toBeCloseTo(
      1,
      14,
    );
  });

  it('takes percentage points where the value is a ratio itself', () => {
    expect(standardOf(measured('efficiency', percent(72), { standardUncertainty: percent(2) }), '%')).toBeCloseTo(
      2,
      13,
    );
  });

  it('keeps value, unit and label, and counts as t distributed where its uncertainty is known badly', () => {
    const value = measured('room', temperature(68, '°F'), { standardUncertainty: half, degreesOfFreedom: 4 });
    expect([String(value), value.label]).toEqual(['68 °F', 'room']);
    expect(value.origin).toMatchObject({
      role: 'measured',
      uncertainty: { distribution: 't', degreesOfFreedom: 4, type: 'B' },
    });
  });

  it('accepts a value and an uncertainty that went through a clone', () => {
    const value = measured('room', structuredClone(at) as Quantity<'temperature'>, {
      halfWidth: structuredClone(half) as typeof half,
    });
    expect(standardOf(value, 'K')).toBeCloseTo(0.5 / Math.sqrt(3), 14);
    expect(uncertainty(structuredClone(value) as typeof value).toString()).toBe('20 °C');
  });

  it.each<[string, () => unknown, string]>([
    [
      'a label that is not first',
      () => measured(at as never, 'room' as never, { halfWidth: half }),
      'measured: label must be a text that names it in explanations, got a temperature (20 °C). The label comes first.',
    ],
    [
      'a temperature as an uncertainty',
      () => measured('T', at, { halfWidth: temperature(0.5, '°C') as never }),
      "measured: halfWidth must be a temperature difference, got a temperature (0.5 °C). Write temperatureDifference(0.5, '°C').",
    ],
    [
      'a share of a temperature',
      () => measured('T', at, { halfWidth: percent(1) as never }),
      'measured: halfWidth must be a temperature difference, got a ratio (1 %). A share of a temperature means nothing: the zero of its scale is arbitrary.',
    ],
    [
      'a bare number',
      () => measured('T', at, { halfWidth: 0.5 as never }),
      "measured: halfWidth must be a temperature difference, got the bare number 0.5. Write temperatureDifference(value, 'K' | '°C' | '°F' | '°R').",
    ],
    [
      'no uncertainty',
      () => measured('T', at, {} as never),
      'measured: needs one of standardUncertainty, halfWidth, expanded, got none of them.',
    ],
    [
      'two of them',
      () => measured('T', at, { halfWidth: half, standardUncertainty: half } as never),
      'measured: needs one of standardUncertainty, halfWidth, expanded, got standardUncertainty and halfWidth.',
    ],
    [
      'a zero',
      () => measured('T', at, { halfWidth: temperatureDifference(0, 'K') }),
      'measured: halfWidth must be above zero, got a temperature difference (0 K). For a value without uncertainty use known(label, value).',
    ],
    [
      'an expanded uncertainty without its factor',
      () => measured('T', at, { expanded: half } as never),
      'measured: coverageFactor must be a number above zero, got nothing. The certificate says it; k = 2 is usual for 95 %.',
    ],
    [
      'an unknown shape',
      () => measured('T', at, { halfWidth: half, distribution: 'gaussian' as never }),
      `measured: distribution must be 'rectangular', 'triangular' or 'normal', got the text "gaussian".`,
    ],
    [
      'a level in percent',
      () => measured('T', at, { halfWidth: half, distribution: 'normal', level: 95 }),
      'measured: level must be a number between 0 and 1, both excluded, got 95. For 95 % write 0.95.',
    ],
    [
      'no degrees of freedom',
      () => measured('T', at, { halfWidth: half, degreesOfFreedom: 0 }),
      'measured: degreesOfFreedom must be a number above zero, got the bare number 0.',
    ],
    [
      'a share of zero',
      () => measured('p', gaugePressure(0, 'bar'), { halfWidth: percent(1) }),
      'measured: value must be other than zero where its uncertainty is a ratio of it, got a gauge pressure (0 bar).',
    ],
    [
      'a column',
      () => measured('T', column('temperature', [20], '°C') as never, { halfWidth: half } as never),
      'measured: value must be a quantity, got a column of temperature. Take one row of the column, with .at(row).',
    ],
  ])('refuses %s', (_, run, message) => {
    expect(messageOf(run)).toBe(message);
  });

  it('refuses a computed value, whose history would be lost in silence, until it is forgotten on purpose', () => {
    const rise = subtract(temperature(120, '°C'), at);
    expect(errorOf(() => measured('rise', rise, { halfWidth: half })).message).toContain(
      'measured(label, forget(value), ...)',
    );
    expect(errorOf(() => measured('T', measured('T', at, { halfWidth: half }), { halfWidth: half })).code).toBe('kind');
    expect(standardOf(measured('rise', forget(rise), { standardUncertainty: half }), 'K')).toBe(0.5);
  });

  it('is exact where it is only known', () => {
    expect(uncertainty(known('room', at)).standard.si).toBe(0);
    expect(uncertainty(known('room', at)).contributions).toEqual([]);
  });
});

describe('a sensor', () => {
  const probe = sensor('temperature', { label: 'charge probe', halfWidth: temperatureDifference(1, 'K') });
  const u = 1 / Math.sqrt(3);

  it('leaves what it read as it is, with one error for all its readings', () => {
    const warm = probe.reads(temperature(52, '°C'));
    const hot = probe.reads(temperature(121, '°C'));
    expect([warm.in('°C'), warm.unit]).toEqual([52, '°C']);
    expect(standardOf(warm, 'K')).toBeCloseTo(u, 12);
    expect(standardOf(subtract(hot, warm), 'K')).toBe(0);
    expect(uncertainty(subtract(hot, warm)).contributions[0]).toMatchObject({ label: 'charge probe', sensitivity: 0 });
  });

  it('does not cancel with another sensor of the same make', () => {
    const other = sensor('temperature', { label: 'room probe', halfWidth: temperatureDifference(1, 'K') });
    const rise = subtract(probe.reads(temperature(52, '°C')), other.reads(temperature(18, '°C')));
    expect(standardOf(rise, 'K')).toBeCloseTo(u * Math.SQRT2, 12);
  });

  it('with an error that grows with the reading cancels in ratios instead of differences', () => {
    const gauge = sensor('absolute pressure', { label: 'gauge', ofReading: percent(0.5) });
    const [low, high] = [gauge.reads(absolutePressure(95, 'kPa')), gauge.reads(absolutePressure(190, 'kPa'))];
    expect(standardOf(high, 'kPa')).toBeCloseTo((0.005 * 190) / Math.sqrt(3), 10);
    expect(standardOf(subtract(high, low), 'kPa')).toBeCloseTo((0.005 * 95) / Math.sqrt(3), 10);
    expect(standardOf(ratioOf(high, low), '1')).toBeLessThan(1e-10);
    const written = sensor('absolute pressure', { label: 'gauge', halfWidth: percent(0.5) });
    expect(standardOf(written.reads(absolutePressure(190, 'kPa')), 'kPa')).toBeCloseTo(
      (0.005 * 190) / Math.sqrt(3),
      10,
    );
  });

  it('can have both: 0.5 kPa and 0.4 % of the reading', () => {
    const gauge = sensor('gauge pressure', {
      label: 'boost',
      halfWidth: pressureDifference(0.5, 'kPa'),
      ofReading: percent(0.4),
    });
    const budget = uncertainty(gauge.reads(gaugePressure(100, 'kPa')));
    expect(budget.contributions.map(({ label }) => label)).toEqual(['boost, fixed part', 'boost, part of the reading']);
    expect(budget.standard.in('kPa')).toBeCloseTo(Math.hypot(0.5, 0.4) / Math.sqrt(3), 10);
    const corrected = whatIf(gauge.reads(gaugePressure(100, 'kPa')), [
      [gauge.correction!, pressureDifference(2, 'kPa')],
      [gauge.gainCorrection!, percent(1)],
    ]);
    expect(corrected.in('kPa')).toBeCloseTo(103, 12);
  });

  it('reads a whole column with the same error, row for row', () => {
    const charge = probe.reads(column('temperature', [40, NaN, 60], '°C', 'charge'));
    expect(Array.from(charge.in('°C'), (value) => Math.round(value))).toEqual([40, NaN, 60]);
    expect([charge.label, charge.missing]).toEqual(['charge', 1]);
    expect(standardOf(charge.at(2), 'K')).toBeCloseTo(u, 12);
    expect(standardOf(subtract(charge.at(2), charge.at(0)), 'K')).toBe(0);
  });

  it('can be tried as one that is off', () => {
    const inlet = probe.reads(temperature(20, '°C'));
    const result = outlet({ inletTemperature: inlet, pressureRatio: ratio(1.6), efficiency: ratio(0.72) });
    const expected = outlet({
      inletTemperature: temperature(21.5, '°C'),
      pressureRatio: ratio(1.6),
      efficiency: ratio(0.72),
    });
    expect(
      relativeError(whatIf(result, [[probe.correction!, temperatureDifference(1.5, 'K')]]), expected),
    ).toBeLessThan(1e-15);
  });

  it('keeps the errors of what it reads', () => {
    const drift = measured('drift', temperatureDifference(0.2, 'K'), {
      standardUncertainty: temperatureDifference(0.3, 'K'),
    });
    expect(standardOf(probe.reads(add(temperature(20, '°C'), drift)), 'K')).toBeCloseTo(Math.hypot(u, 0.3), 10);
  });

  it('refuses what it cannot read, and to be made without an error', () => {
    expect(messageOf(() => probe.reads(gaugePressure(1, 'bar') as never))).toContain(
      'must be a temperature, got a gauge pressure (1 bar)',
    );
    expect(messageOf(() => probe.reads(20 as never))).toBe(
      'charge probe reads: value must be a quantity or a column, got the bare number 20.',
    );
    expect(messageOf(() => sensor('temperature', { label: 'probe' } as never))).toContain(
      'needs one of standardUncertainty',
    );
    expect(messageOf(() => sensor('heat' as never, { label: 'probe' } as never))).toContain(
      'kind must be a kind of quantity',
    );
    expect(messageOf(() => sensor('temperature', { label: 'probe', ofReading: percent(1) } as never))).toContain(
      'A share of a temperature means nothing',
    );
    expect(
      errorOf(() => sensor('temperature', { halfWidth: temperatureDifference(1, 'K') } as never)).problems[0]!.input,
    ).toBe('label');
  });

  it('says what it is', () => {
    expect(String(probe)).toBe('charge probe (sensor of temperature)');
  });
});
