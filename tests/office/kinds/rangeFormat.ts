/** How a range looks: fill, font, borders, alignment, widths, locked or not. */
import type { Area } from '../address';
import { found, kind, thing, type Kind, type Scalar } from '../kind';
import { setStyle, styleAt, type Sheet } from '../model';
import type { World } from '../world';
import type { RangeModel } from './range';

/** One value where all cells agree, null where they differ: Excel's way of answering for a range. */
function agreed({ sheet, area }: RangeModel, key: string, initial: unknown): unknown {
  const rows = Math.min(area.rows, 1_000);
  let answer: unknown;
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < Math.min(area.columns, 256); column += 1) {
      const value = styleAt(sheet, area.row + row, area.column + column, key) ?? initial;
      if (row === 0 && column === 0) answer = value;
      else if (JSON.stringify(value) !== JSON.stringify(answer)) return null;
    }
  }
  return answer;
}

/** A property kept with each cell. */
export const styled = (
  key: string,
  initial: unknown,
  normal: (value: unknown) => unknown = (value) => value,
): Scalar<RangeModel> => ({
  get: (range) => agreed(range, key, initial),
  set(range, value, world) {
    mayFormat(range, world);
    setStyle(range.sheet, range.area, key, normal(value));
  },
});

function mayFormat({ sheet }: RangeModel, world: World): void {
  world.mayChange(sheet, 'allowFormatCells');
}

const NAMED: Readonly<Record<string, string>> = {
  black: '#000000',
  white: '#FFFFFF',
  red: '#FF0000',
  yellow: '#FFFF00',
  green: '#008000',
  blue: '#0000FF',
  gray: '#808080',
};
const colour = (value: unknown): unknown => {
  const text = String(value);
  return NAMED[text.toLowerCase()] ?? text.toUpperCase();
};

const allStyled = (
  prefix: string,
  initials: Readonly<Record<string, unknown>>,
): Record<string, Scalar<RangeModel>> =>
  Object.fromEntries(
    Object.entries(initials).map(([name, initial]) => [
      name,
      styled(prefix + name, initial, name === 'Color' ? colour : undefined),
    ]),
  );

const FILL = kind<RangeModel>('RangeFill', {
  scalars: allStyled('Fill.', { Color: '#FFFFFF', Pattern: null, PatternColor: '', TintAndShade: 0 }),
  methods: {
    Clear(range, _, world) {
      mayFormat(range, world);
      setStyle(range.sheet, range.area, 'Fill.Color', '#FFFFFF');
    },
  },
});

const FONT = kind<RangeModel>('RangeFont', {
  scalars: allStyled('Font.', {
    Name: 'Calibri',
    Size: 11,
    Color: '#000000',
    Bold: false,
    Italic: false,
    Underline: 'None',
    Strikethrough: false,
    TintAndShade: 0,
  }),
});

const PROTECTION = kind<RangeModel>('FormatProtection', {
  scalars: {
    Locked: styled('Protection.Locked', true),
    FormulaHidden: styled('Protection.FormulaHidden', false),
  },
});

interface BorderModel {
  readonly range: RangeModel;
  readonly side: string;
}

/** Where a range's border lies: which of its cells, and which side of them. */
function edge({ area }: RangeModel, side: string): { area: Area; key: string } | undefined {
  const { row, column, rows, columns } = area;
  switch (side) {
    case 'EdgeTop':
      return { area: { ...area, rows: 1 }, key: 'Top' };
    case 'EdgeBottom':
      return { area: { ...area, row: row + rows - 1, rows: 1 }, key: 'Bottom' };
    case 'EdgeLeft':
      return { area: { ...area, columns: 1 }, key: 'Left' };
    case 'EdgeRight':
      return { area: { ...area, column: column + columns - 1, columns: 1 }, key: 'Right' };
    case 'InsideHorizontal':
      return rows < 2 ? undefined : { area: { ...area, row: row + 1, rows: rows - 1 }, key: 'Top' };
    case 'InsideVertical':
      return columns < 2
        ? undefined
        : { area: { ...area, column: column + 1, columns: columns - 1 }, key: 'Left' };
    default:
      return { area, key: side };
  }
}

const line = (name: string, initial: unknown): Scalar<BorderModel> => ({
  get({ range, side }) {
    const at = edge(range, side);
    return at === undefined
      ? initial
      : agreed({ sheet: range.sheet, area: at.area }, `Border.${at.key}.${name}`, initial);
  },
  set({ range, side }, value, world) {
    mayFormat(range, world);
    const at = edge(range, side);
    if (at === undefined) return;
    setStyle(range.sheet, at.area, `Border.${at.key}.${name}`, value);
    const style = `Border.${at.key}.Style`;
    if (name !== 'Style' && agreed({ sheet: range.sheet, area: at.area }, style, 'None') === 'None')
      setStyle(range.sheet, at.area, style, 'Continuous');
  },
});

const BORDER = kind<BorderModel>('RangeBorder', {
  scalars: {
    SideIndex: { get: ({ side }) => side },
    Style: line('Style', 'None'),
    Weight: line('Weight', 'Thin'),
    Color: line('Color', '#000000'),
  },
});

const SIDES = [
  'EdgeTop',
  'EdgeBottom',
  'EdgeLeft',
  'EdgeRight',
  'InsideVertical',
  'InsideHorizontal',
  'DiagonalDown',
  'DiagonalUp',
];
const border = (range: RangeModel, side: unknown) =>
  thing(BORDER, { range, side: found(SIDES.find((one) => one === side)) });

const BORDERS: Kind<RangeModel> = kind<RangeModel>('RangeBorderCollection', {
  scalars: { Count: { get: () => SIDES.length } },
  items: (range) => SIDES.map((side) => border(range, side)),
  find: (range, side) => border(range, side),
  methods: {
    GetItem: (range, [side]) => border(range, side),
    GetItemAt: (range, [at]) => border(range, SIDES[Number(at)]),
  },
});

type Sizes = 'columnWidths' | 'rowHeights';
const size = (
  which: Sizes,
  first: 'row' | 'column',
  count: 'rows' | 'columns',
  initial: number,
): Scalar<RangeModel> => ({
  get({ sheet, area }) {
    const sizes = new Set(
      Array.from(
        { length: Math.min(area[count], 5_000) },
        (_, at) => sheet[which].get(area[first] + at) ?? initial,
      ),
    );
    return sizes.size === 1 ? [...sizes][0] : null;
  },
  set({ sheet, area }, value, world) {
    world.mayChange(sheet, which === 'columnWidths' ? 'allowFormatColumns' : 'allowFormatRows');
    for (let at = area[first]; at < area[first] + area[count]; at += 1) sheet[which].set(at, Number(value));
  },
});

/** Wide enough for the longest entry: about 5.3 points a character. */
function fitColumns(sheet: Sheet, area: Area): void {
  for (let column = area.column; column < area.column + area.columns; column += 1) {
    let longest = 0;
    for (const [key, cell] of sheet.cells) {
      if (key % 16_384 === column) longest = Math.max(longest, String(cell.value).length);
    }
    if (longest > 0) sheet.columnWidths.set(column, (longest + 1) * 5.3);
  }
}

export const FORMAT: Kind<RangeModel> = kind<RangeModel>('RangeFormat', {
  scalars: {
    WrapText: styled('WrapText', false),
    HorizontalAlignment: styled('HorizontalAlignment', 'General'),
    VerticalAlignment: styled('VerticalAlignment', 'Bottom'),
    IndentLevel: styled('IndentLevel', 0),
    ShrinkToFit: styled('ShrinkToFit', false),
    TextOrientation: styled('TextOrientation', 0),
    ColumnWidth: size('columnWidths', 'column', 'columns', 48),
    RowHeight: size('rowHeights', 'row', 'rows', 15),
  },
  parts: {
    Fill: (range) => thing(FILL, range),
    Font: (range) => thing(FONT, range),
    Borders: (range) => thing(BORDERS, range),
    Protection: (range) => thing(PROTECTION, range),
  },
  methods: {
    AutofitColumns: ({ sheet, area }, _, world) => {
      world.mayChange(sheet, 'allowFormatColumns');
      fitColumns(sheet, area);
    },
    AutofitRows: ({ sheet }, _, world) => {
      world.mayChange(sheet, 'allowFormatRows');
    },
  },
});
