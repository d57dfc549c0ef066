/** What holds it up: rod pieces and brackets. */
import { parameter } from '../findings/parameters';
import {
  answer,
  finding,
  lengthFigure,
  numberFigure,
  refuse,
  step,
  textFigure,
  type Answer,
  type Finding,
} from '../cell/answer';
import { exact, piecesToCover, type Length } from '../exact/length';
import type { Rules } from '../house/rules';

const LOAD_CAUTION: readonly Finding[] = [finding('loadCaution', parameter('rodWidth'))];

/** Brackets by the largest span for the weight, ends included; of a bay one at each bend too. */
export function brackets(
  hung: { rodWidth: Length; weight: number | undefined; parts?: readonly Length[] | undefined },
  rules: Rules,
): Answer<number> {
  const { rodWidth, weight, parts = [rodWidth] } = hung;
  const heavy = weight !== undefined && weight >= rules.heavyFrom;
  const span = heavy ? rules.bracketSpanHeavy : rules.bracketSpanLight;
  const value = parts.reduce((spans, part) => spans + piecesToCover(part, span), 0) + 1;
  return answer(
    value,
    () => [
      step(
        'brackets',
        `${parts.map(() => '{}').join(' + ')} in spans of {} at most (${heavy ? 'heavy' : 'light'}), one more than the spans`,
        [...parts.map(lengthFigure), lengthFigure(span)],
        numberFigure(value),
      ),
    ],
    LOAD_CAUTION,
  );
}

export interface RodPieces {
  readonly pieces: readonly { readonly stockLength: Length; readonly count: number }[];
  readonly splices: number;
}

const MOST_STOCK = 12;

/** How far a given number of pieces may fall short of all being the longest, by which lengths. */
function bestDrops(pieces: number, drops: readonly Length[], slack: number): readonly number[] {
  // sum dropped → how many pieces of each length drop it, fewest pieces first
  let reached = new Map<number, readonly number[]>([[0, drops.map(() => 0)]]);
  const all = new Map(reached);
  for (let used = 0; used < pieces && reached.size > 0; used++) {
    const next = new Map<number, readonly number[]>();
    for (const [sum, counts] of reached) {
      for (const [at, dropped] of drops.entries()) {
        const more = sum + dropped;
        if (more > slack || all.has(more)) continue;
        const now = counts.map((count, i) => (i === at ? count + 1 : count));
        all.set(more, now);
        next.set(more, now);
      }
    }
    reached = next;
  }
  return all.get(Math.max(...all.keys())) ?? [];
}

/** Stock pieces for a rod: the fewest pieces, then the least length; spliced at a bracket. */
export function rodPieces(
  given: { rodWidth: Length; stockLengths: readonly Length[] | undefined },
  rules: Rules,
): Answer<RodPieces> {
  const stock = [...new Set(given.stockLengths ?? rules.stockRods)].sort((a, b) => b - a);
  const longest = stock[0];
  if (longest === undefined) return refuse('noStockRods', parameter('stockLengths'));
  if (stock.length > MOST_STOCK) return refuse('tooManyStockRods', parameter('stockLengths'), MOST_STOCK);
  const pieces = piecesToCover(given.rodWidth, longest);
  const shorter = stock.slice(1);
  const drops = shorter.map((one) => exact(longest - one));
  const dropped = bestDrops(pieces, drops, pieces * longest - given.rodWidth);
  const least = pieces * longest - dropped.reduce((sum, count, at) => sum + count * (drops[at] ?? 0), 0);
  // Pieces of one length where that comes to the same.
  const even = stock.find((one) => one * pieces === least);
  const counts =
    even === undefined
      ? [pieces - dropped.reduce((sum, count) => sum + count, 0), ...dropped]
      : stock.map((one) => (one === even ? pieces : 0));
  const set = stock
    .map((stockLength, at) => ({ stockLength, count: counts[at] ?? 0 }))
    .filter(({ count }) => count > 0);
  const total = exact(set.reduce((sum, one) => sum + one.stockLength * one.count, 0));
  const findings = pieces > 1 ? LOAD_CAUTION : [];
  return answer(
    { pieces: set, splices: pieces - 1 },
    [
      step(
        'pieces',
        'the fewest that cover {}, then the least length',
        [lengthFigure(given.rodWidth)],
        numberFigure(pieces),
      ),
      step(
        'cut off',
        '{} − {}',
        [lengthFigure(total), lengthFigure(given.rodWidth)],
        lengthFigure(exact(total - given.rodWidth)),
      ),
      step('splices, each at a bracket', '', [], textFigure(String(pieces - 1))),
    ],
    findings,
  );
}

/** Stock pieces of a bay: each straight part by itself, since no piece runs around a bend. */
export function bayPieces(parts: readonly Length[], rules: Rules): Answer<RodPieces> {
  const each = parts.map((rodWidth) => rodPieces({ rodWidth, stockLengths: undefined }, rules));
  const counts = new Map<Length, number>();
  for (const { value } of each)
    for (const { stockLength, count } of value.pieces)
      counts.set(stockLength, (counts.get(stockLength) ?? 0) + count);
  const pieces = [...counts]
    .sort(([one], [other]) => other - one)
    .map(([stockLength, count]) => ({ stockLength, count }));
  const splices = each.reduce((sum, { value }) => sum + value.splices, 0);
  return answer(
    { pieces, splices },
    () => [
      ...each.flatMap(({ steps }) => steps),
      step('bends, one fewer than the straight parts', '', [], numberFigure(parts.length - 1)),
    ],
    LOAD_CAUTION,
  );
}
