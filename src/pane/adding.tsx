/** What is added to her table: chosen, seen before a cell is touched, then written in one undo step. */
import { Button, Checkbox, Field, Input, makeStyles, Select, Subtitle2, Text, tokens } from './kit';
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
import { kindly, TaskLine, useTask } from './task';

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

export function Adding({ book, survey, read, rules }: Props) {
  const styles = useStyles();
  const task = useTask();
  const [chosen, setChosen] = useState<ReadonlySet<string>>(() => {
    const there = new Set(read.columns.map((one) => one.key));
    return new Set((survey.mapping?.outputs ?? USUAL).filter((key) => !there.has(key)));
  });
  const [same, setSame] = useState<Readonly<Record<string, string>>>(
    Object.fromEntries(
      Object.entries(survey.mapping?.same ?? {}).map(([key, value]) => [key, String(value)]),
    ),
  );
  const [places, setPlaces] = useState<Places>({});
  const [hidden, setHidden] = useState(false);
  const [seen, setSeen] = useState<Seen>();
  const lacking = useMemo(() => lackingOf(read, chosen), [read, chosen]);
  // What was seen stays in sight while a letter is mended, but only what was seen as it is may be written.
  const current = seen?.read === read ? seen : undefined;
  const fresh = current?.places === places;

  const given = (at: Places): PlanGiven => ({
    read,
    wanted: WANTED,
    outputs: ROW_OUTPUTS,
    wishes: wishesOf(chosen, lacking, same, at),
    unit: rules?.unit ?? INCHES,
    rules: rules?.handedOver ?? '',
  });

  const look = (at = places): void => {
    void task.run('Looking ahead', async () => {
      const asked = given(at);
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
  const choose = (key: string, on: boolean): void => {
    const next = new Set(chosen);
    if (on) next.add(key);
    else next.delete(key);
    setChosen(next);
    setSeen(undefined);
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

  const blocked =
    current?.plan.columns.some((one) => one.alreadyFilled > 0 && !one.overwrite) === true ||
    ((current?.plan.hiddenRows.length ?? 0) > 0 && !hidden);
  return (
    <div className={styles.part}>
      <SameForAll
        lacking={lacking}
        same={same}
        change={(now) => {
          setSame(now);
          setSeen(undefined);
        }}
      />
      <Subtitle2 as="h3">Add</Subtitle2>
      {FIGURE_GROUPS.map((group) => (
        <fieldset key={group} className={styles.groups}>
          <legend className={styles.group}>{group}</legend>
          <div className={styles.choices}>
            {ROW_OUTPUTS.filter((one) => one.group === group).map(({ key, heading, says }) => (
              <Checkbox
                key={key}
                label={heading}
                title={says}
                checked={chosen.has(key)}
                onChange={(_, { checked }) => {
                  choose(key, checked === true);
                }}
              />
            ))}
          </div>
        </fieldset>
      ))}
      {current !== undefined && (
        <Planned plan={current.plan} rows={current.rows} places={places} place={place} />
      )}
      {current !== undefined && current.plan.hiddenRows.length > 0 && (
        <Checkbox
          label={`Fill the ${current.plan.hiddenRows.length} hidden or filtered rows too`}
          checked={hidden}
          onChange={(_, { checked }) => {
            setHidden(checked === true);
          }}
        />
      )}
      {current === undefined || !fresh ? (
        <Button
          appearance="primary"
          className={styles.act}
          disabled={chosen.size === 0}
          disabledFocusable={task.running !== undefined}
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
          disabledFocusable={task.running !== undefined}
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
  return (
    <Field label={heading} hint={field.says}>
      {choices === undefined ? (
        <Input
          size="small"
          value={value}
          onChange={(_, { value: text }) => {
            change(text);
          }}
        />
      ) : (
        <Select
          size="small"
          value={value}
          onChange={(_, { value: text }) => {
            change(text);
          }}
        >
          <option value="" />
          {choices.map(({ word, says }) => (
            <option key={word} value={word}>
              {says}
            </option>
          ))}
        </Select>
      )}
    </Field>
  );
}
