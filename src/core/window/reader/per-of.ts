/** For how much one figure of a column stands: said by its heading, or told by the figures. */
import type { OrderKey } from '../meanings';
import type { Evidence } from './evidence';
import type { Per } from './heading';
import { shareOf } from './means-of';
import type { MeaningKey } from './meanings';
import { EACH_SIDE } from './for-several';

export interface PerRead {
  readonly per: Per | undefined;
  /** Whether the figures tell it, not the heading. */
  readonly told: boolean;
}

interface Asked {
  readonly evidence: Evidence;
  /** As the heading says. */
  readonly said: Per | undefined;
  /** As the figures show. */
  readonly shown: Per | 'row' | undefined;
  /** Whether pieces are counted in a column of their own. */
  readonly inPieces: boolean;
  /** Whether a column of its own says what each price is by. */
  readonly byLine: boolean;
}

const SAID_NOT: PerRead = { per: undefined, told: false };
const said = (per: Per | undefined): PerRead => ({ per, told: false });
const ofRow = (shown: Per | 'row' | undefined): Per | undefined => (shown === 'row' ? undefined : shown);
const EACH = /\b(?:ea|each)\b/i;
/** A panel’s width, not a pair’s. */
const PANEL = /\b(?:panel|pnl|curtain|drop|side)\b(?!s)/i;

function perOfYardage({ said: by, shown }: Asked): PerRead {
  if (shown !== undefined) return { per: ofRow(shown), told: shown !== 'row' && by === undefined };
  return said(by === 'yard' ? undefined : by);
}

const PERS: Partial<Record<OrderKey, (asked: Asked) => PerRead>> = {
  yardage: perOfYardage,
  liningYardage: perOfYardage,
  widths({ evidence, said: by, shown, inPieces }) {
    if (by === 'panel' || by === 'pair') return said(by);
    // Of pieces counted in a column of their own, “each” is each piece.
    if (by === 'window' && inPieces) return said('panel');
    const byPanel = shown === 'panel' && shareOf(evidence.cells, (text) => EACH_SIDE.test(text)) < 0.5;
    return byPanel ? { per: 'panel', told: true } : SAID_NOT;
  },
  finishedWidth({ evidence, said: by, shown }) {
    // “Fin W ea” is each curtain’s, unless the figures make it the pair’s.
    if (by === 'window' && EACH.test(evidence.text)) return said(ofRow(shown) ?? 'panel');
    if (by !== undefined) return said(by);
    if (PANEL.test(evidence.text)) return said('panel');
    return { per: ofRow(shown), told: shown !== undefined };
  },
  unitPrice({ said: by, shown, byLine }) {
    // Where a column says it line by line, no one word holds for all.
    if (byLine) return SAID_NOT;
    const per = by === 'yard' ? undefined : (by ?? ofRow(shown));
    return { per, told: by === undefined && per !== undefined };
  },
};

export function perOf(
  key: OrderKey | undefined,
  evidence: Evidence,
  told: ReadonlyMap<MeaningKey, Per | 'row'>,
  has: (key: MeaningKey) => boolean,
): PerRead {
  if (key === undefined) return SAID_NOT;
  const asked = {
    evidence,
    said: evidence.heading.per,
    shown: told.get(key),
    inPieces: has('panels'),
    byLine: has('basis'),
  };
  return PERS[key]?.(asked) ?? SAID_NOT;
}
