/** Frozen panes and the printed page. */
import { found, keptAll, kind, thing, type Kind } from '../kind';
import type { Sheet } from '../model';
import { MAX_COLUMNS, MAX_ROWS, type Area } from '../address';
import { rangeOf, resolve } from './range';

export const FREEZE_PANES: Kind<Sheet> = kind<Sheet>('WorksheetFreezePanes', {
  methods: {
    FreezeRows(sheet, [count]) {
      sheet.frozen = { row: 0, column: 0, rows: Number(count ?? 1), columns: MAX_COLUMNS };
    },
    FreezeColumns(sheet, [count]) {
      sheet.frozen = { row: 0, column: 0, rows: MAX_ROWS, columns: Number(count ?? 1) };
    },
    FreezeAt(sheet, [range], world) {
      const { area } = resolve(world, sheet, range);
      sheet.frozen = { row: 0, column: 0, rows: area.row + area.rows, columns: area.column + area.columns };
    },
    Unfreeze(sheet) {
      sheet.frozen = undefined;
    },
    GetLocation: (sheet) => rangeOf(sheet, found(sheet.frozen)),
  },
});

interface Break {
  readonly sheet: Sheet;
  readonly row: number;
}
const PAGE_BREAK = kind<Break>('PageBreak', {
  scalars: { ColumnIndex: { get: () => 0 }, RowIndex: { get: ({ row }) => row } },
});
const breaksOn = (sheet: Sheet): number[] => (sheet.page['breaks'] ??= []) as number[];
export const PAGE_BREAKS: Kind<Sheet> = kind<Sheet>('PageBreakCollection', {
  items: (sheet) => breaksOn(sheet).map((row) => thing(PAGE_BREAK, { sheet, row })),
  methods: {
    /** A break stands above the first row of a range. */
    Add(sheet, [range], world) {
      const { row } = resolve(world, sheet, range).area;
      breaksOn(sheet).push(row);
      return thing(PAGE_BREAK, { sheet, row });
    },
    RemovePageBreaks(sheet) {
      breaksOn(sheet).length = 0;
    },
  },
});

const page = (sheet: Sheet): Record<string, unknown> => sheet.page;
const printed = (sheet: Sheet, what: string) => rangeOf(sheet, found(sheet.page[what] as Area | undefined));

const FOOTER_PARTS = {
  LeftHeader: '',
  CenterHeader: '',
  RightHeader: '',
  LeftFooter: '',
  CenterFooter: '',
  RightFooter: '',
};
const HEADER_FOOTER = kind<Sheet>('HeaderFooter', { scalars: keptAll(page, FOOTER_PARTS) });
const HEADERS_FOOTERS = kind<Sheet>('HeaderFooterGroup', {
  scalars: keptAll(page, { State: 'Default', UseSheetMargins: true, UseSheetScale: true }),
  parts: { DefaultForAllPages: (sheet) => thing(HEADER_FOOTER, sheet) },
});

export const PAGE_LAYOUT: Kind<Sheet> = kind<Sheet>('PageLayout', {
  scalars: keptAll(page, {
    Orientation: 'Portrait',
    PaperSize: 'Letter',
    Zoom: { scale: 100 },
    CenterHorizontally: false,
    CenterVertically: false,
    PrintGridlines: false,
    PrintHeadings: false,
    PrintOrder: 'DownThenOver',
    BlackAndWhite: false,
    LeftMargin: 50.4,
    RightMargin: 50.4,
    TopMargin: 54,
    BottomMargin: 54,
    HeaderMargin: 21.6,
    FooterMargin: 21.6,
  }),
  parts: { HeadersFooters: (sheet) => thing(HEADERS_FOOTERS, sheet) },
  methods: {
    SetPrintArea(sheet, [range], world) {
      sheet.page['printArea'] = resolve(world, sheet, range).area;
    },
    SetPrintTitleRows(sheet, [range], world) {
      sheet.page['titleRows'] = resolve(world, sheet, range).area;
    },
    SetPrintTitleColumns(sheet, [range], world) {
      sheet.page['titleColumns'] = resolve(world, sheet, range).area;
    },
    GetPrintArea: (sheet) => printed(sheet, 'printArea'),
    GetPrintTitleRows: (sheet) => printed(sheet, 'titleRows'),
    GetPrintTitleColumns: (sheet) => printed(sheet, 'titleColumns'),
    SetPrintMargins(sheet, [unit, margins]) {
      const points = unit === 'Inches' ? 72 : unit === 'Centimeters' ? 72 / 2.54 : 1;
      for (const [side, size] of Object.entries(margins as Record<string, number>)) {
        sheet.page[`${side.charAt(0).toUpperCase()}${side.slice(1)}Margin`] = size * points;
      }
    },
  },
});
