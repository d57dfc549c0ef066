/** The search for the best plan, beside the page, so that the pane goes on answering. */
import type { CuttingJob } from '../../core/rolls/cutting';
import { bestPlan, type BestPlan } from '../../solve/best-plan';
import { loadSolver } from '../../solve/load';
import type { SearchReport } from '../../solve/search';

export interface Asked {
  readonly job: CuttingJob;
  readonly seconds: number;
}
export type Told =
  { readonly report: SearchReport } | { readonly best: BestPlan } | { readonly failed: string };

const tell = (told: Told): void => {
  postMessage(told);
};

async function search({ job, seconds }: Asked): Promise<void> {
  try {
    const highs = await loadSolver(new URL('highs/runtime', import.meta.url).href);
    const progress = (report: SearchReport): void => {
      tell({ report });
    };
    tell({ best: await bestPlan(job, { highs, seconds, progress }) });
  } catch (thrown) {
    tell({ failed: thrown instanceof Error ? thrown.message : String(thrown) });
  }
}

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  void search(data);
});
