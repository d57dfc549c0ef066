/** Functions: the catalogue with a search; any example goes into the selected cell. */
import {
  AccordionHeader,
  AccordionItem,
  AccordionPanel,
  Button,
  Caption1,
  makeStyles,
  SearchBox,
  Subtitle2,
  Text,
  tokens,
} from './kit';
import { useState } from 'react';
import type { CellFunction, Example } from '../../functions/declare';
import { CATALOGUE, NAMESPACE } from '../../functions/index';
import { areaAt, placeText } from '../book/address';
import { apply } from '../book/apply';
import type { Book } from '../book/book';
import { EnterAgain } from './again';
import { Section } from './section';
import { useSelection } from './selection';
import { TaskLine, useTask } from './task';

const useStyles = makeStyles({
  chapter: { color: tokens.colorNeutralForeground2, marginTop: tokens.spacingVerticalS },
  name: { display: 'grid', textAlign: 'start' },
  says: { color: tokens.colorNeutralForeground2 },
  code: {
    fontFamily: tokens.fontFamilyMonospace,
    fontSize: tokens.fontSizeBase200,
    overflowWrap: 'anywhere',
  },
  body: { display: 'grid', gap: tokens.spacingVerticalS, paddingBlock: tokens.spacingVerticalS },
  takes: { margin: 0, display: 'grid', gap: tokens.spacingVerticalXS },
  term: { fontFamily: tokens.fontFamilyMonospace, fontSize: tokens.fontSizeBase200 },
  detail: { margin: 0, paddingLeft: tokens.spacingHorizontalM, color: tokens.colorNeutralForeground2 },
  example: {
    display: 'grid',
    gridTemplateColumns: '1fr auto',
    gap: `${tokens.spacingVerticalXXS} ${tokens.spacingHorizontalS}`,
    borderTop: `${tokens.strokeWidthThin} solid ${tokens.colorNeutralStroke2}`,
    paddingTop: tokens.spacingVerticalS,
  },
  because: { gridColumn: '1 / -1', color: tokens.colorNeutralForeground2 },
});

const wordsOf = (cellFunction: CellFunction): string =>
  [
    cellFunction.name,
    cellFunction.chapter,
    cellFunction.says,
    ...cellFunction.parameters.flatMap(({ name, says, kind }) => [
      name.replace(/_/g, ' '),
      says,
      ...(kind.choices ?? []).map((one) => one.word),
    ]),
  ]
    .join(' ')
    .toLowerCase();

const found = (search: string): readonly CellFunction[] => {
  const words = search.toLowerCase().split(/\s+/);
  return CATALOGUE.filter((cellFunction) => words.every((word) => wordsOf(cellFunction).includes(word)));
};

const shown = ({ gives }: Example): string =>
  Array.isArray(gives)
    ? (gives as unknown[][]).map((row) => row.join(', ')).join('; ')
    : typeof gives === 'boolean'
      ? String(gives).toUpperCase()
      : String(gives as string | number);

export function FunctionsSection({ book }: { readonly book: Book }) {
  const styles = useStyles();
  const task = useTask();
  const cell = useSelection(book);
  const [search, setSearch] = useState('');
  const list = found(search);
  const chapters = [...new Set(list.map((cellFunction) => cellFunction.chapter))];
  const place = cell === undefined ? 'the selected cell' : placeText({ ...cell, rows: 1, columns: 1 });

  const insert = (example: Example): void => {
    void task.run('Inserting the example', async (watch) => {
      const selected = await book.selection();
      const at = areaAt(selected.sheet, selected.row, selected.column);
      const changes = { puts: [{ area: at, formula: `=${example.formula}` }] };
      await apply(book, 'Insert an example', changes, watch);
      return { intent: 'success', text: `The example stands in ${placeText(at)} of “${at.sheet}”.` };
    });
  };

  return (
    <Section title="Functions" says={`Type them in a cell like any other: =${NAMESPACE}.DROP(98,"pinch")`}>
      <SearchBox
        aria-label="Find a function"
        placeholder="Find a function: drop, yardage, grommet …"
        value={search}
        onChange={(_, { value }) => {
          setSearch(value);
        }}
      />
      <Caption1 role="status">
        {list.length === 0
          ? 'No function mentions this. Try a single word, such as drop or grommet.'
          : `${list.length} of ${CATALOGUE.length} functions`}
      </Caption1>
      <TaskLine task={task} />
      <EnterAgain book={book} />
      {chapters.map((chapter) => (
        <div key={chapter}>
          <Subtitle2 as="h3" className={styles.chapter}>
            {chapter}
          </Subtitle2>
          <>
            {list
              .filter((cellFunction) => cellFunction.chapter === chapter)
              .map((cellFunction) => (
                <AccordionItem key={cellFunction.name}>
                  <AccordionHeader as="h4">
                    <span className={styles.name}>
                      <Text weight="semibold">{cellFunction.name}</Text>
                      <Text size={200} className={styles.says}>
                        {cellFunction.says}
                      </Text>
                    </span>
                  </AccordionHeader>
                  <AccordionPanel>
                    <OneFunction
                      cellFunction={cellFunction}
                      place={place}
                      insert={insert}
                      busy={task.running !== undefined}
                    />
                  </AccordionPanel>
                </AccordionItem>
              ))}
          </>
        </div>
      ))}
    </Section>
  );
}

interface OneProps {
  readonly cellFunction: CellFunction;
  readonly place: string;
  readonly busy: boolean;
  insert(example: Example): void;
}

function OneFunction({ cellFunction, place, insert, busy }: OneProps) {
  const styles = useStyles();
  const takes = cellFunction.parameters.map(({ name, optional, repeats }) => {
    const said = repeats ? `${name} …` : name;
    return optional ? `[${said}]` : said;
  });
  return (
    <div className={styles.body}>
      <code className={styles.code}>{`=${NAMESPACE}.${cellFunction.name}(${takes.join(', ')})`}</code>
      <dl className={styles.takes}>
        {cellFunction.parameters.map(({ name, says, kind }) => (
          <div key={name}>
            <dt className={styles.term}>{name}</dt>
            <dd className={styles.detail}>
              <Text size={200}>
                {says}
                {kind.choices !== undefined && `. One of: ${kind.choices.map((one) => one.word).join(', ')}.`}
              </Text>
            </dd>
          </div>
        ))}
      </dl>
      {cellFunction.gives.shape !== 'cell' && (
        <Text size={200} className={styles.says}>
          Its answer fills several cells. Excel 2016 and 2019 show only the first of them: there select all
          the cells it may take, and finish the formula with Ctrl+Shift+Enter.
        </Text>
      )}
      {cellFunction.examples.map((example) => (
        <div key={example.formula} className={styles.example}>
          <span className={styles.code}>
            ={example.formula} → {shown(example)}
          </span>
          <Button
            size="small"
            disabledFocusable={busy}
            aria-label={`Insert ${example.formula} at ${place}`}
            onClick={() => {
              insert(example);
            }}
          >
            Insert at {place}
          </Button>
          <Text size={200} className={styles.because}>
            {example.because}
          </Text>
        </div>
      ))}
    </div>
  );
}
