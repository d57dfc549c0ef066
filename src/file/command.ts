/** What every subcommand is: one file that exports `command`, and one line in hem.ts. */
import { parseArgs, type ParseArgsConfig } from 'node:util';
import { Problem, USAGE } from './problem';

/** Where a command speaks and what it is given; a test puts its own in. */
export interface Io {
  /** One line of the answer. */
  out(line: string): void;
  /** One line beside the answer: what went wrong, how far it is. */
  err(line: string): void;
  /** Writes over the line before it, where someone is watching. */
  progress(line: string): void;
  /** What was piped in; undefined where nothing is. */
  input(): Promise<string> | undefined;
  /** The same as it comes; undefined where nothing is. */
  stream?(): AsyncIterable<unknown> | undefined;
}

export interface Command {
  /** The whole help, printed for --help. */
  readonly help: string;
  /** Gives the exit code; throws a Problem where it cannot go on. */
  run(words: readonly string[], io: Io): Promise<number>;
}

type Options = NonNullable<ParseArgsConfig['options']>;

/** Reads a command's words; what it does not know is a sentence. */
export function readWords<const O extends Options>(words: readonly string[], options: O, command: string) {
  try {
    return parseArgs({ args: [...words], options, allowPositionals: true, strict: true });
  } catch (thrown) {
    const said = thrown instanceof Error ? thrown.message : String(thrown);
    const option = /'(-[^' ]*)/.exec(said)?.[1] ?? 'this';
    const code = thrown instanceof Error && 'code' in thrown ? thrown.code : '';
    throw new Problem(
      code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION'
        ? `${command} has no option ${option}. See npm run hem -- ${command} --help; a formula that starts with “-” is written “=-…”.`
        : `${command}: ${option} is not used so. See npm run hem -- ${command} --help.`,
      USAGE,
    );
  }
}
