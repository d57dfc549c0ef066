/** The engine's two packages, handed in: Node must `require` them, a page's bundler imports them. */
import type * as Core from '@univerjs/core';
import type * as Formula from '@univerjs/engine-formula';

export interface Library {
  readonly core: typeof Core;
  readonly formula: typeof Formula;
}
