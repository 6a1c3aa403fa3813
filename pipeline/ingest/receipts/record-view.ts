import { recordFields } from '../../site/records.ts';
import type { RecordKind } from '../../site/vocabulary.ts';
import { type Column, type FileColumns, valueAt } from '../file-columns.ts';

/** The columns of a file in the order of the fields of its kind; undefined where no record of the file has the field. */
interface FileOfViews {
  read: FileColumns['read'];
  rows: Float64Array;
  columns: readonly (Column | undefined)[];
}

/** Makes records of one file, each a view of its columns. */
export type ViewMaker = (index: number) => object;

/**
 * Records of a file as views of its columns: their fields can be read and nothing else, so that they can't be spread, cloned or changed. A field that a record does not have is undefined. Made several
 * times faster than a record, and in a tenth of its memory.
 */
export function recordViews({ kind, read, rows, columns }: FileColumns): ViewMaker {
  const of = new Map(columns);
  const View = viewOf(kind);
  const file = { read, rows, columns: fieldsOf(kind).map((name) => of.get(name)) };
  return (index) => new View(file, index);
}

type View = new (file: FileOfViews, at: number) => object;

/** One class for the records of a kind, so that reading a field stays quick. */
const views = new Map<RecordKind, View>();

function viewOf(kind: RecordKind): View {
  const known = views.get(kind);
  if (known) return known;
  class RecordView {
    readonly #file: FileOfViews;
    readonly #at: number;

    constructor(file: FileOfViews, at: number) {
      this.#file = file;
      this.#at = at;
    }

    get origin() {
      const { source, file, sheet } = this.#file.read;
      return { source, file, sheet, row: this.#file.rows[this.#at]! };
    }

    static {
      for (const [index, name] of fieldsOf(kind).entries())
        Object.defineProperty(RecordView.prototype, name, {
          get(this: RecordView) {
            const column = this.#file.columns[index];
            return column && valueAt(column, this.#at);
          },
        });
    }
  }
  views.set(kind, RecordView);
  return RecordView;
}

const fieldsOf = (kind: RecordKind): string[] => [...recordFields(kind).map(({ name }) => name), 'time_mark'];
