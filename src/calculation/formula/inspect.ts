import { arityOfBuiltIn } from './syntax.js';
import type { ComparisonFormula, Formula } from './syntax.js';

/**
 * The symbols a formula reads, once each, in the order they are written. `pi` is a constant and not among them.
 *
 * @example
 * symbolsOf(parseFormula('m * cp * (T2 - T1)')) //=> ['m', 'cp', 'T2', 'T1']
 */
export function symbolsOf(formula: Formula): readonly string[] {
  const names: string[] = [];
  for (const part of partsOf(formula)) if (part.type === 'symbol' && part.name !== 'pi') names.push(part.name);
  return unique(names);
}

/**
 * The functions a formula needs beside the built-in ones, once each, in the order they are written.
 *
 * @example
 * functionsOf(parseFormula('0.621945 * psat(Td) / (p - psat(Td))')) //=> ['psat']
 */
export function functionsOf(formula: Formula): readonly string[] {
  const names: string[] = [];
  for (const part of partsOf(formula)) {
    if (part.type === 'call' && arityOfBuiltIn(part.name) === undefined) names.push(part.name);
  }
  return unique(names);
}

/** Two numbers whose order decides which way a formula goes. */
export interface ComparedNumbers {
  readonly left: Formula;
  readonly right: Formula;
}

/**
 * Every pair of numbers a formula compares: where one passes the other the formula changes branch, so a test of a
 * kernel should look just beside it. `abs(x)` compares x with zero; `min` and `max` compare their arguments.
 * The two sides of an equation are not compared.
 *
 * @example
 * numbersCompared(parseFormula('C < 1e-6 ? 1 : 1 - C')) // one pair: the symbol C and the number 1e-6
 */
export function numbersCompared(formula: Formula): readonly ComparedNumbers[] {
  const pairs: ComparedNumbers[] = [];
  const equation = sidesOfEquation(formula);
  const roots = equation === undefined ? [formula] : [equation.left, equation.right];
  for (const root of roots) {
    for (const part of partsOf(root)) {
      if (part.type === 'comparison') pairs.push({ left: part.left, right: part.right });
      if (part.type !== 'call') continue;
      const [first, ...others] = part.arguments;
      if (first === undefined) continue;
      if (part.name === 'abs') pairs.push({ left: first, right: { type: 'number', text: '0' } });
      if (part.name === 'min' || part.name === 'max') {
        for (const other of others) pairs.push({ left: first, right: other });
      }
    }
  }
  return pairs;
}

/**
 * The two sides of an equation such as `cp * log(T2 / T1) == R * log(PR)`; undefined for a formula that gives a value.
 */
export function sidesOfEquation(formula: Formula): Pick<ComparisonFormula, 'left' | 'right'> | undefined {
  if (formula.type !== 'comparison' || formula.operator !== '==') return undefined;
  return { left: formula.left, right: formula.right };
}

/**
 * The symbols a formula uses as lists: alone inside `sum`, `prod` or `mean`, or beside an element-by-element operator
 * there.
 */
export function listsIn(formula: Formula): readonly string[] {
  const names: string[] = [];
  for (const part of partsOf(formula)) {
    const candidates =
      part.type === 'call' && ['sum', 'prod', 'mean'].includes(part.name) && part.arguments.length === 1
        ? part.arguments
        : part.type === 'operation' && part.operator.startsWith('.')
          ? [part.left, part.right]
          : [];
    for (const candidate of candidates) if (candidate.type === 'symbol') names.push(candidate.name);
  }
  return unique(names);
}

function unique(names: readonly string[]): readonly string[] {
  return [...new Set(names)];
}

function* partsOf(formula: Formula): Generator<Formula> {
  const waiting: Formula[] = [formula];
  for (let part = waiting.pop(); part !== undefined; part = waiting.pop()) {
    yield part;
    waiting.push(...[...childrenOf(part)].reverse());
  }
}

function childrenOf(formula: Formula): readonly Formula[] {
  switch (formula.type) {
    case 'number':
    case 'symbol':
      return [];
    case 'negation':
      return [formula.operand];
    case 'call':
      return formula.arguments;
    case 'conditional':
      return [formula.condition, formula.then, formula.otherwise];
    default:
      return [formula.left, formula.right];
  }
}
