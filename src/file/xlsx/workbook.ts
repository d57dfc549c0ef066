/** A workbook file, read: its sheets, names and tables, and what its formulas are. */
import type { Parts } from './archive';
import { readDynamic, type Dynamic } from './dynamic';
import { Problem } from '../problem';
import { readSheet, type SheetSeen } from './sheet';
import { textOf, textPieces } from './text';
import { attribute, damaged, tagsNamed, type Tag, unescapedControls, walk } from './xml';

export interface WorksheetFile {
  readonly name: string;
  /** Its part; undefined for a chart sheet, which holds no cells. */
  readonly part: string | undefined;
  /** What its part holds: text in UTF-8. */
  readonly bytes: Uint8Array;
  readonly seen: SheetSeen;
}

export interface NameFile {
  readonly name: string;
  readonly refersTo: string;
  /** The sheet it belongs to, by its place; undefined for the whole workbook. */
  readonly sheet: number | undefined;
}

export interface TableFile {
  readonly name: string;
  readonly part: string;
  readonly sheet: number;
  /** With header and totals rows: A4:H20. */
  readonly ref: string;
  readonly headerRows: number;
  readonly totalsRows: number;
  readonly columns: readonly string[];
  /** Whether a filter of its own is in force. */
  readonly filtered: boolean;
}

export interface WorkbookFile {
  readonly parts: Parts;
  readonly part: string;
  readonly sheets: readonly WorksheetFile[];
  readonly names: readonly NameFile[];
  readonly tables: readonly TableFile[];
  /** The texts that cells point at. */
  readonly strings: readonly string[];
  readonly dynamic: Dynamic;
  /** Excel saved it in another language: it may write numbers and days in texts otherwise. */
  readonly elsewhere: boolean;
  /** Days are counted from 1904, as on the Macintosh of old. */
  readonly from1904: boolean;
  /** The file itself says that its values are to be computed when it is opened. */
  readonly stale: boolean;
  /** Values are computed only when the user asks for it. */
  readonly manual: boolean;
}

export interface Relationship {
  readonly id: string;
  /** The last word of its type: worksheet, table, sharedStrings. */
  readonly type: string;
  readonly target: string;
}

export function partText(parts: Parts, part: string): string | undefined {
  const bytes = parts.get(part);
  return bytes === undefined ? undefined : textOf(bytes, part);
}

const folderOf = (part: string): string => part.slice(0, part.lastIndexOf('/') + 1);
export const relationshipsPart = (part: string): string =>
  `${folderOf(part)}_rels/${part.slice(part.lastIndexOf('/') + 1)}.rels`;

/** “../tables/table1.xml” seen from xl/worksheets/ is xl/tables/table1.xml. */
function resolved(target: string, from: string): string {
  const steps = target.startsWith('/') ? [] : folderOf(from).split('/').filter(Boolean);
  for (const step of target.split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '.' && step !== '') steps.push(step);
  }
  return steps.join('/');
}

export function relationshipsOf(parts: Parts, part: string): Relationship[] {
  const at = part === '' ? '_rels/.rels' : relationshipsPart(part);
  const xml = partText(parts, at);
  if (xml === undefined) return [];
  return tagsNamed(xml, at, 'Relationship')
    .filter((tag) => tag.attributes['TargetMode'] !== 'External')
    .map(({ attributes }) => ({
      id: attributes['Id'] ?? '',
      type: (attributes['Type'] ?? '').split('/').at(-1) ?? '',
      target: resolved(attributes['Target'] ?? '', part),
    }));
}

function readStrings(parts: Parts, part: string | undefined): string[] {
  const xml = part === undefined ? undefined : partText(parts, part);
  if (part === undefined || xml === undefined) return [];
  const strings: string[] = [];
  let [text, inText, inPhonetic] = ['', false, false];
  walk(xml, part, {
    open({ name }) {
      if (name === 'si') text = '';
      else if (name === 't') inText = !inPhonetic;
      else if (name === 'rPh') inPhonetic = true;
    },
    text(more) {
      if (inText) text += more;
    },
    close(name) {
      if (name === 'si') strings.push(unescapedControls(text));
      else if (name === 't') inText = false;
      else if (name === 'rPh') inPhonetic = false;
    },
  });
  return strings;
}

function readNames(xml: string, part: string): NameFile[] {
  const names: NameFile[] = [];
  let open: { name: string; sheet: number | undefined } | undefined;
  let text = '';
  walk(xml, part, {
    open({ name, attributes }) {
      if (name !== 'definedName') return;
      const sheet = attributes['localSheetId'];
      open = { name: attributes['name'] ?? '', sheet: sheet === undefined ? undefined : Number(sheet) };
      text = '';
    },
    text(more) {
      if (open !== undefined) text += more;
    },
    close(name) {
      if (name !== 'definedName' || open === undefined) return;
      names.push({ ...open, refersTo: text.trim() });
      open = undefined;
    },
  });
  return names;
}

function readTable(parts: Parts, part: string, sheet: number): TableFile | undefined {
  const xml = partText(parts, part);
  if (xml === undefined) return undefined;
  const tags = tagsNamed(xml, part, 'table', 'tableColumn', 'filterColumn');
  const table = tags.find((tag) => tag.name === 'table')?.attributes;
  if (table === undefined) return undefined;
  return {
    name: table['displayName'] ?? table['name'] ?? '',
    part,
    sheet,
    ref: table['ref'] ?? '',
    headerRows: Number(table['headerRowCount'] ?? 1),
    totalsRows: Number(table['totalsRowCount'] ?? 0),
    columns: tags
      .filter((tag) => tag.name === 'tableColumn')
      .map((tag) => unescapedControls(tag.attributes['name'] ?? '')),
    filtered: tags.some((tag) => tag.name === 'filterColumn'),
  };
}

const NOTHING = new Uint8Array(0);

/** A sheet that holds nothing. */
export const NO_CELLS: SheetSeen = {
  rows: [],
  merged: [],
  data: { from: 0, to: 0, opened: 0, closing: 0, selfClosing: false },
  prefix: '',
  dimension: undefined,
  addressed: true,
  filtered: undefined,
};

const missing = (sheet: string, part: string): Problem =>
  new Problem(
    `Its sheet “${sheet}” has no part ${part} in the file. Find a whole copy of it, or restore it from a backup.`,
  );

function linkOf(sheet: Tag, relationships: readonly Relationship[]): Relationship {
  const id = attribute(sheet, 'id');
  const link = relationships.find((one) => one.id === id);
  if (link === undefined) throw missing(sheet.attributes['name'] ?? '', id ?? '');
  return link;
}

const tablesOn = (parts: Parts, part: string, sheet: number): TableFile[] =>
  relationshipsOf(parts, part).flatMap(({ type, target }) =>
    type === 'table' ? (readTable(parts, target, sheet) ?? []) : [],
  );

export function readWorkbook(parts: Parts, heard: (sheet: string) => void = () => undefined): WorkbookFile {
  const part = relationshipsOf(parts, '').find((one) => one.type === 'officeDocument')?.target;
  const xml = part === undefined ? undefined : partText(parts, part);
  if (part === undefined || xml === undefined)
    throw new Problem(
      'It holds no workbook. Open it in a spreadsheet program, save it as .xlsx and try again.',
    );
  const relationships = relationshipsOf(parts, part);
  const tags = tagsNamed(xml, part, 'workbook', 'sheet', 'workbookPr', 'calcPr');
  if (tags[0]?.name !== 'workbook') throw damaged(part, 'it is no workbook');
  const strings = readStrings(parts, relationships.find((one) => one.type === 'sharedStrings')?.target);
  const tables: TableFile[] = [];
  const sheets = tags
    .filter((tag) => tag.name === 'sheet')
    .map((tag, at): WorksheetFile => {
      const name = tag.attributes['name'] ?? '';
      const { type, target } = linkOf(tag, relationships);
      if (type !== 'worksheet') return { name, part: undefined, bytes: NOTHING, seen: NO_CELLS };
      const bytes = parts.get(target);
      if (bytes === undefined) throw missing(name, target);
      heard(name);
      tables.push(...tablesOn(parts, target, at));
      return { name, part: target, bytes, seen: readSheet(textPieces(bytes, target), target, strings) };
    });
  return {
    parts,
    part,
    sheets,
    names: readNames(xml, part),
    tables,
    strings,
    elsewhere: isFromElsewhere(parts),
    dynamic: readDynamic(parts, relationships.find((one) => one.type === 'sheetMetadata')?.target),
    ...settingsIn(tags),
  };
}

/** How Excel heads its list of sheets when it speaks English. */
const ENGLISH = /<vt:lpstr>(?:Worksheets|Charts|Named Ranges|Excel 4\.0 Macros|Dialogs)<\/vt:lpstr>/;
function isFromElsewhere(parts: Parts): boolean {
  const bytes = parts.get('docProps/app.xml');
  if (bytes === undefined) return false;
  const headings = /<HeadingPairs>[^]*?<\/HeadingPairs>/.exec(new TextDecoder().decode(bytes))?.[0] ?? '';
  return headings.includes('<vt:lpstr>') && !ENGLISH.test(headings);
}

function settingsIn(tags: readonly Tag[]): Pick<WorkbookFile, 'from1904' | 'stale' | 'manual'> {
  const calculation = tags.find((tag) => tag.name === 'calcPr')?.attributes ?? {};
  const from1904 = tags.find((tag) => tag.name === 'workbookPr')?.attributes['date1904'];
  return {
    from1904: from1904 === '1' || from1904 === 'true',
    stale:
      /^(?:1|true)$/.test(calculation['fullCalcOnLoad'] ?? '') ||
      /^(?:0|false)$/.test(calculation['calcCompleted'] ?? ''),
    manual: calculation['calcMode'] === 'manual',
  };
}
