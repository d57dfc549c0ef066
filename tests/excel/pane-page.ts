/** The pane's page as it is built, in the add-in's frame, driven as a person does: by its labels and roles. */
import { readdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Frame, Locator } from 'playwright-core';
import type { CellValue } from '../../src/book/book';
import { withEngine } from '../office/calculator';
import { readEntry } from '../office/entry';
import { framed, type Files, type Framed } from '../office/frame';
import { ExcelHost } from '../office/host';
import { Workbook, type Sheet } from '../office/model';
import { packed } from '../make/pack';
import { at } from './opened';

const AXE = createRequire(import.meta.url).resolve('axe-core');

const ICONS = fileURLToPath(new URL('../../src/excel/icons', import.meta.url));

/** The built page's files, by their path. */
export async function built(): Promise<Files> {
  const { folder } = await packed('pane');
  const files = new Map<string, Buffer>();
  for (const name of await readdir(folder)) files.set(`/${name}`, await readFile(join(folder, name)));
  return (path) =>
    path.startsWith('/icons/') ? readFile(join(ICONS, path.slice(7))) : Promise.resolve(files.get(path));
}

export interface PanePage extends Framed {
  readonly host: ExcelHost;
  readonly sheet: Sheet;
  /** Turns to a section by the name on its tab. */
  turnTo(tab: string): Promise<void>;
  press(button: string | RegExp): Promise<void>;
  /** A person selects cells: `select('B2:C3')`. */
  select(address: string, sheet?: Sheet): void;
  says(text: string | RegExp): Locator;
  /** A formula as it stands, or a value. */
  cell(address: string, sheet?: Sheet): string | number | boolean | undefined;
}

export interface Wishes {
  readonly version?: string;
  readonly host?: ExcelHost;
}

/** Rows as they would be typed, on the first sheet. */
export function workbookOf(rows: readonly (readonly CellValue[])[], sheet = 'Windows'): ExcelHost {
  const host = new ExcelHost(new Workbook(sheet));
  rows.forEach((row, down) => {
    row.forEach((value, across) => {
      if (value === null) return;
      const { formula } = readEntry(value, 'General');
      const cell = host.book.active.open(down, across);
      Object.assign(cell, formula === undefined ? { value } : { value: 0, formula });
    });
  });
  host.world.calculator = withEngine;
  return host;
}

export async function paneIn(browser: Browser, files: Files, wishes: Wishes = {}): Promise<PanePage> {
  const { host = workbookOf([]), version } = wishes;
  const addin = await framed(browser, host, files, '/pane.html', version);
  await addin.page.setViewportSize({ width: 350, height: 760 });
  const { frame } = addin;
  frame.page().setDefaultTimeout(30_000);
  const sheet = host.book.active;
  return {
    ...addin,
    host,
    sheet,
    turnTo: (tab) => frame.getByRole('tab', { name: tab, exact: true }).click(),
    press: (name) => frame.getByRole('button', { name, exact: typeof name === 'string' }).click(),
    select: (address, on = sheet) => {
      host.select(on, at(address));
    },
    says: (text) => frame.getByText(text),
    cell: (address, on = sheet) => {
      const { row, column } = at(address);
      const cell = on.cell(row, column);
      return cell?.formula ?? cell?.value;
    },
  };
}

export interface Held {
  /** The first request that writes one of our formulas is there. */
  readonly held: Promise<void>;
  /** Lets it through; done when it has been carried out. */
  release(): Promise<void>;
}

function bell(): { rung: Promise<void>; ring: () => void } {
  let ring = (): void => undefined;
  const rung = new Promise<void>((resolve) => (ring = resolve));
  return { rung, ring };
}

/** Holds back what writes our formulas, so that something may happen in the middle of a fill. */
export function holdFormulas(host: ExcelHost): Held {
  const answer = host.answer.bind(host);
  const [there, free, done] = [bell(), bell(), bell()];
  host.answer = async (request, flags) => {
    if (!request.Actions.some(({ Name }) => Name === 'FormulasR1C1')) return answer(request, flags);
    there.ring();
    await free.rung;
    const answered = await answer(request, flags);
    done.ring();
    return answered;
  };
  return {
    held: there.rung,
    release: () => {
      free.ring();
      return done.rung;
    },
  };
}

/** What axe finds serious in the page as it stands. */
export async function seriousFaults(frame: Frame): Promise<readonly string[]> {
  await frame.evaluate(await readFile(AXE, 'utf8'));
  const { violations } = (await frame.evaluate('axe.run()')) as {
    violations: { id: string; impact: string; nodes: { target: string[]; failureSummary: string }[] }[];
  };
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes[0]?.target.join(' ')} ${nodes[0]?.failureSummary}`);
}
