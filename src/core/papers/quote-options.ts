/**
 * Two ways of making the same windows, priced beside each other: another cloth, another fullness. Each price is
 * of a job worked out by itself; what the two have alike is said once.
 */
import type { PapersJob, Sum } from './job';
import { entryText, words, type Block, type Entry, type TableRow } from './paper';
import { quoteLines } from './quote-lines';
import { printed } from './quote-sums';

/** A line with what is said below it, and the heads above it. */
interface Item {
  readonly heads: readonly TableRow[];
  readonly line: TableRow;
  readonly details: readonly Entry[];
}

function itemsOf(job: PapersJob): readonly Item[] {
  const items: Item[] = [];
  let heads: TableRow[] = [];
  for (const row of quoteLines(job)) {
    const last = items.at(-1);
    if (row.is === 'group') heads.push(row);
    else if (row.is === 'line') {
      items.push({ heads, line: row, details: [] });
      heads = [];
    } else if (last !== undefined)
      items[items.length - 1] = {
        ...last,
        details: [...last.details, ...row.cells.flatMap((one) => one ?? [])],
      };
  }
  return items;
}

const textOf = (entry: Entry | undefined): string => (entry === undefined ? '' : entryText(entry));
const detail = (text: string): TableRow => ({ is: 'detail', cells: [words(text)] });

/** The room is named in the line above already. */
function withoutRoom(words: string, above: string): string {
  const room = above.slice(0, above.indexOf(': ') + 2);
  return room.length > 2 && words.startsWith(room) ? words.slice(room.length) : words;
}

function rowsOf({ heads, line, details }: Item, other: Item): readonly TableRow[] {
  const [what, quantity, price] = line.cells;
  const [otherWhat, , otherPrice] = other.line.cells;
  const [own, its] = [details, other.details].map((list) => list.map(textOf).join('; ')) as [string, string];
  const sameWords = textOf(what) === textOf(otherWhat);
  const both: TableRow = { is: 'line', cells: [what, quantity, price, otherPrice] };
  const unlike = sameWords ? '' : withoutRoom(textOf(otherWhat), textOf(what));
  if (own === its)
    return [
      ...heads,
      both,
      ...details.map((one): TableRow => ({ is: 'detail', cells: [one] })),
      ...(unlike === '' ? [] : [detail(`Option B: ${unlike}`)]),
    ];
  const ofOther = [unlike, its].filter((one) => one !== '').join('. ');
  return [
    ...heads,
    both,
    ...(own === '' ? [] : [detail(`Option A: ${own}`)]),
    ...(ofOther === '' ? [] : [detail(`Option B: ${ofOther}`)]),
  ];
}

/** Sums of one name stand in one row; one that only the other has comes before its total. */
function sumRows(job: PapersJob, other: PapersJob): readonly TableRow[] {
  const [own, its] = [printed(job), printed(other)];
  const alike = (list: readonly Sum[], { label, is }: Sum): Sum | undefined =>
    list.find((one) => one.label === label && one.is === is);
  const total = own.findIndex(({ is }) => is === 'total');
  const further = its.filter((one) => alike(own, one) === undefined);
  return [...own.slice(0, total), ...further, ...own.slice(total)].map((sum): TableRow => ({
    is: sum.is === 'total' ? 'total' : 'sum',
    cells: [words(sum.label), undefined, alike(own, sum)?.entry, alike(its, sum)?.entry],
  }));
}

/** Where the two are not the same windows and further lines, so that no price could stand beside another. */
export function unlikeIn(job: PapersJob, other: PapersJob): readonly string[] {
  const [own, its] = [job.windows, other.windows];
  if (own.length !== its.length)
    return [
      `Option A has ${own.length} rows of windows and option B ${its.length}: give both the same rows, in the same order.`,
    ];
  const rooms = own.flatMap(({ room, quantity, line }, at): string[] => {
    const beside = its[at];
    const same =
      beside !== undefined &&
      entryText(beside.room).toLowerCase() === entryText(room).toLowerCase() &&
      beside.quantity.value === quantity.value;
    return same
      ? []
      : [
          `Line ${line} is ${entryText(room)}, ${entryText(quantity)} in option A and ${textOf(beside?.room)}, ${textOf(beside?.quantity)} in option B: give both the same windows.`,
        ];
  });
  if (rooms.length > 0) return rooms;
  return itemsOf(job).length === itemsOf(other).length
    ? []
    : [
        'Option A and option B have not the same further lines: give both the same extras, in the same order.',
      ];
}

export function optionsTable(job: PapersJob, other: PapersJob): Block {
  const others = itemsOf(other);
  return {
    is: 'table',
    repeated: true,
    columns: [
      { heading: 'What we make for you', span: 6 },
      { heading: 'Quantity', span: 2, align: 'center' },
      { heading: 'Option A', span: 2, align: 'right' },
      { heading: 'Option B', span: 2, align: 'right' },
    ],
    rows: [...itemsOf(job).flatMap((item, at) => rowsOf(item, others[at] ?? item)), ...sumRows(job, other)],
  };
}
