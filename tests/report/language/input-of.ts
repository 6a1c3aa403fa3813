import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { intervalCase } from '../../../pipeline/findings/interval/interval-case.ts';
import { reviewPeriod, spanOfRecords } from '../../../pipeline/findings/period.ts';
import { makeReview } from '../../../pipeline/findings/review.ts';
import { readExports } from '../../../pipeline/ingest/read-exports.ts';
import type { ReportInput } from '../../../pipeline/report/report.ts';
import { rowsOfUnits } from '../../../pipeline/rows-of-units.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';
import { transform } from '../../../pipeline/transform/transform.ts';

/** What a report is made from, of a folder with exports and site.yaml: the last whole month. */
export async function inputOf(folder: string): Promise<ReportInput> {
  const site = readSiteFile(readFileSync(join(folder, 'site.yaml'), 'utf8'), 'site.yaml');
  const reading = await readExports(site, folder);
  const period = reviewPeriod(undefined, spanOfRecords(site, reading.records));
  const transformed = transform(site, reading.records, period.until);
  const { histories, panel, until } = transformed;
  return {
    review: makeReview({ site, reading, transformed, period, version: '0' }),
    panel,
    dueOf: rowsOfUnits(histories.flatMap((history) => history.cleaning.due)),
    problems: reading.problems,
    interval: intervalCase(histories, panel, site, reading.records, until),
  };
}
