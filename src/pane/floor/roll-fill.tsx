/** How cut lengths are told apart in a drawing: by colour, and by a pattern where colours vanish. */
import { makeStyles, mergeClasses, tokens } from '../kit';

const useStyles = makeStyles({
  defs: { position: 'absolute', width: 0, height: 0 },
  mark: { stroke: tokens.colorNeutralForeground3, fill: tokens.colorNeutralForeground3, strokeWidth: 0.6 },
  dot: { stroke: 'none' },
  ring: { fill: 'none' },
  ground: { fill: tokens.colorNeutralBackground1 },
  line: { stroke: tokens.colorNeutralForeground3, strokeWidth: 1 },
  edge: { stroke: tokens.colorNeutralForeground3, strokeWidth: 0.75 },
  swatch: { width: '14px', height: '14px', flexShrink: 0 },
  length0: { fill: tokens.colorBrandBackground2 },
  length1: { fill: tokens.colorPaletteTealBackground2 },
  length2: { fill: tokens.colorPaletteGoldBackground2 },
  length3: { fill: tokens.colorPaletteSteelBackground2 },
  length4: { fill: tokens.colorPaletteForestBackground2 },
  length5: { fill: tokens.colorPaletteLavenderBackground2 },
});
const COLOURS = ['length0', 'length1', 'length2', 'length3', 'length4', 'length5'] as const;

/** None of upright lines alone: those are where one cut ends and the next begins. */
const KINDS = ['level', 'dots', 'rings', 'grid'] as const;
/** Apart so many units: first plain to see, then finer and coarser. */
const PITCHES = [6, 3.5, 10] as const;
/** The first length is plain; after these the patterns begin anew. */
const PATTERNS = KINDS.length * PITCHES.length;

interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The patterns of one drawing, once, for all its rolls; `id` is the drawing's own. */
export function FillPatterns({ id }: { readonly id: string }) {
  const styles = useStyles();
  return (
    <svg className={styles.defs} aria-hidden>
      <defs>
        {PITCHES.flatMap((pitch, step) =>
          KINDS.map((kind, at) => (
            <pattern
              key={`${kind} ${pitch}`}
              id={`${id}-${step * KINDS.length + at + 1}`}
              width={pitch}
              height={pitch}
              patternUnits="userSpaceOnUse"
            >
              {kind === 'grid' && (
                <line className={styles.mark} x1={pitch / 2} x2={pitch / 2} y1="0" y2={pitch} />
              )}
              {(kind === 'grid' || kind === 'level') && (
                <line className={styles.mark} x1="0" x2={pitch} y1={pitch / 2} y2={pitch / 2} />
              )}
              {(kind === 'dots' || kind === 'rings') && (
                <circle
                  className={mergeClasses(styles.mark, kind === 'dots' ? styles.dot : styles.ring)}
                  cx={pitch / 2}
                  cy={pitch / 2}
                  r={kind === 'dots' ? 0.9 : pitch / 3}
                />
              )}
            </pattern>
          )),
        )}
        {(['left', 'start'] as const).map((name) => (
          <pattern
            key={name}
            id={`${id}-${name}`}
            width={name === 'left' ? 6 : 3}
            height="6"
            patternUnits="userSpaceOnUse"
            patternTransform={`rotate(${name === 'left' ? 45 : -45})`}
          >
            <rect className={styles.ground} width="6" height="6" />
            <line className={styles.line} x1="0" y1="0" x2="0" y2="6" />
          </pattern>
        ))}
      </defs>
    </svg>
  );
}

/** A piece of the `at`th length, counted from 0. */
export function LengthFill({ id, at, says, ...place }: Place & { id: string; at: number; says?: string }) {
  const styles = useStyles();
  const colour = styles[COLOURS[at % COLOURS.length] ?? 'length0'];
  const pattern = at === 0 ? 0 : ((at - 1) % PATTERNS) + 1;
  return (
    <>
      <rect className={mergeClasses(styles.edge, colour)} {...place} />
      {pattern > 0 && <rect fill={`url(#${id}-${pattern})`} {...place} />}
      {says !== undefined && (
        <rect fill="transparent" {...place}>
          <title>{says}</title>
        </rect>
      )}
    </>
  );
}

/** Cloth that is left over, or given up to the pattern's start. */
export function SpareFill({ id, spare, ...place }: Place & { id: string; spare: 'left' | 'start' }) {
  return <rect fill={`url(#${id}-${spare})`} {...place} />;
}

const BOX: Place = { x: 0.5, y: 0.5, width: 13, height: 13 };

/** The same, small, beside its name in a legend. */
export function Swatch({ id, piece }: { readonly id: string; readonly piece: number | 'left' | 'start' }) {
  const styles = useStyles();
  return (
    <svg className={styles.swatch} viewBox="0 0 14 14" aria-hidden>
      {typeof piece === 'number' ? (
        <LengthFill id={id} at={piece} {...BOX} />
      ) : (
        <>
          <SpareFill id={id} spare={piece} {...BOX} />
          <rect className={styles.edge} fill="none" {...BOX} />
        </>
      )}
    </svg>
  );
}
