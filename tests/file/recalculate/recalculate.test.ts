/** What is computed of a workbook and what is kept. HEM.MEASURED(n) gives n. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { hem } from '../../../src/file/hem';
import { listening, opened, scratch, shown, smallBook } from '../book';

const OURS = (number: number, old: number): string =>
  `<f t="array" ref="A1">_xldudf_HEM_MEASURED(${number})</f><v>${old}</v>`;

interface Filled {
  readonly exit: number;
  readonly cells: Record<string, unknown>;
  readonly complained: readonly string[];
  readonly said: readonly string[];
  readonly xml: string;
  readonly path: string;
}

async function filled(
  rows: string,
  given: Parameters<typeof smallBook>[1] = {},
  more: string[] = [],
): Promise<Filled> {
  const folder = scratch();
  writeFileSync(join(folder, 'in.xlsx'), smallBook(rows, given));
  return again(join(folder, 'in.xlsx'), join(folder, 'out.xlsx'), more);
}
async function again(from: string, path: string, more: string[] = []): Promise<Filled> {
  const io = listening();
  const exit = await hem(['fill', from, '-o', path, ...more], io);
  const xml = Buffer.from(unzipSync(readFileSync(path))['xl/worksheets/sheet1.xml'] ?? []).toString();
  const cells = Object.fromEntries(
    [...shown(await opened(path))].map(([cell, value]) => [cell.slice(4), value]),
  );
  return { exit, cells, complained: io.complained, said: io.said, xml, path };
}
const row = (...cells: string[]): string =>
  `<row r="1">${cells.map((cell, at) => `<c r="${String.fromCharCode(65 + at)}1">${cell}</c>`).join('')}</row>`;

describe('values that are kept', () => {
  it('of every formula that depends on no changed HEM cell, byte for byte, though no one could compute it', async () => {
    const { cells, exit, xml } = await filled(
      row(OURS(5, 9), '<f>A1*2</f><v>18</v>', '<f>NOSUCH(1)</f><v>7</v>', '<f>1+1</f><v>99</v>'),
    );
    expect([cells, exit]).toEqual([{ A1: 5, B1: 10, C1: 7, D1: 99 }, 0]);
    expect(xml).toContain('<c r="C1"><f>NOSUCH(1)</f><v>7</v></c><c r="D1"><f>1+1</f><v>99</v></c>');
  });

  it('where the HEM cells are right already, of all cells: the second filling changes no byte', async () => {
    const first = await filled(row(OURS(5, 9), '<f>A1*2</f><v>18</v>', '<f>TODAY()+A1</f><v>3</v>'));
    const second = await again(first.path, `${first.path}.2.xlsx`);
    expect(second.xml).toBe(first.xml);
    const third = await again(second.path, `${first.path}.3.xlsx`);
    expect(readFileSync(third.path).equals(readFileSync(second.path))).toBe(true);
  });

  it('of the day and of chance, and that is said once', async () => {
    const { said, cells } = await filled(row(OURS(5, 9), '<f ca="1">TODAY()</f><v>46000</v>'));
    expect(cells['B1']).toBe(46000);
    expect(said.filter((line) => line.includes('kept as last saved'))).toHaveLength(1);
  });

  it('of a circle, which is named', async () => {
    const { cells, complained, exit } = await filled(
      row(OURS(5, 9), '<f>C1+A1</f><v>1</v>', '<f>B1</f><v>2</v>'),
    );
    expect([cells, exit]).toEqual([{ A1: 5, B1: 1, C1: 2 }, 1]);
    expect(complained).toEqual([
      'One!B1 could not be computed: it refers to itself in a circle. Its old value stays.',
      'One!C1 could not be computed: it refers to itself in a circle. Its old value stays.',
    ]);
  });
});

describe('values that are dropped rather than kept wrong', () => {
  it('the cell is empty, marked to be computed on opening, and named; so is what needs it', async () => {
    const { cells, complained, exit, xml } = await filled(
      row(OURS(5, 9), '<f>NOSUCH(A1)</f><v>7</v>', '<f>B1+1</f><v>8</v>', '<f>A1+1</f><v>10</v>'),
    );
    expect([cells, exit]).toEqual([{ A1: 5, B1: null, C1: null, D1: 6 }, 1]);
    expect(xml).toContain('<c r="B1"><f ca="1">NOSUCH(A1)</f></c><c r="C1"><f ca="1">B1+1</f></c>');
    expect(complained[1]).toMatch(
      /^One!C1 could not be computed: it needs One!B1, which could not be computed/,
    );
  });

  it('HEM cells behind a value that is not there are not computed from a blank', async () => {
    const { cells, exit } = await filled(
      row('<f>B1*2</f>', '<f>NOSUCH(1)</f>', '<f>HEM.MEASURED(A1)</f><v>4</v>'),
    );
    expect([cells, exit]).toEqual([{ A1: null, B1: null, C1: null }, 1]);
  });
});

describe('formulas without a value', () => {
  it('are computed, with what follows them', async () => {
    const { cells, exit } = await filled(
      row('<f>C1+1</f>', '<f>A1*2</f><v>0</v>', '<v>3</v>', '<f t="str">""</f>'),
    );
    expect([cells['A1'], cells['B1'], exit]).toEqual([4, 8, 0]);
  });
  it('so are all of a workbook that says of itself that it is to be computed', async () => {
    const { cells } = await filled(row('<f>2+2</f><v>9</v>', '<f>A1*2</f><v>0</v>'), {
      names: '<calcPr fullCalcOnLoad="1"/>',
    });
    expect(cells).toEqual({ A1: 4, B1: 8 });
  });
  it('and all of one that is asked to be computed anew, with what differs by function', async () => {
    const { cells, said } = await filled(row('<f>SUM(2,2)</f><v>9</v>', '<f>A1*2</f><v>8</v>'), {}, [
      '--recalculate',
    ]);
    expect(cells).toEqual({ A1: 4, B1: 8 });
    expect(said.at(-1)).toBe(
      'SUM: 1 of 1 formula differ from the file, first One!A1, which held 9 and now is 4',
    );
  });
});

describe('what depends on what', () => {
  it('a cell that OFFSET or INDIRECT finds counts, wherever it stands', async () => {
    const { cells } = await filled(
      row(
        OURS(5, 9),
        '<f>INDIRECT("D1")</f><v>0</v>',
        '<f>SUM(OFFSET(D1,0,-3))</f><v>0</v>',
        '<f>A1+1</f><v>10</v>',
      ),
    );
    expect(cells).toEqual({ A1: 5, B1: 6, C1: 5, D1: 6 });
  });
  it('a place counts for nothing where only its row is asked', async () => {
    const { cells, exit } = await filled(row(OURS(5, 9), '<f>ROW(B1)+ROWS(A$1:B1)</f><v>2</v>'));
    expect([cells['B1'], exit]).toEqual([2, 0]);
  });
  it('a chain of 20,000 rows is followed to its end', async () => {
    const rows = Array.from({ length: 20_000 }, (_, at) =>
      at === 0 ? row(OURS(5, 9)) : `<row r="${at + 1}"><c r="A${at + 1}"><f>A${at}+1</f><v>0</v></c></row>`,
    );
    const { cells, exit } = await filled(rows.join(''));
    expect([cells['A20000'], exit]).toEqual([20_004, 0]);
  }, 60_000);
  it('the cells that an array of old fills count as changed with it', async () => {
    const { cells } = await filled(
      '<row r="1"><c r="A1"><f t="array" ref="A1:A3">HEM.MEASURED(5)</f><v>7</v></c><c r="B1"><f>SUM(A1:A3)</f><v>21</v></c></row><row r="2"><c r="A2"><v>7</v></c></row><row r="3"><c r="A3"><v>7</v></c></row>',
    );
    expect(cells).toEqual({ A1: 5, B1: 15, A2: 5, A3: 5 });
  });
});

describe('what is refused', () => {
  it('a range over several sheets, given to a HEM function', async () => {
    const { complained, exit } = await filled(row('<f>HEM.MEASURED(One:One!B1)</f><v>1</v>'));
    expect(exit).toBe(1);
    expect(complained[0]).toMatch(/it hands a range over several sheets/);
  });
  it('more time than --seconds allows, and more memory than --memory', async () => {
    const io = listening();
    const folder = scratch();
    writeFileSync(join(folder, 'in.xlsx'), smallBook(row('<f>1+1</f>')));
    const asked = ['fill', join(folder, 'in.xlsx'), '-o', join(folder, 'out.xlsx')];
    expect(await hem([...asked, '--memory', '1'], io)).toBe(3);
    expect(await hem([...asked, '--seconds', 'soon'], io)).toBe(2);
    expect(io.complained).toEqual([
      'It needs more than the 1 MB given by --memory, and nothing was written. Give it more, or split the workbook.',
      '--seconds reads “soon”, which is no number above 0. Give it one, or leave it out.',
    ]);
  });
});
