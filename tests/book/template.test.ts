import { beforeAll, describe, expect, it } from 'vitest';
import { functionNamed } from '../../functions';
import { areaAt, common, letters, placeText, readAddress, type Area } from '../../src/book/address';
import type { Block, Book, CellValue } from '../../src/book/book';
import type { MemoryBook } from '../../src/book/memory';
import { jobChanges, newJob, USUAL_JOB } from '../../src/book/template';
import { Trouble } from '../../src/book/trouble';
import { readHouse } from '../../src/core/house/house';
import { RULE_LINES } from '../../src/core/house/rules';
import { engineBook as bookOn, HOSTS } from './engine-book';
import { typeAt, valueOf } from './named-cells';

interface Seen {
  readonly block: Block;
  /** Column of a heading that begins so. */
  column(heading: string): number;
  cell(row: number, heading: string): CellValue;
}

async function table(book: Book, name: string): Promise<Seen> {
  const found = (await book.contents()).tables.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no table ${name}`);
  const [block] = await book.read([found.area], 'contents');
  const column = (heading: string): number => {
    const at = found.columns.findIndex((one) => one === heading || one.startsWith(`${heading} (`));
    if (at < 0) throw new Error(`no column ${heading}`);
    return at;
  };
  return { block: block!, column, cell: (row, heading) => block!.values[row]![column(heading)]! };
}

/** Writes figures into a table's row by heading, as a person types them. */
async function type(book: Book, name: string, row: number, cells: Record<string, CellValue>): Promise<void> {
  const { block, column } = await table(book, name);
  await book.inOneStep('Type', (write) =>
    write({
      puts: Object.entries(cells).map(([heading, value]) => ({
        area: areaAt(block.area.sheet, block.area.row + row, block.area.column + column(heading)),
        cells: [[value]],
      })),
    }),
  );
}
describe.each(HOSTS)('where an empty cell is handed over as %s', (_host, empties) => {
  const engineBook = (sheets = {}): ReturnType<typeof bookOn> => bookOn(sheets, empties);

  const small = { ...USUAL_JOB, windows: 3 };

  describe('an empty job', () => {
    let book: MemoryBook;
    beforeAll(async () => {
      book = engineBook({ Mine: { rows: [['keep me']] } });
      await newJob(book, small);
    });

    it('adds its sheets after those that are there and shows the first', async () => {
      expect((await book.contents()).sheets.map((one) => one.name)).toEqual([
        'Mine',
        'Job',
        'Fabrics',
        'Windows',
        'Extras',
        'Rolls',
        'Prices',
        'House rules',
        'Costs',
        'Quote',
        'Checks',
        'House',
      ]);
      expect(book.shown?.sheet).toBe('Job');
      expect(book.undoable).toEqual(['Add a new job']);
    });
    it('says all is well and shows no error', async () => {
      expect(await valueOf(book, 'Checks_all')).toBe('all checks are well');
      for (const { used } of (await book.contents()).sheets) {
        const [block] = await book.read([used!]);
        expect(block!.values.flat().filter((one) => typeof one === 'string' && one.startsWith('#'))).toEqual(
          [],
        );
      }
    });
    it('holds one formula in every worked column', async () => {
      const { shifted } = await import('../../src/book/formula');
      for (const { name, area } of (await book.contents()).tables) {
        const [block] = await book.read([area]);
        for (let at = 0; at < area.columns; at++) {
          const column = block!.formulas.slice(1).map((row) => row[at] ?? null);
          // The checks differ by nature; making charges are linked among the rules.
          if (name === 'Checks' || name === 'Rules') continue;
          column.forEach((formula, row) => {
            expect(formula, `${name} ${letters(at)}${row}`).toBe(
              column[0] === null ? null : shifted(column[0]!, row, 0),
            );
          });
        }
      }
    });
    it('validates every choice and freezes and prints every sheet on one page’s width', async () => {
      const { validations, layouts } = book.looks;
      const { block, column } = await table(book, 'Windows');
      for (const heading of [
        'heading',
        'draw',
        'measured to',
        'floor finish',
        'lining',
        'fabric',
        'quantity',
        'fullness',
      ]) {
        const place = areaAt('Windows', block.area.row + 1, column(heading));
        expect(
          validations.some((one) => common(one.area, place)),
          heading,
        ).toBe(true);
      }
      for (const line of RULE_LINES.filter((one) => one.kind.choices !== undefined))
        expect(
          validations.some(
            (one) =>
              one.area.sheet === 'House rules' && one.words?.includes(String(line.kind.choices![0]!.word)),
          ),
        ).toBe(true);
      // Excel takes at most 255 characters of choices written out (Microsoft, data validation).
      for (const { words } of validations) expect((words ?? []).join(',').length).toBeLessThan(256);
      for (const { name } of (await book.contents()).sheets.slice(1))
        expect(layouts.find((one) => one.sheet === name)).toMatchObject({
          frozenRows: expect.any(Number),
          print: { repeatRows: expect.any(Array) },
        });
    });
    it('keeps the findings in sight beside the room, and prints the room alone on each page', async () => {
      const { block } = await table(book, 'Windows');
      expect(block.values[0]?.slice(0, 2)).toEqual(['room', 'findings']);
      expect(book.looks.layouts.find((one) => one.sheet === 'Windows')).toMatchObject({
        frozenColumns: 2,
        print: { repeatColumns: [0, 0], pagesWide: 2 },
      });
    });
    it('breaks no heading of a table within a word', async () => {
      const { tables } = await book.contents();
      for (const { area, columns } of tables)
        for (const [at, heading] of columns.entries()) {
          const widths = book.looks.layouts.find((one) => one.sheet === area.sheet)?.widths ?? {};
          const longest = Math.max(...heading.split(' ').map(({ length }) => length));
          expect(widths[area.column + at], `${area.sheet}, ${heading}`).toBeGreaterThan(longest + 3);
        }
    });
    it('styles inputs as inputs and nothing with a formula as one', async () => {
      const inputs = book.looks.dress.filter(
        (one) => one.role === 'input' && one.area.sheet !== 'House rules',
      );
      expect(inputs.length).toBeGreaterThan(30);
      const blocks = await book.read(inputs.map((one) => one.area));
      for (const block of blocks)
        expect(block.formulas.flat().filter(Boolean), placeText(block.area)).toEqual([]);
    });
    it('has rules that read back as the defaults, without a finding', async () => {
      const { block } = await table(book, 'Rules');
      const house = readHouse(block.values.slice(1).map((row) => row.slice(0, 2)));
      expect(house.findings).toEqual([]);
      const plain = readHouse(null);
      for (const key of Object.keys(plain.rules) as (keyof typeof plain.rules)[])
        expect(String(JSON.stringify(house.rules[key])), key).toBe(String(JSON.stringify(plain.rules[key])));
    });
  });

  describe('a job with windows', () => {
    let book: MemoryBook;
    beforeAll(async () => {
      book = engineBook();
      await newJob(book, small);
      await type(book, 'Fabrics', 1, {
        fabric: 'Wren',
        'fabric width': 54,
        'price a yd': 20,
        'minimum order': 10,
      });
      await type(book, 'Price_breaks', 1, { 'price break of': 'Wren', from: 10, 'break price': 18 });
      await type(book, 'Price_breaks', 2, { 'price break of': 'Wren', from: 50, 'break price': 15 });
      await type(book, 'Making_charges', 1, { 'your figure': 11 });
      await type(book, 'Linings', 1, { 'price a yd': 5 });
      await typeAt(book, {
        Price_rod: 9,
        Price_ring: 0.5,
        Price_bracket: 4,
        Price_finials: 12,
        Price_installation: 40,
        Price_freight: 25,
        Sell_rate: 0.5,
        Tax_goods: 0.0725,
        Deposit_share: 0.5,
        Job_client: 'R. Tarn',
      });
      await type(book, 'Windows', 1, {
        room: 'Bar',
        'inside width': 72,
        'measured height': 98,
        heading: 'pinch',
        fabric: 'Wren',
        lining: 'lined',
      });
      await type(book, 'Windows', 2, {
        room: 'Snug',
        quantity: 2,
        'inside width': '60',
        'left extension': 0,
        'right extension': 0,
        'measured height': 98,
        heading: 'pinch',
        fabric: 'Wren',
      });
    });

    it('works out widths, cuts and yardage', async () => {
      const windows = await table(book, 'Windows');
      // By hand from TRADE’s rules: 72 + 11 + 11 = 94; 98 − 2 = 96; 96 + 8 + 8 = 112.
      expect(windows.cell(1, 'rod width')).toBe(94);
      expect(windows.cell(1, 'finished drop')).toBe(96);
      expect(windows.cell(1, 'widths')).toBe(5);
      expect(windows.cell(1, 'cut length')).toBe(112);
      // 5 × 112 ÷ 36 = 15 5⁄9, up to the next ⅛.
      expect(windows.cell(1, 'yardage')).toBe(15.625);
      expect(windows.cell(1, 'lining yardage')).toBeGreaterThan(0);
      expect(windows.cell(2, 'rod width')).toBe(60);
      expect(windows.cell(2, 'lining yardage')).toBe(0);
      expect(windows.cell(1, 'making charge')).toBe(55);
      expect(windows.cell(3, 'yardage')).toBe('');
    });
    it('adds fabric up, with the break its quantity reaches', async () => {
      const windows = await table(book, 'Windows');
      const fabrics = await table(book, 'Fabrics');
      const needed = (windows.cell(1, 'yardage') as number) + (windows.cell(2, 'yardage') as number);
      expect(fabrics.cell(1, 'needed')).toBeCloseTo(needed, 9);
      expect(fabrics.cell(1, 'price at that quantity')).toBe(needed >= 50 ? 15 : 18);
      expect(fabrics.cell(1, 'cost')).toBeCloseTo(needed * (needed >= 50 ? 15 : 18), 9);
    });
    it('quotes each row, and the parts add up to the total', async () => {
      const quote = await table(book, 'Quote');
      const rod = (94 / 36) * 9;
      const windows = await table(book, 'Windows');
      const rings = windows.cell(1, 'rings') as number;
      const brackets = windows.cell(1, 'brackets') as number;
      expect(quote.cell(1, 'room')).toBe('Bar');
      expect(quote.cell(1, 'what')).toBe('pinch, Wren');
      const costs = await table(book, 'Costs');
      expect(costs.cell(1, 'hardware')).toBeCloseTo(rod + rings * 0.5 + brackets * 4 + 12, 9);
      expect(costs.cell(2, 'installation')).toBe(80);
      const lines = [1, 2].map(
        (row) => [quote.cell(row, 'price') as number, quote.cell(row, 'tax') as number] as const,
      );
      expect(quote.cell(1, 'price')).toBeCloseTo(
        Math.round((costs.cell(1, 'cost') as number) * 1.5 * 100) / 100,
        9,
      );
      // Freight of 25 and three windows hung at 40 stand beside the lines: neither is marked up.
      expect(await valueOf(book, 'Quote_total')).toBeCloseTo(
        lines.reduce((sum, [price, tax]) => sum + price + tax, 25 + 3 * 40),
        9,
      );
      const checks = await table(book, 'Checks');
      expect(checks.block.values.slice(1).map((row) => row[2])).toEqual(Array(9).fill('ok'));
      expect(await valueOf(book, 'Checks_all')).toBe('all checks are well');
    });
    it('notices what does not add up', async () => {
      await type(book, 'Windows', 3, {
        room: 'Hall',
        'inside width': 50,
        'measured height': 98,
        heading: 'grommet',
        fabric: 'Wern',
      });
      const checks = await table(book, 'Checks');
      const looks = checks.block.values
        .slice(1)
        .filter((row) => row[2] === 'look')
        .map((row) => row[0]);
      expect(looks).toContain('windows without a fabric of the list');
      expect(looks).toContain('windows whose yardage could not be worked out');
      expect(looks).toContain('windows whose making charge is not set');
      expect(await valueOf(book, 'Checks_all')).toMatch(/checks want a look/);
    });
  });

  it('takes a quantity typed as 0 for no window, says it among the findings, and its totals stand', async () => {
    const book = engineBook();
    await newJob(book, small);
    await type(book, 'Fabrics', 1, { fabric: 'Wren', 'fabric width': 54, 'price a yd': 20 });
    await type(book, 'Making_charges', 1, { 'your figure': 11 });
    const bar = { room: 'Bar', 'inside width': 72, 'measured height': 98, heading: 'pinch', fabric: 'Wren' };
    await type(book, 'Windows', 1, { ...bar, lining: 'lined' });
    const before = await valueOf(book, 'Quote_total');
    await type(book, 'Windows', 2, { ...bar, room: 'Snug', lining: 'lined', quantity: 0 });
    const windows = await table(book, 'Windows');
    expect(windows.cell(1, 'findings')).toBe('');
    expect(windows.cell(2, 'findings')).toMatch(/^quantity reads 0, so the row is no window\./);
    for (const [heading, figure] of [
      ['rod width', 94],
      ['cut length', 112],
      ['yardage', 0],
      ['lining yardage', 0],
      ['making charge', 0],
    ] as const)
      expect([heading, windows.cell(2, heading)]).toEqual([heading, figure]);
    expect(await valueOf(book, 'Quote_total')).toBe(before);
  });

  it('never quotes a window without yardage, or without a making charge, at a price', async () => {
    const book = engineBook();
    await newJob(book, small);
    await type(book, 'Fabrics', 1, { fabric: 'Wren', 'fabric width': 54, 'price a yd': 20 });
    const bar = { room: 'Bar', 'inside width': 72, 'measured height': 98, heading: 'pinch', fabric: 'Wren' };
    await type(book, 'Windows', 1, bar);
    const shown = async () => {
      const [quote, checks] = [await table(book, 'Quote'), await table(book, 'Checks')];
      const looks = checks.block.values.slice(1).filter((row) => row[2] === 'look');
      return {
        prices: [1, 2, 3].map((row) => quote.cell(row, 'price')),
        lines: [1, 2, 3].map((row) => quote.cell(row, 'line')),
        total: await valueOf(book, 'Quote_total'),
        looks: looks.map((row) => row[0]),
        todo: looks.at(-1)?.[3],
      };
    };
    const NOT_YET = 'cannot be added yet';
    expect(await shown()).toEqual({
      prices: [NOT_YET, '', ''],
      lines: [1, '', ''],
      total: NOT_YET,
      looks: ['windows whose making charge is not set', 'quote’s total against its parts'],
      todo: 'it cannot be added yet: mend the lines above first',
    });
    await type(book, 'Making_charges', 1, { 'your figure': 'none' });
    const { prices, total, looks } = await shown();
    expect([typeof prices[0], typeof total, looks]).toEqual(['number', 'number', []]);
    // A row put in between holds no formulas where the program does not fill them in.
    await type(book, 'Windows', 2, { ...bar, room: 'Hall', yardage: null });
    expect(await shown()).toMatchObject({
      prices: [prices[0], NOT_YET, ''],
      lines: [1, 2, ''],
      total: NOT_YET,
      looks: ['windows whose yardage could not be worked out', 'quote’s total against its parts'],
    });
  });

  /** How many HEM calls stand one upon another below each cell, native formulas passed through. */
  function levels(changes: ReturnType<typeof jobChanges>['changes']): number {
    const cells = new Map<string, string>();
    const key = (sheet: string, row: number, column: number) => `${sheet.toLowerCase()}!${row}!${column}`;
    for (const put of changes.puts ?? []) {
      // One row of a column is enough: the others are the same one row on.
      const rows = put.formula === undefined ? put.area.rows : 1;
      for (let i = 0; i < rows; i++)
        for (let j = 0; j < put.area.columns; j++) {
          const cell = put.formula ?? put.cells?.[i]?.[j];
          const formula = typeof cell === 'object' && cell !== null ? cell.formula : put.formula;
          if (formula !== undefined)
            cells.set(key(put.area.sheet, put.area.row + i, put.area.column + j), formula);
        }
    }
    const names = new Map((changes.newNames ?? []).map((one) => [one.name.toLowerCase(), one.area]));
    const depth = new Map<string, number>();
    const depthOf = (at: string): number => {
      const known = depth.get(at);
      if (known !== undefined) return known;
      depth.set(at, 0);
      const formula = (cells.get(at) ?? '').replace(/"(?:[^"]|"")*"/g, '""');
      const sheet = at.split('!')[0]!;
      const areas = [
        ...formula.matchAll(
          /(?:'[^']+'|[A-Za-z_]\w*)!\$?[A-Z]{1,3}\$?\d+|\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?|[A-Za-z]+_\w+/g,
        ),
      ].flatMap(([text]) => {
        const area = names.get(text.toLowerCase()) ?? readAddress(text, sheet);
        return area === undefined ? [] : [area];
      });
      const below = Math.max(0, ...areas.flatMap((area) => inside(area)).map(depthOf));
      const own = below + (formula.includes('HEM.') ? 1 : 0);
      depth.set(at, own);
      return own;
    };
    const inside = (area: Area): string[] =>
      [...cells.keys()].filter((at) => {
        const [sheet, row, column] = at.split('!');
        return common(area, areaAt(sheet!, Number(row), Number(column))) !== undefined;
      });
    return Math.max(...[...cells.keys()].map(depthOf));
  }

  /** The calls of our functions in a formula, each input as it is written. */
  function callsIn(formula: string): { name: string; inputs: string[] }[] {
    return [...formula.matchAll(/HEM\.([A-Z]+)\(/g)].map(({ 1: name = '', 0: head, index }) => {
      const inputs = [''];
      let depth = 1;
      let quoted = false;
      for (const letter of formula.slice(index + head.length)) {
        if (letter === '"') quoted = !quoted;
        if (!quoted && /[({]/.test(letter)) depth++;
        if (!quoted && /[)}]/.test(letter) && --depth === 0) break;
        if (!quoted && letter === ',' && depth === 1) inputs.push('');
        else inputs[inputs.length - 1] += letter;
      }
      return { name, inputs };
    });
  }

  describe('the template', () => {
    it('has at most two levels of HEM cells', () => {
      const { changes } = jobChanges(small, { sheets: [], tables: [], names: [] });
      expect(levels(changes)).toBe(2);
    });
    it('hands every range and every cell that may be blank over so that blank stays blank', () => {
      const { changes } = jobChanges(small, { sheets: [], tables: [], names: [] });
      const written = (changes.puts ?? []).flatMap(({ formula, cells }) => [
        formula ?? '',
        ...(cells ?? [])
          .flat()
          .map((cell) => (typeof cell === 'object' && cell !== null ? cell.formula : '')),
      ]);
      const calls = written.flatMap((formula) => callsIn(formula));
      expect(calls.length).toBeGreaterThan(10);
      for (const { name, inputs } of calls)
        for (const [at, input] of inputs.entries()) {
          const parameter = functionNamed(name)?.parameters[at];
          if (/^\$?[A-Z]+\$?\d+$/.test(input))
            expect([name, parameter?.name, parameter?.optional]).toEqual([name, parameter?.name, false]);
          // What is in force stands in formulas of its own, never in an empty cell.
          else if (!/^".*"$|^\{|^IF\(|^CHOOSE\(\{/.test(input)) expect(input).toBe('House_rules');
          expect(input).not.toMatch(/:/);
          if (input.startsWith('CHOOSE'))
            expect(input.replace(/IF\(([A-Z]+\d+)="","",\1\)/g, 'x')).toMatch(/^CHOOSE\(\{[\d,]+\}(,x)+\)$/);
        }
      const rules = written.filter((formula) => formula.includes('="",IF('));
      expect(rules).toHaveLength(1);
    });
    it('a second job in the same workbook works by itself', async () => {
      const book = engineBook();
      expect(await newJob(book, small)).toBe(1);
      const before = (await book.contents()).sheets.length;
      expect(await newJob(book, { ...small, unit: 'centimetres' })).toBe(2);
      const { sheets, names } = await book.contents();
      expect(sheets.slice(before).map((one) => one.name)).toEqual(
        sheets.slice(0, before).map((one) => `${one.name} 2`),
      );
      await type(book, 'Fabrics_2', 1, { fabric: 'Wren', 'fabric width': 137 });
      await type(book, 'Windows_2', 1, {
        room: 'Bar',
        'inside width': 152.4,
        'measured height': 250,
        heading: 'pinch',
        fabric: 'Wren',
      });
      const second = await table(book, 'Windows_2');
      // 152.4 cm is 60 in: 11 in, 27.94 cm, each side.
      expect(second.cell(1, 'rod width')).toBeCloseTo(208.28, 9);
      expect((await table(book, 'Windows')).cell(1, 'rod width')).toBe('');
      expect(new Set(names.map((one) => one.name.toLowerCase())).size).toBe(names.length);
    });
    it('steps aside for a name that is taken', async () => {
      const book = engineBook({ fabrics: { rows: [['mine']] } });
      expect(await newJob(book, small)).toBe(2);
      expect((await book.contents()).sheets.map((one) => one.name)).toContain('Windows 2');
    });
    it('stopped midway leaves the workbook as it was', async () => {
      const book = engineBook({ Mine: { rows: [['keep me']] } });
      const before = book.picture();
      const stop = new AbortController();
      const failure = await newJob(book, small, { signal: stop.signal, progress: () => stop.abort() }).catch(
        (thrown: unknown) => thrown,
      );
      expect(failure).toBeInstanceOf(Trouble);
      expect(book.picture()).toBe(before);
    });
  });
});
