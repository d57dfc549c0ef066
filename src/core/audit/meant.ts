/** A row that says why it is unlike the others: what is found there is told as a note that quotes it. */
import { finding } from '../cell/answer';
import type { CellIn } from '../cell/fields';
import type { Slot } from '../window/reader/slots';
import type { OrderFinding } from './finding';

/** Said of a row that was meant as it stands: the client's wish, more cloth on purpose, made again, cloth of the client's own. */
const MEANT: readonly RegExp[] = [
  /\b(?:client|customer|cust|owner|designer|decorator|guest|buyer|architect)\b.{0,24}\b(?:request\w*|ask\w*|want\w*|wish\w*|choice|chose|insist\w*|prefer\w*|ok(?:ay)?|approv\w*|agreed?|own|suppl(?:y|ied|ies|ying)|furnish\w*|brings?|brought|hangs?|installs?|happy)\b/i,
  /\b(?:as|per|by|at|of)\b.{0,12}\b(?:request\w*|asked|agreed|spec|client|customer|owner|designer)\b|\brequested\b/i,
  /\b(?:wants?(?! (?:by|before)\b)|wish(?:es)?|wished|asked|insists?|insisted)\b/i,
  /\b(?:extra|added?|allow(?:ed)?|plus)\b.{0,12}\b(?:widths?|full\w*|drops?|lengths?|cloth|fabric|hems?|overlap|yards?|yd|yds|metres?|meters?|cuts?|stock)\b/i,
  /\b(?:widths?|drops?|lengths?|yards?|yds?|metres?|meters?|m)\b.{0,8}\b(?:more|extra|over|fuller|wider|longer|less)\b/i,
  /\b(?:plus|and|extra|more|over|spare)\b.{0,20}\bfor (?:an? |the )?\p{L}+/iu,
  /\battic stock\b|\bspares?\b/i,
  /\bC\.?O\.?M\b|\b(?:own|his|her|their) (?:own )?(?:fabric|cloth|material|goods)\b/,
  /\b(?:re-?(?:made?|making|make|cut|do|done|placement)|do-?over)\b|\breplac(?:es|ing|ed)\b|\b(?:our|my) (?:fault|mistake|error)\b/i,
  /\bon purpose\b|\bintention\w*|\bas (?:existing|before|last time|(?:the )?old)\b|\bmatch (?:existing|(?:the )?old)\b|\b(?:no|not) (?:charged?|billed)\b|\bn\/c\b|\bwarranty\b|\b(?:altered|made|making|done)\b.{0,4}\bfree\b|\bcourtesy\b/i,
];
/** A longer text is no note. */
const MOST_TEXT = 200;

/** The note of a row that excuses its figures, from the cells that hold none of them; undefined where none does. */
export function noteIn(cells: readonly CellIn[], slots: readonly Slot[]): string | undefined {
  for (const { at, keys } of slots) {
    const cell = cells[at];
    if (keys.length > 0 || typeof cell !== 'string' || cell.length > MOST_TEXT) continue;
    const text = cell.trim();
    if (MEANT.some((words) => words.test(text))) return text;
  }
  return undefined;
}

/** The finding as a note that quotes the row’s own; as it is where the row says nothing. */
export const meant = (found: OrderFinding, note: string | undefined): OrderFinding =>
  note === undefined
    ? found
    : {
        ...found,
        weight: 'note',
        sentence: finding('rowSays', found.column, note, found.sentence).sentence,
      };
