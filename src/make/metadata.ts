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
  const first = new Map<List, { readonly of: CellFunction; readonly name: string }>();
  for (const of of catalogue) {
    for (const { kind, name } of of.parameters) {
      if (kind.choices !== undefined && !first.has(kind.choices)) first.set(kind.choices, { of, name });
    }
  }
  const names = [...first.values()].map(({ name }) => name);
  const shared = (name: string): boolean => names.filter((one) => one === name).length > 1;
  return new Map(
    [...first].map(([list, { of, name }]) => [
      list,
      (shared(name) ? pascal(of.name.toLowerCase()) : '') + pascal(name),
    ]),
  );
}

function parameterMetadata(of: Parameter, ids: ReadonlyMap<List, string>): ParameterMetadata {
  const id = of.kind.choices && ids.get(of.kind.choices);
  return {
    name: of.name,
    description: of.says,
    // `any` lets 84 1/2 through as it was typed; a list of choices must be text.
    type: id === undefined ? 'any' : 'string',
    ...(of.kind.shape === 'range' && { dimensionality: 'matrix' }),
    ...(of.optional && { optional: true }),
    ...(of.repeats && { repeating: true }),
    ...(id !== undefined && { customEnumId: id }),
  };
}

export function metadata(catalogue: readonly CellFunction[]): Metadata {
  const ids = enumIds(catalogue);
  return {
    allowCustomDataForDataTypeAny: true,
    allowErrorForDataTypeAny: true,
    functions: catalogue.map((of) => ({
      id: of.name,
      name: of.name,
      description: of.says,
      helpUrl: `${HELP_PAGE}#${of.name}`,
      parameters: of.parameters.map((one) => parameterMetadata(one, ids)),
      result: of.gives.shape === 'spill' ? { dimensionality: 'matrix' } : {},
    })),
    enums: [...ids].map(([list, id]) => ({
      id,
      type: 'string',
      values: list.map(({ word, says }) => ({ name: word, stringValue: word, tooltip: says })),
    })),
  };
}
