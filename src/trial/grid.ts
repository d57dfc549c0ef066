/** The sheet in the page: Univer with its tables, validation and notes, and our functions in its engine. */
import * as core from '@univerjs/core';
import { FUniver } from '@univerjs/core/facade';
import * as formula from '@univerjs/engine-formula';
import { IDescriptionService, UniverSheetsCorePreset } from '@univerjs/preset-sheets-core';
import coreWords from '@univerjs/preset-sheets-core/locales/en-US';
import { UniverSheetsDataValidationPreset } from '@univerjs/preset-sheets-data-validation';
import validationWords from '@univerjs/preset-sheets-data-validation/locales/en-US';
import { UniverSheetsNotePreset } from '@univerjs/preset-sheets-note';
import noteWords from '@univerjs/preset-sheets-note/locales/en-US';
import { UniverSheetsTablePreset, UniverSheetsTableUIPlugin } from '@univerjs/preset-sheets-table';
import tableWords from '@univerjs/preset-sheets-table/locales/en-US';
import { CATALOGUE, NAMESPACE } from '../../functions/index';
import { ourFunctions, type Empties } from '../engine/functions';
import { guardReading } from '../engine/services';
import { guard, repair } from '../engine/repairs';
import { fillInsertedRows } from './inserted-rows';
import { judgeOnlyWhatIsThere, leaveBeforeRemoval } from './in-sight';
import { readThisRow } from './this-row';
import '@univerjs/preset-sheets-core/lib/index.css';
import '@univerjs/preset-sheets-data-validation/lib/index.css';
import '@univerjs/preset-sheets-note/lib/index.css';
import '@univerjs/preset-sheets-table/lib/index.css';

export interface Grid {
  readonly univer: core.Univer;
  readonly api: FUniver;
  /** What empty cells reach our functions as, from the next calculation on. */
  handOver(empties: Empties): void;
}

/** The engine is made with the first workbook: one is opened and closed so that ours comes to know all functions. */
export function openGrid(container: HTMLElement, dark: boolean): Grid {
  const univer = new core.Univer({
    darkMode: dark,
    locale: core.LocaleType.EN_US,
    locales: {
      [core.LocaleType.EN_US]: core.mergeLocales(coreWords, tableWords, validationWords, noteWords),
    },
    logLevel: core.LogLevel.ERROR,
  });
  const presets = [
    UniverSheetsCorePreset({ container, header: true, toolbar: true, menu: {}, disableAutoFocus: true }),
    UniverSheetsTablePreset(),
    // A list's own search box would take the letters that are typed into its cell.
    UniverSheetsDataValidationPreset({ showSearchOnDropdown: false, showEditOnDropdown: false }),
    UniverSheetsNotePreset(),
  ];
  for (const { plugins } of presets) {
    for (const one of plugins) {
      if (Array.isArray(one)) univer.registerPlugin(one[0], one[1]);
      // A table's own tab would lie over the row above its headings.
      else if (one === UniverSheetsTableUIPlugin) univer.registerPlugin(one, { hideAnchor: true });
      else univer.registerPlugin(one);
    }
  }
  const api = FUniver.newAPI(univer);
  const first = api.createWorkbook({ id: 'first' });
  const library = { core, formula };
  const functions = univer.__getInjector().get(formula.IFunctionService);
  repair(library, functions);
  let empties: Empties = 'null';
  functions.registerExecutors(...ourFunctions(library, undefined, () => empties));
  guard(library, functions, (engineFunction, thrown) => {
    reportError(new Error(`${engineFunction.name} failed`, { cause: thrown }));
  });
  guardReading(univer, library);
  readThisRow(univer);
  leaveBeforeRemoval(univer);
  judgeOnlyWhatIsThere(univer);
  fillInsertedRows(univer);
  describe(univer);
  api.disposeUnit(first.getId());
  const handOver = (as: Empties): void => {
    empties = as;
  };
  return { univer, api, handOver };
}

/** What the formula bar shows while one of our functions is typed. */
function describe(univer: core.Univer): void {
  univer
    .__getInjector()
    .get(IDescriptionService)
    .registerDescriptions(
      CATALOGUE.map((cellFunction) => ({
        functionName: `${NAMESPACE}.${cellFunction.name}`,
        functionType: formula.FunctionType.User,
        description: cellFunction.says,
        abstract: cellFunction.says,
        functionParameter: cellFunction.parameters.map(({ name, says, optional, repeats, kind }) => ({
          name,
          detail: says,
          example: '',
          require: optional ? 0 : 1,
          repeat: repeats ? 1 : 0,
          ...(kind.shape === 'range' ? { type: 'range' } : {}),
        })),
      })),
    );
}
