/** The lines of a quote in the client's words: windows by room, further lines under theirs or for the whole job. */
import { clientWords, specification } from './client-words';
import { extrasOf, forTheJob } from './extras';
import { byRoom, isClients, namedAs, type JobExtra, type JobWindow, type PapersJob } from './job';
import { upperFirst, words, type Entry, type TableRow } from './paper';

/** Nothing is charged to a client at 0.00. */
const charged = (price: Entry | undefined): Entry | undefined => price && { ...price, zero: 'no charge' };

function windowRows(job: PapersJob, one: JobWindow, room: string, installed: boolean): readonly TableRow[] {
  const { work, quantity, price, facts } = one;
  const said = clientWords(work, installed);
  const spec = specification(work, {
    drawnBy: facts.drawnBy,
    ownMaterial: isClients(namedAs(job.cloths, work.window.fabric)),
  });
  return [
    {
      is: 'line',
      cells: [words(room === '' ? upperFirst(said) : `${room}: ${said}`), quantity, charged(price)],
    },
    ...(spec === '' ? [] : [{ is: 'detail' as const, cells: [words(upperFirst(spec))] }]),
    ...(one.remarks === undefined ? [] : [{ is: 'detail' as const, cells: [one.remarks] }]),
  ];
}

const extraRow = ({ what, words: said, quantity, price }: JobExtra): TableRow => ({
  is: 'line',
  cells: [words(upperFirst(String((said ?? what).value))), quantity, charged(price)],
});

/** Windows of one room stand together; a room of several layers or further lines has its name above them. */
export function quoteLines(job: PapersJob): readonly TableRow[] {
  const installed = job.sums.some(
    ({ label, entry }) => /install|hanging|fitting/i.test(label) && entry.value !== 0,
  );
  const rooms = byRoom(job.windows).flatMap(({ room, windows }): readonly TableRow[] => {
    const extras = windows.flatMap((one) => extrasOf(job.extras, one));
    if (windows.length === 1 && extras.length === 0)
      return windows.flatMap((one) => windowRows(job, one, String(room.value), installed));
    return [
      { is: 'group', cells: [room] },
      ...windows.flatMap((one) => [
        ...windowRows(job, one, '', installed),
        ...extrasOf(job.extras, one).map(extraRow),
      ]),
    ];
  });
  const rest = forTheJob(job.extras, job.windows);
  return rest.length === 0
    ? rooms
    : [...rooms, { is: 'group', cells: [words('For the whole job')] }, ...rest.map(extraRow)];
}
