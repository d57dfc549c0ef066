/** Advice: what a little less would save over the floor. */
import { makeStyles, Text, tokens } from '../kit';
import { useMemo } from 'react';
import type { Floor } from '../../book/floor/floor';
import { adviceOf } from '../../book/floor/advice';
import type { ClothPrice } from '../../core/floor/cloth-price';

const useStyles = makeStyles({
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalL, display: 'grid', gap: tokens.spacingVerticalXS },
});
const SHOWN = 12;

interface Props {
  readonly floor: Floor;
  readonly prices: ReadonlyMap<string, ClothPrice>;
}

export function FloorAdvice({ floor, prices }: Props) {
  const styles = useStyles();
  const advice = useMemo(() => adviceOf(floor, prices), [floor, prices]);
  if (advice.length === 0)
    return (
      <Text size={200}>No rod is near enough to a width less, and turning the cloth saves nothing.</Text>
    );
  return (
    <ul className={styles.list}>
      {advice.slice(0, SHOWN).map(({ sentence }) => (
        <li key={sentence}>
          <Text size={200}>{sentence}</Text>
        </li>
      ))}
    </ul>
  );
}
