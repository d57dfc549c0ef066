/** How a role looks in a file: appended to the styles the workbook has, which stay as they are. */
import type { Dress, Role } from '../../book/book';
import { EDGE, FONT, LOOKS, USUAL_SIZE, type Look } from '../../book/roles';
import { escaped } from '../../book/markup';
import { digitOf } from './ruler';
import { edited, tagsNamed, walk, type Edit } from './xml';

/** The pieces of the styles part that make a look. */
const fontOf = ({ bold, italic, size = USUAL_SIZE, ink = '000000' }: Look): string =>
  `<font>${bold === true ? '<b/>' : ''}${italic === true ? '<i/>' : ''}<sz val="${size}"/><color rgb="FF${ink}"/><name val="${FONT}"/><family val="2"/></font>`;
const SIDES = ['left', 'right', 'top', 'bottom'] as const;
const side = (name: string, style = 'thin', ink = EDGE): string =>
  `<${name} style="${style}"><color rgb="FF${ink}"/></${name}>`;
const BOX = `<border>${SIDES.map((name) => side(name)).join('')}<diagonal/></border>`;
const BLACK = '000000';
function borderOf({ boxed, over, under }: Look): string | undefined {
  if (boxed === true) return BOX;
  if (over === undefined && under === undefined) return undefined;
  const top = over === undefined ? '<top/>' : side('top', over, BLACK);
  const bottom = under === undefined ? '<bottom/>' : side('bottom', under, BLACK);
  return `<border><left/><right/>${top}${bottom}<diagonal/></border>`;
}
function alignmentOf(look: Look | undefined, align: Dressed['align']): string {
  const across = align === undefined ? '' : ` horizontal="${align}"`;
  if (look?.wrapped === true) return `<alignment${across} vertical="top" wrapText="1"/>`;
  return across === '' ? '' : `<alignment${across}/>`;
}

const FIRST_OWN_FORMAT = 164;
/**
 * Of a workbook without a cell: its first font is in no cell of ours, columns are measured by it. A digit of
 * Times New Roman 12 is exactly eight pixels wide, so that suites that round it and suites that do not agree.
 */
const NONE =
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><numFmts count="0"/><fonts count="1"><font><sz val="12"/><name val="Times New Roman"/><family val="1"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="1"><xf/></cellXfs></styleSheet>';

export interface Dressed {
  readonly role: Role | undefined;
  readonly format: string | undefined;
  readonly align?: Dress['align'];
}

/** A list of the styles part, and what is joined to it. */
class Shelf {
  readonly added: string[] = [];
  constructor(readonly had: number) {}

  /** The place of a piece, joined where it is not yet. */
  place(piece: string): number {
    const at = this.added.indexOf(piece);
    return this.had + (at < 0 ? this.added.push(piece) - 1 : at);
  }
}

/** Hands out the number of a look, joining to the styles what it needs. */
export class Looks {
  private readonly xml: string;
  private readonly shelves: Readonly<Record<'fonts' | 'fills' | 'borders' | 'cellXfs', Shelf>>;
  private readonly formats = new Map<string, number>();
  private nextFormat: number;
  /** Pixels a digit of the workbook's usual font takes. */
  readonly digit: number;

  constructor(
    xml: string | undefined,
    private readonly part: string,
  ) {
    this.xml = xml ?? NONE;
    this.digit = digitOf(this.xml, part);
    const count = (shelf: string): number => childrenOf(this.xml, part, shelf);
    this.shelves = {
      fonts: new Shelf(count('fonts')),
      fills: new Shelf(count('fills')),
      borders: new Shelf(count('borders')),
      cellXfs: new Shelf(count('cellXfs')),
    };
    const own = tagsNamed(this.xml, part, 'numFmt').map(({ attributes }) =>
      Number(attributes['numFmtId'] ?? 0),
    );
    this.nextFormat = Math.max(FIRST_OWN_FORMAT, ...own.map((id) => id + 1));
  }

  /** The style number of cells dressed so. */
  style({ role, format, align }: Dressed): number {
    const look = role === undefined ? undefined : LOOKS[role];
    const { fonts, fills, borders, cellXfs } = this.shelves;
    const fill = (rgb: string): string =>
      `<fill><patternFill patternType="solid"><fgColor rgb="FF${rgb}"/><bgColor indexed="64"/></patternFill></fill>`;
    const fontId = look === undefined ? 0 : fonts.place(fontOf(look));
    const fillId = look?.fill === undefined ? 0 : fills.place(fill(look.fill));
    const border = look === undefined ? undefined : borderOf(look);
    const borderId = border === undefined ? 0 : borders.place(border);
    const numFmtId = format === undefined ? 0 : this.formatOf(format);
    const inside = alignmentOf(look, align) + (look?.unlocked === true ? '<protection locked="0"/>' : '');
    return cellXfs.place(
      `<xf numFmtId="${numFmtId}" fontId="${fontId}" fillId="${fillId}" borderId="${borderId}" xfId="0" applyNumberFormat="1" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1" applyProtection="1">${inside}</xf>`,
    );
  }

  private formatOf(format: string): number {
    const known = this.formats.get(format);
    if (known !== undefined) return known;
    this.formats.set(format, this.nextFormat);
    return this.nextFormat++;
  }

  /** The whole part with what was joined. */
  written(): string {
    const edits = Object.entries(this.shelves).flatMap(([name, { had, added }]) =>
      joined(this.xml, this.part, name, had, added),
    );
    const formats = [...this.formats].map(
      ([format, id]) => `<numFmt numFmtId="${id}" formatCode="${escaped(format)}"/>`,
    );
    const [shelf] = tagsNamed(this.xml, this.part, 'numFmts');
    if (shelf !== undefined)
      return edited(this.xml, [
        ...edits,
        ...joined(this.xml, this.part, 'numFmts', childrenOf(this.xml, this.part, 'numFmts'), formats),
      ]);
    const root = tagsNamed(this.xml, this.part, 'styleSheet')[0];
    const at = root?.to ?? 0;
    const text = own(
      `<numFmts count="${formats.length}">${formats.join('')}</numFmts>`,
      prefixAt(this.xml, root?.from ?? 0),
    );
    return edited(this.xml, formats.length === 0 ? edits : [...edits, { from: at, to: at, text }]);
  }
}

/** “x:” where the part writes its tags so. */
const prefixAt = (xml: string, from: number): string =>
  /^<(\w+:)?/.exec(xml.slice(from, from + 40))?.[1] ?? '';
const own = (xml: string, prefix: string): string =>
  prefix === '' ? xml : xml.replace(/<(\/?)(?=\w)/g, `<$1${prefix}`);

function childrenOf(xml: string, part: string, shelf: string): number {
  let [depth, inside, count] = [0, -1, 0];
  walk(xml, part, {
    open({ name }) {
      depth++;
      if (name === shelf && inside < 0) inside = depth;
      else if (inside > 0 && depth === inside + 1) count++;
    },
    close(name) {
      if (name === shelf && depth === inside) inside = Infinity;
      depth--;
    },
  });
  return count;
}

function joined(xml: string, part: string, shelf: string, had: number, pieces: readonly string[]): Edit[] {
  if (pieces.length === 0) return [];
  const [tag] = tagsNamed(xml, part, shelf);
  if (tag === undefined) return [];
  const prefix = prefixAt(xml, tag.from);
  const text = own(pieces.join(''), prefix);
  const opening = `<${prefix}${shelf} count="${had + pieces.length}">`;
  if (tag.selfClosing) return [{ from: tag.from, to: tag.to, text: `${opening}${text}</${prefix}${shelf}>` }];
  let end = -1;
  walk(xml, part, {
    close(name, from) {
      if (name === shelf && end < 0) end = from;
    },
  });
  return [
    { from: tag.from, to: tag.to, text: opening },
    { from: end, to: end, text },
  ];
}
