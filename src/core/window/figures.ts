/**
 * The figures a window row can be asked for, each declared once: SCHEDULE, the pane, the audit, the
 * columns of an order and the command read what stands here. A new figure is one entry and the core
 * function it calls.
 */
import {
  lengthFigure,
  moneyFigure,
  numberFigure,
  textFigure,
  yardageFigure,
  type Figure,
} from '../cell/answer';
import { TEXT, type Kind, type Quantity } from '../cell/fields';
import { MONEY, QUANTITY } from '../cell/figure-kinds';
import { SIZE, YARDS } from '../cell/length-kinds';
import { exact } from '../exact/length';
import { showLength } from '../exact/unit';
import { unitOf } from '../house/rules';
import { WINDOW_COLUMNS, type ColumnKey } from './columns';
import type { WindowFigure } from './figure';
import type { WindowWork } from './job';
import { bendsInWords } from '../measure/measure';
import { trimAlong } from './trims';

/** A plain number, shown and compared as its quantity. */
const plain = (quantity: Quantity): Kind<number> => ({ ...QUANTITY, quantity });
const AMOUNT: Kind<number> = {
  quantity: 'money',
  noun: MONEY.noun,
  shape: 'cell',
  read: (raw, place) => MONEY.read(raw, place)?.toNumber(),
};

/** A figure that may be given instead of worked out is a window column of the same words. */
const asColumn = <K extends ColumnKey>(key: K) => ({
  key,
  heading: WINDOW_COLUMNS[key].heading,
  also: WINDOW_COLUMNS[key].also,
});

const ROD: readonly ColumnKey[] = ['rodWidth', 'openingWidth'];
const DROP: readonly ColumnKey[] = ['finishedDrop', 'measured'];
const HEADED_ROD = [ROD, ['heading']] as const;
const WIDTHS = [ROD, ['heading'], ['fabricWidth']] as const;
const CLOTH = [ROD, DROP, ['heading'], ['fabricWidth']] as const;

const DECLARED = [
  {
    ...asColumn('rodWidth'),
    group: 'Measure',
    says: 'inside width and both extensions',
    kind: SIZE,
    usual: true,
    from: 'RODWIDTH',
    needs: [['openingWidth']],
    reckonedFrom: ['openingWidth', 'leftExtension', 'rightExtension'],
    ordered: true,
    work: (window) => lengthFigure(window.rodWidth().value),
  },
  {
    ...asColumn('finishedDrop'),
    group: 'Measure',
    says: 'top edge to bottom edge',
    kind: SIZE,
    usual: true,
    from: 'DROP',
    needs: [['measured'], ['heading']],
    reckonedFrom: ['heading', 'measured', 'measuredCentre', 'measuredRight', 'measuredTo', 'floorFinish'],
    ordered: true,
    work: (window) => lengthFigure(window.finishedDrop().value),
  },
  {
    key: 'finishedWidth',
    group: 'Measure',
    heading: 'finished width',
    also: ['finished w', 'panel width', 'fin width'],
    says: 'of one panel',
    kind: SIZE,
    from: 'FINISHEDWIDTH',
    needs: HEADED_ROD,
    ordered: true,
    work: (window) => lengthFigure(window.finishedWidth().value),
  },
  {
    key: 'widths',
    group: 'Cloth',
    heading: 'widths',
    also: ['no of widths', 'cuts', 'drops'],
    says: 'of the whole treatment',
    kind: plain('count'),
    usual: true,
    from: 'WIDTHS',
    needs: WIDTHS,
    ordered: true,
    work: (window) => numberFigure(window.widths()),
  },
  {
    key: 'deliveredFullness',
    group: 'Cloth',
    heading: 'delivered fullness',
    also: ['fullness delivered'],
    says: 'flat to finished',
    kind: plain('fullness'),
    format: '0.00',
    from: 'FULLNESS',
    needs: WIDTHS,
    ordered: true,
    work: (window) => numberFigure(window.counted().delivered),
  },
  {
    key: 'cutLength',
    group: 'Cloth',
    heading: 'cut length',
    also: ['cut', 'cl', 'cut l'],
    says: 'of a width, its repeat in it',
    kind: SIZE,
    usual: true,
    from: 'CUTLENGTH',
    needs: [DROP, ['heading']],
    ordered: true,
    work: (window) => lengthFigure(window.cutLength().value),
  },
  {
    key: 'yardage',
    group: 'Cloth',
    heading: 'yardage',
    also: [
      'yards',
      'yds',
      'face yardage',
      'metres',
      'meters',
      'face yards',
      'total yards',
      'fabric yards',
      'fabric yds',
    ],
    says: 'face fabric of all the windows of the row',
    kind: YARDS,
    usual: true,
    from: 'YARDAGE',
    needs: CLOTH,
    ordered: true,
    addsUp: true,
    work: (window) => yardageFigure(window.yardage().value),
    quickly: (window) => window.laid().yardage,
  },
  {
    key: 'liningYardage',
    group: 'Cloth',
    heading: 'lining yardage',
    also: ['lining yards', 'lining yds', 'lining metres', 'lining meters'],
    says: 'lining of all the windows of the row',
    kind: YARDS,
    from: 'LINING',
    none: { column: 'lining', word: 'unlined' },
    needs: [ROD, DROP, ['heading']],
    ordered: true,
    addsUp: true,
    work: (window) => yardageFigure(window.liningYardage().value),
  },
  {
    key: 'railroadedYardage',
    group: 'Cloth',
    heading: 'railroaded yardage',
    also: ['railroaded', 'turned yardage'],
    says: 'with the cloth turned, where it is wide enough',
    kind: YARDS,
    from: 'RAILROADED',
    needs: CLOTH,
    ordered: true,
    mayLack: true,
    work: (window) => yardageFigure(window.railroaded().value),
  },
  {
    key: 'toSaveAWidth',
    group: 'Cloth',
    heading: 'to save a width',
    also: ['save width', 'narrower by'],
    says: 'how much narrower the rod must be',
    kind: SIZE,
    from: 'SAVEWIDTH',
    needs: WIDTHS,
    mayLack: true,
    work: (window) => lengthFigure(window.saveWidth().value),
  },
  {
    key: 'stack',
    group: 'Hardware',
    heading: 'stack',
    also: ['stack back', 'stack per side', 'stackback'],
    says: 'covered per side when drawn back',
    kind: SIZE,
    format: '0.0',
    from: 'STACK',
    needs: HEADED_ROD,
    ordered: true,
    mayDifferBy: 0.1,
    mayLack: true,
    work: (window) => lengthFigure(window.stack().value),
  },
  {
    key: 'marks',
    group: 'Heading',
    heading: 'heading marks',
    also: ['pleats', 'pleats per panel', 'grommets', 'snaps'],
    says: 'pleats, snaps or grommets of one panel',
    kind: plain('count'),
    from: 'PLEATS',
    needs: WIDTHS,
    ordered: true,
    alsoStatedFor: ['all panels', 'all windows'],
    work: (window) => numberFigure(window.marks().value),
  },
  {
    key: 'markSpace',
    group: 'Heading',
    heading: 'marks apart',
    also: ['space', 'pleat space', 'space between pleats', 'grommet spacing', 'carriers apart'],
    says: 'space between pleats, grommet centres or carriers',
    kind: SIZE,
    format: '0.00',
    from: 'PLEATS',
    needs: WIDTHS,
    work: (window) => share(window.setOut().value.space),
  },
  {
    key: 'takeUp',
    group: 'Heading',
    heading: 'take-up a pleat',
    also: ['take up', 'pleat take up'],
    says: 'cloth each pleat takes up',
    kind: SIZE,
    format: '0.00',
    from: 'PLEATS',
    needs: WIDTHS,
    work: (window) => share(window.setOut().value.takeUp),
  },
  {
    key: 'rings',
    group: 'Hardware',
    heading: 'rings',
    also: ['carriers', 'rings or carriers'],
    says: 'rings or carriers of one window',
    kind: plain('count'),
    from: 'RINGS',
    needs: WIDTHS,
    ordered: true,
    alsoStatedFor: ['all windows'],
    work: (window) => numberFigure(window.rings().value),
  },
  {
    key: 'brackets',
    group: 'Hardware',
    heading: 'brackets',
    also: ['no of brackets'],
    says: 'brackets of one window',
    kind: plain('count'),
    from: 'BRACKETS',
    needs: [ROD],
    ordered: true,
    alsoStatedFor: ['all windows'],
    work: (window) => numberFigure(window.brackets().value),
  },
  {
    key: 'rodPieces',
    group: 'Hardware',
    heading: 'rod pieces',
    also: ['stock rods', 'rod stock', 'pieces of rod'],
    says: 'stock lengths that make up one rod',
    kind: TEXT,
    from: 'RODPIECES',
    needs: [ROD],
    work: (window) => {
      const unit = unitOf(window.rules);
      const pieces = window
        .rodPieces()
        .value.pieces.map(({ count, stockLength }) => `${count} × ${showLength(stockLength, unit)}`);
      const { bends } = window;
      return textFigure(`${pieces.join(' + ')}${bends === 0 ? '' : `, ${bendsInWords(bends)}`}`);
    },
  },
  {
    key: 'grommetsInAll',
    group: 'Hardware',
    heading: 'grommets in all',
    also: ['eyelets in all'],
    says: 'grommets of one window',
    kind: plain('count'),
    from: 'GROMMETS',
    onlyFrom: 'SCHEDULE',
    needs: WIDTHS,
    alsoStatedFor: ['all windows'],
    work: (window) => numberFigure(window.fittings().grommets),
  },
  {
    key: 'hardwareCost',
    group: 'Money',
    heading: 'hardware cost',
    also: [],
    says: 'rods and what belongs to their heading, of all the windows of the row',
    kind: AMOUNT,
    format: '#,##0.00',
    from: 'RINGS',
    onlyFrom: 'SCHEDULE',
    needs: WIDTHS,
    addsUp: true,
    work: (window) => moneyFigure(window.hardwareCost().times(window.quantity)),
  },
  {
    key: 'weight',
    group: 'Cloth',
    heading: 'weight',
    also: ['drapery weight'],
    says: 'face of one window, lb or kg',
    kind: plain('weight'),
    format: '0.0',
    from: 'CLOTHWEIGHT',
    needs: [...CLOTH, ['arealWeight']],
    ordered: true,
    alsoStatedFor: ['all windows'],
    work: (window) => {
      const weight = window.weight()?.value;
      return weight === undefined ? undefined : numberFigure(weight);
    },
  },
  {
    key: 'labor',
    group: 'Money',
    heading: 'labor',
    also: ['making', 'making charge', 'labour', 'workroom'],
    says: 'making charge of all the windows of the row',
    kind: AMOUNT,
    format: '#,##0.00',
    from: 'LABOR',
    timesQuantity: true,
    needs: CLOTH,
    ordered: true,
    addsUp: true,
    work: (window) => moneyFigure(window.labor().value.times(window.quantity)),
  },
  {
    key: 'findings',
    group: 'Checking',
    heading: 'findings',
    also: ['notes', 'remarks'],
    says: 'what is worth a second look',
    kind: TEXT,
    from: 'CHECK',
    onlyFrom: 'CHECK',
    needs: CLOTH,
    work: (window) => {
      for (const look of WORTH_A_LOOK) look(window);
      return textFigure(
        window
          .findings()
          .map((one) => one.sentence)
          .join(' '),
      );
    },
  },
  {
    key: 'interliningYardage',
    group: 'Cloth',
    heading: 'interlining yardage',
    also: ['interlining yards', 'interlining yds', 'interlining metres', 'interlining meters'],
    says: 'interlining of all the windows of the row',
    kind: YARDS,
    from: 'LINING',
    onlyFrom: 'SCHEDULE',
    needs: [ROD, DROP, ['heading']],
    ordered: true,
    addsUp: true,
    work: (window) => yardageFigure(window.interliningYardage().value),
  },
  {
    key: 'leadingTrim',
    group: 'Cloth',
    heading: 'trim of leading edges',
    also: ['leading edge trim', 'leading edge banding'],
    says: 'trim or band along the leading edges of all the windows of the row, turned under at both ends',
    kind: YARDS,
    format: '0.00#',
    from: 'SCHEDULE',
    onlyFrom: 'SCHEDULE',
    needs: [DROP],
    addsUp: true,
    work: (window) => yardageFigure(trimAlong(window, 'leading edges')),
  },
  {
    key: 'bottomTrim',
    group: 'Cloth',
    heading: 'trim of bottom edges',
    also: ['bottom trim', 'bottom banding'],
    says: 'trim or band along the bottom edges of all the windows of the row, turned under at both ends',
    kind: YARDS,
    format: '0.00#',
    from: 'SCHEDULE',
    onlyFrom: 'SCHEDULE',
    needs: CLOTH,
    addsUp: true,
    work: (window) => yardageFigure(trimAlong(window, 'bottom edges')),
  },
] as const satisfies readonly WindowFigure[];

type Declared = (typeof DECLARED)[number];
/** A figure that orders state. */
export type FigureKey = Extract<Declared, { readonly ordered: true }>['key'];

export const FIGURES: readonly WindowFigure[] = DECLARED;

/** Nanometres shared in equal parts, to the nearest whole one. */
const share = (nanometres: number | undefined): Figure | undefined =>
  nanometres === undefined ? undefined : lengthFigure(exact(Math.round(nanometres)));

/** What a window's findings are about, whichever other figures are asked for. */
const WORTH_A_LOOK: readonly ((window: WindowWork) => unknown)[] = [
  (window) => window.rodWidth(),
  (window) => window.finishedDrop(),
  (window) => window.finishedWidth(),
  (window) => window.yardage(),
  (window) => window.setOut(),
];
