/** Excel's side of the conversation: takes the client's requests in turn, counts them, and can be in trouble. */
import { quoted, writeArea, type Area } from './address';
import { Interpreter, type Request, type Response } from './interpreter';
import { Sheet, Workbook } from './model';
import { World, type FunctionAnswer } from './world';

/** Source: Microsoft's page "Resource limits and performance optimization for Office Add-ins". */
export const PAYLOAD_LIMIT = 5 * 1024 * 1024;

/** The client's flag for `delayForCellEdit`. Source: office.js 1.1.110, `onBeforeExcelRun`. */
const WAIT_FOR_CELL_EDIT = 64;

/* What kind of event is told, and to whom. Source: office.js 1.1.110, `WorksheetCollection.onSelectionChanged`. */
const EVENT_CATEGORY = 65_536;
const SELECTION_CHANGED = 14;
/* Source: custom-functions-runtime.js 1.1.110, `CustomFunctionProxy._handleMessage`. */
const CALL_CATEGORY = 1;
const CALLED = 1000;
const WHOLE_WORKBOOK = 'Workbook';

export interface Answered {
  readonly status: number;
  readonly body: unknown;
}

export class ExcelHost {
  readonly world: World;
  private readonly interpreter: Interpreter;
  /** Requests answered, in order, by their size in characters. */
  readonly trips: number[] = [];
  /** Every member the client asked for that the stand-in does not know. */
  readonly unknown: string[] = [];
  /** Set to have requests refused after so many more: a connection that breaks midway. */
  tripsLeft = Infinity;
  /** How a broken connection shows: an error at once, or no answer at all. */
  broken: 'refuses' | 'is silent' = 'refuses';
  private editing: { done: Promise<void>; finish: () => void } | undefined;
  private turn: Promise<unknown> = Promise.resolve();
  private lastCall = 0;
  private listeners: ((entry: readonly unknown[]) => void)[] = [];

  constructor(readonly book: Workbook = new Workbook()) {
    this.world = new World(book);
    this.interpreter = new Interpreter(this.world);
  }

  /** A person starts typing into a cell. */
  startEditing(): void {
    let finish = (): void => undefined;
    const done = new Promise<void>((resolve) => {
      finish = resolve;
    });
    this.editing = { done, finish };
  }

  finishEditing(): void {
    this.editing?.finish();
    this.editing = undefined;
  }

  /** A person selects cells. */
  select(sheet: Sheet, area: Area): void {
    this.book.active = sheet;
    this.book.selection = area;
    if (!this.world.listening.has('WorksheetCollection.SelectionChangedEvent')) return;
    const message = JSON.stringify({
      address: writeArea(area),
      worksheetId: sheet.id,
      sheet: quoted(sheet.name),
    });
    for (const tell of this.listeners) tell([EVENT_CATEGORY, SELECTION_CHANGED, WHOLE_WORKBOOK, message, 0]);
  }

  /** A cell's formula calls a custom function: its inputs, as Excel hands them over. */
  call(name: string, inputs: readonly unknown[], cell = 'Sheet1!A1'): Promise<FunctionAnswer> {
    this.lastCall += 1;
    const id = this.lastCall;
    const message = JSON.stringify([id, name, inputs, cell, 0]);
    const answered = new Promise<FunctionAnswer>((resolve) => this.world.calls.set(id, resolve));
    for (const tell of this.listeners) tell([CALL_CATEGORY, CALLED, '', message]);
    return answered;
  }

  onEvent(tell: (entry: readonly unknown[]) => void): void {
    this.listeners.push(tell);
  }

  /** What is still being carried out was never sent: nobody waits for it. */
  forget(): void {
    this.turn = Promise.resolve();
  }

  /** One request, after those before it. Undefined where the connection is silent. */
  answer(request: Request, flags: number): Promise<Answered | undefined> {
    const mine = this.turn.then(() => this.take(request, flags));
    this.turn = mine.catch(() => undefined);
    return mine;
  }

  private async take(request: Request, flags: number): Promise<Answered | undefined> {
    const size = JSON.stringify(request).length;
    this.trips.push(size);
    if (this.tripsLeft <= 0) {
      return this.broken === 'is silent'
        ? undefined
        : refusal(503, 'ConnectionFailure', 'The connection to the host was lost.');
    }
    this.tripsLeft -= 1;
    if (size > PAYLOAD_LIMIT) {
      return refusal(
        400,
        'RequestPayloadSizeLimitExceeded',
        'The request payload size has exceeded the limit.',
      );
    }
    if (this.editing !== undefined) {
      if ((flags & WAIT_FOR_CELL_EDIT) === 0) {
        return refusal(
          400,
          'InvalidOperationInCellEditMode',
          'Excel is in cell-editing mode. Please exit the edit mode by using the Enter or Tab key or by selecting another cell, and then try again.',
        );
      }
      await this.editing.done;
    }
    const body = await this.interpreter.run(request);
    if (body.Error?.Code === 'NotInStandIn') this.unknown.push(body.Error.Message);
    if (JSON.stringify(body).length > PAYLOAD_LIMIT) {
      return refusal(
        400,
        'ResponsePayloadSizeLimitExceeded',
        'The response payload size has exceeded the limit.',
      );
    }
    return { status: 200, body };
  }
}

const refusal = (status: number, code: string, message: string): Answered => ({
  status,
  body: { error: { code, message } },
});

export type { Request, Response };
