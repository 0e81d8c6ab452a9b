import { describe, expect, it } from 'vitest';
import { KINDS } from '../../src/units/internal.js';
import { UnitError, type Kind } from '../../src/units/index.js';
import { convertExactly, exactSize } from '../../src/units/exact/index.js';

const units = Object.entries(KINDS).flatMap(([kind, { units }]) =>
  Object.entries(units).map(([unit, size]) => ({
    kind: kind as Kind,
    unit,
    size: (typeof size === 'number' ? size : (size as readonly number[])[0]) as number,
  })),
);

describe('every unit', () => {
  it.each(units)('$unit of $kind is the double nearest to its definition', ({ kind, unit, size }) => {
    expect(
      Number(
        exactSize(kind, unit as never)
          .toSignificantDigits(50)
          .toString(),
      ),
    ).toBe(size);
  });
});

describe('exact conversion', () => {
  // NIST SP 811 (2008), appendix B.8 and B.9, from memory; the printed digits are rounded, hence the comparison in as many.
  it.each([
    ['absolute pressure', '1', 'psi', 'Pa', '6.894757E+3'],
    ['absolute pressure', '1', 'atm', 'Pa', '1.01325E+5'],
    ['absolute pressure', '1', 'inHg', 'Pa', '3.386389E+3'],
    ['absolute pressure', '1', 'inHg(60F)', 'Pa', '3.37685E+3'],
    ['absolute pressure', '1', 'inH2O', 'Pa', '2.490889E+2'],
    ['absolute pressure', '1', 'inH2O(60F)', 'Pa', '2.4884E+2'],
    ['absolute pressure', '1', 'torr', 'Pa', '1.333224E+2'],
    ['energy', '1', 'Btu', 'J', '1.055056E+3'],
    ['energy', '1', 'Btu(th)', 'J', '1.054350E+3'],
    ['energy', '1', 'ft·lbf', 'J', '1.355818E+0'],
    ['power', '1', 'hp', 'W', '7.456999E+2'],
    ['power', '1', 'PS', 'W', '7.354988E+2'],
    ['power', '1', 'hp(electric)', 'W', '7.46E+2'],
    ['power', '1', 'Btu/h', 'W', '2.930711E-1'],
    ['torque', '1', 'lb·ft', 'N·m', '1.355818E+0'],
    ['torque', '1', 'lb·in', 'N·m', '1.129848E-1'],
    ['torque', '1', 'kgf·m', 'N·m', '9.80665E+0'],
    ['mass', '1', 'lb', 'kg', '4.535924E-1'],
    ['mass flow', '1', 'lb/min', 'kg/s', '7.559873E-3'],
    ['mass flow', '1', 'lb/h', 'kg/s', '1.259979E-4'],
    ['volume', '1', 'gal(US)', 'm³', '3.785412E-3'],
    ['volume', '1', 'gal(imp)', 'm³', '4.54609E-3'],
    ['volume', '1', 'in³', 'm³', '1.638706E-5'],
    ['volume', '1', 'ft³', 'm³', '2.831685E-2'],
    ['volume flow', '1', 'cfm', 'm³/s', '4.719474E-4'],
    ['density', '1', 'lb/ft³', 'kg/m³', '1.601846E+1'],
    ['density', '1', 'lb/gal(US)', 'kg/m³', '1.198264E+2'],
    ['specific fuel consumption', '1', 'lb/(hp·h)', 'kg/J', '1.689659E-7'],
    ['specific energy', '1', 'Btu/lb', 'J/kg', '2.326E+3'],
    ['specific heat capacity', '1', 'Btu/(lb·°F)', 'J/(kg·K)', '4.1868E+3'],
    ['speed', '1', 'mph', 'm/s', '4.4704E-1'],
    ['length', '1', 'in', 'm', '2.54E-2'],
  ] as const)('gives the figure of NIST SP 811 for %s: %s %s in %s', (kind, value, from, to, printed) => {
    const digits = printed.replace(/E.*/, '').replace('.', '').length;
    expect(
      convertExactly(kind, value, from as never, to as never)
        .toSignificantDigits(digits)
        .toNumber(),
    ).toBe(Number(printed));
  });

  it('converts temperatures with their offset and differences without', () => {
    expect(convertExactly('temperature', '25', '°C', '°F').toString()).toBe('77');
    expect(convertExactly('temperature', '77', '°F', 'K').toFixed(2)).toBe('298.15');
    expect(convertExactly('temperature difference', '10', '°F', 'K').toSignificantDigits(20).toString()).toBe(
      '5.5555555555555555556',
    );
  });

  it('keeps every digit it was given', () => {
    const digits = '1.2345678901234567890123456789012345';
    expect(convertExactly('length', digits, 'm', 'mm').toString()).toBe('1234.5678901234567890123456789012345');
  });

  it('refuses what is no number and no unit of the kind', () => {
    expect(() => convertExactly('torque', 'ten', 'N·m', 'lb·ft')).toThrow(UnitError);
    // @ts-expect-error a pound-foot is not a pressure
    expect(() => convertExactly('absolute pressure', '1', 'lb·ft', 'Pa')).toThrow(
      /is not a unit of an absolute pressure/,
    );
  });
});
