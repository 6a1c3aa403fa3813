import { expect, it } from 'vitest';
import { panel, review } from '../../../pipeline/index.ts';
import { expectedText } from '../../../pipeline/report/words/de/expected.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';
import { HEADER, readFiles } from '../read-folder.ts';

const SITE = { sites: [{ zone: 'America/Halifax' }] };
/** Days of April that each hold a cycle, and a cycle of each of some other days. */
const log = (...others: string[]): string =>
  [
    HEADER,
    ...Array.from({ length: 30 }, (_, at) => `2025-04-${String(at + 1).padStart(2, '0')}`).concat(others),
  ]
    .map((day, at) => (at === 0 ? day : `S1,${day} 07:30,,production,completed,18,95,`))
    .join('\n')
    .concat('\n');

it('stand with file, row, column and wall time, in order of time, and stay records', async () => {
  const { problems, files, records } = await readFiles(
    { 'cycles-1.csv': log('2052-04-10'), 'cycles-2.csv': log('2052-04-10', '2005-01-03') },
    SITE,
  );
  expect(problems).toMatchObject([
    {
      code: 'lone_record',
      costs: 'review',
      file: 'cycles-2.csv',
      row: 33,
      column: 'start',
      value: '2005-01-03 07:30',
    },
    {
      code: 'lone_record',
      costs: 'review',
      file: 'cycles-1.csv',
      row: 32,
      column: 'start',
      value: '2052-04-10 07:30',
    },
  ]);
  expect(
    files.map(({ rows, records, duplicates, rejected }) => [rows, records, duplicates, rejected]),
  ).toEqual([
    [31, 31, 0, 0],
    [32, 1, 31, 0],
  ]);
  expect(records.cycles).toHaveLength(32);
  expect(expectedText(problems[0]!.expected)).toMatch(/^eine Zeit innerhalb von 62 Tagen .*5 Datensätze/);
});

it('are in no panel and no review of the library', async () => {
  const site = readSiteFile(JSON.stringify(SITE), 'site.yaml');
  const reading = await readFiles({ 'cycles.csv': log('2052-04-10', '2005-01-03') }, SITE);
  const days = panel(site, reading).panel.map(({ date }) => date);
  expect([days.length, days[0], days.at(-1)]).toEqual([30, '2025-04-01', '2025-04-30']);
  expect(review(site, reading).period).toMatchObject({
    month: '2025-04',
    record_from: '2025-04-01',
    record_to: '2025-04-30',
    later_records: 1,
  });
  expect(review(site, reading, '2005-01').period).toMatchObject({
    month: '2005-01',
    record_from: '2005-01-03',
  });
});
