import { joinedUnits, type UnitsToJoin } from '../../pipeline/commands/site-by-site/joined-units.ts';
import { UNIT_DAY } from '../../pipeline/findings/shares/carried-share.ts';
import { openInputs } from '../../pipeline/ingest/read-jobs.ts';
import { type PackedRows, packRows } from '../../pipeline/packed-rows.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import type { UnitDay } from '../../pipeline/transform/panel/unit-day.ts';

/** Joins some units from the history, as a thread of the program does before it looks at each: their rows of the panel. */
export default async function join({
  site: { text, file },
  folder,
  of,
}: {
  site: { text: string; file: string };
  folder: string;
  of: UnitsToJoin;
}): Promise<PackedRows<UnitDay>[]> {
  const inputs = await openInputs(readSiteFile(text, file), folder, {});
  const panel: PackedRows<UnitDay>[] = [];
  for await (const unit of joinedUnits(inputs, of).units) panel.push(packRows(unit.panel, UNIT_DAY));
  return panel;
}
