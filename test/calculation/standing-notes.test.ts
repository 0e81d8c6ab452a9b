import { describe, expect, it } from 'vitest';
import { assumed, calculation, commonPractice, constant, input, output } from '../../src/calculation/index.js';
import { column, ratio } from '../../src/units/index.js';

const standing = { code: 'caution', message: 'Never a licence to run.' } as const;
const half = constant('test/half', ratio(0.5), { label: 'half', source: commonPractice('half of it') });
const share = calculation({
  name: 'share',
  task: 'describe the engine',
  inputs: {
    whole: input('x', 'ratio', { min: 0, max: 10, trusted: [0, 5], typical: 1 }),
    part: assumed('s', 'ratio', { min: 0, max: 1, assume: half }),
  },
  output: output('y', 'ratio', '1'),
  formula: 's * x',
  si: (x, s) => s * x,
  notes: [standing],
  sources: [commonPractice('part of a whole')],
});
const note = { ...standing, calculation: 'share' };

describe('a note that a calculation puts on every result', () => {
  it('is there with the best of inputs, over columns too, and is part of the definition', () => {
    expect(share({ whole: ratio(1) }).notes).toEqual([note]);
    expect(share.columns({ whole: column('ratio', [1, 2], '1') }).notes).toEqual([note]);
    expect(share.spec.notes).toEqual([note]);
  });

  it('comes before what the inputs bring along, and reaches what is computed from the result once', () => {
    const far = share({ whole: ratio(6) });
    expect(far.notes.map(({ code }) => code)).toEqual(['caution', 'outside trusted range']);
    expect(share({ whole: far }).notes).toEqual(far.notes);
  });

  it('is no reason to refuse in a strict call', () => {
    expect(share({ whole: ratio(1) }, { strict: true }).notes).toEqual([note]);
    expect(() => share({ whole: ratio(6) }, { strict: true })).toThrow(/within 0 to 5/);
  });
});
