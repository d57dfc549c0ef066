/** npm run hem -- calc: formulas in, values out, with or without a workbook behind them. */
import { errorOf } from '../core/cell/fields';
import { Engine } from '../engine/engine';
import { nodeLibrary } from '../engine/node';
import type { Given } from '../engine/workbook';
import { openArchive } from './xlsx/archive';
import { readWords, type Command, type Io } from './command';
import { typed } from './recalculate/formula';
import { counted, FINE, NOT_COMPUTED, Problem, USAGE } from './problem';
import { progressOf } from './progress';
import { recalculate } from './recalculate/recalculate';
import { whyNot } from './recalculate/refused';
import { resolverOf, Unresolved, withSpills } from './recalculate/resolve';
import { findingsOf, show, stepsOf, table, whyError } from './recalculate/sentences';
import { nearName } from './recalculate/near-name';
import { readWorkbook } from './xlsx/workbook';

const HELP = `npm run hem -- calc [options] FORMULA…

Computes formulas: HEM functions and ordinary worksheet functions, mixed and nested.
With no FORMULA, one a line is read from standard input. The leading = may be left out.

  npm run hem -- calc '=HEM.RODWIDTH("84 1/2",12,10)'
  npm run hem -- calc --steps 'HEM.DROP(98,"pinch")'
  npm run hem -- calc --book quote.xlsx 'SUM(Windows[Yards])' 'Quote!F12'

  --book FILE.xlsx  names, tables and sheets of this workbook, computed anew;
                    a plain A1 stands on its first sheet
  --steps           the steps of every HEM function, and its findings, below the value
  --json            one object a line: {"value":…}, {"spill":[[…]]}
                    or {"error":"#VALUE!","message":"…"}; with --steps also "steps", "findings"
  --help            this

An error shows in the answer, and why on standard error.
Exit code: 0 fine · 1 a formula gave an error · 2 not used so · 3 a file cannot be read`;

interface Asker {
  ask(formula: string): Promise<Given | { readonly refused: string }>;
}

const EMPTY = { sheets: [{ name: 'Sheet1', cells: [] }], names: [] };

function withoutBook(): Asker {
  const engine = new Engine(nodeLibrary(), EMPTY);
  const resolver = resolverOf({ sheets: [], names: [], tables: [] }, (name) => engine.knows(name), typed);
  return {
    ask: (formula) => answer(engine, formula, undefined, (text) => resolver.resolve(text, FIRST_CELL)),
  };
}

const FIRST_CELL = { sheet: 0, row: 0, column: 0 };

async function withBook(path: string, io: Io): Promise<Asker> {
  const file = readWorkbook(await openArchive(path));
  const { engine, resolver, results } = await recalculate(file, nodeLibrary(), progressOf(io));
  const kept = results.filter(({ given }) => given === undefined);
  if (kept.length > 0)
    io.err(
      `${counted(kept.length, 'formula')} of “${path}” could not be computed; the old values are used (see fill).`,
    );
  const home = file.sheets[0]?.name ?? '';
  const reach = (sheet: string, row: number, column: number): { rows: number; columns: number } => {
    const at = file.sheets.findIndex((one) => one.name.toLowerCase() === sheet.toLowerCase());
    const found = results.find(
      ({ formula }) => formula.sheet === at && formula.row === row && formula.column === column,
    )?.given?.spill;
    return { rows: found?.length ?? 1, columns: found?.[0]?.length ?? 1 };
  };
  return {
    ask: (formula) =>
      answer(engine, formula, file, (text) => withSpills(resolver.resolve(text, FIRST_CELL), home, reach)),
  };
}

async function answer(
  engine: Engine,
  formula: string,
  file: Parameters<typeof whyNot>[1],
  plain: (formula: string) => string,
): Promise<Given | { readonly refused: string }> {
  const text = `=${typed(formula.trim().replace(/^=/, ''))}`;
  const why = whyNot({ typed: text }, file, engine);
  if (why !== undefined)
    return { refused: `${capital(why)}.${nearName(text, (name) => engine.knows(name))}` };
  try {
    return await engine.ask(plain(text));
  } catch (thrown) {
    if (thrown instanceof Unresolved) return { refused: `${capital(thrown.message)}.` };
    throw thrown;
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** One object a line, its keys as documented and no others. */
function asJson(given: Given | { readonly refused: string }, steps: boolean): string {
  if ('refused' in given) {
    return JSON.stringify({
      error: '#NAME?',
      message: given.refused,
      ...(steps ? { steps: [], findings: [] } : {}),
    });
  }
  const error = given.spill === undefined ? errorOf(given.value) : undefined;
  const answered =
    error !== undefined
      ? { error, message: whyError(given) }
      : given.spill === undefined
        ? { value: given.value }
        : { spill: given.spill };
  return JSON.stringify({
    ...answered,
    ...(steps ? { steps: stepsOf(given), findings: findingsOf(given) } : {}),
  });
}

function asText(given: Given | { readonly refused: string }, steps: boolean, io: Io): void {
  if ('refused' in given) {
    io.out('#NAME?');
    io.err(given.refused);
    return;
  }
  for (const line of given.spill === undefined ? [show(given.value)] : table(given.spill)) io.out(line);
  const why = given.spill === undefined ? whyError(given) : undefined;
  if (why !== undefined) io.err(why);
  if (!steps) return;
  for (const line of stepsOf(given)) io.out(`  ${line}`);
  for (const { weight, sentence } of findingsOf(given)) {
    if (sentence !== why) io.out(`  ${weight}: ${sentence}`);
  }
}

export const command: Command = {
  help: HELP,
  async run(words, io) {
    const { values, positionals } = readWords(
      words,
      { book: { type: 'string' }, steps: { type: 'boolean' }, json: { type: 'boolean' } },
      'calc',
    );
    const piped = positionals.length > 0 ? undefined : io.input();
    if (positionals.length === 0 && piped === undefined)
      throw new Problem('calc wants a formula. See npm run hem -- calc --help.', USAGE);
    const formulas =
      piped === undefined ? positionals : (await piped).split(/\r?\n/).filter((line) => line.trim() !== '');
    const { ask } = values.book === undefined ? withoutBook() : await withBook(values.book, io);
    const steps = values.steps === true;
    let exit: number = FINE;
    for (const formula of formulas) {
      const given = await ask(formula);
      if ('refused' in given || whyError(given) !== undefined) exit = NOT_COMPUTED;
      if (values.json === true) io.out(asJson(given, steps));
      else asText(given, steps, io);
    }
    return exit;
  },
};
