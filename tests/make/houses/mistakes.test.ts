import { describe, expect, it } from 'vitest';
import { chanceFrom } from '../../../src/make/houses/chance';
import { drawOrders } from '../../../src/make/houses/draw';
import { exact, plain } from '../../../src/make/houses/exact';
import type { Line } from '../../../src/make/houses/line';
import { MISTAKES } from '../../../src/make/houses/mistakes';
import type { Scene } from '../../../src/make/houses/slips/slip';
import { plantIn } from '../../../src/make/houses/plant';
import { bill, reckon } from '../../../src/make/houses/reckon';
import type { Style } from '../../../src/make/houses/style';
import { quillhollow } from '../../../src/make/houses/styles/quillhollow';
import { STYLES } from '../../../src/make/houses/workrooms';

const sceneOf = (style: Style, seed = 5): Scene => ({
  style,
  chance: chanceFrom(seed),
  lines: drawOrders(style, 250, chanceFrom(seed + 1)).flatMap((order) => order.lines),
});

const plantKind = (kind: string, line: Line, scene: Scene) => {
  const mistake = MISTAKES.find((one) => one.kind === kind);
  if (mistake === undefined) throw new Error(`no mistake ${kind}`);
  return plantIn(line, mistake, scene);
};

describe('planted mistakes', () => {
  const scenes = STYLES.map((style) => sceneOf(style));

  it.each(MISTAKES.map(({ kind }) => [kind]))('%s: changes a figure in some house', (kind) => {
    const changed = scenes.filter((scene) =>
      scene.lines.some(
        (line) => line.note === undefined && plantKind(kind, line, scene)?.planted.changes === true,
      ),
    );
    expect(changed.length).toBeGreaterThan(0);
  });

  it('leave the true line as it was', () => {
    const [scene] = scenes as [Scene];
    for (const line of scene.lines.slice(0, 40)) {
      const before = { ...line };
      for (const mistake of MISTAKES) plantIn(line, mistake, scene);
      expect(line).toEqual(before);
    }
  });

  const scene = sceneOf(quillhollow);
  const start: Line = {
    'order no': '1',
    heading: 'pinch',
    draw: 'pair',
    lining: 'lined',
    fabric: 'Corvane',
    quantity: exact(2),
    'rod width': exact(96),
    'finished drop': exact(96),
    'fabric width': exact(54),
    'vertical repeat': exact('13.5'),
    'horizontal repeat': exact(27),
    match: 'straight',
    'unit price': exact(41),
    'lining price': exact('6.25'),
    hardware: exact('96.5'),
  };
  const cloth = { ...start, ...reckon(start, quillhollow.house) };
  const order: Line = { ...cloth, ...bill(cloth, quillhollow.house, quillhollow.prices) };
  const wrong = (kind: string): Line => plantKind(kind, order, scene)?.line ?? {};
  const value = (line: Line, word: 'cut length' | 'yardage' | 'widths' | 'total' | 'tax'): number =>
    plain(line[word] ?? exact(-1));

  // The true order, worked by hand: 6 widths, cut 121½, 40½ yd, labor 342, tax 142.96, total 2456.80.
  it('the repeat ignored cuts 112 in: 37⅜ yd for 12', () => {
    const line = wrong('repeat ignored');
    expect([value(line, 'cut length'), value(line, 'yardage')]).toEqual([112, 37.375]);
  });

  it('the horizontal repeat of 27 taken for the vertical cuts 135 in: 45 yd', () => {
    const line = wrong('repeat from the wrong direction');
    expect([value(line, 'cut length'), value(line, 'yardage')]).toEqual([135, 45]);
  });

  it('a width short leaves 5: 33¾ yd', () => {
    const line = wrong('a width short');
    expect([value(line, 'widths'), value(line, 'yardage')]).toEqual([5, 33.75]);
  });

  it('the quantity forgotten leaves 20¼ yd', () => {
    expect(value(wrong('quantity not multiplied'), 'yardage')).toBe(20.25);
  });

  it('tax on 342 of labor adds 24.80', () => {
    const line = wrong('tax on labor that is exempt');
    expect([value(line, 'tax'), value(line, 'total')]).toEqual([167.75, 2481.59]);
  });

  it('a return left out where the widths stay changes nothing that is shown', () => {
    // 51 × 2½ = 127½ + 8 = 135½ in is still above 135: three widths a panel.
    expect(plantKind('return left out', order, scene)?.planted).toMatchObject({
      changes: false,
      touches: [],
    });
  });
});
