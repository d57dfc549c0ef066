/** `npm run long`: everything too slow for npm test. Ends with how many passed and failed. `-- SEED` chooses the chances. */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readFormula } from '../example';
import { callOf, formulaOf, fuzzCalls, throughBundle, throughCore } from './calls';
import { chances, fuzzFormulas, fuzzPackages } from './fuzz';
import { plantAll, workbooksIn, type Planting } from './planting';

const FORMULAS = 100_000;
const PACKAGES = 5_000;
/** Of the formulas that depend on planted cells, so many at least must be computed. */
const LEAST = 0.8;
const SHOWN = 20;
/** Megabytes that calls may leave behind: answers are kept for a while. */
const MOST_GROWN = 200;

const top = fileURLToPath(new URL('../', import.meta.url));
const seed = Number(process.argv[2] ?? Date.now() % 1_000_000);
let [passed, failed] = [0, 0];

function check(what: string, fine: boolean, more: readonly string[] = []): void {
  if (fine) passed += 1;
  else failed += 1;
  console.log(`${fine ? 'passed' : 'FAILED'}: ${what}`);
  for (const line of more.slice(0, SHOWN)) console.log(`  ${line}`);
  if (more.length > SHOWN) console.log(`  … and ${more.length - SHOWN} more`);
}

function told({ books, planted, downstream, computed, byFunction }: Planting): void {
  console.log(
    `  ${books} workbooks, ${planted} HEM cells planted, ${downstream} formulas depend on them, ${computed} computed (${((100 * computed) / Math.max(downstream, 1)).toFixed(1)} %)`,
  );
  const shares = [...byFunction].sort(([, one], [, other]) => other.downstream - one.downstream);
  console.log(
    `  by function: ${shares.map(([name, share]) => `${name} ${share.computed}/${share.downstream}`).join(', ')}`,
  );
}

console.log(`seed ${seed}`);
const wrongFormulas = fuzzFormulas(FORMULAS, seed);
check(
  `${FORMULAS} formulas by chance give an answer or a sentence`,
  wrongFormulas.length === 0,
  wrongFormulas,
);
const calls = { core: 1_000_000, bundle: 200_000, engine: 20_000 };
const before = process.memoryUsage().heapUsed;
for (const [what, count, caller] of [
  ['the core', calls.core, throughCore],
  ['the built bundle', calls.bundle, await throughBundle()],
] as const) {
  const wrong = fuzzCalls(count, seed, { examples: readFormula, caller });
  check(`${count} calls by chance through ${what} give a value or a sentence`, wrong.length === 0, wrong);
}
const grown = (process.memoryUsage().heapUsed - before) / 1_048_576;
check(`they leave no memory behind (${grown.toFixed(0)} MB)`, grown < MOST_GROWN);
const wrongCells = fuzzFormulas(calls.engine, seed, (at) => formulaOf(callOf(seed, at, readFormula)));
check(`${calls.engine} of them as formulas through the engine`, wrongCells.length === 0, wrongCells);
for (const name of ['floor', 'spills']) {
  const wrong = fuzzPackages(
    new Uint8Array(readFileSync(`${top}tests/books/${name}.xlsx`)),
    PACKAGES / 2,
    seed,
  );
  check(
    `${PACKAGES / 2} packages like ${name}.xlsx, changed by chance, are filled or refused in a sentence`,
    wrong.length === 0,
    wrong,
  );
}
const folder = `${top}../shared/workbooks`;
if (existsSync(folder)) {
  for (const [what, seen] of [
    ['looked at while this was made', true],
    ['not looked at before', false],
  ] as const) {
    for (const part of [1, 0.3]) {
      const next = chances(seed);
      const found = await plantAll(workbooksIn(folder, seen), () => next() < part);
      const { wrong, downstream, computed } = found;
      check(
        `workbooks ${what}, ${part * 100} % of the numbers planted: no wrong value`,
        wrong.length === 0,
        wrong,
      );
      check(`of what depends on them at least ${LEAST * 100} % is computed`, computed >= LEAST * downstream);
      told(found);
    }
  }
} else console.log('skipped: no workbooks with values that Excel stored stand beside the project');
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
