/** A command, with what it said. */
import { hem } from '../../src/file/hem';

export const command =
  (name: string) =>
  async (...words: string[]): Promise<{ exit: number; out: string; err: string }> => {
    const out: string[] = [];
    const err: string[] = [];
    const exit = await hem([name, ...words], {
      out: (line) => void out.push(line),
      err: (line) => void err.push(line),
      progress: () => undefined,
      input: () => undefined,
    });
    return { exit, out: out.join('\n'), err: err.join('\n') };
  };
