/** A new workbook with the findings of an audit and their summary; every text is a text cell. */
import { kindOf, type OrderFinding } from '../core/audit-finding';
import type { CellOut } from '../core/fields';
import { zipped, type Parts } from './archive';
import { bytesOfText } from './text';
import { escaped, escapedControls } from './xml';
import { letters } from '../book/address';

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

interface Sheet {
  readonly name: string;
  readonly widths: readonly number[];
  /** The first row is the heading. */
  readonly rows: readonly (readonly CellOut[])[];
}

/** Longer text does not fit a cell. */
const MOST_TEXT = 32_767;

function cellXml(value: CellOut, at: string, style: number): string {
  const styled = style === 0 ? '' : ` s="${style}"`;
  if (value === '') return '';
  if (typeof value === 'number') return `<c r="${at}"${styled}><v>${value}</v></c>`;
  if (typeof value === 'boolean') return `<c r="${at}"${styled} t="b"><v>${value ? 1 : 0}</v></c>`;
  const text = escaped(escapedControls(value.slice(0, MOST_TEXT)));
  return `<c r="${at}"${styled} t="inlineStr"><is><t xml:space="preserve">${text}</t></is></c>`;
}

function sheetXml({ widths, rows }: Sheet): string {
  const columns = widths
    .map((wide, at) => `<col min="${at + 1}" max="${at + 1}" width="${wide}" customWidth="1"/>`)
    .join('');
  const body = rows.map((row, at) => {
    const cells = row.map((value, column) => {
      const style = at === 0 ? 1 : typeof value === 'string' && value.length > 40 ? 2 : 0;
      return cellXml(value, `${letters(column)}${at + 1}`, style);
    });
    return `<row r="${at + 1}">${cells.join('')}</row>`;
  });
  const last = `${letters(widths.length - 1)}${Math.max(1, rows.length)}`;
  return (
    `${HEAD}<worksheet xmlns="${MAIN}"><sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>` +
    '<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>' +
    `<cols>${columns}</cols><sheetData>${body.join('')}</sheetData><autoFilter ref="A1:${last}"/>` +
    '<pageSetup orientation="landscape" fitToHeight="0"/></worksheet>'
  );
}

const STYLES =
  `${HEAD}<styleSheet xmlns="${MAIN}"><fonts count="2"><font><sz val="11"/><name val="Calibri"/></font>` +
  '<font><b/><sz val="11"/><name val="Calibri"/></font></fonts><fills count="3"><fill><patternFill patternType="none"/></fill>' +
  '<fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFE7ECEF"/></patternFill></fill></fills>' +
  '<borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="3"><xf/>' +
  '<xf fontId="1" fillId="2" applyFont="1" applyFill="1"/><xf applyAlignment="1"><alignment wrapText="1" vertical="top"/></xf></cellXfs></styleSheet>';

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
      '[Content_Types].xml',
      `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
        `<Default Extension="xml" ContentType="application/xml"/>${type('xl/workbook.xml', 'sheet.main')}${type('xl/styles.xml', 'styles')}` +
        `${each((_, number) => type(`xl/worksheets/sheet${number}.xml`, 'worksheet'))}</Types>`,
    ],
    [
      '_rels/.rels',
      `${HEAD}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ],
    [
      'xl/workbook.xml',
      `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>` +
        `${each(({ name }, number) => `<sheet name="${name}" sheetId="${number}" r:id="rId${number}"/>`)}</sheets><definedNames>${filters}</definedNames></workbook>`,
    ],
    [
      'xl/_rels/workbook.xml.rels',
      `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">` +
        each(
          (_, number) =>
            `<Relationship Id="rId${number}" Type="${OFFICE}/worksheet" Target="worksheets/sheet${number}.xml"/>`,
        ) +
        `<Relationship Id="rId${sheets.length + 1}" Type="${OFFICE}/styles" Target="styles.xml"/></Relationships>`,
    ],
    ['xl/styles.xml', STYLES],
    ...sheets.map((sheet, at): [string, string] => [`xl/worksheets/sheet${at + 1}.xml`, sheetXml(sheet)]),
  ];
  const all: Parts = new Map(parts.map(([name, xml]) => [name, bytesOfText(xml)]));
  return zipped(all);
}

export const FINDING_HEADINGS = [
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
  readonly money: number;
}

export function findingsBook(
  findings: readonly OrderFinding[],
  summary: readonly SummaryLine[],
  about: readonly (readonly CellOut[])[],
): Uint8Array {
  return bookOf([
    {
      name: 'Findings',
      widths: [8, 9, 22, 20, 14, 14, 12, 12, 10, 90],
      rows: [[...FINDING_HEADINGS], ...findings.map(findingCells)],
    },
    {
      name: 'Summary',
      widths: [34, 12, 12, 14],
      rows: [
        ['kind', 'weight', 'findings', 'in money'],
        ...summary.map(({ weight, kind, findings: count, money }) => [kind, weight, count, money]),
        [],
        ...about,
      ],
    },
  ]);
}
