/** The words of a treatment: headings, draws and the rest, as the trade says them. */

export interface Choice<W extends string> {
  readonly word: W;
  /** One line for the list a person picks from. */
  readonly says: string;
  readonly also?: readonly string[];
}

/** A list of choices, and how written text finds one of them. */
export interface Choices<W extends string> {
  readonly list: readonly Choice<W>[];
  find(text: string): W | undefined;
}

/** Without regard to case, spaces, hyphens or a plural's s. */
export const bare = (text: string): string =>
  text
    .toLowerCase()
    .split(/[^a-z0-9½¼⅛]+/)
    .map((word) => word.replace(/s$/, ''))
    .join('');

export function choices<W extends string>(...list: readonly Choice<W>[]): Choices<W> {
  const byText = new Map<string, W>();
  for (const { word, also = [] } of list) {
    for (const text of [word, ...also]) {
      byText.set(text, word);
      // A dash is no word: bare of it nothing is left.
      if (bare(text) !== '') byText.set(bare(text), word);
    }
  }
  return { list, find: (text) => byText.get(text) ?? byText.get(bare(text)) };
}

export const HEADINGS = choices(
  {
    word: 'pinch',
    says: 'pinch pleat: two or three folds tacked at the base',
    also: ['pinch pleat', 'pinch pleated', 'french pleat'],
  },
  { word: 'goblet', says: 'goblet: a stuffed cup, tacked at the base', also: ['goblet pleat'] },
  { word: 'cartridge', says: 'cartridge: a round filled fold', also: ['cartridge pleat'] },
  { word: 'box', says: 'box pleat: folds turned away from each other', also: ['box pleat', 'box pleated'] },
  {
    word: 'inverted',
    says: 'inverted pleat: folds turned to meet',
    also: ['inverted pleat', 'inverted box pleat', 'inverted box'],
  },
  { word: 'pencil', says: 'pencil pleat: gathered on a corded tape', also: ['pencil pleat'] },
  { word: 'rod pocket', says: 'rod pocket: the rod runs through the heading', also: ['pocket'] },
  { word: 'tab top', says: 'tab top: loops over the rod', also: ['tab', 'tabs'] },
  { word: 'grommet', says: 'grommet: the rod runs through eyelets', also: ['grommet top', 'eyelet'] },
  {
    word: 'wave',
    says: 'wave: snap tape on evenly spaced carriers',
    also: ['wave on snap tape', 'snap tape'],
  },
  { word: 'flat', says: 'flat: no pleats, on rings', also: ['flat on rings', 'flat panel'] },
);
export type Heading =
  | 'pinch'
  | 'goblet'
  | 'cartridge'
  | 'box'
  | 'inverted'
  | 'pencil'
  | 'rod pocket'
  | 'tab top'
  | 'grommet'
  | 'wave'
  | 'flat';

export type Draw =
  'pair' | 'one-way left' | 'one-way right' | 'stationary' | 'stationary cover' | 'one stationary panel';
export const DRAWS = choices<Draw>(
  {
    word: 'pair',
    says: 'two panels, drawn apart from the centre',
    also: ['pr', 'centre', 'center', 'split'],
  },
  { word: 'one-way left', says: 'one panel, stacks on the left', also: ['left', 'one way l', 'owl'] },
  { word: 'one-way right', says: 'one panel, stacks on the right', also: ['right', 'one way r', 'owr'] },
  {
    word: 'stationary',
    says: 'two side panels that do not meet and are not drawn',
    also: ['fixed', 'stationary panel', 'stationary pair', 'side panel'],
  },
  {
    word: 'stationary cover',
    says: 'one panel over the whole rod that is never drawn',
    also: ['full cover', 'fixed cover', 'full stationary'],
  },
  {
    word: 'one stationary panel',
    says: 'one side panel that is not drawn',
    also: ['one side panel', 'single stationary panel', 'stationary single'],
  },
);

/** How many finished pieces hang on the rod. */
export const panelsOf = (draw: Draw): 1 | 2 => (draw === 'pair' || draw === 'stationary' ? 2 : 1);

/** Side panels are ordered by their widths, whatever the rod. */
export const isSidePanels = (draw: Draw | undefined): boolean =>
  draw === 'stationary' || draw === 'one stationary panel';

/** Whether it is drawn open and shut; not said, it is. */
export const isDrawn = (draw: Draw | undefined): boolean =>
  draw === undefined || draw === 'pair' || draw === 'one-way left' || draw === 'one-way right';

export type Mount = 'wall' | 'recess';
export const MOUNTS = choices<Mount>(
  { word: 'wall', says: 'on the wall, with returns to it', also: ['outside', 'outside mount', 'face'] },
  {
    word: 'recess',
    says: 'inside the frame or from wall to wall, without returns',
    also: ['inside', 'inside mount', 'in the recess', 'wall to wall'],
  },
);

/** How a cell of a table is ticked, or is not. */
const YES = ['y', 'yes', 'true', 'x', '✓', '✔', '1', 'ja', 'oui'];
const NO = ['n', 'no', 'false', '-', '–', '—', 'none', '0'];
/** Undefined where a text says neither. */
export function yesOrNo(text: string): boolean | undefined {
  const tick = text.trim().toLowerCase();
  return YES.includes(tick) ? true : NO.includes(tick) ? false : undefined;
}

/** Which way the cloth is laid: turned, its width runs up the drop. */
export type Direction = 'up the roll' | 'railroaded';
export const DIRECTIONS = choices<Direction>(
  {
    word: 'railroaded',
    says: 'the cloth is turned',
    also: [
      ...YES,
      'turned',
      'rr',
      'r/r',
      'railroad',
      'across',
      'horizontal',
      'sideways',
      'cont',
      'continuous',
    ],
  },
  {
    word: 'up the roll',
    says: 'not turned',
    also: [...NO, 'up', 'up roll', 'down', 'upright', 'vertical', 'vert', 'normal', 'std', 'standard'],
  },
);
/** Which way the cloth is laid, where a text says so in more than yes and no. */
export const directionOf = (text: string): Direction | undefined =>
  yesOrNo(text) !== undefined ? undefined : DIRECTIONS.find(text.trim().toLowerCase());

export type MeasuredTo = 'new rod' | 'hung ring' | 'hung rod' | 'track' | 'ceiling';
export const MEASURED_TO = choices<MeasuredTo>(
  { word: 'new rod', says: 'to the middle of a rod still to be hung', also: ['rod to be hung'] },
  { word: 'hung ring', says: 'to the bottom of a ring already hung', also: ['ring'] },
  { word: 'hung rod', says: 'to the middle of a rod already hung', also: ['rod'] },
  { word: 'track', says: "to the track's underside" },
  { word: 'ceiling', says: 'to the ceiling' },
);

export type AtTheFloor = 'clear' | 'kiss' | 'break' | 'puddle';
/** Where a drop ends that stays above the floor: its height is measured from that edge. */
export type Edge = 'sill' | 'apron' | 'radiator' | 'counter';
export type FloorFinish = AtTheFloor | Edge;
export const FLOOR_FINISHES = choices<FloorFinish>(
  { word: 'clear', says: 'hangs clear of the floor', also: ['floating', 'float'] },
  { word: 'kiss', says: 'just touches the floor', also: ['kissing', 'touch', 'touching'] },
  { word: 'break', says: 'breaks on the floor', also: ['breaking'] },
  { word: 'puddle', says: 'lies on the floor in a pool', also: ['puddling', 'puddled', 'pool'] },
  {
    word: 'sill',
    says: 'ends over the sill; measured from the sill',
    also: ['window sill', 'to sill', 'to the sill', 'sill length'],
  },
  {
    word: 'apron',
    says: 'covers the apron below the sill; measured from the sill',
    also: ['below sill', 'below the sill', 'apron length'],
  },
  {
    word: 'radiator',
    says: 'ends over a radiator; measured from its top',
    also: ['above radiator', 'to radiator'],
  },
  {
    word: 'counter',
    says: 'ends over a counter; measured from its top',
    also: ['counter top', 'countertop', 'worktop', 'to counter'],
  },
);

const EDGES: ReadonlySet<FloorFinish> = new Set<Edge>(['sill', 'apron', 'radiator', 'counter']);
export const isEdge = (finish: FloorFinish): finish is Edge => EDGES.has(finish);
/** The edge that the height is measured from. */
export const measuredFrom = (finish: FloorFinish): string =>
  finish === 'apron' ? 'sill' : isEdge(finish) ? finish : 'floor';

export type Match = 'straight' | 'half-drop';
export const MATCHES = choices<Match>(
  { word: 'straight', says: 'the pattern meets at the same height', also: ['straight match', 'set match'] },
  {
    word: 'half-drop',
    says: 'the pattern meets half a repeat lower',
    also: ['drop', 'half drop match', 'drop match'],
  },
);

export type Layer = 'face' | 'sheer' | 'lining' | 'interlining';
export const LAYERS = choices<Layer>(
  { word: 'face', says: 'the face fabric', also: ['face fabric', 'fabric'] },
  { word: 'sheer', says: 'a sheer, a layer of its own', also: ['voile'] },
  { word: 'lining', says: 'the lining or blackout', also: ['blackout'] },
  { word: 'interlining', says: 'the layer between face and lining' },
);

/** What hangs behind a face. */
export type LayerBehind = Exclude<Layer, 'face' | 'sheer'>;

/** What a row of a table is: one layer of the window, each in a row of its own. */
export type WindowLayer = 'drapery' | 'sheer' | 'sheer alone';
export const WINDOW_LAYERS = choices<WindowLayer>(
  { word: 'drapery', says: 'a drapery, lined or not', also: ['drape', 'curtain', 'face'] },
  { word: 'sheer', says: 'a sheer behind a drapery: never lined', also: ['voile', 'under curtain'] },
  { word: 'sheer alone', says: 'a sheer without a drapery: never lined', also: ['voile alone'] },
);

export type Lining = 'unlined' | 'lined' | 'interlined' | 'blackout';
export const LININGS = choices<Lining>(
  { word: 'unlined', says: 'face fabric alone', also: ['none', 'no', 'no lining'] },
  { word: 'lined', says: 'with a lining', also: ['lining', 'yes', 'standard'] },
  { word: 'interlined', says: 'with interlining and lining', also: ['interlining'] },
  { word: 'blackout', says: 'with a blackout lining', also: ['blackout lined', 'blackout lining', 'bo'] },
);
