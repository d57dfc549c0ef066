/** Which findings say the same thing of a table, so that it can be said once. */
import type { FindingCode } from '../findings/table';
import type { OrderFinding } from './finding';

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
