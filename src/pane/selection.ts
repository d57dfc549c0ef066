/** The cells selected in the workbook, as they change. */
import { useEffect, useState } from 'react';
import type { Area } from '../book/address';
import type { Book, Stop } from '../book/book';

export function useSelection(book: Book): Area | undefined {
  const [area, setArea] = useState<Area>();
  useEffect(() => {
    let stop: Stop | undefined;
    let over = false;
    const watch = async (): Promise<void> => {
      stop = await book.onSelection((now) => {
        if (!over) setArea(now);
      });
      if (over) {
        stop();
        return;
      }
      const now = await book.selection();
      // The clean-up below may have run while the host answered.
      if (!isOver()) setArea((known) => known ?? now);
    };
    const isOver = (): boolean => over;
    watch().catch(reportError);
    return () => {
      over = true;
      stop?.();
    };
  }, [book]);
  return area;
}
