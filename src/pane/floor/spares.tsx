/** Spares asked for on this floor instead of the house's share: one figure for totals, plan and price. */
import { TextField } from '../kit';
import { useMemo, useState } from 'react';
import type { ColumnsRead } from '../../book/columns';
import { readFloor, type Floor } from '../../book/floor/floor';
import type { RulesSeen } from '../../book/rule-lines';
import { Refusal } from '../../core/cell/answer';
import { INCHES } from '../../core/exact/unit';
import { RULES } from '../../core/house/rules';
import type { Money } from '../../core/exact/money';

/** The share typed, or why it is none; neither where the field is blank. */
export function readSpares(typed: string): { readonly asked?: Money; readonly fault?: string } {
  try {
    const asked = RULES.spareWindows.kind.read(typed.trim(), { name: 'spares', unit: INCHES });
    return asked === undefined ? {} : { asked };
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    return { fault: thrown.finding.sentence };
  }
}

interface Opened {
  readonly floor: Floor;
  readonly read: ColumnsRead;
  readonly rules: RulesSeen | undefined;
}

export interface Spares {
  readonly typed: string;
  readonly fault: string | undefined;
  /** The house's own share, as it is written. */
  readonly usual: string;
  change(typed: string): void;
}

/** The floor with the spares asked for. */
export function useSpares(opened: Opened | undefined): readonly [Floor | undefined, Spares] {
  const [typed, change] = useState('');
  const { asked, fault } = useMemo(() => readSpares(typed), [typed]);
  const floor = useMemo(
    () =>
      opened === undefined || asked === undefined
        ? opened?.floor
        : readFloor(opened.read, opened.rules, asked),
    [opened, asked],
  );
  const usual = `${opened?.floor.house.rules.spareWindows.times(100).toString() ?? '0'} %`;
  return [floor, { typed, fault, usual, change }];
}

export function SparesField({ typed, fault, usual, change }: Spares) {
  return (
    <TextField
      label="Spares, a share of the face’s cuts"
      hint="In the totals, the plan and the price alike; blank takes the house rule."
      fault={fault}
      value={typed}
      placeholder={usual}
      change={change}
    />
  );
}
