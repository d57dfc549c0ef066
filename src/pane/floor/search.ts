/** Asks the search beside the page for the best plan; stopped, it keeps the best so far. */
import { quickLayout, toPlan, type CutPlan } from '../../core/rolls/plan';
import type { CuttingJob } from '../../core/rolls/cutting';
import type { BestPlan } from '../../solve/best-plan';
import type { SearchReport } from '../../solve/search';
import type { Asked, Told } from './worker';

export interface Found extends BestPlan {
  /** Why there was no search beyond the quick plan. */
  readonly unsearched?: string;
}

const found = (plan: CutPlan, seconds: number, ended: BestPlan['ended']): Found => ({
  plan,
  gap: plan.proven ? 0 : Math.max(0, plan.rolls.length - plan.lowerBound),
  seconds,
  ended: plan.proven ? 'proven' : ended,
});

export function searchPlan(
  job: CuttingJob,
  given: {
    readonly seconds: number;
    readonly signal: AbortSignal | undefined;
    readonly progress: (report: SearchReport) => void;
  },
): Promise<Found> {
  const began = performance.now();
  const elapsed = (): number => (performance.now() - began) / 1000;
  let last: CutPlan | undefined;
  const sofar = (): CutPlan => (last ??= toPlan(job, quickLayout(job)));
  return new Promise((done) => {
    const worker = new Worker(new URL('./worker.ts', import.meta.url));
    const end = (with_: Found): void => {
      worker.terminate();
      given.signal?.removeEventListener('abort', stop);
      done(with_);
    };
    const stop = (): void => {
      end(found(sofar(), elapsed(), 'stopped'));
    };
    const unsearched = (why: string): void => {
      end({ ...found(sofar(), elapsed(), 'searched'), unsearched: why });
    };
    worker.addEventListener('message', ({ data }: MessageEvent<Told>) => {
      if ('report' in data) {
        last = data.report.plan;
        given.progress(data.report);
      } else if ('best' in data) end(data.best);
      else unsearched(data.failed);
    });
    worker.addEventListener('error', ({ message }) => {
      unsearched(message);
    });
    given.signal?.addEventListener('abort', stop);
    const asked: Asked = { job, seconds: given.seconds };
    worker.postMessage(asked);
  });
}
