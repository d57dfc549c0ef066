import { describe, expect, it } from 'vitest';
import { orderPapers } from '../../../src/core/papers/order';
import { count, entryText, words, type Paper } from '../../../src/core/papers/paper';
import type { JobCloth } from '../../../src/core/papers/job';
import { readHouse } from '../../../src/core/house/house';
import { WindowWork } from '../../../src/core/window/job';
import { inches, jobWith, READING_ROOM, windowAs } from './invented';

/** All that is printed, block after block. */
const textOf = ({ blocks }: Paper): string =>
  blocks
    .flatMap((block) => {
      switch (block.is) {
        case 'pairs':
          return [
            block.title,
            ...block.pairs.map(
              ({ label, entry }) => `${label}: ${entry === undefined ? '____' : entryText(entry)}`,
            ),
          ];
        case 'table':
          return block.rows.map(({ cells }) =>
            cells.map((one) => (one === undefined ? '' : entryText(one))).join(' | '),
          );
        case 'notes':
          return [block.title, ...block.lines.map(entryText)];
        default:
          return [];
      }
    })
    .join('\n');

const GARDEN: JobCloth = { name: 'garden print', supplier: words('Quill Mill', 'Fabrics!B5') };
const windows = [windowAs({ ...READING_ROOM, quantity: 6 })];
const ordersOf = (cloth: Partial<JobCloth>): readonly Paper[] =>
  orderPapers(jobWith(windows, { cloths: [{ ...GARDEN, ...cloth }] }));

describe('the fabric order', () => {
  it('is one for each supplier; what has none is apart, with a line to write on', () => {
    const papers = ordersOf({});
    expect(papers.map(({ title }) => title)).toEqual(['Fabric order, Quill Mill', 'Fabric order']);
    expect(textOf(papers[1]!)).toContain('To: ____');
    expect(textOf(papers[1]!)).toContain('lining');
  });

  it('orders what the job’s own table says, at its cell', () => {
    const [paper] = ordersOf({ toOrder: { as: 'yardage', value: 112, at: 'Fabrics!P5' } });
    expect(JSON.stringify(paper?.blocks)).toContain('"at":"Fabrics!P5"');
    expect(textOf(paper!)).toContain('Quantity: 112 yd');
  });

  // By hand: drop 96 + 8 + 8 = 112 in a cut. 60 yd ÷ 112 in = 19 cuts, 19 × 112 = 2,128 in = 59 yd 4 in;
  // six windows of 6 widths (270 in and hems over 54) are 36 cuts: 19 and 17, 17 × 112 = 52 yd 32 in.
  it('asks of each roll no less than its cuts', () => {
    const [paper] = ordersOf({ wholeRoll: count(60) });
    expect(textOf(paper!)).toContain('1 roll | no shorter than 59 yd 4 in | 19 cuts in each');
    expect(textOf(paper!)).toContain('1 roll | no shorter than 52 yd 32 in | 17 cuts in each');
  });

  it('says that nothing is ordered to reach the pattern’s start, or how much of each piece is', () => {
    const patterned = { ...READING_ROOM, verticalRepeat: inches(25) };
    const said = (start: string): string => {
      const { rules } = readHouse([['pattern start', start]]);
      const one = windowAs(patterned, 1, { work: new WindowWork(patterned, rules) });
      return textOf(orderPapers(jobWith([one], { cloths: [GARDEN], rules }))[0]!);
    };
    expect(said('nothing')).toContain(
      'The lengths begin at the motif: cut there, or tell us before you cut, since up to 25 in more is then needed.',
    );
    expect(said('one repeat')).toContain('25 in of each piece is for the pattern’s start');
    expect(said('one repeat')).not.toContain('Nothing is ordered');
    expect(textOf(ordersOf({})[0]!)).not.toContain('pattern’s start');
  });

  it('asks for one piece only where a put-up is long enough', () => {
    expect(textOf(ordersOf({ wholeRoll: count(150) })[0]!)).toContain('One continuous piece');
    const unknown = textOf(ordersOf({})[0]!);
    expect(unknown).not.toContain('One continuous piece');
    expect(unknown).toContain('none shorter than 112 in');
  });

  it('holds the order for the cutting, of one lot, without substitution', () => {
    const said = textOf(ordersOf({})[0]!);
    for (const term of [
      'approved in writing',
      '36 in with a whole repeat',
      'one dye lot',
      'No substitution',
      'Inspect before',
    ])
      expect(said).toContain(term);
    expect(said).toContain('Sidemark: The Pellmere');
  });

  it('asks for the lot’s certificate on a public job alone', () => {
    expect(textOf(ordersOf({})[0]!)).not.toContain('Certificate');
    const job = jobWith(windows, { publicBuilding: true, cloths: [GARDEN] });
    expect(textOf(orderPapers(job)[0]!)).toContain('Certificate: of this lot');
  });

  it('orders nothing that the client sends', () => {
    const titles = ordersOf({ supplier: words('customer’s own') }).map(({ title }) => title);
    expect(titles).toEqual(['Fabric order']);
  });
});
