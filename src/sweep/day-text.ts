import type { Day, NotRead, SetUp } from './set-up.js';
import type { LogError } from './errors.js';
import { describeSources, type Pull, type Question } from './pull.js';
import { counted, figure, wrapped } from './words-for-people.js';

/** A day in words: what was read and as what, what was not, what only its owner can say. */
export function describeDay({ setups, pulls, notRead, order }: Day): string {
  const unread = notRead.length > 0 ? `, ${notRead.length} not read` : '';
  const head = `${counted(pulls.length, 'pull')} read in ${counted(setups.length, 'set-up')}${unread}`;
  const labels = setups.flatMap(({ name, pulls: own }) => (own.length > 0 ? [labelOf(name, own).length] : []));
  const widest = Math.min(40, Math.max(0, ...labels));
  const lines = setups.flatMap((setup) => setUpLines(setup, true, widest));
  const questions = setups.flatMap(({ name, pulls: own }) => questionLines(name, own));
  const ordered = pulls.length > 1 ? [`  ${wrapped(order.words, '    ')}`] : [];
  return [head, ...lines, ...ordered, ...questions, ...notReadLines(notRead)].join('\n');
}

/** A set-up in words. */
export function describeSetUp(setup: SetUp): string {
  return [...setUpLines(setup, false), ...questionLines(setup.name, setup.pulls), ...notReadLines(setup.notRead)].join(
    '\n',
  );
}

function labelOf(name: string, pulls: readonly Pull[]): string {
  return `${name}: ${counted(pulls.length, 'pull')}`;
}

/** One line for each way in which logs of the set-up were read; usually there is one. */
function setUpLines({ name, pulls }: SetUp, isBrief: boolean, width = 0): string[] {
  const groups = groupedBy(pulls, (pull) => describeSources(pull, isBrief));
  return [...groups].map(([sources, group]) => {
    return `  ${wrapped(`${labelOf(name, group).padEnd(width)}  ${sources}`, ' '.repeat(6))}`;
  });
}

function questionLines(name: string, pulls: readonly Pull[]): string[] {
  const asked = pulls.flatMap((pull) => pull.questions);
  const groups = groupedBy(asked, ({ code, role, mend }: Question) => `${code}\n${role ?? ''}\n${mend}`);
  return [...groups.values()].map((group) => {
    const [{ message, mend }] = group as [Question, ...Question[]];
    const share =
      pulls.length === 1
        ? ''
        : group.length === pulls.length
          ? ' (every pull)'
          : ` (${group.length} of ${pulls.length} pulls)`;
    return `  ASK ${wrapped(`${name}${share}: ${message}`, ' '.repeat(6))}\n      ${wrapped(mend, ' '.repeat(6))}`;
  });
}

const INDENT = ' '.repeat(11);

/** Logs that failed for one cause are told once. */
function notReadLines(notRead: readonly NotRead[]): string[] {
  const groups = groupedBy(notRead, ({ setup, error }) => `${setup}\n${error.code}\n${error.column ?? ''}`);
  return [...groups.values()].map((group) => {
    const [{ error, setup, file }, ...others] = group as [NotRead, ...NotRead[]];
    const mend = error.mend === '' ? '' : `\n${INDENT}${wrapped(error.mend, INDENT)}`;
    if (others.length === 0) return `  NOT READ ${wrapped(`${placed(error, file)}${error.fact}`, INDENT)}${mend}`;
    const where = error.line === undefined ? '' : `${file.split('/').pop()}, line ${error.line}: `;
    return `  NOT READ ${wrapped(`${counted(group.length, 'file')} of ${setup}: ${where}${jointFact(group.map((each) => each.error))}`, INDENT)}${mend}`;
  });
}

function placed(error: LogError, file: string): string {
  return `${error.file ?? file}${error.line === undefined ? '' : `, line ${error.line}`}: `;
}

/** The fact about several files, with the range of values they have together. */
function jointFact(errors: readonly LogError[]): string {
  const [first] = errors as [LogError, ...LogError[]];
  const ranges = errors.flatMap(({ range }) => (range ? [range] : []));
  if (first.range === undefined) return first.fact;
  const low = Math.min(...ranges.map(([from]) => from));
  const high = Math.max(...ranges.map(([, to]) => to));
  return first.fact.replace(
    `from ${figure(first.range[0])} to ${figure(first.range[1])}`,
    `from ${figure(low)} to ${figure(high)}`,
  );
}

function groupedBy<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}
