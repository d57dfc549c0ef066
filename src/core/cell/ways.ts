/** The ways a house may do a thing: the words of its rules. */
import type { Rounding } from '../exact/money';
import { choices } from './treatment';
import type { UnitName } from '../exact/unit';

export const UNIT_NAMES = choices<UnitName>(
  { word: 'inches', says: 'inches and yards', also: ['inch', 'in', 'imperial'] },
  {
    word: 'centimetres',
    says: 'centimetres and metres',
    also: ['centimetre', 'centimeter', 'centimeters', 'cm', 'metric'],
  },
);

export type YesNo = 'yes' | 'no';
export const YES_NO = choices<YesNo>(
  { word: 'yes', says: 'yes', also: ['true', 'y'] },
  { word: 'no', says: 'no', also: ['false', 'n'] },
);

export type WidthsRounding =
  | 'whole per panel'
  | 'half per panel'
  | 'whole per pair'
  | 'nearest'
  | 'nearest half down'
  | 'nearest per panel';
export const WIDTHS_ROUNDINGS = choices<WidthsRounding>(
  {
    word: 'whole per panel',
    says: 'each panel up to whole widths',
    also: ['up to whole per panel', 'up to whole'],
  },
  {
    word: 'half per panel',
    says: 'each panel up to half widths',
    also: ['up to half per panel', 'up to half'],
  },
  {
    word: 'whole per pair',
    says: 'the treatment up to whole widths, shared by its panels: five widths are two panels of 2½',
    also: ['up to whole per pair'],
  },
  { word: 'nearest', says: 'the treatment to the nearest whole width, which may deliver less fullness' },
  {
    word: 'nearest half down',
    says: 'the same, but just half a width goes down',
    also: ['nearest, half down', 'half down'],
  },
  {
    word: 'nearest per panel',
    says: 'each panel to its nearest whole width, which may deliver less fullness',
    also: ['nearest whole per panel'],
  },
);

export type LiningWidths = 'by its own width' | 'as the face';
export const LINING_WIDTHS = choices<LiningWidths>(
  {
    word: 'by its own width',
    says: 'as many as line the face, on the lining’s own bolt',
    also: ['own width'],
  },
  { word: 'as the face', says: 'as many as the face has, whatever the bolt', also: ['face', 'same as face'] },
);

export type HalfCharge = 'as a half' | 'as a whole';
export const HALF_CHARGES = choices<HalfCharge>(
  { word: 'as a half', says: 'a panel of 2½ widths is charged as 2½', also: ['half', 'a half'] },
  { word: 'as a whole', says: 'a panel of 2½ widths is charged as 3', also: ['whole', 'a whole'] },
);

export type LaborBy = 'width' | 'panel' | 'window';
export const LABOR_BYS = choices<LaborBy>(
  { word: 'width', says: 'so much a width of the treatment', also: ['widths', 'a width', 'per width'] },
  { word: 'panel', says: 'so much a panel, two to a pair', also: ['panels', 'a panel', 'per panel'] },
  { word: 'window', says: 'so much a window', also: ['windows', 'a window', 'per window'] },
);

export type FullnessBasis = 'finished width' | 'rod width';
export const FULLNESS_BASES = choices<FullnessBasis>(
  { word: 'finished width', says: 'fullness on rod, returns and overlaps' },
  {
    word: 'rod width',
    says: 'fullness on the rod alone; returns and overlaps are added flat',
    also: ['rod', 'rod alone'],
  },
);

export type RepeatRule =
  | 'every cut up'
  | 'first cut exact'
  | 'one repeat each'
  | 'one repeat with every length'
  | 'half-drop alternating';
export const REPEAT_RULES = choices<RepeatRule>(
  { word: 'every cut up', says: 'every cut up to the next whole repeat' },
  {
    word: 'first cut exact',
    says: 'the first cut as it is, the others up to the next whole repeat',
    also: ['first exact'],
  },
  {
    word: 'one repeat each',
    says: 'every cut as it is, and one full repeat for each further length',
    also: ['one full repeat per further length'],
  },
  {
    word: 'one repeat with every length',
    says: 'every cut as it is, and one full repeat with it, the first too',
    also: ['one full repeat with every length', 'one repeat with each length'],
  },
  {
    word: 'half-drop alternating',
    says: 'every pattern is cut as a half-drop, every cut up',
    also: ['half drop'],
  },
);

export type PleatsBy = 'width' | 'space' | 'take-up';
export const PLEATS_BY = choices<PleatsBy>(
  { word: 'width', says: 'so many pleats to each width of cloth', also: ['by width', 'a width'] },
  { word: 'space', says: 'by the space between them', also: ['by space', 'spacing'] },
  {
    word: 'take-up',
    says: 'by the cloth each takes up',
    also: ['by take-up', 'takeup', 'cloth'],
  },
);

export type HalfDropStarts = 'each panel alike' | 'run on';
export const HALF_DROP_STARTS = choices<HalfDropStarts>(
  {
    word: 'each panel alike',
    says: 'A, B, A … from the leading edge of each panel',
    also: ['panels alike', 'by panel', 'alike'],
  },
  {
    word: 'run on',
    says: 'A, B, A … on through all panels of a window; a width shared by two is cut half a repeat longer',
    also: ['running on', 'runs on'],
  },
);

export type PatternStart = 'nothing' | 'one repeat' | 'one yard';
export const PATTERN_STARTS = choices<PatternStart>(
  { word: 'nothing', says: 'cutting begins at the end of the roll', also: ['no', 'none'] },
  {
    word: 'one repeat',
    says: 'one repeat more, to reach the pattern’s start',
    also: ['repeat', 'one', 'a repeat'],
  },
  {
    word: 'one yard',
    says: 'one yard more, to reach the pattern’s start',
    also: ['yard', 'a yard', '1 yd'],
  },
);

export type PatternFrom = 'top' | 'hem';
export const PATTERN_FROM = choices<PatternFrom>(
  {
    word: 'top',
    says: 'the full motif lands at the finished top edge',
    also: ['the top', 'heading', 'top edge'],
  },
  {
    word: 'hem',
    says: 'the full motif lands at the finished bottom edge',
    also: ['the hem', 'bottom', 'bottom edge', 'floor'],
  },
);

export type HangsOn = 'rings' | 'track';
export const HANGS_ON = choices<HangsOn>(
  { word: 'rings', says: 'on rings on a rod' },
  { word: 'track', says: 'on carriers in a track' },
);

export type WindowHangsOn = HangsOn | 'none';
export const WINDOW_HANGS_ON = choices<WindowHangsOn>(
  ...HANGS_ON.list.map(({ word, says, also = [] }) => ({
    word: word as HangsOn,
    says,
    also: [...also, word === 'rings' ? 'rod' : 'carriers', word === 'rings' ? 'pole' : 'rail'],
  })),
  { word: 'none', says: 'no hardware is ordered', also: ['nothing', 'existing', 'by others'] },
);

export type ReturnEnds = 'both ends' | 'one end';
export const RETURN_ENDS = choices<ReturnEnds>(
  { word: 'both ends', says: 'a return at each end of the rod', also: ['two', '2', 'both'] },
  { word: 'one end', says: 'a return at the stack end only', also: ['one', '1'] },
);

export type BottomEdge = 'hemmed' | 'finished';
export const BOTTOM_EDGES = choices<BottomEdge>(
  { word: 'hemmed', says: 'hemmed in the workroom', also: ['hem', 'made', 'plain'] },
  {
    word: 'finished',
    says: 'finished by the mill: turned cloth needs no bottom allowance',
    also: ['finished by the mill', 'mill', 'weighted', 'scalloped'],
  },
);

export type RoundedBy = 'line' | 'window';
export const ROUNDED_BY = choices<RoundedBy>(
  { word: 'line', says: 'once, over all the windows of the line', also: ['order'] },
  { word: 'window', says: 'window by window' },
);

export type LiningCut = 'own allowances' | 'less than face';
export const LINING_CUTS = choices<LiningCut>(
  { word: 'own allowances', says: 'the drop, shortened, with its own top and bottom' },
  { word: 'less than face', says: 'so much less than the cut of the face fabric' },
);

export type InterliningCut = 'as the face' | 'as the lining' | 'own allowances';
export const INTERLINING_CUTS = choices<InterliningCut>(
  {
    word: 'as the face',
    says: 'as long as the face’s cut before its repeat, full width into the turnings',
    also: ['face', 'as face', 'the face’s length'],
  },
  {
    word: 'as the lining',
    says: 'as long and as wide as the lining',
    also: ['lining', 'as lining'],
  },
  {
    word: 'own allowances',
    says: 'the drop, shortened, with its own top and bottom, full width into the turnings',
  },
);

export type SellBasis = 'markup on cost' | 'margin on selling price';
export const SELL_BASES = choices<SellBasis>(
  { word: 'markup on cost', says: 'cost × (1 + rate)', also: ['markup', 'mark up', 'on cost', 'cost'] },
  {
    word: 'margin on selling price',
    says: 'cost ÷ (1 − rate)',
    also: ['margin', 'on selling price', 'selling price'],
  },
);

export type TaxBasis = 'line' | 'invoice';
export const TAX_BASES = choices<TaxBasis>(
  { word: 'line', says: 'each line rounded, then added', also: ['by line', 'per line', 'item'] },
  { word: 'invoice', says: 'the sum taxed, then rounded once', also: ['by invoice', 'per invoice', 'total'] },
);

export const ROUNDING_WORDS = choices<Rounding>(
  { word: 'half up', says: 'a half cent goes up' },
  { word: 'half even', says: 'a half cent goes to the even cent' },
  { word: 'up', says: 'any part of a cent goes up' },
  { word: 'down', says: 'any part of a cent is dropped' },
);

export type MakingBreaksOn = 'whole' | 'further widths';
export const MAKING_BREAKS_ON = choices<MakingBreaksOn>(
  { word: 'whole', says: 'the reduction reached is taken off the whole making charge' },
  {
    word: 'further widths',
    says: 'each reduction is taken only off the widths past its break',
    also: ['further', 'widths past it'],
  },
);

export type MockUpOf = 'first room' | 'each room type';
export const MOCK_UPS = choices<MockUpOf>(
  { word: 'first room', says: 'so many windows of the first room', also: ['room'] },
  { word: 'each room type', says: 'so many windows of every type of room', also: ['each type', 'type'] },
);
