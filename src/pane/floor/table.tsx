/** A table of figures in the pane: the first column names the row, the others stand flush right. */
import { makeStyles, mergeClasses, tokens } from '../kit';
import { Fragment, type ReactNode } from 'react';

const useStyles = makeStyles({
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
    verticalAlign: 'top',
    whiteSpace: 'nowrap',
  },
  name: { textAlign: 'start', whiteSpace: 'normal' },
  head: {
    backgroundColor: tokens.colorNeutralBackground2,
    fontWeight: tokens.fontWeightSemibold,
    verticalAlign: 'bottom',
    whiteSpace: 'normal',
  },
  under: { textAlign: 'start', whiteSpace: 'normal', color: tokens.colorNeutralForeground2 },
  above: { borderBottomWidth: 0, paddingBottom: 0 },
  chosen: { backgroundColor: tokens.colorBrandBackground2, fontWeight: tokens.fontWeightSemibold },
});

export interface FigureRow {
  readonly name: ReactNode;
  readonly figures: readonly ReactNode[];
  /** Stands out. */
  readonly chosen?: boolean;
  /** A line of its own below the figures. */
  readonly under?: string;
}

interface Props {
  readonly says: string;
  readonly headings: readonly string[];
  readonly rows: readonly FigureRow[];
}

export function FigureTable({ says, headings, rows }: Props) {
  const styles = useStyles();
  return (
    <div className={styles.scroll} role="region" aria-label={says} tabIndex={0}>
      <table className={styles.table}>
        <thead>
          <tr>
            {headings.map((one, at) => (
              <th
                key={one}
                scope="col"
                className={mergeClasses(styles.cell, styles.head, at === 0 && styles.name)}
              >
                {one}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, figures, chosen, under }, at) => {
            const cell = mergeClasses(styles.cell, under !== undefined && styles.above);
            return (
              <Fragment key={at}>
                <tr className={chosen === true ? styles.chosen : undefined}>
                  <th scope="row" className={mergeClasses(cell, styles.name)}>
                    {name}
                  </th>
                  {figures.map((figure, column) => (
                    <td key={column} className={cell}>
                      {figure}
                    </td>
                  ))}
                </tr>
                {under !== undefined && (
                  <tr>
                    <td colSpan={figures.length + 1} className={mergeClasses(styles.cell, styles.under)}>
                      {under}
                    </td>
                  </tr>
                )}
              </Fragment>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
