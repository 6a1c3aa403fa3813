import { groupBy } from '../../group-by.ts';
import { type Day, formatDay } from '../../site/day.ts';
import type { Water } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import type { WaterRow } from './surface-schema.ts';
import { fold, foldMeasure, limitsInForce, type WaterLimit } from './water-limits.ts';

/** Days back from the end of the record whose samples are counted: carried as measured, nothing between them taken as fact. */
const YEAR_DAYS = 365;

/** Water and condensate of the last year, one row for each point, determinand and measure, beside the limits in force. Nothing is said to be in or out of a limit that was not checked. */
export function waterRows(site: Site, water: readonly Water[], until: Day): WaterRow[] {
  const { water: inputs } = site.declared.interval;
  const limits = limitsInForce(inputs);
  const dated = water
    .map((sample) => {
      const source = site.sources.find((of) => of.name === sample.origin.source);
      const id = sample.site ?? source?.site ?? site.declared.sites[0]!.id;
      const clock = (site.sites.get(id) ?? site.sites.values().next().value!).clock;
      return { sample, site: id, day: clock.operatingDay(sample.time) };
    })
    .filter(({ day }) => day < until && day >= until - YEAR_DAYS);
  const groups = groupBy(dated, ({ sample, site: id }) =>
    [id, sample.point, fold(sample.determinand), foldMeasure(sample.measure)].join('\u0000'),
  );
  return [...groups.values()].map((of) => {
    const sorted = of.toSorted((a, b) => a.day - b.day);
    const last = sorted.at(-1)!;
    const { point, determinand, measure } = last.sample;
    const kind = inputs.condensate_points.some((phrase) => point.toLowerCase().includes(phrase.toLowerCase()))
      ? 'condensate'
      : 'feed_water';
    const known = limits.filter((row) => row.kind === kind && row.determinand === fold(determinand));
    const found = known.find((row) => row.measures.includes(foldMeasure(measure))) ?? null;
    const checked = found === null || found.status === 'unverified' ? null : found;
    return {
      point,
      site: last.site,
      units: unitsServed(site, sorted),
      kind,
      determinand,
      measure,
      samples: sorted.length,
      out: checked === null ? 0 : sorted.filter(({ sample }) => isOut(sample.value, checked)).length,
      last_date: formatDay(last.day),
      last_value: last.sample.value,
      last_out: checked === null ? null : isOut(last.sample.value, checked),
      low: found?.low ?? null,
      high: found?.high ?? null,
      edition: found?.edition ?? null,
      status: found?.status ?? null,
      not_compared: checked !== null ? null : whyNot(found, known),
    };
  });
}

function whyNot(found: WaterLimit | null, known: readonly WaterLimit[]): WaterRow['not_compared'] {
  if (found !== null) return 'example_limit';
  return known.length > 0 ? 'other_measure' : 'no_limit';
}

const isOut = (value: number, { low, high }: WaterLimit): boolean =>
  (low !== null && value < low) || (high !== null && value > high);

/** Units that the samples name, by their ids; a name that is not known stays as it stands. */
function unitsServed(site: Site, samples: readonly { sample: Water; site: string; day: Day }[]): string[] {
  const ids = samples.flatMap(({ sample, site: id, day }) =>
    (sample.units?.split(/[\s,;]+/) ?? [])
      .filter((name) => name !== '')
      .map((name) => {
        const read = site.readUnit(name, day, id);
        return read.known ? read.unit : name;
      }),
  );
  return [...new Set(ids)];
}
