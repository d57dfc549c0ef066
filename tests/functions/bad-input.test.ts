import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../functions';
import type { CellFunction, Outcome, Parameter } from '../../functions/declare';
import type { CellIn } from '../../src/core/cell/fields';
import { readFormula } from '../../src/make/example';

/** What a cell may hold where something else was meant. */
const BAD: readonly (readonly [string, CellIn])[] = [
  ['left out', undefined],
  ['null', null],
  ['an empty text', ''],
  ['spaces', '   '],
  [
    'a blank range',
    [
      [null, ''],
      ['', null],
    ],
  ],
  ['a range without cells', [[]]],
  ['text', 'as the client likes'],
  ['text with a figure in it', '84 about'],
  ['a percentage', '250 %'],
  ['text that reads two ways', '1,234'],
  ['TRUE', true],
  ['zero', 0],
  ['zero as text', '0'],
  ['a negative figure', -12.5],
  ['a negative text', '-12 1/2'],
  ['a tiny figure', 1e-9],
  ['a part', 2.345678901],
  ['an absurdly large figure', 1e12],
  ['the largest figure', Number.MAX_VALUE],
  ['not a number', NaN],
  ['infinity', Infinity],
  ['a figure of many digits', '9'.repeat(400)],
  ['a long text', 'x'.repeat(5000)],
  ['an object', { odd: true }],
  [
    'a range of figures',
    [
      [1, 2],
      [3, 4],
    ],
  ],
  [
    'a range of texts',
    [
      ['rule', 'value'],
      ['no such rule', 'yes'],
    ],
  ],
  ['a ragged range', [[1], [2, 3], []]],
];
const ERRORS: readonly (readonly [string, CellIn])[] = [
  ['#DIV/0!', '#DIV/0!'],
  ['#N/A', '#N/A'],
  ['#REF!', { type: 'Error', basicType: 'Error', basicValue: '#REF!' }],
];

function cellsOf(outcome: Outcome): readonly unknown[] {
  if ('error' in outcome) return [];
  return typeof outcome.cells === 'object' ? outcome.cells.flat() : [outcome.cells];
}

/** The sentence names the input: as Excel shows it, in words, or a house rule by its name. */
function names(sentence: string, cellFunction: CellFunction, parameter: Parameter): boolean {
  const words = parameter.name.replace(/_/g, ' ');
  // What WORKING passes on is named by the function it is passed to.
  if (parameter.repeats) return true;
  return (
    sentence.includes(parameter.name) ||
    sentence.toLowerCase().includes(words) ||
    (parameter.name === 'rules' && sentence.includes('house rule')) ||
    sentence.includes(`given to ${cellFunction.name}`)
  );
}

const sound = (cell: unknown): boolean =>
  typeof cell === 'number'
    ? Number.isFinite(cell)
    : typeof cell === 'boolean' ||
      (typeof cell === 'string' && !/\bNaN\b|undefined|\bnull\b|\[object|Infinity/.test(cell));

/** Every example's inputs with one of them replaced: the sweep stands on sound neighbours. */
function* swept(cellFunction: CellFunction, at: number, bad: CellIn): Generator<readonly CellIn[]> {
  for (const { formula } of cellFunction.examples) {
    const inputs = [...readFormula(formula).inputs];
    while (inputs.length < at) inputs.push(null);
    inputs[at] = bad;
    yield inputs;
  }
}

/** A range once for each of its cells, with that cell replaced. */
const placed = (range: readonly (readonly CellIn[])[], bad: CellIn): CellIn[][][] =>
  range.flatMap((row, i) =>
    row.map((_, j) => range.map((other, k) => other.map((cell, l) => (k === i && l === j ? bad : cell)))),
  );

const PARAMETERS = CATALOGUE.flatMap((cellFunction) =>
  cellFunction.parameters.map(
    (parameter, at) => [`${cellFunction.name} ${parameter.name}`, cellFunction, parameter, at] as const,
  ),
);

describe.each(PARAMETERS)('%s', (_, cellFunction, parameter, at) => {
  it('gives a sound value or one sentence that names it, whatever it reads', () => {
    for (const [what, bad] of BAD) {
      for (const inputs of swept(cellFunction, at, bad)) {
        const outcome = cellFunction.call(inputs);
        if ('error' in outcome) {
          const { sentence } = outcome.finding;
          expect(sentence, what).toMatch(/^\S.*[.?!]$/);
          // #N/A says that sound inputs have no answer, which may be about more than one of them.
          if (outcome.error === '#VALUE!')
            expect(names(sentence, cellFunction, parameter), `${what}: ${sentence}`).toBe(true);
          expect(sentence.length, `${what}: ${sentence}`).toBeLessThan(500);
        } else {
          expect(
            cellsOf(outcome).filter((cell) => !sound(cell)),
            what,
          ).toEqual([]);
        }
      }
    }
  });

  it('never lets an error cell pass for a value', () => {
    for (const [what, bad] of ERRORS) {
      for (const inputs of swept(cellFunction, at, bad)) {
        const outcome = cellFunction.call(inputs);
        expect('error' in outcome, `${what} was passed over`).toBe(true);
        if (!('error' in outcome)) continue;
        expect(outcome.finding.sentence, what).toContain(what);
        expect(names(outcome.finding.sentence, cellFunction, parameter), outcome.finding.sentence).toBe(true);
      }
    }
  });

  // A heading that shows an error is one more column that is not known.
  if (parameter.kind.shape === 'range' && !parameter.repeats && parameter.name !== 'headers')
    it('shows an error that stands inside its range', () => {
      for (const [what, bad] of ERRORS) {
        for (const { formula } of cellFunction.examples) {
          const { inputs } = readFormula(formula);
          const range = inputs[at];
          if (!Array.isArray(range)) continue;
          const said = placed(range as CellIn[][], bad).map((rows) => {
            const outcome = cellFunction.call(inputs.map((input, i) => (i === at ? rows : input)));
            return 'error' in outcome ? outcome.finding.sentence : JSON.stringify(outcome);
          });
          expect(said.join('\n')).toContain(what);
        }
      }
    });

  if (parameter.kind.shape === 'cell' && !parameter.repeats)
    it('refuses a range', () => {
      for (const inputs of swept(cellFunction, at, [
        [1, 2],
        [3, 4],
      ])) {
        const outcome = cellFunction.call(inputs);
        expect('error' in outcome && outcome.finding.sentence).toContain('2 rows × 2 columns');
      }
    });

  if (!parameter.optional)
    it('is asked for where it is blank', () => {
      for (const blank of [undefined, null, '', '  ']) {
        for (const inputs of swept(cellFunction, at, blank)) {
          const outcome = cellFunction.call(inputs);
          expect('error' in outcome && outcome.finding.sentence).toContain(parameter.name);
        }
      }
    });
});

describe('every function', () => {
  it.each(CATALOGUE.filter((cellFunction) => cellFunction.parameters[0]?.optional === false))(
    '$name asks for its first input when none is given',
    (cellFunction) => {
      const outcome = cellFunction.call([]);
      expect('error' in outcome && outcome.finding.code).toMatch(/^(missing|zeroMissing)$/);
    },
  );

  it.each(CATALOGUE.filter((cellFunction) => !cellFunction.parameters.some(({ repeats }) => repeats)))(
    '$name says how many inputs it takes when given more',
    (cellFunction) => {
      const many = Array.from({ length: cellFunction.parameters.length + 1 }, () => 1);
      const outcome = cellFunction.call(many);
      expect('error' in outcome && outcome.finding.code).toBe('tooManyInputs');
    },
  );
});
