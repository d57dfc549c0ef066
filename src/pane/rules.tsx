import type { Book } from '../book/book';
import { Section } from './section';

export function RulesSection(_: { readonly book: Book }) {
  return (
    <Section title="House rules" says="…">
      {null}
    </Section>
  );
}
