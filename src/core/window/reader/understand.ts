/** The first look at a table: its headings, what every column means, and how its rows are to be read. */
import type { LengthUnit } from '../../exact/length';
import type { Unit } from '../../exact/unit';
import { panelsOf, type MeasuredTo } from '../../cell/treatment';
import type { OrderKey } from '../meanings';
import { Arithmetic } from './arithmetic';
import { assign, type Assignment, type Choice, type Sureness } from './assign';
import { candidatesOf, type Candidate } from './candidates';
import { spelledOut, type Codes } from './codes';
import { figureOf, saysMore, type Cell, type Row } from './cells';
import { putPoints } from './decimal-comma';
import { DayOrders, type DayOrder } from './dates';
import { gather, saidFor, type Evidence } from './evidence';
import { headerAt, type Header, type Headers, type Merged } from './header';
import type { HeadingRead, Per } from './heading';
import type { HouseWords } from './house-words';
import type { Legend } from './legend';
import { meansOf } from './means-of';
import { countsPairs } from './pairs';
import { perOf } from './per-of';
import { measuredPoint } from './point';
import { isLengthKey, isOurs, isYardageKey, type MeaningKey, type OtherKey } from './meanings';
import { isWindowFact } from './row-kind';
import type { Plan, Slot } from './slots';
import { drawOfText, goodsOf, treatmentOf, writesTwoForPair } from './treatment-text';
import { clothAndWidth, countsInBrackets, roomAndCount } from './values';
import { inClothUnit, unitOfFigures, unitOfNotes, type UnitRead } from './units';

export interface ColumnRead {
  /** Sheet column, from 0. */
  readonly at: number;
  /** Headings of several rows joined by “ | ”. */
  readonly heading: string;
  readonly means: readonly OrderKey[];
  /** What it is where it is none of ours. */
  readonly other: OtherKey | undefined;
  readonly unit: LengthUnit | undefined;
  readonly per: Per | undefined;
  /** Whether the figures, not the heading, tell what one figure is for. */
  readonly perTold: boolean;
  readonly sure: Sureness;
  readonly couldBe: readonly MeaningKey[];
  /** Which of ours its heading alone would say. */
  readonly says: OrderKey | undefined;
  /** The column this one’s parts are added to. */
  readonly addsTo: number | undefined;
  /** Whether its cells hold two figures, like 72 x 98. */
  readonly halves: boolean;
}

/** The user’s word for a column, by its place: meanings, or none. */
export type Corrections = ReadonlyMap<number, readonly OrderKey[]>;

export interface Understanding {
  readonly header: Header;
  readonly columns: readonly ColumnRead[];
  readonly plan: Plan;
  readonly units: UnitRead;
  readonly order: DayOrder | undefined;
  readonly dayOrderAsked: number | undefined;
  readonly disagree: readonly OrderKey[];
  /** The first row of another table below. */
  readonly next: number | undefined;
}

export interface Sheet {
  readonly rows: readonly Cell[][];
  readonly merged: readonly Merged[];
}

/** So many rows, spread over the sheet, are the evidence. */
const EVIDENCE_ROWS = 2_000;
const TOTAL = /^(?:sub|grand)?[\s-]*tot(?:al)?s?\b|\btotals?\b|^carried|^brought|^in all$/i;

/** How many cells of a row below the headings are filled; undefined where it is no row of the table's own. */
function filledIn(row: Row, heads: readonly ReadonlySet<string>[]): number | undefined {
  let [filled, same, figures] = [0, 0, 0];
  for (const [column, cell] of row.entries()) {
    if (cell === null) continue;
    filled++;
    if (typeof cell !== 'string') {
      figures++;
      continue;
    }
    if (cell.length < 40 && TOTAL.test(cell)) return undefined;
    if (heads[column]?.has(cell.toLowerCase()) === true) same++;
    if (/\d/.test(cell)) figures++;
  }
  const headed = same >= 2 && same * 2 > filled;
  return filled < 2 || figures === 0 || headed ? undefined : filled;
}

/** Rows below the headings that look like the table’s own. */
export function evidenceRows(rows: readonly Row[], header: Header): Row[] {
  const from = (header.rows.at(-1) ?? 0) + 1;
  const step = Math.max(1, Math.ceil((rows.length - from) / EVIDENCE_ROWS));
  const heads = header.texts.map((texts) => new Set(texts.map((text) => text.toLowerCase())));
  const seen: { row: Row; filled: number }[] = [];
  for (let at = from; at < rows.length; at += step) {
    const row = rows[at] ?? [];
    const filled = filledIn(row, heads);
    if (filled !== undefined) seen.push({ row, filled });
  }
  const usual = seen.map(({ filled }) => filled).sort((a, b) => a - b)[seen.length >> 1] ?? 0;
  return seen.filter(({ filled }) => filled >= Math.max(2, usual * 0.45)).map(({ row }) => row);
}

/** How many panels a row’s window has, by the column that counts them or by its draw. */
function panelsBy(
  evidence: readonly Evidence[],
  candidates: readonly (readonly Candidate[])[],
): { readonly panels: (row: number) => number; readonly drawn: (row: number) => number } {
  const top = (key: MeaningKey, least: number): Evidence | undefined => {
    const at = candidates.findIndex((list) => list[0]?.key === key && list[0].score >= least);
    return at < 0 ? undefined : evidence[at];
  };
  const counted = top('panels', 0.7);
  const texts = [top('draw', 0.5), top('heading', 0.5), top('item', 0.4)].filter((one) => one !== undefined);
  const drawn = (row: number): number => {
    for (const { cells } of texts) {
      const cell = cells[row];
      const draw = typeof cell === 'string' ? drawOfText(cell) : undefined;
      if (draw !== undefined) return panelsOf(draw);
      if (typeof cell === 'string' && treatmentOf(cell).oneWay) return 1;
    }
    return NaN;
  };
  const panels = (row: number): number => {
    const figure = figureOf(counted?.cells[row] ?? null) ?? drawn(row);
    return Number.isNaN(figure) ? 2 : figure;
  };
  return { panels, drawn };
}

/** How many windows a row stands for by its room: “Bed 2 (x2)”. */
function countsIn(evidence: readonly Evidence[]): (row: number) => number {
  const rooms = evidence.find((one) => one.texts > 0 && saidFor(one, 'room') >= 0.7)?.cells;
  const bare = rooms !== undefined && countsInBrackets(rooms);
  return (row) => {
    const cell = rooms?.[row];
    return typeof cell === 'string' ? (roomAndCount(cell, bare).count ?? 1) : 1;
  };
}

const headedAlike =
  (evidence: readonly Evidence[]) =>
  (one: number, other: number): boolean => {
    const text = evidence[one]?.text.toLowerCase();
    return text !== '' && text === evidence[other]?.text.toLowerCase();
  };

const LENGTHS = /\b(?:m|mtrs?|mts|metres?|meters?|metros|metrage|meterage)\b/i;
const YARDS = /\b(?:yds?|yards?|yrds?|yd)\b/i;
/** Yards or metres, as the heading’s own noun says. */
const yardageUnit = (heading: string, read: HeadingRead, house: Unit): LengthUnit =>
  read.unit === 'm' || LENGTHS.test(heading)
    ? 'm'
    : read.unit === 'yd' || YARDS.test(heading)
      ? 'yd'
      : house.large;

/** What of ours a heading says outright, whether it is taken for it or not. */
function saysAlone({ said }: Evidence): OrderKey | undefined {
  const [best] = [...said].filter(([, share]) => share >= 0.95).sort((a, b) => b[1] - a[1]);
  return best !== undefined && isOurs(best[0]) ? best[0] : undefined;
}

const LONE_LETTER = /^(?:[a-z]|h[gi]?ts?|wd|lgth)\.?$/i;
/** One figure for both sides. */
const OF_EACH_SIDE = /\b(?:ea|each|per|both|either)\.? sides?\b/i;
const SIDED = /\b(?:l|lh|lhs|left|lft|lt|links?|gauche|izq)\b/i;

/** The unit of the widths behind the names of cloths. */
const boltUnitOf = ({ cells, unit }: Evidence): LengthUnit | undefined => {
  for (const cell of cells) {
    const cloth = typeof cell === 'string' ? clothAndWidth(cell, unit) : undefined;
    if (cloth !== undefined) return cloth.unit;
  }
  return undefined;
};

/** A column whose meaning is asked. */
const asked = (own: Evidence, couldBe: readonly MeaningKey[]): ColumnRead => ({
  at: own.at,
  heading: own.text,
  means: [],
  other: undefined,
  unit: undefined,
  per: undefined,
  perTold: false,
  sure: 'asked',
  couldBe,
  says: saysAlone(own),
  addsTo: own.addsTo,
  halves: own.part !== undefined,
});

/** The unit a column's bare figures stand in; none where it holds no length and no cloth. */
function unitOf(means: readonly OrderKey[], own: Evidence, house: Unit): LengthUnit | undefined {
  const [key] = means;
  if (key === undefined) return undefined;
  if (isYardageKey(key)) return yardageUnit(own.text, own.heading, house);
  if (isLengthKey(key)) return own.unit;
  return means.includes('fabricWidth') ? boltUnitOf(own) : undefined;
}

/** How sure a column's meaning is. That brackets count windows is likely, never certain; so is what a lone letter stands for. */
function surenessOf(
  chosen: Sureness,
  means: readonly OrderKey[],
  { cells, text }: Evidence,
  proven: ReadonlySet<MeaningKey>,
): Sureness {
  const doubtful =
    (means.includes('quantity') && countsInBrackets(cells)) ||
    (LONE_LETTER.test(text) && means.some((one) => isLengthKey(one) && !proven.has(one)));
  return chosen === 'sure' && doubtful ? 'likely' : chosen;
}

/** What is known of a column that is none of ours. */
const otherOf = ({ key, sure }: Choice): OtherKey | undefined =>
  key !== undefined && !isOurs(key) && sure !== 'asked' ? key : undefined;

function columnsOf(
  evidence: readonly Evidence[],
  { choices, sums, assigned }: Assignment,
  arithmetic: Arithmetic,
  house: Unit,
  above: Plan['stated'],
): ColumnRead[] {
  const has = (key: MeaningKey): boolean => assigned.has(key);
  const told = new Map(sums.per);
  const lining = arithmetic.liningPer(assigned);
  if (lining !== undefined) told.set('liningYardage', lining);
  return evidence.map((own, place): ColumnRead => {
    const choice = choices[place] as Choice;
    const base = own.addsTo === undefined ? undefined : evidence.findIndex(({ at }) => at === own.addsTo);
    const means =
      base === undefined
        ? meansOf(choice, own, has, above.draw !== undefined)
        : meansOf(choices[base] as Choice, evidence[base] as Evidence, has);
    const oneExtension = means[0] === 'leftExtension' && !has('rightExtension');
    const bothSides = oneExtension && OF_EACH_SIDE.test(own.text);
    // One extension a window: of one side, or of each.
    if (oneExtension && !bothSides && !SIDED.test(own.text))
      return asked(own, ['leftExtension', 'rightExtension']);
    if (own.sizeOnly && !means.some((one) => sums.proven.has(one))) return asked(own, means);
    const { per, told: perTold } = perOf(means[0], own, told, has);
    return {
      ...asked(own, choice.couldBe),
      means: bothSides ? ['leftExtension', 'rightExtension'] : means,
      other: otherOf(choice),
      unit: unitOf(means, own, house),
      per,
      perTold,
      sure: surenessOf(choices[base ?? place]?.sure ?? choice.sure, means, own, sums.proven),
    };
  });
}

/** Both halves of a column of two figures are one column again. */
function joinHalves(columns: readonly ColumnRead[], texts: readonly (readonly string[])[]): ColumnRead[] {
  const joined: ColumnRead[] = [];
  for (const column of columns) {
    const before = joined.at(-1);
    if (before?.at !== column.at) {
      joined.push({ ...column, heading: (texts[column.at] ?? []).join(' | ') });
      continue;
    }
    const sure = [before.sure, column.sure].includes('asked')
      ? 'asked'
      : [before.sure, column.sure].includes('likely')
        ? 'likely'
        : 'sure';
    joined[joined.length - 1] = {
      ...before,
      means: sure === 'asked' ? [] : [...before.means, ...column.means],
      unit: before.unit ?? column.unit,
      sure,
      couldBe: [...before.couldBe, ...column.couldBe],
    };
  }
  return joined;
}

const MADE: ReadonlySet<OrderKey> = new Set<OrderKey>(['heading', 'draw', 'fullness']);
/** “Metal rail” beside a heading and a draw names what a curtain hangs on, not goods sold in its place. */
function namesNoGoods(
  { other }: ColumnRead,
  { cells }: Evidence,
  columns: readonly ColumnRead[],
  evidence: readonly Evidence[],
): boolean {
  if (other !== 'item' && other !== 'layer') return false;
  const made = evidence.filter((_, place) => columns[place]?.means.some((key) => MADE.has(key)) === true);
  const goods = [...cells.keys()].filter((row) => {
    const cell = cells[row];
    return typeof cell === 'string' && goodsOf(cell) === 'other goods';
  });
  const curtains = goods.filter(
    (row) => made.filter((one) => (one.cells[row] ?? null) !== null).length >= Math.min(2, made.length),
  );
  return made.length > 0 && curtains.length >= 2 && curtains.length * 2 > goods.length;
}

const slotsOf = (
  evidence: readonly Evidence[],
  columns: readonly ColumnRead[],
  texts: Header['texts'],
): Slot[] =>
  evidence.map((own, place): Slot => {
    const column = columns[place] as ColumnRead;
    return {
      at: own.at,
      part: own.part,
      heading: own.part === undefined ? own.text : (texts[own.at] ?? []).join(' '),
      keys: column.means,
      other: namesNoGoods(column, own, columns, evidence) ? undefined : column.other,
      unit: column.unit ?? own.unit,
      per: column.per,
      addsTo: own.addsTo,
      counts: column.means.includes('quantity') && countsInBrackets(own.cells),
      dashed: own.dashed,
      draws: column.means.includes('draw')
        ? column.means[0] === 'quantity' && countsPairs(own)
          ? 'each is a pair'
          : writesTwoForPair(own.cells)
            ? '2 is a pair'
            : undefined
        : undefined,
      added: column.means.includes('fullness') && saysMore(own.cells),
      yesIs: column.means[0] === 'lining' ? layerAsked(own.heading) : undefined,
    };
  });

/** “BO?” asks for blackout alone: its no says only that it is none. */
const layerAsked = ({ words }: HeadingRead): 'blackout' | 'interlined' | undefined => {
  const says = (idea: string): boolean =>
    words.some(({ stands }) => stands.length > 0 && stands.every((one) => one.idea === idea));
  if (words.some(({ stands }) => stands.some(({ idea }) => idea === 'lining'))) return undefined;
  return says('blackout') ? 'blackout' : says('interlining') ? 'interlined' : undefined;
};

/** Facts that most evidence rows have. */
function usualFacts(evidence: readonly Evidence[], columns: readonly ColumnRead[]): ReadonlySet<OrderKey> {
  const usual = new Set<OrderKey>();
  for (const [place, own] of evidence.entries()) {
    const key = columns[place]?.means[0];
    if (
      key !== undefined &&
      ['finishedDrop', 'measured', 'heading', 'openingWidth', 'rodWidth', 'finishedWidth', 'draw'].includes(
        key,
      ) &&
      own.filled >= own.cells.length * 0.5
    )
      usual.add(key);
  }
  return usual;
}

export interface Trouble {
  readonly none: string;
}

/** What only a whole sheet shows: where its headings are, and what stands above and beside them. */
export interface Whole {
  findHeader(rows: readonly Row[], merged: readonly Merged[]): Headers | undefined;
  spread(rows: readonly Cell[][], merged: readonly Merged[], below: number): void;
  /** The sentence where two tables stand side by side. */
  sideBySide(header: Header, rows: readonly Row[]): string | undefined;
  withLegend(header: Header, above: readonly Row[]): Legend;
  codesIn(header: Header, above: readonly Row[]): Codes;
  saidByWords(
    texts: readonly (readonly string[])[],
    words: HouseWords | undefined,
    said: Corrections | undefined,
  ): Corrections | undefined;
  stated(above: readonly Row[], has: (key: OrderKey) => boolean): Plan['stated'];
  measuredTo(above: readonly Row[]): MeasuredTo | 'a rod' | undefined;
}

/** Where headings and rows are all that is shown. */
const SHOWN: Whole = {
  findHeader: () => undefined,
  spread: () => undefined,
  sideBySide: () => undefined,
  withLegend: ({ reads }) => ({ reads, defined: [] }),
  codesIn: () => new Map(),
  saidByWords: (_texts, _words, said) => said,
  stated: () => ({}),
  measuredTo: () => undefined,
};

export interface Look {
  readonly unit: Unit;
  /** Rows somebody says the headings stand in, from 0. */
  readonly header?: readonly number[];
  readonly said?: Corrections;
  /** What the house's own words for headings mean. */
  readonly words?: HouseWords;
  /** Columns of one figure a cell, whatever stands in them. */
  readonly single?: ReadonlySet<number>;
}

const NO_TABLE =
  'No row of this sheet heads a table of windows: its headings should say things like inside width, rod width, finished drop, heading and fabric width.';

/** Without one of these, a fact of a window, or priced rooms no table is one of windows. */
const OF_ITS_CLOTH: ReadonlySet<OrderKey> = new Set<OrderKey>([
  'fabricWidth',
  'verticalRepeat',
  'widths',
  'yardage',
  'liningYardage',
  'railroadedYardage',
]);

/** Which way round day and month stand, by all the days of the table. */
function dayOrders(evidence: readonly Evidence[], { assigned }: Assignment): DayOrders {
  const orders = new DayOrders();
  for (const [key, place] of assigned)
    if (key === 'date' || key === 'otherDate')
      for (const cell of evidence[place]?.cells ?? []) orders.see(cell);
  return orders;
}

/** The unit of bare lengths: as a line says, as the figures must be, or the house’s. */
function unitsOf(notes: readonly Row[], { reads }: Header, rows: readonly Row[], house: Unit): UnitRead {
  const noted = unitOfNotes(notes);
  const guessed = noted === undefined ? unitOfFigures(reads, rows, house) : undefined;
  return {
    small: noted?.unit ?? guessed ?? house.small,
    note: noted?.note,
    guessed: guessed !== undefined,
  };
}

/** The header, where it stands or somebody says it stands, and other rows that head a table. */
function headersOf(sheet: Sheet, pointed: readonly number[], whole: Whole): Headers | undefined {
  return pointed.length > 0
    ? { header: headerAt(sheet.rows, pointed, sheet.merged), others: [] }
    : whole.findHeader(sheet.rows, sheet.merged);
}

const filledCount = (row: Row | undefined): number => (row ?? []).filter((cell) => cell !== null).length;

/** Whether it holds anything of a window or its cloth, or rooms with their prices. */
function isOfWindows(columns: readonly ColumnRead[]): boolean {
  const known = new Set(columns.flatMap(({ means }) => means));
  const priced = known.has('room') && (known.has('unitPrice') || known.has('amount'));
  return priced || [...known].some((key) => isWindowFact(key) || OF_ITS_CLOTH.has(key));
}

/** Everything about a sheet that its headings and a bounded number of its rows tell. */
export function understand(sheet: Sheet, look: Look, whole: Whole = SHOWN): Understanding | Trouble {
  const decimalComma = putPoints(sheet.rows);
  const found = headersOf(sheet, look.header ?? [], whole);
  if (found === undefined) return { none: NO_TABLE };
  const { header, others } = found;
  const [first = 0, last = 0] = [header.rows[0], header.rows.at(-1)];
  whole.spread(sheet.rows, sheet.merged, last);
  const next = others.find((row) => filledCount(sheet.rows[row - 1]) <= 1);
  const body = next === undefined ? sheet.rows : sheet.rows.slice(0, next);
  const above = sheet.rows.slice(0, first);
  const codes = whole.codesIn(header, above);
  const rows = evidenceRows(body, header).map((row) => spelledOut(row, codes));
  const beside = whole.sideBySide(header, rows);
  if (beside !== undefined) return { none: beside };
  const lone = body.slice(last + 1).filter((row) => filledCount(row) === 1);
  const units = unitsOf([...above, ...lone.slice(0, 200)], header, rows, look.unit);
  const legend = whole.withLegend(header, above);
  const evidence = gather(header.texts, inClothUnit(legend.reads, above), {
    rows,
    defined: legend.defined,
    unitOf: ({ unit }) => unit ?? units.small,
    single: look.single,
  });
  const candidates = corrected(
    candidatesOf(evidence),
    evidence,
    whole.saidByWords(header.texts, look.words, look.said),
  );
  const { panels, drawn } = panelsBy(evidence, candidates);
  const arithmetic = new Arithmetic(evidence, panels, look.unit.small !== 'in', countsIn(evidence), drawn);
  const assignment = assign(candidates, arithmetic, headedAlike(evidence));
  const stated = whole.stated(above, (key) => assignment.assigned.has(key));
  const columns = columnsOf(evidence, assignment, arithmetic, look.unit, stated);
  // Headings that somebody points at are a table’s.
  if (look.header === undefined && !isOfWindows(columns)) return { none: NO_TABLE };
  const orders = dayOrders(evidence, assignment);
  const dayOrderAsked = orders.asks ? evidence[assignment.assigned.get('date') ?? -1]?.at : undefined;
  const plan: Plan = {
    slots: slotsOf(evidence, columns, header.texts),
    headings: header.texts,
    unit: look.unit,
    order: orders.order,
    decimalComma,
    codes,
    measuredTo: measuredPoint(evidence, columns, whole.measuredTo(above)),
    stated,
    usual: usualFacts(evidence, columns),
  };
  return {
    header,
    columns: joinHalves(columns, header.texts).map((column) =>
      column.at === dayOrderAsked ? { ...column, sure: 'asked' } : column,
    ),
    plan,
    units,
    order: orders.order,
    dayOrderAsked,
    disagree: [...assignment.sums.against].filter(isOurs),
    next,
  };
}

/** The user’s word comes before all. */
function corrected(
  candidates: Candidate[][],
  evidence: readonly Evidence[],
  said: Corrections | undefined,
): Candidate[][] {
  if (said === undefined) return candidates;
  const taken = new Set([...said.values()].flat());
  return candidates.map((list, place) => {
    const own = evidence[place] as Evidence;
    const word = said.get(own.at);
    if (word === undefined) return list.filter(({ key }) => key === undefined || !taken.has(key as OrderKey));
    const key = word[own.part ?? 0];
    return [{ key, score: 9, said: 1 }];
  });
}
