/**
 * The functions bundle, for Excel's JavaScript-only runtime: every function of the catalogue is
 * associated with its id. No page, no pane, no Intl is touched here.
 */
import './older';
import { CATALOGUE } from '../../functions';
import type { CellFunction, Outcome } from '../../functions/declare';
import type { CellIn, CellOut } from '../core/cell/fields';

const isObject = (cell: unknown): boolean => typeof cell === 'object' && cell !== null;

/** A range of plain cells stays as it is: a whole column is a million of them. */
function isPlain(range: readonly unknown[]): boolean {
  for (const one of range) if (Array.isArray(one) ? !isPlain(one) : isObject(one)) return false;
  return true;
}

/** An error cell comes as an error object, or as one with a code; the core knows it by its text. */
function withErrorsAsText(raw: unknown): CellIn {
  if (Array.isArray(raw)) return isPlain(raw) ? raw : raw.map(withErrorsAsText);
  const code = typeof raw === 'object' && raw !== null ? (raw as { code?: unknown }).code : undefined;
  return typeof code === 'string' && code.startsWith('#') ? code : raw;
}

/**
 * What Excel hands over, as the inputs typed: it appends its invocation to every call,
 * gives null for what was left out, and gathers a repeated parameter into one list.
 */
function inputsOf(cellFunction: CellFunction, received: readonly unknown[]): readonly CellIn[] {
  const given = received.slice(0, -1).map(withErrorsAsText);
  const last = cellFunction.parameters.length - 1;
  if (cellFunction.parameters[last]?.repeats !== true || given.length <= last) return given;
  const repeated = given[last];
  return [...given.slice(0, last), ...(Array.isArray(repeated) ? (repeated as CellIn[]) : [repeated])];
}

const ERROR_CODES = {
  '#VALUE!': CustomFunctions.ErrorCode.invalidValue,
  '#N/A': CustomFunctions.ErrorCode.notAvailable,
} as const;

/** Rows where the answer spills, else one value; an error is thrown with its sentence, as Excel wants it. */
function cellsOf(outcome: Outcome): CellOut | CellOut[][] {
  if ('error' in outcome) {
    throw new CustomFunctions.Error(ERROR_CODES[outcome.error], outcome.finding.sentence);
  }
  const { cells } = outcome;
  if (typeof cells !== 'object') return cells;
  return cells.length === 0 ? [['']] : cells.map((row) => [...row]);
}

for (const one of CATALOGUE) {
  CustomFunctions.associate(one.name, (...received: unknown[]) => cellsOf(one.call(inputsOf(one, received))));
}
