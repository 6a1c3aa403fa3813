import {
  qualityOfUnit,
  qualityParts,
  recordQuality,
} from '../../../pipeline/findings/record-quality/record-quality.ts';
import type { RecordQuality } from '../../../pipeline/findings/record-quality/record-quality-schema.ts';
import { parseDay } from '../../../pipeline/site/day.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';
import type { Records } from '../../../pipeline/site/records.ts';
import type { SiteFileInput } from '../../../pipeline/site/site-schema.ts';
import { transform } from '../../../pipeline/transform/transform.ts';

/** Quality of the records of a site, all of them. */
export function qualityOf(declared: SiteFileInput, records: Records): RecordQuality {
  const site = readSiteFile(JSON.stringify(declared), 'site.yaml');
  const { histories } = transform(site, records, parseDay('2100-01-01')!);
  return recordQuality(
    qualityParts(
      site,
      histories.map((history) => qualityOfUnit(site, history)),
    ),
  );
}
