/** A long text that passes by in pieces: what was passed on or skipped is let go. */
export class PassingText {
  readonly #pieces: Iterator<string>;
  #held = '';
  /** Where what is held begins in the whole text. */
  #base = 0;
  /** How far it was passed on. */
  #done = 0;

  constructor(pieces: Iterable<string>) {
    this.#pieces = pieces[Symbol.iterator]();
  }

  /** What stands there; nothing of it may have been passed on. */
  readonly slice = (from: number, to: number): string => {
    while (to > this.#base + this.#held.length && this.#next());
    return this.#held.slice(from - this.#base, to - this.#base);
  };

  #next(): boolean {
    const { done, value } = this.#pieces.next();
    if (done === true) return false;
    const kept = this.#done - this.#base;
    this.#held = this.#held.slice(kept) + value;
    this.#base += kept;
    return true;
  }

  /** Passes on what comes before this place. */
  *upTo(end: number): Generator<string> {
    if (end < this.#done) throw new Error(`two edits overlap at ${end}`);
    for (;;) {
      const here = Math.min(end, this.#base + this.#held.length);
      const text = this.#held.slice(this.#done - this.#base, here - this.#base);
      this.#done = here;
      if (text !== '') yield text;
      if (here === end || !this.#next()) return;
    }
  }

  skip(to: number): void {
    this.slice(to, to);
    this.#done = Math.max(this.#done, to);
  }

  *rest(): Generator<string> {
    yield* this.upTo(Infinity);
  }
}
