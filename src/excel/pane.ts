/** The pane's page inside Excel: the open workbook, the pane on it, in Excel's own colours. */
import { Trouble, trouble } from '../book/trouble';
import { renderPane } from '../pane/pane';
import { ExcelBook } from './book';
import './pane.css';
import { onColours, themeOf } from './theme';

const place = document.getElementById('pane') as HTMLElement;

/** What is said where the pane cannot open; the functions need neither it nor this page. */
function say(sentence: string, canPass = false): void {
  const said = document.createElement('p');
  said.setAttribute('role', 'alert');
  said.textContent = sentence;
  const functions = document.createElement('p');
  const link = document.createElement('a');
  link.href = 'help.html';
  link.textContent = 'Read what they are';
  functions.append('The HEM functions work in cells all the same. ', link, '.');
  place.replaceChildren(said, functions);
  if (!canPass) return;
  const again = document.createElement('button');
  again.textContent = 'Try again';
  again.addEventListener('click', () => {
    again.disabled = true;
    void open();
  });
  said.after(again);
}

const theme = (): ReturnType<typeof themeOf> =>
  themeOf({
    // Excel gives none before it is ready, and older ones never.
    office: Office.context.officeTheme as Office.OfficeTheme | undefined,
    holds: (query) => matchMedia(query).matches,
  });

const OWNER = 'hemledger-owner';

/** One mark for this person's panes, kept by the browser where it may keep anything. */
function owner(): string {
  const made = crypto.randomUUID();
  try {
    const kept = localStorage.getItem(OWNER) ?? made;
    localStorage.setItem(OWNER, kept);
    return kept;
  } catch {
    return made;
  }
}
async function open(): Promise<void> {
  if (typeof Office === 'undefined') {
    say('Excel’s own part of this pane could not be loaded. Check the connection, and open the pane again.');
    return;
  }
  const { host } = await Office.onReady();
  if ((host as Office.HostType | null) !== Office.HostType.Excel) {
    say('This page is a pane of Excel. Open it there: Home, Hemledger.');
    return;
  }
  try {
    const book = await ExcelBook.open(
      { Excel, requirements: Office.context.requirements },
      { owner: owner() },
    );
    place.replaceChildren();
    const pane = renderPane(place, book, { theme: theme() });
    onColours(() => {
      pane.setTheme(theme());
    });
  } catch (failure) {
    const known = failure instanceof Trouble ? failure : trouble('refused', (failure as Error).message);
    say(known.message, known.code !== 'tooOld');
    if (!(failure instanceof Trouble)) reportError(failure);
  }
}

void open();
