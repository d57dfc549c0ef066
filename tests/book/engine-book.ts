/** A MemoryBook that calculates with the real engine. */
import type { Empties } from '../../src/engine/functions';
import { Engine } from '../../src/engine/engine';
import { nodeLibrary } from '../../src/engine/node';
import { areaText } from '../../src/book/address';
import { MemoryBook, type Calculate, type SheetGiven } from '../../src/book/memory';

const library = nodeLibrary();

/** What hosts hand an empty cell over as: every formula that we write must give the same on both. */
export const HOSTS: readonly (readonly [host: string, empties: Empties])[] = [
  ['nothing, as on the web', 'null'],
  ['0, as on Windows and Mac', 'zero'],
];

const calculated =
  (empties: Empties): Calculate =>
  async ({ sheets, contents }) => {
    const given = {
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
    };
    const engine = new Engine(library, given, empties);
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

export const engineBook = (
  sheets: Readonly<Record<string, SheetGiven>> = {},
  empties: Empties = 'null',
): MemoryBook => new MemoryBook(sheets, calculated(empties));
