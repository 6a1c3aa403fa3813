import { describe, expect, it } from 'vitest';
import { recordQualitySchema } from '../../../pipeline/findings/record-quality/record-quality-schema.ts';
import type { SiteFileInput } from '../../../pipeline/site/site-schema.ts';
import { BERLIN, readFiles } from '../../ingest/read-folder.ts';
import { qualityOf } from './quality-of.ts';

const two = (value: number): string => String(value).padStart(2, '0');
const days = Array.from({ length: 60 }, (_, at) => `2025-0${1 + Math.floor(at / 28)}-${two((at % 28) + 1)}`);

/** 60 days with a test cycle that ends at 06:30, and its test recorded so many minutes after. */
async function quality(
  after: (day: number) => number,
  numbered = true,
  site: SiteFileInput = BERLIN,
  typed = '',
) {
  const cycles = days.map(
    (day, at) => `S1,${day} 06:05,${day} 06:30,air_removal_test,completed,${numbered ? 100 + at : ''}`,
  );
  const tests = days.map((day, at) => {
    const minutes = 6 * 60 + 30 + after(at);
    return `S1,${day} ${two(Math.floor(minutes / 60))}:${two(minutes % 60)},pass,${numbered ? 100 + at : ''},${typed.replace('DAY', day)}`;
  });
  const reading = await readFiles(
    {
      'cycles.csv': ['unit,start,end,kind,outcome,cycle_number', ...cycles].join('\n'),
      'air-removal-tests.csv': ['unit,time,result,cycle_number,entered_at', ...tests].join('\n'),
    },
    site,
  );
  return recordQualitySchema.parse(qualityOf(site, reading.records));
}

describe('clocks', () => {
  it('agree where tests are read minutes after their cycle', async () => {
    const { clock_differences } = await quality((at) => at % 9);
    expect(clock_differences).toMatchObject([
      { matched: 60, unmatched: 0, verdict: 'agree', before_end: 0, suggested_offset_minutes: null },
    ]);
  });

  it.each([true, false])('that run behind are found and the offset said (numbers: %s)', async (numbered) => {
    const [found] = (await quality((at) => (at % 9) - 45, numbered)).clock_differences;
    expect(found).toMatchObject({
      matched: 60,
      median_minutes: -41,
      verdict: 'test_clock_behind',
      suggested_offset_minutes: -46,
      before_end: 60,
    });
  });

  it('are corrected only where the site says so; then they agree', async () => {
    const corrected = async (clock_offset_minutes: number) => {
      const sources = (['cycles', 'air_removal_tests'] as const).map((kind) => ({
        kind,
        files: `${kind.replaceAll('_', '-')}.csv`,
        ...(kind === 'cycles' ? {} : { clock_offset_minutes }),
      }));
      return (await quality((at) => (at % 9) - 45, true, { ...BERLIN, sources })).clock_differences[0];
    };
    expect(await corrected(-46)).toMatchObject({ median_minutes: 5, verdict: 'agree' });
    // What is suggested stands in the place of what is set.
    expect(await corrected(-20)).toMatchObject({ median_minutes: -21, suggested_offset_minutes: -46 });
  });

  it('that run ahead by more than an hour', async () => {
    const [found] = (await quality((at) => 95 + (at % 5))).clock_differences;
    expect(found).toMatchObject({ verdict: 'test_clock_ahead', suggested_offset_minutes: 92 });
  });

  it('that were put forward on one side only are told by month, and no single offset is suggested', async () => {
    const [found] = (await quality((at) => (at < 28 ? 4 : 64))).clock_differences;
    expect(found).toMatchObject({ verdict: 'changes', suggested_offset_minutes: null });
    expect(found!.months.map(({ median_minutes }) => median_minutes)).toEqual([4, 64]);
  });

  it('can’t be told from few tests', async () => {
    const site = BERLIN;
    const reading = await readFiles({
      'air-removal-tests.csv': 'unit,time,result\nS1,2025-03-03 06:40,pass\nS1,2025-03-04,pass\n',
    });
    const { clock_differences } = qualityOf(site, reading.records);
    expect(clock_differences).toMatchObject([
      { matched: 0, unmatched: 1, verdict: 'too_few', median_minutes: null },
    ]);
  });
});

describe('entry', () => {
  it('minutes on fives stand out, minutes of a clock do not', async () => {
    const round = (await quality((at) => 5 * (at % 4))).entry[0]!;
    expect(round).toMatchObject({ timed: 60, on_five_minutes: 60, on_five_share: 1 });
    // 0.2 to the 60th power.
    expect(round.on_five_p).toBeCloseTo(0.2 ** 60, 44);
    const clock = (await quality((at) => (at * 7) % 30)).entry[0]!;
    expect(clock.on_five_share).toBeCloseTo(0.2, 1);
    expect(clock.on_five_p).toBeGreaterThan(0.3);
  });

  it('typing late, before the event, and many in one minute', async () => {
    expect((await quality((at) => at % 9, true, BERLIN, '2025-03-30 15:00')).entry[0]).toMatchObject({
      with_entry_time: 60,
      entered_late: 60,
      in_batches: 60,
      largest_batch: 60,
    });
    expect((await quality((at) => at % 9, true, BERLIN, 'DAY 05:00')).entry[0]).toMatchObject({
      entered_before: 60,
      entered_late: 0,
      in_batches: 0,
    });
    // Half of the tests at 06:30, half at 08:30, all typed at 10:30: two and four hours later.
    const halves = await quality((at) => 120 * (at % 2), true, BERLIN, 'DAY 10:30');
    expect(halves.entry[0]!.entry_median_hours).toBe(3);
    expect((await quality((at) => at % 9)).entry[0]).toMatchObject({
      with_entry_time: 0,
      entry_median_hours: null,
    });
  });
});

describe('counters', () => {
  const history = async (numbers: readonly (number | '')[], service = '') => {
    const rows = numbers.map((number, at) => `S1,${days[at]} 08:00,production,completed,${number}`);
    const reading = await readFiles({
      'cycles.csv': ['unit,start,kind,outcome,cycle_number', ...rows].join('\n'),
      'service.csv': `unit,from,kind\n${service}`,
    });
    return qualityOf(BERLIN, reading.records).counters[0]!;
  };

  it.each([
    ['rolls over', [9998, 9999, 1, 2], 'rollover'],
    ['rolls over to 0', [9999, 0, 1], 'rollover'],
    ['is set back', [4711, 4712, 1, 2], 'reset'],
    ['steps back', [4711, 4712, 4690, 4691], 'back'],
    ['jumps', [10, 11, 5000, 5001], 'jump'],
  ])('%s', async (_, numbers, what) => {
    const { events, missing_numbers } = await history(numbers);
    expect(events.map((event) => event.what)).toEqual([what]);
    expect(missing_numbers).toBe(0);
  });

  it('counts numbers that no file holds, and cycles without one', async () => {
    expect(await history([5, 6, 9, '', 10])).toMatchObject({
      numbered: 4,
      unnumbered: 1,
      missing_numbers: 2,
      events: [],
    });
  });

  it('knows that a control was replaced', async () => {
    const { events } = await history([4711, 4712, 1, 2], `S1,${days[2]} 06:00,controller_replaced`);
    expect(events).toMatchObject([{ what: 'reset', near_controller_replacement: true }]);
  });

  it('are no reason to take cycles for duplicates', async () => {
    expect(await history([1, 2, 3, 1, 2, 3])).toMatchObject({ numbered: 6 });
  });
});
