/**
 * The columns of a window row: what was measured and chosen. A function's parameter of the same
 * key takes the same value, so a sheet's column feeds a formula by its key.
 */
import {
  choiceKind,
  optional,
  readField,
  TEXT,
  type CellIn,
  type Field,
  type Kind,
  type Place,
} from '../cell/fields';
import { bayIn, OPENING_WIDTH } from '../cell/opening';
import type { Length } from '../exact/length';
import { AREAL_WEIGHT, FULLNESS, WIDTH_COUNT, WINDOWS_OF_ROW } from '../cell/figure-kinds';
import { ALLOWANCE, REPEAT, SIZE } from '../cell/length-kinds';
import { WINDOW_HANGS_ON } from '../cell/ways';
import {
  DIRECTIONS,
  DRAWS,
  FLOOR_FINISHES,
  HEADINGS,
  LININGS,
  MATCHES,
  MEASURED_TO,
  MOUNTS,
  WINDOW_LAYERS,
} from '../cell/treatment';

export interface Column<T> {
  /** As the column is headed in our own sheets. */
  readonly heading: string;
  /** Other plain words and abbreviations for the same thing. */
  readonly also: readonly string[];
  readonly field: Field<T | undefined>;
}

const column = <T>(heading: string, also: readonly string[], kind: Kind<T>, says: string): Column<T> => ({
  heading,
  also,
  field: optional(kind, says),
});

export const WINDOW_COLUMNS = {
  room: column(
    'room',
    ['room no', 'room number', 'location', 'window', 'where', 'mark', 'tag'],
    TEXT,
    'where the window is',
  ),
  openingWidth: column(
    'inside width',
    ['opening', 'opening width', 'width', 'w', 'ow', 'inside w', 'window width', 'iw'],
    OPENING_WIDTH,
    'the opening, measured inside the frame; a bay like 30 + 60 + 30',
  ),
  leftExtension: column(
    'left extension',
    ['left ext', 'ext l', 'l ext', 'left'],
    ALLOWANCE,
    'past the opening on the left',
  ),
  rightExtension: column(
    'right extension',
    ['right ext', 'ext r', 'r ext', 'right'],
    ALLOWANCE,
    'past the opening on the right',
  ),
  rodWidth: column(
    'rod width',
    ['rod', 'rod face', 'rw', 'rod w', 'track width', 'track'],
    SIZE,
    'the rod, where it is known',
  ),
  measured: column(
    'measured height',
    ['measured', 'height', 'h', 'ht', 'floor to rod', 'measured left', 'rod height', 'high'],
    SIZE,
    'floor to the point measured',
  ),
  measuredCentre: column(
    'measured centre',
    ['measured center', 'centre height', 'center height'],
    SIZE,
    'the same at the centre',
  ),
  measuredRight: column('measured right', ['right height'], SIZE, 'the same at the right'),
  measuredTo: column(
    'measured to',
    ['to', 'point measured'],
    choiceKind('a point measured to', MEASURED_TO),
    'the point measured to',
  ),
  floorFinish: column(
    'floor finish',
    ['floor', 'at the floor', 'hem finish'],
    choiceKind('a floor finish', FLOOR_FINISHES),
    'how it meets the floor, or the edge it ends at',
  ),
  finishedDrop: column(
    'finished drop',
    ['drop', 'finished length', 'fl', 'fin length', 'fin drop', 'length', 'finish length', 'fd'],
    SIZE,
    'top edge to bottom edge, where it is known',
  ),
  heading: column(
    'heading',
    ['style', 'heading style', 'pleat style', 'hdg'],
    choiceKind('a heading', HEADINGS),
    'the heading',
  ),
  windowLayer: column(
    'layer',
    ['window layer', 'drapery or sheer', 'face or sheer'],
    choiceKind('a layer', WINDOW_LAYERS),
    'drapery, or a sheer: a layer of its own, never lined',
  ),
  draw: column(
    'draw',
    ['pair or panel', 'opens', 'control', 'operation', 'panels'],
    choiceKind('a draw', DRAWS),
    'how it draws',
  ),
  hangOn: column(
    'hang on',
    ['hangs on', 'hung on', 'rings or track', 'rod or track'],
    choiceKind('what it hangs on', WINDOW_HANGS_ON),
    'rings, track, or none where no hardware is ordered',
  ),
  widthsEach: column(
    'widths each',
    ['widths of each side panel', 'widths each side'],
    WIDTH_COUNT,
    'widths of each side panel that is not drawn',
  ),
  mount: column(
    'mount',
    ['mounting', 'inside or outside', 'inside or outside mount'],
    choiceKind('a mount', MOUNTS),
    'on the wall (with returns) or in a recess (without)',
  ),
  projection: column(
    'projection',
    ['rod projection', 'bracket projection', 'proj'],
    SIZE,
    'the middle of this rod from the wall: its return is this and a little more',
  ),
  return: column('return', ['ret', 'returns', 'rtn'], ALLOWANCE, 'rod to wall, each outer side'),
  overlap: column('overlap', ['olap', 'lap'], ALLOWANCE, 'given to each leading edge'),
  fullness: column('fullness', ['full', 'fullness asked'], FULLNESS, 'flat to finished'),
  fabric: column(
    'fabric',
    ['face fabric', 'cloth', 'material', 'pattern', 'fabric name', 'colour', 'color'],
    TEXT,
    'the face fabric',
  ),
  fabricWidth: column(
    'fabric width',
    [
      'fab w',
      'fabric w',
      'cloth width',
      'bolt',
      'bolt width',
      'goods',
      'goods width',
      'goods w',
      'fw',
      'fab width',
    ],
    SIZE,
    'the bolt’s width',
  ),
  verticalRepeat: column(
    'vertical repeat',
    ['rep', 'repeat', 'v rep', 'vr', 'vert repeat', 'v repeat', 'pattern repeat', 'fabric repeat'],
    REPEAT,
    'the pattern’s height',
  ),
  horizontalRepeat: column(
    'horizontal repeat',
    ['h rep', 'hr', 'horiz repeat', 'h repeat'],
    REPEAT,
    'the pattern’s width',
  ),
  match: column('match', ['pattern match'], choiceKind('a match', MATCHES), 'how the pattern meets'),
  railroaded: column(
    'railroaded',
    ['cloth direction', 'direction', 'turned', 'rr'],
    choiceKind('railroaded or up the roll', DIRECTIONS),
    'whether the cloth is turned, its width up the drop',
  ),
  lining: column(
    'lining',
    ['lined', 'lining type'],
    choiceKind('a lining', LININGS),
    'unlined, lined, interlined or blackout',
  ),
  liningWidth: column('lining width', ['lin w', 'lining w', 'lining goods'], SIZE, 'the lining’s bolt width'),
  arealWeight: column(
    'cloth weight',
    ['areal weight', 'weight', 'oz/yd²', 'g/m²', 'gsm'],
    AREAL_WEIGHT,
    'of the face fabric, oz/yd² or g/m²',
  ),
  quantity: column(
    'quantity',
    ['qty', 'count', 'no of windows', 'number of windows', 'windows', 'pcs', 'how many'],
    WINDOWS_OF_ROW,
    'windows alike',
  ),
} as const;

export type ColumnKey = keyof typeof WINDOW_COLUMNS;
export type Window = {
  readonly [K in ColumnKey]?: (typeof WINDOW_COLUMNS)[K] extends Column<infer T> ? T | undefined : never;
} & {
  /** The straight parts of a bay, whose sum is the inside width. */
  readonly openingParts?: readonly Length[] | undefined;
};
export const COLUMN_KEYS = Object.keys(WINDOW_COLUMNS) as readonly ColumnKey[];

/**
 * A heading's letters without a unit in brackets: "Width (in)" is "width". Unlike a choice's words
 * it keeps its plural, since "widths" are no width.
 */
export const headingWords = (text: string): string =>
  text
    .replace(/[([{][^)\]}]*[)\]}]/g, ' ')
    .toLowerCase()
    .replace(/[^a-z0-9²/]+/g, '');

/** Reads one cell into a window, of a bay its parts beside their sum. */
export function readInto(
  window: Partial<Record<ColumnKey | 'openingParts', unknown>>,
  key: ColumnKey,
  raw: CellIn,
  place: Place,
): void {
  window[key] = readField(WINDOW_COLUMNS[key].field as Field<unknown>, raw, place);
  const parts = key === 'openingWidth' ? bayIn(raw, place) : undefined;
  if (parts !== undefined) window.openingParts = parts;
}
