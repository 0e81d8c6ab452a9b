import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compressorMap, compressorMapFromJson, compressorMapReferences } from '../../src/compressor/index.js';
import { CalculationError, massFlow, percent, ratio, rotationalSpeed } from '../../src/units/index.js';
import { demoMap, demoMapText } from './demo-map.js';

type Json = Record<string, unknown>;
const changed = (change: (record: Json) => void): unknown => {
  const record = JSON.parse(demoMapText) as Json;
  change(record);
  return record;
};
const line = (record: Json, i: number): Json => (record['speedLines'] as Json[])[i]!;

describe('a compressor map as JSON', () => {
  it('is the same map after a journey through text', () => {
    const map = demoMap();
    const again = compressorMapFromJson(JSON.stringify(map));
    expect(JSON.stringify(again)).toBe(JSON.stringify(map));
    const point = { correctedFlow: massFlow(201.7, 'g/s'), pressureRatio: ratio(2.23) };
    expect(again.isentropicEfficiency(point).si).toBe(map.isentropicEfficiency(point).si);
    expect(JSON.parse(JSON.stringify(map))).toEqual(JSON.parse(demoMapText));
  });

  it('keeps the units it was drawn up in, the reference and the surge line', () => {
    const lines = [80, 110].map((thousands, i) => ({
      correctedSpeed: rotationalSpeed(thousands, '1/s'),
      points: [0, 1, 2].map((k) => ({
        correctedFlow: massFlow(10 + 5 * i + 7 * k, 'lb/min'),
        pressureRatio: ratio(1.5 + 0.4 * i - 0.05 * k),
        isentropicEfficiency: percent(70),
      })),
    }));
    const surgeLine = lines.map(({ points: [first] }) => first!);
    const map = compressorMap({ reference: compressorMapReferences.poundsPerMinute, speedLines: lines, surgeLine });
    const record = map.toJSON();
    expect(record.units).toEqual({ correctedSpeed: '1/s', correctedFlow: 'lb/min' });
    expect(record.reference).toEqual({ temperature: '545 °R', pressure: '13.95 psi' });
    expect(record.surgeLine).toEqual([
      [10, 1.5],
      [15, 1.9],
    ]);
    expect(JSON.stringify(compressorMapFromJson(record))).toBe(JSON.stringify(map));
  });

  it.each([
    { what: 'no JSON', json: '{', words: /json must be a text in JSON/ },
    { what: 'a list', json: [], words: /json must be an object, got a list/ },
    {
      what: 'nothing',
      json: {},
      words: /reference must be an object, got nothing[\s\S]*units must be an object, got nothing/,
    },
    {
      what: 'a reference without its unit',
      json: changed((record) => (record['reference'] = { temperature: '298.15', pressure: '100 kPa' })),
      words: /reference\.temperature must be a text with a unit, 298\.15 K for instance, got the text "298\.15"/,
    },
    {
      what: 'a unit that is none',
      json: changed((record) => (record['units'] = { correctedSpeed: 'rpm', correctedFlow: 'bananas' })),
      words: /units\.correctedFlow must be a unit of mass flow, such as kg\/s, got the text "bananas"/,
    },
    {
      what: 'a name of the object itself as a unit',
      json: changed((record) => (record['units'] = { correctedSpeed: 'constructor', correctedFlow: '__proto__' })),
      words: /units\.correctedSpeed must be a unit of speed[\s\S]*units\.correctedFlow must be a unit of mass flow/,
    },
    {
      what: 'rows of the wrong length and of text',
      json: changed((record) => {
        line(record, 1)['points'] = [[0.06, 1.4], [0.08, '1.5', 0.7], 'x'];
        line(record, 2)['correctedSpeed'] = null;
      }),
      words:
        /speedLines\[1\]\.points\[0\] must be a list of 3 numbers, got a list[\s\S]*points\[1\]\[1\] must be a number, got the text "1\.5"[\s\S]*points\[2\] must be a list of 3 numbers, got the text "x"[\s\S]*speedLines\[2\]\.correctedSpeed must be a number, got null/,
    },
    {
      what: 'numbers that cannot be',
      json: changed((record) => (line(record, 0)['correctedSpeed'] = -5)),
      words: /speedLines\[0\]\.correctedSpeed must be between/,
    },
  ])('refuses $what, and says where', ({ json, words }) => {
    expect(() => compressorMapFromJson(json)).toThrow(CalculationError);
    expect(() => compressorMapFromJson(json)).toThrow(words);
  });

  it('is either read or refused with words, whatever it holds', () => {
    fc.assert(
      fc.property(fc.anything({ withNullPrototype: true }), fc.jsonValue(), (anything, value) => {
        for (const json of [anything, value, changed((record) => (record['speedLines'] = value))]) {
          try {
            compressorMapFromJson(json);
          } catch (error) {
            expect(error).toBeInstanceOf(CalculationError);
          }
        }
      }),
    );
  });
});
