import { format } from './format.ts';

/** How it was made, and what to keep in mind. Each caution stands by itself. */
export const methods = {
  heading: 'Methods',
  settingsHeading: 'Settings in force',
  cautionsHeading: 'Cautions',
  wordsHeading: 'Words',
  intro:
    'How days, tests, cycles and cleanings are counted, and with which methods. The same files, settings and version give the same review, byte for byte.',
  words: [
    [
      'Operating day',
      'named by the local date on which it opened, at the hour that the site sets; a cycle at 01:30 belongs to the day before.',
    ],
    [
      'Day of use',
      'an operating day on which a unit ran at least one cycle that is not a drain purge. No day of use, nothing due.',
    ],
    [
      'Day result',
      'the first valid air-removal test of an operating day. Retests, tests after a repair and qualification runs are kept, shown and not counted.',
    ],
    ['Failure episode', 'from the first failed day result to the first passing day result after it.'],
    [
      'At risk',
      'a day with a day result, not inside an episode and not out of service. Only days at risk enter a comparison.',
    ],
    [
      'Production cycle',
      'production and liquids cycles that count. Test and accessory cycles, drain purges, early stops and cycles never seen complete are left out.',
    ],
    [
      'Drain purge',
      'a cycle stopped by the operator soon after its start, near a cleaning record, to empty rinse water. Neither a failure nor a production cycle.',
    ],
    [
      'Unexplained early stop',
      'the same picture with no cleaning record near; it may be a cleaning that nobody recorded.',
    ],
    [
      'Era',
      'the span of a unit between two events that reset its baseline: repair, controller replaced, professional cleaning. Nothing is compared across its end.',
    ],
    [
      'Chamber overdue',
      'more than the stated interval and its grace since the last chamber cleaning that counts, when the day’s first cycle started.',
    ],
    ['Reactive', 'a cleaning within the stated days after a failure, or marked so.'],
  ] as [string, string][],
  points: [
    [
      'Rates',
      'Shares of test days with the exact interval of Clopper and Pearson (1934); aborts per production cycle with the exact Poisson interval of Garwood (1936).',
    ],
    [
      'Charts over time',
      'p chart and u chart (Shewhart) with three-sigma limits frozen on the first twelve months of the record, never on the month under review. Signals: a point beyond the limits; eight in a row on one side of the mean. Limits are left out where fewer than three events a month are expected.',
    ],
    [
      'Comparisons',
      'Days with an exposure against days without it, within a unit and within strata of about half a year inside an era, so that busy units, bad units and slow trends do not speak for cleaning. Exposure is what held when the day’s first cycle started. In one unit: exact conditional odds ratio or rate ratio; over units: Mantel-Haenszel with the interval of Robins, Breslow and Greenland (odds) or Greenland and Robins (rates).',
    ],
    [
      'p',
      'By circular shifts of the exposure inside each stratum, since failures and overdue days both come in spells: the share of shifts whose result is at least as extreme, both sides. Adjusted over all questions of the review by Benjamini and Hochberg (1995).',
    ],
    [
      'What the record could have shown',
      'The smallest ratio that had the stated power with these days and failures, allowing for the spells.',
    ],
    [
      'Control outcome',
      'Aborts of causes that cleaning can’t move. They should stand still; where they move, the verdict falls by one step.',
    ],
    [
      'Two readings',
      'Chamber cleaning records that the cycle log contradicts are counted by the site’s rule. The comparison is made in the other reading too, and said where the verdict differs.',
    ],
    [
      'Units that drift',
      'Evacuation, heat-up and exhaust time, leak rate, temperature spread and temperature against saturated steam (IAPWS-IF97) of the first empty cycle of each kind and day, times as logarithms. Where two cycles of a day lie unusually far apart, the one that is off the days around is left out of the day’s value. What the other units of the site did on the day is taken out (Huber’s weights), as strongly as the unit feels it, and a saw-tooth that falls back at cleanings as well. An EWMA and a CUSUM chart, set to one false signal in 500 values at the series’ own autocorrelation, open the question; a movement is called where a straight line from some day on explains the values clearly better than a constant level and than one or two steps. Less is asked of a probe where others of the unit move with it as one of the causes has it: what they gain together counts. At a site with two units each is compared with the other; where there is no other, nearly three times as much is asked, since season and supply move a probe as well. Each repair, controller or professional cleaning starts anew. Days to the limit: interval by inverting a test of the crossing (Fieller 1954) over all places of the beginning.',
    ],
  ] as [string, string][],
  cautions: [
    'This review describes records. It never releases, rejects or recalls a load; that rests on physical, chemical and biological monitoring, reviewed by qualified staff under local policy.',
    'A passing air-removal test, leak test or statistic is no proof of sterility. A failing one means that the unit stays out of use until it is inspected and passes.',
    'The instructions for use of the sterilizer, accessories, test packs and cleaning agents rule wherever this review and they differ. No interval may be lengthened beyond them on this evidence.',
    'Local policy, infection prevention, biomedical engineering and licensed or authorised persons decide on repair, cleaning intervals, requalification and recall.',
    'A link between missed cleaning and failure may have other causes: workload, steam, repairs, cleaning that follows failure. It is no proof of cause.',
    'No flag does not mean no fault. Sudden faults give no warning, and few failures leave wide uncertainty.',
    'Records that are missing, late, overlapping or unmatched are listed, and the results depend on them. Check clocks and the names of units.',
    'Limits are those that the site has set. Standards and their editions differ; check the edition in force.',
    'Cleaning is hazardous. Let the chamber cool, isolate energy and steam, wear protective equipment, ventilate, keep chlorides and abrasives away from stainless steel; trained staff only.',
    'After cleaning: warm up and pass the air-removal test before any load. After major repair: the full requalification.',
    'Drain purges after cleaning are left out of failure and abort counts by the rule under Settings; their number is printed beside the counts.',
    'The review holds no patient data by design. Should names or load numbers appear, handle them under local privacy rules. It is about the quality of records, not about discipline.',
    'Keep the review with the quality records for the time that policy sets; data period, units, rules and version are on its first page and under Methods.',
  ],
  errorRates: {
    heading: 'How often the verdicts were wrong',
    intro: (fleets: number, made: string, version: string): string =>
      `The comparisons were made on ${format.integer(fleets)} simulated fleets of each kind, in which it is known whether missed cleaning does harm: measured on ${format.date(made)} with version ${version}.`,
    /** Where the review is of another version than the measurement. */
    since: (version: string): string =>
      `This review is of version ${version}, with which it was not measured again; the first fleet of each kind gives the same verdicts with it.`,
    caption: 'Verdicts on simulated fleets, with 95% intervals',
    /** What was true of the fleets, by scenario; English is what the measurement wrote down. */
    scenario: (_scenario: string, says: string) => says,
    notAsked: 'not asked',
    heads: {
      scenario: 'What was true in the fleets',
      falseShown: 'Fleets with a wrong “shown”',
      falseEither: 'Fleets with a wrong “shown” or “suggested”',
      found: 'Units with a true effect called “shown”',
      foundEither: 'The same, “shown” or “suggested”',
      coverage: 'Intervals that held the true ratio',
    },
  },
  settingsIntro:
    'What the site file sets, and the defaults for the rest. A mark stands where the value differs from the default.',
  settingsCaption: 'Settings in force',
  settingsHeads: { name: 'Setting', value: 'In force', default: 'Default', description: 'What it means' },
  policy: 'Cleaning policy',
  /** Value as the site file has it. */
  settingValue: (value: string) => value,
  /** "every 28 calendar_days, grace 2 days, no record means missed", by units where they differ. */
  policyValue: (value: string) => value.replaceAll('_', ' '),
  /** What a setting means; English is what the site file's schema says. */
  settingMeans: (_name: string, description: string) => description,
  own: 'set by the site',
  noDefault: 'none',
  changed: (n: number) =>
    n === 0
      ? 'All rules are at their defaults.'
      : `${n === 1 ? 'One rule differs' : `${n} rules differ`} from the default:`,
  all: 'All methods, words and settings',
};
export type MethodsWords = typeof methods;
