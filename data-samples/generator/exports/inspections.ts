import { type Fleet, recordsOf } from '../fleet.ts';
import { stream } from '../random.ts';
import type { SiteId } from '../scenario.ts';
import { row, type Table } from '../table.ts';
import { date as quillhavenDate } from './quillhaven-words.ts';
import { date as tornfellDate } from './tornfell-words.ts';

/** Appearance of the chamber before each cleaning: the columns are named as the fields of the record, so that the site file has little to say. */
export function inspections(fleet: Fleet, site: SiteId): Table {
  const draw = stream(`${site}/inspections`);
  const last = new Map<string, number>();
  const cleanings = recordsOf(fleet, site, 'cleanings', (cleaning) => cleaning.time).filter(
    (cleaning) => cleaning.task === 'chamber' && cleaning.state === 'done' && cleaning.support !== 'running',
  );
  const date = site === 'Quillhaven' ? quillhavenDate : (time: number) => iso(tornfellDate(time));
  return {
    file: `${site.toLowerCase()}/inspections.csv`,
    source: `${site} inspections`,
    preamble: [],
    header: ['unit', 'time', 'appearance', 'residue_after_rinsing', 'note'],
    rows: cleanings.map((cleaning) => {
      const days =
        (cleaning.time - (last.get(cleaning.unit) ?? cleaning.time - 30 * 86_400_000)) / 86_400_000;
      last.set(cleaning.unit, cleaning.time);
      const appearance = Math.max(0, Math.min(4, Math.round(days / 17 + 0.6 * draw.normal())));
      const residue = draw.chance(0.06) ? 'yes' : 'no';
      const note =
        appearance >= 3 ? draw.pick(['white deposit on the floor', 'brown edge at the drain', '']) : '';
      const cells = [cleaning.unit, date(cleaning.time), String(appearance), residue, note];
      return row(cells, `${cleaning.unit} ${cleaning.time}`, cleaning.time);
    }),
  };
}

const iso = (day: string): string => `${day.slice(6)}-${day.slice(3, 5)}-${day.slice(0, 2)}`;
