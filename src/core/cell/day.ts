/** A calendar day as spreadsheets count it; a date written two ways keeps both readings. */
import { refuse } from './answer';
import { oneCell, readBack, type CellIn, type Kind } from './fields';

/** Days since 30 December 1899. Both are the same where the writing leaves no doubt. */
export interface Day {
  readonly early: number;
  readonly late: number;
}

const DAY = 86_400_000;
const EPOCH = Date.UTC(1899, 11, 30);
export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** A day of the calendar as spreadsheets count; undefined where there is none such. */
export function serial(year: number, month: number, day: number): number | undefined {
  const full = year < 100 ? 2000 + year : year;
  const at = new Date(Date.UTC(full, month - 1, day));
  return at.getUTCMonth() === month - 1 && at.getUTCDate() === day && full >= 1900
    ? Math.round((at.getTime() - EPOCH) / DAY)
    : undefined;
}

const sure = (day: number | undefined): Day | undefined =>
  day === undefined ? undefined : { early: day, late: day };

function readText(text: string): Day | undefined {
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/.exec(text);
  if (iso !== null) return sure(serial(Number(iso[1]), Number(iso[2]), Number(iso[3])));
  const figures = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})(?: .*)?$/.exec(text);
  if (figures !== null) {
    const [one, other, year] = [Number(figures[1]), Number(figures[2]), Number(figures[3])];
    const readings = [serial(year, one, other), serial(year, other, one)].filter(
      (day): day is number => day !== undefined,
    );
    return readings.length === 0 ? undefined : { early: Math.min(...readings), late: Math.max(...readings) };
  }
  const named = /^(\d{1,2})(?:st|nd|rd|th)?[-/. ]*([a-z]{3})[a-z]*\.?,?[-/ ]*(\d{4}|\d{2})$/i.exec(text);
  const american = /^([a-z]{3})[a-z]*\.?[- ]+(\d{1,2})(?:st|nd|rd|th)?,?[- ]+(\d{4}|\d{2})$/i.exec(text);
  const [month, day, year] =
    named !== null
      ? [named[2], named[1], named[3]]
      : american !== null
        ? [american[1], american[2], american[3]]
        : [undefined, undefined, undefined];
  const at = MONTHS.findIndex((name) => name.slice(0, 3).toLowerCase() === (month ?? '').toLowerCase());
  return at < 0 ? undefined : sure(serial(Number(year), at + 1, Number(day)));
}

export const DATE: Kind<Day> = {
  quantity: 'date',
  noun: 'a date',
  shape: 'cell',
  read(raw: CellIn, place) {
    const cell = oneCell(raw, place);
    if (cell === undefined || cell === 0) return undefined;
    const figure = typeof cell === 'string' && /^\d{5}(\.\d+)?$/.test(cell.trim()) ? Number(cell) : cell;
    const day =
      typeof figure === 'number'
        ? figure >= 1 && figure < 200_000
          ? sure(Math.floor(figure))
          : undefined
        : typeof figure === 'string'
          ? readText(figure.trim())
          : undefined;
    return day ?? refuse('unreadable', place.name, place.name, readBack(cell), 'a date', '2026-03-09');
  },
  write: (value) => showDay(value.early),
};

/** 2026-03-09 */
export const showDay = (day: number): string => new Date(EPOCH + day * DAY).toISOString().slice(0, 10);

/** The day something began: one day, and no doubt about it. */
export const FIRST_DAY: Kind<number> = {
  quantity: 'date',
  noun: 'a date',
  shape: 'cell',
  read(raw: CellIn, place) {
    const day = DATE.read(raw, place);
    if (day === undefined || day.early === day.late) return day?.early;
    const read = readBack(oneCell(raw, place));
    return refuse('doubtful', place.name, place.name, read, showDay(day.early), showDay(day.late));
  },
  write: showDay,
};
