/** Draws the orders of an invented workroom, each true to its rules. */
import type { Chance } from './chance';
import { bareCutOf, deliveredFlat, fitsTurned, isLined, isTurned } from './cloth';
import { exact, ONE } from './exact';
import type { Line } from './line';
import { bill, reckon, taxesOf } from './reckon';
import type { Cloth, Order, Range, Style } from './style';

const within = (chance: Chance, { least, most, step }: Range) => chance.between(least, most, step);

function widthGiven(style: Style, chance: Chance): Line {
  const { openings, rods, house } = style;
  if (openings === undefined) {
    if (rods === undefined) throw new Error(`${style.name} has neither openings nor rods`);
    return { 'rod width': within(chance, rods) };
  }
  const opening = within(chance, openings);
  const band = house.extensions.find(({ upTo }) => upTo === undefined || opening.compare(exact(upTo)) <= 0);
  if (band === undefined) throw new Error(`${style.name} has no extension for ${opening.toString()}`);
  const step = house.unit === 'inches' ? 0.5 : 1;
  const left = chance.between(band.low, band.high, step);
  return {
    'inside width': opening,
    'left extension': left,
    'right extension': chance.oneIn(3) ? chance.between(band.low, band.high, step) : left,
  };
}

function clothGiven(style: Style, cloth: Cloth, chance: Chance): Line {
  const unlined = cloth.turned === true || style.linings.length === 0;
  return {
    fabric: cloth.name,
    'fabric width': exact(cloth.width),
    'vertical repeat': cloth.repeat === undefined ? undefined : exact(cloth.repeat),
    'horizontal repeat': cloth.across === undefined ? undefined : exact(cloth.across),
    match: cloth.repeat === undefined ? undefined : (cloth.match ?? 'straight'),
    railroaded: cloth.turned === true ? 'yes' : undefined,
    lining: unlined ? 'unlined' : chance.pick(style.linings),
    'unit price': cloth.price === undefined ? undefined : exact(cloth.price),
    'lining price': style.liningPrice === undefined ? undefined : exact(style.liningPrice),
  };
}

/** A line's givens, before any figure follows from them. */
function given(style: Style, cloth: Cloth, chance: Chance): Line {
  const { house } = style;
  const draw = chance.pick(
    cloth.turned === true ? style.draws.filter((one) => one !== 'stationary') : style.draws,
  );
  const heading = chance.pick(style.headings);
  const rate = style.rates?.[heading];
  const height = within(chance, style.drops);
  return {
    room: chance.pick(style.rooms),
    ...widthGiven(style, chance),
    ...(style.measured
      ? {
          'measured height': height,
          'measured to': chance.pick(['new rod', heading === 'grommet' ? 'hung rod' : 'hung ring']),
        }
      : { 'finished drop': height }),
    heading,
    draw,
    fullness:
      style.fullnesses === undefined
        ? exact(house.fullness[heading] ?? 2)
        : exact(chance.pick(style.fullnesses)),
    ...clothGiven(style, cloth, chance),
    quantity: exact(chance.pick(style.quantities)),
    'labor rate': rate === undefined ? undefined : exact(rate),
    hardware: style.hardware === undefined ? undefined : exact(chance.pick(style.hardware)),
  };
}

/** The same even count whether the spaces are counted on all the flat cloth or from centre to centre. */
function grommetsAgree(line: Line, style: Style): boolean {
  if (line['heading marks'] === undefined) return true;
  const spaces = deliveredFlat(line, style.house).div(exact(style.house.grommetSpacing));
  const pairs = [spaces, spaces.sub(exact('0.25'))].map((count) => count.div(2).ceil());
  return pairs.every((count) => count.equals(pairs[0] ?? 0));
}

/** Whole cents a width, so that it is the same by the width, by the window and by the line. */
function makingIsWhole(line: Line, { prices }: Style): boolean {
  if (prices.making !== undefined || line.labor === undefined || line.widths === undefined) return true;
  return line.labor
    .div(line.widths.mul(line.quantity ?? ONE))
    .mul(100)
    .mod(1)
    .equals(0);
}

/** Only windows about which the trade's words leave no doubt are ordered. */
function undisputed(line: Line, style: Style): boolean {
  const { house, prices } = style;
  // Which way of turned cloth shrinks, the texts do not say.
  if (isTurned(line) && (house.shrinkage !== 0 || !fitsTurned(line, house))) return false;
  if (isLined(line) && line['lining yardage'] === undefined) return false;
  const { together, apart } = taxesOf(line, house, prices);
  const most = exact(house.unit === 'inches' ? 400 : 1000);
  return (
    together.equals(apart) &&
    grommetsAgree(line, style) &&
    makingIsWhole(line, style) &&
    bareCutOf(line, house).compare(most) < 0
  );
}

/** One true line of the cloth; drawn anew until nothing about it is in doubt. */
export function drawLine(style: Style, cloth: Cloth, chance: Chance): Line {
  for (let tries = 0; tries < 500; tries++) {
    const start = given(style, cloth, chance);
    const wished = style.reasons !== undefined && cloth.turned !== true && chance.oneIn(80);
    const note = wished ? chance.pick(style.reasons ?? []) : undefined;
    const line: Line = { ...start, note };
    Object.assign(line, reckon(line, style.house, note === undefined ? undefined : ONE));
    Object.assign(line, bill(line, style.house, style.prices));
    if (undisputed(line, style)) return line;
  }
  throw new Error(`${style.name} finds no window for ${cloth.name}`);
}

const dayAfter = (start: string, days: number): string =>
  new Date(Date.parse(`${start}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);

/** Two cloths at most in an order; a half-drop cloth on one line only, so that its order of cutting is the line's. */
function linesOf(style: Style, count: number, chance: Chance): Line[] {
  const cloths = [chance.pick(style.cloths), chance.pick(style.cloths)];
  const straight = style.cloths.filter(({ match }) => match === undefined);
  const used = new Set<string>();
  return Array.from({ length: count }, () => {
    const wanted = chance.pick(cloths);
    const cloth = wanted.match !== undefined && used.has(wanted.name) ? chance.pick(straight) : wanted;
    used.add(cloth.name);
    return drawLine(style, cloth, chance);
  });
}

/** So many windows, in orders one after the other through the year. */
export function drawOrders(style: Style, windows: number, chance: Chance): Order[] {
  const orders: Order[] = [];
  let drawn = 0;
  while (drawn < windows) {
    const count = Math.min(windows - drawn, chance.whole(...style.linesInOrder));
    const no = style.orderNo(orders.length);
    const customer = chance.pick(style.customers);
    const date = dayAfter('2023-01-09', Math.floor((drawn * 700) / windows));
    const lines = linesOf(style, count, chance).map((line): Line => ({
      ...line,
      'order no': no,
      customer,
      date,
    }));
    orders.push({ no, customer, date, lines });
    drawn += count;
  }
  return orders;
}
