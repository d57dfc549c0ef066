import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, posix, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import TESTED_BY from './tested-by.json';

const TOP = fileURLToPath(new URL('..', import.meta.url));
/** The list may only grow shorter: lower this with it. */
const MOST_WITHOUT = 31;

const sources = readdirSync(join(TOP, 'src/core'), { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => posix.join('src/core', file.split(sep).join('/')));

const ownTest = (source: string): string | undefined => {
  const base = source.replace(/^src/, 'tests').replace(/\.tsx?$/, '');
  return ['.test.ts', '.test.tsx'].map((ending) => base + ending).find((file) => existsSync(join(TOP, file)));
};

const known = new Map<string, readonly string[]>();

/** The files a file imports, each read once. */
function importsOf(from: string): readonly string[] {
  let found = known.get(from);
  if (found === undefined) {
    const { importedFiles } = ts.preProcessFile(readFileSync(join(TOP, from), 'utf8'), true, true);
    found = importedFiles.flatMap(({ fileName }) => {
      if (!fileName.startsWith('.')) return [];
      const path = posix.join(posix.dirname(from), fileName);
      const file = ['', '.ts', '.tsx', '/index.ts']
        .map((ending) => path + ending)
        .find((one) => /\.tsx?$/.test(one) && existsSync(join(TOP, one)));
      return file ?? [];
    });
    known.set(from, found);
  }
  return found;
}

/** Whether a file reaches another by its imports, and theirs. */
function reaches(from: string, to: string, seen = new Set<string>()): boolean {
  if (from === to) return true;
  if (seen.has(from)) return false;
  seen.add(from);
  return importsOf(from).some((file) => reaches(file, to, seen));
}

/** Whether it holds more than types: what compiles to nothing has nothing to test. */
const holdsCode = (source: string): boolean =>
  !/^\s*export \{\};\s*$/.test(
    ts.transpileModule(readFileSync(join(TOP, source), 'utf8'), {
      compilerOptions: { target: ts.ScriptTarget.ESNext, removeComments: true },
    }).outputText,
  );

describe('every file of the core', () => {
  it('has a test of its name, or stands in the list with the test that runs it', () => {
    const without = sources.filter((source) => ownTest(source) === undefined && holdsCode(source));
    expect(without.sort()).toEqual(Object.keys(TESTED_BY).sort());
    expect(without.length).toBeLessThanOrEqual(MOST_WITHOUT);
  });

  it.each(Object.entries(TESTED_BY))('%s is run by %s', (source, test) => {
    expect(reaches(test, source)).toBe(true);
  });
});
