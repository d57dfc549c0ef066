/** A MemoryBook that calculates with the real engine. */
import { Engine } from '../../src/engine/engine';
import { nodeLibrary } from '../../src/engine/node';
import { areaText } from '../../src/book/address';
import { MemoryBook, type Calculate, type SheetGiven } from '../../src/book/memory';

const library = nodeLibrary();

const calculate: Calculate = async ({ sheets, contents }) => {
  const engine = new Engine(library, {
    sheets: sheets.map(({ name, cells }) => ({
      name,
      cells: [...cells].flatMap(([row, columns]) =>
        [...columns].map(([column, { value, formula }]) => ({
          row,
          column,
          value,
          ...(formula !== undefined && { formula }),
        })),
      ),
    })),
    names: contents.names.flatMap(({ name, area }) =>
      area === undefined ? [] : [{ name, refersTo: areaText(area, true) }],
    ),
  });
  try {
    for (const { sheet, row, column, value, fault } of await engine.calculate()) {
      if (fault !== undefined) throw new Error(fault);
      const cell = sheets[sheet]?.cells.get(row)?.get(column);
      if (cell !== undefined) cell.value = value;
    }
  } finally {
    engine.dispose();
  }
};

export const engineBook = (sheets: Readonly<Record<string, SheetGiven>> = {}): MemoryBook =>
  new MemoryBook(sheets, calculate);
