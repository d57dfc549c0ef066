/** How long a command may take and how much memory, where the user says so. */
import { Problem, USAGE } from './problem';

const MEGABYTE = 1_048_576;

function amount(text: string | undefined, option: string): number | undefined {
  if (text === undefined) return undefined;
  const number = Number(text);
  if (!(number > 0))
    throw new Problem(
      `${option} reads “${text}”, which is no number above 0. Give it one, or leave it out.`,
      USAGE,
    );
  return number;
}

/** To be asked now and then; throws once a ceiling is reached. */
export function ceilings(
  asked: { readonly seconds?: string | undefined; readonly memory?: string | undefined },
  now: () => number = () => performance.now(),
  memory: () => number = () => process.memoryUsage.rss(),
): () => void {
  const seconds = amount(asked.seconds, '--seconds');
  const most = amount(asked.memory, '--memory');
  const began = now();
  return () => {
    if (seconds !== undefined && now() - began > seconds * 1_000)
      throw new Problem(
        `It took longer than the ${seconds} seconds given by --seconds, and nothing was written. Give it more, or split the workbook.`,
      );
    if (most !== undefined && memory() > most * MEGABYTE)
      throw new Problem(
        `It needs more than the ${most} MB given by --memory, and nothing was written. Give it more, or split the workbook.`,
      );
  };
}
