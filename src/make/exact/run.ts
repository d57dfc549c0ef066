/**
 * `npm run exact`: the catalogue against exact fractions. Exit 1 on a difference that is not expected.
 * `-- --houses 24 --seed 7` tries fewer houses, or others.
 */
import { parseArgs } from 'node:util';
import { compare } from './compare';

const { values } = parseArgs({ options: { houses: { type: 'string' }, seed: { type: 'string' } } });
const SIZE = { houses: Number(values.houses ?? 300), times: 1, cloths: 2, seed: Number(values.seed ?? 48) };

const totalOf = (counts: Readonly<Record<string, number>>): number =>
  Object.values(counts).reduce((sum, one) => sum + one, 0);
const show = (count: number): string => count.toLocaleString('en-US');

const started = performance.now();
let told = started;
const { counts, differing, shown, met } = compare(SIZE, (house, soFar) => {
  if (performance.now() - told < 10_000) return;
  told = performance.now();
  process.stderr.write(
    `  ${house} of ${SIZE.houses} houses, ${show(totalOf(soFar.counts))} answers, ${show(soFar.differing)} differences\n`,
  );
});
const seconds = (performance.now() - started) / 1000;
const total = totalOf(counts);

for (const line of shown) console.log(line);
for (const [kind, count] of Object.entries(counts))
  console.log(`  ${kind.padEnd(14)}${show(count).padStart(12)}`);
for (const { entry, times } of met)
  console.log(`  differs for now${show(times).padStart(12)}  ${entry.because}`);
const stale = met.filter(({ times }) => times === 0);
for (const { entry } of stale) console.log(`  no longer differs: ${entry.because}`);
console.log(`in ${seconds.toFixed(1)} s`);
console.log(`${show(total)} answers, ${show(differing)} differences`);
process.exitCode = differing === 0 && stale.length === 0 ? 0 : 1;
