/** What kind of row it is: a window, a line of words, a total, goods of another kind. */
import { feetByDash, isDitto, moneyOf, type Cell, type Row } from './cells';
import type { OrderKey } from '../meanings';
import type { Plan, RowKind, Slot } from './slots';
import { goodsOf, headingOfText, treatmentOf } from './treatment-text';
import { readCell } from './values';

/** Facts only a window has: of trims and totals they stay blank. */
const OF_A_WINDOW: ReadonlySet<OrderKey> = new Set<OrderKey>([
  'openingWidth',
  'leftExtension',
  'rightExtension',
  'rodWidth',
  'measured',
  'measuredCentre',
  'measuredRight',
  'measuredTo',
  'floorFinish',
  'finishedDrop',
  'heading',
  'draw',
  'return',
  'overlap',
  'fullness',
  'finishedWidth',
  'cutLength',
  'stack',
  'lining',
]);
export const isWindowFact = (key: OrderKey): boolean => OF_A_WINDOW.has(key);

const ADDED_UP: ReadonlySet<OrderKey> = new Set<OrderKey>([
  'quantity',
  'widths',
  'yardage',
  'liningYardage',
  'railroadedYardage',
  'labor',
  'amount',
  'liningAmount',
  'hardware',
  'installation',
  'freight',
  'discount',
  'tax',
  'total',
  'deposit',
  'rings',
  'brackets',
  'marks',
  'weight',
]);
/** What nearly every window's row says of how it is made. */
const MADE_UP: readonly OrderKey[] = ['heading', 'draw', 'rodWidth', 'finishedWidth', 'openingWidth'];
/** What belongs to the lines below too, until another is said. */
export const CARRIED: readonly OrderKey[] = ['room', 'order', 'date', 'customer', 'job'];

const TOTAL =
  /^[Σ∑]|^fwd\b|^cont(?:'?d|inued)?\.? (?:next|over|on)\b|^(?:balance |bal\.? )?owed\b|^all$|^to pay\b|[aà] payer|^(?:ex|inc)l?\.?(?: ?(?:gst|vat|tax))?$|^from page\b|^(?:whole )?site\b|^balance due\b|^(?:tps|tvq|tva|btw|mwst)\b|^(?:grand |sub-?\s?|floor |job |order |line |page )?tot(?:al|als)?\b|^sum\b|\btot(?:al|als)?\.?:?$|^(?:carried|brought|c\/?f|b\/?f|b\/fwd|c\/fwd)\b(?: forward| fwd| down| over)?|^in all\b|^balance\b|^net(?:t)?\b|^(?:plus |add )?(?:vat|gst|hst|pst|qst|(?:sales )?tax)\b|^(?:less )?(?:booking |paid )?deposit\b|^paid\b|^due\b|^all (?:floors?|rooms?|windows?)$|\btotals?\s*(?:yds?|yards?|m|metres?|ex\b|inc\b|£|\$)|^sub ?t(?:ot)?\b/i;
const CANCELLED =
  /\bcancel|\bcanc\b|\bvoid(?:ed)?\b|\bdeleted?\b|\bomit(?:ted)?\b|\bscrapped\b|\bnot (?:needed|required|wanted|proceeding|going ahead)\b|\bno longer\b|\bwithdrawn\b|\bstruck (?:out|off)\b|\bcxl'?d?\b|\bcnx\b/i;
const PAYMENT = /^(?:pd|paid|payment|rec'?d|chq|check|cheque|ck)\b.*/i;

/** A shade’s text may say a heading as well: “Roman shade, flat”. */
const SHADE = /^(?:\w+ )?(?:shades?|blinds?|romans?|cornices?|val[ae]nces?|swags?|shutters?)\b/i;

/** “Balance on completion. Fabric COM.” is a sentence. */
const isShort = (cell: Cell): boolean => typeof cell === 'string' && cell.split(' ').length <= MOST_WORDS;
const MOST_WORDS = 4;

/** How many of a row's filled cells are facts of a window, sums, and the rest. */
interface Facts {
  window: number;
  unread: number;
  added: number;
  others: number;
  figures: number;
  readonly keys: Set<OrderKey>;
}

/** Counts a filled cell that is read. */
function count(found: Facts, key: OrderKey, cell: Cell): void {
  const text = typeof cell === 'string' ? cell : '';
  if (OF_A_WINDOW.has(key)) {
    found.window++;
    found.keys.add(key);
  } else if (ADDED_UP.has(key)) {
    if (moneyOf(cell) !== undefined) found.added++;
    if (/\d/.test(text)) found.figures++;
  } else if (key !== 'room' && !CARRIED.includes(key)) found.others++;
  if (key !== 'room' && /^\s*[\d½¼¾]/.test(text)) found.figures++;
}

interface Seen {
  readonly cells: Row;
  readonly filled: readonly Cell[];
  readonly texts: readonly string[];
  readonly facts: Facts;
  /** Whether any figure stands in it. */
  readonly figures: boolean;
}

const saysTotal = ({ texts, facts, figures, filled }: Seen): boolean =>
  facts.window < 3 &&
  (figures || filled.some(isShort)) &&
  texts.some((text) => text.length < 45 && TOTAL.test(text));

const isCancelled = ({ texts }: Seen): boolean => texts.some((text) => CANCELLED.test(text));

/** What figures without a window belong to. */
function kindByFigures({ facts: { window, added, others }, texts }: Seen): RowKind {
  if (window === 0 && texts.some((text) => PAYMENT.test(text))) return 'note';
  if (others === 0 && added > 0) return 'total';
  if (window === 1 && added + others > 0) return 'window';
  if (added > 0) return 'other goods';
  return texts.length > 0 ? 'note' : 'total';
}

/** Whether a cell's words tell the goods of its row, whatever stands in the others. */
const tellsGoods = ({ keys, other }: Slot, text: string): boolean =>
  other === 'item' ||
  other === 'layer' ||
  (keys.includes('draw') && !keys.includes('heading')) ||
  (keys[0] === 'heading' && (headingOfText(text) === undefined || SHADE.test(text)));

/** Whether goods may be named where the room or the cloth stands, or under a heading that says nothing known. */
const mayNameGoods = ({ keys }: Slot, text: string): boolean =>
  keys[0] === 'room' || keys[0] === 'fabric' || (keys.length === 0 && text.length < 40);

export class RowKinds {
  /** Whether no column is of the window itself: prices and yardages alone. */
  private readonly bare: boolean;
  private readonly heads: readonly ReadonlySet<string>[];

  constructor(private readonly plan: Plan) {
    this.bare = !plan.slots.some(({ keys }) => keys.some(isWindowFact));
    this.heads = plan.headings.map((texts) => new Set(texts.map((text) => text.toLowerCase())));
  }

  kindOf(cells: Row): RowKind | 'words' {
    const filled = cells.filter((cell) => cell !== null);
    if (filled.length === 0) return 'blank';
    const texts = filled.filter((cell): cell is string => typeof cell === 'string');
    if (texts.length > 0 && this.repeats(cells)) return 'repeat header';
    const facts = this.facts(cells);
    const figures =
      facts.figures > 0 || filled.some((cell) => typeof cell !== 'string' && typeof cell !== 'boolean');
    const seen: Seen = { cells, filled, texts, facts, figures };
    if (saysTotal(seen)) return 'total';
    const measured = facts.window >= 2 || (facts.window === 1 && this.plan.usual.size <= 2);
    return measured ? this.kindMeasured(seen) : this.kindUnmeasured(seen);
  }

  /** Whether it holds enough facts of a window to be one, a window that was cancelled among them. */
  hasWindowFacts(cells: Row): boolean {
    return this.facts(cells).window >= 2;
  }

  private kindMeasured(seen: Seen): RowKind | 'words' {
    const { facts, figures } = seen;
    if (isCancelled(seen)) return 'note';
    if (this.isGoods(seen)) return 'other goods';
    const chosen = this.plan.usual.size <= 2 && facts.others > 0;
    return !figures && facts.window < 3 && !chosen ? 'words' : 'window';
  }

  private kindUnmeasured(seen: Seen): RowKind | 'words' {
    const { facts, figures } = seen;
    // Where nothing is measured, choices make the row: drawn by a cord, children in the room.
    if (!figures && !(this.bare && facts.others > 0)) return 'words';
    if (this.bare && facts.added + facts.others > 0) return 'window';
    if (facts.added === 0 && isCancelled(seen)) return 'note';
    if (this.isGoods(seen)) return 'other goods';
    return this.isBadlyWritten(seen) ? 'window' : kindByFigures(seen);
  }

  /** A full row whose cells cannot be read is a window that is badly written. */
  private isBadlyWritten({ facts: { window, unread }, filled }: Seen): boolean {
    const full = filled.length * 2 > this.plan.slots.length;
    return (window > 0 && unread > 0) || (window + unread >= 3 && full);
  }

  /** Whether the headings stand again. */
  private repeats(cells: Row): boolean {
    let [same, filled] = [0, 0];
    for (const [at, cell] of cells.entries()) {
      if (cell === null) continue;
      filled++;
      if (typeof cell === 'string' && this.heads[at]?.has(cell.toLowerCase()) === true) same++;
    }
    return same >= 2 && same * 2 > filled;
  }

  private facts(cells: Row): Facts {
    const found: Facts = { window: 0, unread: 0, added: 0, others: 0, figures: 0, keys: new Set() };
    for (const slot of this.plan.slots) {
      const cell = cells[slot.at] ?? null;
      const key = slot.keys[0];
      if (cell === null || key === undefined || (slot.part ?? 0) > 0 || slot.addsTo !== undefined) continue;
      if (OF_A_WINDOW.has(key) && !this.reads(slot, cell)) found.unread++;
      else count(found, key, cell);
    }
    return found;
  }

  private reads(slot: Slot, cell: Cell): boolean {
    return (
      slot.part !== undefined ||
      isDitto(cell) ||
      (slot.dashed === true && feetByDash(cell) !== undefined) ||
      slot.keys.some((key) => typeof readCell(key, cell, slot.unit, this.plan.order) === 'object') ||
      (slot.keys.includes('draw') && typeof cell === 'string' && treatmentOf(cell).oneWay)
    );
  }

  private isGoods(seen: Seen): boolean {
    const named = this.namedGoods(seen);
    if (named === 'other goods' || this.namesGoodsUnmade(seen)) return true;
    return named !== 'window' && (this.isBorder(seen) || this.isOnlyCloth(seen));
  }

  /** What the row's words say it is, by the first cell that says so. */
  private namedGoods({ cells, facts }: Seen): 'window' | 'other goods' | undefined {
    for (const slot of this.plan.slots) {
      const cell = cells[slot.at] ?? null;
      if (typeof cell !== 'string') continue;
      const named = goodsOf(cell);
      if (named === undefined) continue;
      if (tellsGoods(slot, cell)) return named;
      if (named === 'other goods' && facts.window < 2 && mayNameGoods(slot, cell)) return named;
    }
    return undefined;
  }

  /** A room or job whose words name goods, where something is missing that nearly every window has. */
  private namesGoodsUnmade({ cells, facts: { keys } }: Seen): boolean {
    const missing = MADE_UP.some((key) => this.plan.usual.has(key) && !keys.has(key));
    return (
      missing &&
      this.plan.slots.some(({ at, keys: [key], other }) => {
        const cell = cells[at];
        if (typeof cell !== 'string' || goodsOf(cell) !== 'other goods') return false;
        return key === 'room' || key === 'job' || other === 'item';
      })
    );
  }

  /** A border has a width and a height too, and neither heading nor draw. */
  private isBorder({ cells }: Seen): boolean {
    const { usual, slots } = this.plan;
    if (!usual.has('heading') || !usual.has('draw')) return false;
    if (this.has(cells, ['heading', 'draw', 'lining', 'fullness'])) return false;
    return slots.some(({ at, keys: [key], other }) => {
      const cell = cells[at];
      if (typeof cell !== 'string') return false;
      return other === 'item' || ((key === 'room' || key === 'fabric') && goodsOf(cell) === 'other goods');
    });
  }

  /** Cloth or a price, and next to nothing of what the other rows have. */
  private isOnlyCloth({ cells, facts }: Seen): boolean {
    const { usual } = this.plan;
    const missing = [...usual].filter((key) => !facts.keys.has(key)).length;
    return (
      usual.size >= 3 &&
      facts.window < 2 &&
      missing >= usual.size - 1 &&
      this.has(cells, ['fabric', 'unitPrice'])
    );
  }

  private has(cells: Row, keys: readonly OrderKey[]): boolean {
    return this.plan.slots.some(
      (slot) => (cells[slot.at] ?? null) !== null && slot.keys.some((key) => keys.includes(key)),
    );
  }
}
