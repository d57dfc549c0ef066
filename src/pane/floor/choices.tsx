/** What if: fullness by cloth width by direction by repeat rule, the cheapest marked, or the least cloth. */
import { Badge, Caption1, ChoiceField, makeStyles, TextField, Ticks, tokens } from '../kit';
import { useMemo, useState } from 'react';
import { GROUPS, type Floor } from '../../book/floor/floor';
import { Refusal } from '../../core/cell/answer';
import type { ClothPrice } from '../../core/floor/cloth-price';
import { type Kind } from '../../core/cell/fields';
import { FULLNESS } from '../../core/cell/figure-kinds';
import { SIZE, YARDS } from '../../core/cell/length-kinds';
import { whatIf, type Choice, type Costed } from '../../core/floor/floor';
import { toFigure } from '../../core/exact/ratio';
import { REPEAT_RULES, type RepeatRule } from '../../core/cell/ways';
import { digits, showLength, showYardage, type Unit } from '../../core/exact/unit';
import { FigureTable, type FigureRow } from './table';

const useStyles = makeStyles({
  rules: { display: 'grid', gridTemplateColumns: '1fr 1fr' },
  pair: { display: 'grid', gridTemplateColumns: '1fr 1fr', gap: tokens.spacingHorizontalS },
});

interface Props {
  readonly floor: Floor;
  readonly fabrics: readonly string[];
  readonly prices: ReadonlyMap<string, ClothPrice>;
}

/** A typed list, or the sentence that refuses it. */
function listOf<T>(text: string, kind: Kind<T>, name: string, unit: Unit): readonly T[] | string {
  try {
    return text
      .split(';')
      .filter((one) => one.trim() !== '')
      .flatMap((one) => {
        const value = kind.read(one.trim(), { name, unit });
        return value === undefined ? [] : [value];
      });
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown.finding.sentence;
    throw thrown;
  }
}

const orOne = <T,>(list: readonly T[] | string): readonly (T | undefined)[] =>
  typeof list === 'string' || list.length === 0 ? [undefined] : list;
const faultOf = (list: unknown): string | undefined => (typeof list === 'string' ? list : undefined);

/** What the user types and ticks, each list read once. */
function useTyped({ unit }: Floor['house']) {
  const [fullness, setFullness] = useState('2; 2.5');
  const [widths, setWidths] = useState('');
  const [roll, setRoll] = useState(unit.large === 'yd' ? '60' : '50');
  const full = useMemo(() => listOf(fullness, FULLNESS, 'Fullness', unit), [fullness, unit]);
  const wide = useMemo(() => listOf(widths, SIZE, 'Cloth widths', unit), [widths, unit]);
  const rolls = useMemo(() => listOf(roll, YARDS, 'Roll length', unit), [roll, unit]);
  return { fullness, setFullness, full, widths, setWidths, wide, roll, setRoll, rolls };
}

export function FloorChoices({ floor, fabrics, prices }: Props) {
  const styles = useStyles();
  const { unit, rules } = floor.house;
  const [chosen, setFabric] = useState('');
  const [repeats, setRepeats] = useState<ReadonlySet<RepeatRule>>(new Set());
  const typed = useTyped(floor.house);
  const { full, wide, rolls } = typed;
  const fabric = fabrics.includes(chosen) ? chosen : (fabrics[0] ?? '');
  const price = prices.get(fabric);
  const costed = useMemo((): readonly Costed[] => {
    const windows = floor.windows.filter((one) => GROUPS.fabric(one) === fabric);
    return whatIf(
      windows.map(({ work }) => work.window),
      choicesOf(orOne(full), orOne(wide), repeats),
      { price, rollLength: orOne(rolls)[0] },
      rules,
    );
  }, [floor, fabric, full, wide, rolls, repeats, price, rules]);
  const impossible = costed.find(({ why }) => why !== undefined)?.why;

  return (
    <>
      {fabrics.length > 1 && (
        <ChoiceField label="Fabric" value={fabric} change={setFabric}>
          {fabrics.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </ChoiceField>
      )}
      <TextField
        label="Fullness"
        hint="Several parted by ; and blank as the rows have it."
        fault={faultOf(full)}
        value={typed.fullness}
        change={typed.setFullness}
      />
      <div className={styles.pair}>
        <TextField
          label={`Cloth widths (${unit.small})`}
          fault={faultOf(wide)}
          value={typed.widths}
          placeholder="54; 118"
          change={typed.setWidths}
        />
        <TextField
          label={`Roll length (${unit.large})`}
          fault={faultOf(rolls)}
          value={typed.roll}
          change={typed.setRoll}
        />
      </div>
      <div className={styles.rules} role="group" aria-label="Repeat rules">
        <Ticks
          choices={REPEAT_RULES.list.map(({ word }) => ({ key: word, label: word }))}
          chosen={repeats}
          change={setRepeats}
        />
      </div>
      <FigureTable
        says="What other choices come to"
        headings={['choice', 'cloth', 'rolls', 'price']}
        rows={costed.map((one): FigureRow => rowOf(one, unit))}
      />
      {impossible !== undefined && <Caption1>Not possible: {impossible}</Caption1>}
      {price === undefined && (
        <Caption1>With a price for {fabric} the table says what each choice costs.</Caption1>
      )}
    </>
  );
}

/** Every fullness with every width, up the roll and railroaded, by every rule. */
function choicesOf(
  full: readonly (Choice['fullness'] | undefined)[],
  wide: readonly (Choice['fabricWidth'] | undefined)[],
  repeats: ReadonlySet<RepeatRule>,
): readonly Choice[] {
  const rules = repeats.size === 0 ? [undefined] : [...repeats];
  return full.flatMap((fullness) =>
    wide.flatMap((fabricWidth) =>
      (['up the roll', 'railroaded'] as const).flatMap((direction) =>
        rules.map((repeatRule): Choice => ({ fullness, fabricWidth, direction, repeatRule })),
      ),
    ),
  );
}

function rowOf({ choice, yardage, rolls, price, cheapest, leastCloth }: Costed, unit: Unit): FigureRow {
  const words = [
    choice.fullness === undefined ? '' : `fullness ${digits(toFigure(choice.fullness))}`,
    choice.fabricWidth === undefined ? '' : showLength(choice.fabricWidth, unit),
    choice.direction,
    choice.repeatRule ?? '',
  ].filter((one) => one !== '');
  return {
    chosen: cheapest || leastCloth,
    name: (
      <>
        {words.join(', ')}{' '}
        {(cheapest || leastCloth) && (
          <Badge size="small" appearance="tint">
            {cheapest ? 'cheapest' : 'least cloth'}
          </Badge>
        )}
      </>
    ),
    figures: [
      yardage === undefined ? 'not possible' : showYardage(yardage, unit),
      rolls === undefined ? '' : digits(rolls),
      price === undefined ? '' : price.toFixed(2),
    ],
  };
}
