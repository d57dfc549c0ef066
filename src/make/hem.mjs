/**
 * Starts the headless command from one bundle, which is made anew where a source is newer than it.
 * Where no bundle can be made, the sources run as they are.
 */
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const top = fileURLToPath(new URL('../../', import.meta.url));
const folder = join(top, 'out', 'hem');
const bundle = join(folder, 'hem.mjs');
const SOURCES = ['functions', 'src/core', 'src/book', 'src/engine', 'src/file', 'src/solve'];

/** When the newest source was changed. */
function newest() {
  let last = statSync(join(top, 'package-lock.json')).mtimeMs;
  const look = (path) => {
    for (const entry of readdirSync(path, { withFileTypes: true })) {
      const inside = `${path}/${entry.name}`;
      if (entry.isDirectory()) look(inside);
      else if (entry.name.endsWith('.ts')) last = Math.max(last, statSync(inside).mtimeMs);
    }
    // A file taken away changes its folder alone.
    last = Math.max(last, statSync(path).mtimeMs);
  };
  for (const source of SOURCES) look(join(top, source));
  return last;
}

async function made() {
  const began = newest();
  if (existsSync(bundle) && statSync(bundle).mtimeMs >= began) return true;
  const fresh = `${folder}.${process.pid}`;
  try {
    const { build } = await import('esbuild');
    await build({
      absWorkingDir: top,
      // A worker thread starts from a file of its own.
      entryPoints: { hem: 'src/file/hem.ts', 'audit-worker': 'src/file/audit/worker.ts' },
      outdir: fresh,
      outExtension: { '.js': '.mjs' },
      bundle: true,
      splitting: true,
      platform: 'node',
      format: 'esm',
      target: 'node20',
      // What is large and rarely needed, or brings files of its own, stays where it is.
      external: ['@univerjs/*', 'highs', '@cj-tech-master/excelts'],
      banner: {
        js: "import{createRequire as requireFrom}from'node:module';const require=requireFrom(import.meta.url);",
      },
      logLevel: 'silent',
    });
    mkdirSync(join(top, 'out'), { recursive: true });
    rmSync(folder, { recursive: true, force: true });
    renameSync(fresh, folder);
    return existsSync(bundle);
  } catch {
    rmSync(fresh, { recursive: true, force: true });
    return false;
  }
}

let started;
if (await made().catch(() => false)) started = await import(pathToFileURL(bundle).href);
else {
  const { register } = await import('tsx/esm/api');
  register();
  started = await import(pathToFileURL(join(top, 'src/file/hem.ts')).href);
}
await started.main(process.argv.slice(2));
