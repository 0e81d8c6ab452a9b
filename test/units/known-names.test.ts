import { describe, expect, it } from 'vitest';
import { CalculationError } from '../../src/units/index.js';
import { choiceProblems, requireOptions, unknownNames } from '../../src/units/internal.js';

const mendOf = (name: string, known: readonly string[]): string => unknownNames({ [name]: 1 }, known)[0]!.mend;

describe('names that nothing reads', () => {
  it('are refused with what there is, and with what was probably meant', () => {
    const [problem] = unknownNames({ fanPresure: 400, roadSpeed: 0 }, ['roadSpeed', 'fanPressure'], 'drive.');
    expect(problem).toEqual({
      code: 'unknown',
      input: 'drive.fanPresure',
      need: 'one of roadSpeed, fanPressure',
      got: 'the bare number 400',
      mend: 'Did you mean fanPressure?',
    });
  });

  it.each([
    ['humidity', ['pressure', 'temperature', 'humidityRatio'], 'Did you mean humidityRatio?'],
    ['wetbulb', ['wetBulb', 'dewPoint'], 'Did you mean wetBulb?'],
    ['humidty', ['relativeHumidity', 'temperature'], 'Did you mean relativeHumidity?'],
    ['pressure', ['fanPressure', 'boostPressure'], 'Is the name misspelt?'],
    ['share', ['base', 'added', 'volumeFraction'], 'Is the name misspelt?'],
    ['cell', ['heatCapacity', 'temperature', 'cells'], 'Did you mean cells?'],
    ['p', ['x', 'q'], 'Is the name misspelt?'],
  ] as const)('%s among %s: %s', (name, known, mend) => {
    expect(mendOf(name, known)).toBe(mend);
  });

  it('may be left undefined, and every known name may be absent', () => {
    expect(unknownNames({ a: 1, other: undefined }, ['a', 'b'])).toEqual([]);
  });
});

describe('a choice', () => {
  it('is one of the words or left out', () => {
    expect(choiceProblems('wick', 'ice', ['water', 'ice'])).toEqual([]);
    expect(choiceProblems('wick', undefined, ['water', 'ice'])).toEqual([]);
    expect(choiceProblems('model', 'realgas', ['perfect gas', 'real gas'])).toEqual([
      {
        code: 'unknown',
        input: 'model',
        need: "'perfect gas' or 'real gas' or left out",
        got: 'the text "realgas"',
        mend: "Did you mean 'real gas'?",
      },
    ]);
    expect(choiceProblems('fins', undefined, ['louvred', 'offset strip'], true)).toMatchObject([
      { code: 'missing', need: "'louvred' or 'offset strip'", got: 'nothing' },
    ]);
    expect(choiceProblems('wick', 3, ['water', 'ice'])[0]).toMatchObject({ got: 'the bare number 3', mend: '' });
  });
});

describe('options', () => {
  it('come as one object, or not at all', () => {
    const known = { wick: ['water', 'ice'], limit: 'any' } as const;
    expect(() => requireOptions('humid air', undefined, known)).not.toThrow();
    expect(() => requireOptions('humid air', { wick: 'ice', limit: 4 }, known)).not.toThrow();
    for (const wrong of ['ice', 3, ['ice'], null]) {
      expect(() => requireOptions('humid air', wrong, known)).toThrow(CalculationError);
      expect(() => requireOptions('humid air', wrong, known)).toThrow('an object of options: wick, limit');
    }
  });

  it('are refused all at once', () => {
    const wrong = { wik: 'ice', wick: 'snow' };
    expect(() => requireOptions('humid air', wrong, { wick: ['water', 'ice'] })).toThrow(/2 inputs need mending/);
  });
});
