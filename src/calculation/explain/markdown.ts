import { escapeMarkdown, formatText } from '../formula/index.js';
import type { ExplainedStep, ExplanationModel } from './model.js';
import { numbersText, shownText, solutionText, sourceText, valueText, withDecimal } from './words.js';

/** The worked example as Markdown; formulas stand in code spans, where nothing needs a renderer. */
export function toMarkdown(model: ExplanationModel, decimal: '.' | ','): string {
  const parts: string[] = [];
  const list = (title: string, values: readonly string[]): void => {
    if (values.length > 0)
      parts.push(`**${title}**\n\n${values.map((value) => `- ${escapeMarkdown(value)}`).join('\n')}`);
  };
  list(
    'Given',
    model.given.map((value) => valueText(value, decimal)),
  );
  list(
    'Assumed',
    model.assumed.map((value) => valueText(value, decimal)),
  );
  model.steps.forEach((step, i) => parts.push(stepText(step, i + 1, decimal)));
  list(
    'Found by solving',
    model.solutions.map((solution) => solutionText(solution, decimal)),
  );
  parts.push(`**Answer:** ${escapeMarkdown(`${model.name} = ${withDecimal(model.text, decimal)}`)}`);
  list('Notes', model.notes);
  return parts.join('\n\n');
}

/** Backticks in labels would end a code span. */
function code(text: string): string {
  return `\`${text.replaceAll('`', "'")}\``;
}

function stepText(step: ExplainedStep, number: number, decimal: '.' | ','): string {
  const lines = [`${number}. **${escapeMarkdown(step.name)}**`];
  const formula = step.isEquation
    ? `${step.symbol} solves ${step.formulaText}`
    : `${step.symbol} = ${step.formulaText}`;
  lines.push(code(formula));
  for (const used of step.uses)
    lines.push(`with ${code(`${used.symbol}: ${used.formulaText}`)} (${escapeMarkdown(used.name)})`);
  if (step.cases.length === 1) {
    const [only] = step.cases as [ExplainedStep['cases'][number]];
    const numbers = formatText(step.formula, (symbol) => {
      const shown = only.numbers[symbol];
      return shown && numbersText(shown);
    });
    const si = only.resultSi ? ` = ${shownText(only.resultSi)}` : '';
    const line = step.isEquation ? `${numbers}, so ${step.symbol}${si}` : `= ${numbers}${si}`;
    lines.push(code(withDecimal(`${line} = ${shownText(only.result)}`, decimal)));
  } else {
    lines.push(withDecimal(table(step), decimal));
  }
  for (const source of step.sources) lines.push(`Source: ${escapeMarkdown(sourceText(source))}`);
  for (const note of step.notes) lines.push(`Note: ${escapeMarkdown(note)}`);
  // Three spaces keep what belongs to a numbered step inside it.
  return lines.join('\n\n').replaceAll('\n', '\n   ').replace(/ +$/gm, '');
}

function table(step: ExplainedStep): string {
  const symbols = Object.keys(step.cases[0]!.numbers);
  const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    row(['', ...symbols, step.symbol].map(escapeMarkdown)),
    row(Array<string>(symbols.length + 2).fill('---')),
    ...step.cases.map((one) =>
      row(
        [one.name, ...symbols.map((symbol) => numbersText(one.numbers[symbol]!)), shownText(one.result)].map(
          escapeMarkdown,
        ),
      ),
    ),
  ].join('\n');
}
