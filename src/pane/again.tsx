/** Our formulas entered again where Excel goes on showing #NAME?, sheet by sheet, counted before. */
import { Button, Caption1, makeStyles, Text, tokens } from './kit';
import { useState } from 'react';
import { enterAgain, ourFormulas, type OurFormulas } from '../book/again';
import type { Book } from '../book/book';
import { TaskLine, useTask } from './task';

const useStyles = makeStyles({
  tool: { display: 'grid', gap: tokens.spacingVerticalS, justifyItems: 'start' },
  title: { cursor: 'pointer', fontWeight: tokens.fontWeightSemibold },
});

const counted = ({ count, unknown, columns }: OurFormulas): string =>
  `${count.toLocaleString('en')} ${count === 1 ? 'formula' : 'formulas'} in ${columns} ${columns === 1 ? 'column' : 'columns'}, ${unknown === 0 ? 'none' : unknown.toLocaleString('en')} of them with #NAME?`;

export function EnterAgain({ book }: { readonly book: Book }) {
  const styles = useStyles();
  const task = useTask();
  const [found, setFound] = useState<readonly OurFormulas[]>();
  const look = (): void => {
    void task.run('Looking for our formulas', async () => {
      setFound(await ourFormulas(book));
      return undefined;
    });
  };
  const enter = (chosen: OurFormulas): void => {
    void task.run('Entering the formulas again', async (watch) => {
      await enterAgain(book, chosen, watch);
      setFound(await ourFormulas(book));
      return { intent: 'success', text: `The formulas of “${chosen.sheet}” were entered again.` };
    });
  };
  return (
    <details>
      <summary className={styles.title}>Enter our formulas again</summary>
      <div className={styles.tool}>
        <Text size={200}>
          A workbook that was opened before the add-in was there may go on showing #NAME? until its formulas
          are entered anew. Nothing else is touched, and no formula is changed.
        </Text>
        <Button size="small" disabledFocusable={task.running !== undefined} onClick={look}>
          Look for them
        </Button>
        {found?.length === 0 && <Text size={200}>No sheet of this workbook holds a formula of ours.</Text>}
        {found?.map((one) => (
          <div key={one.sheet} className={styles.tool}>
            <Caption1>
              “{one.sheet}”: {counted(one)}.
            </Caption1>
            <Button
              size="small"
              appearance={one.unknown > 0 ? 'primary' : 'secondary'}
              disabledFocusable={task.running !== undefined}
              onClick={() => {
                enter(one);
              }}
            >
              Enter them again
            </Button>
          </div>
        ))}
        <TaskLine task={task} />
      </div>
    </details>
  );
}
