import { stream } from '../random.ts';
import { type SiteId, UNITS } from '../scenario.ts';
import { row, type Table } from '../table.ts';

/** Water and condensate, sampled each quarter. Means lie inside the limits usual for such water; all values are invented. */

const DETERMINANDS = [
  { name: 'conductivity', measure: 'uS/cm', feed: 3.1, condensate: 1.6, digits: 1 },
  { name: 'hardness', measure: 'mg/L CaCO3', feed: 0.9, condensate: 0.4, digits: 1 },
  { name: 'chloride', measure: 'mg/L', feed: 0.31, condensate: 0.06, digits: 2 },
  { name: 'silicate', measure: 'mg/L', feed: 0.42, condensate: 0.05, digits: 2 },
  { name: 'pH', measure: 'pH', feed: 6.5, condensate: 6.1, digits: 1 },
] as const;

const DATES = ['2025-05-14', '2025-08-13', '2025-11-12', '2026-02-11', '2026-05-13', '2026-08-12'];

export function water(site: SiteId): Table {
  const draw = stream(`${site}/water`);
  const units = UNITS.filter((plan) => plan.site === site).map((plan) => plan.id);
  const rows = DATES.flatMap((day) =>
    (['feed', 'condensate'] as const).flatMap((place) =>
      DETERMINANDS.map((of) => {
        const spread = of.name === 'pH' ? 0.02 : 0.14;
        const value = of[place] * Math.exp(spread * draw.normal());
        const point = place === 'feed' ? 'feed water' : `condensate ${units[0]}`;
        const served = place === 'feed' ? units.join(' ') : units[0]!;
        const cells = [point, day, of.name, value.toFixed(of.digits), of.measure, served];
        return row(cells, `${point} ${day} ${of.name}`, Date.parse(day));
      }),
    ),
  );
  return {
    file: `${site.toLowerCase()}/water.csv`,
    source: `${site} water`,
    preamble: [],
    header: ['point', 'time', 'determinand', 'value', 'measure', 'units'],
    rows,
  };
}
