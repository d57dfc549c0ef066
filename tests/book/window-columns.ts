import type { WantedColumn } from '../../src/book/columns';
import {
  ALLOWANCE,
  choiceKind,
  FULLNESS,
  optional,
  PIECES,
  required,
  SIZE,
  TEXT,
} from '../../src/core/fields';
import { DRAWS, HEADINGS, LININGS, MATCHES } from '../../src/core/treatment';

const column = (key: string, heading: string, field: unknown, ...also: string[]): WantedColumn =>
  ({ key, heading, field, also, says: heading }) as WantedColumn;

/** A list of our own for the matcher's tests, so that they do not move with the product's list. */
export const WANTED: readonly WantedColumn[] = [
  column('room', 'room', optional(TEXT, ''), 'location', 'area', 'space', 'room number'),
  column('window', 'window', optional(TEXT, ''), 'mark', 'tag', 'item', 'window number'),
  column('quantity', 'quantity', optional(PIECES, ''), 'count', 'number', 'how many', 'number of windows'),
  column(
    'openingWidth',
    'opening width',
    required(SIZE, ''),
    'width',
    'inside width',
    'opening',
    'window width',
  ),
  column(
    'leftExtension',
    'left extension',
    optional(ALLOWANCE, ''),
    'left',
    'extension left',
    'stackback left',
  ),
  column('rightExtension', 'right extension', optional(ALLOWANCE, ''), 'right', 'extension right'),
  column(
    'measured',
    'measured drop',
    required(SIZE, ''),
    'measured',
    'height',
    'drop',
    'length',
    'floor to rod',
    'finished length',
  ),
  column(
    'heading',
    'heading',
    required(choiceKind('a heading', HEADINGS), ''),
    'style',
    'heading style',
    'top',
    'pleat',
    'pleat style',
    'type',
  ),
  column(
    'draw',
    'draw',
    optional(choiceKind('a draw', DRAWS), ''),
    'pair or panel',
    'operation',
    'opens',
    'stack',
  ),
  column('return', 'return', optional(ALLOWANCE, ''), 'returns', 'projection'),
  column('overlap', 'overlap', optional(ALLOWANCE, '')),
  column('fabricWidth', 'fabric width', optional(SIZE, ''), 'bolt width', 'goods width'),
  column(
    'verticalRepeat',
    'vertical repeat',
    optional(ALLOWANCE, ''),
    'repeat',
    'pattern repeat',
    'repeat height',
  ),
  column('horizontalRepeat', 'horizontal repeat', optional(ALLOWANCE, ''), 'repeat width'),
  column('match', 'match', optional(choiceKind('a match', MATCHES), ''), 'pattern match'),
  column('fullness', 'fullness', optional(FULLNESS, ''), 'gather'),
  column('lining', 'lining', optional(choiceKind('a lining', LININGS), ''), 'lined'),
  column('fabric', 'fabric', optional(TEXT, ''), 'face fabric', 'fabric name', 'cloth', 'pattern'),
];
