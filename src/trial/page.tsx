import './page.css';
import { TrialBook } from './book';
import { openGrid } from './grid';

const grid = openGrid(document.getElementById('sheet') as HTMLElement, false);
const book = new TrialBook(grid, grid.api.createWorkbook({ id: 'book', name: 'Try' }));
Object.assign(window, { grid, book });
