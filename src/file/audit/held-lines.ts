/** Lines kept back until all of them may be told: in memory while they are few, else in a file of their own. */
import { closeSync, createReadStream, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { Problem } from '../problem';

const MOST_IN_MEMORY = 1 << 20;

export class HeldLines {
  private lines: string[] = [];
  private length = 0;
  private folder: string | undefined;
  private file: number | undefined;

  constructor(private readonly most = MOST_IN_MEMORY) {}

  hold(line: string): void {
    this.lines.push(line);
    this.length += line.length;
    if (this.length > this.most) this.write();
  }

  private write(): void {
    try {
      this.folder ??= mkdtempSync(join(tmpdir(), 'hem-'));
      this.file ??= openSync(join(this.folder, 'lines'), 'wx', 0o600);
      writeSync(this.file, `${this.lines.join('\n')}\n`);
    } catch (thrown) {
      throw new Problem(
        `The findings could not be kept in “${tmpdir()}” until all are known (${String(thrown)}). Make room there, or leave --jobs out.`,
      );
    }
    [this.lines, this.length] = [[], 0];
  }

  async tell(out: (line: string) => void): Promise<void> {
    if (this.folder !== undefined) {
      const kept = createReadStream(join(this.folder, 'lines'), 'utf8');
      for await (const line of createInterface({ input: kept, crlfDelay: Infinity })) out(line);
    }
    this.lines.forEach(out);
    this.forget();
  }

  forget(): void {
    if (this.file !== undefined) closeSync(this.file);
    if (this.folder !== undefined) rmSync(this.folder, { recursive: true, force: true });
    [this.file, this.folder, this.lines, this.length] = [undefined, undefined, [], 0];
  }
}
