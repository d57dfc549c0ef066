/** What a cloth's row says for its order, of face fabrics and of linings alike. */
import { atLeast, type ColumnDraft, type Job } from './draft';

/** What no table of windows has: its headings before their unit, by which papers read them too. */
export const FABRIC_HEADINGS = {
  mayBeTurned: 'may be turned',
  content: 'content',
  reserve: 'reserve number',
  neededBy: 'needed by',
  toOrder: 'to order',
  wholeRoll: 'whole roll',
} as const;

/** `name`: of the column of certificates, where formulas ask for it. */
export const forTheOrder = (name?: string): readonly ColumnDraft[] => [
  {
    key: 'certificate',
    heading: 'flame certificate',
    role: 'input',
    wide: 18,
    ...(name !== undefined && { name }),
  },
  { key: 'colour', heading: 'colour', role: 'input', note: 'as its supplier names it' },
  {
    key: 'content',
    heading: FABRIC_HEADINGS.content,
    role: 'input',
    note: 'the fibres, as its supplier states them',
  },
  { key: 'reserve', heading: FABRIC_HEADINGS.reserve, role: 'input' },
  { key: 'neededBy', heading: FABRIC_HEADINGS.neededBy, role: 'input', format: 'yyyy-mm-dd' },
];

export const wholeRoll = ({ unit: { large } }: Job): ColumnDraft => ({
  key: 'roll',
  heading: `${FABRIC_HEADINGS.wholeRoll} (${large})`,
  role: 'input',
  note: 'how long a whole roll is: its order and its cutting are planned by it',
  choice: atLeast(0, `A roll’s length in ${large}, or blank.`),
});
