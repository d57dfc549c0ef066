/**
 * Runs before every command, with nothing installed yet: is this Node new enough,
 * and is what the lockfile asks for in node_modules? Installs it where it is not.
 * `run` asks only for what the command needs, and leaves out what builds and checks.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const LEAST = 20;
const runsOnly = process.argv[2] === 'run';
const top = fileURLToPath(new URL('../../', import.meta.url));

/** Name and version of every package a lockfile holds; what a platform may leave out is not asked for. */
function locked(file) {
  const { packages } = JSON.parse(readFileSync(top + file, 'utf8'));
  return Object.entries(packages)
    .filter(([path, entry]) => path !== '' && !entry.optional && !entry.devOptional && !entry.peer)
    .filter(([, entry]) => !(runsOnly && entry.dev))
    .map(([path, entry]) => `${path}@${entry.version}`);
}

function installed() {
  if (!existsSync(`${top}node_modules/.package-lock.json`)) return false;
  const here = new Set(locked('node_modules/.package-lock.json'));
  return locked('package-lock.json').every((one) => here.has(one));
}

if (Number(process.versions.node.split('.')[0]) < LEAST) {
  console.error(
    `Hemledger needs Node ${LEAST} or newer, and this is ${process.versions.node}. Install a newer Node and run the command again.`,
  );
  process.exit(1);
}
if (!installed()) {
  const less = runsOnly ? ['--omit=dev'] : [];
  console.error(`Installing what Hemledger needs, once (${['npm ci', ...less].join(' ')}) …`);
  // No package's own script runs: what is fetched is only unpacked.
  const { status } = spawnSync(
    'npm',
    ['ci', ...less, '--ignore-scripts', '--no-progress', '--loglevel=error'],
    {
      cwd: top,
      stdio: ['ignore', 2, 2],
      shell: process.platform === 'win32',
    },
  );
  if (status !== 0) {
    console.error('The installation failed. Check the connection, then run the command again.');
    process.exit(status ?? 1);
  }
}
