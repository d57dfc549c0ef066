/** The trial workbook in a real browser: built once a run, served to this machine, watched for what it asks for. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { buffer } from 'node:stream/consumers';
import type { Browser, Frame, Locator, Page } from 'playwright-core';
import type { Area } from '../../src/book/address';
import type { Block, CellPut, Contents } from '../../src/book/book';
import { serve, type Served } from '../../src/trial/serve';
import type { Pane } from '../../src/pane/pane';
import type { TrialBook } from '../../src/trial/book';
import type { Grid } from '../../src/trial/grid';
import { connected } from '../browser';
import { packed } from '../make/pack';

export { thereIsABrowser } from '../browser';

const AXE = createRequire(import.meta.url).resolve('axe-core');

declare global {
  interface Window {
    trial: { readonly grid: Grid; readonly book: TrialBook; readonly pane: Pane };
  }
}

export class Trial {
  private constructor(
    private readonly browser: Browser,
    private readonly served: Served,
  ) {}

  static async start(): Promise<Trial> {
    const { folder } = await packed('trial');
    const [served, browser] = await Promise.all([serve(folder, 0), connected()]);
    return new Trial(browser, served);
  }
  /** Every page that is open draws without pause: those of a test that is over go. */
  async closePages(): Promise<void> {
    await Promise.all(this.browser.contexts().map((one) => one.close()));
  }
  async end(): Promise<void> {
    await this.browser.close();
    await this.served.close();
  }

  /** An empty workbook, or with `demo` the job the page opens with. */
  async open(with_: 'nothing' | 'demo' = 'nothing', width = 1280): Promise<Opened> {
    const page = await this.browser.newPage({ viewport: { width, height: 900 } });
    const opened = new Opened(page, this.served.address);
    await page.goto(this.served.address + (with_ === 'nothing' ? '?blank' : ''));
    await page
      .getByRole('status')
      .filter({ hasText: /^Trial workbook$/ })
      .waitFor();
    return opened;
  }
}

/** The grid has drawn what is there now: where it fails, it does so then. */
export const drawn = ({ page }: Opened): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((done) => {
        requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 100)));
      }),
  );

/** Tries every way a page has of sending something elsewhere; gives those that its policy refused. */
export const refusedOutside = (page: Page | Frame): Promise<readonly string[]> =>
  page.evaluate(async () => {
    const elsewhere = 'https://elsewhere.example/';
    const refused = new Set<string>();
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI }) => {
      refused.add(`${effectiveDirective.replace(/-elem$/, '')} ${new URL(blockedURI).host}`);
    });
    await fetch(elsewhere).catch(() => undefined);
    navigator.sendBeacon(elsewhere, 'hello');
    try {
      new WebSocket('wss://socket.example/');
    } catch {
      // Some browsers refuse by throwing.
    }
    new Image().src = elsewhere;
    const script = document.createElement('script');
    script.src = elsewhere;
    const form = document.createElement('form');
    form.action = elsewhere;
    const frame = document.createElement('iframe');
    frame.src = elsewhere;
    document.body.append(script, form, frame);
    form.submit();
    await new Promise((done) => setTimeout(done, 500));
    return [...refused].sort();
  });

/** What a page of ours refuses, all of it. */
export const OUTSIDE = [
  'connect-src elsewhere.example',
  'connect-src socket.example',
  'form-action elsewhere.example',
  'frame-src elsewhere.example',
  'img-src elsewhere.example',
  'script-src elsewhere.example',
];

export class Opened {
  /** Requests for anything but our own files. */
  readonly strangers: string[] = [];
  /** What the page threw and did not catch. */
  readonly faults: string[] = [];
  readonly pane: Locator;

  constructor(
    readonly page: Page,
    address: string,
  ) {
    this.pane = page.locator('#pane');
    page.on('pageerror', (fault) => this.faults.push(fault.message));
    page.on('request', (request) => {
      const url = request.url();
      if (!url.startsWith(address) && !/^(data|blob):/.test(url)) this.strangers.push(url);
    });
  }

  section(name: string): Promise<void> {
    return this.pane.getByRole('tab', { name, exact: true }).click();
  }
  press(name: string | RegExp): Promise<void> {
    return this.pane.getByRole('button', { name }).click();
  }
  /** What the task said at its end. */
  said(): Promise<string> {
    return this.pane.locator('.message:visible').first().innerText();
  }

  /** Fills cells from a corner on, as one step. */
  put(sheet: string, row: number, column: number, cells: readonly (readonly CellPut[])[]): Promise<void> {
    return this.page.evaluate(
      async ([at, rows, name]) => {
        const area = { sheet: name, ...at, rows: rows.length, columns: rows[0]?.length ?? 0 };
        await window.trial.book.inOneStep('Set up', (write) => write({ puts: [{ area, cells: rows }] }));
      },
      [{ row, column }, cells, sheet] as const,
    );
  }
  goTo(area: Area): Promise<void> {
    return this.page.evaluate((at) => window.trial.book.goTo(at), area);
  }
  async read(area: Area): Promise<Block> {
    const block = await this.page.evaluate(async (at) => (await window.trial.book.read([at]))[0], area);
    if (block === undefined) throw new Error('Nothing was read.');
    return block;
  }
  contents(): Promise<Contents> {
    return this.page.evaluate(() => window.trial.book.contents());
  }
  /** The file that “Save .xlsx” gives. */
  async saved(): Promise<Buffer> {
    const saving = this.page.waitForEvent('download');
    await this.page.getByRole('button', { name: 'Save .xlsx' }).click();
    return buffer(await (await saving).createReadStream());
  }
  undo(): Promise<boolean> {
    return this.page.evaluate(() => window.trial.grid.api.undo());
  }

  /** Serious faults an accessibility checker finds in all that is ours: the grid is another's. */
  async seriousFaults(): Promise<readonly string[]> {
    if ((await this.page.evaluate('typeof axe')) === 'undefined')
      await this.page.evaluate(await readFile(AXE, 'utf8'));
    // A colour that is still changing is none that a person reads by.
    await this.page.evaluate(() =>
      Promise.allSettled(
        document
          .getAnimations()
          .filter(({ effect }) => effect?.getComputedTiming().endTime !== Infinity)
          .map(({ finished }) => finished),
      ),
    );
    const found = (await this.page.evaluate(
      "axe.run({ include: [['#pane'], ['#bar']] }, { resultTypes: ['violations'] })",
    )) as { violations: { id: string; impact: string; nodes: { html: string }[] }[] };
    return found.violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`);
  }
}
