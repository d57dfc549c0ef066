/**
 * One window through all the steps. Each figure is worked out when first asked for and kept;
 * a job is many windows.
 */
import {
  answer,
  lengthFigure,
  moneyFigure,
  numberFigure,
  Refusal,
  refuse,
  yardageFigure,
  type Answer,
  type Figure,
  type Finding,
} from './answer';
import { WINDOW_COLUMNS, type ColumnKey, type Window } from './columns';
import { cutLength, furtherCut, plainCut, repeatRuleFor } from './cuts';
import { brackets, stack } from './hardware';
import { pleats, rings, isPleated, grommets } from './heading';
import { exact, type Length } from './length';
import { drop, rodWidth } from './measure';
import { labor } from './price';
import type { Rules } from './rules';
import { panelsOf } from './treatment';
import {
  clothWeight,
  lining,
  railroaded,
  workYardage,
  yardage,
  type Covered,
  type YardageWork,
} from './yardage';
import { finishedWidth, saveWidth, type Clothed, type Hung } from './widths';

type Given<K extends ColumnKey> = NonNullable<Window[K]>;

/** A window as measured, and everything that follows from it under the house rules. */
export class WindowWork {
  constructor(
    readonly window: Window,
    readonly rules: Rules,
    /** The sheet's own words for its columns. */
    private readonly names: Partial<Record<ColumnKey, string>> = {},
  ) {}

  private need<K extends ColumnKey>(key: K): Given<K> {
    const value = this.window[key];
    if (value !== undefined) return value as Given<K>;
    const name = this.names[key] ?? WINDOW_COLUMNS[key].heading;
    return refuse('missing', name, name, WINDOW_COLUMNS[key].field.kind.noun);
  }

  private readonly kept: Record<string, Answer<unknown>> = {};
  private keep<T>(name: string, work: () => Answer<T>): Answer<T> {
    return (this.kept[name] ??= work()) as Answer<T>;
  }

  get quantity(): number {
    return this.window.quantity ?? 1;
  }

  rodWidth(): Answer<Length> {
    return this.keep('rod width', () => {
      const { openingWidth, rodWidth: known, leftExtension, rightExtension } = this.window;
      if (openingWidth === undefined && known !== undefined) return answer(known);
      return rodWidth({ openingWidth: this.need('openingWidth'), leftExtension, rightExtension }, this.rules);
    });
  }

  finishedDrop(): Answer<Length> {
    return this.keep('finished drop', () => {
      const {
        measured,
        measuredCentre,
        measuredRight,
        finishedDrop: known,
        measuredTo,
        floorFinish,
      } = this.window;
      if (measured === undefined && known !== undefined) return answer(known);
      const readings = [this.need('measured'), measuredCentre, measuredRight].filter(
        (one): one is Length => one !== undefined,
      );
      return drop({ measured: readings, heading: this.need('heading'), measuredTo, floorFinish }, this.rules);
    });
  }

  private hungKept: Hung | undefined;
  private hung(): Hung {
    const { window } = this;
    return (this.hungKept ??= {
      rodWidth: window.rodWidth ?? this.rodWidth().value,
      heading: this.need('heading'),
      draw: window.draw,
      return: window.return,
      overlap: window.overlap,
    });
  }
  private get orderedDrop(): Length {
    return this.window.finishedDrop ?? this.finishedDrop().value;
  }
  private coveredKept: Covered | undefined;
  private covered(): Covered {
    const { window } = this;
    if (this.coveredKept !== undefined) return this.coveredKept;
    const hung = this.hung();
    return (this.coveredKept = {
      rodWidth: hung.rodWidth,
      heading: hung.heading,
      draw: hung.draw,
      return: hung.return,
      overlap: hung.overlap,
      finishedDrop: this.orderedDrop,
      fabricWidth: this.need('fabricWidth'),
      fullness: window.fullness,
      verticalRepeat: window.verticalRepeat,
      horizontalRepeat: window.horizontalRepeat,
      match: window.match,
      quantity: this.quantity,
    });
  }
  private madeUpKept: (Clothed & { widths: number }) | undefined;
  /** The treatment as cut. */
  private madeUp(): Clothed & { widths: number } {
    if (this.madeUpKept !== undefined) return this.madeUpKept;
    const { rodWidth, heading, draw, return: side, overlap, fabricWidth } = this.covered();
    return (this.madeUpKept = {
      rodWidth,
      heading,
      draw,
      return: side,
      overlap,
      fabricWidth,
      horizontalRepeat: this.window.horizontalRepeat,
      widths: this.widths(),
    });
  }

  finishedWidth(): Answer<Length> {
    return this.keep('finished width', () => finishedWidth(this.hung(), this.rules));
  }

  private clothKept: YardageWork | undefined;
  /** Widths, cut and yardage without their steps. */
  cloth(): YardageWork {
    return (this.clothKept ??= workYardage(this.covered(), this.rules));
  }

  widths(): number {
    return this.cloth().work.widths;
  }

  /** Cut length of a further width, its repeat in it. */
  cutLength(): Answer<Length> {
    return this.keep('cut length', () => {
      const { verticalRepeat, match } = this.window;
      const of = {
        finishedDrop: this.orderedDrop,
        heading: this.need('heading'),
        verticalRepeat,
        layer: 'face',
      } as const;
      if (match !== 'half-drop') return cutLength(of, this.rules);
      return answer(furtherCut(plainCut(of, this.rules), verticalRepeat, repeatRuleFor(match, this.rules)));
    });
  }

  yardage(): Answer<Length> {
    return this.keep('yardage', () => yardage(this.covered(), this.rules));
  }

  railroaded(): Answer<Length> {
    return this.keep('railroaded', () => railroaded(this.covered(), this.rules));
  }

  saveWidth(): Answer<Length> {
    return this.keep('save width', () => saveWidth(this.covered(), this.rules));
  }

  /** The rod as ordered where a sheet states it, else as worked out. */
  get rod(): Length {
    return this.hung().rodWidth;
  }

  /** Whether the house sets a making charge for this heading. */
  get isPriced(): boolean {
    return this.rules.labor[this.need('heading')] !== undefined;
  }

  get isLined(): boolean {
    return this.window.lining !== undefined && this.window.lining !== 'unlined';
  }

  /** Yardage of the lining; nothing for an unlined window. */
  liningYardage(): Answer<Length> {
    return this.keep('lining', () => {
      if (!this.isLined) return answer(exact(0));
      const hung = this.hung();
      return lining(
        {
          rodWidth: hung.rodWidth,
          heading: hung.heading,
          draw: hung.draw,
          return: hung.return,
          overlap: hung.overlap,
          finishedDrop: this.orderedDrop,
          fullness: this.window.fullness,
          quantity: this.quantity,
          liningWidth: this.window.liningWidth ?? this.rules.usualFabricWidth,
          layer: 'lining',
        },
        this.rules,
      );
    });
  }

  stack(): Answer<Length> {
    return this.keep('stack', () => {
      const { rodWidth, heading, draw } = this.hung();
      return stack({ rodWidth, heading, draw, lining: this.window.lining }, this.rules);
    });
  }

  /** Rings or carriers of one window. */
  rings(): Answer<number> {
    return this.keep('rings', () => rings(this.madeUp(), this.rules));
  }

  /** Pleats, snaps or grommets of one panel; nothing where the heading has none. */
  marks(): Answer<number> {
    return this.keep('marks', () => {
      const of = this.madeUp();
      if (isPleated(of.heading) || of.heading === 'wave') {
        const set = pleats(of, this.rules);
        return answer(set.value.pleats, set.steps, set.findings);
      }
      if (of.heading !== 'grommet') return answer(0);
      const flat = exact(Math.floor(this.cloth().work.flat / panelsOf(of.draw ?? 'pair')));
      const set = grommets({ flatWidth: flat }, this.rules);
      return answer(set.value.count, set.steps, set.findings);
    });
  }

  /** Weight of the face of one window; undefined where the cloth's weight is not known. */
  weight(): Answer<number> | undefined {
    const { arealWeight } = this.window;
    if (arealWeight === undefined) return undefined;
    return this.keep('weight', () => clothWeight({ ...this.covered(), arealWeight }, this.rules));
  }

  brackets(): Answer<number> {
    return this.keep('brackets', () =>
      brackets({ rodWidth: this.hung().rodWidth, weight: this.weight()?.value }, this.rules),
    );
  }

  /** Making charge of one window. */
  labor() {
    return this.keep('labor', () =>
      labor(
        {
          widths: this.widths(),
          heading: this.need('heading'),
          finishedDrop: this.orderedDrop,
          lining: this.window.lining,
        },
        this.rules,
      ),
    );
  }

  /** What is worth knowing of everything asked for so far. */
  findings(): readonly Finding[] {
    const all = Object.values(this.kept).flatMap((one) => one.findings);
    return all.filter((one, at) => all.findIndex((other) => other.sentence === one.sentence) === at);
  }
}

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
