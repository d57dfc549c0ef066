/** What a column of a table may mean: a measurement or choice, an ordered figure, or a fact beside them. */
import type { Kind } from '../cell/fields';
import { COLUMN_KEYS, WINDOW_COLUMNS, type ColumnKey } from './columns';
import { FACTS, type FactKey } from './facts';
import { FIGURES, type FigureKey } from './figures';
import type { WindowFigure } from './figure';

export type OrderKey = ColumnKey | FigureKey | FactKey;
export type MeaningGroup = 'window' | 'figure' | 'fact';

export interface Meaning {
  readonly key: OrderKey;
  readonly group: MeaningGroup;
  readonly heading: string;
  readonly also: readonly string[];
  readonly kind: Kind<unknown>;
}

/** Every figure of an order that can be worked out again; two of them are window columns as well. */
export const ORDERED_FIGURES = FIGURES.filter(
  (figure): figure is WindowFigure & { readonly key: FigureKey } => figure.ordered === true,
);
export const FIGURE_KEYS: readonly FigureKey[] = ORDERED_FIGURES.map(({ key }) => key);

const BY_KEY = new Map<FigureKey, WindowFigure>(ORDERED_FIGURES.map((figure) => [figure.key, figure]));
export const orderedFigure = (key: FigureKey): WindowFigure => BY_KEY.get(key) as WindowFigure;

export const MEANINGS: readonly Meaning[] = [
  ...COLUMN_KEYS.map((key): Meaning => {
    const { heading, also, field } = WINDOW_COLUMNS[key];
    return { key, group: 'window', heading, also, kind: field.kind as Kind<unknown> };
  }),
  ...ORDERED_FIGURES.filter(({ key }) => !(key in WINDOW_COLUMNS)).map((figure): Meaning => {
    const { key, heading, also } = figure;
    return { key, group: 'figure', heading, also, kind: figure.kind as Kind<unknown> };
  }),
  ...(Object.keys(FACTS) as FactKey[]).map((key): Meaning => {
    const { heading, also, kind } = FACTS[key];
    return { key, group: 'fact', heading, also, kind: kind as Kind<unknown> };
  }),
];

const HEADING_OF = new Map(MEANINGS.map(({ key, heading }) => [key, heading]));
export const usualHeading = (key: OrderKey): string => HEADING_OF.get(key) ?? key;
