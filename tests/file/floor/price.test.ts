import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { hem } from '../../../src/file/hem';
import { opened, scratch, shown } from '../book';

const demo = fileURLToPath(new URL('../../../src/file/demo/measures.xlsx', import.meta.url));
const FABRIC = ['--fabric', 'Nocturne dimout', '--seconds', '1'];

async function floor(...words: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const exit = await hem(['floor', demo, ...FABRIC, ...words], {
    out: (line) => void out.push(line),
    err: (line) => void err.push(line),
    progress: () => undefined,
    input: () => undefined,
  });
  return { exit, out: out.join('\n'), err: err.join('\n') };
}

interface Data {
  readonly price?: {
    readonly orders: readonly {
      readonly lines: readonly {
        kind: string;
        what: string;
        quantity: number;
        cost: number;
        says?: string;
      }[];
      readonly sum: number;
      readonly total: number;
    }[];
    readonly findings: readonly { sentence: string }[];
  };
  readonly whatIf?: readonly { price?: number; rolls?: number; direction: string }[];
}
const data = async (...words: string[]): Promise<Data> =>
  JSON.parse((await floor('--json', ...words)).out) as Data;

describe('the price of a floor on the command line', () => {
  it('is left out where no price is known', async () => {
    expect((await floor()).out).not.toMatch(/^Price$/m);
    expect((await data()).price).toBeUndefined();
  }, 60_000);

  it('takes breaks, the least cut and whole rolls, and prints what its data says', async () => {
    // 26 yd: cut 26 × 24 = 624; a roll of 30 yd at 20 is 600.
    const words = ['--price', '0 28.50; 20 24', '--least', '10', '--whole-roll', '30 at 20'];
    const { price } = await data(...words);
    const face = price?.orders[0]?.lines.find(({ kind }) => kind === 'face');
    expect(face).toMatchObject({ quantity: 30, cost: 600, says: '1 whole roll of 30 yd at 20.00' });
    const { out } = await floor(...words);
    expect(out).toMatch(/^Price$/m);
    expect(out).toMatch(/^ {2}Nocturne dimout +30 yd +600\.00$/m);
    expect(out).toMatch(new RegExp(`^ {2}total +${price?.orders[0]?.total.toFixed(2) ?? ''}$`, 'm'));
  }, 60_000);

  it('costs other choices as the quote does', async () => {
    const words = ['--price', '0 28.50; 20 24', '--whole-roll', '30 at 20', '--roll', '30'];
    const { price, whatIf } = await data(...words, '--repeats', 'every cut up');
    const same = whatIf?.find(({ direction }) => direction === 'up the roll');
    expect(same).toMatchObject({
      rolls: 1,
      price: price?.orders[0]?.lines.find(({ kind }) => kind === 'face')?.cost,
    });
  }, 60_000);

  it.each([
    [['--price', 'dear'], 'Nocturne dimout, the price reads “dear”'],
    [['--price', '20', '--whole-roll', '30'], '--whole-roll reads “30”'],
    [['--price', '20', '--least', 'few'], 'the least that is cut reads “few”'],
    [['--lining-price=-3'], 'lining, the price reads'],
  ])(
    '%s is refused in a sentence',
    async (words, sentence) => {
      const { exit, err } = await floor(...words);
      expect(exit).toBe(2);
      expect(err).toContain(sentence);
    },
    60_000,
  );

  it('is written beside the cutter’s list, and its formulas add up', async () => {
    const path = join(scratch(), 'priced.xlsx');
    const { price } = await data('--price', '28.50', '-o', path);
    const file = await opened(path);
    expect(file.sheets.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['Cutting list', 'Floor price']),
    );
    const all = shown(file);
    const cells = Array.from({ length: 40 }, (_, row) =>
      ['A', 'B'].map((column) => all.get(`Floor price!${column}${row + 1}`)),
    );
    const said = (label: string) => cells.find(([one]) => one === label)?.[1];
    expect(said('total')).toBe(price?.orders[0]?.total);
    expect(said('check')).toBe('ok');
  }, 60_000);
});
