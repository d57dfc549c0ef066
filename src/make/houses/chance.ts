/** Seeded chance: the same seed draws the same orders on every machine. */
import type Fraction from 'fraction.js';
import { exact } from './exact';

export interface Chance {
  /** At least 0, below 1. */
  next(): number;
  /** A whole number from the least to the most, both included. */
  whole(least: number, most: number): number;
  /** True once in so many times. */
  oneIn(times: number): boolean;
  pick<T>(choices: readonly T[]): T;
  /** A figure from the least to the most on a grid of steps from the least. */
  between(least: number, most: number, step: number): Fraction;
}

/** A xorshift generator of 32 bits, stirred so that neighbouring seeds part at once. */
export function chanceFrom(seed: number): Chance {
  let state = (Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ (seed >>> 13)) | 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
  for (let turn = 0; turn < 16; turn++) next();
  const whole = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1));
  return {
    next,
    whole,
    oneIn: (times) => next() * times < 1,
    pick: (choices) => {
      const picked = choices[whole(0, choices.length - 1)];
      if (picked === undefined) throw new Error('nothing to pick from');
      return picked;
    },
    between: (least, most, step) =>
      exact(least).add(exact(step).mul(whole(0, Math.floor((most - least) / step + 1e-9)))),
  };
}
