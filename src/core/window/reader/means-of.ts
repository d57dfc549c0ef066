/** All that one column's cells hold: a treatment's text has the heading and the draw, a room its count. */
import type { OrderKey } from '../meanings';
import type { Choice } from './assign';
import type { Cell } from './cells';
import type { Evidence } from './evidence';
import { countsPairs } from './pairs';
import { isOurs, type MeaningKey } from './meanings';
import { drawOfText, goodsOf, headingOfText, liningOfText, treatmentOf } from './treatment-text';
import {
  clothAndWidth,
  countsInBrackets,
  fullnessIn,
  isTurned,
  leadingCount,
  matchBehind,
  roomAndCount,
} from './values';

export const shareOf = (cells: readonly Cell[], test: (text: string) => boolean): number => {
  const texts = cells.filter((cell): cell is string => typeof cell === 'string');
  return texts.length === 0 ? 0 : texts.filter(test).length / texts.length;
};

/** What the texts of a column hold, as shares of them. */
class Texts {
  constructor(
    readonly cells: readonly Cell[],
    /** Whether another column has a meaning. */
    readonly has: (key: MeaningKey) => boolean,
    /** Whether its heading says that it counts pairs. */
    readonly pairs = false,
  ) {}

  get headed(): boolean {
    return this.share((text) => headingOfText(text) !== undefined) >= 0.3;
  }
  get drawn(): boolean {
    return this.share((text) => treatmentOf(text).draw !== undefined || treatmentOf(text).oneWay) > 0;
  }
  get lined(): boolean {
    return !this.has('lining') && this.share((text) => liningOfText(text) !== undefined) >= 0.3;
  }
  get filled(): boolean {
    return !this.has('fullness') && this.share((text) => fullnessIn(text) !== undefined) >= 0.5;
  }
  get counted(): boolean {
    return !this.has('quantity') && this.share((text) => leadingCount(text) !== undefined) >= 0.6;
  }
  share(test: (text: string) => boolean): number {
    return shareOf(this.cells, test);
  }
}

const countsWindows = ({ cells, share }: Pick<Texts, 'cells' | 'share'>): boolean =>
  countsInBrackets(cells) ||
  share((text) => roomAndCount(text).count !== undefined && goodsOf(text) !== 'other goods') > 0;

/** The keys of which something is true. */
const those = (...keys: readonly (OrderKey | false)[]): OrderKey[] =>
  keys.filter((key): key is OrderKey => key !== false);

/** Meanings whose cells may hold more than them. */
const HOLDS: Partial<Record<MeaningKey, (texts: Texts) => OrderKey[]>> = {
  heading: (texts) =>
    those('heading', texts.drawn && 'draw', texts.filled && 'fullness', texts.lined && 'lining'),
  fabric: (texts) =>
    those(
      'fabric',
      !texts.has('fabricWidth') &&
        texts.share((text) => clothAndWidth(text, 'in') !== undefined) >= 0.8 &&
        'fabricWidth',
    ),
  quantity: (texts) =>
    those(
      'quantity',
      !texts.has('draw') &&
        (texts.pairs || texts.share((text) => drawOfText(text) !== undefined) >= 0.1) &&
        'draw',
    ),
  widths: (texts) =>
    those('widths', !texts.has('railroaded') && texts.share(isTurned) >= 0.3 && 'railroaded'),
  verticalRepeat: (texts) =>
    those(
      'verticalRepeat',
      !texts.has('match') && texts.share((text) => matchBehind(text) !== undefined) >= 0.3 && 'match',
    ),
  draw: (texts) =>
    texts.headed && !texts.has('heading') ? ['heading', 'draw'] : those('draw', texts.counted && 'quantity'),
  item: (texts) => {
    if (!texts.drawn && texts.share((text) => goodsOf(text) === 'window') === 0) return [];
    const means = those(
      texts.headed && !texts.has('heading') && 'heading',
      texts.drawn && !texts.has('draw') && 'draw',
    );
    const [first] = means;
    if (first === undefined) return [];
    return [
      ...means,
      ...those(
        texts.filled && 'fullness',
        texts.lined && 'lining',
        first === 'draw' && texts.counted && 'quantity',
      ),
    ];
  },
  layer: (texts) => those(texts.lined && 'lining'),
  room: (texts) =>
    those(
      'room',
      !texts.has('quantity') &&
        countsWindows({ cells: texts.cells, share: (test) => texts.share(test) }) &&
        'quantity',
    ),
};

/** What a chosen column means; nothing where it is asked. */
export function meansOf(
  choice: Choice,
  own: Evidence,
  has: (key: MeaningKey) => boolean,
  stated = false,
): OrderKey[] {
  const { key } = choice;
  if (key === undefined || choice.sure === 'asked') return [];
  return HOLDS[key]?.(new Texts(own.cells, has, countsPairs(own) && !stated)) ?? (isOurs(key) ? [key] : []);
}
