/** Which column is what: as it was found, with samples and doubts, and hers to correct. */
import { Badge, Caption1, Field, makeStyles, Select, Subtitle2, Switch, tokens } from './kit';
import { useState } from 'react';
import { letters } from '../book/address';
import type { Book } from '../book/book';
import type { ColumnsRead, SheetColumn, WantedColumn } from '../book/columns';
import { WANTED } from '../book/wanted';
import { HouseWordsPart } from './house-words';

const useStyles = makeStyles({
  head: { display: 'flex', justifyContent: 'space-between', alignItems: 'center' },
  list: { display: 'grid', gap: tokens.spacingVerticalS },
  label: { display: 'inline-flex', gap: tokens.spacingHorizontalS, alignItems: 'center' },
});

const NONE = 'none';

interface Props {
  readonly book: Book;
  readonly read: ColumnsRead;
  /** What a column may be taken for. */
  readonly wanted?: readonly WantedColumn[];
  correct(id: string, key: string | null): void;
}

export function Mapping({ book, read, wanted = WANTED, correct }: Props) {
  const styles = useStyles();
  const [all, setAll] = useState(false);
  const known = read.columns.filter((one) => one.key !== undefined || one.corrected || one.doubts.length > 0);
  const list = all ? read.columns : known;
  const unread = read.columns.filter((one) => !list.includes(one) && one.heading !== '');
  return (
    <div className={styles.list}>
      <div className={styles.head}>
        <Subtitle2 as="h3">Columns</Subtitle2>
        <Switch
          label={`All ${read.columns.length} columns`}
          checked={all}
          onChange={(_, { checked }) => {
            setAll(checked);
          }}
        />
      </div>
      {list.map((one) => (
        <OneColumn key={one.id} column={one} wanted={wanted} correct={correct} />
      ))}
      {unread.length > 0 && (
        <Caption1>
          Not read: {unread.map(({ column, heading }) => `${letters(column)} (${heading})`).join(', ')}.
        </Caption1>
      )}
      {read.notes.map((note) => (
        <Caption1 key={note}>{note}</Caption1>
      ))}
      <HouseWordsPart book={book} read={read} />
    </div>
  );
}

interface OneProps {
  readonly column: SheetColumn;
  readonly wanted: readonly WantedColumn[];
  readonly correct: Props['correct'];
}

function OneColumn({ column, wanted, correct }: OneProps) {
  const styles = useStyles();
  const doubt = column.doubts.join(' ');
  return (
    <div>
      <Field
        orientation="horizontal"
        size="small"
        hint={column.samples.length === 0 ? 'empty' : column.samples.join(' · ')}
        label={
          <span className={styles.label}>
            <Badge appearance="outline" size="small">
              {letters(column.column)}
            </Badge>
            {column.heading === '' ? 'no heading' : column.heading}
          </span>
        }
        {...(doubt !== '' && {
          validationState: 'warning' as const,
          validationMessage: doubt,
        })}
      >
        <Select
          size="small"
          value={column.key === undefined ? NONE : column.keys.join('+')}
          onChange={(_, { value }) => {
            correct(column.id, value === NONE ? null : value);
          }}
        >
          <option value={NONE}>not used</option>
          {column.keys.length > 1 && (
            <option value={column.keys.join('+')}>
              {column.keys.map((key) => wanted.find((one) => one.key === key)?.heading ?? key).join(' and ')}
            </option>
          )}
          {wanted.map(({ key, heading }) => (
            <option key={key} value={key}>
              {heading}
            </option>
          ))}
        </Select>
      </Field>
    </div>
  );
}
