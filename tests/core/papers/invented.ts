/** A small invented job for the papers' tests: a reading room and a landing of a house that is nowhere. */
import { DEFAULT_HOUSE } from '../../../src/core/house/house';
import { UNITS, type Length } from '../../../src/core/exact/length';
import { houseWords } from '../../../src/core/papers/house-lines';
import type { JobWindow, PapersJob } from '../../../src/core/papers/job';
import { amount, count, words } from '../../../src/core/papers/paper';
import type { Window } from '../../../src/core/window/columns';
import { WindowWork } from '../../../src/core/window/job';

export const inches = (figure: number): Length => (figure * UNITS.in) as Length;

/** Rod 104, pinch, a pair of lined draperies measured to the floor. */
export const READING_ROOM: Window = {
  room: 'Reading room',
  openingWidth: inches(84),
  leftExtension: inches(10),
  rightExtension: inches(10),
  measured: inches(98),
  heading: 'pinch',
  draw: 'pair',
  fabric: 'Garden print',
  fabricWidth: inches(54),
  lining: 'lined',
};

export const windowAs = (window: Window, line = 1, more: Partial<JobWindow> = {}): JobWindow => ({
  row: 3 + line,
  line,
  room: words(window.room ?? `Window ${line}`, `Windows!A${4 + line}`),
  quantity: count(window.quantity ?? 1),
  work: new WindowWork(window, DEFAULT_HOUSE.rules),
  facts: {},
  price: amount(1240.5, `Quote!E${16 + line}`),
  ...more,
});

export const jobWith = (windows: readonly JobWindow[], more: Partial<PapersJob> = {}): PapersJob => ({
  unit: DEFAULT_HOUSE.unit,
  rules: DEFAULT_HOUSE.rules,
  size: 'letter',
  today: 46_353,
  house: houseWords(new Map([['name', { value: 'Alder & Finch Workroom', at: 'House!B4' }]]), 'letter'),
  client: words('The Pellmere', 'Job!B4'),
  publicBuilding: false,
  children: false,
  windows,
  cloths: [],
  suppliers: [],
  extras: [],
  sums: [
    { label: 'Subtotal', is: 'subtotal', entry: amount(1240.5, 'Quote!B5') },
    { label: 'Freight', is: 'part', entry: amount(0, 'Quote!B8') },
    { label: 'Total', is: 'total', entry: amount(1240.5, 'Quote!B10') },
  ],
  unread: [],
  ...more,
});
