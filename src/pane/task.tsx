/** Work on the workbook, as the person follows it: what is going on, how far, stop, and how it ended. */
import { Button, makeStyles, MessageBar, MessageBarBody, ProgressBar, Text } from './kit';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Watch } from '../book/apply';
import { Trouble } from '../book/trouble';
import { Refusal } from '../core/cell/answer';

export interface Message {
  readonly intent: 'success' | 'info' | 'warning' | 'error';
  readonly text: string;
}
interface Running {
  readonly says: string;
  readonly done: number;
  readonly total: number;
  /** The workbook waits for a cell to be left. */
  readonly waits?: boolean;
}
export interface Task {
  readonly running: Running | undefined;
  readonly message: Message | undefined;
  /** Only one runs at a time; what it gives back is the message at its end. */
  run(says: string, work: (watch: Watch) => Promise<Message | undefined>): Promise<void>;
  stop(): void;
  clear(): void;
}

/** Told to the whole pane: there is something to put back. */
export const LEFT_HALF_DONE = 'hemledger-left-half-done';

/** What a person is told when work fails: our own sentences as they are; anything else is our fault. */
export function messageOf(thrown: unknown): Message {
  if (thrown instanceof Trouble)
    return { intent: thrown.code === 'cancelled' ? 'info' : 'error', text: thrown.message };
  if (thrown instanceof Refusal) return { intent: 'error', text: thrown.finding.sentence };
  reportError(thrown);
  const said = thrown instanceof Error ? thrown.message : String(thrown);
  return {
    intent: 'error',
    text: `The pane failed, which is a fault of ours, not of your workbook: ${said}. Look at the last change, and undo it if it is incomplete.`,
  };
}

/** A host that keeps an undo step for each request is promised none for the whole. */
const withUndo = (message: Message | undefined): Message | undefined =>
  message?.intent === 'success' ? { ...message, text: `${message.text} One undo takes it back.` } : message;

export function useTask(): Task {
  const [running, setRunning] = useState<Running>();
  const [message, setMessage] = useState<Message>();
  const stopper = useRef<AbortController>();
  const mounted = useRef(true);
  useEffect(() => {
    mounted.current = true;
    return () => {
      mounted.current = false;
      stopper.current?.abort();
    };
  }, []);

  const run = useCallback<Task['run']>(async (says, work) => {
    if (stopper.current !== undefined) return;
    const controller = (stopper.current = new AbortController());
    setMessage(undefined);
    setRunning({ says, done: 0, total: 0 });
    const written: boolean[] = [];
    try {
      const ended = await work({
        signal: controller.signal,
        progress: (done, total) => {
          if (mounted.current) setRunning({ says, done, total });
        },
        waiting: (waits) => {
          if (mounted.current) setRunning((now) => now && { ...now, waits });
        },
        written: (oneUndo) => written.push(oneUndo),
      });
      const undone = written.length === 1 && written[0] === true;
      if (mounted.current) setMessage(undone ? withUndo(ended) : ended);
    } catch (thrown) {
      if (thrown instanceof Trouble && (thrown.code === 'halfDone' || thrown.code === 'lostMidway'))
        window.dispatchEvent(new Event(LEFT_HALF_DONE));
      if (mounted.current) setMessage(messageOf(thrown));
    } finally {
      stopper.current = undefined;
      if (mounted.current) setRunning(undefined);
    }
  }, []);
  const stop = useCallback(() => stopper.current?.abort(), []);
  const clear = useCallback(() => {
    setMessage(undefined);
  }, []);
  return { running, message, run, stop, clear };
}

/** Whether it could be done; a Trouble is told in the caller's own words. */
export async function kindly(work: Promise<unknown>): Promise<boolean> {
  try {
    await work;
    return true;
  } catch (thrown) {
    if (thrown instanceof Trouble) return false;
    throw thrown;
  }
}

const useStyles = makeStyles({
  running: { display: 'grid', gap: '6px', gridTemplateColumns: '1fr auto', alignItems: 'center' },
  bar: { gridColumn: '1 / -1' },
  message: { whiteSpace: 'normal' },
});

/** `counts` is what the progress counts. */
export function TaskLine({ task, counts = 'cells' }: { readonly task: Task; readonly counts?: string }) {
  const styles = useStyles();
  const { running, message } = task;
  return (
    <div role="status" aria-live="polite">
      {running !== undefined && (
        <div className={styles.running}>
          <Text size={200}>
            {running.says}
            {running.total > 0 &&
              `: ${running.done.toLocaleString('en')} of ${running.total.toLocaleString('en')} ${counts}`}
            {running.waits === true &&
              '. A cell is being edited: finish it with Enter, or leave it with Esc.'}
          </Text>
          <Button size="small" onClick={task.stop}>
            Stop
          </Button>
          <ProgressBar
            className={styles.bar}
            aria-label={running.says}
            {...(running.total > 0 ? { value: running.done, max: running.total } : {})}
          />
        </div>
      )}
      {message !== undefined && (
        <MessageBar intent={message.intent}>
          <MessageBarBody className={styles.message}>{message.text}</MessageBarBody>
        </MessageBar>
      )}
    </div>
  );
}
