import { groupBy } from '../../../group-by.ts';
import { intervalWeekChart, type WeekRow } from '../../charts/interval-week.ts';
import { textWidth } from '../../charts/text-width.ts';
import { FONT_SIZE } from '../../charts/theme.ts';
import { toldText } from '../../charts/told.ts';
import { type Html, html } from '../../html/html.ts';
import { dataTable } from '../../parts/data-table.ts';
import { figure } from '../../parts/figure.ts';
import type { Section } from '../../parts/page.ts';
import { picturedUnits, picturesNote } from '../../parts/pictured-units.ts';
import { unitLink } from '../../parts/unit-link.ts';
import type { SectionContext } from './section-context.ts';

/** Units in one picture, and windows of a unit in the table. */
const UNITS_IN_FIGURE = 30;
const WINDOWS_SHOWN = 2;
/** Sites up to which each has a line of its own. */
const SITES_BY_THEMSELVES = 4;

/** When to clean: the weekly pattern, windows, proposals. */
export async function planSection(section: SectionContext): Promise<Section> {
  const { context, numbers, found, text } = section;
  const { plan, argument, evidence } = text;
  const { schedule } = found;
  const { format } = context.words;
  const days = [1, 2, 3, 4, 5, 6, 7];
  const windows = schedule.units.flatMap((unit) =>
    unit.windows.slice(0, WINDOWS_SHOWN).map((window) => ({ unit: unit.unit, ...window })),
  );
  const heads = plan.windowHeads;
  const body = html`${
    schedule.units.length > 0 &&
    html`<p>${plan.intro({
      weeks: schedule.weeks,
      cool: format.twoFigures(schedule.cool_down_hours),
      work: format.twoFigures(schedule.work_hours),
      back: format.twoFigures(schedule.return_hours),
    })}</p>
<ul>${sitesAlike(section).map(({ names, needed_origin, worked_origin }) => html`<li>${plan.needed[needed_origin](names)} ${plan.worked[worked_origin]}</li>`)}</ul>`
  }
${picturesNote(context)}
${await weekFigures(section, days.map(plan.weekdayShort))}
${
  windows.length > 0 &&
  dataTable(context, numbers, {
    caption: plan.windowsCaption,
    rows: windows,
    columns: [
      { head: heads.unit, kind: 'head', cell: (row) => unitLink(context, row.unit) },
      { head: heads.window, cell: (row) => plan.weekday(row.weekday) },
      { head: heads.out, kind: 'number', cell: (row) => row.out_from },
      { head: heads.work, kind: 'number', cell: (row) => argument.between(row.work_from, row.work_to) },
      { head: heads.back, kind: 'number', cell: (row) => row.back },
      { head: heads.displaced, kind: 'number', cell: (row) => plan.displaced(row.displaced) },
      { head: heads.spare, kind: 'number', cell: (row) => format.integer(row.spare_units) },
    ],
  })
}
${schedule.units.filter((unit) => unit.no_window !== null).map((unit) => html`<p>${plan.noWindow(unit.unit, plan.notPlaced[unit.no_window!])}</p>`)}
${schedule.units.length > 0 && html`<p class="caution">${plan.hazard}</p>`}
${schedule.not_planned === null ? proposals(section) : html`<p class="empty">${plan.notPlanned[schedule.not_planned]}</p>`}`;
  return { id: 'plan', heading: evidence.sections.plan, body };
}

/** Sites for which the same is said, in one line where there are more than a few. */
function sitesAlike({ context, found, text }: SectionContext) {
  const { sites } = found.schedule;
  const few = sites.length <= SITES_BY_THEMSELVES;
  const groups = groupBy(sites, ({ site, needed_origin, worked_origin }) =>
    few ? site : `${needed_origin} ${worked_origin}`,
  );
  return [...groups.values()].map((alike) => {
    const { needed_origin, worked_origin } = alike[0]!;
    const all = !few && alike.length === sites.length;
    const names = all
      ? text.plan.allSites(sites.length)
      : context.words.format.list(alike.map(({ site }) => context.siteName(site)));
    return { names, needed_origin, worked_origin };
  });
}

function proposals({ context, numbers, found, text }: SectionContext): Html {
  const { plan, argument } = text;
  const { schedule } = found;
  const { format } = context.words;
  const heads = plan.proposalHeads;
  const day = (wall: string) => plan.dayAndTime(weekdayOf(wall), wall);
  return html`<p>${plan.basis(argument.interval(schedule.interval!, found.clock), format.date(schedule.earliest))} <a class="screen" href="interval.ics">${plan.calendarFile}</a></p>
${
  schedule.proposals.length === 0
    ? html`<p class="empty">${plan.noneDue}</p>`
    : dataTable(context, numbers, {
        caption: plan.proposalsCaption(format.month(schedule.month)),
        rows: schedule.proposals,
        columns: [
          { head: heads.unit, kind: 'head', cell: (row) => unitLink(context, row.unit) },
          {
            head: heads.due,
            cell: (row) =>
              html`${row.due === null ? plan.state.never_recorded : format.date(row.due)}${(row.state === 'overdue' || row.state === 'due_before_plan') && html` <span class="sub wraps">${plan.state[row.state]}</span>`}`,
          },
          { head: heads.out, kind: 'number', cell: (row) => day(row.out) },
          {
            head: heads.work,
            kind: 'number',
            cell: (row) => argument.between(row.work.slice(11), row.work_to.slice(11)),
          },
          { head: heads.back, kind: 'number', cell: (row) => row.back.slice(11) },
          { head: heads.displaced, kind: 'number', cell: (row) => plan.displaced(row.displaced) },
        ],
      })
}
${
  schedule.not_placed.length > 0 &&
  html`<ul>${schedule.not_placed.map((row) => html`<li>${plan.notPlacedLine(row.unit, format.date(row.due), plan.notPlaced[row.why])}</li>`)}</ul>`
}`;
}

/** 1 Monday to 7 Sunday of a wall time as text. */
const weekdayOf = (wall: string): number =>
  ((new Date(`${wall.slice(0, 10)}T00:00:00Z`).getUTCDay() + 6) % 7) + 1;

async function weekFigures(section: SectionContext, days: readonly string[]): Promise<Html[]> {
  const { context, numbers, found, text } = section;
  const { plan } = text;
  const { tips } = context.words;
  const figures: Html[] = [];
  const pictured = picturedUnits(
    context.review,
    found.schedule.units.map(({ unit }) => unit),
  );
  for (const site of found.schedule.sites) {
    const units = found.schedule.units
      .filter((unit) => unit.site === site.site && pictured.has(unit.unit))
      .slice(0, UNITS_IN_FIGURE);
    const rows = units.flatMap((unit): WeekRow[] =>
      unit.in_use.flatMap((share, hour) =>
        share === 0
          ? []
          : [
              {
                unit: unit.unit,
                hour,
                hour_end: hour + 1,
                share,
                told: toldText({
                  unit: unit.unit,
                  tip: tips.of(unit.unit, tips.hour(Math.floor(hour / 24) + 1, hour % 24, share)),
                }),
              },
            ],
      ),
    );
    if (rows.length === 0) continue;
    const widest = Math.max(...units.map((unit) => textWidth(unit.unit, FONT_SIZE)));
    figures.push(
      await figure(context, numbers, {
        id: `interval-week-${figures.length + 1}`,
        title: plan.patternTitle(context.siteName(site.site)),
        reading: plan.patternReading,
        description: plan.patternDescription(
          units.map((unit) => plan.patternLine(unit.unit, unit.in_use.filter((share) => share === 0).length)),
        ),
        spec: intervalWeekChart(rows, {
          units: units.map((unit) => unit.unit),
          days,
          title: plan.patternAxis,
          shareTitle: plan.share,
          labelWidth: Math.min(150, Math.max(30, Math.ceil(widest) + 12)),
        }),
      }),
    );
  }
  return figures;
}
