import { formatText } from '../formula/index.js';
import type { ExplainedStep, ExplanationModel } from './model.js';
import { numbersText, shownText, solutionText, sourceText, valueText, withDecimal } from './words.js';

/** The worked example as plain text. */
export function toText(model: ExplanationModel, decimal: '.' | ','): string {
  const lines: string[] = [];
  if (model.given.length > 0) lines.push(`Given: ${model.given.map((value) => valueText(value, decimal)).join('; ')}`);
  if (model.assumed.length > 0)
    lines.push(`Assumed: ${model.assumed.map((value) => valueText(value, decimal)).join('; ')}`);
  model.steps.forEach((step, i) => lines.push(...stepLines(step, i + 1, decimal)));
  for (const solution of model.solutions) lines.push(`${solutionText(solution, decimal)}.`);
  lines.push(`Answer: ${model.name} = ${withDecimal(model.text, decimal)}`);
  for (const note of model.notes) lines.push(`Note: ${note}`);
  return lines.join('\n');
}

function stepLines(step: ExplainedStep, number: number, decimal: '.' | ','): string[] {
  const lead = `${number}. `;
  const indent = ' '.repeat(lead.length);
  const lines = [`${lead}${step.name}`];
  lines.push(`${indent}${step.isEquation ? `${step.symbol} solves ` : `${step.symbol} = `}${step.formulaText}`);
  for (const used of step.uses) lines.push(`${indent}with ${used.symbol}, ${used.name}: ${used.formulaText}`);
  const hang = `${indent}${' '.repeat(step.symbol.length)} = `;
  if (step.cases.length === 1) {
    const [only] = step.cases as [ExplainedStep['cases'][number]];
    const numbers = formatText(step.formula, (symbol) => {
      const shown = only.numbers[symbol];
      return shown && numbersText(shown);
    });
    lines.push(withDecimal(step.isEquation ? `${indent}with ${numbers}` : `${hang}${numbers}`, decimal));
    const si = only.resultSi ? `${shownText(only.resultSi)} = ` : '';
    lines.push(withDecimal(`${hang}${si}${shownText(only.result)}`, decimal));
  } else {
    lines.push(...table(step).map((line) => indent + withDecimal(line, decimal)));
  }
  for (const source of step.sources) lines.push(`${indent}[${sourceText(source)}]`);
  for (const note of step.notes) lines.push(`${indent}Note: ${note}`);
  return lines;
}

/** One formula used several times: its numbers in columns. */
function table(step: ExplainedStep): string[] {
  const symbols = Object.keys(step.cases[0]!.numbers);
  const rows = [
    ['', ...symbols, step.symbol],
    ...step.cases.map((one) => [
      one.name,
      ...symbols.map((symbol) => numbersText(one.numbers[symbol]!)),
      shownText(one.result),
    ]),
  ];
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  return rows.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column]!))
      .join('  ')
      .trimEnd(),
  );
}
