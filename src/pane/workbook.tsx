import type { Book } from '../book/book';
import { Section } from './section';

export function WorkbookSection(_: { readonly book: Book }) {
  return (
    <Section title="Your workbook" says="…">
      {null}
    </Section>
  );
}
