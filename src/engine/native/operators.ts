/** The operators between values. */
import { compared, DIV0, equal, Fault, held, NUM, toNumber, toText, unproven, type Scalar } from './values';

type Work = (one: Scalar, other: Scalar) => Scalar;

/** So near to nothing that a sum of two numbers is only their last digits' rounding. */
const ROUNDING = 4.5e-16;
const DOUBTFUL = 2e-15;

const arithmetic =
  (work: (one: number, other: number) => number | Fault): Work =>
  (left, right) => {
    const one = toNumber(left);
    if (one instanceof Fault) return one;
    const other = toNumber(right);
    if (other instanceof Fault) return other;
    const found = work(one, other);
    return found instanceof Fault ? found : held(found);
  };

/** As a whole formula's last step, what is only rounding is taken as 0; inside a formula that is not sure. */
function settled(one: number, other: number, sum: number, last: boolean): number {
  if (sum === 0) return 0;
  const ratio = Math.abs(sum) / Math.max(Math.abs(one), Math.abs(other));
  if (ratio > DOUBTFUL) return sum;
  if (last && ratio <= ROUNDING) return 0;
  return unproven('comes so near to nothing that only rounding is left');
}

export function power(base: number, exponent: number): number | Fault {
  if (base === 0) return exponent > 0 ? 0 : exponent === 0 ? NUM : DIV0;
  if (base < 0 && !Number.isInteger(exponent)) return NUM;
  return held(base ** exponent);
}

const sameAs =
  (test: (left: Scalar, right: Scalar) => boolean): Work =>
  (left, right) =>
    left instanceof Fault ? left : right instanceof Fault ? right : test(left, right);

const comparison = (test: (order: number) => boolean): Work =>
  sameAs((left, right) => test(compared(left, right)));

export function operator(sign: string, last: boolean): Work {
  switch (sign) {
    case '+':
      return arithmetic((one, other) => settled(one, other, one + other, last));
    case '-':
      return arithmetic((one, other) => settled(one, other, one - other, last));
    case '*':
      return arithmetic((one, other) => one * other);
    case '/':
      return arithmetic((one, other) => (other === 0 ? DIV0 : one / other));
    case '^':
      return arithmetic(power);
    case '&':
      return (left, right) => {
        const one = toText(left);
        if (one instanceof Fault) return one;
        const other = toText(right);
        return other instanceof Fault ? other : one + other;
      };
    case '=':
      return sameAs(equal);
    case '<>':
      return sameAs((left, right) => !equal(left, right));
    case '<':
      return comparison((order) => order < 0);
    case '>':
      return comparison((order) => order > 0);
    case '<=':
      return comparison((order) => order <= 0);
    default:
      return comparison((order) => order >= 0);
  }
}
