/**
 * One shape for a function, one way to call it. A declaration is everything there is to know about
 * a cell function: Excel's metadata, the trial workbook, the command, the help and the tests read it.
 */
import { finding, Refusal, type Answer, type Finding, type Step } from '../src/core/cell/answer';
import {
  isBlank,
  readField,
  type CellIn,
  type CellOut,
  type Field,
  type Kind,
} from '../src/core/cell/fields';
import { TooLarge } from '../src/core/exact/length';
import { functionsWord, namePlace } from '../src/core/findings/parameters';
import { readHouse, type House } from '../src/core/house/house';
import type { Rules } from '../src/core/house/rules';
import type { Unit } from '../src/core/exact/unit';

/** How an answer becomes cells: one value, or rows that spill. */
export interface Gives<V> {
  readonly noun: string;
  readonly shape: 'cell' | 'spill';
  /** The columns of a spill, in order. */
  readonly columns?: readonly string[];
  write(value: V, unit: Unit): CellOut | readonly (readonly CellOut[])[];
}

export interface Example {
  /** As it is typed after the equals sign. */
  readonly formula: string;
  readonly gives: CellOut | readonly (readonly CellOut[])[];
  readonly because: string;
}

export type Chapter =
  | 'Measure'
  | 'Cloth'
  | 'Heading and hardware'
  | 'Money'
  | 'Rolls'
  | 'Whole rows and checking'
  | 'Reading and showing';

type Takes = Readonly<Record<string, Field<unknown>>>;
type Given<T extends Takes> = { readonly [K in keyof T]: T[K] extends Field<infer V> ? V : never };

interface Declaration<T extends Takes, J extends Takes, V> {
  readonly name: string;
  readonly chapter: Chapter;
  /** One sentence: what it gives. */
  readonly says: string;
  /** In the order they are typed. `rules` is added where `withRules` says so, before `last`. */
  readonly takes: T;
  readonly withRules?: boolean;
  /** Optional parameters that joined later stand after `rules`. */
  readonly joined?: J;
  /** The last parameter may be repeated. */
  readonly repeats?: boolean;
  readonly gives: Gives<V>;
  readonly examples: readonly [Example, Example, ...Example[]];
  answer(given: Given<T> & Given<J>, rules: Rules, house: House): Answer<V>;
}

export interface Parameter {
  /** As Excel shows it: opening_width. */
  readonly name: string;
  readonly says: string;
  readonly optional: boolean;
  readonly repeats: boolean;
  readonly kind: Kind<unknown>;
}

export type Outcome =
  | {
      readonly cells: CellOut | readonly (readonly CellOut[])[];
      readonly steps: readonly Step[];
      readonly findings: readonly Finding[];
      readonly unit: Unit;
    }
  | { readonly error: '#VALUE!' | '#N/A'; readonly finding: Finding };

/** A declared function, without its types: what the rooms that serve it see. */
export interface CellFunction {
  readonly name: string;
  readonly chapter: Chapter;
  readonly says: string;
  readonly parameters: readonly Parameter[];
  readonly gives: Gives<unknown>;
  readonly examples: readonly Example[];
  /** Never throws for bad input: an outcome carries a value or one sentence. */
  call(inputs: readonly CellIn[]): Outcome;
}

const RULES_KIND: Kind<unknown> = {
  quantity: 'table',
  noun: 'a range of two columns: rule, value',
  shape: 'range',
  read: (raw) => raw,
};
const RULES_PARAMETER: Parameter = {
  name: 'rules',
  kind: RULES_KIND,
  optional: true,
  repeats: false,
  says: 'the house rules: a range of two or more columns, rule and value; blank takes the defaults',
};

export function cellFunction<const T extends Takes, V, const J extends Takes = Record<never, never>>(
  declaration: Declaration<T, J, V>,
): CellFunction {
  const withRules = declaration.withRules ?? true;
  const fields = [...Object.entries(declaration.takes), ...Object.entries(declaration.joined ?? {})];
  const rulesAt = withRules ? Object.keys(declaration.takes).length : -1;
  const named = fields.map(([key, field]) => ({ key, field, name: functionsWord(key) }));
  const parameters = named.map(({ name, field }, at): Parameter => ({
    name,
    says: field.says,
    optional: field.optional,
    kind: field.kind,
    repeats: declaration.repeats === true && at === named.length - 1,
  }));
  if (withRules) parameters.splice(rulesAt, 0, RULES_PARAMETER);
  const most = declaration.repeats === true ? Infinity : parameters.length;

  function work(inputs: readonly CellIn[]): Outcome {
    if (inputs.length > most && !inputs.slice(most).every(isBlank)) {
      return {
        error: '#VALUE!',
        finding: finding('tooManyInputs', declaration.name, declaration.name, most, inputs.length),
      };
    }
    const house = readHouse(withRules ? inputs[rulesAt] : undefined);
    const given: Record<string, unknown> = {};
    for (const [at, { key, field }] of named.entries()) {
      const from = withRules && at >= rulesAt ? at + 1 : at;
      const raw = declaration.repeats === true && at === named.length - 1 ? inputs.slice(from) : inputs[from];
      given[key] = readField(field, raw, { name: namePlace(key), unit: house.unit });
    }
    const done = declaration.answer(given as Given<T> & Given<J>, house.rules, house);
    const { value, findings } = done;
    return {
      cells: declaration.gives.write(value, house.unit),
      // Written out only where they are asked for.
      get steps() {
        return done.steps;
      },
      findings: house.findings.length === 0 ? findings : [...house.findings, ...findings],
      unit: house.unit,
    };
  }

  return {
    name: declaration.name,
    chapter: declaration.chapter,
    says: declaration.says,
    parameters,
    gives: declaration.gives as Gives<unknown>,
    examples: declaration.examples,
    call(inputs) {
      try {
        return work(inputs);
      } catch (thrown) {
        if (thrown instanceof Refusal) return { error: thrown.error, finding: thrown.finding };
        if (thrown instanceof TooLarge)
          return { error: '#VALUE!', finding: finding('tooLarge', declaration.name, declaration.name) };
        throw thrown;
      }
    },
  };
}
