/** Whether a table was changed after it was read: what the pane shows of it may be out of date. */
import { Button, makeStyles, Text, tokens } from './kit';
import { useEffect, useState } from 'react';
import { common, type Area } from '../book/address';
import type { Block, Book, Stop } from '../book/book';

/** Its cells, and the row below it, where the next one is entered. */
const watched = ({ area }: Block): Area => ({ ...area, rows: area.rows + 1 });

function useChanged(book: Book, read: Block | undefined): boolean {
  const [changed, setChanged] = useState<Block>();
  useEffect(() => {
    if (read === undefined) return;
    let stop: Stop | undefined;
    let over = false;
    const isOver = (): boolean => over;
    const watch = async (): Promise<void> => {
      stop = await book.onChange((area) => {
        if (!over && common(area, watched(read)) !== undefined) setChanged(read);
      });
      // The clean-up below may have run while the host answered.
      if (isOver()) stop();
    };
    watch().catch(reportError);
    return () => {
      over = true;
      stop?.();
    };
  }, [book, read]);
  return read !== undefined && changed === read;
}

const useStyles = makeStyles({
  changed: {
    borderLeft: `${tokens.strokeWidthThicker} solid ${tokens.colorStatusWarningBorderActive}`,
    paddingLeft: tokens.spacingHorizontalS,
    display: 'grid',
    justifyItems: 'start',
    gap: tokens.spacingVerticalS,
  },
});

interface Props {
  readonly book: Book;
  /** As it was read. */
  readonly read: Block;
  /** What to do about it. */
  readonly todo: string;
  /** Reads it again. */
  again?(): void;
}

export function ChangedSince({ book, read, todo, again }: Props) {
  const styles = useStyles();
  if (!useChanged(book, read)) return null;
  return (
    <div role="status" className={styles.changed}>
      <Text>The table was changed after it was read. {todo}</Text>
      {again !== undefined && (
        <Button size="small" onClick={again}>
          Read it again
        </Button>
      )}
    </div>
  );
}
