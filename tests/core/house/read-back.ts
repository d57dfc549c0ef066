import { expect } from 'vitest';
import type { HeadingRule, OwnRule, Rule } from '../../../src/core/cell/rule';
import type { Kind } from '../../../src/core/cell/fields';
import { CENTIMETRES, INCHES, type Unit } from '../../../src/core/exact/unit';

type AnyRule = Rule<unknown> | OwnRule<unknown> | HeadingRule<unknown>;

const standards = (rule: AnyRule, unit: Unit): readonly unknown[] => {
  if ('ownKind' in rule) return [];
  if ('each' in rule) return Object.values(rule.each).filter((one) => one !== undefined);
  return [
    typeof rule.standard === 'function' ? (rule.standard as (unit: Unit) => unknown)(unit) : rule.standard,
  ];
};

/** Every default can be written into a cell of either unit and is read from there as the same; how many there are. */
export function readBack(rules: Readonly<Record<string, AnyRule>>): number {
  let read = 0;
  for (const unit of [INCHES, CENTIMETRES])
    for (const [name, rule] of Object.entries(rules)) {
      const kind: Kind<unknown> = 'ownKind' in rule ? rule.ownKind : rule.kind;
      for (const standard of standards(rule, unit)) {
        expect(kind.write, `${name} is never written`).toBeDefined();
        const cell = kind.write?.(standard, unit);
        expect(
          kind.read(cell as never, { name, unit }),
          `${name} in ${unit.name}, written ${String(cell)}`,
        ).toEqual(standard);
        read++;
      }
    }
  return read;
}

/** Rules that only the workroom can set have no default that could pass for one. */
export const ownOnes = (rules: Readonly<Record<string, AnyRule>>): readonly string[] =>
  Object.entries(rules).flatMap(([name, rule]) => ('ownKind' in rule ? [name] : []));
