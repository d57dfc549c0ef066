/** The figures a window row can be asked for. */
import { lengthFigure, moneyFigure, numberFigure, Refusal, yardageFigure, type Figure } from '../cell/answer';
import type { WindowWork } from './job';
import { exact } from '../exact/length';
import { unitOf } from '../house/rules';
import { showLength } from '../exact/unit';

/** As the outputs are listed for a person to choose from. */
export type OutputGroup = 'Measure' | 'Cloth' | 'Heading' | 'Hardware' | 'Money' | 'Checking';

/** A figure a window row can be asked for, and the function a cell would ask it with. */
export interface Output {
  readonly key: string;
  readonly group: OutputGroup;
  readonly heading: string;
  readonly also: readonly string[];
  readonly says: string;
  /** The cell function it comes from. */
  readonly from: string;
  of(window: WindowWork): Figure;
}

const text = (of: string): Figure => ({ as: 'text', of });

export const OUTPUTS: readonly Output[] = [
  {
    key: 'rodWidth',
    group: 'Measure',
    heading: 'rod width',
    also: ['rod', 'rod face', 'rod w'],
    says: 'inside width and both extensions',
    from: 'RODWIDTH',
    of: (w) => lengthFigure(w.rodWidth().value),
  },
  {
    key: 'finishedDrop',
    group: 'Measure',
    heading: 'finished drop',
    also: ['drop', 'finished length', 'fin length', 'length'],
    says: 'top edge to bottom edge',
    from: 'DROP',
    of: (w) => lengthFigure(w.finishedDrop().value),
  },
  {
    key: 'finishedWidth',
    group: 'Measure',
    heading: 'finished width',
    also: ['finished w', 'panel width', 'fin width'],
    says: 'of one panel',
    from: 'FINISHEDWIDTH',
    of: (w) => lengthFigure(w.finishedWidth().value),
  },
  {
    key: 'widths',
    group: 'Cloth',
    heading: 'widths',
    also: ['no of widths', 'cuts', 'drops'],
    says: 'of the whole treatment',
    from: 'WIDTHS',
    of: (w) => numberFigure(w.widths()),
  },
  {
    key: 'deliveredFullness',
    group: 'Cloth',
    heading: 'delivered fullness',
    also: ['fullness delivered'],
    says: 'flat to finished',
    from: 'FULLNESS',
    of: (w) => numberFigure(w.cloth().work.delivered),
  },
  {
    key: 'cutLength',
    group: 'Cloth',
    heading: 'cut length',
    also: ['cut', 'cl', 'cut l'],
    says: 'of a width, its repeat in it',
    from: 'CUTLENGTH',
    of: (w) => lengthFigure(w.cutLength().value),
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
    from: 'YARDAGE',
    of: (w) => yardageFigure(w.yardage().value),
  },
  {
    key: 'liningYardage',
    group: 'Cloth',
    heading: 'lining yardage',
    also: ['lining yards', 'lining yds', 'lining metres', 'lining meters'],
    says: 'lining of all the windows of the row',
    from: 'LINING',
    of: (w) => yardageFigure(w.liningYardage().value),
  },
  {
    key: 'railroadedYardage',
    group: 'Cloth',
    heading: 'railroaded yardage',
    also: ['railroaded', 'turned yardage'],
    says: 'with the cloth turned, where it is wide enough',
    from: 'RAILROADED',
    of: (w) => orNone(() => yardageFigure(w.railroaded().value)),
  },
  {
    key: 'toSaveAWidth',
    group: 'Cloth',
    heading: 'to save a width',
    also: ['save width', 'narrower by'],
    says: 'how much narrower the rod must be',
    from: 'SAVEWIDTH',
    of: (w) => orNone(() => lengthFigure(w.saveWidth().value)),
  },
  {
    key: 'stack',
    group: 'Hardware',
    heading: 'stack',
    also: ['stack back', 'stack per side', 'stackback'],
    says: 'covered per side when drawn back',
    from: 'STACK',
    of: (w) => orNone(() => lengthFigure(w.stack().value)),
  },
  {
    key: 'marks',
    group: 'Heading',
    heading: 'heading marks',
    also: ['pleats', 'pleats per panel', 'grommets', 'snaps'],
    says: 'pleats, snaps or grommets of one panel',
    from: 'PLEATS',
    of: (w) => numberFigure(w.marks().value),
  },
  {
    key: 'markSpace',
    group: 'Heading',
    heading: 'marks apart',
    also: ['space', 'pleat space', 'space between pleats', 'grommet spacing', 'carriers apart'],
    says: 'space between pleats, grommet centres or carriers',
    from: 'PLEATS',
    of: (w) => share(w.setOut().value.space),
  },
  {
    key: 'takeUp',
    group: 'Heading',
    heading: 'take-up a pleat',
    also: ['take up', 'pleat take up'],
    says: 'cloth each pleat takes up',
    from: 'PLEATS',
    of: (w) => share(w.setOut().value.takeUp),
  },
  {
    key: 'rings',
    group: 'Hardware',
    heading: 'rings',
    also: ['carriers', 'rings or carriers'],
    says: 'rings or carriers of one window',
    from: 'RINGS',
    of: (w) => numberFigure(w.rings().value),
  },
  {
    key: 'brackets',
    group: 'Hardware',
    heading: 'brackets',
    also: ['no of brackets'],
    says: 'brackets of one window',
    from: 'BRACKETS',
    of: (w) => numberFigure(w.brackets().value),
  },
  {
    key: 'rodPieces',
    group: 'Hardware',
    heading: 'rod pieces',
    also: ['stock rods', 'rod stock', 'pieces of rod'],
    says: 'stock lengths that make up one rod',
    from: 'RODPIECES',
    of: (w) => {
      const unit = unitOf(w.rules);
      const pieces = w
        .rodPieces()
        .value.pieces.map(({ count, stockLength }) => `${count} × ${showLength(stockLength, unit)}`);
      return text(pieces.join(' + '));
    },
  },
  {
    key: 'weight',
    group: 'Cloth',
    heading: 'weight',
    also: ['drapery weight'],
    says: 'face of one window, lb or kg',
    from: 'CLOTHWEIGHT',
    of: (w) => orBlank(w.weight()?.value),
  },
  {
    key: 'labor',
    group: 'Money',
    heading: 'labor',
    also: ['making', 'making charge', 'labour', 'workroom'],
    says: 'making charge of all the windows of the row',
    from: 'LABOR',
    of: (w) => moneyFigure(w.labor().value.times(w.quantity)),
  },
  {
    key: 'findings',
    group: 'Checking',
    heading: 'findings',
    also: ['notes', 'remarks'],
    says: 'what is worth a second look',
    from: 'CHECK',
    of: (w) => {
      for (const look of WORTH_A_LOOK) look(w);
      return text(
        w
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
    from: 'LINING',
    of: (w) => yardageFigure(w.interliningYardage().value),
  },
];

const orBlank = (of: number | undefined): Figure => (of === undefined ? text('') : numberFigure(of));

/** Nanometres shared in equal parts, to the nearest whole one. */
const share = (of: number | undefined): Figure =>
  of === undefined ? text('') : lengthFigure(exact(Math.round(of)));

/** A figure that may not exist for a sound window: blank where it does not. */
function orNone(work: () => Figure): Figure {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof Refusal && thrown.error === '#N/A') return text('');
    throw thrown;
  }
}

/** What a window's findings are about, whichever other figures are asked for. */
const WORTH_A_LOOK: readonly ((w: WindowWork) => unknown)[] = [
  (w) => w.rodWidth(),
  (w) => w.finishedDrop(),
  (w) => w.finishedWidth(),
  (w) => w.yardage(),
  (w) => w.setOut(),
];
