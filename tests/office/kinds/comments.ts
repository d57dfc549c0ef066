/** Comments on cells. */
import { intersection } from '../address';
import { collection, found, held, invalidArgument, kind, thing, type Kind } from '../kind';
import type { CommentModel, Sheet, Workbook } from '../model';
import { rangeOf, resolve } from './range';

interface CommentsModel {
  readonly book: Workbook;
  readonly sheet: Sheet | undefined;
}

const COMMENT: Kind<CommentModel> = kind<CommentModel>('Comment', {
  id: (one) => one.id,
  scalars: {
    Id: held<CommentModel, 'id'>('id'),
    Content: held<CommentModel, 'content'>('content', true),
    Resolved: held<CommentModel, 'resolved'>('resolved', true),
    AuthorName: { get: () => 'The person at the sheet' },
    AuthorEmail: { get: () => '' },
    ContentType: { get: () => 'Plain' },
  },
  methods: {
    GetLocation: (one) => rangeOf(one.sheet, { row: one.row, column: one.column, rows: 1, columns: 1 }),
    Delete(one, _, world) {
      world.book.comments = world.book.comments.filter((other) => other !== one);
    },
  },
});

const within = ({ book, sheet }: CommentsModel): CommentModel[] =>
  book.comments.filter((one) => sheet === undefined || one.sheet === sheet);

const base = collection<CommentsModel, CommentModel>('CommentCollection', () => COMMENT, {
  items: within,
  named: (one) => [one.id],
  places: true,
});

export const COMMENTS: Kind<CommentsModel> = {
  ...base,
  methods: {
    ...base.methods,
    Add({ book, sheet }, [cell, content], world) {
      const range = resolve(world, sheet ?? book.active, cell);
      if (range.area.rows * range.area.columns !== 1 || String(content ?? '') === '') throw invalidArgument();
      world.mayChange(range.sheet, 'allowEditObjects');
      const { row, column } = range.area;
      if (book.comments.some((one) => one.sheet === range.sheet && one.row === row && one.column === column))
        throw invalidArgument();
      const one: CommentModel = {
        id: book.newId(),
        sheet: range.sheet,
        row,
        column,
        content: String((content as { content?: string }).content ?? content),
        resolved: false,
      };
      book.comments.push(one);
      return thing(COMMENT, one);
    },
    GetItemByCell(self, [cell], world) {
      const range = resolve(world, self.sheet ?? world.book.active, cell);
      return thing(
        COMMENT,
        found(
          within(self).find(
            (one) =>
              one.sheet === range.sheet &&
              intersection(range.area, { ...one, rows: 1, columns: 1 }) !== undefined,
          ),
        ),
      );
    },
  },
};
