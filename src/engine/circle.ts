/** Which cells refer to themselves in a circle. */

export interface Link {
  readonly id: number;
  /** What it needs, or what needs it: one way or the other, the same for all. */
  readonly next: readonly number[];
}

/** What is left once everything that leads nowhere, or comes from nowhere, is taken away, again and again. */
export function circular(links: readonly Link[]): ReadonlySet<number> {
  const left = new Map(links.map(({ id, next }) => [id, new Set(next)]));
  const before = new Map<number, Set<number>>(links.map(({ id }) => [id, new Set()]));
  for (const { id, next } of links) for (const one of next) before.get(one)?.add(id);
  for (const next of left.values()) for (const one of next) if (!left.has(one)) next.delete(one);
  const loose = [...left.keys()].filter((id) => left.get(id)?.size === 0 || before.get(id)?.size === 0);
  for (let id = loose.pop(); id !== undefined; id = loose.pop()) {
    if (!left.has(id)) continue;
    const [ahead, behind] = [left.get(id) ?? [], before.get(id) ?? []];
    left.delete(id);
    for (const one of ahead) {
      before.get(one)?.delete(id);
      if (before.get(one)?.size === 0) loose.push(one);
    }
    for (const one of behind) {
      left.get(one)?.delete(id);
      if (left.get(one)?.size === 0) loose.push(one);
    }
  }
  return new Set(left.keys());
}
