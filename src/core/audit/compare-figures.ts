/** The check of the ordered figures: each against its working, and the slip behind what disagrees. */
import { finding, renamed } from '../cell/answer';
import { toUnit } from '../exact/length';
import type { FigureKey } from '../window/figures';
import { safely, type Check, type RowChecked, type RowGiven } from './check';
import type { OrderKey } from '../window/meanings';
import { canBeWorkedOut, Compared, restsOn, type Comparison, type Wrong } from './compared';
import { told, type OrderFinding } from './finding';
import { figureCells, showDifference, showOf } from './show';
import { explain, yardageOf } from './slips';

/** What the core finds in a window that is worth saying of an order. */
const OWN: ReadonlySet<string> = new Set([
  'extensionOutsideBand',
  'floorUneven',
  'repeatWiderThanCloth',
  'waveRatio',
]);

/** Of turned cloth these are figures of another way of cutting; so is its making by the width, where the house has no rule for it. */
const UPRIGHT: ReadonlySet<FigureKey> = new Set<FigureKey>(['cutLength', 'widths', 'deliveredFullness']);

export const compareFigures: Check = {
  ofSizes: true,
  mayBeMeant: true,
  find(row: RowChecked) {
    const { given } = row;
    const { at, order, rules } = given;
    const { window, ordered, facts } = order;
    const turned = order.window.railroaded === 'railroaded';
    const explained = row.explained();
    const passed = (key: FigureKey): boolean =>
      UPRIGHT.has(key) || (key === 'labor' && rules.laborBy === 'width' && rules.billableWidth === undefined);
    const toCompare = given.ordered.filter((key) => !explained.has(key) && !(turned && passed(key)));
    const compared = new Compared(window, ordered, rules, { turned, practices: given.practices, facts });
    const first = withoutOtherRules(row, compared, compared.compare(toCompare));
    row.agreeing = first.right;
    const slip =
      first.wrong.length === 0
        ? undefined
        : explain({ window, ordered, turned, name: given.name }, compared, first);
    const yardage = slip === undefined ? yardageOf(compared) : slip.yardage;
    row.expectedYardage = yardage;
    const money = moneyOf(given, yardage);
    if (slip !== undefined)
      return [
        told(at, slip.finding, { ...slip, money }),
        ...ofTheirOwn(slip.left, first.wrong).map((one) => differs(given, one, compared, undefined)),
      ];
    return [
      ...notWorkedOut(given, first),
      ...(first.wrong.length === 0 ? own(given, compared) : []),
      ...ofTheirOwn(first.wrong, first.wrong).map((one, place) =>
        differs(given, one, compared, place === 0 ? money : undefined),
      ),
    ];
  },
};

/** What is left once the figures are passed over that are as the other rules give them, which is said of all orders. */
function withoutOtherRules(
  row: RowChecked,
  { window, ordered, how }: Compared,
  found: Comparison,
): Comparison {
  const { instead } = row.given;
  if (instead === undefined || found.wrong.length === 0) return found;
  const wrongKeys = found.wrong.map(({ key }) => key);
  const right = new Set(new Compared(window, ordered, instead, how).compare(wrongKeys).right);
  row.byOtherRules = right.size > 0;
  return { ...found, wrong: found.wrong.filter(({ key }) => !right.has(key)) };
}

/** What goes the way of the face's own cloth comes of one mistake with it: both are reckoned from one drop. */
const WITH_THE_FACE: ReadonlySet<FigureKey> = new Set<FigureKey>(['liningYardage', 'labor']);
const OF_THE_FACE: ReadonlySet<FigureKey> = new Set<FigureKey>(['cutLength', 'yardage', 'widths']);

/** The figures that are mistaken for a reason of their own. */
function ofTheirOwn(left: readonly Wrong[], wrong: readonly Wrong[]): readonly Wrong[] {
  const ways = new Set(
    wrong.filter(({ key }) => OF_THE_FACE.has(key)).map(({ found, expected }) => Math.sign(found - expected)),
  );
  return left.filter(
    ({ key, found, expected }) => !WITH_THE_FACE.has(key) || !ways.has(Math.sign(found - expected)),
  );
}

/** Said once of a row, for all the figures that could not be worked out from it. */
function notWorkedOut({ at, name, naming }: RowGiven, { refusals }: Comparison): OrderFinding[] {
  const first = refusals.find(({ refusal }) => refusal.error === '#VALUE!');
  if (first === undefined) return [];
  const all = refusals.map(({ key }) => name(key)).join(', ');
  const why = renamed(first.refusal.finding, naming).sentence;
  return [told(at, finding('notWorkedOut', name(first.key), all, why))];
}

/** The figures that follow from a column that could not be read. */
export const figuresRestingOn = ({ ordered }: RowGiven, columns: readonly OrderKey[]): readonly FigureKey[] =>
  ordered.filter((key) => columns.some((column) => restsOn(key, column)));

function differs(
  { at, unit, name }: RowGiven,
  { key, found, expected }: Wrong,
  compared: Compared,
  money: number | undefined,
): OrderFinding {
  const heading = name(key);
  const band = key === 'rodWidth' ? compared.rodBand() : undefined;
  const about =
    band === undefined
      ? finding(
          'figureDiffers',
          heading,
          heading,
          showOf(key, found, unit),
          showOf(key, expected, unit),
          showDifference(key, found, expected, unit),
        )
      : finding(
          'rodOutsideBand',
          heading,
          heading,
          showOf(key, found, unit),
          showOf(key, band.low, unit),
          showOf(key, band.high, unit),
        );
  return told(at, about, {
    ...figureCells(key, found, expected, unit),
    money,
  });
}

/** What the yardage ordered costs more or less than the yardage worked out. */
function moneyOf({ order, rules, unit }: RowGiven, yardage: number | undefined): number | undefined {
  const { ordered, facts } = order;
  if (yardage === undefined || ordered.yardage === undefined || facts.unitPrice === undefined)
    return undefined;
  const apart = ordered.yardage - yardage;
  if (Math.abs(apart) <= rules.yardageTolerance) return undefined;
  return facts.unitPrice.times(toUnit(apart, unit.large)).toNumber();
}

/** What the core itself finds worth a look in what was measured. */
function own(row: RowGiven, { window, work }: Compared): readonly OrderFinding[] {
  const { at, naming } = row;
  const wave = window.heading === 'wave' && window.fullness !== undefined;
  const extended = window.leftExtension !== undefined || window.rightExtension !== undefined;
  const uneven = window.measuredCentre !== undefined || window.measuredRight !== undefined;
  const wide = window.horizontalRepeat !== undefined;
  if (!wave && !extended && !uneven && !wide) return [];
  return safely(row, () => {
    if (window.openingWidth !== undefined) work.rodWidth();
    if (window.measured !== undefined && window.heading !== undefined) work.finishedDrop();
    if (wave && canBeWorkedOut('yardage', window)) work.yardage();
    const cloth = wide && canBeWorkedOut('yardage', window) ? work.cloth().work.usable.findings : [];
    const found: OrderFinding[] = [];
    for (const one of work.findings().concat(cloth))
      if (OWN.has(one.code)) found.push(told(at, renamed(one, naming)));
    return found;
  });
}
