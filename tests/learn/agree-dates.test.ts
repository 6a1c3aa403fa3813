import { describe, expect, it } from 'vitest';
import { learn } from '../../pipeline/learn/learn.ts';
import { loadVocabulary } from '../../pipeline/learn/vocabulary.ts';
import { withFolder } from '../ingest/read-folder.ts';

const vocabulary = loadVocabulary();
const two = (number: number): string => String(number).padStart(2, '0');

/** Tests of days from 1 to 12 alone, in no order of time, so that nothing in the table tells day from month. */
const unclear = (header: string, mark = '/'): string =>
  [
    header,
    ...Array.from(
      { length: 30 },
      (_, at) =>
        `${[two(((at * 5) % 12) + 1), two(((at * 7) % 12) + 1), '2025'].join(mark)},S${at % 2},${at % 9 ? 'OK' : 'fail'}`,
    ),
    '',
  ].join('\n');
/** Cleanings whose dates can be read in one order alone. */
const clear = (write: (day: string) => string): string =>
  [
    'Date,Sterilizer,Task',
    ...Array.from({ length: 28 }, (_, at) => `${write(two(at + 1))},S1,Strainer`),
    '',
  ].join('\n');

const datesOfTests = (files: Record<string, string>) =>
  withFolder(files, async (folder) => {
    const { sources } = await learn(folder, { vocabulary, zone: 'Europe/London', sites: 'one' });
    const dates = sources
      .find(({ kind }) => kind.value === 'air_removal_tests')
      ?.columns.find(({ field }) => field === 'time')?.dates;
    return [dates?.value, dates?.confidence];
  });

const TESTS = 'bowie dick.csv';

describe('day and month that nothing in a table tells apart', () => {
  it('are asked where nothing else speaks', async () => {
    expect(await datesOfTests({ [TESTS]: unclear('Date,Sterilizer,Result') })).toEqual([undefined, 'open']);
  });

  it('are likely as another table proves them', async () => {
    const tests = unclear('Date,Sterilizer,Result');
    expect(await datesOfTests({ [TESTS]: tests, 'cleaning.csv': clear((day) => `${day}/03/2025`) })).toEqual([
      'dd/MM/yyyy',
      'likely',
    ]);
    expect(await datesOfTests({ [TESTS]: tests, 'cleaning.csv': clear((day) => `03/${day}/2025`) })).toEqual([
      'MM/dd/yyyy',
      'likely',
    ]);
  });

  it('are asked where other tables prove both orders', async () => {
    expect(
      await datesOfTests({
        [TESTS]: unclear('Date,Sterilizer,Result'),
        'cleaning.csv': clear((day) => `03/${day}/2025`),
        'cleaning old.csv': clear((day) => `${day}/03/2024`).replace('Task', 'Job'),
      }),
    ).toEqual([undefined, 'open']);
  });

  it('are likely by language and full stops', async () => {
    expect(await datesOfTests({ [TESTS]: unclear('Fecha,Esterilizador,Resultado') })).toEqual([
      'dd/MM/yyyy',
      'likely',
    ]);
    expect(await datesOfTests({ [TESTS]: unclear('Date,Sterilizer,Result', '.') })).toEqual([
      'dd.MM.yyyy',
      'likely',
    ]);
  });
});
