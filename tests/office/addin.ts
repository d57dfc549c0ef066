// The smallest add-in: it serves the workbook through ExcelBook and lets a test ask it.
import { apply } from '../../src/book/apply';
import { ExcelBook } from '../../src/excel/book';

declare global {
  interface Window {
    book?: ExcelBook;
    apply: typeof apply;
  }
}

window.apply = apply;
void Office.onReady(async ({ host, platform }) => {
  const said = document.querySelector('p');
  try {
    window.book = await ExcelBook.open({ Excel, requirements: Office.context.requirements });
    if (said !== null) said.textContent = `${host} ${platform}: ${window.book.title}`;
  } catch (failure) {
    if (said !== null) said.textContent = (failure as Error).message;
  }
});
