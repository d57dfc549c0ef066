/** What a kind reads, or the sentence it refuses with. */
import { Refusal } from '../../../src/core/cell/answer';
import type { CellIn, Kind } from '../../../src/core/cell/fields';
import { INCHES, type Unit } from '../../../src/core/exact/unit';

export function read(kind: Kind<unknown>, raw: CellIn, unit: Unit = INCHES): unknown {
  try {
    const value = kind.read(raw, { name: 'rod_width', unit });
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? String(value) : value;
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown.finding.sentence;
    throw thrown;
  }
}
