import { describe, expect, it } from 'vitest';
import {
  answer,
  finding,
  noAnswer,
  Refusal,
  refuse,
  renamed,
  step,
  numberFigure,
} from '../../../src/core/cell/answer';
import { parameter } from '../../../src/core/findings/parameters';

describe('a finding', () => {
  const found = finding('doesNotCover', parameter('widths'), '2', '3 in');

  it('is said in the words of a function until a table’s are known', () => {
    expect(found).toMatchObject({ code: 'doesNotCover', weight: 'check', about: 'widths' });
    expect(found.sentence).toMatch(/Check widths and fabric_width\.$/);
    const own = renamed(found, (key) => (key === 'fabricWidth' ? 'Goods W' : 'Wds'));
    expect(own.about).toBe('Wds');
    expect(own.sentence).toMatch(/Check Wds and Goods W\.$/);
    // What was said once can be said otherwise again, and a copy as well.
    expect(renamed({ ...own }, (key) => key).sentence).toMatch(/Check widths and fabricWidth\.$/);
  });

  it('is written out without the places of its names', () => {
    expect(Object.keys(JSON.parse(JSON.stringify(found)) as object)).toEqual([
      'code',
      'weight',
      'about',
      'sentence',
    ]);
  });

  it('keeps what was read, though it looks like a name', () => {
    const read = finding(
      'unreadable',
      parameter('heading'),
      parameter('heading'),
      '“fabric_width”',
      'a heading',
      'pinch',
    );
    expect(renamed(read, () => 'Style').sentence).toBe(
      'Style reads “fabric_width”, which is not a heading. Write it like pinch.',
    );
  });
});

describe('a refusal', () => {
  const caught = (work: () => never): unknown => {
    try {
      return work();
    } catch (thrown) {
      return thrown;
    }
  };
  it('of a wrong input shows #VALUE!, of a sound one without an answer #N/A', () => {
    const wrong = caught(() => refuse('noMargin', 'rate', '100 %', '1 %'));
    expect(wrong).toBeInstanceOf(Refusal);
    expect(wrong).toMatchObject({
      error: '#VALUE!',
      message: expect.stringMatching(/^rate reads 100 %/) as string,
    });
    expect(caught(() => noAnswer('notDrawn', 'draw'))).toMatchObject({ error: '#N/A' });
  });
});

it('steps are written down only when someone looks', () => {
  let written = 0;
  const given = answer(6, () => (written++, [step('widths', '', [], numberFigure(6))]));
  expect([given.value, written]).toEqual([6, 0]);
  expect(given.steps).toHaveLength(1);
  expect(written).toBe(1);
  expect(answer(1).steps).toEqual([]);
});
