/** npm run hem -- calc: formulas in, values out, with or without a workbook behind them. */
import { errorOf } from '../core/cell/fields';
import { Engine } from '../engine/engine';
import { nodeLibrary } from '../engine/node';
import type { Given } from '../engine/workbook';
import type { Call } from '../engine/functions';
import { compiled } from '../engine/native/compile';
import { parse, Unreadable } from '../engine/native/parse';
import { Refused, Unproven } from '../engine/native/values';
import { World } from '../engine/native/world';
import { openArchive } from './xlsx/archive';
import { readWords, type Command, type Io } from './command';
import { otherWorkbook, typed } from './recalculate/formula';
import { directoryOf, type Named } from './recalculate/directory';
import { givenOf } from './recalculate/report';
import { BookSheets } from './recalculate/sheets';
import { counted, FINE, NOT_COMPUTED, Problem, USAGE } from './problem';
import { progressOf } from './progress';
import { answered, recalculate } from './recalculate/recalculate';
import { whyNot } from './recalculate/refused';
import { resolverOf, Unresolved, withSpills, type Resolver } from './recalculate/resolve';
import { findingsOf, show, stepsOf, table, whyError } from './recalculate/sentences';
import { nearName } from './recalculate/near-name';
import { NO_CELLS, readWorkbook } from './xlsx/workbook';
import '../engine/native/all';

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

const FIRST_CELL = { sheet: 0, row: 0, column: 0 };
const NOTHING = {
  sheets: [{ name: 'Sheet1', part: undefined, bytes: new Uint8Array(0), seen: NO_CELLS }],
  names: [],
  tables: [],
  from1904: false,
};

async function withBook(path: string, io: Io): Promise<Asker> {
  const file = readWorkbook(await openArchive(path));
  const done = recalculate(file, { progress: progressOf(io) });
  const missing = done.answers.filter((one) => one !== undefined && one.value === undefined).length;
  if (missing > 0)
    io.err(
      `${counted(missing, 'formula')} of “${path}” could not be computed; what needs ${missing === 1 ? 'it' : 'them'} is not either (see fill).`,
    );
  return new Asking(file, done.sheets);
}

/** Formulas beside a workbook, as if typed on its first sheet. */
class Asking implements Asker {
  readonly #world: World;
  readonly #directory;
  readonly #calls: Call[] = [];
  #engine: { readonly engine: Engine; readonly resolver: Resolver } | undefined;

  constructor(
    readonly file: Named & { readonly from1904: boolean },
    readonly sheets: BookSheets,
  ) {
    this.#directory = directoryOf(file);
    this.#world = new World(sheets);
    this.#world.heard = (cellFunction, outcome) => {
      this.#calls.push({ cellFunction, outcome });
    };
  }

  async ask(formula: string): Promise<Given | { readonly refused: string }> {
    const text = typed(formula.trim().replace(/^=/, ''));
    this.#calls.length = 0;
    try {
      const other = otherWorkbook(text);
      if (other !== undefined) return { refused: `It points into another workbook ([${other}]).` };
      parse(text, 0, 0);
      const { run } = compiled(text, FIRST_CELL, this.#directory, true);
      this.#world.at(0, 0, 0);
      return givenOf({ value: answered(run, this.#world), calls: [...this.#calls] });
    } catch (thrown) {
      if (thrown instanceof Refused) return { refused: `${capital(thrown.message)}.` };
      if (!(thrown instanceof Unproven || thrown instanceof Unreadable)) throw thrown;
      if (/^it (?:cannot be read|needs)|deep|longer/.test(thrown.message))
        return { refused: `${capital(thrown.message)}.` };
    }
    return this.#askEngine(`=${text}`);
  }

  /** What is not computed here goes to the engine, which knows more functions; loading it takes a while. */
  async #askEngine(text: string): Promise<Given | { readonly refused: string }> {
    const { engine, resolver } = (this.#engine ??= this.#opened());
    const why = whyNot({ typed: text }, this.file, engine);
    if (why !== undefined)
      return { refused: `${capital(why)}.${nearName(text, (name) => engine.knows(name))}` };
    const home = this.sheets.names[0] ?? '';
    try {
      return await engine.ask(
        withSpills(resolver.resolve(text, FIRST_CELL), home, (sheet, row, column) => {
          const at = this.#directory.sheet(sheet) ?? 0;
          return this.sheets.spill(at, row, column) ?? { rows: 1, columns: 1 };
        }),
      );
    } catch (thrown) {
      if (thrown instanceof Unresolved) return { refused: `${capital(thrown.message)}.` };
      throw thrown;
    }
  }

  #opened(): { readonly engine: Engine; readonly resolver: Resolver } {
    const engine = new Engine(nodeLibrary(), { sheets: this.sheets.plain(), names: [] });
    return { engine, resolver: resolverOf(this.file, (name) => engine.knows(name), typed) };
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
    const asker =
      values.book === undefined
        ? new Asking(NOTHING, new BookSheets(NOTHING))
        : await withBook(values.book, io);
    const steps = values.steps === true;
    let exit: number = FINE;
    for (const formula of formulas) {
      const given = await asker.ask(formula);
      if ('refused' in given || whyError(given) !== undefined) exit = NOT_COMPUTED;
      if (values.json === true) io.out(asJson(given, steps));
      else asText(given, steps, io);
    }
    return exit;
  },
};
