import type { RawRow } from './cell.ts';
import type { HeaderSearch } from './find-header.ts';
import type { PlainText } from './plain-rows/plain-text.ts';

/** What a reader of tables hands on, in order: the header once, then the rows below it in batches; or a fault that ends the table. */
export type TablePart =
  | {
      type: 'header';
      search: HeaderSearch;
      /** What may explain that no header was found. */
      hint: string | undefined;
      isSuspect: (text: string) => boolean;
      sheet?: string;
      /** Where rows may be taken as they stand in the text. */
      plain?: PlainText;
    }
  | { type: 'rows'; rows: readonly RawRow[] }
  | {
      type: 'fault';
      code: 'unreadable_file' | 'sheet_not_found' | 'too_long' | 'header_not_found';
      expected: string;
      value?: string;
    };
