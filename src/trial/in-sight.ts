/** A sheet that is taken away while it is looked at is left first: the grid would go on drawing it, and stumble. */
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
