/** Starts a worker thread from its source, where no bundle is made. */
import { register } from 'tsx/esm/api';

register();
await import('./worker.ts');
