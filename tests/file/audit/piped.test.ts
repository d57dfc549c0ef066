import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Io } from '../../../src/file/command';
import { hem } from '../../../src/file/hem';
import { listening, scratch } from '../book';

const HEAD = 'Room,Inside W,L ext,R ext,Rod W,Drop,Hdg';
const good = (at: number): string => `Room ${at},72,11,11,94,96,pinch`;
const WRONG = 'Attic,50,10,10,90,96,pinch';

async function* inChunks(text: string, size: number): AsyncGenerator<Buffer> {
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length; at += size) {
    await Promise.resolve();
    yield bytes.subarray(at, at + size);
  }
}

async function audited(
  path: string,
  piped?: string,
  size = 1_000,
): Promise<{ code: number; out: string; err: string }> {
  const heard = listening();
  const io: Io = { ...heard, ...(piped !== undefined && { stream: () => inChunks(piped, size) }) };
  const code = await hem(['audit', path], io);
  return { code, out: heard.said.join('\n'), err: heard.complained.join('\n') };
}

describe('orders from standard input', () => {
  const text = [HEAD, ...Array.from({ length: 2_600 }, (_, at) => good(at)), WRONG, good(1)].join('\n');

  it('are audited as a file of them is, and how their columns were told is said', async () => {
    const path = join(scratch(), 'o.csv');
    writeFileSync(path, text);
    const file = await audited(path);
    const piped = await audited('-', text);
    expect(piped.out).toContain('what its columns mean is told from its first 2,000 rows');
    expect(piped.out).toContain('Attic, row 2602');
    const told = (out: string): readonly string[] =>
      out.split('\n').filter((line) => !line.startsWith('Standard input'));
    expect(told(piped.out)).toEqual(told(file.out));
    expect(piped.code).toBe(file.code);
  });

  it('however small the pieces in which they come', async () => {
    const few = `${HEAD}\n${good(1)}\nSüdzimmer,72,11,11,94,96,pinch\n${WRONG}\n`;
    expect((await audited('-', few, 3)).out).toEqual((await audited('-', few)).out);
  });

  it('nothing piped, and nothing in it, are said', async () => {
    const none = await audited('-');
    expect(none.code).toBe(2);
    expect(none.err).toContain('nothing is piped to it');
    expect((await audited('-', '')).err).toContain('Nothing came through standard input');
    expect((await audited('-', 'a,b\n1,2\n')).err).toContain('holds no table of orders');
  });
});
