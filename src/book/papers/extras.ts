/** The further lines of a job, from its sheet of extras, by the headings that sheet is written with. */
import { fromUnit } from '../../core/exact/length';
import type { Unit } from '../../core/exact/unit';
import type { JobExtra } from '../../core/papers/job';
import type { Entry, EntryKind } from '../../core/papers/paper';
import { EXTRA_HEADINGS, type ExtraKey } from '../sheets/extras';
import type { Contents } from '../book';
import type { Cells } from './cells';

type Row = (key: ExtraKey, as?: EntryKind) => Entry | undefined;

/** A count is plain; of yards, hours or pairs it says so. */
function counted(row: Row): Entry | undefined {
  const many = row('counted', 'count');
  const unit = String(row('unit')?.value ?? 'each');
  if (many === undefined || unit === 'each' || typeof many.value !== 'number') return many;
  return { ...many, as: 'yardage', unit };
}

const figure = (entry: Entry | undefined): Entry | undefined =>
  typeof entry?.value === 'number' ? entry : undefined;

/** How a band is cut, where both figures are given. */
function stripsOf(row: Row, { small }: Unit): JobExtra['strips'] {
  const [cut, cloth] = [figure(row('strip'))?.value, figure(row('bolt'))?.value];
  return typeof cut === 'number' && typeof cloth === 'number' && cut > 0 && cloth > 0
    ? { cut: fromUnit(cut, small), cloth: fromUnit(cloth, small) }
    : undefined;
}

function extraOf(row: Row, unit: Unit): JobExtra | undefined {
  const what = row('what');
  if (what === undefined || what.value === 0) return undefined;
  const line = figure(row('line'))?.value;
  return {
    line: typeof line === 'number' && line > 0 ? line : undefined,
    what,
    words: row('words'),
    quantity: counted(row) ?? { as: 'count', value: 1 },
    along: row('edges'),
    strips: stripsOf(row, unit),
    supplier: row('supplier'),
    each: figure(row('each', 'money')),
    price: figure(row('price', 'money')),
  };
}

function extrasOfTable(
  cells: Cells,
  { area, columns }: Contents['tables'][number],
  unit: Unit,
): readonly JobExtra[] {
  const at = (key: ExtraKey): number => columns.indexOf(EXTRA_HEADINGS[key]);
  return Array.from({ length: area.rows - 1 }, (_, down) => area.row + 1 + down).flatMap((row) => {
    const read: Row = (key, as) =>
      at(key) < 0 ? undefined : cells.entry(area.sheet, row, area.column + at(key), as);
    return extraOf(read, unit) ?? [];
  });
}

/** `job`: the number that the job bears in its workbook. */
export const extrasIn = (cells: Cells, job: string, unit: Unit): readonly JobExtra[] =>
  cells.contents.tables
    .filter(({ name }) => name.toLowerCase() === `extras${job}`.toLowerCase())
    .flatMap((table) => extrasOfTable(cells, table, unit));
