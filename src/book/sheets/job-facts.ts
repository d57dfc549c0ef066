/** The facts of the job: for whom, where, when, and what the cautions need to know. */
import { laidOut, oneOf, pairs, titled, together, YES_OR_NO, type Draft, type Job, type Pair } from './draft';

const yesNo = (says: string) => oneOf(YES_OR_NO, says);

const FACTS: readonly Pair[] = [
  { label: 'client', role: 'input', name: 'Job_client' },
  { label: 'place', role: 'input', says: 'where the windows are' },
  { label: 'reference', role: 'input', says: 'your own number for the job' },
  { label: 'measured by', role: 'input' },
  { label: 'measured on', role: 'input', format: 'yyyy-mm-dd' },
  { label: 'quote valid until', role: 'input', format: 'yyyy-mm-dd' },
  {
    label: 'public building',
    role: 'input',
    name: 'Job_public',
    value: 'no',
    choice: yesNo('Choose yes or no.'),
    says: 'yes asks a flame certificate of every fabric used; local codes and licensed practice decide',
  },
  {
    label: 'children may be present',
    role: 'input',
    name: 'Job_children',
    value: 'yes',
    choice: yesNo('Choose yes or no.'),
    says: 'cords and loops are a strangulation hazard; local codes and licensed practice decide',
  },
];
const WIDE = [28, 28, 70];

/** The facts alone, for a job whose windows stand in a table of the user's own. */
export function jobFactsSheet(job: Job): Draft {
  const sheet = job.sheet('Job');
  return together(
    titled(sheet, 'Job', 'What the papers say of the job. Fill in what is shaded as an input.'),
    pairs(job, sheet, 3, FACTS),
    laidOut(job, sheet, { header: 1, widths: WIDE }),
  );
}

export function jobSheet(job: Job): Draft {
  const sheet = job.sheet('Job');
  return together(
    titled(sheet, 'Job', 'Fill in what is shaded as an input; everything else is worked out.'),
    pairs(job, sheet, 3, [
      ...FACTS,
      { label: 'check', role: 'check', formula: `=${job.name('Checks_all')}` },
      { label: 'total', role: 'output', format: '#,##0.00', formula: `=${job.name('Quote_total')}` },
    ]),
    laidOut(job, sheet, { header: 1, widths: WIDE }),
  );
}
