/** Days as a column writes them: which way round day and month stand is decided for the whole column. */
import { DATE, type Day } from '../../cell/day';
import { Refusal } from '../../cell/answer';
import { INCHES } from '../../exact/unit';
import { isDay, type Cell } from './cells';

export type DayOrder = 'day first' | 'month first';

const FIGURES = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})\b/;

/** What a column's cells prove about the order of day and month; both where they prove both. */
export class DayOrders {
  private dayFirst = 0;
  private monthFirst = 0;
  private open = 0;

  see(cell: Cell): void {
    const found = typeof cell === 'string' ? FIGURES.exec(cell) : null;
    if (found === null) return;
    const [one, other] = [Number(found[1]), Number(found[2])];
    if (one > 12 && other <= 12) this.dayFirst++;
    else if (other > 12 && one <= 12) this.monthFirst++;
    else if (one !== other) this.open++;
  }

  get order(): DayOrder | undefined {
    if (this.dayFirst > 0 && this.monthFirst === 0) return 'day first';
    return this.monthFirst > 0 && this.dayFirst === 0 ? 'month first' : undefined;
  }

  /** Whether some cell can be read both ways and no other tells which. */
  get asks(): boolean {
    return this.open > 0 && this.order === undefined;
  }
}

/** Most cells of other columns are seen at a glance to be no day. */
const LIKE_A_DAY = /^(?:\d|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)(?=.*\d)/i;
const FIRST_DAY = 1_000;
const isLikeDay = (cell: string | number): boolean =>
  typeof cell === 'number'
    ? cell >= FIRST_DAY
    : LIKE_A_DAY.test(cell) && /[-/.,\s]|[a-z]|\d{6}/i.test(cell.slice(1));

function readDay(cell: string | number): Day | undefined {
  if (!isLikeDay(cell)) return undefined;
  try {
    return DATE.read(cell, { name: 'date', unit: INCHES });
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}

const WEEKDAY = /^(?:mon|tues?|wed|thurs?|fri|sat|sun)[a-z]*\.?,? /i;
/** The day of a cell; undefined where it is none, or could be two and nothing tells which. */
export function dayOf(cell: Cell, order: DayOrder | undefined): number | undefined {
  if (isDay(cell)) return Math.floor(cell.day);
  if (typeof cell !== 'string' && typeof cell !== 'number') return undefined;
  const text = typeof cell === 'string' ? cell.replace(WEEKDAY, '') : cell;
  const day = readDay(text);
  if (day === undefined) return undefined;
  return day.early === day.late ? day.early : byOrder(String(text), order);
}

/** A day whose figures could be day and month either way round, as the table writes them. */
function byOrder(text: string, order: DayOrder | undefined): number | undefined {
  const found = FIGURES.exec(text);
  if (found === null || order === undefined) return undefined;
  const [, one = '', other = '', year = ''] = found;
  const full = year.length === 2 ? `20${year}` : year;
  const [month, date] = order === 'day first' ? [other, one] : [one, other];
  return readDay(`${full}-${month}-${date}`)?.early;
}
