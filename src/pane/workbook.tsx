/** Workbook: her own table read, its columns told apart, and formula columns added beside it. */
import { Button, Caption1, makeStyles, Text, tokens } from './kit';
import { useState } from 'react';
import { letters } from '../book/address';
import type { Book } from '../book/book';
import { readColumns, type ColumnsRead, type Corrections } from '../book/columns';
import { readRules, rulesNames, type RulesSeen } from '../book/rule-lines';
import { survey, type Survey } from '../book/survey';
import { missing, WANTED } from '../book/wanted';
import { INCHES } from '../core/exact/unit';
import { Adding } from './adding';
import { ChangedSince } from './changed';
import { Mapping } from './mapping';
import { Section } from './section';
import { TaskLine, useTask } from './task';

const useStyles = makeStyles({
  read: { display: 'flex', gap: tokens.spacingHorizontalS, alignItems: 'center' },
  lacking: {
    borderLeft: `${tokens.strokeWidthThicker} solid ${tokens.colorStatusWarningBorderActive}`,
    paddingLeft: tokens.spacingHorizontalS,
  },
  quiet: { color: tokens.colorNeutralForeground2 },
});

/** The user's table as it was read, and what the user says of its columns. */
interface Opened {
  readonly survey: Survey;
  readonly read: ColumnsRead;
  readonly said: Corrections;
  readonly rules: RulesSeen | undefined;
}

export function WorkbookSection({ book }: { readonly book: Book }) {
  const styles = useStyles();
  const task = useTask();
  const [opened, setOpened] = useState<Opened>();

  const open = (): void => {
    void task.run('Reading the table', async () => {
      setOpened(undefined);
      const [name] = await rulesNames(book);
      const rules = name === undefined ? undefined : await readRules(book, name);
      const found = await survey(book, WANTED, rules?.unit ?? INCHES, await book.selection());
      setOpened({ survey: found, read: found.read, said: found.mapping?.columns ?? {}, rules });
      return undefined;
    });
  };

  const correct = (id: string, key: string | null): void => {
    if (opened === undefined) return;
    const { block, header } = opened.read;
    const said = { ...opened.said, [id]: key };
    const read = readColumns(block, WANTED, opened.rules?.unit ?? INCHES, said, block.area.row + header.row);
    if (read !== undefined) setOpened({ ...opened, said, read });
  };

  return (
    <Section
      title="Your workbook"
      says="Keep your own table: columns are added beside it with formulas that read yours. Select any cell of the table first, or the row that holds its headings."
    >
      <div className={styles.read}>
        <Button
          appearance={opened === undefined ? 'primary' : 'secondary'}
          // Disabled outright it would lose the focus of whoever works by the keyboard.
          disabledFocusable={task.running !== undefined}
          onClick={open}
        >
          {opened === undefined ? 'Read the table' : 'Read again'}
        </Button>
      </div>
      <TaskLine task={task} />
      {opened !== undefined && (
        <>
          <Text>{whatWasRead(opened)}</Text>
          <ChangedSince book={book} read={opened.read.block} todo="Read it again before columns are added." />
          <Mapping book={book} read={opened.read} correct={correct} />
          {missing(opened.read).length > 0 && (
            <Text className={styles.lacking}>
              No column is taken for {missing(opened.read).join('; ')}. Say which column holds it above, or
              give one figure for every row below.
            </Text>
          )}
          <Adding
            key={opened.survey.place}
            book={book}
            survey={opened.survey}
            read={opened.read}
            rules={opened.rules}
          />
          {opened.rules === undefined && (
            <Caption1 className={styles.quiet}>
              This workbook has no house rules: our defaults apply, in inches and yards.
            </Caption1>
          )}
        </>
      )}
    </Section>
  );
}

function whatWasRead({ read, survey: found }: Opened): string {
  const { block, header, lines } = read;
  const windows = lines.filter((line) => line.kind === 'window').length;
  const where =
    block.table === undefined ? `The sheet “${block.area.sheet}”` : `The table “${block.table.name}”`;
  const row = block.area.row + header.row + 1;
  const last = letters(block.area.column + block.area.columns - 1);
  const kept = found.mapping === undefined ? '' : ' What you said of its columns before still holds.';
  return `${where}: headings in row ${row}, columns ${letters(block.area.column)} to ${last}, ${windows} ${windows === 1 ? 'row' : 'rows'} of windows.${kept}`;
}
