/**
 * The one table of findings: how heavy each is and how it is said.
 * A sentence names the input in the sheet's word, shows what was read, and says what to do.
 */
import { AUDIT_FINDINGS } from './findings-audit';
import { CELL_FINDINGS } from './findings-cell';
import { CLOTH_FINDINGS } from './findings-cloth';
import { HEADING_FINDINGS } from './findings-heading';
import { MEASURE_FINDINGS } from './findings-measure';
import { PRICE_FINDINGS } from './findings-price';
import { ROLL_FINDINGS } from './findings-rolls';

export const FINDINGS = {
  ...CELL_FINDINGS,
  ...MEASURE_FINDINGS,
  ...CLOTH_FINDINGS,
  ...HEADING_FINDINGS,
  ...PRICE_FINDINGS,
  ...ROLL_FINDINGS,
  ...AUDIT_FINDINGS,
};

export type FindingCode = keyof typeof FINDINGS;
