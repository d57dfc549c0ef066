/** Excel's metadata of the functions, from the catalogue. */
import type { CellFunction, Parameter } from '../../functions/declare';
import type { Choice } from '../core/cell/treatment';
import { HELP_PAGE } from './origin';

interface ParameterMetadata {
  readonly name: string;
  readonly description: string;
  readonly type: 'any' | 'string';
  readonly dimensionality?: 'matrix';
  readonly optional?: true;
  readonly repeating?: true;
  readonly customEnumId?: string;
}

interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly helpUrl: string;
  readonly parameters: readonly ParameterMetadata[];
  readonly result: { readonly dimensionality?: 'matrix' };
}

interface EnumMetadata {
  readonly id: string;
  readonly type: 'string';
  readonly values: readonly {
    readonly name: string;
    readonly stringValue: string;
    readonly tooltip: string;
  }[];
}

export interface Metadata {
  /** Formatted numbers come as objects, as Microsoft's generator asks for; the core reads their value. */
  readonly allowCustomDataForDataTypeAny: true;
  /** An error cell reaches the function, which then says which input shows it. */
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly FunctionMetadata[];
  readonly enums: readonly EnumMetadata[];
}

export type List = readonly Choice<string>[];

const pascal = (name: string): string =>
  name.replace(/(^|_)([a-z])/g, (_, __, letter: string) => letter.toUpperCase());

/**
 * One enum for every list of choices: named as its parameter; where two lists share
 * a parameter's name, each also bears the name of the first function that takes it.
 */
export function enumIds(catalogue: readonly CellFunction[]): ReadonlyMap<List, string> {
  const first = new Map<List, { readonly cellFunction: CellFunction; readonly name: string }>();
  for (const cellFunction of catalogue) {
    for (const { kind, name } of cellFunction.parameters) {
      if (kind.choices !== undefined && !first.has(kind.choices))
        first.set(kind.choices, { cellFunction, name });
    }
  }
  const names = [...first.values()].map(({ name }) => name);
  const shared = (name: string): boolean => names.filter((one) => one === name).length > 1;
  return new Map(
    [...first].map(([list, { cellFunction, name }]) => [
      list,
      (shared(name) ? pascal(cellFunction.name.toLowerCase()) : '') + pascal(name),
    ]),
  );
}

function parameterMetadata(parameter: Parameter, ids: ReadonlyMap<List, string>): ParameterMetadata {
  const id = parameter.kind.choices && ids.get(parameter.kind.choices);
  return {
    name: parameter.name,
    description: parameter.says,
    // `any` lets 84 1/2 through as it was typed; a list of choices must be text.
    type: id === undefined ? 'any' : 'string',
    ...(parameter.kind.shape === 'range' && { dimensionality: 'matrix' }),
    ...(parameter.optional && { optional: true }),
    ...(parameter.repeats && { repeating: true }),
    ...(id !== undefined && { customEnumId: id }),
  };
}

export function metadata(catalogue: readonly CellFunction[]): Metadata {
  const ids = enumIds(catalogue);
  return {
    allowCustomDataForDataTypeAny: true,
    allowErrorForDataTypeAny: true,
    functions: catalogue.map((cellFunction) => ({
      id: cellFunction.name,
      name: cellFunction.name,
      description: cellFunction.says,
      helpUrl: `${HELP_PAGE}#${cellFunction.name}`,
      parameters: cellFunction.parameters.map((one) => parameterMetadata(one, ids)),
      result: cellFunction.gives.shape === 'spill' ? { dimensionality: 'matrix' } : {},
    })),
    enums: [...ids].map(([list, id]) => ({
      id,
      type: 'string',
      values: list.map(({ word, says }) => ({ name: word, stringValue: word, tooltip: says })),
    })),
  };
}
