/** npm run hem -- functions: the catalogue, readable or as JSON. */
import { CATALOGUE, functionNamed, NAMESPACE } from '../../functions/index';
import type { CellFunction, Parameter } from '../../functions/declare';
import { readWords, type Command, type Io } from './command';
import { FINE, Problem, USAGE } from './problem';

const HELP = `npm run hem -- functions [options] [NAME…]

Lists the HEM functions; with NAME, all about one: its parameters, choices and worked examples.

  npm run hem -- functions
  npm run hem -- functions YARDAGE
  npm run hem -- functions --json

  --json  the same as a JSON array
  --help  this

Exit code: 0 fine · 2 no such function, or not used so`;

const written = ({ name, optional, repeats }: Parameter): string => {
  const shown = `${name}${repeats ? '…' : ''}`;
  return optional ? `[${shown}]` : shown;
};
const signature = (cellFunction: CellFunction): string =>
  `${NAMESPACE}.${cellFunction.name}(${cellFunction.parameters.map(written).join(', ')})`;

const shownGiven = (gives: CellFunction['examples'][number]['gives']): string =>
  Array.isArray(gives) ? JSON.stringify(gives) : String(gives as string | number | boolean);

function list(functions: readonly CellFunction[], io: Io): void {
  let chapter = '';
  for (const one of functions) {
    if (one.chapter !== chapter) {
      if (chapter !== '') io.out('');
      io.out(one.chapter);
      chapter = one.chapter;
    }
    io.out(`  ${signature(one)}`);
    io.out(`      ${one.says}`);
  }
}

function describe(cellFunction: CellFunction, io: Io): void {
  io.out(signature(cellFunction));
  io.out(cellFunction.says);
  io.out(
    `Gives ${cellFunction.gives.noun}${cellFunction.gives.columns === undefined ? '' : `: ${cellFunction.gives.columns.join(', ')}`}.`,
  );
  io.out('');
  for (const one of cellFunction.parameters) {
    io.out(`  ${written(one)}  ${one.kind.noun}`);
    io.out(`      ${one.says}`);
    for (const choice of one.kind.choices ?? []) io.out(`      “${choice.word}”: ${choice.says}`);
  }
  io.out('');
  for (const { formula, gives, because } of cellFunction.examples) {
    io.out(`  =${formula}  →  ${shownGiven(gives)}`);
    io.out(`      ${because}`);
  }
}

const asData = (cellFunction: CellFunction): object => ({
  name: `${NAMESPACE}.${cellFunction.name}`,
  room: cellFunction.chapter,
  says: cellFunction.says,
  parameters: cellFunction.parameters.map(({ name, says, optional, repeats, kind }) => ({
    name,
    says,
    optional,
    ...(repeats ? { repeats } : {}),
    takes: kind.noun,
    ...(kind.choices === undefined
      ? {}
      : { choices: kind.choices.map(({ word, says: means }) => ({ word, says: means })) }),
  })),
  gives: cellFunction.gives.noun,
  ...(cellFunction.gives.shape === 'spill' ? { spills: cellFunction.gives.columns ?? [] } : {}),
  examples: cellFunction.examples,
});

export const command: Command = {
  help: HELP,
  run(words, io) {
    const { values, positionals } = readWords(words, { json: { type: 'boolean' } }, 'functions');
    const chosen = positionals.map((name) => {
      const found = functionNamed(name);
      if (found === undefined)
        throw new Problem(`There is no function ${name}. See npm run hem -- functions.`, USAGE);
      return found;
    });
    const functions = chosen.length === 0 ? CATALOGUE : chosen;
    if (values.json === true) io.out(JSON.stringify(functions.map(asData), null, 2));
    else if (chosen.length === 0) list(functions, io);
    else
      for (const [at, one] of functions.entries()) {
        if (at > 0) io.out('');
        describe(one, io);
      }
    return Promise.resolve(FINE);
  },
};
