/**
 * THIRD-PARTY-LICENSES.txt of a shipped folder: every package of which something stands in its bundles,
 * with its version and the full text of its licence. A licence that is not agreed stops the build.
 */
import { createRequire } from 'node:module';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const FILE = 'THIRD-PARTY-LICENSES.txt';
const AGREED = new Set(['0BSD', 'Apache-2.0', 'BSD-2-Clause', 'BSD-3-Clause', 'ISC', 'MIT']);

/** Whether an SPDX expression leaves us a licence that is agreed. */
export const isAgreed = (expression) =>
  expression
    .replace(/[()]/g, '')
    .split(' OR ')
    .some((choice) => choice.split(' AND ').every((one) => AGREED.has(one)));

/** The folder of the package a file belongs to; undefined for a file of ours. */
export const packageOf = (file) => /^.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+/.exec(file)?.[0];

/** The words of a licence whose package brings none: its author is the holder. */
const standard = (name) => {
  const file = fileURLToPath(new URL(`licences/${name}.txt`, import.meta.url));
  return existsSync(file) ? readFileSync(file, 'utf8') : undefined;
};
const nameOf = (person) => (typeof person === 'string' ? person : person?.name);

/** What is said of one package. */
export function entryOf(folder) {
  const {
    name,
    version,
    license: named,
    author,
  } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const texts = readdirSync(folder)
    .filter((file) => /^(licen[cs]e|copying|notice)([.-]|$)/i.test(file))
    .sort()
    .map((file) => readFileSync(join(folder, file), 'utf8').trim());
  const found = texts.some((text) => /^\s*Apache License\s+Version 2\.0/.test(text))
    ? 'Apache-2.0'
    : 'no licence';
  const license = typeof named === 'string' ? named : found;
  if (!isAgreed(license))
    throw new Error(
      `${name} ${version} is under “${license}”, which is not agreed for what ships: take another package.`,
    );
  if (texts.length === 0) {
    const text = standard(license);
    if (text === undefined) throw new Error(`${name} ${version} brings no text of its licence “${license}”.`);
    texts.push(text.trim().replace('{holder}', nameOf(author) ?? `the authors of ${name}`));
  }
  return { name, version, license, text: texts.join('\n\n') };
}

export const written = (entries) =>
  [
    'What others wrote and let us ship with Hemledger, each under its own licence.',
    ...entries
      .toSorted((one, other) => (`${one.name}@${one.version}` < `${other.name}@${other.version}` ? -1 : 1))
      .map(
        ({ name, version, license, text }) => `${'='.repeat(72)}\n${name} ${version} (${license})\n\n${text}`,
      ),
  ].join('\n\n') + '\n';

/** Webpack's own few lines stand in every bundle. */
const ALWAYS = [packageOf(createRequire(import.meta.url).resolve('webpack'))];
/** Several bundles share a folder: what each brought, by the folder. */
const brought = new Map();

export class Licences {
  apply(compiler) {
    compiler.hooks.compilation.tap('Licences', (compilation) => {
      compilation.hooks.afterOptimizeModules.tap('Licences', (modules) => {
        const all = [...modules].flatMap((one) => one.modules ?? [one]);
        const folders = all.map((one) => packageOf(one.nameForCondition() ?? '')).filter(Boolean);
        const here = brought.get(compiler.outputPath) ?? new Map();
        brought.set(compiler.outputPath, here);
        for (const folder of new Set([...ALWAYS, ...folders])) {
          try {
            if (!here.has(folder)) here.set(folder, entryOf(folder));
          } catch (thrown) {
            compilation.errors.push(thrown);
          }
        }
      });
    });
    compiler.hooks.afterEmit.tap('Licences', () => {
      const here = brought.get(compiler.outputPath);
      if (here !== undefined) writeFileSync(join(compiler.outputPath, FILE), written([...here.values()]));
    });
  }
}
