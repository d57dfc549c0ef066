/** What stands beside a column, and what else the table says, speaks for some of its meanings. */
import { saidFor, type Evidence } from './evidence';
import { fitOf } from './fit';
import type { MeaningKey } from './meanings';

/** A column among the others. */
interface Place {
  readonly own: Evidence;
  readonly before: Evidence | undefined;
  readonly after: Evidence | undefined;
  readonly all: readonly Evidence[];
}
type Speaks = (place: Place) => number;

const bestSaid = (evidence: Evidence | undefined): MeaningKey | undefined => {
  let best: MeaningKey | undefined;
  let most = 0.5;
  for (const [key, said] of evidence?.said ?? []) if (said > most) [best, most] = [key, said];
  return best;
};

const onlySays = ({ heading }: Evidence, ...ideas: readonly string[]): boolean =>
  heading.words.length > 0 &&
  heading.words.every((word) => word.weight < 0.3 || word.stands.some(({ idea }) => ideas.includes(idea)));
const isBareWidth = ({ own }: Place): boolean => onlySays(own, 'width', 'widths');

/** Whether another column says a meaning, and its cells do not forbid it. */
const anywhere = ({ own, all }: Place, wanted: MeaningKey, least = 0.8): boolean =>
  all.some((one) => one !== own && saidFor(one, wanted) >= least && fitOf(wanted, one) > -0.5);
const side = (other: Evidence | undefined, wanted: MeaningKey): number =>
  other === undefined ? 0 : saidFor(other, wanted);

const WIDTHS_OF_WINDOWS: readonly MeaningKey[] = ['openingWidth', 'rodWidth', 'finishedWidth'];
/** A bare width with no cloth beside it. */
const OF_NO_CLOTH = -0.25;
const EACH_BESIDE_ALL = -0.8;
/** Without a price beside it nothing is extended. */
const OF_NO_PRICE = -0.4;
const BEHIND_ROOM = -0.3;
/** A width “each” is a panel’s, not the window’s. */
const OF_SEVERAL = -0.2;

const OF_NO_SUM = -0.6;
const LEAST_OF_PAPERS = 20;
/** Numbers that begin high and stand for several lines, as papers are numbered. */
const ofPapers = ({ figures }: Evidence): boolean => {
  const values = [...figures].filter((figure) => !Number.isNaN(figure));
  return (
    values.length > 3 &&
    values.every((figure) => figure >= LEAST_OF_PAPERS) &&
    new Set(values).size < values.length
  );
};
const namesClients = ({ all }: Place): boolean => all.some((one) => saidFor(one, 'customer') >= 0.5);

const saysAll = (own: Evidence): boolean =>
  own.heading.per === undefined &&
  own.filled > 0 &&
  saidFor(own, 'widths') >= 0.8 &&
  own.heading.words.some(({ stands }) => stands.some(({ idea }) => idea === 'total'));

/** Of pieces counted in a column of their own “each” is each piece. */
const ofOnePanel = (place: Place): boolean =>
  place.own.heading.per === 'panel' ||
  (place.own.heading.per === 'window' && anywhere(place, 'panels', 0.9) && !anywhere(place, 'quantity'));

/** Under a group’s name that says where: “Where | Window” beside “Where | Room”. */
const namesWindow = ({ heading }: Evidence): boolean => {
  const lowest = heading.words.filter(({ weight }) => weight >= 1);
  const says = (idea: string): boolean =>
    lowest.some(({ stands }) => stands.some((one) => one.idea === idea));
  return says('window') && !says('room');
};
const WHICH_OF_ROOM = -0.25;

/** Whether another column says where: “Rooms” over counts says how many. */
const saysWhere = ({ own, all }: Place): boolean =>
  all.some((one) => {
    const room = saidFor(one, 'room');
    const counts = saidFor(one, 'quantity') > room && fitOf('quantity', one) > -0.5;
    return one !== own && room >= 0.62 && !counts && fitOf('room', one) > -0.5;
  });

const measuredBeside: Speaks = ({ before }) =>
  side(before, 'measured') + side(before, 'measuredCentre') > 0.5 ? 0.04 : -0.04;

const SPEAKS: Partial<Record<MeaningKey, Speaks>> = {
  fabricWidth: (place) => {
    if (!isBareWidth(place)) return 0;
    if (bestSaid(place.before) === 'fabric' && (place.before?.texts ?? 0) > 0) return 0.3;
    if (bestSaid(place.after) === 'verticalRepeat') return 0.25;
    // The only width of a table is its windows’, whatever bolts are as wide.
    return WIDTHS_OF_WINDOWS.some((one) => anywhere(place, one, 0.6)) ? 0 : OF_NO_CLOTH;
  },
  liningWidth: (place) => (!isBareWidth(place) ? 0 : bestSaid(place.before) === 'lining' ? 0.3 : OF_NO_CLOTH),
  openingWidth: (place) => {
    if (!isBareWidth(place)) return 0;
    if (place.own.heading.per !== undefined) return OF_SEVERAL;
    if (anywhere(place, 'measured') || anywhere(place, 'leftExtension')) return 0.14;
    return anywhere(place, 'rodWidth') ? 0.1 : 0;
  },
  rodWidth: (place) => (isBareWidth(place) && anywhere(place, 'openingWidth', 0.85) ? 0.12 : 0),
  finishedWidth: (place) =>
    isBareWidth(place) && place.own.heading.per !== undefined
      ? -OF_SEVERAL
      : isBareWidth(place) && anywhere(place, 'rodWidth', 0.85) && anywhere(place, 'openingWidth', 0.85)
        ? 0.12
        : 0,
  // Of a panel’s beside all of them all are meant; those of a window are what widths are.
  widths: (place) =>
    ofOnePanel(place) && place.all.some((one) => one !== place.own && saysAll(one)) ? EACH_BESIDE_ALL : 0,
  leftExtension: (place) => {
    if (side(place.after, 'rightExtension') > 0.5) return 0.1;
    return onlySays(place.own, 'extension') && anywhere(place, 'openingWidth') ? 0.2 : 0;
  },
  amount: (place) =>
    onlySays(place.own, 'extension') && !place.own.heading.money && !anywhere(place, 'unitPrice', 0.5)
      ? OF_NO_PRICE
      : 0,
  rightExtension: ({ before }) => (side(before, 'leftExtension') > 0.5 ? 0.1 : 0),
  measuredRight: measuredBeside,
  measuredCentre: measuredBeside,
  // Nearly every table says where its windows are.
  room: (place) => (saysWhere(place) ? (namesWindow(place.own) ? WHICH_OF_ROOM : 0) : 0.16),
  roomType: (place) => (saysWhere(place) ? 0 : BEHIND_ROOM),
  // A mark is where its window is, if nothing else says where.
  mark: (place) => (onlySays(place.own, 'mark') && !anywhere(place, 'room') ? BEHIND_ROOM : 0),
  // In a book of orders a name is the client’s.
  customer: (place) =>
    onlySays(place.own, 'name') &&
    (anywhere(place, 'order') || anywhere(place, 'date') || place.all.some(ofPapers))
      ? 0.25
      : 0,
  // Nothing is paid down where nothing has a price.
  deposit: (place) =>
    place.own.heading.words.every(({ text }) => text === 'paid') &&
    !(['total', 'amount', 'unitPrice', 'labor'] as const).some((key) => anywhere(place, key, 0.5))
      ? OF_NO_SUM
      : 0,
  // A number said once for several lines is an order’s; of those who ordered it is one too.
  order: (place) =>
    onlySays(place.own, 'number') &&
    (place.own.filled < place.own.cells.length * 0.75 || (ofPapers(place.own) && namesClients(place)))
      ? 0.3
      : 0,
  // The one sum of a line is what it comes to.
  net: (place) => (anywhere(place, 'total', 0.7) ? 0 : -0.2),
  basis: ({ own, before }) => (before?.heading.money === true && own.text.length < 12 ? 0.06 : 0),
};

/** How much the columns around one speak for a meaning of it, or against. */
export function beside(key: MeaningKey, at: number, all: readonly Evidence[]): number {
  const own = all[at] as Evidence;
  return SPEAKS[key]?.({ own, before: all[at - 1], after: all[at + 1], all }) ?? 0;
}
