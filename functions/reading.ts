/** Reading written measures, showing figures, and the working behind an answer. */
import { parameter } from '../src/core/findings/parameters';
import {
  answer,
  noAnswer,
  Refusal,
  refuse,
  textFigure,
  numberFigure,
  step,
  type Finding,
} from '../src/core/cell/answer';
import {
  ANYTHING,
  choiceKind,
  optional,
  readBack,
  readField,
  required,
  TEXT,
  type CellIn,
  type CellOut,
  type Kind,
} from '../src/core/cell/fields';
import { WRITTEN } from '../src/core/cell/length-kinds';
import { toUnit, UNITS, type LengthUnit } from '../src/core/exact/length';
import { nearestRule, ruleLine, ruleValue, unitOf } from '../src/core/house/rules';
import { writeStep } from '../src/core/cell/steps';
import { choices } from '../src/core/cell/treatment';
import { digits, INCHES, tape, type Unit } from '../src/core/exact/unit';
import { cellFunction, type CellFunction, type Gives } from './declare';
import { NUMBER, spill, TEXT as TEXT_CELL } from './gives';

const LENGTH_UNITS = choices<LengthUnit>(
  { word: 'in', says: 'inches', also: ['inch', 'inches'] },
  { word: 'ft', says: 'feet', also: ['foot', 'feet'] },
  { word: 'yd', says: 'yards', also: ['yard'] },
  { word: 'mm', says: 'millimetres', also: ['millimetre', 'millimeter'] },
  { word: 'cm', says: 'centimetres', also: ['centimetre', 'centimeter'] },
  { word: 'm', says: 'metres', also: ['metre', 'meter'] },
);

export const MEASURED = cellFunction({
  name: 'MEASURED',
  chapter: 'Reading and showing',
  says: 'A written measurement as a number.',
  takes: {
    text: required(ANYTHING, 'the measurement as it was written'),
    unit: optional(
      choiceKind('a unit', LENGTH_UNITS),
      'of a bare figure and of the result: in (default), ft, yd, mm, cm or m',
    ),
  },
  withRules: false,
  gives: NUMBER,
  examples: [
    { formula: 'HEM.MEASURED("7\' 6 1/4""")', gives: 90.25, because: '7 × 12 + 6¼.' },
    { formula: 'HEM.MEASURED("84½")', gives: 84.5, because: 'A fraction sign reads as its fraction.' },
    {
      formula: 'HEM.MEASURED("2,29 m","cm")',
      gives: 229,
      because: 'A decimal comma, metres to centimetres.',
    },
  ],
  answer({ text, unit }) {
    const small = unit ?? 'in';
    const length = readField(required(WRITTEN, ''), text, { name: 'text', unit: { ...INCHES, small } });
    return answer(toUnit(length, small), [
      step(
        'reads',
        '{}',
        [textFigure(readBack(text))],
        textFigure(`${digits(toUnit(length, small))} ${small}`),
      ),
    ]);
  },
});

const DENOMINATORS = choices(
  { word: '2', says: 'halves' },
  { word: '4', says: 'quarters' },
  { word: '8', says: 'eighths' },
  { word: '16', says: 'sixteenths' },
  { word: '32', says: '32nds' },
  { word: '64', says: '64ths' },
);

export const TAPE = cellFunction({
  name: 'TAPE',
  chapter: 'Reading and showing',
  says: 'A number as a tape reads it: 84 1/2; in a centimetre house to the millimetre.',
  takes: {
    length: required(WRITTEN, 'the length'),
    denominator: optional(
      choiceKind('a denominator', DENOMINATORS),
      'the finest mark: 2, 4, 8, 16 (default), 32 or 64',
    ),
  },
  gives: TEXT_CELL,
  examples: [
    { formula: 'HEM.TAPE(84.5)', gives: '84 1/2', because: 'In lowest terms.' },
    { formula: 'HEM.TAPE(58.3)', gives: '58 5/16', because: 'To the nearest sixteenth.' },
    { formula: 'HEM.TAPE(58.3,4)', gives: '58 1/4', because: 'To the nearest quarter.' },
  ],
  answer({ length, denominator }, rules) {
    if (unitOf(rules) !== INCHES) return answer(`${digits(Math.round(length / UNITS.mm) / 10)} cm`);
    return answer(tape(length, Number(denominator ?? 16)));
  },
});

const RULE_VALUE: Gives<CellOut> = {
  noun: 'the value in force, in the house’s unit',
  shape: 'cell',
  write: (value) => value,
};

export const HOUSERULE = cellFunction({
  name: 'HOUSERULE',
  chapter: 'Reading and showing',
  says: 'The value in force of a house rule.',
  takes: { name: required(TEXT, 'the rule’s name, as the rules sheet has it') },
  gives: RULE_VALUE,
  examples: [
    { formula: 'HEM.HOUSERULE("return")', gives: 3.5, because: 'Common practice.' },
    {
      formula: 'HEM.HOUSERULE("side hem",{"side hem",2})',
      gives: 2,
      because: 'The rules range overrides the default.',
    },
    { formula: 'HEM.HOUSERULE("widths rounding")', gives: 'whole per pair', because: 'A choice is a word.' },
  ],
  answer({ name }, rules, house) {
    const line = ruleLine(name);
    if (line === undefined) return refuse('noSuchRule', 'name', readBack(name), nearestRule(name));
    const value = ruleValue(rules, line);
    if (value === undefined) return noAnswer('priceNotSet', 'name', line.name);
    const shown = line.kind.write?.(value, unitOf(rules)) ?? String(value);
    const from = house.set.has(line.name) ? 'set in the house rules' : `default: ${line.source}`;
    return answer(shown, [
      step(
        line.name,
        '{}',
        [textFigure(from)],
        typeof shown === 'number' ? numberFigure(shown) : textFigure(String(shown)),
      ),
    ]);
  },
});

const ARGUMENTS: Kind<readonly CellIn[]> = {
  quantity: 'table',
  noun: 'arguments',
  shape: 'range',
  read: (raw) => (Array.isArray(raw) ? (raw as CellIn[]) : [raw]),
};

const findingLine = ({ weight, sentence }: Finding): string => `${weight}: ${sentence}`;

/** The steps and findings of any other function; the catalogue is handed in, since it holds this one too. */
export const working = (
  find: (name: string) => CellFunction | undefined,
  names: () => string,
): CellFunction =>
  cellFunction({
    name: 'WORKING',
    chapter: 'Reading and showing',
    says: 'Spills the steps of a function’s answer, then its findings.',
    takes: {
      functionName: required(TEXT, 'the function, like "YARDAGE"'),
      arguments: optional(ARGUMENTS, 'its arguments, in its own order'),
    },
    withRules: false,
    repeats: true,
    gives: spill<readonly string[]>('a line a step', ['working'], (lines) => lines.map((line) => [line])),
    examples: [
      {
        formula: 'HEM.WORKING("RODWIDTH",72)',
        gives: [
          [
            'over the glass when drawn back (pinch, pair, unlined): 15.51 in stack − 11 in extension = 4.51 in',
          ],
          ['rod width: 72 in inside width + 11 in left + 11 in right = 94 in'],
        ],
        because: 'The steps a person can check with a pencil.',
      },
      {
        formula: 'HEM.WORKING("CUTLENGTH",68,"pinch",24)',
        gives: [
          ['cut length: 68 in drop + 8 in top + 8 in bottom = 84 in'],
          ['cut length with repeat: 84 in up to whole repeats of 24 in = 96 in'],
          ['repeats in a cut: 4'],
        ],
        because: 'The repeat is its own step.',
      },
    ],
    answer({ functionName, arguments: given }) {
      const cellFunction = find(functionName);
      if (cellFunction === undefined || cellFunction.name === 'WORKING')
        return refuse('noSuchFunction', parameter('functionName'), readBack(functionName), names());
      const outcome = cellFunction.call(given ?? []);
      if ('error' in outcome) throw new Refusal(outcome.finding, outcome.error);
      const unit: Unit = outcome.unit;
      const lines = [
        ...outcome.steps.map((one) => writeStep(one, unit)),
        ...outcome.findings.map(findingLine),
      ];
      return answer(lines.length === 0 ? ['no further steps'] : lines);
    },
  });
