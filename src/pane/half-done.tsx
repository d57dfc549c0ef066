/** What a pane closed in the middle left behind: told once on opening, and put back or kept as the user says. */
import {
  Button,
  makeStyles,
  MessageBar,
  MessageBarActions,
  MessageBarBody,
  MessageBarTitle,
  tokens,
} from './kit';
import { useEffect, useState } from 'react';
import type { Book } from '../book/book';
import { keepAsItIs, putItBack, unfinished, type Unfinished } from '../book/unfinished';
import { messageOf, TaskLine, useTask } from './task';

const useStyles = makeStyles({
  part: { display: 'grid', gap: tokens.spacingVerticalS, marginBottom: tokens.spacingVerticalM },
  body: { whiteSpace: 'normal' },
  none: { display: 'none' },
});

export function HalfDone({ book }: { readonly book: Book }) {
  const styles = useStyles();
  const task = useTask();
  const [left, setLeft] = useState<Unfinished>();
  const [failed, setFailed] = useState<string>();
  useEffect(() => {
    let open = true;
    unfinished(book).then(
      (found) => {
        if (open) setLeft(found);
      },
      (thrown: unknown) => {
        if (open) setFailed(messageOf(thrown).text);
      },
    );
    return () => {
      open = false;
    };
  }, [book]);

  const back = (told: Unfinished): void => {
    void task.run('Putting back', async () => {
      const now = await putItBack(book, told);
      setLeft(now);
      return now === undefined
        ? {
            intent: 'success',
            text: `${told.places}: as before${told.stays === '' ? '' : ', but for what was changed since'}.`,
          }
        : { intent: 'warning', text: 'More was changed meanwhile, so nothing was put back yet.' };
    });
  };
  const keep = (): void => {
    void task.run('Keeping it', async () => {
      await keepAsItIs(book);
      setLeft(undefined);
      return undefined;
    });
  };

  const quiet = left === undefined && task.message === undefined && failed === undefined;
  return (
    <div className={quiet ? styles.none : styles.part}>
      {failed !== undefined && (
        <MessageBar intent="warning">
          <MessageBarBody className={styles.body}>{failed}</MessageBarBody>
        </MessageBar>
      )}
      {left !== undefined && (
        <MessageBar intent="warning">
          <MessageBarBody className={styles.body}>
            <MessageBarTitle>Left half done:</MessageBarTitle>
            {`“${left.says}” did not come to its end in this workbook, or is still under way in another window: ${left.places}.`}
            {left.stays !== '' && ` Changed since, and left as it is either way: ${left.stays}.`}
          </MessageBarBody>
          <MessageBarActions>
            <Button
              size="small"
              disabled={task.running !== undefined}
              onClick={() => {
                back(left);
              }}
            >
              Put it back
            </Button>
            <Button size="small" disabled={task.running !== undefined} onClick={keep}>
              Keep it as it is
            </Button>
          </MessageBarActions>
        </MessageBar>
      )}
      <TaskLine task={task} />
    </div>
  );
}
