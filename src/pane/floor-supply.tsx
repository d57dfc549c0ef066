/** Rolls as they were received: real length, dye lot, flaws; as typed, and read. */
import { Button, Input, makeStyles, tokens } from '@fluentui/react-components';
import type { RollSupply } from '../book/floor';
import { refuse } from '../core/answer';
import type { Flaw, Roll } from '../core/cutting';
import { SHARE, YARDS } from '../core/fields';
import { exact, NO_LENGTH, type Length } from '../core/length';
import type { Ratio } from '../core/ratio';
import type { Unit } from '../core/unit';

export interface RollTyped {
  readonly length: string;
  readonly lot: string;
  /** “12-12 1/2; 30”: stretches and points from the roll's start. */
  readonly flaws: string;
}
export interface SupplyTyped {
  readonly kind: 'ordered' | 'received';
  readonly ordered: string;
  readonly received: readonly RollTyped[];
  readonly spares: string;
}
export const NO_ROLL: RollTyped = { length: '', lot: '', flaws: '' };

function lengthOf(text: string, name: string, unit: Unit): Length {
  return YARDS.read(text.trim(), { name, unit }) ?? refuse('missing', name, name, YARDS.noun);
}

/** At the roll's very start a flaw may stand too, which no length is. */
const placeOn = (text: string, name: string, unit: Unit): Length =>
  text.trim() === '0' ? NO_LENGTH : lengthOf(text, name, unit);

function flawOf(text: string, name: string, unit: Unit): Flaw {
  const ends = /^(.+?)\s*(?:–|-|to)\s*(.+)$/.exec(text);
  const from = placeOn(ends?.[1] ?? text, name, unit);
  const to = ends === null ? from : lengthOf(ends[2] ?? '', name, unit);
  return { from: exact(Math.min(from, to)), length: exact(Math.abs(to - from)) };
}

function rollOf({ length, lot, flaws }: RollTyped, at: number, unit: Unit): Roll {
  const name = `roll ${at + 1}`;
  const marked = flaws.split(/[;,]/).filter((one) => one.trim() !== '');
  return {
    length: lengthOf(length, `${name}, length`, unit),
    lot: lot.trim() === '' ? undefined : lot.trim(),
    ...(marked.length > 0 && {
      flaws: marked.map((one) => flawOf(one.trim(), `${name}, flaws`, unit)),
    }),
  };
}

/** What was typed, read; refused in a sentence that names the roll. */
export function readSupply(typed: SupplyTyped, unit: Unit): { rolls: RollSupply; spares: Ratio } {
  const spares = SHARE.read(typed.spares.trim(), { name: 'spares', unit }) ?? (0 as Ratio);
  if (typed.kind === 'ordered')
    return { rolls: { ordered: lengthOf(typed.ordered, 'each roll', unit) }, spares };
  const given = typed.received.filter(({ length, lot, flaws }) => `${length}${lot}${flaws}`.trim() !== '');
  if (given.length === 0) refuse('missing', 'roll 1, length', 'roll 1, length', YARDS.noun);
  return { rolls: { received: given.map((one, at) => rollOf(one, at, unit)) }, spares };
}

const useStyles = makeStyles({
  rolls: { display: 'grid', gridTemplateColumns: 'minmax(0, 1fr)', gap: tokens.spacingVerticalXS },
  table: { borderCollapse: 'collapse', width: '100%', tableLayout: 'fixed' },
  head: {
    textAlign: 'start',
    fontSize: tokens.fontSizeBase200,
    fontWeight: tokens.fontWeightRegular,
    paddingBottom: tokens.spacingVerticalXXS,
  },
  cell: { paddingBlock: '1px', paddingInline: '0 4px' },
  input: { minWidth: 0, width: '100%', '& input': { minWidth: 0 } },
  act: { justifySelf: 'start' },
});

interface Props {
  readonly rolls: readonly RollTyped[];
  readonly unit: Unit;
  change(rolls: readonly RollTyped[]): void;
}

export function ReceivedRolls({ rolls, unit, change }: Props) {
  const styles = useStyles();
  const columns: readonly (readonly [keyof RollTyped, string, string])[] = [
    ['length', `length (${unit.large})`, '58 1/2'],
    ['lot', 'dye lot', 'A'],
    ['flaws', `flaws at (${unit.large})`, '12-12 1/2; 30'],
  ];
  return (
    <div className={styles.rolls}>
      <table className={styles.table}>
        <thead>
          <tr>
            {columns.map(([key, heading]) => (
              <th key={key} scope="col" className={styles.head}>
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rolls.map((roll, at) => (
            <tr key={at}>
              {columns.map(([key, heading, like]) => (
                <td key={key} className={styles.cell}>
                  <Input
                    size="small"
                    className={styles.input}
                    aria-label={`Roll ${at + 1}, ${heading}`}
                    placeholder={at === 0 ? like : ''}
                    value={roll[key]}
                    onChange={(_, { value }) => {
                      change(rolls.map((one, other) => (other === at ? { ...one, [key]: value } : one)));
                    }}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <Button
        size="small"
        className={styles.act}
        onClick={() => {
          change([...rolls, { ...NO_ROLL, lot: rolls.at(-1)?.lot ?? '' }]);
        }}
      >
        Add a roll
      </Button>
    </div>
  );
}
