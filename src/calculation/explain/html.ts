import { escapeHtml, parseFormula, toMathML, type Formula, type NotationOf } from '../formula/index.js';
import type { ExplainedCase, ExplainedStep, ExplanationModel } from './model.js';
import { numbersText, shownText, solutionText, sourceText, valueText, withDecimal } from './words.js';

/** The worked example as an HTML fragment with MathML: no script, no style, no links, every text escaped. */
export function toHtml(model: ExplanationModel, decimal: '.' | ','): string {
  const numbers = (words: string): string => escapeHtml(withDecimal(words, decimal));
  const list = (title: string, values: readonly string[]): string =>
    values.length === 0
      ? ''
      : `<p class="worked-title">${title}</p><ul>${values.map((value) => `<li>${escapeHtml(value)}</li>`).join('')}</ul>`;
  const steps = model.steps.map((step) => `<li>${stepHtml(step, decimal, numbers)}</li>`).join('');
  return [
    '<div class="worked">',
    list(
      'Given',
      model.given.map((value) => valueText(value, decimal)),
    ),
    list(
      'Assumed',
      model.assumed.map((value) => valueText(value, decimal)),
    ),
    steps && `<ol class="worked-steps">${steps}</ol>`,
    list(
      'Found by solving',
      model.solutions.map((solution) => solutionText(solution, decimal)),
    ),
    `<p class="worked-answer">Answer: <strong>${escapeHtml(`${model.name} = `)}${numbers(model.text)}</strong></p>`,
    list('Notes', model.notes),
    '</div>',
  ].join('');
}

type Write = (words: string) => string;

function stepHtml(step: ExplainedStep, decimal: '.' | ',', numbers: Write): string {
  const parts = [`<p class="worked-name">${escapeHtml(step.name)}</p>`, toMathML(shownFormula(step), { decimal })];
  for (const used of step.uses)
    parts.push(
      `<p>with ${escapeHtml(used.name)}:</p>${toMathML(equation(used.symbol, used.formulaText), { decimal })}`,
    );
  if (step.cases.length === 1) {
    const [only] = step.cases as [ExplainedCase];
    parts.push(toMathML(shownFormula(step), { decimal, symbol: numbersOf(only) }));
    const si = only.resultSi ? `${shownText(only.resultSi)} = ` : '';
    parts.push(
      `<p class="worked-result">${escapeHtml(`${only.name} = `)}${numbers(`${si}${shownText(only.result)}`)}</p>`,
    );
  } else {
    parts.push(tableHtml(step, numbers));
  }
  for (const source of step.sources) parts.push(`<p class="worked-source">${escapeHtml(sourceText(source))}</p>`);
  for (const note of step.notes) parts.push(`<p class="worked-note">Note: ${escapeHtml(note)}</p>`);
  return parts.join('');
}

/** `T2 = …`, or the equation itself where the result solves one. */
function shownFormula(step: ExplainedStep): Formula {
  return step.isEquation ? step.formula : equation(step.symbol, step.formulaText);
}

function equation(symbol: string, formula: string): Formula {
  return { type: 'comparison', operator: '==', left: { type: 'symbol', name: symbol }, right: parseFormula(formula) };
}

/** Numbers in place of the symbols of the inputs; the result keeps its symbol. */
export function numbersOf(one: ExplainedCase): NotationOf {
  return (symbol) => one.numbers[symbol];
}

function tableHtml(step: ExplainedStep, numbers: Write): string {
  const symbols = Object.keys(step.cases[0]!.numbers);
  const head = ['', ...symbols, step.symbol].map((cell) => `<th scope="col">${escapeHtml(cell)}</th>`).join('');
  const rows = step.cases.map((one) => {
    const cells = [...symbols.map((symbol) => numbersText(one.numbers[symbol]!)), shownText(one.result)];
    return `<tr><th scope="row">${escapeHtml(one.name)}</th>${cells.map((cell) => `<td>${numbers(cell)}</td>`).join('')}</tr>`;
  });
  return `<table><thead><tr>${head}</tr></thead><tbody>${rows.join('')}</tbody></table>`;
}
