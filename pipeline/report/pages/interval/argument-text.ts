import type { IntervalCase, ShapeFit } from '../../../findings/interval/interval-schema.ts';
import { keptLonger } from '../../../findings/interval/kept-interval.ts';
import type { IntervalWords } from './interval-words.ts';

/** One part of the argument: its heading, what it says first, and the rest. */
export interface ArgumentPart {
  id: 'question' | 'records' | 'finding' | 'cost' | 'mind' | 'limits' | 'cautions';
  heading: string;
  lead: string | null;
  paragraphs: string[];
  list: string[];
}

const said = (texts: (string | null | undefined | false)[]): string[] =>
  texts.filter((text): text is string => typeof text === 'string' && text !== '');

/** The argument in words, in the order in which a committee reads it. The page and the command say the same. */
export function argumentText(of: IntervalCase, words: IntervalWords): ArgumentPart[] {
  const { argument } = words;
  const { headings } = argument;
  const part = (
    id: ArgumentPart['id'],
    lead: string | null,
    paragraphs: string[],
    list: string[] = [],
  ): ArgumentPart => ({ id, heading: headings[id], lead, paragraphs, list });
  const kept = keptLonger(of);
  const own = risingUnits(of).map(({ scope }) => scope);
  return [
    part('question', null, [
      argument.question(of.units_in_use.length === 0 ? of.spells.units : of.units_in_use.length),
      `${kept === null ? argument.inForce(of.in_force, of.clock, of.units_otherwise.length) : argument.kept(kept.stated, kept.median, of.clock)} ${argument.instructions(of.longest_by_instructions, of.clock)}`,
    ]),
    part('records', null, recordsText(of, words)),
    part('finding', argument.answer(of.answer.code, own, unitsOf(of).length), findingText(of, words)),
    part('cost', null, costText(of, words)),
    part('mind', null, mindText(of, words)),
    part('limits', null, [], [...argument.limits]),
    part('cautions', null, [], [...argument.cautions]),
  ];
}

function recordsText(of: IntervalCase, { argument, format }: IntervalWords): string[] {
  const { cleanings, spells } = of;
  const [failures, aborts] = mainFits(of);
  return said([
    argument.records({
      records: cleanings.records,
      starts: cleanings.starts,
      reactive: cleanings.reactive,
      contradicted: cleanings.contradicted,
      notJudged: cleanings.not_judged,
    }),
    of.record_from !== null &&
      of.record_to !== null &&
      argument.observed({
        failures: failures.events,
        days: spells.days_at_risk,
        aborts: aborts.events,
        cycles: aborts.chances,
        spells: spells.spells,
        span: format.span(of.record_from, of.record_to),
      }),
    ...of.notes.filter((note) => RECORD_NOTES.has(note)).map(argument.note),
  ]);
}

const RECORD_NOTES = new Set(['mostly_reactive', 'few_unit_eras', 'no_units_in_use']);

/** Fits of failures and of aborts on the clock of the case, in the site's reading. */
export function mainFits(of: IntervalCase): [ShapeFit, ShapeFit] {
  const fit = (outcome: ShapeFit['outcome']) =>
    of.fits.find((row) => row.outcome === outcome && row.clock === of.clock && row.reading === 'site')!;
  return [fit('failed_test'), fit('cleanliness_abort')];
}

function findingText(of: IntervalCase, words: IntervalWords): string[] {
  const { argument, format } = words;
  const { answer } = of;
  const [failures] = mainFits(of);
  const level = format.level(of.bootstrap.level);
  const late =
    of.in_force !== null && of.longest_observed !== null && of.in_force <= of.longest_observed
      ? of.in_force
      : of.longest_considered;
  const early = late === null ? 0 : Math.max(1, Math.round(late / 4));
  const units = risingUnits(of);
  const tested = unitsOf(of).some((row) => row.shape !== null);
  const judged = answer.code !== 'cannot_tell' || answer.because.includes('too_few_to_show');
  return said([
    failures.shape !== null &&
      judged &&
      argument.shape({
        shape: failures.shape,
        low: failures.low!,
        high: failures.high,
        p: failures.p!,
        level,
      }),
    answer.code === 'supported' &&
      late !== null &&
      late > early &&
      argument.risk(late, early, (late / early) ** (failures.shape! - 1), of.clock),
    ...answer.because.filter((code) => code !== 'all_records_differ').map(argument.because),
    answer.because.includes('all_records_differ') && argument.allRecords(answer.all_records!),
    ...(units.length <= NAMED
      ? units.map(({ scope, shape }) =>
          argument.ownShape(
            scope,
            argument.shapeInShort({
              shape: shape!.estimate,
              low: shape!.low,
              high: shape!.high,
              p: shape!.adjusted_p!,
            }),
          ),
        )
      : [argument.units(units.length, unitsOf(of).length)]),
    tested && judged && units.length === 0 && argument.noUnits,
    judged && abortText(of, words),
    of.surfaces.trend.answer === 'rises' && argument.appearance.rises(of.surfaces.trend.p!),
    of.surfaces.trend.answer === 'not_shown' && argument.appearance.not_shown,
  ]);
}

/** Units that are named, with their own shape, where a rise is shown for them; of more their number is said. */
const NAMED = 5;

const unitsOf = ({ levels }: IntervalCase) => levels.filter((row) => row.level === 'unit');

/** Units with a rise of their own, adjusted for the number of units. */
const risingUnits = (of: IntervalCase) =>
  unitsOf(of).filter(
    ({ shape }) =>
      shape !== null && shape.estimate > 1 && shape.adjusted_p !== null && shape.adjusted_p <= LINE,
  );

/** Line for p and adjusted p of a shape. */
const LINE = 0.05;

/** What is said of the aborts, with their numbers; clocks on which their p is at or under the line are named where the answer is not a rise. */
function abortText({ answer, fits, clock }: IntervalCase, { argument }: IntervalWords): string | null {
  const aborts = fits.filter((row) => row.outcome === 'cleanliness_abort' && row.reading === 'site');
  const main = aborts.find((row) => row.clock === clock)!;
  if (main.shape === null) return null;
  const other = aborts.filter(
    (row) => answer.aborts !== 'supported' && row.shape !== null && row.shape > 1 && row.p! <= LINE,
  );
  return argument.aborts(
    answer.aborts,
    argument.shapeInShort({ shape: main.shape, low: main.low!, high: main.high, p: main.p! }),
    other.map((row) => argument.onClock(argument.clockNames[row.clock], row.p!)),
  );
}

function costText(of: IntervalCase, words: IntervalWords): string[] {
  const { argument, inputs, format } = words;
  const { best, candidates, clock, currency } = of;
  const money = of.objective === 'cost';
  const named = of.answer.code === 'supported' && best !== null;
  const about = named ? best.interval : of.in_force;
  const year =
    candidates.find((row) => row.in_force)?.year ?? candidates.find((row) => row.interval === about)?.year;
  const shown = candidates.find((row) => row.year === year);
  const range = (value: { estimate: number; low: number; high: number }) =>
    argument.withInterval(value.estimate, value.low, value.high);
  const missing = of.inputs.filter((row) => row.origin === 'not_given' && (money || row.unit !== 'cost'));
  return said([
    year &&
      shown &&
      argument.year({
        every: argument.interval(shown.interval, clock),
        cleanings: year.cleanings.estimate,
        failures: range(year.failures),
        aborts: range(year.aborts),
        hours: range(year.hours_total),
        labour: year.labour_hours.estimate,
      }),
    named &&
      argument.best({
        best: argument.interval(best.interval, clock),
        low: format.integer(best.low),
        high: argument.interval(best.high, clock),
        value: money ? argument.money(best.value, currency) : argument.hours(best.value),
        money,
      }),
    named && best.at_longest && argument.atLongest,
    named && argument.advice[best.advice],
    best !== null && !named && argument.notBest,
    breakEvenText(of, words),
    ...of.notes.filter((note) => !RECORD_NOTES.has(note) && !ELSEWHERE.has(note)).map(argument.note),
    of.objective !== null && argument.notCounted(missing.map((row) => inputs.inText(row.name))),
  ]);
}

/** Said in the question already. */
const ELSEWHERE = new Set([
  'limit_not_given',
  'no_interval_in_force',
  'units_with_other_intervals',
  'candidates_without_limit',
  'candidates_beyond_instructions',
  'candidates_beyond_record',
]);

/** The break-even for the next shorter candidate: the step that a committee would take first. */
function breakEvenText(of: IntervalCase, { argument, format }: IntervalWords): string | null {
  const shorter = of.candidates.findLast(
    (row) => row.standing === 'compared' && of.in_force !== null && row.interval < of.in_force,
  );
  if (!shorter) return null;
  const to = argument.interval(shorter.interval, of.clock);
  const even = shorter.break_even;
  if (even === null) return argument.noBreakEven(to);
  const money = even.cost !== null;
  return argument.breakEven({
    from: format.integer(of.in_force!),
    to,
    avoided: format.twoFigures(even.failures_avoided),
    money,
    line: money ? argument.breakEvenCost(even.cost!, of.currency) : argument.breakEvenHours(even.hours!),
    range: money
      ? argument.breakEvenRange(even.cost_low, even.cost_high)
      : argument.breakEvenRange(even.hours_low, even.hours_high),
  });
}

function mindText(of: IntervalCase, words: IntervalWords): string[] {
  const { argument, inputs, format } = words;
  const [failures] = mainFits(of);
  const first = of.sensitivity.find((row) => row.moves > 0);
  return said([
    argument.mind[of.answer.code],
    failures.smallest_detectable_shape !== null &&
      of.answer.code !== 'supported' &&
      argument.detectable(failures.smallest_detectable_shape, format.percent(0.8)),
    failures.data_needed_factor !== null &&
      failures.data_needed_factor > 1 &&
      of.answer.code !== 'supported' &&
      argument.more(failures.data_needed_factor),
    of.sensitivity.length > 0 &&
      of.answer.code === 'supported' &&
      (first
        ? argument.sensitive({
            input: inputs.inText(first.input),
            values: inputs.changed(
              first.input,
              format.twoFigures(first.low_value),
              format.twoFigures(first.high_value),
            ),
            at: [format.integer(first.best_at_low), argument.interval(first.best_at_high, of.clock)],
          })
        : argument.notSensitive),
  ]);
}
