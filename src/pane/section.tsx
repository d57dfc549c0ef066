/** How every section of the pane stands: a heading, a line that says what it is for, its content. */
import { makeStyles, Subtitle2, Text, tokens } from './kit';
import type { ReactNode } from 'react';
import type { Ability, Book } from '../book/book';

const useStyles = makeStyles({
  section: {
    display: 'grid',
    gap: tokens.spacingVerticalM,
    alignContent: 'start',
    gridTemplateColumns: 'minmax(0, 1fr)',
    '& h3': { margin: 0 },
  },
  heading: {
    display: 'grid',
    gap: tokens.spacingVerticalXXS,
    '& > h2': { margin: 0 },
  },
  says: { color: tokens.colorNeutralForeground2 },
});

/** What this host cannot do, said where it matters. */
export function Cannot({ book, what }: { readonly book: Book; readonly what: Ability }) {
  const says = book.lacks.get(what);
  return says === undefined ? null : <Text size={200}>{says}</Text>;
}

interface Props {
  readonly title: string;
  readonly says: string;
  readonly children: ReactNode;
}

export function Section({ title, says, children }: Props) {
  const styles = useStyles();
  return (
    <div className={styles.section}>
      <div className={styles.heading}>
        <Subtitle2 as="h2">{title}</Subtitle2>
        <Text size={200} className={styles.says}>
          {says}
        </Text>
      </div>
      {children}
    </div>
  );
}
