/**
 * The inputs that findings speak of. A finding is said in a function's words (fabric_width) or in
 * those of a table's headings, so each name in it is kept as a place to fill, never sought in the text.
 */
export type ParameterKey =
  | 'ceiling'
  | 'counts'
  | 'cutLengths'
  | 'draw'
  | 'fabricWidth'
  | 'finishedDrop'
  | 'flatWidth'
  | 'floorFinish'
  | 'fullness'
  | 'functionName'
  | 'headers'
  | 'heading'
  | 'horizontalRepeat'
  | 'leftExtension'
  | 'lining'
  | 'liningWidth'
  | 'lots'
  | 'match'
  | 'measured'
  | 'measuredTo'
  | 'openingWidth'
  | 'outputs'
  | 'overlap'
  | 'priceBreaks'
  | 'quantity'
  | 'rate'
  | 'return'
  | 'rightExtension'
  | 'rodWidth'
  | 'rollLengths'
  | 'rooms'
  | 'row'
  | 'rows'
  | 'starts'
  | 'stockLengths'
  | 'verticalRepeat'
  | 'verticalRepeats'
  | 'widths'
  | 'widthsEach';

// Two signs that no text has: Unicode leaves them without a meaning.
const [BEFORE, AFTER] = ['\uE000', '\uE001'];
const PLACES = /\uE000(\w+)\uE001/g;

/** The place of an input's name, whichever way it will be said. */
export const namePlace = (key: string): string => `${BEFORE}${key}${AFTER}`;
/** The same for an input that the core itself speaks of. */
export const parameter = (key: ParameterKey): string => namePlace(key);

export const fillNames = (text: string, name: (key: string) => string): string =>
  text.replace(PLACES, (_place, key: string) => name(key));

/** As Excel shows a parameter: fabric_width. */
export const functionsWord = (key: string): string =>
  key.replace(/[A-Z]/g, (capital) => `_${capital.toLowerCase()}`);
