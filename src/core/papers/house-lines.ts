/** What the house says on its papers, typed once: letterhead, terms, times, label sheets. */
import { bare } from '../cell/treatment';
import type { Entry, PaperSize } from './paper';

export interface HouseLine {
  readonly key: string;
  /** As it stands in the sheet. */
  readonly label: string;
  readonly says: string;
  /** What is printed where the house writes nothing; nothing is, where this is empty. */
  readonly standard: string | number;
  /** On the other paper, where it is another. */
  readonly onA4?: string | number;
}

const line = (
  key: string,
  label: string,
  says: string,
  standard: string | number = '',
  onA4?: string | number,
) => ({ key, label, says, standard, ...(onA4 !== undefined && { onA4 }) }) as const satisfies HouseLine;

export const HOUSE_LINES = [
  line('name', 'house name', 'at the head of every paper'),
  line('address1', 'address', 'first line'),
  line('address2', 'address, second line', ''),
  line('address3', 'address, third line', ''),
  line('telephone', 'telephone', ''),
  line('email', 'email', ''),
  line('registration', 'licence or tax number', 'as your law wants it on a quote, with its name'),
  line('sign', 'currency sign', 'before every amount, like $; blank prints none'),
  line('validDays', 'quote valid for (days)', 'where the job says no day of its own', 30),
  line('leadDeposit', 'lead time from deposit', 'like “6 to 8 weeks”; blank leaves a line to write on'),
  line('leadCutting', 'lead time from approval of the cutting', 'like “4 weeks”; blank leaves it out'),
  line('claimDays', 'claims within (days)', 'of installation; common practice, no source', 10),
  line(
    'exclusion1',
    'not included, 1',
    'blank all four to print none',
    'Scaffolding, lifts and other access equipment.',
  ),
  line('exclusion2', 'not included, 2', '', 'Electrical work: a licensed electrician connects motors.'),
  line('exclusion3', 'not included, 3', '', 'Repairs to walls, plaster and paint, and making good.'),
  line('exclusion4', 'not included, 4', '', 'Taking down what hangs there now, unless a line above says so.'),
  line(
    'term1',
    'terms, 1',
    'write “none” where you print none',
    'The deposit is due with the order, the balance when the work is hung.',
  ),
  line(
    'term2',
    'terms, 2',
    '',
    'Cloth is cut only after the measures and, where one is sent, the cutting are approved in writing.',
  ),
  line(
    'term3',
    'terms, 3',
    '',
    'Cloth varies a little from lot to lot; the cloth delivered may differ slightly from a sample.',
  ),
  line(
    'term4',
    'terms, 4',
    '',
    'Changes to openings, floors or ceilings after measuring may change sizes and prices.',
  ),
  line('shipTo', 'ship to', 'where suppliers send goods; blank is the address above'),
  line('rodsFrom', 'rods and tracks from', 'the supplier named on the list of hardware'),
  line('fittingsFrom', 'rings and fittings from', ''),
  line('labelsAcross', 'labels across a sheet', '', 3),
  line('labelsDown', 'labels down a sheet', '', 10, 8),
  line('labelWidth', 'label width', 'with its unit, like 2 5/8 in or 70 mm', '2 5/8 in', '70 mm'),
  line('labelHeight', 'label height', '', '1 in', '37 mm'),
  line('labelLeft', 'left edge to first label', '', '3/16 in', '0 mm'),
  line('labelTop', 'top edge to first label', '', '1/2 in', '1/2 mm'),
  line('labelGapAcross', 'between labels across', '', '1/8 in', '0 mm'),
  line('labelGapDown', 'between labels down', '', '0 in', '0 mm'),
] as const;

export type HouseKey = (typeof HOUSE_LINES)[number]['key'];

/** What is in force: the house's own words, else ours; nothing where there is nothing to print. */
export type HouseWords = Readonly<Partial<Record<HouseKey, Entry>>>;

const BY_LABEL = new Map<string, HouseKey>(HOUSE_LINES.map(({ key, label }) => [bare(label), key]));
/** Which line a label of the sheet is; undefined where it is none. */
export const houseKey = (label: string): HouseKey | undefined => BY_LABEL.get(bare(label));

export const standardOf = ({ standard, onA4 }: HouseLine, size: PaperSize): string | number =>
  size === 'a4' ? (onA4 ?? standard) : standard;

const asEntry = (value: string | number, at?: string): Entry => ({
  as: typeof value === 'number' ? 'count' : 'words',
  value,
  at,
});

/** The house's words from what it typed, by key; “none” prints nothing. */
export function houseWords(
  typed: ReadonlyMap<HouseKey, { readonly value: string | number; readonly at?: string }>,
  size: PaperSize,
): HouseWords {
  const words: Partial<Record<HouseKey, Entry>> = {};
  for (const line of HOUSE_LINES) {
    const own = typed.get(line.key);
    const { value, at } = own ?? { value: standardOf(line, size), at: undefined };
    if (value === '' || String(value).trim().toLowerCase() === 'none') continue;
    words[line.key] = asEntry(value, at);
  }
  return words;
}

/** The lines of these keys that there are. */
export const linesOf = (house: HouseWords, ...keys: readonly HouseKey[]): readonly Entry[] =>
  keys.flatMap((key) => house[key] ?? []);

/** The block at the head of every paper. */
export const letterheadOf = (house: HouseWords): readonly Entry[] =>
  linesOf(house, 'name', 'address1', 'address2', 'address3', 'telephone', 'email', 'registration');
