import fc from 'fast-check';
import { inspect } from 'node:util';
import { describe, expect, it } from 'vitest';
import * as units from '../../src/units/index.js';
import { KINDS } from '../../src/units/internal.js';
import {
  angle,
  absolutePressure,
  CalculationError,
  column,
  constructorName,
  density,
  gaugePressure,
  isColumn,
  isQuantity,
  known,
  lambda,
  parse,
  percent,
  power,
  quantity,
  relativeHumidity,
  revive,
  rotationalSpeed,
  temperature,
  temperatureDifference,
  torque,
  UnitError,
  type Kind,
} from '../../src/units/index.js';

const kinds = Object.keys(KINDS) as Kind[];
const anyKindAndUnit = fc
  .constantFrom(...kinds)
  .chain((kind) => fc.record({ kind: fc.constant(kind), unit: fc.constantFrom(...Object.keys(KINDS[kind].units)) }));
const everydayNumber = fc.double({ min: 1e-3, max: 1e6, noNaN: true });

describe('a quantity', () => {
  it('converts between the units of its kind', () => {
    expect(temperature(25, '°C').in('°F')).toBeCloseTo(77, 10);
    expect(temperatureDifference(10, '°F').in('K')).toBeCloseTo(5.5555555556, 9);
    expect(absolutePressure(22.9, 'psi').in('kPa')).toBeCloseTo(157.88994, 5);
    expect(torque(300, 'lb-ft').in('N·m')).toBeCloseTo(406.745384, 6);
    expect(rotationalSpeed(6000, 'rpm').si).toBe(100);
  });

  it('goes to any unit of its kind and back', () => {
    fc.assert(
      fc.property(anyKindAndUnit, everydayNumber, ({ kind, unit }, value) => {
        expect(quantity(kind, value, unit as never).in(unit as never)).toBeCloseTo(
          value,
          9 - Math.ceil(Math.log10(value + 1)),
        );
      }),
    );
  });

  it('takes degrees of the crank before top dead centre as degrees, and no others', () => {
    for (const unit of ['°', 'deg', 'DEG', '°CA', 'deg BTDC', '°BTDC', '° BTDC', '°CA BTDC', 'º'])
      expect(angle(180, unit as '°').in('rad')).toBeCloseTo(Math.PI, 12);
    for (const unit of ['-', '.', '', 'deg ATDC', '°ATDC', '°C', 'C'])
      expect(() => angle(180, unit as '°')).toThrow(/is not a unit of an angle/);
  });

  it('takes the spellings that a plain keyboard has', () => {
    expect(temperature(77, 'degF').in('C')).toBeCloseTo(25, 10);
    expect(torque(1, 'N m').si).toBe(torque(1, 'N·m').si);
    expect(density(1, 'kg/m3').si).toBe(1);
    expect(gaugePressure(8, 'psig').si).toBe(gaugePressure(8, 'psi').si);
  });

  it('has a constructor for every kind, under the name that errors use', () => {
    for (const kind of kinds) expect(units).toHaveProperty(constructorName(kind));
  });

  it('shows itself as text, typed numbers as typed', () => {
    expect(String(temperature(18, '°C'))).toBe('18 °C');
    expect(String(percent(70))).toBe('70 %');
    expect(`${gaugePressure(-3.25, 'psi')}`).toBe('−3.25 psi');
    expect(inspect(known('room air', temperature(18, '°C')))).toBe('room air: 18 °C (temperature)');
    expect(String(lambda(0.82))).toBe('0.82');
  });

  it('cannot be added or compared as if it were a number', () => {
    const a = temperature(18, '°C') as unknown as number;
    expect(() => a + 1).toThrow(/would drop the unit/);
    expect(() => a < 20).toThrow(CalculationError);
  });

  it('refuses what is no number and what cannot be', () => {
    expect(() => temperature(NaN, '°C')).toThrow('temperature: value must be a finite number');
    expect(() => temperature('18' as never, '°C')).toThrow(/got the text "18"/);
    expect(() => temperature(-300, '°C')).toThrow(/above absolute zero/);
    expect(() => absolutePressure(-8, 'psi')).toThrow(/Is it a gauge pressure/);
    expect(() => torque(3, 'bananas' as never)).toThrow(/"bananas" is not a unit of a torque. Write 'N·m'/);
    expect(() => torque(3, '__proto__' as never)).toThrow(UnitError);
    expect(() => torque(3, 'constructor' as never)).toThrow(UnitError);
  });

  it('crosses to a worker as plain data and can be revived there', () => {
    const hot = temperature(121, '°C').named('charge');
    const clone: unknown = structuredClone(hot);
    expect(isQuantity(clone)).toBe(true);
    expect(revive(clone).toString()).toBe('121 °C');
    expect((revive(JSON.parse(JSON.stringify(hot))) as units.Quantity).label).toBe('charge');
    const speeds = column('rotational speed', [3000, NaN, 4500], 'rpm');
    const cloned: unknown = structuredClone(speeds);
    expect(isColumn(cloned)).toBe(true);
    expect(revive(cloned).in('rpm' as never)).toEqual(Float64Array.of(3000, NaN, 4500));
    expect(revive(JSON.parse(JSON.stringify(speeds)))).toHaveProperty('missing', 1);
    for (const wrong of [null, 3, {}, { kind: 'toString', unit: 'K', si: 1 }, { kind: 'temperature', unit: 'K' }]) {
      expect(() => revive(wrong)).toThrow(CalculationError);
    }
  });
});

describe('a column', () => {
  it('counts what is missing and gives each row as a quantity', () => {
    const boost = column('gauge pressure', [1.1, null, 1.2, undefined], 'bar', 'boost');
    expect([boost.length, boost.missing, boost.refused]).toEqual([4, 2, 0]);
    expect(boost.at(2).in('bar')).toBeCloseTo(1.2, 12);
    expect(String(boost)).toBe('gauge pressure 1.100 bar to 1.200 bar, 4 rows, 2 missing');
    expect(() => boost.at(1)).toThrow(/row 1, which is missing/);
    expect(() => boost.at(9)).toThrow(/row 9 of 4/);
  });

  it('refuses impossible numbers by row', () => {
    expect(() => column('absolute pressure', [1, -1], 'bar')).toThrow(/-1 bar in row 1/);
    expect(() => column('power', [1, Infinity], 'kW')).toThrow(/row 1/);
  });
});

describe('reading a quantity from text', () => {
  it.each([
    ['absolute pressure', '22.9 psi', 22.9, 'psi'],
    ['absolute pressure', '941.2hPa', 941.2, 'hPa'],
    ['torque', '300 LB-FT', 300, 'lb·ft'],
    ['torque', '12 ft·lbf', 12, 'lb·ft'],
    ['temperature', '-40 deg F', -40, '°F'],
    ['absolute pressure', '29.92 in Hg', 29.92, 'inHg'],
    ['absolute pressure', '29.92 inHg (60F)', 29.92, 'inHg(60F)'],
    ['power', '1.5e2 kW', 150, 'kW'],
    ['power', '−3 PS', -3, 'PS'],
    ['ratio', '0.72', 0.72, '1'],
    ['ratio', '72 %', 72, '%'],
    ['rotational speed', '6000 RPM', 6000, 'rpm'],
    ['specific fuel consumption', '310 g/(kW·h)', 310, 'g/kWh'],
  ] as const)('%s: %s', (kind, text, value, unit) => {
    const read = parse(kind, text);
    expect(read.unit).toBe(unit);
    expect(read.in(unit as never)).toBeCloseTo(value, 9);
  });

  it('reads a decimal comma only when told to', () => {
    expect(parse('power', '1,5 kW', { decimal: ',' }).in('kW')).toBe(1.5);
    expect(() => parse('power', '1,5 kW')).toThrow(UnitError);
  });

  it('says what to write where a unit is ambiguous, missing or of another kind', () => {
    expect(() => parse('volume', '12 gal')).toThrow(/write gal\(US\) or gal\(imp\)/);
    expect(() => parse('absolute pressure', '8 psig')).toThrow(/absolute\(gaugePressure/);
    expect(() => parse('volume flow', '30 scfm')).toThrow(/standardVolumeFlow/);
    expect(() => parse('standard volume flow', '30 SCFM')).toThrow(/scfm\(60F\)/);
    expect(() => parse('power', '150')).toThrow(/has no unit/);
    expect(() => parse('relative humidity', '45')).toThrow(/has no unit/);
    expect(() => parse('power', 'lots of kW')).toThrow(/does not begin with a number/);
  });

  it('never takes milli for mega', () => {
    for (const unit of ['mPa', 'mpa', 'Mpa', 'Mbar'])
      expect(() => parse('absolute pressure', `3 ${unit}`)).toThrow(`"${unit}" is not a unit of an absolute pressure.`);
    expect(() => parse('mass', '3 Mg')).toThrow('"Mg" is not a unit of a mass.');
    expect(() => parse('time', '3 Ms')).toThrow('"Ms" is not a unit of a time.');
    expect(parse('absolute pressure', '3 KPA').unit).toBe('kPa');
  });

  it.each([
    ['gauge pressure', '22.9 Psi', '22.9 psi'],
    ['gauge pressure', '8 PsiG', '8 psi'],
    ['gauge pressure', '1.1 bar(g)', '1.1 bar'],
    ['absolute pressure', '180 Kpa', '180 kPa'],
    ['absolute pressure', '180 KPa', '180 kPa'],
    ['rotational speed', '6500 min-1', '6500 rpm'],
    ['rotational speed', '6500 min^-1', '6500 rpm'],
    ['rotational speed', '6500 U/min', '6500 rpm'],
    ['rotational speed', '6500 tr/min', '6500 rpm'],
    ['rotational speed', '50 s-1', '50 1/s'],
    ['temperature', '18 Celsius', '18 °C'],
    ['temperature', '64 deg Fahrenheit', '64 °F'],
    ['temperature difference', '5 celsius', '5 °C'],
    ['torque', '320 Nm', '320 N·m'],
    ['torque', '32 mkg', '32 kgf·m'],
    ['torque', '32 mkp', '32 kgf·m'],
    ['torque', '240 lbft', '240 lb·ft'],
    ['torque', '240 ftlb', '240 lb·ft'],
    ['torque', '240 ft.lb', '240 lb·ft'],
    ['speed', '60 Mph', '60 mph'],
    ['lambda', '0.82 Lambda', '0.82 1'],
    ['lambda', '0.82 λ', '0.82 1'],
    ['lambda', '0.82 -', '0.82 1'],
    ['air-fuel ratio', '11.9 A/F', '11.9 1'],
    ['equivalence ratio', '1.2 φ', '1.2 1'],
  ] as const)('takes what loggers write: %s %s', (kind, text, plain) => {
    const read = parse(kind, text);
    const shown = Number(read.in(read.unit as never).toPrecision(12));
    expect(`${shown} ${read.unit}`).toBe(plain);
  });

  it('does not take as absolute what is written as gauge, however it is written, nor the other way', () => {
    for (const unit of ['psig', 'PSIG', 'Barg', 'bar(g)', 'kPag', 'kPa(g)'])
      expect(() => parse('absolute pressure', `100 ${unit}`)).toThrow(/is a gauge pressure: absolute\(gaugePressure/);
    for (const unit of ['psia', 'bara', 'bar(a)', 'kPa(a)'])
      expect(() => parse('gauge pressure', `100 ${unit}`)).toThrow(/is an absolute pressure: gauge\(absolutePressure/);
  });

  it('does not take a dash for a unit where one is needed', () => {
    for (const kind of ['angle', 'torque', 'temperature', 'ratio'] as const)
      expect(() => parse(kind, '3 -')).toThrow(UnitError);
  });

  it('survives any text', () => {
    fc.assert(
      fc.property(fc.constantFrom(...kinds), fc.string({ maxLength: 300 }), (kind, text) => {
        try {
          expect(isQuantity(parse(kind, text))).toBe(true);
        } catch (error) {
          expect(error instanceof UnitError || error instanceof CalculationError).toBe(true);
        }
      }),
    );
  });

  it('reads back what it shows', () => {
    fc.assert(
      fc.property(anyKindAndUnit, everydayNumber, ({ kind, unit }, value) => {
        // Relative humidity must be typed with its unit, since 45 could be either.
        fc.pre(kind !== 'relative humidity');
        const given = quantity(kind, value, unit as never);
        const read = parse(kind, String(given));
        expect(read.si / given.si).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('unit preferences', () => {
  it('change how a value shows and nothing else', () => {
    expect(units.formatValue(power(100, 'kW'), { units: units.usShop })).toBe('134.1 hp');
    expect(units.formatValue(power(100, 'kW'), { units: units.metricShop, decimal: ',' })).toBe('136,0 PS');
    expect(units.formatValue(relativeHumidity(45, '%'), { units: units.siUnits })).toBe('45 %');
  });

  it('name units that exist', () => {
    for (const set of [units.siUnits, units.metricShop, units.usShop]) {
      for (const [kind, unit] of Object.entries(set)) expect(Object.keys(KINDS[kind as Kind].units)).toContain(unit);
    }
  });
});
