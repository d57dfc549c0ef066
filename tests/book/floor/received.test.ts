import { describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import { receivedRolls } from '../../../src/book/floor/received';
import { newJob, USUAL_JOB } from '../../../src/book/template';
import { INCHES } from '../../../src/core/exact/unit';
import { engineBook } from '../engine-book';

const ROLLS = [
  ['Cloth', 'Dye lot', 'Roll length (yd)', 'Flaws'],
  ['Ostrel linen', 'A', 58.5, '12 to 12 1/2; 30'],
  ['lining', 'L 7', 100, null],
];

describe('the rolls in hand', () => {
  it('are read from the workbook’s own table of rolls, wherever it stands', async () => {
    const book = engineBook({
      Store: { rows: [['Store'], [], ...ROLLS] },
      Floor: { rows: [['Room', 'Fabric', 'Length']] },
    })
      .withTable('Openings', areaAt('Floor', 0, 0, 1, 3))
      .withTable('In_store', areaAt('Store', 2, 0, 3, 4));
    const seen = await receivedRolls(book, INCHES);
    expect(seen?.source).toBe('In_store');
    expect(seen?.rolls.get('ostrel linen')).toEqual([
      { length: '58.5', lot: 'A', flaws: '12 to 12 1/2; 30' },
    ]);
    expect(seen?.rolls.get('lining')).toHaveLength(1);
  });

  it('are read from a sheet of rolls that is no table', async () => {
    const book = engineBook({ 'Rolls received': { rows: [['Received in May'], ...ROLLS] } });
    expect((await receivedRolls(book, INCHES))?.source).toBe('Rolls received');
  });

  it('are none where no table holds a roll, nor from a cutter’s list', async () => {
    const list = [
      ['cloth', 'roll', 'dye lot', 'roll length (yd)', 'cut length (in)'],
      ['Ostrel linen', 1, '', 60, 112],
    ];
    const book = engineBook({ 'Cutting list of rolls': { rows: list } });
    expect(await receivedRolls(book, INCHES)).toBeUndefined();
  });

  it('are read from the sheet of rolls of a new job', async () => {
    const book = engineBook();
    await newJob(book, USUAL_JOB);
    expect(await receivedRolls(book, INCHES)).toBeUndefined();
    const table = (await book.contents()).tables.find(({ name }) => name === 'Rolls');
    const { sheet, row, column } = table!.area;
    await book.inOneStep('Type', (write) =>
      write({
        puts: [
          {
            area: areaAt(sheet, row + 1, column, 1, 4),
            cells: [['Ostrel linen', 'A', 58.5, '12 to 12 1/2; 30']],
          },
        ],
      }),
    );
    const seen = await receivedRolls(book, INCHES);
    expect(seen?.rolls.get('ostrel linen')).toEqual([
      { length: '58.5', lot: 'A', flaws: '12 to 12 1/2; 30' },
    ]);
  });
});
