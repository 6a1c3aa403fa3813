import { describe, expect, it } from 'vitest';
import { aheadRows, datesOf, withInterval } from '../../../pipeline/report/rows/ahead-rows.ts';
import { en } from '../../../pipeline/report/words/en.ts';
import { fleetInput } from '../fixtures/fleet.ts';

const { review } = fleetInput(3);
const rows = aheadRows(review, en);
const cell = (unit: string, date: string) => rows.find((row) => row.unit === unit && row.date === date)!;

describe('the calendar of the next month', () => {
  it('has a cell for each unit and day', () => {
    expect(datesOf(review.next_month)).toHaveLength(30);
    expect(rows).toHaveLength(3 * 30);
  });

  it('letters tasks of one day together, the larger work first', () => {
    const chamber = review.next_month.tasks.find((of) => of.unit === 'A2' && of.task === 'chamber')!;
    expect(cell('A2', chamber.date)).toMatchObject({ letter: 'CF', state: 'due' });
    expect(cell('A2', chamber.date).told).toContain('Chamber cleaning: due; Drain flush: due');
  });

  it('marks what is outstanding by a sign as well as by its colour', () => {
    const found = cell('A1', '2026-04-01');
    expect(found).toMatchObject({ letter: '!C', state: 'outstanding' });
    expect(found.fill).not.toBe(cell('A2', '2026-04-01').fill);
  });

  it('leaves days of no expected use blank, and says nothing of them', () => {
    // 5 April 2026 is a Sunday.
    expect(cell('A1', '2026-04-05')).toMatchObject({ state: 'idle', fill: 'none', letter: '', told: '' });
    expect(cell('A3', '2026-04-02')).toMatchObject({ state: 'not_due', letter: '' });
  });

  it('holds no task of each day of use', () => {
    expect(withInterval(review.next_month).some((task) => task.task === 'drain_strainer')).toBe(false);
  });
});
