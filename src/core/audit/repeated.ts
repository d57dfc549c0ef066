/** Which findings say the same thing of a table, so that it can be said once. */
import type { CellIn } from '../cell/fields';
import type { FindingCode } from '../findings/table';
import type { OrderFinding } from './finding';
import { figureIn } from './own-figures';

/** What may be the table's own way; a caution or a doubt of one row is never passed over. */
const OF_THE_TABLE: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'partsDoNotAdd',
  'amountDiffers',
  'depositAboveTotal',
  'figureDiffers',
  'repeatIgnored',
]);
/** A word that cannot be read. */
const OF_A_WORD: ReadonlySet<FindingCode> = new Set<FindingCode>(['unreadable', 'unknownChoice', 'doubtful']);

export const isOfAWord = ({ code }: OrderFinding): boolean => OF_A_WORD.has(code);

/** What makes two findings the same thing to say; undefined for what is said row by row. */
export function repeatKey({ code, column, sentence }: OrderFinding): string | undefined {
  if (OF_THE_TABLE.has(code)) return `${code} ${column}`;
  return OF_A_WORD.has(code) ? `${code} ${column} ${sentence}` : undefined;
}

/** What a charge or a reduction without a column shows in. */
const OF_A_CHARGE: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'partsDoNotAdd',
  'notItsOwnSum',
  'amountDiffers',
  'figureDiffers',
]);

/** Doubled, halved, ten times as much: such a slip is made more than once. */
const isOfASlip = (ratio: number): boolean =>
  [ratio, 1 / ratio].some((one) => Math.abs(one - Math.round(one)) < 1e-3 || Math.abs(one - 1.5) < 1e-3);

const MOST_SHARES = 6;

/** So much more or less, or such a share more or less, of one column. */
export interface SameDifference {
  readonly key: string;
  readonly by: number;
  /** Whether it is a share of what was expected. */
  readonly share: boolean;
}

/** How an amount differs from what it should be; nothing where one of the row's own amounts was left out or added twice. */
export function sameDifferences(
  { code, column, measure, found, expected }: OrderFinding,
  cells: readonly CellIn[],
): readonly SameDifference[] {
  if (!OF_A_CHARGE.has(code) || (code === 'figureDiffers' && measure !== 'money')) return [];
  if (typeof found !== 'number' || typeof expected !== 'number' || expected === 0) return [];
  const by = Math.round((found - expected) * 100) / 100;
  if (cells.some((cell) => Math.abs(Math.abs(figureIn(cell)) - Math.abs(by)) < 0.015)) return [];
  const name = `${code} ${column}`;
  return [
    { key: `${name} by ${by}`, by, share: false },
    ...sharesOf(found, expected).map((share) => ({
      key: `${name} by ${share} of it`,
      by: share,
      share: true,
    })),
  ];
}

/** So much of it more or less, to the half of a hundredth; what was brought to the whole may be one of several hundredths. */
function sharesOf(found: number, expected: number): number[] {
  const [fine, within] = Number.isInteger(found) ? [100, 1] : [200, 0.0151];
  const at = (figure: number): number => (figure / expected - 1) * fine;
  const [from, to] = [at(found - within), at(found + within)].sort((one, other) => one - other);
  const shares: number[] = [];
  for (let share = Math.ceil(from ?? 0); share <= (to ?? 0) && shares.length < MOST_SHARES; share++)
    if (share !== 0 && share > -fine && !isOfASlip(1 + share / fine)) shares.push(share / fine);
  return shares;
}

/** Whether what is found in a row is said once of its table. */
export const isSaidOnce = (
  once: ReadonlySet<string> | undefined,
  one: OrderFinding,
  cells: readonly CellIn[],
): boolean =>
  once !== undefined &&
  (once.has(repeatKey(one) ?? '') ||
    // A charge that is known is no amount added twice, though the row may have one as large.
    sameDifferences(one, Number(one.difference) > 0 ? [] : cells).some(({ key }) => once.has(key)));
