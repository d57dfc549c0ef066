/**
 * A cutting job as an integer programme of another make than ours: how many cuts of each length lie on
 * each stretch, which rolls are open, which room is cut from which lot. Written as LP text, which
 * both solvers read.
 */
export interface Instance {
  readonly name: string;
  readonly cuts: readonly { readonly inches: number; readonly count: number; readonly room?: string }[];
  readonly rolls: readonly {
    readonly yards: number;
    readonly lot?: string;
    readonly flaws?: readonly { readonly fromYards: number; readonly inches: number }[];
    /** Given up at the start of every stretch. */
    readonly toStartInches?: number;
  }[];
  readonly supply: 'as many as it takes' | 'in hand';
  /** The fewest rolls, or that the rolls in hand cannot give every cut. */
  readonly best: { readonly rolls: number } | { readonly short: true };
  readonly provenBy: readonly string[];
}

/** Eighths of an inch: whole for every length of the instances. */
const EIGHTHS = 8;

function whole(figure: number): number {
  if (!Number.isInteger(figure)) throw new Error(`${figure} is no whole number of eighths`);
  return figure;
}

function stretchesOf(roll: Instance['rolls'][number]): number[] {
  const stretches: number[] = [];
  let from = 0;
  for (const flaw of roll.flaws ?? []) {
    stretches.push(whole(flaw.fromYards * 36 * EIGHTHS) - from);
    from = whole((flaw.fromYards * 36 + flaw.inches) * EIGHTHS);
  }
  const given = whole((roll.toStartInches ?? 0) * EIGHTHS);
  return [...stretches, whole(roll.yards * 36 * EIGHTHS) - from].map((one) => Math.max(0, one - given));
}

/** Rolls enough for cloth on order: each length by itself on its own rolls. */
function rollsEnough({ cuts, rolls }: Instance): Instance['rolls'] {
  const roll = rolls[0];
  if (roll === undefined) return [];
  const most = cuts.reduce(
    (sum, { inches, count }) =>
      sum + Math.ceil(count / Math.floor((roll.yards * 36 - (roll.toStartInches ?? 0)) / inches)),
    0,
  );
  return Array.from({ length: most }, () => roll);
}

export function programmeOf(of: Instance): string {
  const rolls = of.supply === 'in hand' ? of.rolls : rollsEnough(of);
  const lengths = [...new Set(of.cuts.map(({ inches }) => inches))];
  const lots = [...new Set(rolls.map(({ lot }) => lot ?? ''))];
  const bound: string[] = [];
  const constraints: string[] = [];
  const cut = (type: number, roll: number, stretch: number): string => `x_${type}_${roll}_${stretch}`;
  const cuts: string[] = [];

  rolls.forEach((roll, r) => {
    stretchesOf(roll).forEach((stretch, s) => {
      const lying = lengths.map((inches, t) => {
        cuts.push(cut(t, r, s));
        return `${whole(inches * EIGHTHS)} ${cut(t, r, s)}`;
      });
      constraints.push(`${lying.join(' + ')} - ${stretch} y_${r} <= 0`);
    });
    // Rolls alike are opened in order: it changes no plan, and spares the solver a search.
    if (of.supply === 'as many as it takes' && r > 0) constraints.push(`y_${r - 1} - y_${r} >= 0`);
  });
  const rooms = lots.length > 1 ? [...new Set(of.cuts.flatMap(({ room }) => room ?? []))] : [];
  lengths.forEach((inches, t) => {
    const lyingOn = (lot?: string): string =>
      rolls
        .flatMap((roll, r) =>
          lot === undefined || (roll.lot ?? '') === lot ? stretchesOf(roll).map((_, s) => cut(t, r, s)) : [],
        )
        .join(' + ');
    const same = of.cuts.filter((line) => line.inches === inches);
    constraints.push(`${lyingOn()} = ${same.reduce((sum, { count }) => sum + count, 0)}`);
    lots.forEach((lot, l) => {
      const wanted = rooms.flatMap((room, at) => {
        const count = same.filter((line) => line.room === room).reduce((sum, line) => sum + line.count, 0);
        return count > 0 ? [`${count} z_${at}_${l}`] : [];
      });
      if (wanted.length > 0) constraints.push(`${lyingOn(lot)} - ${wanted.join(' - ')} >= 0`);
    });
  });
  const choices = rooms.flatMap((_, at) => {
    const own = lots.map((_, l) => `z_${at}_${l}`);
    constraints.push(`${own.join(' + ')} = 1`);
    return own;
  });
  const open = rolls.map((_, r) => `y_${r}`);
  bound.push(...[...open, ...choices].map((name) => `0 <= ${name} <= 1`));
  return [
    'Minimize',
    ` rolls: ${open.join(' + ')}`,
    'Subject To',
    ...constraints.map((line, at) => ` c${at}: ${line}`),
    'Bounds',
    ...bound.map((line) => ` ${line}`),
    'General',
    ...[...open, ...choices, ...cuts].map((name) => ` ${name}`),
    'End',
    '',
  ].join('\n');
}
