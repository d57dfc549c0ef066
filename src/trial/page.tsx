import './page.css';
import { renderPane } from '../pane/pane';
import { TrialBook } from './book';
import { openGrid } from './grid';

const element = (id: string): HTMLElement => {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`The page has no element “${id}”.`);
  return found;
};

const grid = openGrid(element('sheet'), false);
const book = new TrialBook(grid, grid.api.createWorkbook({ id: 'book', name: 'Try' }));
const pane = renderPane(element('pane'), book);
Object.assign(window, { grid, book, pane });
