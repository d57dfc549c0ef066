import { describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import { cellAsked } from '../../../src/book/asked/asked';
import { MemoryBook } from '../../../src/book/memory';

const bookWith = (formula: string): MemoryBook =>
  new MemoryBook({
    Quote: {
      rows: [
        ['subtotal', 400],
        ['installation', 120],
        ['freight', null],
        ['tax', 'cannot be added yet'],
        ['total', formula],
      ],
    },
    Costs: {
      rows: [['room', 'hardware cost'], ...Array.from({ length: 10 }, (_, at) => [`${at + 1}`, at + 0.1])],
    },
  });
const parts = async (formula: string): Promise<unknown[]> =>
  ((await cellAsked(bookWith(formula), areaAt('Quote', 4, 1))).parts ?? []).map(
    ({ label, value, figures }) => (figures === undefined ? [label, value] : [label, value, figures]),
  );

describe('a total is told by its parts', () => {
  it.each([
    ['=B1+SUM(B2:B3)+B4', [['subtotal', 400], ['installation', 120], ['freight', null], ['tax', 'cannot be added yet']]], // prettier-ignore
    [
      '=IF(ISNUMBER(B1),B1+B2,"")',
      [
        ['subtotal', 400],
        ['installation', 120],
      ],
    ],
    ['=SUM(Costs!B2:B11)', [['hardware cost', 46, 10]]],
    ['=B1+Prices!A1', []],
    ['=1+1', []],
  ])('%s', async (formula, told) => {
    expect(await parts(formula)).toEqual(told);
  });

  it('where no function of ours explains it already', async () => {
    expect(await parts('=HEM.RODWIDTH(B1,0,0)')).toEqual([]);
  });
});
