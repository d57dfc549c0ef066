/** `npm run bench`: how fast and how near the best. `npm run bench -- chain` (or rolls, reading, audit, papers, bundle, duckdb, fill) runs one part. */
import { benchAudit, benchAuditFile } from './bench-audit';
import { benchBundle } from './bench-bundle';
import { benchChain, type Timed } from './bench-chain';
import { benchDuckdb } from './bench-duckdb';
import { benchFill } from './bench-fill';
import { benchPapers, WINDOWS as OF_PAPERS } from './bench-papers';
import { benchReading } from './bench-reading';
import { benchRolls } from './bench-rolls';

const WINDOWS = 10_000;
const show = (figure: number): string =>
  figure.toLocaleString('en-US', { maximumFractionDigits: figure < 100 ? 1 : 0 });

async function chain(): Promise<void> {
  console.log(`${show(WINDOWS)} windows from the opening to the price, processor time a window:`);
  const { times, differing, withLibreOffice } = await benchChain(WINDOWS, (what) => {
    process.stderr.write(`  … ${what}\n`);
  });
  const core = times[0]?.microseconds ?? NaN;
  for (const { what, microseconds, counts } of times) {
    const ratio = `${show(microseconds / core)} ×`;
    console.log(`  ${what.padEnd(26)}${show(microseconds).padStart(9)} µs${ratio.padStart(10)}   ${counts}`);
  }
  console.log(
    differing === 0
      ? '  All give the same figures, to the cent.'
      : `  ${show(differing)} windows differ between the ways.`,
  );
  if (!withLibreOffice) console.log('  LibreOffice is not installed and was left out.');
  const native = times.filter(({ what }) => what.includes('native'));
  const fastest = native.reduce((one, other) => (other.microseconds < one.microseconds ? other : one));
  aims(core, fastest);
  if (differing > 0) process.exitCode = 1;
}

function aims(core: number, fastest: Timed): void {
  const said = (met: boolean): string => (met ? 'met' : 'not met in this run');
  const ratio = fastest.microseconds / core;
  console.log(`  Aim: a window under 10 µs in the core: ${show(core)} µs, ${said(core < 10)}.`);
  console.log(
    `  Aim: 5 times faster than the fastest native way (${fastest.what}): ${ratio.toFixed(2)} times, ${said(ratio >= 5)}.`,
  );
}

async function rolls(): Promise<void> {
  console.log('Cutting plans:');
  for (const { what, found, aim, met } of await benchRolls())
    console.log(`  ${what}: ${found}; aim ${aim}, ${met ? 'met' : 'not met'}.`);
}

function reading(): void {
  console.log('The reader of tables:');
  for (const line of benchReading()) console.log(`  ${line}`);
}

async function audit(): Promise<void> {
  console.log('The audit of past orders:');
  for (const line of benchAudit()) console.log(`  ${line}`);
  for (const line of await benchAuditFile()) console.log(`  ${line}`);
}

async function bundle(): Promise<void> {
  console.log('The functions bundle, as npm run build left it:');
  for (const line of await benchBundle()) console.log(`  ${line}`);
}

async function duckdb(): Promise<void> {
  console.log('The bare bundle in a database:');
  for (const line of await benchDuckdb()) console.log(`  ${line}`);
}

async function papers(): Promise<void> {
  const { seconds, busy, bytes, papers: said } = await benchPapers();
  const megabytes = bytes / 1e6;
  const met = seconds < 10 && megabytes < 5 ? 'met' : 'not met in this run';
  console.log(`The papers of a job of ${OF_PAPERS} windows, by the command:`);
  console.log(`  ${said.replace(/^.*: /, '')}`);
  console.log(
    `  ${seconds.toFixed(1)} s, of the processor ${busy.toFixed(1)} s, and ${megabytes.toFixed(2)} MB; aim under 10 s and 5 MB, ${met}.`,
  );
}

function fill(): void {
  console.log('A workbook filled:');
  for (const line of benchFill()) console.log(`  ${line}`);
}

const PARTS: Readonly<Record<string, () => Promise<void> | void>> = {
  chain,
  rolls,
  reading,
  audit,
  papers,
  bundle,
  duckdb,
  fill,
};

const asked = process.argv.slice(2);
const unknown = asked.find((name) => PARTS[name] === undefined);
if (unknown === undefined) {
  for (const name of asked.length === 0 ? Object.keys(PARTS) : asked) await PARTS[name]?.();
} else {
  console.error(`There is no bench “${unknown}”. Use one of: ${Object.keys(PARTS).join(', ')}.`);
  process.exitCode = 1;
}
