import { describe, expect, it } from 'vitest';
import { CATALOGUE, functionNamed } from '../../functions';
import { readFormula } from '../../src/make/example';

describe.each(CATALOGUE.map((cellFunction) => [cellFunction.name, cellFunction] as const))(
  '%s',
  (_, cellFunction) => {
    for (const { formula, gives } of cellFunction.examples) {
      it(formula, () => {
        const { name, inputs } = readFormula(formula);
        expect(functionNamed(name)).toBe(cellFunction);
        const outcome = cellFunction.call(inputs);
        expect('error' in outcome ? outcome.finding.sentence : outcome.cells).toEqual(gives);
      });
    }

    it('says why in every example', () => {
      for (const { because } of cellFunction.examples) expect(because).toMatch(/\S[^\n]{8,}/);
    });
  },
);

describe('a formula of an example', () => {
  it('is read with its quotes, arrays and gaps', () => {
    expect(readFormula('HEM.DROP({98.25,98;-1,"a ""b"" c"},,"pinch", TRUE)')).toEqual({
      name: 'DROP',
      inputs: [
        [
          [98.25, 98],
          [-1, 'a "b" c'],
        ],
        null,
        'pinch',
        true,
      ],
    });
  });

  it('is refused where it holds anything else', () => {
    expect(() => readFormula('HEM.DROP(A1)')).toThrow();
    expect(() => readFormula('HEM.DROP(1')).toThrow();
    expect(() => readFormula('SUM(1)')).toThrow();
  });
});
