/** The user’s word for columns on the command line: --columns "K=vertical repeat; M=". */
import { columnOf } from '../book/address';
import type { OrderKey } from '../core/window/meanings';
import { keyNamed } from '../core/window/reader/meanings';
import type { Corrections } from '../core/window/reader/understand';
import { Problem, USAGE } from './problem';

function meaningsOf(text: string, part: string): readonly OrderKey[] {
  return text
    .split(/\+/)
    .map((word) => word.trim())
    .filter((word) => word !== '')
    .map((word) => {
      const key = keyNamed(word);
      if (key !== undefined) return key;
      throw new Problem(
        `--columns: “${part}” names “${word}”, which is no column of ours. Say it as a heading of ours, like vertical repeat.`,
        USAGE,
      );
    });
}

/** By column, from 0; an empty list says it is none of ours. */
export function readCorrections(text: string | undefined): Corrections | undefined {
  if (text === undefined) return undefined;
  const said = new Map<number, readonly OrderKey[]>();
  for (const part of text.split(';')) {
    if (part.trim() === '') continue;
    const [, column = '', means = ''] = /^\s*([A-Za-z]{1,3})\s*=(.*)$/.exec(part) ?? [];
    if (column === '')
      throw new Problem(`--columns: “${part.trim()}” is not written like K=vertical repeat.`, USAGE);
    said.set(columnOf(column), meaningsOf(means, part.trim()));
  }
  return said;
}
