import { readLog, type Pull } from 'coldside/sweep';

/** What a made-up log is made of: a column by its header, as a function of time in seconds and of the row. */
export type Columns = Readonly<Record<string, (t: number, row: number) => number | string>>;

/** Rows of a made-up log, with time first. */
export function logText(columns: Columns, { step = 0.05, rows = 220, hasTime = true } = {}): string {
  const names = Object.keys(columns);
  const lines = Array.from({ length: rows }, (_, row) => {
    const t = Number((row * step).toFixed(6));
    const cells = names.map((name) => {
      const value = columns[name]!(t, row);
      return typeof value === 'number' ? String(Number(value.toFixed(4))) : value;
    });
    return (hasTime ? [String(t), ...cells] : cells).join(',');
  });
  return `${[...(hasTime ? ['Time (s)'] : []), ...names].join(',')}\n${lines.join('\n')}\n`;
}

/** A made-up pull. */
export function madePull(
  columns: Columns,
  options: { step?: number; rows?: number; hasTime?: boolean; file?: string } = {},
): Pull {
  return readLog(logText(columns, options), { file: options.file ?? 'pull 1.csv' })[0]!;
}

/** Engine speed of a pull: 380 rpm more each second. */
export const sweep = (t: number): number => 2500 + 380 * t;
