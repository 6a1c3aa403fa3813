// Over 300 lines: the whole schema of review.json in the order of the file, so that its documentation reads from top to bottom.
import { z } from 'zod';
import { fileReadSchema, problemSchema } from '../ingest/reading.ts';
import { ABORT_CLASSES, CLEANING_TASKS, CYCLE_KINDS } from '../site/vocabulary.ts';
import { lookBackSchema } from '../transform/look-back.ts';
import { requalificationSchema } from '../transform/service/requalification.ts';
import { actionsSchema } from './actions/actions-schema.ts';
import { changesSchema } from './changes/changes-schema.ts';
import { driftSchema } from './drift/drift-schema.ts';
import { driftOperatingCharacteristicsSchema } from './drift/operating-characteristics.ts';
import { cyclesWithoutPassSchema } from './lists/cycles-without-pass-schema.ts';
import { nextMonthSchema } from './next-month/next-month-schema.ts';
import { operatingCharacteristicsSchema } from './operating-characteristics.ts';
import { recordQualitySchema } from './record-quality/record-quality-schema.ts';

/**
 * The review: everything that a month's report says, as data. `review.json` is exactly this; pages, charts and tables read nothing else.
 * Dates are operating days as text; `*_at` are instants, ms since 1970; wall times for people are made by the report with the site's clock.
 */

const count = z.number().int().min(0);
const date = z.string().describe('Operating day, yyyy-MM-dd');
const localTime = z.string().describe('Wall time of the site, yyyy-MM-dd HH:mm');

/** A proportion or rate with what it is made of. `low` and `high` are null where nothing was at risk. */
export const rateSchema = z.strictObject({
  events: count,
  of: count.describe('Denominator: test days, production cycles or due tasks'),
  rate: z.number().nullable(),
  low: z.number().nullable(),
  high: z.number().nullable(),
  method: z.string().describe('Method of the interval'),
});
export type Rate = z.infer<typeof rateSchema>;

export const DUE_STATES = ['done', 'done_late', 'missed', 'not_recorded', 'contradicted', 'open'] as const;
export const dueCountsSchema = z.strictObject({
  unit: z.string(),
  task: z.enum(CLEANING_TASKS),
  due: count,
  done: count,
  done_late: count,
  missed: count,
  not_recorded: count,
  contradicted: count,
  open: count.describe('Due at the end of the period and still within its grace'),
});
export type DueCounts = z.infer<typeof dueCountsSchema>;

/** One cell of the cleaning picture: a unit, a task and a day of the month. `idle`: no day of use. `not_due`: in use, nothing due. */
export const cleaningDaySchema = z.strictObject({
  unit: z.string(),
  task: z.enum(CLEANING_TASKS),
  date,
  state: z.enum([...DUE_STATES, 'not_due', 'idle']),
});
export type CleaningDay = z.infer<typeof cleaningDaySchema>;

export const VERDICTS = ['shown', 'suggested', 'not_shown', 'cannot_tell', 'not_comparable'] as const;
export type Verdict = (typeof VERDICTS)[number];
export const EXPOSURES = ['chamber_overdue', 'strainer_missed', 'flush_missed'] as const;
export type Exposure = (typeof EXPOSURES)[number];
export const OUTCOMES = ['failed_test', 'cleanliness_abort'] as const;
export type OutcomeName = (typeof OUTCOMES)[number];

const sideSchema = z.strictObject({
  days: count.describe('Days at risk'),
  trials: count.describe('Test days, or production cycles'),
  events: count.describe('Failed day results, or aborts'),
});

/** One comparison of days with an exposure and days without, within units and strata. */
export const comparisonSchema = z.strictObject({
  id: z.string(),
  scope: z.enum(['unit', 'fleet']),
  unit: z.string().nullable(),
  exposure: z.enum(EXPOSURES),
  outcome: z.enum(OUTCOMES),
  exposed: sideSchema,
  unexposed: sideSchema,
  days_left_out: z.strictObject({
    not_at_risk: count.describe('Days of use with no day result, inside an episode or out of service'),
    exposure_unknown: count,
    unit_not_comparable: count.describe(
      'Days of units whose chamber cleanings are mostly reactive (fleet comparisons)',
    ),
  }),
  strata: count.describe('Strata with both sides and at least one event: those that speak'),
  ratio: z.number().nullable().describe('Odds ratio of a failed day, or ratio of abort rates'),
  ratio_kind: z.enum(['odds_ratio', 'rate_ratio']),
  low: z.number().nullable(),
  high: z.number().nullable().describe('Null also where the data set no upper bound'),
  method: z.string().describe('Method of ratio and interval'),
  p: z.number().nullable().describe('Two-sided p of the circular shift test'),
  shifts: count,
  p_conditional: z
    .number()
    .nullable()
    .describe('p of the exact or Mantel-Haenszel test, which takes days as independent'),
  adjusted_p: z.number().nullable().describe('Benjamini-Hochberg over the family of this review'),
  variance_inflation: z
    .number()
    .nullable()
    .describe('Variance over the shifts divided by that of independent days'),
  smallest_detectable_ratio: z.number().nullable(),
  data_needed_factor: z
    .number()
    .nullable()
    .describe(
      'Times as much record as there is would show the ratio of interest; null where it can’t be said',
    ),
  control: z
    .strictObject({
      ratio: z.number().nullable(),
      low: z.number().nullable(),
      high: z.number().nullable(),
      p: z.number().nullable(),
      moved: z.boolean(),
      exposed: sideSchema,
      unexposed: sideSchema,
    })
    .describe('The same with aborts of unrelated causes, which should not move'),
  homogeneity: z
    .strictObject({ chi_square: z.number(), degrees_of_freedom: count, p: z.number(), method: z.string() })
    .nullable()
    .describe(
      'Whether the units of the fleet differ in their ratio; null for a unit, or where it can’t be tested',
    ),
  beside: z
    .array(
      z.strictObject({
        exposure: z.enum(EXPOSURES).describe('The other exposure'),
        ratio: z.number().nullable(),
        low: z.number().nullable(),
        high: z.number().nullable(),
        p: z.number().nullable().describe('p of the exact or Mantel-Haenszel test'),
        adjusted_p: z.number().nullable().describe('Holm over all such tests of this review'),
        other_ratio: z.number().nullable(),
        other_low: z.number().nullable(),
        other_high: z.number().nullable(),
        finding: z.enum(['holds', 'carried_by_other', 'not_told_apart']),
      }),
    )
    .describe(
      'Where another exposure is shown or suggested too: this one within days alike in the other, and the other way round',
    ),
  verdict: z.enum(VERDICTS),
  because: z
    .array(z.string())
    .describe(
      'Codes of the reasons: interval_above_1, adjusted_p, unadjusted_p, control_moved, points_down, carried_by_other, not_told_apart, power, too_little_data, mostly_reactive, hardly_varies, no_exposure_known',
    ),
  verdict_all_records: z
    .enum(VERDICTS)
    .nullable()
    .describe('Verdict in the other reading, contradicted records counted as done (chamber only)'),
});
export type Comparison = z.infer<typeof comparisonSchema>;

export const ATTENTION_CODES = [
  'ran_after_failure',
  'ran_after_failure_perhaps',
  'episode_open',
  'failed_test',
  'test_missing',
  'test_late',
  'return_incomplete',
  'requalification_incomplete',
  'comparison_shown',
  'chamber_overdue_now',
  'task_outstanding',
  'records_contradicted',
  'leak_over_limit',
  'leak_near_limit',
  'drift_near_limit',
  'drift_moving',
  'drift_stepped',
  'heat_up_out_of_range',
  'abort_rate_signal',
  'early_stops',
  'strainers_missed',
] as const;
export type AttentionCode = (typeof ATTENTION_CODES)[number];

/** A reason why a unit needs attention, with its evidence in numbers. The report has the words. */
export const attentionReasonSchema = z.strictObject({
  code: z.enum(ATTENTION_CODES),
  level: z
    .enum(['act', 'decide', 'look'])
    .describe('act: before the next load; decide: at the review; look: soon'),
  numbers: z.record(z.string(), z.union([z.number(), z.string(), z.null()])),
  comparison: z.string().nullable().describe('Id of the comparison that it rests on'),
});
export type AttentionReason = z.infer<typeof attentionReasonSchema>;

const chartPointSchema = z.strictObject({
  scope: z.string().describe('Unit, or "fleet"'),
  month: z.string().describe('yyyy-MM'),
  events: count,
  of: count,
  value: z.number().nullable(),
  low: z.number().nullable().describe('Exact interval of the value'),
  high: z.number().nullable(),
  centre: z.number().nullable(),
  lower: z.number().nullable(),
  upper: z.number().nullable(),
  baseline: z
    .boolean()
    .describe('Whether the point belongs to the stretch from which centre and limits were taken'),
  signals: z.array(z.string()).describe('Run rules that signal at this point'),
});
export type ChartPoint = z.infer<typeof chartPointSchema>;

/** Events of a unit that stand in its history. */
export const UNIT_EVENTS = [
  'chamber_cleaning',
  'professional_cleaning',
  'repair',
  'controller_replaced',
  'out_of_service',
  'maintenance',
  'failed_test',
] as const;

/** Changes with the fields of the review: a reader of another format must not guess. */
export const REVIEW_FORMAT = 'cleaning-evidence review 2';

export const reviewSchema = z.strictObject({
  format: z.literal(REVIEW_FORMAT),
  version: z.string().describe('Version of the program'),
  organisation: z.string(),
  period: z.strictObject({
    month: z.string(),
    from: date,
    to: date.describe('Last operating day of the month'),
    record_from: date.nullable().describe('First operating day in the records'),
    record_to: date.nullable().describe('Last operating day in the records, up to the end of the month'),
    newest_event: localTime.nullable(),
    later_records: count.describe('Records after the month, left out so that the review can be made again'),
  }),
  sites: z.array(
    z.strictObject({ id: z.string(), name: z.string(), zone: z.string(), day_starts: z.string() }),
  ),
  files: z.array(fileReadSchema),
  totals: z.strictObject({
    files: count,
    rows: count,
    records: count,
    duplicates: count,
    rejected: count,
    skipped: count,
    cells_lost: count,
  }),
  problems_by_code: z.array(
    z.strictObject({
      source: z.string(),
      code: z.string(),
      costs: z.string(),
      meaning: z.string(),
      count,
      examples: z.array(problemSchema).max(3),
    }),
  ),
  unclassified_abort_texts: z.array(z.strictObject({ text: z.string(), count })),
  joins: z.array(
    z.strictObject({
      name: z.string(),
      relationship: z.string(),
      left: count,
      right: count,
      matched: count,
      unmatched_left: count,
      unmatched_right: count,
    }),
  ),
  units: z.array(
    z.strictObject({
      unit: z.string(),
      site: z.string(),
      name: z.string(),
      liquids: z.boolean(),
      first_day: date.nullable(),
      last_day: date.nullable(),
      days_of_use: count,
      days_of_use_in_month: count,
      eras: z.array(z.strictObject({ from: date, to: date, opened_by: z.string().nullable() })),
      events: z
        .array(
          z.strictObject({
            date,
            to: date.nullable().describe('Last operating day of a service that has an end'),
            what: z.enum(UNIT_EVENTS),
            detail: z
              .enum(['counts', 'contradicted', 'major'])
              .nullable()
              .describe('Whether a chamber cleaning counts as done; whether a service was major'),
            time: localTime.nullable().describe('Null where only the date is known'),
            file: z.string(),
            sheet: z.string().nullable(),
            row: z.number().int(),
          }),
        )
        .describe('Chamber cleanings, service and failed day results of the whole record, in order of day'),
      attention: z.array(attentionReasonSchema),
      /** Month and whole record side by side. */
      tests: z.array(
        z.strictObject({
          span: z.enum(['month', 'record']),
          failed_days: rateSchema.describe('Failed day results of all day results'),
          day_results: count,
          failures: count,
          episodes: count.describe('Failure episodes that began in the span'),
          retests: count,
          after_repair: count,
          qualification: count,
          invalid: count,
          production_days: count,
          missing: count,
          late: count,
          time_unknown: count,
        }),
      ),
      cycles: z.array(
        z.strictObject({
          span: z.enum(['month', 'record']),
          by_kind: z.record(z.enum(CYCLE_KINDS), count).describe('Cycles that count, by kind'),
          production: count,
          aborts: rateSchema.describe('Aborts of production per production cycle'),
          aborts_by_class: z.partialRecord(z.enum(ABORT_CLASSES), count),
          test_and_warm_up_aborts: count,
          purges: count,
          early_stops: count,
          open: count.describe('Still running when exported, never seen complete'),
        }),
      ),
      chamber: z.strictObject({
        interval: z.string().nullable().describe('Interval that the site states, such as "28 calendar_days"'),
        clock_days: count
          .nullable()
          .describe('Calendar days from the last counted chamber cleaning to the day after the month'),
        days_past_due: count
          .nullable()
          .describe(
            'Of the day after the month, as the panel counts: 0 while not overdue; null where not known, or no interval is stated',
          ),
        records: count.describe('Chamber cleaning records in the record'),
        reactive: count,
        running: count,
        hot: count,
        no_return: count,
        supported: count,
        not_judged: count,
      }),
      leak: z.strictObject({
        tests_in_month: count,
        last: z.number().nullable().describe('kPa/min'),
        last_at: localTime.nullable(),
        limit: z.number(),
        over_limit_in_month: count,
      }),
    }),
  ),
  attention_order: z
    .array(z.string())
    .describe('Units that need attention, by their most pressing reason, then by the next'),
  cleaning: z.strictObject({
    month: z.array(dueCountsSchema),
    record: z.array(dueCountsSchema),
    days: z.array(cleaningDaySchema).describe('The month, by unit, task and day'),
  }),
  comparisons: z.array(comparisonSchema),
  joint_models: z
    .array(
      z.strictObject({
        outcome: z.enum(OUTCOMES),
        days: count,
        method: z.string(),
        not_computable: z.string().nullable().describe('Why there is no model, in a sentence'),
        terms: z.array(
          z.strictObject({
            exposure: z.enum(EXPOSURES),
            ratio: z.number(),
            low: z.number(),
            high: z.number(),
            p: z.number(),
            robust_low: z
              .number()
              .nullable()
              .describe('Interval robust to clusters (units); null where it can’t be had'),
            robust_high: z.number().nullable(),
            robust_p: z.number().nullable(),
          }),
        ),
      }),
    )
    .describe(
      'All exposures in one model of the fleet, each with the others held: a second look that decides no verdict',
    ),
  strata: z
    .array(
      z.strictObject({
        exposure: z.enum(EXPOSURES),
        outcome: z.enum([...OUTCOMES, 'unrelated_abort']),
        unit: z.string(),
        era: count,
        stratum: count,
        first_date: date,
        last_date: date,
        exposed_days: count,
        exposed_trials: count,
        exposed_events: count,
        unexposed_days: count,
        unexposed_trials: count,
        unexposed_events: count,
      }),
    )
    .describe('Counts from which every ratio can be worked out by hand'),
  doses: z
    .array(
      z.strictObject({
        exposure: z.enum(EXPOSURES),
        classes: z.array(z.strictObject({ dose: z.string(), score: count, days: count, failed: count })),
        statistic: z
          .number()
          .nullable()
          .describe('Standard normal z of the trend; above 0 where failures rise with the dose'),
        p: z.number().nullable(),
        method: z.string(),
      }),
    )
    .describe('Failed day results by dose of the exposure, over the fleet, with the trend within strata'),
  family_size: count.describe('Comparisons over which p was adjusted'),
  charts: z.strictObject({
    failed_days: z.array(chartPointSchema).describe('Failed day results of day results at risk, by month'),
    aborts: z
      .array(chartPointSchema)
      .describe('Aborts plausibly about cleanliness per production cycle, by month'),
  }),
  ranking: z
    .array(
      z.strictObject({
        unit: z.string(),
        failed: count,
        days: count.describe('Days at risk'),
        rate: z.number().nullable(),
        shrunken: z.number().describe('Rate shrunk toward the fleet'),
        shrunken_low: z.number(),
        shrunken_high: z.number(),
        inner_low: z.number().nullable().describe('Funnel limits: 95 % of units like all others lie inside'),
        inner_high: z.number().nullable(),
        outer_low: z
          .number()
          .nullable()
          .describe('Funnel limits: 99.8 % of units like all others lie inside'),
        outer_high: z.number().nullable(),
      }),
    )
    .describe('Failed day results by unit over the record, highest shrunken rate first'),
  drift: driftSchema,
  by_clock: z
    .array(
      z.strictObject({
        scope: z.string().describe('"fleet" or a unit'),
        from_day: count,
        to_day: count.nullable().describe('Last day of the class; null for the open one'),
        failed_days: rateSchema,
        aborts: rateSchema,
      }),
    )
    .describe('Failures and aborts by calendar days since the last counted chamber cleaning'),
  contradicted_records: z.array(
    z.strictObject({
      unit: z.string(),
      task: z.string(),
      time: localTime,
      in_month: z.boolean(),
      running: z.boolean(),
      hot: z.boolean(),
      idle_hours: z.number().nullable(),
      file: z.string(),
      sheet: z.string().nullable(),
      row: z.number().int(),
    }),
  ),
  incomplete_returns: z.array(
    z.strictObject({
      unit: z.string(),
      cleaned: localTime,
      in_month: z.boolean(),
      file: z.string(),
      sheet: z.string().nullable(),
      row: z.number().int(),
    }),
  ),
  test_timing: z
    .array(
      z.strictObject({
        unit: z.string(),
        date,
        timing: z.enum(['missing', 'late', 'after_failure']),
        test_ended: localTime.nullable(),
        first_production: localTime,
      }),
    )
    .describe(
      'Days of the month with production and no test, with a test that ended after the first production cycle started, or with production after a failed test and before one passed',
    ),
  look_backs: z.array(
    lookBackSchema.extend({
      failed: localTime,
      last_pass: localTime.nullable(),
      cycles: z.array(lookBackSchema.shape.cycles.element.extend({ started: localTime })),
    }),
  ),
  cycles_without_pass: z
    .array(cyclesWithoutPassSchema)
    .describe('Production and liquids cycles of the month with no passing test before them'),
  requalifications: z.array(requalificationSchema.extend({ ended: localTime, in_month: z.boolean() })),
  early_stops: z
    .array(
      z.strictObject({
        unit: z.string(),
        start: localTime,
        minutes: z.number().nullable(),
        file: z.string(),
        row: z.number().int(),
      }),
    )
    .describe('Unexplained early stops of the month'),
  record_quality: recordQualitySchema.describe(
    'How good the records are: clocks, habits of entering, counters. It says something of records, nothing of people',
  ),
  changes: changesSchema.describe('What moved since the review before'),
  actions: actionsSchema.describe('Actions of the site’s own list: done, open, late'),
  next_month: nextMonthSchema.describe('What the next month brings if nothing changes'),
  operating_characteristics: operatingCharacteristicsSchema.nullable(),
  drift_operating_characteristics: driftOperatingCharacteristicsSchema.nullable(),
  settings: z.array(
    z.strictObject({
      name: z.string(),
      value: z.string(),
      default: z.string().nullable(),
      description: z.string(),
    }),
  ),
});
export type Review = z.infer<typeof reviewSchema>;
