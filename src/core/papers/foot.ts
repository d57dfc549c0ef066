/** The words at every page's foot: which paper, and whose. */
import type { PapersJob } from './job';

export const footOf = (
  { reference, client }: Pick<PapersJob, 'reference' | 'client'>,
  title: string,
): string => [title, reference?.value, client?.value].filter((one) => one !== undefined).join(' · ');
