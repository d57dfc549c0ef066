/** The figures a window row can be asked for. */
import { lengthFigure, moneyFigure, numberFigure, Refusal, yardageFigure, type Figure } from './answer';
import type { ColumnKey } from './columns';
import type { WindowWork } from './job';

/** A figure a window row can be asked for, and the function a cell would ask it with. */
export interface Output {
  readonly key: string;
  readonly heading: string;
  readonly also: readonly string[];
  readonly says: string;
  /** The cell function that gives it, and its arguments by column or output key. */
  readonly from: { readonly name: string; readonly takes: readonly (ColumnKey | '')[] };
  of(window: WindowWork): Figure;
}

const ROD = ['openingWidth', 'leftExtension', 'rightExtension'] as const;
const text = (of: string): Figure => ({ as: 'text', of });

export const OUTPUTS: readonly Output[] = [
  {
    key: 'rodWidth',
    heading: 'rod width',
    also: ['rod', 'rod face', 'rod w'],
    says: 'inside width and both extensions',
    from: { name: 'RODWIDTH', takes: ROD },
    of: (w) => lengthFigure(w.rodWidth().value),
  },
  {
    key: 'finishedDrop',
    heading: 'finished drop',
    also: ['drop', 'finished length', 'fin length', 'length'],
    says: 'top edge to bottom edge',
    from: { name: 'DROP', takes: ['measured', 'heading', 'measuredTo', 'floorFinish'] },
    of: (w) => lengthFigure(w.finishedDrop().value),
  },
  {
    key: 'finishedWidth',
    heading: 'finished width',
    also: ['finished w', 'panel width', 'fin width'],
    says: 'of one panel',
    from: { name: 'FINISHEDWIDTH', takes: ['rodWidth', 'heading', 'draw', 'return', 'overlap'] },
    of: (w) => lengthFigure(w.finishedWidth().value),
  },
  {
    key: 'widths',
    heading: 'widths',
    also: ['no of widths', 'cuts', 'drops'],
    says: 'of the whole treatment',
    from: {
      name: 'WIDTHS',
      takes: ['rodWidth', 'heading', 'fabricWidth', 'draw', 'fullness', 'horizontalRepeat'],
    },
    of: (w) => numberFigure(w.widths()),
  },
  {
    key: 'deliveredFullness',
    heading: 'delivered fullness',
    also: ['fullness delivered'],
    says: 'flat to finished',
    from: { name: 'FULLNESS', takes: [] },
    of: (w) => numberFigure(w.cloth().work.delivered),
  },
  {
    key: 'cutLength',
    heading: 'cut length',
    also: ['cut', 'cl', 'cut l'],
    says: 'of a width, its repeat in it',
    from: { name: 'CUTLENGTH', takes: ['finishedDrop', 'heading', 'verticalRepeat', ''] },
    of: (w) => lengthFigure(w.cutLength().value),
  },
  {
    key: 'yardage',
    heading: 'yardage',
    also: ['yards', 'yds', 'face yardage', 'metres', 'meters', 'face yards', 'total yards'],
    says: 'face fabric of all the windows of the row',
    from: {
      name: 'YARDAGE',
      takes: [
        'rodWidth',
        'finishedDrop',
        'heading',
        'fabricWidth',
        'verticalRepeat',
        'quantity',
        'draw',
        'fullness',
        'match',
        'horizontalRepeat',
      ],
    },
    of: (w) => yardageFigure(w.yardage().value),
  },
  {
    key: 'liningYardage',
    heading: 'lining yardage',
    also: ['lining yards', 'lining yds', 'lining metres', 'lining meters'],
    says: 'lining of all the windows of the row',
    from: {
      name: 'LINING',
      takes: ['rodWidth', 'finishedDrop', 'heading', 'liningWidth', 'quantity', 'draw', 'fullness'],
    },
    of: (w) => yardageFigure(w.liningYardage().value),
  },
  {
    key: 'railroadedYardage',
    heading: 'railroaded yardage',
    also: ['railroaded', 'turned yardage'],
    says: 'with the cloth turned, where it is wide enough',
    from: {
      name: 'RAILROADED',
      takes: [
        'rodWidth',
        'finishedDrop',
        'heading',
        'fabricWidth',
        'quantity',
        'draw',
        'fullness',
        'verticalRepeat',
        'horizontalRepeat',
      ],
    },
    of: (w) => orNone(() => yardageFigure(w.railroaded().value)),
  },
  {
    key: 'toSaveAWidth',
    heading: 'to save a width',
    also: ['save width', 'narrower by'],
    says: 'how much narrower the rod must be',
    from: { name: 'SAVEWIDTH', takes: ['rodWidth', 'heading', 'fabricWidth', 'draw', 'fullness'] },
    of: (w) => orNone(() => lengthFigure(w.saveWidth().value)),
  },
  {
    key: 'stack',
    heading: 'stack',
    also: ['stack back', 'stack per side', 'stackback'],
    says: 'covered per side when drawn back',
    from: { name: 'STACK', takes: ['rodWidth', 'heading', 'draw', 'lining'] },
    of: (w) => orNone(() => lengthFigure(w.stack().value)),
  },
  {
    key: 'marks',
    heading: 'heading marks',
    also: ['pleats', 'pleats per panel', 'grommets', 'snaps'],
    says: 'pleats, snaps or grommets of one panel',
    from: { name: 'PLEATS', takes: [] },
    of: (w) => numberFigure(w.marks().value),
  },
  {
    key: 'rings',
    heading: 'rings',
    also: ['carriers', 'rings or carriers'],
    says: 'rings or carriers of one window',
    from: { name: 'RINGS', takes: [] },
    of: (w) => numberFigure(w.rings().value),
  },
  {
    key: 'brackets',
    heading: 'brackets',
    also: ['no of brackets'],
    says: 'brackets of one window',
    from: { name: 'BRACKETS', takes: ['rodWidth'] },
    of: (w) => numberFigure(w.brackets().value),
  },
  {
    key: 'weight',
    heading: 'weight',
    also: ['drapery weight'],
    says: 'face of one window, lb or kg',
    from: {
      name: 'CLOTHWEIGHT',
      takes: ['rodWidth', 'finishedDrop', 'heading', 'fabricWidth', 'arealWeight', 'draw', 'fullness'],
    },
    of: (w) => orBlank(w.weight()?.value),
  },
  {
    key: 'labor',
    heading: 'labor',
    also: ['making', 'making charge', 'labour', 'workroom'],
    says: 'making charge of all the windows of the row',
    from: { name: 'LABOR', takes: [] },
    of: (w) => moneyFigure(w.labor().value.times(w.quantity)),
  },
  {
    key: 'findings',
    heading: 'findings',
    also: ['notes', 'remarks'],
    says: 'what is worth a second look',
    from: { name: 'CHECK', takes: [] },
    of: (w) =>
      text(
        w
          .findings()
          .map((one) => one.sentence)
          .join(' '),
      ),
  },
];

const orBlank = (of: number | undefined): Figure => (of === undefined ? text('') : numberFigure(of));

/** A figure that may not exist for a sound window: blank where it does not. */
function orNone(work: () => Figure): Figure {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof Refusal && thrown.error === '#N/A') return text('');
    throw thrown;
  }
}
