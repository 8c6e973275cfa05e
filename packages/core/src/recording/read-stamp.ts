/** How a time column is written. */
export type StampForm = 'number' | 'clock' | 'date';

const CLOCK = /^(?:(\d+):)?(\d+):(\d{1,2}(?:[.,]\d*)?)$/;
const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T\s_]+(.*))?$/;
const YEAR_LAST = /^(\d{1,2})([-/.])(\d{1,2})[-/.](\d{4})(?:,?[T\s_]+(.*))?$/;
const TIME_OF_DAY =
  /^(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,:](\d+))?)?\s*([ap]\.?m\.?)?\s*(Z|UTC|GMT|[+-]\d{2}:?\d{2})?$/i;

/** The form of one cell; undefined where it is no stamp. A plain number counts as none here. */
export function stampForm(cell: string): 'clock' | 'date' | undefined {
  const text = cell.trim();
  if (CLOCK.test(text)) return 'clock';
  return splitDate(text) ? 'date' : undefined;
}

/**
 * Seconds in a clock cell: min:s or h:min:s.
 *
 * @returns seconds; NaN where the cell holds no clock
 */
export function readClock(cell: string): number {
  const match = CLOCK.exec(cell.trim());
  if (!match) return NaN;
  const [, hours = '0', minutes = '0', seconds = '0'] = match;
  return 3600 * Number(hours) + 60 * Number(minutes) + Number(seconds.replace(',', '.'));
}

/** A reader of date cells that counts from the first midnight it meets, so that a double holds all digits of a second. */
export function dateReader(): (cell: string) => number {
  let origin: number | undefined;
  return (cell) => {
    const date = splitDate(cell);
    if (!date) return NaN;
    origin ??= date.midnight;
    return date.midnight - origin + date.seconds;
  };
}

interface SplitDate {
  /** s since 1970 */
  readonly midnight: number;
  /** s since midnight */
  readonly seconds: number;
}

function splitDate(cell: string): SplitDate | undefined {
  const text = cell.trim();
  const first = YEAR_FIRST.exec(text);
  if (first) return dateParts([first[1], first[2], first[3]], first[4]);
  const last = YEAR_LAST.exec(text);
  if (!last) return undefined;
  const [, one, mark, two, year, rest] = last;
  // With points the day comes first everywhere; with strokes the month does, unless it cannot be one.
  const dayFirst = mark !== '/' || Number(one) > 12;
  return dateParts(dayFirst ? [year, two, one] : [year, one, two], rest);
}

function dateParts([year, month, day]: readonly (string | undefined)[], time = ''): SplitDate | undefined {
  const within = (text: string | undefined, most: number): boolean =>
    Number(text) >= 1 && Number(text) <= most;
  if (!within(month, 12) || !within(day, 31)) return undefined;
  const midnight = Date.UTC(Number(year), Number(month) - 1, Number(day)) / 1000;
  const seconds = time === '' ? 0 : secondsOfDay(time);
  return seconds === undefined ? undefined : { midnight, seconds };
}

function secondsOfDay(time: string): number | undefined {
  const match = TIME_OF_DAY.exec(time);
  if (!match) return undefined;
  const [, hour = '0', minute = '0', second = '0', fraction = '0', half = '', zone = ''] = match;
  const hours = half === '' ? Number(hour) : (Number(hour) % 12) + (/^p/i.test(half) ? 12 : 0);
  return 3600 * hours + 60 * Number(minute) + Number(`${second}.${fraction}`) - offset(zone);
}

function offset(zone: string): number {
  const match = /^([+-])(\d{2}):?(\d{2})$/.exec(zone);
  if (!match) return 0;
  return (match[1] === '-' ? -1 : 1) * (3600 * Number(match[2]) + 60 * Number(match[3]));
}
