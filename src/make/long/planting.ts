/** What fill makes of workbooks that Excel saved, once HEM cells are planted into them. */
import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { Fault, Grid, type Scalar } from '../../engine/native/values';
import { typedText } from '../../file/recalculate/collect';
import { cellName, recalculate, sameScalar } from '../../file/recalculate/recalculate';
import { refill } from '../../file/recalculate/refill';
import { hasValue, scalarOf } from '../../file/recalculate/sheets';
import { openArchive } from '../../file/xlsx/archive';
import { readWorkbook, type WorkbookFile, type WorksheetFile } from '../../file/xlsx/workbook';
import { planted } from './plant';

export interface Share {
  downstream: number;
  computed: number;
}

export interface Planting {
  books: number;
  planted: number;
  downstream: number;
  computed: number;
  wrong: string[];
  readonly byFunction: Map<string, Share>;
}

/** Excel's own last digits of a long calculation may differ from ours. */
const NEAR = 1e-12;
const same = (one: Scalar, other: Scalar): boolean =>
  sameScalar(one, other) ||
  (typeof one === 'number' &&
    typeof other === 'number' &&
    Math.abs(one - other) <= NEAR * Math.max(Math.abs(one), Math.abs(other)));

const shown = (value: Scalar): string => (value instanceof Fault ? value.code : String(value));

/** Half of the workbooks, by their names, were looked at while this was made; the other half was not. */
export function workbooksIn(folder: string, seen: boolean): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.xls[xm]$/.test(path))
    .filter((path) => {
      const [digit = '0'] = createHash('sha256').update(basename(path)).digest('hex');
      return digit < '8' === seen;
    })
    .map((path) => join(folder, path))
    .sort();
}

/** Whether a second filling finds nothing more to do. */
function isSettled(file: WorkbookFile): boolean {
  const { parts: once } = refill(file);
  const { parts: twice } = refill(readWorkbook(once));
  return [...twice].every(([name, bytes]) => once.get(name) === bytes);
}

export async function plantAll(paths: readonly string[], chance: () => boolean): Promise<Planting> {
  const sum: Planting = {
    books: 0,
    planted: 0,
    downstream: 0,
    computed: 0,
    wrong: [],
    byFunction: new Map(),
  };
  for (const path of paths) {
    const file = await openArchive(path).then(readWorkbook, () => undefined);
    if (file === undefined) continue;
    const { parts, count } = planted(file, chance);
    if (count === 0) continue;
    sum.books += 1;
    sum.planted += count;
    compare(file, readWorkbook(parts), basename(path), sum);
    if (!isSettled(readWorkbook(parts))) sum.wrong.push(`${basename(path)}: filled twice, it changes again`);
  }
  return sum;
}

/** The first cell of an answer that is not what Excel had stored there. */
function differing(
  value: Scalar | Grid,
  { row, column }: { row: number; column: number },
  { seen }: WorksheetFile,
): string | undefined {
  const rows = value instanceof Grid ? value : new Grid(1, 1, [value]);
  const held = new Map(seen.rows.map((one) => [one.row, one.cells] as const));
  for (let down = 0; down < rows.rows; down++)
    for (let right = 0; right < rows.columns; right++) {
      const cell = held.get(row + down)?.find((one) => one.column === column + right);
      if (down + right === 0 && cell !== undefined && !hasValue(cell)) continue;
      const stored = cell === undefined ? null : scalarOf(cell);
      const found = rows.at(down, right);
      if (!same(found, stored)) return `Excel ${shown(stored)}, here ${shown(found)}`;
    }
  return undefined;
}

function compare(before: WorkbookFile, file: WorkbookFile, name: string, sum: Planting): void {
  const { formulas, answers } = recalculate(file);
  for (const [at, formula] of formulas.entries()) {
    const answer = answers[at];
    if (answer === undefined || formula.shape.ours) continue;
    sum.downstream += 1;
    for (const one of formula.shape.functions) {
      const share = sum.byFunction.get(one) ?? { downstream: 0, computed: 0 };
      sum.byFunction.set(one, share);
      share.downstream += 1;
      if (answer.value !== undefined) share.computed += 1;
    }
    if (answer.value === undefined) continue;
    sum.computed += 1;
    const old = before.sheets[formula.sheet];
    if (old === undefined) continue;
    const wrong = differing(answer.value, formula, old);
    if (wrong !== undefined)
      sum.wrong.push(`${name} ${cellName(file, formula)} ${typedText(formula).slice(0, 120)}: ${wrong}`);
  }
}
