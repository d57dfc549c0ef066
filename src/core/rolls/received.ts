/** Rolls as they were received and written down: length, dye lot, flaws; typed, or in a table of their own. */
import { refuse } from '../cell/answer';
import type { Flaw, Roll } from './cutting';
import { type CellIn } from '../cell/fields';
import { YARDS } from '../cell/length-kinds';
import { exact, NO_LENGTH, type Length } from '../exact/length';
import type { Unit } from '../exact/unit';

export interface RollWritten {
  readonly length: string;
  readonly lot: string;
  /** “12-12 1/2; 30”: stretches and points from the roll's start. */
  readonly flaws: string;
}
export const NO_ROLL: RollWritten = { length: '', lot: '', flaws: '' };

export function readRollLength(text: string, name: string, unit: Unit): Length {
  return YARDS.read(text.trim(), { name, unit }) ?? refuse('missing', name, name, YARDS.noun);
}

/** At the roll's very start a flaw may stand too, which no length is. */
const placeOn = (text: string, name: string, unit: Unit): Length =>
  text.trim() === '0' ? NO_LENGTH : readRollLength(text, name, unit);

function flawOf(text: string, name: string, unit: Unit): Flaw {
  const ends = /^(.+?)\s*(?:–|-|to)\s*(.+)$/.exec(text);
  const from = placeOn(ends?.[1] ?? text, name, unit);
  const to = ends === null ? from : readRollLength(ends[2] ?? '', name, unit);
  return { from: exact(Math.min(from, to)), length: exact(Math.abs(to - from)) };
}

export const readFlaws = (text: string, name: string, unit: Unit): readonly Flaw[] =>
  text
    .split(/[;,]/)
    .filter((one) => one.trim() !== '')
    .map((one) => flawOf(one.trim(), name, unit));

/** Refused in a sentence that names the roll. */
export function readRoll({ length, lot, flaws }: RollWritten, name: string, unit: Unit): Roll {
  const marked = readFlaws(flaws, `${name}, flaws`, unit);
  return {
    length: readRollLength(length, `${name}, length`, unit),
    lot: lot.trim() === '' ? undefined : lot.trim(),
    ...(marked.length > 0 && { flaws: marked }),
  };
}

/** A cloth's name, or a lot's, without regard to case and spaces. */
export const sameName = (name: string): string => name.replace(/\s+/g, ' ').trim().toLowerCase();

/** By the cloth's name as `sameName` writes it. */
export type Received = ReadonlyMap<string, readonly RollWritten[]>;

const HEADINGS = {
  cloth: /^(roll of|fabric|cloth|face fabric|material)$/,
  length: /^(roll length|length of roll|roll|length|length received|received)$/,
  lot: /^(dye lot|lot|dyelot|batch)( no\.?)?$/,
  flaws: /^(flaws?|faults?|defects?)( at| from the start)?$/,
} as const;
/** A cutter's list names rolls too, but its rolls are planned. */
const PLANNED = /^(cut length|begins at)/;
const HEADER_WITHIN = 20;

/** An empty cell is 0 on some platforms, and no roll, lot or flaw is said by it. */
const textOf = (cell: CellIn): string =>
  cell === 0 ? '' : typeof cell === 'string' || typeof cell === 'number' ? String(cell).trim() : '';

interface Columns {
  readonly cloth: number;
  readonly length: number;
  readonly lot: number;
  readonly flaws: number;
  /** “m” where the length's heading says another unit than its figures would be taken for. */
  readonly unit: string;
}

function columnsIn(row: readonly CellIn[]): Columns | undefined {
  const headings = row.map((cell) => textOf(cell).toLowerCase());
  const plain = headings.map((heading) => heading.replace(/\s*\(.*?\)/g, ''));
  const find = (like: RegExp): number => plain.findIndex((one) => like.test(one));
  const [cloth, length, lot, flaws] = [
    find(HEADINGS.cloth),
    find(HEADINGS.length),
    find(HEADINGS.lot),
    find(HEADINGS.flaws),
  ];
  if (cloth < 0 || length < 0 || plain.some((one) => PLANNED.test(one))) return undefined;
  // A table of windows has a fabric and a length too: only rolls have a lot, or say so.
  if (lot < 0 && ![plain[cloth], plain[length]].some((one) => one?.includes('roll'))) return undefined;
  const [, unit = ''] = /\((yd|m)\b[^)]*\)/.exec(headings[length] ?? '') ?? [];
  return { cloth, length, lot, flaws, unit };
}

/** The rolls of a table or a sheet, by cloth; undefined where no row heads a table of rolls. */
export function receivedIn(rows: readonly (readonly CellIn[])[], { large }: Unit): Received | undefined {
  for (const [at, row] of rows.slice(0, HEADER_WITHIN).entries()) {
    const columns = columnsIn(row);
    if (columns === undefined) continue;
    const rolls = new Map<string, RollWritten[]>();
    for (const cells of rows.slice(at + 1)) {
      const [cloth, length] = [textOf(cells[columns.cloth]), textOf(cells[columns.length])];
      if (cloth === '' || length === '') continue;
      const bare = /^[\d.,/ ]+$/.test(length) && columns.unit !== '' && columns.unit !== large;
      const roll: RollWritten = {
        length: bare ? `${length} ${columns.unit}` : length,
        lot: columns.lot < 0 ? '' : textOf(cells[columns.lot]),
        flaws: columns.flaws < 0 ? '' : textOf(cells[columns.flaws]),
      };
      rolls.set(sameName(cloth), [...(rolls.get(sameName(cloth)) ?? []), roll]);
    }
    return rolls;
  }
  return undefined;
}
