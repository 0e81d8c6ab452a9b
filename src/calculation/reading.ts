import type { Kind } from '../units/kinds.js';
import { differenceKind, kindOf, withArticle } from '../units/kinds.js';
import type { Operation, OperationInput } from '../units/origin.js';

/** Which errors a reading carries: one that is added, one that grows with the reading, or both. */
export type ReadingErrors = 'fixed' | 'of reading' | 'both';

const made = new Map<string, Operation>();

/** The step from what was read to the value it stands for. Its errors are zero, and uncertain. */
export function readingOperation(kind: Kind, unit: string, errors: ReadingErrors): Operation {
  const key = `${kind}|${unit}|${errors}`;
  let operation = made.get(key);
  if (!operation) made.set(key, (operation = make(kind, unit, errors)));
  return operation;
}

const KERNELS = {
  fixed: { formula: 'x + e', kernel: (x: number, e: number) => x + e },
  'of reading': { formula: 'x * (1 + r)', kernel: (x: number, r: number) => x * (1 + r) },
  both: { formula: 'x * (1 + r) + e', kernel: (x: number, r: number, e: number) => x * (1 + r) + e },
} as const;

function make(kind: Kind, unit: string, errors: ReadingErrors): Operation {
  const open = { min: -Infinity, max: Infinity };
  const inputs: OperationInput[] = [{ name: 'reading', symbol: 'x', kind, ...open }];
  if (errors !== 'fixed') inputs.push({ name: 'gainCorrection', symbol: 'r', kind: 'ratio', ...open });
  if (errors !== 'of reading') inputs.push({ name: 'correction', symbol: 'e', kind: differenceKind(kind), ...open });
  const { formula, kernel } = KERNELS[errors] as { formula: string; kernel: (...si: number[]) => number };
  const minimum = kindOf(kind).minimum;
  const rules =
    minimum === undefined
      ? []
      : [
          {
            need: `a corrected reading must not be below zero, being ${withArticle(kind)}`,
            holds: (...si: number[]) => kernel(...si) >= minimum,
          },
        ];
  return { name: 'reading', inputs, output: { symbol: 'y', kind, unit }, formula, kernel, rules, sources: [] };
}
