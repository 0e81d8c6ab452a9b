import { Decimal as DecimalClass } from 'decimal.js';
import type { Operation } from '../../src/units/index.js';
import {
  evaluateWith,
  parseFormula,
  sidesOfEquation,
  type Arithmetic,
  type FormulaValues,
} from '../../src/calculation/formula/index.js';
import type { AnyCalculation } from './calculations.js';
import { edgeInputs, flatInputs, possibleInputs } from './inputs.js';
import { specialFunctions } from './special-functions.js';

const Decimal = DecimalClass.clone({ precision: 64, toExpNeg: -400, toExpPos: 400 });
type Decimal = DecimalClass;

/** Kernels may be off by a few roundings of the result and of each input. */
const BOUND = 4;
const RANDOM_POINTS = 50;
const STEP = new Decimal('1e-24');

/**
 * Evaluates the formula that a calculation shows with 64-digit decimals at many points of its domain and compares its kernel with it.
 *
 * The error is measured in units of what rounding the result and each input once would do, because near a difference of nearly equal
 * numbers no kernel can do better.
 */
export function compareWithFormula(calculation: AnyCalculation): { worst: number; bound: number; where: string } {
  const points = [...possibleInputs(calculation, RANDOM_POINTS), ...edgeInputs(calculation)];
  if (points.length < RANDOM_POINTS / 2)
    throw new Error(`only ${points.length} possible points found: give typical values and bounds`);
  let worst = 0;
  let where = '';
  for (const point of points) {
    const error = errorAt(calculation, point);
    if (!(error <= worst)) {
      worst = error;
      where = flatInputs(calculation)
        .map((input, i) => `${input.symbol} ${point[i]}`)
        .join(', ');
    }
  }
  return { worst, bound: BOUND, where };
}

function errorAt(calculation: AnyCalculation, point: readonly number[]): number {
  const { spec } = calculation;
  const inputs = point.map(exactly);
  const answer = exactly(calculation.kernel(...point));
  const sides = sidesOfEquation(parseFormula(spec.formula));
  const value = sides
    ? (at: readonly Decimal[], y: Decimal): Decimal =>
        evaluate(spec, sides.left, at, y).minus(evaluate(spec, sides.right, at, y))
    : (at: readonly Decimal[]): Decimal => evaluate(spec, parseFormula(spec.formula), at);
  // For an equation, one Newton step from the kernel's answer is the error, and the slope turns residuals into answers.
  const slope = sides ? slopeOf((y) => value(inputs, y), answer) : new Decimal(1);
  const base = value(inputs, answer);
  const error = (sides ? base.div(slope) : base.minus(answer)).abs();
  const exact = sides ? answer.minus(base.div(slope)) : base;
  let conditioning = exact.abs();
  inputs.forEach((input, i) => {
    const moved = inputs.with(i, input.times(STEP.plus(1)));
    conditioning = conditioning.plus(value(moved, answer).minus(base).div(STEP).div(slope).abs());
  });
  if (error.isZero()) return 0;
  return error.div(conditioning.times(2 ** -53).plus(Number.MIN_VALUE)).toNumber();
}

function slopeOf(f: (y: Decimal) => Decimal, at: Decimal): Decimal {
  const step = at.isZero() ? STEP : at.times(STEP);
  return f(at.plus(step)).minus(f(at)).div(step);
}

/** A double as the number it is: its digits as text are not it, and would look like an error of the kernel. */
export function exactly(double: number): Decimal {
  if (!Number.isFinite(double) || double === 0) return new Decimal(double);
  let exponent = 0;
  let mantissa = double;
  while (!Number.isInteger(mantissa)) {
    mantissa *= 2;
    exponent--;
  }
  return new Decimal(BigInt(mantissa).toString()).times(new Decimal(2).pow(exponent));
}

type Formula = ReturnType<typeof parseFormula>;

function evaluate(operation: Operation, formula: Formula, point: readonly Decimal[], answer?: Decimal): Decimal {
  const values: Record<string, Decimal | readonly Decimal[]> = {};
  const lists = operation.inputs.filter((input) => input.list === true).length;
  const first = operation.inputs.length - lists;
  operation.inputs.forEach((input, i) => {
    const length = (point.length - first) / (lists || 1);
    values[input.symbol] =
      input.list === true ? point.slice(first + (i - first) * length, first + (i - first + 1) * length) : point[i]!;
  });
  if (answer) values[operation.output.symbol] = answer;
  return evaluateWith(formula, values as FormulaValues<Decimal>, decimals(operation));
}

function decimals(operation: Operation): Arithmetic<Decimal> {
  return {
    number: (text) => new Decimal(text),
    add: (a, b) => a.plus(b),
    sub: (a, b) => a.minus(b),
    mul: (a, b) => a.times(b),
    div: (a, b) => a.div(b),
    pow: (a, b) => a.pow(b),
    neg: (a) => a.neg(),
    compare: (a, b) => a.comparedTo(b),
    call: (name, values) => {
      const used = operation.uses?.[name];
      if (used) return evaluateUsed(used, values);
      const special = specialFunctions[name];
      if (special) return special(values as Decimal[]);
      return builtIn(name, values);
    },
  };
}

/** What used functions gave: a formula asks for the same again and again, and solving one takes its time. */
const known = new Map<string, Decimal>();

function evaluateUsed(operation: Operation, values: readonly Decimal[]): Decimal {
  const key = [operation.name, ...values.map(String)].join('|');
  const before = known.get(key);
  if (before) return before;
  if (known.size > 2000) known.clear();
  const result = valueOfUsed(operation, values);
  known.set(key, result);
  return result;
}

/** A function that the formula names: its own formula, or, where that is an equation, the root near its kernel's answer. */
function valueOfUsed(operation: Operation, values: readonly Decimal[]): Decimal {
  const formula = parseFormula(operation.formula);
  const sides = sidesOfEquation(formula);
  if (!sides) return evaluate(operation, formula, values);
  const residual = (y: Decimal): Decimal =>
    evaluate(operation, sides.left, values, y).minus(evaluate(operation, sides.right, values, y));
  let y = exactly(operation.kernel(...values.map((value) => value.toNumber())));
  const slope = slopeOf(residual, y);
  for (let i = 0; i < 4; i++) y = y.minus(residual(y).div(slope));
  return y;
}

function builtIn(name: string, values: readonly Decimal[]): Decimal {
  const [x] = values as [Decimal];
  switch (name) {
    case 'exp':
      return x.exp();
    case 'expm1':
      return x.exp().minus(1);
    case 'log':
      return x.ln();
    case 'log1p':
      return x.plus(1).ln();
    case 'sqrt':
      return x.sqrt();
    case 'cbrt':
      return x.cbrt();
    case 'abs':
      return x.abs();
    case 'min':
      return Decimal.min(...values);
    case 'max':
      return Decimal.max(...values);
    case 'sin':
    case 'cos':
    case 'tan':
    case 'sinh':
    case 'cosh':
    case 'tanh':
      return x[name]();
    default:
      throw new Error(`the formula test has no decimals for ${name}`);
  }
}
