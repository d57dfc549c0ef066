/** The page: the sheet, the pane beside it, and the strip over both. */
import type { FWorkbook } from '@univerjs/preset-sheets-core';
import { renderPane, type Pane } from '../pane/pane';
import type { ThemeName } from '../pane/theme';
import { renderBar, type BarState } from './bar';
import { TrialBook } from './book';
import { LIST_SHEET, openDemo } from './demo';
import { openGrid } from './grid';
import './page.css';

const element = (id: string): HTMLElement => {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`The page has no element “${id}”.`);
  return found;
};
const asked = new URLSearchParams(location.search);

/** The machine's own setting, until the user chooses. */
const wished = (): ThemeName => {
  if (matchMedia('(forced-colors: active)').matches) return 'contrast';
  return matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
};

let state: BarState = { title: '', theme: wished() };
const grid = openGrid(element('sheet'), state.theme !== 'light');
const first = {
  id: 'first',
  name: asked.has('blank') ? 'Sheet1' : LIST_SHEET,
  rowCount: 200,
  columnCount: 26,
};
let workbook: FWorkbook = grid.api.createWorkbook({
  id: 'book',
  name: 'Trial workbook',
  sheetOrder: [first.id],
  sheets: { [first.id]: first },
});
let book = new TrialBook(grid, workbook);
let pane: Pane | undefined;

const show = renderBar(element('bar'), {
  open: (file) => {
    void busy(`Opening “${file.name}” …`, async () => {
      const { openFile } = await import('./opened');
      const opened = await openFile(grid, new Uint8Array(await file.arrayBuffer()), file.name);
      const old = workbook;
      showBook(opened);
      grid.api.disposeUnit(old.getId());
      await book.recalculate();
    });
  },
  save: () => {
    void busy('Saving …', async () => {
      const { saveFile } = await import('./saved');
      const bytes = await saveFile(grid, workbook, book);
      const link = document.createElement('a');
      link.href = URL.createObjectURL(new Blob([bytes as BlobPart]));
      link.download = `${book.title}.xlsx`;
      link.click();
      URL.revokeObjectURL(link.href);
    });
  },
  empties: (empties) => {
    grid.handOver(empties);
    void busy('Recalculating …', () => book.recalculate());
  },
  theme: (theme) => {
    tell({ theme });
    grid.api.toggleDarkMode(theme !== 'light');
    pane?.setTheme(theme);
  },
});

function tell(change: Partial<BarState>): void {
  state = { ...state, ...change };
  show(state);
}

async function busy(says: string, work: () => Promise<void>): Promise<void> {
  tell({ busy: true, says });
  try {
    await work();
    tell({ busy: false, says: book.title });
  } catch (thrown) {
    reportError(thrown);
    tell({ busy: false, says: thrown instanceof Error ? thrown.message : String(thrown) });
  }
}

function showBook(next: FWorkbook): void {
  workbook = next;
  book = new TrialBook(grid, next);
  pane?.close();
  pane = renderPane(element('pane'), book, { theme: state.theme });
  Object.assign(window, { trial: { grid, book, pane } });
}

if (asked.has('blank')) {
  showBook(workbook);
  tell({ title: book.title });
} else {
  void busy('Opening the demo job …', async () => {
    // The pane comes after it: on opening it would take a job still being written for one left half done.
    await book.goTo(
      await openDemo(book).finally(() => {
        showBook(workbook);
      }),
    );
  });
}
