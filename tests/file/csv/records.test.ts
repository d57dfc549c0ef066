import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellsIn, recordsIn } from '../../../src/file/csv/records';

const rowsOf = (text: string, last = true): string[][] => {
  const bytes = Buffer.from(text);
  const { places } = recordsIn(bytes, ','.charCodeAt(0), last);
  return Array.from({ length: places.length / 2 }, (_, at) =>
    cellsIn(bytes.toString('utf8', places[at * 2], places[at * 2 + 1]), ','),
  );
};

describe('the rows of a text file', () => {
  it('end at any line end, mixed as they may be', () => {
    expect(rowsOf('a,b\r\n1,2\n3,4\r5,6')).toEqual([
      ['a', 'b'],
      ['1', '2'],
      ['3', '4'],
      ['5', '6'],
    ]);
  });

  it('keep a line end that stands inside quotation marks', () => {
    expect(rowsOf('a,"b\r\nc"\n"d ""e""\n",f\n')).toEqual([
      ['a', 'b\r\nc'],
      ['d "e"\n', 'f'],
    ]);
  });

  it.each([
    ['an inch mark within a cell', '84 1/2",7\' 6"', ['84 1/2"', '7\' 6"']],
    ['a quotation mark that closes too early', '"Big" room,b', ['"Big" room', 'b']],
    ['empty cells', ',"",', ['', '', '']],
  ])('take %s as it stands', (_, text, cells) => {
    expect(rowsOf(text)).toEqual([cells]);
  });

  it('wait for the end of a row, and for the line feed after a return', () => {
    expect(recordsIn(Buffer.from('a\r'), 44, false)).toEqual({ places: [], rest: 0, open: false });
    expect(recordsIn(Buffer.from('a\n"b\n'), 44, false)).toEqual({ places: [0, 1], rest: 2, open: true });
  });

  it('are the same read from any row on', () => {
    const piece = fc.constantFrom('a', '"', '""', ',', '\n', '\r\n', '"x,\ny"', 'é');
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 16 }), fc.nat(), (pieces, chosen) => {
        const text = `${pieces.join('')}\n`;
        const { places, open } = recordsIn(Buffer.from(text), 44, true);
        if (open || places.length === 0) return;
        const from = places[(chosen % (places.length / 2)) * 2] as number;
        const later = Buffer.from(text).subarray(from).toString();
        expect(rowsOf(later)).toEqual(rowsOf(text).slice(-rowsOf(later).length));
        expect(rowsOf(text)).toHaveLength(places.length / 2);
      }),
    );
  });
});
