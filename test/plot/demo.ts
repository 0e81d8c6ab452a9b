import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { compare, type CompareOptions, type Comparison } from '../../src/comparison/index.js';
import { readPullsFrom, type Day, type LogFile } from '../../src/sweep/index.js';
import { power } from '../../src/units/index.js';

const folder = fileURLToPath(new URL('../../docs/examples/demo-data/', import.meta.url));

export const options: CompareOptions = {
  engineSpeed: [3500, 6500],
  worthwhile: power(2, 'kW'),
  loggedPower: 'observed',
  measuredAt: 'at the hub',
};

/** The logs of the demo day, by path. */
export function demoLogs(): { path: string; setup: string; text: string }[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => path.endsWith('.csv'))
    .map((path) => ({ path, setup: path.split('/')[0]!, text: readFileSync(`${folder}${path}`, 'utf8') }));
}

/** The demo day with its logs changed: a change may alter a log's text or set-up, or leave it out with undefined. */
export function demoDay(
  change: (log: ReturnType<typeof demoLogs>[number]) => { setup?: string; text?: string } | undefined = () => ({}),
): Day {
  const files = demoLogs().flatMap((log): LogFile[] => {
    const changed = change(log);
    return changed === undefined
      ? []
      : [{ path: log.path, setup: changed.setup ?? log.setup, data: changed.text ?? log.text }];
  });
  return readPullsFrom(files);
}

/** Compares two set-ups of a day as the demo does. */
export function compared(
  day: Day,
  baseline = 'stock core',
  candidate = 'tall core',
  more: CompareOptions = {},
): Comparison {
  return compare(day.setup(baseline), day.setup(candidate), { ...options, ...more });
}

/** Every cell of the columns whose header matches, through a function. */
export function withColumn(text: string, header: RegExp, change: (value: number) => number): string {
  const lines = text.split(/\r?\n/);
  const separator = lines[0]!.includes(';') ? ';' : ',';
  const at = lines[0]!.split(separator).findIndex((cell) => header.test(cell));
  return lines
    .map((line, row) => {
      const cells = line.split(separator);
      const cell = cells[at];
      const value = Number(cell?.replace(',', '.'));
      if (row === 0 || cell === undefined || cell === '' || Number.isNaN(value)) return line;
      const changed = String(Number(change(value).toPrecision(8)));
      cells[at] = separator === ';' ? changed.replace('.', ',') : changed;
      return cells.join(separator);
    })
    .join('\n');
}

/** A page's worth of comparisons, one for each outcome that the demo day can be brought to. */
export function everyOutcome(): Record<string, Comparison> {
  const day = demoDay();
  const unitSlip = demoDay(({ setup, text }) =>
    setup === 'stock core' ? { text: text.replace('Torque (lb-ft)', 'Torque (N m)') } : {},
  );
  const richer = demoDay(({ setup, text }) =>
    setup === 'tall core' ? { text: withColumn(text, /^Lambda/, (lambda) => lambda - 0.05) } : {},
  );
  const onePull = demoDay(({ path, setup }) =>
    setup === 'tall core' && !path.endsWith('pull 1.csv') ? undefined : {},
  );
  return {
    better: compared(day),
    worse: compared(day, 'tall core', 'stock core'),
    'better, within the margin': compared(day, 'stock core', 'tall core', { worthwhile: power(9, 'kW') }),
    'not resolved': compared(day, 'tall core', 'tall core + duct'),
    equivalent: compared(day, 'stock core', 'short inlet hose'),
    'cannot be compared': compared(richer),
    'unit suspected': compared(unitSlip),
    'too few pulls': compared(onePull),
  };
}
