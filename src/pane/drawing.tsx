/** Draws an elevation as it was laid out: to scale, with its dimensions. */
import { makeStyles, tokens } from '@fluentui/react-components';
import type { Dimension, Elevation, Part } from '../core/window/elevation';
import { UNITS, type Length } from '../core/exact/length';
import { showLength, tape, type Unit } from '../core/exact/unit';

const WIDE = 324;
const MOST_HIGH = 340;
/** How much larger than that it may be shown in a wide pane. */
const GROWS = 1.3;
const ROW = 20;
const EDGE = { left: 46, right: 94, top: 34, bottom: 50 };
/** A letter of the figures, as far as room is reckoned. */
const LETTER = 5;

const useStyles = makeStyles({
  drawing: { width: '100%', height: 'auto', justifySelf: 'center' },
  opening: {
    fill: tokens.colorNeutralBackground4,
    stroke: tokens.colorNeutralStroke1,
    strokeDasharray: '4 3',
  },
  rod: { fill: tokens.colorNeutralForeground2, stroke: tokens.colorNeutralForeground2, strokeWidth: 2 },
  cloth: {
    fill: tokens.colorBrandBackground2,
    fillOpacity: 0.55,
    stroke: tokens.colorBrandStroke1,
  },
  seam: { stroke: tokens.colorBrandStroke1, strokeDasharray: '2 3' },
  stack: { fill: tokens.colorBrandStroke1, fillOpacity: 0.35, stroke: tokens.colorBrandStroke1 },
  floor: { stroke: tokens.colorNeutralForeground1, strokeWidth: 2 },
  wall: { stroke: tokens.colorNeutralForeground1, strokeWidth: 2 },
  return: { stroke: tokens.colorBrandStroke1, strokeWidth: 2 },
  dimension: { stroke: tokens.colorNeutralForeground3, strokeWidth: 1 },
  figure: { fill: tokens.colorNeutralForeground1, fontSize: '10px' },
  middle: { textAnchor: 'middle' },
});

/** As far as a drawing is read: a sixteenth of an inch, or a millimetre; marked where that is not the figure itself. */
function figure(of: Length, unit: Unit): string {
  const exact = showLength(of, unit);
  if (exact.length <= 10 && !/\.\d{2}/.test(exact)) return exact;
  return unit.small === 'in'
    ? `≈ ${tape(of, 16)} in`
    : `≈ ${showLength((Math.round(of / UNITS.mm) * UNITS.mm) as Length, unit)}`;
}

export function Drawing({ of, unit }: { readonly of: Elevation; readonly unit: Unit }) {
  const styles = useStyles();
  const across = of.right - of.left;
  const up = of.top - of.bottom;
  const scale = Math.min((WIDE - EDGE.left - EDGE.right) / across, (MOST_HIGH - EDGE.top - EDGE.bottom) / up);
  const width = across * scale + EDGE.left + EDGE.right;
  const height = up * scale + EDGE.top + EDGE.bottom;
  const x = (nm: number): number => EDGE.left + (nm - of.left) * scale;
  const y = (nm: number): number => EDGE.top + (of.top - nm) * scale;
  const classOf: Readonly<Record<Part, string>> = styles;
  const says = of.dimensions.map((one) => `${one.what} ${showLength(one.of, unit)}`).join(', ');
  return (
    <svg
      className={styles.drawing}
      style={{ maxWidth: `${(width * GROWS).toFixed(0)}px` }}
      viewBox={`0 0 ${width.toFixed(1)} ${height.toFixed(1)}`}
      role="img"
      aria-label={`Elevation and plan to scale: ${says}.`}
    >
      {of.boxes.map((box, at) => (
        <rect
          key={at}
          className={classOf[box.part]}
          x={x(box.x)}
          y={y(box.y + box.height)}
          width={box.width * scale}
          height={Math.max(1, box.height * scale)}
        />
      ))}
      {of.lines.map((line, at) => (
        <line
          key={at}
          className={classOf[line.part]}
          x1={x(line.from[0])}
          y1={y(line.from[1])}
          x2={x(line.to[0])}
          y2={y(line.to[1])}
        />
      ))}
      {of.dimensions.map((one) => (
        <DimensionLine key={one.what} of={one} x={x} y={y} text={figure(one.of, unit)} />
      ))}
    </svg>
  );
}

interface LineProps {
  readonly of: Dimension;
  readonly text: string;
  x(nm: number): number;
  y(nm: number): number;
}

/** As short as it can be said beside its line. */
const SHORT: Readonly<Record<string, string>> = {
  'rod width': 'rod',
  'finished drop': 'drop',
  'left extension': '',
  'right extension': '',
  'clear of the floor': 'clear',
};

/** The figure with what it is, where there is room for both. */
function label(of: Dimension, text: string, room: number): string {
  const named = `${SHORT[of.what] ?? of.what} ${text}`.trim();
  return named.length * LETTER <= room ? named : text;
}

function DimensionLine(props: LineProps) {
  return props.of.runs === 'across' ? <Across {...props} /> : <Up {...props} />;
}

function Across({ of, text, x, y }: LineProps) {
  const styles = useStyles();
  const base = y(of.at);
  const down = of.side === 'below' ? 1 : -1;
  const line = base + down * (4 + (of.row - 0.45) * ROW);
  const [from, to] = [x(of.from), x(of.to)];
  // Above the plan nothing stands beside the stack; of a narrow extension the figure stands outside.
  const room = of.side === 'above' ? Infinity : to - from - 4;
  const said = label(of, text, room);
  const narrow = said.length * LETTER > to - from - 4;
  const [at, anchor] = !narrow
    ? [(from + to) / 2, 'middle' as const]
    : of.what === 'left extension'
      ? [from - 3, 'end' as const]
      : of.what === 'opening' || of.what === 'rod width'
        ? [(from + to) / 2, 'middle' as const]
        : of.what === 'right extension'
          ? [to + 3, 'start' as const]
          : [from + 2, 'start' as const];
  return (
    <g>
      <path
        className={styles.dimension}
        d={`M${from} ${base}V${line + down * 3}M${to} ${base}V${line + down * 3}M${from} ${line}H${to}`}
      />
      <text className={styles.figure} textAnchor={anchor} x={at} y={line + (down > 0 ? 11 : -4)}>
        <title>{of.what}</title>
        {said}
      </text>
    </g>
  );
}

function Up({ of, text, x, y }: LineProps) {
  const styles = useStyles();
  const base = x(of.at);
  const out = of.side === 'left' ? -1 : 1;
  const line = base + out * (8 + (of.row - 0.5) * ROW);
  const [from, to] = [y(of.from), y(of.to)];
  const middle = (from + to) / 2;
  const small = from - to < text.length * LETTER;
  return (
    <g>
      <path
        className={styles.dimension}
        d={`M${base} ${from}H${line + out * 3}M${base} ${to}H${line + out * 3}M${line} ${from}V${to}`}
      />
      {small ? (
        <text
          className={styles.figure}
          textAnchor={out < 0 ? 'end' : 'start'}
          x={line + out * 5}
          y={middle + 3}
        >
          <title>{of.what}</title>
          {label(of, text, out < 0 ? 0 : EDGE.right - 12)}
        </text>
      ) : (
        <text
          className={`${styles.figure} ${styles.middle}`}
          transform={`translate(${line + (out < 0 ? -4 : 11)} ${middle}) rotate(-90)`}
        >
          <title>{of.what}</title>
          {label(of, text, from - to)}
        </text>
      )}
    </g>
  );
}
