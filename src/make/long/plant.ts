/**
 * HEM cells planted into workbooks that Excel saved: numbers that formulas depend on become
 * =HEM.MEASURED(number), with a wrong stored value. What follows from them must come out as Excel had it.
 */
import { CATALOGUE } from '../../../functions/index';
import { cellText } from '../../book/address';
import { areaOf } from '../../engine/native/compile';
import { collect, keyOf } from '../../file/recalculate/collect';
import { directoryOf } from '../../file/recalculate/directory';
import { Shapes } from '../../file/recalculate/shapes';
import type { CellSeen } from '../../file/xlsx/sheet';
import { bytesOfText, textOf } from '../../file/xlsx/text';
import type { Parts } from '../../file/xlsx/archive';
import { edited, type Edit } from '../../file/xlsx/xml';
import type { WorkbookFile } from '../../file/xlsx/workbook';

export interface Planted {
  readonly parts: Parts;
  /** The cells that became HEM cells, by sheet. */
  readonly cells: readonly ReadonlySet<number>[];
  readonly count: number;
}

const MEASURED = CATALOGUE.find(({ name }) => name === 'MEASURED');

/** Whether MEASURED gives this very number again. */
function same(number: number): boolean {
  const outcome = MEASURED?.call([number]);
  return outcome !== undefined && 'cells' in outcome && outcome.cells === number;
}

/** `chance` says of each candidate whether it is planted. */
export function planted(file: WorkbookFile, chance: () => boolean): Planted {
  const shapes = new Shapes(file, directoryOf(file));
  const { formulas, inner } = collect(file, shapes);
  const filled = new Set(inner.map(({ cell }) => cell));
  const read = file.sheets.map(() => new Set<number>());
  const byCell = file.sheets.map(({ seen }) => {
    const cells = new Map<number, CellSeen>();
    for (const row of seen.rows) for (const cell of row.cells) cells.set(keyOf(cell.row, cell.column), cell);
    return cells;
  });
  for (const { sheet, row, column, shape } of formulas)
    for (const one of shape.reads) {
      const area = areaOf(one, sheet, row, column);
      const cells = byCell[area.sheet];
      if (cells === undefined) continue;
      for (const [key, cell] of cells)
        if (
          cell.row >= area.row &&
          cell.row < area.row + area.rows &&
          cell.column >= area.column &&
          cell.column < area.column + area.columns
        )
          read[area.sheet]?.add(key);
    }
  const parts: Parts = new Map(file.parts);
  let count = 0;
  const cells = file.sheets.map(({ seen, bytes, part }, at) => {
    const chosen = new Set<number>();
    const edits: Edit[] = [];
    for (const row of seen.rows)
      for (const cell of row.cells) {
        const key = keyOf(cell.row, cell.column);
        const { value, formula, from, to, type } = cell;
        if (
          filled.has(cell) ||
          formula !== undefined ||
          typeof value !== 'number' ||
          type === 'd' ||
          read[at]?.has(key) !== true
        )
          continue;
        if (cell.rich || cell.metadata !== undefined || !same(value) || !chance()) continue;
        chosen.add(key);
        const style = cell.style === undefined ? '' : ` s="${cell.style}"`;
        const { prefix } = seen;
        edits.push({
          from,
          to,
          text: `<${prefix}c r="${cellText(cell.row, cell.column)}"${style}><${prefix}f>_xldudf_HEM_MEASURED(${String(value)})</${prefix}f><${prefix}v>${value + 987654.25}</${prefix}v></${prefix}c>`,
        });
      }
    if (part !== undefined && edits.length > 0)
      parts.set(part, bytesOfText(edited(textOf(bytes, part), edits)));
    count += chosen.size;
    return chosen;
  });
  return { parts, cells, count };
}
