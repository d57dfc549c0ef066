/** What Excel makes of something typed into a cell, and how it shows a value (en-US). */
import type { CellValue } from './model';

export interface Entry {
  readonly value: CellValue;
  readonly formula?: string;
  /** A format that the entry brings along, as 84 1/2 brings a fraction's. */
  readonly format?: string;
}

const DAY = 86_400_000;
const EPOCH = Date.UTC(1899, 11, 30);

const dateSerial = (month: number, day: number, year: number): number =>
  Math.round((Date.UTC(year, month - 1, day) - EPOCH) / DAY);

/** Reads an entry as Excel does: formulas, numbers, percentages, fractions, dates, words. */
export function readEntry(raw: unknown, format: string): Entry {
  if (typeof raw === 'number' || typeof raw === 'boolean') return { value: raw };
  const text = String(raw);
  if (text === '') return { value: '' };
  if (text.startsWith("'")) return { value: text.slice(1) };
  if (format === '@') return { value: text };
  if (text.startsWith('=') && text.length > 1) return { value: 0, formula: text };
  const trimmed = text.trim();
  if (/^(true|false)$/i.test(trimmed)) return { value: trimmed.toLowerCase() === 'true' };
  if (/^[-+]?(\d[\d,]*\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(trimmed))
    return { value: Number(trimmed.replaceAll(',', '')) };
  const percent = /^([-+]?[\d.]+)\s*%$/.exec(trimmed);
  if (percent !== null) return { value: Number(percent[1]) / 100, format: '0%' };
  const money = /^\$\s?([\d,]+(\.\d+)?)$/.exec(trimmed);
  if (money !== null) return { value: Number((money[1] ?? '').replaceAll(',', '')), format: '$#,##0.00' };
  const mixed = /^(\d+) (\d+)\/(\d+)$/.exec(trimmed);
  if (mixed !== null)
    return { value: Number(mixed[1]) + Number(mixed[2]) / Number(mixed[3]), format: '# ?/?' };
  const date = /^(\d{1,2})[/-](\d{1,2})(?:[/-](\d{2}|\d{4}))?$/.exec(trimmed);
  if (date !== null) {
    const [month, day] = [Number(date[1]), Number(date[2])];
    const year =
      date[3] === undefined ? new Date().getFullYear() : Number(date[3]) + (date[3].length === 2 ? 2000 : 0);
    if (month >= 1 && month <= 12 && day >= 1 && day <= 31)
      return { value: dateSerial(month, day, year), format: date[3] === undefined ? 'd-mmm' : 'm/d/yyyy' };
  }
  return { value: text };
}

/** A value in a number format: only what these tests look at; anything richer shows as General. */
export function shown(value: CellValue, format: string): string {
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value === 'string') return value;
  const plain = /^(\$?)(#,##)?0(\.0+)?(%?)$/.exec(format);
  if (plain === null) return String(Number(value.toPrecision(11)));
  const [, sign = '', grouped, decimals = '.', percent = ''] = plain;
  const places = decimals.length - 1;
  const digits = (percent === '' ? value : value * 100).toLocaleString('en-US', {
    minimumFractionDigits: places,
    maximumFractionDigits: places,
    useGrouping: grouped !== undefined,
  });
  return sign + digits + percent;
}

export function typeOf(value: CellValue): string {
  if (value === '') return 'Empty';
  if (typeof value === 'number') return 'Double';
  if (typeof value === 'boolean') return 'Boolean';
  return value.startsWith('#') && /^#[A-Z/0-9]+[!?]?$/.test(value) ? 'Error' : 'String';
}
