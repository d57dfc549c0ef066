/** Named cells of a workbook, typed into and looked at as a person does. */
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
