/** Every roll to scale: its cuts by length, its flaws, what is given up and what is left. */
import { Button, Caption1, makeStyles, tokens } from '@fluentui/react-components';
import { useId, useState } from 'react';
import { TO_START } from '../../book/floor/sheets';
import type { Roll } from '../../core/rolls/cutting';
import type { CutPlan, PlannedRoll } from '../../core/rolls/plan';
import { showLength, showRemnant, showYardage, type Unit } from '../../core/exact/unit';
import { FillPatterns, LengthFill, SpareFill, Swatch } from './roll-fill';

const WIDE = 320;
const HIGH = 26;
const LABEL = 14;
/** Drawn at first; the others on demand. */
const FIRST = 10;

const useStyles = makeStyles({
  rolls: { display: 'grid', gap: tokens.spacingVerticalXS },
  drawing: { width: '100%', height: 'auto', display: 'block' },
  label: { fill: tokens.colorNeutralForeground1, fontSize: '10.5px' },
  // A rim of the ground keeps the room readable on any pattern.
  room: {
    fill: tokens.colorNeutralForeground1,
    fontSize: '9px',
    textAnchor: 'middle',
    stroke: tokens.colorNeutralBackground1,
    strokeWidth: '2px',
    paintOrder: 'stroke',
  },
  edge: { fill: 'none', stroke: tokens.colorNeutralForeground2, strokeWidth: 1 },
  flaw: { fill: tokens.colorNeutralForeground1 },
  legend: { display: 'flex', flexWrap: 'wrap', columnGap: tokens.spacingHorizontalM },
  entry: { display: 'inline-flex', gap: tokens.spacingHorizontalXS, alignItems: 'center' },
  more: { justifySelf: 'start' },
});

interface Props {
  readonly plan: CutPlan;
  readonly rolls: readonly Roll[];
  readonly unit: Unit;
}

export function RollDrawing({ plan, rolls, unit }: Props) {
  const styles = useStyles();
  const id = useId().replace(/:/g, '');
  const [all, setAll] = useState(false);
  const stretches = plan.rolls.flatMap((roll) => roll.stretches);
  const cut = stretches.flatMap(({ cuts }) => cuts.map((one) => one.length));
  // As a tape reads them: lengths a hair apart are one.
  const lengths = [
    ...new Set([...cut].sort((one, other) => other - one).map((length) => showLength(length, unit))),
  ];
  const longest = plan.rolls.reduce((most, { length }) => Math.max(most, length), 1);
  const shown = all ? plan.rolls : plan.rolls.slice(0, FIRST);
  return (
    <div className={styles.rolls}>
      <FillPatterns id={id} />
      <div className={styles.legend}>
        {lengths.map((length, at) => (
          <Caption1 key={length} className={styles.entry}>
            <Swatch id={id} of={at} />
            {length}
          </Caption1>
        ))}
        {stretches.some(({ toStart }) => toStart !== undefined) && (
          <Caption1 className={styles.entry}>
            <Swatch id={id} of="start" />
            {TO_START}
          </Caption1>
        )}
        <Caption1 className={styles.entry}>
          <Swatch id={id} of="left" />
          left over
        </Caption1>
      </div>
      {shown.map((roll) => (
        <OneRoll
          key={roll.number}
          id={id}
          of={roll}
          flaws={(rolls.length === 1 ? rolls[0] : rolls[roll.number - 1])?.flaws ?? []}
          longest={longest}
          unit={unit}
          lengths={lengths}
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
  /** Of the drawing's patterns. */
  readonly id: string;
  readonly of: PlannedRoll;
  readonly flaws: NonNullable<Roll['flaws']>;
  readonly longest: number;
  readonly unit: Unit;
  /** As the legend has them. */
  readonly lengths: readonly string[];
}

function OneRoll({ id, of, flaws, longest, unit, lengths }: OneProps) {
  const styles = useStyles();
  const scale = WIDE / longest;
  const lot = of.lot === undefined ? '' : `, lot ${of.lot}`;
  const label = `Roll ${of.number}${lot}: ${showYardage(of.length, unit)}, ${showRemnant(of.remnant, unit)} left`;
  const band = { y: LABEL, height: HIGH };
  const pieces = of.stretches.flatMap((stretch) => {
    let at: number = stretch.from;
    return stretch.cuts.flatMap((cut) =>
      Array.from({ length: cut.count }, () => {
        const x = at * scale;
        at += cut.length;
        const length = showLength(cut.length, unit);
        return { x, width: cut.length * scale, length, room: cut.room ?? cut.label ?? '' };
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
      <text className={styles.label} x={0} y={LABEL - 4}>
        {label}
      </text>
      <SpareFill id={id} of="left" x={0} width={of.length * scale} {...band} />
      {of.stretches.map(({ from, toStart, cuts }) =>
        toStart === undefined || cuts.length === 0 ? null : (
          <SpareFill
            key={from}
            id={id}
            of="start"
            x={(from - toStart) * scale}
            width={toStart * scale}
            {...band}
          />
        ),
      )}
      {pieces.map(({ x, width, length, room }, at) => (
        <g key={at}>
          <LengthFill
            id={id}
            at={lengths.indexOf(length)}
            says={`${room === '' ? '' : `${room}: `}${length}`}
            x={x}
            width={width}
            {...band}
          />
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
          width={Math.max(1.5, length * scale)}
          {...band}
        >
          <title>flaw</title>
        </rect>
      ))}
      <rect className={styles.edge} x={0} width={of.length * scale} {...band} />
    </svg>
  );
}
