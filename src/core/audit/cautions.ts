/** Cautions: fire and cords, where someone could be hurt. */
import { finding } from '../cell/answer';
import { digits } from '../exact/unit';
import { unitOf } from '../house/rules';
import type { Check, RowGiven } from './check';
import { told, type OrderFinding } from './finding';

const NO_CERTIFICATE = /^(no|none|n|-+|n\/?a|missing|pending|tbc|tba|open|to come|\?+)$/i;

function findFlame({ at, order, rules, name, has }: RowGiven): OrderFinding[] {
  const { certificate, publicJob } = order.facts;
  const found: OrderFinding[] = [];
  const given = certificate !== undefined && !NO_CERTIFICATE.test(certificate);
  if (publicJob === 'yes' && !given) {
    const read =
      certificate === undefined
        ? has('certificate')
          ? 'no'
          : 'no column for a'
        : `“${certificate}” for the`;
    const column = has('certificate') ? name('certificate') : name('publicJob');
    found.push(told(at, finding('noCertificate', column, read), { found: certificate ?? '' }));
  }
  const { arealWeight } = order.window;
  const most = rules.flameMethodOneUpTo;
  if (given && arealWeight !== undefined && arealWeight > most && /method\s*(1|one|i)\b/i.test(certificate)) {
    const { areal } = unitOf(rules);
    const column = name('arealWeight');
    const about = finding(
      'aboveMethodOne',
      column,
      column,
      `${digits(arealWeight)} ${areal}`,
      `${digits(most)} ${areal}`,
    );
    found.push(
      told(at, about, {
        measure: 'areal weight',
        found: arealWeight,
        expected: most,
      }),
    );
  }
  return found;
}

function findCords({ at, order, name }: RowGiven): OrderFinding[] {
  const { drawnBy, children, childSafe } = order.facts;
  if (drawnBy !== 'cord') return [];
  const inReach = childSafe === 'no' || (children === 'yes' && childSafe !== 'yes');
  return inReach ? [told(at, finding('cordInReach', name('drawnBy'), drawnBy), { found: drawnBy })] : [];
}

export const flame: Check = { find: ({ given }) => findFlame(given) };
export const cords: Check = { find: ({ given }) => findCords(given) };
