/** Today as spreadsheets count days, by this machine's own calendar. */
import { serial } from '../core/cell/day';

export function today(): number {
  const now = new Date();
  return serial(now.getFullYear(), now.getMonth() + 1, now.getDate()) ?? 0;
}
