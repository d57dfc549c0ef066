/** What a cloth comes on, as typed: rolls to be ordered, or those received with their lots and flaws. */
import { Button, Input, makeStyles, tokens } from '../kit';
import { refuse } from '../../core/cell/answer';
import { YARDS } from '../../core/cell/length-kinds';
import type { RollSupply } from '../../core/floor/floor-cuts';
import { NO_ROLL, readRoll, readRollLength, type RollWritten } from '../../core/rolls/received';
import type { Unit } from '../../core/exact/unit';

export interface SupplyTyped {
  readonly kind: 'ordered' | 'received';
  readonly ordered: string;
  readonly received: readonly RollWritten[];
}

/** What was typed, read; refused in a sentence that names the roll. */
export function readSupply(typed: SupplyTyped, unit: Unit): RollSupply {
  if (typed.kind === 'ordered') return { ordered: readRollLength(typed.ordered, 'each roll', unit) };
  const given = typed.received.filter(({ length, lot, flaws }) => `${length}${lot}${flaws}`.trim() !== '');
  if (given.length === 0) refuse('missing', 'roll 1, length', 'roll 1, length', YARDS.noun);
  return { received: given.map((one, at) => readRoll(one, `roll ${at + 1}`, unit)) };
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
  readonly rolls: readonly RollWritten[];
  readonly unit: Unit;
  change(rolls: readonly RollWritten[]): void;
}

export function ReceivedRolls({ rolls, unit, change }: Props) {
  const styles = useStyles();
  const columns: readonly (readonly [keyof RollWritten, string, string])[] = [
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
