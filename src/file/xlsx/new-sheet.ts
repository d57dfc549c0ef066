/** A new sheet of a draft as the parts of a file: its cells, its layout, its tables. */
import { cellText, letters, placeText, type Area } from '../../book/address';
import type { CellPut, Layout, NewTable, Note } from '../../book/book';
import { pixelsOf } from '../../book/column-width';
import { shifted } from '../../book/formula';
import { FOOT_LETTERS } from '../../book/roles';
import type { Draft } from '../../book/sheets/draft';
import { storedForm } from '../recalculate/formula';
import type { Dressed, Looks } from './role-styles';
import { HEAD, MAIN, OFFICE } from './package-part';
import { widthInFile } from './ruler';
import { escaped } from '../../book/markup';
import { escapedControls } from './xml';

interface CellDraft {
  put?: CellPut;
  dressed: Dressed;
}
type Cells = Map<number, Map<number, CellDraft>>;

const PLAIN: Dressed = { role: undefined, format: undefined };
const text = (value: string): string => escaped(escapedControls(value));

/** What a draft writes into one sheet, row by row. */
function cellsOf(draft: Draft, sheet: string): Cells {
  const cells: Cells = new Map();
  const at = (row: number, column: number): CellDraft => {
    const line = cells.get(row) ?? new Map<number, CellDraft>();
    cells.set(row, line);
    const cell = line.get(column) ?? { dressed: PLAIN };
    line.set(column, cell);
    return cell;
  };
  const each = (area: Area, act: (cell: CellDraft, down: number, right: number) => void): void => {
    for (let down = 0; down < area.rows; down++)
      for (let right = 0; right < area.columns; right++)
        act(at(area.row + down, area.column + right), down, right);
  };
  for (const { area, cells: given, formula } of draft.puts ?? []) {
    if (area.sheet !== sheet) continue;
    each(area, (cell, down, right) => {
      cell.put = formula === undefined ? given?.[down]?.[right] : { formula: shifted(formula, down, right) };
    });
  }
  for (const { area, role, format, align } of draft.dress ?? []) {
    if (area.sheet !== sheet) continue;
    each(area, (cell) => {
      const had = cell.dressed;
      cell.dressed = {
        role: role ?? had.role,
        format: format ?? had.format,
        align: align ?? had.align,
      };
    });
  }
  return cells;
}

function cellXml({ put, dressed }: CellDraft, place: string, looks: Looks): string {
  const style = dressed === PLAIN ? '' : ` s="${looks.style(dressed)}"`;
  const open = `<c r="${place}"${style}`;
  if (put === undefined || put === null || put === '') return style === '' ? '' : `${open}/>`;
  if (typeof put === 'object') return `${open}><f>${text(storedForm(put.formula.slice(1)))}</f></c>`;
  if (typeof put === 'number') return `${open}><v>${put}</v></c>`;
  if (typeof put === 'boolean') return `${open} t="b"><v>${put ? 1 : 0}</v></c>`;
  return `${open} t="inlineStr"><is><t xml:space="preserve">${text(put)}</t></is></c>`;
}

function viewXml({ frozenRows = 0, frozenColumns = 0, plain }: Partial<Layout>): string {
  const grid = plain === true ? ' showGridLines="0"' : '';
  if (frozenRows + frozenColumns === 0)
    return `<sheetViews><sheetView${grid} workbookViewId="0"/></sheetViews>`;
  const corner = cellText(frozenRows, frozenColumns);
  const pane =
    frozenRows > 0 && frozenColumns > 0 ? 'bottomRight' : frozenRows > 0 ? 'bottomLeft' : 'topRight';
  const splits =
    (frozenColumns > 0 ? ` xSplit="${frozenColumns}"` : '') +
    (frozenRows > 0 ? ` ySplit="${frozenRows}"` : '');
  return `<sheetViews><sheetView${grid} workbookViewId="0"><pane${splits} topLeftCell="${corner}" activePane="${pane}" state="frozen"/></sheetView></sheetViews>`;
}

function columnsXml({ widths = {} }: Partial<Layout>, digit: number): string {
  const columns = Object.entries(widths).map(([at, wide]) => {
    const number = Number(at) + 1;
    // A column of no width would be taken for one that nobody set.
    const hidden = pixelsOf(wide) <= 0 ? ' hidden="1"' : '';
    return `<col min="${number}" max="${number}" width="${widthInFile(wide, digit)}" customWidth="1"${hidden}/>`;
  });
  return columns.length === 0 ? '' : `<cols>${columns.join('')}</cols>`;
}

/** A remark is shown beside its cell when the cell is chosen. */
function notesXml(notes: readonly Note[]): string {
  if (notes.length === 0) return '';
  const each = notes.map(
    ({ area, text: says }) =>
      `<dataValidation allowBlank="1" showInputMessage="1" prompt="${text(says)}" sqref="${placeText(area)}"/>`,
  );
  return `<dataValidations count="${notes.length}">${each.join('')}</dataValidations>`;
}

const mergedXml = ({ merged = [] }: Partial<Layout>): string =>
  merged.length === 0
    ? ''
    : `<mergeCells count="${merged.length}">${merged.map((area) => `<mergeCell ref="${placeText(area)}"/>`).join('')}</mergeCells>`;

const FOOT = text(FOOT_LETTERS);
/** An ampersand begins a code in a header or footer. */
const footText = (words: string): string => text(words.replace(/&/g, '&&'));

/** Margins, paper, footer and breaks, in the order the format has them. */
function printXml({ print }: Partial<Layout>): string {
  const paper = print?.paper === 'a4' ? 9 : 1;
  const orientation = print?.landscape === true ? 'landscape' : 'portrait';
  const { margins, foot, breaks = [] } = print ?? {};
  const [left, top, right, bottom] = margins ?? [];
  const edges =
    margins === undefined
      ? ''
      : `<pageMargins left="${left}" right="${right}" top="${top}" bottom="${bottom}" header="0.3" footer="0.3"/>`;
  const footer =
    foot === undefined
      ? ''
      : `<headerFooter><oddFooter>&amp;L${FOOT}${footText(foot)}&amp;R${FOOT}page &amp;P of &amp;N</oddFooter></headerFooter>`;
  const each = breaks.map((row) => `<brk id="${row}" max="16383" man="1"/>`);
  return (
    edges +
    `<pageSetup paperSize="${paper}" orientation="${orientation}" fitToHeight="0"/>` +
    footer +
    (breaks.length === 0
      ? ''
      : `<rowBreaks count="${breaks.length}" manualBreakCount="${breaks.length}">${each.join('')}</rowBreaks>`)
  );
}

export function sheetXml(draft: Draft, sheet: string, looks: Looks): string {
  const layout: Partial<Layout> = draft.layouts?.find((one) => one.sheet === sheet) ?? {};
  const { heights = {} } = layout;
  const drawn = cellsOf(draft, sheet);
  for (const row of Object.keys(heights)) if (!drawn.has(Number(row))) drawn.set(Number(row), new Map());
  const rows = [...drawn].sort(([one], [other]) => one - other);
  const body = rows.map(([row, line]) => {
    const cells = [...line].sort(([one], [other]) => one - other);
    // A heading may take two lines, which not every program makes room for.
    const own =
      heights[row] ?? (cells.some(([, { dressed }]) => dressed.role === 'heading') ? 31 : undefined);
    const high = own === undefined ? '' : ` ht="${own}" customHeight="1"`;
    return `<row r="${row + 1}"${high}>${cells.map(([column, cell]) => cellXml(cell, cellText(row, column), looks)).join('')}</row>`;
  });
  const tables = tablesOf(draft, sheet).map((_, at) => `<tablePart r:id="rId${at + 1}"/>`);
  return (
    `${HEAD}<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>` +
    `${viewXml(layout)}${columnsXml(layout, looks.digit)}<sheetData>${body.join('')}</sheetData>` +
    mergedXml(layout) +
    notesXml((draft.notes ?? []).filter(({ area }) => area.sheet === sheet)) +
    printXml(layout) +
    (tables.length === 0 ? '' : `<tableParts count="${tables.length}">${tables.join('')}</tableParts>`) +
    '</worksheet>'
  );
}

export const tablesOf = (draft: Draft, sheet: string): readonly NewTable[] =>
  (draft.newTables ?? []).filter(({ area }) => area.sheet === sheet);

export function tableXml(draft: Draft, { name, area }: NewTable, id: number): string {
  const header = cellsOf(draft, area.sheet).get(area.row);
  const columns = Array.from({ length: area.columns }, (_, at) => {
    const put = header?.get(area.column + at)?.put;
    const heading = typeof put === 'string' ? put : `column ${letters(area.column + at)}`;
    return `<tableColumn id="${at + 1}" name="${text(heading)}"/>`;
  });
  const ref = placeText(area);
  return (
    `${HEAD}<table xmlns="${MAIN}" id="${id}" name="${name}" displayName="${name}" ref="${ref}" totalsRowShown="0">` +
    `<autoFilter ref="${ref}"/><tableColumns count="${area.columns}">${columns.join('')}</tableColumns>` +
    '<tableStyleInfo name="TableStyleLight1" showFirstColumn="0" showLastColumn="0" showRowStripes="1" showColumnStripes="0"/></table>'
  );
}
