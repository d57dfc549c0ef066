/** Floor: many windows at once: rooms written by pattern, totals, the cutting plan, what other choices cost. */
import { Button, Field, makeStyles, Text, tokens } from '../kit';
import { useDeferredValue, useMemo, useState } from 'react';
import { areaAt } from '../../book/address';
import type { Book } from '../../book/book';
import { readColumns, type ColumnsRead, type Corrections } from '../../book/columns';
import { clothsBehind, GROUPS, readFloor, totalsBy, type Floor } from '../../book/floor/floor';
import { clothPrices } from '../../book/floor/prices';
import { receivedRolls, type ReceivedSeen } from '../../book/floor/received';
import { readRules, rulesNames, type RulesSeen } from '../../book/rule-lines';
import { keepMapping, survey } from '../../book/survey';
import { missing, WANTED } from '../../book/wanted';
import type { ClothPrice } from '../../core/floor/cloth-price';
import { INCHES } from '../../core/exact/unit';
import { ChangedSince } from '../changed';
import { FloorAdvice } from './advice';
import { FloorChoices } from './choices';
import { Part } from './part';
import { FloorPlan } from './plan';
import { FloorPrice } from './price';
import { FloorPrices, pricesRead, type PricesTyped } from './prices';
import { FloorRooms } from './more-rooms';
import { useSpares } from './spares';
import { FloorTotals } from './totals';
import { Mapping } from '../mapping';
import { Section } from '../section';
import { TaskLine, useTask } from '../task';

const useStyles = makeStyles({
  act: { justifySelf: 'start' },
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalL, fontSize: tokens.fontSizeBase200 },
});

/** The user's table as it was read, and the floor worked out of it. */
interface Opened {
  readonly place: string;
  readonly read: ColumnsRead;
  readonly said: Corrections;
  readonly outputs: readonly string[];
  readonly rules: RulesSeen | undefined;
  readonly floor: Floor;
  readonly received: ReceivedSeen | undefined;
}

/** Reads the selected table, or the one that is open as it stands now. */
async function readOpened(book: Book, at: Opened | undefined): Promise<Opened> {
  const [name] = await rulesNames(book);
  const rules = name === undefined ? undefined : await readRules(book, name);
  const unit = rules?.unit ?? INCHES;
  const selected = at === undefined ? await book.selection() : headerOf(at.read);
  const { read, mapping, place } = await survey(book, WANTED, unit, selected, at?.said);
  return {
    place,
    read,
    said: { ...mapping?.columns, ...at?.said },
    outputs: mapping?.outputs ?? [],
    rules,
    floor: readFloor(read, rules),
    received: await receivedRolls(book, unit),
  };
}

const headerOf = ({ block: { area }, header }: ColumnsRead) =>
  areaAt(area.sheet, area.row + header.row, area.column);

/** One column said anew; undefined where nothing heads the table any more. */
function corrected(opened: Opened, id: string, key: string | null): Opened | undefined {
  const { block, header } = opened.read;
  const said = { ...opened.said, [id]: key };
  const read = readColumns(block, WANTED, opened.floor.house.unit, said, block.area.row + header.row);
  return read === undefined ? undefined : { ...opened, said, read, floor: readFloor(read, opened.rules) };
}

export function FloorSection({ book }: { readonly book: Book }) {
  const styles = useStyles();
  const task = useTask();
  const [opened, setOpened] = useState<Opened>();
  const [prices, setPrices] = useState<PricesTyped>({});

  const open = (at?: Opened): Promise<void> =>
    task.run('Reading the windows', async () => {
      setOpened(await readOpened(book, at));
      const theirs = await clothPrices(book);
      setPrices((typed) => ({ ...Object.fromEntries(theirs), ...typed }));
      return undefined;
    });
  const correct = (id: string, key: string | null): void => {
    const next = opened && corrected(opened, id, key);
    if (next === undefined) return;
    setOpened(next);
    const { place, said, outputs } = next;
    void keepMapping(book, { of: place, columns: said, outputs }).catch(reportError);
  };

  const [floor, spares] = useSpares(opened);
  return (
    <Section
      title="A floor of windows"
      says="Select any cell of a table of windows first: your own, or the sheet of a new job."
    >
      <Button
        className={styles.act}
        appearance={opened === undefined ? 'primary' : 'secondary'}
        disabled={task.running !== undefined}
        onClick={() => {
          void open();
        }}
      >
        {opened === undefined ? 'Read the windows' : 'Read the selected table'}
      </Button>
      <TaskLine task={task} />
      {opened !== undefined && floor !== undefined && (
        <>
          <WasRead book={book} opened={opened} again={() => void open(opened)} />
          <LeftOut rows={floor.unread} />
          <div>
            <Part says="Columns">
              <Mapping book={book} read={opened.read} correct={correct} />
            </Part>
            <Part says="Rooms in bulk">
              <FloorRooms book={book} read={opened.read} unit={floor.house.unit} again={() => open(opened)} />
            </Part>
            {floor.windows.length > 0 && (
              <Worked
                book={book}
                opened={opened}
                floor={floor}
                spares={spares}
                prices={prices}
                setPrices={setPrices}
              />
            )}
          </div>
        </>
      )}
    </Section>
  );
}

const MOST_LEFT_OUT = 6;
function LeftOut({ rows }: { readonly rows: Floor['unread'] }) {
  const styles = useStyles();
  if (rows.length === 0) return null;
  return (
    <ul className={styles.list} aria-label="Rows left out">
      {rows.slice(0, MOST_LEFT_OUT).map(({ row, sentence }) => (
        <li key={row}>
          Row {row + 1} is left out: {sentence}
        </li>
      ))}
      {rows.length > MOST_LEFT_OUT && <li>and {rows.length - MOST_LEFT_OUT} rows more.</li>}
    </ul>
  );
}

interface WorkedProps {
  readonly book: Book;
  readonly opened: Opened;
  readonly floor: Floor;
  readonly spares: ReturnType<typeof useSpares>[1];
  readonly prices: PricesTyped;
  setPrices(prices: PricesTyped): void;
}

/** What is worked out of the windows that were read. */
function Worked({ book, opened, floor, spares, prices, setPrices }: WorkedProps) {
  const { unit } = floor.house;
  const [fabrics, cloths] = useMemo(() => {
    const names = totalsBy(floor.windows, GROUPS.fabric).map(({ name }) => name);
    return [names, [...names, ...clothsBehind(floor.windows)]];
  }, [floor]);
  const read = useMemo(
    (): ReadonlyMap<string, ClothPrice> => pricesRead(cloths, prices, unit),
    [cloths, prices, unit],
  );
  // Whole floors are priced while the user types: the field comes first.
  const known = useDeferredValue(read);
  return (
    <>
      <Part opened says="Totals">
        <FloorTotals floor={floor} spares={spares} />
      </Part>
      <Part opened says="Cutting plan">
        <FloorPlan key={opened.place} book={book} floor={floor} received={opened.received} />
      </Part>
      <Part says="Cloth prices">
        <FloorPrices
          cloths={cloths}
          typed={prices}
          unit={unit}
          change={(cloth, typed) => {
            setPrices({ ...prices, [cloth]: typed });
          }}
        />
      </Part>
      <Part says="Price">
        <FloorPrice key={opened.place} book={book} floor={floor} prices={known} />
      </Part>
      <Part says="What if">
        <FloorChoices floor={floor} fabrics={fabrics} prices={known} />
      </Part>
      <Part says="Advice">
        <FloorAdvice floor={floor} prices={known} />
      </Part>
    </>
  );
}

interface WasReadProps {
  readonly book: Book;
  readonly opened: Opened;
  again(): void;
}

function WasRead({ book, opened, again }: WasReadProps) {
  const lacking = missing(opened.read);
  return (
    <>
      <Text>{whatWasRead(opened)}</Text>
      <ChangedSince
        book={book}
        read={opened.read.block}
        todo="What stands below is of the table as it was."
        again={again}
      />
      {lacking.length > 0 && (
        <Field
          validationState="warning"
          validationMessage={`No column is taken for ${lacking.join('; ')}. Say which column holds it under Columns.`}
        >
          <span />
        </Field>
      )}
    </>
  );
}

function whatWasRead({ read, floor }: Opened): string {
  const { table, area } = read.block;
  const where = table === undefined ? `The sheet “${area.sheet}”` : `The table “${table.name}”`;
  const count = floor.windows.reduce((sum, { work }) => sum + work.quantity, 0);
  const rows = floor.windows.length;
  return `${where}: ${count} ${count === 1 ? 'window' : 'windows'} in ${rows} ${rows === 1 ? 'row' : 'rows'}.`;
}
