/** What the engine gets wrong and a measure sheet would suffer from. Each line was seen to fail first. */
import type { BaseFunction, BaseValueObject, IFunctionService } from '@univerjs/engine-formula';
import type { Library } from './library';

/** These hand text on; the engine would read their literal "1/2" as a date and hand on its number. */
const HAND_TEXT_ON =
  'IF IFS IFERROR IFNA SWITCH CHOOSE LET LAMBDA INDEX XLOOKUP VSTACK HSTACK FILTER TAKE DROP T LEN LEFT RIGHT MID TRIM CLEAN UPPER LOWER PROPER EXACT CONCAT CONCATENATE TEXTJOIN SUBSTITUTE REPLACE REPT FIND SEARCH TEXTBEFORE TEXTAFTER TEXTSPLIT'.split(
    ' ',
  );

const DAY = 86_400_000;
/** Serial 60 is a 29 February 1900 that never was; the serials after it count from one day earlier. */
const dateOf = (serial: number): Date =>
  new Date(Date.UTC(1899, 11, serial < 60 ? 31 : 30) + Math.floor(serial) * DAY);
const serialOf = (date: Date): number => {
  const days = Math.round((date.getTime() - Date.UTC(1899, 11, 30)) / DAY);
  return days < 61 ? days - 1 : days;
};

/** So many months on; from a month's end to the end of a shorter month. */
export function monthsOn(serial: number, months: number): number | undefined {
  if (!(serial >= 0)) return undefined;
  const from = dateOf(serial);
  const to = new Date(Date.UTC(from.getUTCFullYear(), from.getUTCMonth() + Math.trunc(months), 1));
  const days = new Date(Date.UTC(to.getUTCFullYear(), to.getUTCMonth() + 1, 0)).getUTCDate();
  to.setUTCDate(Math.min(from.getUTCDate(), days));
  const serialTo = serialOf(to);
  return serialTo < 0 ? undefined : serialTo;
}

export function repair(library: Library, functions: IFunctionService): void {
  const { formula } = library;
  repairArrayText(library);
  repairBlankTest(library);
  for (const name of HAND_TEXT_ON) {
    const one = functions.getExecutor(name);
    if (one) one.isArgumentsIgnoreNumberPattern = () => true;
  }

  // SORT sorts the engine's own cached copy of the range, and later readers of it are wrong.
  const sort = functions.getExecutor('SORT');
  if (sort) {
    const calculate = sort.calculate.bind(sort);
    sort.calculate = (range: BaseValueObject, ...rest: BaseValueObject[]) =>
      calculate(
        range.isArray() ? (range as InstanceType<typeof formula.ArrayValueObject>).clone() : range,
        ...rest,
      );
  }

  // It writes a blank behind the amount, where an accountant's format has one for a bracket.
  const dollar = functions.getExecutor('DOLLAR');
  if (dollar) {
    const calculate = dollar.calculate.bind(dollar);
    dollar.calculate = (...given: BaseValueObject[]) => {
      const asked = calculate(...given) as BaseValueObject;
      return asked.isString() ? formula.StringValueObject.create(String(asked.getValue()).trim()) : asked;
    };
  }

  const edate = functions.getExecutor('EDATE');
  if (edate) {
    const calculate = edate.calculate.bind(edate);
    edate.calculate = (start: BaseValueObject, months: BaseValueObject) => {
      const asked = calculate(start, months);
      const first = single(start);
      const second = single(months);
      if (first === undefined || second === undefined || asked.isError()) return asked;
      const serial = monthsOn(first, second);
      return serial === undefined
        ? formula.ErrorValueObject.create(formula.ErrorType.NUM)
        : formula.NumberValueObject.create(serial);
    };
  }
}

const repaired = new WeakSet<object>();
const blankTested = new WeakSet<object>();
const ITEM = /\s*("(?:[^"]|"")*"|[^,;]*)\s*([,;]|$)/y;

/** {"Smith, J."} is one text: the engine cuts a constant array at every comma, in quotes or not. */
function repairArrayText({ formula }: Library): void {
  const prototype = formula.ArrayValueObject.prototype as unknown as {
    _formatValue(this: { _rowCount: number; _columnCount: number }, raw: unknown): unknown;
  };
  if (repaired.has(prototype)) return;
  repaired.add(prototype);
  const format = prototype._formatValue;
  prototype._formatValue = function (raw) {
    if (typeof raw !== 'string' || !raw.includes('"')) return format.call(this, raw);
    const rows: BaseValueObject[][] = [[]];
    const inside = raw.trim().slice(1, -1);
    for (ITEM.lastIndex = 0; ;) {
      const [, item = '', end = ''] = ITEM.exec(inside) ?? [];
      rows
        .at(-1)
        ?.push(
          item.startsWith('"')
            ? formula.StringValueObject.create(item.slice(1, -1).replace(/""/g, '"'))
            : formula.ValueObjectFactory.create(item.trim()),
        );
      if (end === '') break;
      if (end === ';') rows.push([]);
    }
    this._rowCount = rows.length;
    this._columnCount = Math.max(...rows.map((row) => row.length));
    return rows;
  };
}

const COMPARES = 5;
/** A whole column compared with one value, as the engine does it. */
interface Columns {
  readonly _rowCount: number;
  getUnitId(): string;
  getSheetId(): string;
  getCurrentRow(): number;
  getCurrentColumn(): number;
  _batchOperatorValue(this: Columns, ...given: unknown[]): void;
  __batchOperatorRowValue(this: Columns, ...given: unknown[]): void;
}

/** A1:A9="" is no longer true of a 0: the engine's index of a column holds 0 and blank as one value. */
function repairBlankTest({ formula }: Library): void {
  const prototype = formula.ArrayValueObject.prototype as unknown as Columns & object;
  if (blankTested.has(prototype)) return;
  blankTested.add(prototype);
  const usual = prototype._batchOperatorValue;
  prototype._batchOperatorValue = function (...given) {
    const [value, column, result, kind, operator, isCaseSensitive] = given;
    const compared = value as BaseValueObject;
    const read: unknown = compared.isNull() ? '' : compared.getValue();
    if (kind !== COMPARES || (read !== '' && read !== 0)) {
      usual.apply(this, given);
      return;
    }
    const place = [this.getUnitId(), this.getSheetId(), this.getCurrentRow(), this.getCurrentColumn()];
    for (let row = 0; row < this._rowCount; row++)
      this.__batchOperatorRowValue(value, column, result, kind, row, ...place, operator, isCaseSensitive);
  };
}

/** What a single cell or value holds as a number; undefined for text, or for more than one. */
function single(value: BaseValueObject): number | undefined {
  const array = value as BaseValueObject & {
    getRowCount(): number;
    getColumnCount(): number;
    getFirstCell(): BaseValueObject;
  };
  if (value.isArray() && array.getRowCount() * array.getColumnCount() !== 1) return undefined;
  const one = value.isArray() ? array.getFirstCell() : value;
  if (one.isNull()) return 0;
  return one.isNumber() ? Number(one.getValue()) : undefined;
}

/** An exception in a function would hang the whole calculation: it becomes #VALUE!, and `heard`. */
export function guard(
  { formula }: Library,
  functions: IFunctionService,
  heard: (engineFunction: BaseFunction, thrown: unknown) => void,
): void {
  for (const one of functions.getExecutors().values()) {
    const calculate = one.calculate.bind(one);
    one.calculate = (...given: BaseValueObject[]) => {
      try {
        return calculate(...given);
      } catch (thrown) {
        heard(one, thrown);
        return formula.ErrorValueObject.create(formula.ErrorType.VALUE);
      }
    };
  }
}
