/** Every roll to scale: its cuts by length, its flaws, what is given up and what is left. */
import { Button, Caption1, makeStyles, tokens } from '../kit';
import { useId, useState } from 'react';
import { TO_START } from '../../book/floor/sheets';
import type { Roll } from '../../core/rolls/cutting';
import type { CutPlan, PlannedRoll } from '../../core/rolls/plan';
import { laidOut, type PaintedBox } from '../../core/drawing/laid-out';
import { cutLengths, rollDrawing, rollTitle } from '../../core/drawing/roll';
import type { Unit } from '../../core/exact/unit';
import { FillPatterns, LengthFill, SpareFill, Swatch } from './roll-fill';

const WIDE = 320;
const HIGH = 26;
const LABEL = 14;
const LETTERS = 9;
/** Drawn at first; the others on demand. */
const FIRST = 10;

const useStyles = makeStyles({
  rolls: { display: 'grid', gap: tokens.spacingVerticalXS },
  drawing: { width: '100%', height: 'auto', display: 'block' },
  label: { fill: tokens.colorNeutralForeground1, fontSize: '10.5px' },
  // A rim of the ground keeps the room readable on any pattern.
  room: {
    fill: tokens.colorNeutralForeground1,
    fontSize: `${LETTERS}px`,
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
  const lengths = cutLengths(plan.rolls, unit);
  const longest = plan.rolls.reduce((most, { length }) => Math.max(most, length), 1);
  const shown = all ? plan.rolls : plan.rolls.slice(0, FIRST);
  return (
    <div className={styles.rolls}>
      <FillPatterns id={id} />
      <div className={styles.legend}>
        {lengths.map((length, at) => (
          <Caption1 key={length} className={styles.entry}>
            <Swatch id={id} piece={at} />
            {length}
          </Caption1>
        ))}
        {stretches.some(({ toStart }) => toStart !== undefined) && (
          <Caption1 className={styles.entry}>
            <Swatch id={id} piece="start" />
            {TO_START}
          </Caption1>
        )}
        <Caption1 className={styles.entry}>
          <Swatch id={id} piece="left" />
          left over
        </Caption1>
      </div>
      {shown.map((roll) => (
        <OneRoll
          key={roll.number}
          id={id}
          roll={roll}
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
  readonly roll: PlannedRoll;
  readonly flaws: NonNullable<Roll['flaws']>;
  readonly longest: number;
  readonly unit: Unit;
  /** As the legend has them. */
  readonly lengths: readonly string[];
}

function OneRoll({ id, roll, flaws, longest, unit, lengths }: OneProps) {
  const styles = useStyles();
  const paper = { wide: (WIDE * roll.length) / longest, high: HIGH, letters: LETTERS };
  const { boxes, words, says } = laidOut(rollDrawing(roll, { flaws, lengths, unit }), paper, unit);
  return (
    <svg
      className={styles.drawing}
      viewBox={`-1 ${-LABEL} ${WIDE + 2} ${LABEL + HIGH + 2}`}
      role="img"
      aria-label={says}
    >
      <text className={styles.label} x={0} y={-4}>
        {rollTitle(roll, unit)}
      </text>
      {boxes.map((box, at) => (
        <RollBox key={at} id={id} box={box} />
      ))}
      {words.map(({ words, x, y }, at) => (
        <text key={at} className={styles.room} x={x} y={y}>
          {words}
        </text>
      ))}
      <rect className={styles.edge} x={0} y={0} width={paper.wide} height={HIGH} />
    </svg>
  );
}

function RollBox({
  id,
  box: { look, alike = 0, says, ...box },
}: {
  readonly id: string;
  readonly box: PaintedBox;
}) {
  const styles = useStyles();
  const place = { x: box.x, y: box.y, width: box.width, height: box.height };
  if (look === 'cut')
    return <LengthFill id={id} at={alike} {...(says !== undefined && { says })} {...place} />;
  if (look === 'spare' || look === 'start')
    return <SpareFill id={id} spare={look === 'spare' ? 'left' : 'start'} {...place} />;
  return (
    <rect className={styles.flaw} {...place}>
      <title>{says}</title>
    </rect>
  );
}
