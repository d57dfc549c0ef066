/** A sheet of which only pieces are held, however many rows it has. */
import { readAddress } from '../../book/address';
import type { CellIn } from '../../core/cell/fields';
import { cellsIn, type NamedSheet } from '../sheets';
import { dateStyles } from '../xlsx/dates';
import { mergedAround, readRows, rowTexts, type RowText } from '../xlsx/row-stream';
import type { WorkbookFile } from '../xlsx/workbook';
import type { Entry } from '../xlsx/zip';
import { Evidence, FIRST_ROWS } from './evidence';

type Row = readonly CellIn[];

export class LargeSheet {
  private readonly dates: ReadonlySet<string>;

  constructor(
    private readonly entry: Entry,
    private readonly file: WorkbookFile,
  ) {
    this.dates = dateStyles(file);
  }

  private read(texts: readonly RowText[]): [number, CellIn[]][] {
    const { strings, from1904 } = this.file;
    return readRows(texts, this.entry.name, strings).map(({ row, cells }) => [
      row,
      cellsIn(cells, this.dates, from1904),
    ]);
  }

  /** Its top with every row in its place, and rows spread over the rest. */
  async looked(): Promise<Pick<NamedSheet, 'rows' | 'merged'>> {
    const top: CellIn[][] = [];
    const evidence = new Evidence<CellIn[]>();
    const pieces = rowTexts(this.entry);
    let next = await pieces.next();
    for (; next.done !== true; next = await pieces.next())
      for (const text of next.value) {
        if (text.row >= FIRST_ROWS) {
          evidence.see(() => this.read([text]).at(-1)?.[1] ?? []);
          continue;
        }
        for (const [row, cells] of this.read([text])) {
          while (top.length < row) top.push([]);
          top[row] = cells;
        }
      }
    const merged = mergedAround(next.value, this.entry.name).flatMap((text) => readAddress(text) ?? []);
    return { rows: [...top, ...evidence.rows], merged };
  }

  /** Every row below one, with its number from 1. */
  async *rows(below: number): AsyncGenerator<readonly (readonly [number, Row])[]> {
    let last = below;
    for await (const texts of rowTexts(this.entry)) {
      const batch: (readonly [number, Row])[] = [];
      for (const [row, cells] of this.read(texts)) {
        if (row < below) continue;
        while (last < row) batch.push([++last, []]);
        batch.push([++last, cells]);
      }
      yield batch;
    }
  }
}
