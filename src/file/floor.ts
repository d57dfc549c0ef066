/** npm run hem -- floor: a floor of windows in bulk, with its cutting plans, what-if table and savings. */
import { extname } from 'node:path';
import type { BookRead } from '../book/book';
import { receivedRolls } from '../book/floor/received';
import { clothsOf, type Cloth } from '../core/floor/floor-cuts';
import { sameName, type Received } from '../core/rolls/received';
import { tally } from '../core/floor/tally';
import type { Unit } from '../core/exact/unit';
import { checkWritable, openArchive } from './xlsx/archive';
import { readCorrections } from './corrections';
import { readWordsBook } from './house-words';
import { readWords, type Command, type Io } from './command';
import { writeFloorSheets } from './floor/book';
import { choiceLines, choicesAsData, choicesTable } from './floor/choices';
import { OPTIONS, sparesAsked, type Values } from './floor/options';
import { priceAsData, priceLines, pricedFloor, priceOfAll, pricesKnown, type Prices } from './floor/price';
import { planCloths, plansAsData, tellPlans, type PlannedCloth } from './floor/plan';
import { multiplied } from './floor/by-room';
import { suppliesOf } from './floor/supply';
import { counted, FINE, NOT_COMPUTED, Problem, USAGE } from './problem';
import { progressOf } from './progress';
import { readingOf } from './xlsx/book-read';
import { refill } from './recalculate/refill';
import { clothLines, findingLines, hardwareLine, savingLines } from './floor/summary';
import { readWindows, type WindowsRead } from './floor/windows';
import { readWorkbook } from './xlsx/workbook';

const HELP = `npm run hem -- floor IN.xlsx [options]

Works out a floor of windows from the first table of a workbook whose headings are known:
cloth by fabric, a cutting plan for every cloth (face fabrics, linings, interlinings) roll by
roll, hardware, the price where prices are known, and what would save cloth.
House rules are taken from a defined name that ends in “rules”.

  npm run hem -- floor measures.xlsx --fabric "Ostrel linen" --rolls "58; 61 1/2; 60; 60"
  npm run hem -- floor measures.xlsx --in-hand -o planned.xlsx

  --fabric NAME       only the windows of this fabric
  --rooms PATTERN     one row becomes a window in each room: "401-448 even; not 413". Where the
                      table has several rows, the row's room first: "King: 401-448". May be repeated
  --types COUNTS      rows counted so many times: "King: 12; Suite: 4"
  --roll LENGTH       plan as many rolls of this length as it takes (60 yd, or 50 m)
  --rolls LENGTHS     the rolls in hand of the one fabric, parted by semicolons
  --lots NAMES        the dye lot of each of --rolls; a room is then cut from one lot
  --flaws "N: PLACES" flaws of the Nth of --rolls, from its start: "2: 12-12 1/2; 30". May be repeated
  --in-hand           the rolls in hand of every cloth from the workbook's own table of rolls,
                      headed roll of (or fabric), roll length, dye lot, flaws
  --spares SHARE      cuts of the face beyond the windows', like 5%, instead of the house rule; in the
                      plan, the totals and the price
  --fullness LIST     for the what-if table, like "2; 2.25; 2.5"
  --widths LIST       fabric widths for the what-if table, like "54; 118"
  --repeats LIST      repeat rules for the what-if table, like "every cut up; first cut exact"
  --price PRICE       price of the cloth, where the workbook's own table of fabrics has none or
                      another: 28.50, or breaks from a quantity on: "0 28.50; 50 26"
  --least LENGTH      the least of it that is cut
  --whole-roll "LENGTH at PRICE"   whole rolls at a price of their own: "60 at 22.50"
  --lining-price PRICE, --blackout-price PRICE, --interlining-price PRICE
                      prices of what lies behind the face, the same way; blackout lining without a
                      price of its own takes the lining's
  --columns WORDS     your word for columns of the table: "K=vertical repeat; M="
  --words BOOK        the words of your house: its sheet “Words of this house”
  --seconds N         how long to look for a better plan (10); Ctrl-C stops and keeps the best so far
  -o FILE             write the workbook with the cutter's list, the totals and, where prices are
                      known, the price on new sheets
  --json              everything as one JSON object
  --help              this

Exit code: 0 fine · 1 a row could not be read, or the rolls fall short · 2 not used so · 3 a file problem`;

function tell(
  read: WindowsRead,
  plans: readonly PlannedCloth[],
  prices: Prices,
  values: Values,
  io: Io,
): void {
  const { windows, placed, house } = read;
  const { unit } = house;
  const total = tally(windows, house.rules);
  io.out(`${counted(total.windows, 'window')} from the sheet “${read.sheet}”`);
  for (const { weight, sentence } of read.reading) io.out(`${weight} ${sentence}`);
  for (const line of clothLines(windows, total, undefined, unit)) io.out(line);
  tellPlans(plans, unit, io);
  io.out('Hardware');
  io.out(hardwareLine(total, unit));
  const priced = pricedFloor(placed, house, prices);
  if (priced !== undefined) {
    io.out('Price');
    for (const line of priceLines(priced)) io.out(line);
  }
  const table = choicesTable(windows, values, unit, priceOfAll(placed, prices));
  if (table !== undefined) {
    io.out('What if');
    for (const line of choiceLines(table, unit)) io.out(line);
  }
  io.out('What would save cloth');
  for (const line of savingLines({ windows: placed, house }, prices)) io.out(line);
  io.out('Worth a look');
  for (const line of findingLines(read)) io.out(line);
}

function asJson(read: WindowsRead, plans: readonly PlannedCloth[], prices: Prices, values: Values): string {
  const { windows, placed, house } = read;
  const table = choicesTable(windows, values, house.unit, priceOfAll(placed, prices));
  const priced = pricedFloor(placed, house, prices);
  return JSON.stringify({
    sheet: read.sheet,
    windows: windows.reduce((sum, work) => sum + work.quantity, 0),
    unread: read.unread,
    reading: read.reading,
    fabrics: plansAsData(plans, tally(windows, house.rules), house.unit),
    price: priced && priceAsData(priced),
    whatIf: table === undefined ? undefined : choicesAsData(table, house.unit),
  });
}

/** The windows asked for, as many as they stand for. */
function windowsAsked(whole: WindowsRead, values: Values, path: string): WindowsRead {
  const { fabric } = values;
  const own =
    fabric === undefined
      ? whole.placed
      : whole.placed.filter(({ work }) => work.window.fabric?.toLowerCase() === fabric.trim().toLowerCase());
  if (own.length === 0)
    throw new Problem(
      `“${path}” has no window${fabric === undefined ? '' : ` of the fabric “${fabric}”`}. Check the table.`,
      USAGE,
    );
  const placed = multiplied(own, values);
  return { ...whole, placed, windows: placed.map(({ work }) => work) };
}

/** The workbook's own rolls where they are asked for; a cloth that has none of them is named. */
async function inHand(
  book: BookRead,
  values: Values,
  { cloths, unit, path }: { readonly cloths: readonly Cloth[]; readonly unit: Unit; readonly path: string },
  io: Io,
): Promise<Received | undefined> {
  if (values['in-hand'] !== true) return undefined;
  const rolls = (await receivedRolls(book, unit))?.rolls;
  if (rolls !== undefined) {
    for (const { name } of cloths)
      if (!rolls.has(sameName(name)))
        io.err(`note ${name}: the workbook has no roll of it, so it is planned on rolls to be ordered.`);
    return rolls;
  }
  throw new Problem(
    `“${path}” has no table of rolls with a roll in it. Its headings should say roll of, roll length, and dye lot or flaws; or name the rolls with --rolls.`,
    USAGE,
  );
}

export const command: Command = {
  help: HELP,
  async run(words, io) {
    const { values, positionals } = readWords(words, OPTIONS, 'floor');
    const [path, ...others] = positionals;
    if (path === undefined || others.length > 0) {
      throw new Problem('floor wants one workbook: floor IN.xlsx. See npm run hem -- floor --help.', USAGE);
    }
    const { out } = values;
    if (out !== undefined && extname(out).toLowerCase() !== extname(path).toLowerCase())
      throw new Problem(
        `“${out}” must end in ${extname(path)}, as “${path}” does. Name it so after -o.`,
        USAGE,
      );
    if (out !== undefined) await checkWritable(out);
    const { parts } = refill(readWorkbook(await openArchive(path)), { progress: progressOf(io) });
    const file = readWorkbook(parts);
    const house = await readWordsBook(values.words);
    const read = windowsAsked(
      readWindows(file, path, { said: readCorrections(values.columns), words: house }, sparesAsked(values)),
      values,
      path,
    );
    const { unit } = read.house;
    const cloths = clothsOf(read.windows);
    const book = readingOf(file);
    const rolls = await inHand(book, values, { cloths, unit, path }, io);
    const prices = await pricesKnown(book, read.placed, values, unit, (fault) => io.err(`check ${fault}`));
    const plans = await planCloths(cloths, suppliesOf(values, cloths, rolls, unit), values, unit, io);
    if (out !== undefined)
      await writeFloorSheets(out, file, read, plans, pricedFloor(read.placed, read.house, prices));
    if (values.json === true) io.out(asJson(read, plans, prices, values));
    else tell(read, plans, prices, values, io);
    if (out !== undefined) io.err(`${out} holds the cutter’s list and the totals.`);
    const short = plans.some(({ best }) => best.plan.short.length > 0);
    return read.unread.length > 0 || short ? NOT_COMPUTED : FINE;
  },
};
