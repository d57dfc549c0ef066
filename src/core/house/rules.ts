/**
 * The house rules: each with its default, its kind (and so its unit), its words and its source.
 * A rules range in the workbook overrides them by name; without one, these stand.
 */
import { FIRST_DAY } from '../cell/day';
import { choiceKind, type Kind } from '../cell/fields';
import { distance } from '../cell/nearest';
import { rule, own, HOUSE, type Rule, type OwnRule, type HeadingRule } from '../cell/rule';
import { AUDIT_RULES } from './audit';
import { CLOTH_RULES } from './cloth';
import { HEADING_RULES } from './heading';
import { MEASURE_RULES } from './measure';
import { PRICE_RULES } from './price';
import { bare, HEADINGS, type Heading } from '../cell/treatment';
import { CENTIMETRES, INCHES, type Unit, type UnitName } from '../exact/unit';
import { UNIT_NAMES } from '../cell/ways';

const WORKBOOK_RULES = {
  inForceFrom: own(
    FIRST_DAY,
    'the first day these rules stood, for auditing past orders; blank is always',
    'no default: your own date',
  ),
  unit: rule(
    choiceKind('a unit', UNIT_NAMES),
    'inches' as UnitName,
    'the unit of every length in the workbook',
    HOUSE,
  ),
};

export const RULES = {
  ...WORKBOOK_RULES,
  ...MEASURE_RULES,
  ...CLOTH_RULES,
  ...HEADING_RULES,
  ...PRICE_RULES,
  ...AUDIT_RULES,
};

/** What people look for a rule under, in the order of RULES. */
const PARTS: readonly (readonly [string, object])[] = [
  ['The workbook', WORKBOOK_RULES],
  ['From opening to drop', MEASURE_RULES],
  ['Widths, cuts and yardage', CLOTH_RULES],
  ['Heading and hardware', HEADING_RULES],
  ['Making charge and price', PRICE_RULES],
  ['Auditing past orders', AUDIT_RULES],
];

type Catalogue = typeof RULES;
export type RuleKey = keyof Catalogue;
export type Rules = {
  readonly [K in RuleKey]: Catalogue[K] extends HeadingRule<infer T>
    ? Readonly<Record<Heading, T>>
    : Catalogue[K] extends OwnRule<infer T>
      ? T | undefined
      : Catalogue[K] extends Rule<infer T>
        ? T
        : never;
};

/** One line of the rules sheet. */
export interface RuleLine {
  readonly name: string;
  readonly part: string;
  readonly key: RuleKey;
  readonly heading?: Heading;
  readonly kind: Kind<unknown>;
  readonly says: string;
  readonly source: string;
  standard(unit: Unit): unknown;
}

const spaced = (key: string): string => key.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);

/** Every house rule by the name people write, in the order they meet them. */
export const RULE_LINES: readonly RuleLine[] = (Object.keys(RULES) as RuleKey[]).flatMap(
  (key): RuleLine[] => {
    const rule = RULES[key] as Rule<unknown> | OwnRule<unknown> | HeadingRule<unknown>;
    const { says } = rule;
    const [part = ''] = PARTS.find(([, rules]) => key in rules) ?? [];
    if ('ownKind' in rule)
      return [
        {
          name: spaced(key),
          part,
          key,
          kind: rule.ownKind,
          says,
          source: rule.source,
          standard: () => undefined,
        },
      ];
    const { kind } = rule;
    if ('standard' in rule) {
      const { standard, source } = rule;
      return [
        {
          name: spaced(key),
          part,
          key,
          kind,
          says,
          source,
          standard: (unit) =>
            typeof standard === 'function' ? (standard as (unit: Unit) => unknown)(unit) : standard,
        },
      ];
    }
    return HEADINGS.list.map(({ word }) => ({
      name: `${spaced(key)} ${word}`,
      part,
      key,
      heading: word as Heading,
      kind,
      says: `${says}: ${word}`,
      source: typeof rule.source === 'function' ? rule.source(word as Heading) : rule.source,
      standard: () => rule.each[word as Heading],
    }));
  },
);

const LINES = new Map(RULE_LINES.map((line) => [bare(line.name), line]));

/** Names that stand in older workbooks. */
const RENAMED: ReadonlyMap<string, string> = new Map([[bare('roll start'), bare('pattern start')]]);

/** Labour is labor in the catalogue, and either where people write. */
export function ruleLine(name: string): RuleLine | undefined {
  const plain = bare(name);
  return LINES.get(RENAMED.get(plain) ?? plain) ?? LINES.get(plain.replace('labour', 'labor'));
}

/** The value of one line under a set of rules. */
export const ruleValue = (rules: Rules, line: RuleLine): unknown =>
  line.heading === undefined ? rules[line.key] : (rules[line.key] as Record<Heading, unknown>)[line.heading];

export function nearestRule(name: string): string {
  const wanted = bare(name);
  let best = RULE_LINES[0] as RuleLine;
  let least = Infinity;
  for (const [key, line] of LINES) {
    const apart = distance(wanted, key);
    if (apart < least) [best, least] = [line, apart];
  }
  return best.name;
}

export const unitOf = (rules: Rules): Unit => (rules.unit === 'inches' ? INCHES : CENTIMETRES);
