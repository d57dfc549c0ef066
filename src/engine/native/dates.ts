/** Days and hours. Day 1 is 1 January 1900, and day 60 the 29 February 1900 that never was. */
import { define, defineIn } from './call';
import { eachValue, stopping, stop } from './ranges';
import { Fault, NUM, numberIn, toNumber, unproven, VALUE, type Scalar, type Value } from './values';
import type { World } from './world';

export interface Day {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}
const DAY = 86_400_000;
const LAST = 2_958_465;
const FEBRUARY_THAT_NEVER_WAS = 60;

export function dayOf(serial: number): Day {
  const whole = Math.floor(serial);
  if (whole === FEBRUARY_THAT_NEVER_WAS) return { year: 1900, month: 2, day: 29 };
  if (whole === 0) return { year: 1900, month: 1, day: 0 };
  const date = new Date(Date.UTC(1899, 11, whole < FEBRUARY_THAT_NEVER_WAS ? 31 : 30) + whole * DAY);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}
/** Months and days may run over: month 13 is the next January. */
export function serialOf(year: number, month: number, day: number): number {
  const date = new Date(Date.UTC(2000, month - 1, 1));
  date.setUTCFullYear(year + Math.floor((month - 1) / 12), (((month - 1) % 12) + 12) % 12, 1);
  const first = Math.round((date.getTime() - Date.UTC(1899, 11, 30)) / DAY);
  if (year === 1900 && month === 2 && day === 29) return FEBRUARY_THAT_NEVER_WAS;
  return (first < 61 ? first - 1 : first) + day - 1;
}
const daysIn = (year: number, month: number): number =>
  year === 1900 && month === 2 ? 29 : new Date(Date.UTC(year, month, 0)).getUTCDate();
export const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
const sound = (serial: number): boolean => serial >= 0 && serial < LAST + 1;
const only1900 = (world: World): void => {
  if (world.sheets.from1904) unproven('counts days in a workbook whose days begin in 1904');
};

function define1900(names: string, takes: string, work: (...given: never[]) => Value): void {
  defineIn(names, takes, (world, ...given) => {
    only1900(world);
    return work(...given);
  });
}

define1900('DATE', 'nnn', (yearGiven: number, monthGiven: number, dayGiven: number) => {
  const [year, month, day] = [yearGiven, monthGiven, dayGiven].map(Math.trunc) as [number, number, number];
  if (year < 0 || year >= 10_000) return NUM;
  const serial = serialOf(year < 1900 ? year + 1900 : year, month, day);
  return sound(serial) ? serial : NUM;
});
const ofDay =
  (part: (day: Day) => number) =>
  (serial: number): Value =>
    sound(serial) ? part(dayOf(serial)) : NUM;
define1900(
  'YEAR',
  'n',
  ofDay(({ year }) => year),
);
define1900(
  'MONTH',
  'n',
  ofDay(({ month }) => month),
);
define1900(
  'DAY',
  'n',
  ofDay(({ day }) => day),
);
define('TIME', 'nnn', (hour: number, minute: number, second: number) => {
  const [h, m, s] = [hour, minute, second].map(Math.trunc) as [number, number, number];
  if (h > 32_767 || m > 32_767 || s > 32_767) return NUM;
  const total = h * 3600 + m * 60 + s;
  return total < 0 ? NUM : (total % 86_400) / 86_400;
});
/** To the nearest second, but up at a half. */
const secondsOf = (serial: number): number =>
  Math.floor((serial - Math.floor(serial)) * 86_400 + 0.5) % 86_400;
const ofTime =
  (part: (seconds: number) => number) =>
  (serial: number): Value =>
    serial < 0 || !sound(serial) ? NUM : part(secondsOf(serial));
define(
  'HOUR',
  'n',
  ofTime((seconds) => Math.floor(seconds / 3600)),
);
define(
  'MINUTE',
  'n',
  ofTime((seconds) => Math.floor(seconds / 60) % 60),
);
define(
  'SECOND',
  'n',
  ofTime((seconds) => seconds % 60),
);

const monthsOn = (start: number, months: number, end: boolean): Value => {
  const [serial, by] = [Math.floor(start), Math.trunc(months)];
  if (!sound(serial)) return NUM;
  const { year, month, day } = dayOf(serial);
  const there = month - 1 + by;
  const [toYear, toMonth] = [year + Math.floor(there / 12), (((there % 12) + 12) % 12) + 1];
  if (toYear < 1900) return NUM;
  const found = serialOf(
    toYear,
    toMonth,
    end ? daysIn(toYear, toMonth) : Math.min(day, daysIn(toYear, toMonth)),
  );
  return sound(found) ? found : NUM;
};
define1900('EDATE', 'mm', (start: number, months: number) => monthsOn(start, months, false));
define1900('EOMONTH', 'mm', (start: number, months: number) => monthsOn(start, months, true));
define1900('DAYS', 'nn', (end: number, start: number) =>
  sound(end) && sound(start) ? Math.floor(end) - Math.floor(start) : NUM,
);

/** Days of months of thirty; the American way or the European. */
export function days360(from: Day, to: Day, european: boolean): number {
  let [first, last] = [from.day, to.day];
  if (european) [first, last] = [Math.min(first, 30), Math.min(last, 30)];
  else {
    if (from.month === 2 && from.day >= daysIn(from.year, 2)) first = 30;
    if (first === 31) first = 30;
    if (last === 31 && first === 30) last = 30;
  }
  return (to.year - from.year) * 360 + (to.month - from.month) * 30 + last - first;
}
define1900('DAYS360', 'nn?b', (start: number, end: number, european = false) =>
  sound(start) && sound(end) ? days360(dayOf(start), dayOf(end), european) : NUM,
);

export function yearFraction(start: number, end: number, basis: number): number {
  const [one, other] = [Math.min(start, end), Math.max(start, end)].map(Math.floor) as [number, number];
  const [from, to] = [dayOf(one), dayOf(other)];
  switch (basis) {
    case 1: {
      if (from.year === to.year) return (other - one) / (isLeap(from.year) ? 366 : 365);
      const within =
        to.year === from.year + 1 &&
        (to.month < from.month || (to.month === from.month && to.day <= from.day));
      if (within) {
        const leap =
          (isLeap(from.year) && one <= serialOf(from.year, 2, 29)) ||
          (isLeap(to.year) && other >= serialOf(to.year, 2, 29));
        return (other - one) / (leap ? 366 : 365);
      }
      const years = to.year - from.year + 1;
      const days = serialOf(to.year + 1, 1, 1) - serialOf(from.year, 1, 1);
      return (other - one) / (days / years);
    }
    case 2:
      return (other - one) / 360;
    case 3:
      return (other - one) / 365;
    case 4:
      return days360(from, to, true) / 360;
    default: {
      let [first, last] = [from.day, to.day];
      const ends = (day: Day): boolean => day.month === 2 && day.day === daysIn(day.year, 2);
      if (ends(from) && ends(to)) last = 30;
      if (ends(from)) first = 30;
      if (last === 31 && first >= 30) last = 30;
      if (first === 31) first = 30;
      return ((to.year - from.year) * 360 + (to.month - from.month) * 30 + last - first) / 360;
    }
  }
}
define1900('YEARFRAC', 'mm?m', (start: number, end: number, basisGiven = 0) => {
  const basis = Math.trunc(basisGiven);
  if (!sound(start) || !sound(end) || basis < 0 || basis > 4) return NUM;
  return yearFraction(start, end, basis);
});
define1900('DATEDIF', 'nns', (start: number, end: number, unit: string) => {
  if (!sound(start) || !sound(end) || start > end) return NUM;
  const [from, to] = [dayOf(start), dayOf(end)];
  const months = (to.year - from.year) * 12 + to.month - from.month - (to.day < from.day ? 1 : 0);
  switch (unit.toUpperCase()) {
    case 'D':
      return Math.floor(end) - Math.floor(start);
    case 'M':
      return months;
    case 'Y':
      return Math.floor(months / 12);
    case 'YM':
      return months % 12;
    case 'MD':
    case 'YD':
      return unproven('counts days without their years or months');
    default:
      return NUM;
  }
});

/** 1 is Sunday, as Excel counts, with its wrong days of early 1900. */
const weekday = (serial: number): number => ((((Math.floor(serial) - 1) % 7) + 7) % 7) + 1;
define1900('WEEKDAY', 'n?n', (serial: number, typeGiven = 1) => {
  const type = Math.trunc(typeGiven);
  if (!sound(serial)) return NUM;
  const day = weekday(serial);
  if (type === 1) return day;
  if (type === 2) return ((day + 5) % 7) + 1;
  if (type === 3) return (day + 5) % 7;
  if (type < 11 || type > 17) return NUM;
  return ((day - 1 - ((type - 10) % 7) + 7) % 7) + 1;
});
const isoWeek = (serial: number): number => {
  const thursday = Math.floor(serial) + 4 - (((weekday(serial) + 5) % 7) + 1);
  return Math.floor((thursday - serialOf(dayOf(thursday).year, 1, 1)) / 7) + 1;
};
define1900('ISOWEEKNUM', 'n', (serial: number) => (sound(serial) ? isoWeek(serial) : NUM));
define1900('WEEKNUM', 'm?m', (serial: number, typeGiven = 1) => {
  const type = Math.trunc(typeGiven);
  if (!sound(serial)) return NUM;
  if (type === 21) return isoWeek(serial);
  const first =
    type === 1 || type === 17
      ? 0
      : type === 2 || type === 11
        ? 1
        : type >= 12 && type <= 16
          ? type - 10
          : undefined;
  if (first === undefined) return NUM;
  const january = serialOf(dayOf(serial).year, 1, 1);
  const shift = (weekday(january) - 1 - first + 7) % 7;
  return Math.floor((Math.floor(serial) - january + shift) / 7) + 1;
});

function holidaysIn(world: World, value: Value | undefined): Set<number> {
  const days = new Set<number>();
  eachValue(world, [value], (one, typed) => {
    if (one instanceof Fault) stop(one);
    const number = typeof one === 'number' ? one : typed ? toNumber(one) : stop(VALUE);
    if (typeof number === 'number') days.add(Math.floor(number));
  });
  return days;
}
/** Which days of the week are free, Monday first. */
function weekendOf(value: Scalar | undefined): readonly boolean[] | Fault {
  if (value === undefined || value === null) return [false, false, false, false, false, true, true];
  if (typeof value === 'string') {
    if (!/^[01]{7}$/.test(value)) return VALUE;
    return value === '1111111' ? unproven('knows no working day') : [...value].map((one) => one === '1');
  }
  const number = toNumber(value);
  if (number instanceof Fault) return number;
  const type = Math.trunc(number);
  const free = (first: number, count: number): boolean[] =>
    Array.from({ length: 7 }, (_, day) => (day - first + 7) % 7 < count);
  if (type >= 1 && type <= 7) return free((type + 4) % 7, 2);
  return type >= 11 && type <= 17 ? free((type - 5) % 7, 1) : NUM;
}
const monday = (serial: number): number => (weekday(serial) + 5) % 7;
function workdaysBetween(
  start: number,
  end: number,
  free: readonly boolean[],
  holidays: ReadonlySet<number>,
): number {
  const [from, to] = [Math.floor(Math.min(start, end)), Math.floor(Math.max(start, end))];
  const weeks = Math.floor((to - from + 1) / WEEK);
  let count = weeks * workdaysAWeek(free);
  for (let day = from + weeks * WEEK; day <= to; day++) if (free[monday(day)] !== true) count += 1;
  for (const day of holidays) if (day >= from && day <= to && free[monday(day)] !== true) count -= 1;
  return start > end ? -count : count;
}
const WEEK = 7;
const workdaysAWeek = (free: readonly boolean[]): number => WEEK - free.filter((one) => one).length;
function workdayAfter(
  start: number,
  days: number,
  free: readonly boolean[],
  holidays: ReadonlySet<number>,
): Value {
  let [day, left] = [Math.floor(start), Math.trunc(days)];
  const step = left < 0 ? -1 : 1;
  if (!sound(day + left)) return NUM;
  if (holidays.size === 0) {
    // Whole weeks at once, but for the last: where it ends hangs on its free days.
    const weeks = Math.max(0, Math.floor(Math.abs(left) / workdaysAWeek(free)) - 1);
    day += step * weeks * WEEK;
    left -= step * weeks * workdaysAWeek(free);
  }
  while (left !== 0) {
    day += step;
    if (!sound(day)) return NUM;
    if (free[monday(day)] !== true && !holidays.has(day)) left -= step;
  }
  return day;
}
defineIn(
  'NETWORKDAYS',
  'mm?r',
  stopping((world: World, start: number, end: number, holidays?: Value) => {
    only1900(world);
    return sound(start) && sound(end)
      ? workdaysBetween(start, end, weekendOf(undefined) as boolean[], holidaysIn(world, holidays))
      : NUM;
  }),
);
defineIn(
  'NETWORKDAYS.INTL',
  'mm?er',
  stopping((world: World, start: number, end: number, weekend?: Scalar, holidays?: Value) => {
    only1900(world);
    const free = weekendOf(weekend);
    if (free instanceof Fault) return free;
    return sound(start) && sound(end) ? workdaysBetween(start, end, free, holidaysIn(world, holidays)) : NUM;
  }),
);
defineIn(
  'WORKDAY',
  'mm?r',
  stopping((world: World, start: number, days: number, holidays?: Value) => {
    only1900(world);
    return sound(start)
      ? workdayAfter(start, days, weekendOf(undefined) as boolean[], holidaysIn(world, holidays))
      : NUM;
  }),
);
defineIn(
  'WORKDAY.INTL',
  'mm?er',
  stopping((world: World, start: number, days: number, weekend?: Scalar, holidays?: Value) => {
    only1900(world);
    const free = weekendOf(weekend);
    if (free instanceof Fault) return free;
    return sound(start) ? workdayAfter(start, days, free, holidaysIn(world, holidays)) : NUM;
  }),
);
define1900('DATEVALUE', 's', (text: string) => {
  if (!/^\s*\d{4}-\d{1,2}-\d{1,2}\s*$/.test(text))
    return /\d/.test(text) ? unproven('reads a day that is not written alike everywhere') : VALUE;
  return numberIn(text) ?? VALUE;
});
define('TIMEVALUE', 's', (text: string) => {
  const found = /^\s*(\d{1,2}):(\d{2})(?::(\d{2}))?\s*(AM|PM)?\s*$/i.exec(text);
  if (found === null)
    return /\d/.test(text) ? unproven('reads an hour that is not written alike everywhere') : VALUE;
  const [, hour, minute, second = '0', half] = found;
  const late =
    half === undefined ? Number(hour) : (Number(hour) % 12) + (half.toUpperCase() === 'PM' ? 12 : 0);
  if (
    Number(minute) > 59 ||
    Number(second) > 59 ||
    Number(hour) > 23 ||
    (half !== undefined && Number(hour) > 12)
  )
    return VALUE;
  return (late * 3600 + Number(minute) * 60 + Number(second)) / 86_400;
});
