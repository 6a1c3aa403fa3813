import { describe, expect, it } from 'vitest';
import { filePattern } from '../../../pipeline/ingest/file-pattern.ts';
import { csvPath } from '../../../pipeline/report/tables/review-tables.ts';
import { TABLE_NAMES } from '../../../pipeline/report/tables/table.ts';
import { DEFAULT_SOURCES } from '../../../pipeline/site/default-sources.ts';

describe('names of tables', () => {
  it('are none that a source by default would read, where a report stands among the exports', () => {
    const patterns = DEFAULT_SOURCES.flatMap(({ files }) => files).map(filePattern);
    const written = [...TABLE_NAMES.map((name) => csvPath({ name })), 'review.xlsx', 'problems.csv'];
    for (const path of written)
      expect(
        patterns.some((matches) => matches(`reports/2026-03/${path}`)),
        path,
      ).toBe(false);
  });
});
