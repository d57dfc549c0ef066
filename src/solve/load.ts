/** The integer solver, loaded once; where its wasm file lies is the page's or the command's business. */
import type { Highs } from 'highs';

let loaded: Promise<Highs> | undefined;

/** `wasm` is the address of highs.wasm in a page; in Node it is found beside its package. */
export function loadSolver(wasm?: string): Promise<Highs> {
  loaded ??= import('highs').then(({ default: load }) =>
    load(wasm === undefined ? {} : { locateFile: () => wasm }),
  );
  return loaded;
}
