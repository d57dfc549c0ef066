/** What each cloth of a floor comes on: rolls named in the command, the workbook's own, or rolls to be ordered. */
import type { Flaw, Roll } from '../../core/rolls/cutting';
import { YARDS } from '../../core/cell/length-kinds';
import type { Cloth, RollSupply } from '../../core/floor/floor-cuts';
import { UNITS, type Length } from '../../core/exact/length';
import { readFlaws, readRoll, sameName, type Received } from '../../core/rolls/received';
import type { Unit } from '../../core/exact/unit';
import { asUsage, parts, readOption, type Values } from './options';
import { Problem, USAGE } from '../problem';

/** Rolls usually come so long. */
const usualRoll = ({ large }: Unit): Length => (large === 'yd' ? 60 * UNITS.yd : 50 * UNITS.m) as Length;

/** “2: 12-12 1/2; 30” are the flaws of the second roll. */
function flawsOf(values: Values, rolls: number, unit: Unit): ReadonlyMap<number, readonly Flaw[]> {
  const flaws = new Map<number, readonly Flaw[]>();
  for (const text of values.flaws ?? []) {
    const [, roll, at = ''] = /^\s*(\d+)\s*:(.+)$/.exec(text) ?? [];
    if (roll === undefined)
      throw new Problem(
        `--flaws reads “${text}”. Write the roll's number before its flaws, like “2: 12-12 1/2; 30”.`,
        USAGE,
      );
    if (Number(roll) < 1 || Number(roll) > rolls)
      throw new Problem(`--flaws names roll ${roll}, and --rolls has ${rolls}. Count from 1.`, USAGE);
    flaws.set(
      Number(roll),
      asUsage(() => readFlaws(at, `--flaws, roll ${roll}`, unit)),
    );
  }
  return flaws;
}

/** The rolls of --rolls with their lots and flaws; undefined where none are named. */
function namedRolls(values: Values, unit: Unit): readonly Roll[] | undefined {
  const lots = values.lots === undefined ? [] : parts(values.lots);
  if (values.rolls === undefined) {
    if (lots.length > 0)
      throw new Problem('--lots names the lots of the rolls in hand. Give them with --rolls.', USAGE);
    if (values.flaws !== undefined)
      throw new Problem('--flaws says where the rolls in hand are flawed. Give them with --rolls.', USAGE);
    return undefined;
  }
  const lengths = parts(values.rolls).map((one, at) =>
    readOption(YARDS, one, `--rolls, roll ${at + 1}`, unit),
  );
  if (lots.length > 0 && lots.length !== lengths.length)
    throw new Problem(
      `--lots names ${lots.length} lots for ${lengths.length} rolls. Give one for each roll.`,
      USAGE,
    );
  const flaws = flawsOf(values, lengths.length, unit);
  return lengths.map((length, at) => ({ length, lot: lots[at], flaws: flaws.get(at + 1) }));
}

/** Says what a cloth comes on. */
export function suppliesOf(
  values: Values,
  cloths: readonly Cloth[],
  inHand: Received | undefined,
  unit: Unit,
): (cloth: Cloth) => RollSupply {
  const named = namedRolls(values, unit);
  const faces = cloths.filter(({ layer }) => layer === 'face');
  if (named !== undefined && faces.length > 1)
    throw new Problem(
      `--rolls are the rolls of one fabric, and the windows have ${faces.length}: ${faces.map(({ name }) => name).join(', ')}. Say which with --fabric, or enter every roll in the workbook and use --in-hand.`,
      USAGE,
    );
  const ordered: RollSupply = {
    ordered: values.roll === undefined ? usualRoll(unit) : readOption(YARDS, values.roll, '--roll', unit),
  };
  return (cloth) => {
    if (named !== undefined && cloth.layer === 'face') return { received: named };
    const written = inHand?.get(sameName(cloth.name));
    if (written === undefined) return ordered;
    return {
      received: asUsage(() =>
        written.map((one, at) => readRoll(one, `${cloth.name}, roll ${at + 1} of the workbook`, unit)),
      ),
    };
  };
}
