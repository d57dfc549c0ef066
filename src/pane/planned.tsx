/** The columns that would be added: where each goes, what it would show, and what to look at. */
import { Checkbox, Field, Input, makeStyles, Subtitle2, Text, tokens } from './kit';
import { useEffect, useId, useRef } from 'react';
import { letters } from '../book/address';
import type { CellValue } from '../book/book';
import type { Plan, PlannedColumn } from '../book/plan';
import type { PreviewRow } from '../book/preview';
import { digits } from '../core/exact/unit';
import { letterFault, type Place } from './place';

const useStyles = makeStyles({
  part: { display: 'grid', gap: tokens.spacingVerticalS },
  scroll: {
    overflowX: 'auto',
    border: `${tokens.strokeWidthThin} solid ${tokens.colorNeutralStroke2}`,
    borderRadius: tokens.borderRadiusMedium,
  },
  table: { borderCollapse: 'collapse', fontSize: tokens.fontSizeBase200, minWidth: '100%' },
  cell: {
    textAlign: 'end',
    padding: `${tokens.spacingVerticalXXS} ${tokens.spacingHorizontalS}`,
    borderBottom: `${tokens.strokeWidthThin} solid ${tokens.colorNeutralStroke2}`,
    fontWeight: tokens.fontWeightRegular,
    verticalAlign: 'bottom',
  },
  // A sentence in the place of a figure is read whole among the findings.
  text: {
    maxWidth: '14em',
    overflow: 'hidden',
    textOverflow: 'ellipsis',
    whiteSpace: 'nowrap',
    textAlign: 'start',
  },
  head: { backgroundColor: tokens.colorNeutralBackground2, fontWeight: tokens.fontWeightSemibold },
  places: {
    display: 'grid',
    gridTemplateColumns: '1fr 1fr',
    gap: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalM}`,
  },
  letter: { minWidth: 0, width: '100%' },
  wide: { gridColumn: '1 / -1' },
  findings: { margin: 0, paddingLeft: tokens.spacingHorizontalL, fontSize: tokens.fontSizeBase200 },
});

const MOST_FINDINGS = 8;

interface Props {
  readonly plan: Plan;
  readonly rows: readonly PreviewRow[];
  readonly places: Readonly<Record<string, Place>>;
  place(key: string, change: Partial<Place>, again: boolean): void;
}

const shown = (value: CellValue): string =>
  value === null ? '' : typeof value === 'number' ? digits(Math.round(value * 1000) / 1000) : String(value);

export function Planned({ plan, rows, places, place }: Props) {
  const styles = useStyles();
  const part = useRef<HTMLDivElement>(null);
  const title = useId();
  // Whoever asked for the preview reads on from here; the next press of its button would write.
  useEffect(() => {
    part.current?.focus();
  }, []);
  const cells = plan.touches.reduce((sum, area) => sum + area.rows * area.columns, 0);
  const findings = [
    ...new Set(
      rows.flatMap(({ row, cells: list }) =>
        list.flatMap((cell) => cell.findings.map((one) => `Row ${row + 1}: ${one}`)),
      ),
    ),
  ];
  return (
    <div className={styles.part} ref={part} tabIndex={-1} role="group" aria-labelledby={title}>
      <Subtitle2 as="h3" id={title}>
        Preview
      </Subtitle2>
      <Text size={200}>
        {cells.toLocaleString('en')} cells would be written: {plan.says} of “{plan.sheet}”.
      </Text>
      <div className={styles.scroll} role="region" aria-label="Preview of the first rows" tabIndex={0}>
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col" className={`${styles.cell} ${styles.head}`}>
                row
              </th>
              {plan.columns.map((one) => (
                <th key={one.key} scope="col" className={`${styles.cell} ${styles.head}`}>
                  {one.heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ row, cells: list }) => (
              <tr key={row}>
                <th scope="row" className={styles.cell}>
                  {row + 1}
                </th>
                {list.map((cell) => (
                  <td
                    key={cell.key}
                    className={typeof cell.value === 'string' ? `${styles.cell} ${styles.text}` : styles.cell}
                    title={typeof cell.value === 'string' ? cell.value : undefined}
                  >
                    {shown(cell.value)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {findings.length > 0 && (
        <ul className={styles.findings} aria-label="Findings">
          {findings.slice(0, MOST_FINDINGS).map((one) => (
            <li key={one}>{one}</li>
          ))}
          {findings.length > MOST_FINDINGS && (
            <li>and {findings.length - MOST_FINDINGS} more in these rows</li>
          )}
        </ul>
      )}
      <Text size={200}>To put a column elsewhere, write that column’s letter:</Text>
      <div className={styles.places}>
        {plan.columns.map((one) => (
          <OnePlace key={one.key} column={one} place={places[one.key]} change={place} />
        ))}
      </div>
    </div>
  );
}

interface OneProps {
  readonly column: PlannedColumn;
  readonly place: Place | undefined;
  readonly change: Props['place'];
}

function OnePlace({ column, place, change }: OneProps) {
  const styles = useStyles();
  const letter = place?.letter ?? '';
  const fault = letterFault(letter);
  return (
    <>
      <Field size="small" label={column.heading} {...(fault !== undefined && { validationMessage: fault })}>
        <Input
          className={styles.letter}
          size="small"
          value={letter}
          placeholder={letters(column.column)}
          aria-label={`${column.heading}: column letter`}
          onChange={(_, { value }) => {
            change(column.key, { letter: value }, false);
          }}
          onBlur={() => {
            if (fault === undefined && letter.trim() !== '') change(column.key, {}, true);
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && fault === undefined) change(column.key, {}, true);
          }}
        />
      </Field>
      {column.alreadyFilled > 0 && (
        <Checkbox
          className={styles.wide}
          label={`Overwrite the ${column.alreadyFilled} filled ${column.alreadyFilled === 1 ? 'cell' : 'cells'} of column ${letters(column.column)}, from ${column.firstFilled ?? ''}`}
          checked={place?.overwrite ?? column.overwrite}
          onChange={(_, { checked }) => {
            change(column.key, { overwrite: checked === true }, true);
          }}
        />
      )}
    </>
  );
}
