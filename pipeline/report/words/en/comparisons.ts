import type { Comparison, Verdict } from '../../../findings/review-schema.ts';
import { format } from './format.ts';
import { terms } from './terms.ts';

type Side = Comparison['exposed'];

/** Settings that verdicts speak of, as numbers. */
export interface VerdictSettings {
  alpha: number;
  power: number;
  ratioOfInterest: number;
  leastDays: number;
  reactiveShare: number;
}

const { integer, ratio, pValue, percent, fixed, sentence } = format;
const short = (value: number): string => (Number.isInteger(value) ? integer(value) : fixed(value, 2));

/** Words about one comparison. */
export const comparisons = {
  question: (c: Pick<Comparison, 'exposure' | 'outcome'>): string =>
    sentence(`${terms.exposure[c.exposure]}: ${terms.outcomes[c.outcome]}`),
  /** In two lines, cut at "|". */
  questionShort: (c: Pick<Comparison, 'exposure' | 'outcome'>): string =>
    sentence(`${terms.exposure[c.exposure]}|${c.outcome === 'failed_test' ? 'failed tests' : 'aborts'}`),
  questionLong: (c: Pick<Comparison, 'exposure' | 'outcome'>): string =>
    c.outcome === 'failed_test'
      ? `Do more air-removal tests fail ${terms.exposureMeans[c.exposure]}?`
      : `Are there more aborts plausibly about cleanliness ${terms.exposureMeans[c.exposure]}?`,
  figureTitle: (c: Pick<Comparison, 'exposure' | 'outcome'>): string =>
    `${sentence(terms.outcomes[c.outcome])}: ${terms.exposure[c.exposure]} against ${terms.otherwise[c.exposure]}`,
  ratioCell: ({ ratio: r, low, high, exposed, unexposed }: Comparison): string => {
    if (r === null && low === null && high === null)
      return exposed.events + unexposed.events === 0 ? 'no events' : 'no ratio';
    const from = low === null ? '0' : ratio(low);
    const bounds = high === null ? `${from} or more` : `${from} to ${ratio(high)}`;
    return r === null ? bounds : `${ratio(r)} (${bounds})`;
  },
  side: (side: Side, outcome: Comparison['outcome']): string =>
    `${integer(side.events)} ${outcome === 'failed_test' ? 'of' : 'in'} ${integer(side.trials)}`,
  against: (side: Side, outcome: Comparison['outcome']): string =>
    `against ${integer(side.events)} ${outcome === 'failed_test' ? 'of' : 'in'} ${integer(side.trials)}`,
  p: (value: number | null): string => (value === null ? 'none' : pValue(value)),
  adjusted: (value: number | null): string => (value === null ? '' : `adjusted ${pValue(value)}`),
  detectable: (value: number | null): string => (value === null ? 'none' : ratio(value)),
  /** "9 of 62 test days with the chamber overdue, 6 of 310 otherwise; odds ratio 8.6, 95% interval 2.9 to 26." */
  evidence: (c: Comparison, level: string): string => {
    const noun = terms.trials[c.outcome];
    const preposition = c.outcome === 'failed_test' ? 'of' : 'in';
    const counts = `${integer(c.exposed.events)} ${preposition} ${integer(c.exposed.trials)} ${noun} with ${terms.exposure[c.exposure]}, ${integer(c.unexposed.events)} ${preposition} ${integer(c.unexposed.trials)} with ${terms.otherwise[c.exposure]}`;
    if (c.low === null && c.high === null) return counts;
    const estimate =
      c.ratio === null
        ? 'no ratio, as none came without it'
        : `${terms.ratioKind[c.ratio_kind]} ${ratio(c.ratio)}`;
    const bounds =
      c.high === null
        ? `from ${ratio(c.low ?? 0)} with no upper end`
        : `${ratio(c.low ?? 0)} to ${ratio(c.high)}`;
    return `${counts}; ${estimate}, ${level} interval ${bounds}`;
  },
  verdictMeans: (s: VerdictSettings, level: string): Record<Verdict, string> => ({
    shown: `more failures with the exposure: the ${level} interval lies above 1, p adjusted for all questions asked is at or under ${short(s.alpha)}, and aborts of unrelated causes stood still. An association in these records, not a proof of cause.`,
    suggested: `one of these signs, not all: worth another look, not yet a finding.`,
    not_shown: `no sign of more failures, or one that aborts of unrelated causes or another exposure share, in a record that would have shown a ratio of ${short(s.ratioOfInterest)} (${percent(s.power)} power).`,
    cannot_tell: `no sign of more failures, or one that aborts of unrelated causes or another exposure share, and too few days or failures to have shown a ratio of ${short(s.ratioOfInterest)}. This is not the same as no effect.`,
    not_comparable: `the days can’t be set side by side: ${percent(s.reactiveShare)} or more of the cleanings followed a failure, or there are fewer than ${short(s.leastDays)} days on one side.`,
  }),
  because: (code: string, c: Comparison, s: VerdictSettings): string => {
    const needed =
      c.data_needed_factor === null
        ? ''
        : ` (about ${ratio(c.data_needed_factor)} times as much record would do)`;
    const texts: Record<string, string> = {
      interval_above_1: 'the interval lies above 1',
      adjusted_p: `adjusted p is at or under ${short(s.alpha)}`,
      unadjusted_p: `p before adjustment is at or under ${short(s.alpha)}`,
      carried_by_other: 'set beside another exposure that speaks too, the rise goes with that one',
      not_told_apart: 'it can’t be told apart from another exposure that speaks too',
      control_moved: 'aborts of unrelated causes moved too, so the verdict falls by one step',
      points_down: 'the estimate points to fewer failures, not to more',
      power: `a ratio of ${short(s.ratioOfInterest)} would have been seen`,
      too_little_data: `too little data to see a ratio of ${short(s.ratioOfInterest)}${needed}`,
      mostly_reactive:
        'most cleanings followed a failure, so that overdue days come before failures by construction',
      hardly_varies: `fewer than ${short(s.leastDays)} days at risk with or without the exposure`,
      no_exposure_known: 'on no day is it known whether the exposure held',
    };
    return texts[code] ?? code;
  },
  /** Why a verdict in a picture is not more. */
  why: (scope: string, verdict: string, reasons: string[]): string =>
    `${scope}, ${verdict}: ${reasons.join('; ')}.`,
  otherReading: (verdict: Verdict): string =>
    `If records that the cycle log contradicts counted as done: ${terms.verdict[verdict]}.`,
  control: (c: Comparison): string => {
    const { control } = c;
    const counts = `${integer(control.exposed.events)} in ${integer(control.exposed.trials)} against ${integer(control.unexposed.events)} in ${integer(control.unexposed.trials)} production cycles`;
    return control.p === null
      ? counts
      : `${counts}, p ${pValue(control.p)}${control.moved ? ' (moved)' : ''}`;
  },
  leftOut: (c: Comparison): string => {
    const parts = [
      `${integer(c.days_left_out.not_at_risk)} not at risk`,
      `${integer(c.days_left_out.exposure_unknown)} exposure not known`,
    ];
    if (c.scope === 'fleet')
      parts.push(`${integer(c.days_left_out.unit_not_comparable)} of units not comparable`);
    return parts.join(', ');
  },
  heads: {
    scope: 'Unit',
    question: 'Question',
    counts: 'With the exposure, against without',
    ratio: (level: string) => `Ratio (${level} interval)`,
    p: 'p',
    detectable: 'Smallest ratio it could show',
    control: 'Aborts of unrelated causes',
    leftOut: 'Days left out',
    verdict: 'Verdict and why',
    exposedShort: 'with',
    unexposedShort: 'without',
    ratioShort: 'ratio (interval)',
    verdictShort: 'verdict',
  },
  rowExplained:
    'Each row compares the days of one unit with the exposure with its other days: events of test days or cycles on both sides, the ratio, and a verdict.',
  intro: (n: number, family: number, span: string): string =>
    `${integer(n)} comparisons over ${span}. ${integer(family)} of them gave a p-value, over which p is adjusted. A ratio above 1 means more failures with the exposure. The line is the interval; an arrow at its end means that it goes on.`,
  unitIntro: (family: number, span: string): string =>
    `Days of this unit with an exposure against its other days, ${span}. p is adjusted over all ${integer(family)} comparisons of the review that gave one. A ratio above 1 means more failures with the exposure; an arrow means that the interval goes on.`,
  verdictsMean: 'What the verdicts mean',
  seeKey: 'The first question stands at the top of the review.',
  speakingCaption:
    'Comparisons that say something: shown, suggested or not shown; and all units on the leading question',
  allNumbers:
    'All comparisons with all numbers: counts, ratio, interval, p, adjusted p, power, control outcome, days left out, verdict and why',
  leftOutNote:
    'Left out of each comparison: days with no day result, inside a failure episode or out of service; days on which it is not known whether the exposure held; in the line for all units, units whose cleanings mostly follow failures. The numbers stand in the tables.',
  secondLook: {
    heading: 'Second looks',
    intro:
      'These decide no verdict. They show whether failures rise with the dose, and what is left of each exposure when all stand in one model.',
    beside: (scope: string, c: Comparison, beside: Comparison['beside'][number]): string => {
      const other = terms.exposure[beside.exposure];
      const found = {
        holds: `holds on days alike in the other (${other})`,
        carried_by_other: `goes with the other exposure (${other})`,
        not_told_apart: `can’t be told apart from the other exposure (${other})`,
      }[beside.finding];
      const ratioText =
        beside.ratio === null
          ? ''
          : `: ratio ${ratio(beside.ratio)}${beside.low !== null && beside.high !== null ? ` (${ratio(beside.low)} to ${ratio(beside.high)})` : ''}`;
      return `${scope}: the rise with ${terms.exposure[c.exposure]} ${found}${ratioText}.`;
    },
    homogeneity: (p: number): string =>
      `All units: ${p <= 0.05 ? 'units differ in their ratio more than chance explains' : 'no sign that units differ in their ratio'} (p ${pValue(p)}).`,
    strata: 'Counts by stratum, from which each ratio can be worked out by hand (CSV)',
    doseCaption: 'Failed day results by dose of the exposure, all units',
    doseHeads: {
      exposure: 'Exposure',
      dose: 'Dose',
      failed: 'Failed day results',
      trend: 'Trend within strata',
    },
    /** Class of a dose: what the findings call it, such as "1 to 7 days". */
    dose: (exposure: Comparison['exposure'], dose: string): string =>
      exposure === 'chamber_overdue'
        ? dose.replace(/days$/, 'days past due')
        : `${dose} missed${exposure === 'flush_missed' ? ' in a row' : ''}`,
    trend: (statistic: number | null, p: number | null): string =>
      statistic === null || p === null
        ? 'not computable'
        : `${statistic > 0 ? 'rising' : 'falling'}, p ${pValue(p)}`,
    modelCaption: (outcome: string, days: number): string =>
      `All exposures in one model: ${outcome}, ${integer(days)} days`,
    modelHeads: {
      exposure: 'Exposure, the others held',
      ratio: (level: string) => `Ratio (${level} interval)`,
      p: 'p',
      robust: 'Interval robust to units',
    },
    interval: (low: number, high: number): string => `${ratio(low)} to ${ratio(high)}`,
  },
  /** Short name of a comparison inside a sentence. */
  named: (scope: string, c: Comparison): string =>
    `${scope} (${terms.outcomes[c.outcome]} with ${terms.exposure[c.exposure]})`,
};
export type ComparisonWords = typeof comparisons;
