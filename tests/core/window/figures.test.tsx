import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it, vi } from 'vitest';
import { functionNamed } from '../../../functions/index';
import { areaAt } from '../../../src/book/address';
import { MemoryBook } from '../../../src/book/memory';
import { survey } from '../../../src/book/survey';
import { ROW_OUTPUTS, WANTED } from '../../../src/book/wanted';
import { canBeWorkedOut, Compared } from '../../../src/core/audit/compared';
import { inches } from '../../../src/core/exact/length';
import { INCHES } from '../../../src/core/exact/unit';
import { readHouse } from '../../../src/core/house/house';
import type { ColumnKey } from '../../../src/core/window/columns';
import { windowUnder } from './ordered';
import { workedOut, workedOutNumber } from '../../../src/core/window/figure';
import { FIGURES, type FigureKey } from '../../../src/core/window/figures';
import { WindowWork } from '../../../src/core/window/job';
import { usualHeading, type OrderKey } from '../../../src/core/window/meanings';
import { hem } from '../../../src/file/hem';
import { Adding } from '../../../src/pane/adding';

vi.mock(import('../../../src/core/window/figures'), async (original) => {
  const { FLAT_WIDTH } = await import('./flat-width');
  const all = await original();
  return { ...all, FIGURES: [...all.FIGURES, FLAT_WIDTH] };
});

const HEADINGS = ['rod width', 'finished drop', 'heading', 'fabric width'];
const ROW = [94, 96, 'pinch', 54];
const called = (name: string, ...inputs: unknown[]) => functionNamed(name)?.call(inputs);

describe('a figure declared once', () => {
  // 2½ widths of 54 in a panel: 135 less two seams of 1 and two side hems of 3 is 127; two panels, 254.
  it('can be asked of SCHEDULE, by its heading and its other words', () => {
    for (const name of ['flat width', 'laid flat', 'flatWidth'])
      expect(called('SCHEDULE', [HEADINGS], [ROW], name)).toMatchObject({ cells: [[254]] });
  });

  it('is compared by CHECK where an order states it', () => {
    const headings = [...HEADINGS, 'Laid flat (in)'];
    expect(called('CHECK', [headings], [[...ROW, 254]])).toMatchObject({ cells: '' });
    expect(called('CHECK', [headings], [[...ROW, 246]])).toMatchObject({
      cells: expect.stringMatching(/^Laid flat \(in\) reads 246 in; .* it is 254 in, 8 in less\./) as string,
    });
  });

  it('is among what the pane offers to add, and what a column may be', async () => {
    const book = new MemoryBook({
      Windows: {
        rows: [
          [...HEADINGS, 'flat width'],
          [...ROW, 254],
        ],
      },
    });
    const found = await survey(book, WANTED, INCHES, areaAt('Windows', 1, 0));
    expect(found.read.columns.at(-1)?.key).toBe('flatWidth');
    const shown = renderToStaticMarkup(
      <Adding book={book} survey={found} read={found.read} rules={undefined} />,
    );
    expect(shown).toContain('>flat width<');
    expect(ROW_OUTPUTS.at(-1)).toMatchObject({ key: 'flatWidth', whole: 'SCHEDULE', format: '0.0' });
  });

  it('is audited by the command', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'figures-'));
    const path = join(folder, 'orders.csv');
    await writeFile(path, [[...HEADINGS, 'flat width'].join(), [...ROW, 246].join()].join('\n'));
    const out: string[] = [];
    const io = { out: (line: string) => void out.push(line), err: () => undefined };
    const exit = await hem(['audit', path], { ...io, progress: () => undefined, input: () => undefined });
    await rm(folder, { recursive: true });
    expect(exit).toBe(1);
    expect(out.join('\n')).toContain('row 2, flat width: flat width reads 246 in');
  });
});

describe('every figure', () => {
  const house = readHouse(null);
  const full = {
    'inside width': 72,
    'measured height': 98,
    heading: 'pinch',
    'fabric width': 54,
    'vertical repeat': 25.25,
    lining: 'interlined',
    'cloth weight': 12,
    quantity: 3,
  };
  const rules = readHouse([['labor pinch', 20]]).rules;
  const { window } = windowUnder(Object.keys(full), Object.values(full), house.unit);

  it.each(FIGURES.map((figure) => [figure.heading, figure] as const))('%s', (heading, figure) => {
    // The function that a formula asks it with is there.
    expect(functionNamed(figure.from)).toBeDefined();
    const worked = workedOut(figure, new WindowWork(window, rules));
    if (figure.mayLack === true && worked === undefined) return;
    expect(worked).toBeDefined();
    const number = workedOutNumber(figure, new WindowWork(window, rules));
    // Worked out quickly or with its steps, it is the same; and it is what its kind says.
    if (worked?.as === 'text') expect(figure.kind.quantity).toBe('text');
    else {
      expect(number).toBe(Number(worked?.value));
      if (worked?.as === 'length' || worked?.as === 'yardage' || worked?.as === 'money')
        expect(figure.kind.quantity).toBe(worked.as);
      else expect(['count', 'fullness', 'weight']).toContain(figure.kind.quantity);
    }
    if (figure.ordered === true) expect(usualHeading(figure.key as OrderKey)).toBe(heading);
  });

  const ordered = FIGURES.filter((figure) => figure.ordered === true);
  it.each(ordered.map((figure) => [figure.heading, figure] as const))(
    '%s is worked out from what it needs and nothing more',
    (_, { key, needs }) => {
      const sizes = new WindowWork(window, rules);
      const complete = {
        ...window,
        rodWidth: sizes.rodWidth().value,
        finishedDrop: sizes.finishedDrop().value,
        fabricWidth: inches(130),
      };
      // One column of each at its first, then at its last.
      for (const place of [0, -1]) {
        const keys = needs.map((either) => either.at(place) as ColumnKey);
        const given = Object.fromEntries(keys.map((column) => [column, complete[column]]));
        expect(canBeWorkedOut(key as FigureKey, given)).toBe(true);
        expect(new Compared(given, {}, rules).expected(key as FigureKey)).toBeGreaterThanOrEqual(0);
        for (const column of keys)
          expect(canBeWorkedOut(key as FigureKey, { ...given, [column]: undefined })).toBe(false);
      }
    },
  );

  it('has a key, a heading and other words of its own', () => {
    const words = FIGURES.flatMap(({ key, heading, also }) =>
      [...new Set([key, heading, ...also].map((word) => word.toLowerCase().replace(/[^a-z]/g, '')))].map(
        (word) => [word, key] as const,
      ),
    );
    expect(words.length).toBe(new Set(words.map(([word]) => word)).size);
  });
});
