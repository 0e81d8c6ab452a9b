import { describe, expect, it, vi } from 'vitest';
import {
  CalculationError,
  column,
  parse,
  power,
  revive,
  sameQuantity,
  subtract,
  temperature,
  torque,
  UnitError,
  type Quantity,
} from '../../src/units/index.js';

/** As a plain JavaScript program calls: nothing is checked before it runs. */
const loosely = <T>(value: unknown): T => value as T;

describe('a call as plain JavaScript gets it wrong', () => {
  it('names the unit that was left out or is no text, and the choices', () => {
    expect(() => temperature(18, loosely(undefined))).toThrow(UnitError);
    expect(() => temperature(18, loosely(undefined))).toThrow(
      "a temperature needs a unit, got none. Write 'K' | '°C' | '°F' | '°R'.",
    );
    expect(() => power(3, loosely(7))).toThrow("a value of type number is not a unit of a power. Write 'W'");
    expect(() => power(3, loosely({}))).toThrow(UnitError);
  });

  it('refuses text in place of a number, and says how to read text', () => {
    expect(() => temperature(loosely('18'), '°C')).toThrow(
      'temperature: value must be a finite number, got the text "18". For text with its unit use parse(kind, text).',
    );
  });

  it('refuses text in a column instead of counting it as missing', () => {
    expect(() => column('power', loosely([3, 'x']), 'kW')).toThrow(
      'power: values must be numbers, got the text "x" in row 1.',
    );
    expect(() => column('power', loosely('123'), 'kW')).toThrow(CalculationError);
    expect(() => column('power', loosely(undefined), 'kW')).toThrow(
      'power: values must be a list of numbers, got nothing.',
    );
    expect(() => column('pwoer' as never, [1], 'kW' as never)).toThrow('column: kind must be a kind of quantity');
  });

  it('lets no number become infinite by its unit', () => {
    expect(() => power(1e308, 'kW')).toThrow('power: value must be finite, got 1e+308 kW.');
    expect(() => column('power', [1, 1e308], 'kW')).toThrow('power: value must be finite, got 1e+308 kW in row 1.');
  });

  it('refuses to call two things the same that are no quantities', () => {
    expect(() => sameQuantity(loosely(3), loosely(4))).toThrow(CalculationError);
    expect(() => sameQuantity(loosely(undefined), power(1, 'kW'))).toThrow('sameQuantity');
  });

  it('names a number that is none in words', () => {
    const forged = loosely<Quantity<'temperature'>>({ kind: 'temperature', si: NaN, unit: 'K' });
    expect(() => subtract(forged, temperature(3, 'K'))).toThrow('first must be a finite number, got NaN K.');
  });

  it('reads no text of an unknown kind, and no value that is not text', () => {
    expect(() => parse('pwer' as never, '5 kW')).toThrow('parse: kind must be a kind of quantity, such as power');
    expect(() => parse('__proto__' as never, '5 kW')).toThrow(CalculationError);
    expect(() => parse('power', loosely(5))).toThrow('parse: text must be text with a unit, got the bare number 5.');
  });

  it('tells a decimal comma from a unit', () => {
    expect(() => parse('power', '2,5 kW')).toThrow(
      `"2,5 kW" has a comma that was not to be expected. If the comma is the decimal sign, give { decimal: ',' }; leave out signs between thousands.`,
    );
    expect(() => parse('power', '1.234,5 kW', { decimal: ',' })).toThrow('has a point that was not to be expected');
    expect(parse('power', '2,5 kW', { decimal: ',' }).in('kW')).toBe(2.5);
  });

  it('says what is wrong with a unit of another kind without calling it ambiguous', () => {
    expect(() => parse('absolute pressure', '22.9 psig')).toThrow(
      'absolute pressure: "psig" cannot be taken as it is: it is a gauge pressure',
    );
  });

  it('takes pounds in the plural, as logs write torque', () => {
    for (const text of ['300 ft-lbs', '300 ft lbs', '300 lbs-ft', '300 FT-LBS'])
      expect(parse('torque', text).si).toBe(torque(300, 'lb·ft').si);
  });
});

describe('plain data from elsewhere', () => {
  it('is refused where its value is impossible for its kind', () => {
    expect(() => revive({ kind: 'temperature', si: -5, unit: 'K' })).toThrow(CalculationError);
    expect(() => revive({ kind: 'temperature', si: NaN, unit: 'K' })).toThrow(CalculationError);
  });

  it('is refused where its notes or label are not what they should be', () => {
    expect(() => revive({ kind: 'temperature', si: 300, unit: 'K', notes: 'boo' })).toThrow('whose notes are a list');
    expect(() => revive({ kind: 'temperature', si: 300, unit: 'K', notes: [null] })).toThrow('whose notes are a list');
    expect(() => revive({ kind: 'temperature', value: 300, unit: 'K', label: {} })).toThrow('whose label is text');
  });
});

describe('an error of another copy of the library', () => {
  it('is known by a catch of this one, and nothing else is', async () => {
    vi.resetModules();
    const other = await import('../../src/units/index.js');
    expect(other.CalculationError).not.toBe(CalculationError);
    expect(() => other.power(NaN, 'kW')).toThrow(CalculationError);
    expect(() => other.parse('power', '2 bananas')).toThrow(UnitError);
    const thrown: unknown = new other.UnitError('unknown unit', 'no');
    expect(thrown instanceof CalculationError).toBe(false);
    expect(new Error('no') instanceof CalculationError).toBe(false);
    expect(loosely<object>(null) instanceof UnitError).toBe(false);
  });
});
