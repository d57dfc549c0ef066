/** The words of this house: written to their sheet from what the user said, and taken along to another workbook. */
import { Button, Caption1, makeStyles, tokens } from './kit';
import { useState } from 'react';
import type { Book } from '../book/book';
import type { ColumnsRead } from '../book/columns';
import { keepWords, wordsOfBook, wordsSaid, type Kept, type Word } from '../book/house-words';
import { TaskLine, useTask, type Message } from './task';

const useStyles = makeStyles({
  part: { display: 'grid', gap: tokens.spacingVerticalXS },
  acts: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
});

/** Between two workbooks they wait in this browser, until others are copied. */
const COPIED = 'hemledger words';
interface Copied {
  readonly from: string;
  readonly words: readonly Word[];
}

function copied(): Copied | undefined {
  try {
    const kept = localStorage.getItem(COPIED);
    return kept === null ? undefined : (JSON.parse(kept) as Copied);
  } catch {
    // A host may keep nothing between workbooks.
    return undefined;
  }
}

function told({ written, otherwise }: Kept): Message {
  const stays =
    otherwise.length === 0
      ? ''
      : ` The sheet says otherwise of ${otherwise.map((one) => `“${one}”`).join(', ')}, which stays as it is.`;
  return written === 0
    ? { intent: 'info', text: `Nothing new: the words stand on “Words of this house”.${stays}` }
    : { intent: 'success', text: `“Words of this house” has ${written} more.${stays}` };
}

export function HouseWordsPart({ book, read }: { readonly book: Book; readonly read: ColumnsRead }) {
  const styles = useStyles();
  const task = useTask();
  const [waiting, setWaiting] = useState(copied);
  const said = wordsSaid(read);
  const other = waiting?.from === book.title ? undefined : waiting;
  const keep = (words: readonly Word[]): void => {
    void task.run('Writing the words of this house', async (watch) =>
      told(await keepWords(book, words, watch)),
    );
  };
  const copy = (): void => {
    void task.run('Copying the words of this house', async () => {
      const words = await wordsOfBook(book);
      if (words.length === 0)
        return { intent: 'info', text: 'This workbook has no sheet “Words of this house” yet.' };
      const now = { from: book.title, words };
      try {
        localStorage.setItem(COPIED, JSON.stringify(now));
      } catch {
        return {
          intent: 'error',
          text: 'This program keeps nothing between workbooks: copy the sheet itself.',
        };
      }
      setWaiting(now);
      return {
        intent: 'info',
        text: 'Copied. Open the other workbook, read its table, and take the words up.',
      };
    });
  };
  return (
    <div className={styles.part}>
      <Caption1>
        What you say of a heading is kept for this table. On the sheet “Words of this house” it holds for
        every table of the workbook.
      </Caption1>
      <div className={styles.acts}>
        <Button
          disabled={task.running !== undefined || said.length === 0}
          onClick={() => {
            keep(said);
          }}
        >
          Write the words of this house
        </Button>
        <Button disabled={task.running !== undefined} onClick={copy}>
          Copy them for another workbook
        </Button>
        {other !== undefined && (
          <Button
            disabled={task.running !== undefined}
            onClick={() => {
              keep(other.words);
            }}
          >
            {`Take up the words of “${other.from}”`}
          </Button>
        )}
      </div>
      <TaskLine task={task} />
    </div>
  );
}
