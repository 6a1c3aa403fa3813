import { z } from 'zod';

/**
 * How good the records themselves are: clocks that differ, times that were rounded or typed late, counters that jump. It says something of records and ways of
 * recording, nothing of people: rounding and typing at the end of a shift are usual where work comes first.
 */

const share = z.number().min(0).max(1);
const minutes = z.number();

const differenceSchema = z
  .strictObject({
    source: z.string().describe('Source of the tests'),
    kind: z.enum(['air_removal_tests', 'leak_tests']),
    unit: z.string(),
    matched: z.number().int().describe('Tests whose cycle was found'),
    unmatched: z.number().int().describe('Tests with a time of day whose cycle was not found'),
    median_minutes: minutes.nullable().describe('Time of the test minus end of its cycle, median, minutes'),
    low_minutes: minutes.nullable().describe('Lower bound of the 95 % interval of the median'),
    high_minutes: minutes.nullable().describe('Upper bound of the 95 % interval of the median'),
    before_end: z.number().int().describe('Tests recorded more than 2 minutes before their cycle ended'),
    months: z
      .array(z.strictObject({ month: z.string(), matched: z.number().int(), median_minutes: minutes }))
      .describe(
        'Median by month, where a month has 5 or more: a step of an hour is a clock that was not put forward',
      ),
    verdict: z
      .enum(['agree', 'test_clock_behind', 'test_clock_ahead', 'changes', 'too_few'])
      .describe(
        'A test is recorded from the end of its cycle to an hour after it; behind and ahead are outside of that',
      ),
    suggested_offset_minutes: minutes
      .nullable()
      .describe(
        'clock_offset_minutes that would bring the median to 5 minutes after the end; never applied by itself',
      ),
  })
  .describe('Clock of the test records against the clock of the cycle log');

const cleaningClockSchema = z
  .strictObject({
    source: z.string().describe('Source of the cleaning records'),
    site: z.string().describe('Site of the units'),
    records: z
      .number()
      .int()
      .describe('Records of done work with a time of day that were set beside the cycle log of their unit'),
    left_out: z
      .number()
      .int()
      .describe(
        'Other records of done work: a date alone, a minute that 3 or more records share, or no cycle within a day',
      ),
    fit: z.number().int().describe('Records that lie in a pause between cycles, as they are'),
    fit_with_offset: z.number().int().nullable().describe('Records that would, at the best offset'),
    p: share
      .nullable()
      .describe('Exact test of pairs between the two counts (McNemar), times the offsets that were tried'),
    low_minutes: minutes
      .nullable()
      .describe(
        'Lowest clock_offset_minutes at which about as many records stand beside a cycle as at the best',
      ),
    high_minutes: minutes.nullable().describe('Highest such clock_offset_minutes'),
    months: z
      .array(
        z.strictObject({
          month: z.string(),
          records: z.number().int(),
          fit: z.number().int().describe('Records that lie in a pause between cycles, as they are'),
          offset_minutes: minutes
            .nullable()
            .describe('Best clock_offset_minutes, where the month by itself shows one'),
        }),
      )
      .describe('The same by month, where a month has 20 or more records'),
    verdict: z
      .enum(['agree', 'cleaning_clock_behind', 'cleaning_clock_ahead', 'changes', 'too_few', 'cannot_tell'])
      .describe(
        'agree: no more records stand in running cycles than 15 % and chance give; cannot_tell: more do, and no one offset mends it. Ahead may be writing late',
      ),
    suggested_offset_minutes: minutes
      .nullable()
      .describe(
        'clock_offset_minutes in the middle of the range, where that is at most an hour wide and has no gap; never applied by itself',
      ),
  })
  .describe('Clock of a cleaning log against the clock of the cycle log');

const entrySchema = z
  .strictObject({
    source: z.string(),
    kind: z.enum(['air_removal_tests', 'leak_tests', 'cleanings']),
    records: z.number().int(),
    timed: z.number().int().describe('Records with a time of day'),
    on_five_minutes: z
      .number()
      .int()
      .describe('Of these, on a minute that 5 divides; 1 in 5 is expected of a clock'),
    on_five_share: share.nullable(),
    on_five_p: share
      .nullable()
      .describe('Chance of so many or more if minutes were as a clock gives them (exact binomial)'),
    with_entry_time: z.number().int().describe('Records that say when they were typed'),
    entry_median_hours: z.number().nullable().describe('Typed after the event, median, hours'),
    entered_late: z.number().int().describe('Typed more than 12 hours after the event'),
    entered_before: z.number().int().describe('Typed before the event'),
    in_batches: z
      .number()
      .int()
      .describe('Records that share the minute of typing (else of the event) with 4 or more others'),
    largest_batch: z.number().int().describe('Most records with one such minute'),
  })
  .describe('How the records of a source were entered');

const counterSchema = z
  .strictObject({
    unit: z.string(),
    numbered: z.number().int().describe('Cycles with a number'),
    unnumbered: z.number().int(),
    missing_numbers: z
      .number()
      .int()
      .describe('Numbers that were passed over in steps of at most 200: cycles that no file holds'),
    repeated_numbers: z.number().int().describe('Cycles that have the number of the one before'),
    events: z.array(
      z.strictObject({
        at: z.number().int().describe('Start of the first cycle after it, ms since 1970, UTC'),
        time: z.string().describe('The same as wall time of the site, yyyy-MM-dd HH:mm'),
        from: z.number().int(),
        to: z.number().int(),
        what: z
          .enum(['rollover', 'reset', 'back', 'jump'])
          .describe(
            'Rolled over at its last number; set back to its start; a smaller step back; forward by more than 200',
          ),
        near_controller_replacement: z
          .boolean()
          .describe('Within 7 days of a record that the control was replaced'),
      }),
    ),
  })
  .describe('Cycle counter of a unit');

export const recordQualitySchema = z.strictObject({
  clock_differences: z.array(differenceSchema),
  cleaning_clocks: z.array(cleaningClockSchema),
  entry: z.array(entrySchema),
  counters: z.array(counterSchema),
});
export type RecordQuality = z.infer<typeof recordQualitySchema>;
export type ClockDifference = RecordQuality['clock_differences'][number];
export type CleaningClock = RecordQuality['cleaning_clocks'][number];
export type EntryHabits = RecordQuality['entry'][number];
export type CounterHistory = RecordQuality['counters'][number];
