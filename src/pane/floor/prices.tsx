/** What each cloth costs: by the yard or with breaks, the least that is cut, whole rolls at their own price. */
import { Caption1, Field, Input, makeStyles, Text, tokens } from '../kit';
import { readClothPrice, NOTHING_TYPED, type ClothField, type ClothTyped } from '../../book/floor/prices';
import { BEHIND, standsIn } from '../../core/cloth/behind';
import type { ClothPrice } from '../../core/floor/cloth-price';
import type { Unit } from '../../core/exact/unit';

const useStyles = makeStyles({
  cloth: { display: 'grid', gap: tokens.spacingVerticalXS, border: 0, padding: 0, margin: 0, minWidth: 0 },
  more: {
    display: 'grid',
    gridTemplateColumns: 'repeat(3, minmax(0, 1fr))',
    gap: tokens.spacingHorizontalS,
    alignItems: 'end',
  },
  name: { padding: 0 },
});

export type PricesTyped = Readonly<Record<string, ClothTyped>>;

/** The prices that can be read, by cloth; a lining that is not on the floor may stand in for another. */
export function pricesRead(
  cloths: readonly string[],
  typed: PricesTyped,
  unit: Unit,
): ReadonlyMap<string, ClothPrice> {
  return new Map(
    [...new Set([...cloths, ...BEHIND])].flatMap((name) => {
      const { price } = readClothPrice(name, typed[name] ?? NOTHING_TYPED, unit);
      return price === undefined ? [] : [[name, price] as const];
    }),
  );
}

interface Props {
  readonly cloths: readonly string[];
  readonly typed: PricesTyped;
  readonly unit: Unit;
  readonly change: (cloth: string, typed: ClothTyped) => void;
}

export function FloorPrices({ cloths, typed, unit, change }: Props) {
  const { large } = unit;
  return (
    <>
      <Caption1>
        One price, or breaks from a quantity on: 0 28.50; 50 26; none where nothing is charged. Making,
        hardware, freight and the rest are house rules.
      </Caption1>
      {cloths.map((cloth) => (
        <Cloth
          key={cloth}
          cloth={cloth}
          large={large}
          typed={typed[cloth] ?? NOTHING_TYPED}
          faults={readClothPrice(cloth, typed[cloth] ?? NOTHING_TYPED, unit).faults}
          change={(next) => {
            change(cloth, next);
          }}
        />
      ))}
    </>
  );
}

interface ClothProps {
  readonly cloth: string;
  readonly large: string;
  readonly typed: ClothTyped;
  readonly faults: Partial<Record<ClothField, string>>;
  readonly change: (typed: ClothTyped) => void;
}

function Cloth({ cloth, large, typed, faults, change }: ClothProps) {
  const styles = useStyles();
  const named = BEHIND.find((one) => one === cloth);
  const instead = named && standsIn(named);
  const field = (key: ClothField, label: string, aria: string, placeholder: string) => (
    <Field size="small" label={label} {...(faults[key] !== undefined && { validationState: 'error' })}>
      <Input
        size="small"
        aria-label={`${cloth}, ${aria}`}
        placeholder={placeholder}
        value={typed[key]}
        onChange={(_, { value }) => {
          change({ ...typed, [key]: value });
        }}
      />
    </Field>
  );
  return (
    <fieldset className={styles.cloth}>
      <legend className={styles.name}>
        <Text weight="semibold" size={200}>
          {cloth}
        </Text>
      </legend>
      {field('price', `a ${large}`, `a ${large}`, instead === undefined ? '' : `as the ${instead}`)}
      <div className={styles.more}>
        {field('minimum', `least (${large})`, `the least that is cut (${large})`, '')}
        {field('rollLength', `whole roll (${large})`, `whole roll (${large})`, '')}
        {field('rollPrice', `a ${large} in rolls`, `a ${large} in whole rolls`, '')}
      </div>
      {Object.values(faults).map((sentence) => (
        <Field key={sentence} validationMessage={sentence}>
          <span />
        </Field>
      ))}
    </fieldset>
  );
}
