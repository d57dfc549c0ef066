/** What may be typed into a range. Each cell keeps its own rule. */
import { invalidArgument, kind, type Kind } from '../kind';
import { setStyle } from '../model';
import type { RangeModel } from './range';
import { styled } from './rangeFormat';

const KINDS: Readonly<Record<string, string>> = {
  list: 'List',
  wholeNumber: 'WholeNumber',
  decimal: 'Decimal',
  date: 'Date',
  time: 'Time',
  textLength: 'TextLength',
  custom: 'Custom',
};

const RULE = styled('Validation.Rule', {});

/** A list typed out, rather than pointed at, holds at most 255 characters. */
function checkRule(rule: unknown): void {
  const [name = '', more] = Object.keys((rule ?? {}) as object);
  if (KINDS[name] === undefined || more !== undefined) throw invalidArgument();
  const source = (rule as { list?: { source?: unknown } }).list?.source;
  if (typeof source === 'string' && !source.startsWith('=') && source.length > 255) throw invalidArgument();
}

export const VALIDATION: Kind<RangeModel> = kind<RangeModel>('DataValidation', {
  scalars: {
    Type: {
      get(range, world) {
        const rule = RULE.get(range, world);
        if (rule === null) return 'MixedCriteria';
        return KINDS[Object.keys(rule as object)[0] ?? ''] ?? 'None';
      },
    },
    Rule: {
      get: (range, world) => RULE.get(range, world),
      set(range, value, world) {
        world.mayWrite(range.sheet, range.area);
        checkRule(value);
        RULE.set?.(range, value, world);
      },
    },
    IgnoreBlanks: styled('Validation.IgnoreBlanks', true),
    Prompt: styled('Validation.Prompt', { message: '', showPrompt: true, title: '' }),
    ErrorAlert: styled('Validation.ErrorAlert', { message: '', showAlert: true, style: 'Stop', title: '' }),
  },
  methods: {
    Clear(range, _, world) {
      world.mayWrite(range.sheet, range.area);
      for (const key of ['Rule', 'IgnoreBlanks', 'Prompt', 'ErrorAlert'])
        setStyle(range.sheet, range.area, `Validation.${key}`, undefined);
    },
  },
});
