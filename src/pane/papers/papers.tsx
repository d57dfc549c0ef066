/** Papers: what leaves the workroom, made from the job of the workbook, written as its sheets or printed. */
import { Button, Checkbox, Field, makeStyles, Radio, RadioGroup, Select, Text, tokens } from '../kit';
import { useState } from 'react';
import type { Book } from '../../book/book';
import { lookForPapers, writePapers, type PapersAsked, type PapersFound } from '../../book/papers/in-book';
import { noWindowsIn } from '../../book/no-windows';
import { today } from '../../book/today';
import { PAPER_KINDS, type PaperKind, type PaperSize } from '../../core/papers/paper';
import { Cannot, Section } from '../section';
import { openPrintView } from './print-view';
import { TaskLine, useTask, type Message } from '../task';

const useStyles = makeStyles({
  kinds: { display: 'grid', gridTemplateColumns: '1fr 1fr' },
  acts: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalL },
});

const NAMES: Readonly<Record<PaperKind, string>> = {
  quote: 'client’s quote',
  order: 'fabric orders',
  hardware: 'hardware to buy',
  work: 'work order',
  labels: 'labels',
  install: 'install sheets',
  findings: 'findings',
};

/** What is done of a job that was read. */
type Act = (now: PapersFound) => Promise<Message | undefined>;
const nothing: Act = () => Promise.resolve(undefined);
const shown: Act = ({ job, made }) => {
  openPrintView(made.papers, String(job.house.sign?.value ?? ''));
  return Promise.resolve(undefined);
};

export function PapersSection({ book }: { readonly book: Book }) {
  const task = useTask();
  const [only, setOnly] = useState<readonly PaperKind[]>(PAPER_KINDS);
  const [size, setSize] = useState<PaperSize | undefined>();
  const [sheets, setSheets] = useState<Sheets>({});
  const [found, setFound] = useState<PapersFound>();
  const [anew, setAnew] = useState(true);

  /** The sheets may have been changed since they were looked at: every act looks anew. */
  const look = async (chosen = sheets): Promise<PapersFound | Message> => {
    const now = await lookForPapers(book, {
      only: PAPER_KINDS.filter((kind) => only.includes(kind)),
      size,
      today: today(),
      ...chosen,
    });
    setFound(now);
    return now ?? { intent: 'error', text: noWindowsIn(book.title) };
  };
  const act = (says: string, work: Act, chosen = sheets): void => {
    void task.run(says, async () => {
      const now = await look(chosen);
      return 'intent' in now ? now : work(now);
    });
  };

  const read = (): void => {
    act('Reading the job', nothing);
  };
  const write = (): void => {
    void task.run('Writing the papers', async (watch) => {
      const now = await look();
      if ('intent' in now) return now;
      const written = await writePapers(book, now, anew, watch);
      setFound(undefined);
      return { intent: 'success', text: saysOf(written) };
    });
  };
  const show = (): void => {
    act('Laying the papers out', shown);
  };

  return (
    <Section
      title="Papers"
      says="What leaves the workroom, from the job in this workbook: each paper a sheet ready to print, whose cells point at the job’s. Nothing is written until you say so."
    >
      <Wanted
        only={only}
        size={size}
        choose={(kinds, paper) => {
          setFound(undefined);
          setOnly(kinds);
          setSize(paper);
        }}
      />
      <Acts
        found={found}
        anew={anew}
        none={only.length === 0}
        busy={task.running !== undefined}
        prints={!book.lacks.has('print')}
        read={read}
        write={write}
        show={show}
      />
      <TaskLine task={task} counts="papers" />
      {found !== undefined && (
        <>
          <Options
            job={found.job}
            chosen={sheets}
            choose={(chosen) => {
              setSheets(chosen);
              act('Reading the job', nothing, chosen);
            }}
          />
          <Found book={book} found={found} anew={anew} setAnew={setAnew} />
        </>
      )}
    </Section>
  );
}

interface ActsProps {
  readonly found: PapersFound | undefined;
  readonly anew: boolean;
  /** Whether no paper is wanted. */
  readonly none: boolean;
  readonly busy: boolean;
  /** Whether the host prints by itself. */
  readonly prints: boolean;
  readonly read: () => void;
  readonly write: () => void;
  readonly show: () => void;
}

/** What can be done: read, and where something can be made, write it or show it. */
function Acts({ found, anew, none, busy, prints, read, write, show }: ActsProps) {
  const styles = useStyles();
  const made = found !== undefined && found.made.papers.length > 0;
  return (
    <div className={styles.acts}>
      <Button
        appearance={found === undefined ? 'primary' : 'secondary'}
        disabled={none}
        disabledFocusable={busy}
        onClick={read}
      >
        Read the job
      </Button>
      {made && (
        <Button appearance="primary" disabledFocusable={busy} onClick={write}>
          {wordsOfWriting(found, anew)}
        </Button>
      )}
      {made && !prints && (
        <Button disabledFocusable={busy} onClick={show}>
          Show for printing
        </Button>
      )}
    </div>
  );
}

/** Of several sheets of windows, the job's own and the one beside it. */
type Sheets = Pick<PapersAsked, 'sheet' | 'beside'>;

interface OptionsProps {
  readonly job: PapersFound['job'];
  readonly chosen: Sheets;
  readonly choose: (chosen: Sheets) => void;
}

/** Where the workbook holds several priced jobs: which it is, and which stands beside it. */
function Options({ job: { sheet = '', others = [] }, chosen, choose }: OptionsProps) {
  if (others.length === 0)
    return (
      <Text size={200}>
        To set another cloth or fullness beside these prices on the quote, price the same windows once more:
        copy the sheet of your table and change the cloth or fullness there, or add a second job. Then read
        the job again.
      </Text>
    );
  return (
    <>
      <Field label="Windows from the sheet">
        <Select
          value={sheet}
          onChange={(_, { value }) => {
            choose({ sheet: value });
          }}
        >
          {[sheet, ...others].map((one) => (
            <option key={one}>{one}</option>
          ))}
        </Select>
      </Field>
      <Field
        label="Beside it on the quote, as option B"
        hint="The same windows in another cloth or fullness, priced on a sheet of their own."
      >
        <Select
          value={chosen.beside ?? ''}
          onChange={(_, { value }) => {
            choose({ sheet, beside: value === '' ? undefined : value });
          }}
        >
          <option value="">nothing</option>
          {others.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </Select>
      </Field>
    </>
  );
}

interface WantedProps {
  readonly only: readonly PaperKind[];
  readonly size: PaperSize | undefined;
  readonly choose: (only: readonly PaperKind[], size: PaperSize | undefined) => void;
}

/** Which papers, on which paper. */
function Wanted({ only, size, choose }: WantedProps) {
  const styles = useStyles();
  return (
    <>
      <div className={styles.kinds} role="group" aria-label="Papers wanted">
        {PAPER_KINDS.map((kind) => (
          <Checkbox
            key={kind}
            label={NAMES[kind]}
            checked={only.includes(kind)}
            onChange={(_, { checked }) => {
              choose(checked === true ? [...only, kind] : only.filter((one) => one !== kind), size);
            }}
          />
        ))}
      </div>
      <Field label="Paper">
        <Select
          value={size ?? ''}
          onChange={(_, { value }) => {
            choose(only, value === '' ? undefined : (value as PaperSize));
          }}
        >
          <option value="">as the house measures</option>
          <option value="letter">Letter</option>
          <option value="a4">A4</option>
        </Select>
      </Field>
    </>
  );
}

interface FoundProps {
  readonly book: Book;
  readonly found: PapersFound;
  readonly anew: boolean;
  readonly setAnew: (anew: boolean) => void;
}

function Found({ book, found: { job, made, old, edited }, anew, setAnew }: FoundProps) {
  const styles = useStyles();
  return (
    <>
      <Text>
        {counted(job.windows.length, 'row')} of windows; {counted(made.papers.length, 'paper')} can be made
        {made.papers.length === 0 ? '.' : `: ${made.papers.map(({ title }) => title).join(', ')}.`}
      </Text>
      {made.missing.map(({ kind, sentences }) => (
        <div key={kind}>
          <Text>No {NAMES[kind]} can be made:</Text>
          <ul className={styles.list}>
            {sentences.map((one) => (
              <li key={one}>
                <Text size={200}>{one}</Text>
              </li>
            ))}
          </ul>
        </div>
      ))}
      {old.length > 0 && (
        <Field label={`${listed(old)} ${old.length === 1 ? 'stands' : 'stand'} there as made before:`}>
          <RadioGroup
            value={anew ? 'anew' : 'beside'}
            onChange={(_, { value }) => {
              setAnew(value === 'anew');
            }}
          >
            <Radio value="anew" label="take them away and write the new ones" />
            <Radio value="beside" label="keep them and write the new ones beside" />
          </RadioGroup>
        </Field>
      )}
      {edited.length > 0 && (
        <Text>
          {listed(edited)} {edited.length === 1 ? 'was' : 'were'} changed by hand and{' '}
          {edited.length === 1 ? 'is' : 'are'} kept; the new ones stand beside.
        </Text>
      )}
      {job.house.name === undefined && (
        <Text size={200}>
          The papers bear no house name yet: type it on the sheet “House”, which joins the workbook with them.
        </Text>
      )}
      <Cannot book={book} what="drawings" />
      <Cannot book={book} what="undo" />
    </>
  );
}

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;
const listed = (papers: PapersFound['old']): string => papers.map(({ sheet }) => `“${sheet}”`).join(', ');

const wordsOfWriting = ({ made, old }: PapersFound, anew: boolean): string =>
  `Write ${counted(made.papers.length, 'paper')}${anew && old.length > 0 ? `, ${old.length} in place of old ones` : ''}`;

const saysOf = ({
  sheets,
  toFill,
}: {
  readonly sheets: readonly string[];
  readonly toFill: readonly string[];
}): string =>
  [
    `Written: ${sheets.map((one) => `“${one}”`).join(', ')}.`,
    ...(toFill.length === 0
      ? []
      : [
          `Fill in ${toFill.map((one) => `“${one}”`).join(' and ')} once; the papers made after that say what stands there.`,
        ]),
  ].join(' ');
