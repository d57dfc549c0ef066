/** Where the grommets of one panel stand. */
import { parameter } from '../findings/parameters';
import {
  answer,
  lengthFigure,
  numberFigure,
  refuse,
  step,
  textFigure,
  type Answer,
  type Step,
} from '../cell/answer';
import { NO_LENGTH, type Length } from '../exact/length';
import { showLength } from '../exact/unit';
import { unitOf, type Rules } from '../house/rules';
import { showShare, wholeShare, type Share } from './panel';

export interface Grommets {
  readonly count: number;
  /** From centre to centre, before any is moved away from a seam. */
  readonly spacing: Share;
  readonly firstCentre: Share;
  /** From the leading edge; one too near a seam is moved aside. */
  readonly centres: readonly Share[];
}

export interface GrommetPanel {
  readonly flatWidth: Length;
  /** Rod to wall, at an edge that turns the corner; that edge's last grommet stands at the rod's end. */
  readonly returns?: { readonly leading: Length; readonly outer: Length };
  /** From the leading edge. */
  readonly seams?: readonly Share[];
}

/** A grommet is set no nearer to a seam than the house has it. */
function awayFrom(centre: Share, seams: readonly Share[], apart: Length): Share {
  const near = seams.find((seam) => Math.abs(centre - seam) < apart);
  if (near === undefined) return centre;
  return centre < near ? near - apart : near + apart;
}

interface Moved {
  readonly number: number;
  readonly by: Share;
}

function grommetSteps(
  { flatWidth }: GrommetPanel,
  set: Grommets,
  moved: readonly Moved[],
  rules: Rules,
): Step[] {
  const unit = unitOf(rules);
  const steps = [
    step(
      'grommets',
      '{} at {} or less, up to an even count',
      [lengthFigure(flatWidth), lengthFigure(rules.grommetSpacing)],
      numberFigure(set.count),
    ),
    step('centre to centre', '', [], lengthFigure(wholeShare(set.spacing))),
    step(
      'first centre from the edge',
      rules.grommetEdge === undefined ? 'half the spacing' : 'house rule',
      [],
      lengthFigure(wholeShare(set.firstCentre)),
    ),
  ];
  const last = flatWidth - (set.centres.at(-1) ?? 0);
  if (Math.abs(last - set.firstCentre) > 1)
    steps.push(step('last centre from the return edge', 'the return', [], lengthFigure(wholeShare(last))));
  if (moved.length > 0)
    steps.push(
      step(
        `moved to ${showLength(rules.grommetFromSeam, unit)} from a seam`,
        'the spaces beside each are longer and shorter by as much',
        [],
        textFigure(
          moved.map(({ number, by }) => `no. ${number} by ${showShare(Math.abs(by), unit)}`).join(', '),
        ),
      ),
    );
  return steps;
}

/**
 * An even count of grommets, so that both edges turn to the wall. The first centre is half the spacing from its
 * edge or where the house has it; an edge that turns the corner has it at the return.
 */
export function grommets(panel: GrommetPanel, rules: Rules): Answer<Grommets> {
  const { flatWidth, returns, seams = [] } = panel;
  const fixed = (side: Length | undefined): Length | undefined =>
    side === undefined || side === NO_LENGTH ? rules.grommetEdge : side;
  const [lead, outer] = [fixed(returns?.leading), fixed(returns?.outer)];
  const between = flatWidth - (lead ?? 0) - (outer ?? 0);
  if (between <= 0)
    return refuse(
      'rodTooNarrowForPanels',
      parameter('flatWidth'),
      parameter('flatWidth'),
      showLength(flatWidth, unitOf(rules)),
    );
  // An edge without a place of its own has half a space more.
  const halves = (lead === undefined ? 0.5 : 0) + (outer === undefined ? 0.5 : 0);
  const least = Math.ceil(between / rules.grommetSpacing - halves + 1);
  const count = Math.max(2, least + (least % 2));
  const spacing = between / (count - 1 + halves);
  const firstCentre = lead ?? spacing / 2;
  const even = Array.from({ length: count }, (_, at) => firstCentre + at * spacing);
  const centres = even.map((centre) => awayFrom(centre, seams, rules.grommetFromSeam));
  const moved = centres.flatMap((centre, at): Moved[] => {
    const by = centre - (even[at] ?? centre);
    return by === 0 ? [] : [{ number: at + 1, by }];
  });
  const set = { count, spacing, firstCentre, centres };
  return answer(set, () => grommetSteps(panel, set, moved, rules));
}
