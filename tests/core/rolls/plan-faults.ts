/** What would make a cutting plan useless at the table, looked for from the plan alone. */
import type { CuttingJob } from '../../../src/core/rolls/cutting';
import type { CutPlan, PlannedStretch } from '../../../src/core/rolls/plan';

/** Cuts that leave out more of their repeat than what follows them allows. */
function tooShort(job: CuttingJob, { cuts }: PlannedStretch): string[] {
  const turns = cuts.flatMap(({ line, length, count }) =>
    Array.from({ length: count }, () => ({ line: job.cuts[line], length })),
  );
  return turns.flatMap(({ line, length }, at) => {
    if (line === undefined) return ['a cut that nobody asked for'];
    const next = turns[at + 1]?.line;
    const { bare = line.length, unlikeTwice = 2 * line.length } = line;
    // Half a repeat may be half a nanometre.
    const [least, most] =
      next === undefined
        ? [bare, bare]
        : (next.start ?? 'A') === (line.start ?? 'A')
          ? [line.length, line.length]
          : [(unlikeTwice - 1) / 2, (unlikeTwice + 1) / 2];
    return length < least || length > most ? [`a cut takes ${length}, not ${least} to ${most}`] : [];
  });
}

export function faultsOf(job: CuttingJob, plan: CutPlan): string[] {
  const faults: string[] = [];
  const cutOf = job.cuts.map(() => 0);
  const lotsOf = new Map<string, Set<string>>();
  const opened = new Set<number>();
  for (const roll of plan.rolls) {
    if (opened.has(roll.number)) faults.push(`roll ${roll.number} is opened twice`);
    opened.add(roll.number);
    const given = job.supply === 'in hand' ? job.rolls[roll.number - 1] : job.rolls[0];
    if (given?.length !== roll.length || given.lot !== roll.lot)
      faults.push(`roll ${roll.number} is none of those given`);
    let end = 0;
    for (const stretch of roll.stretches) {
      if (stretch.from < end) faults.push(`roll ${roll.number} has overlapping stretches`);
      end = stretch.from + stretch.length;
      for (const flaw of given?.flaws ?? []) {
        if (flaw.from < end && flaw.from + flaw.length > stretch.from)
          faults.push(`roll ${roll.number} is cut across a flaw`);
      }
      let cloth = 0;
      for (const { length, count, line, room, start } of stretch.cuts) {
        cloth += length * count;
        cutOf[line] = (cutOf[line] ?? 0) + count;
        const asked = job.cuts[line];
        if (asked?.start !== start || asked?.room !== room) faults.push(`line ${line} was asked otherwise`);
        if (!Number.isInteger(count) || count <= 0) faults.push(`roll ${roll.number} holds ${count} cuts`);
        if (room !== undefined) lotsOf.set(room, (lotsOf.get(room) ?? new Set()).add(roll.lot ?? ''));
      }
      faults.push(...tooShort(job, stretch));
      if (cloth > stretch.length) faults.push(`roll ${roll.number} is cut beyond its length`);
      if (cloth + stretch.remnant !== stretch.length) faults.push(`roll ${roll.number} has a wrong remnant`);
    }
    if (end > roll.length) faults.push(`roll ${roll.number} ends before its stretches`);
    if (roll.stretches.every(({ cuts }) => cuts.length === 0))
      faults.push(`roll ${roll.number} is opened for nothing`);
  }
  for (const { line, count } of plan.short) cutOf[line] = (cutOf[line] ?? 0) + count;
  job.cuts.forEach(({ count }, line) => {
    if (cutOf[line] !== count) faults.push(`line ${line} asks ${count} cuts and gets ${cutOf[line] ?? 0}`);
  });
  for (const [room, lots] of lotsOf) {
    if (lots.size > 1) faults.push(`room ${room} is cut from ${lots.size} lots`);
    const toldApart = new Set(job.rolls.map(({ lot }) => lot)).size > 1;
    if (toldApart && plan.short.some((cut) => cut.room === room)) faults.push(`room ${room} is cut in part`);
  }
  if (plan.short.length === 0 && plan.rolls.length < plan.lowerBound)
    faults.push('the plan goes below its bound');
  return faults;
}
