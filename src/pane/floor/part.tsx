/** A part of a section that opens and closes under its heading; what was typed in it stays. */
import { Button, makeStyles, tokens } from '../kit';
import { useId, useState, type ReactNode } from 'react';

const useStyles = makeStyles({
  part: {
    display: 'grid',
    gridTemplateColumns: 'minmax(0, 1fr)',
    gap: tokens.spacingVerticalS,
    borderTop: `${tokens.strokeWidthThin} solid ${tokens.colorNeutralStroke2}`,
    paddingTop: tokens.spacingVerticalXS,
  },
  toggle: { justifyContent: 'space-between', width: '100%', paddingInline: 0 },
  content: {
    display: 'grid',
    gridTemplateColumns: 'minmax(0, 1fr)',
    gap: tokens.spacingVerticalS,
    paddingBottom: tokens.spacingVerticalS,
  },
  arrow: { width: '10px', height: '6px', transform: 'rotate(0deg)' },
  up: { width: '10px', height: '6px', transform: 'rotate(180deg)' },
});

interface Props {
  readonly says: string;
  readonly opened?: boolean;
  readonly children: ReactNode;
}

export function Part({ says, opened = false, children }: Props) {
  const styles = useStyles();
  const [open, setOpen] = useState(opened);
  const id = useId();
  return (
    <div className={styles.part}>
      <h3>
        <Button
          appearance="transparent"
          className={styles.toggle}
          iconPosition="after"
          icon={
            <svg className={open ? styles.up : styles.arrow} viewBox="0 0 10 6" aria-hidden>
              <path d="M1 1l4 4 4-4" fill="none" stroke="currentColor" strokeWidth="1.5" />
            </svg>
          }
          aria-expanded={open}
          aria-controls={id}
          onClick={() => {
            setOpen(!open);
          }}
        >
          {says}
        </Button>
      </h3>
      <div id={id} {...(open ? { className: styles.content } : { hidden: true })}>
        {children}
      </div>
    </div>
  );
}
