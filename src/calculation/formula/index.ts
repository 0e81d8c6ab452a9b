export { parseFormula } from './parse.js';
export { functionsOf, listsIn, numbersCompared, sidesOfEquation, symbolsOf } from './inspect.js';
export type { ComparedNumbers } from './inspect.js';
export { doubles, evaluateFormula, evaluateWith } from './evaluate.js';
export type { Arithmetic, FormulaFunctions, FormulaValues } from './evaluate.js';
export { formatText } from './text.js';
export type { Substitute } from './text.js';
export { toMathML } from './mathml.js';
export type { MathMLOptions } from './mathml.js';
export { toLatex } from './latex.js';
export type { LatexOptions } from './latex.js';
export type { NotationOf, ShownValue, SymbolNotation } from './notation.js';
export { escapeHtml, escapeLatex, escapeMarkdown } from './escape.js';
export { FormulaError } from './syntax.js';
export type {
  CallFormula,
  ComparisonFormula,
  ComparisonOperator,
  ConditionalFormula,
  Formula,
  FormulaErrorCode,
  LogicFormula,
  NegationFormula,
  NumberFormula,
  OperationFormula,
  Operator,
  SymbolFormula,
} from './syntax.js';
