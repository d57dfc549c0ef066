/** A job read for its papers, from our own sheets or from the user's table. */
import { readHouse, type House } from '../../core/house/house';
import { houseKey, houseWords, type HouseKey } from '../../core/papers/house-lines';
import type { PapersJob } from '../../core/papers/job';
import type { Entry, PaperSize } from '../../core/papers/paper';
import type { Corrections } from '../../core/window/reader/understand';
import { Cells, place, type NamedSheet } from './cells';
import { clothsIn, suppliersIn } from './cloths';
import { withLinings } from './of-cloth';
import { extrasIn } from './extras';
import { ownPrices, sumsOf } from './sums';
import { otherWindows, ownJob, readWindows, type WindowsAsked, type WindowsSeen } from './windows';
import type { Contents } from '../book';

export interface JobAsked {
  readonly contents: Contents;
  readonly sheets: readonly NamedSheet[];
  /** As the house measures where it is left out: Letter in inches, A4 in centimetres. */
  readonly size?: PaperSize | undefined;
  readonly today: number;
  /** The user's word for columns of the table. */
  readonly said?: Corrections | undefined;
  /** Where the user says the prices stand. */
  readonly priceColumn?: number | undefined;
  /** The sheet of windows, where the user chose among several. */
  readonly sheet?: string | undefined;
  /** The sheet whose windows are the same ones made otherwise. */
  readonly beside?: string | undefined;
}

/** The house rules beside the windows: a name that ends in “rules”. */
function houseOf(cells: Cells, job: string): House {
  const rules = cells.contents.names.filter(
    ({ name, area }) => area !== undefined && /rules(_\d+)?$/i.test(name),
  );
  const area = (rules.find(({ name }) => name.toLowerCase() === `house_rules${job}`) ?? rules[0])?.area;
  return readHouse(area === undefined ? null : cells.rows(area));
}

/** What the house typed on its sheet, by the label beside it. */
function houseTyped(cells: Cells): ReadonlyMap<HouseKey, { value: string | number; at: string }> {
  const area = cells.contents.names.find(({ name }) => /^house_papers(_\d+)?$/i.test(name))?.area;
  const typed = new Map<HouseKey, { value: string | number; at: string }>();
  if (area === undefined) return typed;
  for (const [down, [label, own]] of cells.rows(area).entries()) {
    const key = houseKey(String(label ?? ''));
    const blank = own === null || own === undefined || typeof own === 'boolean' || own === '';
    if (key !== undefined && !blank)
      typed.set(key, { value: own, at: place(area.sheet, area.row + down, area.column + 1) });
  }
  return typed;
}

const FACTS = {
  client: ['client', 'words'],
  place: ['place', 'words'],
  reference: ['reference', 'words'],
  measuredBy: ['measured by', 'words'],
  measuredOn: ['measured on', 'day'],
  validUntil: ['quote valid until', 'day'],
  publicBuilding: ['public building', 'words'],
  children: ['children may be present', 'words'],
} as const;
type FactKey = keyof typeof FACTS;

/** The facts of the job, each beside its word on the sheet that names the client. */
function factsOf(cells: Cells, job: string): Partial<Record<FactKey, Entry>> {
  const clients = cells.contents.names.filter(({ name }) => /^job_client(_\d+)?$/i.test(name));
  const area = (clients.find(({ name }) => name.toLowerCase() === `job_client${job}`) ?? clients[0])?.area;
  if (area === undefined) return {};
  const facts: Partial<Record<FactKey, Entry>> = {};
  for (let row = area.row; row < area.row + 12; row++) {
    const label = String(cells.at(area.sheet, row, area.column - 1) ?? '')
      .trim()
      .toLowerCase();
    for (const [key, [word, as]] of Object.entries(FACTS) as [FactKey, (typeof FACTS)[FactKey]][]) {
      const entry = label === word ? cells.entry(area.sheet, row, area.column, as) : undefined;
      if (entry !== undefined) facts[key] = entry;
    }
  }
  return facts;
}

const isYes = (entry: Entry | undefined): boolean => /^y/i.test(String(entry?.value ?? ''));

function pricedWindows(cells: Cells, seen: WindowsSeen): PapersJob['windows'] {
  const own = ownPrices(cells, seen);
  return own.size === 0 ? seen.windows : seen.windows.map((one) => ({ ...one, price: own.get(one.row) }));
}

function jobOn(cells: Cells, asked: JobAsked): PapersJob | undefined {
  const number = ownJob(cells, asked.sheet) ?? '';
  const cloths = clothsIn(cells, number);
  const house = withLinings(houseOf(cells, number), cloths);
  const { said, priceColumn, sheet, today } = asked;
  const wanted: WindowsAsked = { cells, house, cloths, said, priceColumn, sheet };
  const found = readWindows(wanted);
  if (found === undefined) return undefined;
  const facts = factsOf(cells, found.job);
  const size = asked.size ?? (house.unit.small === 'cm' ? 'a4' : 'letter');
  return {
    unit: house.unit,
    rules: house.rules,
    size,
    today,
    house: houseWords(houseTyped(cells), size),
    client: facts.client,
    place: facts.place,
    reference: facts.reference,
    measuredBy: facts.measuredBy,
    measuredOn: facts.measuredOn,
    validUntil: facts.validUntil,
    publicBuilding: isYes(facts.publicBuilding),
    children: facts.children === undefined || isYes(facts.children),
    windows: pricedWindows(cells, found),
    cloths,
    suppliers: suppliersIn(cells),
    extras: extrasIn(cells, found.job, house.unit),
    sums: sumsOf(cells, found),
    unread: found.unread,
    noWindows: found.noWindows,
    sheet: found.sheet,
    others: otherWindows(wanted, found),
  };
}

/** Undefined where no sheet holds a table of windows. */
export function readPapersJob(asked: JobAsked): PapersJob | undefined {
  const cells = new Cells(asked.contents, asked.sheets);
  const job = jobOn(cells, asked);
  if (job === undefined || asked.beside === undefined) return job;
  const other: JobAsked = { ...asked, said: undefined, priceColumn: undefined, sheet: asked.beside };
  return { ...job, beside: jobOn(cells, other) };
}
