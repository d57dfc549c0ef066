import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { functionNamed } from '../../functions';
import { connected } from '../browser';
import type { Files } from '../office/frame';
import { columnOf, rowOf } from '../office/model';
import { OUTSIDE, refusedOutside } from '../trial/page';
import { picture, pictureInFull } from './opened';
import { built, holdFormulas, paneIn, seriousFaults, workbookOf, type PanePage } from './pane-page';

/* The user's own sheet: two title rows, the first merged over its whole width, then the headings. */
const SCHEDULE = [
  ['Marsh Lane Inn', null, null, null, null, null, null, null],
  ['Windows as measured in May', null, null, null, null, null, null, null],
  ['Room', 'W', 'Ext L', 'Ext R', 'Ht', 'Style', 'Fabric W', 'Qty'],
  ['Bar', 72, 11, 11, 98, 'pinch', 54, 1],
  ['Snug', '84 1/2', 12, 12, 98, 'grommet', 54, 2],
  ['Landing', 40, 11, 11, 80, 'pinch', 54, 1],
] as const;

let browser: Browser;
let files: Files;
let pane: PanePage;
beforeAll(async () => {
  [files, browser] = await Promise.all([built(), connected()]);
});
afterAll(() => browser.close());
afterEach(async () => {
  // Whatever was done: nothing outside was asked for, nothing failed unseen, nothing was made up.
  expect([pane.strangers, pane.errors, pane.host.unknown]).toEqual([[], [], []]);
  await pane.page.context().close();
});

async function withSchedule(): Promise<void> {
  const host = workbookOf(SCHEDULE);
  host.book.active.merged = [{ row: 0, column: 0, rows: 1, columns: 8 }];
  pane = await paneIn(browser, files, { host });
  pane.select('B4');
  await pane.turnTo('Workbook');
}

async function previewed(): Promise<void> {
  await withSchedule();
  await pane.press('Read the table');
  await pane.press('Preview');
  await pane.frame.getByRole('region', { name: 'Preview of the first rows' }).waitFor();
}

async function newJob(): Promise<void> {
  pane = await paneIn(browser, files, { host: workbookOf([], 'Sheet1') });
  await pane.frame.getByRole('spinbutton', { name: 'Rows for windows' }).fill('3');
  await pane.press('Make the sheets');
  await pane.says('The sheets of the job are in the workbook').waitFor();
}

const wrongCells = (): string[] =>
  pane.host.book.sheets.flatMap((sheet) =>
    [...sheet.cells.values()]
      .filter(({ value, formula }) => formula !== undefined && /^#/.test(String(value)))
      .map(({ formula, value }) => `${sheet.name}: ${String(formula)} ${String(value)}`),
  );

const sheetNamed = (name: string) => pane.host.book.sheetNamed(name)!;

describe('a job from the pane in Excel', () => {
  it('fills the workbook, and a second one stands beside it', async () => {
    await newJob();
    const first = pane.host.book.sheets.map(({ name }) => name);
    expect(first).toContain('Quote');
    expect(wrongCells()).toEqual([]);
    await pane.press('Make the sheets');
    await pane.says('The sheets of job 2 are in the workbook').waitFor();
    expect(pane.host.book.sheets.length).toBe(2 * first.length - 1);
    expect(wrongCells()).toEqual([]);
  });

  it('says at the field what a number of rows may be', async () => {
    pane = await paneIn(browser, files);
    await pane.frame.getByRole('spinbutton', { name: 'Rows for windows' }).fill('a dozen');
    await pane.says('Rows reads “a dozen”. Write a whole number from 1 to').waitFor();
    expect(await pane.frame.getByRole('button', { name: 'Make the sheets' }).isDisabled()).toBe(true);
  });

  it('has house rules that take a figure and refuse nonsense', async () => {
    await newJob();
    await pane.turnTo('Rules');
    await pane.frame.getByRole('searchbox', { name: 'Find a rule' }).fill('overlap');
    const overlap = pane.frame.getByRole('textbox', { name: /^overlap(?! on)/ });
    const save = pane.frame.getByRole('button', { name: /^Save/ });
    await overlap.fill('plenty');
    await pane.says(/“plenty”/).waitFor();
    expect(await save.isDisabled()).toBe(true);
    await overlap.fill('4 1/2');
    await save.click();
    await pane.says('One rule is changed').waitFor();
    const rules = sheetNamed('House rules');
    const [key = 0] = [...rules.cells].find(([, { value }]) => value === 'overlap') ?? [];
    expect(rules.cell(rowOf(key), columnOf(key) + 1)?.value).toBe(4.5);
  });
});

describe('the user’s own workbook in Excel', () => {
  it('is read below title rows and merged cells, previewed, filled, and remembered', async () => {
    await previewed();
    await pane.says('headings in row 3, columns A to H, 3 rows of windows').waitFor();
    expect(pane.cell('I4')).toBeUndefined();
    const yardage = await pane.frame.getByRole('cell').last().textContent();
    await pane.press('Add 5 columns');
    await pane.says('5 columns stand in').waitFor();
    expect(pane.cell('M3')).toBe('yardage');
    expect(pane.cell('M6')).toMatch(/^=.*HEM\.YARDAGE\(I6,/);
    const asked = functionNamed('YARDAGE')!.call([62, 78, 'pinch', 54]);
    const expected = 'cells' in asked ? asked.cells : undefined;
    expect([pane.sheet.cell(5, 12)?.value, yardage]).toEqual([expected, String(expected)]);

    const { host } = pane;
    await pane.page.context().close();
    pane = await paneIn(browser, files, { host });
    await pane.turnTo('Workbook');
    await pane.press('Read the table');
    await pane.says('What you said of its columns before still holds').waitFor();
  });

  it('gives a column another meaning, and says what is then missing', async () => {
    await withSchedule();
    await pane.press('Read the table');
    await pane.frame.getByRole('combobox', { name: /Style/ }).selectOption('not used');
    await pane.says('No column is taken for heading').waitFor();
  });

  it('overwrites a filled column only where the user allows it, and never one that is worked with', async () => {
    await previewed();
    const place = pane.frame.getByRole('textbox', { name: /^rod width/ });
    await place.fill('A');
    await place.press('Enter');
    await pane.says('Column A holds Room, which is worked with, so it cannot be overwritten').waitFor();
    expect(await pane.frame.getByRole('button', { name: /^Add/ }).count()).toBe(0);

    pane.sheet.open(3, 15).value = 'call first';
    await place.fill('P');
    await place.press('Enter');
    const allow = pane.frame.getByRole('checkbox', { name: 'Overwrite the 1 filled cell of column P' });
    await allow.waitFor();
    const add = pane.frame.getByRole('button', { name: 'Add 5 columns' });
    expect(await add.isDisabled()).toBe(true);
    await allow.check();
    await add.click();
    await pane.says('columns stand in').waitFor();
    expect(pane.cell('P4')).toMatch(/HEM\.RODWIDTH/);
  });

  it('is as it was when the user stops it in the middle', async () => {
    await previewed();
    const before = picture(pane);
    const { held, release } = holdFormulas(pane.host);
    await pane.press('Add 5 columns');
    await held;
    await pane.press('Stop');
    await release();
    await pane.says('Stopped. The workbook is as it was.').waitFor();
    expect(picture(pane)).toBe(before);
  });

  it('goes on when the user turns to another tab in the middle, and tells its end on return', async () => {
    await previewed();
    const { held, release } = holdFormulas(pane.host);
    await pane.press('Add 5 columns');
    await held;
    await pane.turnTo('Rules');
    await release();
    await pane.turnTo('Workbook');
    await pane.says('5 columns stand in').waitFor();
    expect(pane.cell('M4')).toMatch(/HEM/);
  });
});

describe('a pane that was closed in the middle of writing, in Excel', () => {
  /** Begins, closes the pane while the request that writes the formulas is under way, and opens it anew. */
  async function closedInTheMiddle(begin: () => Promise<void>, reached: boolean): Promise<void> {
    const { host } = pane;
    const whole = host.answer;
    const { held, release } = holdFormulas(host);
    await begin();
    await held;
    await pane.page.context().close();
    if (reached) await release();
    else {
      // What was still on its way is lost with the pane.
      host.answer = whole;
      host.forget();
    }
    pane = await paneIn(browser, files, { host });
  }

  it('is told in a sentence what was left half done, and puts it back to the last cell', async () => {
    pane = await paneIn(browser, files, { host: workbookOf(SCHEDULE, 'Sheet1') });
    await pane.says('Adds sheets for a whole job').waitFor();
    const before = pictureInFull(pane);
    await closedInTheMiddle(() => pane.press('Make the sheets'), false);
    await pane.says('“Add a new job” did not come to its end in this workbook').waitFor();
    expect(pane.host.book.sheets.length).toBeGreaterThan(3);
    expect(await seriousFaults(pane.frame)).toEqual([]);
    await pane.press('Put it back');
    await pane.says('as before.').waitFor();
    expect(pictureInFull(pane)).toBe(before);
    await pane.press('Make the sheets');
    await pane.says('The sheets of the job are in the workbook').waitFor();
  });

  it('is told which cells were changed since, and leaves them alone', async () => {
    pane = await paneIn(browser, files, { host: workbookOf(SCHEDULE, 'Sheet1') });
    await closedInTheMiddle(() => pane.press('Make the sheets'), false);
    await pane.says('did not come to its end').waitFor();
    sheetNamed('Job').open(3, 1).value = 'Marsh Lane Inn';
    await pane.press('Put it back');
    await pane.says('More was changed meanwhile, so nothing was put back yet.').waitFor();
    await pane.says('Changed since, and left as it is either way: the sheet “Job”').waitFor();
    await pane.press('Put it back');
    await pane.says('as before, but for what was changed since').waitFor();
    expect(pane.host.book.sheets.map(({ name }) => name)).toEqual(['Sheet1', 'Job']);
  });

  it('keeps it as it is where that is wanted, and asks no more', async () => {
    pane = await paneIn(browser, files, { host: workbookOf(SCHEDULE, 'Sheet1') });
    await closedInTheMiddle(() => pane.press('Make the sheets'), false);
    const half = picture(pane);
    await pane.press('Keep it as it is');
    await expect.poll(() => pane.host.book.settings.size).toBe(0);
    expect(picture(pane)).toBe(half);
    await expect.poll(() => pane.says('did not come to its end').count()).toBe(0);
  });

  it('has nothing to tell where Excel carried out all it was sent', async () => {
    pane = await paneIn(browser, files, { host: workbookOf([], 'Sheet1') });
    await closedInTheMiddle(() => pane.press('Make the sheets'), true);
    await pane.says('Adds sheets for a whole job').waitFor();
    expect(wrongCells()).toEqual([]);
    expect(pane.host.book.settings.size).toBe(0);
    expect(await pane.says('did not come to its end').count()).toBe(0);
  });

  it('fills the user’s table in one request: there is no middle in which it could be closed', async () => {
    await previewed();
    await closedInTheMiddle(() => pane.press('Add 5 columns'), true);
    expect(pane.cell('M6')).toMatch(/HEM\.YARDAGE/);
    expect(await pane.says('did not come to its end').count()).toBe(0);
  });
});

describe('a floor in Excel', () => {
  it('is planned by the solver beside the page, and the cutter’s list is written', async () => {
    const asked: string[] = [];
    const watched: Files = (path) => {
      asked.push(path);
      return files(path);
    };
    const host = workbookOf([
      ['Room', 'Width', 'Height', 'Style', 'Fabric', 'Fabric W', 'Qty'],
      ['401', 72.5, 98, 'pinch', 'Ostrel linen', 54, 5],
      ['402', 110, 112, 'pinch', 'Ostrel linen', 54, 3],
    ]);
    pane = await paneIn(browser, watched, { host });
    await pane.turnTo('Floor');
    await pane.press('Read the windows');
    await pane.says('8 windows in 2 rows').waitFor();
    await pane.press('Plan the cuts');
    await pane.says(/^(proven fewest|\d+ more than the bound)$/).waitFor();
    expect(await pane.says('The search could not start').count()).toBe(0);
    expect(asked).toContain('/highs.wasm');
    await pane.press('Write the list');
    await pane.says('The list stands on the sheet “Cutting list”').waitFor();
    expect(sheetNamed('Cutting list').cells.size).toBeGreaterThan(20);
    expect(wrongCells()).toEqual([]);
  });
});

describe('a cell in Excel', () => {
  it('is explained with its working and the window to scale', async () => {
    const host = workbookOf([[72, 98, '=HEM.YARDAGE(94,96,"pinch",54)']]);
    pane = await paneIn(browser, files, { host });
    await pane.turnTo('Explain');
    pane.select('C1');
    await pane.frame.getByRole('list', { name: 'Working' }).waitFor();
    expect(await pane.frame.getByRole('list', { name: 'Working' }).textContent()).toContain('112 in');
    const drawing = pane.frame.getByRole('img', { name: /to scale/ });
    expect(await drawing.getAttribute('aria-label')).toMatch(/94 in/);
    pane.select('A1');
    await pane.says('No formula stands here.').waitFor();
  });

  it('takes an example', async () => {
    pane = await paneIn(browser, files);
    pane.select('C7');
    await pane.turnTo('Functions');
    await pane.frame.getByRole('searchbox', { name: 'Find a function' }).fill('rodwidth');
    await pane.press(/^RODWIDTH/);
    await pane.frame.getByRole('button', { name: /^Insert .* at C7$/ }).first().click(); // prettier-ignore
    await pane.says('The example stands in C7 of “Windows”.').waitFor();
    expect(pane.cell('C7')).toMatch(/^=HEM\.RODWIDTH\(/);
    // A second one does not take its place.
    await pane.frame.getByRole('button', { name: /^Insert .* at C7$/ }).last().click(); // prettier-ignore
    await pane.says('C7 of “Windows” already holds something').waitFor();
  });
});

describe('trouble in Excel is a sentence in the pane, and the workbook as it was', () => {
  it.each([
    ['a protected sheet', () => { pane.sheet.protection = { options: {}, password: '' }; }, 'The sheet “Windows” is protected'], // prettier-ignore
    ['a cell being edited', () => { pane.host.startEditing(); }, 'A cell is being edited'], // prettier-ignore
    ['a connection that is gone', () => { pane.host.tripsLeft = 0; }, 'The connection to the workbook is lost'], // prettier-ignore
    ['hidden rows', () => { pane.sheet.hiddenRows.add(4); }, 'Row 5 of “Windows” is hidden'], // prettier-ignore
  ])('%s', async (_, happens, sentence) => {
    await previewed();
    const before = picture(pane);
    happens();
    await pane.press('Add 5 columns');
    await pane.says(sentence).waitFor();
    expect(picture(pane)).toBe(before);
  });

  it('a connection that breaks in the middle is told at once', async () => {
    await previewed();
    const { held, release } = holdFormulas(pane.host);
    await pane.press('Add 5 columns');
    await held;
    pane.host.tripsLeft = 0;
    await release();
    await pane.says('The connection to the workbook is lost').first().waitFor();
  });

  it('a cell being edited while the pane opens is waited for with a sentence', async () => {
    const host = workbookOf(SCHEDULE);
    host.startEditing();
    pane = await paneIn(browser, files, { host });
    await pane.says('A cell is being edited').waitFor();
    expect(await seriousFaults(pane.frame)).toEqual([]);
    host.finishEditing();
    await pane.press('Try again');
    await pane.says('Adds sheets for a whole job').waitFor();
    // What office.js asks for itself when it starts is refused too, and it leaves that unhandled.
    const ours = pane.errors.filter((one) => one !== 'Invalid API call in the current context.');
    pane = { ...pane, errors: ours };
  });

  it('an older Excel is told what it needs, and where its functions are described', async () => {
    pane = await paneIn(browser, files, { version: '1.8' });
    const said = pane.frame.getByRole('alert');
    await said.waitFor();
    expect(await said.textContent()).toContain(
      'it needs Microsoft 365, Excel on the web, Excel 2021 or later, or a retail Excel 2016 or 2019 at version 2311',
    );
    expect(await pane.frame.getByRole('link').getAttribute('href')).toBe('help.html');
  });

  it('an Excel in between works, and the pane says what it does without', async () => {
    pane = await paneIn(browser, files, { version: '1.9', host: workbookOf([], 'Sheet1') });
    await pane.says('This Excel may not take back what the pane writes').waitFor();
    await pane.press('Make the sheets');
    await pane.says('The sheets of the job are in the workbook').waitFor();
  });
});

describe('the pane in Excel', () => {
  it('works by the keyboard alone', async () => {
    pane = await paneIn(browser, files, { host: workbookOf([], 'Sheet1') });
    await pane.says('Adds sheets for a whole job').waitFor();
    const focused = () => pane.frame.evaluate(() => document.activeElement?.textContent);
    const keys = pane.page.keyboard;
    for (let at = 0; at < 20 && (await focused()) !== 'Make the sheets'; at++) await keys.press('Tab');
    expect(await focused()).toBe('Make the sheets');
    await keys.press('Enter');
    await pane.says('The sheets of the job are in the workbook').waitFor();
  });

  it.each(['light', 'dark'] as const)(
    'has no serious fault for anyone, in %s colours',
    async (colorScheme) => {
      await withSchedule();
      await pane.page.emulateMedia({ colorScheme });
      await pane.press('Read the table');
      await pane.press('Preview');
      await pane.frame.getByRole('region', { name: 'Preview of the first rows' }).waitFor();
      const ground = await pane.frame.evaluate(
        () => getComputedStyle(document.querySelector('#pane > div')!).backgroundColor,
      );
      expect(ground === 'rgb(255, 255, 255)').toBe(colorScheme === 'light');
      expect(await seriousFaults(pane.frame)).toEqual([]);
      const beyond = await pane.frame.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(beyond).toBeLessThanOrEqual(0);
    },
  );

  it('lets nothing leave the machine, whoever would send it', async () => {
    pane = await paneIn(browser, files);
    await pane.says('Adds sheets for a whole job').waitFor();
    expect(await refusedOutside(pane.frame)).toEqual(OUTSIDE);
    // The browser says so too.
    pane = { ...pane, errors: pane.errors.filter((one) => !one.includes('Content Security Policy')) };
  });

  it('can be opened outside Excel too, and says where it belongs', async () => {
    pane = await paneIn(browser, files);
    // office.js remembers in the tab where it was opened.
    await pane.page.evaluate(() => {
      sessionStorage.clear();
    });
    await pane.page.goto('https://localhost:3000/pane.html');
    await pane.page.getByText('This page is a pane of Excel').waitFor();
  });
});
