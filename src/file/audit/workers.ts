/** The pieces of a file of orders, audited by worker threads and given back in their order. */
import { Worker } from 'node:worker_threads';
import { Problem } from '../problem';
import type { AuditWanted } from './audit-by';
import type { FirstLook } from './orders';
import { Standing, type PieceAudited } from './pieces';
import type { PieceBack, PieceSent, WorkerGiven } from './worker';

/** One thread's memory; it keeps one piece at a time. */
const MOST_MEGABYTES = { maxOldGenerationSizeMb: 96, maxYoungGenerationSizeMb: 48 };
/** Pieces that each thread may be ahead of the one that is wanted next. */
const AHEAD = 2;

/** The bundle has it beside it; the sources start theirs through a file of its own. */
const THREAD = new URL(
  import.meta.url.endsWith('.ts') ? './thread.mjs' : './audit-worker.mjs',
  import.meta.url,
);

export const died = (why: string): Problem =>
  new Problem(
    `A worker thread died (${why}), and nothing of the audit is reported. Try again, or with --jobs 1, which uses none.`,
  );

interface Thread {
  readonly worker: Worker;
  busy: boolean;
}

export class Workers {
  private readonly threads: Thread[];
  private readonly back = new Map<number, PieceAudited>();
  private readonly standing = new Standing();
  /** Pieces to be audited again, from what truly stands above them. */
  private readonly again: PieceSent[] = [];
  private next = 0;
  private wanted = 0;
  private failed: Problem | undefined;
  private wake: () => void = () => undefined;

  constructor(
    private readonly first: FirstLook,
    wanted: AuditWanted,
    jobs: number,
    thread: URL = THREAD,
  ) {
    const { pieces, ...rest } = first;
    const workerData: WorkerGiven = { wanted, first: rest };
    this.threads = Array.from({ length: Math.min(jobs, pieces.length) }, () => ({
      worker: new Worker(thread, { workerData, resourceLimits: MOST_MEGABYTES }),
      busy: false,
    }));
    for (const one of this.threads) {
      one.worker.on('message', (message: PieceBack) => {
        this.take(one, message);
      });
      one.worker.on('error', (error) => {
        this.fail(died(error.message));
      });
      one.worker.on('exit', (code) => {
        this.fail(died(`code ${code}`));
      });
    }
  }

  /** Every piece in its turn. Throws a Problem where one cannot be had. */
  async *all(): AsyncGenerator<PieceAudited> {
    try {
      for (; this.wanted < this.first.pieces.length; this.wanted++) yield await this.one(this.wanted);
    } finally {
      for (const { worker } of this.threads) worker.removeAllListeners('exit');
      await Promise.all(this.threads.map(({ worker }) => worker.terminate()));
    }
  }

  private async one(at: number): Promise<PieceAudited> {
    let isTrue = false;
    for (;;) {
      this.send();
      const done = this.back.get(at);
      if (done !== undefined) {
        this.back.delete(at);
        if (this.standing.takes(at, done, isTrue)) return done;
        isTrue = true;
        this.again.push(this.sent(at, true));
        continue;
      }
      if (this.failed !== undefined) throw this.failed;
      await new Promise<void>((resolve) => (this.wake = resolve));
    }
  }

  private sent(at: number, isTrue: boolean): PieceSent {
    const piece = this.first.pieces[at] as PieceSent['piece'];
    return { at, piece, start: isTrue ? this.standing.start : this.standing.guess(at), isTrue };
  }

  /** Gives work to whoever has none. */
  private send(): void {
    const most = Math.min(this.first.pieces.length, this.wanted + this.threads.length * AHEAD);
    for (const one of this.threads) {
      if (one.busy) continue;
      const sent = this.again.shift() ?? (this.next < most ? this.sent(this.next++, false) : undefined);
      if (sent === undefined) return;
      one.busy = true;
      one.worker.postMessage(sent);
    }
  }

  private take(one: Thread, message: PieceBack): void {
    one.busy = false;
    if ('problem' in message) this.failed ??= new Problem(message.problem);
    else this.back.set(message.at, message.done);
    this.wake();
    this.send();
  }

  private fail(problem: Problem): void {
    this.failed ??= problem;
    this.wake();
  }
}
