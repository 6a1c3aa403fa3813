import { describe, expect, it } from 'vitest';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { learn } from '../../pipeline/learn/learn.ts';
import type { ProposedSource } from '../../pipeline/learn/proposal.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { writeSiteFile } from '../../pipeline/learn/write-site-file.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { withFolder } from '../ingest/read-folder.ts';
import { workbook } from '../ingest/workbook.ts';

const vocabulary = loadVocabulary();
const two = (number: number): string => String(number).padStart(2, '0');

const proposed = (files: Record<string, string | Uint8Array>) =>
  withFolder(files, async (folder) => {
    const proposal = await learn(folder, { vocabulary, zone: 'Europe/Zurich' });
    const site = readSiteFile(writeSiteFile(proposal), 'site.yaml');
    return { source: proposal.sources[0]!, records: (await readExports(site, folder)).records };
  });

const table = (header: string, row: (at: number) => string): string =>
  [header, ...Array.from({ length: 28 }, (_, at) => row(at)), ''].join('\n');

const from = (source: ProposedSource, field: string) => {
  const column = source.columns.find((one) => one.field === field);
  return column && 'headers' in column.from ? [...column.from.headers, column.match.confidence] : undefined;
};
const instants = (times: readonly (number | undefined)[]): string[] =>
  times.slice(0, 1).map((time) => new Date(time!).toISOString());

describe('a day beside the times from which and to which', () => {
  it.each([
    ['Datum', 'Von', 'Bis', 'Gerät', 'Arbeit'],
    ['Date', 'From', 'Until', 'Sterilizer', 'Task'],
    ['Date', 'De', 'À', 'Stérilisateur', 'Tâche'],
    ['Fecha', 'Desde', 'Hasta', 'Equipo', 'Tarea'],
    ['CLNG_DT', 'FROM_TM', 'TO_TM', 'EQP_ID', 'ACTIVITY'],
    ['Datum', 'Uhrzeit von', 'Uhrzeit bis', 'Gerät', 'Arbeit'],
    ['Fecha', 'Hora desde', 'Hora hasta', 'Equipo', 'Tarea'],
  ])('cleaning, %s %s %s: done at its end, begun at its begin', async (day, begin, end, unit, task) => {
    const { source, records } = await proposed({
      'cleaning.csv': table(
        [day, begin, end, unit, task].join(','),
        (at) => `${two(at + 1)}.03.2025,06:${10 + at},07:${10 + at},S${at % 2},Sieb`,
      ),
    });
    expect(from(source, 'time')?.slice(0, 2)).toEqual([day, end]);
    expect(from(source, 'start')).toEqual([day, begin, 'likely']);
    // 1 March 2025, 07:10 in Zurich, is 06:10 in UTC.
    expect(instants(records.cleanings.map(({ time }) => time))).toEqual(['2025-03-01T06:10:00.000Z']);
    expect(instants(records.cleanings.map(({ start }) => start))).toEqual(['2025-03-01T05:10:00.000Z']);
  });

  it('cycles and service: from the first to the second', async () => {
    const cycles = await proposed({
      'zyklen.csv': table(
        'Datum,von,bis,Gerät,Programm,Ergebnis',
        (at) => `${two(at + 1)}.03.2025,06:${10 + at},07:${10 + at},S${at % 2},Instrumente,OK`,
      ),
    });
    expect(from(cycles.source, 'start')?.slice(0, 2)).toEqual(['Datum', 'von']);
    expect(from(cycles.source, 'end')).toEqual(['Datum', 'bis', 'likely']);
    const service = await proposed({
      'service log.csv': table(
        'Date,From,To,Sterilizer,Type of work',
        (at) =>
          `${two(at + 1)}.03.2025,06:${10 + at},07:${10 + at},S${at % 2},${at % 3 ? 'Repair' : 'Maintenance'}`,
      ),
    });
    expect(from(service.source, 'from')?.slice(0, 2)).toEqual(['Date', 'From']);
    expect(from(service.source, 'to')).toEqual(['Date', 'To', 'likely']);
  });

  it('where only the begin stands the work took place then, as likely', async () => {
    const { source } = await proposed({
      'reinigung.csv': table(
        'Datum,Von,Gerät,Arbeit',
        (at) => `${two(at + 1)}.03.2025,06:${10 + at},S${at % 2},Sieb`,
      ),
    });
    expect(from(source, 'time')).toEqual(['Datum', 'Von', 'likely']);
  });

  it('a time of day that fits nothing leaves the day marked', async () => {
    const { source } = await proposed({
      'bd tests.csv': table(
        'Date,Sterilizer,Result,Lamp',
        (at) => `${two(at + 1)}.03.2025,S${at % 2},Pass,06:${10 + at}`,
      ),
    });
    expect(from(source, 'time')).toEqual(['Date', 'likely']);
  });
});

describe('dates as cells of a workbook', () => {
  const rows = (day: (at: number) => Date | string) =>
    Array.from({ length: 24 }, (_, at) => {
      const value = day(at);
      return [
        `Unit ${at % 2}`,
        value instanceof Date ? { value, format: 'yyyy-mm-dd' } : value,
        `06:${two(at + 10)}`,
        at % 7 === 3 ? 'fail' : 'pass',
      ];
    });
  const book = async (day: (at: number) => Date | string) => ({
    'bd tests.xlsx': await workbook([
      { name: 'Tests', rows: [['Unit', 'Date', 'Time', 'Result'], ...rows(day)] },
    ]),
  });
  const cell = (at: number): Date => new Date(Date.UTC(2024, 2, at + 1));

  it('are joined with the time of day in text beside them', async () => {
    const { source, records } = await proposed(await book(cell));
    expect(from(source, 'time')).toEqual(['Date', 'Time', 'certain']);
    expect(source.columns.find(({ field }) => field === 'time')?.dates?.value).toBe('yyyy-MM-dd HH:mm');
    expect(records.air_removal_tests).toHaveLength(24);
    expect(instants(records.air_removal_tests.map(({ time }) => time))).toEqual(['2024-03-01T05:10:00.000Z']);
  });

  it('with some that are typed as text', async () => {
    const { source, records } = await proposed(
      await book((at) => (at % 5 === 4 ? `${at + 1}.3.2024` : cell(at))),
    );
    expect(source.columns.find(({ field }) => field === 'time')?.dates?.value).toBe(
      'yyyy-MM-dd HH:mm | d.M.yyyy HH:mm',
    );
    expect(records.air_removal_tests).toHaveLength(24);
  });
});
