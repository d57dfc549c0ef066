import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { built, paneIn, seriousFaults, workbookOf } from '../../excel/pane-page';
import { connected } from '../../browser';
import type { Files } from '../../office/frame';

const LIST = [
  ['Room', 'Rod', 'Drop', 'Style', 'Fabric', 'Fabric W', 'Fullness', 'Qty'],
  [401, 77, 96, 'pinch', 'Ostrel linen', 54, 2.25, 2],
  [402, 110, 104.5, 'pinch', 'Ostrel linen', 54, 2.25, 2],
  [403, 92, 118, 'pinch', 'Ostrel linen', 54, 2.25, 3],
] as const;

describe('a floor in Excel’s own frame', () => {
  let browser: Browser;
  let files: Files;
  beforeAll(async () => {
    [files, browser] = await Promise.all([built(), connected()]);
  });
  afterAll(() => browser.close());

  it('is planned by the search beside the page, under the page’s content policy, and its list written', async () => {
    const pane = await paneIn(browser, files, { host: workbookOf(LIST) });
    pane.select('A2');
    await pane.turnTo('Floor');
    await pane.press('Read the windows');
    await pane.frame.getByText('7 windows in 3 rows').waitFor();
    await pane.press('Plan the cuts');
    await pane.frame.getByRole('img', { name: /^Roll 1: 60 yd/ }).waitFor();
    expect(await pane.frame.getByText(/The search could not start here/).count()).toBe(0);
    expect(await seriousFaults(pane.frame)).toEqual([]);
    await pane.press('Write the list');
    await pane.says('The list stands on the sheet “Cutting list”').waitFor();
    expect(pane.host.book.sheets.map(({ name }) => name)).toContain('Floor totals');
    expect([pane.strangers, pane.errors, pane.host.unknown]).toEqual([[], [], []]);
  });
});
