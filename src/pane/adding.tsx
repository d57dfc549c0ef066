/** What is added to the user's table: chosen, seen before a cell is touched, then written in one undo step. */
import { Button, Checkbox, ChoiceField, makeStyles, Subtitle2, Text, TextField, Ticks, tokens } from './kit';
import { useMemo, useState } from 'react';
import type { Book } from '../book/book';
import type { ColumnsRead } from '../book/columns';
import { fill, rememberFill } from '../book/fill';
import { plan, type Plan, type PlanGiven, type Wish } from '../book/plan';
import { preview, type PreviewRow } from '../book/preview';
import type { RulesSeen } from '../book/rule-lines';
import type { Survey } from '../book/survey';
import { missing, NEEDED, neededBy, ROW_OUTPUTS, WANTED } from '../book/wanted';
import { WINDOW_COLUMNS, type ColumnKey } from '../core/window/columns';
import { FIGURE_GROUPS } from '../core/window/figure';
import { FIGURES } from '../core/window/figures';
import { INCHES } from '../core/exact/unit';
import { Planned } from './planned';
import { columnAt, type Place } from './place';
import { Cannot } from './section';
import { kindly, TaskLine, useTask, type Task } from './task';

const useStyles = makeStyles({
  part: { display: 'grid', gap: tokens.spacingVerticalS },
  groups: {
    display: 'grid',
    gap: tokens.spacingVerticalXS,
    border: 'none',
    padding: 0,
    margin: 0,
    minWidth: 0,
  },
  group: { padding: 0, color: tokens.colorNeutralForeground2, fontSize: tokens.fontSizeBase200 },
  choices: { display: 'grid', gridTemplateColumns: '1fr 1fr' },
  act: { justifySelf: 'start' },
});

/** What only some outputs need, and a workroom often has one figure for. */
const SAME_FOR_ALL = new Set<string>(['liningWidth', 'arealWeight']);

/** What most tables want first. */
const USUAL = FIGURES.filter((figure) => figure.usual === true).map(({ key }) => key);

interface Props {
  readonly book: Book;
  readonly survey: Survey;
  readonly read: ColumnsRead;
  readonly rules: RulesSeen | undefined;
}
interface Seen {
  readonly plan: Plan;
  readonly rows: readonly PreviewRow[];
  /** The columns as they were understood then, and where the user's were to go. */
  readonly read: ColumnsRead;
  readonly places: Places;
}
type Places = Readonly<Record<string, Place>>;

/** What is wanted, as the user chooses it. */
function useWishes({ survey, read }: Props) {
  const [chosen, setChosen] = useState<ReadonlySet<string>>(() => {
    const there = new Set(read.columns.map((one) => one.key));
    return new Set((survey.mapping?.outputs ?? USUAL).filter((key) => !there.has(key)));
  });
  const [same, setSame] = useState<Readonly<Record<string, string>>>(
    Object.fromEntries(
      Object.entries(survey.mapping?.same ?? {}).map(([key, value]) => [key, String(value)]),
    ),
  );
  const lacking = useMemo(() => lackingOf(read, chosen), [read, chosen]);
  return { chosen, setChosen, same, setSame, lacking };
}
type Wishes = ReturnType<typeof useWishes>;

/** Looked at as it would be written, and then written. */
function useSeen({ book, survey, read, rules }: Props, { chosen, same, lacking }: Wishes, task: Task) {
  const [places, setPlaces] = useState<Places>({});
  const [hidden, setHidden] = useState(false);
  const [seen, setSeen] = useState<Seen>();
  // What was seen stays in sight while a letter is mended, but only what was seen as it is may be written.
  const current = seen?.read === read ? seen : undefined;
  const fresh = current?.places === places;

  const look = (at = places): void => {
    void task.run('Looking ahead', async () => {
      const asked: PlanGiven = {
        read,
        wanted: WANTED,
        outputs: ROW_OUTPUTS,
        wishes: wishesOf(chosen, lacking, same, at),
        unit: rules?.unit ?? INCHES,
        rules: rules?.handedOver ?? '',
      };
      const planned = await plan(book, asked);
      setSeen({ plan: planned, rows: preview(planned, asked, rules?.rows ?? null), read, places: at });
      return undefined;
    });
  };
  const place = (key: string, change: Partial<Place>, again: boolean): void => {
    // Leaving a letter as it was seen asks for nothing new.
    if (Object.keys(change).length === 0 && fresh) return;
    const next = { ...places, [key]: { letter: '', overwrite: false, ...places[key], ...change } };
    setPlaces(next);
    if (again) look(next);
  };
  const add = (): void => {
    if (current === undefined) return;
    void task.run('Writing', async (watch) => {
      await fill(book, current.plan, { ...watch, hiddenRowsToo: hidden });
      const kept = await kindly(rememberFill(book, survey.place, read, current.plan));
      setSeen(undefined);
      const count = current.plan.columns.length;
      return {
        intent: 'success',
        text: `${count === 1 ? 'One column stands' : `${count} columns stand`} in ${current.plan.says}.${kept ? '' : ' What you said of the columns could not be kept for the next time.'}`,
      };
    });
  };
  const forget = (): void => {
    setSeen(undefined);
  };
  return { current, fresh, places, place, hidden, setHidden, look, add, forget };
}

/** Whether something would be written over, or into rows that are hidden, and nobody allowed it. */
const isBlocked = ({ columns, hiddenRows }: Plan, hiddenToo: boolean): boolean =>
  columns.some((one) => one.alreadyFilled > 0 && !one.overwrite) || (hiddenRows.length > 0 && !hiddenToo);

export function Adding(props: Props) {
  const { book, read } = props;
  const styles = useStyles();
  const task = useTask();
  const wishes = useWishes(props);
  const { chosen, same, lacking } = wishes;
  const { current, fresh, places, place, hidden, setHidden, look, add, forget } = useSeen(
    props,
    wishes,
    task,
  );
  const blocked = current !== undefined && isBlocked(current.plan, hidden);
  const busy = task.running !== undefined;
  return (
    <div className={styles.part}>
      <SameForAll
        lacking={lacking}
        same={same}
        change={(now) => {
          wishes.setSame(now);
          forget();
        }}
      />
      <Figures
        chosen={chosen}
        change={(now) => {
          wishes.setChosen(now);
          forget();
        }}
      />
      {current !== undefined && (
        <>
          <Planned plan={current.plan} rows={current.rows} places={places} place={place} />
          <HiddenToo count={current.plan.hiddenRows.length} checked={hidden} change={setHidden} />
        </>
      )}
      {current === undefined || !fresh ? (
        <Button
          appearance="primary"
          className={styles.act}
          disabled={chosen.size === 0}
          disabledFocusable={busy}
          onClick={() => {
            look();
          }}
        >
          Preview
        </Button>
      ) : (
        <Button
          appearance="primary"
          className={styles.act}
          disabled={blocked}
          disabledFocusable={busy}
          onClick={add}
        >
          Add {current.plan.columns.length} {current.plan.columns.length === 1 ? 'column' : 'columns'}
        </Button>
      )}
      {read.block.table !== undefined && <Cannot book={book} what="tables" />}
      <Cannot book={book} what="undo" />
      {fresh && blocked && (
        <Text size={200}>Allow it above, or point at another column, and nothing is lost.</Text>
      )}
      <TaskLine task={task} />
    </div>
  );
}

interface FiguresProps {
  readonly chosen: ReadonlySet<string>;
  change(chosen: ReadonlySet<string>): void;
}

function Figures({ chosen, change }: FiguresProps) {
  const styles = useStyles();
  return (
    <>
      <Subtitle2 as="h3">Add</Subtitle2>
      {FIGURE_GROUPS.map((group) => (
        <fieldset key={group} className={styles.groups}>
          <legend className={styles.group}>{group}</legend>
          <div className={styles.choices}>
            <Ticks
              choices={ROW_OUTPUTS.filter((one) => one.group === group).map(({ key, heading, says }) => ({
                key,
                label: heading,
                title: says,
              }))}
              chosen={chosen}
              change={change}
            />
          </div>
        </fieldset>
      ))}
    </>
  );
}

interface HiddenTooProps {
  readonly count: number;
  readonly checked: boolean;
  change(checked: boolean): void;
}

const HiddenToo = ({ count, checked, change }: HiddenTooProps) =>
  count === 0 ? null : (
    <Checkbox
      label={`Fill the ${count} hidden or filtered rows too`}
      checked={checked}
      onChange={(_, { checked: now }) => {
        change(now);
      }}
    />
  );

/** Columns a window or a chosen output needs and none is taken for, where one figure may stand for all rows. */
function lackingOf(read: ColumnsRead, chosen: ReadonlySet<string>): readonly ColumnKey[] {
  const none = missing(read);
  const always = NEEDED.flatMap(([key, ...others]) =>
    key !== undefined && others.length === 0 && none.includes(WINDOW_COLUMNS[key].heading) ? [key] : [],
  );
  const taken = new Set(read.columns.map((one) => one.key));
  const asked = [...chosen]
    .flatMap(neededBy)
    .filter((key): key is ColumnKey => SAME_FOR_ALL.has(key) && !taken.has(key));
  return [...new Set([...always, ...asked])];
}

function wishesOf(
  chosen: ReadonlySet<string>,
  lacking: readonly string[],
  same: Readonly<Record<string, string>>,
  places: Places,
): readonly Wish[] {
  const placed = (key: string): Partial<Wish> => {
    const place = places[key];
    const at = columnAt(place?.letter ?? '');
    return { ...(at !== undefined && { at }), ...(place?.overwrite === true && { overwrite: true }) };
  };
  const figures = lacking.flatMap((key): Wish[] => {
    const typed = (same[key] ?? '').trim();
    if (typed === '') return [];
    return [{ key, same: /^\d+(\.\d+)?$/.test(typed) ? Number(typed) : typed, ...placed(key) }];
  });
  const outputs = ROW_OUTPUTS.filter((one) => chosen.has(one.key));
  return [...figures, ...outputs.map(({ key }): Wish => ({ key, ...placed(key) }))];
}

interface SameForAllProps {
  readonly lacking: readonly ColumnKey[];
  readonly same: Readonly<Record<string, string>>;
  change(same: Readonly<Record<string, string>>): void;
}

function SameForAll({ lacking, same, change }: SameForAllProps) {
  if (lacking.length === 0) return null;
  return (
    <>
      <Subtitle2 as="h3">The same for every row</Subtitle2>
      {lacking.map((key) => (
        <SameField
          key={key}
          column={key}
          value={same[key] ?? ''}
          change={(value) => {
            change({ ...same, [key]: value });
          }}
        />
      ))}
    </>
  );
}

interface SameProps {
  readonly column: ColumnKey;
  readonly value: string;
  change(value: string): void;
}

function SameField({ column, value, change }: SameProps) {
  const { heading, field } = WINDOW_COLUMNS[column];
  const { choices } = field.kind;
  return choices === undefined ? (
    <TextField label={heading} hint={field.says} value={value} change={change} />
  ) : (
    <ChoiceField label={heading} hint={field.says} value={value} change={change}>
      <option value="" />
      {choices.map(({ word, says }) => (
        <option key={word} value={word}>
          {says}
        </option>
      ))}
    </ChoiceField>
  );
}
