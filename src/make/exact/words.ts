/** The trade's words as a cell has them, and what each heading is, read from the trade alone. */
export const HEADINGS = [
  'pinch',
  'goblet',
  'cartridge',
  'box',
  'inverted',
  'pencil',
  'rod pocket',
  'tab top',
  'grommet',
  'wave',
  'flat',
] as const;
export type Heading = (typeof HEADINGS)[number];

export const DRAWS = ['pair', 'one-way left', 'one-way right', 'stationary'] as const;
export type Draw = (typeof DRAWS)[number];

export const isOneWay = (draw: Draw): boolean => draw === 'one-way left' || draw === 'one-way right';

/** They hang on rings unless the house puts them on a track: pinch and its like, and those that follow the same logic. */
export const ON_RINGS: readonly Heading[] = [
  'pinch',
  'goblet',
  'cartridge',
  'flat',
  'box',
  'inverted',
  'pencil',
];
/** Their rod runs through the cloth or its tabs: nothing crosses. */
export const ON_THE_ROD: readonly Heading[] = ['grommet', 'rod pocket', 'tab top'];
export const PLEATED: readonly Heading[] = ['pinch', 'goblet', 'cartridge', 'box', 'inverted'];
/** Each pleat of these shows a face of its own between the spaces. */
export const FACED: readonly Heading[] = ['box', 'inverted'];
