/** From one window to a floor: rows by room pattern, by a matrix of types and floors, one figure for many rooms. */
import { Button, ChoiceField, makeStyles, Text, TextField, tokens } from '../kit';
import { useState } from 'react';
import type { Book } from '../../book/book';
import type { ColumnsRead } from '../../book/columns';
import { matrixRows, roomRows, setForRooms, writeRooms, type RoomRows } from '../../book/floor/room-rows';
import { WANTED } from '../../book/wanted';
import type { Unit } from '../../core/exact/unit';
import { TaskLine, useTask, type Task } from '../task';

const useStyles = makeStyles({
  part: { display: 'grid', gridTemplateColumns: 'minmax(0, 1fr)', gap: tokens.spacingVerticalS },
  acts: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
});

interface Props {
  readonly book: Book;
  readonly read: ColumnsRead;
  readonly unit: Unit;
  again(): Promise<void>;
}

const PATTERN = 'like 401-448 even not 404, 413';

interface Working {
  readonly task: Task;
  /** Reads the table again. */
  again(): Promise<void>;
}

export function FloorRooms({ book, read, unit, again }: Props) {
  const styles = useStyles();
  const task = useTask();
  return (
    <div className={styles.part}>
      <NewRows book={book} read={read} task={task} again={again} />
      <SetForRooms book={book} read={read} unit={unit} task={task} again={again} />
      <TaskLine task={task} />
    </div>
  );
}

/** Rows like the selected one for many rooms, or by a matrix, seen before they are written. */
function NewRows({ book, read, task, again }: Pick<Props, 'book' | 'read'> & Working) {
  const styles = useStyles();
  const [pattern, setPattern] = useState('');
  const [ahead, setAhead] = useState<RoomRows>();
  const busy = task.running !== undefined;

  const look = (work: () => Promise<RoomRows>): void => {
    void task.run('Looking ahead', async () => {
      setAhead(undefined);
      setAhead(await work());
      return undefined;
    });
  };
  const write = (rows: RoomRows): void => {
    void task
      .run('Writing the rows', async (watch) => {
        await writeRooms(book, rows, watch);
        setAhead(undefined);
        return { intent: 'success', text: rows.says };
      })
      .then(again);
  };

  return (
    <>
      <TextField
        label="Rooms"
        hint={`${PATTERN}. Select the row they are to be like first.`}
        value={pattern}
        change={(value) => {
          setPattern(value);
          setAhead(undefined);
        }}
      />
      <div className={styles.acts}>
        <Button
          size="small"
          disabled={pattern.trim() === '' || busy}
          onClick={() => {
            look(async () => roomRows(book, read, (await book.selection()).row, pattern));
          }}
        >
          Preview the rooms
        </Button>
        <Button
          size="small"
          disabled={busy}
          title="Types down the left, floors along the top, numbers between them"
          onClick={() => {
            look(async () => matrixRows(book, read, await book.selection()));
          }}
        >
          Preview the selected matrix
        </Button>
      </div>
      {ahead !== undefined && (
        <>
          <Text size={200}>{ahead.says.replace(/is added|are added/, 'would be added')}</Text>
          <div className={styles.acts}>
            <Button
              size="small"
              appearance="primary"
              disabled={busy}
              onClick={() => {
                write(ahead);
              }}
            >
              Write the rows
            </Button>
          </div>
        </>
      )}
    </>
  );
}

/** One column's value for many rooms. */
function SetForRooms({ book, read, unit, task, again }: Omit<Props, 'again'> & Working) {
  const styles = useStyles();
  const [pattern, setPattern] = useState('');
  const [columnId, setColumnId] = useState('');
  const [value, setValue] = useState('');

  const set = (): void => {
    const column = read.columns.find(({ id }) => id === columnId);
    if (column === undefined) return;
    void task
      .run('Setting the column', async (watch) => {
        const rows = await setForRooms(book, read, { pattern, column, value }, WANTED, unit, watch);
        return {
          intent: 'success',
          text: `${column.heading} is set in ${rows} ${rows === 1 ? 'row' : 'rows'}.`,
        };
      })
      .then(again);
  };

  return (
    <>
      <TextField label="For the rooms" hint={PATTERN} value={pattern} change={setPattern} />
      <ChoiceField label="set the column" value={columnId} change={setColumnId}>
        <option value="">choose a column</option>
        {read.columns
          .filter(({ heading }) => heading !== '')
          .map(({ id, heading }) => (
            <option key={id} value={id}>
              {heading}
            </option>
          ))}
      </ChoiceField>
      <TextField label="to" hint="Blank empties the cells." value={value} change={setValue} />
      <div className={styles.acts}>
        <Button
          size="small"
          disabled={pattern.trim() === '' || columnId === '' || task.running !== undefined}
          onClick={set}
        >
          Set the cells
        </Button>
      </div>
    </>
  );
}
