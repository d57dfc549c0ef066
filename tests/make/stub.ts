/** The catalogue as the TypeScript source Microsoft's metadata generator wants to read. */
import type { CellFunction, Parameter } from '../../functions/declare';
import { enumIds, type List } from '../../src/make/metadata';
import { HELP_PAGE } from '../../src/make/origin';

const RESERVED = /^(break|case|class|default|do|else|for|if|in|new|return|switch|this|while|with)$/;
/** A word TypeScript keeps for itself cannot be a parameter there. */
export const nameInSource = (name: string): string => (RESERVED.test(name) ? `${name}_` : name);

function typeOf({ kind, repeats }: Parameter, ids: ReadonlyMap<List, string>): string {
  const one = (kind.choices && ids.get(kind.choices)) ?? 'any';
  return one + (kind.shape === 'range' ? '[][]' : '') + (repeats ? '[]' : '');
}

function declared(cellFunction: CellFunction, ids: ReadonlyMap<List, string>): string {
  const words = cellFunction.parameters.map(({ name, says }) => ` * @param ${nameInSource(name)} ${says}`);
  const parameters = cellFunction.parameters.map(
    (one) => `${nameInSource(one.name)}${one.optional ? '?' : ''}: ${typeOf(one, ids)}`,
  );
  return [
    '/**',
    ` * ${cellFunction.says}`,
    ` * @customfunction ${cellFunction.name}`,
    ` * @helpurl ${HELP_PAGE}#${cellFunction.name}`,
    ...words,
    ' */',
    `export function ${cellFunction.name}(${parameters.join(', ')}): any${cellFunction.gives.shape === 'spill' ? '[][]' : ''} {`,
    '}',
  ].join('\n');
}

const listed = (list: List, id: string): string =>
  [
    '/** @customenum {string} */',
    `enum ${id} {`,
    ...list.map(({ word, says }) => `  /** ${says} */\n  ${JSON.stringify(word)} = ${JSON.stringify(word)},`),
    '}',
  ].join('\n');

export function stubOf(catalogue: readonly CellFunction[]): string {
  const ids = enumIds(catalogue);
  return [
    ...[...ids].map(([list, id]) => listed(list, id)),
    ...catalogue.map((cellFunction) => declared(cellFunction, ids)),
  ].join('\n\n');
}
