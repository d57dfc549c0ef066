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
import { useCallback, useEffect, useState } from 'react';
import type { Book } from '../book/book';
import { keepAsItIs, putItBack, unfinished, type Unfinished } from '../book/unfinished';
import { LEFT_HALF_DONE, messageOf, TaskLine, useTask } from './task';

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
  const look = useCallback(() => {
    unfinished(book).then(setLeft, (thrown: unknown) => {
      setFailed(messageOf(thrown).text);
    });
  }, [book]);
  useEffect(() => {
    look();
    window.addEventListener(LEFT_HALF_DONE, look);
    return () => {
      window.removeEventListener(LEFT_HALF_DONE, look);
    };
  }, [look]);

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
      {left?.underWay === true && <UnderWay change={left} look={look} />}
      {left?.underWay === false && (
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

function UnderWay({ change, look }: { readonly change: Unfinished; look(): void }) {
  const styles = useStyles();
  return (
    <MessageBar intent="info">
      <MessageBarBody className={styles.body}>
        {`Someone else’s pane is writing “${change.says}” into this workbook: ${change.places}. Longer changes from here wait until it is done.`}
      </MessageBarBody>
      <MessageBarActions>
        <Button size="small" onClick={look}>
          Look again
        </Button>
      </MessageBarActions>
    </MessageBar>
  );
}
