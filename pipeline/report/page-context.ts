import { fingerprintOf } from '../findings/fingerprint.ts';
import type { Review } from '../findings/review-schema.ts';
import { rowsOfUnits } from '../rows-of-units.ts';
import type { ReportMeasures } from '../site/report-settings.ts';
import type { DueTask } from '../transform/cleaning/due-tasks.ts';
import type { UnitDay } from '../transform/panel/unit-day.ts';
import type { ChartRuntimes } from './charts/chart-runtimes.ts';
import { unitPageNames } from './html/page-names.ts';
import { DEFAULT_MEASURES, type MeasureNames, measureNames } from './measures/measures.ts';
import { inMeasures } from './measures/review-in-measures.ts';
import { type PagesAsked, unitsWithPage } from './parts/units-with-page.ts';
import type { VerdictSettings } from './words/en/comparisons.ts';
import type { Words } from './words/words.ts';

/** What every page of one report shares. */
export interface ReportContext {
  /** The review in the measures of the site. */
  review: Review;
  /** Names of these measures. */
  measures: MeasureNames;
  panel: readonly UnitDay[];
  /** Rows of the panel of a unit, and its due tasks. */
  daysOf(unit: string): readonly UnitDay[];
  dueOf(unit: string): readonly DueTask[];
  words: Words;
  /** Charts compiled for this report. */
  runtimes: ChartRuntimes;
  /** Level of the intervals as text, such as "95%". */
  level: string;
  settings: VerdictSettings;
  /** Month under review, as text. */
  month: string;
  /** First to last day of the record, as text. */
  span: string;
  /** First twelve digits of one SHA-256 over those of all files: the same files, the same mark. */
  fingerprint: string;
  /** Whether the report has the page of the case for a cleaning interval. */
  hasInterval: boolean;
  /** Units that have a page of their own. */
  paged: Review['units'];
  /** The page of a unit, if it has one. */
  unitPage(unit: string): string | undefined;
  unitName(unit: string): string;
  siteName(site: string): string;
}

/** Counts figures and tables of one page. */
export interface Numbering {
  figure(): number;
  table(): number;
}

export function numbering(): Numbering {
  let figures = 0;
  let tables = 0;
  return { figure: () => ++figures, table: () => ++tables };
}

export function reportContext(
  made: Review,
  panel: readonly UnitDay[],
  dueOf: ReportContext['dueOf'],
  words: Words,
  {
    hasInterval = false,
    measures = DEFAULT_MEASURES,
    pagesAsked,
  }: { hasInterval?: boolean; measures?: ReportMeasures; pagesAsked?: PagesAsked | undefined } = {},
): ReportContext {
  const review = inMeasures(made, measures);
  const setting = (name: string, fallback: number): number => {
    const value = Number(review.settings.find((row) => row.name === `rules.comparison.${name}`)?.value);
    return Number.isFinite(value) ? value : fallback;
  };
  const level = setting('level', 0.95);
  const names = unitPageNames(review.units.map((unit) => unit.unit));
  const paged = unitsWithPage(review, pagesAsked);
  const pages = new Map(paged.map(({ unit }) => [unit, names.get(unit)!]));
  const units = new Map(review.units.map((unit) => [unit.unit, unit]));
  const sites = new Map(review.sites.map((site) => [site.id, site.name]));
  const { record_from, record_to } = review.period;
  return {
    review,
    measures: measureNames(measures),
    panel,
    daysOf: rowsOfUnits(panel),
    dueOf,
    words,
    runtimes: new Map(),
    hasInterval,
    level: words.format.level(level),
    settings: {
      alpha: setting('alpha', 0.05),
      power: setting('power', 0.8),
      ratioOfInterest: setting('ratio_of_interest', 2),
      leastDays: setting('least_days_each_side', 10),
      reactiveShare: setting('reactive_share', 0.5),
    },
    month: words.format.month(review.period.month),
    span: record_from && record_to ? words.format.span(record_from, record_to) : words.pages.noRecord,
    fingerprint: fingerprintOf(inputsOf(review)),
    paged,
    unitPage: (unit) => pages.get(unit),
    unitName: (unit) => units.get(unit)?.name ?? '',
    siteName: (site) => sites.get(site) ?? site,
  };
}

/** SHA-256 of everything that was read: the exports, and the review before. */
function inputsOf({ files, changes }: Review): string[] {
  const { state, sha256 } = changes.previous;
  return [...files.map((file) => file.sha256), ...(state === 'read' && sha256 !== null ? [sha256] : [])];
}
