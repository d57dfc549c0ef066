/** What the table of cloths says of a window's cloth, where the window's own row does not. */
import { WEIGHT_RULE, type Behind } from '../../core/cloth/behind';
import type { House } from '../../core/house/house';
import { namedAs, type JobCloth } from '../../core/papers/job';
import type { Entry } from '../../core/papers/paper';
import { matchOfText } from '../../core/window/reader/treatment-text';
import type { RowRead, Values } from '../../core/window/reader/slots';

const weightOf = (entry: Entry | undefined): number | undefined =>
  typeof entry?.value === 'number' && entry.value > 0 ? entry.value : undefined;

/** The row with its cloth's match and weight. Its widths and repeats are the row's own: it was priced by them. */
export function withCloth(read: RowRead, cloths: readonly JobCloth[]): RowRead {
  const { fabric } = read.values;
  const cloth = typeof fabric === 'string' ? namedAs(cloths, fabric) : undefined;
  if (cloth === undefined) return read;
  const stated: Values = {
    match: cloth.match === undefined ? undefined : matchOfText(String(cloth.match.value)),
    arealWeight: weightOf(cloth.weight),
  };
  const own = Object.fromEntries(Object.entries(read.values).filter(([, value]) => value !== undefined));
  return { ...read, values: { ...stated, ...own } };
}

/** The house with the weights of its linings, where only their table says them. */
export function withLinings(house: House, cloths: readonly JobCloth[]): House {
  const weights = (Object.keys(WEIGHT_RULE) as Behind[]).flatMap((cloth) => {
    const rule = WEIGHT_RULE[cloth];
    const weight = weightOf(namedAs(cloths, cloth)?.weight);
    return weight === undefined || house.rules[rule] !== undefined ? [] : [[rule, weight] as const];
  });
  return weights.length === 0
    ? house
    : { ...house, rules: { ...house.rules, ...Object.fromEntries(weights) } };
}
