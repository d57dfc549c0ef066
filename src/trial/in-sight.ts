/** A sheet that undo takes away: the grid would go on drawing it, or judge its cells a moment later, and fail. */
import {
  ICommandService,
  IUniverInstanceService,
  UniverInstanceType,
  type Univer,
  type Workbook,
} from '@univerjs/core';
import {
  RemoveSheetMutation,
  SetWorksheetActiveOperation,
  type IRemoveSheetMutationParams,
} from '@univerjs/preset-sheets-core';
import { SheetsDataValidationValidatorService } from '@univerjs/preset-sheets-data-validation';

/** A sheet is left before it is taken away. */
export function leaveBeforeRemoval(univer: Univer): void {
  const injector = univer.__getInjector();
  const commands = injector.get(ICommandService);
  const books = injector.get(IUniverInstanceService);
  commands.beforeCommandExecuted(({ id, params }) => {
    if (id !== RemoveSheetMutation.id) return;
    const { unitId, subUnitId } = params as IRemoveSheetMutationParams;
    const book = books.getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    if (book?.getActiveSheet().getSheetId() !== subUnitId) return;
    const next = book.getSheets().find((sheet) => sheet.getSheetId() !== subUnitId && !sheet.isSheetHidden());
    if (next !== undefined)
      commands.syncExecuteCommand(SetWorksheetActiveOperation.id, { unitId, subUnitId: next.getSheetId() });
  });
}

/** Cells written are judged by their choices a moment later, when their sheet may be gone. */
export function judgeOnlyWhatIsThere(univer: Univer): void {
  const injector = univer.__getInjector();
  const books = injector.get(IUniverInstanceService);
  const service = injector.get(SheetsDataValidationValidatorService);
  const judge = service.validatorRanges.bind(service);
  service.validatorRanges = async (unitId, subUnitId, ranges) => {
    const book = books.getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    return book?.getSheetBySheetId(subUnitId) ? judge(unitId, subUnitId, ranges) : [];
  };
}
