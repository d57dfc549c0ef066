import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { areaAt, type Area } from '../../src/book/address';
import { journalOf } from '../../src/book/journal';
import { drawn, Trial, thereIsABrowser, type Opened } from './page';

/** As an inn of our own invention may keep it: titles above, short headings, a merged cell, a remark. */
const LIST = [
  ['Wharf Lane Inn, upper floor', null, null, null, null, null, null, null],
  ['heights to the rod still to be hung', null, null, null, null, null, null, null],
  [null, null, null, null, null, null, null, null],
  ['Rm', 'Qty', 'W (in)', 'Ht', 'Style', 'Fab W', 'Rep', 'remarks'],
  ['Porch', 2, '84 1/2', 98, 'pinch pleat', 54, 25.25, null],
  ['Snug', 1, 72, 98, 'grommet', 54, null, 'sill is loose'],
  ['Long room', 3, 110, 96.5, 'pinch pleat', 54, null, null],
];

/** The grid takes the focus once more when it has drawn itself. */
const holdTheFocus = (at: Opened): Promise<void> =>
  expect
    .poll(
      async () => {
        await at.pane.getByRole('tab', { name: 'New job' }).focus();
        await at.page.waitForTimeout(500);
        return at.pane.locator(':focus').count();
      },
      { timeout: 20_000 },
    )
    .toBe(1);

describe.runIf(thereIsABrowser)('the pane beside the trial workbook', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await Trial.start();
  });
  afterEach(() => trial.closePages());
  afterAll(() => trial.end());

  async function withList() {
    const at = await trial.open();
    await at.put('Sheet1', 0, 0, LIST);
    await at.page.evaluate(() => {
      window.trial.grid.api.getActiveWorkbook()?.getActiveSheet().getRange(0, 0, 1, 8).merge();
    });
    await at.goTo(areaAt('Sheet1', 5, 2));
    await at.section('Workbook');
    await at.press('Read the table');
    await at.pane.getByText('headings in row 4, columns A to H, 3 rows of windows').waitFor();
    return at;
  }

  it('makes a job’s sheets, and a second job beside them; undo takes each back as one step', async () => {
    const at = await trial.open();
    const empty = await at.contents();
    await at.press('Make the sheets');
    expect(await at.said()).toContain('The sheets of the job are in the workbook');
    const first = await at.contents();
    expect(first.tables.map((one) => one.name)).toContain('Windows');
    await at.press('Make the sheets');
    await at.pane.getByText('The sheets of job 2').waitFor();
    const second = await at.contents();
    expect(second.sheets.map((one) => one.name)).toContain('Windows 2');
    expect(second.sheets.length).toBe(2 * first.sheets.length - 1);
    // The sheet that is looked at goes away too.
    await at.goTo(areaAt('Windows 2', 3, 0));
    await at.undo();
    expect(await at.contents()).toEqual(first);
    await at.goTo(areaAt('Job', 3, 1));
    await at.undo();
    expect(await at.contents()).toEqual(empty);
    await drawn(at);
    expect(at.faults).toEqual([]);
  });

  it('refuses a number of rows that is none, at the field', async () => {
    const at = await trial.open();
    await at.pane.getByRole('spinbutton').fill('many');
    await at.pane.getByText('Rows reads “many”. Write a whole number').waitFor();
    expect(await at.pane.getByRole('button', { name: 'Make the sheets' }).isDisabled()).toBe(true);
  });

  it('adds columns beside a table under titles and a merged cell: preview first, then one undo step', async () => {
    const at = await withList();
    const before = await at.read(areaAt('Sheet1', 0, 0, 8, 8));
    await at.press('Preview');
    await at.pane.getByText('20 cells would be written: I4:M7 of “Sheet1”.').waitFor();
    expect((await at.contents()).sheets[0]?.used?.columns).toBe(8);
    await at.press('Add 5 columns');
    expect(await at.said()).toBe('5 columns stand in I4:M7. One undo takes it back.');
    const added = await at.read(areaAt('Sheet1', 3, 8, 4, 5));
    expect(added.values[0]).toEqual(['rod width', 'finished drop', 'widths', 'cut length', 'yardage']);
    // 84½ + 11 + 11 = 106½; 98 − 2 = 96; (106½ + 13) × 2½ = 298¾, with hems and seams 6 widths of 54;
    // 96 + 8 + 8 = 112, up to whole repeats of 25¼: 126¼; 2 × 6 × 126¼ ÷ 36 = 42.083, up to ⅛: 42.125.
    expect(added.values[1]).toEqual([106.5, 96, 6, 126.25, 42.125]);
    expect(added.formulas[1]?.[4]).toContain('HEM.YARDAGE(');
    expect(await at.read(areaAt('Sheet1', 0, 0, 8, 8))).toEqual(before);

    await at.press('Read again');
    await at.pane.getByText('What you said of its columns before still holds.').waitFor();
    await at.undo();
    expect((await at.contents()).sheets[0]?.used?.columns).toBe(8);
    expect(at.faults).toEqual([]);
  });

  it('lets the user say what a column is, and give one figure for every row', async () => {
    const at = await withList();
    await at.pane.getByRole('combobox', { name: /Fab W/ }).selectOption('not used');
    await at.pane.getByText('No column is taken for fabric width.').waitFor();
    await at.press('Preview');
    expect(await at.said()).toContain('needs fabric width');
    await at.pane.getByRole('textbox', { name: 'fabric width' }).fill('60');
    await at.press('Preview');
    await at.press('Add 6 columns');
    expect(await at.said()).toContain('6 columns stand');
    const added = await at.read(areaAt('Sheet1', 3, 8, 2, 6));
    expect(added.values[0]?.[0]).toBe('fabric width');
    expect(added.values[1]?.[0]).toBe(60);
  });

  it('overwrites a filled cell only once the user allows it for that column', async () => {
    const at = await withList();
    await at.put('Sheet1', 4, 10, [['keep me']]);
    await at.press('Preview');
    await at.pane.getByRole('textbox', { name: 'yardage' }).fill('K');
    await at.page.keyboard.press('Enter');
    const allow = at.pane.getByRole('checkbox', { name: /Overwrite the 1 filled cell of column K, from K5/ });
    await allow.waitFor();
    expect(await at.pane.getByRole('button', { name: 'Add 5 columns' }).isDisabled()).toBe(true);
    expect((await at.read(areaAt('Sheet1', 4, 10))).values).toEqual([['keep me']]);
    await allow.check();
    await at.press('Add 5 columns');
    expect(await at.said()).toContain('5 columns stand');
    expect((await at.read(areaAt('Sheet1', 4, 10))).values).toEqual([[42.125]]);
  });

  it('leaves a protected sheet as it is, and says what to do', async () => {
    const at = await withList();
    await at.press('Preview');
    await at.pane.getByText('cells would be written').waitFor();
    await at.page.evaluate(async () => {
      await window.trial.grid.api.getActiveWorkbook()?.getActiveSheet().getWorksheetPermission().protect();
    });
    await at.press('Add 5 columns');
    expect(await at.said()).toContain('The sheet “Sheet1” is protected, so nothing was written.');
    expect((await at.contents()).sheets[0]?.used?.columns).toBe(8);
  });

  it('says so where no table stands', async () => {
    const at = await trial.open();
    await at.section('Workbook');
    await at.press('Read the table');
    expect(await at.said()).toMatch(/filled cell on the sheet “Sheet1”/);
  });

  it('stops a long fill, takes it back by one undo, or closed in the middle: the workbook is as it was each time', async () => {
    // Five columns of so many rows are more than one part.
    const many = 4_200;
    const at = await trial.open();
    const rows = Array.from({ length: many }, (_, n) => [40 + (n % 80), 98, 'pinch', 54]);
    await at.put('Sheet1', 0, 0, [['W', 'Ht', 'Style', 'Fab W'], ...rows]);
    await at.goTo(areaAt('Sheet1', 0, 0));
    await at.section('Workbook');
    await at.press('Read the table');
    await at.press('Preview');
    const begin = async (): Promise<void> => {
      await at.press('Add 5 columns');
      await at.pane.getByRole('progressbar').waitFor();
    };
    const used = async (): Promise<Area | undefined> => (await at.contents()).sheets[0]?.used;
    const before = { rows: many + 1, columns: 4 };
    await begin();
    await at.press('Stop');
    expect(await at.said()).toBe('Stopped. The workbook is as it was.');
    expect(await used()).toMatchObject(before);

    await begin();
    expect(await at.said()).toContain('5 columns stand in E1:I4201');
    const last = await at.read(areaAt('Sheet1', many, 8));
    expect(last.formulas[0]?.[0]).toContain('HEM.YARDAGE(');
    await at.undo();
    expect(await used()).toMatchObject(before);

    await at.press('Preview');
    await begin();
    await at.page.evaluate(() => {
      window.trial.pane.close();
    });
    await expect.poll(used, { timeout: 20_000 }).toMatchObject(before);
    expect(await at.page.evaluate(() => window.trial.book.recall('unfinished'))).toBeUndefined();
    expect(at.faults).toEqual([]);
  });

  it('tells what was left half done in a workbook, also after it was saved and opened, and puts it back', async () => {
    const at = await withList();
    const before = await at.read(areaAt('Sheet1', 0, 0, 8, 13));
    // As a browser that was closed between two parts leaves it.
    const changes = {
      puts: [
        { area: areaAt('Sheet1', 4, 8, 3), formula: '=C5+22' },
        { area: areaAt('Sheet1', 4, 9, 3), formula: '=D5-2' },
      ],
    };
    const blocks = await Promise.all(changes.puts.map((put) => at.read(put.area)));
    const held = new Map(changes.puts.map((put, n) => [put, blocks[n]!]));
    const value = journalOf(
      { says: 'Fill 2 columns', owner: 'this page' },
      [changes],
      changes,
      await at.contents(),
      held,
    );
    await at.page.evaluate(
      ([put, journal]) =>
        window.trial.book.inOneStep('Half', (write) =>
          write({ remember: { key: 'unfinished', value: journal }, puts: [put] }),
        ),
      [changes.puts[0]!, value] as const,
    );
    const saved = await at.saved();
    const again = await trial.open();
    await again.page.getByLabel('Workbook to open').setInputFiles({
      name: 'Half.xlsx',
      mimeType: 'application/octet-stream',
      buffer: saved,
    });
    await again.pane.getByText('“Fill 2 columns” did not come to its end in this workbook').waitFor();
    await again.pane.getByText('I5:J7 of “Sheet1”').waitFor();
    expect(await again.seriousFaults()).toEqual([]);
    await again.press('Put it back');
    await again.pane.getByText('I5:J7 of “Sheet1”: as before.').waitFor();
    const after = await again.read(areaAt('Sheet1', 0, 0, 8, 13));
    expect([after.values, after.formulas]).toEqual([before.values, before.formulas]);
    expect(await again.page.evaluate(() => window.trial.book.recall('unfinished'))).toBeUndefined();
    expect(again.faults).toEqual([]);
  });

  it('refuses nonsense for a house rule in a sentence, writes a good one, and marks what differs', async () => {
    const at = await trial.open();
    await at.section('Rules');
    await at.pane.getByText('There are no house rules in this workbook yet').waitFor();
    await at.section('New job');
    await at.press('Make the sheets');
    await at.said();
    await at.section('Rules');
    await at.pane.getByRole('searchbox').fill('overlap');
    const overlap = at.pane.getByRole('textbox', { name: /^overlap(?! on)/ });
    await overlap.fill('banana');
    await at.pane.getByText('house rule “overlap” reads “banana”, which is not a length.').waitFor();
    expect(await at.pane.getByRole('button', { name: 'Save 1 change' }).isDisabled()).toBe(true);
    await overlap.fill('3 1/4');
    await at.press('Save 1 change');
    expect(await at.said()).toContain('One rule is changed');
    await at.pane.getByText(/rules, 1 differ from the default/).waitFor();
    const { names } = await at.contents();
    const area = names.find((one) => one.name === 'House_rules')?.area ?? areaAt('', 0, 0);
    const rules = await at.read(area);
    expect(rules.values.find(([name]) => name === 'overlap')?.[1]).toBe(3.25);
  });

  it('explains the selected cell: working, findings, the window to scale, and what a narrower rod saves', async () => {
    const at = await withList();
    await at.press('Preview');
    await at.press('Add 5 columns');
    await at.said();
    await at.goTo(areaAt('Sheet1', 4, 12));
    await at.section('Explain');
    await at.pane.getByText('yardage: 42.0833 yd up to the next 1/8 yd').waitFor();
    const drawing = at.pane.getByRole('img');
    expect(await drawing.getAttribute('aria-label')).toContain(
      'left extension 11 in, opening 84 1/2 in, right extension 11 in, rod width 106 1/2 in, finished drop 96 in',
    );
    await at.pane.getByText('Delivered fullness', { exact: true }).waitFor();
    await at.pane.getByText(/narrower saves 1 width, /).waitFor();
    await at.pane.getByRole('button', { name: 'I5 rod width' }).click();
    expect(await at.page.evaluate(() => window.trial.book.selection())).toEqual(areaAt('Sheet1', 4, 8));
    await at.goTo(areaAt('Sheet1', 0, 0));
    await at.pane.getByText('No formula stands here.').waitFor();
  });

  it('shows the plan of a bay beside its window', async () => {
    const at = await trial.open();
    await at.put('Sheet1', 0, 0, [
      ['Width', 'L ext', 'R ext', 'Ht', 'Style', 'Goods W', 'Rod'],
      ['24 + 60 + 24', 10, 10, 98, 'pinch', 54, { formula: '=HEM.RODWIDTH(A2,B2,C2)' }],
    ]);
    await at.goTo(areaAt('Sheet1', 1, 6));
    await at.section('Explain');
    await at.pane
      .getByRole('img', {
        name: 'Plan to scale, from above, the room below: 34 in, 60 in, 34 in; bends to be measured',
      })
      .waitFor();
    expect(await at.pane.getByRole('img').count()).toBe(2);
    expect(await at.seriousFaults()).toEqual([]);
  });

  it('explains in the sheet’s own words, with the house rule that stands for a blank', async () => {
    const at = await trial.open();
    await at.put('Sheet1', 0, 0, [
      ['W', 'L ext', 'R ext', 'Ht', 'Style', 'Goods W'],
      [72, 11, 30, 98, 'wave', 54],
      ['wide', 11, 30, 98, 'pinch', 54],
    ]);
    await at.goTo(areaAt('Sheet1', 0, 0));
    await at.section('Workbook');
    await at.press('Read the table');
    await at.press('Preview');
    const findings = at.pane.getByRole('list', { name: 'Findings' });
    await findings.getByText('Row 2: R ext is 30 in; for an opening of 72 in').waitFor();
    await findings.getByText('Row 3: W reads “wide”, which is not a length.').waitFor();
    expect(await findings.innerText()).not.toMatch(/[a-z]_[a-z]/);
    await at.press('Add 5 columns');
    await at.said();
    await at.section('Explain');
    await at.goTo(areaAt('Sheet1', 1, 6));
    await at.pane.getByText('R ext is 30 in; for an opening of 72 in').waitFor();
    await at.pane.getByRole('button', { name: 'C2 R ext' }).waitFor();
    await at.goTo(areaAt('Sheet1', 2, 6));
    await at.pane.getByText('W reads “wide”, which is not a length.').waitFor();
    expect(at.faults).toEqual([]);
  });

  it('inserts an example at the selected cell, and never over a filled one', async () => {
    const at = await trial.open();
    await at.put('Sheet1', 0, 0, [['mine']]);
    await at.goTo(areaAt('Sheet1', 1, 1));
    await at.section('Functions');
    await at.pane.getByRole('searchbox').fill('finished drop, top edge');
    await at.pane.getByRole('button', { name: /^DROP/ }).click();
    await at.press('Insert HEM.DROP(98,"pinch") at B2');
    await at.pane.getByText('The example stands in B2 of “Sheet1”.').waitFor();
    expect((await at.read(areaAt('Sheet1', 1, 1))).values).toEqual([[96]]);
    await at.goTo(areaAt('Sheet1', 0, 0));
    await at.press('Insert HEM.DROP(98,"pinch") at A1');
    await at.pane.getByText('A1 of “Sheet1” already holds something, so nothing was written.').waitFor();
    expect((await at.read(areaAt('Sheet1', 0, 0))).values).toEqual([['mine']]);
  });

  it('works by the keyboard alone', async () => {
    const at = await trial.open();
    const { keyboard } = at.page;
    const focused = at.pane.locator(':focus');
    await holdTheFocus(at);
    for (let n = 0; n < 9 && (await focused.innerText()) !== 'Functions'; n++)
      await keyboard.press('ArrowRight');
    await keyboard.press('Enter');
    await at.pane.getByRole('searchbox').waitFor();
    await keyboard.press('Tab');
    await keyboard.press('Tab');
    await keyboard.type('grommets');
    await at.pane.getByText(/^\d+ of \d+ functions$/).waitFor();
    await expect.poll(async () => at.pane.getByRole('searchbox').inputValue()).toBe('grommets');
    for (let n = 0; n < 3 && (await focused.getAttribute('aria-expanded')) === null; n++)
      await keyboard.press('Tab');
    await keyboard.press('Enter');
    expect(await focused.getAttribute('aria-expanded')).toBe('true');
    await keyboard.press('Tab');
    await keyboard.press('Enter');
    expect(await at.said()).toMatch(/The example stands in A1/);
  });

  it('gives the user’s table its columns by the keyboard alone, and never loses the focus', async () => {
    const at = await trial.open();
    await at.put('Sheet1', 0, 0, LIST);
    await at.goTo(areaAt('Sheet1', 5, 2));
    const { keyboard } = at.page;
    const focused = at.pane.locator(':focus');
    await holdTheFocus(at);
    await keyboard.press('ArrowRight');
    await keyboard.press('Enter');
    /** Tabs on until what has the focus is called so. */
    const tabTo = async (name: RegExp): Promise<void> => {
      for (let n = 0; n < 70; n++) {
        await keyboard.press('Tab');
        const called = await focused.evaluate((one) =>
          [one.getAttribute('aria-label'), (one as HTMLInputElement).labels?.[0]?.innerText, one.textContent]
            .filter((text) => text !== undefined && text !== null && text !== '')
            .at(0),
        );
        if (name.test((called ?? '').replace(/\s+/g, ' '))) return;
      }
      throw new Error(`Nothing called ${String(name)} is reached by Tab.`);
    };
    await tabTo(/^Read the table$/);
    await keyboard.press('Enter');
    await at.pane.getByText('3 rows of windows').waitFor();
    expect(await focused.innerText()).toBe('Read again');
    await tabTo(/H remarks|G Rep/);
    await tabTo(/^rings$/);
    await keyboard.press('Space');
    await tabTo(/^Preview$/);
    await keyboard.press('Enter');
    const shown = at.pane.getByRole('group', { name: 'Preview' });
    await shown.waitFor();
    // The focus goes to what is shown: pressing Enter again writes nothing.
    await expect.poll(() => shown.evaluate((one) => one === document.activeElement)).toBe(true);
    await keyboard.press('Enter');
    expect((await at.contents()).sheets[0]?.used?.columns).toBe(8);
    await tabTo(/^Add 6 columns$/);
    await keyboard.press('Enter');
    expect(await at.said()).toContain('6 columns stand in I4:N7');
    expect(await focused.count()).toBe(1);
    expect(await at.seriousFaults()).toEqual([]);
    const names = await at.pane
      .locator('#section :is(input, select, button)')
      .evaluateAll((all) =>
        all.map(
          (one) =>
            one.getAttribute('aria-label') ??
            (one as HTMLInputElement).labels?.[0]?.innerText ??
            one.textContent ??
            '',
        ),
      );
    expect(names.filter((name) => name.trim() === '')).toEqual([]);
  });
});
