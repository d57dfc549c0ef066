import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { unzipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { cellText, readAddress } from '../../src/book/address';
import { inArea } from '../../src/file/recalculate/collect';
import { hem } from '../../src/file/hem';
import { formulaAt, golden, listening, opened, scratch, shown, smallBook, stale, type Heard } from './book';

const LONG = 60_000;
interface Expected {
  readonly cells: Readonly<Record<string, unknown>>;
}
const expected = (name: string): Expected => JSON.parse(readFileSync(golden(name), 'utf8')) as Expected;

async function filled(book: string | Uint8Array): Promise<{ path: string; exit: number; io: Heard }> {
  const folder = scratch();
  const from = typeof book === 'string' ? golden(book) : join(folder, 'in.xlsx');
  if (typeof book !== 'string') writeFileSync(from, book);
  const path = join(folder, 'out.xlsx');
  const io = listening();
  return { path, exit: await hem(['fill', from, '-o', path], io), io };
}

/** A number as a spreadsheet shows it: fifteen digits, whatever rounding lies beyond them. */
const inDigits = (value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(15)) : value;

const parts = (path: string): Record<string, Uint8Array> => unzipSync(readFileSync(path));
function changedParts(one: string, other: string): string[] {
  const [before, after] = [parts(one), parts(other)];
  return [...new Set([...Object.keys(before), ...Object.keys(after)])].filter(
    (name) => Buffer.compare(before[name] ?? Buffer.alloc(0), after[name] ?? Buffer.alloc(0)) !== 0,
  );
}

describe.each(['floor', 'spills'])('the golden workbook %s', (name) => {
  let out: Awaited<ReturnType<typeof filled>>;
  beforeAll(async () => {
    out = await filled(stale(golden(`${name}.xlsx`)));
  }, LONG);

  it('holds the values worked by hand, cell for cell', async () => {
    const cells = shown(await opened(out.path));
    const { cells: wanted } = expected(`${name}.json`);
    const found = Object.fromEntries(
      Object.keys(wanted).map((cell) => [cell, inDigits(cells.get(cell) ?? null)]),
    );
    expect(found).toEqual(
      Object.fromEntries(Object.entries(wanted).map(([cell, value]) => [cell, inDigits(value)])),
    );
  });

  it(
    'filled once more changes nothing, not even a byte of a part',
    async () => {
      const again = join(scratch(), 'again.xlsx');
      await hem(['fill', out.path, '-o', again], listening());
      expect(changedParts(out.path, again)).toEqual([]);
    },
    LONG,
  );

  it(
    'opens in another office program, which reads the same values',
    async ({ skip }) => {
      if (spawnSync('soffice', ['--version']).status !== 0) skip('soffice is not installed here');
      const folder = scratch();
      execFileSync(
        'soffice',
        [
          `-env:UserInstallation=file://${folder}/profile`,
          '--headless',
          '--convert-to',
          'xlsx:Calc MS Excel 2007 XML',
          '--outdir',
          folder,
          out.path,
        ],
        { stdio: 'ignore' },
      );
      const other = shown(await opened(join(folder, basename(out.path))));
      // Its own formulas it computes itself, calls it does not know to #NAME?; the rest it must read alike.
      const file = await opened(out.path);
      for (const { name: sheet, seen } of file.sheets) {
        const arrays = seen.rows
          .flatMap(({ cells }) => cells)
          .flatMap(({ formula }) => readAddress(formula?.ref ?? '') ?? []);
        for (const { cells } of seen.rows)
          for (const { row, column, value, formula } of cells) {
            const cell = `${sheet}!${cellText(row, column)}`;
            const filledByOne = arrays.some((area) => inArea(area, row, column));
            if (value !== null && formula === undefined && !filledByOne)
              expect([cell, other.get(cell)]).toEqual([cell, value]);
          }
      }
      expect(other.size).toBeGreaterThan(20);
    },
    LONG,
  );
});

describe('what stays as it was', () => {
  it(
    'of a workbook with chart, picture, notes, formats, validation and custom XML: all but sheets and marks',
    async () => {
      const { path, exit } = await filled('floor.xlsx');
      expect(exit).toBe(0);
      expect(changedParts(golden('floor.xlsx'), path).sort()).toEqual([
        '[Content_Types].xml',
        'xl/_rels/workbook.xml.rels',
        'xl/metadata.xml',
        'xl/worksheets/sheet1.xml',
        'xl/worksheets/sheet3.xml',
      ]);
      const names = Object.keys(parts(path));
      for (const kind of [
        'charts/chart',
        'media/image',
        'comments/comment',
        'tables/table',
        'customXml/item1.xml',
      ])
        expect(names.some((one) => one.includes(kind))).toBe(true);
    },
    LONG,
  );

  it(
    'of a sheet that is computed: everything but its cells',
    async () => {
      const { path } = await filled('floor.xlsx');
      const around = (file: string): string =>
        Buffer.from(parts(file)['xl/worksheets/sheet1.xml'] ?? [])
          .toString()
          .replace(/<c [\s\S]*?(?:\/>|<\/c>)/g, '<c/>');
      expect(around(path)).toBe(around(golden('floor.xlsx')));
      expect(around(path)).toContain('<conditionalFormatting');
      expect(around(path)).toContain('<dataValidation');
    },
    LONG,
  );

  it(
    'cells without a formula, to the letter',
    async () => {
      const { path } = await filled('spills.xlsx');
      const xml = Buffer.from(parts(path)['xl/worksheets/sheet1.xml'] ?? []).toString();
      expect(xml).toContain('<c r="H4" t="inlineStr"><is><t>typed here</t></is></c>');
      expect(xml).toContain('<c r="A8" t="s"><v>4</v></c>');
      expect(xml).toContain('<c r="B16" t="s"><v>1</v></c>');
    },
    LONG,
  );
});

describe('how calls of HEM are stored', () => {
  it(
    'typed by another program, they become formulas that may spill, with the prefix Excel knows',
    async () => {
      const { path } = await filled('floor.xlsx');
      const xml = Buffer.from(parts(path)['xl/worksheets/sheet1.xml'] ?? []).toString();
      expect(xml).toMatch(
        /<c r="E5"( s="\d+")? cm="1"><f t="array" ref="E5">_xldudf_HEM_RODWIDTH\(B5,,,HouseRules\)<\/f><v>106\.5<\/v><\/c>/,
      );
      expect(Buffer.from(parts(path)['xl/metadata.xml'] ?? []).toString()).toContain('fDynamic="1"');
    },
    LONG,
  );

  it(
    'a link a program broke, [2]!_xldudf_HEM_…, is mended',
    async () => {
      const { path } = await filled('spills.xlsx');
      expect(formulaAt(await opened(path), 'Rolls!F9')).toBe('_xldudf_HEM_RODWIDTH(60,0,0)');
    },
    LONG,
  );

  it(
    'the calculation chain knows which cells became arrays',
    async () => {
      const { path } = await filled('spills.xlsx');
      const chain = Buffer.from(parts(path)['xl/calcChain.xml'] ?? []).toString();
      expect(chain).toContain('<c r="A16" i="1" a="1"/>');
      expect(chain).toContain('<c r="E9" a="1"/>');
      expect(chain).toContain('<c r="A18" i="1"/>');
    },
    LONG,
  );
});

const EMPTY = 'It shows no value until a spreadsheet program computes it.';

describe('formulas that cannot be computed', () => {
  it(
    'are named each with its reason, the others computed, exit 1',
    async () => {
      const { exit, io } = await filled(stale(golden('spills.xlsx')));
      expect(exit).toBe(1);
      expect(io.complained).toEqual([
        'Spills!A6 shows #SPILL!: it wants 3 × 1 cells and Spills!A8 is in the way. Clear that, or move the formula.',
        'Spills!B6 shows #SPILL!: it wants 1 × 3 cells and the merged cell Spills!C6:D6 is in the way. Clear that, or move the formula.',
        `Spills!B18 could not be computed: it points into another workbook ([1]). ${EMPTY}`,
        `Spills!C18 could not be computed: it needs Spills!B18, which could not be computed. ${EMPTY}`,
        `Spills!D18 could not be computed: it calls NOSUCH, which is not known here. ${EMPTY}`,
        `Spills!E18 could not be computed: it needs Spills!D18, which could not be computed. ${EMPTY}`,
        `Spills!F18 could not be computed: it names Undefined, which is defined nowhere here. ${EMPTY}`,
        'Spills!G18 could not be computed: it refers to itself in a circle. Its old value stays.',
        'Spills!G19 could not be computed: it refers to itself in a circle. Its old value stays.',
      ]);
    },
    LONG,
  );

  it(
    'days of a workbook that counts from 1904 are left alone',
    async () => {
      const { exit, io, path } = await filled(
        smallBook(
          '<row r="1"><c r="A1"><f>YEAR(B1)</f></c><c r="B1"><v>44926</v></c><c r="C1"><f>B1+1</f></c></row>',
          {
            settings: '<workbookPr date1904="1"/>',
          },
        ),
      );
      expect(exit).toBe(1);
      expect(io.complained[0]).toMatch(
        /^One!A1 could not be computed: it counts days in a workbook whose days begin in 1904/,
      );
      expect(Object.fromEntries(shown(await opened(path)))).toEqual({
        'One!A1': null,
        'One!B1': 44926,
        'One!C1': 44927,
      });
    },
    LONG,
  );

  it(
    'a formula no one can read keeps the value it has, and is named where it has none',
    async () => {
      const kept = await filled(smallBook('<row r="1"><c r="A1"><f>SUM((1,2</f><v>3</v></c></row>'));
      expect([kept.exit, kept.io.complained]).toEqual([0, []]);
      const { exit, io } = await filled(smallBook('<row r="1"><c r="A1"><f>SUM((1,2</f></c></row>'));
      expect(exit).toBe(1);
      expect(io.complained).toEqual([
        `One!A1 could not be computed: it cannot be read as a formula. ${EMPTY}`,
      ]);
    },
    LONG,
  );

  it(
    'a refusal of ours is an answer: the cell shows it, the report says why, exit 0',
    async () => {
      const { exit, io } = await filled('floor.xlsx');
      expect(exit).toBe(0);
      expect(io.said).toContain(
        "'Floor 3'!E9 shows #VALUE!: opening_width is blank. Enter a length, or point at the cell that holds it.",
      );
    },
    LONG,
  );
});

describe('writing', () => {
  it(
    'into the file it came from replaces it whole and leaves nothing beside it',
    async () => {
      const folder = scratch();
      const path = join(folder, 'quote.xlsx');
      copyFileSync(golden('floor.xlsx'), path);
      expect(await hem(['fill', path, '-o', path], listening())).toBe(0);
      expect(shown(await opened(path)).get('Quote!B9')).toBeCloseTo(2657.27, 10);
      expect(readdirSync(folder)).toEqual(['quote.xlsx']);
    },
    LONG,
  );

  it(
    'keeps a workbook with macros whole, and asks for its ending',
    async () => {
      const folder = scratch();
      const from = join(folder, 'in.xlsm');
      const macros = String.fromCharCode(...Array.from({ length: 256 }, (_, at) => at));
      writeFileSync(
        from,
        smallBook('<row r="1"><c r="A1"><f>1+1</f></c></row>', { parts: { 'xl/vbaProject.bin': macros } }),
      );
      const io = listening();
      expect(await hem(['fill', from, '-o', join(folder, 'out.xlsx')], io)).toBe(2);
      expect(io.complained[0]).toMatch(/must end in \.xlsm/);
      expect(existsSync(join(folder, 'out.xlsx'))).toBe(false);
      expect(await hem(['fill', from, '-o', join(folder, 'out.xlsm')], listening())).toBe(0);
      expect(changedParts(from, join(folder, 'out.xlsm'))).toEqual(['xl/worksheets/sheet1.xml']);
    },
    LONG,
  );

  it(
    'says where it cannot',
    async () => {
      const folder = scratch();
      const said = async (to: string): Promise<string> => {
        const io = listening();
        expect(await hem(['fill', golden('floor.xlsx'), '-o', to], io)).toBe(3);
        return io.complained.join('\n');
      };
      expect(await said(join(folder, 'no', 'out.xlsx'))).toMatch(/^The folder “.*” is not there\./);
      writeFileSync(join(folder, 'open.xlsx'), 'x');
      writeFileSync(join(folder, '~$open.xlsx'), 'x');
      expect(await said(join(folder, 'open.xlsx'))).toMatch(
        /is open in a spreadsheet program\. Close it there/,
      );
      expect(readFileSync(join(folder, 'open.xlsx'), 'utf8')).toBe('x');
    },
    LONG,
  );
});
