/** The engine for Node, where its import form does not load; 0.5 s, so only where a formula is computed. */
import { createRequire } from 'node:module';
import type { Library } from './library';

export function nodeLibrary(): Library {
  const require = createRequire(import.meta.url);
  return {
    core: require('@univerjs/core') as Library['core'],
    formula: require('@univerjs/engine-formula') as Library['formula'],
  };
}
