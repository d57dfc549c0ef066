import { describe, expect, it } from 'vitest';
import { fromUnit, NO_LENGTH } from '../../../src/core/exact/length';
import { CENTIMETRES, INCHES } from '../../../src/core/exact/unit';
import { NO_ROLL, type RollWritten } from '../../../src/core/rolls/received';
import { readSupply, type SupplyTyped } from '../../../src/pane/floor/supply';

const received = (...rolls: readonly Partial<RollWritten>[]): SupplyTyped => ({
  kind: 'received',
  ordered: '',
  received: rolls.map((one) => ({ ...NO_ROLL, ...one })),
});
const yards = (figure: number) => fromUnit(figure, 'yd');

describe('rolls as typed', () => {
  it('are read with their lots, stretches of flaws and points; an empty line is no roll', () => {
    const typed = received(
      { length: '58 1/2', lot: ' A ', flaws: '12-12 1/2; 30; 0 – 1' },
      {},
      { length: '61' },
    );
    expect(readSupply(typed, INCHES)).toEqual({
      received: [
        {
          length: yards(58.5),
          lot: 'A',
          flaws: [
            { from: yards(12), length: yards(0.5) },
            { from: yards(30), length: NO_LENGTH },
            { from: NO_LENGTH, length: yards(1) },
          ],
        },
        { length: yards(61), lot: undefined },
      ],
    });
  });

  it('are metres in a centimetre house', () => {
    const typed: SupplyTyped = { kind: 'ordered', ordered: '50', received: [] };
    expect(readSupply(typed, CENTIMETRES)).toEqual({ ordered: fromUnit(50, 'm') });
  });

  it.each([
    ['a length that is none', received({ length: 'long' }), 'roll 1, length reads “long”'],
    ['a flaw that is none', received({ length: '60', flaws: 'torn' }), 'roll 1, flaws reads “torn”'],
    ['a lot without a length', received({ length: '60' }, { lot: 'B' }), 'roll 2, length'],
    ['no roll at all', received({}), 'roll 1, length'],
  ])('%s is a sentence', (_, typed, sentence) => {
    expect(() => readSupply(typed, INCHES)).toThrow(sentence);
  });
});
