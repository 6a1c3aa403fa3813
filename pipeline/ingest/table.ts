import type { RawRow } from './cell.ts';
import type { HeaderSearch } from './find-header.ts';

/** What a reader of tables hands on, in order: the header once, then the rows below it in batches; or a fault that ends the table. */
export type TablePart =
  | {
      type: 'header';
      search: HeaderSearch;
      /** What may explain that no header was found. */
      hint: string | undefined;
      isSuspect: (text: string) => boolean;
      sheet?: string;
    }
  | { type: 'rows'; rows: readonly RawRow[] }
  | {
      type: 'fault';
      code: 'unreadable_file' | 'sheet_not_found' | 'too_long' | 'header_not_found';
      expected: string;
      value?: string;
    };
