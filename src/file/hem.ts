/** npm run hem -- …: chooses the subcommand and ends with its exit code. A new one is a file and a line here. */
import { text } from 'node:stream/consumers';
import type { Command, Io } from './command';
import { FINE, Problem, USAGE } from './problem';

interface Entry {
  readonly says: string;
  load(): Promise<{ readonly command: Command }>;
}

const COMMANDS: Readonly<Record<string, Entry>> = {
  audit: { says: 'works past orders out again and says what differs', load: () => import('./audit') },
  calc: { says: 'computes formulas', load: () => import('./calc') },
  fill: { says: 'computes a workbook anew and writes it back', load: () => import('./fill') },
  floor: { says: 'works out a floor: cloth, cutting plan, what-if', load: () => import('./floor') },
  functions: { says: 'lists the HEM functions', load: () => import('./list-functions') },
  papers: { says: 'writes quote, orders and sheets for the workroom', load: () => import('./papers') },
  read: { says: 'shows how a table is read', load: () => import('./read') },
  rules: { says: 'lists the house rules', load: () => import('./list-rules') },
};

const HELP = `npm run hem -- COMMAND …

${Object.entries(COMMANDS)
  .map(([name, { says }]) => `  ${name.padEnd(10)} ${says}`)
  .join('\n')}

npm run hem -- COMMAND --help says more. npm's own lines stay away with npm run --silent hem.
Exit code: 0 fine · 1 a formula could not be computed · 2 not used so · 3 a file problem`;

const asked = (word: string | undefined): boolean => word === '--help' || word === '-h' || word === 'help';

export async function hem(words: readonly string[], io: Io): Promise<number> {
  const [name, ...rest] = words;
  try {
    if (name === undefined || asked(name)) {
      io.out(HELP);
      return name === undefined ? USAGE : FINE;
    }
    const entry = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
    if (entry === undefined)
      throw new Problem(
        `There is no command “${name}”. Use one of: ${Object.keys(COMMANDS).join(', ')}.`,
        USAGE,
      );
    const { command } = await entry.load();
    if (rest.some((word) => word === '--help' || word === '-h')) {
      io.out(command.help);
      return FINE;
    }
    return await command.run(rest, io);
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    io.err(thrown.message);
    return thrown.exit;
  }
}

function terminal(): Io {
  let watched = false;
  let logged = 0;
  const wipe = (): void => {
    if (watched) process.stderr.write('\r\u001B[K');
    watched = false;
  };
  return {
    out(line) {
      wipe();
      process.stdout.write(`${line}\n`);
    },
    err(line) {
      wipe();
      process.stderr.write(`${line}\n`);
    },
    progress(line) {
      if (!process.stderr.isTTY) {
        // A log takes a line now and then, not twice a second.
        if (performance.now() - logged < 5_000) return;
        logged = performance.now();
        process.stderr.write(`${line}\n`);
        return;
      }
      process.stderr.write(`\r\u001B[K${line}`);
      watched = true;
    },
    input: () => (process.stdin.isTTY ? undefined : text(process.stdin)),
    stream: () => (process.stdin.isTTY ? undefined : process.stdin),
  };
}

/** The command as a process of its own. */
export async function main(words: readonly string[]): Promise<void> {
  // A reader that has seen enough (head) is no trouble.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
  process.exitCode = await hem(words, terminal());
}
