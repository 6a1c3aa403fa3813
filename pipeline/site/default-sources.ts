import type { Source } from './site-schema.ts';
import { RECORD_KINDS } from './vocabulary.ts';

/** Sources of a site file that lists none: files named by the kind of record, whose columns are named as the record's fields. */
export const DEFAULT_SOURCES: readonly Source[] = RECORD_KINDS.map((kind) => ({
  name: kind,
  kind,
  files: ['csv', 'tsv', 'txt', 'xlsx'].map((ending) => `**/${kind.replaceAll('_', '-')}*.${ending}`),
  format: 'by_name',
  decimal_mark: '.',
  dates: 'yyyy-MM-dd HH:mm:ss',
  columns: {},
  values: {},
  skip: {},
}));
