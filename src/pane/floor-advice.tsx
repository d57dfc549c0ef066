/** Advice: what a little less would save over the floor, the price, and a deposit that must cover the cloth. */
import { makeStyles, MessageBar, MessageBarBody, Text, tokens } from '@fluentui/react-components';
import { useMemo } from 'react';
import type { Floor } from '../book/floor';
import { adviceOf, priced } from '../book/floor-advice';

const useStyles = makeStyles({
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalL, display: 'grid', gap: tokens.spacingVerticalXS },
  message: { whiteSpace: 'normal' },
});
const SHOWN = 12;

interface Props {
  readonly floor: Floor;
  readonly prices: ReadonlyMap<string, number>;
}

export function FloorAdvice({ floor, prices }: Props) {
  const styles = useStyles();
  const advice = useMemo(() => adviceOf(floor, prices), [floor, prices]);
  const { quote, findings } = useMemo(() => priced(floor, prices), [floor, prices]);
  return (
    <>
      {advice.length === 0 ? (
        <Text size={200}>No rod is near enough to a width less, and turning the cloth saves nothing.</Text>
      ) : (
        <ul className={styles.list}>
          {advice.slice(0, SHOWN).map(({ sentence }) => (
            <li key={sentence}>
              <Text size={200}>{sentence}</Text>
            </li>
          ))}
        </ul>
      )}
      {prices.size > 0 && (
        <Text size={200}>
          At these prices the floor comes to {quote.total.toFixed(2)}, with a deposit of{' '}
          {quote.deposit.toFixed(2)}.
        </Text>
      )}
      {findings.map(({ sentence, weight }) => (
        <MessageBar key={sentence} intent={weight === 'note' ? 'info' : 'warning'} layout="multiline">
          <MessageBarBody className={styles.message}>{sentence}</MessageBarBody>
        </MessageBar>
      ))}
    </>
  );
}
