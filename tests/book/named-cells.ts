/** Named cells of a workbook, typed into and looked at as a person does. */
import { areaAt } from '../../src/book/address';
import type { Book, CellValue } from '../../src/book/book';

export async function typeAt(book: Book, cells: Readonly<Record<string, CellValue>>): Promise<void> {
  const { names } = await book.contents();
  await book.inOneStep('Type', (write) =>
    write({
      puts: Object.entries(cells).map(([name, value]) => ({
        area: names.find((one) => one.name === name)!.area!,
        cells: [[value]],
      })),
    }),
  );
}

export async function valueOf(book: Book, name: string): Promise<CellValue> {
  const { names } = await book.contents();
  const [block] = await book.read([names.find((one) => one.name === name)!.area!]);
  return block!.values[0]![0]!;
}

/** A house rule of a new job, as a person types it. */
export async function typeRule(book: Book, name: string, value: CellValue): Promise<void> {
  const { names } = await book.contents();
  const { sheet, row, column, rows } = names.find((one) => one.name === 'House_rules')!.area!;
  const [block] = await book.read([areaAt(sheet, row, column, rows, 1)]);
  const at = block!.values.findIndex(([one]) => one === name);
  await book.inOneStep('Type', (write) =>
    write({ puts: [{ area: areaAt(sheet, row + at, column + 2), cells: [[value]] }] }),
  );
}
