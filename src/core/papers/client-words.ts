/** A window in the client's words, made from its facts alone. */
import { Refusal } from '../cell/answer';
import type { Draw, FloorFinish, Heading, Lining } from '../cell/treatment';
import { isDrawn, panelsOf } from '../cell/treatment';
import { hangingOf } from '../heading/fittings';
import { showLength } from '../exact/unit';
import { unitOf } from '../house/rules';
import type { DrawnBy } from '../window/facts';
import type { WindowWork } from '../window/job';

const HEADED: Readonly<Record<Heading, string>> = {
  pinch: 'pinch-pleated',
  goblet: 'goblet-pleated',
  cartridge: 'cartridge-pleated',
  box: 'box-pleated',
  inverted: 'inverted-pleated',
  pencil: 'pencil-pleated',
  'rod pocket': 'rod-pocket',
  'tab top': 'tab-top',
  grommet: 'grommet-top',
  wave: 'wave-headed',
  flat: 'flat',
};
const LINED: Readonly<Record<Lining, string>> = {
  unlined: 'unlined',
  lined: 'lined',
  interlined: 'interlined',
  blackout: 'blackout-lined',
};
const LONG: Readonly<Record<FloorFinish, string>> = {
  clear: 'floor length',
  kiss: 'just touching the floor',
  break: 'breaking on the floor',
  puddle: 'pooling on the floor',
  sill: 'to the sill',
  apron: 'to below the sill',
  radiator: 'ending above the radiator',
  counter: 'ending above the counter',
};

/** What is hung, as many words as the draw needs. */
function hung(draw: Draw, made: string): string {
  switch (draw) {
    case 'pair':
      return `pair of ${made} draperies`;
    case 'one-way left':
      return `${made} drapery, one panel drawn to the left`;
    case 'one-way right':
      return `${made} drapery, one panel drawn to the right`;
    case 'stationary':
      return `pair of ${made} side panels that stay open`;
    case 'stationary cover':
      return `${made} drapery that stays closed`;
    case 'one stationary panel':
      return `one ${made} side panel that stays open`;
  }
}

/** A figure that a sound window may not have. */
export function orNone<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}

/** What the cloth hangs on, by the trade's word for it. */
export const hungOn = ({ window, rules }: WindowWork): 'rod' | 'track' => {
  const hanging = hangingOf(window.heading ?? 'pinch', rules);
  return hanging === 'track' || hanging === 'wave' ? 'track' : 'rod';
};

function longWords(work: WindowWork): string | undefined {
  const { measured, floorFinish } = work.window;
  if (measured !== undefined) return LONG[floorFinish ?? 'clear'];
  const drop = orNone(() => work.finishedDrop().value);
  return drop === undefined ? undefined : `${showLength(drop, unitOf(work.rules))} long`;
}

function rodWords(work: WindowWork): string | undefined {
  if (work.window.hangOn === 'none') return undefined;
  const rod = orNone(() => work.rod);
  return rod === undefined ? undefined : `on a ${showLength(rod, unitOf(work.rules))} ${hungOn(work)}`;
}

/** “pair of lined pinch-pleated draperies, Garden print, floor length, on a 104 in rod, installed”. */
export function clientWords(work: WindowWork, installed: boolean): string {
  const { heading, lining, draw = 'pair', fabric, mount } = work.window;
  const made = [
    lining === undefined ? undefined : LINED[lining],
    heading === undefined ? undefined : HEADED[heading],
  ]
    .filter((one) => one !== undefined)
    .join(' ');
  return [
    hung(draw, made),
    fabric,
    longWords(work),
    rodWords(work),
    mount === 'recess' ? 'inside the opening' : undefined,
    installed ? 'installed' : undefined,
  ]
    .filter((one) => one !== undefined && one !== '')
    .join(', ');
}

const CONTROL: Readonly<Record<DrawnBy, string>> = {
  cord: 'drawn by a cord or loop, held by a tension device',
  wand: 'drawn by a wand',
  hand: 'drawn by hand',
  motor: 'drawn by a motor',
};

/** By what it is drawn; undefined where nothing says. */
export const drivenBy = ({ rules }: WindowWork, drawnBy: DrawnBy | undefined): DrawnBy | undefined =>
  drawnBy ?? (rules.wands === 'yes' ? 'wand' : undefined);

/** Which way it draws, and by what. */
function drawnWords(work: WindowWork, drawnBy: DrawnBy | undefined): string | undefined {
  const { draw = 'pair' } = work.window;
  if (!isDrawn(draw)) return undefined;
  const side =
    draw === 'pair' ? 'opens from the centre' : `stacks at the ${draw === 'one-way left' ? 'left' : 'right'}`;
  const by = drivenBy(work, drawnBy);
  return [side, by === undefined ? undefined : CONTROL[by]].filter((one) => one !== undefined).join(', ');
}

/** The specification below a line: sizes, fullness as delivered, lining, hardware, how it draws. */
export function specification(
  work: WindowWork,
  { drawnBy, ownMaterial }: { readonly drawnBy?: DrawnBy | undefined; readonly ownMaterial?: boolean } = {},
): string {
  const { rules, window } = work;
  const unit = unitOf(rules);
  const finished = orNone(() => work.finishedWidth().value);
  const drop = orNone(() => work.finishedDrop().value);
  const delivered = orNone(() => work.cloth().work.delivered);
  const rings = orNone(() => work.fittings());
  const panels = panelsOf(window.draw ?? 'pair');
  const behind = work.clothsBehind.join(' and ');
  const hardware =
    rings === undefined || rings.rod === 0
      ? undefined
      : [
          `${hungOn(work)} with ${rings.brackets} brackets`,
          rings.rings > 0 ? `${rings.rings} ${hungOn(work) === 'track' ? 'carriers' : 'rings'}` : undefined,
          rings.finials > 0 ? 'finials' : undefined,
        ]
          .filter((one) => one !== undefined)
          .join(', ');
  return [
    finished === undefined || drop === undefined
      ? undefined
      : `${panels === 2 ? 'each panel' : 'panel'} ${showLength(finished, unit)} wide by ${showLength(drop, unit)} long`,
    delivered === undefined ? undefined : `${delivered.toFixed(2)} times full`,
    behind === '' ? undefined : `with ${behind}`,
    hardware,
    drawnWords(work, drawnBy),
    ownMaterial === true ? 'made from your own material' : undefined,
  ]
    .filter((one) => one !== undefined)
    .join('; ');
}
