/** What a window's row says, each cell read as its column is. */
import { yesOrNo } from '../../cell/treatment';
import type { OrderKey } from '../meanings';
import { countOf, figureOf, fullnessAdded, isDay, type Cell } from './cells';
import { fractionOf, isDayNumber, partsOf, splitCell } from './evidence';
import { EACH_SIDE, multiply } from './for-several';
import type { Per } from './heading';
import type { Plan, RowRead, Slot, Unread, Values } from './slots';
import { isTwo, treatmentOf } from './treatment-text';
import { leadingCount, partOfInch, plus, readCell, roomAndCount, within, type CellRead } from './values';

/** Reads the cells of one row; each stands at the place of its slot. */
export function valuesOfRow(row: number, cells: readonly Cell[], plan: Plan): RowRead & { values: Values } {
  const reading = new RowValues(plan);
  for (let place = 0; place < plan.slots.length; place++) {
    const cell = cells[place] ?? null;
    if (cell !== null) reading.take(plan.slots[place] as Slot, cell);
  }
  return reading.end(row);
}

class RowValues {
  private readonly values: Values = {};
  private readonly unread: Unread[] = [];
  private readonly dated: number[] = [];
  /** What figures are for, where it is one of several. */
  private readonly pers: [OrderKey, Per][] = [];
  private oneWay = false;
  /** A draw that the treatment's text says beside other things. */
  private drawBeside: string | undefined;
  private panels: number | undefined;
  private place: string | undefined;

  constructor(private readonly plan: Plan) {}

  take(slot: Slot, whole: Exclude<Cell, null>): void {
    const cell = partOf(slot, whole);
    if (cell === null) return;
    if (slot.other === 'place') this.place = String(cell);
    else if (slot.other === 'panels') this.takePanels(slot, cell);
    else if (slot.addsTo !== undefined) {
      if (isDayNumber(cell)) this.dated.push(slot.at);
      addPart(slot, this.plan.slots, cell, this.values);
    } else {
      if (isHalfPair(slot, cell)) this.panels = 1;
      for (const key of slot.keys) this.takeAs(key, slot, cell);
      const first = slot.keys[0];
      if (slot.per !== undefined && first !== undefined) this.pers.push([first, slot.per]);
    }
  }

  end(row: number): RowRead & { values: Values } {
    const { values, unread, dated } = this;
    this.settleDraw();
    const { lining } = this.plan.stated;
    if (values.lining === undefined && lining !== undefined) values.lining = lining;
    if (this.place !== undefined)
      values.room = values.room === undefined ? this.place : `${this.place}, ${values.room}`;
    multiply(values, this.pers, this.panels);
    return { row, is: 'window', values, unread, dated };
  }

  private takePanels(slot: Slot, cell: Cell): void {
    const figure = readCell('quantity', cell, slot.unit, this.plan.order);
    if (typeof figure === 'object') this.panels = Number(figure.value);
  }

  private takeAs(key: OrderKey, slot: Slot, cell: Cell): void {
    const { values } = this;
    const count = key === 'quantity' ? countBeside(slot, cell) : undefined;
    if (count !== undefined) {
      if (!Number.isNaN(count)) values.quantity ??= count;
      return;
    }
    const read = this.readAs(key, slot, cell);
    if (key === 'widths' && typeof cell === 'string' && slot.per !== 'panel' && EACH_SIDE.test(cell))
      this.pers.push([key, 'panel']);
    if (typeof read === 'object') values[key] ??= read.value;
    else if (read === 'unread' && !wideInWidths(key, cell, values, this.pers) && slot.keys.length === 1)
      this.unread.push({ at: slot.at, key, text: isDay(cell) ? 'a date' : String(cell) });
  }

  private readAs(key: OrderKey, slot: Slot, cell: Cell): CellRead {
    if (key === 'room' && slot.keys.includes('quantity') && typeof cell === 'string')
      return { value: roomAndCount(cell, slot.counts).room };
    const read =
      bySlot(slot, key, cell) ??
      within(slot.keys, key, cell, slot.unit) ??
      readCell(key, cell, slot.unit, this.plan.order);
    return key === 'draw' && typeof cell === 'string' ? this.drawIn(cell, slot, read) : read;
  }

  private drawIn(text: string, { keys }: Slot, read: CellRead): CellRead {
    const { oneWay } = treatmentOf(text);
    if (oneWay) this.oneWay = true;
    if (typeof read !== 'object') return oneWay ? 'nothing' : read;
    if (keys.length === 1) return read;
    // A column of its own has the word; what stands in the treatment's text fills in.
    this.drawBeside = String(read.value);
    return 'nothing';
  }

  private settleDraw(): void {
    const { values, oneWay } = this;
    const { slots, stated } = this.plan;
    if (values.draw === undefined && this.drawBeside !== undefined) values.draw = this.drawBeside;
    if (values.draw !== undefined) return;
    if (oneWay)
      this.unread.push({
        at: slots.find(({ keys }) => keys.includes('draw'))?.at ?? 0,
        key: 'draw',
        text: 'one way, to a side that is not said',
        isOneWay: true,
      });
    else if (stated.draw !== undefined) values.draw = stated.draw;
  }
}

/** The figure of a cell of two that belongs to this slot. */
const partOf = ({ part, heading }: Slot, cell: Exclude<Cell, null>): Cell =>
  part !== undefined && typeof cell === 'string'
    ? (splitCell(cell, heading)?.[part] ?? (part === 0 ? cell : null))
    : cell;

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
const isHalfPair = ({ draws }: Slot, cell: Cell): boolean =>
  draws === 'each is a pair' && figureOf(cell) === HALF;
/** What a column's own way says of a cell; undefined where it is read as any other. */
function bySlot(slot: Slot, key: OrderKey, cell: Cell): CellRead | undefined {
  // Half a pair is one curtain, to a side that is not said.
  if (isHalfPair(slot, cell)) return key === 'quantity' ? { value: 1 } : 'nothing';
  switch (key) {
    case 'draw':
      return isPair(slot, cell) ? { value: 'pair' } : undefined;
    case 'fullness': {
      const value = slot.added === true ? fullnessAdded(cell) : undefined;
      return value === undefined ? undefined : { value };
    }
    case 'lining': {
      const yes = slot.yesIs === undefined ? undefined : yesOrNo(String(cell));
      return yes === undefined ? undefined : yes ? { value: slot.yesIs as string } : 'nothing';
    }
    default:
      return undefined;
  }
}

const isPair = ({ draws }: Slot, cell: Cell): boolean =>
  (draws === 'each is a pair' && figureOf(cell) !== undefined) || (draws === '2 is a pair' && isTwo(cell));
