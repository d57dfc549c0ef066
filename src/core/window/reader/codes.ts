/** Code numbers that a line above the table explains: “HD 1 taped  2 pinch  3 eyelet” over a column headed “HD”. */
import type { Cell, Row } from './cells';
import type { Header } from './header';
import { lettersOf } from './meanings';

/** By column, what each of its codes stands for. */
export type Codes = ReadonlyMap<number, ReadonlyMap<string, string>>;

/** “1 taped”, “2 = pinch”, “3) eyelet”. */
const CODE =
  /(?:^|[\s,;(])(\d{1,2})\s*[=:.)–-]?\s*([a-z][^\d]*?)(?=[\s,;]+\d{1,2}\s*[=:.)–-]?\s*[a-z]|[.;]?\s*$)/gi;
const LEAST_CODES = 2;
const LONGEST_WORDS = 24;

/** The words behind each number of a line, where it lists them from 0 or 1 on. */
function listed(
  line: string,
): { readonly subject: string; readonly words: ReadonlyMap<string, string> } | undefined {
  const found: RegExpExecArray[] = [];
  for (const code = new RegExp(CODE); ;) {
    const next = code.exec(line);
    if (next === null) break;
    found.push(next);
  }
  const [first] = found;
  const words = new Map(found.map(([, code = '', said = '']) => [code, said.trim().replace(/[,;.]$/, '')]));
  const inTurn = [...words.keys()].every(
    (code, at, all) => at === 0 || Number(code) === Number(all[at - 1]) + 1,
  );
  if (
    first === undefined ||
    words.size < LEAST_CODES ||
    Number(first[1]) > 1 ||
    !inTurn ||
    [...words.values()].some((said) => said.length > LONGEST_WORDS)
  )
    return undefined;
  return { subject: lettersOf(line.slice(0, first.index)), words };
}

/** What the lines above a table say of the codes in its columns. */
export function codesIn({ texts }: Header, above: readonly Row[]): Codes {
  const codes = new Map<number, ReadonlyMap<string, string>>();
  for (const cell of above.flat()) {
    const list = typeof cell === 'string' ? listed(cell) : undefined;
    if (list === undefined || list.subject === '') continue;
    texts.forEach((rows, at) => {
      if (rows.some((row) => lettersOf(row) === list.subject)) codes.set(at, list.words);
    });
  }
  return codes;
}

/** A row with its codes written out. */
export const spelledOut = (cells: Row, codes: Codes): Row =>
  codes.size === 0 ? cells : cells.map((cell: Cell, at) => codes.get(at)?.get(String(cell)) ?? cell);
