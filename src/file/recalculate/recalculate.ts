/**
 * Computes a whole workbook file anew. What cannot be computed keeps its old value, so that the rest can be;
 * what a spreadsheet program would refuse to spill shows #SPILL!. Each such find means one more go.
 */
import { areaText, cellText, common, readAddress, sheetText, type Area } from '../../book/address';
import { Engine } from '../../engine/engine';
import type { Library } from '../../engine/library';
import type { CellValue, Computed, Progress, WorkbookOf } from '../../engine/workbook';
import { collect, inArea, keyOf, type Collected, type FormulaCell } from './collect';
import { typed } from './formula';
import { resolverOf, usesSpill, withSpills, Unresolved, type Resolver } from './resolve';
import { whyNot } from './refused';
import type { CellSeen } from '../xlsx/sheet';
import type { WorkbookFile } from '../xlsx/workbook';

export interface Result {
  readonly formula: FormulaCell;
  /** Undefined where it could not be computed: the old value stands. */
  readonly given: Computed | undefined;
  /** Why not; or what stands in the way of a spill. */
  readonly sentence: string | undefined;
}

export interface Recalculation {
  readonly results: readonly Result[];
  readonly engine: Engine;
  readonly resolver: Resolver;
}

const GOES = 8;
const placeOf = (of: { sheet: number; row: number; column: number }): string =>
  `${of.sheet}!${keyOf(of.row, of.column)}`;

export const cellName = (file: WorkbookFile, at: { sheet: number; row: number; column: number }): string =>
  `${sheetText(file.sheets[at.sheet]?.name ?? '')}!${cellText(at.row, at.column)}`;

/** What one go has learned for the next. */
interface Learned {
  /** Left as they are, or refused their spill: the value that stands instead of the formula. */
  readonly fixed: Map<string, CellValue>;
  readonly sentences: Map<string, string>;
  /** Formulas of one cell whose array is cut down to one of its values. */
  readonly single: Map<string, readonly [number, number]>;
  readonly fitted: Set<string>;
  readonly reaches: Map<string, { rows: number; columns: number }>;
}

export async function recalculate(
  file: WorkbookFile,
  library: Library,
  progress?: Progress,
): Promise<Recalculation> {
  const probe = new Engine(library, { sheets: [{ name: 'Sheet1', cells: [] }], names: [] });
  const resolver = resolverOf(file, (name) => probe.knows(name), typed);
  const all = collect(file);
  const learned: Learned = {
    fixed: new Map(),
    sentences: new Map(),
    single: new Map(),
    fitted: new Set(),
    reaches: new Map(),
  };
  const plain = new Map<string, string>();
  for (const formula of all.formulas) {
    const text = makePlain(file, formula, resolver, probe);
    if ('refused' in text) refuse(learned, file, formula, text.refused);
    else plain.set(placeOf(formula), text.plain);
  }
  probe.dispose();
  for (let go = 1; ; go++) {
    const engine = new Engine(library, workbookOf(file, all, plain, learned));
    const computed = await engine.calculate(progress);
    const more = learn(file, all, plain, computed, learned, await engine.circle());
    if (more && go < GOES) {
      engine.dispose();
      continue;
    }
    const given = new Map(computed.map((one) => [placeOf(one), one]));
    const results = all.formulas.map((formula): Result => {
      const place = placeOf(formula);
      const fixed = learned.fixed.get(place);
      return {
        formula,
        given:
          fixed === '#SPILL!' && learned.sentences.get(place)?.includes('#SPILL!') === true
            ? { ...formula, value: '#SPILL!', calls: [] }
            : given.get(place),
        sentence: learned.sentences.get(place),
      };
    });
    return { results, engine, resolver };
  }
}

/** The formula as the engine takes it, or why it takes it not. */
function makePlain(
  file: WorkbookFile,
  formula: FormulaCell,
  resolver: Resolver,
  engine: Engine,
): { plain: string } | { refused: string } {
  const why = whyNot(formula, file, engine);
  if (why !== undefined) return { refused: why };
  try {
    const plain = resolver.resolve(formula.typed, formula);
    // A name may bring along what the formula itself does not show.
    const refused = plain === formula.typed ? undefined : whyNot({ typed: plain }, undefined, engine);
    return refused === undefined ? { plain } : { refused };
  } catch (thrown) {
    if (thrown instanceof Unresolved) return { refused: thrown.message };
    throw thrown;
  }
}

function refuse(learned: Learned, file: WorkbookFile, formula: FormulaCell, why: string): void {
  learned.fixed.set(placeOf(formula), formula.old);
  learned.sentences.set(
    placeOf(formula),
    `${cellName(file, formula)} could not be computed: ${why}. Its old value stays.`,
  );
}

function workbookOf(
  file: WorkbookFile,
  { formulas, constants, inner }: Collected,
  plain: ReadonlyMap<string, string>,
  learned: Learned,
): WorkbookOf {
  const bySheet = file.sheets.map((): FormulaCell[] => []);
  for (const formula of formulas) bySheet[formula.sheet]?.push(formula);
  return {
    names: [],
    sheets: file.sheets.map(({ name }, sheet) => ({
      name,
      cells: [
        ...(constants[sheet] ?? [])
          .filter(({ value }) => value !== null)
          .map(({ row, column, value }) => ({ row, column, value })),
        ...(bySheet[sheet] ?? []).flatMap((formula) => keptSpill(formula, inner[sheet] ?? [], learned)),
        ...(bySheet[sheet] ?? []).map((formula) => {
          const place = placeOf(formula);
          const { row, column } = formula;
          const text = plain.get(place);
          const fixed = learned.fixed.get(place);
          if (text === undefined || fixed !== undefined) return { row, column, value: fixed ?? null };
          return { row, column, value: null, formula: asked(file, formula, text, learned) };
        }),
      ],
    })),
  };
}

/** What a formula that is left as it is had filled stays filled. */
function keptSpill(
  formula: FormulaCell,
  inner: readonly CellSeen[],
  learned: Learned,
): { row: number; column: number; value: CellValue }[] {
  const fixed = learned.fixed.get(placeOf(formula));
  if (fixed === undefined || fixed === '#SPILL!' || formula.reach.rows * formula.reach.columns === 1)
    return [];
  return inner
    .filter(({ row, column }) => inArea(formula.reach, row, column))
    .map(({ row, column, value }) => ({ row, column, value }));
}

/** The formula with what earlier goes taught: where spills stand, and what must stay one cell. */
function asked(file: WorkbookFile, formula: FormulaCell, plain: string, learned: Learned): string {
  let text = plain;
  if (usesSpill(text)) {
    text = withSpills(text, file.sheets[formula.sheet]?.name ?? '', (sheet, row, column) => {
      const at = file.sheets.findIndex((one) => one.name.toLowerCase() === sheet.toLowerCase());
      return learned.reaches.get(placeOf({ sheet: at, row, column })) ?? { rows: 1, columns: 1 };
    });
  }
  const place = placeOf(formula);
  const pick = learned.single.get(place);
  if (pick?.[0] === 0) return '=#VALUE!';
  if (pick !== undefined) return `=INDEX(${text.slice(1)},${pick[0]},${pick[1]})`;
  const { rows, columns } = formula.reach;
  if (learned.fitted.has(place))
    return `=EXPAND(TAKE(${text.slice(1)},${rows},${columns}),${rows},${columns})`;
  return text;
}

/** Reads off one go what the next must do otherwise; true where there is such a thing. */
function learn(
  file: WorkbookFile,
  all: Collected,
  plain: ReadonlyMap<string, string>,
  computed: readonly Computed[],
  learned: Learned,
  circle: ReadonlySet<string>,
): boolean {
  const formulas = new Map(all.formulas.map((formula) => [placeOf(formula), formula]));
  const spillsUsed = all.formulas.some(({ typed: text }) => usesSpill(text));
  let more = false;
  for (const one of computed) {
    const place = placeOf(one);
    const formula = formulas.get(place);
    if (formula === undefined || learned.fixed.has(place)) continue;
    const why = circle.has(`${one.sheet}!${one.row}!${one.column}`)
      ? 'it refers to itself in a circle'
      : (one.fault ?? (one.value === '#NAME?' ? 'something in it is not known here' : undefined));
    if (why !== undefined) {
      refuse(learned, file, formula, why);
      more = true;
      continue;
    }
    const rows = one.spill?.length ?? 1;
    const columns = one.spill?.[0]?.length ?? 1;
    const known = learned.reaches.get(place);
    if (known === undefined ? rows * columns > 1 : known.rows !== rows || known.columns !== columns) {
      learned.reaches.set(place, { rows, columns });
      more = more || spillsUsed;
    }
    const wanted = one.wanted ?? (one.spill === undefined ? undefined : { rows, columns });
    if (wanted === undefined) continue;
    more = confined(file, all, formula, plain.get(place) ?? '', wanted, one, learned) || more;
  }
  return more;
}

/** What becomes of an array's values where they may not go as they like. */
function confined(
  file: WorkbookFile,
  all: Collected,
  formula: FormulaCell,
  plain: string,
  wanted: { rows: number; columns: number },
  one: Computed,
  learned: Learned,
): boolean {
  const place = placeOf(formula);
  const { rows, columns } = formula.reach;
  if (formula.kind === 'array' && rows * columns > 1) {
    if (wanted.rows === rows && wanted.columns === columns) return false;
    return learned.fitted.size !== learned.fitted.add(place).size;
  }
  if (formula.kind !== 'dynamic') {
    learned.single.set(place, ownPart(formula, plain, wanted));
    return true;
  }
  const area: Area = { ...formula.reach, rows: wanted.rows, columns: wanted.columns };
  const blocker = blockerOf(file, all, formula, area);
  if (one.wanted === undefined && blocker === undefined) return false;
  learned.sentences.set(
    place,
    `${cellName(file, formula)} shows #SPILL!: it wants ${wanted.rows} × ${wanted.columns} cells and ${blocker ?? 'another spill'} is in the way. Clear that, or move the formula.`,
  );
  if (one.wanted !== undefined) return false;
  learned.fixed.set(place, '#SPILL!');
  return true;
}

/**
 * Of a whole column or row used where one cell belongs, the cell beside or above: implicit intersection.
 * Beside none of them it is #VALUE!, written here as 0, 0.
 */
function ownPart(
  formula: FormulaCell,
  plain: string,
  wanted: { rows: number; columns: number },
): readonly [number, number] {
  for (const [text] of plain.matchAll(/\$?[A-Z]{1,3}\$?\d+:\$?[A-Z]{1,3}\$?\d+/gi)) {
    const area = readAddress(text.replace(/\$/g, ''));
    if (area === undefined || area.rows !== wanted.rows || area.columns !== wanted.columns) continue;
    const [row, column] = [formula.row - area.row, formula.column - area.column];
    if (area.columns === 1) return row >= 0 && row < area.rows ? [row + 1, 1] : [0, 0];
    if (area.rows === 1) return column >= 0 && column < area.columns ? [1, column + 1] : [0, 0];
  }
  return [1, 1];
}

function blockerOf(
  file: WorkbookFile,
  { formulas, constants }: Collected,
  formula: FormulaCell,
  area: Area,
): string | undefined {
  const { sheet } = formula;
  const name = (row: number, column: number): string => cellName(file, { sheet, row, column });
  const other = (row: number, column: number): boolean =>
    inArea(area, row, column) && !(row === formula.row && column === formula.column);
  const filled = constants[sheet]?.find(({ row, column, value }) => value !== null && other(row, column));
  if (filled !== undefined) return name(filled.row, filled.column);
  const computed = formulas.find((one) => one.sheet === sheet && other(one.row, one.column));
  if (computed !== undefined) return name(computed.row, computed.column);
  const seen = file.sheets[sheet];
  for (const ref of seen?.seen.merged ?? []) {
    const merged = readAddress(ref, area.sheet);
    if (merged !== undefined && common(merged, area) !== undefined)
      return `the merged cell ${areaText(merged)}`;
  }
  for (const table of file.tables) {
    const at = table.sheet === sheet ? readAddress(table.ref, area.sheet) : undefined;
    if (at !== undefined && common(at, area) !== undefined) return `the table ${table.name}`;
  }
  if (area.row + area.rows > 1_048_576 || area.column + area.columns > 16_384) return 'the edge of the sheet';
  return undefined;
}
