/** Every request of every change, met by every fault: what is said afterwards must be so. */
import { describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
import { auditOrders, markFindings, surveyOrders, unmarkFindings } from '../../src/book/audit/audit';
import { writeAudit } from '../../src/book/audit/sheets';
import { apply } from '../../src/book/apply';
import type { CellValue } from '../../src/book/book';
import { fill, rememberFill } from '../../src/book/fill';
import { readFloor } from '../../src/book/floor/floor';
import { writeFloorPrice } from '../../src/book/floor/price-sheet';
import { NOTHING_TYPED, priceFloor, readClothPrice } from '../../src/book/floor/prices';
import { writeFloor } from '../../src/book/floor/sheets';
import { plan } from '../../src/book/plan';
import { survey } from '../../src/book/survey';
import { newJob } from '../../src/book/template';
import { Trouble } from '../../src/book/trouble';
import { putItBack, unfinished } from '../../src/book/unfinished';
import { ROW_OUTPUTS, WANTED } from '../../src/book/wanted';
import { clothJob, clothsOf } from '../../src/core/floor/floor-cuts';
import { readHouse } from '../../src/core/house/house';
import { cutPlan } from '../../src/core/rolls/rolls';
import { fromUnit } from '../../src/core/exact/length';
import { INCHES } from '../../src/core/exact/unit';
import { ExcelBook } from '../../src/excel/book';
import type { Answered, ExcelHost, Request } from '../office/host';
import { connect } from '../office/node';
import { at, openedIn as openedAnew, pictureInFull, type Opened } from './opened';

/** One client for all, connected to the workbook that is tried: a client of its own for each takes longer than all else. */
let onLine: ExcelHost | undefined;
const line: Pick<ExcelHost, 'answer' | 'onEvent'> = {
  answer: (request, flags) => onLine?.answer(request, flags) ?? Promise.resolve(undefined),
  onEvent: () => undefined,
};
/** Seconds after a fault the client tries once more to let go of what it held: not in the next workbook. */
const tidying = new Set<ReturnType<typeof setTimeout>>();
const later = ((work: () => void, wait?: number) => {
  const timer = setTimeout(work, wait);
  if ((wait ?? 0) >= 1000) tidying.add(timer);
  return timer;
}) as typeof setTimeout;
const client = connect(line as ExcelHost, '1.20', later);
const openedIn = (rows: CellValue[][], given: { sheets?: readonly string[] } = {}): Promise<Opened> =>
  openedAnew(rows, {
    ...given,
    client: (host) => {
      for (const timer of tidying) clearTimeout(timer);
      tidying.clear();
      onLine = host;
      return client;
    },
  });
const reopened = (owner: string): Promise<ExcelBook> =>
  ExcelBook.open({ Excel: client.Excel, requirements: client.Office.context.requirements }, { owner });

const LIST: CellValue[][] = [
  ['Room', 'Rod', 'Drop', 'Style', 'Fabric', 'Fabric W', 'Qty'],
  [401, 105, 96, 'pinch', 'Ostrel linen', 54, 10],
  [402, 105, 96, 'pinch', 'Ostrel linen', 54, 2],
];
const ORDERS: CellValue[][] = [
  ['Room', 'Rod W', 'Fin Drop', 'Style', 'Goods', 'Widths', 'Yds'],
  ['101', 94, 96, 'pinch', 54, 6, 21.75],
  ['102', 94, 960, 'pinch', 54, 6, 18.75],
];

/** How a workbook is made ready, and the change that is tried in it. */
interface Change {
  readonly ready: () => Promise<Opened>;
  readonly change: (book: ExcelBook) => Promise<unknown>;
}

async function columns(book: ExcelBook): Promise<void> {
  const { read, place } = await survey(book, WANTED, INCHES, areaAt('Windows', 0, 0));
  const wishes = ['widths', 'yardage'].map((key) => ({ key }));
  const given = { read, wanted: WANTED, outputs: ROW_OUTPUTS, wishes, unit: INCHES, rules: '' };
  const planned = await plan(book, given);
  await fill(book, planned);
  await rememberFill(book, place, read, planned).catch((thrown: unknown) => {
    // The pane says by itself that this was not kept.
    if (!(thrown instanceof Trouble)) throw thrown;
  });
}

const floorOf = async (book: ExcelBook) => {
  const { read } = await survey(book, WANTED, INCHES, areaAt('Windows', 0, 0));
  return readFloor(read, { rows: [] });
};

/** The same windows every time: planned once. */
let planned: ReturnType<typeof plansOf> | undefined;
const plansOf = (floor: Awaited<ReturnType<typeof floorOf>>) =>
  clothsOf(floor.windows.map(({ work }) => work)).map((cloth) => ({
    cloth,
    plan: cutPlan(clothJob(cloth, { ordered: fromUnit(60, 'yd') }, INCHES), floor.house.rules).value,
  }));

async function audited(book: ExcelBook) {
  const { read } = await surveyOrders(book, INCHES, areaAt('Windows', 1, 0));
  return auditOrders(read, { periods: [{ from: undefined, house: readHouse(undefined) }] });
}

const MAY = { mayOverwrite: [at('B1:D9')] };
const CHANGES: Readonly<Record<string, Change>> = {
  'a new job': {
    ready: () => openedIn([], { sheets: ['Sheet1'] }),
    change: (book) => newJob(book, { unit: 'inches', paper: 'letter', windows: 1 }),
  },
  'columns beside a list': { ready: () => openedIn(LIST), change: columns },
  'columns of a table': {
    ready: async () => {
      const opened = await openedIn(LIST);
      await opened.book.inOneStep('Table', (write) =>
        write({ newTables: [{ name: 'Openings', area: at('A1:G3') }] }),
      );
      return opened;
    },
    change: columns,
  },
  'cells over others, in one request': {
    ready: () => openedIn(ORDERS),
    change: (book) => apply(book, 'Write over', { puts: [{ area: at('B2:C3'), cells: [[1, null], ['x', { formula: '=A1' }]] }] }, MAY), // prettier-ignore
  },
  'cells over others, in four requests': {
    ready: async () => {
      const opened = await openedIn(ORDERS);
      return { ...opened, book: Object.assign(opened.book, { fills: 2 }) };
    },
    change: (book) =>
      apply(book, 'Fill over', {
          puts: [{ area: at('B1'), cells: [['new']] }, { area: at('B2:B9'), formula: '=$A2' }],
        }, MAY), // prettier-ignore
  },
  'a cutting list': {
    ready: () => openedIn(LIST),
    change: async (book) => {
      const floor = await floorOf(book);
      await writeFloor(book, floor, (planned ??= plansOf(floor)));
    },
  },
  'a price': {
    ready: () => openedIn(LIST),
    change: async (book) => {
      const floor = await floorOf(book);
      const { price } = readClothPrice('', { ...NOTHING_TYPED, price: '12.37' }, INCHES);
      await writeFloorPrice(book, floor, priceFloor(floor, new Map([['Ostrel linen', price!]])));
    },
  },
  'a summary of findings': {
    ready: () => openedIn(ORDERS),
    change: async (book) => writeAudit(book, await audited(book), INCHES),
  },
  'a change that is put back': {
    ready: async () => {
      const opened = await openedIn(ORDERS);
      const book = Object.assign(opened.book, { fills: 2 });
      const send = opened.host.answer.bind(opened.host);
      // Two of four requests are carried out, and the pane is closed.
      let done = 0;
      opened.host.answer = (request, flags) =>
        done === 2 || (writes(request) && ++done > 2)
          ? Promise.resolve(refused('ConnectionFailure', 503))
          : send(request, flags);
      const broken = await apply(book, 'Fill', { puts: [{ area: at('B1'), cells: [['new']] }, { area: at('B2:B9'), formula: '=$A2' }] }, MAY).catch((thrown: unknown) => thrown); // prettier-ignore
      expect(broken).toMatchObject({ code: 'lostMidway' });
      expect(opened.sheet.open(0, 1).value).toBe('new');
      opened.host.answer = send;
      return opened;
    },
    change: async (book) => {
      const left = await unfinished(book);
      if (left !== undefined) expect(await putItBack(book, left)).toBeUndefined();
    },
  },
};

const writes = ({ Actions }: Request): boolean =>
  Actions.some(
    ({ ActionType, Name }) => ActionType === 4 || /^(Add|Clear|Delete|DeleteObject|Resize)/.test(Name),
  );
const halfOf = (request: Request): Request => ({
  ...request,
  Actions: request.Actions.slice(0, Math.ceil(request.Actions.length / 2)),
});
const refused = (code: string, status = 400): Answered => ({
  status,
  body: { error: { code, message: `${code} for this test.` } },
});
type Send = ExcelHost['answer'];
type Answering = (send: Send, request: Request, flags: number) => Promise<Answered | undefined>;
const carriedOut: Answering = (send, request, flags) => send(request, flags);
const gone: Answering = async (send, request, flags) => {
  await send(request, flags);
  return refused('ConnectionFailure', 503);
};

/** The fault that a request meets; `stays` where every later one of the same pane meets it too. */
interface Fault {
  readonly meet: Answering;
  /** What a request that only reads cannot meet otherwise than at once. */
  readonly ofWrites?: true;
  readonly stays?: 'all' | 'writes';
}
const atOnce = (code: string): Fault => ({ meet: () => Promise.resolve(refused(code)) });
const midway = (code: string): Fault => ({
  ofWrites: true,
  meet: async (send, request, flags) => {
    await carriedOut(send, halfOf(request), flags);
    return refused(code);
  },
});
/* Codes: Microsoft's page "Error handling with the application-specific JavaScript APIs". */
const FAULTS: Readonly<Record<string, Fault>> = {
  ...Object.fromEntries(
    [
      'AccessDenied', 'GeneralException', 'InvalidArgument', 'InvalidOperationInCellEditMode',
      'ItemNotFound', 'NotImplemented', 'RequestPayloadSizeLimitExceeded', 'ServiceNotAvailable', 'Timeout',
    ].map((code) => [code, atOnce(code)]),
  ), // prettier-ignore
  'GeneralException midway': midway('GeneralException'),
  'AccessDenied midway': midway('AccessDenied'),
  'a read-only workbook': { ...atOnce('AccessDenied'), stays: 'writes', ofWrites: true },
  'a refusal midway, and of all that follows': { ...midway('GeneralException'), stays: 'writes' },
  'an answer too large': {
    ofWrites: true,
    meet: async (send, request, flags) => {
      await carriedOut(send, request, flags);
      return refused('ResponsePayloadSizeLimitExceeded');
    },
  },
  'a lost answer': { meet: gone, ofWrites: true },
  'a lost connection, half carried out': { ofWrites: true, meet: (send, request, flags) => gone(send, halfOf(request), flags) },
  'a connection lost for good': { meet: () => Promise.resolve(refused('ConnectionFailure', 503)), stays: 'all' },
  'a connection lost for good, half carried out': {
    ofWrites: true,
    meet: (send, request, flags) => gone(send, halfOf(request), flags),
    stays: 'all',
  },
  'a connection lost for good, all carried out': { ofWrites: true, meet: gone, stays: 'all' },
}; // prettier-ignore

/** The requests of a change met by a fault from one on; undefined for none. Gives what was said, and how many there were. */
async function met(tried: Change, fault?: Fault, from = 0): Promise<{ opened: Opened; before: string; said: unknown; written: readonly boolean[] }> {
  const opened = await tried.ready();
  const { host } = opened;
  const before = pictureInFull(opened);
  const usual = host.answer.bind(host);
  const written: boolean[] = [];
  let over = false;
  host.answer = (request, flags) => {
    const at = over ? -1 : written.push(writes(request)) - 1;
    const meets =
      fault !== undefined &&
      (at === from || (at > from && fault.stays !== undefined && (fault.stays === 'all' || writes(request))));
    if (!meets) return usual(request, flags);
    // Only the first is carried out: later ones find the connection gone, or the workbook closed to writing.
    if (at > from) return Promise.resolve(refused(fault.stays === 'all' ? 'ConnectionFailure' : 'AccessDenied'));
    return fault.meet(usual, request, flags);
  };
  const said = await tried.change(opened.book).then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  over = true;
  return { opened, before, said, written };
} // prettier-ignore

/** How a change ends that meets no fault, and the requests of it that this fault can meet. */
const ENDS = new Map<string, { whole: string; written: readonly boolean[] }>();
async function undisturbed(
  name: string,
  tried: Change,
  fault: Fault,
): Promise<{ whole: string; points: number[] }> {
  let end = ENDS.get(name);
  if (end === undefined) {
    const { opened, said, written } = await met(tried);
    expect([said, opened.host.unknown]).toEqual([undefined, []]);
    end = { whole: pictureInFull(opened), written };
    ENDS.set(name, end);
  }
  const points = end.written.flatMap((is, at) => (is || fault.ofWrites === undefined ? [at] : []));
  return { whole: end.whole, points };
}

/** One fault of each kind, for what takes long. */
const KINDS = [
  'AccessDenied',
  'InvalidOperationInCellEditMode',
  'RequestPayloadSizeLimitExceeded',
  'GeneralException midway',
  'a read-only workbook',
  'a refusal midway, and of all that follows',
  'an answer too large',
  'a lost answer',
  'a connection lost for good, half carried out',
];
const faultsFor = (name: string): [string, Fault][] =>
  Object.entries(FAULTS).filter(([fault]) => name !== 'a new job' || KINDS.includes(fault));

describe.each(Object.entries(CHANGES))('%s', (name, tried) => {
  it.each(faultsFor(name))('says what is so after %s, at every request', async (_, fault) => {
    const { whole, points } = await undisturbed(name, tried, fault);
    for (const from of points) {
      const { opened, before, said } = await met(tried, fault, from);
      const seen = pictureInFull(opened);
      const stands =
        cellsOf(seen) === cellsOf(before) ? 'nothing' : sameButSettings(seen, whole) ? 'all' : 'part';
      const where = `request ${from}: ${said instanceof Error ? said.message : 'done'} [${stands}]`;
      if (said === undefined) {
        expect(stands, where).toBe(before === whole ? 'nothing' : 'all');
        continue;
      }
      expect(said, where).toBeInstanceOf(Trouble);
      const { code, message } = said as Trouble;
      if (code === 'lostMidway' || code === 'halfDone' || code === 'halfBack') {
        if (code === 'halfDone') expect(stands, where).toBe('part');
      } else if (name === 'a change that is put back') {
        // Half of it stood before: that is so until it is put back.
        expect(seen, where).toBe(before);
      } else {
        expect(stands, where).toBe('nothing');
        expect(message).not.toMatch(/undo|half done/);
      }
      // The pane that is opened next tells of what stands in part, and takes all of it away.
      const book = await reopened(opened.book.owner);
      const left = await unfinished(book);
      if (stands === 'part' || name === 'a change that is put back') {
        if (left !== undefined) await putItBack(book, left);
        else expect(name, where).toBe('a change that is put back');
        const after = pictureInFull(opened);
        if (name === 'a change that is put back') expect(sameButSettings(after, whole), where).toBe(true);
        else expect(after, where).toBe(before);
      } else expect(left, where).toBeUndefined();
    }
  });
});

/** A picture without what is remembered: a journal of nothing is no change. */
function cellsOf(picture: string): string {
  return JSON.stringify((JSON.parse(picture) as unknown[]).slice(0, -1));
}

/** Whether two pictures differ in what is remembered only: what was said of columns is kept after the fill. */
function sameButSettings(one: string, other: string): boolean {
  const left = (text: string): boolean => text.includes('Hemledger.unfinished');
  return cellsOf(one) === cellsOf(other) && left(one) === left(other);
}

describe('marks of an audit', () => {
  const marked: Change = {
    ready: () => openedIn(ORDERS),
    change: async (book) => markFindings(book, await audited(book)),
  };
  const taken: Change = {
    ready: async () => {
      const opened = await marked.ready();
      await marked.change(opened.book);
      return opened;
    },
    change: (book) => unmarkFindings(book, 'Windows'),
  };
  it.each(
    Object.entries(FAULTS).flatMap(([fault, how]) => [
      ['put', fault, marked, how] as const,
      ['taken away', fault, taken, how] as const,
    ]),
  )('%s: says how many stand after %s, at every request', async (name, _, tried, fault) => {
    const { whole, points } = await undisturbed(name, tried, fault);
    for (const from of points) {
      const { opened, said, before } = await met(tried, fault, from);
      const standing = opened.sheet.conditionalFormats.length;
      const where = `request ${from}: ${said instanceof Error ? said.message : 'done'} [${standing}]`;
      if (said === undefined) {
        expect(pictureInFull(opened), where).toBe(whole);
        continue;
      }
      expect(said, where).toBeInstanceOf(Trouble);
      const { code, message } = said as Trouble;
      if (code === 'unmarked') expect(standing, where).toBe(0);
      else if (code === 'partlyMarked') {
        const [, count] = /\. (One|Some|\d+) cells? /.exec(message) ?? [];
        if (count !== 'Some') expect(count === 'One' ? 1 : Number(count), where).toBe(standing);
      } else expect(pictureInFull(opened), where).toBe(before);
    }
  });
});
