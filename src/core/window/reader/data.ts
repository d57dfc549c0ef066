/** A reading as plain data, for scripts: usual headings, lengths in the house’s unit, days as year-month-day. */
import { showDay } from '../../cell/day';
import { letters } from '../../cell/letters';
import { toUnit } from '../../exact/length';
import { digits, type Unit } from '../../exact/unit';
import type { OrderKey } from '../meanings';
import { headingOf, isLengthKey, isYardageKey, nameOf } from './meanings';
import type { NoTable, TableRead } from './read';
import type { Values } from './slots';
import type { ColumnRead } from './understand';

const plain = (figure: number): number => Number(digits(figure));

/** A window row’s values under our usual headings. */
export function valuesAsData(values: Values, unit: Unit): Record<string, string | number> {
  const data: Record<string, string | number> = {};
  for (const [key, value] of Object.entries(values) as [OrderKey, string | number | undefined][]) {
    if (value === undefined) continue;
    const heading = headingOf(key);
    if (typeof value === 'string') data[heading] = value;
    else if (key === 'date') data[heading] = showDay(value);
    else if (isLengthKey(key)) data[heading] = plain(toUnit(value, unit.small));
    else if (isYardageKey(key)) data[heading] = plain(toUnit(value, unit.large));
    else data[heading] = plain(value);
  }
  return data;
}

function columnAsData({
  at,
  heading,
  means,
  unit,
  per,
  sure,
  couldBe,
  addsTo,
  other,
}: ColumnRead): Record<string, unknown> {
  return {
    column: letters(at),
    heading,
    means:
      // A flat or suite stands before its rooms.
      other === 'place'
        ? headingOf('room')
        : means.length === 0
          ? null
          : means.length === 1
            ? headingOf(means[0] as OrderKey)
            : means.map(headingOf),
    ...(unit === undefined ? {} : { unit }),
    ...(per === undefined ? {} : { per }),
    sure,
    ...(sure === 'asked' ? { 'could be': couldBe.map(nameOf) } : {}),
    ...(addsTo === undefined ? {} : { 'adds to': letters(addsTo) }),
  };
}

/** A whole reading, rows counted from 1. */
export function readingAsData(read: TableRead | NoTable, sheet: string, unit: Unit): Record<string, unknown> {
  if (!('columns' in read)) return { none: read.none };
  return {
    ...(read.none === undefined ? {} : { none: read.none }),
    sheet,
    header: read.header.map((row) => row + 1),
    columns: read.columns.map(columnAsData),
    rows: read.rows.map(({ row, is, values }) => ({
      row: row + 1,
      is,
      ...(is === 'window' ? { values: valuesAsData(values, unit) } : {}),
    })),
    assumed: read.assumed.map(headingOf),
    findings: read.findings,
  };
}
