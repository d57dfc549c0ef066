/** A cell's formula taken apart, as far as the pane must follow one to show a function's inputs. */
import { readAddress, type Area } from '../address';
import type { Contents, TableSeen } from '../book';

/** A part of a formula, with the text it was written as. */
export type Part = { readonly text: string } & (
  | { readonly is: 'value'; readonly value: number | string | boolean }
  | { readonly is: 'area'; readonly area: Area }
  | { readonly is: 'rows'; readonly rows: readonly (readonly Part[])[] }
  | { readonly is: 'call'; readonly name: string; readonly takes: readonly (Part | undefined)[] }
  | { readonly is: 'sign'; readonly sign: string; readonly operands: readonly Part[] }
);

/** The pane cannot follow this formula; `what` is the part it stopped at. */
export class Unfollowed extends Error {
  constructor(readonly what: string) {
    super(what);
  }
}

const SHEET = /(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!/u.source;
const CELL = /\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6}/.source;
const TOKEN = new RegExp(
  [
    /"(?:[^"]|"")*"/.source,
    /#(?:N\/A|DIV\/0!|[A-Z]+[!?])/.source,
    /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/.source,
    `(?:${SHEET})?${CELL}(?::${CELL})?(?![\\p{L}\\p{N}_.(])`,
    /[\p{L}_\\][\p{L}\p{N}_.\\]*\(/u.source,
    /(?:[\p{L}_\\][\p{L}\p{N}_.\\]*)?\[(?:'.|[^[\]]|\[(?:'.|[^[\]])*\])*\]/u.source,
    /[\p{L}_\\][\p{L}\p{N}_.\\]*/u.source,
    /<>|<=|>=|[-+*/^&=<>%(){},;]/.source,
  ].join('|'),
  'uy',
);

interface Token {
  readonly text: string;
  readonly from: number;
}

function tokensOf(formula: string): Token[] {
  const list: Token[] = [];
  let at = 1;
  while (at < formula.length) {
    if (/\s/.test(formula[at] ?? '')) {
      at += 1;
      continue;
    }
    TOKEN.lastIndex = at;
    const found = TOKEN.exec(formula);
    if (found === null) throw new Unfollowed(formula.slice(at, at + 20));
    list.push({ text: found[0], from: at });
    at += found[0].length;
  }
  return list;
}

/** Signs that stand between two parts, loosest first. */
const LEVELS: readonly (readonly string[])[] = [
  ['=', '<>', '<', '>', '<=', '>='],
  ['&'],
  ['+', '-'],
  ['*', '/'],
  ['^'],
];

class Reader {
  private at = 0;
  private readonly tokens: readonly Token[];
  constructor(
    private readonly formula: string,
    private readonly cell: Area,
    private readonly contents: Contents,
  ) {
    this.tokens = tokensOf(formula);
  }

  whole(): Part {
    const part = this.between(0);
    if (this.at < this.tokens.length) throw new Unfollowed(this.next?.text ?? '');
    return part;
  }

  private get next(): Token | undefined {
    return this.tokens[this.at];
  }
  private take(text: string): boolean {
    if (this.next?.text !== text) return false;
    this.at += 1;
    return true;
  }
  private expect(text: string): void {
    if (!this.take(text)) throw new Unfollowed(this.next?.text ?? 'its end');
  }
  private textFrom(from: number): string {
    const last = this.tokens[this.at - 1];
    return last === undefined ? '' : this.formula.slice(from, last.from + last.text.length);
  }

  private between(level: number): Part {
    const signs = LEVELS[level];
    if (signs === undefined) return this.signed();
    const from = this.next?.from ?? 0;
    let left = this.between(level + 1);
    for (let sign = this.next?.text; sign !== undefined && signs.includes(sign); sign = this.next?.text) {
      this.at += 1;
      const right = this.between(level + 1);
      left = { is: 'sign', sign, operands: [left, right], text: this.textFrom(from) };
    }
    return left;
  }

  private signed(): Part {
    const from = this.next?.from ?? 0;
    if (this.take('-'))
      return { is: 'sign', sign: '-', operands: [this.signed()], text: this.textFrom(from) };
    if (this.take('+')) return this.signed();
    let part = this.single();
    while (this.take('%')) part = { is: 'sign', sign: '%', operands: [part], text: this.textFrom(from) };
    return part;
  }

  private single(): Part {
    const token = this.next;
    if (token === undefined) throw new Unfollowed('its end');
    this.at += 1;
    const { text } = token;
    if (text === '(') {
      const part = this.between(0);
      this.expect(')');
      return part;
    }
    if (text === '{') return this.rows(token.from);
    if (text.startsWith('"')) return { is: 'value', value: text.slice(1, -1).replace(/""/g, '"'), text };
    if (text.startsWith('#')) return { is: 'value', value: text, text };
    if (/^[\d.]/.test(text)) return { is: 'value', value: Number(text), text };
    if (text.endsWith('(')) return this.call(text.slice(0, -1), token.from);
    if (/^(TRUE|FALSE)$/i.test(text)) return { is: 'value', value: text.toUpperCase() === 'TRUE', text };
    const area = readAddress(text, this.cell.sheet) ?? this.named(text);
    if (area === undefined) throw new Unfollowed(text);
    return { is: 'area', area, text };
  }

  private call(name: string, from: number): Part {
    const takes: (Part | undefined)[] = [];
    if (!this.take(')')) {
      for (;;) {
        takes.push(this.next?.text === ',' || this.next?.text === ')' ? undefined : this.between(0));
        if (this.take(')')) break;
        this.expect(',');
      }
    }
    return { is: 'call', name: name.toUpperCase(), takes, text: this.textFrom(from) };
  }

  private rows(from: number): Part {
    const rows: Part[][] = [[]];
    for (;;) {
      rows.at(-1)?.push(this.signed());
      if (this.take('}')) return { is: 'rows', rows, text: this.textFrom(from) };
      if (this.take(';')) rows.push([]);
      else this.expect(',');
    }
  }

  private named(text: string): Area | undefined {
    const brackets = text.indexOf('[');
    const name = (brackets < 0 ? text : text.slice(0, brackets)).toLowerCase();
    const found = this.contents.names.find((one) => one.name.toLowerCase() === name);
    if (brackets < 0 && found?.area !== undefined) return found.area;
    const table = this.contents.tables.find((one) =>
      name === '' ? isIn(this.cell, one) : one.name.toLowerCase() === name,
    );
    return table && inTable(table, brackets < 0 ? '' : text.slice(brackets + 1, -1), this.cell.row);
  }
}

const isIn = (cell: Area, { area }: TableSeen): boolean =>
  cell.sheet.toLowerCase() === area.sheet.toLowerCase() &&
  cell.row >= area.row &&
  cell.row < area.row + area.rows &&
  cell.column >= area.column &&
  cell.column < area.column + area.columns;

/** What stands in a table's brackets: @[Rod width], Rod width, [#This Row],[Rod width]. */
function inTable({ area, totalsRow, columns }: TableSeen, inside: string, row: number): Area | undefined {
  let text = inside.trim().replace(/^\[#This Row\],?/i, '@');
  const here = text.startsWith('@');
  if (here) text = text.slice(1);
  if (text.includes('#')) return undefined;
  const ends = (text.match(/\[(?:'.|[^[\]])*\]/g) ?? [text]).map((one) =>
    one
      .replace(/^\[|\]$/g, '')
      .replace(/'(.)/g, '$1')
      .toLowerCase(),
  );
  const places =
    text === ''
      ? [0, columns.length - 1]
      : ends.map((end) => columns.findIndex((one) => one.toLowerCase() === end));
  if (places.includes(-1)) return undefined;
  const [first, last] = [Math.min(...places), Math.max(...places)];
  const rows = area.rows - 1 - (totalsRow ? 1 : 0);
  return {
    sheet: area.sheet,
    row: here ? row : area.row + 1,
    rows: here ? 1 : rows,
    column: area.column + first,
    columns: last - first + 1,
  };
}

/** Throws Unfollowed where it holds what the pane does not know. */
export const readFormula = (formula: string, cell: Area, contents: Contents): Part =>
  new Reader(formula, cell, contents).whole();

export function areasIn(part: Part): readonly Area[] {
  switch (part.is) {
    case 'value':
      return [];
    case 'area':
      return [part.area];
    case 'rows':
      return part.rows.flat().flatMap(areasIn);
    case 'call':
      return part.takes.flatMap((one) => (one === undefined ? [] : areasIn(one)));
    case 'sign':
      return part.operands.flatMap(areasIn);
  }
}
