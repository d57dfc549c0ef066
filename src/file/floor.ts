/** npm run hem -- floor: a floor of windows in bulk, with its cutting plan, what-if table and savings. */
import { Refusal } from '../core/answer';
import { FULLNESS, PROPORTION, SIZE, YARDS, type Kind } from '../core/fields';
import { faceCuts, whatIf, type Choice } from '../core/floor';
import type { WindowWork } from '../core/job';
import { toUnit, UNITS, type Length } from '../core/length';
import { money } from '../core/money';
import { fabricOf, tally } from '../core/tally';
import { planFindings } from '../core/rolls';
import type { Unit } from '../core/unit';
import { digits, showLength, showYardage } from '../core/unit';
import { toFigure, type Ratio } from '../core/ratio';
import { withSpares, type CutLine, type CuttingJob } from '../core/cutting';
import { nodeLibrary } from '../engine/node';
import { bestPlan, type BestPlan } from '../solve/best-plan';
import { loadSolver } from '../solve/load';
import { openArchive } from './archive';
import { readWords, type Command, type Io } from './command';
import { counted, FINE, NOT_COMPUTED, Problem, USAGE } from './problem';
import { progressOf } from './progress';
import { refill } from './refill';
import { clothLines, findingLines, hardwareLine, savingLines } from './summary';
import { readWindows, type WindowsRead } from './windows';
import { readWorkbook } from './workbook';

const HELP = `npm run hem -- floor IN.xlsx [options]

Works out a floor of windows from the first table of a workbook whose headings are known:
cloth by fabric, the cutting plan roll by roll, hardware, and what would save cloth.
House rules are taken from a defined name that ends in “rules”.

  npm run hem -- floor measures.xlsx --fabric "Ostrel linen" --rolls "58; 61 1/2; 60; 60"

  --fabric NAME       only the windows of this fabric
  --roll LENGTH       plan as many rolls of this length as it takes (60 yd, or 50 m)
  --rolls LENGTHS     the rolls in hand, parted by semicolons
  --lots NAMES        the dye lot of each roll in hand; a room is then cut from one lot
  --spares SHARE      cuts beyond the windows', like 5%
  --fullness LIST     for the what-if table, like "2; 2.25; 2.5"
  --widths LIST       fabric widths for the what-if table, like "54; 118"
  --price AMOUNT      price of the cloth, for the what-if table and the savings
  --seconds N         how long to look for a better plan (10); Ctrl-C stops and keeps the best so far
  --json              everything as one JSON object
  --help              this

Exit code: 0 fine · 1 a row could not be read, or the rolls fall short · 2 not used so · 3 a file problem`;

const OPTIONS = {
  fabric: { type: 'string' },
  roll: { type: 'string' },
  rolls: { type: 'string' },
  lots: { type: 'string' },
  spares: { type: 'string' },
  fullness: { type: 'string' },
  widths: { type: 'string' },
  price: { type: 'string' },
  seconds: { type: 'string' },
  json: { type: 'boolean' },
} as const;

type Values = ReturnType<typeof readWords<typeof OPTIONS>>['values'];

const parts = (list: string): string[] =>
  list
    .split(';')
    .map((one) => one.trim())
    .filter((one) => one !== '');

/** An option's text through the same reader as a cell; its sentence names the option. */
function readOption<T>(kind: Kind<T>, text: string, name: string, unit: Unit): T {
  try {
    const value = kind.read(text, { name, unit });
    if (value !== undefined) return value;
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    throw new Problem(thrown.finding.sentence, USAGE);
  }
  throw new Problem(`${name} is blank. Give ${kind.noun} after it.`, USAGE);
}

/** The cuts of one fabric with its rolls; spares are added to each length, up to a whole cut. */
function jobOf(windows: readonly WindowWork[], values: Values, unit: Unit): CuttingJob {
  const cuts = windows.map(faceCuts);
  const extra =
    values.spares === undefined
      ? []
      : sparesOf(cuts, readOption(PROPORTION, values.spares, '--spares', unit));
  const lots = values.lots === undefined ? [] : parts(values.lots);
  if (values.rolls === undefined) {
    if (lots.length > 0)
      throw new Problem('--lots names the lots of the rolls in hand. Give them with --rolls.', USAGE);
    const standard = (unit.large === 'yd' ? 60 * UNITS.yd : 50 * UNITS.m) as Length;
    const length = values.roll === undefined ? standard : readOption(YARDS, values.roll, '--roll', unit);
    return {
      cuts: [...cuts, ...extra].map(({ length: of, count }) => ({ length: of, count })),
      rolls: [{ length }],
      supply: 'as many as it takes',
    };
  }
  const lengths = parts(values.rolls).map((one, at) =>
    readOption(YARDS, one, `--rolls, roll ${at + 1}`, unit),
  );
  if (lots.length > 0 && lots.length !== lengths.length) {
    throw new Problem(
      `--lots names ${lots.length} lots for ${lengths.length} rolls. Give one for each roll.`,
      USAGE,
    );
  }
  return {
    cuts: [...(lots.length > 0 ? cuts : cuts.map(({ length, count }) => ({ length, count }))), ...extra],
    rolls: lengths.map((length, at) => ({ length, lot: lots[at] })),
    supply: 'in hand',
  };
}

/** Spares by type: cuts of one length are one type, whatever their rooms. */
function sparesOf(cuts: readonly CutLine[], share: Ratio): readonly CutLine[] {
  const byLength = new Map<Length, number>();
  for (const { length, count } of cuts) byLength.set(length, (byLength.get(length) ?? 0) + count);
  const types = [...byLength].map(([length, count]): CutLine => ({ length, count }));
  return withSpares(types, share).slice(types.length);
}

const cutsInWords = (cuts: readonly { length: Length; count: number }[], unit: Unit): string => {
  const byLength = new Map<Length, number>();
  for (const { length, count } of cuts) byLength.set(length, (byLength.get(length) ?? 0) + count);
  return [...byLength].map(([length, count]) => `${count} × ${showLength(length, unit)}`).join(' + ');
};

function planLines(name: string, best: BestPlan, unit: Unit): string[] {
  const { plan, gap, seconds } = best;
  const proof = plan.proven
    ? 'proven fewest'
    : plan.short.length > 0
      ? 'not all cuts fit'
      : `no plan needs fewer than ${plan.lowerBound}; gap ${gap}`;
  const used = (plan.utilisation / 100).toFixed(1);
  const lines = [
    `${name}: ${counted(plan.rolls.length, 'roll')}, ${proof}; ${used} % of the cloth opened is cut (${seconds.toFixed(1)} s)`,
  ];
  for (const roll of plan.rolls) {
    const cuts = roll.stretches.flatMap((stretch) => stretch.cuts);
    const left = roll.length - cuts.reduce((sum, { length, count }) => sum + length * count, 0);
    const lot = roll.lot === undefined ? '' : `, lot ${roll.lot}`;
    lines.push(
      `  roll ${roll.number} of ${showYardage(roll.length, unit)}${lot}: ${cutsInWords(cuts, unit)}, remnant ${showLength(left as Length, unit)}`,
    );
  }
  return lines;
}

/** The choices of the what-if table: every fullness with every width, both ways of laying the cloth. */
function choicesOf(values: Values, unit: Unit): Choice[] {
  const fullness =
    values.fullness === undefined
      ? [undefined]
      : parts(values.fullness).map((one) => readOption(FULLNESS, one, '--fullness', unit));
  const fabricWidths =
    values.widths === undefined
      ? [undefined]
      : parts(values.widths).map((one) => readOption(SIZE, one, '--widths', unit));
  return fullness.flatMap((full) =>
    fabricWidths.flatMap((fabricWidth) =>
      (['up the roll', 'railroaded'] as const).map((direction): Choice => ({
        fullness: full,
        fabricWidth,
        direction,
      })),
    ),
  );
}

function priceOption(values: Values): ReturnType<typeof money> | undefined {
  if (values.price === undefined) return undefined;
  const figure = Number(values.price);
  if (!(figure >= 0))
    throw new Problem(`--price reads “${values.price}”. Write an amount like 28.50.`, USAGE);
  return money(values.price);
}

function whatIfTable(windows: readonly WindowWork[], values: Values, unit: Unit) {
  const price = priceOption(values);
  const roll = values.roll === undefined ? undefined : readOption(YARDS, values.roll, '--roll', unit);
  const rules = windows[0]?.rules as WindowWork['rules'];
  return whatIf(
    windows.map((work) => work.window),
    choicesOf(values, unit),
    { price: price === undefined ? undefined : { breaks: [{ from: 0, price }] }, rollLength: roll },
    rules,
  );
}

const choiceInWords = ({ fullness, fabricWidth, direction }: Choice, unit: Unit): string =>
  [
    fullness === undefined ? '' : `fullness ${digits(toFigure(fullness))}`,
    fabricWidth === undefined ? '' : `${showLength(fabricWidth, unit)} cloth`,
    direction,
  ]
    .filter((one) => one !== '')
    .join(', ');

/** Plans each fabric, one after the other; Ctrl-C keeps the best so far. */
async function planAll(
  read: WindowsRead,
  values: Values,
  io: Io,
): Promise<ReadonlyMap<string, { job: CuttingJob; best: BestPlan }>> {
  const { windows, house } = read;
  const seconds = values.seconds === undefined ? 10 : Number(values.seconds);
  if (!(seconds > 0))
    throw new Problem(`--seconds reads “${values.seconds ?? ''}”. Write a number above 0.`, USAGE);
  const stop = new AbortController();
  const interrupt = (): void => stop.abort();
  process.once('SIGINT', interrupt);
  try {
    const highs = await loadSolver();
    const plans = new Map<string, { job: CuttingJob; best: BestPlan }>();
    for (const name of new Set(windows.map(fabricOf))) {
      const job = jobOf(
        windows.filter((work) => fabricOf(work) === name),
        values,
        house.unit,
      );
      const best = await bestPlan(job, {
        highs,
        seconds,
        stop: stop.signal,
        progress: ({ plan, doing }) =>
          io.progress(`… ${name}: ${counted(plan.rolls.length, 'roll')}, ${doing}`),
      });
      plans.set(name, { job, best });
    }
    return plans;
  } finally {
    process.removeListener('SIGINT', interrupt);
  }
}

function tell(read: WindowsRead, plans: Awaited<ReturnType<typeof planAll>>, values: Values, io: Io): void {
  const { windows, house } = read;
  const { unit } = house;
  const total = tally(windows, house.rules);
  io.out(`${counted(total.windows, 'window')} from the sheet “${read.sheet}”`);
  for (const line of clothLines(windows, total, undefined, unit)) io.out(line);
  for (const [name, { job, best }] of plans) {
    for (const line of planLines(name, best, unit)) io.out(line);
    for (const found of planFindings(job, best.plan, unit))
      io.err(`${found.weight} ${name}: ${found.sentence}`);
  }
  io.out('Hardware');
  io.out(hardwareLine(total, unit));
  if (values.fullness !== undefined || values.widths !== undefined) {
    io.out('What if');
    for (const { choice, yardage, price, rolls, why, cheapest } of whatIfTable(windows, values, unit)) {
      const figures =
        yardage === undefined
          ? (why ?? '')
          : [
              showYardage(yardage, unit),
              rolls === undefined ? '' : counted(rolls, 'roll'),
              price === undefined ? '' : price.toFixed(2),
            ]
              .filter((one) => one !== '')
              .join(', ');
      io.out(`  ${cheapest ? '*' : ' '} ${choiceInWords(choice, unit)}: ${figures}`);
    }
    io.out('  * the cheapest');
  }
  io.out('What would save cloth');
  for (const line of savingLines(windows, unit)) io.out(line);
  io.out('Worth a look');
  for (const line of findingLines(read)) io.out(line);
}

function asJson(read: WindowsRead, plans: Awaited<ReturnType<typeof planAll>>, values: Values): string {
  const { windows, house } = read;
  const { small, large } = house.unit;
  const yards = (of: Length): number => toUnit(of, large);
  return JSON.stringify({
    sheet: read.sheet,
    windows: windows.reduce((sum, work) => sum + work.quantity, 0),
    unread: read.unread,
    fabrics: tally(windows, house.rules).face.map(({ name, cuts, yardage }) => {
      const { plan, gap, seconds } = plans.get(name)?.best as BestPlan;
      return {
        fabric: name,
        cuts,
        yardage: yards(yardage),
        rolls: plan.rolls.map((roll) => ({
          roll: roll.number,
          length: yards(roll.length),
          lot: roll.lot,
          cuts: roll.stretches
            .flatMap((stretch) => stretch.cuts)
            .map(({ length, count, room }) => ({ length: toUnit(length, small), count, room })),
        })),
        lowerBound: plan.lowerBound,
        proven: plan.proven,
        gap,
        seconds,
        short: plan.short.map(({ length, count }) => ({ length: toUnit(length, small), count })),
      };
    }),
    whatIf:
      values.fullness === undefined && values.widths === undefined
        ? undefined
        : whatIfTable(windows, values, house.unit).map(
            ({ choice, yardage, rolls, price, why, cheapest }) => ({
              fullness: choice.fullness === undefined ? undefined : toFigure(choice.fullness),
              fabricWidth: choice.fabricWidth === undefined ? undefined : toUnit(choice.fabricWidth, small),
              direction: choice.direction,
              yardage: yardage === undefined ? undefined : yards(yardage),
              rolls,
              price: price?.toNumber(),
              why,
              cheapest,
            }),
          ),
  });
}

export const command: Command = {
  help: HELP,
  async run(words, io) {
    const { values, positionals } = readWords(words, OPTIONS, 'floor');
    const [path, ...others] = positionals;
    if (path === undefined || others.length > 0) {
      throw new Problem('floor wants one workbook: floor IN.xlsx. See npm run hem -- floor --help.', USAGE);
    }
    const { parts: filled } = await refill(
      readWorkbook(await openArchive(path)),
      nodeLibrary(),
      progressOf(io),
    );
    const whole = readWindows(readWorkbook(filled), path);
    const { fabric } = values;
    const windows =
      fabric === undefined
        ? whole.windows
        : whole.windows.filter((work) => work.window.fabric?.toLowerCase() === fabric.trim().toLowerCase());
    if (windows.length === 0)
      throw new Problem(
        `“${path}” has no window${fabric === undefined ? '' : ` of the fabric “${fabric}”`}. Check the table.`,
        USAGE,
      );
    const read = { ...whole, windows };
    const plans = await planAll(read, values, io);
    if (values.json === true) io.out(asJson(read, plans, values));
    else tell(read, plans, values, io);
    const short = [...plans.values()].some(({ best }) => best.plan.short.length > 0);
    return read.unread.length > 0 || short ? NOT_COMPUTED : FINE;
  },
};
