/** One cell read as its column’s meaning: lengths exact, choices by their words, days by the column’s order. */
import { DIRECTIONS, directionOf, MOUNTS, WINDOW_LAYERS, yesOrNo } from '../../cell/treatment';
import { WINDOW_HANGS_ON } from '../../cell/ways';
import { UNITS, type Length, type LengthUnit } from '../../exact/length';
import type { OrderKey } from '../meanings';
import { countOf, figureOf, fullnessOf, isDay, lengthOf, moneyOf, saysNothing, type Cell } from './cells';
import { dayOf, type DayOrder } from './dates';
import { holdsOf } from './meanings';
import { unitOfBolt } from './units';
import {
  drawOfText,
  floorOfText,
  headingOfText,
  liningOfText,
  matchOfText,
  measuredOfText,
} from './treatment-text';

/** What a cell gave. Lengths and yardages are whole nanometres, days are counted as spreadsheets count. */
export type Value = string | number;
export type CellRead =
  | { readonly value: Value }
  /** Nothing stands there, or it says that nothing is known. */
  | 'nothing'
  | 'unread';

/** Under these, “none” and 0 say that there is none. */
const NONE_IS_ZERO: ReadonlySet<OrderKey> = new Set<OrderKey>([
  'verticalRepeat',
  'horizontalRepeat',
  'leftExtension',
  'rightExtension',
  'return',
  'overlap',
]);
/** No window, cut or bolt is longer: 1,968 in, about 50 m. */
const LONGEST = 1_968 * UNITS.in;
const UNKNOWN =
  /^(?:tbc|tba|tbd|\?+|n\/k|see notes?|poa|incl\.?|included|n\/c|com|various|as is|to follow|by others|ask|later|pending|varies|(?:see|as|per|as per|by|from|on) (?:the )?[a-z]+)$/i;
const DASH = /^[-–—.]+$/;

const DRAWN: readonly (readonly [string, RegExp])[] = [
  ['motor', /motor|electric/i],
  ['wand', /wand|baton|rod/i],
  ['hand', /hand|none|cordless/i],
  ['cord', /cord|loop|chain/i],
];

const ON_THE_WALL = /^(?:o\.?m\.?|o\/m|outside\b.*|face(?: fix(?:ed)?)?|on (?:the )?(?:wall|face)|wall)$/i;
const IN_RECESS = /^(?:i\.?m\.?|i\/m|inside\b.*|recess(?:ed)?|in (?:the )?(?:recess|reveal)|reveal)$/i;
export const mountOf = (text: string): string | undefined =>
  MOUNTS.find(text) ?? (ON_THE_WALL.test(text) ? 'wall' : IN_RECESS.test(text) ? 'recess' : undefined);

type Reads = (text: string) => string | undefined;

/** “64 hd”: the match behind a repeat comes before what the rest says. */
const matchIn: Reads = (text) => {
  const behind = matchBehind(text);
  if (behind === undefined) return matchOfText(text);
  return /^s/i.test(behind) ? 'straight' : 'half-drop';
};
const turnedIn: Reads = (text) =>
  DIRECTIONS.find(text.trim().toLowerCase()) ?? (isTurned(text) ? 'railroaded' : undefined);
const yesOrNoIn: Reads = (text) => {
  const yes = yesOrNo(text);
  return yes === undefined ? undefined : yes ? 'yes' : 'no';
};

/** How the words of a choice are read; any other is asked for by yes and no. */
const CHOICES: Partial<Record<OrderKey, Reads>> = {
  heading: headingOfText,
  draw: drawOfText,
  lining: liningOfText,
  measuredTo: measuredOfText,
  floorFinish: floorOfText,
  match: matchIn,
  railroaded: turnedIn,
  mount: mountOf,
  hangOn: (text) => WINDOW_HANGS_ON.find(text),
  windowLayer: (text) => WINDOW_LAYERS.find(text),
  drawnBy: (text) => DRAWN.find(([, words]) => words.test(text))?.[0],
};

/** Words in the place of a price where the cloth is the client’s own, or nothing is charged. */
const UNPRICED =
  /^(?:(?:c\.?o\.?m|c\.?m\.?t|f\.?o\.?c)\.?|(?:(?:cust(?:omer)?|clients?)['’]?s?\.?(?:['’]s)? ?)?(?:own|supplied|sup'?d|to supply)(?: (?:fabric|cloth|material|goods))?|(?:cust(?:omer)?|client)(?:['’]?s)?\.? (?:fabric|cloth|material|goods)|free issue|(?:no|without) charge|n\.?\/?a\.?)$/i;

const read = (value: Value | undefined): CellRead => (value === undefined ? 'unread' : { value });

/** Cloth turned, as a word among counts of widths says it. */
export const isTurned = (text: string): boolean =>
  directionOf(text) === 'railroaded' || /^(?:on |by )?(?:the )?run$/i.test(text.trim());

const CLOTH_AND_WIDTH =
  /^(.*[a-z)].*?),?\s+\(?(\d{2,4}(?:\.\d+)?)\s*(in|ins|cm|mm|["″”])?\.?(?:\s*wide)?\)?$/i;
/** No bolt is narrower or wider. */
const [NARROWEST, WIDEST] = [26 * UNITS.in, 132 * UNITS.in];
/** “Riverstone 137”, “Larkhill, 54 in”: a cloth’s name and how wide it lies. */
export function clothAndWidth(
  text: string,
  house: LengthUnit,
): { readonly name: string; readonly width: Length; readonly unit: LengthUnit } | undefined {
  const [, name, figure = '', said] = CLOTH_AND_WIDTH.exec(text) ?? [];
  if (name === undefined) return undefined;
  const unit: LengthUnit =
    said === undefined
      ? (unitOfBolt(Number(figure)) ?? (house === 'in' ? 'in' : 'cm'))
      : /^[cm]m$/i.test(said)
        ? (said.toLowerCase() as 'cm')
        : 'in';
  const width = lengthOf(Number(figure), unit);
  return width === undefined || width < NARROWEST || width > WIDEST ? undefined : { name, width, unit };
}

const TIMES_FULL =
  /(?:@|\bat\b)\s*(\d(?:\.\d+)?(?:\s?[½¼¾]|\s1\/[24])?)(?:\s*(?:[x×]|:\s?1))?(?:\s*full\w*)?(?=$|[,;\s])|(\d(?:\.\d+)?(?:\s?[½¼¾])?)\s*[x×]?\s*full(?:ness)?\b/i;
/** “Pinch pleat pair @ 2.5, lined”: the fullness that a treatment’s text says. */
export function fullnessIn(text: string): number | undefined {
  const found = TIMES_FULL.exec(text);
  return found === null ? undefined : fullnessOf((found[1] ?? found[2] ?? '').trim());
}

/** What stands within a text that says several things; undefined where the cell is read as one. */
export function within(
  keys: readonly OrderKey[],
  key: OrderKey,
  cell: Cell,
  unit: LengthUnit,
): CellRead | undefined {
  if (typeof cell !== 'string' || keys.length < 2) return undefined;
  if (key === 'fullness') {
    const value = fullnessIn(cell);
    return value === undefined ? 'nothing' : { value };
  }
  if (keys[0] !== 'fabric' || !keys.includes('fabricWidth')) return undefined;
  const cloth = clothAndWidth(cell, unit);
  if (key === 'fabricWidth') return cloth === undefined ? 'nothing' : { value: cloth.width };
  return key === 'fabric' && cloth !== undefined ? { value: cloth.name } : undefined;
}

const ROOM_COUNT =
  /\s*(?:\(\s*[x×]?\s*(\d{1,3})\s*(?:[x×]|off|no\.?|windows?|pr)?\s*\)|[x×]\s*(\d{1,3})|\b(\d{1,2})\s*[x×])\s*$/i;
/** “Bed 2 (x2)” is a room and how many windows it has. */
export function roomAndCount(
  text: string,
  bare = false,
): { readonly room: string; readonly count: number | undefined } {
  const found = ROOM_COUNT.exec(text);
  if (found === null || (!bare && !/[x×]|off|window|no/i.test(found[0])))
    return { room: text, count: undefined };
  return { room: text.slice(0, found.index).trim(), count: Number(found[1] ?? found[2] ?? found[3]) };
}

/**
 * Whether a bare figure in brackets counts windows: “Dining (3)”, “Nook (2)”. Behind one name
 * again and again, or mostly 1, it numbers windows or floors.
 */
export function countsInBrackets(cells: readonly Cell[]): boolean {
  const found = cells.flatMap((cell) => {
    const [, room, count] = typeof cell === 'string' ? (/^(.*\S)\s*\((\d{1,2})\)$/.exec(cell) ?? []) : [];
    return room === undefined ? [] : [{ room: room.toLowerCase(), count: Number(count) }];
  });
  const several = found.filter(({ count }) => count > 1).length;
  const running = found.every(({ count }, at) => at === 0 || count === (found[at - 1]?.count ?? 0) + 1);
  return (
    several >= 2 &&
    several * 2 > found.length &&
    !running &&
    new Set(found.map(({ room }) => room)).size === found.length
  );
}

const BEHIND = /(?<=[\d½¼¾"”″] ?)(?:h\.?\/?d|half[ -]?drop|½ ?drop|st|str|straight|s\/?m|s)\.?$/i;
/** The match that stands behind a repeat: “64 hd”; undefined where none does. */
export const matchBehind = (text: string): string | undefined => BEHIND.exec(text)?.[0];

const NUMBERS: Readonly<Record<string, number>> = Object.fromEntries(
  'a two three four five six seven eight nine ten'
    .split(' ')
    .map((word, at) => [word, at + 1])
    .concat([['one', 1]]),
);
/** “3 prs”, “two pr”: how many, before what they are. */
export function leadingCount(cell: Cell): number | undefined {
  const found =
    typeof cell === 'string'
      ? /^(\d{1,3}|one|two|three|four|five|six|seven|eight|nine|ten|a)\s*(?:x\s*)?(?:prs?|pairs?|sgls?|singles?|sets?|windows?|single|drapes?|curtains?|panels?|pnls?|rooms?|rms?|suites?|bays?|off)\b/i.exec(
          cell,
        )
      : null;
  return found === null ? undefined : (NUMBERS[found[1]?.toLowerCase() ?? ''] ?? Number(found[1]));
}

/** A length or cloth as written, its unit behind it. */
export const LENGTH_UNIT = /^\s*[\d.,\s/½¼¾⅛⅜⅝⅞]+\s*(yds?|yards?|m|mtrs?|metres?|meters?|cm|mm|in|ft)?\.?$/i;

/** A bay's straight parts together: 30 + 60 + 30. */
function openingOf(text: string, unit: LengthUnit): Length | undefined {
  const parts = text.split('+').map((part) => lengthOf(part.trim(), unit));
  return parts.every((part) => part !== undefined && (parts.length === 1 || part > 0))
    ? (parts.reduce<number>((sum, part) => sum + (part ?? 0), 0) as Length)
    : undefined;
}

function readChoice(key: OrderKey, cell: Exclude<Cell, null>): CellRead {
  if (cell === 0) return 'nothing';
  if (isDay(cell)) return 'unread';
  const words = typeof cell === 'boolean' ? (cell ? 'yes' : 'no') : String(cell);
  if (words === '') return 'unread';
  if (DASH.test(words) && key !== 'lining' && key !== 'railroaded') return 'nothing';
  return read((CHOICES[key] ?? yesOrNoIn)(words));
}

function readCount(key: OrderKey, cell: Exclude<Cell, null>): CellRead {
  if (typeof cell === 'string' && (DASH.test(cell) || (key === 'widths' && isTurned(cell)))) return 'nothing';
  return read(countOf(cell) ?? figureOf(cell) ?? (key === 'quantity' ? leadingCount(cell) : undefined));
}

function readLength(key: OrderKey, cell: Exclude<Cell, null>, unit: LengthUnit): CellRead {
  if (isDay(cell)) return 'unread';
  const text = typeof cell === 'string' ? cell : undefined;
  if (text !== undefined && saysNothing(text)) return NONE_IS_ZERO.has(key) ? { value: 0 } : 'nothing';
  const length = key === 'openingWidth' && text !== undefined ? openingOf(text, unit) : lengthOf(cell, unit);
  if (length === undefined || length < 0 || length > LONGEST) return 'unread';
  return length === 0 && !NONE_IS_ZERO.has(key) ? 'nothing' : { value: length };
}

function readYardage(cell: Exclude<Cell, null>, unit: LengthUnit): CellRead {
  if (typeof cell === 'string' && saysNothing(cell)) return 'nothing';
  const length = typeof cell !== 'string' || LENGTH_UNIT.test(cell) ? lengthOf(cell, unit) : undefined;
  return length === 0 ? 'nothing' : read(length);
}

const readMoney = (cell: Exclude<Cell, null>): CellRead =>
  typeof cell === 'string' && (DASH.test(cell) || UNPRICED.test(cell)) ? 'nothing' : read(moneyOf(cell));

const readRatio = (cell: Exclude<Cell, null>): CellRead =>
  cell === 0 || (typeof cell === 'string' && saysNothing(cell)) ? 'nothing' : read(fullnessOf(cell));

function readText(cell: Exclude<Cell, null>): CellRead {
  if (isDay(cell)) return 'unread';
  return cell === 0 ? 'nothing' : { value: String(cell) };
}

/** Reads a filled cell as its meaning. */
export function readCell(key: OrderKey, cell: Cell, unit: LengthUnit, order: DayOrder | undefined): CellRead {
  if (cell === null) return 'nothing';
  const holds = holdsOf(key);
  if (typeof cell === 'string' && holds !== 'text' && UNKNOWN.test(cell)) return 'nothing';
  switch (holds) {
    case 'length':
      return readLength(key, cell, unit);
    case 'yardage':
      return readYardage(cell, unit);
    case 'money':
      return readMoney(cell);
    case 'count':
    case 'weight':
      return readCount(key, cell);
    case 'ratio':
      return readRatio(cell);
    case 'date':
      return read(dayOf(cell, order));
    case 'choice':
      return readChoice(key, cell);
    case 'text':
    case 'any':
      return readText(cell);
  }
}

/** A length plus the part of it that stands in a cell of its own. */
export const plus = (length: Value, part: number): Length => (Number(length) + part) as Length;
export const partOfInch = (share: number): number => Math.round(share * UNITS.in);
