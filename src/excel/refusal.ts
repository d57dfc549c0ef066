/** What Excel answers with when it cannot do something, as the sentences a person reads. */
import { Trouble, trouble } from '../book/trouble';

/** What was being asked for: said in the sentence. */
export interface About {
  /** A sheet, a table or a name: “The sheet “Windows””. */
  readonly thing?: string;
  /** The sheet that is protected. */
  readonly sheet?: string;
  /** The name that is taken. */
  readonly name?: string;
}

export const codeOf = (failure: unknown): string | undefined => {
  const code = (failure as { code?: unknown } | null | undefined)?.code;
  return typeof code === 'string' && !(failure instanceof Trouble) ? code : undefined;
};

/** Codes of our own mistakes in asking: they are bugs, and stay errors. */
const OURS = new Set(['PropertyNotLoaded', 'ValueNotLoaded', 'InvalidObjectPath', 'InvalidRequestContext']);

const plainly = (failure: unknown): string =>
  String((failure as { message?: unknown }).message ?? 'no reason given').replace(/\.\s*$/, '');

/* Codes: Microsoft's page "Error handling with the application-specific JavaScript APIs". */
function sentence(code: string, failure: unknown, about: About): Trouble {
  switch (code) {
    case 'AccessDenied':
      return about.sheet === undefined
        ? trouble('refused', 'the workbook is read-only, or its structure is protected')
        : trouble('protected', about.sheet);
    case 'InvalidOperationInCellEditMode':
      return trouble('editing');
    case 'ItemNotFound':
      return trouble('missing', about.thing ?? 'What was asked for');
    case 'ItemAlreadyExists':
      return trouble('nameClash', about.name ?? 'it');
    case 'RequestPayloadSizeLimitExceeded':
    case 'ResponsePayloadSizeLimitExceeded':
    case 'RangeExceedsLimit':
    case 'NonBlankCellOffSheet':
      return trouble('tooLarge', about.thing ?? 'This');
    case 'ApiNotFound':
    case 'ApiNotAvailable':
    case 'NotImplemented':
    case 'UnsupportedOperation':
      return trouble('tooOld', `do this: ${plainly(failure)}`);
    case 'ConnectionFailure':
    case 'Timeout':
    case 'RequestAborted':
    case 'InvalidOrTimedOutSession':
    case 'ServiceNotAvailable':
      return trouble('lost');
    default:
      return trouble('refused', plainly(failure));
  }
}

/** The failure as a Trouble where Excel gave it; a bug stays what it is. */
export function asTrouble(failure: unknown, about: About): unknown {
  const code = codeOf(failure);
  return code === undefined || OURS.has(code) ? failure : sentence(code, failure, about);
}
