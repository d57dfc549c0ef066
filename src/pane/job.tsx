/** New job: a whole job's sheets from the template, beside whatever the workbook holds. */
import { Button, Field, makeStyles, Radio, RadioGroup, SpinButton, tokens } from './kit';
import { useState } from 'react';
import type { Book } from '../book/book';
import { MOST_WINDOWS, newJob, USUAL_JOB, type NewJob } from '../book/template';
import { Cannot, Section } from './section';
import { TaskLine, useTask } from './task';

const useStyles = makeStyles({
  row: { display: 'grid', gridTemplateColumns: '1fr 1fr', gap: tokens.spacingHorizontalM },
  act: { justifySelf: 'start' },
});

const faultOf = (rows: string, windows: number): string | undefined =>
  windows >= 1 && windows <= MOST_WINDOWS
    ? undefined
    : `Rows reads “${rows}”. Write a whole number from 1 to ${MOST_WINDOWS.toLocaleString('en')}.`;

export function JobSection({ book }: { readonly book: Book }) {
  const styles = useStyles();
  const task = useTask();
  const [job, setJob] = useState<NewJob>(USUAL_JOB);
  const [rows, setRows] = useState(String(USUAL_JOB.windows));
  const windows = /^\d+$/.test(rows.trim()) ? Number(rows) : NaN;
  const fault = faultOf(rows, windows);

  const make = (): void => {
    void task.run('Making the sheets', async (watch) => {
      const number = await newJob(book, { ...job, windows }, watch);
      return {
        intent: 'success',
        text: `The sheets of ${number === 1 ? 'the job' : `job ${number}`} are in the workbook. Begin on the first one; the windows come next.`,
      };
    });
  };

  return (
    <Section
      title="New job"
      says="Adds sheets for a whole job: facts, windows, fabrics, prices, house rules, quote and checks. Nothing that is in the workbook is touched."
    >
      <Field label="Measured in">
        <RadioGroup
          layout="horizontal"
          value={job.unit}
          onChange={(_, { value }) => {
            setJob({ ...job, unit: value as NewJob['unit'] });
          }}
        >
          <Radio value="inches" label="inches and yards" />
          <Radio value="centimetres" label="centimetres and metres" />
        </RadioGroup>
      </Field>
      <Field label="Printed on" hint={book.lacks.get('print') ?? null}>
        <RadioGroup
          layout="horizontal"
          value={job.paper}
          onChange={(_, { value }) => {
            setJob({ ...job, paper: value as NewJob['paper'] });
          }}
        >
          <Radio value="letter" label="Letter" />
          <Radio value="a4" label="A4" />
        </RadioGroup>
      </Field>
      <div className={styles.row}>
        <Field
          label="Rows for windows"
          hint="Windows that are alike share a row."
          {...(fault !== undefined && { validationMessage: fault })}
        >
          <SpinButton
            min={1}
            max={MOST_WINDOWS}
            displayValue={rows}
            value={Number.isNaN(windows) ? null : windows}
            onChange={(_, { value }) => {
              setRows(String(value));
            }}
            onInput={(event) => {
              setRows((event.target as HTMLInputElement).value);
            }}
          />
        </Field>
      </div>
      <Cannot book={book} what="undo" />
      <Button
        appearance="primary"
        className={styles.act}
        disabled={fault !== undefined}
        disabledFocusable={task.running !== undefined}
        onClick={make}
      >
        Make the sheets
      </Button>
      <TaskLine task={task} />
    </Section>
  );
}
