import { describe, expect, it } from 'vitest';
import { areaAt, placeText } from '../../src/book/address';
import { MemoryBook } from '../../src/book/memory';
import { readRules, rulesNames, setRule } from '../../src/book/rule-lines';
import { newJob, USUAL_JOB } from '../../src/book/template';
import { ruleLine } from '../../src/core/house/rules';
import { engineBook } from './engine-book';

const line = (name: string) => ruleLine(name)!;
async function rulesOf(rows: (string | number | null)[][], given = {}): Promise<MemoryBook> {
  const book = new MemoryBook({ Rules: { rows, ...given } });
  await book.inOneStep('Name', (write) =>
    write({ newNames: [{ name: 'House_rules', area: areaAt('Rules', 0, 0, rows.length, 2) }] }),
  );
  return book;
}
const seen = async (book: MemoryBook, name: string) =>
  (await readRules(book)).lines.find((one) => one.line === line(name))!;

describe('the rules of a workbook', () => {
  it('are shown with default, source, unit and what differs', async () => {
    const book = await rulesOf([
      ['Rule', 'Value'],
      ['return', 4],
      ['overlap', null],
      ['Side hems', 3],
      ['fullness pinch', '2,5'],
    ]);
    expect(await seen(book, 'return')).toMatchObject({
      inForce: 4,
      standard: 3.5,
      differs: true,
      unit: 'in',
    });
    expect(await seen(book, 'overlap')).toMatchObject({ inForce: 3, differs: false });
    expect(await seen(book, 'fullness pinch')).toMatchObject({ differs: false, unit: 'times' });
    expect((await seen(book, 'return')).line.source).toContain('common practice');
    expect((await seen(book, 'seam')).at).toBeUndefined();
  });
  it('say what is odd: an unknown name, a value that makes no sense', async () => {
    const book = await rulesOf([
      ['retrun', 4],
      ['overlap', 'much'],
    ]);
    expect((await seen(book, 'overlap')).fault).toMatch(/house rule “overlap” reads “much”/);
    const odd = await rulesOf([['retrun', 4]]);
    expect((await readRules(odd)).findings.join()).toMatch(/“retrun”.*nearest is “return”/);
  });
  it('in a centimetre house have their defaults in centimetres', async () => {
    const book = await rulesOf([
      ['unit', 'cm'],
      ['return', null],
    ]);
    expect(await seen(book, 'return')).toMatchObject({ standard: 8.89, unit: 'cm' });
  });
  it('show their first day as a day, however the cell holds it', async () => {
    const book = await rulesOf([['in force from', 46_082]]);
    expect(await seen(book, 'in force from')).toMatchObject({ inForce: '2026-03-01', fault: undefined });
    const doubtful = await rulesOf([['in force from', '03/04/2026']]);
    expect((await seen(doubtful, 'in force from')).fault).toMatch(/could be 2026-03-04 or 2026-04-03/);
  });
  it('of a name that is gone are asked for again', async () => {
    await expect(readRules(new MemoryBook({ Rules: {} }))).rejects.toThrow(/“House_rules” is no longer/);
  });
});

describe('a rule is set', () => {
  it('as written, in the cell where it stands', async () => {
    const book = await rulesOf([
      ['return', 3.5],
      ['stock rods', null],
    ]);
    expect(await setRule(book, await readRules(book), line('return'), '4 1/2')).toBeUndefined();
    expect(await seen(book, 'return')).toMatchObject({ inForce: 4.5, differs: true });
    expect(await setRule(book, await readRules(book), line('return'), null)).toBeUndefined();
    expect(await seen(book, 'return')).toMatchObject({ inForce: 3.5, differs: false });
    expect(book.undoable.slice(1)).toEqual(['Set “return”', 'Set “return”']);
  });
  it.each([
    ['return', '-3', /must be 0 or more/],
    ['return', 'wide', /is not a length/],
    ['fullness pinch', '250 %', /could be 2.5 times or 3.5 times/],
    ['widths rounding', 'sideways', /Use one of: whole per panel/],
    ['unit', 'cm', /Add a new job in centimetres/],
    ['seam', '1', /missing in Rules!A1:B4/],
  ])('“%s” to “%s” is refused with a sentence and nothing is written', async (name, value, sentence) => {
    const book = await rulesOf([
      ['return', 3.5],
      ['fullness pinch', 2.5],
      ['widths rounding', null],
      ['unit', 'inches'],
    ]);
    const before = book.picture();
    expect(await setRule(book, await readRules(book), line(name), value)).toMatch(sentence);
    expect(book.picture()).toBe(before);
  });
  it('not on a protected sheet', async () => {
    const book = new MemoryBook({ Rules: { rows: [['return', 3.5]], protected: true } });
    await book.inOneStep('Name', (write) =>
      write({ newNames: [{ name: 'House_rules', area: areaAt('Rules', 0, 0, 1, 2) }] }),
    );
    await expect(setRule(book, await readRules(book), line('return'), 4)).rejects.toThrow(/is protected/);
  });
  it('on the sheet of prices, where a making charge has its cell', async () => {
    const book = engineBook();
    await newJob(book, { ...USUAL_JOB, windows: 1 });
    const charge = await seen(book, 'labor pinch');
    expect(charge.at?.sheet).toBe('Prices');
    expect(await setRule(book, await readRules(book), line('labor pinch'), 12.5)).toBeUndefined();
    const [cell] = await book.read([charge.at!]);
    expect([placeText(charge.at!), cell?.values]).toEqual([placeText(charge.at!), [[12.5]]]);
    expect(await seen(book, 'labor pinch')).toMatchObject({ inForce: 12.5, differs: true });
    expect(await rulesNames(book)).toEqual(['House_rules']);
  });
});
