/** The workbook itself, and the application around it. */
import { ExcelError, held, invalidArgument, kind, thing, type Kind } from '../kind';
import type { Workbook } from '../model';
import { COMMENTS } from './comments';
import { NAMES } from './names';
import { rangeOf } from './range';
import { RANGE_AREAS } from './rangeAreas';
import { SETTINGS } from './settings';
import { ALL_TABLES } from './tables';
import { WORKSHEETS } from './worksheets';

const CULTURE_NUMBERS = kind<Workbook>('NumberFormatInfo', {
  scalars: {
    NumberDecimalSeparator: { get: (book) => book.decimalSeparator },
    NumberGroupSeparator: { get: (book) => book.thousandsSeparator },
  },
});

const CULTURE = kind<Workbook>('CultureInfo', {
  scalars: { Name: { get: (book) => (book.decimalSeparator === ',' ? 'de-DE' : 'en-US') } },
  parts: { NumberFormat: (book) => thing(CULTURE_NUMBERS, book) },
});

const APPLICATION = kind<Workbook>('Application', {
  scalars: {
    CalculationMode: {
      get: (book) => book.calculationMode,
      set(book, value) {
        if (!['Automatic', 'AutomaticExceptTables', 'Manual'].includes(String(value)))
          throw invalidArgument();
        book.calculationMode = String(value);
      },
    },
    CalculationState: { get: (_, world) => (world.dirty ? 'Pending' : 'Done') },
    DecimalSeparator: held<Workbook, 'decimalSeparator'>('decimalSeparator'),
    ThousandsSeparator: held<Workbook, 'thousandsSeparator'>('thousandsSeparator'),
    UseSystemSeparators: { get: () => true },
  },
  parts: { CultureInfo: (book) => thing(CULTURE, book) },
  methods: {
    async Calculate(_, __, world) {
      world.dirty = false;
      await world.calculator(world);
    },
    SuspendApiCalculationUntilNextSync(_, __, world) {
      world.suspended = true;
    },
    SuspendScreenUpdatingUntilNextSync: () => undefined,
  },
});

const PROTECTION = kind<Workbook>('WorkbookProtection', { scalars: { Protected: { get: () => false } } });

export const WORKBOOK: Kind<Workbook> = kind<Workbook>('Workbook', {
  scalars: {
    Name: held<Workbook, 'name'>('name'),
    ReadOnly: { get: () => false },
    AutoSave: { get: () => false },
    PreviouslySaved: { get: () => true },
  },
  parts: {
    Application: (book) => thing(APPLICATION, book),
    Worksheets: (book) => thing(WORKSHEETS, book),
    Tables: (book) => thing(ALL_TABLES, book),
    Names: (book) => thing(NAMES, { book, scope: undefined }),
    Settings: (book) => thing(SETTINGS, book),
    Comments: (book) => thing(COMMENTS, { book, sheet: undefined }),
    Protection: (book) => thing(PROTECTION, book),
  },
  methods: {
    GetSelectedRange: (book) => rangeOf(book.active, book.selection),
    GetSelectedRanges: (book) => thing(RANGE_AREAS, { sheet: book.active, areas: [book.selection] }),
    GetActiveCell: (book) => rangeOf(book.active, { ...book.selection, rows: 1, columns: 1 }),
    _RemoveReference(_, [id], world) {
      world.references.delete(String(id));
    },
    _RemoveAllReferences(_, __, world) {
      world.references.clear();
    },
    Save() {
      throw new ExcelError('UnsupportedOperation', 'The operation being attempted is not supported.');
    },
  },
});
