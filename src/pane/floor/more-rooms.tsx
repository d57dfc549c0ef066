/** From one window to a floor: rows by room pattern, by a matrix of types and floors, one figure for many rooms. */
import { Button, Field, Input, makeStyles, Select, Text, tokens } from '../kit';
import { useState } from 'react';
import type { Book } from '../../book/book';
import type { ColumnsRead } from '../../book/columns';
import { matrixRows, roomRows, setForRooms, writeRooms, type RoomRows } from '../../book/floor/room-rows';
import { WANTED } from '../../book/wanted';
import type { Unit } from '../../core/exact/unit';
import { TaskLine, useTask } from '../task';

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

export function FloorRooms({ book, read, unit, again }: Props) {
  const styles = useStyles();
  const task = useTask();
  const [pattern, setPattern] = useState('');
  const [ahead, setAhead] = useState<RoomRows>();
  const [exception, setException] = useState({ pattern: '', column: '', value: '' });

  const look = (work: () => Promise<RoomRows>): void => {
    void task.run('Looking ahead', async () => {
      setAhead(undefined);
      setAhead(await work());
      return undefined;
    });
  };
  const write = (): void => {
    if (ahead === undefined) return;
    void task
      .run('Writing the rows', async (watch) => {
        await writeRooms(book, ahead, watch);
        setAhead(undefined);
        return { intent: 'success', text: ahead.says };
      })
      .then(again);
  };
  const set = (): void => {
    const column = read.columns.find(({ id }) => id === exception.column);
    if (column === undefined) return;
    void task
      .run('Setting the column', async (watch) => {
        const given = { pattern: exception.pattern, column, value: exception.value };
        const rows = await setForRooms(book, read, given, WANTED, unit, watch);
        return {
          intent: 'success',
          text: `${column.heading} is set in ${rows} ${rows === 1 ? 'row' : 'rows'}.`,
        };
      })
      .then(again);
  };

  return (
    <div className={styles.part}>
      <Field label="Rooms" hint={`${PATTERN}. Select the row they are to be like first.`}>
        <Input
          size="small"
          value={pattern}
          onChange={(_, { value }) => {
            setPattern(value);
            setAhead(undefined);
          }}
        />
      </Field>
      <div className={styles.acts}>
        <Button
          size="small"
          disabled={pattern.trim() === '' || task.running !== undefined}
          onClick={() => {
            look(async () => roomRows(book, read, (await book.selection()).row, pattern));
          }}
        >
          Preview the rooms
        </Button>
        <Button
          size="small"
          disabled={task.running !== undefined}
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
            <Button size="small" appearance="primary" disabled={task.running !== undefined} onClick={write}>
              Write the rows
            </Button>
          </div>
        </>
      )}
      <Field label="For the rooms" hint={PATTERN}>
        <Input
          size="small"
          value={exception.pattern}
          onChange={(_, { value }) => {
            setException({ ...exception, pattern: value });
          }}
        />
      </Field>
      <Field label="set the column">
        <Select
          size="small"
          value={exception.column}
          onChange={(_, { value }) => {
            setException({ ...exception, column: value });
          }}
        >
          <option value="">choose a column</option>
          {read.columns
            .filter(({ heading }) => heading !== '')
            .map(({ id, heading }) => (
              <option key={id} value={id}>
                {heading}
              </option>
            ))}
        </Select>
      </Field>
      <Field label="to" hint="Blank empties the cells.">
        <Input
          size="small"
          value={exception.value}
          onChange={(_, { value }) => {
            setException({ ...exception, value });
          }}
        />
      </Field>
      <div className={styles.acts}>
        <Button
          size="small"
          disabled={exception.pattern.trim() === '' || exception.column === '' || task.running !== undefined}
          onClick={set}
        >
          Set the cells
        </Button>
      </div>
      <TaskLine task={task} />
    </div>
  );
}
