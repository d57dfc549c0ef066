/**
 * The one table of findings: how heavy each is and how it is said.
 * A sentence names the input in the sheet's word, shows what was read, and says what to do.
 */
import { AUDIT_FINDINGS } from './audit';
import { CELL_FINDINGS } from './cell';
import { CLOTH_FINDINGS } from './cloth';
import { HEADING_FINDINGS } from './heading';
import { MEASURE_FINDINGS } from './measure';
import { PRICE_FINDINGS } from './price';
import { READING_FINDINGS } from './reading';
import { ROLL_FINDINGS } from './rolls';

export const FINDINGS = {
  ...CELL_FINDINGS,
  ...MEASURE_FINDINGS,
  ...CLOTH_FINDINGS,
  ...HEADING_FINDINGS,
  ...PRICE_FINDINGS,
  ...ROLL_FINDINGS,
  ...AUDIT_FINDINGS,
  ...READING_FINDINGS,
};

export type FindingCode = keyof typeof FINDINGS;
