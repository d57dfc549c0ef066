import { describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import type { CellValue } from '../../../src/book/book';
import { readFloor } from '../../../src/book/floor/floor';
import { writeFloorPrice } from '../../../src/book/floor/price-sheet';
import { priceFloor, readClothPrice, NOTHING_TYPED } from '../../../src/book/floor/prices';
import { rulesNames, readRules } from '../../../src/book/rule-lines';
import { survey } from '../../../src/book/survey';
import { WANTED } from '../../../src/book/wanted';
import { INCHES } from '../../../src/core/exact/unit';
import type { Empties } from '../../../src/engine/functions';
import { engineBook, HOSTS } from '../engine-book';

const LIST = [
  ['Room', 'Type', 'Rod', 'Drop', 'Style', 'Fabric', 'Fabric W', 'Lining', 'Qty'],
  [401, 'King', 105, 96, 'pinch', 'Ostrel linen', 54, 'lined', 10],
  [402, 'Suite', 105, 96, 'pinch', 'Fen voile', 54, null, 2],
];

async function written(empties: Empties, ...rules: readonly (readonly [string, CellValue])[]) {
  const all = [['labor pinch', 30], ['labor lined', 10], ['freight', 85], ['sell rate', 0.5], ...rules];
  const book = engineBook({ Floor: { rows: LIST }, Rules: { rows: all as CellValue[][] } }, empties);
  await book.inOneStep('Set up', (write) =>
    write({ newNames: [{ name: 'House_rules', area: areaAt('Rules', 0, 0, all.length, 2) }] }),
  );
  const [name] = await rulesNames(book);
  const { read } = await survey(book, WANTED, INCHES, areaAt('Floor', 0, 0));
  const floor = readFloor(read, await readRules(book, name));
  const price = (name: string) => readClothPrice('', { ...NOTHING_TYPED, price: name }, INCHES).price!;
  const priced = priceFloor(
    floor,
    new Map([
      ['Ostrel linen', price('0 30; 100 25')],
      ['Fen voile', price('12.37')],
      ['lining', price('8')],
    ]),
  );
  const { sheet } = await writeFloorPrice(book, floor, priced);
  const [block] = await book.read([areaAt(sheet, 0, 0, 60, 9)]);
  const rows = block!.values;
  const said = (label: string) => rows.filter((row) => row[0] === label).map((row) => row[1]);
  return { book, priced, rows, said, formulas: block!.formulas, sheet };
}

describe.each(HOSTS)('the price of a floor as a sheet, empties as %s', (_host, empties) => {
  it.each(['line', 'invoice'])('adds up by formulas to what was worked out, tax by %s', async (basis) => {
    const { priced, said, rows, formulas } = await written(
      empties,
      ['tax rate', 0.0725],
      ['tax basis', basis],
      ['discount', 0.035],
    );
    const { whole } = priced;
    expect(said('total')).toEqual([whole.total.toNumber()]);
    expect(said('tax')).toEqual([whole.tax.toNumber()]);
    expect(said('taken off')).toEqual([whole.discount.toNumber()]);
    expect(said('due with the order')).toEqual([whole.deposit.toNumber()]);
    expect(said('check')).toEqual(['ok']);
    expect(rows.slice(4, 4 + whole.lines.length).map((row) => row[6])).toEqual(
      whole.lines.map(({ price }) => price.toNumber()),
    );
    expect(formulas.flat().filter(Boolean).length).toBeGreaterThan(6);
  });

  it('says look once a line is changed', async () => {
    const { book, sheet, rows } = await written(empties, ['tax rate', 0.0725]);
    await book.inOneStep('Type', (write) => write({ puts: [{ area: areaAt(sheet, 4, 6), cells: [[1]] }] }));
    const check = rows.findIndex((row) => row[0] === 'check');
    expect((await book.read([areaAt(sheet, check, 1)]))[0]!.values).toEqual([['look']]);
  });

  it('keeps a mock-up and the rest apart, each with its own totals, and says what it adds', async () => {
    const { priced, said, rows } = await written(
      empties,
      ['mock up windows', 2],
      ['mock up of', 'each room type'],
    );
    expect(said('order').slice(1)).toEqual(['mock-up', 'the rest']);
    expect(said('total')).toEqual([
      priced.mockUp!.first.total.toNumber(),
      priced.mockUp!.rest.total.toNumber(),
    ]);
    expect(said('check')).toEqual(['ok', 'ok']);
    expect(
      rows.flat().filter((one) => String(one).startsWith('The mock-up, 4 windows of 2 room types')),
    ).toHaveLength(1);
  });

  it('is one step, and a second one stands beside the first under names of its own', async () => {
    const { book, priced, sheet } = await written(empties);
    expect(sheet).toBe('Floor price');
    const steps = book.undoable.length;
    const { read } = await survey(book, WANTED, INCHES, areaAt('Floor', 0, 0));
    const again = await writeFloorPrice(book, readFloor(read, undefined), priced);
    expect(again.sheet).toBe('Floor price 2');
    expect(book.undoable).toHaveLength(steps + 1);
  });
});
