/** The integer solver, loaded once; where its wasm file lies is the page's or the command's business. */
import type { Highs } from 'highs';

let loaded: Promise<Highs> | undefined;

/** `wasm` is the address of highs.wasm in a page; in Node it is found beside its package. */
export function loadSolver(wasm?: string): Promise<Highs> {
  loaded ??= load(wasm).catch((failed: unknown) => {
    // The next one who asks may have the network back.
    loaded = undefined;
    throw failed;
  });
  return loaded;
}

async function load(wasm: string | undefined): Promise<Highs> {
  const { default: start } = await import('highs');
  return start(wasm === undefined ? {} : { locateFile: () => wasm });
}
