/** Carries a plan out: formula columns into the user's table, one undo step, as it was where stopped. */
import { areaAt, letters } from './address';
import { apply, type Watch } from './apply';
import type { Book, Changes, Dress, Put } from './book';
import type { ColumnsRead } from './columns';
import { shifted } from './formula';
import type { Plan } from './plan';
import { keepMapping, type Mapping } from './survey';
import { trouble } from './trouble';

/** The plan as changes to the workbook. */
export function changesOf(plan: Plan): Changes {
  const { sheet, headerRow, runs, columns, table, grown } = plan;
  const first = runs[0]?.[0] ?? 0;
  const puts: Put[] = [];
  const dress: Dress[] = [];
  for (const column of columns) {
    const role = column.formula === undefined ? 'input' : 'output';
    if (!column.keepsHeading) {
      const area = areaAt(sheet, headerRow, column.column);
      puts.push({ area, cells: [[column.heading]] });
      if (table === undefined) dress.push({ area, role: 'heading' });
    }
    for (const [row, rows] of runs) {
      const area = areaAt(sheet, row, column.column, rows);
      puts.push(
        column.formula === undefined
          ? { area, cells: Array.from({ length: rows }, () => [column.same ?? null]) }
          : { area, formula: shifted(column.formula, row - first, 0) },
      );
      dress.push({ area, format: column.format, ...(table === undefined && { role }) });
    }
  }
  return {
    puts,
    dress,
    ...(table !== undefined && grown !== undefined && { resize: [{ table: table.name, area: grown }] }),
  };
}

/** Writes the plan; filled cells only in columns the user allowed, hidden rows only if the user said so. */
export async function fill(book: Book, plan: Plan, watch: Omit<Watch, 'mayOverwrite'> = {}): Promise<void> {
  for (const column of plan.columns) {
    if (column.alreadyFilled > 0 && !column.overwrite)
      throw trouble('filled', `${column.firstFilled ?? letters(column.column)} of “${plan.sheet}”`);
  }
  const last = plan.runs.at(-1);
  const end = last === undefined ? plan.headerRow : last[0] + last[1];
  const mayOverwrite = plan.columns
    .filter((one) => one.overwrite)
    .map((one) => areaAt(plan.sheet, plan.headerRow, one.column, end - plan.headerRow));
  const count = plan.columns.length;
  await apply(book, `Fill ${count} ${count === 1 ? 'column' : 'columns'}`, changesOf(plan), {
    ...watch,
    mayOverwrite,
  });
}

/** What is remembered of a fill: every column's meaning as it stood, and what was asked for. */
export async function rememberFill(
  book: Book,
  name: string,
  read: ColumnsRead,
  plan: Plan,
): Promise<Mapping> {
  const added = new Set(plan.columns.map((one) => one.column));
  const same = plan.columns.flatMap((one) => (one.same === undefined ? [] : [[one.key, one.same] as const]));
  const mapping: Mapping = {
    of: name,
    columns: Object.fromEntries(
      read.columns.filter((one) => !added.has(one.column)).map((one) => [one.id, one.key ?? null]),
    ),
    outputs: plan.columns.filter((one) => one.formula !== undefined).map((one) => one.key),
    ...(same.length > 0 && { same: Object.fromEntries(same) }),
  };
  await keepMapping(book, mapping);
  return mapping;
}
