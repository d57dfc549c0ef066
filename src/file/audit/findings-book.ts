/** A new workbook with the findings of an audit and their summary; every text is a text cell. */
import { kindOf, type OrderFinding } from '../../core/audit/finding';
import type { CellOut } from '../../core/cell/fields';
import { INCHES, type Unit } from '../../core/exact/unit';
import { zipped, type Parts } from '../xlsx/archive';
import { addCharts, type DrawnChart } from '../xlsx/chart';
import { HEAD, MAIN, OFFICE, relationships, TYPES } from '../xlsx/package-part';
import { bytesOfText } from '../xlsx/text';
import { escaped } from '../../book/markup';
import { escapedControls } from '../xlsx/xml';
import { areaAt, letters } from '../../book/address';
import { FONT, USUAL_SIZE } from '../../book/roles';
import { SETTLED, settledKey, type Settled } from './settled';

const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';

interface Sheet {
  readonly name: string;
  readonly chart?: DrawnChart;
  readonly widths: readonly number[];
  /** Columns of figures, headed on their right; some of them are money. */
  readonly figures: readonly number[];
  readonly money: readonly number[];
  /** Of the rows below the heading: the format of the figures that the row measures. */
  readonly measured?: {
    readonly columns: readonly number[];
    readonly style: (at: number, value: CellOut) => number;
  };
  /** The first row is the heading. */
  readonly rows: readonly (readonly CellOut[])[];
}

/** Longer text does not fit a cell. */
const MOST_TEXT = 32_767;

/** The cell formats, as STYLES lists them. */
const FIGURE = 1;
const HEADING = 2;
const HEADING_OF_FIGURES = 3;
const TEXT = 4;
const MONEY = 5;
const TAPE = 6;
const TAPE_NEAR = 7;
const EIGHTHS = 8;

function cellXml(value: CellOut, at: string, style: number): string {
  const styled = ` s="${style}"`;
  if (value === '') return '';
  if (typeof value === 'number') return `<c r="${at}"${styled}><v>${value}</v></c>`;
  if (typeof value === 'boolean') return `<c r="${at}"${styled} t="b"><v>${value ? 1 : 0}</v></c>`;
  const text = escaped(escapedControls(value.slice(0, MOST_TEXT)));
  return `<c r="${at}"${styled} t="inlineStr"><is><t xml:space="preserve">${text}</t></is></c>`;
}

/** Text is wrapped, and its row made as high as it needs; letters are narrower than the figures a width counts. */
const LETTERS_A_WIDTH = 1.25;
const LINE_POINTS = 15;

function rowXml({ widths, figures, money, measured }: Sheet, row: readonly CellOut[], at: number): string {
  let lines = 1;
  const cells = row.map((value, column) => {
    const text = typeof value === 'string';
    const wide = (widths[column] ?? 10) * LETTERS_A_WIDTH;
    if (text) lines = Math.max(lines, Math.ceil(value.length / wide));
    const head = figures.includes(column) ? HEADING_OF_FIGURES : HEADING;
    const figure = (): number =>
      measured?.columns.includes(column) === true ? measured.style(at - 1, value) : FIGURE;
    const style = at === 0 ? head : text ? TEXT : money.includes(column) ? MONEY : figure();
    return cellXml(value, `${letters(column)}${at + 1}`, style);
  });
  const high = lines === 1 ? '' : ` ht="${lines * LINE_POINTS}" customHeight="1"`;
  return `<row r="${at + 1}"${high}>${cells.join('')}</row>`;
}

function sheetXml(sheet: Sheet): string {
  const { widths, rows } = sheet;
  const columns = widths
    .map((wide, at) => `<col min="${at + 1}" max="${at + 1}" width="${wide}" customWidth="1"/>`)
    .join('');
  const body = rows.map((row, at) => rowXml(sheet, row, at)).join('');
  const last = `${letters(widths.length - 1)}${Math.max(1, rows.length)}`;
  return (
    `${HEAD}<worksheet xmlns="${MAIN}"><sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>` +
    '<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>' +
    `<cols>${columns}</cols><sheetData>${body}</sheetData><autoFilter ref="A1:${last}"/>` +
    '<pageSetup orientation="landscape" fitToHeight="0"/></worksheet>'
  );
}

const STYLES =
  `${HEAD}<styleSheet xmlns="${MAIN}"><numFmts count="3"><numFmt numFmtId="164" formatCode="# ??/??"/>` +
  '<numFmt numFmtId="165" formatCode="# ??/64"/><numFmt numFmtId="166" formatCode="# ?/?"/></numFmts>' +
  `<fonts count="2"><font><sz val="${USUAL_SIZE}"/><name val="${FONT}"/></font>` +
  `<font><b/><sz val="${USUAL_SIZE}"/><name val="${FONT}"/></font></fonts><fills count="3"><fill><patternFill patternType="none"/></fill>` +
  '<fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFE7ECEF"/></patternFill></fill></fills>' +
  '<borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="9"><xf/>' +
  '<xf applyAlignment="1"><alignment vertical="top"/></xf>' +
  '<xf fontId="1" fillId="2" applyFont="1" applyFill="1" applyAlignment="1"><alignment indent="1" horizontal="left"/></xf>' +
  '<xf fontId="1" fillId="2" applyFont="1" applyFill="1" applyAlignment="1"><alignment horizontal="right"/></xf>' +
  '<xf applyAlignment="1"><alignment wrapText="1" vertical="top" horizontal="left" indent="1"/></xf>' +
  [4, 164, 165, 166]
    .map(
      (format) =>
        `<xf numFmtId="${format}" applyNumberFormat="1" applyAlignment="1"><alignment vertical="top"/></xf>`,
    )
    .join('') +
  '</cellXfs></styleSheet>';

function bookOf(sheets: readonly Sheet[]): Uint8Array {
  const each = (line: (sheet: Sheet, number: number) => string): string =>
    sheets.map((sheet, at) => line(sheet, at + 1)).join('');
  const type = (part: string, kind: string): string =>
    `<Override PartName="/${part}" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.${kind}+xml"/>`;
  const filters = each(
    ({ name, rows, widths }, number) =>
      `<definedName name="_xlnm._FilterDatabase" localSheetId="${number - 1}" hidden="1">'${name}'!$A$1:$${letters(widths.length - 1)}$${Math.max(1, rows.length)}</definedName>` +
      `<definedName name="_xlnm.Print_Titles" localSheetId="${number - 1}">'${name}'!$1:$1</definedName>`,
  );
  const parts: [string, string][] = [
    [
      TYPES,
      `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
        `<Default Extension="xml" ContentType="application/xml"/>${type('xl/workbook.xml', 'sheet.main')}${type('xl/styles.xml', 'styles')}` +
        `${each((_, number) => type(`xl/worksheets/sheet${number}.xml`, 'worksheet'))}</Types>`,
    ],
    [
      '_rels/.rels',
      relationships(`<Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/>`),
    ],
    [
      'xl/workbook.xml',
      `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>` +
        `${each(({ name }, number) => `<sheet name="${name}" sheetId="${number}" r:id="rId${number}"/>`)}</sheets><definedNames>${filters}</definedNames></workbook>`,
    ],
    [
      'xl/_rels/workbook.xml.rels',
      relationships(
        each(
          (_, number) =>
            `<Relationship Id="rId${number}" Type="${OFFICE}/worksheet" Target="worksheets/sheet${number}.xml"/>`,
        ) + `<Relationship Id="rId${sheets.length + 1}" Type="${OFFICE}/styles" Target="styles.xml"/>`,
      ),
    ],
    ['xl/styles.xml', STYLES],
    ...sheets.map((sheet, at): [string, string] => [`xl/worksheets/sheet${at + 1}.xml`, sheetXml(sheet)]),
  ];
  const all: Parts = new Map(parts.map(([name, xml]) => [name, bytesOfText(xml)]));
  for (const [at, { chart }] of sheets.entries())
    if (chart !== undefined) addCharts(all, `xl/worksheets/sheet${at + 1}.xml`, [chart]);
  return zipped(all);
}

/** Inches as a tape reads them, yards in eighths; what no tape reads is shown to the nearest mark, other yards as they are. */
function tapeStyle({ measure }: OrderFinding, value: CellOut, unit: Unit): number {
  if (unit !== INCHES || typeof value !== 'number') return FIGURE;
  if (measure === 'length') return Number.isInteger(value * 64) ? TAPE : TAPE_NEAR;
  return measure === 'yardage' && Number.isInteger(value * 8) ? EIGHTHS : FIGURE;
}

export const FINDING_HEADINGS = [
  'order',
  'customer',
  'room',
  'row',
  'weight',
  'kind',
  'column',
  'found',
  'expected',
  'difference',
  'in money',
  'how sure',
  'sentence',
] as const;

export const findingCells = (one: OrderFinding): CellOut[] => [
  one.order,
  one.customer,
  one.room,
  one.row === 0 ? '' : one.row,
  one.weight,
  kindOf(one),
  one.column,
  one.found,
  one.expected,
  one.difference,
  one.money,
  one.sure,
  one.sentence,
];

export interface SummaryLine {
  readonly weight: string;
  readonly kind: string;
  readonly findings: number;
  readonly over: number;
  readonly under: number;
}

/** Rows of a sheet that the chart covers at least. */
const CHART_ROWS = 12;

/** How many findings of each kind there are, beside the summary. */
const chartOf = (sheet: string, summary: readonly SummaryLine[]): DrawnChart => ({
  name: 'Findings_by_kind',
  title: 'Findings by kind',
  kind: 'bar',
  block: areaAt(sheet, 0, 0, summary.length + 1, 2),
  at: areaAt(sheet, 0, 6, Math.max(CHART_ROWS, summary.length + 3), 8),
  cells: [['kind', 'findings'], ...summary.map(({ kind, findings }) => [kind, findings])],
});

export function findingsBook(
  findings: readonly OrderFinding[],
  summary: readonly SummaryLine[],
  about: readonly (readonly CellOut[])[],
  { unit, settled = new Map() }: { readonly unit: Unit; readonly settled?: Settled | undefined },
): Uint8Array {
  return bookOf([
    {
      name: 'Findings',
      widths: [12, 18, 18, 8, 9, 22, 20, 14, 14, 12, 12, 10, 90, 20],
      figures: [3, 7, 8, 9, 10],
      money: [10],
      measured: {
        columns: [7, 8, 9],
        style: (at, value) => tapeStyle(findings[at] as OrderFinding, value, unit),
      },
      rows: [
        [...FINDING_HEADINGS, SETTLED],
        ...findings.map((one) => [...findingCells(one), settled.get(settledKey(findingCells(one))) ?? '']),
      ],
    },
    {
      name: 'Summary',
      widths: [60, 12, 12, 14, 14],
      figures: [1, 3, 4],
      money: [3, 4],
      rows: [
        ['kind', 'findings', 'weight', 'over', 'under'],
        ...summary.map(({ weight, kind, findings: count, over, under }) => [
          kind,
          count,
          weight,
          over,
          under,
        ]),
        [],
        ...about,
      ],
      ...(summary.length > 0 && { chart: chartOf('Summary', summary) }),
    },
  ]);
}
