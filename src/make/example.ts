/** Reads an example's formula: a function of ours with literals and {…} arrays, nothing nested. */
import type { CellIn } from '../core/cell/fields';

const LITERAL = /\s*(?:"((?:[^"]|"")*)"|(-?\d+(?:\.\d+)?(?:E-?\d+)?)|(TRUE|FALSE))\s*/iy;

export interface Typed {
  readonly name: string;
  readonly inputs: readonly CellIn[];
}

export function readFormula(formula: string): Typed {
  const head = /^HEM\.([A-Z]+)\(/.exec(formula);
  const name = head?.[1];
  if (head === null || name === undefined) throw new Error(`no formula of ours: ${formula}`);
  let at = head[0].length;

  function literal(): CellIn {
    LITERAL.lastIndex = at;
    const match = LITERAL.exec(formula);
    if (match === null) throw new Error(`no literal at ${at} in ${formula}`);
    at = LITERAL.lastIndex;
    const [, text, number, truth] = match;
    if (text !== undefined) return text.replace(/""/g, '"');
    return number === undefined ? truth?.toUpperCase() === 'TRUE' : Number(number);
  }

  function array(): CellIn[][] {
    const rows: CellIn[][] = [[]];
    do {
      at++;
      rows.at(-1)?.push(literal());
      if (formula[at] === ';') rows.push([]);
    } while (formula[at] === ',' || formula[at] === ';');
    if (formula[at++] !== '}') throw new Error(`an array is not closed in ${formula}`);
    return rows;
  }

  function argument(): CellIn {
    while (formula[at] === ' ') at++;
    if (formula[at] === ',' || formula[at] === ')') return null;
    return formula[at] === '{' ? array() : literal();
  }

  const inputs: CellIn[] = [];
  if (formula[at] !== ')') {
    inputs.push(argument());
    while (formula[at] === ',') {
      at++;
      inputs.push(argument());
    }
  }
  if (formula.slice(at) !== ')') throw new Error(`cannot read ${formula} from ${at}`);
  return { name, inputs };
}
