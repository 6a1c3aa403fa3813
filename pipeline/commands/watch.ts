import type { ProbeDrift } from '../findings/drift/drift-schema.ts';
import type { CyclesWithoutPass } from '../findings/lists/cycles-without-pass-schema.ts';
import { countedSince, type Period, type Span } from '../findings/period.ts';
import type { Problem } from '../ingest/reading.ts';
import { formatDay, monthOf, monthSpan } from '../site/day.ts';
import { UserError } from '../user-error.ts';
import {
  type Command,
  FOLDER_ARGUMENT,
  HISTORY_ARGUMENT,
  JSON_ARGUMENT,
  SITE_ARGUMENT,
  THREADS_ARGUMENT,
} from './command.ts';
import { readFleet } from './fleet.ts';

/** Exit code that a scheduler can act on: something moves or is near its limit, or cycles ran after a failed test. */
const SOMETHING_TO_SEE = 10;

/** A step is news for so many days. */
const STEP_IS_NEWS_DAYS = 28;

/** What is moving today, in a few lines, for use between reviews. Today is the last operating day of the records: no clock is asked. */
export const watchCommand: Command = {
  definition: {
    meta: {
      name: 'watch',
      description:
        'Say what is moving on the last day of the records, between reviews. Exit code 10: something moves, is near its limit or has stepped, or cycles ran this month after a failed test and before one passed; 0: nothing of that.',
    },
    args: {
      folder: FOLDER_ARGUMENT,
      site: SITE_ARGUMENT,
      history: HISTORY_ARGUMENT,
      threads: THREADS_ARGUMENT,
      json: JSON_ARGUMENT,
    },
  },
  run: async (values, terminal) => {
    const { share, reading, period } = await readFleet(values, terminal, toTheLastDay);
    const { drift } = share;
    terminal.progressDone();
    const newsFrom = formatDay(period.until - 1 - STEP_IS_NEWS_DAYS);
    const moving = drift.probes.filter((probe) => isNews(probe, newsFrom));
    const ran = share.lists.cycles_without_pass.filter(({ why }) => why === 'after_failure');
    const lone = reading.problems.filter(({ code }) => code === 'lone_record');
    terminal.print(
      values.json
        ? JSON.stringify(
            {
              to: drift.to,
              moving: moving.map(withoutSeries),
              ...(ran.length > 0 && { ran_after_failure: ran }),
              ...(lone.length > 0 && { left_out: lone }),
            },
            null,
            2,
          )
        : [describe(drift.to, moving), ...ran.map(ranAfterFailure), ...lone.map(leftOut)].join('\n'),
    );
    return moving.length > 0 || ran.length > 0 ? SOMETHING_TO_SEE : undefined;
  },
};

function toTheLastDay(span: Span): Period {
  if (!span)
    throw new UserError(
      'no_records',
      'There must be at least one cycle or air-removal test to watch, found none',
    );
  const month = monthOf(span.last);
  return { month, from: monthSpan(month)!.from, until: span.last + 1, ...countedSince(span) };
}

function isNews({ state, since, era }: ProbeDrift, newsFrom: string): boolean {
  if (!era.current) return false;
  return (
    state === 'moving' ||
    state === 'near_limit' ||
    (state === 'stepped' && since !== null && since >= newsFrom)
  );
}

function withoutSeries({ series: _, ...probe }: ProbeDrift): Omit<ProbeDrift, 'series'> {
  return probe;
}

function describe(to: string, moving: readonly ProbeDrift[]): string {
  if (moving.length === 0) return `To ${to}: nothing moves. No flag does not mean no fault.`;
  return [`To ${to}:`, ...moving.map(line)].join('\n');
}

/** "Q2: 4 cycles of this month ran after the failed test of 2026-08-04 07:08 and before one passed: those who are responsible decide about them." */
function ranAfterFailure({ unit, failed, failed_by_date, date, cycles }: CyclesWithoutPass): string {
  const count = `${cycles.length} ${cycles.length === 1 ? 'cycle' : 'cycles'} of this month`;
  const sure = cycles.some(({ certain }) => certain) ? '' : 'perhaps ';
  return `${unit}: ${count} ${sure}ran after the failed test of ${failed_by_date ? date : failed} and before one passed: those who are responsible decide about them.`;
}

/** A record that was left out, since a slip of a clock may hide what moves today. */
function leftOut({ file, sheet, row, column, value, expected }: Problem): string {
  const place = [file, sheet && `sheet ${sheet}`, `row ${row}`, column];
  return `Left out: ${place.filter(Boolean).join(', ')}: must be ${expected}; found "${value}".`;
}

/** "Q4 evacuation time: moving up since 2026-08-13, now 501 s (usual 382 to 405), 17.1 s a week, limit in 40 days (30 to 55)." */
function line(probe: ProbeDrift): string {
  const { measure, level_now, baseline, rate_per_week: rate, days_to_limit: days, saw_tooth } = probe;
  const figure = (value: number) => String(Number(value.toPrecision(3)));
  const parts = [
    `${probe.unit} ${probe.probe.replaceAll('_', ' ')}: ${probe.state.replaceAll('_', ' ')}${probe.direction ? ` ${probe.direction}` : ''}${probe.since ? ` since ${probe.since}` : ''}`,
    level_now !== null &&
      `now ${figure(level_now)} ${measure}${baseline ? ` (usual ${figure(baseline.low)} to ${figure(baseline.high)})` : ''}`,
    rate && `${figure(rate.value)} ${measure} a week (${figure(rate.low)} to ${figure(rate.high)})`,
    days &&
      `limit in ${days.days === null ? 'over two years' : `${days.days} days`} (${days.low} ${days.high === null ? 'or more' : `to ${days.high}`})`,
    saw_tooth && `falls back at ${saw_tooth.falls_back_at.replaceAll('_', ' ')}: clean`,
  ];
  return `${parts.filter(Boolean).join(', ')}.`;
}
