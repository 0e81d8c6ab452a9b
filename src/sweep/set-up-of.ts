import { CalculationError, type Problem } from '../units/index.js';
import { describe } from '../units/internal.js';
import { SetUpValue } from './day.js';
import { pullOf, type Pull } from './pull.js';
import type { SetUp } from './set-up.js';
import { quoted } from './words-for-people.js';

/**
 * A set-up from pulls that were chosen some other way than by folder: those of a cold day, those after a change.
 *
 * @param name - What the set-up is called in answers and reports.
 * @param pulls - Its pulls, in the order in which they were made.
 * @returns The set-up; its pulls are copies that carry its name.
 * @throws CalculationError if the name is empty, there is no pull, or two pulls have one name.
 * @example
 * compare(setUpOf('warm', warmPulls), setUpOf('cold', coldPulls), { engineSpeed: [2400, 2800] });
 */
export function setUpOf(name: string, pulls: readonly Pull[]): SetUp {
  const problems: Problem[] = [];
  if (typeof name !== 'string' || name.trim() === '')
    problems.push({ code: 'impossible', input: 'name', need: 'a name', got: describe(name), mend: '' });
  if (pulls.length === 0)
    problems.push({ code: 'missing', input: 'pulls', need: 'at least one pull', got: 'none', mend: '' });
  const names = pulls.map((pull) => pull.name);
  const twin = names.find((each, at) => names.indexOf(each) !== at);
  if (twin !== undefined) {
    const mend = 'Is a pull in the list twice? Otherwise give each a name: readLog(text, { name }).';
    problems.push({
      code: 'impossible',
      input: 'pulls',
      need: 'pulls with names of their own',
      got: `two called ${quoted(twin)}`,
      mend,
    });
  }
  if (problems.length > 0) throw new CalculationError('setUpOf', problems);
  return new SetUpValue(
    name,
    pulls.map((pull) => pullOf({ ...pull, setup: name })),
    [],
  );
}
