/** `npm run exact`: a grid of more than a million cases, the core against exact fractions. Exit 1 on any difference. */
import { compare } from './compare';

const SIZE = { houses: 1_200, windows: 32, cloths: 5, seed: 48 };

const started = performance.now();
let told = started;
const { counts, differences, differing } = compare(SIZE, (house) => {
  if (performance.now() - told < 5_000) return;
  told = performance.now();
  process.stderr.write(`  ${house} of ${SIZE.houses} houses\n`);
});
const seconds = (performance.now() - started) / 1000;
const total = Object.values(counts).reduce((sum, one) => sum + one, 0);
const show = (count: number): string => count.toLocaleString('en-US');

for (const line of differences) console.log(line);
console.log(`${show(total)} answers compared with exact fractions in ${seconds.toFixed(1)} s:`);
for (const [kind, count] of Object.entries(counts))
  console.log(`  ${kind.padEnd(12)}${show(count).padStart(12)}`);
console.log(`Differences: ${show(differing)}`);
process.exitCode = differing === 0 ? 0 : 1;
