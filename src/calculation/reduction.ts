import { CalculationError } from '../units/errors.js';
import { quantityOf } from '../units/internal.js';
import type { Column, Operation, Quantity } from '../units/origin.js';

/** Makes one value of a column, remembering how. Missing rows are left out. */
export function reduceColumn(operation: Operation, column: Column): Quantity {
  const present = column.missing === 0 ? column.si : column.si.filter((value) => !Number.isNaN(value));
  if (present.length === 0) {
    throw new CalculationError(operation.name, [
      {
        code: 'missing',
        input: 'values',
        need: 'a column with at least one value',
        got: `${column.length} rows, all missing`,
        mend: '',
      },
    ]);
  }
  const { kind, unit } = operation.output;
  return quantityOf(
    kind,
    operation.reduce!(present),
    unit,
    { type: 'step', operation, inputs: [column] },
    column.notes ?? [],
  );
}
