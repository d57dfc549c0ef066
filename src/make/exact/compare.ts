/** The whole comparison: so many houses, every heading and draw in each, and seeded chance for the rest. */
import { chance as seeded } from './chance';
import { compareAdvice } from './compare-advice';
import { compareCloth } from './compare-cloth';
import { compareHardwareCost } from './compare-hardware';
import { compareHeading } from './compare-heading';
import { compareMeasures } from './compare-measure';
import { compareMoney } from './compare-money';
import { compareRow } from './compare-schedule';
import { compareSheer } from './compare-sheer';
import { STANDARD, anyHouse } from './house';
import { Tally, type Result } from './tally';
import { windowsOf } from './windows';

export interface Size {
  readonly houses: number;
  /** Every heading with every draw so often in a house. */
  readonly times: number;
  readonly cloths: number;
  readonly seed: number;
}

export function compare(
  { houses, times, cloths, seed }: Size,
  told: (house: number, soFar: Result) => void = () => undefined,
): Result {
  const chance = seeded(seed);
  const tally = new Tally();
  for (let at = 0; at < houses; at += 1) {
    const house = at % 8 === 0 ? STANDARD : anyHouse(at, chance);
    tally.enter({
      ...house.words,
      house: house.rows === undefined ? 'standard' : 'own',
      selvage: house.lengths.selvage.equals(0) ? 'none' : 'given',
      shrinkage: house.ratios.shrinkage.equals(0) ? 'none' : 'given',
    });
    const ground = { house, chance, tally };
    for (const window of windowsOf(house, times, chance)) {
      compareCloth(ground, window, cloths);
      compareAdvice(ground, window);
      compareRow(ground, window);
      compareSheer(ground, window);
      compareHeading(ground, window);
      compareHardwareCost(ground, window);
      compareMeasures(ground, window);
      compareMoney(ground);
    }
    told(at + 1, tally.result);
  }
  return tally.result;
}
