/** Sheets that are not as they should be: a sentence, nothing misread, nothing lost. */
import { describe, expect, it } from 'vitest';
import { INCHES } from '../../../../src/core/exact/unit';
import { readTable } from '../../../../src/core/window/reader/read';
import cases from './bad-sheets.json';

type Cell = string | number | null;
interface Case {
  readonly name: string;
  readonly rows: readonly (readonly Cell[])[];
  /** So many lines of something else stand above. */
  readonly before?: number;
  /** Columns headed alike that stand behind every row. */
  readonly more?: { readonly heading: string; readonly columns: number };
  readonly windows?: number;
  readonly says?: string;
  readonly means?: readonly (string | null)[];
}

function sheetOf({ rows, before = 0, more }: Case): Cell[][] {
  const above = Array.from({ length: before }, (_, at): Cell[] => [`old note ${at}`, at]);
  const wide = rows.map((row, at): Cell[] => [
    ...row,
    ...Array.from({ length: more?.columns ?? 0 }, () => (at === 0 ? (more?.heading ?? '') : 50 + at)),
  ]);
  return [...above, ...wide];
}

describe('a sheet that is not as it should be', () => {
  it.each(cases as readonly Case[])('$name', (one) => {
    const read = readTable({ rows: sheetOf(one) }, { unit: INCHES });
    const sentences = [
      read.none ?? '',
      ...('findings' in read ? read.findings.map(({ sentence }) => sentence) : []),
    ];
    if (one.says !== undefined) expect(sentences).toContainEqual(expect.stringContaining(one.says) as string);
    const windows = 'rows' in read ? read.rows.filter(({ is }) => is === 'window').length : 0;
    expect(windows).toBe(one.windows ?? 0);
    if (one.means !== undefined && 'columns' in read)
      expect(read.columns.map(({ means }) => means[0] ?? null)).toEqual(one.means);
  });

  it('as long as a sheet can be is read to its last row', () => {
    const rows: Cell[][] = [['Room', 'Rod', 'Drop', 'Heading']];
    rows[1] = ['1', 94, 96, 'pinch'];
    rows[2] = ['2', 72, 96, 'pinch'];
    for (let at = 3; at < 1_048_575; at++) rows[at] = [];
    rows[1_048_575] = ['3', 60, 96, 'pinch'];
    const read = readTable({ rows }, { unit: INCHES });
    const last = 'rows' in read ? read.rows.at(-1) : undefined;
    expect([last?.row, last?.is]).toEqual([1_048_575, 'window']);
  });
});
