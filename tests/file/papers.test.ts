import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { strFromU8, unzipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { cellText } from '../../src/book/address';
import { viewOf } from '../../src/book/papers/page-view';
import { papersOf } from '../../src/core/papers/papers';
import { hem } from '../../src/file/hem';
import { jobIn } from '../../src/file/papers';
import { refill } from '../../src/file/recalculate/refill';
import { openArchive, replaceFile, zipped } from '../../src/file/xlsx/archive';
import { bytesOfText, textOf } from '../../src/file/xlsx/text';
import { readWorkbook } from '../../src/file/xlsx/workbook';
import { formulaAt, listening, opened, scratch, shown } from './book';
import { CELLS, CHARGES, FABRIC, WINDOW, writeJob, type JobTyped, type Row } from './papers/job-file';

const folder = scratch();
let number = 0;
const pathOf = (name = `file${++number}.xlsx`): string => join(folder, name);

function jobFile(typed: JobTyped): string {
  const path = pathOf();
  writeJob(path, typed);
  return path;
}
async function papers(from: string, ...more: string[]) {
  const to = pathOf();
  const io = listening();
  const exit = await hem(['papers', from, '-o', to, '--date', '2026-11-27', ...more], io);
  return { to, exit, io };
}
/** The words and figures of one sheet, in reading order. */
const sheetText = async (path: string, sheet: string): Promise<string[]> => {
  const file = await opened(path);
  const found = file.sheets.find(({ name }) => name === sheet);
  if (found === undefined)
    throw new Error(`no sheet ${sheet}: ${file.sheets.map(({ name }) => name).join()}`);
  return found.seen.rows.flatMap(({ cells }) =>
    cells.flatMap(({ value }) => (value === null || value === '' ? [] : [String(value)])),
  );
};
const sheetsOf = async (path: string): Promise<string[]> =>
  (await opened(path)).sheets.map(({ name }) => name);

describe('the papers of a job of ours', () => {
  let made: Awaited<ReturnType<typeof papers>>;
  beforeAll(async () => {
    made = await papers(
      jobFile({ windows: [WINDOW, { ...WINDOW, room: 'Landing', quantity: 2, 'inside width': 40 }] }),
    );
  });

  it('are written and named', async () => {
    expect(made.io.complained).toEqual([]);
    expect(made.exit).toBe(0);
    expect(await sheetsOf(made.to)).toEqual(
      expect.arrayContaining(['Client quote', 'Order Quill & Sedge', 'Hardware to buy', 'Findings']),
    );
  });

  it('show on the quote what the cells of the job show, each figure by a formula that points there', async () => {
    const file = await opened(made.to);
    const cells = shown(file);
    const quote = file.sheets.find(({ name }) => name === 'Client quote')!;
    const pointing = quote.seen.rows
      .flatMap(({ cells: row }) => row)
      .filter(({ formula }) => formula !== undefined);
    expect(pointing.length).toBeGreaterThan(10);
    for (const { row, column, value } of pointing) {
      const formula = formulaAt(file, `'Client quote'!${cellText(row, column)}`) ?? '';
      const [, at = ''] = /^IF\(LEN\((.+)\)=0,"",\1\)$/.exec(formula) ?? [];
      expect(value).toEqual(cells.get(at.replace(/'/g, '')));
    }
  });

  it('add up: lines, installation, total', async () => {
    const figures = (await sheetText(made.to, 'Client quote'))
      .map(Number)
      .filter((one) => !Number.isNaN(one));
    const text = await sheetText(made.to, 'Client quote');
    const after = (label: string): number => Number(text[text.indexOf(label) + 1]);
    // Three windows at 65 each; nothing is taxed here.
    expect(after('Installation')).toBe(195);
    expect(after('Total')).toBeCloseTo(after('Subtotal') + 195, 8);
    expect(after('Deposit with the order') + after('Balance when hung')).toBeCloseTo(after('Total'), 8);
    expect(figures).toContain(after('Subtotal'));
  });

  it('have the house’s letterhead, the client and the client’s words', async () => {
    const text = await sheetText(made.to, 'Client quote');
    for (const words of [
      'Alder & Finch Workroom',
      '4 Sluice Row',
      'Wharf Lane Inn',
      'WL-7',
      '27 November 2026',
    ])
      expect(text).toContain(words);
    expect(text).toContain(
      'Library: pair of lined pinch-pleated draperies, Heron linen, floor length, on a 104 in rod, installed',
    );
  });
});

it('a fabric order says colour, content, reserve and the day where the sheet of fabrics does', async () => {
  const { to } = await papers(
    jobFile({
      windows: [WINDOW],
      fabrics: [
        { ...FABRIC, colour: 'Fog', content: 'linen 100%', 'reserve number': 'R-31', 'needed by': 46_400 },
      ],
    }),
    '--only',
    'order',
  );
  const text = await sheetText(to, 'Order Quill & Sedge');
  const after = (label: string): string | undefined => text[text.indexOf(label) + 1];
  expect(['Colour', 'Content', 'Reserve number', 'Needed by'].map(after)).toEqual([
    'Fog',
    'linen 100%',
    'R-31',
    '46400',
  ]);
});

describe('further lines', () => {
  it('are counted along their edges, costed, priced, and stand on quote, order and work order', async () => {
    const { to, exit, io } = await papers(
      jobFile({
        windows: [WINDOW],
        extras: [
          { 'for line': 1, what: 'trim', along: 'leading edges', 'counted in': 'yd', supplier: 'Fen Row Mill', 'what one': 12, making: 20 },
          { what: 'travel', 'your price': 45 },
          { 'for line': 1, what: 'band', along: 'leading edges', 'strips cut': 6, 'of cloth wide': 54, 'counted in': 'yd', 'what one': 30 },
        ],
      }),
    ); // prettier-ignore
    expect([exit, io.complained]).toEqual([0, []]);
    const cells = shown(await opened(to));
    // Two leading edges of 96 in with 1½ in turned under at both ends: 198 in are 5½ yd.
    expect(cells.get('Extras!I5')).toBe(5.5);
    // The same 198 in as a band: 4 strips of 6 in off cloth of 54 in, 24 in or ⅔ yd, bought as ¾.
    expect(cells.get('Extras!I7')).toBe(0.75);
    // 5½ × 12 + 20 = 86, sold at half more.
    expect(cells.get('Extras!O5')).toBe(129);
    const text = await sheetText(to, 'Client quote');
    const after = (label: string): number => Number(text[text.indexOf(label) + 1]);
    expect(after('Extras, as listed')).toBe(207.75);
    expect(after('Total')).toBeCloseTo(after('Draperies') + 207.75 + after('Installation'), 8);
    expect(text).toContain('For the whole job');
    expect(await sheetText(to, 'Order Fen Row Mill')).toContain('Further goods');
    expect(await sheetText(to, 'Work order')).toContain('leading edges');
    expect((await sheetText(to, 'Work order')).join()).toContain('4 strips cut 6 in wide');
  });

  it('without a price leave no quote', async () => {
    const { exit, io } = await papers(
      jobFile({ windows: [WINDOW], extras: [{ 'for line': 1, what: 'valance' }] }),
      '--only',
      'quote',
    );
    expect(exit).toBe(1);
    expect(io.complained.join()).toContain('The extra “valance” has no price');
  });
});

it('two options stand beside each other on the quote, from two workbooks of the same windows', async () => {
  const other = jobFile({ windows: [WINDOW], fabrics: [{ ...FABRIC, 'price a': 61.5 }] });
  const { to, exit, io } = await papers(jobFile({ windows: [WINDOW] }), '--only', 'quote', '--beside', other);
  expect([exit, io.complained]).toEqual([0, []]);
  const text = await sheetText(to, 'Client quote');
  const [a, b] = text.slice(text.indexOf('Total') + 1).map(Number);
  const alone = await sheetText((await papers(other, '--only', 'quote')).to, 'Client quote');
  expect(b).toBe(Number(alone[alone.indexOf('Total') + 1]));
  expect(b).toBeGreaterThan(a!);
  const fewer = jobFile({ windows: [WINDOW, { ...WINDOW, room: 'Landing' }] });
  const refused = await papers(fewer, '--only', 'quote', '--beside', other);
  expect([refused.exit, refused.io.complained.join()]).toEqual([1, expect.stringMatching(/same rows/)]);
});

describe('made again', () => {
  it('a paper nobody touched is made anew, one that was changed is kept beside the new one', async () => {
    const first = await papers(jobFile({ windows: [WINDOW] }));
    const again = await papers(first.to);
    expect((await sheetsOf(again.to)).filter((name) => /quote/i.test(name))).toEqual([
      'Quote',
      'Client quote',
    ]);

    const archive = await openArchive(again.to);
    const part = (await opened(again.to)).sheets.find(({ name }) => name === 'Client quote')!.part!;
    const xml = textOf(archive.get(part)!, part);
    const changed = new Map(archive).set(part, bytesOfText(xml.replace('What we make for you', 'Our offer')));
    const edited = pathOf();
    await replaceFile(edited, zipped(changed));
    const third = await papers(edited);
    expect((await sheetsOf(third.to)).filter((name) => /quote/i.test(name))).toEqual([
      'Quote',
      'Client quote',
      'Client quote 2',
    ]);
    expect(await sheetText(third.to, 'Client quote')).toContain('Our offer');
    expect(third.io.said.join()).toContain('“Client quote” was changed by hand and is kept');
  });
});

it('a quote says the discount that its prices hold, and nothing of none', async () => {
  const asked = ['--values', '--only', 'quote'] as const;
  const read = async (cells: Row): Promise<readonly string[]> => {
    const { to } = await papers(jobFile({ windows: [WINDOW], cells: { ...CELLS, ...cells } }), ...asked);
    return sheetText(to, 'Client quote');
  };
  const label = 'Draperies priced after a discount of';
  const [whole, less] = [await read({}), await read({ Sell_discount: 0.075 })];
  const after = (text: readonly string[], words: string): number => Number(text[text.indexOf(words) + 1]);
  expect(whole).not.toContain(label);
  expect(after(less, label)).toBe(0.075);
  expect(after(less, 'Subtotal')).toBeCloseTo(after(whole, 'Subtotal') * 0.925, 2);
});

it.each(['letter', 'a4'] as const)('the orders of the demo job take a page each on %s', async (size) => {
  const path = fileURLToPath(new URL('../../src/file/demo/quote.xlsx', import.meta.url));
  const file = readWorkbook(refill(readWorkbook(await openArchive(path))).parts);
  const { papers: orders } = papersOf(await jobIn(file, path, { only: [], size, today: 46_353 }), ['order']);
  expect(orders.map((order) => [order.title, viewOf(order).pages.length])).toEqual(
    ['Ostrel Weaving Shed', 'Nightjar Mill', 'Carding Row Linings'].map((mill) => [
      `Fabric order, ${mill}`,
      1,
    ]),
  );
});

describe('a copy to send', () => {
  it('holds the quote’s values and nothing else: no formula, no cost, no other sheet', async () => {
    const extra = {
      'for line': 1,
      what: 'valance',
      'what one': 73.31,
      making: 27.43,
      supplier: 'Fen Row Mill',
    };
    const { to } = await papers(jobFile({ windows: [WINDOW], extras: [extra] }), '--values');
    const parts = unzipSync(readFileSync(to));
    const all = Object.entries(parts).map(([name, bytes]) => `${name} ${strFromU8(bytes)}`);
    expect(await sheetsOf(to)).toEqual(['Client quote']);
    const costs = [
      ...[FABRIC['price a'], CELLS['Price_rod'], CELLS['Price_bracket'], CHARGES['labor pinch']],
      // Of the extra: what one costs, its making, both together; whom it is bought of and the mill.
      ...[73.31, 27.43, 100.74, 'Fen Row', 'Quill', 'Sell_rate', 'markup'],
    ];
    for (const part of all) {
      expect(part).not.toMatch(/<f[ >]|HEM[._]|comments|state="hidden"/);
      for (const cost of costs) expect(part).not.toContain(String(cost));
    }
    const text = await sheetText(to, 'Client quote');
    expect(text).toContain('Total');
    // 100.74 sold at half more.
    expect(text[text.indexOf('Valance') + 2]).toBe('151.11');
  });
});

describe('hard jobs', () => {
  it('with nothing priced: the quote is refused with what is missing, the order is written', async () => {
    const { exit, io, to } = await papers(
      jobFile({
        windows: [WINDOW],
        cells: {},
        charges: {},
        fabrics: [{ fabric: 'Heron linen', 'fabric width': 54 }],
      }),
    );
    expect(exit).toBe(1);
    expect(io.complained.join('\n')).toMatch(/No quote is written:\n {2}No window has a price/);
    expect(await sheetsOf(to)).toContain('Fabric order');
    expect(await sheetsOf(to)).not.toContain('Client quote');
  });

  it('with a quantity of 0: the row is no window, and is said beside the papers', async () => {
    const windows = [WINDOW, { ...WINDOW, room: 'Landing', quantity: 0 }];
    const { io, to } = await papers(jobFile({ windows }), '--only', 'work');
    expect(io.complained.join('\n')).toMatch(
      /Left out: Windows, row \d+: quantity reads 0, so the row is no window\./,
    );
    expect((await sheetText(to, 'Work order')).join()).not.toContain('Landing');
    const quote = await papers(jobFile({ windows }), '--only', 'quote');
    expect(quote.exit).toBe(0);
    expect((await sheetText(quote.to, 'Client quote')).join()).toContain('Total');
  });

  it.each<[string, string]>([
    ['60 letters', 'The long gallery over the water gate, north side, bay window'],
    ['accents', 'Salón de té «Ærøskøbing», Łódź'],
    ['right to left', 'غرفة القراءة'],
  ])('a room of %s stands whole on its line', async (_what, room) => {
    const { to, exit } = await papers(jobFile({ windows: [{ ...WINDOW, room }] }), '--only', 'quote');
    expect(exit).toBe(0);
    expect((await sheetText(to, 'Client quote')).some((one) => one.startsWith(`${room}: pair of`))).toBe(
      true,
    );
  });

  it('a window taken away leaves no line', async () => {
    const first = await papers(jobFile({ windows: [WINDOW, { ...WINDOW, room: 'Landing' }] }));
    expect((await sheetText(first.to, 'Client quote')).join()).toContain('Landing');
    const fewer = await papers(jobFile({ windows: [WINDOW] }));
    expect((await sheetText(fewer.to, 'Client quote')).join()).not.toContain('Landing');
  });
});

describe('what is asked wrongly', () => {
  it.each<[string[], RegExp]>([
    [['--only', 'menu'], /--only reads “menu”/],
    [['--paper', 'legal'], /--paper reads “legal”/],
    [['--price', '7'], /--price reads “7”/],
  ])('%j is told in a sentence', async (more, said) => {
    const { exit, io } = await papers(jobFile({ windows: [WINDOW] }), ...more);
    expect(exit).toBe(2);
    expect(io.complained.join()).toMatch(said);
  });
});

const suite =
  ['/usr/bin/soffice', '/usr/local/bin/soffice'].some(existsSync) && existsSync('/usr/bin/pdftotext');

describe.skipIf(!suite)('as PDF, by LibreOffice', () => {
  const pagesOf = (path: string): number =>
    Number(/Pages: +(\d+)/.exec(execFileSync('pdfinfo', [path], { encoding: 'utf8' }))?.[1]);
  const textIn = (path: string): string =>
    execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' });
  const eighty = Array.from({ length: 80 }, (_, at) => ({ ...WINDOW, room: `Room ${at + 1}` }));

  it.each([
    ['letter', '612 x 792'],
    ['a4', '595'],
  ])('eighty windows on %s: every line once, page n of m on every page', async (size, points) => {
    const { to, exit } = await papers(
      jobFile({ windows: eighty }),
      '--only',
      'quote',
      '--values',
      '--pdf',
      '--paper',
      size,
    );
    expect(exit).toBe(0);
    const pdf = to.replace('.xlsx', '-client-quote.pdf');
    const [pages, text] = [pagesOf(pdf), textIn(pdf)];
    expect(execFileSync('pdfinfo', [pdf], { encoding: 'utf8' })).toContain(points);
    // 80 lines with their specifications take at least 4 pages, and one page across.
    expect(pages).toBeGreaterThanOrEqual(4);
    expect(pages).toBeLessThanOrEqual(12);
    for (let page = 1; page <= pages; page++) expect(text).toContain(`page ${page} of ${pages}`);
    for (let at = 1; at <= 80; at++) expect(text.split(`Room ${at}:`)).toHaveLength(2);
    expect(text.match(/What we make for you/g)?.length).toBeGreaterThan(2);
    expect(text).not.toMatch(/#NAME|#REF|#VALUE|###/);
  });
});
