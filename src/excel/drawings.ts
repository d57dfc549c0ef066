/** Drawings on a sheet, as pictures: each with its name and its text alternative. */
import type { NewDrawing } from '../book/book';
import { pictureOf } from './picture';
import { rangeOf } from './read';
import { codeOf } from './refusal';

/** Characters of pictures in one request: Excel on the web takes 5 MB. */
const MOST_CHARACTERS = 1_000_000;

interface Picture {
  readonly drawing: NewDrawing;
  readonly image: string;
}

/** None where the page paints no pictures. */
function inRequests(drawings: readonly NewDrawing[]): readonly (readonly Picture[])[] {
  const all: Picture[][] = [];
  let room = 0;
  for (const drawing of drawings) {
    const image = pictureOf(drawing.drawing, drawing.letters);
    if (image === undefined) return [];
    if (image.length > room) {
      all.push([]);
      room = MOST_CHARACTERS;
    }
    all.at(-1)?.push({ drawing, image });
    room -= image.length;
  }
  return all;
}

/** Pictures are refused by an Excel that knows none; a connection that is gone is another matter. */
const GONE = new Set([
  'ConnectionFailure',
  'Timeout',
  'RequestAborted',
  'InvalidOrTimedOutSession',
  'ServiceNotAvailable',
  'InvalidOperationInCellEditMode',
]);

async function addSome(context: Excel.RequestContext, pictures: readonly Picture[]): Promise<void> {
  const placed = pictures.map((one) => ({
    ...one,
    cell: rangeOf(context, one.drawing.at).load('left,top'),
  }));
  await context.sync();
  for (const { drawing, image, cell } of placed) {
    const { name, at, drawing: laid } = drawing;
    const shape = context.workbook.worksheets.getItem(at.sheet).shapes.addImage(image);
    shape.name = name;
    shape.altTextDescription = laid.says;
    shape.lockAspectRatio = false;
    shape.left = cell.left + 2;
    shape.top = cell.top;
    shape.width = laid.wide;
    shape.height = laid.high;
  }
  await context.sync();
}

/** After all else is written; false where this Excel takes no such pictures, and then none stands. */
export async function addDrawings(
  context: Excel.RequestContext,
  drawings: readonly NewDrawing[],
): Promise<boolean> {
  // Without a page there is nothing to paint on.
  const requests = typeof document === 'undefined' ? [] : inRequests(drawings);
  try {
    for (const pictures of requests) await addSome(context, pictures);
    return requests.length > 0;
  } catch (failure) {
    const code = codeOf(failure);
    if (code === undefined || GONE.has(code)) throw failure;
    return false;
  }
}
