import { inspect } from 'node:util';
import { describe, expect, it } from 'vitest';
import { channel, LogError, readLog, type ReadLogOptions } from 'coldside/sweep';

function errorOf(text: string | Uint8Array, options: ReadLogOptions = {}): LogError {
  try {
    readLog(text, { file: 'logs/pull 2.csv', ...options });
  } catch (error) {
    if (error instanceof LogError) return error;
    throw error;
  }
  throw new Error('It was read.');
}

describe('a broken log', () => {
  it('that stops in the middle of a row says where, and how to mend it', () => {
    const rows = Array.from({ length: 97 }, (_, at) => `${at / 10},${2500 + at},150,1.0,30,0.82`);
    const header = 'Time (s),RPM,Torque (Nm),Boost (bar),IAT (C),Lambda';
    const error = errorOf([header, ...rows, '9.70,5904,28'].join('\n'));
    expect(error.code).toBe('ragged row');
    expect(error.line).toBe(99);
    expect(error.message).toBe(
      'logs/pull 2.csv, line 99: needed 6 values as in the header, found 3 ("9.70,5904,28"). ' +
        'The logger may have stopped here; cut the file at the last whole row, or leave it out.',
    );
  });

  it('shows itself in one line, without a stack', () => {
    const error = errorOf('RPM,Torque (Nm)\n2500,abc\n');
    expect(inspect(error)).toBe(`LogError: ${error.message}`);
    expect(error.message).not.toContain('\n');
  });

  it('is never half read: a bad cell in the last row fails the whole', () => {
    const rows = Array.from({ length: 5000 }, (_, at) => `${2500 + at},150`);
    const error = errorOf(`RPM,Torque (Nm)\n${rows.join('\n')}\n2600,#REF!\n`);
    expect(error).toMatchObject({
      code: 'not a number',
      line: 5002,
      column: 'Torque (Nm)',
      found: '"#REF!"',
      expected: 'a number',
    });
  });

  it.each([
    ['nothing', '', 'empty', /found nothing/],
    ['only line ends', '\n\n \n', 'empty', /found nothing/],
    ['only a header', 'RPM,Torque (Nm)\n', 'empty', /rows of numbers/],
    ['only a header and units', 'RPM,Torque\nrpm,Nm\n', 'empty', /rows of numbers/],
    ['no header', '0,2500,150\n0.1,2510,151\n', 'no header', /column names.*numbers only/],
    ['one column', 'RPM\n2500\n', 'one column', /comma, semicolon or tab/],
    [
      'a short row inside',
      'RPM,Torque (Nm),Lambda\n2500,150,1\n2510\n2520,150,1\n',
      'ragged row',
      /line 3.*needed 3 values/,
    ],
    ['a long row', 'RPM,Torque (Nm)\n2500,150\n2500,150,7\n', 'ragged row', /line 3.*found 3/],
    [
      'decimal commas between commas',
      'RPM,Torque (Nm)\n2500,150,5\n',
      'ragged row',
      /decimal commas.*another character/,
    ],
    ['an open quotation mark', 'RPM,Torque (Nm)\n2500,"150\n2510,151\n', 'quote', /line 2.*never closed/],
    ['text after a quotation mark', 'RPM,Torque (Nm)\n2500,"150"x\n', 'quote', /line 2.*after the closing/],
    [
      'text for a number',
      'RPM,Torque (Nm)\n2500,n/a\n',
      'not a number',
      /line 2: column "Torque \(Nm\)" needed a number, found "n\/a"/,
    ],
    ['infinity', 'RPM,Torque (Nm)\n2500,Infinity\n', 'not a number', /Infinity/],
    ['a hexadecimal number', 'RPM,Torque (Nm)\n2500,0x10\n', 'not a number', /0x10/],
    ['an unknown separator line', 'sep=x\nRPMxTorque\n', 'separator', /after "sep="/],
    [
      'no engine speed',
      'Time (s),Torque (Nm)\n0,150\n',
      'no engine speed',
      /"Time \(s\)", "Torque \(Nm\)".*engineSpeed: channel/,
    ],
    ['blank engine speed', 'RPM,Torque (Nm)\n,150\n', 'no engine speed', /only blank cells/],
    ['a pull that comes back', 'pull,RPM\n1,2500\n2,2500\n1,2600\n', 'pull comes back', /line 4.*pull "1" again/],
    [
      'a temperature below absolute zero',
      'RPM,IAT (C)\n2500,20\n2510,-999\n',
      'impossible value',
      /line 3.*−999 °C.*absolute zero/,
    ],
    ['a unit nobody knows', 'RPM,Torque (bananas)\n2500,150\n', 'unknown unit', /"bananas" is not a unit of torque/],
    ['an ambiguous unit', 'RPM,Fuel flow (gph)\n2500,10\n', 'unknown unit', /gal\(US\)\/h or gal\(imp\)\/h/],
  ])('with %s is refused', (_, text, code, message) => {
    const error = errorOf(text);
    expect(error.code).toBe(code);
    expect(error.message).toMatch(message);
    expect(error.file).toBe('logs/pull 2.csv');
  });

  it('of zeros and machine code is called no text', () => {
    expect(errorOf(Uint8Array.of(80, 75, 3, 4, 0, 0, 0)).code).toBe('not text');
  });

  it('of too many columns, too long cells or too many characters is refused at once', () => {
    const header = Array.from({ length: 100_000 }, (_, at) => `c${at}`).join(',');
    expect(errorOf(`${header}\n1,2\n`)).toMatchObject({ code: 'too large', line: 1 });
    expect(errorOf(`RPM,Torque (Nm)\n2500,${'1'.repeat(3000)}\n`)).toMatchObject({ code: 'too large', line: 2 });
    expect(errorOf(new Uint8Array(100_000_001)).code).toBe('too large');
  });

  it('keeps its message to one line whatever the file holds', () => {
    const error = errorOf('RPM,"Torque\u0007 (Nm)"\n2500,"a\nb\u2028c"\n', { file: 'a\nb.csv' });
    // eslint-disable-next-line no-control-regex -- control characters are what is looked for
    expect(error.message).not.toMatch(/[\u0000-\u001f\u2028]/);
    expect(errorOf(`RPM,Torque (Nm)\n2500,${'x'.repeat(1900)}\n`).message.length).toBeLessThan(300);
  });
});

describe('a channel map that does not fit', () => {
  const text = 'RPM,Boost (psi),Torque,Torque\n2500,5.6,150,151\n';

  it.each([
    [
      'a column that is not there',
      { boost: channel('Bost', 'gauge pressure', 'psi') },
      'no such column',
      /no column called "Bost"\. There are: "RPM", "Boost \(psi\)"/,
    ],
    ['a column number that is not there', { torque: channel(9, 'torque', 'N·m') }, 'no such column', /no column 9/],
    [
      'one of two columns of a name',
      { torque: channel('Torque', 'torque', 'N·m') },
      'several columns',
      /numbers 3 and 4.*channel\(3\)/,
    ],
    [
      'one column for two channels',
      { boost: channel('Boost'), fuelPressure: channel('Boost') },
      'one column for two',
      /boost and to fuel pressure/,
    ],
    ['a column without a unit anywhere', { torque: channel(3) }, 'no unit', /column "Torque" has no unit/],
  ])('by %s is told', (_, channels, code, message) => {
    const error = errorOf(text, { channels });
    expect(error.code).toBe(code);
    expect(error.message).toMatch(message);
  });

  it('in itself is an error of the call, which names every slip', () => {
    const channels = { bost: channel('Boost'), boost: channel('Boost', 'absolute pressure', 'kPa'), torque: 'Torque' };
    // @ts-expect-error none of the three is a choice for its role
    expect(() => readLog(text, { channels })).toThrow(
      /3 inputs need mending\n.*channels\.bost must be a channel.*There are: time, clock.*\n.*channels\.boost must be gauge pressure, got absolute pressure\. Give it as manifoldPressure.*\n.*channels\.torque must be made by channel/,
    );
    expect(() => channel('Boost', 'gauge pressure', 'bananas' as 'bar')).toThrow(/"bananas" is not a unit/);
  });
});

describe('a clock without a unit', () => {
  it('is told with the range it really has', () => {
    expect(() => readLog('RPM (rpm),Torque (N m),Clock\n3000,200,1779000012\n3100,201,1779000034\n')).toThrow(
      'Its values run from 1779000012 to 1779000034.',
    );
  });
});
