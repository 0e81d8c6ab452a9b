import { expect } from 'vitest';

/** Passes if a number rounds to the figure as printed, to its last digit. */
export function expectPrinted(value: number | undefined, printed: string): void {
  const [mantissa = '', exponent = '0'] = printed.toLowerCase().split('e');
  const decimals = (mantissa.split('.')[1] ?? '').length;
  const halfUnit = 0.5 * 10 ** (Number(exponent) - decimals);
  const off = Math.abs((value ?? NaN) - Number(printed));
  expect(off <= halfUnit * (1 + 1e-6), `${value} is not ${printed} as printed`).toBe(true);
}

/** The code of the error that a call throws; fails if it throws none. */
export function codeOf(call: () => unknown): unknown {
  try {
    call();
  } catch (error) {
    return (error as { code?: unknown }).code;
  }
  return expect.fail('nothing was thrown');
}
