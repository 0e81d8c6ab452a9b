/** Which number of a date such as `05/04/2026` is the day. */
export type DateOrder = 'day first' | 'month first';

/** A time of day as it stands in a cell. */
export interface ClockReading {
  /** The date as `2024-05-04`, where there is one that can be read in one way. */
  readonly date: string | undefined;
  /** Since midnight. */
  readonly seconds: number;
  /** Whether it has a date whose day and month could be either number. */
  readonly isDateUnclear: boolean;
}

const CLOCK =
  /^\s*(?:([\d./-]{6,10})(?:[T ]|, ))?(\d{1,2}):(\d\d)(?::(\d\d(?:[.,]\d{1,9})?))?(?:\s*([ap])\.?m\.?)?(?:\s*(?:Z|[+-]\d\d:?\d\d))?\s*$/i;
const YEAR_FIRST = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/;
const YEAR_LAST = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d\d)$/;

/**
 * A time of day, or a date with one, or undefined: `09:12:00.5`, `2024-05-04T09:12:00+02:00`, `04.05.2024 09:12`, `9:12:00 PM`. The date is
 * told apart, so that seconds stay those of the day as it was written; of a zone nothing else is made.
 *
 * Between dots the day comes first. Between slashes or hyphens it is the number above 12; with none, what `order` says.
 */
export function readClock(cell: string, order?: DateOrder): ClockReading | undefined {
  const found = CLOCK.exec(cell);
  if (!found) return undefined;
  const [, dateText, hourText, minuteText, secondText = '0', half] = found;
  const [hour, minutes, seconds] = [Number(hourText), Number(minuteText), Number(secondText.replace(',', '.'))];
  const isHourPossible = half === undefined ? hour < 24 : hour >= 1 && hour <= 12;
  if (!isHourPossible || minutes >= 60 || seconds >= 61) return undefined;
  const day = dateText === undefined ? undefined : readDate(dateText, order);
  if (dateText !== undefined && day === undefined) return undefined;
  const hours = half === undefined ? hour : (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  return {
    date: day === UNCLEAR ? undefined : day,
    seconds: hours * 3600 + minutes * 60 + seconds,
    isDateUnclear: day === UNCLEAR,
  };
}

/** Which number is the day, by those cells that have one above 12; undefined where none has, or they contradict each other. */
export function dateOrderOf(cells: Iterable<string>): DateOrder | undefined {
  let [dayFirst, monthFirst] = [false, false];
  for (const cell of cells) {
    const found = YEAR_LAST.exec(CLOCK.exec(cell)?.[1] ?? '');
    if (!found) continue;
    if (Number(found[1]) > 12) dayFirst = true;
    if (Number(found[3]) > 12) monthFirst = true;
  }
  if (dayFirst === monthFirst) return undefined;
  return dayFirst ? 'day first' : 'month first';
}

const UNCLEAR = 'unclear';

/** A date as `2024-05-04`, or {@link UNCLEAR}; undefined where it is none. */
function readDate(text: string, order: DateOrder | undefined): string | undefined {
  const yearFirst = YEAR_FIRST.exec(text);
  if (yearFirst) return dateOf(Number(yearFirst[1]), Number(yearFirst[3]), Number(yearFirst[4]));
  const found = YEAR_LAST.exec(text);
  if (!found) return undefined;
  const [first, second] = [Number(found[1]), Number(found[3])];
  const year = Number(found[4]) + (found[4]!.length === 2 ? 2000 : 0);
  if (found[2] === '.' || order === 'day first' || first > 12) return dateOf(year, second, first);
  if (order === 'month first' || second > 12 || first === second) return dateOf(year, first, second);
  return dateOf(year, first, second) && dateOf(year, second, first) && UNCLEAR;
}

function dateOf(year: number, month: number, day: number): string | undefined {
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day ? date.toISOString().slice(0, 10) : undefined;
}
