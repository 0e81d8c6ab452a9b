import { argumentName } from './argument-name.js';
import type { Problem } from './errors.js';
import { siUnits, formatValue } from './format.js';
import { constructorName, dimensionOf, kindOf, withArticle, type Kind } from './kinds.js';
import type { Operation, OperationInput, Quantity } from './origin.js';
import { NO_NOTES, describe, isColumn, isQuantity, quantityOf } from './quantity.js';
import { unitChoices } from './unit.js';

/** An SI value in words, in a unit or the usual one of its kind. */
export function showSi(kind: Kind, si: number, unit?: string): string {
  return formatValue(
    quantityOf(kind, si, unit ?? siUnits[kind] ?? Object.keys(kindOf(kind).units)[0]!, undefined, NO_NOTES),
  );
}

/** What is wrong with one input, or undefined. */
export function inputProblem(
  input: OperationInput,
  name: string,
  value: unknown,
  columns: 'refused' | 'accepted',
): Problem | undefined {
  if (value === undefined || value === null) {
    return {
      code: 'missing',
      input: name,
      need: withArticle(input.kind),
      got: 'nothing',
      mend: giveUnit(input.kind, undefined),
    };
  }
  if (!isQuantity(value) && !isColumn(value)) {
    return {
      code: 'kind',
      input: name,
      need: withArticle(input.kind),
      got: describe(value),
      mend: giveUnit(input.kind, value),
    };
  }
  if (value.kind !== input.kind) {
    const mend = wrongKindMend(input.kind, value.kind);
    return { code: 'kind', input: name, need: withArticle(input.kind), got: describe(value), mend };
  }
  if (isColumn(value) && columns === 'refused') {
    const mend = 'For a whole column call .columns.';
    return { code: 'kind', input: name, need: `one ${input.kind}`, got: describe(value), mend };
  }
  if (isColumn(value) || (value.si >= input.min && value.si <= input.max)) return undefined;
  return {
    code: 'impossible',
    input: name,
    need: rangeText(input, value.unit),
    got: formatValue(value, { figures: value.origin?.type === 'step' ? 4 : undefined }),
    mend: impossibleMend(input, value),
  };
}

/** The possible range in words. */
export function rangeText(input: OperationInput, unit?: string): string {
  const low = Number.isFinite(input.min) && showSi(input.kind, input.min, unit);
  const high = Number.isFinite(input.max) && showSi(input.kind, input.max, unit);
  if (low !== false && high !== false) return `between ${low} and ${high}`;
  if (low === false && high === false) return 'a finite number';
  return low === false ? `at most ${String(high)}` : `at least ${low}`;
}

function giveUnit(kind: Kind, value: unknown): string {
  const number = typeof value === 'number' ? String(value) : 'value';
  if (kind === 'ratio') return `Write ratio(${number}), or percent(${number}) for ${number} %.`;
  const units = unitChoices(kind);
  return units === "'1'"
    ? `Write ${constructorName(kind)}(${number}).`
    : `Give it a unit: ${constructorName(kind)}(${number}, ${units}).`;
}

/** The way across, where people mix two kinds up. */
function wrongKindMend(needed: Kind, got: Kind): string {
  if (needed === 'absolute pressure' && got === 'sea-level pressure')
    return 'Use stationPressure({ seaLevel, elevation }).';
  if (needed === 'absolute pressure' && got === 'gauge pressure') return 'Use absolute(gauge, barometer).';
  if (needed === 'gauge pressure' && got === 'absolute pressure') return 'Use gauge(absolute, barometer).';
  if (needed === 'ratio' && dimensionOf(got) !== 'number') return 'Use ratioOf(outlet, inlet).';
  if (needed === 'temperature difference' && got === 'temperature') return 'Use subtract(warmer, colder).';
  if (needed === 'temperature' && got === 'temperature difference')
    return 'A difference has no place on the scale: use temperature(value, unit).';
  if (needed === 'pressure difference' && dimensionOf(got) === 'pressure') return 'Use subtract(higher, lower).';
  if (needed === 'mass flow' && got === 'volume flow')
    return 'A volume flow needs a density: use massFlowOfVolume({ volumeFlow, density }).';
  if (needed === 'power' && got === 'torque') return 'Use powerFromTorque({ torque, engineSpeed }).';
  if (needed === 'lambda' && got === 'air-fuel ratio')
    return 'Divide by the stoichiometric ratio of the fuel: lambdaFromAirFuelRatio.';
  return '';
}

function impossibleMend(input: OperationInput, value: Quantity): string {
  const inside = (si: number): boolean => si >= input.min && si <= input.max;
  const { si, kind } = value;
  if (kind === 'ratio' && input.min >= 1 && si > 0 && si < 1) return 'Is it upside down? Write ratioOf(outlet, inlet).';
  if (
    dimensionOf(kind) === 'number' &&
    kind in { ratio: 1, 'relative humidity': 1, 'mole fraction': 1 } &&
    si > 1 &&
    inside(si / 100)
  ) {
    return kind === 'ratio'
      ? `For ${si} % write percent(${si}).`
      : `For ${si} % write ${constructorName(kind)}(${si}, '%').`;
  }
  if (dimensionOf(kind) === 'pressure' && inside(si * 1000)) return 'Is it in kilo-units, such as kPa?';
  if (dimensionOf(kind) === 'pressure' && inside(si / 1000)) return 'Is it in Pa?';
  return '';
}

/** A rule's need as the rest of a sentence: some say what must be, some what is needed. */
export function needed({ need }: { readonly need: string }): string {
  return need.includes(' must ') ? need : `it needs ${need}`;
}

/** A condition between inputs that does not hold. */
export function ruleProblem(
  operation: Operation,
  rule: { readonly need: string },
  given: readonly Quantity[],
): Problem {
  return { code: 'rule', input: '', need: needed(rule), got: allInputs(operation, given), mend: '' };
}

/** A kernel that has no answer although every input is possible. */
export function noAnswerProblem(operation: Operation, given: readonly Quantity[]): Problem {
  return {
    code: 'no answer',
    input: '',
    need: 'there is no answer for these inputs',
    got: allInputs(operation, given),
    mend: '',
  };
}

/** Columns of different length. */
export function lengthProblem(lengths: readonly number[]): Problem {
  return {
    code: 'length',
    input: '',
    need: 'columns must be equally long',
    got: `${lengths.join(' and ')} rows`,
    mend: '',
  };
}

function allInputs(operation: Operation, given: readonly Quantity[]): string {
  return given.map((value, i) => `${argumentName(operation, i, given.length)} ${formatValue(value)}`).join(', ');
}
