/** Findings shown at their cells: a remark of ours, and a colour that leaves the cell's own beneath it. */
import type { Area } from '../book/address';
import { placeText } from '../book/address';
import type { Mark } from '../book/book';
import { MARKED } from '../book/roles';
import { rangeOf } from './read';
import { cellOf, commentsAt, type Desk } from './write';

/** Always true, and known again as ours: a conditional format that can be taken away without a trace. */
const RULE = '=N("Hemledger finding")=0';
/** One without a rule was left half made: nobody else can make such a one. */
const isOurs = (rule: string): boolean => rule === RULE || rule === '';
const OPENING = 'Hemledger: ';

/** Conditional formats of ours on these sheets; two requests. */
async function ours({ context }: Desk, sheets: readonly string[] | undefined) {
  const { worksheets } = context.workbook;
  worksheets.load('items/name');
  await context.sync();
  const asked = worksheets.items
    .filter(({ name }) => sheets?.includes(name) !== false)
    .map((sheet) => {
      const formats = sheet.getRange().conditionalFormats;
      formats.load('items/type,items/customOrNullObject/rule/formula');
      return formats;
    });
  await context.sync();
  return asked
    .flatMap(({ items }) => items)
    .filter((one) => one.type === 'Custom' && isOurs(one.customOrNullObject.rule.formula));
}

export async function putMarks(desk: Desk, marks: readonly Mark[]): Promise<void> {
  const { context, lacks } = desk;
  const cells = new Map(marks.map((mark) => [cellOf(mark.area), mark]));
  const old = await ours(desk, [...new Set(marks.map(({ area }) => area.sheet))]);
  const placed = old.map((one) => ({ one, range: one.getRange().load('address') }));
  if (placed.length > 0) await context.sync();
  const areas = new Set(marks.map(({ area }) => `${cellOf(area).split('!')[0] ?? ''}!${placeText(area)}`));
  for (const { one, range } of placed) if (areas.has(range.address)) one.delete();
  for (const { area, weight } of marks) {
    const look = rangeOf(context, area).conditionalFormats.add('Custom');
    look.custom.rule.formula = RULE;
    look.custom.format.fill.color = `#${MARKED[weight]}`;
  }
  if (!lacks.has('comments')) {
    const taken = new Map((await commentsAt(desk)).map(({ comment, cell }) => [cell.address, comment]));
    for (const [cell, { area, sentence }] of cells) {
      const comment = taken.get(cell);
      if (comment === undefined)
        context.workbook.comments.add(rangeOf(context, first(area)), OPENING + sentence);
      else if (comment.content.startsWith(OPENING)) comment.content = OPENING + sentence;
    }
  }
  await context.sync();
}

/** Cells of the sheet that are coloured by us. */
export const marksOn = async (desk: Desk, sheet: string): Promise<number> =>
  (await ours(desk, [sheet])).length;

const first = (area: Area): Area => ({ ...area, rows: 1, columns: 1 });

export async function takeMarks(desk: Desk, sheet?: string): Promise<void> {
  const { context } = desk;
  for (const one of await ours(desk, sheet === undefined ? undefined : [sheet])) one.delete();
  if (!desk.lacks.has('comments')) {
    for (const { comment, cell } of await commentsAt(desk)) {
      const here =
        sheet === undefined ||
        cell.address.startsWith(cellOf({ sheet, row: 0, column: 0, rows: 1, columns: 1 }).replace(/A1$/, ''));
      if (here && comment.content.startsWith(OPENING)) comment.delete();
    }
  }
  await context.sync();
}
