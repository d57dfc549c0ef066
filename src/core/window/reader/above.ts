/** What the rows above say for those below: room, order and client carried down, and the cells that a ditto repeats. */
import type { OrderKey } from '../meanings';
import type { Cell } from './cells';
import type { Value } from './values';

/** What rows have said, as plain data. */
export interface Said {
  readonly carried: Readonly<Partial<Record<OrderKey, Value>>>;
  /** The last filled cell of each column that is read. */
  readonly cells: readonly (Cell | undefined)[];
}

/** At the top of a sheet. */
export const NOTHING_SAID: Said = { carried: {}, cells: [] };

/** What some rows said, whatever stands above them. */
export interface SaidSince extends Said {
  /** Whether a section began among them, so that nothing is carried into it. */
  readonly begun: boolean;
}

export const saidAfter = (before: Said, { carried, cells, begun }: SaidSince): Said => ({
  carried: begun ? carried : { ...before.carried, ...carried },
  cells: Array.from(
    { length: Math.max(before.cells.length, cells.length) },
    (_, place) => cells[place] ?? before.cells[place],
  ),
});

/** What was asked of the rows above the first one read. */
export interface Asked {
  readonly carried: readonly OrderKey[];
  readonly cells: readonly number[];
}

/** Whether two states of the rows above answer the same. */
export const answerAlike = ({ carried, cells }: Asked, one: Said, other: Said): boolean =>
  carried.every((key) => one.carried[key] === other.carried[key]) &&
  cells.every((place) => JSON.stringify(one.cells[place]) === JSON.stringify(other.cells[place]));

export class Above {
  private carried: Partial<Record<OrderKey, Value>> = {};
  private cells: (Cell | undefined)[] = [];
  private begun = false;
  private readonly askedCarried = new Set<OrderKey>();
  private readonly askedCells = new Set<number>();

  constructor(private readonly before: Said = NOTHING_SAID) {}

  get since(): SaidSince {
    return { carried: { ...this.carried }, cells: [...this.cells], begun: this.begun };
  }

  get asked(): Asked {
    return { carried: [...this.askedCarried], cells: [...this.askedCells] };
  }

  /** Asks are counted anew from here. */
  forgetAsked(): void {
    this.askedCarried.clear();
    this.askedCells.clear();
  }

  /** All that was said since is taken as unsaid. */
  forget(): void {
    [this.carried, this.cells, this.begun] = [{}, [], false];
    this.forgetAsked();
  }

  value(key: OrderKey): Value | undefined {
    const value = this.carried[key];
    if (value !== undefined || this.begun) return value;
    this.askedCarried.add(key);
    return this.before.carried[key];
  }

  carry(key: OrderKey, value: Value): void {
    this.carried[key] = value;
  }

  /** A new section, or the end of one: nothing is carried on. */
  begin(): void {
    this.carried = {};
    this.begun = true;
  }

  cell(place: number): Cell | undefined {
    const cell = this.cells[place];
    if (cell !== undefined) return cell;
    this.askedCells.add(place);
    return this.before.cells[place];
  }

  /** The last filled cell of a column; a ditto says nothing new. */
  remember(place: number, cell: Cell): void {
    this.cells[place] = cell;
  }
}
