import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../functions';
import { Refusal } from '../../src/core/cell/answer';
import * as plainKinds from '../../src/core/cell/fields';
import * as figureKinds from '../../src/core/cell/figure-kinds';
import * as lengthKinds from '../../src/core/cell/length-kinds';
import type { CellIn, Kind } from '../../src/core/cell/fields';
import { UNITS, type LengthUnit } from '../../src/core/exact/length';
import { RULE_LINES } from '../../src/core/house/rules';
import { CENTIMETRES, INCHES, type Unit } from '../../src/core/exact/unit';
import { readWritten } from '../../src/core/exact/written';
import { readFormula } from '../../src/make/example';
import { ask, figure } from './ask';
import { sixtyFourths } from './given';

const HOUSES: readonly Unit[] = [INCHES, CENTIMETRES];
const isKind = (value: unknown): value is Kind<unknown> =>
  typeof value === 'object' && value !== null && 'read' in value && 'noun' in value;

/** A value of the kind's own, or undefined where it refuses this cell. */
function taken(kind: Kind<unknown>, raw: CellIn, unit: Unit): unknown {
  try {
    return kind.read(raw, { name: 'cell', unit });
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}

const cells: fc.Arbitrary<CellIn> = fc.oneof(
  fc.double({ min: -3000, max: 3000, noNaN: true }),
  fc.integer({ min: -10, max: 2000 }),
  sixtyFourths(0, 300),
  sixtyFourths(0, 300).map((figure) => `${Math.floor(figure)} ${Math.round((figure % 1) * 64)}/64`),
  fc.integer({ min: 0, max: 100_000 }).map((figure) => `${figure / 100} cm`),
  fc.integer({ min: 0, max: 1000 }).map((figure) => `${figure / 10} %`),
  fc.constantFrom('1/8', '-1/2', '0.1', '2.5', '12', '0', '48; 72; 96'),
);

describe('write(read(x)) = x', () => {
  const kinds = Object.entries({ ...plainKinds, ...figureKinds, ...lengthKinds } as Record<
    string,
    unknown
  >).filter((entry): entry is [string, Kind<unknown>] => isKind(entry[1]));

  it('has kinds to be tried on', () => {
    expect(kinds.map(([name]) => name)).toEqual(
      expect.arrayContaining(['SIZE', 'FULLNESS', 'RATE', 'COUNT', 'MONEY']),
    );
  });

  it.each(kinds.filter(([, kind]) => kind.write !== undefined))(
    'for %s: what is read is read again from what is written',
    (_, kind) => {
      fc.assert(
        fc.property(cells, fc.constantFrom(...HOUSES), (raw, unit) => {
          const value = taken(kind, raw, unit);
          if (value === undefined) return;
          const out = kind.write?.(value, unit);
          const again = kind.read(out, { name: 'cell', unit });
          expect(kind.write?.(again, unit)).toEqual(out);
          expect(String(again)).toBe(String(value));
        }),
        { numRuns: 800 },
      );
    },
  );

  it('for every house rule at its default, in both units', () => {
    for (const unit of HOUSES) {
      for (const line of RULE_LINES) {
        const value = line.standard(unit);
        if (value === undefined || line.name === 'unit') continue;
        const out = line.kind.write?.(value, unit);
        expect(out, line.name).toBeDefined();
        expect(String(line.kind.read(out, { name: line.name, unit })), line.name).toBe(String(value));
      }
    }
  });

  it('for every choice of every parameter, in any case, with hyphens or a plural’s s', () => {
    for (const { parameters } of CATALOGUE) {
      for (const { kind } of parameters) {
        for (const { word, also = [] } of kind.choices ?? []) {
          for (const text of [word, word.toUpperCase(), ` ${word} `, word.replace(/ /g, '-'), ...also]) {
            expect(kind.read(text, { name: 'cell', unit: INCHES })).toBe(word);
          }
        }
      }
    }
  });
});

/** Every way a workroom writes so many 64ths of an inch. */
const FRACTION_SIGNS: Record<number, string> = {
  8: '⅛',
  16: '¼',
  24: '⅜',
  32: '½',
  40: '⅝',
  48: '¾',
  56: '⅞',
};

function forms(whole64ths: number): readonly string[] {
  const whole = Math.floor(whole64ths / 64);
  const over = whole64ths % 64;
  const [feet, inches] = [Math.floor(whole / 12), whole % 12];
  const part = over === 0 ? '' : ` ${over}/64`;
  const dashed = over === 0 ? '' : `-${over}/64`;
  const decimal = whole64ths / 64;
  const list = [
    `${whole}${part}"`,
    `${whole}${part} in`,
    `${whole}${part} in.`,
    `${whole}${part} inches`,
    `${whole}${part}”`,
    `${whole}${part}″`,
    `${whole}${part}''`,
    `${whole}${dashed}"`,
    `${decimal} in`,
    `${decimal}"`,
    `${feet}' ${inches}${part}"`,
    `${feet}’ ${inches}${part}”`,
    `${feet}′${inches}${part}″`,
    `${feet} ft ${inches}${part} in`,
    `${feet}ft ${inches}${part}in`,
    `${feet} feet ${inches}${part} inches`,
    `${feet}' ${inches}${part}`,
    `${feet}'-${inches}${part}"`,
    `${((whole64ths * 396_875) / 1e6).toFixed(6)} mm`,
    `${((whole64ths * 396_875) / 1e7).toFixed(7)} cm`,
    `${((whole64ths * 396_875) / 1e9).toFixed(9)} m`,
    `${((whole64ths * 396_875) / 1e7).toFixed(7).replace('.', ',')} cm`,
  ];
  const sign = FRACTION_SIGNS[over];
  if (sign !== undefined) list.push(`${whole}${sign}"`, `${whole} ${sign} in`, `${feet}' ${inches}${sign}"`);
  if (whole === 0 && over > 0) list.push(`${over}/64"`, `${over}/64 in`);
  return list;
}

describe('a written measure', () => {
  it('reads the same in every form it is written', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1900 * 64 }),
        fc.constantFrom<LengthUnit>('in', 'cm'),
        (figure, unit) => {
          for (const text of forms(figure))
            expect({ text, ...readWritten(text, unit) }).toEqual({ text, length: figure * 396_875 });
        },
      ),
      { numRuns: 600 },
    );
  });

  it('reads a bare figure in the unit it stands in', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 10_000_000 }),
        fc.constantFrom<LengthUnit>('in', 'cm', 'mm', 'm', 'yd'),
        (thousandths, unit) => {
          const length = (thousandths * UNITS[unit]) / 1000;
          expect(readWritten((thousandths / 1000).toFixed(3), unit)).toEqual({ length });
          expect(readWritten(String(thousandths / 1000), unit)).toEqual({ length });
        },
      ),
    );
  });

  const scraps = fc.constantFrom(
    ...'0 1 2 7 12 84 1000 . , / - + \' " ½ ¼ ⅛ ⁄ ′ ″ ’ ” in ft yd mm cm m inches x % e5 ( ) NaN Infinity -0 1/0 0/0 1,234 1.234,5 9999999999999999'.split(
      ' ',
    ),
    ' ',
    '  ',
    '\t',
    '\u00a0',
  );
  const text = fc.oneof(
    fc.array(scraps, { maxLength: 9 }).map((list) => list.join('')),
    fc.string({ unit: 'grapheme', maxLength: 20 }),
  );

  it('of any scraps at all is a whole number of nanometres, a doubt with two readings, or unreadable', () => {
    fc.assert(
      fc.property(text, fc.constantFrom<LengthUnit>('in', 'cm', 'yd', 'm'), (written, unit) => {
        const reading = readWritten(written, unit);
        if ('length' in reading) expect(Number.isSafeInteger(reading.length)).toBe(true);
        else if ('doubt' in reading) {
          const [one, other] = reading.doubt;
          expect(one).not.toBe(other);
          expect(`${one}${other}`).not.toMatch(/NaN|undefined|Infinity/);
        } else expect(reading).toEqual({ unreadable: true });
      }),
      { numRuns: 6000 },
    );
  });

  it('of any scraps gives a figure or one sentence in a cell, never NaN and never a plain throw', () => {
    fc.assert(
      fc.property(text, (written) => {
        for (const outcome of [
          ask('MEASURED', written),
          ask('RODWIDTH', written),
          ask('FULLNESS', 100, written, 'pinch', 54),
          ask('DROP', written, written),
        ]) {
          if ('error' in outcome) expect(outcome.finding.sentence).toMatch(/^\S.*[.?!]$/s);
          else expect(Number.isFinite(outcome.cells)).toBe(true);
        }
      }),
      { numRuns: 3000 },
    );
  });
});

describe('TAPE and MEASURED', () => {
  it('undo each other to the 64th, above and below nothing', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1900 * 64, max: 1900 * 64 }), (parts) => {
        const shown = ask('TAPE', parts / 64, 64);
        expect('cells' in shown && figure('MEASURED', shown.cells)).toBe(parts / 64);
      }),
      { numRuns: 2000 },
    );
  });

  it('stand within half a mark of each other at every denominator', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1900, noNaN: true }),
        fc.constantFrom(2, 4, 8, 16, 32, 64),
        (sixtyFourths, parts) => {
          const shown = ask('TAPE', sixtyFourths, parts);
          const back = 'cells' in shown ? figure('MEASURED', shown.cells) : undefined;
          expect(Math.abs((back ?? NaN) - sixtyFourths)).toBeLessThanOrEqual(0.5 / parts + 1e-7);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe('a blank cell', () => {
  const BLANKS: readonly CellIn[] = [undefined, null, '', '   ', [[null]], [['']]];
  const swept = CATALOGUE.flatMap((cellFunction) =>
    cellFunction.examples.flatMap(({ formula }) =>
      cellFunction.parameters.map((parameter, at) => ({ cellFunction, formula, parameter, at })),
    ),
  ).filter(({ parameter }) => !parameter.repeats);

  const outcomeWith = ({ cellFunction, formula, at }: (typeof swept)[number], cell: CellIn): unknown => {
    const inputs = [...readFormula(formula).inputs];
    while (inputs.length <= at) inputs.push(null);
    inputs[at] = cell;
    const outcome = cellFunction.call(inputs);
    return 'error' in outcome ? outcome.finding : outcome.cells;
  };

  it('is the same whether it comes as nothing, null, an empty text or spaces', () => {
    for (const one of swept) {
      const wanted = outcomeWith(one, undefined);
      for (const blank of BLANKS)
        expect(outcomeWith(one, blank), `${one.cellFunction.name} ${one.parameter.name}`).toEqual(wanted);
    }
  });

  /** No figure, and no windows: 0 says neither. */
  const REFUSED: ReadonlySet<string> = new Set(['tooSmall', 'noWindowGiven']);

  it('is the same as 0 wherever 0 makes no sense, but for a quantity, which is asked for', () => {
    let same = 0;
    for (const one of swept) {
      const { kind, optional } = one.parameter;
      if (kind.shape !== 'cell' || !optional || taken(kind, 0, INCHES) !== undefined) continue;
      const zero = outcomeWith(one, 0);
      if (typeof zero === 'object' && zero !== null && 'code' in zero && REFUSED.has(String(zero.code)))
        continue;
      expect(zero, `${one.cellFunction.name} ${one.parameter.name}`).toEqual(outcomeWith(one, null));
      same++;
    }
    expect(same).toBeGreaterThan(80);
  });

  it('is asked for where it is required, and 0 with it', () => {
    for (const one of swept.filter(
      ({ parameter }) => !parameter.optional && parameter.kind.shape === 'cell',
    )) {
      expect(outcomeWith(one, null)).toMatchObject({ code: 'missing' });
      const zero = outcomeWith(one, 0);
      if (taken(one.parameter.kind, 0, INCHES) === undefined) expect(zero).toHaveProperty('code');
    }
  });
});
