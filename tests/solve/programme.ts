/**
 * A cutting job as an integer programme of another make than ours: how many cuts of each length lie on
 * each stretch, which rolls are open, which room is cut from which lot. Written as LP text, which
 * both solvers read.
 */
export interface Instance {
  readonly name: string;
  readonly cuts: readonly {
    /** What it takes where a cut of its own start follows. */
    readonly inches: number;
    /** What it takes where none follows. */
    readonly bareInches?: number;
    /** Of a half-drop: what it takes where a cut of the other start follows. */
    readonly unlikeInches?: number;
    readonly start?: 'A' | 'B';
    readonly count: number;
    readonly room?: string;
  }[];
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
    (sum, { inches, bareInches = inches, count }) =>
      sum +
      Math.ceil(
        count / (1 + Math.floor((roll.yards * 36 - (roll.toStartInches ?? 0) - bareInches) / inches)),
      ),
    0,
  );
  return Array.from({ length: most }, () => roll);
}

type Cut = Instance['cuts'][number];

const typeOf = ({ inches, bareInches = inches, start = 'A', unlikeInches = inches }: Cut): string =>
  [inches, bareInches, start, unlikeInches].join(' ');

/**
 * How the cuts of one stretch may follow one another. Of every type so many are followed by their own start,
 * so many by the other, and at most one cut of the stretch by none. Where both starts lie on it there is a
 * change between them, and they change in turn.
 */
function following(types: readonly Cut[], place: string, stretch: number, open: string) {
  const name = (what: string, type: number): string => `${what}_${type}_${place}`;
  const each = types.map((cut, type) => ({
    cut,
    all: name('x', type),
    unlike: name('u', type),
    last: name('l', type),
  }));
  const sum = (sign: string, terms: readonly string[]): string =>
    terms.map((term) => ` ${sign} ${term}`).join('');
  const startingAt = (start: 'A' | 'B'): typeof each =>
    each.filter(({ cut }) => (cut.start ?? 'A') === start);
  const eighths = (inches: number): number => whole(inches * EIGHTHS);
  const cloth = each.map(
    ({ cut: { inches, bareInches = inches, unlikeInches = inches }, all, unlike, last }) => {
      const [own, apart, bare] = [inches, unlikeInches, bareInches].map(eighths) as [number, number, number];
      return `${own} ${all} + ${apart - own} ${unlike} - ${own - bare} ${last}`.replace('+ -', '- ');
    },
  );
  const constraints = [
    `${cloth.join(' + ')} - ${stretch} ${open} <= 0`,
    `${each.map(({ last }) => last).join(' + ')} <= 1`,
    ...each.map(({ all, unlike, last }) => `${all} - ${unlike} - ${last} >= 0`),
  ];
  const most = types.reduce((number, { count }) => number + count, 0);
  for (const [one, other] of [
    ['A', 'B'],
    ['B', 'A'],
  ] as const) {
    const [own, others] = [startingAt(one), startingAt(other)];
    if (own.length === 0) continue;
    const changes = own.map(({ unlike }) => unlike);
    const back = others.map(({ unlike }) => unlike);
    const lasts = own.map(({ last }) => last);
    // The start that is not the last one is left for the other as often as it is come to, or once more.
    constraints.push(`${changes.join(' + ')}${sum('-', back)}${sum('+', lasts)} <= 1`);
    // Cuts of a start are left for the other, or the last is one of them.
    constraints.push(
      `${own.map(({ all }) => all).join(' + ')}${sum(`- ${most}`, [...changes, ...lasts])} <= 0`,
    );
    if (others.length === 0) changes.forEach((change) => constraints.push(`${change} = 0`));
  }
  const starts = new Set(types.map(({ start = 'A' }) => start));
  if (starts.size > 1) {
    const [a, b] = [startingAt('A'), startingAt('B')].map((own) => own.map(({ unlike }) => unlike));
    const lastsOf = (start: 'A' | 'B') => startingAt(start).map(({ last }) => last);
    // Where A is the last, B is left at least as often as A, and the other way round.
    for (const [own, others, lasts] of [
      [a, b, lastsOf('A')],
      [b, a, lastsOf('B')],
    ] as const)
      constraints.push(
        `${(own ?? []).join(' + ')}${sum('-', others ?? [])}${sum(`+ ${most}`, lasts)} <= ${most}`,
      );
  }
  return { constraints, whole: each.flatMap(({ all, unlike, last }) => [all, unlike, last]) };
}

export function programmeOf(instance: Instance): string {
  const rolls = instance.supply === 'in hand' ? instance.rolls : rollsEnough(instance);
  const keys = [...new Set(instance.cuts.map(typeOf))];
  const types = keys.map((key) => {
    const same = instance.cuts.filter((cut) => typeOf(cut) === key);
    return { ...(same[0] as Cut), count: same.reduce((sum, { count }) => sum + count, 0) };
  });
  const lots = [...new Set(rolls.map(({ lot }) => lot ?? ''))];
  const bound: string[] = [];
  const constraints: string[] = [];
  const cut = (type: number, roll: number, stretch: number): string => `x_${type}_${roll}_${stretch}`;
  const cuts: string[] = [];

  rolls.forEach((roll, r) => {
    stretchesOf(roll).forEach((stretch, s) => {
      const lying = following(types, `${r}_${s}`, stretch, `y_${r}`);
      constraints.push(...lying.constraints);
      cuts.push(...lying.whole);
    });
    // Rolls alike are opened in order: it changes no plan, and spares the solver a search.
    if (instance.supply === 'as many as it takes' && r > 0) constraints.push(`y_${r - 1} - y_${r} >= 0`);
  });
  const rooms = lots.length > 1 ? [...new Set(instance.cuts.flatMap(({ room }) => room ?? []))] : [];
  keys.forEach((key, t) => {
    const lyingOn = (lot?: string): string =>
      rolls
        .flatMap((roll, r) =>
          lot === undefined || (roll.lot ?? '') === lot ? stretchesOf(roll).map((_, s) => cut(t, r, s)) : [],
        )
        .join(' + ');
    const same = instance.cuts.filter((line) => typeOf(line) === key);
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
