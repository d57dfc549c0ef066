/** Draws an elevation as it was laid out: to scale, with its dimensions. */
import { makeStyles, tokens } from '@fluentui/react-components';
import type { Dimension, Elevation, Part } from '../core/elevation';
import { UNITS, type Length } from '../core/length';
import { showLength, tape, type Unit } from '../core/unit';

const WIDE = 344;
const MOST_HIGH = 360;
const ROW = 20;
const EDGE = { left: 30, right: 60, top: 26, bottom: 50 };

const useStyles = makeStyles({
  drawing: { width: '100%', height: 'auto', maxWidth: '420px', justifySelf: 'center' },
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

function DimensionLine({ of, text, x, y }: LineProps) {
  const styles = useStyles();
  if (of.runs === 'across') {
    const base = y(of.at);
    const down = of.side === 'below' ? 1 : -1;
    const line = base + down * (4 + (of.row - 0.45) * ROW);
    const [from, to] = [x(of.from), x(of.to)];
    return (
      <g>
        <path
          className={styles.dimension}
          d={`M${from} ${base}V${line + down * 3}M${to} ${base}V${line + down * 3}M${from} ${line}H${to}`}
        />
        <text
          className={`${styles.figure} ${styles.middle}`}
          x={(from + to) / 2}
          y={line + (down > 0 ? 11 : -3)}
        >
          <title>{of.what}</title>
          {text}
        </text>
      </g>
    );
  }
  const base = x(of.at);
  const out = of.side === 'left' ? -1 : 1;
  const line = base + out * (8 + (of.row - 0.5) * ROW);
  const [from, to] = [y(of.from), y(of.to)];
  const middle = (from + to) / 2;
  const small = from - to < text.length * 5;
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
          {text}
        </text>
      ) : (
        <text
          className={`${styles.figure} ${styles.middle}`}
          transform={`translate(${line + (out < 0 ? -4 : 11)} ${middle}) rotate(-90)`}
        >
          <title>{of.what}</title>
          {text}
        </text>
      )}
    </g>
  );
}
