import {
  escapeLatex,
  parseFormula,
  toLatex as formulaToLatex,
  type Formula,
  type LatexOptions,
} from '../formula/index.js';
import { numbersOf } from './html.js';
import type { ExplainedCase, ExplainedStep, ExplanationModel } from './model.js';
import { solutionText, sourceText, valueText, withDecimal } from './words.js';

/** How the LaTeX fragment is written. */
export interface LatexLayout {
  /** Numbers and units through the siunitx package; plain amsmath otherwise. */
  readonly siunitx?: boolean;
  readonly decimal?: '.' | ',';
  /** LaTeX for symbols, such as `{ PR: '\\pi_c' }`. */
  readonly symbols?: Readonly<Record<string, string>>;
}

/** The worked example as a LaTeX fragment to \input: an enumerate with one display for each step. */
export function toLatex(model: ExplanationModel, layout: LatexLayout): string {
  const decimal = layout.decimal ?? '.';
  const parts: string[] = [];
  if (model.given.length > 0)
    parts.push(`Given: ${escapeLatex(model.given.map((value) => valueText(value, decimal)).join('; '))}.\n`);
  if (model.assumed.length > 0)
    parts.push(`Assumed: ${escapeLatex(model.assumed.map((value) => valueText(value, decimal)).join('; '))}.\n`);
  if (model.steps.length > 0) {
    parts.push('\\begin{enumerate}', ...model.steps.map((step) => stepLatex(step, layout)), '\\end{enumerate}');
  }
  for (const solution of model.solutions) parts.push(`${escapeLatex(solutionText(solution, decimal))}.\n`);
  parts.push(`Answer: ${escapeLatex(`${model.name} = ${withDecimal(model.text, decimal)}`)}.`);
  for (const note of model.notes) parts.push(`\nNote: ${escapeLatex(note)}`);
  return parts.join('\n');
}

function stepLatex(step: ExplainedStep, layout: LatexLayout): string {
  const shared: LatexOptions = {
    decimal: layout.decimal ?? '.',
    siunitx: layout.siunitx ?? false,
    symbols: layout.symbols ?? {},
  };
  const parts = [`\\item ${escapeLatex(step.name)}`];
  const formula = step.isEquation ? step.formula : equation(step);
  for (const one of step.cases) {
    const lines = step.isEquation
      ? [formulaToLatex(formula, shared), formulaToLatex(formula, { ...shared, symbol: numbersOf(one) })]
      : [formulaToLatex(formula, shared), `= ${formulaToLatex(step.formula, { ...shared, symbol: numbersOf(one) })}`];
    lines.push(resultLatex(step, one, shared));
    parts.push(`\\begin{align*}\n${lines.map((line) => `  & ${line}`).join(' \\\\\n')}\n\\end{align*}`);
  }
  for (const source of step.sources) parts.push(`${escapeLatex(sourceText(source))}.`);
  for (const note of step.notes) parts.push(`Note: ${escapeLatex(note)}`);
  return parts.join('\n');
}

function equation(step: ExplainedStep): Formula {
  return {
    type: 'comparison',
    operator: '==',
    left: { type: 'symbol', name: step.symbol },
    right: parseFormula(step.formulaText),
  };
}

/** The result written through the formula writer, so that numbers and units look as they do in the lines above. */
function resultLatex(step: ExplainedStep, one: ExplainedCase, shared: LatexOptions): string {
  const value = formulaToLatex({ type: 'symbol', name: 'y' }, { ...shared, symbols: {}, symbol: () => one.result });
  const si =
    one.resultSi &&
    formulaToLatex({ type: 'symbol', name: 'y' }, { ...shared, symbols: {}, symbol: () => one.resultSi });
  const result = si === undefined ? value : `${si} = ${value}`;
  return step.isEquation
    ? `${formulaToLatex({ type: 'symbol', name: step.symbol }, shared)} = ${result}`
    : `= ${result}`;
}
