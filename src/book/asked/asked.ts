/** What a cell asks our functions, and what each answers: its inputs as read, steps and findings. */
import type { CellFunction, Outcome } from '../../../functions/declare';
import { functionNamed } from '../../../functions/index';
import { areaAt, areaText, type Area } from '../address';
import type { Block, Book, CellValue } from '../book';
import { errorOf, isBlank, type CellIn } from '../../core/cell/fields';
import { fromUnit, toUnit, UNITS, type LengthUnit } from '../../core/exact/length';
import { areasIn, readFormula, Unfollowed, type Part } from './formula-read';
import { partsOf, type AskedPart } from './parts';

export interface AskedInput {
  /** opening_width */
  readonly name: string;
  readonly says: string;
  /** As it stands in the formula; empty where it was left out. */
  readonly written: string;
  readonly value: CellIn;
  /** The cells it is read from, where it is a plain reference. */
  readonly from?: Area;
}
export interface Asked {
  readonly cellFunction: CellFunction;
  readonly written: string;
  readonly inputs: readonly AskedInput[];
  readonly outcome: Outcome;
}
export interface CellAsked {
  readonly cell: Area;
  /** Where the formula stands whose spill the cell is part of. */
  readonly spilledFrom?: Area;
  readonly formula: string | null;
  readonly shown: CellValue;
  readonly calls: readonly Asked[];
  /** What a formula without functions of ours is worked out from. */
  readonly parts?: readonly AskedPart[];
  /** The part of the formula the pane could not follow. */
  readonly unfollowed?: string;
}

const HEM = /^(HEM\.|_XLDUDF_HEM_)/i;

/** Reads the first cell of an area: its formula, our functions in it, their answers. */
export async function cellAsked(book: Book, area: Area): Promise<CellAsked> {
  const cell = { ...area, rows: 1, columns: 1 };
  const own = await formulaAsked(book, cell);
  if (own.formula !== null || isBlank(own.shown)) return own;
  return (await spillAsked(book, own)) ?? own;
}

/** As far as a spill is looked for, up and to the left. */
const SPILL_ROWS = 500;
const SPILL_COLUMNS = 20;
const SPILL_TRIES = 8;

/** A value without a formula may be part of what a cell above or to the left spills. */
async function spillAsked(book: Book, { cell, shown }: CellAsked): Promise<CellAsked | undefined> {
  const row = Math.max(0, cell.row - SPILL_ROWS);
  const column = Math.max(0, cell.column - SPILL_COLUMNS);
  const around = areaAt(cell.sheet, row, column, cell.row - row + 1, cell.column - column + 1);
  const [block] = await book.read([around], 'cells');
  const places = (block?.formulas ?? []).flatMap((line, down) =>
    line.flatMap((formula, right) =>
      formula !== null && /HEM[._]/i.test(formula) ? [areaAt(cell.sheet, row + down, column + right)] : [],
    ),
  );
  for (const from of places.reverse().slice(0, SPILL_TRIES)) {
    const asked = await formulaAsked(book, from);
    const [call] = asked.calls;
    const [down, right] = [cell.row - from.row, cell.column - from.column];
    if (call === undefined || 'error' in call.outcome || !Array.isArray(call.outcome.cells)) continue;
    const spilled = (call.outcome.cells as CellValue[][])[down]?.[right];
    if (String(spilled ?? '') !== String(shown)) continue;
    return { ...asked, cell, shown, spilledFrom: from, calls: [ofOneRow(call, down)] };
  }
  return undefined;
}

/** SCHEDULE of many rows, asked of the one that is looked at. */
function ofOneRow(call: Asked, at: number): Asked {
  const rows = call.inputs.find((one) => one.name === 'rows')?.value;
  if (call.cellFunction.name !== 'SCHEDULE' || !Array.isArray(rows)) return call;
  const inputs = call.inputs.map((one): AskedInput =>
    one.name === 'rows'
      ? {
          ...one,
          value: [(rows as CellIn[])[at] ?? null],
          ...(one.from !== undefined && { from: { ...one.from, row: one.from.row + at, rows: 1 } }),
        }
      : one,
  );
  return { ...call, inputs, outcome: call.cellFunction.call(inputs.map((one) => one.value)) };
}

async function formulaAsked(book: Book, cell: Area): Promise<CellAsked> {
  const [block] = await book.read([cell], 'cells');
  const formula = block?.formulas[0]?.[0] ?? null;
  const shown = block?.values[0]?.[0] ?? null;
  if (formula === null) return { cell, formula, shown, calls: [] };
  if (!/HEM[._]/i.test(formula))
    return { cell, formula, shown, calls: [], parts: await partsOf(book, formula, cell) };
  try {
    const whole = readFormula(formula, cell, await book.contents());
    const areas = areasIn(whole);
    const blocks = areas.length === 0 ? [] : await book.read(areas, 'cells');
    const known = new Map(blocks.map((one) => [areaText(one.area), one]));
    return { cell, formula, shown, ...answered(callsIn(whole), known) };
  } catch (thrown) {
    if (thrown instanceof Unfollowed) return { cell, formula, shown, calls: [], unfollowed: thrown.what };
    throw thrown;
  }
}

type Call = Extract<Part, { is: 'call' }>;

/** The answers of the calls that can be followed, and the first thing that cannot. */
function answered(
  parts: readonly Call[],
  known: ReadonlyMap<string, Block>,
): Pick<CellAsked, 'calls' | 'unfollowed'> {
  const calls: Asked[] = [];
  let unfollowed: string | undefined;
  for (const part of parts) {
    try {
      calls.push(asked(part, known));
    } catch (thrown) {
      if (!(thrown instanceof Unfollowed)) throw thrown;
      unfollowed ??= thrown.what;
    }
  }
  return { calls, ...(unfollowed !== undefined && { unfollowed }) };
}

/** Our functions, from the outside in. */
function callsIn(part: Part): readonly Call[] {
  if (part.is === 'call') {
    const inner = part.takes.flatMap((one) => (one === undefined ? [] : callsIn(one)));
    return HEM.test(part.name) ? [part, ...inner] : inner;
  }
  return part.is === 'sign' ? part.operands.flatMap(callsIn) : [];
}

function asked(part: Call, known: ReadonlyMap<string, Block>): Asked {
  const cellFunction = functionNamed(part.name);
  if (cellFunction === undefined) throw new Unfollowed(part.name);
  const values = part.takes.map((one) => (one === undefined ? null : worked(one, known)));
  const inputs = values.map((value, at): AskedInput => {
    const parameter = cellFunction.parameters[Math.min(at, cellFunction.parameters.length - 1)];
    const take = part.takes[at];
    return {
      name: parameter?.name ?? '',
      says: parameter?.says ?? '',
      written: take?.text ?? '',
      value,
      ...onlyArea(take),
    };
  });
  return { cellFunction, written: part.text, inputs, outcome: cellFunction.call(values) };
}

/** The cells an input is read from: also where a blank one is kept blank, or its unit changed. */
function onlyArea(take: Part | undefined): { readonly from?: Area } {
  const [first, ...others] = take === undefined ? [] : areasIn(take);
  if (first === undefined) return {};
  return others.every((one) => areaText(one) === areaText(first)) ? { from: first } : {};
}

/** The first cell of a range; a plain value as it is. */
const single = (value: CellIn): CellIn =>
  Array.isArray(value) ? single((value as CellIn[])[0] ?? null) : value;
const asNumber = (value: CellIn): number => {
  const one = single(value);
  return isBlank(one) ? 0 : typeof one === 'boolean' ? Number(one) : Number(one);
};
const asText = (value: CellIn): string => {
  const one = single(value);
  return typeof one === 'boolean' ? String(one).toUpperCase() : isBlank(one) ? '' : String(one);
};
const isTrue = (value: CellIn): boolean => {
  const one = single(value);
  return typeof one === 'string' ? one.toUpperCase() === 'TRUE' : Boolean(one);
};

function worked(part: Part, known: ReadonlyMap<string, Block>): CellIn {
  const work: Work = (one) => (one === undefined ? null : worked(one, known));
  switch (part.is) {
    case 'value':
      return part.value;
    case 'area': {
      const values = known.get(areaText(part.area))?.values ?? [];
      return part.area.rows === 1 && part.area.columns === 1 ? (values[0]?.[0] ?? null) : values;
    }
    case 'rows':
      return part.rows.map((row) => row.map((one) => single(work(one))));
    case 'sign':
      return signed(part.sign, part.operands.map(work));
    case 'call':
      return called(part, work);
  }
}

function signed(sign: string, [left, right]: readonly CellIn[]): CellIn {
  const error = errorOf(single(left)) ?? errorOf(single(right));
  if (error !== undefined) return error;
  if (right === undefined) return sign === '%' ? asNumber(left) / 100 : -asNumber(left);
  if (sign === '&') return asText(left) + asText(right);
  const [a, b] = [asNumber(left), asNumber(right)];
  switch (sign) {
    case '+':
      return a + b;
    case '-':
      return a - b;
    case '*':
      return a * b;
    case '/':
      return b === 0 ? '#DIV/0!' : a / b;
    case '^':
      return a ** b;
  }
  return compared(sign, single(left), single(right));
}

function compared(sign: string, left: CellIn, right: CellIn): boolean {
  const figures = typeof left === 'number' || typeof right === 'number';
  const text =
    figures && (typeof left === 'string' || typeof right === 'string') && left !== '' && right !== '';
  const [a, b] =
    figures && !text && left !== '' && right !== ''
      ? [asNumber(left), asNumber(right)]
      : [asText(left).toLowerCase(), asText(right).toLowerCase()];
  switch (sign) {
    case '=':
      return a === b;
    case '<>':
      return a !== b;
    case '<':
      return a < b;
    case '>':
      return a > b;
    case '<=':
      return a <= b;
    default:
      return a >= b;
  }
}

const isUnit = (text: string): text is LengthUnit => text in UNITS;

type Work = (one: Part | undefined) => CellIn;

function converted({ takes: [amount, from, to], text }: Call, work: Work): CellIn {
  const [unit, other] = [asText(work(from)), asText(work(to))];
  if (!isUnit(unit) || !isUnit(other)) throw new Unfollowed(text);
  return toUnit(fromUnit(asNumber(work(amount)), unit), other);
}

function chosen({ takes }: Call, work: Work): CellIn {
  const which = work(takes[0]);
  const pick = (at: CellIn): CellIn => single(work(takes[asNumber(at)]));
  return Array.isArray(which)
    ? (which as CellIn[][]).map((row) => row.map(pick))
    : work(takes[asNumber(which)]);
}

function unlessError({ takes: [first, second] }: Call, work: Work): CellIn {
  const value = work(first);
  return errorOf(single(value)) === undefined ? value : work(second);
}

const figuresOf = ({ takes }: Call, work: Work): readonly number[] =>
  takes.flatMap((one) => [work(one)].flat(2)).filter((one) => typeof one === 'number');

/** The least or the greatest figure; 0 where there is none. */
const outmost = (figures: readonly number[], by: (...all: number[]) => number): number =>
  figures.length === 0 ? 0 : by(...figures);

/** The few worksheet functions that stand around ours. */
const AROUND: ReadonlyMap<string, (part: Call, work: Work) => CellIn> = new Map(
  Object.entries<(part: Call, work: Work) => CellIn>({
    IF: ({ takes }, work) => (isTrue(work(takes[0])) ? work(takes[1]) : takes.length > 2 && work(takes[2])),
    IFERROR: unlessError,
    IFNA: unlessError,
    ISNUMBER: ({ takes }, work) => typeof single(work(takes[0])) === 'number',
    ISBLANK: ({ takes }, work) => isBlank(single(work(takes[0]))),
    AND: ({ takes }, work) => takes.every((one) => isTrue(work(one))),
    OR: ({ takes }, work) => takes.some((one) => isTrue(work(one))),
    NOT: ({ takes }, work) => !isTrue(work(takes[0])),
    CHOOSE: chosen,
    CONVERT: converted,
    SUM: (part, work) => figuresOf(part, work).reduce((sum, one) => sum + one, 0),
    MIN: (part, work) => outmost(figuresOf(part, work), Math.min),
    MAX: (part, work) => outmost(figuresOf(part, work), Math.max),
  }),
);

function called(part: Call, work: Work): CellIn {
  const { name, takes } = part;
  if (HEM.test(name)) {
    const cellFunction = functionNamed(name);
    if (cellFunction === undefined) throw new Unfollowed(name);
    const outcome = cellFunction.call(takes.map(work));
    return 'error' in outcome ? outcome.error : outcome.cells;
  }
  const around = AROUND.get(name);
  if (around === undefined) throw new Unfollowed(`${name}(…)`);
  return around(part, work);
}
