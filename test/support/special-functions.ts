import type { Decimal } from 'decimal.js';

/** Functions that formulas name and that have no formula of their own, in decimals of any precision. */
export const specialFunctions: Readonly<Record<string, (values: Decimal[]) => Decimal>> = {};
