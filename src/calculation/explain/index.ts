import { CalculationError } from '../../units/errors.js';
import { requireUnits, type UnitPreferences } from '../../units/format.js';
import { requireOptions } from '../../units/known-names.js';
import { describe, isQuantity } from '../../units/quantity.js';
import type { Quantity } from '../../units/origin.js';
import { toHtml } from './html.js';
import { toLatex, type LatexLayout } from './latex.js';
import { toMarkdown } from './markdown.js';
import type { ExplanationModel } from './model.js';
import { modelOf } from './walk.js';
import { toText } from './text.js';

export type { ExplainedCase, ExplainedSolution, ExplainedStep, ExplainedValue, ExplanationModel } from './model.js';
export type { LatexLayout } from './latex.js';

/** How an explanation is printed; nothing here changes a number. */
export interface ExplainOptions {
  /** The unit each kind shows in. */
  readonly units?: UnitPreferences;
  /** The decimal sign. */
  readonly decimal?: '.' | ',';
}

/** A worked example: how one result was made, step by step. */
export interface Explanation {
  /** The explanation as data. */
  readonly model: ExplanationModel;
  /** As plain text. */
  toText(): string;
  /** As Markdown, formulas in code spans. */
  toMarkdown(): string;
  /** HTML with MathML, every text escaped; a fragment, without script, style or links. */
  toHtml(): string;
  /** A LaTeX fragment for amsmath. */
  toLatex(layout?: LatexLayout): string;
  /** As plain text. */
  toString(): string;
  /** The explanation as data, formulas as text. */
  toJSON(): unknown;
}

/**
 * The worked example of a result: what was given, each formula once with its numbers, and what came out.
 *
 * @throws CalculationError if it is given anything but one quantity; explain one row of a column with `column.at(row)`.
 * @example
 * console.log(explain(outletTemperature({ inletTemperature, pressureRatio, isentropicEfficiency })).toText());
 */
export function explain(result: Quantity, options: ExplainOptions = {}): Explanation {
  if (!isQuantity(result)) {
    throw new CalculationError('explain', [
      {
        code: 'kind',
        input: 'result',
        need: 'one quantity',
        got: describe(result),
        mend: 'For one row of a column write explain(column.at(row)).',
      },
    ]);
  }
  requireOptions('explain', options, { units: 'any', decimal: ['.', ','] });
  requireUnits('explain', options.units);
  const model = modelOf(result, options.units);
  const decimal = options.decimal ?? '.';
  const text = (): string => toText(model, decimal);
  return {
    model,
    toText: text,
    toMarkdown: () => toMarkdown(model, decimal),
    toHtml: () => toHtml(model, decimal),
    toLatex: (layout = {}) => {
      requireOptions('explain', layout, { siunitx: [true, false], decimal: ['.', ','], symbols: 'any' });
      return toLatex(model, { decimal, ...layout });
    },
    toString: text,
    toJSON: () => withoutTrees(model),
    [Symbol.for('nodejs.util.inspect.custom')]: text,
  };
}

/** The formula is written as text; its parsed form can be made again from that. */
function withoutTrees(model: ExplanationModel): unknown {
  return { ...model, steps: model.steps.map(({ formula: _, ...step }) => step) };
}
