/** Every roll to scale: its cuts by length, its flaws, and what is left, hatched. */
import { Button, Caption1, makeStyles, mergeClasses, tokens } from '@fluentui/react-components';
import { useId, useState } from 'react';
import type { Roll } from '../core/cutting';
import type { CutPlan, PlannedRoll } from '../core/cutting-plan';
import { showLength, showYardage, type Unit } from '../core/unit';

const WIDE = 320;
const HIGH = 26;
const LABEL = 14;
/** Drawn at first; the others on demand. */
const FIRST = 10;

const useStyles = makeStyles({
  rolls: { display: 'grid', gap: tokens.spacingVerticalXS },
  drawing: { width: '100%', height: 'auto', display: 'block' },
  label: { fill: tokens.colorNeutralForeground1, fontSize: '10.5px' },
  room: { fill: tokens.colorNeutralForeground1, fontSize: '9px', textAnchor: 'middle' },
  cut: { stroke: tokens.colorNeutralForeground3, strokeWidth: 0.75 },
  edge: { fill: 'none', stroke: tokens.colorNeutralForeground2, strokeWidth: 1 },
  hatch: { stroke: tokens.colorNeutralForeground3, strokeWidth: 1 },
  ground: { fill: tokens.colorNeutralBackground1 },
  flaw: { fill: tokens.colorNeutralForeground1 },
  legend: { display: 'flex', flexWrap: 'wrap', columnGap: tokens.spacingHorizontalM },
  entry: { display: 'inline-flex', gap: tokens.spacingHorizontalXS, alignItems: 'center' },
  swatch: { width: '12px', height: '12px', flexShrink: 0 },
  length0: { fill: tokens.colorBrandBackground2, backgroundColor: tokens.colorBrandBackground2 },
  length1: { fill: tokens.colorPaletteTealBackground2, backgroundColor: tokens.colorPaletteTealBackground2 },
  length2: { fill: tokens.colorPaletteGoldBackground2, backgroundColor: tokens.colorPaletteGoldBackground2 },
  length3: {
    fill: tokens.colorPaletteSteelBackground2,
    backgroundColor: tokens.colorPaletteSteelBackground2,
  },
  length4: {
    fill: tokens.colorPaletteForestBackground2,
    backgroundColor: tokens.colorPaletteForestBackground2,
  },
  length5: {
    fill: tokens.colorPaletteLavenderBackground2,
    backgroundColor: tokens.colorPaletteLavenderBackground2,
  },
  more: { justifySelf: 'start' },
});
const COLOURS = ['length0', 'length1', 'length2', 'length3', 'length4', 'length5'] as const;

interface Props {
  readonly plan: CutPlan;
  readonly rolls: readonly Roll[];
  readonly unit: Unit;
}

export function RollDrawing({ plan, rolls, unit }: Props) {
  const styles = useStyles();
  const [all, setAll] = useState(false);
  const lengths = [
    ...new Set(
      plan.rolls.flatMap((roll) => roll.stretches.flatMap(({ cuts }) => cuts.map((one) => one.length))),
    ),
  ].sort((one, other) => other - one);
  const colour = (length: number): string =>
    styles[
      COLOURS[Math.max(0, lengths.indexOf(length as (typeof lengths)[0])) % COLOURS.length] ?? 'length0'
    ];
  const longest = plan.rolls.reduce((most, { length }) => Math.max(most, length), 1);
  const shown = all ? plan.rolls : plan.rolls.slice(0, FIRST);
  return (
    <div className={styles.rolls}>
      <div className={styles.legend}>
        {lengths.map((length) => (
          <Caption1 key={length} className={styles.entry}>
            <span className={mergeClasses(styles.swatch, colour(length))} />
            {showLength(length, unit)}
          </Caption1>
        ))}
        <Caption1>hatched: left over</Caption1>
      </div>
      {shown.map((roll) => (
        <OneRoll
          key={roll.number}
          of={roll}
          flaws={(rolls.length === 1 ? rolls[0] : rolls[roll.number - 1])?.flaws ?? []}
          longest={longest}
          unit={unit}
          colour={colour}
        />
      ))}
      {!all && plan.rolls.length > FIRST && (
        <Button
          size="small"
          className={styles.more}
          onClick={() => {
            setAll(true);
          }}
        >
          Draw all {plan.rolls.length} rolls
        </Button>
      )}
    </div>
  );
}

interface OneProps {
  readonly of: PlannedRoll;
  readonly flaws: NonNullable<Roll['flaws']>;
  readonly longest: number;
  readonly unit: Unit;
  colour(length: number): string;
}

function OneRoll({ of, flaws, longest, unit, colour }: OneProps) {
  const styles = useStyles();
  const hatch = useId().replace(/:/g, '');
  const scale = WIDE / longest;
  const lot = of.lot === undefined ? '' : `, lot ${of.lot}`;
  const label = `Roll ${of.number}${lot}: ${showYardage(of.length, unit)}, ${showLength(of.remnant, unit)} left`;
  const pieces = of.stretches.flatMap((stretch) => {
    let at: number = stretch.from;
    return stretch.cuts.flatMap((cut) =>
      Array.from({ length: cut.count }, () => {
        const x = at * scale;
        at += cut.length;
        return { x, width: cut.length * scale, length: cut.length, room: cut.room ?? cut.label ?? '' };
      }),
    );
  });
  return (
    <svg
      className={styles.drawing}
      viewBox={`-1 0 ${WIDE + 2} ${LABEL + HIGH + 2}`}
      role="img"
      aria-label={`${label}. ${pieces.length} cuts.`}
    >
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect className={styles.ground} width="6" height="6" />
          <line className={styles.hatch} x1="0" y1="0" x2="0" y2="6" />
        </pattern>
      </defs>
      <text className={styles.label} x={0} y={LABEL - 4}>
        {label}
      </text>
      <rect fill={`url(#${hatch})`} x={0} y={LABEL} width={of.length * scale} height={HIGH} />
      {pieces.map(({ x, width, length, room }, at) => (
        <g key={at}>
          <rect
            className={mergeClasses(styles.cut, colour(length))}
            x={x}
            y={LABEL}
            width={width}
            height={HIGH}
          >
            <title>{`${room === '' ? '' : `${room}: `}${showLength(length, unit)}`}</title>
          </rect>
          {room.length * 5 < width && (
            <text className={styles.room} x={x + width / 2} y={LABEL + HIGH / 2 + 3}>
              {room}
            </text>
          )}
        </g>
      ))}
      {flaws.map(({ from, length }) => (
        <rect
          key={from}
          className={styles.flaw}
          x={from * scale}
          y={LABEL}
          width={Math.max(1.5, length * scale)}
          height={HIGH}
        >
          <title>flaw</title>
        </rect>
      ))}
      <rect className={styles.edge} x={0} y={LABEL} width={of.length * scale} height={HIGH} />
    </svg>
  );
}
