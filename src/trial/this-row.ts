/**
 * The engine knows Windows[[#This Row],[Rod width]], as files hold it, but not Windows[@[Rod width]],
 * as people type it. The cell keeps what was typed; the engine reads the longer form.
 */
import type { Univer } from '@univerjs/core';
import { Lexer } from '@univerjs/engine-formula';

/** Strings and quoted sheets are passed over. */
const THIS_ROW =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'!|\[@(\[(?:'.|[^\]'])*\](?::\[(?:'.|[^\]'])*\])?|(?:'.|[^\]'[])+)\]/g;

export const longForm = (formula: string): string =>
  formula.includes('[@')
    ? formula.replace(THIS_ROW, (whole, column: string | undefined) =>
        column === undefined ? whole : `[[#This Row],${column.startsWith('[') ? column : `[${column}]`}]`,
      )
    : formula;

export function readThisRow(univer: Univer): void {
  const lexer = univer.__getInjector().get(Lexer);
  const tree = lexer.treeBuilder.bind(lexer);
  lexer.treeBuilder = (text, suffix) => tree(longForm(text), suffix);
}
