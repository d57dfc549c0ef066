/** The slips that people make in order sheets, planted one to a line. */
import { BILLS } from './slips/bills';
import { CLOTHS } from './slips/cloths';
import { MEASURES } from './slips/measures';
import type { Mistake } from './slips/slip';

export const MISTAKES: readonly Mistake[] = [...MEASURES, ...CLOTHS, ...BILLS];
