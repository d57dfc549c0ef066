/** The advice that stands beside a yardage: there where something is saved, with the right figures, else not. */
import { narrowerSaves, shorterCutSaves, turningSaves } from './advice';
import { lengthCell } from './cells';
import { bareCut } from './cloth';
import { clothOf, type Ground } from './compare-cloth';
import { NONE, type Exact } from './figures';
import type { Window } from './windows';

export function compareAdvice(ground: Ground, window: Window): void {
  const { house, chance, tally } = ground;
  const cloth = clothOf(ground);
  const { cells, draw, heading } = window;
  // Where yardage is left exact, or a cut is no whole number of nanometres, a sentence shows it rounded.
  if (house.step.equals(NONE) || bareCut(cloth.drop, heading, house).d !== 1n) return;
  const given = [
    cells.rod,
    lengthCell(cloth.drop, house.unit, chance),
    cells.heading,
    cells.fabric,
    cloth.verticalRepeat === undefined ? null : lengthCell(cloth.verticalRepeat, house.unit, chance),
    cloth.quantity,
    cells.draw,
    cells.fullness,
    cloth.match ?? null,
    cells.horizontalRepeat,
    house.rows,
  ];
  const narrower = narrowerSaves(window, cloth, house);
  const shorter = shorterCutSaves(window, cloth, house);
  // How side panels are cut from turned cloth is not told.
  const turned = draw === 'stationary' ? undefined : turningSaves(window, cloth, house);
  const figures = (...list: readonly Exact[]): readonly number[] => list.map((one) => one.valueOf());
  tally.compareSentences(
    'advice',
    'YARDAGE',
    given,
    [
      [
        /would need ([\d.]+) widths, ([\d.]+) fewer, and save (.+)\.$/,
        narrower && figures(narrower.widths, narrower.fewer, narrower.cloth),
      ],
      [/ less gives .* and saves (.+)\.$/, shorter && figures(shorter.cloth)],
      ...(draw === 'stationary'
        ? []
        : [[/^Railroaded it would take (.+) instead of /, turned && figures(turned.cloth)] as const]),
    ],
    window.about,
  );
}
