import { beforeAll, expect, test } from 'vitest';
import type { ExpectedCounts } from '../../data-samples/generator/expected.ts';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import type { Reading } from '../../pipeline/ingest/reading.ts';
import { FOLDER, readDemoSite, readTruth } from './truth-file.ts';

const truth = readTruth();
let reading: Reading;

beforeAll(async () => {
  reading = await readExports(readDemoSite(), FOLDER);
});

test.each(Object.keys(truth.reading))('%s: reading counts what the generator wrote', (source) => {
  const keys = ['rows', 'records', 'duplicates', 'rejected', 'skipped', 'cells_lost'] as const;
  const files = reading.files.filter((file) => file.source === source);
  const counts: ExpectedCounts = {
    files: files.length,
    rows: 0,
    records: 0,
    duplicates: 0,
    rejected: 0,
    skipped: 0,
    cells_lost: 0,
  };
  for (const file of files) for (const key of keys) counts[key] += file[key];
  expect(counts).toEqual(truth.reading[source]);
});

test('each problem stands where a fault was put, and each fault that is one was found', () => {
  const place = (file: string, row: number | null, code: string | null) => `${file} ${row} ${code}`;
  const found = reading.problems.map(({ file, row, code }) => place(file, row, code));
  const put = truth.faults
    .filter(({ code }) => code !== null)
    .map(({ file, row, code }) => place(`exports/${file}`, row, code));
  expect(put.length).toBeGreaterThanOrEqual(25);
  expect(found.sort()).toEqual(put.sort());
});

test('cycles about the repeated hour keep their real start and length', () => {
  const numbers = new Map(truth.repeated_hour.map((cycle) => [cycle.cycle_number, cycle]));
  const read = reading.records.cycles.filter(
    ({ unit, cycle_number }) => unit === 'Q3' && numbers.has(cycle_number!),
  );
  expect(read.length).toBe(truth.repeated_hour.length);
  for (const cycle of read) {
    const { start, end } = numbers.get(cycle.cycle_number!)!;
    const second = (iso: string) => Math.floor(Date.parse(iso) / 1000) * 1000;
    expect(cycle.start, `start of ${cycle.cycle_number}`).toBe(second(start));
    expect(cycle.end, `end of ${cycle.cycle_number}`).toBe(second(end));
  }
});

test('a time that occurs twice and one that never occurred are marked', () => {
  const marks = reading.records.cleanings
    .filter(({ unit, time_mark }) => unit === 'Q3' && time_mark !== 'time')
    .map(({ time, time_mark }) => [new Date(time).toISOString(), time_mark]);
  expect(marks).toEqual([
    ['2025-11-02T04:05:00.000Z', 'ambiguous'], // 01:35 Newfoundland daylight time, UTC-02:30: the earlier reading
    ['2026-03-08T05:50:00.000Z', 'shifted'], // 02:20 is moved on to 03:20, UTC-02:30
  ]);
});

test('accents and the characters that only Windows-1252 has come through', () => {
  const notes = reading.records.service.map(({ note }) => note);
  expect(notes).toContain('Nouvelle commande – main-d’œuvre externe, compteur remis à 1');
});

test('times of the workbook are whole minutes', () => {
  const times = reading.records.cleanings.filter(({ origin }) => origin.file.endsWith('.xlsx'));
  expect(times.length).toBeGreaterThan(2000);
  expect(times.filter(({ time }) => time % 60_000 !== 0)).toEqual([]);
});

test('no load number and no initials are kept', () => {
  const kept = JSON.stringify(reading.records);
  expect(kept).not.toMatch(/"L\d{6}"/);
  expect(kept).not.toMatch(/"(aa|bx|cw|dz)"/);
});
