import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { changesSince } from '../../../pipeline/findings/changes/changes.ts';
import { changesSchema } from '../../../pipeline/findings/changes/changes-schema.ts';
import { readPrevious } from '../../../pipeline/findings/changes/previous-review.ts';
import { REVIEW_FORMAT, type Review } from '../../../pipeline/findings/review-schema.ts';
import { comparisonOf, reviewOf, unitOf } from '../../report/fixtures/review-of.ts';

const bytesOf = (value: unknown) =>
  new TextEncoder().encode(typeof value === 'string' ? value : JSON.stringify(value));
const read = (value: unknown, month = '2026-04') =>
  readPrevious({ file: '2026-03/review.json', bytes: bytesOf(value) }, null, month, REVIEW_FORMAT);

/** What changed from one review to the next, whose month is April. */
function between(before: Partial<Review>, now: Partial<Review>) {
  const found = read(reviewOf(before));
  expect(found.previous.state).toBe('read');
  return changesSchema.parse(changesSince(found.previous, found.review, reviewOf(now)));
}

const due = (unit: string, missed: number, of = 20): Review['cleaning']['month'][number] => ({
  unit,
  task: 'drain_strainer',
  due: of,
  done: of - missed,
  done_late: 0,
  missed,
  not_recorded: 0,
  contradicted: 0,
  open: 0,
});
const cleaning = (...month: Review['cleaning']['month']) => ({ cleaning: { month, record: [], days: [] } });
const reason = (code: Review['units'][number]['attention'][number]['code'], level: 'act' | 'look') => ({
  code,
  level,
  numbers: {},
  comparison: null,
});

describe('the review before', () => {
  it('is listed with its size, its SHA-256 and the fingerprint of its own files', () => {
    const review = reviewOf();
    const { previous } = read(review);
    expect(previous).toMatchObject({
      state: 'read',
      file: '2026-03/review.json',
      month: '2026-03',
      bytes: bytesOf(review).length,
      sha256: createHash('sha256').update(bytesOf(review)).digest('hex'),
      // SHA-256 of nothing, FIPS 180-4 (the example of NIST): e3b0c442 98fc 1c14...
      fingerprint: 'e3b0c44298fc',
    });
  });

  it('is none where no file is at hand', () => {
    const { previous, review } = readPrevious(undefined, '2026-03/review.json', '2026-04', REVIEW_FORMAT);
    expect(review).toBeNull();
    expect(previous).toMatchObject({ state: 'none', file: '2026-03/review.json', sha256: null });
  });

  it.each([
    ['no JSON', '{"format": "clean', 'damaged', /no JSON/],
    ['no UTF-8', '\ud800', 'damaged', /no JSON/],
    ['JSON of something else', '[1, 2]', 'damaged', /names no format/],
    ['another format', { format: 'cleaning-evidence review 1' }, 'other_format', /review 1/],
    ['a review without units', { ...reviewOf(), units: undefined }, 'damaged', /^units: /],
    [
      'a hash that is none',
      { ...reviewOf(), settings: [{ name: 'x', value: 3 }] },
      'damaged',
      /^settings\.0\.value: /,
    ],
    [
      'this month',
      reviewOf({ period: { ...reviewOf().period, month: '2026-04' } }),
      'not_earlier',
      /2026-04/,
    ],
  ])('that is %s is said to be so, and the review goes on', (_, value, state, found) => {
    const { previous, review } = read(value);
    expect(review).toBeNull();
    expect(previous.state).toBe(state);
    expect(previous.found).toMatch(found);
    expect(changesSince(previous, review, reviewOf()).verdicts).toEqual([]);
  });
});

describe('changes', () => {
  it('are none between a review and itself', () => {
    const same = {
      units: [unitOf('A1', { attention: [reason('failed_test', 'look')] })],
      comparisons: [comparisonOf()],
      ...cleaning(due('A1', 2)),
    };
    expect(between(same, same)).toMatchObject({
      verdicts: [],
      verdicts_same: 1,
      drift: [],
      attention: [{ change: 'stays' }],
      cleaning: [{ moved: 'same' }],
      settings: [],
      units_new: [],
      units_gone: [],
    });
  });

  it('name verdicts that moved, came and went', () => {
    const changes = between(
      { comparisons: [comparisonOf({ ratio: 1.3 }), comparisonOf({ unit: 'A2' })] },
      { comparisons: [comparisonOf({ verdict: 'shown', ratio: 3 }), comparisonOf({ unit: 'A3' })] },
    );
    expect(
      changes.verdicts.map(({ unit, before, now, ratio_now }) => [unit, before, now, ratio_now]),
    ).toEqual([
      ['A1', 'cannot_tell', 'shown', 3],
      ['A3', null, 'cannot_tell', 1.3],
      ['A2', 'cannot_tell', null, null],
    ]);
    expect(changes.verdicts_same).toBe(0);
  });

  it('name reasons that are new, gone or of another level', () => {
    const changes = between(
      { units: [unitOf('A1', { attention: [reason('failed_test', 'look'), reason('test_late', 'look')] })] },
      { units: [unitOf('A1', { attention: [reason('failed_test', 'act'), reason('early_stops', 'look')] })] },
    );
    expect(changes.attention).toEqual([
      {
        unit: 'A1',
        code: 'failed_test',
        about: null,
        change: 'stays',
        level_before: 'look',
        level_now: 'act',
      },
      { unit: 'A1', code: 'early_stops', about: null, change: 'new', level_before: null, level_now: 'look' },
      { unit: 'A1', code: 'test_late', about: null, change: 'gone', level_before: 'look', level_now: null },
    ]);
  });

  it('compare shares missed, not counts', () => {
    const moved = (was: number, of: number, is: number, ofNow: number) =>
      between(cleaning(due('A1', was, of)), cleaning(due('A1', is, ofNow))).cleaning[0]!.moved;
    expect(moved(2, 20, 2, 20)).toBe('same');
    expect(moved(2, 20, 3, 30)).toBe('same');
    expect(moved(2, 20, 2, 30)).toBe('fewer_missed');
    expect(moved(2, 30, 2, 20)).toBe('more_missed');
    expect(moved(0, 0, 2, 20)).toBe('same');
  });

  it('name settings and units that changed', () => {
    const setting = (value: string) => ({ name: 'rules.a', value, default: '1', description: '' });
    const changes = between(
      { settings: [setting('1')], units: [unitOf('A1')] },
      { settings: [setting('2')], units: [unitOf('A2')] },
    );
    expect(changes.settings).toEqual([{ name: 'rules.a', before: '1', now: '2' }]);
    expect([changes.units_new, changes.units_gone]).toEqual([['A2'], ['A1']]);
  });
});
