/**
 * Tables and names in a formula written out, as the formula's own cell sees them.
 * The engine counts a table's totals row as data, knows no names of one sheet only, takes no name that a
 * function bears (Rate), and remembers a formula's names across workbooks.
 */
import { areaText, columnOf, readAddress, type Area } from '../../book/address';
import { shifted } from '../../book/formula';
import { bindsName, BRACKETS } from './formula';
import { referred, Unresolved, type At } from './table-reference';

export { Unresolved };
export type { At };
import type { WorkbookFile, TableFile } from '../xlsx/workbook';

const IDENTIFIER = /[\p{L}_\\][\p{L}\p{N}_.\\?]*/u;
const OWNER = `(?:'(?:[^']|'')+'|${IDENTIFIER.source})!`;
/** Text and errors are passed over; then a name with brackets; then a name alone or called; then a quoted sheet before $A$1. */
const TOKEN = new RegExp(
  `"(?:[^"]|"")*"|#(?:N/A|DIV/0!|[A-Z_]+[!?])|(?<![\\p{L}\\p{N}_.$])(?:${OWNER})?(${IDENTIFIER.source})?(${BRACKETS.source})|(?<![\\p{L}\\p{N}_.$])(${OWNER})?(${IDENTIFIER.source})(?![\\p{L}\\p{N}_.!$])|'(?:[^']|'')+'!`,
  'gu',
);
/** A range, or one call, needs no brackets around it. */
const WHOLE = new RegExp(
  `^(?:(?:${OWNER})?[$A-Z0-9]+(?::[$A-Z0-9]+)?|[\\p{L}_.\\d]+\\([^()]*\\)|LAMBDA\\(.*\\)|OFFSET\\([^()]*(?:\\([^()]*\\)[^()]*)*\\))$`,
  'isu',
);
const CELL_OR_TRUTH = /^(?:[A-Z]{1,3}\d{1,7}|TRUE|FALSE)$/i;

export interface Resolver {
  resolve(formula: string, at: At): string;
}

/** Names may stand on names; in a circle they never end. */
const DEEP = 32;

export function resolverOf(
  book: Pick<WorkbookFile, 'sheets' | 'names' | 'tables'>,
  isFunction: (name: string) => boolean,
  toTyped: (stored: string) => string,
): Resolver {
  const tables = new Map(book.tables.map((table) => [table.name.toLowerCase(), table]));
  const named = new Map(
    book.names
      .filter(({ name }) => name !== '' && !name.startsWith('_xlnm.'))
      .map(({ name, refersTo, sheet }) => [keyOf(name, sheet), toTyped(refersTo)]),
  );
  const sheetNames = new Map(book.sheets.map(({ name }, at) => [name.toLowerCase(), at]));
  const sheetOf = (qualifier: string | undefined): number | undefined =>
    qualifier === undefined
      ? undefined
      : sheetNames.get(qualifier.slice(0, -1).replace(/^'|'$/g, '').replace(/''/g, "'").toLowerCase());

  /** What a name stands for, moved to the cell that uses it; a value in brackets so that it stays one. */
  function nameIn(qualifier: string | undefined, name: string, at: At, depth: number): string | undefined {
    const sheet = sheetOf(qualifier) ?? at.sheet;
    const found = named.get(keyOf(name, sheet)) ?? named.get(keyOf(name, undefined));
    if (found === undefined) return undefined;
    if (depth > DEEP) throw new Unresolved(`the name ${name} refers to itself`);
    const text = resolved(shifted(found.replace(/^=/, ''), at.row, at.column), { ...at, sheet }, depth + 1);
    return WHOLE.test(text) ? text : `(${text})`;
  }

  function tableArea(table: TableFile, inside: string, at: At): string {
    const { rows, columns, whole } = referred(table, inside, at);
    const area: Area = {
      sheet: book.sheets[table.sheet]?.name ?? '',
      row: rows.from,
      rows: rows.to - rows.from + 1,
      column: whole.column + columns.from,
      columns: columns.to - columns.from + 1,
    };
    return areaText(area, true);
  }

  function tableHere(at: At): TableFile {
    const here = book.tables.find((table) => {
      const area = table.sheet === at.sheet ? readAddress(table.ref) : undefined;
      return (
        area !== undefined &&
        at.row >= area.row &&
        at.row < area.row + area.rows &&
        at.column >= area.column &&
        at.column < area.column + area.columns
      );
    });
    if (here === undefined) throw new Unresolved('it names a column without its table');
    return here;
  }

  function resolved(formula: string, at: At, depth: number): string {
    return formula.replace(TOKEN, (whole: string, ...found: unknown[]) => {
      const [owner, brackets, qualifier, identifier] = found as (string | undefined)[];
      if (brackets !== undefined) {
        const table = owner === undefined ? tableHere(at) : tables.get(owner.toLowerCase());
        if (table === undefined) throw new Unresolved(`there is no table ${owner ?? ''}`);
        return tableArea(table, brackets, at);
      }
      if (identifier === undefined || bindsName(formula, identifier)) return whole;
      const offset = found[4] as number;
      const called = /^\s*\(/.test(formula.slice(offset + whole.length));
      const name = called && isFunction(identifier) ? undefined : nameIn(qualifier, identifier, at, depth);
      if (name !== undefined || called) return name ?? whole;
      const table = qualifier === undefined ? tables.get(identifier.toLowerCase()) : undefined;
      if (table !== undefined) return tableArea(table, '[]', at);
      if (!known(formula, identifier, offset, whole.length))
        throw new Unresolved(`it names ${identifier}, which is defined nowhere here`);
      return whole;
    });
  }

  return { resolve: (formula, at) => resolved(formula, at, 0) };

  /** A cell, a column of A:C, TRUE, or a function handed on. */
  function known(formula: string, name: string, at: number, length: number): boolean {
    return (
      CELL_OR_TRUTH.test(name) || formula[at + length] === ':' || formula[at - 1] === ':' || isFunction(name)
    );
  }
}

const keyOf = (name: string, sheet: number | undefined): string => `${sheet ?? ''}!${name.toLowerCase()}`;

/** Where a spill stands now: ANCHORARRAY(Sheet!A1) or A1# as the file or a person writes it. */
const ANCHORED =
  /"(?:[^"]|"")*"|ANCHORARRAY\(\s*((?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!)?\$?([A-Z]{1,3})\$?(\d{1,7})\s*\)|((?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!)?\$?\b([A-Z]{1,3})\$?(\d{1,7})#/giu;

export const usesSpill = (formula: string): boolean =>
  [...formula.matchAll(ANCHORED)].some((found) => !found[0].startsWith('"'));

export function withSpills(
  formula: string,
  home: string,
  reach: (sheet: string, row: number, column: number) => { rows: number; columns: number },
): string {
  return formula.replace(ANCHORED, (whole: string, ...found: (string | undefined)[]) => {
    const [q1, c1, r1, q2, c2, r2] = found;
    const [letters, row] = [c1 ?? c2, r1 ?? r2];
    if (letters === undefined || row === undefined) return whole;
    const written = (q1 ?? q2)?.slice(0, -1).replace(/^'|'$/g, '').replace(/''/g, "'");
    const sheet = written ?? home;
    const area = { sheet, row: Number(row) - 1, column: columnOf(letters) };
    const size = reach(sheet, area.row, area.column);
    return areaText({ ...area, ...size }, true);
  });
}
