/** What floor is told: its options, and how they are read. */
import { Refusal } from '../../core/cell/answer';
import type { Kind } from '../../core/cell/fields';
import type { Money } from '../../core/exact/money';
import { INCHES, type Unit } from '../../core/exact/unit';
import { RULES } from '../../core/house/rules';
import type { readWords } from '../command';
import { Problem, USAGE } from '../problem';

export const OPTIONS = {
  fabric: { type: 'string' },
  rooms: { type: 'string', multiple: true },
  types: { type: 'string' },
  roll: { type: 'string' },
  rolls: { type: 'string' },
  lots: { type: 'string' },
  flaws: { type: 'string', multiple: true },
  'in-hand': { type: 'boolean' },
  spares: { type: 'string' },
  fullness: { type: 'string' },
  widths: { type: 'string' },
  repeats: { type: 'string' },
  columns: { type: 'string' },
  words: { type: 'string' },
  price: { type: 'string' },
  least: { type: 'string' },
  'whole-roll': { type: 'string' },
  'lining-price': { type: 'string' },
  'blackout-price': { type: 'string' },
  'interlining-price': { type: 'string' },
  seconds: { type: 'string' },
  out: { type: 'string', short: 'o' },
  json: { type: 'boolean' },
} as const;

export type Values = ReturnType<typeof readWords<typeof OPTIONS>>['values'];

export const parts = (list: string): string[] =>
  list
    .split(';')
    .map((one) => one.trim())
    .filter((one) => one !== '');

/** The share of spares that was asked for, written as the house rule is. */
export function sparesAsked({ spares }: Values): Money | undefined {
  return spares === undefined ? undefined : readOption(RULES.spareWindows.kind, spares, '--spares', INCHES);
}

/** A refusal of what was typed is a misuse of the option. */
export function asUsage<T>(read: () => T): T {
  try {
    return read();
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    throw new Problem(thrown.finding.sentence, USAGE);
  }
}

/** An option's text through the same reader as a cell; its sentence names the option. */
export function readOption<T>(kind: Kind<T>, text: string, name: string, unit: Unit): T {
  const value = asUsage(() => kind.read(text, { name, unit }));
  if (value !== undefined) return value;
  throw new Problem(`${name} is blank. Give ${kind.noun} after it.`, USAGE);
}
