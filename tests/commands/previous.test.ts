import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Review } from '../../pipeline/findings/review-schema.ts';
import { runProgram } from './terminal.ts';

let folder: string;
let out: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'previous-'));
  out = join(folder, 'reports');
  const days = ['2025-02', '2025-03'].flatMap((month) =>
    Array.from({ length: 28 }, (_, at) => `${month}-${String(at + 1).padStart(2, '0')}`),
  );
  await writeFile(join(folder, 'site.yaml'), 'sites: [{ zone: Europe/Berlin }]\n');
  await writeFile(
    join(folder, 'cycles.csv'),
    [
      'unit,start,end,kind,outcome',
      ...days.map((day) => `S1,${day} 08:00,${day} 08:45,production,completed`),
    ].join('\n'),
  );
  await writeFile(
    join(folder, 'air-removal-tests.csv'),
    [
      'unit,time,result',
      ...days.map((day) => `S1,${day} 06:30,${day === '2025-02-10' ? 'fail' : 'pass'}`),
    ].join('\n'),
  );
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const review = async (...more: string[]) => {
  const { code, err } = await runProgram('review', folder, '--out', out, '--month', '2025-03', ...more);
  expect([code, err]).toEqual([0, '']);
  const place = join(out, '2025-03');
  return {
    changes: (JSON.parse(await readFile(join(place, 'review.json'), 'utf8')) as Review).changes,
    page: await readFile(join(place, 'meeting.html'), 'utf8'),
    records: await readFile(join(place, 'records.html'), 'utf8'),
    fingerprint: /fingerprint ([0-9a-f]{12})/.exec(await readFile(join(place, 'index.html'), 'utf8'))![1],
  };
};

it('takes the review of the month before from the output folder, and lists it as an input', async () => {
  const alone = await review();
  expect(alone.changes.previous).toMatchObject({ state: 'none', file: '2025-02/review.json' });
  expect(alone.page).toContain('No earlier review is at hand (looked for 2025-02/review.json)');

  expect((await runProgram('review', folder, '--out', out, '--month', '2025-02')).code).toBe(0);
  const after = await review();
  expect(after.changes.previous).toMatchObject({
    state: 'read',
    month: '2025-02',
    file: '2025-02/review.json',
  });
  expect(after.changes.attention).toContainEqual({
    unit: 'S1',
    code: 'failed_test',
    about: null,
    change: 'gone',
    level_before: 'decide',
    level_now: null,
  });
  expect(after.records).toContain(`SHA-256 ${after.changes.previous.sha256}`);
  // What is said rests on one more input.
  expect(after.fingerprint).not.toBe(alone.fingerprint);
  expect(await review()).toEqual(after);
});

it('makes the review with a clear word where the earlier one is damaged', async () => {
  const before = join(out, '2025-02', 'review.json');
  const text = await readFile(before, 'utf8');
  await writeFile(before, text.slice(0, 1000));
  const { changes, page } = await review();
  expect(changes.previous).toMatchObject({ state: 'damaged', found: '1000 bytes that are no JSON' });
  expect(page).toContain(
    'The earlier review 2025-02/review.json can’t be read: found 1000 bytes that are no JSON.',
  );
  await writeFile(before, text.replace('cleaning-evidence review 2', 'cleaning-evidence review 1'));
  const old = await review();
  expect(old.changes.previous.state).toBe('other_format');
  expect(old.page).toContain('was made in another format');
  await writeFile(before, text);
});

it('takes another file where one is named, and says where that can’t be read', async () => {
  const kept = join(folder, 'kept');
  await mkdir(kept);
  const file = join(kept, 'february.json');
  await writeFile(file, await readFile(join(out, '2025-02', 'review.json')));
  const { changes } = await review('--previous', file);
  // The name alone: a place on this machine would be another on the next.
  expect(changes.previous).toMatchObject({ state: 'read', file: 'february.json' });
  const missing = await runProgram('review', folder, '--out', out, '--previous', join(kept, 'none.json'));
  expect(missing.code).toBe(1);
  expect(missing.err).toMatch(/^--previous must be a file that can be read, found .*none\.json \(ENOENT\)/);
});
