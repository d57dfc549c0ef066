/** Paints a drawing in the pane as it was laid out. */
import { makeStyles, tokens } from './kit';
import type { Drawing as Described } from '../core/drawing/drawing';
import { laidOut, type Look, type PaintedWords } from '../core/drawing/laid-out';
import type { Unit } from '../core/exact/unit';

const PAPER = { wide: 324, high: 340, letters: 10 };
/** How much larger than that it may be shown in a wide pane. */
const GROWS = 1.3;

const line = { stroke: tokens.colorNeutralForeground1, strokeWidth: 2 };
const useStyles = makeStyles({
  drawing: { width: '100%', height: 'auto', justifySelf: 'center' },
  opening: {
    fill: tokens.colorNeutralBackground4,
    stroke: tokens.colorNeutralStroke1,
    strokeDasharray: '4 3',
  },
  rod: { fill: tokens.colorNeutralForeground2, stroke: tokens.colorNeutralForeground2, strokeWidth: 2 },
  bracket: { fill: tokens.colorNeutralForeground1 },
  cloth: {
    fill: tokens.colorBrandBackground2,
    fillOpacity: 0.55,
    stroke: tokens.colorBrandStroke1,
  },
  overlap: { fill: 'none', stroke: tokens.colorBrandStroke1, strokeDasharray: '1 2' },
  seam: { stroke: tokens.colorBrandStroke1, strokeDasharray: '2 3' },
  stack: { fill: tokens.colorBrandStroke1, fillOpacity: 0.35, stroke: tokens.colorBrandStroke1 },
  floor: line,
  wall: line,
  return: { stroke: tokens.colorBrandStroke1, strokeWidth: 2 },
  mark: { fill: 'none', stroke: tokens.colorNeutralForeground1 },
  line: { stroke: tokens.colorNeutralForeground1 },
  dimension: { stroke: tokens.colorNeutralForeground3, strokeWidth: 1 },
  figure: { fill: tokens.colorNeutralForeground1, fontSize: `${PAPER.letters}px` },
  start: { textAnchor: 'start' },
  middle: { textAnchor: 'middle' },
  end: { textAnchor: 'end' },
});

export function Drawing({ drawing, unit }: { readonly drawing: Described; readonly unit: Unit }) {
  const styles = useStyles();
  const { wide, high, boxes, lines, rounds, words, says } = laidOut(drawing, PAPER, unit);
  const looks: Partial<Readonly<Record<Look, string>>> = styles;
  const classOf = (look: Look): string => looks[look] ?? styles.line;
  return (
    <svg
      className={styles.drawing}
      style={{ maxWidth: `${(wide * GROWS).toFixed(0)}px` }}
      viewBox={`0 0 ${wide.toFixed(1)} ${high.toFixed(1)}`}
      role="img"
      aria-label={says}
    >
      {boxes.map(({ look, x, y, width, height }, at) => (
        <rect key={at} className={classOf(look)} x={x} y={y} width={width} height={height} />
      ))}
      {lines.map(({ look, from, to }, at) => (
        <line key={at} className={classOf(look)} x1={from[0]} y1={from[1]} x2={to[0]} y2={to[1]} />
      ))}
      {rounds.map(({ look, x, y, radius }, at) => (
        <circle key={at} className={classOf(look)} cx={x} cy={y} r={radius} />
      ))}
      {words.map((one, at) => (
        <Words key={at} painted={one} />
      ))}
    </svg>
  );
}

function Words({ painted: { words, x, y, anchor, turned, says } }: { readonly painted: PaintedWords }) {
  const styles = useStyles();
  return (
    <text
      className={`${styles.figure} ${styles[anchor]}`}
      {...(turned === true ? { transform: `translate(${x} ${y}) rotate(-90)` } : { x, y })}
    >
      {says !== undefined && <title>{says}</title>}
      {words}
    </text>
  );
}
