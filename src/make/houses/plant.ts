/** Plants slips among the lines of a house, each kind as often as the others. */
import type { Chance } from './chance';
import { differences } from './differ';
import { drawOrders } from './draw';
import type { Line, Word } from './line';
import { MISTAKES } from './mistakes';
import type { Mistake, Scene } from './slips/slip';
import type { Order, Style } from './style';

export interface Planted {
  readonly kind: string;
  readonly word: Word;
  /** Every word shown whose figure disagrees because of it. */
  readonly touches: readonly Word[];
  /** Whether any figure shown is beyond the tolerance. */
  readonly changes: boolean;
}

export interface PlantedLine {
  readonly line: Line;
  readonly planted: Planted;
}

/** The line with the slip in it; undefined where the slip cannot happen to this line. */
export function plantIn(line: Line, mistake: Mistake, scene: Scene): PlantedLine | undefined {
  const wrong: Line = { ...line };
  const word = mistake.plant(wrong, scene);
  if (word === undefined) return undefined;
  const touches = differences(wrong, scene.style);
  const planted = { kind: mistake.kind, word, touches, changes: touches.length > 0 };
  return { line: wrong, planted };
}

const TRIES = 80;

/** A slip of the kind in some line that has none yet; only one that changes a figure is kept. */
function plantSomewhere(mistake: Mistake, scene: Scene, taken: ReadonlyMap<number, PlantedLine>) {
  for (let tries = 0; tries < TRIES; tries++) {
    const at = scene.chance.whole(0, scene.lines.length - 1);
    const line = scene.lines[at];
    if (line === undefined || taken.has(at) || line.note !== undefined) continue;
    const wrong = plantIn(line, mistake, scene);
    if (wrong?.planted.changes === true) return { at, wrong };
  }
  return undefined;
}

/** Draws the orders and plants so large a share of mistaken lines. */
export function plantAmong(
  style: Style,
  { windows, share }: { readonly windows: number; readonly share: number },
  chance: Chance,
): { readonly orders: readonly Order[]; readonly planted: ReadonlyMap<Line, Planted> } {
  const orders = drawOrders(style, windows, chance);
  const lines = orders.flatMap((order) => order.lines);
  const scene: Scene = { style, chance, lines };
  const taken = new Map<number, PlantedLine>();
  const wanted = Math.round(windows * share);
  const possible = new Set(MISTAKES);
  while (taken.size < wanted && possible.size > 0)
    for (const mistake of possible) {
      if (taken.size >= wanted) break;
      const found = plantSomewhere(mistake, scene, taken);
      if (found === undefined) possible.delete(mistake);
      else taken.set(found.at, found.wrong);
    }
  let at = 0;
  const kept = orders.map((order) => ({
    ...order,
    lines: order.lines.map((line) => taken.get(at++)?.line ?? line),
  }));
  return { orders: kept, planted: new Map([...taken.values()].map(({ line, planted }) => [line, planted])) };
}
