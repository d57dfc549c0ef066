/** Orders of the invented workrooms worked by hand from their rules. */
import { describe, expect, it } from 'vitest';
import { exact, plain } from '../../../src/make/houses/exact';
import type { Line } from '../../../src/make/houses/line';
import { bill, reckon } from '../../../src/make/houses/reckon';
import type { Style } from '../../../src/make/houses/style';
import { carrabeen } from '../../../src/make/houses/styles/carrabeen';
import { cressfold } from '../../../src/make/houses/styles/cressfold';
import { foxglove } from '../../../src/make/houses/styles/foxglove';
import { garthow } from '../../../src/make/houses/styles/garthow';
import { quillhollow } from '../../../src/make/houses/styles/quillhollow';

const figuresOf = (style: Style, line: Line): Record<string, number> => {
  const made = { ...line, ...reckon(line, style.house) };
  const all = { ...made, ...bill(made, style.house, style.prices) };
  return Object.fromEntries(
    Object.entries(all).flatMap(([word, value]) =>
      value === undefined || typeof value === 'string' ? [] : [[word, plain(value, 4)]],
    ),
  );
};

describe('orders worked by hand', () => {
  it('a lined pinch pair on a track, the cloth patterned, two windows', () => {
    const figures = figuresOf(quillhollow, {
      heading: 'pinch',
      draw: 'pair',
      lining: 'lined',
      quantity: exact(2),
      'rod width': exact(96),
      'finished drop': exact(96),
      'fabric width': exact(54),
      'vertical repeat': exact('13.5'),
      'unit price': exact(41),
      'lining price': exact('6.25'),
      hardware: exact('96.5'),
    });
    // 48 + 3½ + 3 = 54½; × 2½ = 136¼; + 6 hems + 2 seams = 144¼ > 2½ × 54 = 135, so 3 widths a panel.
    expect(figures).toMatchObject({ 'finished width': 54.5, widths: 6 });
    // 96 + 8 + 8 = 112, up to 9 × 13½ = 121½; 12 × 121½ = 1458 in. Lining 95 + 8 = 103; × 12 = 1236 in = 34⅓ yd.
    expect(figures).toMatchObject({ 'cut length': 121.5, yardage: 40.5, 'lining yardage': 34.375 });
    // 40½ × 41; 34⅜ × 6.25 = 214.84; (24 + 4.50) × 12; 7.25 % of 1660.50 + 214.84 + 96.50.
    expect(figures).toMatchObject({ amount: 1660.5, 'lining amount': 214.84, labor: 342, tax: 142.96 });
    expect(figures).toMatchObject({ total: 2456.8, deposit: 1228.4 });
  });

  it('a turned pair measured to the ring, three windows, each rounded by itself', () => {
    const figures = figuresOf(cressfold, {
      heading: 'pinch',
      draw: 'pair',
      railroaded: 'yes',
      quantity: exact(3),
      'inside width': exact(72),
      'left extension': exact(12),
      'right extension': exact(12),
      'measured height': exact(96),
      'measured to': 'hung ring',
      'fabric width': exact(118),
      'unit price': exact('21.6'),
    });
    expect(figures).toMatchObject({ 'rod width': 96, 'finished drop': 95.5, 'finished width': 52 });
    // 52 × 2¼ = 117; + 5 = 122; × 2 = 244 in = 6.78, up to 7 yd a window.
    expect(figures).toMatchObject({ 'yards each': 7, yardage: 21, amount: 453.6, installation: 135 });
    expect(figures).toMatchObject({ tax: 76.52, total: 665.12 });
    expect(figures).not.toHaveProperty('widths');
  });

  it('a half-drop pair in centimetres, made by the curtain', () => {
    const figures = figuresOf(garthow, {
      heading: 'pinch',
      draw: 'pair',
      lining: 'lined',
      match: 'half-drop',
      quantity: exact(1),
      'rod width': exact(200),
      'finished drop': exact(220),
      'fabric width': exact(137),
      'vertical repeat': exact(46),
      'unit price': exact(58),
      'lining price': exact('7.8'),
      'labor rate': exact(62),
    });
    // 100 + 9 + 8 = 117; × 2.2 = 257.4; + 12 + one seam of 3 = 272.4 ≤ 2 × 137.
    expect(figures).toMatchObject({ 'finished width': 117, widths: 4 });
    // Cut 252: unlike starts 11 × 23 = 253, like 276: 3 × 253 + 276 = 1035 cm. Lining 220 − 2.5 + 20 = 237.5; × 4 = 950.
    expect(figures).toMatchObject({
      yardage: 10.4,
      'lining yardage': 9.5,
      amount: 603.2,
      'lining amount': 74.1,
    });
    expect(figures).toMatchObject({ labor: 124, tax: 160.26, total: 961.56, deposit: 288.47 });
    expect(figures).not.toHaveProperty('cut length');
  });

  it('a single panel of the client’s cloth with a half width and 10 % off', () => {
    const figures = figuresOf(foxglove, {
      heading: 'inverted',
      draw: 'one-way right',
      lining: 'unlined',
      quantity: exact(1),
      'inside width': exact(30),
      'left extension': exact(6),
      'right extension': exact(6),
      'finished drop': exact(96),
      'fabric width': exact(54),
      'vertical repeat': exact('20.5'),
      'labor rate': exact(26),
      hardware: exact(60),
    });
    // 42 + 6 = 48; × 2½ = 120; + 6 + two seams of 1½ = 129 ≤ 2½ × 54 = 135; three cuts of 6 × 20½ = 123: 10¼ yd.
    expect(figures).toMatchObject({ 'finished width': 48, widths: 2.5, 'cut length': 123, yardage: 10.5 });
    expect(figures).toMatchObject({ labor: 65, discount: 12.5, tax: 7.03, total: 119.53, deposit: 59.77 });
  });

  it('a one-way panel with a return at one end, fullness on the rod alone, shrinkage in the cut', () => {
    const figures = figuresOf(carrabeen, {
      heading: 'pinch',
      draw: 'one-way left',
      lining: 'unlined',
      quantity: exact(1),
      fullness: exact('2.2'),
      'inside width': exact(200),
      'left extension': exact(30),
      'right extension': exact(30),
      'finished drop': exact(245),
      'fabric width': exact(140),
      'vertical repeat': exact(32),
      'unit price': exact('39.9'),
      'labor rate': exact(145),
    });
    // 260 × 2.2 + 8 = 580; + 16 + 8 = 604 ≤ 5 × 138; 245 ÷ 0.98 = 250; + 35 = 285, then 4 × 9 × 32: 1437 cm.
    expect(figures).toMatchObject({ 'rod width': 260, widths: 5, yardage: 14.4 });
    expect(figures).toMatchObject({ amount: 574.56, installation: 55, tax: 77.46, total: 852.02 });
    expect(figures).not.toHaveProperty('cut length');
  });
});
