/** The house rules of a workbook, line by line: read, compared with their defaults, changed with care. */
import { Refusal } from '../core/cell/answer';
import { isBlank, type CellIn } from '../core/cell/fields';
import { readHouse } from '../core/house/house';
import { RULE_LINES, ruleLine, type RuleLine } from '../core/house/rules';
import { CENTIMETRES, INCHES, type Unit } from '../core/exact/unit';
import { areaAt, areaText, readAddress, type Area } from './address';
import { apply } from './apply';
import type { Book, CellPut, CellValue } from './book';
import { orBlank } from './row-formula';
import { ownFigure, ruleDefault, ruleUnit } from './sheets/house-rules';
import { trouble } from './trouble';

export interface RuleSeen {
  readonly line: RuleLine;
  /** As its cell holds it; the default where the cell is blank or the sheet lacks the line. */
  readonly inForce: CellValue;
  readonly standard: CellValue;
  readonly unit: string;
  readonly differs: boolean;
  /** Where it is written, followed through to the cell that feeds it; undefined where the sheet lacks it. */
  readonly at: Area | undefined;
  /** What its cell holds where the default is in force. */
  readonly unset: CellValue;
  /** Why the value cannot be used. */
  readonly fault: string | undefined;
}

export interface RulesSeen {
  /** Two columns: rule, value. */
  readonly area: Area;
  /** Its name. */
  readonly refersTo: string;
  /** As a formula hands it over: blank cells stay blank on every host. */
  readonly handedOver: string;
  readonly unit: Unit;
  readonly lines: readonly RuleSeen[];
  /** What is odd about the range: unknown names, a rule twice. */
  readonly findings: readonly string[];
  /** The range as its cells hold it, for a function's rules. */
  readonly rows: readonly (readonly CellValue[])[];
}

/** Names of rules ranges in the workbook, a job’s own first: House_rules, House_rules_2. */
export async function rulesNames(book: Book): Promise<readonly string[]> {
  const { names } = await book.contents();
  return names.flatMap((one) =>
    /^house_rules(_\d+)?$/i.test(one.name) && one.area !== undefined ? [one.name] : [],
  );
}

const sentenceOf = (line: RuleLine, raw: CellIn, unit: Unit): string | undefined => {
  try {
    line.kind.read(raw, { name: `house rule “${line.name}”`, unit });
    return undefined;
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown.finding.sentence;
    throw thrown;
  }
};

/** The unit the range sets, whatever else is wrong with it. */
function unitOf(rows: readonly (readonly CellValue[])[]): Unit {
  const raw = rows.findLast((row) => ruleLine(String(row[0] ?? ''))?.key === 'unit')?.[1] ?? null;
  try {
    return ruleLine('unit')?.kind.read(raw, { name: 'unit', unit: INCHES }) === 'centimetres'
      ? CENTIMETRES
      : INCHES;
  } catch (thrown) {
    if (thrown instanceof Refusal) return INCHES;
    throw thrown;
  }
}

/** =IF(Prices!$B$24="","",Prices!$B$24): the value stands in that other cell. */
function followed(formula: string | null, sheet: string): Area | undefined {
  const found = /^=IF\(([^=(),]+)="","",\1\)$/.exec(formula ?? '') ?? /^=([^=(),]+)$/.exec(formula ?? '');
  return found === null ? undefined : readAddress(found[1] ?? '', sheet);
}

function findingsOf(rows: readonly (readonly CellValue[])[]): readonly string[] {
  try {
    return readHouse(rows).findings.map((one) => one.sentence);
  } catch (thrown) {
    if (thrown instanceof Refusal) return [];
    throw thrown;
  }
}

/** The same figure however it is written: read, then compared as the cell would hold it. */
function same(line: RuleLine, one: CellIn, other: CellIn, unit: Unit): boolean {
  const place = { name: line.name, unit };
  return JSON.stringify(line.kind.read(one, place)) === JSON.stringify(line.kind.read(other, place));
}

/** A day as a person writes it, not as its number. */
const dayOf = (line: RuleLine, raw: CellIn, unit: Unit): CellValue =>
  (line.kind.write?.(line.kind.read(raw, { name: line.name, unit }), unit) ?? null) as CellValue;

/** Reads the rules range of this name. */
export async function readRules(book: Book, name = 'House_rules'): Promise<RulesSeen> {
  const { names } = await book.contents();
  const area = names.find((one) => one.name.toLowerCase() === name.toLowerCase())?.area;
  if (area === undefined || area.columns < 2) throw trouble('missing', `The range “${name}”`);
  // Beside what is in force stands the house's own figure, on the sheet of a new job.
  const [block] = await book.read([{ ...area, columns: 3 }], 'cells');
  const rows = (block?.values ?? []).map((row) => row.slice(0, 2));
  const unit = unitOf(rows);
  const lines = RULE_LINES.map((line): RuleSeen => {
    const at = rows.findLastIndex((row) => ruleLine(String(row[0] ?? '')) === line);
    const raw = at < 0 ? null : (rows[at]?.[1] ?? null);
    const standard = (ruleDefault(line, unit) ?? null) as CellValue;
    const blank = isBlank(raw);
    const fault = blank ? undefined : sentenceOf(line, raw, unit);
    const place = at < 0 ? undefined : areaAt(area.sheet, area.row + at, area.column + 1);
    const own = at < 0 ? undefined : ownFigure(block?.formulas[at]?.[1] ?? null);
    const formula = at < 0 ? null : (block?.formulas[at]?.[own === undefined ? 1 : 2] ?? null);
    const figure = own === undefined ? place : readAddress(own, area.sheet);
    return {
      line,
      inForce: blank
        ? standard
        : fault === undefined && line.key === 'inForceFrom'
          ? dayOf(line, raw, unit)
          : raw,
      standard,
      unit: ruleUnit(line, unit),
      differs: !blank && (fault !== undefined || !same(line, raw, standard, unit)),
      at: formula === null ? figure : followed(formula, area.sheet),
      unset: own === undefined ? standard : null,
      fault,
    };
  });
  // Where formulas say what is in force no cell is empty.
  const whole = block?.formulas.every((row) => (row[1] ?? null) !== null) === true;
  const handedOver = whole ? name : orBlank(name);
  return { area, refersTo: name, handedOver, unit, lines, findings: findingsOf(rows), rows };
}

/** Why a value cannot stand for this rule, in a sentence; undefined where it can. Blank is the default. */
export const ruleFault = (line: RuleLine, raw: CellIn, unit: Unit): string | undefined =>
  isBlank(raw) ? undefined : sentenceOf(line, raw, unit);

/**
 * Sets one rule; null brings the default back. Returns the sentence that refuses it, and writes nothing then.
 * The unit is not changed here: every figure of the sheets would have to change with it.
 */
export async function setRule(
  book: Book,
  seen: RulesSeen,
  line: RuleLine,
  raw: string | number | null,
): Promise<string | undefined> {
  const fault = ruleFault(line, raw, seen.unit);
  if (fault !== undefined) return fault;
  const one = seen.lines.find((other) => other.line === line);
  const read = isBlank(raw) ? undefined : line.kind.read(raw, { name: line.name, unit: seen.unit });
  if (line.key === 'unit' && read !== undefined && read !== seen.unit.name)
    return `The house rule “unit” is ${seen.unit.name}, and the figures of these sheets are in it. Add a new job in ${String(read)} instead.`;
  if (one?.at === undefined)
    return `The house rule “${line.name}” is worked out by a formula or missing in ${areaText(seen.area)}. Change it there.`;
  const value: CellPut = read === undefined ? one.unset : (line.kind.write?.(read, seen.unit) ?? raw);
  await apply(
    book,
    `Set “${line.name}”`,
    { puts: [{ area: one.at, cells: [[value]] }] },
    { mayOverwrite: [one.at], hiddenRowsToo: true },
  );
  return undefined;
}
