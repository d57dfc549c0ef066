import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
import { Trial, thereIsABrowser, type Opened } from './page';

const TABLE = [
  ['Room', 'Inside width', 'Left ext', 'Right ext', 'Height', 'Heading', 'Goods wide', 'Zub'],
  ['Hall', 72, 11, 11, 98, 'pinch', 54, 25.25],
  ['Bar', 84, 11, 11, 96, 'pinch', 54, 18],
  ['Snug', 60, 11, 11, 90, 'grommet', 54, 25.25],
];

describe.runIf(thereIsABrowser)('the words of this house in the pane', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await Trial.start();
  });
  afterEach(() => trial.closePages());
  afterAll(() => trial.end());

  async function opened(): Promise<Opened> {
    const at = await trial.open();
    await at.put('Sheet1', 0, 0, TABLE);
    await at.goTo(areaAt('Sheet1', 1, 0));
    await at.section('Workbook');
    await at.press('Read the table');
    await at.pane.getByText('Write the words of this house').waitFor();
    return at;
  }

  /** Says of one heading what it means, and writes it to the sheet of words. */
  async function written(at: Opened): Promise<void> {
    await at.pane.getByRole('switch').first().click();
    await at.pane.getByLabel(/Zub/).selectOption({ label: 'vertical repeat' });
    await at.press('Write the words of this house');
    await at.pane.getByText('“Words of this house” has 1 more.').waitFor();
  }
  const words = async (at: Opened) => (await at.read(areaAt('Words of this house', 0, 0, 2, 2))).values;

  it('are written to their sheet from what is said of a heading, once', async () => {
    const at = await opened();
    const write = at.pane.getByRole('button', { name: 'Write the words of this house' });
    expect(await write.isDisabled()).toBe(true);
    await written(at);
    expect((await words(at))[1]).toEqual(['Zub', 'vertical repeat']);
    await write.click();
    await at.pane.getByText('Nothing new: the words stand on “Words of this house”.').waitFor();
    expect(at.faults).toEqual([]);
  });

  it('are taken up in another workbook, whose table is then read by them', async () => {
    const at = await opened();
    const buffer = await at.saved();
    await written(at);
    await at.press('Copy them for another workbook');
    await at.pane.getByText('Copied.').waitFor();
    await at.page
      .getByLabel('Workbook to open')
      .setInputFiles({ name: 'other.xlsx', mimeType: 'application/octet-stream', buffer });
    await at.page.getByRole('status').filter({ hasText: /^other$/ }).waitFor(); // prettier-ignore
    expect((await at.contents()).sheets.map(({ name }) => name)).toEqual(['Sheet1']);
    await at.goTo(areaAt('Sheet1', 1, 0));
    await at.section('Workbook');
    await at.press('Read the table');
    await at.press(/^Take up the words of /);
    await at.pane.getByText('“Words of this house” has 1 more.').waitFor();
    expect((await words(at))[1]).toEqual(['Zub', 'vertical repeat']);
    await at.goTo(areaAt('Sheet1', 1, 0));
    await at.press('Read again');
    await at.pane.getByLabel(/Zub/).filter({ visible: true }).waitFor();
    expect(await at.pane.getByLabel(/Zub/).inputValue()).toBe('verticalRepeat');
    expect(at.faults).toEqual([]);
  });
});
