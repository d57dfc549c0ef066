/** One of the audit's worker threads: understands the file as the main thread does, then audits the pieces it is sent. */
import { parentPort, workerData } from 'node:worker_threads';
import { OneByOne } from '../../core/audit/one-by-one';
import { byRulesSeen } from '../../core/audit/other-rules';
import { Problem } from '../problem';
import { auditBy, type AuditWanted } from './audit-by';
import { ordersIn, rowsBelow, type FirstLook } from './orders';
import { auditPiece, type Piece, type PieceAudited, type PieceWork, type Start } from './pieces';

export interface WorkerGiven {
  readonly wanted: AuditWanted;
  readonly first: Omit<FirstLook, 'pieces'>;
}

export interface PieceSent {
  readonly at: number;
  readonly piece: Piece;
  readonly start: Start;
  readonly isTrue: boolean;
}

export type PieceBack = { readonly at: number } & (
  | { readonly done: PieceAudited }
  /** Why the file cannot be read. */
  | { readonly problem: string }
);

async function prepared({ wanted, first }: WorkerGiven): Promise<PieceWork> {
  const { by, look } = await auditBy(wanted);
  const found = ordersIn({ ...first }, look);
  const seen = byRulesSeen(found.table, by, rowsBelow(first.firstRows, found.below));
  return {
    csv: first.csv,
    table: found.table,
    alone: new OneByOne(found.table, seen),
    below: found.below,
  };
}

const work = prepared(workerData as WorkerGiven);

parentPort?.on('message', (sent: PieceSent) => {
  const { at, piece, start, isTrue } = sent;
  void work
    .then((known) => auditPiece(known, piece, start, isTrue))
    .then(
      (done): PieceBack => ({ at, done }),
      (thrown: unknown): PieceBack => {
        if (thrown instanceof Problem) return { at, problem: thrown.message };
        throw thrown;
      },
    )
    .then((back) => parentPort?.postMessage(back));
});
