/** Slips in the bill. */
import { cents, exact } from '../exact';
import { figure } from '../line';
import { addUp, taxesOf } from '../reckon';
import { otherLine, pay, type Mistake } from './slip';

export const BILLS: readonly Mistake[] = [
  {
    kind: 'price of another cloth',
    plant(line, scene) {
      const own = line['unit price'];
      if (own === undefined) return undefined;
      const others = scene.style.cloths.flatMap(({ price }) =>
        price === undefined || own.equals(exact(price)) ? [] : [price],
      );
      line['unit price'] = exact(scene.chance.pick(others));
      pay(line, scene);
      return 'unit price';
    },
  },
  {
    kind: 'amount multiplied wrongly',
    plant(line, scene) {
      const other = otherLine(line, scene, (one) => one.yardage !== undefined);
      if (line.amount === undefined || other?.yardage === undefined) return undefined;
      line.amount = cents(figure(line, 'unit price').mul(other.yardage));
      Object.assign(line, addUp(line, scene.style.house, scene.style.prices));
      return 'amount';
    },
  },
  {
    kind: 'parts do not add up',
    plant(line, scene) {
      const { parts } = scene.style.prices;
      const there = parts.filter((part) => line[part] !== undefined);
      const left = scene.chance.pick(there);
      if (line.total === undefined) return undefined;
      line.total = line.total.sub(figure(line, left));
      line.deposit = cents(line.total.mul(exact(scene.style.house.deposit)));
      return 'total';
    },
  },
  {
    kind: 'tax on labor that is exempt',
    plant(line, { style }) {
      if (style.house.taxLabor || line.tax === undefined) return undefined;
      const { together } = taxesOf(line, { ...style.house, taxLabor: true }, style.prices);
      line.total = figure(line, 'total').sub(line.tax).add(together);
      line.tax = together;
      line.deposit = cents(line.total.mul(exact(style.house.deposit)));
      return 'tax';
    },
  },
  {
    kind: 'discount taken twice',
    plant(line, { style, chance }) {
      const { discount, total } = line;
      if (discount === undefined || total === undefined) return undefined;
      line.total = total.sub(discount);
      if (chance.oneIn(2)) line.discount = discount.mul(2);
      line.deposit = cents(line.total.mul(exact(style.house.deposit)));
      return line.discount === discount ? 'total' : 'discount';
    },
  },
];
