import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { INCHES } from '../../src/core/exact/unit';
import { openArchive } from '../../src/file/xlsx/archive';
import { csvLine } from '../../src/file/csv/csv';
import { findingsBook } from '../../src/file/audit/findings-book';
import { command } from './command';
import { sheetRows } from '../../src/file/audit/orders';
import { readWorkbook } from '../../src/file/xlsx/workbook';
import { smallBook } from './book';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'audit-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function put(name: string, contents: string | Uint8Array): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, contents);
  return path;
}

const audit = command('audit');

const HEADINGS = 'customer,rod width,drop,heading,fabric width,widths,yardage,unit price';
const GOOD = 'Ames,94,96,pinch,54,5,15.625,20';
const WRONG = 'Ames,94,96,pinch,54,5,18.625,20';
const csv = (...rows: string[]): string => [HEADINGS, ...rows].join('\n');

interface Told {
  findings: { row: number; code: string; column: string; money: number; sentence: string }[];
  summary: { orders: number; stop: number; check: number; notes: string[] };
}
const told = (out: string): Told => JSON.parse(out) as Told;

describe('npm run hem -- audit', () => {
  it('ends with 0 where all is well and with 1 where something is to check', async () => {
    const good = await audit(await put('good.csv', csv(GOOD, GOOD)));
    expect(good).toMatchObject({ exit: 0, out: '2 orders audited: all is well.' });
    const wrong = await audit(await put('wrong.csv', csv(GOOD, WRONG)));
    expect(wrong.exit).toBe(1);
    expect(wrong.out).toContain('row 3, yardage: yardage reads 18 5/8 yd');
    expect(wrong.out).toContain('(60 in money)');
  });

  it('tells the same as JSON and as CSV', async () => {
    const path = await put('wrong.csv', csv(GOOD, WRONG));
    const json = told((await audit(path, '--json')).out);
    expect(json).toMatchObject({
      findings: [{ row: 3, code: 'figureDiffers', column: 'yardage', money: 60 }],
      summary: { orders: 2, stop: 0, check: 1 },
    });
    const lines = (await audit(path, '--csv')).out.split('\n');
    expect(lines[0]).toContain('order,customer,room,row,weight,kind,column');
    expect(lines[1]).toMatch(/^,Ames,,3,check,figure differs,yardage,18.625,15.625,3,60,/);
  });

  it('reads titles above, other partings, totals, blank lines, and headings in the middle', async () => {
    const semicolons = [HEADINGS, GOOD, 'Total;;;;;;15.625;', '', HEADINGS, WRONG].map((line) =>
      line.replace(/,/g, ';'),
    );
    const path = await put('titles.csv', ['Orders of the spring', '', ...semicolons].join('\r\n'));
    const { findings, summary } = told((await audit(path, '--json')).out);
    expect(findings).toMatchObject([{ row: 8, column: 'yardage' }]);
    expect(summary.orders).toBe(2);
    expect(summary.notes).toEqual(['2 rows above the header are passed over.']);
  });

  for (const [encoding, bytes, note] of [
    ['UTF-8 with its mark', Buffer.from(`\uFEFF${csv(WRONG.replace('Ames', 'Bäcker'))}`), undefined],
    [
      'UTF-16 with its mark',
      Buffer.from(`\uFEFF${csv(WRONG.replace('Ames', 'Bäcker'))}`, 'utf16le'),
      undefined,
    ],
    [
      'UTF-16, bytes the other way round',
      Buffer.from(`\uFEFF${csv(WRONG.replace('Ames', 'Bäcker'))}`, 'utf16le').swap16(),
      undefined,
    ],
    [
      'UTF-16 without a mark',
      Buffer.from(csv(WRONG), 'utf16le'),
      'It is in UTF-16 without a mark, and is read so.',
    ],
    [
      'Windows-1252',
      Buffer.from(csv(WRONG.replace('Ames', 'Bäcker')), 'latin1'),
      'It is not in UTF-8, and is read as Windows-1252: check names with accents.',
    ],
  ] as const) {
    it(`reads ${encoding}`, async () => {
      const { findings, summary } = told((await audit(await put('coded.csv', bytes), '--json')).out);
      expect(findings).toMatchObject([{ row: 2, column: 'yardage' }]);
      expect(summary.notes).toEqual(note === undefined ? [] : [note]);
    });
  }

  it('a formula planted in a text stays text in everything that is written', async () => {
    const path = await put(
      'planted.csv',
      csv(WRONG.replace('pinch', '"=HYPERLINK(""x"")"')).replace('drop', '+drop'),
    );
    const { out } = await audit(path, '--csv');
    expect(out).not.toMatch(/(^|,)"?[=+@-][^\d]/m);
    expect(csvLine(['=1+1', '+cmd', '-x', '@sum', '\tx', -3, 'a "b"', "it's"])).toBe(
      `"'=1+1","'+cmd","'-x","'@sum","'\tx",-3,"a ""b""","it's"`,
    );
    const book = join(folder, 'planted.xlsx');
    await writeFile(
      book,
      findingsBook(
        [
          {
            row: 2,
            order: '',
            customer: '',
            room: '',
            code: 'unreadable',
            weight: 'stop',
            sure: 'sure',
            column: '=A1',
            measure: '',
            found: '+1',
            expected: '',
            difference: '',
            money: '',
            sentence: '@x',
          },
        ],
        [],
        [],
        { unit: INCHES },
      ),
    );
    const [sheet] = readWorkbook(await openArchive(book)).sheets;
    expect(Buffer.from(sheet?.bytes ?? []).toString()).not.toContain('<f>');
    expect(sheetRows(sheet as NonNullable<typeof sheet>)[1]?.[1]).toEqual(
      expect.arrayContaining(['=A1', '+1', '@x']),
    );
  });

  it('writes findings and a summary to a workbook, and reads orders, rules and prices from one', async () => {
    const out = join(folder, 'out.xlsx');
    const first = await audit(await put('wrong.csv', csv(GOOD, WRONG)), '-o', out);
    expect(first.exit).toBe(1);
    const { sheets } = readWorkbook(await openArchive(out));
    expect(sheets.map(({ name }) => name)).toEqual(['Findings', 'Summary']);
    expect(sheetRows(sheets[0] as (typeof sheets)[0])[1]?.[1].slice(0, 11)).toEqual([
      null,
      'Ames',
      null,
      3,
      'check',
      'figure differs',
      'yardage',
      18.625,
      15.625,
      3,
      60,
    ]);
    // A workbook of findings is no table of orders.
    expect(await audit(out)).toMatchObject({
      exit: 3,
      err: expect.stringContaining('holds no table of orders'),
    });
  });

  it('takes the rules that stood on the day', async () => {
    const path = await put(
      'dated.csv',
      'date,drop,heading,cut length\n2024-05-01,96,pinch,112\n2025-05-01,96,pinch,112',
    );
    const old = await put('old.csv', 'rule,value\nbottom allowance,8');
    const now = await put('new.csv', 'House rules\n\nrule,value\nbottom allowance,10');
    const { findings } = told(
      (await audit(path, '--rules', old, '--rules', `2025-01-01=${now}`, '--json')).out,
    );
    expect(findings).toMatchObject([{ row: 3, column: 'cut length', expected: 114 }]);
  });

  it('reads the rules of several days from one file, and says which orders go by which', async () => {
    const path = await put(
      'dated.csv',
      'date,drop,heading,cut length\n2024-05-01,96,pinch,112\n2025-05-01,96,pinch,112',
    );
    const both =
      'rule,value\nin force from,2025-01-01\nbottom allowance,10\nin force from,\nbottom allowance,8';
    const rules = await put('both.csv', both);
    const { findings, summary } = told((await audit(path, '--rules', rules, '--json')).out);
    expect(findings).toMatchObject([{ row: 3, column: 'cut length', expected: 114 }]);
    expect(summary.notes).toEqual([
      'Orders before 2025-01-01 are checked against the rules of “both.csv” without a day, later ones and those without a date against the rules of “both.csv” from 2025-01-01.',
    ]);
    expect((await audit(path, '--rules', `2025-01-01=${rules}`)).err).toContain(
      'holds the rules of 2 days already. Give it without a day.',
    );
    const one = await put('one.csv', 'bottom allowance,8');
    expect((await audit(path, '--rules', one, '--rules', one)).err).toContain(
      'Two sets of house rules stand for every day.',
    );
  });

  it('proposes rules and writes nothing', async () => {
    const rows = [84, 90, 96, 98, 100, 101].map((drop) => `${drop},pinch,${drop + 18}`);
    const path = await put('past.csv', ['drop,heading,cut length', ...rows].join('\n'));
    const before = await readFile(path, 'utf8');
    const { out, exit } = await audit(path, '--learn');
    expect(exit).toBe(0);
    expect(out).toContain('6 of 6 past orders fit “bottom allowance” 10; the rule in force, 8, fits 0.');
    expect(out).toContain('Nothing is changed.');
    expect(await readFile(path, 'utf8')).toBe(before);
  });

  /** A sheet with titles, a merged group over its headings, a date as its number, and a totals row. */
  const sheet = (date: number): string => {
    const row = (at: number, cells: readonly (string | number | null)[]): string =>
      `<row r="${at}">${cells
        .map((cell, column) => {
          const name = `${String.fromCharCode(65 + column)}${at}`;
          if (cell === null) return '';
          return typeof cell === 'number'
            ? `<c r="${name}"><v>${cell}</v></c>`
            : `<c r="${name}" t="inlineStr"><is><t>${cell}</t></is></c>`;
        })
        .join('')}</row>`;
    return [
      row(1, ['Spring orders']),
      row(3, [null, null, 'Ordered', null, null]),
      row(4, ['date', 'heading', 'finished drop', 'cut length', 'amount']),
      row(5, [date, 'pinch', 96, 112, '$1,200.00']),
      row(6, [date, 'pinch', 96, 110, '$300.00']),
      row(7, ['Total', null, null, null, 1600]),
    ].join('');
  };
  const merged = (rows: string): string =>
    `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${rows}</sheetData><mergeCells count="1"><mergeCell ref="C3:E3"/></mergeCells></worksheet>`;

  for (const [what, settings, date] of [
    ['days counted from 1900', '', 45_658],
    ['days counted from 1904', '<workbookPr date1904="1"/>', 45_658 - 1_462],
  ] as const) {
    it(`reads a workbook with titles, merged headings, currency signs and a totals row, ${what}`, async () => {
      const parts = { 'xl/worksheets/sheet1.xml': merged(sheet(date)) };
      const path = await put('orders.xlsx', smallBook('', { settings, parts }));
      const now = await put('new.csv', 'bottom allowance,6');
      // 45658 is 1 January 2025: the new rules stand from that day, and make row 5 the wrong one.
      const { findings } = told((await audit(path, '--rules', `2025-01-01=${now}`, '--json')).out);
      expect(findings).toMatchObject([
        { row: 5, code: 'figureDiffers', found: 112, expected: 110 },
        { row: 7, code: 'totalRowDiffers', found: 1600, expected: 1500 },
        { row: 0, code: 'currencySigns' },
      ]);
    });
  }

  for (const [what, words, exit, sentence] of [
    ['no file', [], 2, 'audit takes one file of orders.'],
    ['a file that is not there', ['nothing.csv'], 3, '“nothing.csv” is not there.'],
    ['an unknown option', ['--fast'], 2, 'audit has no option --fast.'],
    ['two ways to tell', ['@good', '--json', '--csv'], 2, 'Choose --json or --csv, not both.'],
    ['-o with another ending', ['@good', '-o', 'x.csv'], 2, 'Name a workbook'],
    ['rules that are none', ['@good', '--rules', '@good'], 3, 'holds no house rules'],
    ['an empty file', ['@empty'], 3, 'is empty (0 bytes)'],
    ['a table of something else', ['@other'], 3, 'holds no table of orders'],
    ['a quotation mark that never closes', ['@quote'], 3, 'never closes it'],
    ['bytes that are no text', ['@bytes'], 3, 'is not a text file'],
  ] as const) {
    it(`${what} ends with ${exit} and a sentence`, async () => {
      const files: Readonly<Record<string, string>> = {
        '@good': await put('good.csv', csv(GOOD)),
        '@empty': await put('empty.csv', ''),
        '@other': await put('other.csv', 'name,town\nA,B\n'),
        '@quote': await put('quote.csv', csv(GOOD, '"Ames,94,96\n'.repeat(3))),
        '@bytes': await put('bytes.csv', Buffer.from([1, 0, 0, 0, 2, 0, 0, 0, 3, 3, 0, 0])),
      };
      const outcome = await audit(...words.map((word) => files[word] ?? word));
      expect(outcome.exit).toBe(exit);
      expect(outcome.err).toContain(sentence);
    });
  }
});
