/** The pane on a workbook in memory, for what a real one does only when something goes wrong. */
import { areaAt } from '../../src/book/address';
import { MemoryBook } from '../../src/book/memory';
import { trouble } from '../../src/book/trouble';
import { renderPane } from '../../src/pane/pane';

const book = new MemoryBook({
  Windows: {
    rows: [
      ['W', 'Ht', 'Style', 'Fab W'],
      [72, 98, 'pinch', 54],
      [60, 98, 'pinch', 54],
      [84, 98, 'grommet', 54],
    ],
    hiddenRows: [2],
  },
});
book.select(areaAt('Windows', 1, 0));
Object.assign(book, { lacks: new Map([['print', 'This host is of our own making.']]) });
const element = document.createElement('div');
document.body.append(element);
const pane = renderPane(element, book, { section: 'workbook' });
Object.assign(window, { memory: { book, pane, trouble } });
