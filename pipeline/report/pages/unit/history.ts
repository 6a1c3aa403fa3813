import { historyChart } from '../../charts/history.ts';
import { html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { figure } from '../../parts/figure.ts';
import type { Section } from '../../parts/page.ts';
import { historyRows, LANES } from '../../rows/history-rows.ts';
import { monthsFromTo } from '../../rows/months.ts';
import type { Unit } from './unit.ts';

/** The whole record of a unit as a strip. */
export async function historySection(
  context: ReportContext,
  numbers: Numbering,
  { unit }: Unit,
): Promise<Section> {
  const { words, review } = context;
  const { record_from, record_to, from } = review.period;
  const rows = historyRows(context, unit);
  const lanes = LANES.map((lane) => words.charts.lane[lane] ?? lane);
  const body =
    rows.length === 0 || record_from === null || record_to === null
      ? html`<p class="empty">${words.pages.nothingToShow}</p>`
      : await figure(context, numbers, {
          id: 'figure-history',
          title: words.unit.historyTitle,
          description: words.unit.historyDescription(
            lanes.map((lane) =>
              words.unit.laneCount(lane, rows.filter((row) => row.lane_label === lane).length),
            ),
          ),
          spec: historyChart(rows, {
            timeTitle: words.charts.time,
            from: record_from,
            to: record_to,
            monthFrom: from,
            lanes,
            contradictedLetter: words.terms.dueLetter.contradicted,
            months: monthStarts(context, record_from, record_to),
          }),
          reading: words.unit.historyIntro,
          csv: 'tables/unit-history.csv',
        });
  return { id: 'history', heading: words.unit.historyHeading, body };
}

/** First days of the record's months, named with the year below the first and each January; every third where there are many. */
function monthStarts({ words }: ReportContext, from: string, to: string) {
  const all = monthsFromTo(from.slice(0, 7), to.slice(0, 7));
  const step = all.length > 30 ? 3 : all.length > 18 ? 2 : 1;
  return all
    .filter((_, index) => index % step === 0)
    .map((month, index) => {
      const date = `${month}-01`;
      const name = words.format.monthShort(month);
      return {
        date: date < from ? from : date,
        label: index === 0 || month.endsWith('-01') ? [name, month.slice(0, 4)] : [name],
      };
    });
}
