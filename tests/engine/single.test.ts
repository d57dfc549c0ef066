import { expect, it } from 'vitest';
import { Engine } from '../../src/engine/engine';
import { nodeLibrary } from '../../src/engine/node';

it.each([
  ['=SINGLE(A1:A4)', 2, 30],
  ['=SINGLE(A1:A4)*2', 0, 20],
  ['=SINGLE(A1:A4)', 6, '#VALUE!'],
  ['=SINGLE(A1)', 6, 10],
  ['=SINGLE(SEQUENCE(3,1,7))', 6, 7],
  ['=SINGLE(5)', 6, 5],
])('%s in row %d, counted from 0, is %s', async (formula, row, value) => {
  const engine = new Engine(nodeLibrary(), {
    names: [],
    sheets: [
      {
        name: 'One',
        cells: [
          ...[10, 20, 30, 40].map((number, at) => ({ row: at, column: 0, value: number })),
          { row, column: 2, value: null, formula },
        ],
      },
    ],
  });
  expect((await engine.calculate()).map((one) => one.value)).toEqual([value]);
});
