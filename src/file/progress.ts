/** How far a long computation is, for whoever waits: nothing in the first second. */
import type { Progress } from '../engine/workbook';
import type { Io } from './command';

const FIRST = 1_000;
const EVERY = 500;

export function progressOf(io: Io, now: () => number = () => performance.now()): Progress {
  const began = now();
  let told = began + FIRST - EVERY;
  return (done, total) => {
    const time = now();
    if (time - told < EVERY) return;
    told = time;
    io.progress(`… ${done.toLocaleString('en-US')} of ${total.toLocaleString('en-US')} formulas computed`);
  };
}
