import { describe, expect, it } from 'vitest';
import { apply } from '../../src/book/apply';
import type { Changes } from '../../src/book/book';
import { Trouble } from '../../src/book/trouble';
import { keyOf } from '../office/model';
import { at, openedIn, picture, ROWS, withTable, write, type Opened } from './opened';

const failing = async (work: Promise<unknown>): Promise<[string, string]> => {
  try {
    await work;
  } catch (failure) {
    if (failure instanceof Trouble) return [failure.code, failure.message];
    throw failure;
  }
  throw new Error('nothing was refused');
};

describe('what stands in the way', () => {
  const changes: Changes = { puts: [{ area: at('D2:D3'), formula: '=B2*2' }] };

  it('a protected sheet: by name, and nothing changed', async () => {
    const opened = await openedIn(ROWS);
    opened.sheet.protection = { options: {}, password: '' };
    const before = picture(opened);
    expect(await failing(write(opened, changes))).toEqual([
      'protected',
      expect.stringContaining('“Windows” is protected'),
    ]);
    expect(await failing(apply(opened.book, 'Fill', changes))).toEqual(['protected', expect.any(String)]);
    expect(picture(opened)).toBe(before);
  });

  it('a cell being edited: at once, before anything is written', async () => {
    const opened = await openedIn(ROWS);
    opened.host.startEditing();
    expect(await failing(write(opened, changes))).toEqual([
      'editing',
      expect.stringContaining('Finish it with Enter'),
    ]);
    expect(opened.sheet.cell(1, 3)).toBeUndefined();
  });

  describe('an edit that begins midway', () => {
    const column: Changes = { puts: [{ area: at('D2:D9'), formula: '=B2*2' }] };
    /** Written in four requests; a person types into a cell after the first, and `meanwhile` happens. */
    async function interrupted(meanwhile: (opened: Opened) => void = () => undefined) {
      // Shorter than the edit: who types keeps no answer waiting.
      const opened = await openedIn(ROWS, { patience: 100 });
      Object.assign(opened.book, { fills: 2 });
      const waited: boolean[] = [];
      let begun = false;
      const done = apply(opened.book, 'Fill', column, {
        waiting: (is) => waited.push(is),
        progress: () => {
          if (begun) return;
          begun = true;
          opened.host.startEditing();
          setTimeout(() => {
            meanwhile(opened);
            opened.host.finishEditing();
          }, 200);
        },
      });
      return { opened, done, waited };
    }

    it('is waited for, however long it takes, and that is told', async () => {
      const { opened, done, waited } = await interrupted();
      await done;
      expect(opened.sheet.cell(8, 3)?.formula).toBe('=B9*2');
      expect(waited).toEqual([true, false]);
    });

    it('and puts something where the rest was to go: that stays, and all else is as it was', async () => {
      const before = picture(await openedIn(ROWS));
      const { opened, done } = await interrupted(({ sheet }) => { sheet.open(7, 3).value = 'hers'; }); // prettier-ignore
      expect(await failing(done)).toEqual([
        'changedMeanwhile',
        'D8 of “Windows” was changed while the pane waited for a cell to be left. What had been written until then was put back, so the workbook is as it was. Look at it, and try again.',
      ]);
      expect(opened.sheet.cell(7, 3)?.value).toBe('hers');
      opened.sheet.cells.delete(keyOf(7, 3));
      expect(picture(opened)).toBe(before);
    });
  });

  it.each(['refuses', 'is silent'] as const)('a connection that breaks and %s', async (broken) => {
    const opened = await openedIn(ROWS, { patience: 50 });
    opened.host.broken = broken;
    opened.host.tripsLeft = 0;
    expect((await failing(opened.book.contents()))[0]).toBe('lost');
    expect((await failing(write(opened, changes)))[0]).toBe('lost');
  });

  it('a sheet or a table that is gone', async () => {
    const opened = await openedIn(ROWS);
    expect(await failing(opened.book.read([at('A1', 'Elsewhere')]))).toEqual([
      'missing',
      expect.stringContaining('The sheet “Elsewhere”'),
    ]);
    expect(await failing(write(opened, { resize: [{ table: 'Gone', area: at('A1:D3') }] }))).toEqual([
      'missing',
      expect.stringContaining('The table “Gone”'),
    ]);
  });

  it('a name that is taken', async () => {
    const opened = await openedIn(ROWS);
    expect(await failing(write(opened, { newSheets: [{ name: 'windows' }] }))).toEqual([
      'nameClash',
      expect.stringContaining('“windows”'),
    ]);
    await withTable().then(async (other) => {
      expect((await failing(write(other, { newNames: [{ name: 'Openings', area: at('A1') }] })))[0]).toBe(
        'refused',
      );
    });
  });

  it('merged cells, hidden rows, filled cells: refused before the first write', async () => {
    for (const [code, spoil] of [
      ['merged', ({ sheet }: Opened) => void sheet.merged.push({ row: 1, column: 3, rows: 2, columns: 1 })],
      ['hidden', ({ sheet }: Opened) => void sheet.hiddenRows.add(2)],
      ['filled', ({ sheet }: Opened) => void sheet.cells.set(keyOf(2, 3), { value: 'own' })],
    ] as const) {
      const opened = await openedIn(ROWS);
      spoil(opened);
      const before = picture(opened);
      expect((await failing(apply(opened.book, 'Fill', changes)))[0]).toBe(code);
      expect(picture(opened)).toBe(before);
    }
  });

  it('a fill that fails midway leaves the workbook as it was', async () => {
    const opened = await withTable();
    const before = picture(opened);
    const stopped = new AbortController();
    const half = apply(
      opened.book,
      'Fill',
      {
        resize: [{ table: 'Openings', area: at('A1:D3') }],
        puts: [
          { area: at('D1'), cells: [['Double']] },
          { area: at('D2:D3'), formula: '=B2*2' },
        ],
      },
      { signal: stopped.signal, progress: () => { stopped.abort(); } }, // prettier-ignore
    );
    expect((await failing(half))[0]).toBe('cancelled');
    expect(picture(opened)).toBe(before);
  });

  it('an older Excel says what it cannot do; one too old says so at once', async () => {
    const { book } = await openedIn(ROWS, { version: '1.9' });
    expect([...book.lacks.keys()]).toEqual(['tables', 'comments', 'drawings', 'undo']);
    expect(await failing(openedIn(ROWS, { version: '1.8' }))).toEqual([
      'tooOld',
      expect.stringContaining('Excel 2021'),
    ]);
  });

  it('on the older Excel the rest of a write arrives', async () => {
    const opened = await openedIn(ROWS, { version: '1.9' });
    await write(opened, {
      puts: [{ area: at('D1'), cells: [['New']] }],
      newTables: [{ name: 'Openings', area: at('A1:D3') }],
      notes: [{ area: at('D1'), text: 'left out' }],
      resize: [],
    });
    await opened.book.mark([{ area: at('B2'), weight: 'stop', sentence: 'Too narrow.' }]);
    expect([
      opened.host.book.tables.length,
      opened.host.book.comments.length,
      opened.sheet.conditionalFormats.length,
    ]).toEqual([1, 0, 1]);
    expect((await opened.book.read([at('A1:D3')]))[0]?.values[0]?.[3]).toBe('New');
  });
});
