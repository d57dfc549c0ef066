/** Calculates the stand-in's workbook with the formula engine and our functions, as Excel would with the add-in. */
import { Engine } from '../../src/engine/engine';
import type { Empties } from '../../src/engine/functions';
import { nodeLibrary } from '../../src/engine/node';
import { resolverOf } from '../../src/file/recalculate/resolve';
import { absolute, quoted, writeArea } from './address';
import { columnOf, rowOf, type CellValue } from './model';
import type { Calculator, World } from './world';

const library = nodeLibrary();
const blank = (value: CellValue): CellValue | null => (value === '' ? null : value);

function namesAndTables({ book }: World) {
  const place = new Map(book.sheets.map((sheet, at) => [sheet, at]));
  return {
    names: book.names.map(({ name, formula, scope }) => ({
      name,
      refersTo: formula.replace(/^=/, ''),
      sheet: scope === undefined ? undefined : place.get(scope),
    })),
    tables: book.tables.map(({ name, sheet, area, showHeaders, showTotals, columns }) => ({
      name,
      part: '',
      sheet: place.get(sheet) ?? 0,
      ref: writeArea(area),
      headerRows: showHeaders ? 1 : 0,
      totalsRows: showTotals ? 1 : 0,
      columns: columns.map((one) => one.name),
    })),
  };
}

/** `empties` is what this Excel hands an empty cell over as. */
export const calculating =
  (empties: Empties): Calculator =>
  (world) =>
    calculated(world, empties);
export const withEngine = calculating('null');

async function calculated(world: World, empties: Empties): Promise<void> {
  const { book } = world;
  const probe = new Engine(library, { sheets: [{ name: 'Sheet1', cells: [] }], names: [] });
  const seen = namesAndTables(world);
  const sheets = book.sheets.map(({ name }) => ({ name }));
  const resolver = resolverOf(
    { sheets, ...seen } as unknown as Parameters<typeof resolverOf>[0],
    (name) => probe.knows(name),
    (stored) => stored,
  );
  probe.dispose();
  const engine = new Engine(
    library,
    {
      sheets: book.sheets.map(({ name, cells }, sheet) => ({
        name,
        cells: [...cells]
          .filter(([, cell]) => cell.spilledFrom === undefined)
          .map(([key, { value, formula }]) => {
            const at = { sheet, row: rowOf(key), column: columnOf(key) };
            return {
              row: at.row,
              column: at.column,
              value: blank(value),
              ...(formula === undefined ? {} : { formula: resolver.resolve(formula, at) }),
            };
          }),
      })),
      names: book.names
        .filter(({ scope }) => scope === undefined)
        .map(({ name, formula }) => ({ name, refersTo: formula.replace(/^=/, '') })),
    },
    empties,
  );
  try {
    for (const { sheet, row, column, value, spill, fault } of await engine.calculate()) {
      if (fault !== undefined)
        throw new Error(
          `${quoted(book.sheets[sheet]?.name ?? '')}!${absolute({ row, column, rows: 1, columns: 1 })}: ${fault}`,
        );
      const on = book.sheets[sheet];
      if (on !== undefined)
        world.settle(
          on,
          row,
          column,
          spill === undefined ? (value ?? 0) : spill.map((line) => line.map((one) => one ?? 0)),
        );
    }
  } finally {
    engine.dispose();
  }
}
