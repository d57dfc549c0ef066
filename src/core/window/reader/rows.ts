/** Rows read one by one through a fixed reading, with a bounded memory of what carries down. */
import { UNITS, type LengthUnit } from '../../exact/length';
import type { Unit } from '../../exact/unit';
import type { OrderKey } from '../meanings';
import {
  countOf,
  feetByDash,
  figureOf,
  fullnessAdded,
  isDay,
  isDitto,
  moneyOf,
  type Cell,
  type Row,
} from './cells';
import { Above } from './above';
import { spelledOut, type Codes } from './codes';
import { withPoint } from './decimal-comma';
import type { DayOrder } from './dates';
import { fractionOf, isDayNumber, partsOf, splitCell } from './evidence';
import { yesOrNo } from '../../cell/treatment';
import type { Per } from './heading';
import type { OtherKey } from './meanings';
import { goodsOf, headingOfText, isTwo, treatmentOf } from './treatment-text';
import {
  leadingCount,
  partOfInch,
  plus,
  readCell,
  roomAndCount,
  within,
  type CellRead,
  type Value,
} from './values';

export type RowKind = 'window' | 'section' | 'total' | 'note' | 'repeat header' | 'blank' | 'other goods';
export type Values = Partial<Record<OrderKey, Value | undefined>>;

export interface RowRead {
  /** Row of the sheet, from 0. */
  readonly row: number;
  readonly is: RowKind;
  readonly values: Values;
  readonly unread: readonly { readonly at: number; readonly key: OrderKey; readonly text: string }[];
  /** Dates among fractions, by column. */
  readonly dated: readonly number[];
}

/** How one column's cells are read. */
export interface Slot {
  readonly at: number;
  readonly part: number | undefined;
  readonly heading: string;
  readonly keys: readonly OrderKey[];
  readonly other: OtherKey | undefined;
  readonly unit: LengthUnit;
  readonly per: Per | undefined;
  /** The column whose figure this one's part is added to. */
  readonly addsTo: number | undefined;
  /** Whether a bare figure in brackets behind a room counts its windows. */
  readonly counts?: boolean | undefined;
  /** Whether its cells are feet and inches with a dash between. */
  readonly dashed?: boolean | undefined;
  /** What its figures say of the draw. */
  readonly draws?: 'each is a pair' | '2 is a pair' | undefined;
  /** Whether its percentages are added to flat. */
  readonly added?: boolean | undefined;
  /** The one lining that its heading asks for by yes and no. */
  readonly yesIs?: 'blackout' | 'interlined' | undefined;
}

export interface Plan {
  readonly slots: readonly Slot[];
  /** The header's rows, for finding them again further down. */
  readonly headings: readonly (readonly string[])[];
  readonly unit: Unit;
  readonly order: DayOrder | undefined;
  /** Whether figures are written like “3,76”. */
  readonly decimalComma: boolean;
  /** What its columns’ code numbers stand for. */
  readonly codes: Codes;
  /** Measured to, where a line above the headings or a heading says it for every row. */
  readonly measuredTo: string | undefined;
  /** What a line above says for every row, where no column does. */
  readonly stated: Values;
  /** How many facts a usual window row has. */
  readonly usual: ReadonlySet<OrderKey>;
}

/** What is unread of a draw that is one panel. */
export const SIDE_NOT_SAID = 'one way, to a side that is not said';

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
const CARRIED: readonly OrderKey[] = ['room', 'order', 'date', 'customer', 'job'];

const TOTAL =
  /^[Σ∑]|^fwd\b|^cont(?:'?d|inued)?\.? (?:next|over|on)\b|^(?:balance |bal\.? )?owed\b|^all$|^to pay\b|[aà] payer|^(?:ex|inc)l?\.?(?: ?(?:gst|vat|tax))?$|^from page\b|^(?:whole )?site\b|^balance due\b|^(?:tps|tvq|tva|btw|mwst)\b|^(?:grand |sub-?\s?|floor |job |order |line |page )?tot(?:al|als)?\b|^sum\b|\btot(?:al|als)?\.?:?$|^(?:carried|brought|c\/?f|b\/?f|b\/fwd|c\/fwd)\b(?: forward| fwd| down| over)?|^in all\b|^balance\b|^net(?:t)?\b|^(?:plus |add )?(?:vat|gst|hst|pst|qst|(?:sales )?tax)\b|^(?:less )?(?:booking |paid )?deposit\b|^paid\b|^due\b|^all (?:floors?|rooms?|windows?)$|\btotals?\s*(?:yds?|yards?|m|metres?|ex\b|inc\b|£|\$)|^sub ?t(?:ot)?\b/i;
const CANCELLED =
  /\bcancel|\bcanc\b|\bvoid(?:ed)?\b|\bdeleted?\b|\bomit(?:ted)?\b|\bscrapped\b|\bnot (?:needed|required|wanted|proceeding|going ahead)\b|\bno longer\b|\bwithdrawn\b|\bstruck (?:out|off)\b|\bcxl'?d?\b|\bcnx\b/i;
const NOTE_WORDS =
  /[.;!?]|, |\b(?:not|see|by|please|check|call|note|from|under|with|are|is|was|hold|ship|prices?|all|measured|incl|excl|per|must|to be|client|confirm|approx|deposit|terms|signed|page)\b|\*|^n\.?b\b/i;

/** A shade’s text may say a heading as well: “Roman shade, flat”. */
const SHADE = /^(?:\w+ )?(?:shades?|blinds?|romans?|cornices?|val[ae]nces?|swags?|shutters?)\b/i;
/** “2½ ea side”: for one of the panels. */
export const EACH_SIDE = /\d.*\b(?:sides?|ea|each)\b|½\s*(?:ea|each|\/|a|per)/i;

/** “11 windows, 3 cubicles” below the last of them. */
const COUNTED = /^\d+ (?:windows?|openings?|pairs?|prs?|curtains?|drapes|rooms?|rms?|units?|panels?)\b/i;
/** A name in capitals heads what follows it. */
const TITLE = /^[A-Z]{3,}\b/;

const STOREY =
  /\b(?:wing|floor|block|ground|storey|level|annexe?|fl|flr|basement|phase|building|house|tower)\b/i;
const PAYMENT = /^(?:pd|paid|payment|rec'?d|chq|check|cheque|ck)\b.*/i;

/** “Balance on completion. Fabric COM.” is a sentence. */
const isShort = (cell: Cell): boolean => typeof cell === 'string' && cell.split(' ').length <= MOST_WORDS;
const MOST_WORDS = 4;

const words = (cell: Cell): string => (typeof cell === 'string' ? cell : '');

interface Waiting {
  readonly row: number;
  readonly cells: Row;
}

export class RowReader {
  private waiting: Waiting[] = [];
  private readonly heads: readonly ReadonlySet<string>[];
  private readonly carries: readonly OrderKey[];
  private readonly bare: boolean;

  constructor(
    private readonly plan: Plan,
    private readonly above: Above = new Above(),
  ) {
    this.bare = !plan.slots.some(({ keys }) => keys.some((key) => OF_A_WINDOW.has(key)));
    this.carries = CARRIED.filter((key) => plan.slots.some(({ keys }) => keys.includes(key)));
    this.heads = plan.headings.map((texts) => new Set(texts.map((text) => text.toLowerCase())));
  }

  /** Takes the next row and gives the rows that are certain now: a line of words waits for what follows it. */
  push(row: number, given: Row): RowRead[] {
    const pointed = this.plan.decimalComma ? given.map(withPoint) : given;
    const cells = spelledOut(pointed, this.plan.codes);
    const kind = this.kindOf(cells);
    if (kind === 'words') {
      this.waiting.push({ row, cells });
      return [];
    }
    if (kind === 'blank') {
      if (this.waiting.length === 0) return [plain(row, 'blank')];
      this.waiting.push({ row, cells });
      return [];
    }
    const before = this.settle(['window', 'other goods', 'repeat header'].includes(kind));
    if (kind === 'window') return [...before, this.window(row, cells)];
    // A cancelled line says order and date for those below all the same.
    if (kind === 'other goods' || (kind === 'note' && this.facts(cells).window >= 2)) {
      this.carry(row, cells);
    }
    if (kind === 'total') this.above.begin();
    return [...before, plain(row, kind)];
  }

  end(): RowRead[] {
    return this.settle(false);
  }

  /** Lines of words before a window are sections where they are short; at the end they are notes. */
  private settle(windowFollows: boolean): RowRead[] {
    const list = this.waiting.map(({ row, cells }): RowRead => {
      const texts = cells.filter((cell) => cell !== null);
      if (texts.length === 0) return plain(row, 'blank');
      const text = texts.map(words).join(' ');
      const titled = texts.length === 1 && text.length <= 40 && text.split(' ').length <= 5;
      if (!windowFollows && titled && COUNTED.test(text)) return plain(row, 'total');
      const section =
        windowFollows &&
        titled &&
        (!NOTE_WORDS.test(text) ||
          TITLE.test(text) ||
          STOREY.test(text) ||
          (/^[\w\s&'’/-]+(?:\(cont'?d?\.?\))?$/i.test(text) &&
            !/\b(?:not|see|please|check|call|note|are|is|was|hold|must)\b/i.test(text)));
      if (section) this.above.begin();
      return plain(row, section ? 'section' : 'note');
    });
    this.waiting = [];
    return list;
  }

  private repeats(cells: Row): boolean {
    let [same, filled] = [0, 0];
    for (const [at, cell] of cells.entries()) {
      if (cell === null) continue;
      filled++;
      if (typeof cell === 'string' && this.heads[at]?.has(cell.toLowerCase()) === true) same++;
    }
    return same >= 2 && same * 2 > filled;
  }

  kindOf(cells: Row): RowKind | 'words' {
    const filled = cells.filter((cell) => cell !== null);
    if (filled.length === 0) return 'blank';
    if (filled.some((cell) => typeof cell === 'string') && this.repeats(cells)) return 'repeat header';
    const texts = filled.filter((cell): cell is string => typeof cell === 'string');
    const seen = this.facts(cells);
    const total = texts.some((text) => text.length < 45 && TOTAL.test(text));
    const figures =
      filled.some((cell) => typeof cell !== 'string' && typeof cell !== 'boolean') || seen.figures > 0;
    if (total && seen.window < 3 && (figures || filled.some(isShort))) return 'total';
    if (seen.window >= 2 || (seen.window === 1 && this.plan.usual.size <= 2)) {
      if (texts.some((text) => CANCELLED.test(text))) return 'note';
      if (this.isGoods(cells, seen)) return 'other goods';
      const chosen = this.plan.usual.size <= 2 && seen.others > 0;
      if (!figures && seen.window < 3 && !chosen) return 'words';
      return 'window';
    }
    // Where nothing is measured, choices make the row: drawn by a cord, children in the room.
    if (!figures && !(this.bare && seen.others > 0)) return 'words';
    // Orders that say nothing of the window itself: prices and yardages alone.
    if (this.bare && (seen.added > 0 || seen.others > 0)) return 'window';
    if (seen.added === 0 && texts.some((text) => CANCELLED.test(text))) return 'note';
    if (this.isGoods(cells, seen)) return 'other goods';
    // A full row whose cells cannot be read is a window that is badly written.
    if (seen.window + seen.unread >= 3 && filled.length * 2 > this.plan.slots.length) return 'window';
    if (seen.window > 0 && seen.unread > 0) return 'window';
    if (seen.window === 0 && texts.some((text) => PAYMENT.test(text))) return 'note';
    if (seen.others === 0 && seen.added > 0) return 'total';
    if (seen.window === 1 && seen.added + seen.others > 0) return 'window';
    return seen.added > 0 ? 'other goods' : texts.length > 0 ? 'note' : 'total';
  }

  /** How many of a row's filled cells are facts of a window, sums, and the rest. */
  private facts(cells: Row): {
    window: number;
    unread: number;
    added: number;
    others: number;
    figures: number;
    keys: Set<OrderKey>;
  } {
    const found = { window: 0, unread: 0, added: 0, others: 0, figures: 0, keys: new Set<OrderKey>() };
    for (const slot of this.plan.slots) {
      const cell = cells[slot.at] ?? null;
      const key = slot.keys[0];
      if (cell === null || key === undefined || (slot.part ?? 0) > 0 || slot.addsTo !== undefined) continue;
      if (OF_A_WINDOW.has(key)) {
        const reads =
          isDitto(cell) ||
          (slot.dashed === true && feetByDash(cell) !== undefined) ||
          slot.part !== undefined ||
          this.reads(slot, cell);
        if (!reads) {
          found.unread++;
          continue;
        }
        found.window++;
        found.keys.add(key);
      } else if (ADDED_UP.has(key)) {
        if (moneyOf(cell) !== undefined) found.added++;
        if (typeof cell === 'string' && /\d/.test(cell)) found.figures++;
      } else if (key !== 'room' && !CARRIED.includes(key)) found.others++;
      if (typeof cell === 'string' && /^\s*[\d½¼¾]/.test(cell) && key !== 'room') found.figures++;
    }
    return found;
  }

  private reads(slot: Slot, cell: Cell): boolean {
    return (
      slot.keys.some((key) => typeof readCell(key, cell, slot.unit, this.plan.order) === 'object') ||
      (slot.keys.includes('draw') && typeof cell === 'string' && treatmentOf(cell).oneWay)
    );
  }

  private isGoods(cells: Row, seen: { window: number; keys: ReadonlySet<OrderKey> }): boolean {
    let named: 'window' | 'other goods' | undefined;
    for (const { at, keys, other } of this.plan.slots) {
      const cell = cells[at] ?? null;
      if (typeof cell !== 'string') continue;
      const tells =
        other === 'item' ||
        other === 'layer' ||
        (keys.includes('draw') && !keys.includes('heading')) ||
        (keys[0] === 'heading' && (headingOfText(cell) === undefined || SHADE.test(cell)));
      if (tells) named ??= goodsOf(cell);
      else if (
        (keys[0] === 'room' || keys[0] === 'fabric' || (keys.length === 0 && cell.length < 40)) &&
        seen.window < 2 &&
        goodsOf(cell) === 'other goods'
      )
        named ??= 'other goods';
    }
    if (named === 'other goods' || this.isNamedGoods(cells, seen.keys)) return true;
    if (named === 'window') return false;
    const usual = this.plan.usual;
    // A border has a width and a height too, and neither heading nor draw.
    const made = (['heading', 'draw'] as const).filter((key) => usual.has(key));
    if (
      made.length === 2 &&
      !this.has(cells, ['heading', 'draw', 'lining', 'fullness'], 1) &&
      this.plan.slots.some(
        ({ at, keys, other }) =>
          typeof cells[at] === 'string' &&
          (other === 'item' ||
            ((keys[0] === 'room' || keys[0] === 'fabric') &&
              goodsOf(words(cells[at] ?? null)) === 'other goods')),
      )
    )
      return true;
    const missing = [...usual].filter((key) => !seen.keys.has(key)).length;
    return (
      usual.size >= 3 &&
      seen.window < 2 &&
      missing >= usual.size - 1 &&
      this.has(cells, ['fabric', 'unitPrice'], 1)
    );
  }

  /** A room or job whose words name goods, where something is missing that nearly every window has. */
  private isNamedGoods(cells: Row, keys: ReadonlySet<OrderKey>): boolean {
    const missing = MADE_UP.some((key) => this.plan.usual.has(key) && !keys.has(key));
    return (
      missing &&
      this.plan.slots.some(({ at, keys: [key], other }) => {
        const text = words(cells[at] ?? null);
        return (key === 'room' || key === 'job' || other === 'item') && goodsOf(text) === 'other goods';
      })
    );
  }

  private has(cells: Row, keys: readonly OrderKey[], least: number): boolean {
    return (
      this.plan.slots.filter(
        (slot) => slot.keys.some((key) => keys.includes(key)) && (cells[slot.at] ?? null) !== null,
      ).length >= least
    );
  }

  /** The cells that are read, a ditto as the cell it repeats. */
  private resolved(cells: Row): Cell[] {
    return this.plan.slots.map(({ at, other, dashed }, place) => {
      const cell = cells[at] ?? null;
      if (isDitto(cell) || (cell === null && other === 'place')) return this.above.cell(place) ?? cell;
      if (cell !== null) this.above.remember(place, cell);
      return dashed === true ? (feetByDash(cell) ?? cell) : cell;
    });
  }

  /** Room, order, date and client belong to the lines below too. */
  private carry(row: number, cells: Row): void {
    const { values } = this.cellsOf(row, this.resolved(cells));
    for (const key of CARRIED) if (values[key] !== undefined) this.above.carry(key, values[key]);
  }

  private window(row: number, cells: Row): RowRead {
    const read = this.cellsOf(row, this.resolved(cells));
    const { values } = read;
    for (const key of this.carries) {
      if (values[key] === undefined) {
        if (read.unread.some((one) => one.key === key)) continue;
        const above = this.above.value(key);
        if (above !== undefined) values[key] = above;
      } else this.above.carry(key, values[key]);
    }
    if (
      values.measuredTo === undefined &&
      this.plan.measuredTo !== undefined &&
      values.measured !== undefined
    )
      values.measuredTo = this.plan.measuredTo;
    return read;
  }

  private cellsOf(row: number, cells: readonly Cell[]): RowRead & { values: Values } {
    const values: Values = {};
    const unread: { at: number; key: OrderKey; text: string }[] = [];
    const dated: number[] = [];
    let oneWay = false;
    let beside: string | undefined;
    let panels: number | undefined;
    let inPlace: string | undefined;
    const pers: [OrderKey, Per][] = [];
    const { slots, order } = this.plan;
    for (let place = 0; place < slots.length; place++) {
      const slot = slots[place] as Slot;
      let cell = cells[place] ?? null;
      if (cell === null) continue;
      if (slot.part !== undefined && typeof cell === 'string')
        cell = splitCell(cell, slot.heading)?.[slot.part] ?? (slot.part === 0 ? cell : null);
      if (slot.other === 'place') {
        inPlace = String(cell);
        continue;
      }
      if (slot.other === 'panels') {
        const figure = readCell('quantity', cell, slot.unit, order);
        if (typeof figure === 'object') panels = Number(figure.value);
        continue;
      }
      if (slot.addsTo !== undefined) {
        if (isDayNumber(cell)) dated.push(slot.at);
        addPart(slot, slots, cell, values);
        continue;
      }
      if (isHalfPair(slot, cell)) panels = 1;
      for (const [nth, key] of slot.keys.entries()) {
        const count = key === 'quantity' ? countBeside(slot, cell) : undefined;
        if (count !== undefined) {
          if (!Number.isNaN(count)) values.quantity ??= count;
          continue;
        }
        let read =
          bySlot(slot, key, cell) ??
          within(slot.keys, key, cell, slot.unit) ??
          readCell(key, cell, slot.unit, order);
        if (key === 'room' && slot.keys.includes('quantity') && typeof cell === 'string')
          read = { value: roomAndCount(cell, slot.counts).room };
        if (key === 'draw' && typeof cell === 'string') {
          const treatment = treatmentOf(cell);
          if (treatment.oneWay) {
            oneWay = true;
            if (typeof read !== 'object') read = 'nothing';
          }
          // Its own column has the word; what stands in the treatment's text fills in.
          if (slot.keys.length > 1 && typeof read === 'object') {
            beside = String(read.value);
            continue;
          }
        }
        if (key === 'widths' && typeof cell === 'string' && slot.per !== 'panel' && EACH_SIDE.test(cell))
          pers.push([key, 'panel']);
        if (read === 'unread' && wideInWidths(key, cell, values, pers)) continue;
        if (typeof read === 'object') values[key] ??= read.value;
        else if (read === 'unread' && nth === 0 && slot.keys.length === 1)
          unread.push({ at: slot.at, key, text: isDay(cell) ? 'a date' : String(cell) });
      }
      const first = slot.keys[0];
      if (slot.per !== undefined && first !== undefined) pers.push([first, slot.per]);
    }
    if (values.draw === undefined && beside !== undefined) values.draw = beside;
    if (values.draw === undefined && oneWay)
      unread.push({
        at: slots.find(({ keys }) => keys.includes('draw'))?.at ?? 0,
        key: 'draw',
        text: SIDE_NOT_SAID,
      });
    const { stated } = this.plan;
    if (values.draw === undefined && !oneWay && stated.draw !== undefined) values.draw = stated.draw;
    if (values.lining === undefined && stated.lining !== undefined) values.lining = stated.lining;
    if (inPlace !== undefined)
      values.room = values.room === undefined ? inPlace : `${inPlace}, ${values.room}`;
    multiply(values, pers, panels);
    return { row, is: 'window', values, unread, dated };
  }
}

/** Sides are ordered by their widths where no rod is measured: “1½ w ea”. */
const WIDTHS_OF = /^([\d\s./½¼¾]+)\s*(?:w|wds?|wdths?|widths?)\b.*$/i;
const WIDE: ReadonlySet<OrderKey> = new Set(['rodWidth', 'openingWidth', 'finishedWidth']);

/** Takes the widths of a side where they stand in place of its width; whether they do. */
function wideInWidths(key: OrderKey, cell: Cell, values: Values, pers: [OrderKey, Per][]): boolean {
  const found = WIDE.has(key) ? WIDTHS_OF.exec(String(cell)) : null;
  if (found === null) return false;
  values.widths ??= countOf(found[1] ?? '');
  if (/ea|each|side/i.test(found[0])) pers.push(['widths', 'panel']);
  return true;
}

/** Adds the part that stands in a cell of its own: a fraction, or inches after feet. */
function addPart(slot: Slot, slots: readonly Slot[], cell: Cell, values: Values): void {
  const whole = slots.find(({ at }) => at === slot.addsTo);
  const base = whole?.keys[0];
  const part =
    slot.unit === 'in' && whole?.unit === 'ft'
      ? figureOf(typeof cell === 'string' ? cell.replace(/\s*(?:["”″]|ins?\.?)$/, '') : cell)
      : fractionOf(cell, partsOf(slot.heading));
  if (base !== undefined && part !== undefined) values[base] = plus(values[base] ?? 0, partOfInch(part));
}

/** How many windows the text of a room or a draw counts; NaN where it counts none, undefined where it cannot. */
function countBeside({ keys, counts }: Slot, cell: Cell): number | undefined {
  if (keys[0] === 'room') return roomAndCount(String(cell), counts).count ?? NaN;
  return keys[0] === 'draw' ? (leadingCount(cell) ?? NaN) : undefined;
}

const HALF = 0.5;
const isHalfPair = ({ draws }: Pick<Slot, 'draws'>, cell: Cell): boolean =>
  draws === 'each is a pair' && figureOf(cell) === HALF;
/** What a column's own way says of a cell; undefined where it is read as any other. */
function bySlot({ draws, added, yesIs }: Slot, key: OrderKey, cell: Cell): CellRead | undefined {
  if (isHalfPair({ draws }, cell))
    // Half a pair is one curtain, to a side that is not said.
    return key === 'quantity' ? { value: 1 } : 'nothing';
  if (key === 'draw' && draws === 'each is a pair')
    return figureOf(cell) === undefined ? undefined : { value: 'pair' };
  if (key === 'draw' && draws === '2 is a pair' && isTwo(cell)) return { value: 'pair' };
  if (key === 'fullness' && added === true) {
    const value = fullnessAdded(cell);
    return value === undefined ? undefined : { value };
  }
  if (key !== 'lining' || yesIs === undefined) return undefined;
  const text = String(cell);
  const yes = yesOrNo(text);
  return yes === undefined ? undefined : yes ? { value: yesIs } : 'nothing';
}

const plain = (row: number, is: RowKind): RowRead => ({ row, is, values: {}, unread: [], dated: [] });

/** Panels of one window: a column may count those of all its windows. */
function panelsIn(values: Values, panels: number | undefined): number | undefined {
  const drawn =
    values.draw === undefined ? undefined : values.draw === 'pair' || values.draw === 'stationary' ? 2 : 1;
  const many = Number(values.quantity ?? 1);
  if (panels === undefined) return drawn;
  if (drawn !== undefined && panels === drawn * many) return drawn;
  const apiece = panels / many;
  return many > 2 && Number.isInteger(apiece) && apiece >= 1 && apiece <= 2 ? apiece : panels;
}

/** Widths are a window's and yardage the row's: what is for one of several is multiplied out. */
function multiply(
  values: Values,
  pers: readonly (readonly [OrderKey, Per])[],
  panels: number | undefined,
): void {
  for (const [key, per] of pers) {
    const value = values[key];
    if (typeof value !== 'number') continue;
    const pieces = panelsIn(values, panels);
    const many = Number(values.quantity ?? 1);
    if (key === 'widths' && per === 'panel')
      put(values, key, pieces === undefined ? undefined : value * pieces);
    if (key !== 'yardage' && key !== 'liningYardage' && key !== 'railroadedYardage') continue;
    if (per === 'window' || per === 'pair') put(values, key, value * many);
    else if (per === 'panel') put(values, key, pieces === undefined ? undefined : value * pieces * many);
    else if (per === 'width')
      put(values, key, typeof values.widths === 'number' ? value * values.widths * many : undefined);
  }
}

function put(values: Values, key: OrderKey, value: number | undefined): void {
  values[key] = value;
}

export const isWindowFact = (key: OrderKey): boolean => OF_A_WINDOW.has(key);
export const inUnit = (nanometres: number, unit: LengthUnit): number => nanometres / UNITS[unit];
